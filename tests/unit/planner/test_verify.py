"""The judge of every plan is judged: a sound plan, broken in one place, must be named for that."""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner.checking.verify import Report, check
from knowledge.planner.model import Do, Have, Plan, Step
from tests.unit.planner.kitchen import item, only, planned


def made(store: Store, vessel: str, *have: Have, size: str | None = None) -> Plan:
    return planned(store, *have, eaters=3.0, kitchen=only(vessel, size))


@pytest.fixture(scope="module")
def roast(store: Store) -> Plan:
    return made(store, "sheet pan", Have(food_id="chicken-thigh", qty=4), Have(food_id="potato", grams=500))


@pytest.fixture(scope="module")
def stew(store: Store) -> Plan:
    beans = Have(food_id="kidney-bean", grams=250, state="dried")
    return made(store, "lidded pot", beans, Have(food_id="onion", qty=1))


@pytest.fixture(scope="module")
def cooker(store: Store) -> Plan:
    return made(store, "pressure cooker", Have(food_id="lentil", grams=250), Have(food_id="carrot", qty=2))


def with_item(found: Plan, food_id: str, **changes: object) -> Plan:
    items = tuple(replace(i, **changes) if i.food_id == food_id else i for i in found.items)  # type: ignore[arg-type]
    return replace(found, items=items)


def with_steps(found: Plan, steps: list[Step]) -> Plan:
    return replace(found, steps=tuple(sorted(steps, key=lambda s: s.at_s)))


def said(report: Report) -> str:
    return " | ".join(report.problems)


def test_meat_out_of_the_heat_too_early_is_unsafe_and_not_done(store: Store, roast: Plan) -> None:
    thigh = item(roast, "chicken-thigh")
    early = check(with_item(roast, "chicken-thigh", out_s=0.6 * thigh.out_s), store=store)
    assert "chicken thigh" in early.unsafe
    assert "chicken thigh: out at" in said(early)


def test_meat_left_far_past_its_best_is_named(store: Store, roast: Plan) -> None:
    late = 2.2 * item(roast, "chicken-thigh").done.window_s[1]
    longer = replace(with_item(roast, "chicken-thigh", out_s=late), cooking_s=late + 60)
    assert "past its best" in said(check(longer, store=store))


def test_a_target_below_the_published_minimum_is_unsafe(store: Store, roast: Plan) -> None:
    """USDA FSIS: poultry 165 °F, 73.9 °C."""
    for core, safe in ((73.9, True), (73.5, False), (72.0, False)):
        done = replace(item(roast, "chicken-thigh").done, core_degC=core)
        report = check(with_item(roast, "chicken-thigh", done=done), store=store)
        assert ("chicken thigh" not in report.unsafe) is safe


def test_too_much_on_the_sheet_is_named(store: Store, roast: Plan) -> None:
    assert "too full" in said(check(with_item(roast, "potato", grams=4000.0), store=store))


def test_what_foams_may_fill_half_of_a_cooker_and_no_more(store: Store, cooker: Plan) -> None:
    """Half full for what foams or swells: cooker manuals, common practice."""
    litres = next(s for s in store.vessel("pressure cooker").sizes if s.id == cooker.size).volume_l or 0.0
    assert cooker.liquid is not None
    for share, is_sound in ((0.45, True), (0.58, False)):
        ml = 1000.0 * share * litres - sum(i.grams for i in cooker.items)
        report = check(replace(cooker, liquid=replace(cooker.liquid, ml=ml)), store=store)
        assert ("too full" not in said(report)) is is_sound


def test_a_cooker_without_its_least_liquid_is_named(store: Store, cooker: Plan) -> None:
    assert cooker.liquid is not None
    assert "too little liquid" in said(
        check(replace(cooker, liquid=replace(cooker.liquid, ml=100.0)), store=store)
    )


def test_an_addition_to_the_locked_cooker_is_named(store: Store, cooker: Plan) -> None:
    full = next(s for s in cooker.steps if s.do is Do.HEAT)
    sneaked = replace(full, id="sneaked", do=Do.ADD, at_s=full.at_s + 60, text="Add a carrot.")
    assert "sealed" in said(check(with_steps(cooker, [*cooker.steps, sneaked]), store=store))


def test_an_addition_while_the_pressure_still_falls_is_named(store: Store, cooker: Plan) -> None:
    release = next(s for s in cooker.steps if s.do is Do.RELEASE)
    hasty = replace(release, id="hasty", do=Do.ADD, at_s=release.at_s + 30, text="Add the spinach.")
    assert "sealed" in said(check(with_steps(cooker, [*cooker.steps, hasty]), store=store))


def test_only_a_look_into_the_food_itself_before_it_leaves_makes_up_for_the_spread(
    store: Store, roast: Plan
) -> None:
    unwatched = replace(roast, steps=tuple(replace(s, safety=False) for s in roast.steps))
    out_s = item(roast, "chicken-thigh").out_s
    for minutes in range(1, 30):  # until it is only just short of its minimum
        short = with_item(unwatched, "chicken-thigh", out_s=out_s - 60.0 * minutes)
        if "chicken thigh" in check(short, store=store).unsafe:
            break
    left_s = item(short, "chicken-thigh").out_s
    look = replace(roast.steps[-1], id="look", do=Do.CHECK, safety=True, text="Check.")
    for foods, at_s, safe in (
        (("chicken-thigh",), left_s - 60.0, True),
        (("potato",), left_s - 60.0, False),
        (("chicken-thigh",), left_s + 300.0, False),
    ):
        seen = with_steps(short, [*short.steps, replace(look, foods=foods, at_s=at_s)])
        assert ("chicken thigh" not in check(seen, store=store).unsafe) is safe, (foods, at_s)


def test_raw_beans_that_do_not_boil_hard_are_named(store: Store, stew: Plan) -> None:
    """FDA, Bad Bug Book: 30 minutes at the boil."""
    soft = [s for s in stew.steps if not (s.safety and s.do is Do.HEAT)]
    assert "boiled hard" in said(check(with_steps(stew, soft), store=store))


def test_steps_out_of_order_and_unready_food_are_named(store: Store, roast: Plan) -> None:
    assert "not in order" in said(check(replace(roast, steps=tuple(reversed(roast.steps))), store=store))
    prep = next(s for s in roast.steps if s.do is Do.PREP and "potato" in s.foods)
    late = [s for s in roast.steps if s is not prep] + [replace(prep, at_s=600.0)]
    assert "not ready" in said(check(with_steps(roast, late), store=store))


def test_a_seasoning_in_no_step_is_named(store: Store) -> None:
    found = made(
        store, "saute pan", Have(food_id="chicken-breast", qty=2), Have(food_id="rice", grams=200),
        Have(food_id="cumin"),
    )  # fmt: skip
    bare = [replace(s, text=s.text.replace("cumin", "")) for s in found.steps]
    assert "cumin is in no step" in said(check(with_steps(found, bare), store=store))
