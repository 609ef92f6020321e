"""What no kitchen holds, what contradicts itself or refuses each other: a clear word, and the nearest."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Have, NoPlan, Plan
from tests.unit.planner.kitchen import dinner, item, only, planned


def refused(store: Store, *foods: str | Have, there: str, eaters: float = 4.0) -> NoPlan:
    answer = plan(dinner(*foods, eaters=eaters, kitchen=only(there)), store=store)
    assert isinstance(answer, NoPlan)
    return answer


@pytest.mark.parametrize(
    ("main", "there", "home"),
    [("brisket", "sheet pan", "pressure cooker"), ("whole chicken", "saute pan", "sheet pan")],
)
def test_a_refusal_names_the_food_and_where_it_would_go(
    store: Store, main: str, there: str, home: str
) -> None:
    food = store.named(main)
    assert food is not None
    answer = refused(store, Have(food_id=food.id, grams=1500.0), "asparagus", there=there)
    assert any(
        f"not for the {there}" in reason and f"by itself it goes in the {home}" in reason
        for reason in answer.reasons
    )
    assert answer.nearest is not None
    assert food.id not in {i.food_id for i in answer.nearest.items}


def test_the_main_meat_is_not_thrown_out_for_a_few_shrimp(store: Store) -> None:
    brisket = store.named("brisket")
    assert brisket is not None
    answer = refused(
        store, Have(food_id=brisket.id, grams=1400.0), Have(food_id="shrimp", grams=200.0), there="sheet pan"
    )
    assert answer.reasons[0].startswith("brisket: ")


def test_of_thirty_foods_a_dinner_is_made(store: Store) -> None:
    cooked = [food for food in store.foods() if food.role == "cook" and food.start_state != "frozen"]
    ids = [f.id for part in ("protein", "vegetable", "starch") for f in cooked if f.part == part][
        :: len(cooked) // 30
    ]
    answer = plan(dinner(*ids[:30], eaters=4.0), store=store)
    made = answer if isinstance(answer, Plan) else answer.nearest
    assert made is not None
    assert len(made.items) <= 9
    assert made.serves >= 3.0


def test_none_of_a_food_is_none(store: Store) -> None:
    made = planned(store, Have(food_id="potato", qty=0.0), Have(food_id="egg", qty=4.0), eaters=2.0)
    assert "potato" not in {i.food_id for i in made.items}
    assert [left.why for left in made.left_out] == ["you said there is none"]


def test_more_eaters_than_a_vessel_feeds_are_named(store: Store) -> None:
    made = planned(store, "sausage", "potato", eaters=30.0)
    assert "for 12 of the 30: cook it again for the others" in made.assumed


def test_an_oven_that_is_not_there_is_said(store: Store) -> None:
    made = planned(store, "chicken-thigh", "potato", eaters=3.0, wishes=("oven",), kitchen=only("saute pan"))
    assert "in the oven: not this time, there is no oven tonight" in made.notes


def test_a_cooker_without_its_lid_is_no_answer_to_haste(store: Store) -> None:
    made = planned(store, "pork-chop", "potato", eaters=2.0, ready_in_s=600.0)
    assert item(made, "pork-chop")
    assert made.settings.method != "open-cooker"
