"""Look-ups give records; names find their food however they are written."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from bot.commands import foods as command
from knowledge.errors import UnknownFood
from knowledge.foods.model import Role
from knowledge.foods.store import Store, default_path, open_store
from knowledge.text.normalise import key


def test_one_food_and_all_foods_agree(store: Store) -> None:
    assert [food.id for food in store.foods()] == list(store.food_ids())
    assert store.food("carrot") in store.foods()


def test_an_unknown_id_is_an_unknown_food(store: Store) -> None:
    with pytest.raises(UnknownFood):
        store.food("unobtainium")
    assert store.named("unobtainium") is None


@pytest.mark.parametrize(
    ("said", "food"),
    [
        ("Swede", "rutabaga"),
        ("AUBERGINES", "eggplant"),
        ("jalapeño", "jalapeno"),
        ("bhindi", "okra"),
        ("ugu", "fluted pumpkin leaf"),
        ("capsicum", "bell pepper"),
        ("zapallo", "pumpkin"),
        ("prawns", "shrimp"),
        ("🥕", "carrot"),
        ("frozen peas", "frozen pea"),
        ("rotisserie chicken", "chicken"),
        ("garbanzo beans", "chickpea"),
        ("courgettes", "zucchini"),
        ("isu", "yam"),
        ("silverbeet", "swiss chard"),
    ],
)
def test_a_food_is_found_by_what_people_call_it(store: Store, said: str, food: str) -> None:
    found = store.named(said)
    assert found is not None
    assert found.name == food


def test_every_food_is_found_by_its_own_name_first(store: Store) -> None:
    in_a_state = {row["variant_id"] for row in store.table("states")}
    for food in store.foods():
        found = store.named(food.name)
        assert found is not None
        assert found.id == food.id or food.id in in_a_state, food.name


def test_every_name_is_in_plain_form_and_leads_to_foods(store: Store) -> None:
    ids = set(store.food_ids())
    for name, food_ids in store.names().items():
        assert key(name) in (name, ""), name
        assert food_ids
        assert ids.issuperset(food_ids)


def test_a_state_has_its_own_figures(store: Store) -> None:
    fresh, frozen = store.food("pea"), store.in_state("pea", "frozen")
    assert (fresh.start_state, frozen.start_state) == ("fridge", "frozen")
    assert store.in_state("carrot", "frozen") is store.food("carrot")
    assert store.in_state("pea", None) is fresh


def test_every_source_of_every_figure_can_be_read(store: Store) -> None:
    for food in store.foods():
        for _, source in food.sources:
            assert store.source(source).title
        for portion in food.portions:
            assert store.source(portion.source).title


def test_every_food_that_cooks_can_be_planned_or_says_why_not(store: Store) -> None:
    for food in store.foods():
        if food.role is Role.COOK:
            assert food.serving_g, food.id
            assert food.whole_mm, food.id
            assert food.cuts, food.id
            assert store.doneness(food.doneness).id == food.doneness
            assert all(store.cut(cut) for cut in food.cuts)
        elif food.role is Role.FINISH:
            assert food.does or food.notes, food.id


def test_there_are_four_vessels_each_with_one_usual_size(store: Store) -> None:
    assert {v.id for v in store.vessels()} == {"sheet pan", "saute pan", "lidded pot", "pressure cooker"}
    for vessel in store.vessels():
        assert sum(size.usual for size in vessel.sizes) == 1
        areas = [size.area_m2 for size in vessel.sizes]
        assert len(set(areas)) == len(areas)
    # Two thirds at most, half for what foams or swells: the manuals of such cookers.
    assert store.vessel("pressure cooker").max_fill_foaming_frac <= 0.5
    assert store.vessel("pressure cooker").max_fill_frac <= 2 / 3


def test_culinary_cuts_have_their_textbook_sizes(store: Store) -> None:
    # Encyclopaedia list of culinary knife cuts, mm.
    sizes = {
        "brunoise": 3,
        "small dice": 6,
        "medium dice": 12.5,
        "large dice": 20,
        "batonnet": 6,
        "julienne": 3,
    }
    assert {cut: store.cut(cut).size_mm for cut in sizes} == sizes
    assert store.cut("brunoise").knife_min_per_kg > store.cut("large dice").knife_min_per_kg


def test_an_unknown_table_has_no_rows(store: Store) -> None:
    assert store.table("nothing of the kind") == ()


def test_the_file_cannot_be_written(store: Store) -> None:
    import sqlite3

    with pytest.raises(sqlite3.OperationalError, match="readonly"):
        store._db.execute("DELETE FROM foods")


@pytest.fixture
def home(store: Store, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(command, "open_store", lambda: Store(store.path))
    return store.path


def test_the_command_shows_a_food_with_all_its_sources(
    home: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert command.run(["swede"]) == 0
    said = capsys.readouterr().out
    assert "rutabaga" in said
    assert "water 89.43 g," in said  # USDA SR27 11435, water
    assert "USDA Agricultural Research Service" in said
    assert "; public domain" in said


def test_the_command_names_what_comes_near(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert command.run(["parsnp", "carrot"]) == 2
    said = capsys.readouterr()
    assert "parsnip" in said.err
    assert "carrot" in said.out


def test_the_command_lists_all_foods_as_json(home: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert command.run(["--json"]) == 0
    rows = [json.loads(line) for line in capsys.readouterr().out.splitlines()]
    assert len(rows) >= 700
    carrot = next(row for row in rows if row["id"] == "carrot")
    assert {"id", "name", "synonyms", "group", "sources", "allergens"} <= set(carrot)
    assert "gajar" in carrot["synonyms"]
    assert command.run(["--json", "carrot"]) == 0
    assert json.loads(capsys.readouterr().out)["figures"]["water_g"]["value"] == pytest.approx(88.29)


@pytest.mark.parametrize("left", [b"", b"not a database at all", b"SQLite format 3\x00 and then nothing"])
def test_a_damaged_copy_of_the_tables_is_made_again(
    left: bytes, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PANWRIGHT_HOME", str(tmp_path))
    default_path().write_bytes(left)
    with open_store() as opened:
        assert opened.named("leek") is not None
