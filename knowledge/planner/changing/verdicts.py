"""The answer to a swap in words: together, with which change, or no and what would work instead."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.changing.recall import (
    method_of,
)
from knowledge.planner.changing.replans import is_sealed
from knowledge.planner.choose import plan as plan_again
from knowledge.planner.draft import AFTER, Placed, Way
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
from knowledge.units import weight


def told(
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
    name = shown.label[:1].upper() + shown.label[1:]
    if verdict is Verdict.TOGETHER and not shift:
        before = item.label if item is not None else "that"
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
            ("after the lid comes off" if is_sealed(plan) else "under the broiler")
            if here.way.lane_is(AFTER)
            else f"in at {max(0, round(shown.in_s / 60))} min"
        )
        said.append(where)
    if shift:
        change.append(("finish_shift_min", f"{shift / 60:+.0f}"))
        said.append(f"dinner {words.duration(abs(shift))} {'later' if shift > 0 else 'sooner'}")
    if not change:
        change.append(("grams", f"{shown.grams:.0f}"))
        said.append(weight(shown.grams, units))
    text = f"{name}: yes, with this change: {', '.join(said)}."
    return SwapAnswer(
        verdict=Verdict.ADJUST,
        finish_shift_s=shift,
        change=tuple(change),
        text=text,
        cautions=cautions,
        plan=made,
    )


def refusal(
    plan: Plan, request: Request, item: PlanItem | None, dish: Dish, ways: Sequence[Way], store: Store
) -> SwapAnswer:
    """No, why, and what would work instead."""
    if not ways:
        why = f"{dish.name} does not cook well this way in the {plan.vessel}{_for_what(dish, store)}"
    else:
        lo = min(w.window.lo_s for w in ways)
        why = f"{dish.name} needs {words.duration(lo)}, the rest is not good for so long"
        if max(w.window.hi_s for w in ways) < (item.add_s if item else 0.0):
            why = f"{dish.name} would be long past its best by the time the rest is done"
    again = plan_again(request, store=store)
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


def _for_what(dish: Dish, store: Store) -> str:
    """What it is for instead, when one way stands out."""
    fit = fit_of(dish, store)
    if dish.is_raw_bean:
        return ": dry beans need a soak and a hard boil first, half cooked they are poisonous"
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
