"""What the search thinks safe is followed from outside, and what falls short gets longer or stays out.

Minima: USDA FSIS, Safe Minimum Internal Temperature Chart (74 °C for what is heated again).
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan, replan, swap
from knowledge.planner.checking.surely import kept_longer
from knowledge.planner.checking.verify import check, owed
from knowledge.planner.gathering.dinner import gather
from knowledge.planner.model import Have, Kitchen, Plan, Request, Verdict, VesselAt

POT = Kitchen(vessels=(VesselAt(id="lidded pot", size="3 l"),))


def wanted(*have: Have, kitchen: Kitchen = POT) -> Request:
    return Request(have=have, eaters=2.0, eaters_said=True, kitchen=kitchen)


@pytest.mark.parametrize("grams", [100.0, 600.0, 900.0, 2500.0])
def test_a_heap_of_leftovers_is_hot_all_through(store: Store, grams: float) -> None:
    """The more of it comes cold into little liquid, the longer the pot needs."""
    made = plan(wanted(Have(food_id="canned-tuna", grams=grams, state="leftover")), store=store)
    shown = made if isinstance(made, Plan) else made.nearest
    assert shown is not None
    assert check(shown, store=store).unsafe == ()


def test_what_is_owed_is_the_time_that_was_cut(store: Store) -> None:
    made = plan(wanted(Have(food_id="chicken-thigh"), Have(food_id="potato"), kitchen=Kitchen()), store=store)
    assert isinstance(made, Plan)
    assert owed(made, store=store) == {}
    cut_s = 0.4 * made.cooking_s
    early = replace(
        made,
        items=tuple(
            replace(i, out_s=i.out_s - cut_s) if i.food_id == "chicken-thigh" else i for i in made.items
        ),
        steps=tuple(replace(s, safety=False) for s in made.steps),
    )
    lacks = owed(early, store=store)
    assert set(lacks) == {"chicken-thigh"}
    assert 0 < lacks["chicken-thigh"] <= cut_s


def test_only_what_lacks_time_gets_more(store: Store) -> None:
    dishes = gather(wanted(Have(food_id="cockle"), Have(food_id="leek")), store=store).dishes
    longer = kept_longer(dishes, {"cockle": 60.0})
    assert [d.longer_s > 60.0 for d in longer] == [d.food.id == "cockle" for d in dishes]


def test_a_cold_heap_swapped_in_is_refused_rather_than_served_lukewarm(store: Store) -> None:
    have = (Have(food_id="cannellini-bean", state="canned", grams=250.0), Have(food_id="leek", grams=150.0))
    made = plan(wanted(*have), store=store)
    assert isinstance(made, Plan)
    for grams in (200.0, 1200.0, 2200.0):
        to = Have(food_id="leftover-chicken", grams=grams)
        answer = swap(made, frm="leek", to=to, store=store)
        assert answer.verdict is Verdict.NO or answer.plan is not None
        if answer.plan is not None:
            assert check(answer.plan, store=store).unsafe == ()


def test_what_joins_a_running_cook_is_safe_or_stays_out(store: Store) -> None:
    made = plan(wanted(Have(food_id="cannellini-bean", state="canned"), Have(food_id="leek")), store=store)
    assert isinstance(made, Plan)
    for food in ("leftover-chicken", "cockle", "chicken-liver"):
        request = replace(made.request, have=(*made.request.have, Have(food_id=food, grams=1500.0)))
        again = replan(made, request=request, elapsed_s=300.0, store=store)
        shown = again if isinstance(again, Plan) else again.nearest
        assert shown is not None
        assert check(shown, store=store).unsafe == ()
