"""A plan back as the draft it was written from, so that part of it can be changed and the rest held."""

from __future__ import annotations

from dataclasses import replace

from knowledge.foods.store import Store
from knowledge.planner.checking.written import size_of
from knowledge.planner.draft import AFTER, SOFTENED, Draft, Placed, Way
from knowledge.planner.gathering.dinner import Dinner, Dish, gather
from knowledge.planner.methods import Method, methods
from knowledge.planner.model import Plan, Request
from knowledge.planner.search.drafts import draft_with
from knowledge.planner.search.frying import staged
from knowledge.planner.search.laying import lay, plated
from knowledge.planner.search.load import load_of
from knowledge.planner.search.ways import Setting, solve
from knowledge.planner.sizes import size_named


def method_of(plan: Plan, store: Store) -> Method:
    """The method of a plan."""
    return next(m for m in methods(store) if m.id == plan.settings.method)


def setting_of(plan: Plan, method: Method) -> Setting:
    """The setting as the method's own scale has it (a fan oven is set lower than it heats)."""
    if method.kind == "sealed":
        return plan.settings.pressure_kPa_gauge
    if method.heat == "oven" and plan.settings.oven_degC is not None:
        return plan.settings.oven_degC + (20.0 if plan.settings.fan else 0.0)
    return method.usual if method.settings else None


def ways_now(dishes: tuple[Dish, ...], plan: Plan, request: Request, store: Store) -> list[list[Way]]:
    """The ways of these dishes in the vessel and at the setting of a plan."""
    method = method_of(plan, store)
    setting = setting_of(plan, method)
    load = load_of(dinner_of(plan.request, store).dishes, size_of(plan, store), store)
    keys = {(d.food.id, d.state) for d in dishes}
    beside = [d for d in dinner_of(request, store).dishes if (d.food.id, d.state) not in keys]
    solved = solve(
        dishes, [(method, setting)], request, store=store, loads={plan.vessel: load}, beside=beside
    )
    return solved[method.id, setting]


def placed_of(plan: Plan, dinner: Dinner, store: Store) -> tuple[Placed, ...]:
    """The dishes as the plan places them, in the plan's amounts; only those that `dinner` still holds."""
    by_key = {(d.food.id, d.state): d for d in dinner.dishes}
    kept = [
        (item, by_key[item.food_id, item.state])
        for item in plan.items
        if (item.food_id, item.state) in by_key
    ]
    dishes = tuple(replace(dish, grams=item.grams) for item, dish in kept)
    found = []
    for (item, _), ways in zip(kept, ways_now(dishes, plan, plan.request, store), strict=True):
        same = [w for w in ways if w.cut.id == item.cut_id and w.window.lane == item.lane]
        same.sort(key=lambda w: w.lead != item.lead)
        if same:
            found.append(Placed(way=same[0], add_s=item.add_s))
    return tuple(found)


def redrawn(plan: Plan, request: Request, dinner: Dinner, placed: tuple[Placed, ...], store: Store) -> Draft:
    """A draft in the plan's vessel with these dishes placed."""
    method = method_of(plan, store)
    softens = any(p.way.lead == SOFTENED for p in placed)
    again = plated([_afresh(p) for p in placed], softens=softens)
    placed = tuple(staged(again) if method.kind == "pan" else again)
    vessel = store.vessel(plan.vessel)
    size = size_named(vessel, plan.size)
    return draft_with(dinner, request, vessel, size, method, setting_of(plan, method), placed, ())


def _afresh(placed: Placed) -> Placed:
    """A resting piece as before it was settled how it is kept hot."""
    return replace(placed, way=replace(placed.way, rewarmed=False), add_s=0.0) if placed.way.rests else placed


def relaid(
    plan: Plan,
    request: Request,
    dinner: Dinner,
    placed: tuple[Placed, ...],
    new: tuple[Dish, ...],
    store: Store,
) -> Draft | None:
    """A roast under the broiler with all moments found anew, cuts kept: its two lanes lean on each other.

    None when nothing is left for the broiler, or something would not be done with the rest.
    """
    method = method_of(plan, store)
    dishes = (*(p.way.dish for p in placed), *new)
    cuts = [p.way.cut.id for p in placed]
    ways = ways_now(dishes, plan, request, store)
    kept = [[w for w in ws if n >= len(cuts) or w.cut.id == cuts[n]] for n, ws in enumerate(ways)]
    laid = lay(dishes, method, kept)
    if laid is None or laid[1]:
        return None
    return redrawn(plan, request, dinner, laid[0], store)


def broil_s(plan: Plan) -> float:
    """How long a plan's sheet is under the broiler [s]; 0 for none."""
    under = plan.settings.oven_degC is not None
    return max((i.add_s for i in plan.items if under and i.lane == AFTER), default=0.0)


def steady(plan: Plan, placed: tuple[Placed, ...]) -> tuple[Placed, ...]:
    """What roasts keeps its whole time when the minutes under the broiler change."""
    if not (before := broil_s(plan)):
        return placed
    now = max((p.add_s for p in placed if p.way.lane_is(AFTER)), default=0.0)
    return tuple(p if p.way.lane_is(AFTER) else replace(p, add_s=p.add_s + before - now) for p in placed)


def dinner_of(request: Request, store: Store) -> Dinner:
    """What is cooked for a request."""
    return gather(request, store=store)
