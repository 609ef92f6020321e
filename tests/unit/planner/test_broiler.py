"""A roast that ends under the broiler: quick foods laid on last, the rest stays on the sheet."""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.physics.safety import minimum
from knowledge.planner import plan, swap
from knowledge.planner.changing.replans import replan
from knowledge.planner.checking.verify import check
from knowledge.planner.kitchens import described
from knowledge.planner.model import Do, Have, Kitchen, Plan, Request, Verdict, VesselAt
from knowledge.text import read
from tests.unit.planner.kitchen import item

TRAY = (VesselAt(id="sheet pan"),)


def planned(store: Store, *foods: str, wishes: tuple[str, ...] = ("broil",), broiler: bool = True) -> Plan:
    made = plan(
        Request(
            have=tuple(Have(food_id=f) for f in foods), wishes=wishes,
            kitchen=Kitchen(vessels=TRAY, broiler=broiler),
        ),
        store=store,
    )  # fmt: skip
    assert isinstance(made, Plan)
    return made


@pytest.mark.parametrize("fish", ["tilapia", "sea-bass", "pollock"])
def test_a_fillet_takes_six_to_eight_minutes(store: Store, fish: str) -> None:
    """16 mm fillets, both sides. Common practice, no source; tolerance 20 %."""
    made = planned(store, fish, "potato")
    assert item(made, fish).lane == "after"
    assert 6 * 0.8 <= (item(made, fish).out_s - item(made, fish).in_s) / 60.0 <= 8 * 1.2
    assert check(made, store=store).sound


@pytest.mark.parametrize(
    "foods",
    [
        ("salmon", "carrot", "asparagus"), ("steak", "potato", "cherry-tomato"), ("shrimp", "potato"),
        ("pork-chop", "sweet-potato", "bell-pepper"), ("halloumi", "zucchini", "onion"),
        ("chicken-thigh", "potato", "asparagus"),
    ],
)  # fmt: skip
def test_what_roasts_stays_in_its_window_under_the_broiler(store: Store, foods: tuple[str, ...]) -> None:
    made = planned(store, *foods)
    report = check(made, store=store)
    assert made.settings.method == "roast-broil"
    assert report.sound, report
    assert len({round(i.out_s) for i in made.items}) == 1
    for one in made.items:
        published = minimum(store.food(one.food_id).safety)
        assert published is None or (one.done.core_degC or 0.0) >= published.core_degC - 0.2


def test_the_check_sees_a_broiler_that_came_too_late(store: Store) -> None:
    made = planned(store, "salmon", "carrot")
    late = 300.0
    steps = tuple(
        replace(s, at_s=s.at_s + late) if s.do is Do.ADD and "salmon" in s.foods else s for s in made.steps
    )
    items = tuple(replace(i, in_s=i.in_s + late) if i.food_id == "salmon" else i for i in made.items)
    assert check(replace(made, steps=steps, items=items), store=store).unsafe == ("salmon",)


def test_the_steps_name_the_rack_the_turn_and_the_fire(store: Store) -> None:
    made = planned(store, "salmon", "potato")
    laid = next(s for s in made.steps if s.do is Do.ADD and "salmon" in s.foods)
    glow = next(s for s in made.steps if s.do is Do.HEAT)
    turn = next(s for s in made.steps if s.do is Do.TURN and "salmon" in s.foods)
    assert laid.safety
    assert "one rack below the top" in laid.text
    assert "beside it" in laid.text
    assert glow.at_s < laid.at_s < turn.at_s < item(made, "salmon").out_s
    assert any(c.text.startswith("Broiler:") and "fire" in c.text for c in made.cautions)


@pytest.mark.parametrize(("wishes", "broiler"), [(("broil",), False), ((), True), (("saucy",), True)])
def test_a_plain_roast_where_there_is_no_broiler_or_no_wish(
    store: Store, wishes: tuple[str, ...], broiler: bool
) -> None:
    made = planned(store, "salmon", "potato", wishes=wishes, broiler=broiler)
    assert made.settings.method == "roast"
    assert not any("roiler" in s.text for s in made.steps)


def test_thick_pieces_and_frozen_ones_are_not_for_the_broiler(store: Store) -> None:
    assert planned(store, "chicken-breast", "potato").settings.method == "roast"
    made = plan(
        Request(
            have=(Have(food_id="salmon", state="frozen"), Have(food_id="potato")), wishes=("broil",),
            kitchen=Kitchen(vessels=TRAY),
        ),
        store=store,
    )  # fmt: skip
    assert isinstance(made, Plan)
    assert made.settings.method == "roast"


@pytest.mark.parametrize("other", ["tilapia", "cod", "shrimp"])
def test_another_fish_in_its_place_is_broiled_too(store: Store, other: str) -> None:
    answer = swap(planned(store, "salmon", "potato"), frm="salmon", to=Have(food_id=other), store=store)
    assert answer.verdict is not Verdict.NO
    assert answer.plan is not None
    assert item(answer.plan, other).lane == "after"
    assert check(answer.plan, store=store).sound


def test_a_kitchen_says_whether_it_has_one(store: Store) -> None:
    assert described({"broiler": False}, store=store).kitchen.broiler is False
    assert described({}, store=store).kitchen.broiler is True
    assert described({"broiler": "perhaps"}, store=store).problems


def test_the_wish_is_read(store: Store) -> None:
    assert "broil" in read("salmon and potatoes, broiled, for 2", store=store).wishes


@pytest.mark.parametrize("elapsed_s", [300.0, 900.0])
def test_a_running_cook_keeps_what_is_in_and_lays_the_new_fish_on(store: Store, elapsed_s: float) -> None:
    made = planned(store, "salmon", "potato")
    request = replace(
        made.request, have=(Have(food_id="salmon"), Have(food_id="potato"), Have(food_id="asparagus"))
    )
    again = replan(made, request=request, elapsed_s=elapsed_s, store=store)
    assert isinstance(again, Plan)
    assert item(again, "potato").in_s == pytest.approx(item(made, "potato").in_s)
    assert item(again, "asparagus").in_s > elapsed_s
    assert check(again, store=store).sound


def test_without_the_fish_the_rest_roasts_on(store: Store) -> None:
    made = planned(store, "salmon", "potato")
    answer = swap(made, frm="salmon", to=None, store=store)
    assert answer.plan is not None
    assert not any("roiler" in s.text for s in answer.plan.steps)
    assert check(answer.plan, store=store).sound
