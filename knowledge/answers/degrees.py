"""Temperatures: as they stand in a question, and as an answer prints them."""

from __future__ import annotations

import re

from knowledge.answers.model import Question
from knowledge.units import celsius, fahrenheit

TEMPERATURE = re.compile(
    r"(?<![\w.])(-?\d{1,3}(?:\.\d+)?) ?(?:degrees?|deg|°|º)? ?(celsius|centigrade|fahrenheit|c|f)\b"
)
"""A number, and the scale it is on."""

_BARE = re.compile(
    r" (?:at|reads?|reading|is|to|hits?|reached|of|be|says?|said|shows?|got) (\d{2,3})"
    r"(?: degrees?| deg)?(?= )"
)
"""A number where a thermometer or a dial is spoken of, without a scale."""

HOTTEST_READING_DEGC = 100.0  # above it a bare reading of food can only be Fahrenheit


def temperatures_degC(question: Question) -> tuple[float, ...]:
    """Temperatures in the question; a bare number next to "at" or "reads" above 100 is Fahrenheit."""
    scaled = TEMPERATURE.findall(question.plain)
    oven = question.says("oven", "roast", "bake", "airfryer", "how long", "time_")
    if scaled or oven or not question.mentions:
        return tuple(on_scale_degC(float(value), scale) for value, scale in scaled)
    bare = map(float, _BARE.findall(question.plain))
    return tuple(celsius(value) if value > HOTTEST_READING_DEGC else value for value in bare)


def on_scale_degC(value: float, scale: str) -> float:
    """A number on a scale named "f...", "c..." (Fahrenheit, Celsius, centigrade) [°C]."""
    return celsius(value) if scale.startswith("f") else value


def as_read(degC: float) -> str:
    """A reading in both scales, to the tenth: rounded further it could seem to meet a minimum."""
    return f"{round(degC, 1):g} °C / {round(fahrenheit(degC), 1):g} °F"


def both(degC: float) -> str:
    """A temperature in both scales, as the answers print it."""
    return f"{degC:.0f} °C / {fahrenheit(degC):.0f} °F"
