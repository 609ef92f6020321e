"""Enough for everyone: of what nobody gave an amount, so much is taken that the dinner feeds its eaters."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from knowledge.planner import words
from knowledge.planner.gathering import amounts
from knowledge.planner.gathering.feeding import served_by

if TYPE_CHECKING:
    from knowledge.planner.gathering.dinner import Dish

ENOUGH = 0.95  # of the eaters; the last bite is not counted
MORE = 1.25  # a step
MOST = {"starch": 1.6, "vegetable": 2.2, "protein": 2.2}  # servings of one food for each eater
MOUNTAIN_G, ONE_HILL_G = 280.0, 100.0  # of all vegetables and of one, for each eater, when nobody said
GROWS = frozenset({"vegetable", "starch", "protein"})


def filled(dishes: Sequence[Dish], several: Sequence[bool | None], eaters: float) -> list[Dish]:
    """The dishes with more of what was assumed, until they feed the eaters or that would be a mountain.

    Args:
        several: of each, whether it was not said as one; "a sweet potato" is one while others can grow;
            None of what is to be little, or surely one.
    """
    found = list(dishes)
    for many in (True, False):
        for _ in range(20):
            if served_by(found, filling=any(d.part == "starch" for d in found)) >= ENOUGH * eaters:
                return found
            before = list(found)
            for n, dish in enumerate(before):
                if _is_open(dish) and several[n] is many:
                    found[n] = _more(dish, found, eaters)
            if found == before:
                break
    return found


def _is_open(dish: Dish) -> bool:
    return dish.assumed and dish.part in GROWS and not amounts.is_flavour(dish.food)


def _more(dish: Dish, beside: Sequence[Dish], eaters: float) -> Dish:
    """A step more of it; the same when that is too much for so many."""
    tin = amounts.portion(dish.food, "can", None) if dish.state == "canned" else None
    if tin:
        grams = math.ceil(MORE * dish.grams / tin - 1e-6) * tin
    elif dish.piece_g and dish.piece_g > amounts.SMALL_G and not dish.weighed:
        grams = amounts.in_pieces(MORE * dish.grams, dish.piece_g, dish.food)
        grams = grams if grams > dish.grams else dish.grams + dish.piece_g
    else:
        grams = words.handy(MORE * dish.grams)
    larger = replace(dish, grams=grams)
    serving = amounts.serving_g(dish.food, cooked=dish.kind == "warm_through")
    if grams > MOST[dish.part] * serving * eaters or (
        dish.part == "vegetable" and _is_mountain(larger, beside, eaters)
    ):
        return dish
    return larger


def _is_mountain(larger: Dish, beside: Sequence[Dish], eaters: float) -> bool:
    others = [d for d in beside if d.part == "vegetable" and d.food.id != larger.food.id]
    heap = sum(d.grams * d.food.edible_frac for d in (*others, larger))
    one = larger.grams * larger.food.edible_frac
    return heap > MOUNTAIN_G * eaters or one > max(ONE_HILL_G * eaters, 300.0)
