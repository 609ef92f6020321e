"""However soon a thermometer or a fork calls it done: what a cook leaves in the heat for its minutes.

Common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner.model import Have, Plan
from tests.unit.planner.kitchen import item, only
from tests.unit.planner.kitchen import planned as planned_with


def planned(store: Store, vessel: str, *have: Have, oven_max_degC: float = 250.0) -> Plan:
    kitchen = replace(only(vessel), oven_max_degC=oven_max_degC)
    return planned_with(store, *have, kitchen=kitchen)


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


def test_cauliflower_in_a_sauce_is_tender_and_on_a_tray_it_browns(store: Store) -> None:
    wet = planned(
        store, "saute pan", Have(food_id="cauliflower", qty=1.0), Have(food_id="potato", grams=400.0)
    )
    assert minutes(wet, "cauliflower") >= 8.0
    dry = planned(
        store, "sheet pan", Have(food_id="cauliflower", qty=1.0), Have(food_id="potato", grams=400.0)
    )
    assert minutes(dry, "cauliflower") >= 20.0


def test_strips_of_meat_are_seared_for_some_minutes(store: Store) -> None:
    strips = Have(food_id="pork", grams=300.0, cut="sliced")
    made = planned(store, "saute pan", strips, Have(food_id="snow-pea", grams=200.0))
    assert minutes(made, "pork") >= 3.0


def test_plantain_lies_still_until_it_is_brown(store: Store) -> None:
    foods = (Have(food_id="plantain", qty=2.0), Have(food_id="bell-pepper", qty=2.0))
    made = planned_with(store, *foods, kitchen=only("saute pan"), wishes=("crisp",))
    assert made.settings.method == "saute"
    assert item(made, "plantain").size_mm >= 10.0
    assert item(made, "plantain").lead == "seared"
