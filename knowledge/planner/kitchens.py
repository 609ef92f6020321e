"""A kitchen as it is described from outside: vessel sizes as a cook says them, limits, units.

"half sheet", "28 cm", "5 l", "6 quart", "11 inch" or nothing become one of the sizes
that the tables hold, the nearest one. What cannot be used is named with what was expected.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from knowledge.foods.model import Vessel, VesselSize
from knowledge.foods.store import Store
from knowledge.physics.media import SHEETS
from knowledge.physics.sheets import USUAL
from knowledge.planner.model import Kitchen, VesselAt

LITRES = {"l": 1.0, "liter": 1.0, "litre": 1.0, "liters": 1.0, "litres": 1.0, "qt": 0.946, "quart": 0.946,
          "quarts": 0.946, "ml": 0.001}  # fmt: skip
CENTIMETRES = {"cm": 1.0, "in": 2.54, "inch": 2.54, "inches": 2.54, '"': 2.54, "mm": 0.1}
SIDES = r"(\d+(?:[.,]\d+)?)\s*(?:x|×|by)\s*(\d+(?:[.,]\d+)?)\s*(cm|mm|in\b|inch|\")?"
INCHES_UP_TO = 21.0  # sides without a unit: no tray is 18 cm wide
OVEN_DEGC = (100.0, 350.0)
LIKELY = 3.0  # a size so many times beyond the smallest or largest is misread; judgement
ALTITUDE_M = (-400.0, 5000.0)
PEOPLE = (1.0, 40.0)
DEFAULT_VESSELS = Kitchen().vessels


@dataclass(frozen=True, slots=True, kw_only=True)
class Described:
    """A kitchen as described, with what was said beside it and what could not be used."""

    kitchen: Kitchen
    people: float | None
    now: datetime | None
    problems: tuple[str, ...]


def size_of(vessel: Vessel, said: str) -> VesselSize | None:
    """The size of this vessel that is meant by some words; the usual one for none; None when unreadable."""
    text = said.strip().lower()
    usual = next((s for s in vessel.sizes if s.usual), vessel.sizes[0])
    if not text or text in ("usual", "normal", "medium", "standard", "regular"):
        return usual
    exact = next((s for s in vessel.sizes if s.id == text), None)
    if exact is not None:
        return exact
    by_room = sorted(vessel.sizes, key=lambda s: s.serves)
    if text in ("small", "little"):
        return by_room[0]
    if text in ("large", "big", "full"):
        return by_room[-1]
    if vessel.single_layer and (sides := re.search(SIDES, text)):
        one, other = (float(sides[n].replace(",", ".")) * _cm(sides[3], sides[n]) for n in (1, 2))
        return min(vessel.sizes, key=lambda s: (abs(math.prod(s.sides_cm or (0.0, 0.0)) - one * other), s.id))
    if vessel.single_layer:
        words = sorted(vessel.sizes, key=lambda s: -len(s.id))  # "three-quarter" before "quarter"
        named = next(
            (s for s in words if s.id.removesuffix(" sheet") in text.replace("¾", "three-quarter")), None
        )
        if named is not None:
            return named
        return by_room[-1] if "full" in text else None
    match = re.match(r"(\d+(?:[.,]\d+)?)\s*-?\s*([a-z\"]+)", text)
    if match is None:
        return None
    number, unit = float(match[1].replace(",", ".")), match[2]
    if unit in LITRES:
        litres = number * LITRES[unit]
        rooms = [s.volume_l for s in vessel.sizes if s.volume_l]
        if not _is_likely(litres, rooms):
            return None
        return min(vessel.sizes, key=lambda s: (abs((s.volume_l or 0.0) - litres), s.id))
    if unit in CENTIMETRES:
        cm = number * CENTIMETRES[unit]
        across = {s.id: 200.0 * (s.area_m2 / 3.1416) ** 0.5 for s in vessel.sizes}
        by_name = {s.id: float(m[1]) for s in vessel.sizes if (m := re.match(r"(\d+) cm", s.id))}
        if not _is_likely(cm, list((across | by_name).values())):
            return None
        return min(vessel.sizes, key=lambda s: (abs(by_name.get(s.id, across[s.id]) - cm), s.id))
    return None


def _is_likely(said: float, known: Sequence[float]) -> bool:
    """Whether someone may own a vessel of this size, where these are sold."""
    return not known or min(known) / LIKELY <= said <= max(known) * LIKELY


def _cm(unit: str | None, side: str) -> float:
    """Centimetres in one unit of a tray's side."""
    return CENTIMETRES.get(unit or "", 1.0 if float(side.replace(",", ".")) > INCHES_UP_TO else 2.54)


