"""What a strict cook looks at first: cuts, settings, order, and which way of cooking suits what.

Common practice, no source, unless a line names one.
"""

from __future__ import annotations

from functools import partial

import pytest

from knowledge.foods.store import Store
from knowledge.planner import swap
from knowledge.planner.gathering.dinner import gather
from knowledge.planner.model import Do, Have, Request, Verdict
from knowledge.planner.search.drafts import drafts
from tests.unit.planner import kitchen
from tests.unit.planner.kitchen import item, only

planned = partial(kitchen.planned, eaters=2.0)


@pytest.mark.parametrize("steak", ["ribeye-steak", "pork-chop", "lamb-chop", "halibut", "duck-breast"])
@pytest.mark.parametrize("vessel", ["saute pan", "sheet pan"])
def test_steaks_and_chops_stay_whole(store: Store, steak: str, vessel: str) -> None:
    made = planned(store, steak, "asparagus", kitchen=only(vessel))
    assert item(made, steak).cut_id in ("whole", "thick slice")


def test_a_steak_rests_on_a_plate_while_the_vegetables_fry(store: Store) -> None:
    made = planned(store, "ribeye-steak", "asparagus", "mushroom", kitchen=only("saute pan"))
    steak = item(made, "ribeye-steak")
    assert steak.out_s < item(made, "asparagus").out_s
    assert not any("back in" in s.text for s in made.steps if "ribeye-steak" in s.foods)
    assert made.cooking_s - steak.out_s >= steak.done.rest_s


@pytest.mark.parametrize("joint", ["pork-loin", "beef-roast", "lamb-leg", "turkey-breast", "whole-chicken"])
def test_joints_and_birds_are_roasted_whole_in_a_moderate_oven(store: Store, joint: str) -> None:
    made = planned(store, Have(food_id=joint, grams=1600), "potato", eaters=5.0)
    assert made.vessel == "sheet pan"
    assert item(made, joint).cut_id == "whole"
    assert 180 <= (made.settings.oven_degC or 0) <= 190


def test_a_tray_is_roasted_at_200_to_220(store: Store) -> None:
    made = planned(store, "chicken-thigh", "potato", "carrot", "red-onion")
    assert 200 <= (made.settings.oven_degC or 0) <= 220


@pytest.mark.parametrize("root", ["potato", "carrot", "parsnip", "sweet-potato"])
def test_roots_are_cut_large_where_something_slow_is_beside_them(store: Store, root: str) -> None:
    assert item(planned(store, "chicken-thigh", root), root).size_mm >= 19


def test_nothing_small_lies_on_a_hot_tray(store: Store) -> None:
    made = planned(store, "sausage", "onion", "garlic", "potato", kitchen=only("sheet pan"))
    assert item(made, "onion").size_mm >= 15
    assert item(made, "garlic").cut_id == "whole"


@pytest.mark.parametrize("food", ["fish-finger", "french-fry", "halloumi"])
def test_what_should_be_crisp_is_not_boiled(store: Store, food: str) -> None:
    assert planned(store, food, "bell-pepper").vessel in ("sheet pan", "saute pan")


@pytest.mark.parametrize("food", ["mushroom", "eggplant"])
def test_mushrooms_and_eggplant_meet_hot_fat_before_liquid(store: Store, food: str) -> None:
    made = planned(store, food, "barley", "onion", kitchen=only("lidded pot"))
    pour = next(s.at_s for s in made.steps if s.do is Do.HEAT)
    assert item(made, food).in_s < pour


def test_dry_noodles_are_soaked_before_the_pan(store: Store) -> None:
    made = planned(store, "shrimp", "noodle", "bell-pepper", "snow-pea", wishes=("stir fry",))
    assert made.vessel == "saute pan"
    assert any("boiling water" in s.text for s in made.steps if "noodle" in s.foods)
    noodle = item(made, "noodle")
    assert noodle.out_s - noodle.in_s <= 6 * 60


def test_liver_goes_in_last(store: Store) -> None:
    made = planned(store, Have(food_id="chicken-liver", grams=400), "onion", "apple")
    assert made.vessel == "saute pan"
    assert item(made, "chicken-liver").in_s >= item(made, "onion").in_s
    assert item(made, "chicken-liver").in_s > 0


def test_a_whole_frozen_piece_is_not_cut(store: Store) -> None:
    made = planned(store, Have(food_id="chicken-breast", grams=500, state="frozen"), "rice")
    assert item(made, "chicken-breast").cut_id == "whole"


def test_cooked_prawns_only_warm(store: Store) -> None:
    made = planned(store, Have(food_id="shrimp", grams=250, state="cooked"), "spaghetti", "pea")
    prawn = next(i for i in made.items if "shrimp" in i.food_id)
    assert prawn.out_s - prawn.in_s <= 6 * 60


@pytest.mark.parametrize(
    ("wish", "vessels"),
    [
        ("stew", {"lidded pot", "saute pan", "pressure cooker"}),
        ("tray bake", {"sheet pan"}),
        ("stir fry", {"saute pan"}),
    ],
)
def test_the_word_for_a_dish_binds_the_way_it_is_cooked(store: Store, wish: str, vessels: set[str]) -> None:
    made = planned(store, "boneless-chicken-thigh", "bell-pepper", "onion", wishes=(wish,))
    assert made.vessel in vessels


