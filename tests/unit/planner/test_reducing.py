"""A thin sauce is boiled down at the end, for as long as a burner needs to boil the excess away.

2 kW at 70 % into the pot over 2257 kJ/kg (latent heat, IAPWS-IF97) is 37 ml a minute. 100-150 ml of
sauce a head: common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.checking.followed import boil_down, case_of
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Have, Kitchen, Plan, Request, Step, VesselAt
from knowledge.planner.search.reducing import steam_ml_s


def planned(store: Store, vessel: str, *foods: str | Have, wishes: tuple[str, ...] = ()) -> Plan:
    have = tuple(f if isinstance(f, Have) else Have(food_id=f) for f in foods)
    kitchen = Kitchen(vessels=(VesselAt(id=vessel),), oven_max_degC=0.0)
    request = Request(have=have, kitchen=kitchen, wishes=wishes)
    made = plan(request, store=store)
    assert isinstance(made, Plan)
    assert check(made, store=store).sound, check(made, store=store)
    return made


def down(made: Plan) -> Step:
    step = boil_down(made)
    assert step is not None
    return step


def test_a_burner_boils_away_so_much_a_minute() -> None:
    assert 60 * steam_ml_s() == pytest.approx(2000 * 0.7 / 2257 * 60, rel=0.02)


STEW = (Have(food_id="stew-beef", grams=900), Have(food_id="carrot"), Have(food_id="red-wine", grams=300))


@pytest.mark.parametrize(("vessel", "root"), [("lidded pot", "carrot"), ("pressure cooker", "onion")])
def test_a_wet_stew_is_boiled_down_with_the_lid_off(store: Store, vessel: str, root: str) -> None:
    beef, _, wine = STEW
    made = planned(store, vessel, beef, root, wine)
    step = down(made)
    assert "lid off" in step.text.lower()
    open_min = (max(i.out_s for i in made.items) - step.at_s) / 60.0
    assert 2 <= open_min <= 12
    assert made.liquid is not None
    meat = case_of(next(i for i in made.items if i.food_id == "stew-beef"), made, store)
    if vessel == "lidded pot":
        assert meat.phases[-1].medium.ambient_degC > 99.0  # the check follows it at a hard boil


def test_nothing_delicate_and_no_soup_is_boiled_down(store: Store) -> None:
    assert boil_down(planned(store, "lidded pot", "cod", "tomato", "potato")) is None
    assert boil_down(planned(store, "lidded pot", *STEW, wishes=("soup",))) is None
    assert boil_down(planned(store, "lidded pot", *STEW, Have(food_id="cornstarch"))) is None
    assert boil_down(planned(store, "lidded pot", "chicken-thigh", "rice")) is None


def test_no_lid_goes_back_on_while_it_boils_down(store: Store) -> None:
    made = planned(store, "lidded pot", *STEW, Have(food_id="pea", state="frozen"))
    step = boil_down(made)
    later = [s.text for s in made.steps if step is not None and s.at_s >= step.at_s]
    assert not any("lid on" in text.lower() for text in later)


def test_a_sauce_that_boils_away_is_found(store: Store) -> None:
    made = planned(store, "lidded pot", *STEW)
    assert made.liquid is not None
    dry = replace(made, liquid=replace(made.liquid, ml=100.0))
    assert any("boils away" in p for p in check(dry, store=store).problems)
