"""Kinds of question that read one way and mean another: tins, yields, thawing, prices, seasons, swaps."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


# Area of the cook's tin over that of the recipe, whichever is named first.
@pytest.mark.parametrize(
    ("text", "factor"),
    [
        ("mine is an 18 cm round tin, the recipe wants 24 cm round", "0.56"),
        ("the recipe wants 24 cm round, mine is an 18 cm round tin", "0.56"),
        ("i have got a 10 inch round pan and the cake calls for 8 inch round", "1.56"),
        ("i own a 9x13 pan, recipe is for 9x9", "1.44"),
        ("we have a 7 inch round tin, it says 9 inch round", "0.60"),
        ("from 26 cm round to 22 cm round tin", "0.72"),
    ],
)
def test_a_recipe_is_scaled_to_the_tin_the_cook_has(store: Store, text: str, factor: str) -> None:
    answer = ask(text, store=store).answer
    assert f"multiply everything by {factor}" in answer, answer


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        # ratios.csv: a cup of dry grain in cups cooked, times the cups said
        ("what does 1 cup of raw quinoa give when cooked", "1 cup of dry quinoa makes about"),
        ("how much does 2 cups of dry rice make cooked", "makes about 6 cups"),
        ("a cup of uncooked rice is how many grams", r"about 1[6-9]\d|about 2\d\d"),
        ("the rice came out uncooked in the middle", "lowest heat"),
        # USDA FSIS: after the microwave or water cook at once; from the fridge 1-2 days
        ("defrosted pork in the microwave, can i wait and cook it this evening", "^No, not kept"),
        ("sausages thawed in cold water, leave them for the next day?", "^No, not kept"),
        ("duck thawed in the fridge, wait till tomorrow?", "1-2 days more"),
        ("how do i defrost cod in the microwave", "cook at once"),
        # common practice
        ("swap active dry yeast with instant yeast, how much", "quarter less"),
        ("the pizza dough isn't rising at all", "Old yeast"),
        ("how long must bread dough rise", "doubled"),
        ("my chapatis turn out stiff", "too stiff"),
        # prices
        ("how much are 3 kilos of yam at the market", "nothing of prices"),
        ("how much is 3 pounds of yam in kilos", "1.36"),
        # the food named for another is told first, and what is unknown is not turned round
        ("creme fraiche for sour cream", "^Instead of sour cream: creme fraiche"),
        ("creme fraiche in place of sour cream ok?", "^Instead of sour cream: creme fraiche"),
        # a size said of a food is used
        ("how big do i cut parsnips with potatoes cut to 35 mm on a tray", r"potatoes \(35 mm"),
        ("swede size to go with 15 mm carrots boiled", r"carrots \(15 mm"),
    ],
)
def test_a_question_gets_what_it_asks_for(store: Store, text: str, rule: str) -> None:
    answer = ask(text, store=store).answer
    assert re.search(rule, answer), answer


def test_what_is_not_known_is_not_taken_for_what_stands_in(store: Store) -> None:
    assert "Instead of butter" not in ask("butter instead of zorblax", store=store).answer


def test_a_season_keeps_its_kind_and_its_half_of_the_world(store: Store) -> None:
    north = ask("which fruit is in season in june", store=store).answer
    south = ask("which fruit is in season in december in new zealand", store=store).answer
    named = [set(re.split(r": |, | and more", text)[1:]) for text in (north, south)]
    assert named[0] == named[1], (north, south)
    assert "potato" not in north
    assert "apple" not in ask("which veg is in season in october", store=store).answer.split(": ")[1].split(
        ", "
    )


def test_no_piece_is_larger_than_anybody_cuts(store: Store) -> None:
    answer = ask("what size pumpkin chunks to go with pork chops on a tray", store=store).answer
    found = re.search(r"into (\d+) mm", answer)
    assert found is not None, answer
    assert int(found[1]) <= 45


@pytest.mark.parametrize(
    ("text", "rule"),
    [
        ("the refrigerator shows 10C, are the sausages fine", "^Too warm: .*more than 2 hours"),
        ("oil at 175C all right for drumsticks?", "^(?!.*roasted)"),
        ("what is a kadai", "round-bottomed"),
        ("what's a comal", "griddle"),
        ("soak chickpeas and how long to boil them", "min"),
        ("how long should dried chickpeas soak", "8-12|overnight|hours"),
    ],
)
def test_what_stands_beside_is_told_too(store: Store, text: str, rule: str) -> None:
    assert re.search(rule, ask(text, store=store).answer), ask(text, store=store).answer
