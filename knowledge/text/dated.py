"""Dates on packs that have passed: "use by 1st March", "best before 28/2", "expiry: Feb 27".

A day without a month is the last such day when it was within the last `NEAR_DAYS`. Day and month in
figures are read both ways (1/3 is in March or in January), and the date has passed only when both have.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date, datetime, timedelta

HALF_YEAR = timedelta(days=183)  # a date further ahead than this was meant in the year before
NEAR_DAYS = 10  # "the 2nd", said on the 4th, has passed; "the 28th" is to come
_MONTHS = ("jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec")
_NAMED = (
    r"(?:jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|"
    r"sept?(?:ember)?|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)"
)
_SAYS = {"use": "use by", "ub": "use by", "best": "best", "bb": "best", "bbe": "best"}
_DATED = re.compile(
    r"\b(?P<says>use ?by|ub|best (?:before|by)|bbe?|sell by|exp(?:ir\w+)?)(?: date)?"
    r"(?:[: ]+(?:on|of|is|was|it|says|the|pack|date))*[: ]+"
    rf"(?:(?P<day>\d{{1,2}})(?:st|nd|rd|th)?(?: of)? (?P<month>{_NAMED})\b|"
    rf"(?P<first>{_NAMED}) (?P<then>\d{{1,2}})(?:st|nd|rd|th)?\b|"
    r"(?P<one>\d{1,2})[/.](?P<other>\d{1,2})(?:[/.](?P<year>(?:20)?\d\d))?\b|"
    r"(?P<only>\d{1,2})(?:st|nd|rd|th)\b)"
)


def passed(text: str, now: datetime | None) -> Iterator[tuple[str, tuple[int, int]]]:
    """Where a text names a date that has passed, and which sign of `spoilage.csv` it is."""
    if now is None:
        return
    today = now.date()
    for match in _DATED.finditer(text):
        days = list(_readings(match, today))
        if days and all(day < today for day in days):
            yield _SAYS.get(match["says"].split()[0].removesuffix("by") or "use", "expired"), match.span()


def _readings(match: re.Match[str], today: date) -> Iterator[date]:
    """The days that a date may mean, nearest to today; those that no calendar has are left out."""
    month = match["month"] or match["first"]
    if month:
        said = [(int(match["day"] or match["then"]), _MONTHS.index(month[:3]) + 1)]
    elif match["one"]:
        one, other = int(match["one"]), int(match["other"])
        said = [(one, other), (other, one)]
    else:
        only = int(match["only"])
        said = [(only, today.month)] if today.day - NEAR_DAYS <= only <= today.day else []
    for day, number in said:
        year = 2000 + int(match["year"][-2:]) if match["year"] else today.year
        try:
            meant = date(year, number, day)
            if not match["year"] and meant - today > HALF_YEAR:
                meant = date(year - 1, number, day)
            elif not match["year"] and today - meant > HALF_YEAR:
                meant = date(year + 1, number, day)
        except ValueError:
            continue
        yield meant
