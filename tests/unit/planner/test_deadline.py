"""Dinner at a time: in time where it can be, else the fastest, said first; with hours to spare, its start."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.gathering.dinner import gather
from knowledge.planner.model import Have, Kitchen, Plan, Request, VesselAt
from knowledge.planner.search.drafts import drafts

STEW = (
    Have(food_id="pork-shoulder", grams=1200.0),
    Have(food_id="carrot", qty=4.0, unit="piece"),
    Have(food_id="onion", qty=2.0, unit="piece"),
)
THIGHS = (
    Have(food_id="chicken-thigh", qty=3.0, unit="piece"),
    Have(food_id="parsnip", qty=3.0, unit="piece"),
)


def planned(store: Store, have: tuple[Have, ...], ready_in_min: float | None) -> Plan:
    ready = None if ready_in_min is None else ready_in_min * 60.0
    made = plan(Request(have=have, eaters=3.0, eaters_said=True, ready_in_s=ready), store=store)
    assert isinstance(made, Plan)
    return made


@pytest.mark.parametrize("have", [STEW, THIGHS])
def test_when_nothing_is_in_time_the_fastest_is_taken_and_the_lateness_said_first(
    store: Store, have: tuple[Have, ...]
) -> None:
    request = Request(have=have, eaters=3.0, eaters_said=True, ready_in_s=15 * 60.0)
    all_of_it = [d for d in drafts(gather(request, store=store), request, store=store) if not d.refused]
    fastest = min(d.stages.serve_s - d.start_s for d in all_of_it)
    made = planned(store, have, 15.0)
    assert made.total_s <= fastest + 121.0
    assert made.late_s == pytest.approx(made.total_s - 900.0)
    assert " late: this takes " in made.timing
    assert made.remedy.startswith("that is the fastest there is")
    assert not any("late" in said for said in made.assumed)


def test_in_time_nothing_is_said_of_lateness(store: Store) -> None:
    made = planned(store, THIGHS, 75.0)
    assert made.late_s == 0.0
    assert made.total_s <= 75 * 60.0 + 45.0
    assert (made.timing, made.remedy) == ("", "")


def test_with_hours_to_spare_it_is_said_when_to_begin(store: Store) -> None:
    made = planned(store, STEW, 330.0)
    assert made.spare_s == pytest.approx(330 * 60.0 - made.total_s)
    assert "begin in" in made.timing


def test_with_hours_to_spare_the_better_dinner_comes_before_the_faster(store: Store) -> None:
    vessels = (VesselAt(id="lidded pot"), VesselAt(id="pressure cooker"))
    made = {
        ready: plan(
            Request(
                have=STEW, eaters=4.0, eaters_said=True, ready_in_s=ready, kitchen=Kitchen(vessels=vessels)
            ),
            store=store,
        )
        for ready in (75 * 60.0, 330 * 60.0)
    }
    soon, later = made.values()
    assert isinstance(soon, Plan)
    assert isinstance(later, Plan)
    assert soon.vessel == "pressure cooker"
    assert later.vessel == "lidded pot"
