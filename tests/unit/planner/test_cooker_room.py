"""How full a pressure cooker is: all that lies and is poured in it, bones and tins too.

Half full for what foams or swells, two thirds else: cooker manuals, common practice, no source.
What lies under water takes as much room as it weighs over its density: geometry.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Have, NoPlan, Plan
from tests.unit.planner.kitchen import asked, dinner, item, only

DENSEST_KG_L = 1.35  # dry pulses; meat and bone are 1.05 to 1.3
HALF, TWO_THIRDS = 0.5, 0.667
SHANKS = Have(food_id="pork-shank", qty=2.0)
LIMAS = Have(food_id="lima-bean", grams=400.0, state="dried")


def litres(made: Plan, *, poured_ml: float = 0.0) -> float:
    """The least room that it takes in the cold, by weight alone."""
    ml = poured_ml + (made.liquid.ml if made.liquid else 0.0)
    return sum(i.grams for i in made.items if i.lane != "after") / 1000.0 / DENSEST_KG_L + ml / 1000.0


def cooked(store: Store, size: str, *have: Have) -> Plan:
    made = plan(dinner(*have, eaters=4.0, kitchen=only("pressure cooker", size)), store=store)
    assert isinstance(made, Plan)
    return made


@pytest.mark.parametrize("size", ["6 l", "8 l"])
def test_bones_and_what_swells_fill_half_of_a_cooker_at_most(store: Store, size: str) -> None:
    made = cooked(store, size, SHANKS, LIMAS, Have(food_id="onion", qty=1.0))
    assert made.settings.method.startswith("sealed")
    assert litres(made) <= HALF * float(size.split()[0])
    assert litres(made) <= made.fill * float(size.split()[0]) <= HALF * float(size.split()[0])


def test_wine_and_juice_take_room_like_water(store: Store) -> None:
    wine_ml = 700.0
    wine = Have(food_id="red-wine", qty=wine_ml, unit="ml")
    oxtail = Have(food_id="oxtail", grams=1800.0)
    made = cooked(store, "6 l", oxtail, wine, Have(food_id="lima-bean", grams=200.0, state="dried"))
    assert made.settings.method.startswith("sealed")
    assert litres(made, poured_ml=wine_ml) <= HALF * 6.0


def test_a_soaked_pulse_takes_the_room_of_what_it_has_drunk(store: Store) -> None:
    """It about doubles its weight over night: common practice, no source."""
    dry = cooked(store, "6 l", replace(LIMAS, state="dried"))
    soaked = cooked(store, "6 l", replace(LIMAS, state="soaked"))
    assert soaked.fill == pytest.approx(dry.fill, rel=0.25)


def test_an_overfull_cooker_is_named_by_the_check(store: Store) -> None:
    made = cooked(store, "8 l", SHANKS, LIMAS)
    shank = item(made, "pork-shank")
    more = tuple(replace(i, grams=2.0 * i.grams) if i == shank else i for i in made.items)
    assert any("too full" in line for line in check(replace(made, items=more), store=store).problems)


def test_what_cannot_be_less_is_refused_with_the_reason(store: Store) -> None:
    have = (Have(food_id="pork-shank", grams=1800.0), replace(LIMAS, grams=300.0))
    answer = plan(dinner(*have, eaters=4.0, kitchen=only("pressure cooker", "3 l")), store=store)
    assert isinstance(answer, NoPlan)
    assert "no more than half full" in answer.reasons[0]
    assert answer.nearest is not None
    assert answer.nearest.fill <= HALF


@pytest.mark.parametrize("text", ["ham hock, dried lima beans 300 g, for 5", "pork knuckle, lentils, for 6"])
def test_a_joint_said_once_is_one(store: Store, text: str) -> None:
    made = plan(asked(store, text), store=store)
    assert isinstance(made, Plan)
    (joint,) = (i for i in made.items if i.food_id in ("ham-hock", "pork-shank", "pork-knuckle"))
    assert joint.grams <= 1300.0


def test_what_joins_after_the_release_still_has_room(store: Store) -> None:
    """Under the rim by a quarter: 0.5 / 0.7 of it, common practice, no source."""
    have = (
        Have(food_id="lamb-shoulder", grams=900.0),
        Have(food_id="rice", grams=350.0),
        Have(food_id="spinach", grams=300.0),
        Have(food_id="pea", grams=500.0, state="frozen"),
    )
    made = plan(dinner(*have, eaters=5.0, kitchen=only("pressure cooker", "3.5 l")), store=store)
    assert isinstance(made, Plan)
    ml = made.liquid.ml if made.liquid else 0.0
    assert sum(i.grams for i in made.items) / 1000.0 / DENSEST_KG_L + ml / 1000.0 <= 0.8 * 3.5


def test_tinned_food_is_cut_down_by_weight_not_by_the_piece(store: Store) -> None:
    text = "1 kg oxtail, 400 g dried lima beans, 700 ml red wine, 2 tins tomatoes, for 6"
    made = plan(replace(asked(store, text), kitchen=only("pressure cooker", "6 l")), store=store)
    assert isinstance(made, Plan)
    assert item(made, "tomato").grams % 50.0 == 0.0
    assert not any(f"{n} tomatoes" in said for said in made.assumed for n in range(1, 8))
