"""Every method of a one-vessel kitchen has a dinner that is cooked by it, and the words that go with it."""

from __future__ import annotations

from knowledge.foods.store import Store
from knowledge.planner.model import Do, Have
from tests.unit.planner.kitchen import planned, planned_in, told

SHIN = (Have(food_id="stew-beef", grams=700.0), "turnip", "onion")


def test_a_roast_goes_in_by_turns(store: Store) -> None:
    made = planned_in(store, "sheet pan", "chicken-leg", "turnip", "asparagus", eaters=3.0)
    assert made.settings.method == "roast"
    assert "in one layer, into the middle of the oven" in told(made)
    assert "Oven out, push the" in told(made)


def test_meat_is_browned_lifted_out_and_returned_and_the_bottom_scraped_loose(store: Store) -> None:
    made = planned_in(store, "lidded pot", "chicken-thigh", "onion", "carrot", "lentil", eaters=3.0)
    said = told(made)
    assert "then lift out onto a plate" in said
    assert "into the fat, medium heat" in said
    assert "scrape the bottom loose" in said
    assert "back in" in said
    assert said.index("lift out") < said.index("into the fat") < said.index("scrape") < said.index("back in")


def test_a_pan_browns_and_then_simmers_under_its_lid(store: Store) -> None:
    made = planned_in(store, "saute pan", "chicken-thigh", "potato", "onion", eaters=3.0, wishes=("saucy",))
    assert made.settings.method == "saute-simmer"
    assert "Lid on, low heat" in told(made)


def test_a_braise_may_stand_in_the_oven(store: Store) -> None:
    made = planned_in(store, "lidded pot", *SHIN, eaters=3.0, wishes=("oven",))
    assert made.settings.method == "braise-oven"
    assert "Lid on, into the oven at 175" in told(made)


def test_greens_are_laid_on_top_to_steam_for_the_last_minutes(store: Store) -> None:
    made = planned_in(store, "lidded pot", "rice", "chicken-thigh", "green-bean", eaters=3.0)
    step = next(s for s in made.steps if s.do is Do.ADD and "green-bean" in s.foods)
    assert "on top to steam, do not stir" in step.text
    assert "let the rice stand" in told(made) or "rice stand 5 min" in told(made)


def test_delicate_food_steams_over_a_little_water(store: Store) -> None:
    made = planned_in(store, "lidded pot", "cod", "potato", "leek", eaters=2.0)
    assert made.settings.method in ("steam", "braise")
    assert made.settings.method == "steam"
    assert "rack" in told(made)


def test_pressure_takes_all_at_once_and_quick_food_comes_after(store: Store) -> None:
    made = planned_in(
        store, "pressure cooker", Have(food_id="chickpea", grams=250.0, state="soaked"), "onion", "spinach",
        eaters=3.0,
    )  # fmt: skip
    assert made.settings.method == "sealed"
    lock = next(n for n, s in enumerate(made.steps) if s.do is Do.LID)
    spinach = next(n for n, s in enumerate(made.steps) if s.do is Do.ADD and "spinach" in s.foods)
    assert lock < spinach
    assert "Lid off, back on the heat" in made.steps[spinach].text


def test_roots_may_have_a_second_short_time_at_pressure(store: Store) -> None:
    made = planned_in(store, "pressure cooker", *SHIN, "potato", eaters=3.0)
    assert made.settings.method == "sealed-twice"
    assert sum("Lock the lid" in s.text for s in made.steps) == 2


def test_a_roast_bird_is_pulled_rested_and_carved(store: Store) -> None:
    made = planned_in(store, "sheet pan", Have(food_id="whole-chicken", grams=1500.0), "potato", eaters=4.0)
    assert "rest under foil" in told(made)
    assert "Carve the whole chicken" in told(made)


def test_a_steak_is_rested_sliced_and_made_hot_again(store: Store) -> None:
    made = planned_in(store, "saute pan", "steak", "mushroom", "shallot", eaters=2.0)
    assert "rest under foil, then slice across the grain" in told(made)
    assert "toss a minute, no longer" in told(made)


def test_a_sauce_is_thickened_at_the_end(store: Store) -> None:
    made = planned_in(store, "lidded pot", "chicken-thigh", "leek", "cornstarch", eaters=3.0)
    assert "into 2 tbsp cold water, pour in and stir until it thickens" in told(made)


def test_garlic_comes_late_where_the_pan_is_hot_for_long(store: Store) -> None:
    made = planned(store, "garlic", "potato", "bell-pepper", "egg", eaters=2.0, vessel="saute pan")
    assert "finely chop" in told(made)
