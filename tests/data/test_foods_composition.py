"""Foods against published composition: USDA National Nutrient Database for Standard Reference.

Water in g per 100 g, release 27 (2014) and 28 (2015), public domain; the number is the
database's own. Every seventh of the foods that the database has, in order of id.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from knowledge.foods import columns
from knowledge.foods.build import build
from knowledge.foods.store import Store

WATER_G = {
    "abalone": 74.56,  # 15155 Mollusks, abalone, mixed species, raw
    "apple": 85.56,  # 09003 Apples, raw, with skin
    "baby-back-rib": 63.47,  # 10192 Pork, fresh, backribs, separable lean and fat, raw
    "barley": 10.09,  # 20005 Barley, pearled, raw
    "beet": 87.58,  # 11080 Beets, raw
    "blackberry": 88.15,  # 09042 Blackberries, raw
    "borlotti-bean": 12.39,  # 16019 Beans, cranberry (roman), mature seeds, raw
    "bulgur": 9,  # 20012 Bulgur, dry
    "cannellini-bean": 11.32,  # 16049 Beans, white, mature seeds, raw
    "celery-root": 88,  # 11141 Celeriac, raw
    "chicken-breast": 73.9,  # 05062 Chicken, broiler or fryers, breast, skinless, boneless, meat
    "chickpea": 7.68,  # 16056 Chickpeas (garbanzo beans, bengal gram), mature seeds, raw
    "collard-greens": 89.62,  # 11161 Collards, raw
    "couscous": 8.56,  # 20028 Couscous, dry
    "cuttlefish": 80.56,  # 15163 Mollusks, cuttlefish, mixed species, raw
    "duck-egg": 70.83,  # 01138 Egg, duck, whole, fresh, raw
    "enoki-mushroom": 88.34,  # 11950 Mushrooms, enoki, raw
    "fig": 79.11,  # 09089 Figs, raw
    "french-fry": 66.61,  # 11402 Potatoes, french fried, all types, salt added in processing,
    "frozen-cauliflower": 92.51,  # 11137 Cauliflower, frozen, unprepared
    "frozen-pepper-strip": 93.96,  # 11917 Peppers, sweet, red, frozen, chopped, unprepared
    "grape": 80.54,  # 09132 Grapes, red or green (European type, such as Thompson seedle
    "ground-chicken": 73.24,  # 05332 Chicken, ground, raw
    "halibut": 80.34,  # 15036 Fish, halibut, Atlantic and Pacific, raw
    "italian-sausage": 51.08,  # 07036 Sausage, Italian, pork, raw
    "kidney": 77.89,  # 13323 Beef, variety meats and by-products, kidneys, raw
    "lamb-leg": 74.11,  # 17013 Lamb, domestic, leg, whole (shank and sirloin), separable le
    "leftover-rice": 68.44,  # 20045 Rice, white, long-grain, regular, enriched, cooked
    "mackerel": 63.55,  # 15046 Fish, mackerel, Atlantic, raw
    "millet": 8.67,  # 20031 Millet, raw
    "mustard-greens": 90.7,  # 11270 Mustard greens, raw
    "nopal": 94.12,  # 11963 Nopales, raw
    "oyster-mushroom": 89.18,  # 11987 Mushrooms, oyster, raw
    "peach": 88.87,  # 09236 Peaches, yellow, raw
    "pineapple": 86,  # 09266 Pineapple, raw, all varieties
    "pork-belly": 36.74,  # 10005 Pork, fresh, belly, raw
    "pork-tenderloin": 74.97,  # 10218 Pork, fresh, loin, tenderloin, separable lean and fat, raw
    "quince": 83.8,  # 09296 Quinces, raw
    "red-cabbage": 90.39,  # 11112 Cabbage, red, raw
    "rohu": 76.31,  # 15008 Fish, carp, raw
    "sauerkraut": 92.52,  # 11439 Sauerkraut, canned, solids and liquids
    "semolina": 12.67,  # 20066 Semolina, enriched
    "skirt-steak": 65.6,  # 23169 Beef, plate steak, boneless, outside skirt, separable lean o
    "spaghetti-squash": 91.6,  # 11492 Squash, winter, spaghetti, raw
    "sticky-rice": 10.46,  # 20054 Rice, white, glutinous, unenriched, uncooked
    "sweet-potato-fry": 60.59,  # 31024 Sweet Potatoes, french fried, crosscut, frozen, unprepared
    "teff": 8.82,  # 20142 Teff, uncooked
    "tri-tip": 72.41,  # 23646 Beef, bottom sirloin, tri-tip roast, separable lean only, tr
    "turkey-thigh": 71.28,  # 05742 Turkey, retail parts, thigh, meat and skin, raw
    "wakame": 79.99,  # 11669 Seaweed, wakame, raw
    "whole-turkey": 72.69,  # 05165 Turkey, whole, meat and skin, raw
    "yam": 69.6,  # 11601 Yam, raw
}


@pytest.fixture(scope="module")
def store(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Store]:
    path: Path = tmp_path_factory.mktemp("knowledge") / "k.sqlite"
    build(path)
    with Store(path) as opened:
        yield opened


def test_water_is_within_3_g_for_95_of_100_foods(store: Store) -> None:
    off = {}
    for food_id, water_g in WATER_G.items():
        composition = store.food(food_id).composition
        assert composition is not None, food_id
        if abs(composition.water_g - water_g) > 3:
            off[food_id] = composition.water_g
    assert len(off) <= 0.05 * len(WATER_G), off


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
