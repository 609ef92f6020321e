"""Would this replacement still finish with the rest? Answered by planning with the rest held.

In order, the first that works is the answer:

1. the new food in the old one's cut at the old one's moment      -> together
2. another cut, or another moment, within the same cook           -> adjust
3. the whole cook a little longer, everything still in its window -> adjust, finish shifts
4. the same vessel laid out anew, nothing left out                -> adjust, finish shifts
5. none of these                                                  -> no, and what would work
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.changing.exchange import changed
from knowledge.planner.changing.holding import Swapping, first_that_holds, fitted
from knowledge.planner.changing.recall import (
    dinner_of,
    placed_of,
    redrawn,
    steady,
    ways_now,
)
from knowledge.planner.changing.taste import at_the_table
from knowledge.planner.changing.told import many, told
from knowledge.planner.changing.verdicts import (
    has_protein,
    is_raw_bean,
    loses_the_protein,
    no,
    refusal,
    safety,
    weaker,
)
from knowledge.planner.checking.verify import owed
from knowledge.planner.choose import plan as plan_again
from knowledge.planner.draft import AFTER, Placed, Way
from knowledge.planner.gathering.dinner import Dinner, Dish
from knowledge.planner.gathering.meant import barred, food_of, have_named, item_named, most_alike
from knowledge.planner.methods import fit_of
from knowledge.planner.model import (
    Have,
    Plan,
    PlanItem,
    Request,
    SwapAnswer,
    Verdict,
)
from knowledge.planner.writing.cautions import allergens_of
from knowledge.planner.writing.compose import plan_of

QUICKER = 0.6  # of the time that the old food took
POOR_FIT = 4.5  # of 10: below that a cook says no, even if it would be done in time
MELTS = "cheese"  # group of what fills the plate too, and goes on at the end
MUCH_LESS = 0.75  # of what comes in: less of it in the old places is worth laying all out anew
MUCH_SOONER_S = 8 * 60.0  # worth laying all out anew, when what set the clock is gone
MUCH_LATER_S = 75 * 60.0  # by so much nobody's dinner waits for a swap


def swap(
    plan: Plan, *, frm: str | None, to: Have | None, store: Store, elapsed_s: float | None = None
) -> SwapAnswer:
    """The verdict on putting `to` in the place of the food named `frm` (a name or an id).

    `frm` None: `to` is added, or takes the place of what it is most like when the words
    leave it open; `to` None: `frm` is taken out. `elapsed_s` is the plan's own time when
    the cook is running: what is in stays in.
    """
    new = food_of(to, store)
    if to is not None and new is None:
        return no(f"I do not know {to.said or to.food_id}, so I cannot work out how it cooks.")
    if to is not None and new is not None and (refused := _refused(to, new, plan)) is not None:
        return refused
    item = item_named(plan, frm, store)
    out = _at_hand(plan, item, frm, store)
    if frm is not None and item is None and out is None:
        names = words.listed([i.label for i in plan.items])
        return no(f"There is no {frm} in this plan; there is {names}.")
    if item is None and new is None and out is None:
        return no("Tell me what should go out and what should come in.")
    same_id = item.food_id if item is not None else out.food_id if out is not None else ""
    same_state = item.state or None if item is not None else None
    if to is not None and new is not None and same_id == new.id and to.state in (None, same_state):
        return SwapAnswer(
            verdict=Verdict.TOGETHER, finish_shift_s=0.0, change=(), cautions=(), plan=plan,
            text=f"{to.said or new.name} is in the plan already.",
        )  # fmt: skip
    if item is not None and elapsed_s is not None and item.in_s <= elapsed_s:
        beside = to.said or new.name if to is not None and new is not None else ""
        stay = f"{'are' if many(item.label) else 'is'} in already, so {_it(item.label)}"
        return no(f"The {item.label} {stay}." + (
            f" {beside[:1].upper()}{beside[1:]} could go beside {'them' if many(item.label) else 'it'}."
            if beside else ""))  # fmt: skip
    if item is None and out is None and new is not None and elapsed_s is None:
        item = most_alike(plan, new, store)
        out = _at_hand(plan, item, frm, store)
    request = changed(plan, item, out, to, new, store)
    restored = not request.swapped and bool(plan.request.swapped) and elapsed_s is None
    answer = _surely_safe(_held(plan, request, item, out, new, store, elapsed_s), store)
    if restored and answer.verdict is not Verdict.NO:
        again = plan_again(request, store=store)
        if isinstance(again, Plan):
            return replace(answer, plan=again, finish_shift_s=again.total_s - plan.total_s)
    return answer


def _surely_safe(answer: SwapAnswer, store: Store) -> SwapAnswer:
    """The answer, or no: what comes in cold may leave others short of their published minimum."""
    lacks = owed(answer.plan, store=store) if answer.plan is not None else {}
    if answer.plan is None or not lacks:
        return answer
    names = words.listed([i.label for i in answer.plan.items if i.food_id in lacks])
    short = "it" if len(lacks) == 1 else "they"
    return no(f"No: {names} would not surely be hot enough to be safe by then; {short} would want longer.")


def _it(label: str) -> str:
    return "they stay in" if many(label) else "it stays in"


def _at_hand(plan: Plan, item: PlanItem | None, frm: str | None, store: Store) -> Have | None:
    """What leaves, among what is at hand: the item's own, or a seasoning, or what is scattered at the end."""
    if item is None:
        return have_named(plan, frm, store)
    same = [h for h in plan.request.have if h.food_id == item.food_id]
    return next((h for h in same if (h.state or "") == item.state), same[0] if same else None)


