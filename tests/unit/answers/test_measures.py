"""Measures by country, tins and recipes scaled."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

# NIST SP 811 and the UK Weights and Measures Act: pint 568.261 / 473.176 ml, fluid ounce 28.413 / 29.574 ml,
# gallon 4.546 / 3.785 l. Australian tablespoon 20 ml (Standards Australia).
BY_COUNTRY = [
    ("how many tsp in a tablespoon in australia", ["4 "]),
    ("is 3 or 4 tsp a tablespoon in australia", ["4 "]),
    ("1 pint of milk in ml uk", ["568"]),
    ("half a pint british in ml", ["284"]),
    ("what is a fluid ounce in the uk in ml", ["28.4"]),
    ("how many pints in a litre uk", ["1.76"]),
    ("ml in a uk pint vs a us pint", ["568", "473"]),
    ("us gallon vs uk gallon", ["3785", "4546"]),
    ("is an imperial fl oz the same as an american one", ["28.4", "29.6"]),
    ("uk cup vs us cup in ml", ["250", "237"]),
    ("how many ml in a pint", ["473", "568"]),
    ("uk tablespoon in ml", ["15"]),
    ("how many tablespoons in an australian cup", ["12.5"]),
]


@pytest.mark.parametrize(("text", "must"), BY_COUNTRY)
def test_a_country_anywhere_in_the_question_is_heard(store: Store, text: str, must: list[str]) -> None:
    answer = ask(text, store=store).answer
    for fact in must:
        assert fact in answer


# area of a circle and of a square
@pytest.mark.parametrize(
    ("text", "factor"),
    [
        ("9 inch recipe in an 8 inch tin", 0.79),
        ("scale a cake from a 20cm to a 23cm tin", 1.32),
        ("9 inch square tin vs 9 inch round tin", 0.785),
        ("recipe for 4, need to feed 6", 1.5),
        ("my recipe serves 4 i need 7, how do i scale", 1.75),
    ],
)
def test_recipes_are_scaled(store: Store, text: str, factor: float) -> None:
    found = re.search(r"by (\d+\.\d+)", ask(text, store=store).answer)
    assert found
    assert float(found[1]) == pytest.approx(factor, abs=0.01)


def test_a_drained_tin_is_weighed(store: Store) -> None:
    for text in ("grams drained in 400 g tin of chickpeas", "14 oz can of beans drained weight"):
        assert "240 g" in ask(text, store=store).answer
    assert "two tins" in ask("how many tins of chickpeas equal 200 g dried", store=store).answer


# USDA SR28 measures as remembered, or a like flour: a cup of each weighs its own, never plain water's 237 g.
@pytest.mark.parametrize(
    ("flour", "low", "high"),
    [("rye flour", 90, 125), ("almond flour", 85, 115), ("rice flour", 140, 165), ("coconut flour", 100, 130),
     ("masa harina", 105, 125), ("buckwheat flour", 110, 130), ("wholemeal flour", 110, 130)],
)  # fmt: skip
def test_each_flour_has_its_own_cup(store: Store, flour: str, low: float, high: float) -> None:
    answer = ask(f"what does one cup of {flour} weigh in grams", store=store).answer
    found = re.search(r"about (\d+) gram", answer)
    assert found, answer
    assert low <= float(found[1]) <= high, answer


@pytest.mark.parametrize("text", ["cup of bulgur", "a cup of raw rice", "half a cup of grated parmesan"])
def test_a_measure_of_a_food_alone_asks_for_its_weight(store: Store, text: str) -> None:
    assert "grams" in ask(text, store=store).answer


def test_a_dose_is_not_converted(store: Store) -> None:
    assert "10 g" in ask("how many grams of salt per litre for linguine pasta", store=store).answer
    assert "1000" not in ask("ml of vinegar per litre for a quick pickle", store=store).answer


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("15 psi in kpa", "103 kPa"),  # NIST SP 811: 1 psi is 6.894757 kPa
        ("my cooker says 0.8 bar to psi", "11.6 psi"),
        ("what is 60 kPa in bar", "0.6 bar"),
    ],
)
def test_a_gauge_is_read_in_another_unit(store: Store, text: str, told: str) -> None:
    assert told in ask(text, store=store).answer


def test_a_bar_of_chocolate_is_no_pressure(store: Store) -> None:
    assert "psi" not in ask("1 bar of chocolate in grams", store=store).answer


@pytest.mark.parametrize(
    ("text", "fact"),
    [
        ("seven cups in ml", "1656"),  # 7 x 236.588
        ("nine ounces in grams", "255"),  # 9 x 28.3495
        ("3 and a half lb in kg", "1.59"),  # 3.5 x 0.453592
        ("5000 ml in litres", "5000 millilitres is 5 litres"),
        ("3 knobs of butter in grams", "3 knobs of butter"),
    ],
)
def test_numbers_in_words_and_large_ones_are_measured(store: Store, text: str, fact: str) -> None:
    assert fact in ask(text, store=store).answer
