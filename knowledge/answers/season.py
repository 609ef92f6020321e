"""When a vegetable or fruit is in season, and what is in season in a month."""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.heard import hears
from knowledge.answers.model import Answer, Question
from knowledge.answers.words import words_of
from knowledge.foods.columns import ALL_YEAR
from knowledge.foods.model import Food

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
)  # fmt: skip
NORTH = "where winters are cold in the north (six months later in the south)"
SOUTH = "in the south"
SHOWN = 14
_MONTH = re.compile(rf" ({'|'.join(f'{month[:3]}(?:{month[3:]})?' for month in MONTHS)}) ", re.IGNORECASE)


def season(question: Question) -> Answer | None:
    """The months of a food named, or the foods of a month named."""
    if not (
        hears(question, "asks the season") or question.plain.endswith(" season ")
    ):  # "is it pumpkin season"
        return None
    month = _month_said(question.plain)
    grown = [food for food in question.foods if food.season]
    if grown:
        text = _months_of(grown, month)
    elif month is not None and not question.foods:
        text = _foods_of(question, month)
    else:
        return None
    return Answer(known=True, answer=text, sources=cited(question.store, "EST-SEASON"))


def in_words(months: str) -> str:
    """ "9-3" -> "September to March"; "all year" stays."""
    if months == ALL_YEAR:
        return months
    first, last = _first_and_last(months)
    return f"{MONTHS[first - 1]} to {MONTHS[last - 1]}"


def _month_said(plain: str) -> int | None:
    """The month named, 1-12; also by its first three letters."""
    said = _MONTH.search(plain)
    return next((n for n, name in enumerate(MONTHS, 1) if said and name[:3].lower() == said[1][:3]), None)


def _months_of(foods: list[Food], month: int | None) -> str:
    told = "; ".join(f"{food.name} {in_words(food.season)}" for food in foods)
    text = f"In season {NORTH}: {told}. Shops may have it longer, from store or from far away."
    if month is None:
        return text
    return f"{'Yes' if _is_in(foods[0], month) else 'No'}. {text}"


def _foods_of(question: Question, month: int) -> str:
    """The foods of a month, those with the shortest season first."""
    south = any(f" {place} " in question.plain for place in words_of(question.store, "south"))
    northern = (month + 5) % 12 + 1 if south else month  # the tables hold the north
    fruit, vegetables = question.says("fruit"), question.says("veg")
    fresh = [
        food
        for food in question.store.foods()
        if food.season not in ("", ALL_YEAR)
        and _is_in(food, northern)
        and (fruit == vegetables or fruit == (food.group == "fruit"))
    ]
    fresh.sort(key=lambda food: (_length(food), food.name))
    listed = ", ".join(food.name for food in fresh[:SHOWN])
    return f"In season in {MONTHS[month - 1]} {SOUTH if south else NORTH}: {listed} and more."


def _is_in(food: Food, month: int) -> bool:
    if food.season == ALL_YEAR:
        return True
    first, last = _first_and_last(food.season)
    return first <= month <= last if first <= last else month >= first or month <= last


def _length(food: Food) -> int:
    """Months from the first to the last."""
    first, last = _first_and_last(food.season)
    return (last - first) % 12


def _first_and_last(months: str) -> tuple[int, int]:
    """ "9-3" -> 9, 3."""
    first, last = map(int, months.split("-"))
    return first, last