def _refused(to: Have, new: Food, plan: Plan) -> SwapAnswer | None:
    """No, when these eaters do not eat it; its allergens are named whatever the reason."""
    why = barred(new, plan.request)
    if not why:
        return None
    name = to.said or new.name
    if new.allergens and "contains" not in why:
        why = f"it contains {words.listed(sorted(new.allergens))}, and {why}"
    return replace(no(f"No {name}: {why}."), cautions=tuple(allergens_of(new, name)))


def _held(
    plan: Plan,
    request: Request,
    item: PlanItem | None,
    out: Have | None,
    new: Food | None,
    store: Store,
    elapsed_s: float | None,
) -> SwapAnswer:
    """The verdict with everything else where it is."""
    dinner = dinner_of(request, store)
    before = placed_of(plan, dinner_of(plan.request, store), store)
    rest = tuple(p for p in before if item is None or not _is(p, item))
    if new is None or new.role is not Role.COOK:
        return _beside(plan, request, item, out, new, dinner, rest, store)
    into = next((h for h in request.have if h.food_id == new.id), None)
    state = (into.state or "") if into is not None else ""
    of_it = [d for d in dinner.dishes if d.food.id == new.id]
    dish = next((d for d in of_it if d.state == state), of_it[0] if of_it else None)
    if dish is None:
        return no(f"No {new.name}: it is left out of this dinner.")
    dinner = _noted(dinner, dish, item, plan)
    [ways] = ways_now((dish,), plan, request, store)
    ways = _after_pressure(ways)
    if twins := {p.way.lead for p in rest if p.way.dish.food.id == new.id}:
        ways = [w for w in ways if w.lead in twins]  # one food is treated in one way
    old = next((p for p in before if item is not None and _is(p, item)), None)
    poor = bool(ways) and max(w.fit for w in ways) < POOR_FIT
    beans = is_raw_bean(dish) and not (old is not None and is_raw_bean(old.way.dish))
    if poor or beans:
        return refusal(plan, request, item, dish, () if poor else ways, store)
    left = item.label if item is not None else out.said if out is not None else ""
    protein_goes = loses_the_protein(plan, item, new, store)
    swapping = Swapping(
        plan=plan, request=request, dinner=dinner, rest=rest, old=old, elapsed_s=elapsed_s, store=store
    )
    found = first_that_holds(swapping, ways)
    fits = found and fitted(plan, request, dinner, found[0], found[1], store)
    short = fits is not None and fits[1].way.dish.grams < MUCH_LESS * dish.grams
    waits = fits is not None and old is not None and _waits_for_nothing(old, fits[1], rest)
    if fits is None or short or waits:
        made = _anew(plan, request, item, dish, store) if elapsed_s is None else None
        shown = next((i.grams for i in made.items if i.food_id == new.id), 0.0) if made is not None else 0.0
        sooner = waits and made is not None and made.cooking_s < plan.cooking_s - MUCH_SOONER_S
        if made is not None and (fits is None or shown > fits[1].way.dish.grams or sooner):
            placed = next(p for p in placed_of(made, dinner, store) if p.way.dish.food.id == new.id)
            cautions = tuple(safety(placed, made, store))
            answer = told(plan, made, item, left, new.id, Verdict.ADJUST, cautions, store)
            return weaker(answer, protein_goes and not has_protein(made, store))
    if found is None:
        return refusal(plan, request, item, dish, ways, store)
    if fits is None:
        return no(f"No: with {dish.name} it would not fit the {plan.size}.")
    draft, here = fits
    made = plan_of(draft, request, (), store=store)
    cautions = tuple(safety(here, plan, store))
    answer = told(plan, made, item, left, new.id, found[2], cautions, store)
    return weaker(answer, protein_goes and not has_protein(made, store))


