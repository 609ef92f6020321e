"""One temperature said another way: in the other scale, as a gas mark, for an oven with a fan.

A fan heats as a setting 20 °C / 25-50 °F higher does without, and a gas mark is 25 °F from mark 1
at 275 °F (both common practice, printed on ovens).
"""

from __future__ import annotations

import re

from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.degrees import Degrees, both, degrees_in, scale_of
from knowledge.answers.reading.heard import hears, pattern
from knowledge.units import celsius, fahrenheit

FAN_K = 20.0
FAN_DEGF = 25  # at least; 50 at most
MARK_1_DEGF, MARK_DEGF, MARKS = 275, 25, range(1, 11)
PRACTICE = "common practice"
SCALES = "definition of the Fahrenheit scale"

# From here on a temperature is that of an oven, whose dial has steps; below it stays exact.
OVEN_FROM_DEGC, OVEN_FROM_DEGF = 120.0, 250.0
_DIAL_K, _DIAL_DEGF = 5, 25

_FAN = re.compile(
    r" fan (?:oven )?(?:at )?(1\d0|2[0-4]0)(?: ?c)? "  # "fan oven at 180 c"
    r"| (1\d0|2[0-4]0) ?c?(?: degrees)?(?: in an?| in the| in)? fan "  # "180 c in a fan oven"
)
_FAN_DEGF = re.compile(r" ([2-4]\d[05]) ?f fan ")
_TO_FAN = (
    r" (1\d0|2[0-5]0) ?c?(?: degrees)?(?: in an?| in)? {ordinary oven} .*fan "
    r"| {ordinary oven} (?:oven )?(?:at )?(1\d0|2[0-5]0) ?c? .*fan "
)
_GAS = re.compile(r" gas (?:mark )?(\d{1,2}|1/2|1/4|half|quarter|a half) ")
_LOW_MARKS = {"1/2": 250, "half": 250, "a half": 250, "1/4": 225, "quarter": 225}  # degF
_SCALE = re.compile(r" (celsius|centigrade|fahrenheit|c|f) ")
_BARE = re.compile(r" (\d{2,3})(?: degrees?)? (?:in|to|into|as) (celsius|centigrade|fahrenheit|c|f) ")


def fan_oven(question: Question) -> Answer | None:
    """A fan oven's setting for an ordinary oven's, or the other way."""
    if not (hears(question, "ordinary oven") or question.says("gas", "convert", "without fan")):
        return None
    if fan := _FAN.search(question.plain):
        fan_degC = float(fan[1] or fan[2])
        mark = mark_of(fahrenheit(fan_degC + FAN_K))
        marked = f", gas mark {mark}" if question.says("gas") and mark in MARKS else ""
        return _apart(f"Fan {both(fan_degC)} is {both(fan_degC + FAN_K)} in an ordinary oven{marked}.")
    if fan := _FAN_DEGF.search(question.plain):
        text = f"Fan {fan[1]} °F is about {int(fan[1]) + FAN_DEGF} °F in an ordinary oven, 25-50 °F more."
        return Answer(known=True, answer=f"{text} ({PRACTICE})", sources=(PRACTICE,))
    if plain := pattern(question.store, _TO_FAN).search(question.plain):
        degC = float(plain[1] or plain[2])
        return _apart(f"{both(degC)} in an ordinary oven is {both(degC - FAN_K)} with a fan.")
    return None


def _apart(text: str) -> Answer:
    """An answer with how far apart the ovens are."""
    return Answer(known=True, answer=f"{text} ({FAN_K:.0f} °C apart, {PRACTICE})", sources=(PRACTICE,))


def mark_of(degF: float) -> int:
    """The gas mark nearest to a temperature; not every number is in `MARKS`."""
    return round((degF - MARK_1_DEGF) / MARK_DEGF) + 1


def to_gas_mark(question: Question) -> Answer | None:
    """ "350 f as a gas mark"."""
    read = degrees_in(question)
    if read is None or not hears(question, "gas mark"):
        return None
    mark = mark_of(read.degF)
    text = f"{read} is gas mark {mark}, in an ordinary oven."
    return Answer(known=mark in MARKS, answer=text, sources=(PRACTICE,))


