"""What a piece weighs, against the household measures of USDA SR28 (2015), file WEIGHT, public domain.

Every second one of the measures that mean the same unit as ours, and every second one
of those where we differ on purpose: USDA's "fillet" of a big fish is a whole side.
"""

from __future__ import annotations

import math

from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store

# food, unit, size, grams
WEIGHTS = [
    ("amaranth-leaves", "leaf", "", 14),
    ("apple", "piece", "", 182),
    ("apricot", "piece", "", 35),
    ("arrowhead", "piece", "", 12),
    ("artichoke", "piece", "large", 162),
    ("asparagus", "piece", "medium", 16),
    ("banana", "piece", "small", 81),
    ("banana", "piece", "", 118),
    ("banana-pepper", "piece", "large", 75),
    ("banana-pepper", "piece", "small", 33),
    ("beef-short-rib", "piece", "", 432),
    ("beef-tenderloin", "piece", "", 644),
    ("beet", "piece", "", 82),
    ("belgian-endive", "head", "", 53),
    ("bell-pepper", "piece", "large", 164),
    ("bell-pepper", "piece", "small", 74),
    ("bitter-melon", "piece", "", 124),
    ("bok-choy", "head", "", 840),
    ("boneless-pork-chop", "piece", "", 170),
    ("broccoli", "stalk", "", 151),
    ("brussels-sprout", "piece", "", 19),
    ("cabbage", "head", "large", 1248),
    ("cabbage", "head", "medium", 908),
    ("carrot", "piece", "large", 72),
    ("carrot", "piece", "small", 50),
    ("catfish", "fillet", "", 159),
    ("cauliflower", "head", "large", 840),
    ("cauliflower", "head", "small", 265),
    ("celery", "piece", "", 40),
    ("chanterelle", "piece", "", 5.4),
    ("cherry", "piece", "", 8.2),
    ("chicken-breast", "piece", "", 272),
    ("chicken-drumstick", "piece", "", 130),
    ("chicken-thigh", "piece", "", 193),
    ("clam", "piece", "large", 20),
    ("clam", "piece", "small", 9),
    ("cod", "fillet", "", 231),
    ("corn", "ear", "medium", 102),
    ("cornish-hen", "piece", "", 336),
    ("crayfish", "piece", "", 3.375),
    ("cucumber", "piece", "", 301),
    ("daikon", "piece", "", 338),
    ("dried-shiitake", "piece", "", 3.6),
    ("eel", "fillet", "", 204),
    ("egg", "piece", "jumbo", 63),
    ("egg", "piece", "large", 50),
    ("egg", "piece", "small", 38),
    ("eggplant", "piece", "", 548),
    ("fava-bean", "piece", "", 8),
    ("fennel", "piece", "", 234),
    ("fig", "piece", "", 50),
    ("flank-steak", "piece", "", 188),
    ("frog-leg", "piece", "", 45),
    ("garlic", "clove", "", 3),
    ("green-tomato", "piece", "", 123),
    ("grouper", "fillet", "", 259),
    ("halibut", "fillet", "", 408),
    ("herring", "fillet", "", 184),
    ("italian-sausage", "piece", "", 113),
    ("jalapeno", "piece", "", 14),
    ("jicama", "piece", "", 659),
    ("kielbasa", "piece", "", 396),
    ("kiwi", "piece", "", 69),
    ("leek", "piece", "", 89),
    ("lotus-root", "piece", "", 115),
    ("malanga", "piece", "", 305),
    ("melon", "piece", "", 552),
    ("mullet", "fillet", "", 119),
    ("mushroom", "piece", "large", 23),
    ("mushroom", "piece", "small", 10),
    ("mussel", "piece", "", 16),
    ("nectarine", "piece", "large", 156),
    ("nectarine", "piece", "small", 129),
    ("okra", "piece", "", 11.875),
    ("onion", "piece", "medium", 110),
    ("orange", "piece", "small", 96),
    ("oyster", "piece", "", 50),
    ("papaya", "piece", "large", 781),
    ("peach", "piece", "", 150),
    ("pear", "piece", "large", 230),
    ("pear", "piece", "small", 148),
    ("pike", "fillet", "", 396),
    ("pineapple", "piece", "", 905),
    ("plum", "piece", "", 66),
    ("pollock", "fillet", "", 386),
    ("potato", "piece", "medium", 213),
    ("quail-egg", "piece", "", 9),
    ("radish", "piece", "", 4.5),
    ("raspberry", "piece", "", 1.9),
    ("red-cabbage", "head", "large", 1134),
    ("red-cabbage", "piece", "", 839),
    ("romanesco", "head", "large", 511),
    ("romanesco", "head", "small", 325),
    ("russet-potato", "piece", "large", 369),
    ("russet-potato", "piece", "small", 170),
    ("rutabaga", "piece", "medium", 386),
    ("scallion", "piece", "large", 25),
    ("scallion", "piece", "small", 5),
    ("sea-bass", "fillet", "", 129),
    ("silken-tofu", "block", "", 450),
    ("skirt-steak", "piece", "", 266),
    ("snow-pea", "piece", "", 3.4),
    ("spinach", "bunch", "", 340),
    ("squash-blossom", "piece", "", 2),
    ("steak", "piece", "", 608),
    ("strawberry", "piece", "large", 18),
    ("strawberry", "piece", "small", 7),
    ("sweet-potato-leaf", "leaf", "", 16),
    ("swiss-chard", "leaf", "", 48),
    ("swordfish", "piece", "", 136),
    ("tangerine", "piece", "large", 120),
    ("tangerine", "piece", "small", 76),
    ("taro-leaf", "leaf", "", 10),
    ("tilapia", "fillet", "", 116),
    ("tofu", "block", "", 324),
    ("tomatillo", "piece", "", 34),
    ("tomato", "piece", "large", 182),
    ("tomato", "piece", "small", 91),
    ("turkey-breast", "piece", "", 1150),
    ("turkey-thigh", "piece", "", 454),
    ("turnip", "piece", "medium", 122),
    ("water-chestnut", "piece", "", 9),
    ("watercress", "sprig", "", 2.5),
    ("whole-turkey", "piece", "", 5002),
    ("winged-bean", "piece", "", 16),
    ("wood-ear-mushroom", "piece", "", 6),
    ("yardlong-bean", "piece", "", 12),
    ("yellow-bean", "piece", "", 5.5),
    ("zucchini", "piece", "large", 323),
    ("zucchini", "piece", "small", 118),
]


