"""How long meat takes to brown: panful by panful, and mince until its water is gone.

A panful of pieces takes its minutes, more is browned in turns. Mince is one heap: it
greys, gives off its water and only then browns, so its minutes grow with its weight;
frozen in a block it is thawed first, turned and scraped. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from knowledge.foods.model import VesselSize
from knowledge.planner.draft import BROWNED, SEARED, Way
from knowledge.planner.search import floor
from knowledge.planner.search.frying import STILL

if TYPE_CHECKING:
    from knowledge.planner.gathering.dinner import Dish

BROWN_S = 6 * 60.0  # both sides of one layer in a hot pan
SEAR_LEAST_S = 180.0  # strips, until they are brown; common practice, no source
MINCE_LEAST_S, MINCE_S_G = 5 * 60.0, 7 * 60.0 / 500.0  # until no pink is left; common practice, no source
THAW_LEAST_S, THAW_S_G = (
    8 * 60.0,
    12 * 60.0 / 500.0,
)  # the same from a frozen block; common practice, no source


def is_mince(dish: Dish, shape: str) -> bool:
    """Whether it lies in the pan as a heap of crumbs: mince that is no patty and no ball."""
    return dish.kind == "ground_meat" and shape == "grain"


def mince_s(dish: Dish) -> float:
    """Until raw mince is broken up and brown, thawing included."""
    return thaw_s(dish) + max(MINCE_LEAST_S, MINCE_S_G * dish.grams)


def thaw_s(dish: Dish) -> float:
    """Of that, until a frozen block is thawed and broken up."""
    return max(THAW_LEAST_S, THAW_S_G * dish.grams) if dish.state == "frozen" else 0.0


def browning_s(ways: Sequence[Way], size: VesselSize) -> float:
    """How long the browning before everything else takes [s]: meat, and then what lies still by itself."""
    return _fried_s([w for w in ways if w.manner != STILL], size) + still_s(ways, size)


def still_s(ways: Sequence[Way], size: VesselSize) -> float:
    """Of that, the end: fish, tofu, halloumi, in a pan of their own."""
    return _fried_s([w for w in ways if w.manner == STILL], size)


def _fried_s(ways: Sequence[Way], size: VesselSize) -> float:
    browned = [w for w in ways if w.lead in (BROWNED, SEARED)]
    pieces = [w for w in browned if not is_mince(w.dish, w.piece.shape)]
    heaps = [w.lead_s for w in browned if is_mince(w.dish, w.piece.shape)]
    if not pieces:
        return max(heaps, default=0.0)
    each = max(BROWN_S if w.lead == BROWNED else max(w.lead_s, SEAR_LEAST_S) for w in pieces)
    return max(batches(pieces, size) * each, *heaps, 0.0)


def batches(ways: Sequence[Way], size: VesselSize) -> int:
    """In how many turns these are browned in the vessel; a heap of mince in one."""
    pieces = [w for w in ways if not is_mince(w.dish, w.piece.shape)]
    covers_m2 = sum(
        floor.layer_m2(
            w.dish.food, w.dish.grams, shape=w.piece.shape, size_mm=w.piece.size_mm, cut_id=w.cut.id
        )
        for w in pieces
    )
    load = sum(floor.load_g(w.dish.grams, shape=w.piece.shape, size_mm=w.piece.size_mm) for w in pieces)
    return floor.batches(load, covers_m2, size.area_m2)
