"""Which published minimum each kind of raw food follows.

Core temperatures: USDA FSIS food-safety open data, version 128 (2018), public domain, rows with a
`safe_min_temp`; offal: FSANZ and FSIS consumer advice. °C as printed beside the °F.
"""

from __future__ import annotations

import pytest

from knowledge.foods.model import Role
from knowledge.foods.store import Store

READY = ("warm_through", "cured", "none")  # safe as sold


def minimum_degC(store: Store, name: str) -> float:
    food = store.named(name)
    assert food is not None, name
    rows = [row for row in store.table("safe_minimums") if row["id"] == food.safety]
    return next(float(row["core_degC"]) for row in rows if row["authority"] == "USDA FSIS")


# Products of the open data, by the name a cook uses.
FSIS = [
    ("beef rib roast", 62.8), ("steak", 62.8), ("chuck roast", 62.8), ("brisket", 62.8), ("stew beef", 62.8),
    ("beef short rib", 62.8), ("ground beef", 71.1), ("lamb leg", 62.8), ("lamb chop", 62.8),
    ("lamb shank", 62.8), ("ground lamb", 71.1), ("veal", 62.8), ("ground veal", 71.1), ("pork loin", 62.8),
    ("pork chop", 62.8), ("pork tenderloin", 62.8), ("pork rib", 62.8), ("pork shoulder", 62.8),
    ("ground pork", 71.1), ("venison", 71.1), ("ground venison", 71.1), ("ground goat", 71.1), ("ham", 60.0),
    ("whole chicken", 73.9), ("whole turkey", 73.9), ("ground turkey", 73.9), ("chicken breast", 73.9),
    ("chicken thigh", 73.9), ("turkey breast", 73.9), ("whole duck", 73.9), ("goose", 73.9),
    ("pheasant", 73.9), ("quail", 73.9), ("capon", 73.9), ("cornish hen", 73.9), ("cod", 62.8),
    ("flounder", 62.8), ("haddock", 62.8), ("halibut", 62.8), ("pollock", 62.8), ("rockfish", 62.8),
    ("bluefish", 62.8), ("catfish", 62.8), ("mackerel", 62.8), ("mullet", 62.8), ("salmon", 62.8),
    ("tuna", 62.8), ("chicken nugget", 73.9),
]  # fmt: skip


@pytest.mark.parametrize(("name", "degC"), FSIS, ids=[name for name, _ in FSIS])
def test_a_food_follows_the_printed_minimum(store: Store, name: str, degC: float) -> None:
    assert minimum_degC(store, name) == degC


LEAST = {
    "game": 71.1, "offal": 71.1, "poultry": 73.9, "beef": 62.8, "veal": 62.8, "lamb": 62.8, "goat": 62.8,
    "pork": 62.8, "white fish": 62.8, "oily fish": 62.8, "crustacean": 62.8, "mollusc": 62.8, "egg": 71.1,
    "amphibian": 62.8,
}  # fmt: skip


def test_no_raw_food_of_a_group_goes_below_the_group_s_minimum(store: Store) -> None:
    for food in store.foods():
        raw = food.role is Role.COOK and food.doneness not in READY
        if food.group in LEAST and raw:
            rows = [row for row in store.table("safe_minimums") if row["id"] == food.safety]
            assert rows, food.id
            assert max(float(row["core_degC"]) for row in rows) >= LEAST[food.group], food.id
            lead = next(row for row in rows if row["authority"] == "USDA FSIS")
            assert float(lead["core_degC"]) >= LEAST[food.group], food.id


def test_no_target_of_a_food_lies_below_its_minimum(store: Store) -> None:
    for food in store.foods():
        if food.target_degC is not None and food.safety:
            lead = next(
                row
                for row in store.table("safe_minimums")
                if row["id"] == food.safety and row["authority"] == "USDA FSIS"
            )
            assert food.target_degC >= float(lead["core_degC"]), food.id


def test_minced_sausage_and_raw_cured_kinds_are_not_taken_for_whole_meat(store: Store) -> None:
    for food in store.foods():
        if food.doneness == "sausage":
            assert food.safety in ("ground_meat", "poultry"), food.id
        if food.role is Role.COOK and food.group == "leftover":
            assert food.safety == "leftover", food.id