def grams(food: Food, unit: str, size: str) -> float | None:
    return next((p.grams for p in food.portions if (p.unit, p.size) == (unit, size)), None)


def test_nine_of_ten_pieces_weigh_what_is_published_within_a_quarter(store: Store) -> None:
    off = []
    for food_id, unit, size, published in WEIGHTS:
        ours = grams(store.food(food_id), unit, size)
        if ours is None or not 0.75 <= ours / published <= 1.25:
            off.append((food_id, unit, size, published, ours))
    assert len(off) <= 0.1 * len(WEIGHTS), off


def test_large_weighs_more_than_medium_more_than_small(store: Store) -> None:
    for food in store.foods():
        for unit in {p.unit for p in food.portions}:
            by_size = [grams(food, unit, size) for size in ("small", "", "large")]
            known = [g for g in by_size if g is not None]
            assert known == sorted(known), (food.id, unit, by_size)


def test_a_standard_tin_of_pulses_drains_to_240_g(store: Store) -> None:
    # UK/EU standard tin 73 x 110 mm, 400 g, drained 240 g (memory); US No. 300 can 14-16 oz (CMI list).
    for food in store.foods():
        if food.group in ("pulse", "tinned pulse") and (can := grams(food, "can", "")):
            assert 200 <= can <= 440, food.id


def test_size_and_weight_of_a_piece_tell_the_same_density(store: Store) -> None:
    """Solid pieces weigh 0.6 to 1.7 times their volume in water; hollow or leafy ones are left out."""
    volume = {
        "sphere": lambda d, a, b: math.pi / 6 * d**3 * max(a, 1.0),
        "rod": lambda d, a, b: math.pi / 4 * d**3 * max(a, b),
        "cylinder": lambda d, a, b: math.pi / 4 * d**3 * max(a, b),
        "joint": lambda d, a, b: 0.8 * d**3 * a * b,
    }
    hollow = {"cabbage", "fruit vegetable", "brassica", "mollusc", "crustacean", "squash", "grain vegetable"}
    airy = {"artichoke", "lotus-root", "morel", "belgian-endive", "boerewors", "stew-beef"}
    checked = 0
    for food in store.foods():
        weight = grams(food, "piece", "")
        if food.role is not Role.COOK or food.group in hollow or not weight or not food.whole_mm:
            continue
        if food.whole_shape in volume:
            cm3 = volume[food.whole_shape](food.whole_mm / 10, food.whole_ratio_1, food.whole_ratio_2)
            if food.id not in airy:
                assert 0.6 <= weight / cm3 <= 1.7, (food.id, weight, cm3)
                checked += 1
    assert checked > 80
