"""Would this replacement still finish with the rest? Answered by planning with the rest held.

In order, the first that works is the answer:

1. the new food in the old one's cut at the old one's moment     -> together
2. another cut, or another moment, within the same cook          -> adjust
3. the whole cook a little longer, everything still in its window -> adjust, finish shifts
4. none of these                                                 -> no, and what would work
"""

from __future__ import annotations

from dataclasses import replace

from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.changing.exchange import changed, in_amount
from knowledge.planner.changing.holding import first_that_holds, fitted
from knowledge.planner.changing.recall import (
    dinner_of,
    placed_of,
    redrawn,
    steady,
    ways_now,
)
from knowledge.planner.changing.verdicts import (
    has_protein,
    loses_the_protein,
    no,
    refusal,
    safety,
    told,
    weaker,
)
from knowledge.planner.choose import plan as plan_again
from knowledge.planner.draft import Placed
from knowledge.planner.gathering.meant import barred, food_of, item_named, most_alike
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

POOR_FIT = 4.5  # of 10: below that a cook says no, even if it would be done in time


def swap(
    plan: Plan, *, frm: str | None, to: Have | None, store: Store, elapsed_s: float | None = None
) -> SwapAnswer:
    """The verdict on putting `to` in the place of the food named `frm` (a name or an id).

    `frm` None: `to` is added, or takes the place of what it is most like when the words
    leave it open; `to` None: `frm` is taken out. `elapsed_s` is the plan's own time when
    the cook is running: what is in stays in.
    """
    item = item_named(plan, frm, store)
    new = food_of(to, store)
    if frm is not None and item is None:
        names = words.listed([i.food for i in plan.items])
        return no(f"There is no {frm} in this plan; there is {names}.")
    if to is not None and new is None:
        return no(f"I do not know {to.said or to.food_id}, so I cannot work out how it cooks.")
    if item is None and new is None:
        return no("Tell me what should go out and what should come in.")
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
        why_not = barred(new, plan.request)
        if why_not:
            return no(f"No {new.name}: {why_not}.")
    if item is not None and elapsed_s is not None and item.in_s <= elapsed_s:
        return no(f"The {item.food} is in already, so it stays in." + (
            f" {new.name[:1].upper()}{new.name[1:]} could go beside it." if new else ""))  # fmt: skip
    if item is None and new is not None and elapsed_s is None and frm is None:
        item = most_alike(plan, new, store)
    request = changed(plan, item, to, new, store)
    restored = not request.swapped and bool(plan.request.swapped) and elapsed_s is None
    answer = _held(plan, request, item, new, store, elapsed_s)
    if restored and answer.verdict is not Verdict.NO:
        again = plan_again(request, store=store)
        if isinstance(again, Plan):
            return replace(answer, plan=again, finish_shift_s=again.total_s - plan.total_s)
    return answer


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
    dinner = in_amount(dinner, item, new, request)
    before = placed_of(plan, dinner_of(plan.request, store), store)
    rest = tuple(p for p in before if item is None or not _is(p, item))
    protein_goes = loses_the_protein(plan, item, new, store)
    if new is None or new.role is not Role.COOK:
        draft = redrawn(plan, request, dinner, steady(plan, rest), store) if rest else None
        if draft is None:
            return no("Then nothing is left to cook.")
        made = plan_of(draft, request, (), store=store)
        name = new.name if new else f"no {item.food if item else ''}"
        shift = made.total_s - plan.total_s
        return weaker(
            SwapAnswer(
                verdict=Verdict.TOGETHER, finish_shift_s=0.0 if abs(shift) < 90 else shift, change=(),
                text=f"{name[:1].upper()}{name[1:]}: fine, the rest stays as it is.",
                cautions=tuple(allergens_of(new, new.name)) if new else (), plan=made,
            ),
            protein_goes and not (plan.items and has_protein(made, store)),
        )  # fmt: skip
    dish = next((d for d in dinner.dishes if d.food.id == new.id), None)
    if dish is None:
        return no(f"No {new.name}: it is left out of this dinner.")
    [ways] = ways_now((dish,), plan, request, store)
    if twins := {p.way.lead for p in rest if p.way.dish.food.id == new.id}:
        ways = [w for w in ways if w.lead in twins]  # one food is treated in one way
    old = next((p for p in before if item is not None and _is(p, item)), None)
    if ways and max(w.fit for w in ways) < POOR_FIT:
        return refusal(plan, request, item, dish, (), store)
    found = first_that_holds(plan, request, dinner, rest, old, ways, store, elapsed_s)
    if found is None:
        return refusal(plan, request, item, dish, ways, store)
    draft, here, verdict = found
    smaller = fitted(plan, request, dinner, draft, here, store)
    if smaller is None:
        return no(f"No: with {dish.name} it would not fit the {plan.size}.")
    draft, here = smaller
    made = plan_of(draft, request, (), store=store)
    answer = told(plan, made, item, here, verdict, tuple(safety(here, plan, store)))
    return weaker(answer, protein_goes and not has_protein(made, store))


def _is(placed: Placed, item: PlanItem) -> bool:
    return (placed.way.dish.food.id, placed.way.dish.state) == (item.food_id, item.state)
