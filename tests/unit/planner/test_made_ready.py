"""Preparation and plain words: what is peeled, which verb, honest minutes, names that do not tire.

Common practice, no source, unless an authority is named beside the check.
"""

from __future__ import annotations

import re
from dataclasses import replace
from functools import partial

import pytest

from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.gathering.peeling import peeling
from knowledge.planner.model import Do, Have, Plan
from tests.unit.planner import kitchen
from tests.unit.planner.kitchen import told

planned = partial(kitchen.planned_in, eaters=3.0)


def prepared(made: Plan) -> str:
    return " ".join(s.text for s in made.steps if s.do is Do.PREP)


PEELED = (
    "potato", "carrot", "parsnip", "sweet-potato", "yam", "cassava", "daikon", "celery-root", "rutabaga",
    "butternut-squash", "ginger", "onion", "garlic",
)  # fmt: skip


@pytest.mark.parametrize("food_id", PEELED)
def test_what_kitchens_peel_is_peeled(store: Store, food_id: str) -> None:
    made = planned(store, "lidded pot", food_id, Have(food_id="chicken-thigh", qty=3.0))
    assert re.search(r"\b[Pp]eel", prepared(made)), prepared(made)


@pytest.mark.parametrize("food_id", ["new-potato", "waxy-potato", "zucchini", "eggplant"])
def test_what_keeps_its_skin_is_not_peeled(store: Store, food_id: str) -> None:
    assert "eel" not in prepared(
        planned(store, "lidded pot", food_id, Have(food_id="chicken-thigh", qty=3.0))
    )


def test_what_comes_cut_or_frozen_is_not_peeled(store: Store) -> None:
    for have in (
        Have(food_id="carrot", grams=300.0, cut="diced"),
        Have(food_id="carrot", grams=300.0, state="frozen"),
    ):
        made = planned(store, "lidded pot", have, "rice", "egg")
        assert "eel" not in prepared(made)


@pytest.mark.parametrize(
    ("food_id", "low_s", "high_s"), [("potato", 55, 75), ("cassava", 85, 105), ("butternut-squash", 85, 105)]
)
def test_peeling_and_dicing_takes_what_it_takes(
    store: Store, food_id: str, low_s: float, high_s: float
) -> None:
    """About 60-70 s for 100 g of potato, 100 s for what has a hide."""
    peel = peeling(store.food(food_id), cut_said="", state="", store=store)
    each_s = 60.0 * (peel.min_per_kg + store.cut("large dice").knife_min_per_kg) / 10.0
    assert low_s <= each_s <= high_s


def test_peeling_counts_in_the_time(store: Store) -> None:
    def start(food_id: str) -> float:
        made = planned(store, "sheet pan", Have(food_id=food_id, grams=900.0), eaters=3.0)
        return sum(s.hands_s for s in made.steps if s.do is Do.PREP)

    assert start("potato") > start("waxy-potato") + 120.0


def test_verbs_and_not_lists(store: Store) -> None:
    tray = planned(store, "sheet pan", Have(food_id="new-potato", grams=400.0), "sausage", "red-onion")
    assert not re.search(r": (halved|quartered|finely chopped)", told(tray))
    assert re.search(r"(Halve|Quarter|Scrub) 400 g new potatoes", told(tray))
    pot = planned(store, "lidded pot", "garlic", "onion", "lentil", "carrot")
    assert re.search(r"finely chop \d cloves of garlic", told(pot))


def test_a_joint_for_cubes_is_cut_into_cubes(store: Store) -> None:
    made = planned(store, "pressure cooker", Have(food_id="pork-shoulder", grams=1800.0), "onion", eaters=8.0)
    item = next(i for i in made.items if i.food_id == "pork-shoulder")
    assert re.search(rf"Cut \S+ k?g pork shoulder into {re.escape(item.cut)}", told(made))


# Food Standards Australia New Zealand, "Cassava and bamboo shoots" (2017): peel and slice, then cook
# thoroughly by baking, frying, boiling or roasting; discard the cooking water.
def test_cassava_is_boiled_first_where_its_water_would_be_eaten(store: Store) -> None:
    stew = planned(store, "lidded pot", Have(food_id="cassava", grams=600.0), "onion", "tomato", "chickpea")
    step = next(s for s in stew.steps if "pour that water away" in s.text)
    assert step.do is Do.PREP
    assert "Peel deeply" in step.text
    assert step.at_s + step.hands_s + 15 * 60 <= 0.0  # the pot is free before the onions go in
    roast = planned(store, "sheet pan", Have(food_id="cassava", grams=600.0), "chicken-thigh")
    assert "pour that water away" not in told(roast)


def test_dried_mushrooms_soak_before_they_go_in(store: Store) -> None:
    made = planned(store, "lidded pot", Have(food_id="dried-shiitake", grams=25.0), "onion", "barley")
    soak = next(s for s in made.steps if "in hot water" in s.text)
    item = next(i for i in made.items if i.food_id == "dried-shiitake")
    assert "keep the water" in soak.text
    assert item.in_s - soak.at_s >= 9.5 * 60


