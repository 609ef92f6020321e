"""Meat between the pan and the rest: no half-cooked meat waits, steaks are rested, sliced and made hot.

USDA FSIS: never brown or cook meat part way to finish it later. FDA Food Code: hot food is held at
57 °C (135 °F) or more. Slicing across the grain after the rest is common practice.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner import swap
from knowledge.planner.checking.verify import check
from knowledge.planner.checking.waiting import on_the_plate
from knowledge.planner.model import Do, Have, Plan, Step, Verdict
from tests.unit.planner.kitchen import item
from tests.unit.planner.kitchen import planned_in as planned


def of(made: Plan, do: Do, food_id: str) -> list[Step]:
    return [s for s in made.steps if s.do is do and food_id in s.foods]


@pytest.mark.parametrize(
    ("meat", "slow"),
    [
        ("meatball", "brown-rice"), ("ground-beef", "brown-rice"), ("sausage", "pearl-barley"),
        ("chicken-thigh", "brown-rice"), ("pork-chop", "chickpea"), ("chicken-breast", "brown-lentil"),
    ],
)  # fmt: skip
@pytest.mark.parametrize("vessel", ["lidded pot", "saute pan"])
def test_no_meat_waits_half_cooked(store: Store, vessel: str, meat: str, slow: str) -> None:
    made = planned(store, vessel, meat, Have(food_id=slow, grams=150, state="dried"), "onion")
    browned = [s for s in made.steps if s.do is Do.BROWN]
    for step in browned:
        for food_id in step.foods:
            back = [s.at_s for s in of(made, Do.ADD, food_id)]
            assert not back or back[-1] - step.at_s - step.hands_s <= 900


def test_a_long_wait_is_found_by_the_check(store: Store) -> None:
    made = planned(store, "lidded pot", "sausage", "onion", "potato")
    brown = next(s for s in made.steps if s.do is Do.BROWN)
    short = replace(brown, hands_s=60.0)
    late = tuple(
        short if s is brown
        else replace(s, at_s=s.at_s + 1500.0) if s.do is Do.ADD and "sausage" in s.foods
        else s
        for s in made.steps
    )  # fmt: skip
    if not of(made, Do.ADD, "sausage"):
        late = (*late, replace(brown, do=Do.ADD, at_s=2000.0))
    assert any("half cooked" in p for p in on_the_plate(replace(made, steps=late), store=store))


def test_a_steak_is_done_rested_sliced_and_hot(store: Store) -> None:
    made = planned(store, "saute pan", Have(food_id="steak", qty=2), "potato", "green-bean")
    [out], [back], [probe] = (of(made, do, "steak") for do in (Do.TAKE_OUT, Do.ADD, Do.CHECK))
    assert probe.at_s <= out.at_s  # 62.8 °C is met before it rests (USDA FSIS), not after
    assert "63 °C" in out.text
    assert "slice across the grain" in out.text
    assert back.text.startswith("Slices of")
    assert 45 <= made.cooking_s - back.at_s <= 240


def test_slices_that_come_back_cold_are_found(store: Store) -> None:
    made = planned(store, "saute pan", Have(food_id="steak", qty=2), "potato", "green-bean")
    later = tuple(
        replace(s, at_s=s.at_s - 7200.0) if s.do is Do.BROWN and "steak" in s.foods else s for s in made.steps
    )
    assert any("not hot" in p for p in on_the_plate(replace(made, steps=later), store=store))


def test_a_chop_goes_back_whole(store: Store) -> None:
    made = planned(store, "saute pan", Have(food_id="pork-chop", qty=2), "potato", "carrot")
    assert not any("slice" in s.text.lower() for s in made.steps)
    assert of(made, Do.ADD, "pork-chop")


def test_a_swap_keeps_the_slices(store: Store) -> None:
    made = planned(store, "saute pan", Have(food_id="steak", qty=2), "potato", "green-bean")
    answer = swap(made, frm="green-bean", to=Have(food_id="asparagus"), store=store)
    assert answer.verdict is not Verdict.NO
    assert answer.plan is not None
    assert any(s.text.startswith("Slices of") for s in answer.plan.steps)
    assert check(answer.plan, store=store).sound


@pytest.mark.parametrize("meat", ["steak", "pork-chop"])
def test_what_sticks_to_the_pan_is_scraped_into_the_dish(store: Store, meat: str) -> None:
    made = planned(store, "saute pan", Have(food_id=meat, qty=2), "potato", "green-bean")
    assert "scraping up the brown bits" in of(made, Do.ADD, meat)[-1].text


def test_thin_strips_are_not_long_back_in_the_pan(store: Store) -> None:
    made = planned(
        store, "saute pan", Have(food_id="pork-loin", grams=300, cut="strips"), "noodle", "sugar-snap-pea"
    )
    for step in of(made, Do.ADD, "pork-loin"):
        assert item(made, "pork-loin").out_s - step.at_s <= 150
