"""What a chart says of a piece -> its shape, size and mass.

Charts write "1 1/2-inch cubes", "halves", "4 to 6 lb, rolled" and leave out the rest. What
is not said is taken from the food as it is bought, or from the cut that a word names.
"""

from __future__ import annotations

import math
import re
from typing import TYPE_CHECKING

from knowledge.foods.model import Food
from knowledge.foods.pieces import piece_of
from knowledge.physics import tables
from knowledge.physics.limits import within
from knowledge.physics.vessels import RASHER_MM

if TYPE_CHECKING:
    from knowledge.foods.store import Store

Form = tuple[str, float, float, float]
"""Shape, smallest dimension [mm], and the other two over it."""

_JOINT_MM = 60.0  # thinner pieces are sold by their thickness
_LOAF_KG = 0.5  # heavier meat of no stated size is one piece, not a helping
_BIRD_RATIO, _LOAF_RATIO = 2.0, 1.6  # length over thickness of a rod of the same mass
_NUMBER = r"(\d+(?:[.,]\d+)?(?:[ -]\d+/\d+)?(?:/\d+)?)"
_RANGE = rf"{_NUMBER}(?:\s*(?:-|–|to|or)\s*{_NUMBER})?"
_KG = {"kg": 1.0, "g": 0.001, "grams": 0.001, "lb": 0.4536, "lbs": 0.4536, "pound": 0.4536,
       "pounds": 0.4536, "oz": 0.02835, "ounce": 0.02835, "ounces": 0.02835}  # fmt: skip
_MM = {"mm": 1.0, "cm": 10.0, "in": 25.4, "inch": 25.4, "inches": 25.4}
_VULGAR = str.maketrans({"½": " 1/2", "¼": " 1/4", "¾": " 3/4", "⅓": " 1/3", "⅔": " 2/3", "⅛": " 1/8"})
_HALVES = re.compile(r"\b(?:half|halves|halved)\b")
_ROUND = frozenset({"sphere", "rod", "cylinder", "brick"})
_CUTS = (  # words for a cut of unstated size, and the cut that is meant
    ("shred", "shredded"), ("wedge", "wedge"), ("quarter", "quartered"), ("halve", "halved"),
    ("half", "halved"), ("floret", "floret"), ("flower", "floret"), ("stick", "baton"),
    ("strip", "strip"), ("slice", "slice"), ("dice", "medium dice"), ("cube", "chunk"),
    ("chunk", "chunk"),
)  # fmt: skip
_SHAPES = (  # words for the shape of a piece whose size is stated
    ("slice", "slab"), ("round", "slab"), ("coin", "slab"), ("fillet", "slab"), ("steak", "slab"),
    ("chop", "slab"), ("cube", "cuboid"), ("dice", "cuboid"), ("chunk", "cuboid"), ("stick", "cuboid"),
    ("strip", "cuboid"), ("wedge", "cuboid"), ("quarter", "cuboid"),
)  # fmt: skip


def said(text: str) -> str:
    """The text as the readers below want it: lower case, fractions in figures."""
    return " ".join(text.lower().translate(_VULGAR).replace('"', " in ").split())


def mass_kg(mass_g: float | None, text: str) -> float | None:
    """Mass of one piece as stated: the middle of a range. Raises OutOfRange."""
    if mass_g is not None:
        return within("mass_kg", mass_g / 1000.0)
    found = _amount(text, _KG)
    return None if found is None else within("mass_kg", found)


def stated_mm(text: str) -> float | None:
    """The first length in a text [mm]; the middle of a range."""
    return _amount(text, _MM)


_FROM_HEAT = re.compile(
    rf"{_RANGE}[\s-]*({'|'.join(sorted(_MM, key=len, reverse=True))})\b "
    r"(?:(?:away )?from|below|under) (?:the )?(?:heat|broiler|grill|element|flame|coals)\b"
)


def without_distance(text: str) -> tuple[str, float | None]:
    """A text less how far below a heater something lies, and that distance [m]."""
    found = _FROM_HEAT.search(text)
    if found is None:
        return text, None
    return text[: found.start()] + text[found.end() :], (stated_mm(found[0]) or 0.0) / 1000.0


