"""How much floor pieces cover when they lie beside each other, and what one panful of meat is.

The area of a piece follows from its shape: a ball covers a circle and is two thirds of its
height deep on the mean, a rod a rectangle, a wedge lies on its flat side. Pieces of one
layer touch at most. A pan browns so much at a time as its floor can keep dry: crowded
meat stews in its own juice, whatever room there is.
"""

from __future__ import annotations

import math

from knowledge.foods.model import Food

MEAN_DEPTH = {
    "sphere": 2.0 / 3.0, "rod": math.pi / 4.0, "cylinder": math.pi / 4.0,  # geometry
    "floret": 0.5, "slab": 0.8, "disk": 0.95, "brick": 0.75, "joint": 0.65, "bird": 0.6,  # common practice
}  # fmt: skip
ON_THE_BONE, BONED_FROM = 0.65, 0.9  # thighs and chops taper; what is less edible than that has a bone
WEDGE_DEPTH = 0.6  # three-cornered, on its flat side
THIN_MM = 8.0  # thinner things overlap and shrink
LOOSE_MM = 20.0  # how deep leaves and mince lie
DENSITY = 1050.0  # kg/m3
PACKING = 0.85  # share of the floor that pieces cover when they touch at most
SIDE_BY_SIDE = 0.95  # and stalks, laid in one direction
SHEET_FULL = 1.08  # of a layer with its gaps: then pieces cover 0.92 of the floor, and touch; judgement
PANFUL_KG_M2 = 11.3  # 600 g in a pan of 28 cm; common practice, no source
LAST_HANDFUL = 0.25  # of a panful more makes no batch of its own
WHOLE_MM, WHOLE_LOAD = 25.0, 1.35  # large flat pieces wet the pan less than dice
MOST_BATCHES = 4  # then the rest goes in pale


def bulk_g(food: Food, grams: float) -> float:
    """What lies there of so many grams as bought [g]: without peel and stalk, but with the bone."""
    return grams if food.animal else grams * food.edible_frac


def mean_depth_mm(shape: str, size_mm: float, cut_id: str) -> float:
    """How deep pieces of this shape lie on the mean over the floor they cover [mm]."""
    if shape in ("leaf", "grain"):
        return LOOSE_MM
    share = WEDGE_DEPTH if "wedge" in cut_id else MEAN_DEPTH.get(shape, 0.8)
    return max(share * size_mm, THIN_MM)


def _lies_mm(food: Food, shape: str, size_mm: float, cut_id: str) -> float:
    boned = shape == "slab" and bool(food.animal) and food.edible_frac < BONED_FROM
    return max(ON_THE_BONE * size_mm, THIN_MM) if boned else mean_depth_mm(shape, size_mm, cut_id)


def layer_m2(food: Food, grams: float, *, shape: str, size_mm: float, cut_id: str) -> float:
    """The floor that so much of a food covers in one layer [m2]."""
    volume_m3 = bulk_g(food, grams) / 1000.0 / DENSITY
    depth_m = _lies_mm(food, shape, size_mm, cut_id) / 1000.0
    packing = SIDE_BY_SIDE if shape == "rod" else PACKING
    return volume_m3 / depth_m / packing


def load_g(grams: float, *, shape: str, size_mm: float) -> float:
    """So much meat as a load on the pan, in grams of dice."""
    return grams / WHOLE_LOAD if shape == "slab" and size_mm >= WHOLE_MM else grams


def batches(grams: float, covers_m2: float, area_m2: float) -> int:
    """In how many turns a load (`load_g`), covering so much, is browned on a floor."""
    by_load = grams / 1000.0 / (PANFUL_KG_M2 * area_m2)
    turns = max(by_load, covers_m2 / area_m2) - LAST_HANDFUL
    return min(max(1, math.ceil(turns)), MOST_BATCHES)
