"""How the foods of a dish are usually cut: `dish_cuts.csv`.

A row tells the size of what it is `of`: foods, classes of doneness, groups, "veg" for whatever is no
meat, "meat". The closest row counts.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from knowledge.answers.model import Question
from knowledge.foods.model import Food
from knowledge.tables import items

_WIDE = {"meat": True, "veg": False}  # whether an animal's; behind any food, class or group


@dataclass(frozen=True, slots=True, kw_only=True)
class DishCut:
    """The usual size of a food in a dish [mm] and what the pieces are called."""

    dish: str
    of: tuple[str, ...]
    way: str
    from_mm: float
    to_mm: float
    cut: str
    note: str
    source: str


def dish_of(question: Question) -> tuple[str, tuple[DishCut, ...]]:
    """The dish that the question names by its longest word, as it is said, and its rows; none without one."""
    said = [
        (len(word), word, row["dish"])
        for row in question.store.table("dish_cuts")
        for word in items(row["words"])
        if question.says(word)
    ]
    if not said:
        return "", ()
    _, word, dish = max(said)
    name = re.search(rf" ({re.escape(word.rstrip('_'))}\w*)", question.plain)
    rows = tuple(_read(row) for row in question.store.table("dish_cuts") if row["dish"] == dish)
    return name[1] if name else dish, rows


def cut_of(food: Food, rows: Sequence[DishCut]) -> DishCut | None:
    """The row for a food: by its name, class or group, else by whether it is an animal's."""
    own = {food.id, food.doneness, food.group}
    close = next((row for row in rows if not own.isdisjoint(row.of)), None)
    wide = (row for row in rows if any(_WIDE.get(of) is is_meat(food) for of in row.of))
    return close or next(wide, None)


def is_meat(food: Food) -> bool:
    """True for meat, poultry, fish and shellfish: whatever has a safe minimum but an egg."""
    return food.safety not in ("", "egg")


def _read(row: Mapping[str, str]) -> DishCut:
    return DishCut(
        dish=row["dish"],
        of=tuple(items(row["of"])),
        way=row["way"],
        from_mm=float(row["from_mm"]),
        to_mm=float(row["to_mm"]),
        cut=row["cut"],
        note=row["note"],
        source=row["source"],
    )
