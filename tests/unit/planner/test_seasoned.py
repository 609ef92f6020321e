"""Seasonings: how much, at which moment, and how. Common practice, no source, but for the units (NIST)."""

from __future__ import annotations

import re
from functools import partial

import pytest

from knowledge.foods.model import Role
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.model import Do, Have, Plan, Step
from knowledge.units import spoons
from tests.unit.planner import kitchen
from tests.unit.planner.kitchen import told

planned = partial(kitchen.planned_in, eaters=3.0)


def step_with(made: Plan, words: str) -> Step:
    return next(s for s in made.steps if words in s.text)


BRAISE = (Have(food_id="pork-shoulder", grams=700.0), "onion", Have(food_id="carrot", qty=3.0))


# ------------------------------------------------------------------ how much


@pytest.mark.parametrize(
    ("seasoning", "said"),
    [
        ("soy-sauce", "3 tbsp soy sauce"),  # a tablespoon a head
        ("fish-sauce", "1 1/2 tbsp fish sauce"),  # half of one
        ("bay-leaf", "1 bay leaf"),
        ("chili-flakes", "a pinch of chili flakes"),
        ("parsley", "2 handfuls of parsley"),
        ("thyme", "3 sprigs of thyme"),
        ("lemongrass", "2 bruised stalks of lemongrass"),
        ("juniper-berry", "crushed juniper berries"),
        ("white-wine", "white wine"),
    ],
)
def test_a_seasoning_has_an_amount_where_it_is_first_named(store: Store, seasoning: str, said: str) -> None:
    assert said in told(planned(store, "lidded pot", *BRAISE, seasoning))


def test_the_cooks_own_amount_wins(store: Store) -> None:
    mine = Have(food_id="soy-sauce", qty=5.0, unit="tbsp")
    assert "5 tbsp soy sauce" in told(planned(store, "lidded pot", *BRAISE, mine))
    two = Have(food_id="bay-leaf", qty=2.0)
    assert "2 bay leaves" in told(planned(store, "lidded pot", *BRAISE, two))


def test_a_fruit_that_is_poured_is_its_juice(store: Store) -> None:
    made = planned(store, "lidded pot", *BRAISE, Have(food_id="orange", qty=1.0))
    assert "the juice of 1 orange" in told(made)
    assert "juice of" not in told(planned(store, "lidded pot", *BRAISE, Have(food_id="lime", qty=1.0)))


def test_a_jar_is_what_it_comes_in_and_not_how_much(store: Store) -> None:
    jar = Have(food_id="curry-paste", qty=1.0, unit="jar")
    assert "3 tbsp curry paste" in told(planned(store, "lidded pot", *BRAISE, jar))


def test_twice_the_eaters_take_twice_the_soy(store: Store) -> None:
    for eaters, said in ((2.0, "2 tbsp soy"), (4.0, "4 tbsp soy")):
        made = planned(store, "saute pan", "chicken-thigh", "potato", "onion", "soy-sauce", eaters=eaters)
        assert said in told(made)


def test_every_seasoning_that_cooks_has_a_number(store: Store) -> None:
    """In a braise, each seasoning of the table goes in with a measure, a count or a pinch."""
    bare = {"black-pepper", "white-pepper"}  # by the grinder
    for food in store.foods():
        if food.role is not Role.SEASON or food.part in ("fat", "liquid") or food.id in bare:
            continue
        if food.when is None or food.when.value == "table" or food.group == "stock":
            continue
        made = planned(store, "lidded pot", *BRAISE, food.id)
        name = re.compile(f"{food.name}|{words.plural(food.name)}")
        said = next(s.text for s in made.steps if name.search(s.text))
        before = name.split(said)[0][-28:]
        assert re.search(r"\d|half|a pinch|a handful|the juice", before), (food.id, said)


def test_salt_is_half_a_teaspoon_a_pound(store: Store) -> None:
    made = planned(store, "lidded pot", Have(food_id="pork-shoulder", grams=500.0), "onion")
    assert "Season the pork shoulder with 1/2 tsp salt" in told(made)


def test_low_salt_adds_none(store: Store) -> None:
    made = planned(store, "lidded pot", *BRAISE, diets=("low salt",))
    assert not re.search(r"tsp salt|for salt", told(made))


