"""What lies in the fat first, what is laid on the sauce, what a dinner would miss most.

Common practice, no source, unless an authority is named beside the check.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner.model import Do, Have
from tests.unit.planner.kitchen import item, planned_in


@pytest.mark.parametrize("base", ["leek", "fennel"])
@pytest.mark.parametrize("starch", ["orzo", "brown-lentil", "arborio-rice"])
def test_leeks_and_fennel_sweat_in_the_fat_before_the_liquid(store: Store, base: str, starch: str) -> None:
    made = planned_in(store, "lidded pot", Have(food_id=base, qty=2.0), Have(food_id=starch, grams=250.0))
    assert item(made, base).lead == "softened"
    assert item(made, base).in_s <= item(made, starch).in_s


def test_in_a_pot_that_simmers_for_hours_they_join_late(store: Store) -> None:
    made = planned_in(
        store, "lidded pot", Have(food_id="brisket", grams=1000.0), Have(food_id="fennel", qty=2.0)
    )
    assert item(made, "fennel").in_s >= 0.6 * item(made, "fennel").out_s


def test_fish_laid_on_a_bubbling_sauce_takes_ten_minutes_for_each_inch(store: Store) -> None:
    """Canada Department of Fisheries and Oceans: ten minutes for each inch of thickness."""
    made = planned_in(
        store, "saute pan", Have(food_id="haddock", grams=500.0),
        Have(food_id="tomato", grams=400.0, state="canned"), Have(food_id="onion", qty=1.0),
    )  # fmt: skip
    fish = item(made, "haddock")
    rule_min = 10.0 * fish.size_mm / 25.4
    assert 0.8 * rule_min <= (fish.out_s - fish.in_s) / 60.0 <= 1.35 * rule_min


def test_mussels_are_done_within_minutes(store: Store) -> None:
    made = planned_in(
        store, "lidded pot", Have(food_id="mussel", grams=1200.0), Have(food_id="shallot", qty=2.0)
    )
    assert (item(made, "mussel").out_s - item(made, "mussel").in_s) / 60.0 <= 8.0


@pytest.mark.parametrize("flavour", ["chorizo", "pancetta", "kielbasa"])
def test_beans_are_not_left_out_for_the_sausage_beside_them(store: Store, flavour: str) -> None:
    made = planned_in(
        store, "pressure cooker", Have(food_id="pinto-bean", grams=250.0, state="dried"),
        Have(food_id=flavour, grams=120.0), Have(food_id="carrot", qty=2.0),
    )  # fmt: skip
    assert {"pinto-bean", flavour} <= {i.food_id for i in made.items}


@pytest.mark.parametrize(
    "balls", [Have(food_id="meatball", grams=400.0), Have(food_id="ground-lamb", grams=400.0, cut="meatball")]
)
def test_meatballs_brown_and_simmer_in_their_sauce(store: Store, balls: Have) -> None:
    made = planned_in(store, "saute pan", balls, Have(food_id="potato", grams=500.0), eaters=3.0)
    meat = item(made, balls.food_id)
    assert meat.lead == "browned"
    assert (meat.out_s - meat.in_s) / 60.0 >= 12.0


def test_what_is_lifted_out_of_the_pan_goes_back_in(store: Store) -> None:
    made = planned_in(
        store, "saute pan", Have(food_id="meatball", grams=400.0), Have(food_id="new-potato", grams=500.0)
    )
    brown = next(s for s in made.steps if "meatball" in s.foods)
    back = [s for s in made.steps if s.do is Do.ADD and "back in" in s.text and "meatball" in s.foods]
    assert ("lift out" in brown.text) == bool(back)
