"""Wordings that once led astray: what is missing, raw food, devices, forms of a food, other authorities."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

WITHIN = [  # USDA FSIS: 2 hours, 1 hour above 32 °C / 90 °F; raw food is cooked or chilled, never eaten
    "raw turkey mince stood on the worktop for an hour, fine?",
    "uncooked prawns out 45 minutes",
    "cake batter with raw egg left out for 1 hour",
    "raw cod sat on the side 90 minutes",
]


@pytest.mark.parametrize("text", WITHIN)
def test_raw_food_within_the_limit_is_chilled_or_cooked(store: Store, text: str) -> None:
    said = ask(text, store=store).answer
    assert "within the limit" in said, said
    assert "into the fridge now, or cook it through at once" in said
    assert not re.search(r"(?<!don't )eat it now", said), said


def test_food_that_may_be_raw_gets_both(store: Store) -> None:
    said = ask("drumsticks were out for an hour", store=store).answer
    assert "Cooked: eat it now" in said
    assert "Raw: into the fridge" in said


@pytest.mark.parametrize(
    ("text", "must", "never"),
    [
        # USDA FSIS: marinate in the refrigerator
        ("can lamb marinate on the bench for 3 hours", "^No: marinate in the fridge", "eat it now"),
        # a warm place and a time are enough for the 2-hour rule
        ("pulao sat in a parked car for 80 minutes, edible?", "^No: throw it away", ""),
        ("coleslaw 2 hours at a picnic, 34 degrees", "^No: throw it away", ""),
        # UK FSA, 1 hour for cooked rice: it is no matter of cooking questions
        ("basmati on the stove: how much water", "1.5-1.75 cups", "Not safe"),
        ("left my rice on the stove overnight", "throw it away|Not safe", ""),
        # what is missing is no exclusion, and no question about where it goes
        (
            "my thermometer broke, how do i see that mussels or prawns are done",
            "opaque",
            "thickest part, away",
        ),
        ("how do you tell burgers are through when you have no thermometer", "brown all through", ""),
        ("oven is broken, can i still roast carrots", "saute pan", "Instead of"),
        # a device is no bird
        ("airfryer time for drumsticks", "(?s)roasted.*air fryer is not one of my vessels", "Fryer, roasted"),
        ("how many minutes do carrots need in an air fryer", "air fryer is not one", "Fryer, roasted"),
        # NHS, UK FSA against USDA FSIS
        ("can my pregnant sister have a runny yolk, we live in leeds", "(?s)FSIS.*safety mark.*fine", "^No"),
        # unrefined fats smoke far below the refined (common practice)
        ("smoke point of cold pressed peanut oil", "160 °C", "(?<!the )232 °C / 450 °F\\."),
        ("my sunflower oil got smoky, do i keep it", "Throw it away", ""),
        # FDA Food Code 3-402.11; EU 853/2004
        ("how long must trout be in my freezer for sashimi", "-20 °C.*7 days", "for quality"),
        ("is lime juice enough for ceviche at home", "kills no parasites|does not kill", ""),
        # the manual: never open under pressure
        ("pressure cooker still whistling, may i open the lid", "^No", ""),
        # medical diets are for a dietitian
        ("fodmap friendly swap for garlic", "dietitian", "Instead of"),
        ("what to take for cream on a renal diet", "dietitian", "Instead of"),
        # area of a circle: 24 / 20 squared is 1.44
        ("says 20 cm tin but my tin is 24 cm, how much more cake mix", "1.44", ""),
        ("the recipe wants a 20 cm square tin, mine is round", "22.6 cm", ""),
        ("swap: blue steak temperature", "48 °C", ""),
        ("what must a goose breast read", "74 °C", ""),
        # NHS: no wild mushroom by a description
        ("are these toadstools edible, brown cap and a ring", "poison control", ""),
        # an "and" alone rules nothing out
        ("potato and fish on one tray, what size potato", "Cut potato", "leave out"),
        # common practice
        ("my spaghetti sticks, why", "rolling boil", ""),
        ("which pan for a tortilla espanola", "saute pan", ""),
    ],
)
def test_a_wording_gets_the_answer_it_asks_for(store: Store, text: str, must: str, never: str) -> None:
    answer = ask(text, store=store)
    assert re.search(must, answer.answer), answer.answer
    assert not never or not re.search(never, answer.answer), answer.answer


@pytest.mark.parametrize(
    ("text", "grams"),
    [  # USDA SR 28: one cup of tapioca pearls 152 g, sorghum grain 192 g
        ("a cup of tapioca pearls in grams", 152),
        ("1 cup of sorghum in grams", 192),
    ],
)
def test_a_cup_is_that_of_the_food(store: Store, text: str, grams: int) -> None:
    found = re.search(r"about (\d+) grams", ask(text, store=store).answer)
    assert found
    assert float(found[1]) == pytest.approx(grams, rel=0.03)


@pytest.mark.parametrize(
    "text",
    [
        "grams in a cup of lentil flour",
        "1 cup of oat bran in grams",
        "cup of puffed quinoa in grams",
        "how many grams is a cup of ground pistachios",
        "2 cups of millet flakes in g",
        "1 cup of lotus root in grams",
    ],
)
def test_no_food_gets_the_weight_of_water_or_of_another_form(store: Store, text: str) -> None:
    said = ask(text, store=store).answer
    assert "I hold no weight" in said, said
    assert "is about" not in said


def test_cups_are_no_eaters(store: Store) -> None:
    said = ask("water for 2 cups of ofada rice", store=store).answer
    assert "as for brown rice" in said
    assert "For 2" not in said
