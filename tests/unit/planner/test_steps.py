"""What the steps tell the hands: nothing forgotten, nothing dangerous, nothing twice.

Values are common practice (no source) unless an authority is named beside the check.
"""

from __future__ import annotations

from dataclasses import replace
from functools import partial

import pytest

from knowledge.foods.model import Role
from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Do, Have, NoPlan, Plan, Request, Step
from knowledge.planner.writing.handling import subjects
from tests.unit.planner import kitchen
from tests.unit.planner.kitchen import only

planned = partial(kitchen.planned, eaters=2.0)


def of(made: Plan, do: Do) -> list[Step]:
    return [s for s in made.steps if s.do is do]


def told(made: Plan) -> str:
    return " ".join(s.text for s in made.steps).lower()


def warned(made: Plan) -> str:
    return " ".join(c.text for c in made.cautions).lower()


# Dry beans: FDA, Bad Bug Book 2nd ed., phytohaemagglutinin: soak at least 5 h, pour the water
# away, boil in fresh water for at least 30 min.
@pytest.mark.parametrize("vessel", ["lidded pot", "saute pan"])
@pytest.mark.parametrize("state", ["dried", "raw", "soaked"])
def test_beans_boil_hard_for_half_an_hour_in_the_timeline(store: Store, vessel: str, state: str) -> None:
    made = planned(store, Have(food_id="kidney-bean", grams=200, state=state), "onion", kitchen=only(vessel))
    boil = next(s for s in of(made, Do.ADD) if "kidney-bean" in s.foods)
    down = next(s for s in of(made, Do.HEAT) if "kidney-bean" in s.foods)
    assert "boil hard" in boil.text
    assert boil.safety
    assert down.safety
    assert down.at_s - boil.at_s == pytest.approx(30 * 60, abs=2)
    assert "poisonous" in warned(made)


def test_soaking_water_is_thrown_away_and_tins_need_no_boil(store: Store) -> None:
    soaked = planned(store, Have(food_id="kidney-bean", grams=200, state="soaked"), "onion")
    assert "throw the soaking water away" in told(soaked)
    assert "not soaked" not in " ".join(soaked.assumed)
    tinned = planned(store, Have(food_id="kidney-bean", qty=1, unit="can", state="canned"), "onion", "carrot")
    assert "boil hard" not in told(tinned)
    assert "poisonous" not in warned(tinned)


def test_soaked_beans_take_less_time_than_dry_ones(store: Store) -> None:
    dry, soaked = (
        planned(
            store, Have(food_id="chickpea", grams=200, state=state), "onion", kitchen=only("pressure cooker")
        )
        for state in ("dried", "soaked")
    )
    assert soaked.total_s < dry.total_s - 300
    assert soaked.liquid is not None
    assert dry.liquid is not None
    assert soaked.liquid.ml <= dry.liquid.ml


def test_the_plan_fails_the_check_when_the_boil_is_cut_short(store: Store) -> None:
    made = planned(store, Have(food_id="kidney-bean", grams=200, state="dried"), kitchen=only("lidded pot"))
    short = tuple(replace(s, at_s=s.at_s - 600) if s.do is Do.HEAT and s.safety else s for s in made.steps)
    assert any("boiled hard" in p for p in check(replace(made, steps=short), store=store).problems)


SEASONED = (
    "olive-oil", "butter", "turmeric", "cumin", "curry-powder", "thyme", "bay-leaf", "soy-sauce",
    "heavy-cream", "yogurt", "mustard", "honey", "parmesan", "parsley", "lemon", "white-wine", "gravy",
    "vegetable-stock", "sesame-seed",
)  # fmt: skip


@pytest.mark.parametrize("vessel", ["sheet pan", "saute pan", "lidded pot", "pressure cooker"])
@pytest.mark.parametrize("base", [("chicken-thigh", "potato"), ("chicken-thigh", "onion", "carrot")])
def test_every_seasoning_and_side_is_named_in_a_step(
    store: Store, vessel: str, base: tuple[str, ...]
) -> None:
    extra = [f for f in SEASONED if f in store.food_ids()] + ["lettuce"]
    made = planned(store, *base, *extra, kitchen=only(vessel))
    for food_id in extra:
        food = store.food(food_id)
        if food.role is not Role.COOK:
            assert food.name in told(made), food_id


def test_a_forgotten_seasoning_fails_the_check(store: Store) -> None:
    made = planned(store, "chicken-thigh", "potato", "turmeric", kitchen=only("sheet pan"))
    silent = tuple(replace(s, text=s.text.replace("turmeric", "")) for s in made.steps)
    assert "turmeric is in no step" in check(replace(made, steps=silent), store=store).problems


@pytest.mark.parametrize(
    "foods",
    [
        ("cod", "potato"), ("chicken-thigh", "carrot"), ("whole-chicken", "potato"), ("sausage", "onion"),
        ("pork-chop", "apple"), ("ribeye-steak", "mushroom"), ("salmon", "rice", "pea"),
        ("ground-beef", "rice"), ("lamb-leg", "potato"), ("mussel", "onion"), ("egg", "potato"),
    ],
)  # fmt: skip
def test_the_check_comes_once_food_is_done_and_before_it_leaves(store: Store, foods: tuple[str, ...]) -> None:
    made = planned(store, *foods)
    for item in made.items:
        if item.done.core_degC is None:
            continue
        checks = [s for s in of(made, Do.CHECK) if item.food_id in s.foods]
        assert len(checks) == 1
        assert item.done.at_s - 1.0 <= checks[0].at_s <= item.out_s + 1.0
        assert checks[0].safety


