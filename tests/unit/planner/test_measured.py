"""A thermometer reading in a running plan. The oracle is the simulation the reading is taken from."""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.physics import cook, history
from knowledge.physics.probe import thicker
from knowledge.planner import plan
from knowledge.planner.changing.measured import left_s
from knowledge.planner.checking.followed import case_of
from knowledge.planner.model import Have, Kitchen, Plan, PlanItem, Request, VesselAt


@pytest.fixture(scope="module", params=[0.0, 2200.0])
def roasting(store: Store, request: pytest.FixtureRequest) -> tuple[Plan, PlanItem]:
    kitchen = Kitchen(vessels=(VesselAt(id="sheet pan"),), altitude_m=request.param)
    made = plan(
        Request(have=(Have(food_id="chicken-thigh", qty=4), Have(food_id="potato")), kitchen=kitchen),
        store=store,
    )
    assert isinstance(made, Plan)
    return made, next(i for i in made.items if i.food_id == "chicken-thigh")


@pytest.mark.parametrize("factor", [0.8, 1.0, 1.25])
def test_a_reading_tells_how_thick_the_piece_is(
    store: Store, roasting: tuple[Plan, PlanItem], factor: float
) -> None:
    made, item = roasting
    case = case_of(item, made, store)
    true = replace(case, piece=thicker(case.piece, factor))
    done_s = cook([true])[0].done_s
    assert done_s is not None
    at_s = 0.6 * done_s
    read = history(true, [at_s]).core_degC[0]
    left = left_s(made, item.food_id, elapsed_s=item.in_s + at_s, core_degC=read, store=store)
    assert left == pytest.approx(done_s - at_s, rel=0.05, abs=20.0)


def test_a_colder_reading_takes_longer(store: Store, roasting: tuple[Plan, PlanItem]) -> None:
    made, item = roasting
    left = [
        left_s(made, item.food_id, elapsed_s=item.in_s + 1500, core_degC=read, store=store)
        for read in (68.0, 60.0, 52.0)
    ]
    assert all(one is not None for one in left)
    assert left == sorted(left, key=lambda one: one or 0.0)


def test_a_reading_that_no_piece_would_give_tells_nothing(
    store: Store, roasting: tuple[Plan, PlanItem]
) -> None:
    made, item = roasting
    assert left_s(made, item.food_id, elapsed_s=item.in_s + 60, core_degC=10.0, store=store) is None
    assert left_s(made, item.food_id, elapsed_s=item.in_s + 2400, core_degC=6.0, store=store) is None
    assert left_s(made, "salmon", elapsed_s=item.in_s + 1500, core_degC=50.0, store=store) is None
