"""What holds beyond tonight: kitchen, units, people, diets, lessons; set, shown, forgotten."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from bot.core.replies import talk
from bot.core.replies.layout import listed
from bot.core.state import Profile
from knowledge import Knowledge
from knowledge.planner.model import Kitchen, Request, VesselAt
from knowledge.text.model import Reading
from knowledge.units import temperature

OVEN_DEGC = (150.0, 320.0)  # what ovens at home can be set to at most
ALTITUDE_M = (-430.0, 5100.0)  # from the lowest shore to the highest town
EATERS = (1.0, 20.0)
OFFSET_MIN = (-12 * 60, 14 * 60)

Change = tuple[Profile | None, str]  # the new profile, None when the value was not kept; and what to say


def apply(profile: Profile, reading: Reading, knowledge: Knowledge) -> tuple[Profile, str]:
    """The profile with everything a message sets, and one line that says so."""
    kept: list[str] = []
    problems: list[str] = []
    values = [*reading.settings]
    if reading.people is not None:
        values.append(("people", f"{reading.people:g}"))
    for name, value in values:
        if name == "vessel_size":
            new, text = _size(profile, value, knowledge)
        else:
            setter = SETTERS.get(name)
            new, text = (None, talk.SETTING_UNCLEAR) if setter is None else setter(profile, value)
        (problems if new is None else kept).append(text)
        profile = profile if new is None else new
    profile, rules = _rules(profile, reading, knowledge)
    kept += rules
    profile, vessels = _vessels(profile, reading)
    kept += vessels
    lines = [talk.changed(kept)] if kept else []
    return profile, " ".join([*lines, *problems]) or talk.SETTING_UNCLEAR


def forgets_all(reading: Reading) -> bool:
    """Whether everything kept about the cook is to go."""
    return ("everything", "forget") in reading.settings


def _kitchen(profile: Profile, kitchen: Kitchen, text: str) -> Change:
    return replace(profile, kitchen=kitchen), text


def _number(value: str) -> float | None:
    try:
        number = float(value)
    except ValueError:
        return None
    return number if number == number and abs(number) < 1e6 else None


def _units(profile: Profile, value: str) -> Change:
    units = "us" if value.lower() in ("us", "imperial", "fahrenheit", "ounces") else "metric"
    said = talk.UNITS_US if units == "us" else talk.UNITS_METRIC
    return _kitchen(profile, replace(profile.kitchen, units=units), said)


def _oven(profile: Profile, value: str) -> Change:
    degC = _number(value)
    units = profile.kitchen.units
    if degC is None or not OVEN_DEGC[0] <= degC <= OVEN_DEGC[1]:
        low, high = (temperature(t, units) for t in OVEN_DEGC)
        return None, talk.setting_out_of_range("The oven's highest setting", low, high)
    kitchen = replace(profile.kitchen, oven_max_degC=degC)
    return _kitchen(profile, kitchen, talk.oven_max(degC, units))


def _fan(profile: Profile, value: str) -> Change:
    fan = value.lower() in ("1", "true", "yes", "on")
    return _kitchen(profile, replace(profile.kitchen, fan_oven=fan), talk.FAN if fan else talk.NO_FAN)


def _sheet(profile: Profile, value: str) -> Change:
    if value not in talk.SHEETS:
        return None, talk.SETTING_UNCLEAR
    return _kitchen(profile, replace(profile.kitchen, sheet=value), talk.SHEETS[value])


def _altitude(profile: Profile, value: str) -> Change:
    metres = _number(value)
    units = profile.kitchen.units
    if metres is None or not ALTITUDE_M[0] <= metres <= ALTITUDE_M[1]:
        low, high = (talk.altitude(m, units) for m in ALTITUDE_M)
        return None, talk.setting_out_of_range("The altitude", low, high)
    return _kitchen(profile, replace(profile.kitchen, altitude_m=metres), talk.cooking_at(metres, units))


def _people(profile: Profile, value: str) -> Change:
    eaters = _number(value)
    if eaters is None or not EATERS[0] <= eaters <= EATERS[1]:
        return None, talk.setting_out_of_range("The number of people", f"{EATERS[0]:g}", f"{EATERS[1]:g}")
    return replace(profile, eaters=eaters), talk.people(eaters)


def _offset(profile: Profile, value: str) -> Change:
    minutes = _number(value)
    if minutes is None or not OFFSET_MIN[0] <= minutes <= OFFSET_MIN[1]:
        return None, talk.setting_out_of_range("The time zone", "UTC-12", "UTC+14")
    return replace(profile, utc_offset_min=round(minutes)), talk.zone(round(minutes))


def _oven_offset(profile: Profile, value: str) -> Change:
    kelvin = _number(value)
    return None, talk.oven_offset(kelvin or 0.0, profile.kitchen.units)


def _size(profile: Profile, value: str, knowledge: Knowledge) -> Change:
    """ "saute pan=28 cm": that vessel is there, in that size."""
    vessel, _, said = value.partition("=")
    size = knowledge.vessel_size(vessel, said)
    if size is None:
        return None, talk.no_such_size(vessel, said)
    others = tuple(v for v in profile.kitchen.vessels if v.id != vessel)
    kitchen = replace(profile.kitchen, vessels=(*others, VesselAt(id=vessel, size=size)))
    return _kitchen(profile, kitchen, f"{vessel} {size}")


def _rules(profile: Profile, reading: Reading, knowledge: Knowledge) -> tuple[Profile, list[str]]:
    """Diets and foods never wanted. An allergy bars the allergen, not only the food that was named."""
    allergens = {name: tokens for name in reading.allergies if (tokens := knowledge.allergens(name))}
    barred = tuple(dict.fromkeys(f"no {token}" for tokens in allergens.values() for token in tokens))
    new = (*reading.diet, *barred)
    foods = [name for name in reading.excluded if name not in allergens]
    diets = tuple(dict.fromkeys(d for d in (*profile.diets, *new) if not _lifts(reading, d)))
    excluded = tuple(
        dict.fromkeys(x for x in (*profile.excluded, *reading.excluded) if not _lifts(reading, f"no {x}"))
    )
    kept = [talk.lifted(d, d in profile.diets) for d in reading.diet_lifted]
    kept += [*new] + ([f"no {listed(foods, 'or')}"] if foods else [])
    return replace(profile, diets=diets, excluded=excluded), kept


def _lifts(reading: Reading, diet: str) -> bool:
    return any(diet.removesuffix("s") == gone.removesuffix("s") for gone in reading.diet_lifted)


def released(request: Request, reading: Reading) -> Request:
    """A request without what a setting takes back: a diet lifted, a vessel that is there again."""
    return replace(
        request,
        diets=tuple(d for d in request.diets if not _lifts(reading, d)),
        not_vessels=tuple(v for v in request.not_vessels if v != reading.vessel),
    )


def _town(profile: Profile, value: str) -> Change:
    return None, talk.TOWN


def _vessels(profile: Profile, reading: Reading) -> tuple[Profile, list[str]]:
    """A vessel named in a setting is there; one ruled out is not."""
    kept: list[str] = []
    have = profile.kitchen.vessels
    for name in reading.not_vessel:
        if len(have) > 1 and any(v.id == name for v in have):
            have = tuple(v for v in have if v.id != name)
            kept.append(f"no {name}")
    if reading.vessel is not None:
        if all(v.id != reading.vessel for v in have):
            have = (*have, VesselAt(id=reading.vessel))
        if not any(name == "vessel_size" for name, _ in reading.settings):
            kept.append(f"with a {reading.vessel}")
    return replace(profile, kitchen=replace(profile.kitchen, vessels=have)), kept


SETTERS: dict[str, Callable[[Profile, str], Change]] = {
    "units": _units,
    "oven_max_degC": _oven,
    "fan_oven": _fan,
    "oven_offset_K": _oven_offset,
    "sheet": _sheet,
    "altitude_m": _altitude,
    "people": _people,
    "eaters": _people,
    "utc_offset_min": _offset,
    "town": _town,
}