@pytest.mark.parametrize(
    "food_id", ["sausage", "chorizo", "ham", "cooked-shrimp", "blood-sausage", "pork-chop"]
)
def test_step_and_caution_name_one_temperature(store: Store, food_id: str) -> None:
    made = planned(store, food_id, "potato")
    shown = {i.done.core_degC for i in made.items if i.food_id == food_id}
    said = [c.text for c in made.cautions if "at least" in c.text]
    for degC in shown - {None}:
        assert all(f"{degC:.0f} °C" in text for text in said)


# Signs printed by USDA FSIS beside the minimums: shells open, flesh pearly or white, yolk and white firm.
@pytest.mark.parametrize(
    ("food_id", "sign"),
    [("mussel", "open"), ("clam", "open"), ("shrimp", "opaque"), ("egg", "firm"), ("ground-beef", "no pink")],
)
def test_what_no_thermometer_can_hold_is_known_by_its_looks(store: Store, food_id: str, sign: str) -> None:
    made = planned(store, food_id, "onion", kitchen=only("saute pan"))
    text = next(s.text for s in of(made, Do.CHECK))
    assert sign in text
    assert "thickest" not in text


def test_shells_are_scrubbed_and_dead_ones_thrown_away(store: Store) -> None:
    made = planned(store, "mussel", "shallot", "white-wine", kitchen=only("saute pan"))
    assert "open when tapped" in told(made)
    assert "stay shut" in told(made)
    assert "pat dry" not in told(made)


@pytest.mark.parametrize("food_id", ["chicken-liver", "kidney", "beef-liver", "pork-chop", "stew-beef"])
def test_nobody_is_invited_to_pink_liver_or_pork(store: Store, food_id: str) -> None:
    assert "pinker" not in warned(planned(store, food_id, "onion"))


def test_a_beef_steak_says_that_the_published_minimum_is_planned(store: Store) -> None:
    assert "pinker" in warned(planned(store, "ribeye-steak", "mushroom"))


def test_stew_meat_has_no_line_about_its_minimum(store: Store) -> None:
    made = planned(store, Have(food_id="pork-shoulder", grams=700), "onion", kitchen=only("pressure cooker"))
    assert "at least" not in warned(made)


def test_one_line_about_hands_and_boards(store: Store) -> None:
    made = planned(store, "chicken-thigh", "sausage", "potato")
    assert sum("soap" in c.text for c in made.cautions) == 1


# USDA FSIS: meat cooks from frozen in half as long again; whole birds and big joints thaw first.
def test_frozen_pieces_stay_as_bought(store: Store) -> None:
    made = planned(store, Have(food_id="chicken-breast", grams=500, state="frozen"), "rice")
    item = next(i for i in made.items if i.food_id == "chicken-breast")
    assert item.cut_id == "whole"
    assert "thaw" in warned(made)


@pytest.mark.parametrize("food_id", ["whole-chicken", "pork-leg"])
def test_a_frozen_bird_or_joint_is_thawed_first(store: Store, food_id: str) -> None:
    have = (Have(food_id=food_id, state="frozen"), Have(food_id="potato"), Have(food_id="carrot"))
    made = plan(Request(have=have), store=store)
    assert isinstance(made, NoPlan)
    assert "thaw" in made.reasons[0]
    assert made.nearest is not None
    assert food_id not in {i.food_id for i in made.nearest.items}


def test_sauces_get_hot_and_cream_does_not_boil(store: Store) -> None:
    made = planned(
        store, "chicken-thigh", "potato", Have(food_id="heavy-cream", grams=150), kitchen=only("saute pan")
    )
    late = next(s for s in made.steps if "heavy cream" in s.text)
    serve = of(made, Do.SERVE)[0]
    assert late.do is Do.ADD
    assert late.at_s < serve.at_s
    assert "not boiling" in late.text


def test_nothing_is_scraped_loose_when_nothing_was_browned(store: Store) -> None:
    made = planned(store, "barley", "mushroom", "leek", kitchen=only("lidded pot"))
    assert "scrape" not in told(made)


def test_risotto_rice_is_not_rinsed_and_other_rice_is(store: Store) -> None:
    assert "do not rinse" in told(planned(store, "arborio-rice", "onion", "pea"))
    assert "rinse" in told(planned(store, "basmati-rice", "onion", "pea"))


def test_salty_food_is_tasted_before_salting(store: Store) -> None:
    assert "before you salt" in told(planned(store, "gammon", "potato"))
    assert "before you salt" not in told(planned(store, "cod", "potato"))


def test_skin_lies_up_only_where_there_is_skin(store: Store) -> None:
    assert "skin side up" in told(planned(store, "chicken-thigh", "potato", kitchen=only("sheet pan")))
    assert "skin side up" not in told(planned(store, "lamb-leg", "potato", kitchen=only("sheet pan")))


def test_steps_are_in_order_and_out_comes_before_in(store: Store) -> None:
    made = planned(store, "shrimp", "zucchini", "onion", kitchen=only("saute pan"))
    times = [s.at_s for s in made.steps]
    assert times == sorted(times)
    assert all(s.at_s == round(s.at_s) for s in made.steps)


def test_the_handling_table_speaks_of_things_that_exist(store: Store) -> None:
    foods = store.foods()
    known = {
        "food": {f.id for f in foods},
        "group": {f.group for f in foods},
        "class": {f.doneness for f in foods},
        "animal": {f.animal for f in foods},
        "part": {f.part for f in foods},
        "state": {"canned", "frozen", "raw", "leftover", "cooked", "dried", "soaked"},
    }
    assert [pair for pair in subjects(store) if pair[1] not in known[pair[0]]] == []
