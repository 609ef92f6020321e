"""The usual dose of a seasoning, from `pinches.csv`, where the cook named none.

A row speaks for the end of a name ("cumin seed"), a food, a group or a part; the first that
is found holds.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

from knowledge.foods.model import When
from knowledge.foods.store import Store
from knowledge.units import KITCHEN

if TYPE_CHECKING:
    from knowledge.planner.gathering.dinner import Seasoning


@dataclass(frozen=True, slots=True, kw_only=True)
class Pinch:
    """One row of the table."""

    amount: float | None  # None: by the grinder, or as it comes
    unit: str  # "tsp", "tbsp", "ml", "g", "pinch", "sprig" ...; "" counts the thing itself
    per: str  # "eater", "kg" of food, or "dish"
    most: float
    curry: float | None  # of a spice, for each eater of a curry or a dal [tsp]
    when: When | None  # the moment, where it is not that of the food's own row
    how: str  # "squeeze", "slake", "glaze" ...; "" for nothing special
    taken_out: bool  # fished out before serving


def pinch(seasoning: Seasoning, store: Store) -> Pinch:
    """How this seasoning is dosed."""
    rows, food = _rows(store), seasoning.food
    said = next((p for (by, value), p in rows.items() if by == "word" and _ends(seasoning.name, value)), None)
    keys = [("food", food.id), ("group", food.group), ("part", food.part)]
    if seasoning.state and food.part == "herb" and not food.id.startswith(seasoning.state):
        keys.insert(0, ("state", seasoning.state))  # no food of its own
    return said or next((rows[key] for key in keys if key in rows), NOTHING)


def _ends(name: str, value: str) -> bool:
    return name == value or name.endswith(f" {value}")


def usual_ml(seasoning: Seasoning, eaters: float, store: Store) -> float:
    """What kitchens take of a seasoning for so many [ml]; 0 where it is not spooned or poured by the head."""
    p = pinch(seasoning, store)
    if p.amount is None or p.per != "eater" or p.unit not in ("tsp", "tbsp", "ml"):
        return 0.0
    return min(p.amount * eaters, p.most) * KITCHEN[p.unit][1]


NOTHING = Pinch(amount=None, unit="", per="", most=math.inf, curry=None, when=None, how="", taken_out=False)


@lru_cache(maxsize=4)
def _rows(store: Store) -> Mapping[tuple[str, str], Pinch]:
    return {(row["by"], row["value"]): _pinch(row) for row in store.table("pinches")}


def _pinch(row: Mapping[str, str]) -> Pinch:
    return Pinch(
        amount=float(row["amount"]) if row["amount"] else None,
        unit=row["unit"],
        per=row["per"],
        most=float(row["most"]) if row["most"] else math.inf,
        curry=float(row["curry"]) if row["curry"] else None,
        when=When(row["when"]) if row["when"] else None,
        how=row["how"],
        taken_out=row["out"] == "yes",
    )
