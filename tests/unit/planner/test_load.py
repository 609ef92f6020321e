"""A full vessel is a slower one: what else is cooked shows in everyone's time. Common practice, no source."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.gathering.dinner import gather
from knowledge.planner.model import Do, Have, Kitchen, Plan, Request, VesselAt
from knowledge.planner.search.load import (
    crowding,
    load_of,
    oven_drawn_down,
    own_kg,
    stilled,
    to_pressure_s,
)


def dinner(store: Store, vessel: str, *have: Have, eaters: float) -> Plan:
    kitchen = Kitchen(vessels=(VesselAt(id=vessel),), oven_max_degC=200.0)
    made = plan(Request(have=have, eaters=eaters, eaters_said=True, kitchen=kitchen), store=store)
    assert isinstance(made, Plan)
    return made


def took_s(made: Plan, food_id: str) -> float:
    item = next(i for i in made.items if i.food_id == food_id)
    return item.done.window_s[0] - item.in_s


@pytest.mark.parametrize(
    ("vessel", "food", "grams"), [("sheet pan", "carrot", 1800), ("saute pan", "bell-pepper", 1000)]
)
def test_a_crowded_vessel_takes_longer(store: Store, vessel: str, food: str, grams: float) -> None:
    few = dinner(store, vessel, Have(food_id=food, grams=200), eaters=1.0)
    many = dinner(store, vessel, Have(food_id=food, grams=grams), eaters=8.0)
    assert 1.1 * took_s(few, food) < took_s(many, food) < 2.5 * took_s(few, food)


def test_a_fuller_cooker_takes_longer_to_come_to_pressure(store: Store) -> None:
    def up_s(grams: float) -> float:
        made = dinner(store, "pressure cooker", Have(food_id="stew-beef", grams=grams), eaters=grams / 200)
        lid = next(s for s in made.steps if s.do is Do.LID)
        return next(s for s in made.steps if s.do is Do.HEAT and s.at_s > lid.at_s).at_s - lid.at_s

    assert 240 <= up_s(400) < up_s(1600) <= 1200  # 4 to 20 min


def test_a_kilo_of_cold_potatoes_stills_a_pot(store: Store) -> None:
    size = next(s for s in store.vessel("lidded pot").sizes if s.usual)
    request = Request(have=(Have(food_id="potato", grams=1000),), eaters=4.0, eaters_said=True)
    load = load_of(gather(request, store=store).dishes, size, store)
    little, much = (stilled(load, own_kg(g), liquid_degC=99.0, altitude_m=0.0) for g in (150, 1000))
    assert little[0] > much[0] + 10  # it falls further
    assert little[1] < much[1] < 600  # and is longer in coming back


def test_a_loaded_sheet_draws_the_oven_down_and_is_crowded(store: Store) -> None:
    size = next(s for s in store.vessel("sheet pan").sizes if s.usual)

    def load(grams: float):  # type: ignore[no-untyped-def]
        request = Request(have=(Have(food_id="carrot", grams=grams),), eaters=8.0, eaters_said=True)
        return load_of(gather(request, store=store).dishes, size, store)

    assert crowding(load(300), flat=False) == 0.0
    assert crowding(load(300), flat=False) < crowding(load(1500), flat=False) <= 1.0
    assert oven_drawn_down(load(1500), 220.0)[1] >= oven_drawn_down(load(300), 220.0)[1]


def test_pressure_comes_sooner_over_liquid_that_boils(store: Store) -> None:
    size = next(s for s in store.vessel("pressure cooker").sizes if s.usual)
    cold, hot = (
        to_pressure_s(size, kg=0.5, liquid_kg=0.5, gauge_kPa=80.0, altitude_m=0.0, hot=hot)
        for hot in (False, True)
    )
    assert hot < 0.6 * cold


def test_what_has_no_room_on_the_sheet_slows_nothing_on_it(store: Store) -> None:
    def on_the_sheet(grams: float) -> float:
        [dish, *_] = gather(
            Request(have=(Have(food_id="potato", grams=grams),), eaters=12.0), store=store
        ).dishes
        size = next(s for s in store.vessel("sheet pan").sizes if s.id == "quarter sheet")
        return load_of([dish], size, store, single_layer=True).cover

    assert on_the_sheet(300.0) < on_the_sheet(2000.0) == on_the_sheet(4000.0)
