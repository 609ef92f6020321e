"""How long a middle has to stay at a temperature below the usual minimum, to be as safe.

USDA FSIS, Appendix A: 7-log cuts of Salmonella in poultry (the fattest column), 7-log in whole red meat.
It counts from the moment the coldest spot is that hot, measured; a bath or an oven is not the core.
"""

from __future__ import annotations

import math
import re

from knowledge.answers.heat.minimums import Minimum
from knowledge.answers.model import Question
from knowledge.answers.reading.degrees import as_read
from knowledge.answers.reading.heard import hears
from knowledge.foods.store import Store
from knowledge.units import fahrenheit

POULTRY, RED_MEAT = "poultry", "whole_meat"
FATTEST = 12  # percent, the last column of the table
NEVER_BY_THE_CORE = "A bath or an oven set to it is not the core."
_FOR_MINUTES = re.compile(r" for (\d+(?:\.\d+)?) ?(s|secs?|seconds?|m|mins?|minutes?)(?= )")
_HELD = re.compile(r" (?:held|hold|holds|holding|stayed|stays|core|inside|internal|middle|centre|center) ")
A_TENTH_DEGF = 0.1  # what rounding between the scales may take off


def held_instead(question: Question, read_degC: float, minimum: Minimum) -> str:
    """What hold would make a low reading do, "" where none is asked for or published."""
    if not hears(question, "held at it"):
        return ""
    hold_s = _hold_s(question.store, minimum.id, read_degC)
    if not hold_s:
        return ""
    return (
        f"Only if the coldest spot itself stays at {as_read(read_degC)} for {_span(hold_s)}, measured,"
        f" does it do"
        f" as well (USDA FSIS, Appendix A). {NEVER_BY_THE_CORE}"
    )


def held_long_enough(question: Question, read_degC: float, minimum: Minimum) -> str:
    """The verdict on a core that is told to have stayed at a low reading as long as is published, else ""."""
    told_s = _told_s(question)
    hold_s = _hold_s(question.store, minimum.id, read_degC)
    if not told_s or not hold_s or told_s < hold_s:
        return ""
    return (
        f"Yes, if the coldest spot itself stayed at {as_read(read_degC)} for {_span(told_s)}, measured:"
        f" {_span(hold_s)} there do as well (USDA FSIS, Appendix A). {NEVER_BY_THE_CORE} Just reached, it is"
        " not enough."
    )


def _told_s(question: Question) -> float | None:
    """How long a core is told to have been held [s]; minutes in an oven are no hold."""
    told = _FOR_MINUTES.search(question.plain)
    if told is None or not _HELD.search(question.plain):
        return None
    return float(told[1]) * (1.0 if told[2].startswith("s") else 60.0)


def _hold_s(store: Store, kind: str, degC: float) -> float | None:
    """The longest published hold for a core no warmer than the reading [s]."""
    degF = math.floor(fahrenheit(degC) + A_TENTH_DEGF)
    if kind == POULTRY:
        rows = [row for row in store.table("lethality_poultry") if int(row["core_degF"]) == degF]
        return max((float(row[f"seconds_fat_{FATTEST}"]) for row in rows), default=None)
    if kind == RED_MEAT:
        rows = [row for row in store.table("lethality_meat") if int(row["core_degF"]) == degF]
        return max((float(row["seconds_7_log"]) for row in rows), default=None)
    return None


def _span(seconds: float) -> str:
    if seconds < 60:
        return f"{math.ceil(seconds):.0f} seconds"
    return f"{math.ceil(seconds / 60):.0f} minutes"
