"""A plan followed from outside while it is made: what its own steps leave short of safe cooks longer.

The search solves each food in the medium that the whole dinner makes; what the steps really
put in, and when, may leave the vessel cooler.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace

from knowledge.foods.store import Store
from knowledge.planner.checking.verify import owed
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.model import NoPlan, Plan

LOOKS = 4  # each gives what is not surely safe more time
SPARE_S, LONGEST_OWED_S = 30.0, 1800.0

Dishes = tuple[Dish, ...]


def surely_safe(
    make: Callable[[Dishes], Plan | NoPlan], dishes: Dishes, *, store: Store
) -> tuple[Plan | NoPlan, frozenset[str]]:
    """What `make` answers for these dishes once nothing falls short, and which foods (by id) still do.

    The second is empty but for a dinner that no added time makes safe.
    """
    for _ in range(LOOKS):
        answer = make(dishes)
        made = answer if isinstance(answer, Plan) else answer.nearest
        lacks = owed(made, store=store) if made is not None else {}
        if not lacks:
            break
        dishes = kept_longer(dishes, lacks)
    return answer, frozenset(lacks)


def kept_longer(dishes: Dishes, lacks: Mapping[str, float]) -> Dishes:
    """The same dishes, with what they lack (see `owed`) and a little more added to their time."""
    return tuple(
        replace(d, longer_s=d.longer_s + min(lacks[d.food.id], LONGEST_OWED_S) + SPARE_S)
        if d.food.id in lacks
        else d
        for d in dishes
    )
