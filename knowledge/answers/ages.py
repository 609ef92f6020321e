"""How long ago, and how long: hours that food stood, days that it is old, months that it keeps."""

from __future__ import annotations

import re

from knowledge.answers.heard import hears
from knowledge.answers.model import Question
from knowledge.answers.numbers import COUNTS

LONG_H = 6.5  # what "overnight", "since lunch" or "all day" is at least
HALF_HOUR_H = 0.5
DAYS_SAID_IN_WEEKS = 14.0
DAYS = {"day": 1.0, "week": 7.0, "month": 30.0}
WEEK = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_NUMBER = {
    **COUNTS, "a": 1.0, "an": 1.0, "half a": 0.5, "half an": 0.5,
    "a couple of": 2.0, "couple of": 2.0, "a few": 3.0, "few": 3.0,
}  # fmt: skip
_COUNT = rf"(\d+(?:\.\d)?|{'|'.join(sorted(_NUMBER, key=len, reverse=True))})"
_CLOCK = r"(\d{1,2})(?:[.:]\d\d)? ?(am|pm|o clock)?"  # the minutes are left out: it is a matter of hours

_FOR_A_TIME = re.compile(
    rf" (?:(?:about|for|over|some|around|nearly|almost|more than) )*{_COUNT} ?(?:and a half )?"
    r"(h|hrs?|hours?|m|mins?|minutes?) "
)
_FROM_TILL = re.compile(rf" (?:from|between) {_CLOCK} (?:to|till|until|til|and) {_CLOCK} ")
_SINCE = re.compile(rf" since (?:about |around )?{_CLOCK} ")
_NOW = re.compile(rf" (?:now|its|it s|it is) (?:now )?{_CLOCK} ")
_SINCE_A_DAY = re.compile(rf" since (?:about )?(?:{'|'.join(WEEK)}) ")

_DAY_COUNT = re.compile(r" day (\d{1,2}) ")  # "on day 4"
_AGE = re.compile(
    rf" (?:{_COUNT}[ -]?)?(day|week|month)s?"
    r" (?:old|ago|in the|after|later|since|past|still|now|ok|okay|safe|fine|good|is it)"
)
_AFTER = re.compile(rf" after {_COUNT}[ -]?(day|week|month)s?(?= (?:in the fridge|chilled|still)| $)")
_WEEKDAY = re.compile(rf" ({'|'.join(f'{day[:3]}(?:{day[3:]})?' for day in WEEK)}) ")
_TODAY = re.compile(r" (?:its|it s|it is|today is|today s|todays|now|and now|now is)(?: now| already)? $")


def hours_said(question: Question) -> float | None:
    """How long something stood [h]; `LONG_H` where only "overnight" and the like is said."""
    plain = question.plain
    if between := _FROM_TILL.search(plain):
        return _hours_between(*between.groups())
    since = _SINCE.search(plain)
    if since and (now := _NOW.search(plain, since.end() - 1)):
        return _hours_between(*since.groups(), *now.groups())
    if hears(question, "for many hours") or _SINCE_A_DAY.search(plain):
        return LONG_H
    said = [_number(found[1]) / (60.0 if found[2].startswith("m") else 1.0)
            for found in _FOR_A_TIME.finditer(plain)]  # fmt: skip
    if said:
        return max(said) + (HALF_HOUR_H if "and a half" in plain else 0.0)
    return LONG_H if since else None


def age_days(question: Question) -> float | None:
    """How old the food is [d]: "4 days old", "a week after opening", "made on sunday, it's thursday"."""
    if count := _DAY_COUNT.search(question.plain):
        return float(count[1])
    if age := _AGE.search(question.plain) or _AFTER.search(question.plain):
        return _number(age[1] or "a") * DAYS[age[2]]
    said = list(_WEEKDAY.finditer(question.plain))
    if len(said) != 2:
        return None
    first, second = said
    if _TODAY.search(question.plain[: first.start() + 1]):
        first, second = second, first
    elif not _TODAY.search(question.plain[: second.start() + 1]):
        return None
    number = {day[:3]: place for place, day in enumerate(WEEK)}
    return float((number[second[1][:3]] - number[first[1][:3]]) % 7) or None


def span_of_hours(hours: float) -> str:
    """ "45 minutes", "90 minutes", "4 hours"; what was only called long stays so."""
    if hours == LONG_H:
        return "that long"
    if hours < 1.0 or (hours < 3.0 and hours % 1.0):
        return f"{hours * 60:.0f} minutes"
    return "1 hour" if hours == 1.0 else f"{hours:g} hours"


def span_of_days(days: float) -> str:
    """ "1 day", "4 days", "3 weeks"."""
    if days >= DAYS_SAID_IN_WEEKS:
        return f"{days / DAYS['week']:.0f} weeks"
    return "1 day" if days == 1 else f"{days:g} days"


def span_of_months(months: float) -> str:
    """ "1 month", "2-3 months", "6 months"."""
    if months == 2:
        return "2-3 months"  # as the charts print it
    return "1 month" if months == 1 else f"{months:g} months"


def _number(said: str) -> float:
    return _NUMBER[said] if said in _NUMBER else float(said)


def _hours_between(start: str, start_half: str | None, end: str, end_half: str | None) -> float:
    """From one time of the day to the next that has the other name, on a dial of twelve hours."""
    return float((_of_the_clock(end, end_half) - _of_the_clock(start, start_half)) % 12 or 12)


def _of_the_clock(number: str, half: str | None) -> int:
    return int(number) % 12 + (12 if half == "pm" else 0)
