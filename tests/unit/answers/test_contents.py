"""What is in a food: a yes says that it is there, and no answer to an allergy begins with a bare "No".

The foods' own allergens are those of `foods.csv` (EU 1169/2011 annex II and the US nine); the
property runs over all of them, each in some of the frames, in a fixed choice.
"""

from __future__ import annotations

import zlib

import pytest

from knowledge.answers import ask
from knowledge.foods.columns import ALLERGEN
from knowledge.foods.store import Store

SAID = {
    "milk": "dairy", "eggs": "egg", "crustaceans": "shellfish", "molluscs": "shellfish", "soybeans": "soya",
    "tree nuts": "nuts",
}  # fmt: skip
CONTENTS = [
    "does {x} contain {y} and what else", "is there any {y} in {x}?", "{x} {y}?", "has {x} got {y} in it?",
    "are there {y} in {x}, my nephew is allergic", "is {x} usually made with {y}", "any {y} in {x}?",
    "{x}: does it contain {y}?", "is {x} {y}? grandad can't have it", "tell me whether {x} contains {y}",
]  # fmt: skip
FITNESS = [
    "is {x} safe with a {y} allergy", "can a {y} allergic guest eat {x}", "is {x} {y} free",
    "{y} allergy, is {x} ok?", "he is allergic to {y}, may he have {x}?",
]  # fmt: skip
ONE_IN = 24  # questions of the whole product that are asked
MERCURY = {"shark", "orange roughy", "swordfish"}  # told of another danger first


def some(store: Store, frames: list[str], *, held: bool) -> list[str]:
    """A fixed choice of questions about foods that hold the allergen, or do not."""
    asked = []
    for food in store.foods():
        for allergen in ALLERGEN.words:
            word = SAID.get(allergen, allergen)
            if (allergen in food.allergens) is not held or word.rstrip("s") in food.name:
                continue
            if food.name in MERCURY or food.name in {"stuffing", "leftover chicken"}:
                continue
            for frame in frames:
                question = frame.format(x=food.name, y=word)
                if zlib.crc32(question.encode()) % (ONE_IN if held else 20 * ONE_IN) == 0:
                    asked.append(question)
    return asked


def test_a_food_that_has_it_is_never_answered_no(store: Store) -> None:
    asked = some(store, CONTENTS, held=True)
    assert len(asked) > 100
    for question in asked:
        answer = ask(question, store=store).answer
        assert answer.startswith(("Yes", "Not a plain")) or not answer.startswith("No"), (question, answer)


def test_a_food_that_has_it_is_never_called_safe(store: Store) -> None:
    asked = some(store, FITNESS, held=True)
    assert len(asked) > 50
    for question in asked:
        answer = ask(question, store=store).answer
        assert not answer.startswith("Yes"), (question, answer)
        if "milk of goats" not in answer:
            assert not answer.startswith("No:"), (question, answer)


def test_a_food_without_it_is_never_said_to_have_it(store: Store) -> None:
    asked = some(store, CONTENTS, held=False)
    assert len(asked) > 100
    for question in asked:
        answer = ask(question, store=store).answer
        assert not answer.startswith("Yes"), (question, answer)


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("hoisin - does it have any sesame in?", "Yes: hoisin has sesame"),
        ("i was told caesar dressing contains fish", "Yes: caesar dressing has fish"),
        ("is octopus classed as shellfish? her ladyship is allergic", "Yes: octopus has molluscs"),
        ("is oat milk dairy", "No: plain oat milk has no dairy"),
        ("is half and half dairy?", "Yes: half and half has milk"),
        ("are eggs a dairy product", "No: plain eggs have no dairy"),
        ("is tiger nut a tree nut", "No"),
        ("does naan contain egg or milk", "Not surely: naan may hold eggs"),
        ("is there gluten in seitan, tofu or polenta", "Yes: seitan has gluten"),
    ],
)
def test_the_contents_are_told_first(store: Store, text: str, begins: str) -> None:
    assert ask(text, store=store).answer.startswith(begins), ask(text, store=store).answer


@pytest.mark.parametrize(
    "text",
    [
        "can my son have milk with his antibiotics",
        "is malt vinegar ok for a coeliac",
        "what else besides soy could i use",
    ],
)
def test_another_question_is_no_question_of_contents(store: Store, text: str) -> None:
    assert not ask(text, store=store).answer.startswith("Yes")


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("stirred peanut butter into the coleslaw, peanut allergy, ok to eat?", "peanut butter has peanuts"),
        ("is a fruit salad with walnuts ok for someone allergic to nuts", "walnuts have tree nuts"),
        ("can my coeliac aunt eat adobo with soy sauce", "soy sauce has gluten"),
    ],
)
def test_a_food_named_with_the_dish_decides(store: Store, text: str, names: str) -> None:
    answer = ask(text, store=store).answer
    assert answer.startswith("No, not safe"), answer
    assert names in answer


def test_what_bars_it_is_named_and_nothing_is_both_had_and_perhaps_held(store: Store) -> None:
    assert "animal origin" in ask("is chicken stock vegan", store=store).answer
    assert ask("is soy sauce tree nut free", store=store).answer.startswith("Not surely: soy sauce has")
    for text in ("is there mustard in curry powder", "does kimchi have fish", "does margarine contain milk"):
        told = ask(text, store=store).answer
        _, _, perhaps = told.partition("may also hold")
        assert not any(word in perhaps for word in ("mustard", "fish", "milk")), told


@pytest.mark.parametrize(
    ("text", "names"),
    [
        ("dried mealworms for someone allergic to prawns, ok?", "crustaceans"),
        ("is vegan cheese fine with a cashew allergy", "tree nuts"),
        ("can someone with a wheat allergy have rye bread flour or barley", "Not surely: barley"),
        ("is zurek gluten free", "gluten"),
    ],
)
def test_kin_and_what_is_often_made_with_it_are_told(store: Store, text: str, names: str) -> None:
    answer = ask(text, store=store).answer
    assert names in answer, answer
    assert not answer.startswith("Yes")


def test_a_certificate_is_not_known_here(store: Store) -> None:
    assert not ask("has the butcher got this mutton halal certified", store=store).known
    assert "slaughtered by that rule" in ask("is mutton halal", store=store).answer
    assert ask("is worcestershire sauce kosher", store=store).answer.startswith("Not surely")


def test_a_refused_stand_in_is_followed_by_one_that_fits(store: Store) -> None:
    answer = ask("my cousin is allergic to peanuts, cashew butter instead?", store=store).answer
    assert answer.startswith("No, not safe")
    assert "sunflower seed" in answer