def _amount(text: str, units: dict[str, float]) -> float | None:
    found = re.search(rf"{_RANGE}[\s-]*({'|'.join(sorted(units, key=len, reverse=True))})\b", text)
    if found is None:
        return None
    low = _fraction(found[1])
    high = _fraction(found[2]) if found[2] else low
    return 0.5 * (low + high) * units[found[3]] or None


def _fraction(text: str) -> float:
    """ "1 1/2" -> 1.5, "1-1/2" too."""
    total = 0.0
    for part in text.replace(",", ".").replace("-", " ").split():
        top, _, bottom = part.partition("/")
        total += float(top) / (float(bottom) or 1.0) if bottom else float(top)
    return total


def form(
    food: Food, *, shape: str, size_mm: float | None, mass_kg: float | None, text: str, store: Store
) -> Form:
    """Shape, size and ratios of a piece. Nothing is asked for that has a usual answer."""
    size = stated_mm(text) if size_mm is None else within("size_mm", size_mm)
    if size is None and (cut := _cut(food, shape, text, store)):
        return cut
    if size and not shape:
        shape = next((s for word, s in _SHAPES if word in text), "")
    if food.animal not in ("", "dairy"):
        return _animal(food, shape, size, mass_kg, text)
    return _plant(food, shape, size, mass_kg, text)


def _cut(food: Food, shape: str, text: str, store: Store) -> Form | None:
    """The usual piece of a cut that is named without its size."""
    if shape not in ("", "whole") or food.whole_mm is None or food.whole_shape in ("leaf", "grain"):
        return None
    if food.animal not in ("", "dairy") and not ("cube" in text or "strip" in text):
        return None
    name = next((cut for word, cut in _CUTS if word in text), "")
    if not name and food.whole_shape == "floret" and "whole" not in text and "head" not in text:
        name = "floret"
    if not name:
        return None
    pieced = piece_of(food, store.cut(name))
    return pieced.shape, pieced.size_mm, pieced.ratio_1, pieced.ratio_2


def _animal(food: Food, shape: str, stated: float | None, mass_kg: float | None, text: str) -> Form:
    density = food.density_kg_m3 or 1050.0
    bird = food.animal == "poultry" and (
        "whole" in text or (mass_kg or 0.0) > 1.0 or food.whole_shape == "bird"
    )
    land = food.animal not in ("fish", "shellfish")
    if food.group == "mollusc" and "shell" in text:
        stated = None  # charts measure the shell; what heats is as thick as usual
    size = stated or food.whole_mm or 25.0
    if stated is None and mass_kg and land and (bird or mass_kg > _LOAF_KG):
        size = _by_mass(mass_kg, density, food, bird=bird)
        shape = shape or "whole"
    elif land and mass_kg and size >= _JOINT_MM and shape in ("", "whole", "cylinder"):
        weight = tables.constant("joint_by_mass")
        by_mass = _by_mass(mass_kg, density, food, bird=bird)
        size = math.exp((1.0 - weight) * math.log(size) + weight * math.log(by_mass))
        if "rolled" in text or ("boneless" in text and shape == "cylinder"):
            size *= tables.constant("rolled_size")
    if shape in ("", "whole"):
        if bird and size >= 40.0:
            return "bird", size, 1.0, 1.0
        if food.whole_shape in ("brick", "sphere") and (food.animal in ("fish", "egg") and not mass_kg):
            return food.whole_shape, size, food.whole_ratio_1, food.whole_ratio_2
        if food.animal == "fish" and food.whole_shape == "brick":  # as it was caught: oval, thin at the tail
            return "brick", size * tables.constant("whole_fish_size"), food.whole_ratio_1, food.whole_ratio_2
        if mass_kg and size > 55.0:
            return "joint", size, 1.0, 1.0
        if size < RASHER_MM and food.whole_shape == "slab":
            return "brick", size, food.whole_ratio_1, food.whole_ratio_2
        return "brick", size, *_sides(mass_kg, density, size, usual=(1.7, 2.6))
    if shape == "slab":
        usual = (max(110.0 / size, 1.0), max(160.0 / size, 1.0))  # a steak or fillet
        return "brick", size, *_sides(mass_kg, density, size, usual=usual, slimness=1.6)
    return _cut_shape(shape, size, mass_kg, density, text)


