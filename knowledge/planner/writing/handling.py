"""How each food is handled, from `handling.csv`: made ready, browned, turned, and known to be done.

A row speaks for one food, a group, a class, a state, an animal or a part of the plate.
Each column is looked up on its own, and the row that says most about the food wins: in a
state of its own (tinned, frozen, left over) it is made ready as that state asks.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from knowledge.foods.store import Store
from knowledge.planner.gathering.dinner import Dish

AS_BOUGHT = "get out"  # in the column `ready`
OFF_HEAT = "off"  # in the column `pot`: it only soaks, with the heat off
SLICED = "slice"  # in the column `carve`
LEAVES_LAST = "stems first, their green for the last 2 min"  # in the column `pan`: its two halves cook apart
BOIL_UP = "boil"  # in the column `pot`: it must boil up once


@dataclass(frozen=True, slots=True, kw_only=True)
class Handling:
    """What the hands do with a food; "" where there is nothing to say."""

    ready: str  # verb before it is cooked whole: "pat dry"
    sign: str  # how it looks when done, where a thermometer finds no hold
    tray: str  # a sentence: how it lies on a tray
    brown: str  # which side first
    pan: str  # how it is moved in an open pan
    pot: str  # a sentence: what it asks under a lid; or OFF_HEAT
    turn: bool  # turned half way on a tray
    carve: str  # "slice": across the grain, once it has rested
    steams: bool  # laid on grain or roots under a lid rather than stirred in

    @property
    def as_bought(self) -> bool:
        """Whether it goes in as it comes: sausages, mince, breaded and frozen things."""
        return self.ready.startswith(AS_BOUGHT)


def handling(dish: Dish, *, store: Store) -> Handling:
    """How this dish is handled."""
    return _handling(
        store, dish.food.id, dish.food.group, dish.kind, dish.state, dish.food.animal, dish.food.part
    )


@lru_cache(maxsize=2048)
def _handling(
    store: Store, food_id: str, group: str, kind: str, state: str, animal: str, part: str
) -> Handling:
    mine = {
        "food": food_id, "group": group, "class": kind, "state": state, "animal": animal, "part": part,
    }  # fmt: skip
    by_general = ("food", "group", "class", "state", "animal", "part")
    by_state = ("state", *(by for by in by_general if by != "state"))

    def first(column: str, order: tuple[str, ...]) -> str:
        rows = (_rows(store).get((by, mine[by])) for by in order)
        return next((row[column] for row in rows if row is not None and row[column]), "")

    return Handling(
        ready=first("ready", by_state),
        sign=first("sign", by_state),
        tray=first("tray", by_general),
        brown=first("brown", by_general),
        pan=first("pan", by_general),
        pot=first("pot", by_general),
        turn=first("turn", by_general) == "yes",
        carve=first("carve", by_general),
        steams=first("steams", by_general) == "yes",
    )


@lru_cache(maxsize=4)
def _rows(store: Store) -> Mapping[tuple[str, str], Mapping[str, str]]:
    return {(row["by"], row["value"]): row for row in store.table("handling")}


def subjects(store: Store) -> Iterator[tuple[str, str]]:
    """What the table speaks of, as ("food", "mussel"), for the checks."""
    yield from _rows(store)
