"""The open pan in a cook's order: what lies still by itself, what colours first, what would burn last.

From `pan_manners.csv`. Fish, tofu, halloumi and dumplings lie still until they are brown, so they never
share the pan with what is tossed: they are fried first and laid back; fish may also come last, the
rest pushed aside for it. Mushrooms colour before others crowd them. Garlic, ginger and chili would be
black after minutes on high heat: they come last.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from typing import TYPE_CHECKING

from knowledge.foods.store import Store
from knowledge.planner.draft import MAIN, SOFTENED, Placed, Way

if TYPE_CHECKING:
    from knowledge.planner.gathering.dinner import Dish

STILL, COLOUR, LATE = "still", "colour", "late"  # column `how`
APART_S = 30.0
COLOUR_S = 240.0  # mushrooms by themselves, until their water is gone and they colour
LATE_S, LATE_SPAN_S = 120.0, (60.0, 180.0)  # garlic before the end
BURNS_FROM_S = 330.0  # of high heat after it; a shorter fry garlic may begin


@dataclass(frozen=True, slots=True, kw_only=True)
class Manner:
    """One row of the table."""

    how: str = ""
    beside: float = 0.0  # points lost where others are tossed in the same pan


PLAIN = Manner()


def manner(dish: Dish, store: Store) -> Manner:
    """How this dish behaves in an open pan: by its food, else its group, else its class."""
    rows = _rows(store)
    keys = (("food", dish.food.id), ("group", dish.food.group), ("class", dish.kind))
    return next((rows[key] for key in keys if key in rows), PLAIN)


def staged(placed: Sequence[Placed]) -> list[Placed]:
    """The dishes of an open pan, mushrooms in before the others and garlic after them."""
    tossed = [p for p in placed if _is_tossed(p) and p.way.manner not in (COLOUR, STILL)]
    longest = max((p.add_s for p in tossed), default=0.0)
    found = [_coloured(p, longest) if tossed else p for p in placed]
    high_s = max((p.add_s for p in found if _is_tossed(p)), default=0.0)
    times = {p.add_s for p in found if _is_tossed(p) and LATE_SPAN_S[0] <= p.add_s <= LATE_SPAN_S[1]}
    at = min(times, key=lambda s: abs(s - LATE_S), default=LATE_S)
    return [_burning(p, at) if high_s >= BURNS_FROM_S else p for p in found]


def comes_last(placed: Sequence[Placed]) -> bool:
    """Whether what lies still goes in after all that is tossed, which is pushed aside for it."""
    still = [p.add_s for p in placed if p.way.manner == STILL and not p.way.lead]
    tossed = [p.add_s for p in placed if _is_tossed(p) and p.way.manner != STILL]
    return not still or min(tossed, default=math.inf) > max(still) + APART_S


def _is_tossed(placed: Placed) -> bool:
    way = placed.way
    return way.lane_is(MAIN) and not way.lead and way.manner != LATE


def _coloured(placed: Placed, longest_s: float) -> Placed:
    way, at = placed.way, longest_s + COLOUR_S
    if way.manner != COLOUR or way.lead or not way.lane_is(MAIN) or placed.add_s >= at:
        return placed
    return replace(placed, add_s=max(min(at, way.window.hi_s), placed.add_s))


def _burning(placed: Placed, at_s: float) -> Placed:
    way = placed.way
    if way.manner != LATE or way.lead != SOFTENED:
        return placed
    lo, hi = LATE_SPAN_S
    window = replace(way.window, lane=MAIN, lo_s=lo, hi_s=hi, best_s=at_s)
    return Placed(way=replace(way, lead="", lead_s=0.0, window=window), add_s=at_s)


def tossed_kg(ways: Sequence[Way]) -> float:
    """What is moved about in the pan at one time [kg]; leaves sink at once and do not count."""
    kept = [
        w
        for w in ways
        if w.lane_is(MAIN) and not w.lead and w.manner != STILL and w.dish.kind != "tender_leaf"
    ]
    return sum(w.dish.grams * w.dish.food.edible_frac for w in kept) / 1000.0


@lru_cache(maxsize=4)
def _rows(store: Store) -> Mapping[tuple[str, str], Manner]:
    return {
        (row["by"], row["value"]): Manner(how=row["how"], beside=float(row["beside"]))
        for row in store.table("pan_manners")
    }
