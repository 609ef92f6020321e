"""What a cook who reads the plan for the first time must not stumble over.

Common practice, no source, unless an authority is named beside the check.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan, swap, words
from knowledge.planner.model import Do, Have, Plan, Request
from knowledge.units import weight
from tests.unit.planner.kitchen import only, planned, told


def test_a_cooker_used_as_a_pot_says_that_its_lid_is_not_locked(store: Store) -> None:
    made = planned(store, "egg", "spinach", "white-rice", kitchen=only("pressure cooker"))
    assert made.settings.method == "open-cooker"
    assert "not locked" in told(made)
    assert "no pressure" in made.why[0]


@pytest.mark.parametrize("meat", ["pork-chop", "steak"])
def test_chops_are_hot_at_the_table(store: Store, meat: str) -> None:
    made = planned(store, Have(food_id=meat, qty=2.0), "new-potato", "carrot", kitchen=only("saute pan"))
    back = [s for s in made.steps if s.do is Do.ADD and meat in s.foods][-1]
    assert made.cooking_s - back.at_s <= 480.0
    assert "back in" in back.text
    last = [s for s in made.steps if s.do is Do.CHECK][-1]
    assert "63 °C" in last.text  # USDA FSIS: whole cuts 62.8 °C


def test_meat_that_waits_on_a_plate_is_done_and_looked_at_before_it_waits(store: Store) -> None:
    made = planned(
        store,
        Have(food_id="beef", grams=300.0, cut="sliced"),
        "snow-pea",
        "carrot",
        kitchen=only("saute pan"),
    )
    meat = next(i for i in made.items if i.food_id == "beef")
    out = next(s for s in made.steps if s.do is Do.TAKE_OUT and "beef" in s.foods)
    looked = next(s for s in made.steps if s.do is Do.CHECK and "beef" in s.foods)
    assert looked.at_s <= out.at_s == pytest.approx(meat.out_s, abs=1.0)
    assert meat.done.at_s <= meat.out_s


def test_eggs_in_the_pan_are_one_kind_of_egg(store: Store) -> None:
    made = planned(store, "egg", kitchen=only("saute pan"))
    assert made.items[0].cut == "beaten"
    assert made.settings.hob == "medium"
    assert "medium heat" in told(made)
    assert "yolk" not in told(made)
    assert "cracked" not in " ".join(made.why)


def test_nothing_is_tossed_before_it_is_cut(store: Store) -> None:
    made = planned(store, "sausage", "red-onion", "apple", "new-potato", kitchen=only("sheet pan"))
    cut: set[str] = set()
    for step in (s for s in made.steps if s.do is Do.PREP):
        cut |= {i.label for i in made.items if i.food_id in step.foods}
        tossed = step.text.partition("Toss ")[2]
        assert all(label in cut for label in (i.label for i in made.items) if label in tossed)


def test_sausages_say_why_their_temperature(store: Store) -> None:
    """USDA FSIS: ground beef, pork, lamb 71.1 °C; all poultry, ground too, 73.9 °C."""
    unnamed = planned(store, "sausage", "potato", kitchen=only("sheet pan"))
    assert any("74 °C" in c.text and "not named" in c.text and "71 °C" in c.text for c in unnamed.cautions)
    beef = planned(store, "beef-sausage", "potato", kitchen=only("sheet pan"))
    assert any("71 °C" in c.text and "not named" not in c.text for c in beef.cautions)


def test_small_roots_do_not_stay_under_pressure_for_the_meat(store: Store) -> None:
    made = planned(store, "stew-beef", "carrot", "potato", kitchen=only("pressure cooker"))
    roots = [i for i in made.items if i.food_id in ("carrot", "potato")]
    assert len(roots) == 2
    assert all(i.cut_id == "whole" or i.lane != "main" for i in roots)


def test_a_guessed_weight_is_one_that_a_scale_is_read_to(store: Store) -> None:
    made = planned(store, "white-rice", "cabbage", "stew-beef")
    for item in made.items:
        if item.food_id in ("white-rice", "stew-beef"):
            assert words.handy(item.grams) == item.grams
            assert weight(item.grams, "metric") in told(made)


def test_enough_for_more_than_said_is_no_assumption(store: Store) -> None:
    made = planned(store, Have(food_id="chicken-thigh", qty=6.0), "potato", eaters=3.0)
    assert not any("enough for" in a for a in made.assumed)


def test_what_would_round_it_off_is_advice_and_no_assumption(store: Store) -> None:
    made = planned(store, "white-rice", "bell-pepper", eaters=2.0)
    assert any("protein" in said for said in made.advice)
    assert not any("protein" in said for said in made.assumed)


def test_said_as_one_is_a_few_and_not_a_crate(store: Store) -> None:
    made = planned(store, "poblano-pepper", "chicken-thigh", eaters=6.0)
    item = next(i for i in made.items if i.food_id == "poblano-pepper")
    assert item.grams <= 3 * 115.0


def test_tins_and_mixed_birds_are_named_as_they_are(store: Store) -> None:
    made = planned(
        store, Have(food_id="tomato", state="canned"), "chicken", "onion", kitchen=only("lidded pot")
    )
    cuts = {i.food_id: i.cut for i in made.items}
    assert cuts["tomato"] == "with the juice"
    assert cuts["chicken"] == "in pieces"
    assert "chicken in pieces" in told(made)


def test_several_are_called_several(store: Store) -> None:
    made = planned(
        store, Have(food_id="chicken-thigh", qty=4.0), Have(food_id="carrot", qty=3.0), "rice-cake"
    )
    labels = {i.food_id: i.label for i in made.items}
    assert labels["chicken-thigh"] == "chicken thighs"
    assert labels["carrot"] == "carrots"
    assert words.plural("toor dal") == "toor dal"


def test_each_vessel_says_what_it_is_good_at(store: Store) -> None:
    assert all(vessel.why for vessel in store.vessels())


def test_the_minimum_of_poultry_is_said_even_when_it_stews_until_tender(store: Store) -> None:
    """USDA FSIS: all poultry 165 °F (73.9 °C)."""
    legs = (Have(food_id="duck-leg", qty=2.0, unit="piece"), Have(food_id="red-cabbage"))
    made = plan(Request(have=legs), store=store)
    assert isinstance(made, Plan)
    assert any("74 °C" in c.text and "FSIS" in c.source for c in made.cautions)


def test_a_swapped_in_food_has_one_amount(store: Store) -> None:
    made = planned(store, "halloumi", "bell-pepper", "zucchini", "couscous")
    answer = swap(made, frm="zucchini", to=Have(food_id="asparagus"), store=store)
    assert answer.plan is not None
    amount = weight(next(i.grams for i in answer.plan.items if i.food_id == "asparagus"), "metric")
    assert [note for note in answer.plan.assumed if "asparagus" in note] == [f"{amount} asparagus"]
