"""What holds beyond tonight: units, kitchen, altitude, eaters, reminders. By patterns over flat text."""

from __future__ import annotations

import re

from knowledge.sheets import sheet_said
from knowledge.text.cues import cue
from knowledge.text.fields import NUM, Span, value
from knowledge.text.vocabulary import table

_UNITS_US = (
    r"(?:fahrenheit|imperial|ounces(?: and pounds)?|pounds(?: and ounces)?|cups|us units|american "
    r"units|us customary|oz)"
)
_UNITS_METRIC = r"(?:celsius|centigrade|metric|grams?(?: and \w+)?|kilos?|millilitres|ml)"


def is_setting(masked: str) -> bool:
    """Whether a masked text speaks of what holds beyond tonight."""
    return bool(cue("setting", "").search(masked))


_ALTITUDE = re.compile(
    r"\b(?P<n>\d{1,2},?\d{3}|\d{3,4}|\d(?:\.\d)?k) ?(?P<u>metres?|meters?|m|ft|feet|foot)\b"
)
_OVEN_MAX = re.compile(
    r"\boven (?:\w+ ){0,4}?(?:goes (?:up )?to|maxes(?: out)?(?: at)?|tops out at|max(?:imum)?(?: "
    r"is| of)?|does|reaches|goes) (?:about |only |up to )*(?P<n>\d{3}) ?(?P<u>c|f)?\b"
)
_OVEN_OFFSET = re.compile(
    rf"\boven (?:runs|is|runs about) (?:\w+ )?(?P<dir>hot|cold|cool|slow|"
    rf"fast)\b(?:[^.]*?(?P<n>{NUM}) ?(?:°|degrees?|deg)?)?"
)


def _short_names() -> dict[str, str]:
    """Short names of vessels that may stand beside a size, from `vessels.csv`, longest first."""
    short = {name: row["id"] for row in table("vessels.csv") for name in row["short"].split(";")}
    return dict(sorted(short.items(), key=lambda pair: -len(pair[0])))


_VESSEL_OF = _short_names()
_NAMES = "|".join(map(re.escape, _VESSEL_OF))
_UNIT = r"(?:cm|mm|inch(?:es)?|in\b|\")"
_SIDES = rf"\d+(?: ?{_UNIT})? ?(?:x|by) ?\d+(?: ?{_UNIT})?"  # of a tray
_MEASURE = r"\d+(?:[.,]\d{1,2})? ?(?:\"|(?:cm|inch(?:es)?|in|l|lit(?:re|er)s?|quarts?|qts?)\b)"
_SIZED = re.compile(
    rf"\b(?:a |an |my |the |only )?(?P<size>(?:half|quarter|three quarter) sheet|{_SIDES}|{_MEASURE})"
    rf"(?:(?: (?!(?:an?|the|my|in|on|of|for|and|with|slow|rice|egg)\b)\w+){{0,2}}? (?P<vessel>{_NAMES})\b)?"
)
_OVEN_WARE = re.compile(r"\b(?:sheets?(?: pan)?|trays?|roasting (?:tin|pan|dish)|baking (?:tin|dish))\b")
_TOWN = re.compile(r"\b(?:live|living|based|moved) (?:in|to|near) (?!\d|an? )\w+")
_SIZE_OF = re.compile(
    rf"\b(?P<vessel>{_NAMES}) (?:is|holds|takes|has|measures) (?:about |only |a )?"
    rf"(?P<size>{_SIDES}|{_MEASURE})"
)

_ALL_OF_IT = re.compile(
    r"\b(?:clear|reset|forget|delete|erase|wipe|remove) (?:all )?(?:of )?"
    r"(?:(?:my|our|the) (?:settings|preferences|profile|data|details)|"
    r"(?:everything|all)(?: that)? (?:about (?:me|us)|you know about (?:me|us)))\b"
)


def vessel_sizes(text: str) -> list[Span]:
    """Where a vessel is named with its size: "a 3 litre pressure cooker" is three litres of no food."""
    found = [*_SIZED.finditer(text), *_SIZE_OF.finditer(text)]
    return [match.span() for match in found if match.group("vessel")]


def _vessel_size(text: str) -> str | None:
    """The first vessel of a flat text that has a size, with it: "saute pan=28 cm"."""
    for match in (*_SIZE_OF.finditer(text), *_SIZED.finditer(text)):
        size, name = match.group("size"), match.group("vessel")
        if "sheet" in size or (name and re.fullmatch(_SIDES, size)):
            return f"{_VESSEL_OF['tray']}={size}"
        if name:
            return f"{_VESSEL_OF[name]}={size}"
    return None


def settings(text: str) -> tuple[tuple[str, str], ...]:
    """Settings a flat text gives, as (name, value): units, altitude_m, oven_max_degC, fan_oven, sheet, size;
    ("town", "named") where a place is said of which the altitude is not known; ("everything", "forget")
    where all of them are to go."""
    if _ALL_OF_IT.search(text):
        return (("everything", "forget"),)
    out: dict[str, str] = {}
    us = re.search(rf"\b{_UNITS_US}\b", text)
    metric = re.search(rf"\b{_UNITS_METRIC}\b", text)
    if us and not (metric and re.search(rf"(?:not|no|instead of) {_UNITS_US}", text)):
        out["units"] = "us"
    elif metric:
        out["units"] = "metric"
    if (match := _ALTITUDE.search(text)) and re.search(
        r"altitude|sea level|elevation|\bat \d|\blive\b|up\b", text
    ):
        digits = match.group("n").replace(",", "")
        metres = float(digits[:-1]) * 1000 if digits.endswith("k") else float(digits)
        if match.group("u") in ("ft", "feet", "foot"):
            metres *= 0.3048
        if metres <= 6000:
            out["altitude_m"] = f"{metres:.0f}"
    if match := _OVEN_MAX.search(text):
        degrees = float(match.group("n"))
        if match.group("u") == "f" or (not match.group("u") and degrees > 320):
            degrees = (degrees - 32) * 5 / 9
        out["oven_max_degC"] = f"{degrees:.0f}"
    if match := _OVEN_OFFSET.search(text):
        sign = 1 if match.group("dir") in ("hot", "fast") else -1
        out["oven_offset_K"] = f"{sign * value(match.group('n')) if match.group('n') else sign * 10:.0f}"
    if re.search(r"\b(?:no|not a|isnt a|without) (?:fan|convection)\b", text):
        out["fan_oven"] = "no"
    elif re.search(r"\b(?:fan (?:oven|assisted|forced)|convection(?: oven)?|oven is (?:a )?fan)\b", text):
        out["fan_oven"] = "yes"
    if _OVEN_WARE.search(text) and (sheet := sheet_said(text)):
        out["sheet"] = sheet
    if (sized := _vessel_size(text)) is not None:
        out["vessel_size"] = sized
    if match := re.search(
        rf"\b(?:usually|normally|always|household of|family of|we(?: a|)re|there are) (?:cook for |"
        rf"cooking for |for )?({NUM})\b",
        text,
    ):
        out["people"] = f"{value(match.group(1)):g}"
    if match := re.search(r"\butc ?([+-]\d{1,2})(?::?(\d\d))?", text):
        hours = int(match.group(1))
        minutes = abs(hours) * 60 + int(match.group(2) or 0)
        out["utc_offset_min"] = str(minutes if hours >= 0 else -minutes)
    if _TOWN.search(text) and "altitude_m" not in out:
        out["town"] = "named"
    return tuple(out.items())
