"""The dinner wanted after a swap: the one food in the place of the other, in the amount that fills it."""

from __future__ import annotations

from dataclasses import replace

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.gathering.dinner import Dinner, Dish
from knowledge.planner.model import (
    Have,
    Plan,
    PlanItem,
    Request,
    Swapped,
)


def changed(plan: Plan, item: PlanItem | None, to: Have | None, new: Food | None, store: Store) -> Request:
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


def in_amount(dinner: Dinner, item: PlanItem | None, new: Food | None, request: Request) -> Dinner:
    """As much of the new food as fills the old one's place, when nobody said how much."""
    if item is None or new is None:
        return dinner
    said = next((h for h in request.have if h.food_id == new.id), None)
    if said is None or said.grams is not None or said.qty is not None:
        return dinner
    units = request.kitchen.units
    dishes, assumed = list(dinner.dishes), list(dinner.assumed)
    for i, dish in enumerate(dishes):
        if dish.food.id == new.id and _like_weights(dish, item):
            dishes[i] = replace(dish, grams=item.grams)
            guess, now = (words.amount(d, units) for d in (dish, dishes[i]))
            assumed = [now if note == guess else note for note in assumed]
    return replace(dinner, dishes=tuple(dishes), assumed=tuple(assumed))


def _like_weights(dish: Dish, item: PlanItem) -> bool:
    """Whether weight for weight is a fair exchange: fresh vegetables for fresh vegetables."""
    return 0.4 < dish.grams / max(item.grams, 1.0) < 2.5 and not (
        dish.piece_g and dish.piece_g > 0.5 * item.grams
    )
