"""How long ago: the days that food is old, the months that it keeps."""

from __future__ import annotations

import re

from knowledge.answers.model import Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.hours import COUNT, value_of

DAYS_SAID_IN_WEEKS = 14.0
DAYS = {"day": 1.0, "week": 7.0, "month": 30.0}
WEEK = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_DAY_COUNT = re.compile(r" day (\d{1,2}) ")  # "on day 4"
_AGE = re.compile(
    rf" (?:{COUNT}[ -]?)?(day|week|month)s?"
    r" (?:old|ago|in the|after|later|since|past|still|now|ok|okay|safe|fine|good|is it)"
)
_MONTHS_OLD = re.compile(rf" {COUNT}[ -]?(?:weeks?|months?) old(?= )")
_AFTER = re.compile(rf" after {COUNT}[ -]?(day|week|month)s?(?= (?:in the fridge|chilled|still)| $)")
_IN_FRIDGE = re.compile(
    rf" in (?:the |my |our )?fridge (?:for |about |now )*{COUNT}[ -]?(day|week|month)s?(?= )"
)
_WEEKDAY = re.compile(rf" ({'|'.join(f'{day[:3]}(?:{day[3:]})?' for day in WEEK)}) ")
_TODAY = re.compile(r" (?:its|it s|it is|today is|today s|todays|now|and now|now is)(?: now| already)? $")


def age_days(question: Question) -> float | None:
    """How old the food is [d]: "4 days old", "a week after opening", "made on sunday, it's thursday"."""
    if count := _DAY_COUNT.search(question.plain):
        return float(count[1])
    kept = _AFTER.search(question.plain) or _IN_FRIDGE.search(question.plain)
    if age := _AGE.search(_without_ages_of_people(question)) or kept:
        return value_of(age[1] or "a") * DAYS[age[2]]
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


def _without_ages_of_people(question: Question) -> str:
    """The question without "9 months old" where a child is spoken of: that is the child's age."""
    return _MONTHS_OLD.sub(" ", question.plain) if hears(question, "age of a child") else question.plain


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