def from_gas_mark(question: Question) -> Answer | None:
    """ "Gas mark 6" in degrees."""
    found = _GAS.search(question.plain)
    if found is None:
        return None
    degF = _LOW_MARKS.get(found[1])
    if degF is None and int(found[1]) not in MARKS:
        text = f"There is no gas mark {found[1]}: the marks end at 9 or 10, about 240-260 °C / 475-500 °F."
        return Answer(known=True, answer=f"{text} ({PRACTICE})", sources=(PRACTICE,))
    degF = degF or MARK_1_DEGF + MARK_DEGF * (int(found[1]) - 1)
    degC = round(celsius(degF) / 10) * 10
    text = (
        f"Gas mark {found[1]} is {degC} °C / {degF} °F in an ordinary oven, "
        f"{degC - FAN_K:.0f} °C with a fan. "
        f"({MARK_DEGF} °F a mark from {MARK_1_DEGF} °F; {PRACTICE})"
    )
    return Answer(known=True, answer=text, sources=(PRACTICE,))


def named_oven(question: Question) -> Answer | None:
    """ "A moderate oven", "bake in a slow oven": in degrees (`oven_words.csv`)."""
    if not hears(question, "asks for degrees") or degrees_in(question) is not None:
        return None
    for row in question.store.table("oven_words"):
        said = next((word for word in row["words"].split(";") if question.says(f"{word}_")), None)
        if said is not None:
            low, high = (round(celsius(float(row[end])) / 10) * 10 for end in ("low_degF", "high_degF"))
            degC = dict.fromkeys((f"{low}", f"{high}"))
            degF = dict.fromkeys((row["low_degF"], row["high_degF"]))
            marks = dict.fromkeys(_mark_said(float(row[end])) for end in ("low_degF", "high_degF"))
            text = (
                f"A {said.removesuffix(' oven')} oven is {'-'.join(degC)} °C / {'-'.join(degF)} °F, "
                f"gas mark {'-'.join(marks)}; with a fan 20 °C less."
            )
            return Answer(known=True, answer=text, sources=(PRACTICE,))
    return None


def _mark_said(degF: float) -> str:
    return {250.0: "1/2", 225.0: "1/4"}.get(degF) or f"{mark_of(degF)}"


def other_scale(question: Question) -> Answer | None:
    """A temperature in the other scale: "350 f to c", "180 celsius in fahrenheit", "350 in celsius"."""
    if question.mentions:
        return None
    if (read := degrees_in(question)) is None:
        return _other_than_asked(question)
    beside = f"{question.plain[: read.start]} {question.plain[read.end :]}"
    others = {scale_of(found[1]) for found in _SCALE.finditer(beside)} - {read.scale}
    if not others and not question.says("convert", "conver", "in the other"):
        return None
    fan = " With a fan set it 20 °C / 35 °F lower." if question.says("fan") else ""
    return Answer(known=True, answer=f"{_rescaled(read)}{_dial(read)}.{fan}", sources=(SCALES,))


def _other_than_asked(question: Question) -> Answer | None:
    """ "350 in celsius": the scale that is asked for tells the one that was meant."""
    found = _BARE.search(question.plain)
    if not found:
        return None
    meant = Degrees(value=float(found[1]), scale="F" if scale_of(found[2]) == "C" else "C")
    return Answer(known=True, answer=f"{_rescaled(meant)}.", sources=(SCALES,))


def _rescaled(read: Degrees) -> str:
    """ "350 °F is 177 °C"."""
    return f"{read} is {round(read.degC)} °C" if read.scale == "F" else f"{read} is {round(read.degF)} °F"


def _dial(read: Degrees) -> str:
    """What to set an oven to, "" for a temperature that is none of an oven."""
    if read.scale == "F" and read.degF > OVEN_FROM_DEGF:
        return f"; set an oven to {round(read.degC / _DIAL_K) * _DIAL_K} °C"
    if read.scale == "C" and read.degC > OVEN_FROM_DEGC:
        return f"; set an oven to {round(round(read.degF) / _DIAL_DEGF) * _DIAL_DEGF} °F"
    return ""