def test_milk_and_cream_want_a_wet_dish(store: Store) -> None:
    assert planned(store, "haddock", "leek", "milk", "potato").vessel != "sheet pan"


def test_pressure_is_chosen_only_where_it_saves_time(store: Store) -> None:
    made = planned(store, "barley", "mushroom", "leek")
    pot = planned(store, "barley", "mushroom", "leek", vessel="lidded pot")
    assert made.vessel != "pressure cooker" or made.total_s <= 0.75 * pot.total_s


def test_roots_of_a_stew_are_cut_for_the_spoon(store: Store) -> None:
    made = planned(store, "chuck-roast", "potato", "carrot", kitchen=only("pressure cooker"))
    assert all(item(made, root).cut_id != "whole" for root in ("potato", "carrot"))


def test_alternatives_are_other_dinners(store: Store) -> None:
    for foods in (("red-lentil", "onion"), ("egg", "spinach"), ("sausage", "potato")):
        made = planned(store, *foods)
        assert not any("open cooker" in a.why for a in made.alternatives)


def test_a_steak_is_not_swapped_into_a_braise(store: Store) -> None:
    made = planned(store, "stew-beef", "carrot", "potato", kitchen=only("lidded pot"))
    assert swap(made, frm="stew beef", to=Have(food_id="steak"), store=store).verdict is Verdict.NO


def test_a_swap_says_what_the_new_food_needs(store: Store) -> None:
    made = planned(store, "cod", "potato", kitchen=only("sheet pan"))
    answer = swap(made, frm="cod", to=Have(food_id="chicken-breast"), store=store)
    assert any("74 °C" in c.text for c in answer.cautions)  # USDA FSIS: poultry 165 °F


def test_a_swap_that_takes_the_protein_away_says_so(store: Store) -> None:
    made = planned(store, "shrimp", "bell-pepper", "rice")
    answer = swap(made, frm="shrimp", to=Have(food_id="carrot"), store=store)
    assert answer.verdict is not Verdict.TOGETHER
    assert answer.verdict is Verdict.NO or "protein" in answer.text


@pytest.mark.parametrize("minutes", [30, 35, 40, 45, 50])
@pytest.mark.parametrize(
    "foods",
    [
        ("chicken-thigh", "potato", "carrot"), ("pork-chop", "potato", "green-bean"),
        ("sausage", "potato", "onion"), ("salmon", "rice", "broccoli"),
    ],
)  # fmt: skip
def test_no_dinner_is_late_when_another_of_the_same_foods_is_in_time(
    store: Store, foods: tuple[str, ...], minutes: int
) -> None:
    request = Request(have=tuple(Have(food_id=f) for f in foods), ready_in_s=minutes * 60.0)
    found = drafts(gather(request, store=store), request, store=store)
    took = [(d.stages.serve_s - d.start_s, len(d.refused)) for d in found if d.score > found[0].score - 2.5]
    best_s, refused = took[0]
    assert best_s <= minutes * 60.0 + 90.0 or not any(
        s <= minutes * 60.0 and out <= refused for s, out in took
    )


@pytest.mark.parametrize("steak", ["strip-steak", "t-bone-steak"])
def test_a_steak_is_fried_though_its_vegetables_would_like_the_oven(store: Store, steak: str) -> None:
    made = planned(store, Have(food_id=steak, qty=2.0), "carrot", "new-potato", eaters=2.0)
    assert made.vessel == "saute pan"
    assert item(made, steak).lead == "seared"


def test_carrots_beside_beans_in_a_cooker_are_cut(store: Store) -> None:
    beans = Have(food_id="cannellini-bean", grams=300.0, state="dried")
    made = planned(store, beans, Have(food_id="carrot", qty=4.0), "onion", kitchen=only("pressure cooker"))
    assert item(made, "carrot").cut_id != "whole"


def test_lentils_with_a_tough_joint_are_not_in_for_all_its_hours(store: Store) -> None:
    """They hold their shape for less than twice what they need; after pressure they simmer."""
    made = planned(store, "duck-leg", "green-lentil", "carrot", kitchen=only("lidded pot"))
    lentils, duck = item(made, "green-lentil"), item(made, "duck-leg")
    assert lentils.out_s - lentils.in_s < 0.8 * (duck.out_s - duck.in_s)
    sealed = planned(store, "beef-shank", "green-lentil", "carrot", kitchen=only("pressure cooker"))
    assert sealed.settings.pressure_kPa_gauge is not None
    assert item(sealed, "green-lentil").lane == "after"


def test_a_thick_chop_is_not_on_high_until_it_is_done(store: Store) -> None:
    made = planned(store, "pork-chop", "green-bean", kitchen=only("saute pan"))
    brown = next(s for s in made.steps if s.do is Do.BROWN)
    assert "heat down" in brown.text
    thin = planned(store, "skirt-steak", "green-bean", kitchen=only("saute pan"))
    assert ["heat down" in s.text for s in thin.steps if s.do is Do.BROWN] == [False]


def test_cold_rice_gets_minutes_in_a_full_pan(store: Store) -> None:
    made = planned(
        store, Have(food_id="rice", state="leftover", grams=450.0), "egg", "pea", kitchen=only("saute pan")
    )
    rice = item(made, "rice")
    assert rice.out_s - rice.in_s >= 300.0