def _plant(food: Food, shape: str, stated: float | None, mass_kg: float | None, text: str) -> Form:
    density = food.density_kg_m3 or 1050.0
    size = stated or food.whole_mm or 25.0
    if shape in ("", "cuboid") and "whole" not in text and (thin := _thinner(food, size)):
        return thin
    if shape in ("", "whole"):
        if "floret" in text or food.whole_shape == "floret":
            return "floret", size, 1.0, 1.0
        if stated and shape and ("halved" in text or "half" in text):
            return "brick", size, 2.0, 2.2
        return food.whole_shape or "sphere", size, food.whole_ratio_1, food.whole_ratio_2
    if shape == "slab" and stated and _HALVES.search(text) and food.whole_shape in _ROUND:
        wide = max((food.whole_mm or size) / size, 1.0)  # a half is as wide as the whole is thick
        return "brick", size, wide, wide * max(food.whole_ratio_1, food.whole_ratio_2, 1.0)
    if shape == "slab" and mass_kg:
        return "brick", size, *_sides(mass_kg, density, size, usual=(1.0, 1.0), slimness=1.6)
    return _cut_shape(shape, size, mass_kg, density, text)


def _thinner(food: Food, size_mm: float) -> Form | None:
    """A piece cut wider than its food is thick: of a pepper, a flat one as thick as its wall."""
    if food.whole_shape != "slab" or not food.whole_mm or size_mm <= food.whole_mm:
        return None
    wide = size_mm / food.whole_mm
    return "brick", food.whole_mm, wide, 1.2 * wide


def _cut_shape(shape: str, size: float, mass_kg: float | None, density: float, text: str) -> Form:
    """Pieces of a stated shape."""
    if shape == "cylinder":
        if mass_kg:
            return "rod", size, max(mass_kg / density / (0.7854 * (size / 1000.0) ** 3), 1.0), 1.0
        if cut := re.search(rf"{_NUMBER}[\s-]*in(?:ch)? pieces", text):
            return "rod", size, max(_fraction(cut[1]) * 25.4 / size, 1.0), 1.0
        return "cylinder", size, 1.0, 1.0
    if shape == "cuboid":
        if any(word in text for word in ("stick", "strip", "baton")):
            return "brick", size, 1.0, 5.0
        if any(word in text for word in ("wedge", "quarter", "half", "halved")):
            return "brick", size, 1.2, 2.0
        return "brick", size, 1.0, 1.1
    return shape, size, 1.0, 1.0


def _sides(
    mass_kg: float | None, density_kg_m3: float, size_mm: float, *, usual: tuple[float, float],
    slimness: float = 1.53,
) -> tuple[float, float]:  # fmt: skip
    """Width and length over thickness of a piece: from its mass, `slimness` times as long as wide."""
    if mass_kg is None:
        return usual
    squares = mass_kg / density_kg_m3 / (size_mm / 1000.0) ** 3
    return max((squares / slimness) ** 0.5, 1.0), max((squares * slimness) ** 0.5, 1.0)


def _by_mass(mass_kg: float, density_kg_m3: float, food: Food, *, bird: bool) -> float:
    """Thickness that a joint or bird of this mass would have in its usual proportion [mm].

    Charts weigh joints but do not measure them: of two loins the heavier is thicker too, though
    not as much as if it were the same shape.
    """
    longer = food.whole_ratio_1 * food.whole_ratio_2 if food.whole_shape == "joint" else _LOAF_RATIO
    longer = _BIRD_RATIO if bird else max(longer, 1.3)
    thick: float = 1000.0 * (mass_kg / (density_kg_m3 * 0.7854 * longer)) ** (1.0 / 3.0)
    return thick
