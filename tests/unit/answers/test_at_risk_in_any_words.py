"""Eaters at risk: raw egg, listeria, raw milk and what is kept under oil, in whatever words they are told.

Figures and lists: USDA FSIS safe minimum temperatures, FDA and CDC on listeria, NHS on foods to avoid
in pregnancy and with weak immunity, CDC on garlic in oil.
"""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    "text",
    [
        "semifreddo with raw eggs for my expecting cousin, what else could i do",
        "can i have chocolate mousse while pregnant",
        "zabaglione for my nan of 90, ok?",
        "royal icing with raw egg whites for a kids party, what instead?",
        "is eggnog allowed on chemo",
        "hollandaise when pregnant?",
    ],
)
def test_a_dish_of_raw_egg_for_who_is_at_risk_is_heated_or_of_pasteurised_egg(
    store: Store, text: str
) -> None:
    answer = ask(text, store=store).answer
    assert re.search("raw egg.*71 °C.*pasteurised egg", answer), answer


@pytest.mark.parametrize(
    ("text", "other"),
    [
        ("how long does home-made mayonnaise keep, grandma asks", "same day"),
        ("what can i use instead of raw eggs in mousse, vegan guest", "Instead of|Without|Vegan|egg"),
        ("egg free mousse for a pregnant friend with an egg allergy", "egg"),
    ],
)
def test_who_asks_something_else_of_it_gets_that(store: Store, text: str, other: str) -> None:
    answer = ask(text, store=store).answer
    assert "Not with plain raw egg" not in answer
    assert re.search(other, answer), answer


@pytest.mark.parametrize(
    "text",
    [
        "my uncle has a new kidney, may he eat camembert",
        "can she have cold cuts during chemo",
        "no spleen: is melon or pate fine",
        "is salami ok for my old mother",
        "on methotrexate, smoked trout on toast?",
    ],
)
def test_weak_immunity_of_any_cause_has_the_list_of_listeria(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert re.search("listeria.*deli meat.*74 °C.*pate.*sprouts.*melon", answer), answer


@pytest.mark.parametrize(
    "text",
    ["how do i roast a ham for my grandma", "does bacon or ham cause cancer"],
)
def test_the_list_is_not_for_other_questions(store: Store, text: str) -> None:
    assert "listeria" not in ask(text, store=store).answer


@pytest.mark.parametrize(
    "text",
    [
        "whole cloves of garlic submerged in olive oil, two weeks in the larder",
        "aubergines and chillies packed in olive oil, shelf life in the pantry",
        "rosemary twigs with oil in the cupboard, still good?",
        "peppers under a layer of oil, cellar, may we eat them",
    ],
)
def test_what_is_kept_under_oil_out_of_the_fridge_is_thrown_away(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert re.search("botulism.*fridge.*thrown away untasted", answer), answer


@pytest.mark.parametrize(
    "text",
    [
        "our neighbour brings milk straight from his cow, is it ok for my 2 year old",
        "the goat was just milked, may the little one drink it",
        "is milk from our cow fine for a baby",
    ],
)
def test_milk_straight_from_the_animal_is_raw_milk(store: Store, text: str) -> None:
    assert re.search("^Raw milk.*not raw for children", ask(text, store=store).answer)


@pytest.mark.parametrize(
    "text",
    [
        "what did i put in the soup on monday",
        "where did we buy that cheese",
        "will my brother like the lentil bake",
        "what did my aunt use in her pickles",
    ],
)
def test_what_was_done_at_home_and_what_people_like_is_not_known(store: Store, text: str) -> None:
    assert not ask(text, store=store).known
