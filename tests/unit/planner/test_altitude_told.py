"""The mountains are named: where water boils, and how much longer that takes.

Water boils at 93.3 °C at 2,000 m and at 90 °C at 3,000 m (standard atmosphere, ISO 2533, and the
vapour pressure of water; NIST gives 84.5 and 70.1 kPa for these temperatures within a kelvin).
"""

from __future__ import annotations

import re

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Have, Kitchen, Plan, Request, VesselAt

BEANS = (Have(food_id="black-bean", grams=250.0, state="dried"), Have(food_id="onion"))


def assumed(store: Store, vessel: str, altitude_m: float) -> list[str]:
    kitchen = Kitchen(vessels=(VesselAt(id=vessel),), altitude_m=altitude_m)
    made = plan(Request(have=BEANS, kitchen=kitchen), store=store)
    assert isinstance(made, Plan)
    return [said for said in made.notes if "water boils" in said]


@pytest.mark.parametrize(("altitude_m", "degC"), [(2000.0, 93.3), (3000.0, 90.0)])
@pytest.mark.parametrize("vessel", ["lidded pot", "pressure cooker"])
def test_the_height_is_named_with_what_it_costs(
    store: Store, vessel: str, altitude_m: float, degC: float
) -> None:
    [line] = assumed(store, vessel, altitude_m)
    found = re.search(r"at (\d+) m water boils at (\d+) °C", line)
    assert found is not None
    assert float(found[1]) == altitude_m
    assert float(found[2]) == pytest.approx(degC, abs=1.0)
    cost = re.search(r"beans, (.*) instead of (.*) at the sea", line)
    assert cost is not None
    assert _minutes(cost[1]) > _minutes(cost[2])


def test_near_the_sea_nothing_is_said(store: Store) -> None:
    assert assumed(store, "lidded pot", 200.0) == []


def _minutes(said: str) -> int:
    """ "1 h 10" and "45 min" in minutes."""
    hours = re.search(r"(\d+) h", said)
    rest = re.search(r"(\d+)(?: min)?$", said.replace(" h", "h ").strip())
    return 60 * int(hours[1] if hours else 0) + int(rest[1] if rest else 0)
