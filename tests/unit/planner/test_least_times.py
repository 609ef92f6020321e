"""However soon a thermometer or a fork calls it done: what a cook leaves in the heat for its minutes.

Common practice, no source.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Have, Kitchen, Plan, Request, VesselAt
from tests.unit.planner.kitchen import item


def planned(store: Store, vessel: str, *have: Have, **kitchen: float) -> Plan:
    vessels = (VesselAt(id=vessel),)
    made = plan(Request(have=have, kitchen=Kitchen(vessels=vessels, **kitchen)), store=store)  # type: ignore[arg-type]
    assert isinstance(made, Plan)
    assert check(made, store=store).sound, check(made, store=store).problems
    return made


def minutes(made: Plan, food_id: str) -> float:
    chosen = item(made, food_id)
    return (chosen.out_s - chosen.in_s) / 60.0


@pytest.mark.parametrize(
    ("food", "state", "least"),
    [
        ("sausage", None, 20.0),
        ("gnocchi", None, 16.0),
        ("black-bean", "canned", 12.0),
        ("pumpkin", None, 24.0),
    ],
)
def test_what_goes_onto_a_tray_stays_until_it_has_colour(
    store: Store, food: str, state: str | None, least: float
) -> None:
    made = planned(
        store, "sheet pan", Have(food_id=food, grams=500.0, state=state), Have(food_id="red-onion", qty=2.0)
    )
    assert minutes(made, food) >= least


def test_a_hotter_oven_colours_sooner(store: Store) -> None:
    meal = (Have(food_id="sausage", qty=6.0), Have(food_id="zucchini", qty=2.0))
    cool = planned(store, "sheet pan", *meal, oven_max_degC=180.0)
    hot = planned(store, "sheet pan", *meal, oven_max_degC=200.0)
    assert minutes(cool, "sausage") > minutes(hot, "sausage")


def test_head_cabbage_gives_and_bok_choy_keeps_its_bite(store: Store) -> None:
    made = planned(
        store, "lidded pot", Have(food_id="cabbage", grams=400.0), Have(food_id="bacon", grams=150.0)
    )
    assert item(made, "cabbage").done.kind == "tender"
    assert minutes(made, "cabbage") >= 6.0
    quick = planned(store, "lidded pot", Have(food_id="bok-choy", qty=2.0), Have(food_id="salmon", qty=2.0))
    assert item(quick, "bok-choy").done.kind == "crisp_tender"


def test_red_cabbage_braises_for_half_an_hour_and_longer(store: Store) -> None:
    made = planned(
        store, "lidded pot", Have(food_id="red-cabbage", grams=600.0), Have(food_id="duck-leg", qty=2.0)
    )
    assert minutes(made, "red-cabbage") >= 35.0
