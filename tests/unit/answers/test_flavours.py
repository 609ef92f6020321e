"""Families of flavour for what is there."""

from __future__ import annotations

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge import diets
from knowledge.answers import ask
from knowledge.flavours import families_for
from knowledge.foods.store import Store, open_store

STORE = open_store()
DIETS = ["vegan", "vegetarian", "halal", "no dairy", "no nuts", "no gluten", "not spicy", "no sesame", "jain"]


def ids(family: object) -> list[str]:
    return [i for layer in ("aromatics", "spices", "acids", "finish") for i in getattr(family, layer)]


def test_there_are_more_than_a_dozen(store: Store) -> None:
    assert len(families_for([], store=store)) >= 12


def test_what_is_at_hand_decides(store: Store) -> None:
    assert families_for(["gochujang", "sesame-oil"], store=store)[0].id.startswith("korean")
    assert "coconut" in families_for(["coconut-milk", "lemongrass", "fish-sauce"], store=store)[0].id


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.sampled_from(DIETS), max_size=3, unique=True),
    st.lists(st.sampled_from(["garlic", "cilantro", "peanut", "milk"]), max_size=2, unique=True),
)
def test_no_family_names_what_is_barred(rules: list[str], excluded: list[str]) -> None:
    for family in families_for(["onion", "rice"], diets=rules, excluded=excluded, store=STORE):
        for food_id in ids(family):
            food = STORE.food(food_id)
            assert not diets.barred_by(food, rules)
            assert not diets.barred_by(food, [f"no {name}" for name in excluded])


def test_an_id_that_is_not_in_the_tables_changes_nothing(store: Store) -> None:
    assert families_for(["flonkroot"], store=store) == families_for([], store=store)


def test_herbs_or_spices_are_named_alone_when_asked_for(store: Store) -> None:
    def kinds_named(text: str) -> set[str]:
        listed = ask(text, store=store).answer.split(": ")[1].split(".")[0]
        foods = [store.named(name) for name in listed.split(", ")]
        return {food.group for food in foods if food is not None}

    assert kinds_named("which herbs suit trout?") == {"herb"}
    assert kinds_named("what spices go with chickpeas") == {"spice"}


def test_a_pairing_keeps_to_what_the_eaters_may_have(store: Store) -> None:
    said = ask("what goes with squash", store=store, ruled_out=("vegan",)).answer
    assert not {"butter", "yogurt", "fish sauce"} & {*re.split(r"[(),;:.] ?", said)}
