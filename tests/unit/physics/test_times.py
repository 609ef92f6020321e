"""`panwright times`: tables in and out, names, explanations, bad input."""

from __future__ import annotations

import csv
import io
from itertools import pairwise
from pathlib import Path

import pytest

from bot.commands import times
from bot.commands.times_explain import parse
from knowledge.errors import OutOfRange, UnknownWord
from knowledge.foods.store import Store
from knowledge.physics import media
from knowledge.physics.chart import Row, read_row
from knowledge.physics.chart_names import resolve


def run(
    text: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> tuple[int, list[dict[str, str]], str]:
    file = tmp_path / "in.csv"
    file.write_text(text, encoding="utf-8")
    status = times.run([str(file)])
    out, err = capsys.readouterr()
    return status, list(csv.DictReader(io.StringIO(out))), err


def test_good_rows_are_answered_beside_bad_ones(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    status, rows, err = run(
        "id,food,size_mm,method,medium_temp_c,altitude_m\n"
        "a,carrot,20,roast,220,\nb,carrot,thick,roast,220,\nc,carrot,3000,roast,220,\nd,,20,roast,,\n"
        "e,carrot,20,roast,900,\nf,carrot,20,boil,,8849\ng,carrot,20,microwave,,\n",
        tmp_path,
        capsys,
    )
    assert status == 2
    assert [bool(r["time_min"]) for r in rows] == [True] + [False] * 6
    low, mid, high = (float(rows[0][c]) for c in ("time_min_lo", "time_min", "time_min_hi"))
    assert low < mid < high
    for number, part in enumerate(
        (
            "size_mm: expected a number",
            "3000 mm is outside",
            "food: a name",
            "900 °C is outside",
            "8849 m",
            "method",
        ),
        start=3,
    ):
        assert f"line {number}: " in err
        assert part in err


HEADER = "id,food,size_mm,method,note\n"


def minutes(rows: list[dict[str, str]]) -> dict[str, bool]:
    return {row["id"]: bool(row["time_min"]) for row in rows}


def test_the_mark_before_the_first_line_is_no_part_of_a_name(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    status, rows, _ = run(f"\ufeff{HEADER}turnip-3,turnip,15,boil,\n", tmp_path, capsys)
    assert (status, minutes(rows)) == (0, {"turnip-3": True})


@pytest.mark.parametrize(
    ("row", "said"),
    [
        (b"x,\xfe\xff\x80,20,boil,", b"no food called"),  # bytes that are no text
        (b"x,beetroot,20,boil,,,soft", b"expected 5 cells, got 7"),
        (b"x," + b"b" * 140_000 + b",20,boil,", b"no row of a table"),  # longer than a cell may be
    ],
)
def test_a_row_that_is_none_is_named_and_costs_no_other(
    row: bytes, said: bytes, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    file = tmp_path / "in.csv"
    file.write_bytes(HEADER.encode() + b"a,turnip,15,boil,\n" + row + b"\nz,leek,20,steam,\n")
    assert times.run([str(file)]) == 2
    out, err = capsys.readouterr()
    found = minutes(list(csv.DictReader(io.StringIO(out))))
    assert (found["a"], found["z"]) == (True, True)
    assert f"line 3: {said.decode()}" in err


def test_a_quote_left_open_is_named_with_the_lines_it_takes(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    text = f'{HEADER}a,turnip,15,boil,\nb,"leek,20,steam,\nc,leek,20,steam,\n'
    status, rows, err = run(text, tmp_path, capsys)
    assert (status, minutes(rows)) == (2, {"a": True, "b": False})
    assert "line 3: a quote that is not closed" in err
    assert "to line 4" in err


def test_a_note_over_two_lines_is_no_fault(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    text = f'{HEADER}a,turnip,15,boil,"from the garden,\nsmall"\nb,leek,20,steam,\n'
    status, rows, _ = run(text, tmp_path, capsys)
    assert (status, minutes(rows)) == (0, {"a": True, "b": True})


def test_a_column_named_twice_is_refused(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    status, rows, err = run("id,food,method,food\na,turnip,boil,leek\n", tmp_path, capsys)
    assert (status, rows) == (2, [])
    assert "names food twice" in err


def test_an_unknown_method_is_said_plainly_and_pressure_is_high(store: Store) -> None:
    with pytest.raises(UnknownWord, match="no method called 'zap'; there are: roast, "):
        read_row(Row(food="carrot", method="zap"), store)
    assert read_row(Row(food="carrot", method="pressure"), store).method == "pressure_high"


@pytest.mark.parametrize(("text", "most_mm"), [("30 mm pieces", 8.0), ("30 mm cubes", 8.0)])
def test_a_cut_is_never_thicker_than_the_food(store: Store, text: str, most_mm: float) -> None:
    assert read_row(Row(food="bell pepper", cut_text=text), store).size_mm <= most_mm


def test_a_file_that_is_not_there_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    assert times.run(["/nonexistent/rows.csv"]) == 2
    assert "cannot be read" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("name", "endpoint", "ids"),
    [
        ("rice, brown", "tender", {"brown-rice"}),
        ("lentils, red split", "tender", {"red-lentil"}),
        ("courgette / summer squash", "tender", {"zucchini", "summer-squash"}),
        (
            "beef rib eye roast",
            "core_temp",
            {"beef-rib-roast", "ribeye", "rib-eye-steak", "beef-roast", "steak"},
        ),
        ("chicken thighs", "core_temp", {"chicken-thigh"}),
        ("cod or haddock", "flaky", {"cod", "haddock"}),
    ],
)
def test_names_as_charts_write_them(store: Store, name: str, endpoint: str, ids: set[str]) -> None:
    assert resolve(name, "", endpoint, store)[0].id in ids


def test_meat_is_never_taken_for_a_vegetable(store: Store) -> None:
    for name in ("mystery roast", "rump of something", "wild boar haunch"):
        assert resolve(name, "", "core_temp", store)[0].animal


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("carrot 20 mm dice, roast 220 C", ("carrot", "roast", 220.0, 20.0, "cuboid")),
        ("chicken breast 28 mm, pan 350 F to 74 C", ("chicken breast", "saute", 176.7, 28.0, "")),
        ("potato 25 mm cubes, boiled, 1500 m", ("potato", "boil", None, 25.0, "cuboid")),
    ],
)
def test_one_piece_in_words(text: str, expected: tuple[str, str, float | None, float, str]) -> None:
    row = parse(text)
    assert (row.food, row.method, row.size_mm, row.shape) == (
        expected[0],
        expected[1],
        expected[3],
        expected[4],
    )
    assert row.medium_degC == (None if expected[2] is None else pytest.approx(expected[2], abs=0.1))


@pytest.mark.parametrize(
    ("words", "sheet"),
    [
        ("dark pan", "dark"), ("on a black tray", "dark"), ("aluminium sheet", "bright"),
        ("bright pan", "bright"), ("glass dish", "glass"), ("foil-lined sheet", "foil"), ("", "dull"),
        ("dark meat", "dull"), ("wrapped in foil", "dull"),
    ],
)  # fmt: skip
def test_the_sheet_is_read_from_words(store: Store, words: str, sheet: str) -> None:
    row = parse(f"chicken thigh 28 mm, {words}, roast 200 C")
    assert (row.method, read_row(row, store).sheet) == ("roast", sheet)


def test_an_explanation_shows_the_chain_and_draws_it(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    picture = tmp_path / "carrot.png"
    assert times.run(["--explain", "carrot 20 mm dice, roast 220 C", "--plot", str(picture)]) == 0
    out = capsys.readouterr().out
    for part in ("piece", "stuff", "medium", "done at", "surface", "done after", "softening", "golden brown"):
        assert part in out
    assert picture.read_bytes().startswith(b"\x89PNG")
    assert times.run(["--explain", "carrot 3000 mm, roast 220 C"]) == 2
    assert "size_mm" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("name", "state", "food_id"),
    [
        ("cabbage, green", "", "cabbage"), ("lima beans", "fridge", "fresh-lima-bean"),
        ("black-eyed peas", "frozen", "fresh-black-eyed-pea"), ("fava beans", "soaked", "dried-fava-bean"),
        ("chickpeas", "canned", "canned-chickpea"), ("chickpeas", "soaked", "chickpea"),
        ("white rice", "room", "rice"),
    ],
)  # fmt: skip
def test_the_state_says_which_of_two_foods_is_meant(
    store: Store, name: str, state: str, food_id: str
) -> None:
    assert resolve(name, "", "tender", store, state)[0].id == food_id


@pytest.mark.parametrize("name", ["tofu", "seitan", "rocket", "chestnuts", "bamboo shoots"])
def test_what_is_only_warmed_as_a_rule_has_its_time_too(store: Store, name: str) -> None:
    line = {"id": "x", "food": name, "method": "saute", "endpoint_kind": "tender"}
    minutes = times.predictions([line], store)["x"]
    assert minutes is not None
    assert 1.0 <= minutes <= 40.0


def test_unsoaked_beans_take_half_as_long_again_to_twice_as_long(store: Store) -> None:
    """Common practice, no source: unsoaked about half as long again to twice as long, 10 % beyond."""
    lines = [
        {"id": f"{food}{state}", "food": food, "start_state": state, "method": "simmer"}
        for food in ("kidney beans", "navy beans", "chickpeas")
        for state in ("soaked", "dry")
    ]
    found = times.predictions(lines, store)
    for food in ("kidney beans", "navy beans", "chickpeas"):
        soaked, dry = found[f"{food}soaked"], found[f"{food}dry"]
        assert soaked is not None
        assert dry is not None
        assert 1.4 <= dry / soaked <= 2.3


@pytest.mark.parametrize(
    ("cells", "said"),
    [
        ({"size_mm": "0", "method": "boil"}, "size_mm: 0 mm"),
        ({"method": "pressure_high", "medium_temp_c": "80"}, "gauge_kPa"),
        ({"method": "boil", "medium_temp_c": "150"}, "liquid_degC: 150 °C"),
        ({"method": "steam", "medium_temp_c": "190"}, "liquid_degC: 190 °C"),
    ],
)
def test_what_no_kitchen_has_is_no_silent_time(store: Store, cells: dict[str, str], said: str) -> None:
    answer = times.answers([{"id": "x", "food": "parsnip", **cells}], store)[0]
    assert answer.outcome is None
    assert answer.problem.startswith(said)


@pytest.mark.parametrize(
    ("text", "degC"),
    [("leek 20 mm, sealed at 80 kPa", 117.1), ("leek 20 mm, pressure 15 psi", 121.0)],
)
def test_a_gauge_pressure_is_read(text: str, degC: float) -> None:
    """Steam tables: 117.1 °C at 80 kPa over the air, 121 °C at 15 psi."""
    assert parse(text).medium_degC == pytest.approx(degC, abs=0.2)
    with pytest.raises(OutOfRange, match="gauge_kPa"):
        parse("leek 20 mm, sealed at -40 kPa")


def minutes_of(store: Store, **cells: str) -> float:
    found = times.predictions([{"id": "x", **cells}], store)["x"]
    assert found is not None
    return found


def test_a_half_is_no_endless_slab(store: Store) -> None:
    """Common practice, no source: half a melon-sized squash takes no longer than an hour at 200 °C."""
    whole = {"food": "kabocha squash", "shape": "slab", "size_mm": "40", "method": "roast"}
    half, slab = minutes_of(store, cut_text="halves", **whole), minutes_of(store, cut_text="slices", **whole)
    assert half < 0.97 * slab
    assert half <= 60.0


def test_a_shell_is_not_what_heats(store: Store) -> None:
    small, large = (
        minutes_of(store, food="clams", cut_text="in shell", shape="whole", size_mm=mm, method="steam")
        for mm in ("28", "48")
    )
    assert small == pytest.approx(large)
    assert 3.0 <= large <= 10.0


def test_what_takes_so_long_at_sea_level_takes_it_there(store: Store) -> None:
    """Ranges of a published leaflet on cooking at 1524, 2286 and 3048 m, for what takes 10 min at 0 m."""
    at = [
        minutes_of(
            store, food="generic boiled food", cut_text="item that takes 12 min at sea level", method="boil",
            altitude_m=str(z),
        )
        for z in (0, 1524, 2286, 3048)
    ]  # fmt: skip
    assert at[0] == pytest.approx(12.0, rel=0.01)
    for minutes, low, high in zip(at[1:], (1.4, 1.65, 1.9), (1.6, 1.95, 2.2), strict=True):
        assert 12.0 * low <= minutes <= 12.0 * high


def test_further_from_the_broiler_takes_longer(store: Store) -> None:
    """Common practice, no source: 290, 260 and 230 °C at 10, 13 and 18 cm, within 3 °C."""
    for cm, degC in ((10, 290.0), (13, 260.0), (18, 230.0)):
        assert media.broiler_degC(cm / 100.0) == pytest.approx(degC, abs=3.0)
    row = {"food": "veal chop", "shape": "slab", "method": "broil", "core_temp_c": "71"}
    near, far = (
        minutes_of(store, cut_text=f"22 mm, {far} from the heat", endpoint_kind="core_temp", **row)
        for far in ("4 in", "7 in")
    )
    assert 1.2 * near < far < 2.0 * near
    with pytest.raises(OutOfRange, match=r"distance_m: 0\.01 m"):
        media.broiler_degC(0.01)


def test_cubes_on_a_skewer_shade_each_other(store: Store) -> None:
    """Common practice, no source: 30 mm cubes of lamb 8 to 14 min, a chop as thick no quicker than half."""
    row = {"food": "lamb", "size_mm": "30", "method": "broil", "medium_temp_c": "260", "core_temp_c": "63"}
    cubes = minutes_of(store, shape="cuboid", endpoint_kind="core_temp", **row)
    assert 8.0 <= cubes <= 14.0


def test_a_fish_as_it_was_caught_is_thinner_than_a_block(store: Store) -> None:
    row = {"food": "trout", "size_mm": "45", "method": "roast", "medium_temp_c": "200"}
    whole = minutes_of(store, shape="whole", endpoint_kind="flaky", **row)
    assert 18.0 <= whole <= 30.0


def test_cold_slices_cool_the_pan(store: Store) -> None:
    """Common practice, no source: 6 mm of cutlet two minutes and a half at least."""
    row = {"food": "pork cutlet", "shape": "slab", "size_mm": "6", "method": "saute", "medium_temp_c": "180"}
    assert minutes_of(store, endpoint_kind="core_temp", core_temp_c="71", **row) >= 2.5


@pytest.mark.parametrize(
    ("food", "shape", "core"),
    [("turnip", "cuboid", ""), ("parsnip", "cylinder", ""), ("beet", "sphere", ""),
     ("turkey", "cuboid", "74"), ("haddock", "slab", "63"), ("pork loin", "whole", "71")],
)  # fmt: skip
def test_a_larger_piece_is_never_done_sooner_in_the_oven(
    store: Store, food: str, shape: str, core: str
) -> None:
    lines = [
        {"id": str(mm), "food": food, "shape": shape, "size_mm": str(mm), "method": "roast",
         "endpoint_kind": "core_temp" if core else "tender", "core_temp_c": core}
        for mm in range(5, 96, 2)
    ]  # fmt: skip
    found = [minutes or 0.0 for minutes in times.predictions(lines, store).values()]
    assert all(later >= 0.992 * sooner for sooner, later in pairwise(found))


def test_a_drumstick_waits_for_its_skin_however_thick_it_is(store: Store) -> None:
    """Common practice, no source: 30 to 45 min at 200 °C."""
    row = {"food": "chicken drumstick", "shape": "cylinder", "method": "roast", "core_temp_c": "74"}
    for mm in ("38", "44"):
        assert 25.0 <= minutes_of(store, size_mm=mm, endpoint_kind="core_temp", **row) <= 45.0


@pytest.mark.parametrize(
    ("text", "method"),
    [
        ("turnip 12 mm dice, covered pan", "pan_covered"),
        ("turnip 12 mm dice, pan with a lid 160 C", "pan_covered"),
        ("turnip 12 mm dice, pan 180 C", "saute"),
        ("turnip 12 mm dice, covered 190 C", "bake_covered"),
    ],
)
def test_a_lid_on_a_pan_is_heard(text: str, method: str) -> None:
    assert parse(text).method == method


def test_under_a_lid_the_metal_and_the_steam_both_cook(store: Store) -> None:
    """Hotter metal is sooner done, and thin pieces need about what they do in steam (physics, no source)."""
    line = {
        "food": "turnip",
        "cut_text": "12 mm dice",
        "shape": "cuboid",
        "size_mm": "12",
        "endpoint_kind": "tender",
    }
    lines = [
        {"id": "steam", **line, "method": "steam"},
        {"id": "warm", **line, "method": "pan_covered", "medium_temp_c": "120"},
        {"id": "hot", **line, "method": "pan_covered", "medium_temp_c": "180"},
    ]
    found = {name: minutes or 0.0 for name, minutes in times.predictions(lines, store).items()}
    assert 0.0 < found["hot"] <= found["warm"]
    assert found["warm"] == pytest.approx(found["steam"], rel=0.5)
