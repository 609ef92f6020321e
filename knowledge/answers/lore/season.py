"""When a vegetable or fruit is in season, and what is in season in a month."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.words import words_of
from knowledge.foods.columns import ALL_YEAR
from knowledge.foods.model import Food

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October",
    "November", "December",
)  # fmt: skip
NORTH = "where winters are cold in the north (six months later in the south)"
SHOWN = 18
_MONTH = re.compile(rf" ({'|'.join(f'{month[:3]}(?:{month[3:]})?' for month in MONTHS)}) ", re.IGNORECASE)
_SEASON = re.compile(  # the noun; not "season the meat", "how do I season mango"
    r"(?<! to)(?<! i)(?<! you)(?<! we) seasons? "
    r"(?=$|(?:in|at|for|of|start|end|begin|now|right|again|over|yet)\w* )"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Land:
    """A place that is named, and whose seasons it has."""

    name: str
    half: str  # "north", "south" or "tropics"


def season(question: Question) -> Answer | None:
    """The months of a food named, also in a place; or the foods of a month named."""
    land = _land(question)
    if not _asked(question, land):
        return None
    month = _month_said(question.plain)
    there = _there(question, land)
    named = _foods(question, land)
    grown = [food for food in named if food.season]
    source = "EST-SEASON"
    if there is not None:
        text, source = _months_there(there, land, month), there["source"]
    elif grown:
        text = _months_of(grown, month, land)
    elif month is not None and not named and (listed := _foods_of(question, month, land)):
        text = listed
    else:
        return None
    return Answer(known=True, answer=text, sources=cited(question.store, source))


def _asked(question: Question, land: Land | None) -> bool:
    if hears(question, "asks the season") or _SEASON.search(question.plain):
        return True
    named = land is not None and f" season {land.name} " in question.plain  # "peaches season georgia"
    return named and not hears(question, "seasons a dish")


def _land(question: Question) -> Land | None:
    """The place named by most letters."""
    said = [row for row in question.store.table("lands") if f" {row['land']} " in question.plain]
    if not said:
        south = (place for place in words_of(question.store, "south") if f" {place} " in question.plain)
        return next((Land(name=place, half="south") for place in south), None)
    row = max(said, key=lambda row: len(row["land"]))
    return Land(name=row["land"], half=row["half"])


def _foods(question: Question, land: Land | None) -> list[Food]:
    """The foods named, a land that is called like one left out: Chile, Turkey."""
    said = land.name.split() if land else []
    return [m.food for m in question.mentions if m.phrase not in said]


def _there(question: Question, land: Land | None) -> Mapping[str, str] | None:
    """The row for a food in its place; for one that grows in few places also without a place named."""
    foods = {food.name for food in _foods(question, land)}
    said = [
        row
        for row in question.store.table("season_places")
        if any(f" {name} " in question.plain or name in foods for name in row["names"].split(";"))
    ]
    lands = [row for row in said if land is not None and land.name in row["lands"].split(";")]
    if lands:
        return lands[0]
    alone = len(said) == 1 and not any(food.season for food in _foods(question, land))
    return said[0] if alone and land is None else None


def _months_there(row: Mapping[str, str], land: Land | None, month: int | None) -> str:
    where = (
        _titled(land.name) if land else " and ".join(_titled(name) for name in row["lands"].split(";")[:2])
    )
    name = row["names"].split(";")[0].capitalize()
    text = f"{name}{f' in {where}' if where else ''}: {in_words(row['months'])}"
    text += f" ({row['note']})." if row["note"] else "."
    text += " It shifts by some weeks with the year and the region."
    if month is None:
        return text
    return f"{'Yes' if _holds(row['months'], month) else 'No'}. {text}"


def _titled(name: str) -> str:
    return name.upper() if len(name) <= 3 else name.title()


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


def _months_of(foods: list[Food], month: int | None, land: Land | None) -> str:
    half = land.half if land else ""
    shifted = {food: _shifted(food.season) if half == "south" else food.season for food in foods}
    told = "; ".join(f"{food.name} {in_words(months)}" for food, months in shifted.items())
    if land is None:
        text = f"In season {NORTH}: {told}. Shops may have it longer, from store or from far away."
    elif half == "tropics":
        where = _titled(land.name)
        return (
            f"In season {NORTH}: {told}. For {where} I hold no months of its own: there rain and height"
            " decide more than the month, so ask the market."
        )
    else:
        text = f"In {_titled(land.name)}: {told}, earlier where it is warm, later where it is cold."
        text += " Shops may have it longer, from store or from far away."
    if month is None:
        return text
    return f"{'Yes' if _holds(shifted[foods[0]], month) else 'No'}. {text}"


def _shifted(months: str) -> str:
    """The same season half a year later."""
    if months == ALL_YEAR:
        return months
    return "-".join(str((month + 5) % 12 + 1) for month in _first_and_last(months))


def _foods_of(question: Question, month: int, land: Land | None) -> str | None:
    """The foods of a month: of every market first, then the shortest season; what is nearly over last."""
    half = land.half if land else ""
    if land is not None and half == "tropics":
        return _foods_there(question, month, land)
    northern = (month + 5) % 12 + 1 if half == "south" else month  # the tables hold the north
    fruit, vegetables = question.says("fruit"), question.says("veg")
    common = {row["food_id"] for row in question.store.table("season_common")}
    fresh = [
        food
        for food in question.store.foods()
        if food.season not in ("", ALL_YEAR)
        and _holds(food.season, northern)
        and (fruit == vegetables or fruit == (food.group == "fruit"))
    ]
    fresh.sort(
        key=lambda food: (
            food.id not in common,
            _first_and_last(food.season)[1] == northern,  # nearly over
            _length(food),
            food.name,
        )
    )
    listed = ", ".join(food.name for food in fresh[:SHOWN])
    where = f"in {_titled(land.name)}" if land else NORTH
    return f"In season in {MONTHS[month - 1]} {where}: {listed} and more."


def _foods_there(question: Question, month: int, land: Land) -> str | None:
    """What the table knows of a month in the tropics; None where it knows nothing."""
    rows = [
        row["names"].split(";")[0]
        for row in question.store.table("season_places")
        if land.name in row["lands"].split(";") and _holds(row["months"], month)
    ]
    if not rows:
        return None
    where = _titled(land.name)
    return f"In {MONTHS[month - 1]} in {where} I know of {', '.join(rows)}; I hold no full list for there."


def _holds(months: str, month: int) -> bool:
    if months == ALL_YEAR:
        return True
    first, last = _first_and_last(months)
    return first <= month <= last if first <= last else month >= first or month <= last


def _length(food: Food) -> int:
    """Months from the first to the last."""
    first, last = _first_and_last(food.season)
    return (last - first) % 12


def _first_and_last(months: str) -> tuple[int, int]:
    """ "9-3" -> 9, 3."""
    first, last = map(int, months.split("-"))
    return first, last
