"""How large a vessel is, as a cook says it: "half sheet", "28 cm", "2.5 l", "6 quart", "40 x 30 cm".

What the tables do not hold is drawn from the nearest size that they do: vessels of a kind
have the same form, so floor and metal grow with the square of their width and room with
its cube. Only a wider pan is no deeper. Nothing is rounded up: what a cook owns is what
the plan fills.
"""

from __future__ import annotations

import math
import re
from collections.abc import Sequence
from dataclasses import replace

from knowledge.errors import UnknownWord
from knowledge.foods.model import Vessel, VesselSize

LITRES = {"l": 1.0, "liter": 1.0, "litre": 1.0, "liters": 1.0, "litres": 1.0, "qt": 0.946, "quart": 0.946,
          "quarts": 0.946, "ml": 0.001}  # fmt: skip
CENTIMETRES = {"cm": 1.0, "in": 2.54, "inch": 2.54, "inches": 2.54, '"': 2.54, "mm": 0.1}
NAMED = {1.0: "cm", 2.54: "inch", 0.1: "mm"}
SIDES = r"(\d+(?:[.,]\d+)?)\s*(?:cm|mm|inch|in|\")?\s*(?:x|×|by)\s*(\d+(?:[.,]\d+)?)\s*(cm|mm|in\b|inch|\")?"
INCHES_UP_TO = 21.0  # sides without a unit: no tray is 18 cm wide
LIKELY = 3.0  # a size so many times beyond the smallest or largest is misread; judgement
SAME = 0.02  # an inch or a litre so near is a size of the tables under another name
RIM_CM = 1.3  # by which the sides of one and the same tray differ, measured in or outside its rim


def usual_size(vessel: Vessel) -> VesselSize:
    """The size that most kitchens have."""
    return next((s for s in vessel.sizes if s.usual), vessel.sizes[0])


def size_of(vessel: Vessel, said: str) -> VesselSize | None:
    """The size of this vessel that is meant by some words; the usual one for none; None when unreadable.

    The id of a size means that size again, also where it is not one of the tables.
    """
    text = said.strip().lower()
    if not text or text in ("usual", "normal", "medium", "standard", "regular"):
        return usual_size(vessel)
    exact = next((s for s in vessel.sizes if s.id == text), None)
    if exact is not None:
        return exact
    by_room = sorted(vessel.sizes, key=lambda s: s.serves)
    if text in ("small", "little"):
        return by_room[0]
    if text in ("large", "big", "full"):
        return by_room[-1]
    if vessel.single_layer:
        return _tray(vessel, text)
    match = re.match(r"(\d+(?:[.,]\d+)?)\s*-?\s*([a-z\"]+)", text)
    if match is None:
        return None
    number, unit = float(match[1].replace(",", ".")), match[2]
    if unit in LITRES:
        named = f"{number:g} quart" if unit.startswith("q") else f"{number * LITRES[unit]:g} l"
        return _like(vessel, number * LITRES[unit], {s.id: s.volume_l for s in vessel.sizes}, 3.0, named)
    if unit in CENTIMETRES:
        cm = number * CENTIMETRES[unit]
        named = f"{cm:g} cm" if unit in ("cm", "mm") else f"{number:g} inch"
        return _like(vessel, cm, {s.id: _across_cm(s) for s in vessel.sizes}, 1.0, named)
    return None


def size_named(vessel: Vessel, size_id: str) -> VesselSize:
    """The size of a plan, by its id. Raises UnknownWord."""
    size = size_of(vessel, size_id)
    if size is None:
        raise UnknownWord(f"size of the {vessel.id}", size_id, tuple(s.id for s in vessel.sizes))
    return size


def _like(
    vessel: Vessel, said: float, known: dict[str, float | None], power: float, named: str
) -> VesselSize | None:
    """The size that is so large, in the form of the nearest that the tables hold.

    Args:
        said: its width or its room.
        known: the same of each size of the tables.
        power: of the width, with which this grows.
    """
    sizes = [(s, figure) for s in vessel.sizes if (figure := known[s.id])]
    if not _is_likely(said, [figure for _, figure in sizes]):
        return None
    near, figure = min(sizes, key=lambda x: (abs(math.log(x[1] / said)), x[0].id))
    if abs(said / figure - 1.0) <= SAME:
        return near
    wider = (said / figure) ** (1.0 / power)
    room = wider**3 if wider < 1.0 or power > 1.0 else wider**2
    return replace(
        near,
        id=named,
        area_m2=near.area_m2 * wider**2,
        volume_l=(near.volume_l or 0.0) * room,
        mass_kg=near.mass_kg * wider**2,
        serves=near.serves * room,
        usual=False,
    )


def _tray(vessel: Vessel, text: str) -> VesselSize | None:
    """A tray by its sides or by its trade name."""
    if sides := re.search(SIDES, text):
        numbers = sorted((float(sides[n].replace(",", ".")) for n in (1, 2)), reverse=True)
        unit_cm = _unit_cm(sides[3], numbers[1])
        said = [unit_cm * number for number in numbers]
        for size in vessel.sizes:
            if all(abs(a - b) <= RIM_CM for a, b in zip(said, size.sides_cm, strict=False)):
                return size
        area = math.prod(said)
        if not _is_likely(area, [math.prod(s.sides_cm) for s in vessel.sizes if s.sides_cm]):
            return None
        near = min(vessel.sizes, key=lambda s: (abs(math.log(math.prod(s.sides_cm) / area)), s.id))
        larger = area / math.prod(near.sides_cm)
        return replace(
            near,
            id=f"{numbers[0]:g} x {numbers[1]:g} {NAMED[unit_cm]} tray",
            area_m2=near.area_m2 * larger,
            mass_kg=near.mass_kg * larger,
            serves=near.serves * larger,
            usual=False,
            sides_cm=tuple(said),
        )
    words = sorted(vessel.sizes, key=lambda s: -len(s.id))  # "three-quarter" before "quarter"
    named = next(
        (s for s in words if s.id.removesuffix(" sheet") in text.replace("¾", "three-quarter")), None
    )
    if named is None and "full" in text:
        return max(vessel.sizes, key=lambda s: s.serves)
    return named


def _across_cm(size: VesselSize) -> float:
    """How wide it is: at the rim where it is sold by that, else over its floor."""
    named = re.match(r"(\d+) cm", size.id)
    return float(named[1]) if named else 200.0 * math.sqrt(size.area_m2 / math.pi)


def _is_likely(said: float, known: Sequence[float]) -> bool:
    """Whether someone may own a vessel of this size, where these are sold."""
    return not known or min(known) / LIKELY <= said <= max(known) * LIKELY


def _unit_cm(unit: str | None, shorter: float) -> float:
    """Centimetres in the unit of a tray's sides, which may have to be guessed from the shorter one."""
    return CENTIMETRES.get(unit or "", 1.0 if shorter > INCHES_UP_TO else 2.54)
