"""Allergens and their kin, the foods a sentence names, and what a note bars."""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.answers.eaters.eaters import ruled_out
from knowledge.answers.eaters.kinship import akin_to, are_shellfish, wider_of_diets, wider_of_foods
from knowledge.answers.eaters.uncertain import needs_label, ways_barred_by_note
from knowledge.answers.reading.naming import foods_in
from knowledge.foods.columns import ALLERGEN
from knowledge.foods.store import Store


def test_every_allergen_of_the_foods_has_a_diet(store: Store) -> None:
    for allergen in ALLERGEN.words:
        tokens, problems = ruled_out({"allergens": [allergen]}, store=store)
        assert len(tokens) == 1, allergen
        assert not problems


@pytest.mark.parametrize(
    ("food", "wider"), [("pecan", ["no nuts"]), ("crab", ["no shellfish"]), ("carrot", [])]
)
def test_who_reacts_to_one_is_kept_from_its_whole_kind(food: str, wider: list[str], store: Store) -> None:
    named = store.named(food)
    assert named is not None
    assert list(dict.fromkeys(wider_of_foods([named], store))) == wider


def test_a_narrow_diet_is_taken_for_the_wider_one(store: Store) -> None:
    assert wider_of_diets(["no mollusc", "vegan"], store) == ["no shellfish"]


def test_kin_is_free_of_it_and_named_all_the_same(store: Store) -> None:
    mussel, salmon = store.named("mussel"), store.named("salmon")
    assert mussel is not None
    assert salmon is not None
    assert akin_to(mussel, "no crustacean", store)
    assert not akin_to(salmon, "no crustacean", store)
    assert are_shellfish(mussel.allergens, store)
    assert not are_shellfish(salmon.allergens, store)


def test_a_food_is_named_by_its_longest_name(store: Store) -> None:
    said = [food.name for food in foods_in("Stir in coconut milk, then the butter.", store)]
    assert said == ["coconut milk", "butter"]
    assert foods_in("", store) == []


def test_a_word_of_a_note_bars_a_way_of_eating(store: Store) -> None:
    assert ways_barred_by_note("a hard cheese, often with rennet", store) == {"vegetarian", "vegan"}
    assert not ways_barred_by_note("a hard cheese", store)


def test_a_label_is_asked_after_for_an_allergy_not_for_a_way_of_eating(store: Store) -> None:
    food = replace(store.food("salt"), does="may hold egg, see the label")
    assert needs_label(food, "no egg", store)
    assert not needs_label(food, "vegan", store)
    assert not needs_label(food, "no celery", store)
