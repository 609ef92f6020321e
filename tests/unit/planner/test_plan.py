"""Whole plans: the right vessel, the right order, the rules that nothing may break."""

from __future__ import annotations

from dataclasses import replace
from functools import partial

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Do, Have, Kitchen, Learned, NoPlan, Plan, Request
from tests.unit.planner import kitchen
from tests.unit.planner.kitchen import item, only

dinner = partial(kitchen.dinner, eaters=2.0)
planned = partial(kitchen.planned, eaters=2.0)


# Which vessel a cook would take: common practice, no source.
@pytest.mark.parametrize(
    ("foods", "vessels"),
    [
        (("chicken-thigh", "potato", "carrot"), {"sheet pan"}),
        (("sausage", "potato", "red-onion"), {"sheet pan", "saute pan"}),
        (("stew-beef", "carrot", "potato", "onion"), {"pressure cooker", "lidded pot"}),
        (("lamb-shank", "rutabaga"), {"pressure cooker", "lidded pot"}),
        (("tofu", "bell-pepper", "snow-pea"), {"saute pan"}),
        (("egg", "spinach"), {"saute pan"}),
        (("salmon", "rice", "asparagus"), {"saute pan", "lidded pot"}),
        (("ground-beef", "pasta", "onion"), {"lidded pot", "saute pan"}),
        (("red-lentil", "spinach", "onion"), {"lidded pot", "saute pan"}),
    ],
)
def test_vessel_is_the_one_a_cook_would_take(store: Store, foods: tuple[str, ...], vessels: set[str]) -> None:
    assert planned(store, *foods).vessel in vessels


def test_quick_foods_join_late_and_slow_ones_go_in_first(store: Store) -> None:
    made = planned(store, "salmon", "new-potato", "asparagus", vessel="sheet pan")
    assert item(made, "new-potato").in_s < item(made, "salmon").in_s
    assert item(made, "new-potato").in_s == 0.0


def test_braise_browns_first_and_peas_come_last(store: Store) -> None:
    made = planned(store, Have(food_id="stew-beef", grams=700), "carrot", "pea", kitchen=only("lidded pot"))
    does = [s.do for s in made.steps]
    assert does.index(Do.BROWN) < does.index(Do.HEAT)
    assert item(made, "stew-beef").in_s < item(made, "carrot").in_s <= item(made, "pea").in_s
    assert item(made, "pea").out_s - item(made, "pea").in_s < 12 * 60


def test_nothing_goes_into_a_sealed_cooker(store: Store) -> None:
    made = planned(store, "stew-beef", "potato", "pea", "spinach", kitchen=only("pressure cooker"))
    lid = next(s.at_s for s in made.steps if s.do is Do.LID)
    release = next(s.at_s for s in made.steps if s.do is Do.RELEASE)
    assert not [s for s in made.steps if s.do is Do.ADD and lid <= s.at_s <= release]
    assert item(made, "spinach").in_s > release
    assert made.liquid is not None
    assert made.liquid.ml >= store.vessel("pressure cooker").min_liquid_ml


def test_dry_beans_are_cooked_long_and_the_boil_rule_is_said(store: Store) -> None:
    made = planned(store, Have(food_id="kidney-bean", grams=250, state="dried"), "onion")
    assert any("boil" in c.text for c in made.cautions)


def test_chickpeas_of_no_state_are_taken_as_tinned_and_it_is_said(store: Store) -> None:
    made = planned(store, "chickpea", "spinach", "onion")
    assert any("tinned" in said for said in made.assumed)
    assert made.total_s < 45 * 60


def test_published_minimum_is_planned_and_named(store: Store) -> None:
    made = planned(store, "pork-chop", "green-bean")
    core = item(made, "pork-chop").done.core_degC
    assert core is not None
    assert core >= 62.8  # FSIS: 145 F and 3 min of rest
    assert any("USDA FSIS" in c.source and "63 °C" in c.text for c in made.cautions)