def test_what_is_salty_already_gets_no_more(store: Store) -> None:
    made = planned(store, "lidded pot", *BRAISE, "soy-sauce")
    assert "tsp salt" not in told(made)
    assert "Taste before you salt: soy sauce" in told(made)
    cube = planned(store, "lidded pot", *BRAISE, "stock-cube")
    assert "tsp salt and pepper" in told(cube)  # the meat; what is poured in has its own
    assert "water with salt" not in told(cube)


@pytest.mark.parametrize(
    ("ml", "said"),
    [(0.4, "a pinch"), (2.5, "1/2 tsp"), (7.4, "1 1/2 tsp"), (15.0, "1 tbsp"), (45.0, "3 tbsp")],
)
def test_spoons(ml: float, said: str) -> None:
    """NIST Handbook 44, appendix C: a teaspoon is 4.93 ml, a tablespoon 14.79 ml."""
    assert spoons(ml, "metric") == spoons(ml, "us") == said


# ------------------------------------------------------------------ when


def test_whole_spices_bloom_before_the_onion_and_ground_ones_come_last(store: Store) -> None:
    made = planned(store, "lidded pot", *BRAISE, "mustard-seed", "turmeric")
    soft = step_with(made, "turmeric").text
    assert soft.index("mustard seed") < soft.lower().index("onion") < soft.index("turmeric")
    assert "in for the last minute" in soft


def test_paste_is_fried_in_the_fat_of_the_meat_where_nothing_softens(store: Store) -> None:
    made = planned(store, "saute pan", "chicken-thigh", "sweet-potato", "curry-paste")
    text = step_with(made, "curry paste").text
    assert text.index("into the fat") < text.index("pour in")


def test_wine_boils_down_before_the_stock(store: Store) -> None:
    text = step_with(planned(store, "lidded pot", *BRAISE, "red-wine"), "red wine").text
    assert text.index("red wine") < text.index("boil it down") < text.index("stock")


def test_a_cube_is_dissolved_and_not_poured(store: Store) -> None:
    made = planned(store, "lidded pot", "lentil", "onion", "carrot", "stock-cube")
    assert re.search(r"\d+ (ml|l) water with \d stock cubes?", told(made))
    assert made.liquid is not None
    assert made.liquid.what == "stock from a stock cube"


@pytest.mark.parametrize("thick", ["coconut-milk", "peanut-butter", "heavy-cream"])
def test_nothing_creamy_or_thick_is_sealed_in(store: Store, thick: str) -> None:
    made = planned(store, "pressure cooker", *BRAISE, thick)
    opened = max(s.at_s for s in made.steps if s.do is Do.RELEASE)
    assert step_with(made, store.food(thick).name).at_s >= opened


def test_starch_is_slaked_in_cold_water(store: Store) -> None:
    made = planned(store, "saute pan", "chicken-breast", "broccoli", "cornstarch")
    assert re.search(r"tir \d tbsp cornstarch into 2 tbsp cold water", told(made))


def test_miso_is_let_down_off_the_heat(store: Store) -> None:
    made = planned(store, "lidded pot", "salmon", "daikon", "onion", "miso")
    assert "Off the heat: stir 3 tbsp miso smooth in a ladle" in told(made)


def test_citrus_is_squeezed_and_goes_into_a_bird(store: Store) -> None:
    pan = planned(store, "saute pan", "cod", "zucchini", "lime", eaters=2.0)
    assert "Squeeze half a lime in" in told(pan)
    bird = planned(store, "sheet pan", "whole-chicken", "potato", "lemon")
    assert "half of the lemon inside the bird" in told(bird)
    assert "Squeeze the rest of the lemon" in told(bird)


def test_a_glaze_is_brushed_on_for_the_last_ten_minutes(store: Store) -> None:
    made = planned(
        store, "sheet pan", Have(food_id="chicken-drumstick", qty=6.0), "parsnip", "honey", "mustard"
    )
    brush = step_with(made, "Brush with")
    assert "honey" in brush.text
    assert "mustard" in brush.text
    end = next(i.out_s for i in made.items if i.food_id == "chicken-drumstick")
    assert 8 * 60 <= end - brush.at_s <= 12 * 60


def test_cream_follows_the_leaves_that_wilt(store: Store) -> None:
    made = planned(
        store, "saute pan", "mushroom", "spinach", "shallot", Have(food_id="heavy-cream", grams=100.0)
    )
    wilt = next(s.at_s for s in made.steps if s.do is Do.ADD and "spinach" in s.text.lower())
    assert step_with(made, "heavy cream").at_s > wilt


