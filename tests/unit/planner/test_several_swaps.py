"""Several swaps at once: each is made with what the ones before have made of the plan."""

from __future__ import annotations

from knowledge.foods.store import Store
from knowledge.planner import swap
from knowledge.planner.changing.several import one_by_one
from knowledge.planner.model import Have, Plan, SwapAnswer, Verdict
from tests.unit.planner.kitchen import planned_in

FOODS = (Have(food_id="chicken-leg", qty=3.0, unit="piece"), "turnip", "shallot", "potato")


def answered(store: Store, made: Plan, *pairs: tuple[str | None, str | None]) -> SwapAnswer:
    asked = [(frm, None if to is None else Have(food_id=to)) for frm, to in pairs]
    return one_by_one(made, asked, lambda now, frm, to: swap(now, frm=frm, to=to, store=store))


def foods(made: Plan | None) -> set[str]:
    assert made is not None
    return {item.food_id for item in made.items}


def test_both_come_in_and_both_leave(store: Store) -> None:
    made = planned_in(store, "lidded pot", *FOODS, eaters=3.0)
    answer = answered(store, made, ("turnip", "carrot"), ("shallot", "leek"))
    assert answer.verdict is not Verdict.NO
    assert foods(answer.plan) == {"chicken-leg", "carrot", "leek", "potato"}
    assert "turnip" in answer.text
    assert "shallot" in answer.text


def test_one_may_leave_while_another_joins(store: Store) -> None:
    made = planned_in(store, "lidded pot", *FOODS, eaters=3.0)
    answer = answered(store, made, ("turnip", None), (None, "pea"))
    assert foods(answer.plan) >= {"chicken-leg", "potato", "pea"}
    assert "turnip" not in foods(answer.plan)


def test_what_cannot_be_is_said_and_the_rest_is_made(store: Store) -> None:
    made = planned_in(store, "lidded pot", *FOODS, eaters=3.0)
    answer = answered(store, made, ("turnip", "carrot"), ("cabbage", "leek"))
    assert answer.verdict is not Verdict.NO
    assert "carrot" in foods(answer.plan)
    assert "no cabbage in this plan" in answer.text
    assert answered(store, made, ("cabbage", "leek"), ("okra", "pea")).verdict is Verdict.NO
