"""Every cut has its verb, what is not eaten in one piece is cut, and seasonings follow the dish.

Common practice, no source; fat poured off mince from 15 g in 100 g.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner.model import Caution, Do, Have, Plan
from tests.unit.planner.kitchen import item, told
from tests.unit.planner.kitchen import planned_in as planned


def prep(made: Plan) -> str:
    return " ".join(s.text for s in made.steps if s.do is Do.PREP).lower()


@pytest.mark.parametrize("vessel", ["saute pan", "lidded pot"])
@pytest.mark.parametrize("sausage", ["chorizo", "kielbasa"])
def test_a_sausage_for_its_flavour_is_sliced(store: Store, vessel: str, sausage: str) -> None:
    made = planned(store, vessel, sausage, "white-rice", "bell-pepper", "onion")
    assert item(made, sausage).cut_id == "thick coin"
    assert "into 12 mm coins" in prep(made)


def test_what_is_cut_says_so_whatever_its_state(store: Store) -> None:
    made = planned(store, "sheet pan", Have(food_id="kielbasa", state="cooked"), "potato", "cabbage")
    mine = item(made, "kielbasa")
    if mine.cut_id != "whole":
        assert f"into {mine.cut}" in prep(made)


def test_cold_chicken_is_torn_and_cold_beef_sliced(store: Store) -> None:
    chicken = Have(food_id="chicken", state="leftover", grams=300.0, said="roast chicken")
    made = planned(store, "saute pan", chicken, "bell-pepper", "pea")
    assert item(made, "chicken").cut == "torn"
    assert "tear 300 g roast chicken" in prep(made)


def test_fajitas_are_strips(store: Store) -> None:
    made = planned(store, None, "chicken-breast", "bell-pepper", "onion", "cumin", wishes=("fajita",))
    assert item(made, "chicken-breast").cut_id == "strip"
    assert item(made, "onion").cut_id == "slice"
    assert "cumin" in next(s.text for s in made.steps if "Season the chicken" in s.text)


def test_a_whole_hot_chili_is_fished_out(store: Store) -> None:
    made = planned(store, "lidded pot", "chicken-thigh", "sweet-potato", "onion", "scotch-bonnet")
    assert item(made, "scotch-bonnet").cut_id == "whole"
    assert "leave whole" in prep(made)
    assert "Fish out the scotch bonnet" in told(made)
    assert any("eyes" in c.text for c in made.cautions)


@pytest.mark.parametrize(("mince", "poured"), [("ground-lamb", True), ("ground-turkey", False)])
def test_the_fat_of_mince_is_poured_off(store: Store, mince: str, poured: bool) -> None:
    made = planned(store, "lidded pot", Have(food_id=mince, grams=500.0), "onion", "potato")
    assert ("Pour off" in told(made)) is poured


def test_a_curry_takes_its_powder_by_the_head(store: Store) -> None:
    foods = ("chickpea", "potato", "onion", "curry-powder")
    curry = planned(store, "lidded pot", *foods, eaters=4.0, wishes=("curry",))
    assert "4 tsp curry powder" in told(curry) or "1 1/2 tbsp curry powder" in told(curry)


def test_sugar_and_paste_come_after_the_high_heat(store: Store) -> None:
    foods = ("ground-beef", "cabbage", "carrot", "gochujang")
    made = planned(store, "saute pan", *foods, wishes=("stir fry",))
    paste = next(s.at_s for s in made.steps if "gochujang" in s.text)
    assert max(i.out_s for i in made.items) - paste <= 240.0


def test_a_hint_goes_with_the_dish(store: Store) -> None:
    made = planned(store, "saute pan", "chicken-breast", "broccoli", wishes=("stir fry",))
    assert not any(word in made.flavour for word in ("thyme", "mustard", "parsley", "rosemary"))


def test_beans_under_pressure_need_no_other_warning(store: Store) -> None:
    alert = Caution(text="Dry beans are never quick: soak them.", source="FDA")
    black = Have(food_id="black-bean", state="dried", grams=300.0)
    sealed = planned(store, "pressure cooker", black, "onion", alerts=(alert,))
    assert alert not in sealed.cautions
    assert any("full time at pressure" in c.text for c in sealed.cautions)
    simmered = planned(store, "lidded pot", black, "onion", alerts=(alert,))
    assert alert in simmered.cautions


def test_one_stays_one(store: Store) -> None:
    """ "A red pepper" for four is one, however hungry they are."""
    rice = Have(food_id="white-rice", grams=200.0)
    made = planned(store, "lidded pot", rice, "bell-pepper", "onion", eaters=4.0)
    assert item(made, "bell-pepper").grams <= 130.0
