"""One tray full and no more; too little said first; one word, one piece.

Portions are common practice, no source.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.gathering.dinner import gather
from knowledge.planner.model import Have, Kitchen, NoPlan, Plan, VesselAt
from tests.unit.planner.kitchen import asked, dinner, dish, gathered, item, only, planned

TRAY = Kitchen(vessels=(VesselAt(id="sheet pan", size="half sheet"),))


def made(store: Store, text: str) -> Plan:
    found = plan(asked(store, text), store=store)
    assert isinstance(found, Plan)
    return found


# --- one layer ------------------------------------------------------------------------------------


@pytest.mark.parametrize("grams", [1200.0, 1600.0, 2400.0])
def test_a_crowded_tray_gets_less_and_no_larger_pieces(store: Store, grams: float) -> None:
    thighs, onions = Have(food_id="chicken-thigh", qty=8.0), Have(food_id="red-onion", qty=4.0)
    pumpkin = Have(food_id="kabocha-squash", grams=grams)
    full = plan(dinner(thighs, onions, pumpkin, eaters=6.0, kitchen=TRAY), store=store)
    roomy = plan(
        dinner(thighs, Have(food_id=pumpkin.food_id, grams=500.0), eaters=6.0, kitchen=TRAY), store=store
    )
    assert isinstance(full, Plan)
    assert isinstance(roomy, Plan)
    assert full.fill <= 1.0
    assert item(full, pumpkin.food_id).size_mm <= item(roomy, pumpkin.food_id).size_mm
    assert any("second tray" in said or said.startswith("two rounds") for said in full.assumed)


def test_on_a_tray_what_was_assumed_gives_way_first(store: Store) -> None:
    have = (
        Have(food_id="chicken-leg", qty=6.0),
        Have(food_id="parsnip", grams=400.0),
        Have(food_id="red-onion", several=True),
    )
    full = plan(dinner(*have, eaters=6.0, kitchen=only("sheet pan", "40 x 30 cm")), store=store)
    assert isinstance(full, Plan)
    taken = {i.food_id: i.grams for i in full.items}
    meant = {d.food.id: d.grams for d in gather(full.request, store=store).dishes}
    assert taken["red-onion"] / meant["red-onion"] <= taken["parsnip"] / meant["parsnip"]


# --- far too little -------------------------------------------------------------------------------


@pytest.mark.parametrize("text", ["a carrot and a leek for five", "60 g mushrooms, 1 tomato, for 3"])
def test_a_bite_of_vegetables_for_many_is_refused(store: Store, text: str) -> None:
    answer = plan(asked(store, text), store=store)
    assert isinstance(answer, NoPlan)
    assert answer.reasons[0].startswith("far too little for")
    assert answer.nearest is not None


@pytest.mark.parametrize("text", ["1 pork chop, 2 carrots, for 5", "70 g rice, 1 onion, for 4"])
def test_far_too_little_is_the_first_thing_said(store: Store, text: str) -> None:
    found = made(store, text)
    assert found.notes[0].startswith("far too little for")
    assert not any("feeds about" in said for said in found.advice)


@pytest.mark.parametrize(
    "text", ["a pork chop and 2 potatoes", "mushrooms, tomatoes, for 3", "500 g peas for 2"]
)
def test_what_is_enough_or_not_counted_is_no_alarm(store: Store, text: str) -> None:
    assert not any(note.startswith("far too little") for note in made(store, text).notes)


# --- one ------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "food_id", "low", "high"),
    [
        ("aubergine, lamb mince 500 g, for 2", "eggplant", 400.0, 500.0),
        ("red pepper, beef mince 600 g, rice, for 6", "bell-pepper", 80.0, 170.0),
        ("onion, 8 sausages, lentils, for 8", "onion", 80.0, 160.0),
        ("large potato, 3 hake fillets, for 3", "potato", 300.0, 400.0),
        ("leek, 6 chicken thighs, for 6", "leek", 80.0, 200.0),
    ],
)
def test_a_bare_word_is_one_whole_piece(
    store: Store, text: str, food_id: str, low: float, high: float
) -> None:
    assert low <= dish(gathered(store, text), food_id).grams <= high


@pytest.mark.parametrize(
    ("text", "food_id", "least"),
    [
        ("aubergines, lamb mince 500 g, for 4", "eggplant", 600.0),
        ("broccoli, 4 hake fillets, for 4", "broccoli", 450.0),
        ("potato, 4 hake fillets, for 4", "potato", 600.0),
    ],
)
def test_several_and_what_is_never_counted_grow_with_those_who_eat(
    store: Store, text: str, food_id: str, least: float
) -> None:
    assert dish(gathered(store, text), food_id).grams >= least


def test_a_handful_of_radishes_weighs_what_a_bunch_says(store: Store) -> None:
    """A bunch of ten or twelve is 150 g without its leaves: common practice, no source."""
    assert 100.0 <= dish(gathered(store, "10 radishes, 2 hake fillets"), "radish").grams <= 160.0


def test_bread_that_is_there_is_not_asked_for(store: Store) -> None:
    made = planned(store, Have(food_id="clam", grams=700.0), "shallot", "bread", eaters=2.0)
    assert not any("bread" in line for line in made.advice)
