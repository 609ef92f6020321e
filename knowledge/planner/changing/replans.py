"""The rest of a running cook, planned again: what is in the vessel stays where it is.

A food that joins goes in at the earliest moment that serves; if it needs longer than
there is, the end moves, as long as everything else can wait for it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.foods.store import Store
from knowledge.planner.changing.recall import broil_s, dinner_of, placed_of, redrawn, steady, ways_now
from knowledge.planner.checking.surely import surely_safe
from knowledge.planner.choose import plan as plan_again
from knowledge.planner.draft import AFTER, Placed, Way
from knowledge.planner.gathering.dinner import Dinner, Dish
from knowledge.planner.model import NoPlan, Plan, Request
from knowledge.planner.search.shortened import BROILING, blackens
from knowledge.planner.writing.compose import plan_of

SOON_S = 60.0  # a food that goes in mid-cook needs so long to get there


def replan(plan: Plan, *, request: Request, elapsed_s: float, store: Store) -> Plan | NoPlan:
    """The rest of a running plan for a changed request; what is in the vessel stays in, where it is.

    New foods join at the earliest moment that serves, and the dinner waits for them if it
    can. What can no longer be done is left out, with the reason.
    """
    dinner = dinner_of(request, store)
    inside = tuple(i for i in plan.items if i.in_s <= elapsed_s)
    gone = [
        i.food for i in inside if (i.food_id, i.state) not in {(d.food.id, d.state) for d in dinner.dishes}
    ]
    held = dinner_of(plan.request, store)
    kept_ids = {(i.food_id, i.state) for i in inside} | {(d.food.id, d.state) for d in dinner.dishes}
    placed = tuple(
        p for p in placed_of(plan, held, store) if (p.way.dish.food.id, p.way.dish.state) in kept_ids
    )
    have = {(p.way.dish.food.id, p.way.dish.state) for p in placed}
    fresh = tuple(d for d in dinner.dishes if (d.food.id, d.state) not in have)
    stays = tuple(f"{name} is in already and stays in" for name in gone)
    answer, short = surely_safe(
        lambda dishes: _joined(plan, request, dinner, placed, dishes, elapsed_s, store), fresh, store=store
    )
    if short:
        answer = _joined(plan, request, dinner, placed, fresh, elapsed_s, store, shut=True)
    return replace(answer, assumed=(*stays, *answer.assumed)) if isinstance(answer, Plan) else answer


def _joined(
    plan: Plan,
    request: Request,
    dinner: Dinner,
    placed: tuple[Placed, ...],
    fresh: tuple[Dish, ...],
    elapsed_s: float,
    store: Store,
    *,
    shut: bool = False,
) -> Plan | NoPlan:
    """The plan with each of the fresh dishes that can join; `shut`: none may."""
    refused: list[tuple[Dish, str]] = []
    for dish, ways in zip(fresh, ways_now(fresh, plan, request, store), strict=True):
        joined = None if shut else join(plan, placed, ways, elapsed_s)
        if joined is None:
            refused.append((dish, "it would not be done with what is in already"))
        else:
            placed = joined
    if not placed:
        return plan_again(request, store=store)
    draft = redrawn(plan, request, dinner, steady(plan, placed), store)
    return plan_of(replace(draft, refused=tuple(refused)), request, (), store=store)


def join(
    plan: Plan, placed: tuple[Placed, ...], ways: Sequence[Way], elapsed_s: float
) -> tuple[Placed, ...] | None:
    """The dishes with one more that goes in now at the earliest; the end moves if all can wait for it."""
    now = elapsed_s + SOON_S
    best: tuple[float, tuple[Placed, ...]] | None = None
    if broil_s(plan):
        return _join_broiled(plan, placed, ways, now)
    lid_is_on = is_sealed(plan) and any(i.in_s <= elapsed_s for i in plan.items)
    for way in sorted(ways, key=lambda w: (w.window.lo_s, w.window.cost)):
        if lid_is_on and not way.lane_is(AFTER):
            continue
        lane = way.window.lane
        room_s = max(i.out_s for i in plan.items) - now
        shift = max(0.0, way.window.lo_s - room_s)
        at = way.window.lo_s if shift > 0 else min(way.window.best_s, room_s)
        moved = tuple(replace(p, add_s=p.add_s + shift) if p.way.window.lane == lane else p for p in placed)
        if any(p.add_s > p.way.window.hi_s + 1.0 for p in moved if p.way.window.lane == lane):
            continue
        if best is None or shift < best[0]:
            best = shift, (*moved, Placed(way=way, add_s=at))
    return best[1] if best else None


def _join_broiled(
    plan: Plan, placed: tuple[Placed, ...], ways: Sequence[Way], now_s: float
) -> tuple[Placed, ...] | None:
    """With a roast that ends under the broiler: where it is done with the rest, or nowhere."""
    glow_s = broil_s(plan)
    room_s = max(i.out_s for i in plan.items) - now_s
    for way in sorted(ways, key=lambda w: w.window.cost):
        w = way.window
        if way.lane_is(AFTER):
            lo, hi = w.lo_s, min(w.hi_s, glow_s, room_s)
            at = min(max(w.best_s, lo), hi)
        else:
            lo, hi = max(w.lo_s - glow_s, 0.0), min(w.hi_s - BROILING * glow_s, room_s - glow_s)
            at = min(max(w.best_s - glow_s, lo), hi)
        if lo <= hi and (way.lane_is(AFTER) or not blackens(way)):
            return (*placed, Placed(way=way, add_s=at))
    return None


def is_sealed(plan: Plan) -> bool:
    """Whether the plan cooks under pressure."""
    return plan.settings.pressure_kPa_gauge is not None
