"""Measures of many countries, ranges, tins by their size, and foods whose weight is not known."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

# Common practice of the countries; USDA household weights (rice 185 g, sugar 200 g, flour 125 g a US cup).
LOCAL = [
    ("my grandfather bought 2 seer of ghee, how many kg", ["1.87 kilograms"]),
    ("3 tola in grams", ["35 grams"]),
    ("how much is a chatak in grams", ["58.3 grams"]),
    ("half a catty of prawns in g", ["302 grams", "500 g (a jin)"]),
    ("2 rice cooker cups of rice in grams", ["282 grams"]),
    ("2 stakana of flour in g", ["264 grams"]),
    ("3 su bardagi sugar in grams", ["507 grams"]),
    ("two xicaras of sugar", ["406 grams"]),
    ("how many kg is 2 olonka of rice", ["5.5 kilograms"]),
    ("4 derica of beans how many kg", ["heaped"]),
    ("what is a katori in ml", ["150 millilitres"]),
    ("a mug of rice in grams", ["235 grams", "Mugs differ"]),
    ("how many ml in a number 10 can", ["3236"]),
    ("28 oz can of tomatoes in grams", ["794 g", "800 g tin"]),
]


@pytest.mark.parametrize(("text", "must"), LOCAL)
def test_measures_at_home_in_one_country_are_told(store: Store, text: str, must: list[str]) -> None:
    answer = ask(text, store=store)
    assert answer.known
    for fact in must:
        assert fact in answer.answer


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("1-2 sticks of butter in grams", "113-227 grams"),
        ("1/4-1/3 cup of sugar in grams", "50-66.7 grams"),
        ("2 to 3 cups of milk in ml", "473-710 millilitres"),
    ],
)
def test_a_range_is_converted_at_both_ends(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer


def test_a_food_that_is_not_known_never_weighs_as_water(store: Store) -> None:
    answer = ask("how many grams in a cup of moonpowder", store=store)
    assert not answer.known
    assert "237" not in answer.answer
    assert "237 grams" in ask("a cup of water in grams", store=store).answer


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("a cup of wholemeal flour in grams", "120 grams"),
        ("cup of cooked quinoa in grams", "185 grams"),
        ("a cup of grated carrot in g", "110 grams"),
        ("4 tbsp cocoa powder in g", "21.5 grams"),  # USDA: 5.4 g
        ("half a cup of heavy cream in grams", "119 grams"),  # not whipped
    ],
)
def test_forms_weigh_as_themselves(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer


def test_what_is_said_last_counts(store: Store) -> None:
    assert ask("2 dl, I mean 3 dl of sugar in grams", store=store).answer.startswith("3 decilitres")


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("recipe says 6 large eggs, I have medium", "6.8 medium"),
        ("2 jumbo eggs is how many small", "3.3 small"),
        ("how many sticks in 2 cups of butter", "4 sticks"),
    ],
)
def test_pieces_of_one_size_for_another(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer


@pytest.mark.parametrize(
    "text", ["opened milk tin in the fridge how long", "how long to cook 4 kati rolls", "i go to the market"]
)
def test_words_that_only_look_like_a_measure(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert "millilitres" not in answer
    assert "grams" not in answer


def test_pounds_of_butter_in_sticks_are_no_reading(store: Store) -> None:
    assert ask("how many sticks is 230 g butter", store=store).answer.startswith("230 g is about 2")
    assert "12 tablespoons" in ask("1.5 sticks of butter in tablespoons", store=store).answer