@pytest.mark.parametrize("vessel", ["lidded pot", "sheet pan"])
def test_salted_fish_is_soaked_ahead_and_not_salted_again(store: Store, vessel: str) -> None:
    made = planned(store, vessel, Have(food_id="salt-cod", grams=400.0), "potato", "onion")
    step = next(s for s in made.steps if s.do is Do.PREP and "salt-cod" in s.foods)
    assert "oak a day ahead" in step.text
    assert not re.search(r"(Season|Rub) the salt cod", told(made))


# ------------------------------------------------------------------ words


def test_a_long_name_is_said_once(store: Store) -> None:
    long = Have(food_id="chicken-thigh", qty=6.0, said="boneless skinless chicken thigh")
    made = planned(store, "lidded pot", long, "onion", "carrot")
    assert told(made).count("boneless skinless") == 1
    assert told(made).count("hicken thighs") >= 3


def test_a_name_keeps_what_tells_it_from_another(store: Store) -> None:
    sliced = Have(food_id="tomato", qty=2.0, said="fresh tomato")
    made = planned(store, "lidded pot", sliced, Have(food_id="cherry-tomato", said="tomato"), "onion", "egg")
    assert told(made).count("fresh tomato") > 1


@pytest.mark.parametrize("name", ["cassava", "kasuri methi", "sirloin", "shirataki", "star anise", "speck"])
def test_mass_names_stay_as_they_are(name: str) -> None:
    assert words.plural(name) == name


def test_ribs_florets_and_tofu_are_weighed_and_not_counted(store: Store) -> None:
    ribs = planned(store, "lidded pot", Have(food_id="pork-rib", grams=1000.0), "onion", "potato")
    assert re.search(r"1 kg (pork|spare) ribs", told(ribs))
    tofu = planned(store, "saute pan", Have(food_id="tofu", qty=1.0), "bell-pepper")
    assert re.search(r"\d+ g tofu", told(tofu))


def test_nobody_counts_out_twelve_and_a_half(store: Store) -> None:
    made = planned(
        store, "lidded pot", "spaghetti", "anchovy", "garlic", Have(food_id="tomato", state="canned")
    )
    assert "and a half" not in told(made)


def test_one_chili_is_one(store: Store) -> None:
    made = planned(store, "lidded pot", Have(food_id="scotch-bonnet", qty=1.0), "lentil", "onion")
    assert "scotch bonnets" not in told(made)


def test_a_stick_of_celery_is_one_and_no_stalk_of_a_stick(store: Store) -> None:
    made = planned(
        store, "lidded pot", Have(food_id="celery", qty=2.0, said="celery stick"), "lentil", "onion"
    )
    assert "2 celery sticks" in told(made)


def test_garlic_with_anchovies_is_a_minute_and_not_five(store: Store) -> None:
    made = planned(
        store, "lidded pot", "spaghetti", "garlic", "anchovy", Have(food_id="tomato", state="canned")
    )
    fry = next(s for s in made.steps if "into the fat" in s.text)
    assert fry.hands_s <= 120.0


def test_not_there_yet_is_said_once(store: Store) -> None:
    made = planned(store, "sheet pan", "chicken-thigh", "sausage", "potato")
    assert told(made).count("Not there yet") == 1


def test_tins_and_cured_meat_are_not_checked(store: Store) -> None:
    made = planned(store, "lidded pot", "spaghetti", "anchovy", "prosciutto", "pea")
    assert not [s for s in made.steps if s.do is Do.CHECK]


def test_a_lid_is_on_or_ajar_and_not_both(store: Store) -> None:
    made = planned(store, "lidded pot", "arborio-rice", "onion", "pea")
    assert "Lid ajar, low heat" in told(made)
    assert "Lid on, low heat" not in told(made)
    assert "Lid on: " not in told(made)


def test_vegetables_and_raw_meat_are_oiled_apart(store: Store) -> None:
    made = planned(
        store, "sheet pan", Have(food_id="chicken-thigh", qty=4.0), "potato", "carrot", "red-onion"
    )
    assert "the same" not in told(made)
    rubbed, tossed = ([s for s in made.steps if verb in s.text] for verb in ("Rub ", "Toss "))
    assert {food for s in rubbed for food in s.foods} == {"chicken-thigh"}
    assert {food for s in tossed for food in s.foods} == {"potato", "carrot", "red-onion"}


def test_cups_and_inches_for_those_who_cook_in_them(store: Store) -> None:
    theirs = replace(kitchen.only("lidded pot"), units="us")
    made = planned(store, None, "kale", "white-bean", "onion", kitchen=theirs)
    assert not re.search(r"\d (mm|ml|g)\b", told(made))
