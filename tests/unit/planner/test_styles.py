"""What a dish that was named asks of method, cut and liquid. Common practice, no source."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Have, Plan, Request


def dinner(store: Store, wish: str, *have: Have, eaters: float = 3.0) -> Plan:
    made = plan(Request(have=have, eaters=eaters, eaters_said=True, wishes=(wish,)), store=store)
    assert isinstance(made, Plan)
    return made


def size_of(made: Plan, food_id: str) -> float:
    return next(i.size_mm for i in made.items if i.food_id == food_id)


@pytest.mark.parametrize("meat", ["flank-steak", "chicken-breast", "pork-tenderloin", "beef"])
def test_a_stir_fry_has_thin_meat_and_thin_roots(store: Store, meat: str) -> None:
    made = dinner(store, "stir fry", Have(food_id=meat, grams=400), Have(food_id="carrot"))
    assert made.vessel == "saute pan"
    assert made.settings.method == "saute"
    assert size_of(made, meat) <= 12
    assert size_of(made, "carrot") <= 9


def test_boneless_meat_of_a_curry_is_cut_for_the_fork(store: Store) -> None:
    made = dinner(
        store, "curry", Have(food_id="chicken-breast", qty=2), Have(food_id="coconut-milk", qty=1, unit="can")
    )
    assert made.settings.method in ("saute-simmer", "braise")
    assert 18 <= size_of(made, "chicken-breast") <= 42
    assert next(i for i in made.items if i.food_id == "chicken-breast").cut_id != "whole"


@pytest.mark.parametrize("eaters", [2.0, 4.0])
def test_a_soup_has_a_bowl_of_liquid_for_everyone(store: Store, eaters: float) -> None:
    have = (Have(food_id="leek", qty=3), Have(food_id="potato", grams=250 * eaters))
    made = dinner(store, "soup", *have, eaters=eaters)
    assert made.liquid is not None
    assert 250 * eaters <= made.liquid.ml <= 450 * eaters


def test_a_dry_dish_is_not_boiled(store: Store) -> None:
    have = (Have(food_id="potato", grams=600), Have(food_id="cauliflower", qty=1, size="small"))
    plain = dinner(store, "stew", *have)
    dry = dinner(store, "sabzi", *have)
    assert plain.liquid is not None
    assert dry.liquid is None or dry.liquid.ml < plain.liquid.ml


def test_only_a_wish_that_is_granted_is_called_one(store: Store) -> None:
    slow = dinner(store, "quick", Have(food_id="whole-chicken", grams=1600), Have(food_id="potato"))
    assert not any("quick" in line for line in slow.why)
    soup = dinner(store, "soup", Have(food_id="leek", qty=3), Have(food_id="potato", grams=500))
    assert "as you wished: a soup" in soup.why


@pytest.mark.parametrize("style", ["curry", "stew", "soup"])
def test_garlic_stays_fine_in_any_style(store: Store, style: str) -> None:
    have = (
        Have(food_id="chicken-breast", qty=2),
        Have(food_id="garlic", qty=3, unit="clove"),
        Have(food_id="leek"),
    )
    assert size_of(dinner(store, style, *have), "garlic") <= 6