def _waits_for_nothing(old: Placed, new: Placed, rest: Sequence[Placed]) -> bool:
    """Whether what set the clock left for something quick: the rest would cook on for nobody."""
    others = max((p.way.window.lo_s for p in rest if p.way.window.lane == old.way.window.lane), default=0.0)
    return max(new.add_s, others) < QUICKER * old.add_s


def _beside(
    plan: Plan,
    request: Request,
    item: PlanItem | None,
    out: Have | None,
    new: Food | None,
    dinner: Dinner,
    rest: tuple[Placed, ...],
    store: Store,
) -> SwapAnswer:
    """Something leaves, and nothing that is cooked comes in: the rest stays as it is."""
    draft = redrawn(plan, request, dinner, steady(plan, rest), store) if rest else None
    if draft is None:
        return no("Then nothing is left to cook.")
    made = plan_of(draft, request, (), store=store)
    left = item.label if item is not None else (out.said or out.food_id) if out is not None else ""
    shift = made.total_s - plan.total_s
    text = f"Without {left}: fine, the rest stays as it is."
    if new is not None:
        into = next((h.said for h in request.have if h.food_id == new.id), "") or new.name
        if item is not None and new.role is Role.FINISH and new.part == "vegetable":
            return replace(no(f"No: {into} is eaten raw, so it goes beside. {text}"), plan=made)
        late = new.role is Role.FINISH or new.group == MELTS
        moment = "at the end" if late else "at the usual moment"
        instead = f" instead of {left}" if left else " too"
        text = f"{into[:1].upper()}{into[1:]}{instead}: yes, {moment}; the rest stays as it is."
        if item is None and out is not None and (noticed := at_the_table(store.food(out.food_id), new)):
            text = f"{text} {noticed[:1].upper()}{noticed[1:]}."
    answer = SwapAnswer(
        verdict=Verdict.TOGETHER, finish_shift_s=0.0 if abs(shift) < 90 else shift, change=(), text=text,
        cautions=tuple(allergens_of(new, new.name)) if new else (), plan=made,
    )  # fmt: skip
    protein_goes = loses_the_protein(plan, item, new, store) and (new is None or new.group != MELTS)
    return weaker(answer, protein_goes and not has_protein(made, store))


def _noted(dinner: Dinner, dish: Dish, item: PlanItem | None, plan: Plan) -> Dinner:
    """The dinner, with how much of the new food was taken, when nobody said so."""
    told_so = any(s.into.food_id == dish.food.id and s.into.grams is None for s in plan.request.swapped)
    if item is None or dish.assumed or told_so:
        return dinner
    note = words.amount(dish, plan.request.kitchen.units)
    return dinner if note in dinner.assumed else replace(dinner, assumed=(*dinner.assumed, note))


def _after_pressure(ways: Sequence[Way]) -> list[Way]:
    """What is cooked already (a tin) is stirred in after the pressure where it can be: it would be pulp."""
    late = [w for w in ways if w.lane_is(AFTER) and w.doneness == "warm_through"]
    return late or list(ways)


def _anew(plan: Plan, request: Request, item: PlanItem | None, dish: Dish, store: Store) -> Plan | None:
    """The dinner laid out anew in the same vessel, if nothing has to stay out and it is no evening later."""
    again = plan_again(replace(request, vessel=plan.vessel), store=store)
    if not isinstance(again, Plan) or again.cooking_s - plan.cooking_s > MUCH_LATER_S:
        return None
    wanted = {i.food_id for i in plan.items if i is not item} | {dish.food.id}
    fit = fit_of(dish, store)
    points = fit.by_method.get(again.settings.method, 0.0) if fit is not None else 0.0
    shown = next((i for i in again.items if i.food_id == dish.food.id), None)
    if shown is not None and shown.lane == AFTER and fit is not None:
        points = max(fit.by_finish.values(), default=0.0)
    if shown is None or not wanted <= {i.food_id for i in again.items} or points < POOR_FIT:
        return None
    return replace(again, request=request)


def _is(placed: Placed, item: PlanItem) -> bool:
    return (placed.way.dish.food.id, placed.way.dish.state) == (item.food_id, item.state)