def test_mince_of_any_animal_is_held_to_the_minimum_for_mince(store: Store) -> None:
    made = planned(store, Have(food_id="goat", grams=500, cut="ground"), "pea", "potato")
    core = item(made, "goat").done.core_degC
    assert core is not None
    assert core >= 71.1  # FSIS: 160 F for ground meat
    assert any("71 °C" in c.text for c in made.cautions)
    assert not any("63 °C" in c.text for c in made.cautions)


def test_leftovers_are_heated_to_the_published_temperature(store: Store) -> None:
    made = planned(store, Have(food_id="chicken", state="leftover"), "rice")
    core = item(made, "chicken").done.core_degC
    assert core is not None
    assert core >= 73.8  # FSIS: 165 F for leftovers


def test_amounts_follow_the_eaters(store: Store) -> None:
    two = planned(store, "salmon", "potato")
    four = plan(dinner("salmon", "potato", eaters=4.0), store=store)
    assert isinstance(four, Plan)
    assert item(four, "salmon").grams > 1.5 * item(two, "salmon").grams
    assert four.serves > two.serves


def test_what_does_not_fit_stays_out_and_is_said(store: Store) -> None:
    kitchen = only("saute pan", "24 cm")
    made = plan(
        dinner(
            Have(food_id="potato", grams=4000),
            Have(food_id="sausage", grams=1500),
            kitchen=kitchen,
            eaters=8.0,
        ),
        store=store,
    )
    assert isinstance(made, Plan)
    assert made.fill <= store.vessel("saute pan").max_fill_frac * 1.02
    assert any("has room for" in said for said in made.assumed)


def test_rice_gets_the_water_it_drinks(store: Store) -> None:
    made = planned(store, Have(food_id="rice", grams=300), "chicken-thigh", kitchen=only("lidded pot"))
    uptake = store.food("rice").water_uptake_g_per_g or 0.0
    assert made.liquid is not None
    assert 300 * uptake <= made.liquid.ml <= 300 * uptake + 500


def test_diet_and_refusal_leave_a_food_out_with_the_reason(store: Store) -> None:
    made = planned(store, "tofu", "chicken-breast", "broccoli", diets=("vegan",))
    assert [(left.food, "vegan" in left.why) for left in made.left_out] == [("chicken breast", True)]
    made = planned(store, "tofu", "mushroom", "broccoli", excluded=("mushroom",))
    assert [left.food for left in made.left_out] == ["mushroom"]


@pytest.mark.parametrize(
    "request_",
    [
        dinner(),
        dinner("salt"),
        dinner("chicken-thigh", kitchen=Kitchen(vessels=())),
        dinner("chicken-thigh", vessel="sheet pan", kitchen=only("saute pan")),
        dinner("chicken-breast", diets=("vegan",)),
        dinner("chicken-thigh", vessel="sheet pan", not_vessels=("sheet pan",)),
    ],
)
def test_no_plan_has_a_clear_reason(store: Store, request_: Request) -> None:
    made = plan(request_, store=store)
    assert isinstance(made, NoPlan)
    assert made.reasons
    assert all(len(reason) > 10 for reason in made.reasons)


def test_rice_on_a_sheet_pan_alone_is_refused_with_what_would_do(store: Store) -> None:
    without = plan(dinner("rice", "egg", kitchen=only("sheet pan")), store=store)
    assert isinstance(without, NoPlan)
    assert without.nearest is not None
    made = plan(dinner("rice", kitchen=only("sheet pan")), store=store)
    assert isinstance(made, NoPlan)
    assert made.nearest is not None
    assert made.nearest.vessel != "sheet pan"


def test_a_giant_frozen_turkey_is_not_planned_for_a_pan(store: Store) -> None:
    made = plan(
        dinner(Have(food_id="whole-turkey", grams=6400, state="frozen"), kitchen=only("saute pan")),
        store=store,
    )
    assert isinstance(made, NoPlan)


