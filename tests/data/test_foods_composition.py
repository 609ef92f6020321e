"""Foods against published composition: USDA National Nutrient Database for Standard Reference.

Water in g per 100 g, release 27 (2014) and 28 (2015), public domain; the number is the
database's own: `usda_water.csv`, all foods that both have.
"""

from __future__ import annotations

import csv
from pathlib import Path

from knowledge.foods import columns
from knowledge.foods.store import Store

HERE = Path(__file__).parent


def water_rows() -> list[dict[str, str]]:
    """food_id, usda_id, water_g: every food that the database has, its own row and figure."""
    with (HERE / "usda_water.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_water_is_within_3_g_for_95_of_100_foods(store: Store) -> None:
    rows = water_rows()
    assert len(rows) >= 400
    off = {}
    for row in rows:
        composition = store.food(row["food_id"]).composition
        assert composition is not None, row
        if abs(composition.water_g - float(row["water_g"])) > 3:
            off[row["food_id"]] = composition.water_g
    assert len(off) <= 0.05 * len(rows), off


def test_a_composition_that_is_not_from_memory_names_its_row(store: Store) -> None:
    memory = 0
    for food in store.foods():
        source = dict(food.sources).get("water_g")
        if source in ("USDA-SR", "S-USDA", "EST-COMP"):
            assert food.composition_of[:5].isdecimal(), food.id
        memory += source == "MEM-COMP"
    assert memory <= 80


def test_like_foods_have_like_compositions(store: Store) -> None:
    """What any table of foods agrees on, by kind; g per 100 g of raw, edible food."""
    kinds = {
        "tender leaf": ("water_g", 78, 97),
        "summer squash": ("water_g", 85, 97),
        "white fish": ("protein_g", 12, 30),
        "rice": ("carbohydrate_g", 60, 85),
        "pasta": ("carbohydrate_g", 50, 80),
        "mushroom": ("fat_g", 0, 1.6),
        "oily fish": ("carbohydrate_g", 0, 3.5),
    }
    for food in store.foods():
        fresh = food.role == "cook" and food.start_state != "dry"  # not salt cod, not dried mushrooms
        if food.group in kinds and food.composition and (fresh or food.group in ("rice", "pasta")):
            column, low, high = kinds[food.group]
            assert low <= getattr(food.composition, column) <= high, (food.id, column)


def test_fibre_is_part_of_the_carbohydrate(store: Store) -> None:
    for food in store.foods():
        if food.composition:
            assert food.composition.fibre_g <= food.composition.carbohydrate_g + 0.05, food.id


def test_nearly_every_food_that_cooks_has_a_composition_and_most_are_published(store: Store) -> None:
    cooking = [food for food in store.foods() if food.role == "cook"]
    sources = [dict(food.sources).get(columns.COMPOSITION[0]) for food in cooking]
    assert None not in sources
    assert sum(source == "USDA-SR" for source in sources) >= 0.5 * len(sources)
