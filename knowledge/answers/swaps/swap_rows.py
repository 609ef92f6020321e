"""What may stand in for a food: the rows of `substitutions.csv`, less what the eater must not have."""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from knowledge.answers.eaters.restraints import Restraint
from knowledge.answers.eaters.uncertain import ways_barred_by_note
from knowledge.answers.reading.naming import foods_in
from knowledge.answers.reading.words import words_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store

_WATER = "water"  # the one stand-in that is no food of the tables
_TAKEN_AWAY = re.compile(
    r"\b(?:without|no|not|less|tastes of|in place of|instead of|for (?:one|an|1))\b[^,;]*"
)
_TELLING = re.compile(r"\w{4,}")  # the words of a note by which foods are alike
ALIKE = 3  # foods of its kind that are offered where no row is left


@dataclass(frozen=True, slots=True, kw_only=True)
class StandIn:
    """A row of the table: the food that comes (None for water), and how it is used."""

    food: Food | None
    how: str

    @property
    def name(self) -> str:
        return self.food.name if self.food else _WATER


def stand_ins(food: Food, store: Store) -> list[StandIn]:
    """What the table has for a food, in its order."""
    return [
        StandIn(food=None if row["instead_id"] == _WATER else store.food(row["instead_id"]), how=row["how"])
        for row in store.table("substitutions")
        if row["food_id"] == food.id
    ]


def is_barred(stand_in: StandIn, held: Restraint) -> bool:
    """True if the stand-in, or what goes in beside it, is ruled out."""
    if ways_barred_by_note(stand_in.how, held.store) & set(held.diets):
        return True
    foods = [stand_in.food] if stand_in.food else []
    return any(held.bars(food) for food in (*foods, *_added(stand_in.how, held.store)))


def _added(how: str, store: Store) -> list[Food]:
    """The foods that a swap asks for beside the stand-in: "with toasted sesame seed", "1 part milk"."""
    return foods_in(_TAKEN_AWAY.sub("", how), store, longest=2)  # "red wine vinegar" is of wine, too


def alike(food: Food, held: Restraint) -> list[Food]:
    """The foods that are nearest by kind, use and the words for what they do.

    None for what is made of many things: a sauce is more than its kind.
    """
    if food.group in words_of(held.store, "made"):
        return []
    words = set(_TELLING.findall(food.does))

    def distance(other: Food) -> tuple[bool, bool, bool, int]:
        shared = len(words & set(_TELLING.findall(other.does)))
        return other.part != food.part, other.doneness != food.doneness, other.when != food.when, -shared

    same_kind = (
        other
        for other in held.store.foods()
        if other.group == food.group and other.id != food.id and other.role is food.role
    )
    return sorted((other for other in same_kind if not held.bars(other)), key=distance)[:ALIKE]


def foods_of(rows: Iterable[StandIn]) -> list[Food]:
    """The foods among the stand-ins."""
    return [row.food for row in rows if row.food]