def test_unknown_food_is_named_and_the_rest_planned(store: Store) -> None:
    made = planned(store, "potato", "sausage", unknown=("flonkroot",))
    assert "flonkroot" in [left.food for left in made.left_out]


def test_thirty_foods_are_cut_down_to_what_a_vessel_takes(store: Store) -> None:
    ids = [f.id for f in store.foods() if f.role == "cook"][:30]
    made = plan(dinner(*ids), store=store)
    nearest = made if isinstance(made, Plan) else made.nearest
    assert nearest is not None
    assert len(nearest.items) <= 14
    assert any("too many" in said for said in nearest.assumed)


def test_deadline_is_answered_honestly(store: Store) -> None:
    late = plan(dinner("stew-beef", "carrot", ready_in_s=1200.0), store=store)
    assert isinstance(late, Plan)
    assert " late: this takes " in late.timing
    past = plan(dinner("egg", "spinach", ready_in_s=-600.0), store=store)
    assert isinstance(past, Plan)
    assert "passed" in past.timing


def test_absurd_amounts_do_not_break_the_plan(store: Store) -> None:
    for grams in (0.001, 1e9):
        made = plan(dinner(Have(food_id="potato", grams=grams), "sausage"), store=store)
        nearest = made if isinstance(made, Plan) else made.nearest
        assert nearest is None or all(0 < i.grams < 20_000 for i in nearest.items)


def test_same_request_same_plan(store: Store) -> None:
    request = dinner("chicken-thigh", "potato", "broccoli")
    assert plan(request, store=store) == plan(request, store=store)


def test_wishes_change_the_plan_their_way(store: Store) -> None:
    plain = planned(store, "chicken-thigh", "carrot", "potato")
    saucy = planned(store, "chicken-thigh", "carrot", "potato", wishes=("saucy",))
    assert plain.vessel == "sheet pan"
    assert saucy.vessel != "sheet pan"
    crisp = planned(store, "sausage", "cabbage", "apple", wishes=("crisp",))
    assert crisp.vessel in ("sheet pan", "saute pan")


def test_fan_oven_is_set_lower_and_altitude_takes_longer(store: Store) -> None:
    foods = ("chicken-thigh", "potato")
    fan = planned(store, *foods, kitchen=replace(only("sheet pan"), fan_oven=True))
    still = planned(store, *foods, kitchen=only("sheet pan"))
    assert fan.settings.oven_degC is not None
    assert still.settings.oven_degC is not None
    assert fan.settings.oven_degC <= still.settings.oven_degC
    low = planned(store, "rice", "carrot", kitchen=only("lidded pot"))
    high = planned(store, "rice", "carrot", kitchen=replace(only("lidded pot"), altitude_m=2000.0))
    assert high.cooking_s > low.cooking_s


def test_a_dark_sheet_is_quicker_than_a_bright_one(store: Store) -> None:
    foods = ("chicken-breast", "carrot", "zucchini")
    dark, usual, bright = (
        planned(store, *foods, kitchen=replace(only("sheet pan"), sheet=sheet)).cooking_s
        for sheet in ("dark", "dull", "bright")
    )
    assert dark <= usual <= bright
    assert dark < bright


def test_a_slow_oven_that_was_learned_takes_longer(store: Store) -> None:
    foods = ("chicken-thigh", "potato")
    usual = planned(store, *foods, kitchen=only("sheet pan"))
    slow = plan(dinner(*foods, kitchen=only("sheet pan"), learned=Learned(oven_pace=1.3)), store=store)
    assert isinstance(slow, Plan)
    assert slow.cooking_s > 1.1 * usual.cooking_s


def test_us_units_reach_the_text(store: Store) -> None:
    made = planned(store, "chicken-thigh", "potato", kitchen=replace(only("sheet pan"), units="us"))
    text = " ".join(s.text for s in made.steps)
    assert "°F" in text
    assert "°C" not in text
    assert " mm" not in text
