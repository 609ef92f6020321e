"""How long foods keep: never longer than the most cautious authority that we cite.

USDA FSIS food storage open data, version 128 (2018), lower end of each range; leftovers and
cooked rice after UK Food Standards Agency advice (two days; rice one day).
"""

from __future__ import annotations

import pytest

from knowledge.foods.model import Role
from knowledge.foods.store import Store

# (food, refrigerator days, freezer months): FSIS rows, lower end; None where it prints none.
FSIS = [
    ("chicken breast", 1, 9), ("chicken thigh", 1, 9), ("whole chicken", 1, 12), ("whole turkey", 1, 12),
    ("ground turkey", 1, 3), ("chicken liver", 1, 3), ("whole duck", 1, 6), ("goose", 1, 6), ("quail", 1, 6),
    ("steak", 3, 4), ("chuck roast", 3, 4), ("brisket", 3, 4), ("stew beef", 3, 4), ("ground beef", 1, 3),
    ("lamb chop", 3, 4), ("lamb shank", 3, 4), ("ground lamb", 1, 3), ("goat", 3, 4), ("veal", 3, 4),
    ("pork chop", 3, 4), ("pork tenderloin", 3, 4), ("pork shoulder", 3, 4), ("pork rib", 3, 4),
    ("ground pork", 1, 3), ("beef liver", 1, 3), ("tongue", 1, 3), ("bacon", 7, 1), ("ham", 3, 1),
    ("corned beef", 5, 1), ("frankfurter", 7, 1), ("kielbasa", 7, 1), ("sausage", 1, 1), ("chorizo", 1, 1),
    ("bratwurst", 2, 2), ("rabbit", 2, 9), ("cod", 1, 6), ("haddock", 1, 6), ("halibut", 1, 6),
    ("pollock", 1, 4), ("rockfish", 1, 4), ("mackerel", 1, 2), ("salmon", 1, 2), ("catfish", 1, 2),
    ("shrimp", 1, 6), ("squid", 1, 6), ("scallop", 1, 6), ("mussel", 1, 2), ("clam", 1, 2), ("oyster", 1, 2),
    ("crab meat", 1, 2), ("egg", 21, None), ("egg white", 2, 12), ("tofu", 7, 5), ("fresh pasta", 1, 2),
    ("asparagus", 3, 5), ("beet", 7, 6), ("bok choy", 2, 10), ("broccoli", 3, 10), ("brussels sprout", 3, 10),
    ("cabbage", 7, 10), ("carrot", 14, 10), ("cauliflower", 3, 10), ("celery", 7, 10), ("corn", 1, 8),
    ("eggplant", 4, 6), ("garlic", 3, 1), ("collard greens", 1, 10), ("kale", 3, 8), ("leek", 7, 10),
    ("spinach", 3, None), ("mushroom", 3, 10), ("okra", 2, 10), ("scallion", 7, 10), ("bell pepper", 4, 6),
    ("potato", 7, 10), ("rutabaga", 14, 8), ("turnip", 14, 8), ("zucchini", 4, 10), ("taro", 2, None),
    ("cassava", 3, 1), ("green bean", 3, 8), ("kohlrabi", 7, 8), ("celery root", 7, None),
    ("swiss chard", 7, None), ("cherry tomato", 5, None), ("peach", 3, 2), ("blueberry", 7, 8),
    ("grape", 7, 1),
    ("edamame", 4, None),
]  # fmt: skip


@pytest.mark.parametrize(("name", "days", "months"), FSIS, ids=[row[0] for row in FSIS])
def test_a_food_keeps_no_longer_than_fsis_says(
    store: Store, name: str, days: float, months: float | None
) -> None:
    food = store.named(name)
    assert food is not None
    assert food.fridge_days is not None
    assert food.fridge_days <= days
    if months is not None:
        assert (food.freezer_months or 0) <= months


def test_raw_meat_fish_and_mince_follow_their_kind(store: Store) -> None:
    longest = {"white fish": 1, "oily fish": 1, "crustacean": 1, "mollusc": 1, "poultry": 1, "offal": 1}
    for food in store.foods():
        if food.start_state != "fridge" or food.role is not Role.COOK or food.doneness == "warm_through":
            continue
        if food.group in longest:
            assert (food.fridge_days or 0) <= longest[food.group], food.id
        if food.doneness == "ground_meat" and food.group in ("beef", "pork", "lamb", "game", "veal"):
            assert (food.fridge_days or 0) <= 1, food.id


def test_cooked_food_keeps_two_days_and_cooked_grain_one(store: Store) -> None:
    for food in store.foods():
        if food.role is Role.COOK and food.cooked_days is not None:
            assert food.cooked_days <= 2, food.id
            if food.group in ("rice", "grain", "pasta", "noodle"):
                assert food.cooked_days <= 1, food.id


def test_dry_goods_are_not_said_to_keep_in_the_refrigerator(store: Store) -> None:
    for food in store.foods():
        if food.role is Role.COOK and food.start_state == "dry":
            assert food.fridge_days is None, food.id


@pytest.mark.parametrize(
    ("name", "word"),
    [
        ("kidney bean", "poison"),
        ("cassava", "poison"),
        ("cassava leaf", "poison"),
        ("taro", "cook it through"),
        ("taro leaf", "cooked"),
        ("morel", "poison"),
        ("wild mushroom", "never cook wild mushrooms"),
        ("ackee", "poison"),
        ("rhubarb", "poison"),
        ("fiddlehead fern", "poison"),
        ("bamboo shoot", "poison"),
        ("lupin bean", "poison"),
        ("fava bean", "favism"),
        ("bean sprout", "germs"),
        ("mussel", "shut"),
        ("nettle", "stings"),
        ("leftover rice", "one day"),
    ],
)
def test_what_can_harm_says_so(store: Store, name: str, word: str) -> None:
    food = store.named(name)
    assert food is not None
    assert word in food.notes


def test_raw_animal_foods_have_a_published_safe_minimum(store: Store) -> None:
    ready = ("warm_through", "cured", "none")  # safe as sold
    for food in store.foods():
        raw = food.animal and food.role is Role.COOK and food.doneness not in ready
        if raw and food.start_state != "dry" and food.id != "suet-dumpling":
            assert food.safety, food.id
            assert any(row["id"] == food.safety for row in store.table("safe_minimums")), food.id


def test_poultry_and_mince_have_their_own_minimum(store: Store) -> None:
    for food in store.foods():
        if food.role is Role.COOK and food.animal == "poultry" and food.doneness != "warm_through":
            assert food.safety == "poultry", food.id
        if food.doneness == "ground_meat" and food.animal in ("beef", "pork", "lamb", "game", "goat"):
            assert food.safety == "ground_meat", food.id
