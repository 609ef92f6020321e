"""How long food stood [h], in words or by the clock: "nine hours", "at 8, home at 5", "overnight".

Times in the fridge and times of cooking are other times; of several that are told the longest counts.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from knowledge.answers.model import Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.numbers import COUNTS

LONG_H = 6.5  # what "overnight", "since lunch" or "all day" is at least
HALF_HOUR_H = 0.5
NUMBERS = {
    **COUNTS, "a": 1.0, "an": 1.0, "fifteen": 15.0, "eighteen": 18.0, "twenty": 20.0, "twenty four": 24.0,
    "thirty": 30.0, "forty": 40.0, "forty five": 45.0, "fifty": 50.0, "ninety": 90.0, "half a": 0.5,
    "half an": 0.5, "a couple of": 2.0, "couple of": 2.0, "a couple": 2.0, "a few": 3.0, "few": 3.0,
    "several": 3.0,
}  # fmt: skip
COUNT = rf"(\d+(?:\.\d+)?|{'|'.join(sorted(NUMBERS, key=len, reverse=True))})"
_OR_SO = (
    r"(?:(?:about|for|over|some|around|nearly|almost|more than|like|at least|a good|roughly"
    r"|\d+ ?(?:-|or|to)) ?)*"
)
_UNIT = r"(?:and a half )?(h|hrs?|hours?|m|mins?|minutes?)"
_FOR_A_TIME = re.compile(rf" {_OR_SO}(?<![\d.]){COUNT} ?{_UNIT}(?= |/)")
_FOR_DAYS = re.compile(rf" {_OR_SO}{COUNT} (days?|nights?|weeks?)(?! (?:old|ago|before|in the fridge))(?= )")
_WEEKDAYS = r"(?:monday|tuesday|wednesday|thursday|friday|saturday|sunday)"
_SINCE_A_DAY = re.compile(rf" since (?:about )?{_WEEKDAYS} ")

_LONG_SAID = r"(?:overnight|all night|all day|last night|yesterday|this morning)"
_COLD = r"(?:fridge|freezer|refrigerator|cool ?box|chiller)"
_IN_THE_COLD = re.compile(  # "8 hours in the fridge": no time in the warm
    rf" (?:in|into) (?:the |my |our |a )?{_COLD} (?:for |since |about |from |over )*"
    rf"(?:{_LONG_SAID}|{COUNT} ?{_UNIT})(?= )"
    rf"| (?:{_LONG_SAID}|{COUNT} ?{_UNIT}) in (?:the |my |our |a )?{_COLD}(?= )"
)
_LEFT_SINCE = re.compile(
    r" (?:left|forgot|forgotten|sat|stood|been|lay|melted|died|unplugged) (?:\w+ ){0,10}?"
    r"(?:last night|yesterday) "
    r"| (?:last night|yesterday) (?:\w+ ){0,6}?(?:left|forgot|forgotten|sat|stood|melted|died|unplugged) "
    r"| since (?:last night|yesterday) "
)
_COOKED_SO_LONG = re.compile(  # "roasted it for 2 hours"
    r" (?:cook|roast|bak|boil|simmer|brais|stew|smok|steam|fry|fri|grill|microwav|preheat|reheat)\w*"
    rf" (?:it |them |this |that )?(?:for |about |at \d+ ?(?:c|f|degrees)? ?for ){_OR_SO}{COUNT} ?{_UNIT}(?= )"
)

_NO_CLOCK = (  # what follows a number that is no time of the day
    r"(?! ?(?:h|hrs?|hours?|m|mins?|minutes?|days?|nights?|weeks?|months?|years?|yrs?|degrees?|deg|c|f|°"
    r"|kg|g|grams?|kilos?|lbs?|pounds?|oz|ml|l|litres?|people|persons?|of|eggs?|cups?|cm|mm|inch\w*"
    r"|percent|%|x|pieces?)(?: |$)"
    r"|[./,°%]?\d|°|%)"
)
_HALF = (
    r"(?: ?(?P<half>am|pm|a m|p m|in the morning|this morning|in the afternoon|this afternoon"
    r"|in the evening|this evening|at night|tonight|last night)(?= ))?"
)
_READING = re.compile(
    r" (?:(?P<cue>at|from|since|till|until|til|to|and|by|around|about|its|it s|it is|now|between|before"
    r"|after)"
    r" (?:about |around |like |now |its |it s |it is )?)?"
    rf"(?P<hour>[01]?\d|2[0-4])(?:[.: ](?P<minute>[0-5]\d))?(?: ?o ?clock)?{_NO_CLOCK}" + _HALF + r"(?= )"
    r"| (?P<word>noon|midday|midnight|this morning)(?= )"
    r"| (?:at|from|since|till|until|til|its|it s|it is|after|before)"
    r" (?P<meal>lunch|lunchtime|breakfast|dinnertime|teatime)(?= )"
)
_OF_THE_DAY = {
    "noon": 12.0, "midday": 12.0, "midnight": 0.0, "lunch": 12.5, "lunchtime": 12.5, "breakfast": 8.0,
    "teatime": 17.0, "dinnertime": 19.0, "this morning": 8.0,
}  # fmt: skip
_WORDS = "|".join(COUNTS)
_PAST = re.compile(rf" (half|quarter) past (\d{{1,2}}|{_WORDS})(?= )")
_O_CLOCK = re.compile(rf" ({_WORDS})(?= (?:o ?clock|am|pm|in the morning|in the afternoon|in the evening) )")
_JOINS = frozenset({"and", "to", "by", "about", "around", "before", "after"})  # they lead amounts as well


@dataclass(frozen=True, slots=True)
class _Clock:
    hour: float
    is_sure: bool  # which half of the day is known
    is_loose: bool  # a bare number behind a word that leads amounts as well


def hours_said(question: Question) -> float | None:
    """How long something stood [h]; `LONG_H` where only "overnight" and the like is said."""
    plain = _COOKED_SO_LONG.sub(" ", _IN_THE_COLD.sub(" ", question.plain))
    return hours_in(plain, question)


def hours_in(plain: str, question: Question) -> float | None:
    """The longest time that a text tells [h]."""
    told = [value_of(found[1]) / (60.0 if found[2].startswith("m") else 1.0)
            for found in _FOR_A_TIME.finditer(plain)]  # fmt: skip
    if told and "and a half" in plain:
        told = [max(told) + HALF_HOUR_H]
    if hears(question, "for many hours", plain=plain):
        told.append(LONG_H)
    if _SINCE_A_DAY.search(plain):
        told.append(LONG_H)
    if between := _between(plain):
        told.append(between)
    if not told:
        told = [value_of(days[1]) * (168.0 if days[2].startswith("w") else 24.0)
                for days in _FOR_DAYS.finditer(plain)]  # fmt: skip
    if not told and _LEFT_SINCE.search(plain):
        told.append(LONG_H)
    return max(told, default=None)


def span_of_hours(hours: float) -> str:
    """ "45 minutes", "90 minutes", "4 hours"; what was only called long stays so."""
    if hours == LONG_H:
        return "that long"
    if hours < 1.0 or (hours < 3.0 and hours % 1.0):
        return f"{hours * 60:.0f} minutes"
    return "1 hour" if hours == 1.0 else f"{hours:g} hours"


def value_of(said: str) -> float:
    """The value of a count in digits or words."""
    return NUMBERS[said] if said in NUMBERS else float(said)


def _between(plain: str) -> float | None:
    """Hours from the first to the last time of the day that is named; `LONG_H` since one alone."""
    found = [reading for reading in _READING.finditer(_in_digits(plain)) if _is_a_time(reading)]
    spans = " from " in plain or " between " in plain
    read = [clock for clock in map(_clock, found) if spans or not clock.is_loose]
    if len(read) < 2:
        return LONG_H if read and " since " in plain else None
    first, last = read[0], read[-1]
    if first.is_sure and last.is_sure:
        return (last.hour - first.hour) % 24 or None
    return (last.hour - first.hour) % 12 or 12.0


def _in_digits(plain: str) -> str:
    """ "Half past three" -> "3.30", "five pm" -> "5 pm"."""
    minutes = {"half": "30", "quarter": "15"}
    plain = _PAST.sub(lambda m: f" {COUNTS.get(m[2], m[2])}.{minutes[m[1]]}", plain)
    return _O_CLOCK.sub(lambda m: f" {COUNTS[m[1]]}", plain)


def _is_a_time(found: re.Match[str]) -> bool:
    return bool(found["word"] or found["meal"] or found["cue"] or found["half"])


def _clock(found: re.Match[str]) -> _Clock:
    if named := found["word"] or found["meal"]:
        return _Clock(_OF_THE_DAY[named], is_sure=True, is_loose=False)
    hour = int(found["hour"]) + int(found["minute"] or 0) / 60
    half = (found["half"] or "").replace(" ", "")
    if half in ("am", "inthemorning", "thismorning"):
        return _Clock(hour % 12, is_sure=True, is_loose=False)
    if half:
        return _Clock(hour % 12 + 12, is_sure=True, is_loose=False)
    return _Clock(hour, is_sure=hour > 12, is_loose=hour <= 12 and found["cue"] in _JOINS)
