"""What is taken off a food before it is cut, and what it asks for first, from `peeling.csv`."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from knowledge.foods.model import Food
from knowledge.foods.store import Store

BOIL, SOAK, SHELL = "boil", "soak", "shell"
BATH_S: Mapping[str, float] = {
    BOIL: 900.0,
    SOAK: 600.0,
    SHELL: 900.0,
}  # to the boil and 10 min in it; in hot water
FIRST = frozenset({BOIL, SHELL})  # in the vessel, before all else


@dataclass(frozen=True, slots=True, kw_only=True)
class Peeling:
    """One row of the table."""

    verb: str = ""  # "peel and seed"; "" for what is only washed
    min_per_kg: float = 0.0
    bath: str = ""  # BOIL: in water that is thrown away, unless it roasts; SOAK: in hot water; SHELL: eggs


PLAIN = Peeling()


def peeling(food: Food, *, cut_said: str, state: str, store: Store) -> Peeling:
    """How this food is peeled; nothing for what comes cut, tinned, frozen or cooked."""
    if cut_said or state in ("canned", "frozen", "cooked", "leftover"):
        return PLAIN
    dried_mushroom = food.group == "mushroom" and food.start_state == "dry"
    return _rows(store).get(food.id, Peeling(bath=SOAK) if dried_mushroom else PLAIN)


@lru_cache(maxsize=4)
def _rows(store: Store) -> Mapping[str, Peeling]:
    return {
        row["food_id"]: Peeling(
            verb=row["verb"], min_per_kg=float(row["min_per_kg"] or 0.0), bath=row["bath"]
        )
        for row in store.table("peeling")
    }
