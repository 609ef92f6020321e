"""What was tried to make a dinner quicker, where that was wished: smaller cuts, the other vessels.

Each is laid out like any other dinner and its time read off; what it would cost is said with it.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.draft import SOFTENED, Draft, Placed
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.gathering.feeding import served
from knowledge.planner.model import Kitchen, Request, VesselAt
from knowledge.planner.search.deadline import AS_MUCH, WORTH_S, took_s
from knowledge.planner.search.drafts import drafts
from knowledge.planner.search.load import load_here
from knowledge.planner.search.ways import solve

LEAST_MM = 10.0  # smaller is for the base of a sauce, not for a plate; judgement
WORSE = 1.0  # points of a food that takes to the other way less well


def tried(best: Draft, found: Sequence[Draft], request: Request, store: Store) -> str:
    """What would be quicker than this dinner and why it is not done so, or that nothing is."""
    ways = list(_vessels(best, found, request, store))
    cut = _smaller(best, request, store)
    tried_so_far = [text for text in (cut, *ways) if text]
    return "; ".join(tried_so_far) or "smaller cuts and the other vessels save nothing"


def _vessels(best: Draft, found: Sequence[Draft], request: Request, store: Store) -> Iterator[str]:
    """The quickest way in each other vessel, of this kitchen or of a usual one, and what takes longer."""
    have = {v.id for v in request.kitchen.vessels}
    kitchen = replace(request.kitchen, vessels=(*request.kitchen.vessels, *_lacking(request)))
    free = replace(request, kitchen=kitchen, vessel=None)
    every = found if free == request else drafts(best.dinner, free, store=store)
    full = [d for d in every if d.placed and served(d) >= AS_MUCH * served(best)]
    slower = []
    for vessel in dict.fromkeys(v.id for v in kitchen.vessels):
        there = [d for d in full if d.vessel.id == vessel]
        quickest = min(there, key=lambda d: (took_s(d), -d.score), default=None)
        if quickest is None or (vessel == best.vessel.id and took_s(quickest) > took_s(best) - WORTH_S):
            continue
        saves_s = took_s(best) - took_s(quickest)
        takes = words.duration(took_s(quickest))
        if saves_s < WORTH_S:
            slower.append(f"the {vessel} {takes}")
            continue
        yours = "" if vessel in have else ", if you have one,"
        yield f"the {vessel}{yours} ({quickest.method.name}) would take {takes}{_costs(quickest, best)}"
    if slower:
        yield f"no quicker: {words.listed(slower)}"


def _lacking(request: Request) -> tuple[VesselAt, ...]:
    """The vessels of a usual kitchen that this one lacks."""
    have = {v.id for v in request.kitchen.vessels}
    return tuple(v for v in Kitchen().vessels if v.id not in have)


def _costs(other: Draft, best: Draft) -> str:
    """What the quicker way would cost: foods left out, one that takes to it less well, less sauce."""
    out = [d.name for d, _ in other.refused if d.food.id not in {b.food.id for b, _ in best.refused}]
    if out:
        return f", without the {words.listed(out)}"
    fits = {p.way.dish.food.id: p.way.fit for p in other.placed}
    lost = [
        (p.way.fit - fits.get(p.way.dish.food.id, p.way.fit), words.label(p.way.dish)) for p in best.placed
    ]
    most, name = max(lost, default=(0.0, ""))
    if most >= WORSE:
        return f", but the {name} would be the worse for it"
    if best.method.wet - other.method.wet > 0.2:
        return ", with less sauce"
    return ", less crisp" if best.method.crisp - other.method.crisp > 0.2 else ""


def _smaller(best: Draft, request: Request, store: Store) -> str:
    """By how much the slowest food in a smaller cut would be sooner on the table."""
    timed = [p for p in best.placed if p.way.lead != SOFTENED and not p.way.rests]
    if not timed:
        return ""
    slow = max(timed, key=lambda p: (p.way.window.lo_s, p.way.dish.name))
    name = words.label(slow.way.dish)
    verb = "set" if words.is_plural(name) else "sets"
    sets = f"the {name} {verb} the time ({words.duration(slow.way.window.lo_s)})"
    cut = _finer(slow, store)
    if cut is None:
        return sets
    load = load_here(best.dinner.dishes, request.kitchen, best.vessel, store)
    dish = replace(slow.way.dish, food=replace(slow.way.dish.food, cuts=(cut,)), cut_said="")
    beside: list[Dish] = [d for d in best.dinner.dishes if d.food.id != dish.food.id]
    pair = (best.method, best.setting)
    solved = solve((dish,), [pair], request, store=store, loads={best.vessel.id: load}, beside=beside)
    ways = [
        w
        for w in solved[best.method.id, best.setting][0]
        if w.cut.id == cut and w.window.lane == slow.way.window.lane
    ]
    if not ways:
        return sets
    others_s = max((p.way.window.lo_s for p in timed if p is not slow), default=0.0)
    saves_s = slow.way.window.lo_s - max(min(w.window.lo_s for w in ways), others_s)
    said = store.cut(cut).name
    if saves_s < WORTH_S:
        return f"{sets}, and {said} save nothing"
    return f"{sets}; as {said} dinner is {words.duration(saves_s)} sooner, for more knife work"


def _finer(placed: Placed, store: Store) -> str | None:
    """The next smaller of the food's own cuts that is still a mouthful."""
    cuts = [store.cut(c) for c in placed.way.dish.food.cuts]
    smaller = [c for c in cuts if not c.parts and LEAST_MM <= c.size_mm < placed.way.piece.size_mm - 1.0]
    return max(smaller, key=lambda c: c.size_mm).id if smaller and not placed.way.dish.cut_said else None