def test_scallion_greens_and_anchovies(store: Store) -> None:
    made = planned(store, "saute pan", "shrimp", "scallion", "bell-pepper")
    assert "white and green apart" in told(made)
    assert "the white of the scallions into the fat" in told(made).lower()
    assert "Scatter the green of the scallions" in told(made)
    melted = planned(
        store, "lidded pot", "spaghetti", "garlic", "anchovy", Have(food_id="tomato", state="canned")
    )
    assert "nchovies" in step_with(melted, "into the fat").text


def test_capers_go_in_with_the_liquid_and_vinegar_in_the_braise(store: Store) -> None:
    made = planned(store, "lidded pot", *BRAISE, "caper", "vinegar")
    text = step_with(made, "Pour in").text
    assert "capers" in text
    assert "vinegar" in text


# ------------------------------------------------------------------ the end


def test_leaves_and_sticks_are_fished_out_and_a_bird_is_carved(store: Store) -> None:
    assert "Fish out the bay leaf" in told(planned(store, "lidded pot", *BRAISE, "bay-leaf"))
    assert "Fish out the bay leaves" in told(planned(store, "lidded pot", *BRAISE, "bay-leaf", eaters=6.0))
    assert "Carve the whole chicken" in told(planned(store, "sheet pan", "whole-chicken", "potato"))


def test_duck_fat_is_poured_off_and_skimmed(store: Store) -> None:
    made = planned(store, "lidded pot", Have(food_id="duck-leg", qty=3.0), "onion", "red-cabbage")
    assert "Pour off all but 1 tbsp of the fat" in told(made)
    assert "Spoon the fat off the top" in told(made)
    lean = planned(store, "lidded pot", "chicken-breast", "onion", "rice")
    assert "fat off" not in told(lean)


def test_something_sharp_is_offered_only_where_there_is_nothing(store: Store) -> None:
    earthy = ("cumin", "turmeric", "curry-powder")
    assert "tastes flat" in told(planned(store, "lidded pot", *BRAISE, *earthy))
    assert "tastes flat" not in told(planned(store, "lidded pot", *BRAISE, *earthy, "vinegar"))
    assert "tastes flat" not in told(planned(store, "lidded pot", *BRAISE))  # the line of flavour says it


def test_wine_in_a_pan_boils_away_on_the_aromatics(store: Store) -> None:
    wine = Have(food_id="white-wine", grams=100.0)
    made = planned(store, "saute pan", "shrimp", "shallot", "zucchini", wine, wishes=("stir fry",))
    assert made.settings.method == "saute"
    assert re.search(r"Then 100 ml white wine: let it bubble", step_with(made, "into the fat").text)


def test_minutes_under_pressure_are_never_rounded_down(store: Store) -> None:
    for beans in (Have(food_id="kidney-bean", grams=g, state="dried") for g in (200.0, 300.0)):
        made = planned(store, "pressure cooker", beans, "onion")
        full = next(s for s in made.steps if s.text.startswith("Full pressure"))
        release = next(s for s in made.steps if s.do is Do.RELEASE)
        said = re.search(r"(\d+) min from now", full.text)
        assert said is not None
        assert int(said[1]) * 60.0 >= release.at_s - full.at_s - 2.0


def test_frozen_flesh_is_rubbed_like_the_fresh(store: Store) -> None:
    """What is breaded and frozen stays as it was bought."""
    for food, is_rubbed in (
        (Have(food_id="haddock", state="frozen"), True),
        (Have(food_id="fish-finger"), False),
    ):
        made = kitchen.planned_in(store, "sheet pan", food, "potato")
        assert ("Rub the " in told(made)) == is_rubbed


# ------------------------------------------------------------------ a sauce on a sheet


@pytest.mark.parametrize("sauce", ["coconut-milk", "tomato-puree"])
def test_a_tin_of_sauce_on_a_sheet_is_spooned_over_late_and_wants_a_pot(store: Store, sauce: str) -> None:
    tin = Have(food_id=sauce, qty=500.0, unit="ml")
    made = planned(store, "sheet pan", Have(food_id="chicken-leg", qty=3.0), "parsnip", tin)
    name = store.food(sauce).name
    over = step_with(made, f"{name} over")
    assert over.at_s >= 0.5 * made.cooking_s
    assert "500 ml" not in told(made)
    assert any(f"the {name} wants a pot" in note for note in made.notes)


