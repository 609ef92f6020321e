"""`panwright plan` and `panwright swap`: lines in, JSON lines out, honest exit status."""

from __future__ import annotations

import io
import json
import sys
from contextlib import suppress
from pathlib import Path

import pytest

from bot.__main__ import main
from bot.commands import plan as plan_command
from bot.commands import swap as swap_command
from bot.commands.lines import Answered, Record, answer_lines
from knowledge.foods.store import Store


def lines(
    command: object, text: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> tuple[int, list[dict[str, object]], str]:
    with io.TextIOWrapper(io.BytesIO(text.encode()), encoding="utf-8") as stdin:
        monkeypatch.setattr(sys, "stdin", stdin)
        monkeypatch.setattr(sys.stdout, "reconfigure", lambda **_: None, raising=False)
        status = command.run([])  # type: ignore[attr-defined]
    out, err = capsys.readouterr()
    return status, [json.loads(line) for line in out.splitlines()], err


FIELDS = {
    "id", "ok", "vessel", "settings", "serves", "total_min", "hands_on_min", "cooking_min", "items", "liquid",
    "steps", "cautions", "left_out", "assumed", "alternatives", "why",
}  # fmt: skip


def test_plan_speaks_the_interface(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    status, got, _ = lines(plan_command, "2 salmon fillets, potatoes, asparagus\n", monkeypatch, capsys)
    assert status == 0
    assert set(got[0]) >= FIELDS
    item = got[0]["items"][0]  # type: ignore[index]
    assert {"food", "grams", "cut", "in_min", "out_min", "done", "why"} <= set(item)
    assert {"kind", "at_min", "window_min", "core_degC", "rest_min"} <= set(item["done"])


def test_bad_lines_are_named_and_the_good_ones_answered(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    text = (
        '{"text": 3}\n{broken\n\nsausages, potatoes\n{"id": "k", "text": "rice", "kitchen": {"vessels": 3}}\n'
    )
    status, got, err = lines(plan_command, text, monkeypatch, capsys)
    assert status == 2
    assert len(got) == 2
    assert "line 1" in err
    assert "line 2" in err
    assert "kitchen.vessels" in err


@pytest.mark.parametrize("grams", ["NaN", "Infinity", "-5", "0", "1e300", '"a lot"', "true"])
def test_grams_that_are_none_are_named_and_the_rest_is_answered(
    grams: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    good = '{"text": "salmon, potatoes, carrots", "from": "carrot", "to": "parsnip"}'
    text = f'{good}\n{good[:-1]}, "grams": {grams}}}\n{good}\n'
    status, got, err = lines(swap_command, text, monkeypatch, capsys)
    assert (status, len(got)) == (2, 2)
    assert "line 2" in err


def test_the_mark_before_the_first_line_is_no_part_of_it(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    text = '\ufeff{"id": "first", "text": "trout, leeks"}\r\n{"id": "then", "text": "leeks, eggs"}\r\n'
    status, got, _ = lines(plan_command, text, monkeypatch, capsys)
    assert (status, [answer["id"] for answer in got]) == (0, ["first", "then"])


@pytest.mark.parametrize(
    ("vessel", "size"),
    [("lidded pot", "0 l"), ("lidded pot", "400 quarts"), ("saute pan", "9 m"), ("saute pan", "900 cm"),
     ("pressure cooker", "3 ml")],
)  # fmt: skip
def test_a_size_nobody_owns_is_named(
    vessel: str, size: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    kitchen = {"vessels": [{"id": vessel, "size": size}]}
    line = json.dumps({"text": "mushrooms, onions, eggs", "kitchen": kitchen}) + "\n"
    status, got, err = lines(plan_command, line, monkeypatch, capsys)
    assert (status, len(got)) == (2, 1)
    assert f"cannot read the size '{size}'" in err


@pytest.mark.skipif(not Path("/dev/full").exists(), reason="needs a device that is always full")
def test_no_room_for_the_answer_is_said_and_is_no_bug(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    with suppress(OSError), open("/dev/full", "w", encoding="utf-8") as full:
        monkeypatch.setattr(sys, "stdout", full)
        status = main(["foods", "leek"])
    assert status == 2
    assert capsys.readouterr().err == "panwright foods: No space left on device\n"


def test_a_bug_costs_its_own_line_only(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    def answer(record: Record) -> Answered:
        return {"half": 1.0 / float(record["text"])}, ()

    status = answer_lines("half", ["2", "0", "4"], answer)
    out, err = capsys.readouterr()
    assert status == 1
    assert [json.loads(line)["half"] for line in out.splitlines()] == [0.5, 0.25]
    assert "line 2: a bug: ZeroDivisionError" in err


def test_the_last_evening_of_the_calendar_is_an_evening(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    line = '{"text": "salmon, potatoes, by 1am", "kitchen": {"now": "9999-12-31T23:10"}}\n'
    status, got, _ = lines(plan_command, line, monkeypatch, capsys)
    assert (status, len(got)) == (0, 1)


def test_what_the_eaters_of_a_kitchen_must_not_have_stays_out(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    line = '{"text": "salmon, rice, prawns 200 g", "kitchen": {"allergens": ["shellfish"]}}\n'
    status, got, _ = lines(plan_command, line, monkeypatch, capsys)
    assert status == 0
    assert "shrimp" not in {item["food"] for item in got[0]["items"]}  # type: ignore[attr-defined]
    assert any(out["food"] == "shrimp" for out in got[0]["left_out"])  # type: ignore[attr-defined]


def test_a_refusal_is_an_answer(monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    status, got, _ = lines(plan_command, "salt and pepper\n🙂🙂\nqwerty " * 3, monkeypatch, capsys)
    assert status == 0
    assert all(answer["ok"] is False and answer["reasons"] for answer in got)


def test_swap_speaks_the_interface(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    text = json.dumps(
        {"id": 7, "text": "4 chicken thighs, potatoes, carrots", "from": "carrots", "to": "parsnips"}
    )
    status, got, _ = lines(swap_command, text + '\n{"text": "x"}\n', monkeypatch, capsys)
    assert status == 2
    assert set(got[0]) == {"id", "verdict", "finish_shift_min", "change", "text", "cautions", "plan"}
    assert got[0]["verdict"] in ("together", "adjust")


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("chicken thighs bone in", ("chicken-thigh", None, None, "bone-in")),
        ("frozen peas", ("pea", None, "frozen", None)),
        ("2500 g potatoes", ("potato", 2500.0, None, None)),
        ("diced turnips 300g", ("turnip", 300.0, None, "diced")),
        ("pinto beans, tinned", ("pinto-bean", None, "canned", None)),
    ],
)
def test_a_swap_keeps_what_is_said_of_the_new_food(
    store: Store, words: str, expected: tuple[str, float | None, str | None, str | None]
) -> None:
    have = swap_command.incoming(words, None, store)
    assert have is not None
    assert (have.food_id, have.grams, have.state, have.cut) == expected


def test_the_food_that_leaves_may_be_described(store: Store) -> None:
    assert swap_command.leaving("bone in chicken thighs", store) == "chicken-thigh"
    assert swap_command.leaving("potato", store) == "potato"
    assert swap_command.leaving(None, store) is None


def test_several_foods_are_swapped_by_lists(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    line = {
        "text": "3 chicken legs, 3 turnips, 4 shallots, 400 g potatoes, for 3",
        "kitchen": {"vessels": [{"id": "lidded pot"}]},
        "from": ["turnip", "shallot"],
        "to": ["carrot", "leek"],
    }
    status, got, _ = lines(swap_command, json.dumps(line) + "\n", monkeypatch, capsys)
    assert status == 0
    made = got[0]["plan"]
    assert {i["food_id"] for i in made["items"]} >= {"carrot", "leek"}  # type: ignore[index]
    assert lines(swap_command, '{"text": "rice", "from": ["pea", 3]}\n', monkeypatch, capsys)[0] == 2


@pytest.mark.parametrize(
    ("out", "into", "there"),
    [
        ("carrots and peas", "parsnips and green beans", {"parsnip", "green bean"}),
        ("carrots, peas", "turnips & leeks", {"turnip", "leek"}),
        ("peas", "salt and pepper squid", None),  # one food, whatever stands in its name
    ],
)
def test_foods_joined_in_a_name_are_several(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], out: str, into: str,
    there: set[str] | None,
) -> None:  # fmt: skip
    record = {"text": "500 g stewing beef, carrots, peas, potatoes for 3", "from": out, "to": into}
    _, [got], _ = lines(swap_command, json.dumps(record), monkeypatch, capsys)
    if there is None:
        assert "Pepper" not in str(got["text"])
    else:
        assert got["verdict"] in ("together", "adjust")
        assert there <= {item["food"] for item in got["plan"]["items"]}  # type: ignore[index]


def test_a_swap_that_only_partly_works_is_no_plain_yes(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    record = {
        "text": "4 chicken thighs, carrots, green beans", "kitchen": {"vessels": [{"id": "sheet pan"}]},
        "from": ["carrots", "green beans"], "to": ["parsnips", "rice"],
    }  # fmt: skip
    _, [got], _ = lines(swap_command, json.dumps(record), monkeypatch, capsys)
    assert got["verdict"] == "adjust"
    assert "No" in str(got["text"])
