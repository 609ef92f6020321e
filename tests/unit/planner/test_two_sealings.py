"""A cooker that is opened once: quicker foods go in for a short second sealing.

Common practice, no source: stewing beef in cubes 25-35 min at 80 kPa, dice of potato and carrot
3-6 min. Nothing ever goes into a locked cooker (appliance manuals).
"""

from __future__ import annotations

from dataclasses import replace

from knowledge.foods.store import Store
from knowledge.planner import plan, swap
from knowledge.planner.checking.followed import case_of
from knowledge.planner.checking.verify import check
from knowledge.planner.checking.written import sealings
from knowledge.planner.model import Do, Have, Kitchen, Plan, Request, Step, VesselAt
from tests.unit.planner.kitchen import item

COOKER = Kitchen(vessels=(VesselAt(id="pressure cooker"),))


def stew(store: Store, *more: Have) -> Plan:
    have = (
        Have(food_id="stew-beef", grams=700), Have(food_id="potato", cut="diced"),
        Have(food_id="carrot", cut="diced"), *more,
    )  # fmt: skip
    made = plan(Request(have=have, kitchen=COOKER), store=store)
    assert isinstance(made, Plan)
    return made


def of(made: Plan, do: Do) -> list[Step]:
    return [s for s in made.steps if s.do is do]


def test_dice_goes_in_for_a_second_short_sealing(store: Store) -> None:
    made = stew(store, Have(food_id="pea", state="frozen"))
    assert made.settings.method == "sealed-twice"
    assert check(made, store=store).sound
    first, second = sealings(made)
    assert 25 <= (first.release_s - first.full_s + second.release_s - second.full_s) / 60 <= 40
    assert 2 <= (second.release_s - second.full_s) / 60 <= 8
    for food_id in ("potato", "carrot"):
        assert item(made, food_id).lane == "second"
        assert first.opened_s - 1.0 <= item(made, food_id).in_s < second.lid_s
    assert item(made, "pea").in_s >= second.opened_s
    assert [s.safety for s in (*of(made, Do.LID), *of(made, Do.RELEASE))] == [True] * 4


def test_whole_roots_need_no_second_one(store: Store) -> None:
    roots = (Have(food_id="potato", cut="whole"), Have(food_id="carrot", cut="whole"))
    have = (Have(food_id="stew-beef", grams=700), *roots)
    made = plan(Request(have=have, kitchen=COOKER), store=store)
    assert isinstance(made, Plan)
    assert made.settings.method == "sealed"


def test_an_addition_while_either_lid_is_locked_is_found(store: Store) -> None:
    made = stew(store)
    for sealing in sealings(made):
        early = tuple(
            replace(s, at_s=sealing.full_s + 30.0) if s.do is Do.ADD and "potato" in s.foods else s
            for s in made.steps
        )
        shuffled = replace(made, steps=tuple(sorted(early, key=lambda s: s.at_s)))
        assert any("sealed" in p for p in check(shuffled, store=store).problems)


def test_the_check_counts_both_pressures_for_the_meat_and_one_for_the_dice(store: Store) -> None:
    made = stew(store)
    meat = case_of(item(made, "stew-beef"), made, store)
    dice = case_of(item(made, "potato"), made, store)
    hot = [sum(p.medium.ambient_degC > 110 for p in case.phases) for case in (meat, dice)]
    assert hot == [2, 1]


def test_what_foams_is_not_opened_half_way(store: Store) -> None:
    have = (Have(food_id="chickpea", grams=250, state="dried"), Have(food_id="potato", cut="diced"))
    made = plan(Request(have=have, kitchen=COOKER), store=store)
    assert isinstance(made, Plan)
    assert made.settings.method != "sealed-twice"


def test_a_swap_joins_the_second_sealing(store: Store) -> None:
    made = stew(store)
    answer = swap(made, frm="carrot", to=Have(food_id="parsnip", cut="diced"), store=store)
    assert answer.plan is not None
    assert item(answer.plan, "parsnip").lane == "second"
    assert check(answer.plan, store=store).sound
