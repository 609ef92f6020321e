"""Enough for everyone and not much more; pieces as heavy and as thick as the cook says.

Portions are common practice, no source. A heavier piece of the same form is thicker by the
cube root of its weight: geometry.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan, words
from knowledge.planner.checking.verify import check
from knowledge.planner.gathering.dinner import scaled
from knowledge.planner.model import Have, Kitchen, Plan, Request, VesselAt
from tests.unit.planner.kitchen import asked, dish
from tests.unit.planner.kitchen import gathered as dinner


def made(store: Store, text: str) -> Plan:
    found = plan(asked(store, text), store=store)
    assert isinstance(found, Plan)
    return found


@pytest.mark.parametrize(
    ("text", "eaters"),
    [
        ("turnips, carrots, sweet potatoes, red onions, halloumi, for 3", 3),
        ("swedes, leeks, potatoes, chestnuts, for 5", 5),
        ("cod fillets, leeks, new potatoes, for 4", 4),
        ("pasta, broccoli, peas, pesto, feta, for 4", 4),
    ],
)
def test_what_is_assumed_is_enough_for_those_who_eat(store: Store, text: str, eaters: int) -> None:
    found = made(store, text)
    assert found.serves == eaters
    assert not any("put bread" in said for said in found.advice)


@pytest.mark.parametrize(
    ("text", "food_id", "low", "high"),
    [
        ("4 kg potatoes, 2 pork chops, for 2", "potato", 300, 700),
        ("3 kg beef mince, carrots, for 2", "ground-beef", 250, 550),
        ("2 kg carrots, 4 chicken thighs, for 2", "carrot", 250, 500),
        ("15 onions, 500 g stewing beef, for 3", "onion", 150, 450),
    ],
)
def test_of_a_heap_two_portions_are_taken_and_the_rest_is_named(
    store: Store, text: str, food_id: str, low: float, high: float
) -> None:
    found = dinner(store, text)
    assert low <= dish(found, food_id).grams <= high
    assert any("keep the other" in said for said in found.assumed)


@pytest.mark.parametrize(
    ("text", "food_id", "grams"),
    [
        ("900 g potatoes, 3 pork chops, for 3", "potato", 900),  # hungry people
        ("1.4 kg chicken thighs, rice, for 4", "chicken-thigh", 1400),
        ("400 g pasta, courgettes, for 4", "pasta", 400),
        ("2.6 kg gammon joint, potatoes, for 4", "gammon", 2600),  # one joint
    ],
)
def test_up_to_a_generous_portion_all_is_used(store: Store, text: str, food_id: str, grams: float) -> None:
    assert dish(dinner(store, text), food_id).grams == grams


def test_little_fish_is_not_made_up_for_by_a_mountain_of_potatoes(store: Store) -> None:
    found = dinner(store, "2 trout fillets, potatoes, chard, for 3")
    assert 180.0 * 3 <= dish(found, "potato").grams <= 300.0 * 3


def test_said_eaters_are_the_number_of_the_plan(store: Store) -> None:
    assert made(store, "8 chicken thighs, 300 g rice, peppers, for 4").serves == 4


def test_a_joint_is_never_cut_down_to_fit(store: Store) -> None:
    one = dish(dinner(store, "2.5 kg gammon joint, potatoes, carrots, for 8"), "gammon")
    assert scaled(one, 0.5).grams == 2500
    vessels = (VesselAt(id="sheet pan"), VesselAt(id="lidded pot", size="7 l"))
    request = asked(store, "2.5 kg gammon joint, 2 kg potatoes, carrots, leeks, for 8")
    found = plan(Request(have=request.have, eaters=8.0, eaters_said=True, kitchen=Kitchen(vessels=vessels)),
                 store=store)  # fmt: skip
    assert isinstance(found, Plan)
    assert next(i for i in found.items if i.food_id == "gammon").grams == 2500


@pytest.mark.parametrize(
    ("text", "food_id", "amount"),
    [
        ("4 sausages, fennel bulb, for 4", "fennel", "1 fennel bulb"),
        ("4 sausages, celery stick, lentils, for 4", "celery", "1 stick of celery"),
        ("4 sausages, onion, for 4", "onion", "1 onion"),
        ("4 sausages, a red pepper, onion, for 3", "bell-pepper", "1 red pepper"),
    ],
)
def test_one_that_is_named_is_one_however_many_eat(
    store: Store, text: str, food_id: str, amount: str
) -> None:
    one = dish(dinner(store, text), food_id)
    assert one.pieces == 1
    assert words.amount(one, "metric").split()[0] == amount.split()[0]


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("4 smoked sausages, white beans, for 4", 60, 120),
        ("6 bratwurst, sauerkraut, for 3", 60, 120),
        ("5 merguez, couscous, for 2", 40, 80),
        ("3 pork chops, cabbage, for 3", 150, 300),
        ("3 lamb chops, peas, for 3", 80, 160),
        ("3 cod fillets, peas, for 3", 120, 200),
        ("9 chicken wings, rice, for 3", 80, 120),
    ],
)
def test_a_piece_weighs_what_it_does_at_the_butcher_s(
    store: Store, text: str, low: float, high: float
) -> None:
    one = dinner(store, text).dishes[0]
    assert one.pieces == int(text.split()[0])
    assert low <= one.grams / int(text.split()[0]) <= high


def test_a_splash_is_little_and_a_bit_as_well(store: Store) -> None:
    found = dinner(store, "4 pork chops, splash of cider, a bit of spinach, for 4")
    cider = next(s for s in found.seasonings if s.food.id == "hard-cider")
    assert cider.grams is not None
    assert 30 <= cider.grams <= 60
    assert dish(found, "spinach").grams <= 130


# --- thickness ------------------------------------------------------------------------------------


def thickness(store: Store, have: Have) -> float:
    kitchen = Kitchen(vessels=(VesselAt(id="sheet pan"),))
    found = plan(Request(have=(have, Have(food_id="zucchini", qty=2.0)), kitchen=kitchen), store=store)
    assert isinstance(found, Plan)
    assert check(found, store=store).unsafe == ()
    return next(i for i in found.items if i.food_id == have.food_id).size_mm


@pytest.mark.parametrize(
    ("food_id", "light", "heavy"),
    [("chicken-breast", 150.0, 260.0), ("salmon", 110.0, 200.0), ("pork-chop", 180.0, 320.0)],
)
def test_a_heavier_piece_is_thicker(store: Store, food_id: str, light: float, heavy: float) -> None:
    thin, thick = (
        thickness(store, Have(food_id=food_id, qty=2.0, unit="piece", grams=2 * g)) for g in (light, heavy)
    )
    assert thick / thin == pytest.approx((heavy / light) ** (1.0 / 3.0), abs=0.08)


def test_a_light_breast_takes_less_time(store: Store) -> None:
    def minutes(grams: float) -> float:
        kitchen = Kitchen(vessels=(VesselAt(id="sheet pan"),))
        have = (Have(food_id="chicken-breast", qty=2.0, unit="piece", grams=grams),)
        found = plan(Request(have=have, kitchen=kitchen), store=store)
        assert isinstance(found, Plan)
        return found.items[0].out_s / 60.0

    assert minutes(280.0) < minutes(520.0) - 3.0


def test_as_thick_as_said(store: Store) -> None:
    assert thickness(store, Have(food_id="pork-chop", qty=2.0, unit="piece", across_mm=35.0)) == 35.0
    assert thickness(store, Have(food_id="salmon", qty=2.0, unit="fillet", across_mm=18.0)) == 18.0


def test_two_of_so_many_grams_are_two(store: Store) -> None:
    found = dish(dinner(store, "2 salmon fillets 240 g, peas, for 2"), "salmon")
    assert found.pieces == 2
    assert found.piece_g == 120.0
