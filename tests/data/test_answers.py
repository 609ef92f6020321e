"""Our own questions, as people phrase them, with the fact that the answer must hold.

The source of each fact stands beside it in `questions.jsonl`.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store, open_store

HERE = Path(__file__).parent


def lines(name: str) -> list[dict[str, object]]:
    return [json.loads(line) for line in (HERE / name).read_text(encoding="utf-8").splitlines()]


@pytest.fixture(scope="module")
def store() -> Iterator[Store]:
    with open_store() as opened:
        yield opened


def test_at_least_95_percent_of_our_questions_are_answered_right(store: Store) -> None:
    questions = lines("questions.jsonl")
    assert len(questions) >= 120
    wrong = []
    for question in questions:
        answer = ask(str(question["text"]), store=store)
        facts = question["must"]
        assert isinstance(facts, list)
        if not (answer.known and answer.sources and all(re.search(fact, answer.answer) for fact in facts)):
            wrong.append((question["text"], answer.answer))
    assert len(wrong) <= 0.05 * len(questions), wrong


def test_what_we_cannot_know_is_refused(store: Store) -> None:
    questions = lines("questions_unknown.jsonl")
    assert len(questions) >= 40
    answered = [q["text"] for q in questions if ask(str(q["text"]), store=store).known]
    assert answered == []


# Boiling temperature of water at the ICAO pressure of an altitude: IAPWS-IF97, by a steam-table library.
BOILING = [
    (0, 99.97),
    (500, 98.31),
    (1000, 96.65),
    (1500, 94.98),
    (2000, 93.32),
    (2500, 91.64),
    (3000, 89.97),
]


@pytest.mark.parametrize(("altitude_m", "degC"), BOILING)
def test_boiling_agrees_with_the_steam_tables(store: Store, altitude_m: int, degC: float) -> None:
    answer = ask(f"at what temp does water boil at {altitude_m} m altitude", store=store).answer
    found = re.search(r"boils at ([\d.]+) °C", answer)
    assert found
    assert float(found[1]) == pytest.approx(degC, abs=0.15)


# University of California Davis, whole grains chart: cups of water for one cup.
WATER = {
    "amaranth": "2.5",
    "bulgur": "2",
    "couscous": "1",
    "quinoa": "2",
    "pearl barley": "3",
    "wild rice": "3",
    "buckwheat": "2",
    "teff": "3",
}


@pytest.mark.parametrize("grain", WATER)
def test_water_for_grain_is_that_of_the_chart(store: Store, grain: str) -> None:
    answer = ask(f"how much water for a cup of {grain}", store=store).answer
    assert re.search(rf": {re.escape(WATER[grain])} cups? of water", answer), answer


def test_measures_agree_with_a_units_library(store: Store) -> None:
    import pint

    units = pint.UnitRegistry()
    theirs = {
        "cup": "cup",
        "tablespoon": "tablespoon",
        "teaspoon": "teaspoon",
        "fluid ounce": "fluid_ounce",
        "US pint": "pint",
        "UK pint": "imperial_pint",
        "quart": "quart",
        "gallon": "gallon",
        "ounce": "ounce",
        "pound": "pound",
        "stone": "stone",
        "inch": "inch",
        "foot": "foot",
    }
    ours = {row["id"]: row for row in store.table("measures")}
    for name, unit in theirs.items():
        factor = units.Quantity(1, unit).to(ours[name]["base"]).magnitude
        assert float(ours[name]["factor"]) == pytest.approx(factor, rel=1e-3), name


def test_oven_marks_follow_the_trade(store: Store) -> None:
    # gas mark 4 is 180 °C / 350 °F, 6 is 200 °C / 400 °F (common practice, printed on ovens)
    assert "180 °C / 350 °F" in ask("gas mark 4 in celsius", store=store).answer
    assert "200 °C / 400 °F" in ask("what's gas mark 6", store=store).answer


def test_no_storage_answer_is_longer_than_the_cautious_authority(store: Store) -> None:
    # cooked food 2 days (UK FSA), cooked rice 1 day (UK FSA), raw poultry and mince 1 day (USDA FSIS: 1-2)
    for food in store.foods():
        if food.role == "cook" and food.cooked_days is not None:
            assert food.cooked_days <= 2, food.id
        if food.doneness == "white_rice" and food.cooked_days is not None:
            assert food.cooked_days <= 1, food.id
    for text in ("how long does raw chicken keep in the fridge", "how long does mince keep in the fridge"):
        assert re.search(r": 1 day in the fridge", ask(text, store=store).answer)