def described(raw: object, *, store: Store) -> Described:
    """A kitchen from the scripting interface's object; every unusable field is a problem, never an error."""
    problems: list[str] = []
    if raw is None:
        return Described(kitchen=Kitchen(), people=None, now=None, problems=())
    if not isinstance(raw, Mapping):
        return Described(
            kitchen=Kitchen(), people=None, now=None, problems=('field "kitchen": expected an object',)
        )
    kitchen = Kitchen(
        vessels=_vessels(raw.get("vessels"), store, problems),
        oven_max_degC=_number(raw, "oven_max_degC", 250.0, OVEN_DEGC, problems) or 0.0,
        fan_oven=_flag(raw, "fan_oven", problems),
        broiler=_flag(raw, "broiler", problems, default=True),
        altitude_m=_number(raw, "altitude_m", 0.0, ALTITUDE_M, problems) or 0.0,
        units=_units(raw, problems),
        sheet=_sheet(raw, problems),
    )
    people = _number(raw, "people", None, PEOPLE, problems)
    now = None
    if raw.get("now"):
        try:
            now = datetime.fromisoformat(str(raw["now"]))
        except ValueError:
            problems.append(
                f'field "kitchen.now": expected a time such as 2026-03-04T17:10, got {raw["now"]!r}'
            )
    return Described(kitchen=kitchen, people=people, now=now, problems=tuple(problems))


def _vessels(raw: object, store: Store, problems: list[str]) -> tuple[VesselAt, ...]:
    if raw is None:
        return Kitchen().vessels
    if not isinstance(raw, Sequence) or isinstance(raw, str):
        problems.append('field "kitchen.vessels": expected a list of {"id", "size"}')
        return Kitchen().vessels
    known = {v.id: v for v in store.vessels()}
    found = []
    for entry in raw:
        name = str(entry.get("id", "") if isinstance(entry, Mapping) else entry).strip().lower()
        said = str((entry.get("size") or "") if isinstance(entry, Mapping) else "")
        if name not in known:
            problems.append(f'field "kitchen.vessels": {name!r} is none of {", ".join(sorted(known))}')
            continue
        size = size_of(known[name], said)
        if size is None:
            problems.append(
                f'field "kitchen.vessels": cannot read the size {said!r} of the {name}; took the usual one'
            )
            size = size_of(known[name], "")
        found.append(VesselAt(id=name, size=size.id if size else None))
    return tuple(found)


def _number(
    raw: Mapping[str, object], key: str, default: float | None, span: tuple[float, float], problems: list[str]
) -> float | None:
    value = raw.get(key)
    if value is None:
        return default
    if isinstance(value, bool) or not isinstance(value, int | float) or not span[0] <= value <= span[1]:
        if key == "oven_max_degC" and value == 0:
            return 0.0  # no oven
        problems.append(
            f'field "kitchen.{key}": expected a number from {span[0]:g} to {span[1]:g}, got {value!r}'
        )
        return default
    return float(value)


def _flag(raw: Mapping[str, object], key: str, problems: list[str], *, default: bool = False) -> bool:
    value = raw.get(key)
    if value is None or isinstance(value, bool):
        return default if value is None else value
    problems.append(f'field "kitchen.{key}": expected true or false, got {value!r}')
    return default


def _units(raw: Mapping[str, object], problems: list[str]) -> str:
    value = raw.get("units") or "metric"
    if value in ("metric", "us"):
        return str(value)
    problems.append(f'field "kitchen.units": expected "metric" or "us", got {value!r}')
    return "metric"


def _sheet(raw: Mapping[str, object], problems: list[str]) -> str:
    value = raw.get("sheet") or USUAL
    if value in SHEETS:
        return str(value)
    problems.append(f'field "kitchen.sheet": expected one of {", ".join(SHEETS)}, got {value!r}')
    return USUAL


def sizes_here(kitchen: Kitchen, vessel: Vessel) -> list[VesselSize]:
    """The sizes to choose from, usual first: the one said, or in an unknown kitchen the usual and larger."""
    said = [v.size for v in kitchen.vessels if v.id == vessel.id]
    by_id = {size.id: size for size in vessel.sizes}
    named = [by_id[s] for s in said if s in by_id]
    if named:
        return named
    usual = next((s for s in vessel.sizes if s.usual), vessel.sizes[0])
    unknown = kitchen.vessels == DEFAULT_VESSELS and not vessel.single_layer  # an oven takes its own sheet
    larger = [s for s in vessel.sizes if s.serves > usual.serves] if unknown else []
    return [usual, *sorted(larger, key=lambda s: s.serves)]
