"""When a vegetable or fruit is in season, and what is in season in a month."""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.words import words_of
from knowledge.foods.columns import ALL_YEAR
from knowledge.foods.model import Food

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
)  # fmt: skip
WHERE = "where winters are cold in the north (six months later in the south)"
SHOWN = 14
_ASKED = re.compile(
    r" in season | seasonal | (?:the )?season (?:for|of) | out of season | what season | (?:\w+) season $"
    r"|(?:which|what) months? | time of year "
)
_MONTH = re.compile(rf" ({'|'.join(f'{month[:3]}(?:{month[3:]})?' for month in MONTHS)}) ", re.IGNORECASE)


def season(question: Question) -> Answer | None:
    """The months of a food named, or the foods of a month named."""
    if not _ASKED.search(question.plain):
        return None
    grown = [food for food in question.foods if food.season]
    said = _MONTH.search(question.plain)
    month = next((n for n, name in enumerate(MONTHS, 1) if said and name[:3].lower() == said[1][:3]), None)
    if grown:
        return _of_foods(question, grown, month)
    if question.foods or month is None:
        return None
    south = any(f" {place} " in question.plain for place in words_of(question.store, "south"))
    northern = (month + 5) % 12 + 1 if south else month  # the tables hold the north
    fruit, veg = question.says("fruit"), question.says("veg")
    fresh = [
        f
        for f in question.store.foods()
        if f.season not in ("", ALL_YEAR)
        and _is_in(f, northern)
        and (fruit == veg or fruit == (f.group == "fruit"))
    ]
    fresh.sort(key=lambda food: (_length(food), food.name))
    listed = ", ".join(food.name for food in fresh[:SHOWN])
    where = "in the south" if south else WHERE
    return Answer(
        known=True,
        answer=f"In season in {MONTHS[month - 1]} {where}: {listed} and more.",
        sources=cited(question.store, "EST-SEASON"),
    )


def _of_foods(question: Question, foods: list[Food], month: int | None) -> Answer:
    told = "; ".join(f"{food.name} {in_words(food.season)}" for food in foods)
    text = f"In season {WHERE}: {told}. Shops may have it longer, from store or from far away."
    if month is not None:
        text = f"{'Yes' if _is_in(foods[0], month) else 'No'}. {text}"
    return Answer(known=True, answer=text, sources=cited(question.store, "EST-SEASON"))


def in_words(months: str) -> str:
    """ "9-3" -> "September to March"; "all year" stays."""
    if months == ALL_YEAR:
        return months
    first, last = (MONTHS[int(number) - 1] for number in months.split("-"))
    return f"{first} to {last}"


def _is_in(food: Food, month: int) -> bool:
    if food.season == ALL_YEAR:
        return True
    first, last = map(int, food.season.split("-"))
    return first <= month <= last if first <= last else month >= first or month <= last


def _length(food: Food) -> int:
    first, last = map(int, food.season.split("-"))
    return (last - first) % 12
