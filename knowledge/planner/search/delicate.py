"""What is past its best soon after it is done, from `delicate.csv`, whatever else is not done yet.

The windows of the physics end where a piece would be mush or black; a cook takes asparagus, fruit
and greens out long before. In an oven, in a pot and under pressure a delicate food stays at most so
many times as long as it needs; what is not for a broiler does not lie under one while something else
browns. What sets the clock of a dinner (`hurries`: fish, pasta, rice) has the roots beside it cut small.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from knowledge.foods.store import Store

if TYPE_CHECKING:
    from knowledge.planner.gathering.dinner import Dish


@dataclass(frozen=True, slots=True, kw_only=True)
class Delicate:
    """One row of the table: how many times its time to done it may be in the heat."""

    dry: float = math.inf
    wet: float = math.inf
    sealed: float = math.inf
    broils: bool = True
    hurries: bool = False


STURDY = Delicate()


def delicate(dish: Dish, store: Store) -> Delicate:
    """How long this dish may stay: by its food, else its group, else its class."""
    rows = _rows(store)
    keys = (("food", dish.food.id), ("group", dish.food.group), ("class", dish.kind))
    return next((rows[key] for key in keys if key in rows), STURDY)


@lru_cache(maxsize=4)
def _rows(store: Store) -> Mapping[tuple[str, str], Delicate]:
    return {
        (row["by"], row["value"]): Delicate(
            dry=float(row["dry"] or math.inf),
            wet=float(row["wet"] or math.inf),
            sealed=float(row["sealed"] or math.inf),
            broils=row["broils"] == "yes",
            hurries=row["hurries"] == "yes",
        )
        for row in store.table("delicate")
    }