def test_a_glass_on_a_sheet_is_poured_around_and_nothing_is_said(store: Store) -> None:
    glass = Have(food_id="white-wine", qty=120.0, unit="ml")
    made = planned(store, "sheet pan", Have(food_id="chicken-leg", qty=3.0), "parsnip", glass)
    assert "around" in step_with(made, "white wine").text
    assert not any("wants a pot" in note for note in made.notes)


def test_cream_for_a_sauce_says_that_a_sheet_makes_none(store: Store) -> None:
    cream = Have(food_id="heavy-cream", qty=250.0, unit="ml")
    made = planned(store, "sheet pan", Have(food_id="chicken-leg", qty=3.0), "parsnip", cream)
    assert any("cream makes a sauce only in a pot or a pan" in note for note in made.notes)


# ------------------------------------------------------------------ by the jar, and what has no fat


def test_salsa_by_the_jar_is_what_the_rest_simmers_in_and_by_the_spoon_it_is_for_the_table(
    store: Store,
) -> None:
    turkey = Have(food_id="turkey-thigh", grams=700.0)
    jar = planned(store, "lidded pot", turkey, "sweet-potato", Have(food_id="salsa", qty=1.0, unit="jar"))
    assert "salsa" in next(s.text for s in jar.steps if s.do in (Do.HEAT, Do.PREHEAT) and "salsa" in s.text)
    assert "with salsa" not in told(jar)
    spoons_of_it = Have(food_id="salsa", qty=3.0, unit="tbsp")
    assert "Serve with salsa" in told(planned(store, "lidded pot", turkey, "sweet-potato", spoons_of_it))


def test_lean_food_out_of_water_gets_a_thread_of_oil(store: Store) -> None:
    lean = (Have(food_id="haddock", grams=450.0), Have(food_id="green-bean", grams=300.0))
    assert "oil over" in told(planned(store, "lidded pot", *lean))
    assert "oil over" not in told(planned(store, "lidded pot", *lean, "butter"))
    assert "oil over" not in told(planned(store, "lidded pot", *lean, "coconut-milk"))


@pytest.mark.parametrize(("said", "crushed"), [("tomatoes", True), ("chopped tomatoes", False)])
def test_whole_tomatoes_out_of_a_tin_are_crushed(store: Store, said: str, crushed: bool) -> None:
    tin = Have(food_id="tomato", grams=400.0, state="canned", said=said)
    made = planned(store, "lidded pot", Have(food_id="goat", grams=600.0), "onion", tin)
    assert ("open and crush" in told(made).lower()) is crushed


def test_tomatoes_fried_down_bring_half_of_their_juice(store: Store) -> None:
    """Jollof: a tin in the fat until thick still stands for some of the water."""
    rice = (Have(food_id="rice", grams=300.0), "onion", Have(food_id="bell-pepper", qty=1.0))
    with_tin = (*rice, Have(food_id="tomato", grams=400.0, state="canned"))
    jollof = partial(kitchen.planned_in, eaters=3.0, wishes=("jollof", "pilaf"))
    more, less = (jollof(store, "lidded pot", *foods).liquid for foods in (rice, with_tin))
    assert more is not None
    assert less is not None
    assert 50.0 <= more.ml - less.ml <= 100.0


def test_fruit_that_nobody_counted_is_pressed_by_the_piece_not_poured_by_the_cup(store: Store) -> None:
    made = planned(store, "lidded pot", Have(food_id="duck-leg", qty=3.0), "shallot", "orange")
    assert re.search(r"the juice of \d+ oranges?", told(made))
    assert not re.search(r"(cup|ml|tbsp) orange", f"{told(made)} {'; '.join(made.assumed)}")


def test_a_smaller_dinner_keeps_its_garlic(store: Store) -> None:
    """What takes no room is not what gives way."""
    made = kitchen.planned(
        store, Have(food_id="chickpea", grams=700.0, state="soaked"),
        Have(food_id="lamb-shoulder", grams=1500.0), Have(food_id="garlic", qty=5.0, unit="clove"),
        eaters=3.0, kitchen=kitchen.only("pressure cooker", "3 l"),
    )  # fmt: skip
    assert "5 cloves of garlic" in told(made)
