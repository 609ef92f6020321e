"""Temperatures: as they stand in a question, and as an answer prints them."""

from __future__ import annotations

import re
from dataclasses import dataclass

from knowledge.answers.model import Question
from knowledge.units import ABSOLUTE_ZERO_DEGC, celsius, fahrenheit

TEMPERATURE = re.compile(
    r"(?<![\w.])(-?\d{1,3}(?:\.\d+)?) ?(?:degrees?|deg|°|º)? ?(celsius|centigrade|fahrenheit|c|f)\b"
)
"""A number, and the scale it is on."""

_BARE = re.compile(
    r"(?<! lunch)(?<! party)(?<! dinner)(?<! group)(?<! crowd)(?<! table)"  # "a party of 60"
    r" (?:at|reads?|reading|is|to|hits?|reached|of|be|says?|said|shows?|got) (\d{2,3})"
    r"(?: degrees?| deg)?(?= )(?! (?:g|kg|grams?|ml|l|oz|lbs?|people) )"  # "how many sticks is 250 g"
    r"| (\d{2,3}) (?:degrees? |deg )?(?:inside|internal|internally|core|in the"
    r" (?:middle|cent(?:re|er)|thickest))(?= )"
)
"""A number where a thermometer or a dial is spoken of, without a scale."""

ABSOLUTE_ZERO_DEGF = -459.67
HOTTEST_READING_DEGC = 100.0  # above it a bare reading of food can only be Fahrenheit


@dataclass(frozen=True, slots=True, kw_only=True)
class Degrees:
    """A temperature as it is said; `start` and `end` are its place in the plain text."""

    value: float
    scale: str  # "C" or "F"
    start: int = 0
    end: int = 0

    @property
    def degC(self) -> float:
        """In Celsius."""
        return celsius(self.value) if self.scale == "F" else self.value

    @property
    def degF(self) -> float:
        """In Fahrenheit."""
        return self.value if self.scale == "F" else fahrenheit(self.value)

    def __str__(self) -> str:
        return f"{self.value:g} °{self.scale}"


def scale_of(word: str) -> str:
    """ "C" for "c", "celsius" and "centigrade", "F" for "f" and "fahrenheit"."""
    return word[0].upper()


def is_possible(value: float, scale: str) -> bool:
    """True for a temperature that there is: not "-280 c"."""
    least = ABSOLUTE_ZERO_DEGF if scale_of(scale) == "F" else ABSOLUTE_ZERO_DEGC
    return value >= least


def degrees_in(question: Question) -> Degrees | None:
    """The first temperature with its scale; none where there can't be such a one."""
    found = TEMPERATURE.search(question.plain)
    if found is None or not is_possible(float(found[1]), found[2]):
        return None
    return Degrees(value=float(found[1]), scale=scale_of(found[2]), start=found.start(), end=found.end())


def temperatures_degC(question: Question) -> tuple[float, ...]:
    """Temperatures in the question; a bare number next to "at" or "reads" above 100 is Fahrenheit."""
    scaled = [pair for pair in TEMPERATURE.findall(question.plain) if is_possible(float(pair[0]), pair[1])]
    out = question.says("out of the oven", "out of oven", "from the oven")  # then it is of the food
    oven = not out and question.says("oven", "roast", "bake", "airfryer", "how long", "time_")
    if scaled or oven or not question.mentions:
        return tuple(Degrees(value=float(value), scale=scale_of(word)).degC for value, word in scaled)
    bare = [float(by or before) for by, before in _BARE.findall(question.plain)]
    return tuple(celsius(value) if value > HOTTEST_READING_DEGC else value for value in bare)


def as_read(degC: float) -> str:
    """A reading in both scales, to the tenth: rounded further it could seem to meet a minimum."""
    return f"{round(degC, 1):g} °C / {round(fahrenheit(degC), 1):g} °F"


def both(degC: float) -> str:
    """A temperature in both scales, as the answers print it."""
    return f"{degC:.0f} °C / {fahrenheit(degC):.0f} °F"
