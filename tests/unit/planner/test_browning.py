"""Mince browns by its weight, thaws when it is frozen, and never leaves the pan half raw.

Seven minutes for 500 g and twelve more for a frozen block are common practice, no source.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Do, Have, Kitchen, Plan, Request, VesselAt

MINCES = ("ground-beef", "ground-turkey", "ground-pork", "ground-lamb", "ground-chicken")


def planned(store: Store, vessel: str, *have: Have) -> Plan:
    kitchen = Kitchen(vessels=(VesselAt(id=vessel),))
    made = plan(Request(have=have, eaters=3.0, eaters_said=True, kitchen=kitchen), store=store)
    assert isinstance(made, Plan)
    report = check(made, store=store)
    assert report.unsafe == ()
    return made


def in_heat_min(made: Plan, food_id: str) -> float:
    item = next(i for i in made.items if i.food_id == food_id)
    return (item.out_s - item.in_s) / 60.0


@pytest.mark.parametrize("mince", MINCES)
@pytest.mark.parametrize("vessel", ["saute pan", "lidded pot"])
def test_raw_mince_has_its_minutes_and_stays_in(store: Store, mince: str, vessel: str) -> None:
    made = planned(
        store,
        vessel,
        Have(food_id=mince, grams=480.0),
        Have(food_id="bell-pepper", qty=2.0),
        Have(food_id="onion"),
    )
    assert in_heat_min(made, mince) >= 6.0
    assert not any(s.do is Do.TAKE_OUT and mince in s.foods for s in made.steps)
    assert "leave alone until the water is gone" in " ".join(s.text for s in made.steps)


def test_more_mince_takes_longer(store: Store) -> None:
    few, many = (
        in_heat_min(planned(store, "saute pan", Have(food_id="ground-turkey", grams=g)), "ground-turkey")
        for g in (300.0, 750.0)
    )
    assert few >= 4.5
    assert many >= 10.0


@pytest.mark.parametrize("vessel", ["saute pan", "lidded pot"])
def test_a_frozen_block_is_thawed_in_the_pan_first(store: Store, vessel: str) -> None:
    def minutes(state: str | None) -> tuple[float, str]:
        made = planned(
            store,
            vessel,
            Have(food_id="ground-beef", grams=450.0, state=state),
            Have(food_id="carrot", qty=2.0),
        )
        step = next(s for s in made.steps if s.do in (Do.BROWN, Do.ADD) and "ground-beef" in s.foods)
        return made.cooking_s / 60.0, step.text

    fresh, frozen = minutes(None), minutes("frozen")
    assert 8.0 <= frozen[0] - fresh[0] <= 16.0
    assert "scrape off what has thawed" in frozen[1]
    assert "scrape" not in fresh[1]
