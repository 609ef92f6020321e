"""Allergens by kind of food, against the published lists.

US: FALCPA (2004) and FASTER Act (2021), nine foods. EU and UK: Regulation (EU) 1169/2011,
annex II, fourteen. What each category covers is the lists' own wording or their guidance.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store

BY_GROUP = {
    "white fish": {"fish"},
    "oily fish": {"fish"},
    "smoked fish": {"fish"},
    "prepared fish": {"fish"},
    "tinned fish": {"fish"},
    "crustacean": {"crustaceans"},
    "mollusc": {"molluscs"},
    "egg": {"eggs"},
    "cheese that cooks": {"milk"},
}


def test_every_food_of_an_allergen_group_carries_it(store: Store) -> None:
    for food in store.foods():
        assert BY_GROUP.get(food.group, set()) <= food.allergens, food.id


def test_every_animal_food_of_an_allergen_kind_carries_it(store: Store) -> None:
    kinds = {"fish": {"fish"}, "shellfish": {"crustaceans", "molluscs"}, "egg": {"eggs"}, "dairy": {"milk"}}
    for food in store.foods():
        if food.animal in kinds:
            assert kinds[food.animal] & food.allergens, food.id


GRAINS_WITH_GLUTEN = (
    "wheat", "rye", "barley", "oat", "spelt", "farro", "bulgur", "couscous", "freekeh", "semolina",
    "triticale", "seitan", "udon", "ramen", "soba", "spaghetti", "macaroni", "lasagna", "orzo", "penne",
)  # fmt: skip


def test_cereals_with_gluten_are_marked_and_wheat_too(store: Store) -> None:
    free = {"gluten-free-pasta", "buckwheat", "spaghetti-squash"}
    for food in store.foods():
        cereal = any(grain in food.name.split() for grain in GRAINS_WITH_GLUTEN)
        if food.role == "cook" and cereal and food.id not in free:
            assert "gluten" in food.allergens, food.id
        if "wheat" in food.allergens:
            assert "gluten" in food.allergens, food.id
    for food in store.foods():
        if food.group in ("pasta", "dumpling") and food.id not in {*free, "rice-cake"}:
            assert {"wheat", "gluten"} <= food.allergens, food.id


@pytest.mark.parametrize(
    ("name", "allergens"),
    [
        ("couscous", {"wheat", "gluten"}),
        ("barley", {"gluten"}),
        ("oats", {"gluten"}),
        ("seitan", {"wheat", "gluten"}),
        ("tofu", {"soybeans"}),
        ("tempeh", {"soybeans"}),
        ("edamame", {"soybeans"}),
        ("soy sauce", {"soybeans", "wheat"}),
        ("miso", {"soybeans"}),
        ("fish sauce", {"fish"}),
        ("worcestershire sauce", {"fish"}),
        ("shrimp paste", {"crustaceans"}),
        ("oyster sauce", {"molluscs"}),
        ("dried shrimp", {"crustaceans"}),
        ("tahini", {"sesame"}),
        ("sesame oil", {"sesame"}),
        ("ghee", {"milk"}),
        ("butter", {"milk"}),
        ("paneer", {"milk"}),
        ("halloumi", {"milk"}),
        ("mayonnaise", {"eggs"}),
        ("egg noodle", {"eggs", "wheat"}),
        ("fresh pasta", {"eggs", "wheat"}),
        ("almond", {"tree nuts"}),
        ("cashew", {"tree nuts"}),
        ("walnut", {"tree nuts"}),
        ("pesto", {"milk", "tree nuts"}),
        ("peanut butter", {"peanuts"}),
        ("celery", {"celery"}),
        ("celeriac", {"celery"}),
        ("mustard", {"mustard"}),
        ("mustard greens", {"mustard"}),
        ("lupin bean", {"lupin"}),
        ("dried apricot", {"sulphites"}),
        ("white wine", {"sulphites"}),
        ("mussel", {"molluscs"}),
        ("squid", {"molluscs"}),
        ("octopus", {"molluscs"}),
        ("snail", {"molluscs"}),
        ("crab", {"crustaceans"}),
        ("crab stick", {"fish"}),
        ("mixed seafood", {"crustaceans", "molluscs", "fish"}),
        ("naan", {"wheat", "gluten"}),
        ("stuffing", {"wheat", "gluten"}),
    ],
)
def test_a_food_carries_the_allergens_of_the_lists(store: Store, name: str, allergens: set[str]) -> None:
    food = store.named(name)
    assert food is not None
    assert allergens <= food.allergens


@pytest.mark.parametrize(
    "name",
    ["carrot", "rice", "quinoa", "potato", "chicken thigh", "lentil", "buckwheat", "polenta", "coconut milk"],
)
def test_a_plain_food_has_none(store: Store, name: str) -> None:
    food = store.named(name)
    assert food is not None
    assert not food.allergens
