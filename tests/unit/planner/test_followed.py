"""The path that the check follows, read off the steps alone."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.physics import media
from knowledge.planner import plan
from knowledge.planner.checking.followed import case_of
from knowledge.planner.checking.written import FALL_S, sealings
from knowledge.planner.model import Have, Kitchen, Plan, Request, VesselAt


def test_falling_pressure_is_followed_down_to_the_open_boil(store: Store) -> None:
    """At 80 kPa gauge water boils at 117 °C (steam tables, IAPWS-IF97), open at 100."""
    request = Request(
        have=(Have(food_id="stew-beef", grams=700),),
        kitchen=Kitchen(vessels=(VesselAt(id="pressure cooker"),)),
    )
    made = plan(request, store=store)
    assert isinstance(made, Plan)
    case = case_of(made.items[0], made, store)
    [sealing] = sealings(made)
    falling = next(p for p in case.phases if p.medium.start_degC > p.medium.ambient_degC + 1.0)
    assert falling.medium.start_degC == pytest.approx(117.0, abs=0.5)
    assert falling.medium.ambient_degC == pytest.approx(100.0, abs=0.2)
    assert falling.duration_s == pytest.approx(FALL_S["slow"])
    assert falling.medium == media.releasing(80.0, duration_s=sealing.opened_s - sealing.release_s)
