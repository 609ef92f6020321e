"""The open pan in a cook's order, and what is past its best while the rest still cooks.

Common practice, no source: fish and tofu lie still until brown, mince browns before vegetables crowd it,
garlic burns in minutes on high heat, asparagus and fruit join a roast late.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner.model import Do, Have
from tests.unit.planner.kitchen import item, told
from tests.unit.planner.kitchen import planned_in as planned


@pytest.mark.parametrize("still", ["tofu", "halloumi", "tempeh"])
def test_what_lies_still_is_fried_by_itself(store: Store, still: str) -> None:
    made = planned(store, "saute pan", still, "zucchini", "bell-pepper", wishes=("stir fry",))
    assert made.settings.method == "saute"
    out = next(s for s in made.steps if s.do is Do.TAKE_OUT and still in s.foods)
    assert all(i.in_s >= out.at_s - 1.0 for i in made.items if i.food_id != still)
    assert "do not stir" in told(made)


@pytest.mark.parametrize("fish", ["cod", "salmon"])
def test_fish_never_lies_in_what_is_tossed(store: Store, fish: str) -> None:
    """First and out, or last with the rest pushed aside, or on top of what simmers."""
    made = planned(store, "saute pan", Have(food_id=fish, qty=2.0), "zucchini", "green-bean", "cherry-tomato")
    tossed = [s for s in made.steps if "keep it moving" in s.text]
    assert not any(fish in s.foods for s in tossed)
    if made.settings.method == "saute":
        adds = [s.at_s for s in made.steps if s.do is Do.ADD and fish in s.foods]
        assert not any(s.at_s >= min(adds) for s in tossed)


def test_raw_mince_browns_before_the_vegetables(store: Store) -> None:
    mince = Have(food_id="ground-pork", grams=450.0)
    made = planned(store, "saute pan", mince, "cabbage", "carrot", "garlic", wishes=("stir fry",))
    brown = next(s for s in made.steps if "ground-pork" in s.foods and s.do is Do.BROWN)
    assert brown.hands_s >= 300.0
    others = [i.in_s for i in made.items if i.food_id != "ground-pork"]
    assert min(others) >= brown.at_s + brown.hands_s - 1.0


def test_garlic_comes_late_where_it_would_burn(store: Store) -> None:
    made = planned(store, "saute pan", "tofu", "carrot", "garlic", wishes=("stir fry",))
    last = max(i.out_s for i in made.items)
    carrot, garlic = item(made, "carrot"), item(made, "garlic")
    if last - carrot.in_s > 330.0:
        assert 60.0 <= last - garlic.in_s <= 180.0


def test_mushrooms_colour_before_the_others_come(store: Store) -> None:
    made = planned(store, "saute pan", "mushroom", "zucchini", "bell-pepper", wishes=("stir fry",))
    others = min(i.in_s for i in made.items if i.food_id != "mushroom")
    assert item(made, "mushroom").in_s <= others - 180.0


def test_one_step_gives_one_order(store: Store) -> None:
    foods = ("tofu", "mushroom", "bok-choy", "carrot", "bell-pepper")
    made = planned(store, "saute pan", *foods, wishes=("stir fry",))
    for step in made.steps:
        assert not ("leave" in step.text and "keep it moving" in step.text), step.text


@pytest.mark.parametrize("late", ["asparagus", "apple", "green-bean", "kale"])
def test_delicate_food_does_not_roast_for_the_potatoes(store: Store, late: str) -> None:
    made = planned(store, "sheet pan", "new-potato", Have(food_id="chicken-thigh", qty=4.0), late)
    mine = item(made, late)
    took = mine.out_s - mine.in_s
    assert mine.in_s > 300.0
    assert took <= 1.45 * (mine.done.window_s[0] - mine.in_s) + 1.0


@pytest.mark.parametrize(
    ("meat", "delicate"),
    [("salmon", "asparagus"), ("pork-chop", "asparagus"), ("chicken-thigh", "cherry-tomato")],
)
def test_what_is_delicate_comes_under_the_broiler_last_and_does_not_roast_before(
    store: Store, meat: str, delicate: str
) -> None:
    made = planned(store, "sheet pan", Have(food_id=meat, qty=2.0), "potato", delicate, wishes=("broil",))
    assert made.settings.method == "roast-broil"
    assert item(made, delicate).lane == "after"
    assert item(made, "potato").lane == "main"


@pytest.mark.parametrize(("pulse", "least_min"), [("chickpea", 8), ("red-lentil", 15)])
def test_pulses_get_their_time_in_the_sauce(store: Store, pulse: str, least_min: int) -> None:
    """Tins take up the taste of a sauce in 8-10 min; red lentils break up in 15-20."""
    state = "canned" if pulse == "chickpea" else None
    tomatoes = Have(food_id="tomato", state="canned", qty=1.0, unit="can")
    made = planned(store, "lidded pot", Have(food_id=pulse, state=state), tomatoes, "spinach", "onion")
    mine = item(made, pulse)
    assert mine.out_s - mine.in_s >= least_min * 60.0 - 1.0
    leaf = item(made, "spinach")
    assert leaf.out_s - leaf.in_s <= 8 * 60.0


def test_potatoes_are_not_boiled_hard_in_a_thin_sauce(store: Store) -> None:
    made = planned(store, "pressure cooker", Have(food_id="stew-beef", grams=900.0), "potato",
                   Have(food_id="red-wine", grams=300.0))  # fmt: skip
    assert "boil the sauce down" not in told(made)


def test_tough_meat_is_let_down_slowly_before_the_vegetables_go_in(store: Store) -> None:
    made = planned(store, "pressure cooker", Have(food_id="stew-beef", grams=900.0), "potato", "carrot")
    if made.settings.method == "sealed-twice":
        first = next(s for s in made.steps if s.do is Do.RELEASE)
        assert "by itself" in first.text


def test_what_is_laid_back_does_not_rest_on_a_plate_as_well(store: Store) -> None:
    """Breaded meat is out when it is fried and goes back on top: one way, not two."""
    made = planned(store, "saute pan", "breaded-cutlet", "zucchini")
    cutlet = item(made, "breaded-cutlet")
    assert cutlet.out_s > cutlet.in_s
    assert sum(s.do is Do.TAKE_OUT and "breaded-cutlet" in s.foods for s in made.steps) == 1
