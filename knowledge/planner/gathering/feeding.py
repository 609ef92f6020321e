"""For how many a dinner is enough, by its protein and by what lies on the plate."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from knowledge.planner.gathering.amounts import APPETITE, is_flavour

if TYPE_CHECKING:
    from knowledge.planner.draft import Draft
    from knowledge.planner.gathering.dinner import Dish

PLATE_G = 430.0  # what an adult eats for dinner, as it comes from the pan
BOWL_G = 600.0  # a soup that is dinner
LEAN = 0.55  # of a plate counts however little protein is on it
LIGHT_PLATE_G = 330.0  # of it, when nothing starchy is in it


def served(draft: Draft) -> float:
    """How many it feeds: by the protein when there is one, else by all of it."""
    dishes = [p.way.dish for p in draft.placed]
    if draft.dinner.soup_for:
        bowls = (sum(d.plate_g for d in dishes) + (draft.liquid.ml if draft.liquid else 0.0)) / BOWL_G
        return max(0.5, round(bowls * 2) / 2)
    return served_by(dishes, filling=any(d.part == "starch" for d in draft.dinner.dishes))


def served_by(dishes: Sequence[Dish], *, filling: bool) -> float:
    """How many adults these feed for dinner, to the half.

    Between what the protein alone would say and what all of it weighs on the plate; with
    nothing `filling` in the dinner, bread or rice goes beside it. A second protein stands
    partly in the place of a starch.
    """
    by_plate = sum(d.plate_g for d in dishes) / (PLATE_G if filling else LIGHT_PLATE_G)
    proteins = [d.servings for d in dishes if d.part == "protein" and not is_flavour(d.food)]
    mains = sorted(proteins, reverse=True)
    if not mains:
        return max(0.5, round(by_plate * 2) / 2)
    by_protein = max(APPETITE * (mains[0] + 0.5 * sum(mains[1:])), LEAN * by_plate)
    feeds = min(math.sqrt(by_protein * by_plate), 1.6 * by_plate, 1.3 * by_protein)
    return max(0.5, round(2 * feeds) / 2)
