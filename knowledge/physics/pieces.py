"""A food and the dimensions of a cut -> the piece that the solver heats."""

from __future__ import annotations

from functools import lru_cache

from knowledge.errors import OutOfRange
from knowledge.foods.model import Composition, Food
from knowledge.physics import tables
from knowledge.physics.geometry import Equivalent, equivalent
from knowledge.physics.limits import within
from knowledge.physics.model import Piece, Shape
from knowledge.physics.properties import properties

TYPICAL = Composition(water_g=75.0, protein_g=10.0, fat_g=5.0, carbohydrate_g=8.5, fibre_g=1.0, ash_g=1.5)
"""Stands in where a food's composition is not known; conductivity and heat hardly differ."""

START_DEGC = {
    "fridge": 5.0, "raw": 5.0, "cooked": 5.0, "leftover": 5.0, "soaked": 20.0, "room": 20.0, "dry": 20.0,
    "dried": 20.0, "canned": 20.0, "drained": 20.0, "": 5.0,
}  # fmt: skip
FREEZER_DEGC = -18.0
_FUSION_J_KG = 333_500.0
_ICE_CP = 2050.0


def frozen_start_degC(*, water_frac: float, cp_J_kgK: float, start_degC: float = FREEZER_DEGC) -> float:
    """Start temperature of an unfrozen piece that needs as much heat as the frozen one.

    Equation: T = -1.25 (w Lf + c_ice (0 - T_freezer) w) / cp
    Leaves out: the moving front, and that ice conducts better; where the surface holds the heat
    back (oven, pan, simmering) neither matters much.
    Example: w 0.76, cp 3600 -> -97 °C
    """
    needed = water_frac * (_FUSION_J_KG - _ICE_CP * start_degC)
    return -tables.constant("thaw_factor") * needed / cp_J_kgK


def start_of(state: str | None, water_frac: float, cp_J_kgK: float) -> float:
    """Start temperature of a piece in a state of the kitchen ("fridge", "frozen", "dried" ...)."""
    if state == "frozen":
        return frozen_start_degC(water_frac=water_frac, cp_J_kgK=cp_J_kgK)
    return START_DEGC.get(state or "", 5.0)


def piece(
    food: Food, *, size_mm: float, shape: str, ratio_1: float = 1.0, ratio_2: float = 1.0,
    state: str | None = None, start_degC: float | None = None, mass_kg: float | None = None,
) -> Piece:  # fmt: skip
    """One piece of a food.

    Args:
        size_mm: smallest full dimension; a rod's or sphere's diameter [mm]
        shape: a `Shape` value; also "whole", which is the food's own shape
        ratio_1, ratio_2: the other dimensions over the smallest; a rod's length, a disk's diameter
        state: "fridge", "room", "frozen", "canned", "dried" ...; None: as the food is kept
        start_degC: a measured start temperature [°C], over the state's
        mass_kg: of one piece; joints take their length from it
    Raises: OutOfRange.
    """
    within("size_mm", size_mm)
    ratio_1, ratio_2 = within("ratio_1", ratio_1, "ratio"), within("ratio_2", ratio_2, "ratio")
    if mass_kg is not None:
        within("mass_kg", mass_kg)
    if start_degC is not None:
        within("start_degC", start_degC)
    if state is None:
        state = food.start_state
    stuff = properties(food.composition or TYPICAL)
    density = food.density_kg_m3 or stuff.density_kg_m3
    start = start_of(state, stuff.water_frac, stuff.cp_J_kgK) if start_degC is None else start_degC
    if start_degC is not None and start_degC < -2.0:
        start = frozen_start_degC(water_frac=stuff.water_frac, cp_J_kgK=stuff.cp_J_kgK, start_degC=start_degC)
    form = food.whole_shape if shape == "whole" and food.whole_shape else shape
    gentle, brisk, wet_size = shaped(food.id, food.group, form, size_mm, ratio_1, ratio_2, mass_kg, density)
    return Piece(
        exponent=gentle[0], half_size_m=gentle[1], area_factor=gentle[2], brisk=brisk,
        wet_size=wet_size,
        k_W_mK=stuff.k_W_mK, density_kg_m3=density, cp_J_kgK=stuff.cp_J_kgK, water_frac=stuff.water_frac,
        start_degC=start, skinned=food.group in ("poultry", "sausage") and form == "bird",
        mass_kg=mass_kg or density * volume_m3(form, size_mm, ratio_1, ratio_2),
    )  # fmt: skip


