"""A thin sauce boiled down with the lid off: how much there is too much, and how long that takes.

What is left in the pot is what was poured in and what meat and vegetables give, less what
grain drank and what left as steam. A burner on full turns so much of it to steam as its
heat allows: power over the latent heat of water.
"""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.foods.model import Food
from knowledge.physics.vessels import hob_power_W
from knowledge.planner.draft import AFTER, MAIN, SECOND, SOFTENED, Placed
from knowledge.planner.gathering.dinner import Dinner
from knowledge.planner.methods import Method
from knowledge.planner.model import Liquid
from knowledge.planner.search import room
from knowledge.planner.techniques import DRY

LATENT_KJ_KG = 2257.0  # water at 100 °C; steam tables (IAPWS-IF97)
SAUCE_ML_HEAD = 120.0  # a ladle over meat and potatoes; common practice, no source
THIN_ML = 80.0  # less than that too much nobody boils away
LONGEST_S = 480.0  # the rest stays: a thinner sauce is better than dry meat
SHORTEST_S = 120.0  # less is not worth lifting the lid; judgement
DRIED_S = 180.0  # a splash is gone and the spices stick; common practice, no source
HARD = 0.6  # of boiling's wear on what stays in, that a braise has anyway
DELICATE = frozenset({"fish", "shellfish", "egg", "tender_leaf"})


def reduce_s(
    method: Method, placed: Sequence[Placed], liquid: Liquid | None, dinner: Dinner, gone_ml: float
) -> float:
    """How long the sauce is boiled down at the end [s]; 0 when it need not be, or the food would not bear it.

    Args:
        gone_ml: what left as steam under the lid.
    """
    last_s = min((p.add_s for p in placed if p.way.lane_is(MAIN)), default=0.0)  # then the lid is on no more
    if dinner.technique.ends == DRY and method.kind == "wet" and method.heat == "hob":
        return min(DRIED_S, last_s) if last_s >= SHORTEST_S else 0.0
    excess = excess_ml(method, placed, liquid, dinner, gone_ml)
    if excess < THIN_ML or not _bears_boiling(placed):
        return 0.0
    if any(p.way.lane_is(AFTER) for p in placed):
        return 0.0  # it bubbles open for minutes as it is
    longest_s = LONGEST_S if method.kind == "sealed" else min(LONGEST_S, last_s)
    return min(excess / steam_ml_s(), longest_s) if longest_s >= SHORTEST_S else 0.0


def excess_ml(
    method: Method, placed: Sequence[Placed], liquid: Liquid | None, dinner: Dinner, gone_ml: float
) -> float:
    """How much thin liquid there is beyond a sauce [ml]; 0 for a soup and where something thickens it."""
    if liquid is None or method.liquid not in ("half", "least") or method.heat != "hob" or dinner.soup_for:
        return 0.0
    if any(s.food.part == "thickener" for s in dinner.seasonings):
        return 0.0
    poured = sum(s.grams or 0.0 for s in dinner.seasonings if room.is_poured(s) and s.food.group != "stock")
    given = sum(room.given_ml(p.way) for p in placed) / room.GIVEN
    drunk = sum(room.drinks_ml(p.way) for p in placed)
    if drunk > 0.2 * liquid.ml:
        return 0.0  # grain and pulses thicken it
    return max(liquid.ml + poured + given - drunk - gone_ml - SAUCE_ML_HEAD * dinner.eaters, 0.0)


def steam_ml_s() -> float:
    """What a burner on full boils away from an open pot [ml/s]: power over latent heat."""
    return hob_power_W() / 1000.0 / LATENT_KJ_KG * 1000.0


def _bears_boiling(placed: Sequence[Placed]) -> bool:
    """Whether all of it may boil hard for some minutes: a braise, and nothing delicate or near its end."""
    inside = [p for p in placed if p.way.window.lane in (MAIN, SECOND)]
    if any(p.way.dish.kind in DELICATE for p in placed if not p.way.lane_is(AFTER)):
        return False
    if any(p.way.dish.part in ("vegetable", "starch") and _falls_apart(p) for p in inside):
        return False
    braised = any(_is_meat(p.way.dish.food) and p.way.lead for p in inside)
    return braised and all(p.way.window.hi_s - p.add_s >= HARD * LONGEST_S for p in inside)


def _falls_apart(placed: Placed) -> bool:
    """Whether hard boiling makes mash of it: potatoes, and all vegetables but roots and mushrooms."""
    dish = placed.way.dish
    bears = dish.food.group == "mushroom" or dish.kind in ("warm_through", "root")
    return not bears and placed.way.lead != SOFTENED


def _is_meat(food: Food) -> bool:
    return bool(food.animal) and food.part == "protein"
