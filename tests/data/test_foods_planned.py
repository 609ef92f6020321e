"""Every food that cooks can be planned in at least one vessel."""

from __future__ import annotations

from knowledge.foods.model import Role
from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Have, Plan, Request


def test_every_food_that_cooks_gets_a_plan(store: Store) -> None:
    refused = []
    for food in store.foods():
        if food.role is Role.COOK:
            answer = plan(Request(have=(Have(food_id=food.id),), eaters=2.0), store=store)
            if not isinstance(answer, Plan) or food.id not in {item.food_id for item in answer.items}:
                refused.append(food.id)
    assert not refused


def test_thin_leaves_are_done_before_tough_ones_and_those_before_roots(store: Store) -> None:
    # Common practice, no source: what any cook would say of these pairs.
    pairs = [
        ("spinach", "kale"),
        ("spinach", "swiss chard"),
        ("bok choy", "cabbage"),
        ("zucchini", "carrot"),
        ("pea", "green bean"),
        ("carrot", "beet"),
        ("mushroom", "potato"),
        ("red lentil", "lentil"),
        ("mung bean", "kidney bean"),
        ("quinoa", "barley"),
        ("rice", "brown rice"),
        ("couscous", "bulgur"),
        ("rice noodle", "spaghetti"),
        ("chuck roast", "oxtail"),
        ("gizzard", "stewing hen"),
    ]
    for quick, slow in pairs:
        a, b = store.named(quick), store.named(slow)
        assert a is not None
        assert b is not None
        assert _dose(store, a.id) < _dose(store, b.id), (quick, slow)


def _dose(store: Store, food_id: str) -> float:
    food = store.food(food_id)
    return (store.doneness(food.doneness).dose_min or 0.0) * food.dose_factor
