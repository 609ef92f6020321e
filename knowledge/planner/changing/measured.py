"""How much longer a food needs, after a thermometer was in it."""

from __future__ import annotations

from knowledge.foods.store import Store
from knowledge.physics import cook
from knowledge.physics.probe import fit_to_probe
from knowledge.planner.checking.followed import case_of
from knowledge.planner.model import Plan

EARLY_S = 120.0  # a reading before that tells of the fridge, not of the heat


def left_s(plan: Plan, food_id: str, *, elapsed_s: float, core_degC: float, store: Store) -> float | None:
    """From a core temperature to the time until the food is done [s], at least 0.

    The food's path so far is taken from the steps of the plan, its thickness from the reading.
    None when the food is not in the plan, went in only just now, or no thickness within reason
    would give this reading: then the tip was in the wrong place, or the heat was off.

    Args:
        elapsed_s: of the plan, when the reading was taken.
    """
    item = next((i for i in plan.items if i.food_id == food_id), None)
    if item is None or elapsed_s - item.in_s < EARLY_S:
        return None
    in_for_s = elapsed_s - item.in_s
    fitted = fit_to_probe(case_of(item, plan, store), time_s=in_for_s, core_degC=core_degC)
    done_s = cook([fitted.case])[0].done_s
    if not fitted.believable or done_s is None:
        return None
    return max(done_s - in_for_s, 0.0)
