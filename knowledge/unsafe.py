"""Wishes that are not carried out, because they make ill or burn: `unsafe_wishes.csv`.

The dinner is planned all the same where it is safe without the wish; that it is refused,
and why, is the first thing said.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping
from functools import lru_cache

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner.model import Caution
from knowledge.text.model import Item, Reading
from knowledge.text.normalise import flatten
from knowledge.text.vocabulary import table

SEEN = 600  # characters of a message in which wishes are looked for
COOKED = frozenset({"canned", "cooked", "leftover"})


def refused_wishes(reading: Reading, *, store: Store) -> Iterable[Caution]:
    """A line, with its authority, for each unsafe wish of a message that its foods make one."""
    text = " ".join(flatten(reading.text).text[:SEEN].split())
    for row, pattern, unless in _rows():
        blank = unless.sub(" ", text) if unless else text
        if pattern.search(blank) and _applies(row["applies"], reading, store):
            yield Caution(text=row["text"], source=str(store.source(row["source"])))


@lru_cache(maxsize=1)
def _rows() -> tuple[tuple[Mapping[str, str], re.Pattern[str], re.Pattern[str] | None], ...]:
    return tuple(
        (row, re.compile(row["pattern"]), re.compile(row["not_pattern"]) if row["not_pattern"] else None)
        for row in table("unsafe_wishes.csv")
    )


def _is_minced_or_poultry(food: Food, item: Item) -> bool:
    return food.safety in ("poultry", "ground_meat") and item.state not in COOKED


def _is_meat(food: Food, item: Item) -> bool:
    return food.part == "protein" and bool(food.animal) and item.state not in COOKED


def _is_dried_bean(food: Food, item: Item) -> bool:
    return food.doneness == "bean" and item.state in ("dried", "raw")


KINDS: Mapping[str, Callable[[Food, Item], bool]] = {
    "minced or poultry": _is_minced_or_poultry,
    "meat": _is_meat,
    "dried bean": _is_dried_bean,
}


def _applies(kind: str, reading: Reading, store: Store) -> bool:
    """Whether a food of the message is of the kind; "" asks for none."""
    foods = ((store.food(item.food_id), item) for item in reading.items if item.food_id is not None)
    return not kind or any(KINDS[kind](food, item) for food, item in foods)
