"""Greens that steam on a bed: laid on rice or potatoes under the lid instead of stirred in.

What grain drinks must not be stirred up, and broccoli on potatoes keeps its colour; in a
sauce the same greens are stirred in.
"""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.foods.store import Store
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.methods import Method, fit_of
from knowledge.planner.writing.handling import handling

GRAIN_BED = frozenset({"white_rice", "small_grain", "whole_grain", "pearl_grain"})
ROOT_BED = frozenset({"starchy", "root"})
SAUCY_WISHES = frozenset({"soup", "stew", "saucy"})


def has_bed(dishes: Sequence[Dish], wishes: Sequence[str], store: Store) -> bool:
    """Whether there is something to lie on: grain that is left alone, or roots without a sauce."""
    if SAUCY_WISHES & {*wishes} or any(d.made.is_tossed for d in dishes):
        return False
    if any(d.kind in GRAIN_BED and not handling(d, store=store).pot for d in dishes):
        return True
    sauce = any(fit.way == "browned" for d in dishes if (fit := fit_of(d, store)) is not None)
    return not sauce and any(d.kind in ROOT_BED for d in dishes)


def steams_on_top(dish: Dish, method: Method, store: Store) -> bool:
    """Whether this food is one for lying on a bed in this method."""
    return method.kind == "wet" and method.heat == "hob" and handling(dish, store=store).steams
