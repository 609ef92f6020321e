"""What a finish still cooks of the foods that stay in: their windows before it, so much shorter.

After pressure the cooker boils on with its lid off; under the broiler a roast stays on its sheet.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.planner.draft import AFTER, MAIN, SECOND, SOFTENED, Way
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.methods import Method
from knowledge.planner.search import stages
from knowledge.planner.search.cuts import TRAY_MM

FALLING, BOILING = 0.55, 0.33  # a minute while pressure falls, or open at a boil, against one at pressure
BROILING = 1.85  # a minute under the broiler, against one in an oven at 190 °C: as the fluxes
QUICK_S = stages.QUICK_RELEASE_S
LAID_ON_S = 300.0  # sooner before the broiler glows it is laid on with the rest


def shortened(method: Method, ways: list[Way], live: Sequence[tuple[Dish, list[Way]]]) -> list[Way]:
    """Windows of the main lane, less what the finish still cooks."""
    return _broiled(ways, live) if method.finish == "broil" else _released(method, ways, live)


def _broiled(ways: list[Way], live: Sequence[tuple[Dish, list[Way]]]) -> list[Way]:
    """Windows in the oven, less the minutes on the same sheet under the broiler."""
    late = [min(w.window.best_s for w in ws) for _, ws in live if all(w.lane_is(AFTER) for w in ws)]
    broil_s = max(late, default=0.0)
    found = []
    for way in ways:
        w = way.window
        if w.lane == MAIN:
            if blackens(way):
                continue
            lo, hi = max(w.lo_s - broil_s, LAID_ON_S), w.hi_s - BROILING * broil_s
            if hi < lo:
                continue
            way = replace(
                way, window=replace(w, lo_s=lo, hi_s=hi, best_s=min(max(w.best_s - broil_s, lo), hi))
            )
        found.append(way)
    return found


def blackens(way: Way) -> bool:
    """Whether it is black after minutes under the glow: what is small and hot already."""
    return way.done == "warmed" and way.piece.size_mm < TRAY_MM


def _released(method: Method, ways: list[Way], live: Sequence[tuple[Dish, list[Way]]]) -> list[Way]:
    """Windows at pressure, less what falling pressure and the boiling after it still cook."""
    slow = any(stages.is_slow([w]) for _, ws in live for w in ws[:1])  # before the second lot goes in, too
    released_s = stages.SLOW_RELEASE_S if slow else QUICK_S
    late = [min(w.window.lo_s for w in ws) for _, ws in live if all(w.lane_is(AFTER) for w in ws)]
    found = []
    for way in ways:
        w = way.window
        if w.lane != AFTER and way.lead != SOFTENED:
            fall_s = QUICK_S if w.lane == SECOND else released_s
            early = 0.6 * FALLING * fall_s  # not all of it can be counted on
            total = FALLING * fall_s + BOILING * max(late, default=0.0)
            lo = max(w.lo_s - min(early, 0.4 * w.lo_s), 60.0)
            hi = w.hi_s - total
            if hi < lo:
                continue
            way = replace(way, window=replace(w, lo_s=lo, hi_s=hi, best_s=min(max(w.best_s - early, lo), hi)))
        found.append(way)
    return found
