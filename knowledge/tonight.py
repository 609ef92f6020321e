"""What a message says of the kitchen it cooks in tonight: "on my quarter sheet pan", "we're at 2200 m"."""

from __future__ import annotations

from dataclasses import replace

from knowledge.foods.store import Store
from knowledge.physics.media import SHEETS
from knowledge.planner.model import Kitchen, VesselAt
from knowledge.planner.sizes import size_of
from knowledge.text.model import Reading
from knowledge.text.normalise import flatten
from knowledge.text.vessels import offered, only, ovenless

READ_TO = 600  # characters of a message in which its kitchen is looked for
ALTITUDE_M = (-430.0, 5100.0)  # from the lowest shore to the highest town
OVEN_DEGC = (150.0, 320.0)  # what ovens at home can be set to at most


def kitchen_of(reading: Reading, kitchen: Kitchen, *, store: Store) -> Kitchen:
    """The kitchen with what a message says of it; what cannot be meant is passed over."""
    for name, value in reading.settings:
        match name:
            case "vessel_size":
                kitchen = _sized(kitchen, value, store)
            case "altitude_m" if ALTITUDE_M[0] <= float(value) <= ALTITUDE_M[1]:
                kitchen = replace(kitchen, altitude_m=float(value))
            case "oven_max_degC" if OVEN_DEGC[0] <= float(value) <= OVEN_DEGC[1]:
                kitchen = replace(kitchen, oven_max_degC=float(value))
            case "fan_oven":
                kitchen = replace(kitchen, fan_oven=value == "yes")
            case "sheet" if value in SHEETS:
                kitchen = replace(kitchen, sheet=value)
            case _:
                pass
    text = flatten(reading.text[:READ_TO]).text
    there = only(text)
    if there:
        sized = {v.id: v for v in kitchen.vessels}
        kitchen = replace(kitchen, vessels=tuple(sized.get(id_, VesselAt(id=id_)) for id_ in there))
    return replace(kitchen, oven_max_degC=0.0, broiler=False) if ovenless(text) else kitchen


def vessel_of(reading: Reading) -> str | None:
    """The vessel that a message wants: the one named, or the only one of which a size is said."""
    sized = {value.partition("=")[0] for name, value in reading.settings if name == "vessel_size"}
    if reading.vessel is not None or not sized:
        return reading.vessel
    named = sized | offered(flatten(reading.text[:READ_TO]).text)
    return next(iter(named)) if len(named) == 1 and not named & {*reading.not_vessel} else None


def _sized(kitchen: Kitchen, said: str, store: Store) -> Kitchen:
    """ "sheet pan=quarter sheet": that vessel, in that size, with the others of the kitchen."""
    vessel, _, words = said.partition("=")
    size = size_of(store.vessel(vessel), words)
    if size is None:
        return kitchen
    others = (v for v in kitchen.vessels if v.id != vessel)
    return replace(kitchen, vessels=(*others, VesselAt(id=vessel, size=size.id)))
