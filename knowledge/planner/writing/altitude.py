"""What a kitchen in the mountains changes: water boils cooler, and what sets the time takes longer."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from knowledge.foods.store import Store
from knowledge.physics import media
from knowledge.planner import words
from knowledge.planner.draft import SOFTENED, Draft
from knowledge.planner.model import Request
from knowledge.planner.search.load import load_of
from knowledge.planner.search.ways import solve
from knowledge.units import temperature

FELT_M = 500.0  # lower, and nobody notices
WORTH_S = 90.0  # longer than at the sea


def told(draft: Draft, request: Request, store: Store) -> Iterator[str]:
    """At how many degrees water boils here, and what that makes of the longest time; nothing near the sea.

    The same dish in the same cut is solved once more for sea level.
    """
    high_m = request.kitchen.altitude_m
    if high_m < FELT_M or draft.method.kind not in ("wet", "sealed"):
        return
    timed = [p for p in draft.placed if p.way.lead != SOFTENED]
    boils = temperature(media.boiling(high_m).ambient_degC, request.kitchen.units)
    line = f"at {high_m:.0f} m water boils at {boils}"
    if draft.method.kind == "sealed":
        line += ", and the cooker is cooler by as much"
    if timed:
        slow = max(timed, key=lambda p: (p.way.window.lo_s, p.way.dish.name))
        at_sea = replace(request, kitchen=replace(request.kitchen, altitude_m=0.0))
        dishes = draft.dinner.dishes
        loads = {draft.vessel.id: load_of(dishes, draft.size, store)}
        ways = solve(dishes, [(draft.method, draft.setting)], at_sea, store=store, loads=loads)[
            draft.method.id, draft.setting
        ]
        same = [
            w.window.lo_s
            for found in ways
            for w in found
            if w.dish.food.id == slow.way.dish.food.id
            and (w.cut.id, w.lead, w.window.lane) == (slow.way.cut.id, slow.way.lead, slow.way.window.lane)
        ]
        here_s = slow.way.window.lo_s
        if same and here_s - same[0] >= WORTH_S:
            label = words.label(slow.way.dish)
            line += f": {label}, {words.duration(here_s)} instead of {words.duration(same[0])} at the sea"
    yield line
