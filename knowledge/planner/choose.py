"""The plan: the best draft, the best of other vessels beside it, or why there is none."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.foods.store import Store
from knowledge.planner import quicker, words
from knowledge.planner.checking.surely import surely_safe
from knowledge.planner.draft import Draft
from knowledge.planner.gathering.dinner import Dinner, Dish, gather
from knowledge.planner.gathering.feeding import served
from knowledge.planner.methods import whole_mm
from knowledge.planner.model import Kitchen, LeftOut, NoPlan, Plan, Request
from knowledge.planner.search import deadline, room
from knowledge.planner.search.drafts import drafts
from knowledge.planner.writing import altitude, enough
from knowledge.planner.writing.compose import plan_of

MOST_FOODS = 14  # more than that nobody puts into one vessel
OF_MANY = {"protein": 2, "starch": 1, "vegetable": 4, "aromatic": 2}  # kept then, by part; judgement
WORTH_A_LOOK = 4.5  # points behind the best at which another vessel is still worth naming
THAW_FROM_MM = 80.0  # thicker frozen meat is thawed first: joints, whole birds; judgement
MAIN_GONE = 0.75  # of the eaters fed without the meat it was about: below that no dinner; judgement


def plan(request: Request, *, store: Store) -> Plan | NoPlan:
    """The best one-vessel dinner, or the reasons why there is none and what comes nearest.

    What the message itself gave reason to warn of comes first among the reasons.
    Pure: the same request gives the same plan. Raises nothing for any request.
    """
    answer = _planned(request, store=store)
    if isinstance(answer, NoPlan) and request.alerts:
        return replace(answer, reasons=(*(alert.text for alert in request.alerts), *answer.reasons))
    return answer


def _planned(request: Request, *, store: Store) -> Plan | NoPlan:
    dinner = gather(request, store=store)
    trouble = tuple(_trouble(dinner, request))
    if trouble:
        return NoPlan(reasons=trouble, nearest=None, request=request)
    still_frozen = [d for d in dinner.dishes if _must_thaw(d)]
    if still_frozen:
        return _thaw_first(still_frozen, request, store)
    dinner = _trimmed(dinner, request, store)
    answer, short = surely_safe(
        lambda dishes: _best(replace(dinner, dishes=dishes), request, store), dinner.dishes, store=store
    )
    if not short:
        return answer
    names = words.listed([d.name for d in dinner.dishes if d.food.id in short])
    reason = f"{names}: not surely safe in one vessel with the rest; cook it by itself"
    rest = replace(request, have=tuple(h for h in request.have if h.food_id not in short))
    found = _planned(rest, store=store)
    nearest = found if isinstance(found, Plan) else found.nearest
    return NoPlan(reasons=(reason,), nearest=nearest, request=request)


def _best(dinner: Dinner, request: Request, store: Store) -> Plan | NoPlan:
    """The best dinner of these dishes, or why there is none."""
    found = drafts(dinner, request, store=store)
    usable = [d for d in found if d.placed]
    if not usable:
        return _none(dinner, request, store)
    best = usable[0]
    if _misses_the_point(best):
        return _without_the_main(best, usable, request, store)
    made = _finished(best, usable, request, store)
    if enough.is_no_dinner(best, request):
        return NoPlan(reasons=tuple(enough.far_too_little(best, request)), nearest=made, request=request)
    if deadline.is_out_of_reach(made, request):
        reason = f"{made.timing}; {made.remedy}"
        return NoPlan(reasons=(reason,), nearest=made, request=request)
    return made


def _must_thaw(dish: Dish) -> bool:
    """Whole birds and big joints: warm for hours outside before the middle has thawed (USDA FSIS)."""
    return dish.state == "frozen" and bool(dish.food.animal) and whole_mm(dish) >= THAW_FROM_MM


def _thaw_first(frozen: Sequence[Dish], request: Request, store: Store) -> NoPlan:
    """Not tonight, and what the rest would make."""
    names = words.listed([d.name for d in frozen])
    reason = (
        f"{names} frozen through: whole birds and big joints thaw first, in the fridge, 24 h for each 2 kg; "
        "smaller pieces can be cooked from frozen (USDA FSIS)"
    )
    ids = {d.food.id for d in frozen}
    rest = replace(request, have=tuple(h for h in request.have if h.food_id not in ids))
    made = plan(rest, store=store)
    nearest = made if isinstance(made, Plan) else made.nearest
    return NoPlan(reasons=(reason,), nearest=nearest, request=request)


def _finished(best: Draft, found: Sequence[Draft], request: Request, store: Store) -> Plan:
    others: dict[str, Draft] = {}
    for draft in found:
        same = draft.vessel.id == best.vessel.id
        if not same and draft.score > best.score - WORTH_A_LOOK and len(draft.refused) <= len(best.refused):
            others.setdefault(draft.vessel.id, draft)
    made = plan_of(best, request, list(others.values()), store=store)
    late_s = deadline.late_s(made, request)
    return replace(
        made,
        left_out=tuple(_with_its_home(left, best, request, store) for left in made.left_out),
        timing=deadline.timing(made, request),
        remedy=_remedy(made, best, request, store) if late_s else "",
        notes=(*made.notes, *altitude.told(best, request, store)),
        quicker=quicker.tried(best, found, request, store) if "quick" in request.wishes else "",
        late_s=late_s,
        spare_s=deadline.spare_s(made, request),
    )


def _with_its_home(left: LeftOut, best: Draft, request: Request, store: Store) -> LeftOut:
    """A food that has to stay out for want of the right heat, with where it would go."""
    dish = next((d for d, why in best.refused if (d.name, why) == (left.said, left.why)), None)
    return left if dish is None else replace(left, why=f"{left.why}{_alone(dish, request, store)}")


def _remedy(made: Plan, best: Draft, request: Request, store: Store) -> str:
    """What a late dinner could do without, planned to be sure."""
    slow = deadline.held_up_by(best)
    if slow is None or (request.ready_in_s or 0.0) <= 0:
        return deadline.remedy(made, None, None, request)
    have = tuple(h for h in request.have if h.food_id != slow.food.id)
    without = gather(replace(request, have=have), store=store)
    found = [d for d in drafts(without, request, store=store) if d.placed and not d.refused]
    then = plan_of(found[0], request, (), store=store) if found else None
    return deadline.remedy(made, slow, then, request)


def _trouble(dinner: Dinner, request: Request) -> Iterator[str]:
    """What makes a plan impossible before any heat is thought of."""
    if not request.kitchen.vessels:
        yield "no vessel in this kitchen; name one: sheet pan, saute pan, lidded pot, pressure cooker"
    elif request.vessel and request.vessel not in {v.id for v in request.kitchen.vessels}:
        have = words.listed([v.id for v in request.kitchen.vessels])
        yield f"there is no {request.vessel} in this kitchen; there is: {have}"
    elif request.vessel and request.vessel in request.not_vessels:
        yield f"you asked for the {request.vessel} and ruled it out as well; which is it?"
    if not dinner.dishes:
        barred = [left.food for left in dinner.left_out]
        if barred:
            yield f"nothing is left to cook: {'; '.join(f'{x.food}: {x.why}' for x in dinner.left_out)}"
        elif dinner.seasonings or dinner.sides:
            names = words.listed([s.name for s in (*dinner.seasonings, *dinner.sides)])
            yield f"{names}: nothing there needs cooking; name a vegetable, a grain, meat, fish, eggs or tofu"
        else:
            yield 'tell me what is there, for example: "4 chicken thighs, potatoes, carrots, for 2"'


def _trimmed(dinner: Dinner, request: Request, store: Store) -> Dinner:
    """A dinner that a cook would make of more foods than one vessel can hold: some of each part, as named."""
    if len(dinner.dishes) <= MOST_FOODS:
        return dinner
    room = dict(OF_MANY)
    kept, dropped = set(), []
    for dish in dinner.dishes:
        if room.get(dish.part, 0) > 0:
            room[dish.part] -= 1
            kept.add(dish.food.id)
        else:
            dropped.append(dish)
    gone = {d.food.id for d in dropped} - kept
    have = tuple(h for h in request.have if h.food_id not in gone)
    fewer = gather(replace(request, have=have), store=store)
    names = words.listed([d.name for d in dropped])
    note = f"{len(dinner.dishes)} foods are too many for one vessel; kept for another day: {names}"
    return replace(fewer, assumed=(note, *fewer.assumed))


def _misses_the_point(draft: Draft) -> bool:
    """Whether all the protein, or most of the dinner, had to stay out."""
    if not draft.refused:
        return False
    wanted = [d for d in draft.dinner.dishes if d.part == "protein"]
    out = {id(d) for d, _ in draft.refused}
    half, feeds = 0.5 * draft.dinner.eaters, served(draft)
    hungry = feeds < half or (feeds == half and any(d.part == "starch" for d, _ in draft.refused))
    no_protein = bool(wanted) and all(id(d) in out for d in wanted)
    main = max(wanted, key=lambda d: (d.grams, d.name), default=None)
    if main is not None and id(main) in out and feeds < MAIN_GONE * draft.dinner.eaters:
        return True
    return hungry or no_protein or len(draft.refused) > len(draft.placed)


def _without_the_main(best: Draft, found: Sequence[Draft], request: Request, store: Store) -> NoPlan:
    reasons = tuple(f"{dish.name}: {why}{_alone(dish, request, store)}" for dish, why in best.refused)
    return NoPlan(reasons=reasons, nearest=_finished(best, found, request, store), request=request)


def _alone(dish: Dish, request: Request, store: Store) -> str:
    """Where a food that has to stay out is at home, and for how long: to be cooked first, or beside."""
    have = tuple(h for h in request.have if h.food_id == dish.food.id)
    free = replace(
        request, have=have, vessel=None, not_vessels=(), ready_in_s=None, wishes=(),
        kitchen=replace(request.kitchen, vessels=Kitchen().vessels),
    )  # fmt: skip
    found = [d for d in drafts(gather(free, store=store), free, store=store) if d.placed]
    if not found:
        return ""
    best = found[0]
    takes = words.duration(deadline.took_s(best))
    return f"; by itself it goes in the {best.vessel.id} ({best.method.name}), {takes}"


def _none(dinner: Dinner, request: Request, store: Store) -> NoPlan:
    """Nothing goes: why, and what would with another vessel."""
    names = words.listed([d.name for d in dinner.dishes])
    where = request.vessel or words.listed([v.id for v in request.kitchen.vessels])
    reasons = (f"{names}: not to be cooked well in the {where}",)
    free = replace(request, vessel=None, not_vessels=())
    found = [d for d in drafts(dinner, free, store=store) if d.placed] if free != request else []
    if not found:
        free = replace(free, kitchen=replace(request.kitchen, vessels=Kitchen().vessels))
        found = [d for d in drafts(dinner, free, store=store) if d.placed]
    if not found:
        return NoPlan(reasons=reasons, nearest=None, request=request)
    nearest = _finished(found[0], found, free, store)
    if any(v.id == nearest.vessel for v in request.kitchen.vessels) and free.kitchen != request.kitchen:
        reason = (
            f"{names}: too full for the {nearest.vessel}{_how_full(found[0])}; the {nearest.size} has room"
        )
        return NoPlan(reasons=(reason,), nearest=nearest, request=request)
    return NoPlan(
        reasons=(*reasons, f"it would go in the {nearest.vessel}"), nearest=nearest, request=request
    )


def _how_full(draft: Draft) -> str:
    """Up to where a cooker may be filled."""
    if draft.method.kind != "sealed":
        return ""
    most = room.limit(draft.vessel, draft.method, [p.way for p in draft.placed])
    half = most <= draft.vessel.max_fill_foaming_frac
    return ": no more than half full when something foams or swells" if half else ": no more than two thirds"
