"""A kitchen as it is described from outside: its vessels and their sizes (`sizes`), limits, units.

What cannot be used is named with what was expected.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from knowledge.foods.model import Vessel, VesselSize
from knowledge.foods.store import Store
from knowledge.physics.media import SHEETS
from knowledge.planner.model import Kitchen, VesselAt
from knowledge.planner.sizes import size_of, usual_size
from knowledge.sheets import USUAL

OVEN_DEGC = (100.0, 350.0)
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
    named = [size for s in said if s and (size := size_of(vessel, s))]
    if named:
        return named
    usual = usual_size(vessel)
    unknown = kitchen.vessels == DEFAULT_VESSELS and not vessel.single_layer  # an oven takes its own sheet
    larger = [s for s in vessel.sizes if s.serves > usual.serves] if unknown else []
    return [usual, *sorted(larger, key=lambda s: s.serves)]
