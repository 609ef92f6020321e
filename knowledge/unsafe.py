"""Wishes that are not carried out, because they make ill or burn: `unsafe_wishes.csv`.

The dinner is planned all the same where it is safe without the wish; that it is refused,
and why, is the first thing said.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner.model import Caution
from knowledge.text.model import Item, Reading
from knowledge.text.normalise import flatten
from knowledge.text.vocabulary import table

SEEN = 600  # characters of a message in which wishes are looked for
COOKED = frozenset({"canned", "cooked", "leftover"})


@dataclass(frozen=True, slots=True)
class Wish:
    """A row of `unsafe_wishes.csv`; `unless` hears words in which the wish is none."""

    pattern: re.Pattern[str]
    unless: re.Pattern[str] | None
    applies: str  # a key of `KINDS`, "" for whatever is cooked
    refusal: str
    source: str

    def is_in(self, text: str) -> bool:
        """True if the words of a message hold the wish."""
        rest = self.unless.sub(" ", text) if self.unless else text
        return self.pattern.search(rest) is not None


def refused_wishes(reading: Reading, *, store: Store) -> Iterator[Caution]:
    """A line, with its authority, for each unsafe wish of a message that its foods make one."""
    text = " ".join(flatten(reading.text).text[:SEEN].split())
    for wish in _wishes():
        if wish.is_in(text) and _applies(wish.applies, reading, store):
            yield Caution(text=wish.refusal, source=str(store.source(wish.source)))


@lru_cache(maxsize=1)
def _wishes() -> tuple[Wish, ...]:
    return tuple(
        Wish(
            pattern=re.compile(row["pattern"]),
            unless=re.compile(row["not_pattern"]) if row["not_pattern"] else None,
            applies=row["applies"],
            refusal=row["text"],
            source=row["source"],
        )
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
"""What makes a wish unsafe: a food of such a kind among those of the message."""


def _applies(kind: str, reading: Reading, store: Store) -> bool:
    """True if a food of the message is of the kind; "" asks for none."""
    foods = ((store.food(item.food_id), item) for item in reading.items if item.food_id is not None)
    return not kind or any(KINDS[kind](food, item) for food, item in foods)
