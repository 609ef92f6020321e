"""The dinner wanted after a swap: the one food in the place of the other, in the amount that fills it."""

from __future__ import annotations

import math
from dataclasses import replace

from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.gathering import amounts
from knowledge.planner.gathering.dinner import PULSES, figures
from knowledge.planner.model import (
    Have,
    Plan,
    PlanItem,
    Request,
    Swapped,
)

LEAST_PROTEIN_G = 120.0  # for each eater, where it is all the protein
COUNTED_G = 40.0  # from here a piece is counted rather than weighed
SHORT = 0.3  # of a piece: so little less is not made up by one more
HALVED_G = 350.0  # from here half a vegetable is used


def changed(
    plan: Plan, item: PlanItem | None, out: Have | None, to: Have | None, new: Food | None, store: Store
) -> Request:
    """The request with the one food in the place of the other; a swap back finds the old amounts.

    When nobody said how much of the new food, it takes the weight that it replaces.
    """
    request = plan.request
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
        if back is not None and bare and into.state in (None, back.out.state):
            into = back.out
            history = tuple(s for s in history if s is not back)
        else:
            if bare and item is not None and new is not None and new.role is Role.COOK:
                into = filling(into, item, plan, store)
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


def filling(into: Have, item: PlanItem, plan: Plan, store: Store) -> Have:
    """The new food in the amount that takes the old one's place.

    Gram for gram, in whole pieces or tins where it comes in such; between the dry and the
    fresh, and among flavourings, as many servings; of the only protein enough for everyone.
    """
    if into.state is None and store.food(into.food_id).doneness in PULSES:
        into = replace(into, state=item.state if item.state in ("dried", "soaked") else "canned")
    old, new = figures(item.food_id, item.state or None, store), figures(into.food_id, into.state, store)
    cooked = {"old": item.state in amounts.COOKED, "new": into.state in amounts.COOKED}
    grams = item.grams
    dry = (_is_dry(old, cooked=cooked["old"]), _is_dry(new, cooked=cooked["new"]))
    if dry[0] != dry[1] or (old.part == "aromatic") != (new.part == "aromatic"):
        have_each = amounts.serving_g(old, cooked=cooked["old"])
        grams *= amounts.serving_g(new, cooked=cooked["new"]) / have_each
    serving = amounts.serving_g(new, cooked=cooked["new"])
    others = (store.food(i.food_id) for i in plan.items if i is not item)
    main = not any(f.part == "protein" and not amounts.is_flavour(f) for f in others)
    if new.part == "protein" and old.part == "protein" and main and not amounts.is_flavour(new):
        grams = max(grams, min(LEAST_PROTEIN_G, serving) * plan.request.eaters)
    if new.part in amounts.GENEROUS and new.part != "aromatic":
        grams = min(grams, amounts.GENEROUS[new.part] * serving * max(plan.request.eaters, plan.serves))
    return _counted(into, new, grams)


def _counted(into: Have, food: Food, grams: float) -> Have:
    """So many grams in whole pieces or tins; by weight where nobody counts it."""
    tin = amounts.portion(food, "can", into.size)
    if into.state == "canned" and tin:
        return replace(into, qty=float(max(1, math.ceil(grams / tin - 0.6))), unit="can")
    piece, unit = amounts.piece_of(food, into)
    uncounted = not unit and words.plural(into.said or food.name) == (into.said or food.name)
    if food.part == "protein" and piece is not None and COUNTED_G <= piece <= amounts.JOINT_G:
        number = float(max(1, math.ceil(grams / piece - SHORT)))
        if into.cut in (None, "bone-in", "boneless", "fillet", "whole") and not uncounted:
            return replace(into, grams=number * piece, qty=number, unit="piece")
    if food.part != "protein" and piece is not None and piece > COUNTED_G:
        if piece > HALVED_G:
            return replace(into, grams=amounts.in_pieces(grams, piece, food))
        return replace(into, grams=max(words.handy(grams), piece))
    return replace(into, grams=max(words.handy(grams), 1.0))


def _is_dry(food: Food, *, cooked: bool) -> bool:
    """Whether it swells in the pot, and so weighs little for what it fills."""
    return food.start_state == "dry" and not cooked and bool(food.water_uptake_g_per_g)
