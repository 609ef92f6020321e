"""A dish that is named, or plain from its foods, is made in its own way. Common practice, no source."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner.model import Do, Have, Plan
from knowledge.text.read import read
from tests.unit.planner.kitchen import item, planned, planned_in, told

TOMATOES = Have(food_id="tomato", state="canned", qty=1, unit="can")
MINCE = Have(food_id="ground-lamb", grams=450)
LAMB_RAGU = (MINCE, "carrot", "celery", "onion", TOMATOES, "pasta")


def softened_min(made: Plan) -> float:
    """How long onions are in the fat."""
    fried = next(s for s in made.steps if s.do is Do.ADD and "into the fat" in s.text)
    return fried.hands_s / 60.0


@pytest.mark.parametrize(
    ("text", "dish"),
    [
        ("ragu tonight: minced veal, celery, passata", "bolognese"),
        ("nasi goreng for three with shrimp", "fried rice"),
        ("spanish omelette, 6 eggs and potatoes", "omelette"),
    ],
)
def test_a_dish_with_a_way_of_its_own_is_named_after_its_style(text: str, dish: str, store: Store) -> None:
    wishes = read(text, store=store).wishes
    assert wishes[-1] == dish
    assert len(wishes) == 2


def test_every_dish_that_is_known_by_its_foods_is_known(store: Store) -> None:
    known = {f.id for f in store.foods()} | {f.group for f in store.foods()}
    known |= {f.doneness for f in store.foods()} | {f"cooked {f.group}" for f in store.foods()}
    for row in store.table("dishes"):
        assert {one for foods in row["foods"].split(";") for one in foods.split("|")} - {""} <= known, row


def test_a_ragu_simmers_long_on_a_fine_base(store: Store) -> None:
    made = planned_in(store, "lidded pot", *LAMB_RAGU, eaters=4.0, wishes=("stew", "bolognese"))
    assert (item(made, "tomato").out_s - item(made, "tomato").in_s) / 60.0 >= 40
    assert item(made, "carrot").lead == "softened"
    assert item(made, "carrot").size_mm <= 8
    plain = planned_in(store, "lidded pot", *LAMB_RAGU, eaters=4.0, wishes=("stew",))
    assert item(plain, "tomato").out_s - item(plain, "tomato").in_s < 30 * 60.0


def test_lentils_and_rice_lie_under_onions_fried_brown(store: Store) -> None:
    made = planned(
        store,
        Have(food_id="lentil", grams=180),
        Have(food_id="rice", grams=180),
        Have(food_id="onion", qty=3),
    )
    assert softened_min(made) >= 15
    assert "deep brown" in told(made)
    assert "kept for it over" in told(made)
    assert item(made, "lentil").in_s < item(made, "rice").in_s - 300


def test_another_meat_makes_it_another_dinner(store: Store) -> None:
    foods = (Have(food_id="lentil", grams=180), Have(food_id="rice", grams=180), Have(food_id="onion", qty=3))
    made = planned(store, *foods, "lamb-shoulder")
    assert softened_min(made) <= 6


def test_onions_fry_no_longer_while_browned_meat_waits(store: Store) -> None:
    foods = (Have(food_id="chicken-thigh", qty=4), Have(food_id="onion", qty=2))
    made = planned_in(store, "lidded pot", *foods, wishes=("stew", "doro wot"))
    assert softened_min(made) <= 6
    meatless = planned_in(store, "lidded pot", "potato", Have(food_id="onion", qty=2), wishes=("curry",))
    assert softened_min(meatless) >= 8


@pytest.mark.parametrize(
    ("wishes", "foods", "words"),
    [
        (("eggs in sauce", "shakshuka"), ("egg", TOMATOES, "bell-pepper", "onion"), "ake hollows on top"),
        (("fry", "hash"), ("egg", "potato", "onion"), "crack in the"),
        (("fry", "omelette"), ("egg", "zucchini", "onion"), "stir once and leave, lid on"),
        (
            ("stir fry", "fried rice"),
            ("egg", Have(food_id="rice", state="cooked"), "carrot"),
            "stirred slowly",
        ),
        (("soup", "egg drop soup"), ("egg", "corn", "scallion"), "thin stream"),
        (("pilaf",), ("egg", "rice", "haddock", "onion"), "cool in cold water and shell"),
    ],
)
def test_eggs_go_in_as_the_dish_has_them(
    wishes: tuple[str, ...], foods: tuple[str | Have, ...], words: str, store: Store
) -> None:
    made = planned(store, *foods, eaters=2.0, wishes=wishes)
    assert words in told(made)


def test_eggs_for_yesterdays_rice_are_set_first_and_folded_in_last(store: Store) -> None:
    """On a heap of cold rice they would never set; common practice, no source."""
    made = planned_in(
        store, "saute pan", Have(food_id="egg", qty=4), Have(food_id="rice", grams=500, state="leftover"),
        "leek", "soy-sauce", eaters=3.0,
    )  # fmt: skip
    eggs = item(made, "egg")
    assert eggs.in_s == 0.0
    assert eggs.out_s <= item(made, "rice").in_s + 1.0
    folded = next(s for s in made.steps if "fold them back in" in s.text)
    assert folded.at_s > item(made, "rice").in_s
    fresh = planned_in(store, "lidded pot", Have(food_id="egg", qty=4), "rice", "leek", eaters=3.0)
    assert "fold them back in" not in told(fresh)


def test_eggs_beside_tomatoes_and_peppers_are_poached_in_them(store: Store) -> None:
    made = planned_in(
        store, "saute pan", Have(food_id="egg", qty=5), Have(food_id="tomato", qty=5), "bell-pepper"
    )
    assert made.settings.method == "saute-simmer"
    assert item(made, "egg").on_top
    assert item(made, "bell-pepper").in_s < item(made, "tomato").in_s


def test_eggs_of_a_braise_are_boiled_and_shelled_first(store: Store) -> None:
    made = planned(store, "pork-belly", Have(food_id="egg", qty=4), "soy-sauce", "radish", eaters=4.0)
    boiled = next(s for s in made.steps if "egg" in s.foods)
    assert boiled.do is Do.PREP
    assert boiled.at_s <= -900
    assert "shell" in boiled.text


def test_plantain_is_fried_kept_out_and_laid_on(store: Store) -> None:
    beans = Have(food_id="black-eyed-pea", state="canned", qty=2, unit="can")
    made = planned_in(store, "saute pan", beans, Have(food_id="plantain", qty=2), TOMATOES, "red-onion")
    said = told(made)
    assert said.index("nto the hot pan, apart") < said.index("into the fat") < said.index("fried plantain")
    assert item(made, "plantain").out_s <= item(made, "tomato").in_s


def test_a_dry_dish_is_turned_in_its_spices_and_ends_dry(store: Store) -> None:
    foods = (
        Have(food_id="potato", grams=400),
        Have(food_id="green-bean", grams=300),
        "mustard-seed",
        "onion",
    )
    made = planned_in(store, "saute pan", *foods, eaters=3.0, wishes=("sabzi",))
    assert "turn in the spices" in told(made)
    assert "do not stir" not in told(made)
    assert "until nothing runs and the spices cling" in told(made)
    assert made.liquid is None or made.liquid.ml <= 150


def test_rice_of_a_congee_falls_apart_in_much_water(store: Store) -> None:
    made = planned(store, Have(food_id="rice", grams=120), "ginger", eaters=2.0, wishes=("dal", "congee"))
    assert item(made, "rice").out_s - item(made, "rice").in_s >= 2400
    assert made.liquid is not None
    assert made.liquid.ml >= 7 * 120


def test_tomatoes_of_a_jollof_are_fried_thick_before_the_stock(store: Store) -> None:
    foods = (Have(food_id="rice", grams=240), TOMATOES, "bell-pepper", "onion")
    made = planned_in(store, "lidded pot", *foods, eaters=3.0, wishes=("pilaf", "jollof"))
    said = told(made)
    assert said.index("fry until thick") < said.index("Pour in")
    assert item(made, "tomato").in_s < item(made, "rice").in_s - 600
    plain = planned_in(store, "lidded pot", *foods, eaters=3.0, wishes=("pilaf",))
    assert made.liquid is not None
    assert plain.liquid is not None
    assert made.liquid.ml > plain.liquid.ml


def test_a_mash_is_drained_and_mashed_before_the_milk(store: Store) -> None:
    foods = (Have(food_id="potato", grams=800), "kale", "milk", "butter")
    said = told(planned(store, *foods, eaters=3.0, wishes=("mash",)))
    assert said.index("Pour off what water is left") < said.index("Mash") < said.index("milk")
    assert "bind the sauce" not in said


def test_eggs_coat_the_pasta_on_the_lowest_heat(store: Store) -> None:
    made = planned(store, Have(food_id="pasta", grams=200), "bacon", Have(food_id="egg", qty=2), "parmesan")
    assert "toss them through until they coat" in told(made)
    assert "no liquid egg left" in told(made)
    assert item(made, "egg").in_s > item(made, "pasta").in_s


def test_a_braise_in_wine_has_a_glass_for_each(store: Store) -> None:
    foods = (Have(food_id="chicken-thigh", qty=6), "bacon", "shallot", "red-wine")
    made = planned_in(store, "lidded pot", *foods, eaters=3.0, wishes=("stew", "coq au vin"))
    assert "300 ml red wine" in told(made)
    half = Have(food_id="red-wine", qty=50, unit="ml", grams=50)
    said = planned_in(store, "lidded pot", *foods[:-1], half, eaters=3.0, wishes=("stew", "coq au vin"))
    assert "300 ml red wine" not in told(said)


@pytest.mark.parametrize(("grams", "spoons"), [(450, "1 tbsp chili powder"), (900, "2 tbsp chili powder")])
def test_a_chilli_is_spiced_by_its_meat(grams: float, spoons: str, store: Store) -> None:
    mince = Have(food_id="ground-turkey", grams=grams)
    beans = Have(food_id="black-bean", state="canned", qty=1)
    made = planned_in(store, "lidded pot", mince, beans, TOMATOES, "onion", "chili-powder", eaters=4.0)
    assert spoons in told(made)


def test_every_dose_is_of_a_dish_that_is_made_so(store: Store) -> None:
    for row in store.table("doses"):
        assert store.food(row["food_id"]).role.value == "season", row


def test_stems_go_in_before_their_leaves(store: Store) -> None:
    made = planned_in(store, "saute pan", "swiss-chard", "mushroom", "garlic", eaters=2.0)
    assert "stems and leaves apart" in told(made)
    assert "stems first, their green for the last 2 min" in told(made)


def test_tomatoes_are_not_fried_down_for_long_while_meat_waits(store: Store) -> None:
    foods = (Have(food_id="chicken-drumstick", qty=12), Have(food_id="rice", grams=500), TOMATOES, "onion")
    made = planned_in(store, "lidded pot", *foods, eaters=6.0, wishes=("pilaf", "jollof"))
    assert softened_min(made) <= 7


def test_thin_raw_meat_is_done_by_the_hot_soup_alone(store: Store) -> None:
    foods = (Have(food_id="steak", grams=250), "rice-noodle", "bean-sprout", "ginger")
    made = planned_in(store, "lidded pot", *foods, eaters=2.0, wishes=("soup", "pho"))
    steak = item(made, "steak")
    assert steak.cut_id == "slice"
    assert steak.lead == ""
    assert steak.out_s - steak.in_s <= 180


def test_a_ratatouille_cooks_in_its_own_juice(store: Store) -> None:
    foods = ("eggplant", "zucchini", "bell-pepper", "onion", TOMATOES)
    made = planned(store, *foods, eaters=3.0, wishes=("stew", "ratatouille"))
    assert made.liquid is None or made.liquid.ml <= 50
    assert item(made, "tomato").out_s - item(made, "tomato").in_s >= 1500


def test_eggs_are_not_cracked_in_where_more_is_stirred_in_after_them(store: Store) -> None:
    made = planned_in(store, "saute pan", "egg", "potato", "spinach", eaters=2.0, wishes=("fry", "hash"))
    after = [i for i in made.items if i.in_s > item(made, "egg").in_s]
    assert ("crack in" in told(made)) == (not after)


@pytest.mark.parametrize("meat", ["chicken-breast", "boneless-chicken-thigh", "turkey-breast"])
def test_boneless_meat_in_a_sauce_is_cut_for_the_fork(meat: str, store: Store) -> None:
    made = planned_in(store, "saute pan", meat, "onion", TOMATOES, eaters=4.0, wishes=("curry",))
    assert item(made, meat).cut_id not in ("whole", "halved")
    assert item(made, meat).size_mm <= 42


def test_rice_of_a_jollof_takes_its_time_on_low_heat(store: Store) -> None:
    foods = (Have(food_id="basmati-rice", grams=320), TOMATOES, "bell-pepper", "onion", "thyme")
    made = planned_in(store, "lidded pot", *foods, eaters=4.0, wishes=("pilaf", "jollof"))
    assert item(made, "basmati-rice").out_s - item(made, "basmati-rice").in_s >= 1200


def test_browned_meat_of_a_curry_does_not_wait_half_cooked(store: Store) -> None:
    foods = (Have(food_id="chicken-breast", grams=500), "onion", "garlic", TOMATOES)
    for wishes in (("curry",), ("stew", "tagine"), ("pilaf", "jollof")):
        planned_in(store, "saute pan", *foods, eaters=3.0, wishes=wishes)


def test_a_paste_is_fried_before_the_liquid_though_nothing_else_is(store: Store) -> None:
    made = planned_in(store, "lidded pot", "shrimp", "rice-noodle", "curry-paste", "coconut-milk", eaters=2.0)
    said = told(made)
    assert said.index("curry paste in 1 tbsp oil") < said.index("coconut milk") < said.index("boil")
    assert said.count("curry paste") == 1 + said.count("curry paste brings") + said.count("curry paste and")


def test_eggs_are_scrambled_into_peppers_and_tomatoes_that_are_soft(store: Store) -> None:
    foods = ("egg", "bell-pepper", "tomato", "onion")
    made = planned_in(store, "saute pan", *foods, eaters=2.0, wishes=("fry", "menemen"))
    assert item(made, "bell-pepper").lead == item(made, "tomato").lead == "softened"
    assert item(made, "egg").in_s - item(made, "bell-pepper").in_s >= 600


def test_dumplings_beside_stock_are_a_soup_and_never_steamed_over_it(store: Store) -> None:
    made = planned(store, Have(food_id="dumpling", qty=16), "bok-choy", "vegetable-stock", eaters=2.0)
    assert made.settings.method == "braise"
    assert made.liquid is not None
    assert made.liquid.ml >= 500
    assert "stock" in made.liquid.what


def test_cream_makes_a_sauce_and_is_not_steamed_over(store: Store) -> None:
    made = planned(store, "haddock", "leek", "potato", "heavy-cream")
    assert made.settings.method not in ("steam", "steam-pan")


def test_noodles_soy_and_greens_are_fried(store: Store) -> None:
    made = planned(store, "shrimp", "egg-noodle", "snow-pea", "soy-sauce", "garlic")
    assert (made.vessel, made.settings.method) == ("saute pan", "saute")
