"""The answer to a swap that does not work: why, and what would work instead; what the new food brings."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.changing.recall import (
    method_of,
)
from knowledge.planner.changing.told import many
from knowledge.planner.choose import plan as plan_again
from knowledge.planner.draft import Placed, Way
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.methods import fit_of, methods
from knowledge.planner.model import (
    Caution,
    Plan,
    PlanItem,
    Request,
    SwapAnswer,
    Verdict,
)
from knowledge.planner.writing.cautions import allergens_of, hazards, minimums


def refusal(
    plan: Plan, request: Request, item: PlanItem | None, dish: Dish, ways: Sequence[Way], store: Store
) -> SwapAnswer:
    """No, why, and what would work instead."""
    name = words.label(dish)
    again = plan_again(request, store=store)
    if is_raw_bean(dish):
        why = BEANS.format(name=name)
    elif not ways:
        why = f"{name} would not cook well this way in the {plan.vessel}{_for_what(dish, store)}"
    elif max(w.window.hi_s for w in ways) < (item.add_s if item else 0.0):
        why = (
            f"{name} would be long past {'their' if many(name) else 'its'} best by the time the rest is done"
        )
    else:
        lo = min(w.window.lo_s for w in ways)
        why = f"{name} would need {words.duration(lo)}, too long for this dinner"
    other = ""
    if isinstance(again, Plan) and not any(left.food == dish.food.name for left in again.left_out):
        place = "a new plan" if again.vessel == plan.vessel else f"the {again.vessel}"
        other = f" It would work in {place}, about {words.duration(again.total_s)} in all."
    text = f"No: {why}.{other}"
    return SwapAnswer(
        verdict=Verdict.NO,
        finish_shift_s=0.0,
        change=(),
        text=text,
        cautions=(
            *hazards([dish], kind=method_of(plan, store).kind, store=store),
            *allergens_of(dish.food, dish.name),
        ),
        plan=again if isinstance(again, Plan) else None,
    )


BEANS = (
    "{name} would have to soak for hours, boil hard for 30 min and then simmer until soft; "
    "half cooked they are poisonous"
)


def is_raw_bean(dish: Dish) -> bool:
    """Whether it is a dry bean that must boil hard before it is fit to eat."""
    return dish.is_raw_bean


def _for_what(dish: Dish, store: Store) -> str:
    """What it is for instead, when one way stands out."""
    fit = fit_of(dish, store)
    if fit is None or not fit.by_method:
        return ""
    best = max(sorted(fit.by_method), key=lambda m: fit.by_method[m])
    return f"; {next(m.name for m in methods(store) if m.id == best)} is what it is for"


def no(text: str) -> SwapAnswer:
    return SwapAnswer(verdict=Verdict.NO, finish_shift_s=0.0, change=(), text=text, cautions=(), plan=None)


def safety(here: Placed, plan: Plan, store: Store) -> Iterator[Caution]:
    """What the new food brings: its minimum, what is dangerous about it, its allergens."""
    kind = method_of(plan, store).kind
    yield from minimums((here,), plan.request.kitchen.units, store=store)
    yield from hazards([here.way.dish], kind=kind, store=store)
    yield from allergens_of(here.way.dish.food, here.way.dish.name)


def loses_the_protein(plan: Plan, item: PlanItem | None, new: Food | None, store: Store) -> bool:
    """Whether what fills the plate goes and something goes in that does not."""
    if item is None or new is None or store.food(item.food_id).part != "protein":
        return False
    return new.part != "protein" or new.role is not Role.COOK


def has_protein(plan: Plan, store: Store) -> bool:
    return any(store.food(i.food_id).part == "protein" for i in plan.items)


def weaker(answer: SwapAnswer, is_weaker: bool) -> SwapAnswer:
    """The answer, with a word that the dinner loses its protein; no swap like for like then."""
    if not is_weaker or answer.verdict is Verdict.NO:
        return answer
    text = f"{answer.text} The dinner loses its protein: eggs, beans, cheese or tofu would round it off."
    change = (*answer.change, ("protein", "missing"))
    return replace(answer, verdict=Verdict.ADJUST, text=text, change=change)
