"""A name that ends in the word for a piece says which piece it is. Common practice, no source."""

from __future__ import annotations

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Have, Kitchen, Plan, Request, VesselAt


def test_a_gammon_steak_is_not_a_gammon_joint(store: Store) -> None:
    steak = Have(food_id="gammon", qty=1.0, unit="piece", said="gammon steak")
    kitchen = Kitchen(vessels=(VesselAt(id="saute pan"),))
    made = plan(Request(have=(steak,), eaters=1.0, eaters_said=True, kitchen=kitchen), store=store)
    assert isinstance(made, Plan)
    (item,) = made.items
    assert 150 <= item.grams <= 300
    assert item.size_mm <= 20
    assert 3 <= (item.done.at_s - item.in_s) / 60.0 <= 10  # 2 to 5 min a side
