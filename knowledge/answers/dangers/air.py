"""The warmth of a day, a room or a place, told apart from the heat of cooking."""

from __future__ import annotations

import re

from knowledge.answers.model import Question
from knowledge.answers.reading.degrees import temperatures_degC
from knowledge.answers.reading.heard import hears

WARM_DEGC, PLACE_MAX_DEGC = 24.0, 47.0  # a temperature between them is one of a warm place
HOT_ROOM_DEGC, HOT_FOOD_DEGC = 32.0, 60.0  # USDA FSIS: 90 °F, 1 hour; from 140 °F on it is food kept hot
_NO_SCALE = re.compile(r" ([23]\d|4[0-7]) ?(?:degrees?|deg|°)(?= )")  # of a day: below 50 that is Celsius


def air_degC(question: Question) -> float | None:
    """The temperature said of the day, the room or the place, None where it is one of food."""
    if not hears(question, "air") or hears(question, "being cooked"):
        return None
    return next((degC for degC in _degrees_said(question) if _is_of_a_place(degC)), None)


def is_warm_place(question: Question) -> bool:
    """True for a temperature of a warm room or day, or a car or picnic, with no cooking spoken of."""
    if hears(question, "being cooked"):
        return False
    return any(map(_is_of_a_place, _degrees_said(question))) or hears(question, "warm place")


def is_hot_day(question: Question) -> bool:
    """True where the shorter limit of a hot room or day holds."""
    hot = any(HOT_ROOM_DEGC <= degC < HOT_FOOD_DEGC for degC in _degrees_said(question))
    return hot or hears(question, "hot day")


def _is_of_a_place(degC: float) -> bool:
    return WARM_DEGC <= degC <= PLACE_MAX_DEGC


def _degrees_said(question: Question) -> tuple[float, ...]:
    """The temperatures said, also "34 degrees" with no scale."""
    return (*temperatures_degC(question), *map(float, _NO_SCALE.findall(question.plain)))
