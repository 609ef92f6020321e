"""The least change under which a new dish is done with the rest of a plan, all of that held where it is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from knowledge.foods.store import Store
from knowledge.planner.changing.recall import (
    broil_s,
    redrawn,
    relaid,
    steady,
)
from knowledge.planner.changing.replans import SOON_S, is_sealed, join
from knowledge.planner.draft import AFTER, MAIN, SECOND, SOFTENED, Draft, Placed, Way
from knowledge.planner.gathering.dinner import Dinner, scaled
from knowledge.planner.model import (
    Plan,
    Request,
    Verdict,
)
from knowledge.planner.search import room
from knowledge.planner.search.laying import lay
from knowledge.planner.search.stages import first_in_s

LONGEST_SHIFT_S = 25 * 60.0  # a swap that makes dinner later than this is no swap; judgement
EARLY, EARLY_S = 1.15, 150.0  # what tires is in for so much longer than it needs
TIRES = 2.5  # what is good for less than so many times what it needs is not left to wait
NEAR, NEAR_S = 1.3, 240.0  # a moment that others share, when it needs hardly less


@dataclass(frozen=True, slots=True, kw_only=True)
class Swapping:
    """A plan in which one dish gives way to another: `rest` stays, `old` goes."""

    plan: Plan
    request: Request
    dinner: Dinner
    rest: tuple[Placed, ...]
    old: Placed | None
    elapsed_s: float | None  # of a running cook
    store: Store

    def redrawn(self, placed: tuple[Placed, ...]) -> Draft:
        """The plan with these dishes in their places."""
        return redrawn(self.plan, self.request, self.dinner, placed, self.store)


def fitted(
    plan: Plan, request: Request, dinner: Dinner, draft: Draft, here: Placed, store: Store
) -> tuple[Draft, Placed] | None:
    """The draft with less of the new dish, when all of it does not fit; None when hardly any would."""
    for _ in range(5):
        limit = room.limit(draft.vessel, draft.method, [p.way for p in draft.placed])
        sealed = draft.method.kind == "sealed"  # what foams may not fill what the old dish could
        if draft.fill <= (limit if sealed else max(limit, plan.fill) * 1.01):
            return draft, here
        dish = scaled(here.way.dish, max(0.3, 1.0 - 1.1 * (draft.fill - limit) / draft.fill))
        smaller = replace(here, way=replace(here.way, dish=dish))
        placed = tuple(smaller if p == here else p for p in draft.placed)
        draft, here = redrawn(plan, request, dinner, placed, store), smaller
    return None


def first_that_holds(swap: Swapping, ways: Sequence[Way]) -> tuple[Draft, Placed, Verdict] | None:
    """The least change under which the new dish is done with the rest."""
    rest, old, elapsed_s = swap.rest, swap.old, swap.elapsed_s
    if broil_s(swap.plan):
        return _broiled(swap, ways)
    if old is not None:
        for way in sorted(ways, key=lambda w: (not same_cut(w, old.way), w.window.cost)):
            if (
                same_cut(way, old.way)
                and way.window.lane == old.way.window.lane
                and (way.lead == SOFTENED or way.window.lo_s <= old.add_s <= way.window.hi_s)
            ):
                here = Placed(way=way, add_s=old.add_s)
                draft = swap.redrawn((*rest, here))
                if elapsed_s is None or first_in_s(here, draft.stages) >= elapsed_s:
                    return draft, here, Verdict.TOGETHER
    all_now = (*rest, old) if old is not None else rest
    longest = {
        lane: max((p.add_s for p in all_now if p.way.window.lane == lane), default=0.0)
        for lane in (MAIN, SECOND, AFTER)
    }
    used = sorted({p.add_s for p in rest})
    for way in sorted(ways, key=lambda w: w.window.cost):
        lane = way.window.lane
        for at in _moments(way, used, longest[lane], sealed=is_sealed(swap.plan) and lane != AFTER):
            here = Placed(way=way, add_s=at)
            draft = swap.redrawn((*rest, here))
            if elapsed_s is None or first_in_s(here, draft.stages) >= elapsed_s + SOON_S:
                return draft, here, Verdict.ADJUST
    if elapsed_s is not None:
        joined = join(swap.plan, rest, ways, elapsed_s)
        if joined is not None:
            return swap.redrawn(joined), joined[-1], Verdict.ADJUST
        return None
    method = swap.redrawn(rest).method if rest else None
    if method is None:
        return None
    fixed = [[p.way] for p in rest]
    laid = lay([*(p.way.dish for p in rest), ways[0].dish], method, [*fixed, list(ways)]) if ways else None
    if laid is None or laid[1]:
        return None
    placed = tuple(_no_longer(p, laid[0]) if p.way.dish is ways[0].dish else p for p in laid[0])
    draft = swap.redrawn(placed)
    if draft.stages.serve_s - swap.plan.cooking_s > LONGEST_SHIFT_S:
        return None
    here = next(p for p in placed if p.way.dish is ways[0].dish)
    return draft, here, Verdict.ADJUST


def _no_longer(new: Placed, placed: Sequence[Placed]) -> Placed:
    """The new dish, alone after the pressure, there no longer than it needs: the whole table waits for it."""
    window = new.way.window
    if not new.way.lane_is(AFTER) or any(p.way.lane_is(AFTER) for p in placed if p is not new):
        return new
    return replace(new, add_s=min(new.add_s, max(EARLY * window.lo_s, window.lo_s + EARLY_S)))


def _broiled(swap: Swapping, ways: Sequence[Way]) -> tuple[Draft, Placed, Verdict] | None:
    """The same with a roast that ends under the broiler, where one lane's minutes count in the other."""
    rest, old, elapsed_s = swap.rest, swap.old, swap.elapsed_s
    if not ways:
        return None
    if elapsed_s is not None:
        joined = join(swap.plan, rest, ways, elapsed_s)
        if joined is None:
            return None
        draft = swap.redrawn(steady(swap.plan, joined))
        return draft, draft.placed[-1], Verdict.ADJUST
    laid = relaid(swap.plan, swap.request, swap.dinner, rest, (ways[0].dish,), swap.store)
    if laid is None or laid.stages.serve_s - swap.plan.cooking_s > LONGEST_SHIFT_S:
        return None
    here = next(p for p in laid.placed if p.way.dish.food.id == ways[0].dish.food.id)
    same = old is not None and same_cut(here.way, old.way) and here.way.window.lane == old.way.window.lane
    together = same and old is not None and abs(here.add_s - old.add_s) < 60.0
    return laid, here, Verdict.TOGETHER if together else Verdict.ADJUST


def _moments(way: Way, used: Sequence[float], longest_s: float, *, sealed: bool) -> Iterator[float]:
    """Add times worth trying for a way: those of the others first, then its own best."""
    window = way.window
    if sealed or way.lead == SOFTENED:
        if window.lo_s <= longest_s <= window.hi_s:
            yield longest_s
        return
    alike = [t for t in sorted(used, key=lambda t: abs(t - window.best_s)) if window.lo_s <= t <= window.hi_s]
    soon = max(NEAR * window.lo_s, window.lo_s + NEAR_S)
    yield from (t for t in alike if t <= soon)
    tires = window.hi_s < TIRES * window.lo_s
    if window.lo_s <= longest_s and tires:
        yield min(window.best_s, longest_s, max(EARLY * window.lo_s, window.lo_s + EARLY_S))
    yield from (t for t in alike if t > soon)
    if window.lo_s <= longest_s:
        yield min(window.best_s, longest_s)


def same_cut(new: Way, old: Way) -> bool:
    """The same cut, or pieces so alike that nobody cuts anew."""
    return new.cut.id == old.cut.id or (
        new.cut.shape == old.cut.shape != "whole"
        and abs(new.cut.size_mm - old.cut.size_mm) <= 0.15 * old.cut.size_mm
    )
