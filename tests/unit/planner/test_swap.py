"""Swaps: the verdict a cook would give, and plans that hold."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan, replan, swap
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Have, Kitchen, Plan, Request, Verdict, VesselAt
from tests.unit.planner.kitchen import planned


def made(store: Store, *foods: str, vessel: str | None = None, diets: tuple[str, ...] = ()) -> Plan:
    kitchen = Kitchen(vessels=(VesselAt(id=vessel),)) if vessel else Kitchen()
    have = tuple(Have(food_id=f) for f in foods)
    result = plan(Request(have=have, eaters=2.0, eaters_said=True, kitchen=kitchen, diets=diets), store=store)
    assert isinstance(result, Plan)
    return result


ROAST = ("chicken-thigh", "potato", "carrot")


# Verdicts: common practice, no source.
@pytest.mark.parametrize(
    ("foods", "vessel", "frm", "to", "verdicts"),
    [
        (ROAST, "sheet pan", "carrot", "parsnip", {"together", "adjust"}),
        (ROAST, "sheet pan", "carrot", "rutabaga", {"together", "adjust"}),
        (ROAST, "sheet pan", "carrot", "asparagus", {"adjust"}),
        (ROAST, "sheet pan", "carrot", "rice", {"no"}),
        (("salmon", "rice", "asparagus"), "saute pan", "salmon", "stew-beef", {"no"}),
        (("salmon", "rice", "asparagus"), "saute pan", "asparagus", "spinach", {"together", "adjust"}),
        (("stew-beef", "carrot"), "lidded pot", "stew-beef", "lamb-shoulder", {"together", "adjust"}),
        (("stew-beef", "carrot"), "lidded pot", "carrot", "pea", {"adjust"}),
    ],
)
def test_verdict(
    store: Store, foods: tuple[str, ...], vessel: str, frm: str, to: str, verdicts: set[str]
) -> None:
    answer = swap(made(store, *foods, vessel=vessel), frm=frm, to=Have(food_id=to), store=store)
    assert answer.verdict.value in verdicts
    assert answer.text
    if answer.verdict is Verdict.ADJUST:
        assert answer.change
    if answer.verdict is not Verdict.NO:
        assert answer.plan is not None
        assert check(answer.plan, store=store).sound
        assert to in [i.food_id for i in answer.plan.items]


@pytest.mark.parametrize("food", ROAST)
def test_a_food_for_itself_is_always_together(store: Store, food: str) -> None:
    before = made(store, *ROAST)
    answer = swap(before, frm=food, to=Have(food_id=food), store=store)
    assert answer.verdict is Verdict.TOGETHER
    assert answer.plan == before


@pytest.mark.parametrize("to", ["parsnip", "turnip", "fennel", "bell-pepper"])
def test_there_and_back_gives_the_same_plan(store: Store, to: str) -> None:
    before = made(store, *ROAST, vessel="sheet pan")
    there = swap(before, frm="carrot", to=Have(food_id=to), store=store)
    assert there.plan is not None
    back = swap(there.plan, frm=to, to=Have(food_id="carrot"), store=store)
    assert back.plan == before


def test_diet_and_allergy_are_checked(store: Store) -> None:
    before = made(store, "tofu", "broccoli", "bell-pepper", diets=("vegan",))
    answer = swap(before, frm="tofu", to=Have(food_id="chicken-breast"), store=store)
    assert answer.verdict is Verdict.NO
    assert "vegan" in answer.text


def test_allergens_of_the_new_food_are_said(store: Store) -> None:
    answer = swap(made(store, *ROAST), frm="chicken thigh", to=Have(food_id="salmon"), store=store)
    assert any("fish" in c.text for c in answer.cautions)


def test_what_is_in_the_vessel_stays_in(store: Store) -> None:
    before = made(store, *ROAST, vessel="sheet pan")
    in_s = next(i.in_s for i in before.items if i.food_id == "potato")
    answer = swap(before, frm="potato", to=Have(food_id="parsnip"), store=store, elapsed_s=in_s + 60.0)
    assert answer.verdict is Verdict.NO
    assert "in already" in answer.text


def test_adding_mid_cook_joins_after_now(store: Store) -> None:
    before = made(store, *ROAST, vessel="sheet pan")
    answer = swap(before, frm=None, to=Have(food_id="asparagus"), store=store, elapsed_s=600.0)
    assert answer.plan is not None
    new = next(i for i in answer.plan.items if i.food_id == "asparagus")
    assert new.in_s >= 600.0


def test_unknown_names_get_a_kind_no(store: Store) -> None:
    before = made(store, *ROAST)
    assert swap(before, frm="fish", to=Have(food_id="leek"), store=store).verdict is Verdict.NO
    assert swap(before, frm="carrot", to=Have(food_id="zzz", said="zzz"), store=store).verdict is Verdict.NO
    assert swap(before, frm=None, to=None, store=store).verdict is Verdict.NO


def test_replan_keeps_what_is_in_and_adds_the_new(store: Store) -> None:
    before = made(store, *ROAST, vessel="sheet pan")
    request = Request(
        have=(*before.request.have, Have(food_id="asparagus")),
        eaters=2.0,
        eaters_said=True,
        kitchen=before.request.kitchen,
    )
    after = replan(before, request=request, elapsed_s=900.0, store=store)
    assert isinstance(after, Plan)
    for item in before.items:
        if item.in_s <= 900.0:
            assert next(i for i in after.items if i.food_id == item.food_id).in_s == item.in_s
    assert next(i for i in after.items if i.food_id == "asparagus").in_s >= 900.0


def test_leftovers_beside_a_swap_are_as_thick_as_before(store: Store) -> None:
    """Two shanks are two, not one of twice the weight: still hot at the table (USDA FSIS: 165 °F)."""
    have = (
        Have(food_id="abalone"), Have(food_id="andouille", grams=1183.0),
        Have(food_id="lamb-shank", state="leftover"),
    )  # fmt: skip
    kitchen = Kitchen(vessels=(VesselAt(id="lidded pot", size="5 l"),))
    before = plan(Request(have=have, eaters=4.0, kitchen=kitchen), store=store)
    assert isinstance(before, Plan)
    answer = swap(before, frm="abalone", to=Have(food_id="abacha"), store=store)
    assert answer.plan is not None
    thick = [{i.size_mm for i in p.items if i.food_id == "lamb-shank"} for p in (before, answer.plan)]
    assert thick[0] == thick[1]
    assert check(answer.plan, store=store).unsafe == ()


def test_what_comes_into_a_pan_with_others_is_fried_before_them(store: Store) -> None:
    """It is not alone because it is new: tofu is coloured apart, as in a dinner of its own."""
    pan = Kitchen(vessels=(VesselAt(id="saute pan", size=None),))
    have = (
        Have(food_id="chicken-breast", grams=450.0),
        Have(food_id="zucchini"),
        Have(food_id="bell-pepper"),
    )
    first = planned(store, *have, kitchen=pan)
    answer = swap(first, frm="chicken breast", to=Have(food_id="tofu", said="firm tofu"), store=store)
    assert answer.verdict is not Verdict.NO
    assert answer.plan is not None
    assert next(i for i in answer.plan.items if i.food_id == "tofu").lead == "seared"


def test_when_what_set_the_clock_goes_the_rest_does_not_cook_on(store: Store) -> None:
    pot = Kitchen(vessels=(VesselAt(id="lidded pot", size=None),))
    beans = Have(food_id="black-bean", grams=250.0, state="soaked")
    first = planned(store, beans, Have(food_id="leek"), Have(food_id="carrot"), kitchen=pot)
    tins = Have(food_id="black-bean", grams=480.0, state="canned", said="tinned black beans")
    answer = swap(first, frm="black beans", to=tins, store=store)
    assert answer.verdict is Verdict.ADJUST
    assert answer.plan is not None
    assert answer.plan.cooking_s < 0.7 * first.cooking_s
    assert check(answer.plan, store=store).sound


def test_a_cheese_that_melts_goes_on_at_the_end_and_fills_the_plate(store: Store) -> None:
    first = planned(store, Have(food_id="halloumi"), Have(food_id="zucchini"), Have(food_id="red-onion"))
    answer = swap(first, frm="halloumi", to=Have(food_id="mozzarella"), store=store)
    assert answer.verdict is not Verdict.NO
    assert "at the end" in answer.text
    assert "protein" not in answer.text


def test_what_is_eaten_raw_goes_beside(store: Store) -> None:
    first = planned(store, Have(food_id="pork-chop"), Have(food_id="eggplant"), Have(food_id="red-onion"))
    answer = swap(first, frm="eggplant", to=Have(food_id="arugula", said="rocket"), store=store)
    assert answer.verdict is Verdict.NO
    assert "beside" in answer.text
    assert answer.plan is not None
    assert "eggplant" not in {i.food_id for i in answer.plan.items}
