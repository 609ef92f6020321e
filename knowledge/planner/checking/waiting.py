"""Checks of meat that waits on a plate between the pan and the rest: half done for long, or back but cold.

Read off the finished plan's steps and simulated, like everything in `verify`.
"""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.foods.store import Store
from knowledge.physics import history, media
from knowledge.physics import piece as physics_piece
from knowledge.physics.model import Case, Phase
from knowledge.planner.checking.followed import case_of, in_pan_s, slices_step
from knowledge.planner.gathering.dinner import figures
from knowledge.planner.model import Do, Plan, PlanItem

WAIT_S = 900.0  # USDA FSIS: never brown or cook meat part way to finish it later
NEARLY_K = 5.0  # below the published minimum, on a plate, the middle is as good as done
HOT_DEGC = 57.0  # FDA Food Code: hot food is held at 135 °F
SLICE_MM = 10.0  # a steak is sliced about a finger thick; common practice, no source


def on_the_plate(plan: Plan, *, store: Store) -> Iterator[str]:
    """What is wrong with meat that comes out of the pan and goes back in, a sentence each."""
    for item in plan.items:
        brown = next((s for s in plan.steps if s.do is Do.BROWN and item.food_id in s.foods), None)
        back = [s for s in plan.steps if s.do is Do.ADD and item.food_id in s.foods]
        if brown is None or not back:
            continue
        wait_s = back[-1].at_s - brown.at_s - brown.hands_s
        sliced = slices_step(item, plan) is not None
        if wait_s > WAIT_S and _is_half_done(item, plan, wait_s, store):
            yield f"{item.food} waits half cooked for {wait_s / 60:.0f} min"
        if sliced and _slices_degC(item, plan, wait_s, store) < HOT_DEGC:
            yield f"the slices of {item.food} are not hot"


def _is_half_done(item: PlanItem, plan: Plan, wait_s: float, store: Store) -> bool:
    """Whether the middle stays short of the published minimum through pan and plate."""
    case = case_of(item, plan, store)
    if case.goal.safe_degC is None:
        return False
    altitude = plan.request.kitchen.altitude_m
    waited = Case(
        piece=case.piece,
        phases=(case.phases[0], Phase(medium=media.resting(25.0, altitude_m=altitude), duration_s=None)),
        goal=case.goal,
    )
    pan_s = in_pan_s(item, plan, store)
    seen = history(waited, [pan_s + share * wait_s for share in (0.0, 0.1, 0.2, 0.4, 0.7, 1.0)])
    return max(seen.core_degC) < case.goal.safe_degC - NEARLY_K


def _slices_degC(item: PlanItem, plan: Plan, wait_s: float, store: Store) -> float:
    """How hot slices of it are on the mean after their last minute in the pan [°C]."""
    case = case_of(item, plan, store)
    altitude = plan.request.kitchen.altitude_m
    rested = Case(
        piece=case.piece,
        phases=(case.phases[0], Phase(medium=media.resting(25.0, altitude_m=altitude), duration_s=None)),
        goal=case.goal,
    )
    left_degC = history(rested, [in_pan_s(item, plan, store) + wait_s]).mean_degC[0]
    food = figures(item.food_id, item.state, store)
    slices = Case(
        piece=physics_piece(
            food, size_mm=SLICE_MM, shape="slab", ratio_1=4.0, ratio_2=8.0, start_degC=left_degC
        ),
        phases=(Phase(medium=media.open_pan(200.0, altitude_m=altitude, surface="meat"), duration_s=None),),
        goal=case.goal,
    )
    step = slices_step(item, plan)
    end_s = max(i.out_s for i in plan.items)
    back_s = end_s - (step.at_s if step is not None else end_s)
    return history(slices, [max(back_s, 1.0)]).mean_degC[0]
