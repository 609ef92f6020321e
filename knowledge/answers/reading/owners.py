"""Whose a temperature is: of the oven, smoker, bath or slow cooker, or of the middle of the food.

It belongs to whatever is named nearest to it. One that is held for hours, or that no core
ever has, is of the surroundings too.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass

from knowledge.answers.dangers.air import PLACE_MAX_DEGC
from knowledge.answers.heat.minimums import HOTTEST_CORE_DEGC, MEATS
from knowledge.answers.model import Question
from knowledge.answers.reading.degrees import TEMPERATURE, is_possible
from knowledge.answers.reading.heard import hears, pattern
from knowledge.answers.reading.numbers import COUNTS
from knowledge.foods.store import Store
from knowledge.units import celsius

DEVICES = ("grill or smoker", "slow cooker", "bath", "oven")  # topics of `heard.csv`
CORE = "core"
HEAT = "heat"  # owner of a temperature that is of the surroundings, whatever gives it
NOBODY = ""
FAHRENHEIT_FROM = 260.0  # a bare number from here on is Fahrenheit
CORE_FAHRENHEIT_FROM = 100.0  # of a core, or of nobody
DOUBTFUL_FROM = 160.0  # a bare number of an oven from here to Fahrenheit's may be of either scale

_KNOBS = ("set ", "dial", "thermostat", "preheat")  # of whatever else is named
_ITS_OWN = re.compile(
    r" (oven|smoker|grill|roaster|bath) (?:thermometer )?(?:reads|says|shows|only reaches|reaches|hits) "
)
_OUT_OF_IT = re.compile(
    r" (?:out of|off|from|leaves|left) (?:the |my |our )?(?:oven|smoker|grill|slow cooker|bath) "
)
_FOR_HOURS = re.compile(
    r" (?:(?:for|about) (?:\w+ )?(?:hours?|hrs?)|\d+ ?(?:-|to)? ?\d* ?(?:hours?|hrs?|h)"
    rf"|(?:{'|'.join(COUNTS)}) hours?) "
)
_BARE = re.compile(
    r" (?:at|from|until|hits|reads|to|on|of|oven) (\d{2,3})(?: degrees?| deg)?(?= )"
    r"(?! (?:min|hour|g |kg|ml|per))"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Owned:
    """A temperature in the question and its owner: one of `DEVICES`, `CORE`, `HEAT` or `NOBODY`."""

    degC: float
    owner: str


@dataclass(frozen=True, slots=True, kw_only=True)
class _Number:
    """A temperature as it stands: its number and the first letter of its scale, "" for a bare one."""

    start: int
    end: int
    value: float
    scale: str

    def degC(self, owner: str) -> float:
        """In °C; a bare number is Fahrenheit where Celsius would be too hot for its owner."""
        hottest = CORE_FAHRENHEIT_FROM if owner in (CORE, NOBODY) else FAHRENHEIT_FROM
        is_fahrenheit = self.scale == "f" or (not self.scale and self.value > hottest)
        return celsius(self.value) if is_fahrenheit else self.value

    def is_doubtful(self, owner: str) -> bool:
        """True for 200 in an oven, which may be of either scale."""
        return not self.scale and owner != CORE and DOUBTFUL_FROM < self.value <= FAHRENHEIT_FROM


_Named = tuple[int, int, str]  # start and end of the words for an owner, the owner


def owned(question: Question) -> tuple[Owned, ...]:
    """The temperatures in the question, each with its owner."""
    plain = _OUT_OF_IT.sub(" is it done ", question.plain)  # what comes out of the oven has its own heat
    plain = _ITS_OWN.sub(r" \1 \1 ", plain)
    devices = _devices(plain, question.store)
    named = [*devices, *_cores(plain, question.store)]
    around = devices[0][2] if devices else HEAT
    meat = any(food.safety in MEATS for food in question.foods)
    found = []
    for number in _numbers(plain):
        owner = _nearest(number, named)
        if owner in (NOBODY, CORE) and meat and _is_around(question, number, owner):
            owner = around
        if not number.is_doubtful(owner):
            found.append(Owned(degC=number.degC(owner), owner=owner))
    return tuple(found)


def _devices(plain: str, store: Store) -> list[_Named]:
    """Where a device is named; its knobs only where nothing else of it is."""
    found = [
        (match.start(), match.end(), device)
        for device in DEVICES
        for match in pattern(store, f"(?<= ){{{device}}}(?= )").finditer(plain)
    ]
    return [place for place in found if not plain[place[0] :].startswith(_KNOBS)] or found


def _cores(plain: str, store: Store) -> Iterator[_Named]:
    """Where the middle of the food, or a reading of it, is named."""
    for match in pattern(store, "(?<= )(?=({core} ))").finditer(plain):
        yield match.start(), match.end(1), CORE


def _nearest(number: _Number, named: list[_Named]) -> str:
    def gap(place: _Named) -> int:
        start, end, _ = place
        return min(abs(start - number.end), abs(end - number.start))

    return min(named, key=gap, default=(0, 0, NOBODY))[2]


def _is_around(question: Question, number: _Number, owner: str) -> bool:
    """True for a heat that no core has, or one held for hours; no warmer than a hot day it is a place's."""
    if number.degC(CORE) > HOTTEST_CORE_DEGC:
        return True
    if owner == CORE or number.degC(owner) <= PLACE_MAX_DEGC:
        return False
    return hears(question, "low and long") or _FOR_HOURS.search(question.plain) is not None


def _numbers(plain: str) -> list[_Number]:
    """The temperatures with their scale; bare numbers only where none has one."""
    scaled = [
        _Number(start=m.start(), end=m.end(), value=float(m[1]), scale="c" if m[2][0] == "c" else "f")
        for m in TEMPERATURE.finditer(plain)
        if is_possible(float(m[1]), m[2])
    ]
    return scaled or [
        _Number(start=m.start(1), end=m.end(), value=float(m[1]), scale="") for m in _BARE.finditer(plain)
    ]
