"""Would this replacement still finish with the rest? Answered by planning with the rest held.

In order, the first that works is the answer:

1. the new food in the old one's cut at the old one's moment     -> together
2. another cut, or another moment, within the same cook          -> adjust
3. the whole cook a little longer, everything still in its window -> adjust, finish shifts
4. none of these                                                 -> no, and what would work
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.diets import barred_by
from knowledge.errors import UnknownFood
from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.choose import plan as plan_again
from knowledge.planner.compose import plan_of
from knowledge.planner.dinner import Dinner, Dish
from knowledge.planner.draft import AFTER, MAIN, SOFTENED, Draft, Placed, Way
from knowledge.planner.model import (
    Caution,
    Have,
    NoPlan,
    Plan,
    PlanItem,
    Request,
    SwapAnswer,
    Swapped,
    Verdict,
)
from knowledge.planner.recall import dinner_of, placed_of, redrawn, ways_now
from knowledge.planner.search import lay
from knowledge.planner.stages import first_in_s

SOON_S = 60.0  # a food that goes in mid-cook needs so long to get there
LONGEST_SHIFT_S = 25 * 60.0


def swap(
    plan: Plan, *, frm: str | None, to: Have | None, store: Store, elapsed_s: float | None = None
) -> SwapAnswer:
    """The verdict on putting `to` in the place of the food named `frm` (a name or an id).

    `frm` None: `to` is added, or takes the place of what it is most like when the words
    leave it open; `to` None: `frm` is taken out. `elapsed_s` is the plan's own time when
    the cook is running: what is in stays in.
    """
    item = _item_named(plan, frm, store)
    new = _food(to, store)
    if frm is not None and item is None:
        names = words.listed([i.food for i in plan.items])
        return _no(f"There is no {frm} in this plan; there is {names}.")
    if to is not None and new is None:
        return _no(f"I do not know {to.said or to.food_id}, so I cannot work out how it cooks.")
    if item is None and new is None:
        return _no("Tell me what should go out and what should come in.")
    if (
        item is not None
        and new is not None
        and item.food_id == new.id
        and (to is None or to.state in (None, item.state or None))
    ):
        return SwapAnswer(
            verdict=Verdict.TOGETHER, finish_shift_s=0.0, change=(), cautions=(), plan=plan,
            text=f"{item.food} is in the plan already.",
        )  # fmt: skip
    if new is not None:
        barred = _barred(new, plan.request)
        if barred:
            return _no(f"No {new.name}: {barred}.")
    if item is not None and elapsed_s is not None and item.in_s <= elapsed_s:
        return _no(f"The {item.food} is in already, so it stays in." + (
            f" {new.name[:1].upper()}{new.name[1:]} could go beside it." if new else ""))  # fmt: skip
    if item is None and new is not None and elapsed_s is None and frm is None:
        item = _most_alike(plan, new, store)
    request = _changed(plan, item, to, new, store)
    restored = not request.swapped and bool(plan.request.swapped) and elapsed_s is None
    answer = _held(plan, request, item, new, store, elapsed_s)
    if restored and answer.verdict is not Verdict.NO:
        again = plan_again(request, store=store)
        if isinstance(again, Plan):
            return replace(answer, plan=again, finish_shift_s=again.total_s - plan.total_s)
    return answer


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
    refused: list[tuple[Dish, str]] = []
    for dish, ways in zip(fresh, ways_now(fresh, plan, request, store), strict=True):
        joined = _join(plan, dinner, request, placed, ways, store, elapsed_s)
        if joined is None:
            refused.append((dish, "it would not be done with what is in already"))
        else:
            placed = joined
    if not placed:
        return plan_again(request, store=store)
    draft = redrawn(plan, request, dinner, placed, store)
    made = plan_of(replace(draft, refused=tuple(refused)), request, (), store=store)
    stays = tuple(f"{name} is in already and stays in" for name in gone)
    return replace(made, assumed=(*stays, *made.assumed))


def _held(
    plan: Plan,
    request: Request,
    item: PlanItem | None,
    new: Food | None,
    store: Store,
    elapsed_s: float | None,
) -> SwapAnswer:
    """The verdict with everything else where it is."""
    dinner = dinner_of(request, store)
    dinner = _in_amount(dinner, item, new, request)
    before = placed_of(plan, dinner_of(plan.request, store), store)
    rest = tuple(p for p in before if item is None or not _is(p, item))
    cautions = tuple(_cautions(new)) if new else ()
    if new is None or new.role is not Role.COOK:
        draft = redrawn(plan, request, dinner, rest, store) if rest else None
        if draft is None:
            return _no("Then nothing is left to cook.")
        made = plan_of(draft, request, (), store=store)
        name = new.name if new else f"no {item.food if item else ''}"
        shift = made.total_s - plan.total_s
        return SwapAnswer(
            verdict=Verdict.TOGETHER, finish_shift_s=0.0 if abs(shift) < 90 else shift, change=(),
            text=f"{name[:1].upper()}{name[1:]}: fine, the rest stays as it is.",
            cautions=cautions, plan=made,
        )  # fmt: skip
    dish = next((d for d in dinner.dishes if d.food.id == new.id), None)
    if dish is None:
        return _no(f"No {new.name}: it is left out of this dinner.")
    [ways] = ways_now((dish,), plan, request, store)
    old = next((p for p in before if item is not None and _is(p, item)), None)
    found = _first_that_holds(plan, request, dinner, rest, old, ways, store, elapsed_s)
    if found is None:
        return _refusal(plan, request, item, dish, ways, store)
    draft, here, verdict = found
    made = plan_of(draft, request, (), store=store)
    return _told(plan, made, item, here, verdict, cautions)


def _first_that_holds(
    plan: Plan,
    request: Request,
    dinner: Dinner,
    rest: tuple[Placed, ...],
    old: Placed | None,
    ways: Sequence[Way],
    store: Store,
    elapsed_s: float | None,
) -> tuple[Draft, Placed, Verdict] | None:
    """The least change under which the new dish is done with the rest."""
    if old is not None:
        for way in sorted(ways, key=lambda w: (not _same_cut(w, old.way), w.window.cost)):
            if (
                _same_cut(way, old.way)
                and way.window.lane == old.way.window.lane
                and (way.lead == SOFTENED or way.window.lo_s <= old.add_s <= way.window.hi_s)
            ):
                here = Placed(way=way, add_s=old.add_s)
                draft = redrawn(plan, request, dinner, (*rest, here), store)
                if elapsed_s is None or first_in_s(here, draft.stages) >= elapsed_s:
                    return draft, here, Verdict.TOGETHER
    all_now = (*rest, old) if old is not None else rest
    longest = {
        lane: max((p.add_s for p in all_now if p.way.window.lane == lane), default=0.0)
        for lane in (MAIN, AFTER)
    }
    used = sorted({p.add_s for p in rest})
    for way in sorted(ways, key=lambda w: w.window.cost):
        lane = way.window.lane
        for at in _moments(way, used, longest[lane], sealed=is_sealed(plan) and lane == MAIN):
            here = Placed(way=way, add_s=at)
            draft = redrawn(plan, request, dinner, (*rest, here), store)
            if elapsed_s is None or first_in_s(here, draft.stages) >= elapsed_s + SOON_S:
                return draft, here, Verdict.ADJUST
    if elapsed_s is not None:
        joined = _join(plan, dinner, request, rest, ways, store, elapsed_s)
        if joined is not None:
            return redrawn(plan, request, dinner, joined, store), joined[-1], Verdict.ADJUST
        return None
    method = redrawn(plan, request, dinner, rest, store).method if rest else None
    if method is None:
        return None
    fixed = [[p.way] for p in rest]
    laid = lay([*(p.way.dish for p in rest), ways[0].dish], method, [*fixed, list(ways)]) if ways else None
    if laid is None or laid[1]:
        return None
    draft = redrawn(plan, request, dinner, laid[0], store)
    if draft.stages.serve_s - plan.cooking_s > LONGEST_SHIFT_S:
        return None
    here = next(p for p in laid[0] if p.way.dish is ways[0].dish)
    return draft, here, Verdict.ADJUST


def _moments(way: Way, used: Sequence[float], longest_s: float, *, sealed: bool) -> Iterator[float]:
    """Add times worth trying for a way: those of the others first, then its own best."""
    window = way.window
    if sealed or way.lead == SOFTENED:
        if window.lo_s <= longest_s <= window.hi_s:
            yield longest_s
        return
    for at in sorted(used, key=lambda t: abs(t - window.best_s)):
        if window.lo_s <= at <= window.hi_s:
            yield at
    if window.lo_s <= longest_s:
        yield min(window.best_s, longest_s)


def _join(
    plan: Plan,
    dinner: Dinner,
    request: Request,
    placed: tuple[Placed, ...],
    ways: Sequence[Way],
    store: Store,
    elapsed_s: float,
) -> tuple[Placed, ...] | None:
    """The dishes with one more that goes in now at the earliest; the end moves if all can wait for it."""
    now = elapsed_s + SOON_S
    best: tuple[float, tuple[Placed, ...]] | None = None
    lid_is_on = is_sealed(plan) and any(i.in_s <= elapsed_s for i in plan.items)
    for way in sorted(ways, key=lambda w: (w.window.lo_s, w.window.cost)):
        if lid_is_on and not way.lane_is(AFTER):
            continue
        lane = way.window.lane
        end = _lane_end(plan, lane, placed)
        room_s = end - now
        shift = max(0.0, way.window.lo_s - room_s)
        at = way.window.lo_s if shift > 0 else min(way.window.best_s, room_s)
        moved = tuple(replace(p, add_s=p.add_s + shift) if p.way.window.lane == lane else p for p in placed)
        if any(p.add_s > p.way.window.hi_s + 1.0 for p in moved if p.way.window.lane == lane):
            continue
        if best is None or shift < best[0]:
            best = shift, (*moved, Placed(way=way, add_s=at))
    return best[1] if best else None


def is_sealed(plan: Plan) -> bool:
    """Whether the plan cooks under pressure."""
    return plan.settings.pressure_kPa_gauge is not None


def _lane_end(plan: Plan, lane: str, placed: Sequence[Placed]) -> float:
    """When a lane of the plan ends [s]."""
    ends = [i.in_s + i.add_s for i in plan.items if i.lane == lane and i.in_s > 0] or [
        i.out_s for i in plan.items
    ]
    return max(ends) if lane == AFTER else max(i.out_s for i in plan.items)


def _told(
    plan: Plan,
    made: Plan,
    item: PlanItem | None,
    here: Placed,
    verdict: Verdict,
    cautions: tuple[Caution, ...],
) -> SwapAnswer:
    units = plan.request.kitchen.units
    shown = next(i for i in made.items if i.food_id == here.way.dish.food.id)
    shift = made.cooking_s - plan.cooking_s
    shift = 0.0 if abs(shift) < 90 else shift
    name = shown.food[:1].upper() + shown.food[1:]
    if verdict is Verdict.TOGETHER and not shift:
        before = item.food if item is not None else "that"
        text = f"{name} instead of {before}: yes, same cut, same moment; all done together."
        return SwapAnswer(
            verdict=verdict, finish_shift_s=0.0, change=(), text=text, cautions=cautions, plan=made
        )
    change: list[tuple[str, str]] = []
    said: list[str] = []
    if item is None or shown.cut_id != item.cut_id:
        change.append(("cut", shown.cut))
        said.append("whole" if shown.cut_id == "whole" else f"in {shown.cut}")
    if item is None or abs(shown.in_s - item.in_s) >= 60:
        change.append(("in_min", f"{shown.in_s / 60:.0f}"))
        where = (
            "after the lid comes off"
            if here.way.lane_is(AFTER)
            else f"in at {max(0, round(shown.in_s / 60))} min"
        )
        said.append(where)
    if shift:
        change.append(("finish_shift_min", f"{shift / 60:+.0f}"))
        said.append(f"dinner {words.duration(abs(shift))} {'later' if shift > 0 else 'sooner'}")
    if not change:
        change.append(("grams", f"{shown.grams:.0f}"))
        said.append(words.weight(shown.grams, units))
    text = f"{name}: yes, with this change: {', '.join(said)}."
    return SwapAnswer(
        verdict=Verdict.ADJUST,
        finish_shift_s=shift,
        change=tuple(change),
        text=text,
        cautions=cautions,
        plan=made,
    )


def _refusal(
    plan: Plan, request: Request, item: PlanItem | None, dish: Dish, ways: Sequence[Way], store: Store
) -> SwapAnswer:
    """No, why, and what would work instead."""
    if not ways:
        why = f"{dish.name} does not cook well this way in the {plan.vessel}"
    else:
        lo = min(w.window.lo_s for w in ways)
        why = f"{dish.name} needs {words.duration(lo)}, the rest is not good for so long"
        if max(w.window.hi_s for w in ways) < (item.add_s if item else 0.0):
            why = f"{dish.name} would be long past its best by the time the rest is done"
    again = plan_again(request, store=store)
    other = ""
    if isinstance(again, Plan) and not any(left.food == dish.name for left in again.left_out):
        place = "a new plan" if again.vessel == plan.vessel else f"the {again.vessel}"
        other = f" It would work in {place}, about {words.duration(again.total_s)} in all."
    text = f"No: {why}.{other}"
    return SwapAnswer(
        verdict=Verdict.NO,
        finish_shift_s=0.0,
        change=(),
        text=text,
        cautions=(),
        plan=again if isinstance(again, Plan) else None,
    )


def _no(text: str) -> SwapAnswer:
    return SwapAnswer(verdict=Verdict.NO, finish_shift_s=0.0, change=(), text=text, cautions=(), plan=None)


def _same_cut(new: Way, old: Way) -> bool:
    """The same cut, or pieces so alike that nobody cuts anew."""
    return new.cut.id == old.cut.id or (
        new.cut.shape == old.cut.shape != "whole"
        and abs(new.cut.size_mm - old.cut.size_mm) <= 0.15 * old.cut.size_mm
    )


def _is(placed: Placed, item: PlanItem) -> bool:
    return (placed.way.dish.food.id, placed.way.dish.state) == (item.food_id, item.state)


def _item_named(plan: Plan, name: str | None, store: Store) -> PlanItem | None:
    """The item of the plan that a name means: by id, by name, by synonym, by a word of it."""
    if name is None:
        return None
    for item in plan.items:
        if name in (item.food_id, item.food):
            return item
    food = store.named(name)
    for item in plan.items:
        if food is not None and item.food_id == food.id:
            return item
    said = set(name.lower().split())
    near = [i for i in plan.items if said & set(i.food.lower().split())]
    if not near and food is not None:
        near = [i for i in plan.items if store.food(i.food_id).group == food.group]
    return near[0] if len(near) == 1 else None


def _food(to: Have | None, store: Store) -> Food | None:
    if to is None:
        return None
    try:
        return store.food(to.food_id)
    except UnknownFood:
        return store.named(to.said or to.food_id)


def _most_alike(plan: Plan, new: Food, store: Store) -> PlanItem | None:
    """What a new food most likely replaces: the same doneness class, else the same part of the plate."""
    foods = [(item, store.food(item.food_id)) for item in plan.items]
    by_class = [item for item, food in foods if food.doneness == new.doneness]
    by_part = [item for item, food in foods if food.part == new.part]
    return next((near[0] for near in (by_class, by_part) if len(near) == 1), None)


def _barred(food: Food, request: Request) -> str:
    if food.id in request.excluded or food.name in request.excluded:
        return "you said no to it"
    diets = barred_by(food, (*request.diets, *(f"no {x}" for x in request.excluded)))
    return f"it does not go with {words.listed(list(diets))}" if diets else ""


def _cautions(new: Food) -> Iterator[Caution]:
    if new.allergens:
        yield Caution(
            text=f"{new.name[:1].upper()}{new.name[1:]} contains {words.listed(sorted(new.allergens))}.",
            source="EU 1169/2011 and US FALCPA allergen lists",
        )


def _changed(plan: Plan, item: PlanItem | None, to: Have | None, new: Food | None, store: Store) -> Request:
    """The request with the one food in the place of the other; a swap back finds the old amounts."""
    request = plan.request
    out = None
    if item is not None:
        out = next((h for h in request.have if h.food_id == item.food_id), None)
    into = (
        replace(to, food_id=new.id, said=to.said or new.name) if to is not None and new is not None else None
    )
    history = request.swapped
    if into is not None and out is not None:
        bare = into.grams is None and into.qty is None
        back = next(
            (s for s in reversed(history) if s.out.food_id == into.food_id and s.into.food_id == out.food_id),
            None,
        )
        if back is not None and bare:
            into = back.out
            history = tuple(s for s in history if s is not back)
        else:
            history = (*history, Swapped(out=out, into=into))
    have: list[Have] = []
    for h in request.have:
        if h is out:
            if into is not None:
                have.append(into)
        else:
            have.append(h)
    if out is None and into is not None:
        have.append(into)
    return replace(request, have=tuple(have), swapped=history)


def _in_amount(dinner: Dinner, item: PlanItem | None, new: Food | None, request: Request) -> Dinner:
    """As much of the new food as fills the old one's place, when nobody said how much."""
    if item is None or new is None:
        return dinner
    said = next((h for h in request.have if h.food_id == new.id), None)
    if said is None or said.grams is not None or said.qty is not None:
        return dinner
    dishes = tuple(
        replace(d, grams=item.grams) if d.food.id == new.id and _like_weights(d, item) else d
        for d in dinner.dishes
    )
    return replace(dinner, dishes=dishes)


def _like_weights(dish: Dish, item: PlanItem) -> bool:
    """Whether weight for weight is a fair exchange: fresh vegetables for fresh vegetables."""
    return 0.4 < dish.grams / max(item.grams, 1.0) < 2.5 and not (
        dish.piece_g and dish.piece_g > 0.5 * item.grams
    )
