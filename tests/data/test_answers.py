"""Our own questions, as people phrase them, with the fact that the answer must hold.

The source of each fact stands beside it in `questions.jsonl`.
"""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

HERE = Path(__file__).parent


def lines(name: str) -> list[dict[str, object]]:
    return [json.loads(line) for line in (HERE / name).read_text(encoding="utf-8").splitlines()]


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

    units: pint.UnitRegistry[float] = pint.UnitRegistry()
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


# Each kind of question with what its answer must and must not say; the source stands above it.
KINDS = [
    # EU 1169/2011 annex II: who asks for "X free" gets no X, and nothing made of it
    ("peanut free alternative to groundnut oil", ["sunflower oil", "label"], ["(?i)peanut"]),
    ("milk free alternative to butter", ["oil"], ["(?i)milk", "ghee"]),
    ("egg free alternative to mayonnaise", ["yogurt"], ["(?i)egg"]),
    ("peanut free alternative to peanut butter", ["tahini"], ["(?i)peanuts", "Peanut for"]),
    ("nut free alternative to almond butter", ["tahini"], ["(?i)cashew|peanut", "gochujang"]),
    ("walnut free substitute for pecans", ["label"], ["(?i)peanut|almond|cashew|hazelnut"]),
    ("prawn free swap for prawns in curry", ["label"], ["squid", "scallop", "mussel", "crab"]),
    ("thickener free from gluten instead of flour", ["cornstarch", "label"], []),
    ("sesame allergy: what can I use instead of sesame oil", ["label"], ["(?i)sesame"]),
    ("dairy free substitute for buttermilk", ["label"], ["(?i)milk", "yogurt"]),
    ("sesame free alternative to tahini", ["almond butter", "labelled free of sesame"], ["has sesame"]),
    ("dairy-free alternative to cream", ["coconut"], ["creme fraiche", "evaporated"]),
    ("gluten-free alternative to couscous", ["quinoa|rice"], ["bulgur", "pasta"]),
    ("egg free binder for burgers", ["flaxseed"], ["turkey"]),
    # a sauce has no swap by kind; much salt is over 1.5 g in 100 g (UK front-of-pack guide)
    ("nut-free swap for pesto", ["pumpkin seed", "label"], ["gochujang"]),
    ("low sodium alternative to soy sauce", ["Instead of soy sauce"], ["fish sauce", "tamari", "miso"]),
    # common practice (Leviticus 11): split hoof and cud, fins and scales
    ("is kangaroo kosher", ["^No"], []),
    ("is rabbit kosher", ["^No"], []),
    ("is wild boar kosher", ["^No"], []),
    ("is camel kosher", ["^No"], []),
    ("is ostrich kosher", ["^No"], []),
    ("is eel kosher", ["^No"], []),
    ("is lobster kosher", ["^No"], []),
    ("is venison kosher", ["^Yes"], []),
    ("is wild boar halal", ["^No"], []),
    # USDA FSIS: 2 hours, 1 hour above 32 °C / 90 °F; boiling does not destroy the toxins
    ("my dal was out for 5 hours in the heat, if I boil it again is it fine?", ["^No", "90 °F", "toxin"], []),
    ("the chicken curry was out all night, can i reheat it", ["^No", "2 hours", "toxin"], []),
    ("soup sat on the stove for 6 hours, ok if i boil it again?", ["^No", "2 hours"], []),
    ("pizza was on the table for 5 hours, can I eat it", ["2 hours", "throw it away"], []),
    ("how long can potato salad sit out in 35 degree weather", ["1 hour"], []),
    # USDA FSIS: raw juices, clean plate
    ("can I put grilled chicken back in the marinade bowl", ["raw too", "Never"], []),
    ("can i put the cooked steak back on the plate the raw one was on", ["^No", "clean plate"], []),
    ("can i use the same tongs for raw and cooked sausages", ["^No", "clean tongs"], []),
    # USDA FSIS: shallow dishes within 2 hours
    ("how quickly should I put a big pot of stew in the fridge", ["2 hours", "shallow"], []),
    # USDA FSIS, Shell Eggs from Farm to Table: hard-cooked eggs 1 week
    ("how long do hard boiled eggs keep?", ["1 week"], ["74 °C"]),
    ("peeled hard boiled eggs in fridge how many days", ["1 week"], ["74 °C"]),
    ("are hard boiled eggs from 5 days ago still good", ["1 week"], ["74 °C"]),
    ("how long do soft boiled eggs last in the fridge", ["2 days"], ["1 week"]),
    # FDA Bad Bug Book: soak 5 hours, boil hard; times and water: common practice
    ("rajma in pressure cooker how long", ["(?i)soak", "boil them hard", "10-15 minutes"], []),
    ("water for toor dal in cooker, 1 cup", ["3 cups of water for 1 cup"], []),
    ("how much water for chickpeas in the pressure cooker", ["3 cups"], []),
    ("black beans multicooker time", ["under pressure"], ["boiled"]),
    ("do black eyed peas need soaking", ["^No", "optional"], []),
    ("do kidney beans need soaking", ["(?i)soak at least 5 hours"], ["optional"]),
    # factors of NIST SP 811: 2.25 lb = 1.0206 kg, 1.5 lb = 680.4 g, 18 tbsp of 14.787 ml
    ("convert 2 lb 4 oz to kg", [r"1\.02 kilogram"], []),
    ("1 lb 8 oz in grams", ["680 gram"], []),
    ("1 cup and 2 tbsp in ml", ["266 milli"], []),
    # common practice: a fan oven 20 °C lower
    ("180 fan in conventional oven", ["200 °C"], ["160"]),
    ("350F fan to conventional", ["375 °F"], []),
    ("200C conventional to fan", ["180 °C"], ["220"]),
    # a note about one food does not answer for another
    ("how long to boil yam", ["(?i)yam.*min"], ["(?i)yolk"]),
    ("what's a bain marie", ["hot water"], []),
    ("what is tempering in Indian cooking", ["hot fat"], []),
    ("is turmeric good for arthritis", ["doctor"], ["fridge"]),
]


@pytest.mark.parametrize(("text", "must", "never"), KINDS)
def test_each_kind_of_question_is_answered_as_its_source_says(
    store: Store, text: str, must: list[str], never: list[str]
) -> None:
    answer = ask(text, store=store)
    assert answer.known
    said = (
        answer.answer.removeprefix("Instead of ").partition(": ")[2] if "Instead of" in answer.answer else ""
    )
    for fact in must:
        assert re.search(fact, answer.answer), answer.answer
    for wrong in never:
        assert not re.search(wrong, said or answer.answer), answer.answer


NOT_OURS = [
    "how many carbs are in a banana",
    "how much sugar is in a mango",
    "iron in spinach",
    "sugar in a can of coconut milk",
    "are there carbs in cauliflower",
    "how many grams of sugar in a cup of milk",
    "how much fat is in an avocado",
    "is salmon high in protein",
    "sugar free alternative to honey",
    "how much sodium is in soy sauce",
    "who won the champions league last night",
    "what wine goes with roast lamb",
]


@pytest.mark.parametrize("text", NOT_OURS)
def test_what_is_not_ours_is_refused_without_a_figure(store: Store, text: str) -> None:
    answer = ask(text, store=store)
    assert not answer.known
    assert not re.search(r"\d", answer.answer)