def volume_m3(shape: str, size_mm: float, ratio_1: float, ratio_2: float) -> float:
    """Volume of a piece; leaves and slabs without ratios count as ten times as wide as thick [m3]."""
    cube = (size_mm / 1000.0) ** 3
    match shape:
        case "sphere" | "bird" | "grain" | "floret":
            return 0.5236 * cube
        case "rod" | "cylinder" | "joint":
            return 0.7854 * cube * max(ratio_1, ratio_2)
        case "disk":
            return 0.7854 * cube * ratio_1**2
        case "slab" | "leaf" if ratio_1 == 1.0:
            return 100.0 * cube
        case _:
            return cube * ratio_1 * ratio_2


@lru_cache(maxsize=4096)
def shaped(
    food_id: str, group: str, shape: str, size_mm: float, ratio_1: float, ratio_2: float,
    mass_kg: float | None, density_kg_m3: float,
) -> tuple[Equivalent, Equivalent, float]:  # fmt: skip
    """The equivalent pieces under gentle and brisk heat: exponent, half size [m], area factor.

    Real food that lets heat in between (florets, cabbage, a bird's cavity) counts as smaller
    than it measures, by the factors of `size_factors.csv`; in liquid or steam smaller still, by
    the last figure.
    """
    factor, wet_factor = 1.0, 1.0
    for row in tables.rows("size_factors"):
        if row["food"] not in ("", food_id, group) or row["piece"] not in ("", shape):
            continue
        opens_mm = float(row["min_mm"] or 0.0)
        if size_mm < opens_mm and row["as_shape"]:
            continue  # a head is another piece than a large floret
        if size_mm < opens_mm:
            # Nearly so thick is never slower than so thick: what opens at 25 mm has begun to at 20.
            factor = min(factor, float(row["factor"]) * opens_mm / size_mm)
            wet_factor = min(wet_factor, float(row["wet_factor"]) * opens_mm / size_mm)
            continue
        factor = min(factor, float(row["factor"]))
        wet_factor = min(wet_factor, float(row["wet_factor"]))
        shape = row["as_shape"] or shape
        ratio_1 = float(row["ratio_1"]) if row["ratio_1"] else ratio_1
        break
    match shape:
        case "slab" | "leaf" if ratio_1 == 1.0:
            both = ((0.0, 1.0, 1.0), (0.0, 1.0, 1.0))
        case "sphere" | "grain" | "bird":
            both = ((2.0, 1.0, 1.0), (2.0, 1.0, 1.0))
        case "cylinder":
            both = ((1.0, 1.0, 1.0), (1.0, 1.0, 1.0))
        case "joint":
            length = _joint_length(size_mm, mass_kg, density_kg_m3)
            both = (equivalent("rod", "gentle", length, 1.0), equivalent("rod", "brisk", length, 1.0))
        case "rod":
            both = _both("rod", max(ratio_1, ratio_2), 1.0)
        case "disk":
            both = _both("disk", ratio_1, 1.0)
        case "brick" | "slab" | "leaf" | "floret":
            both = _both("brick", min(ratio_1, ratio_2), max(ratio_1, ratio_2))
        case _:
            raise OutOfRange("shape", float("nan"), 0, len(Shape), "known shapes")
    (n1, s1, a1), (n2, s2, a2) = both
    half = size_mm / 2000.0
    return (n1, s1 * half * factor, a1), (n2, s2 * half * factor, a2), wet_factor / factor


def _both(family: str, ratio_1: float, ratio_2: float) -> tuple[Equivalent, Equivalent]:
    return equivalent(family, "gentle", ratio_1, ratio_2), equivalent(family, "brisk", ratio_1, ratio_2)


def _joint_length(size_mm: float, mass_kg: float | None, density_kg_m3: float) -> float:
    """Length over diameter of a joint, from its mass."""
    if mass_kg is None:
        return 2.0
    return min(max(mass_kg / (density_kg_m3 * 0.7854 * (size_mm / 1000.0) ** 3), 1.0), 20.0)
