"""Cautions for those at this table: small children, diets that stock may break, sausages of a named meat.

Round, firm food cut lengthwise for under-fives: UK National Health Service, advice on choking, from
memory. Hidden allergens in stock: EU 1169/2011. The rest is common practice.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Have, Kitchen, Plan, Request, VesselAt

BANGERS = (
    Have(food_id="sausage", qty=6.0, said="pork sausage"),
    Have(food_id="cherry-tomato", grams=300.0),
    Have(food_id="zucchini", qty=2.0),
    Have(food_id="chili-flakes"),
)
SOAKED = Request(
    have=(
        Have(food_id="chicken-thigh", qty=4.0),
        Have(food_id="barley", grams=200.0),
        Have(food_id="carrot"),
    ),
    kitchen=Kitchen(vessels=(VesselAt(id="lidded pot"),)),
)


def planned(store: Store, request: Request) -> Plan:
    made = plan(request, store=store)
    assert isinstance(made, Plan)
    return made


def cautions(made: Plan) -> str:
    return " ".join(c.text for c in made.cautions)


def test_for_a_small_child_round_food_is_cut_and_chili_waits_at_the_table(store: Store) -> None:
    made = planned(store, Request(have=BANGERS, youngest=3.0))
    said = cautions(made)
    assert "cut the" in said
    assert "lengthwise" in said
    assert "not in the common pan" in said
    at_the_table = [s.text for s in made.steps if "chili" in s.text.lower()]
    assert len(at_the_table) == 1
    assert "On the side" in at_the_table[0]


@pytest.mark.parametrize("youngest", [None, 9.0])
def test_nobody_else_is_told_so(store: Store, youngest: float | None) -> None:
    made = planned(store, Request(have=BANGERS, youngest=youngest))
    assert "lengthwise" not in cautions(made)
    assert "On the side" not in " ".join(s.text for s in made.steps)


@pytest.mark.parametrize(
    ("diets", "allergies", "word"),
    [
        (("no gluten",), (), "gluten"),
        (("no dairy",), (), "milk"),
        ((), ("celery",), "celery"),
        (("vegan",), (), ""),
    ],
)
def test_stock_is_checked_for_what_a_diet_bars(
    store: Store, diets: tuple[str, ...], allergies: tuple[str, ...], word: str
) -> None:
    request = replace(SOAKED, diets=diets, allergies=allergies)
    found = plan(request, store=store)
    made = found if isinstance(found, Plan) else found.nearest
    if made is None or made.liquid is None or "stock" not in made.liquid.what:
        return
    assert "Check the stock for" in cautions(made)
    assert word in cautions(made)


def test_without_such_a_diet_nobody_speaks_of_the_stock(store: Store) -> None:
    assert "Check the stock" not in cautions(planned(store, SOAKED))


def test_a_named_meat_is_not_called_unnamed(store: Store) -> None:
    named = cautions(planned(store, Request(have=BANGERS)))
    assert "not named" not in named
    bare = tuple(replace(h, said="") for h in BANGERS)
    assert "not named" in cautions(planned(store, Request(have=bare)))


def test_only_what_foams_is_said_to_foam(store: Store) -> None:
    cooker = Kitchen(vessels=(VesselAt(id="pressure cooker"),))
    beef = Request(have=(Have(food_id="stew-beef", grams=600.0), Have(food_id="carrot")), kitchen=cooker)
    lentils = replace(beef, have=(Have(food_id="green-lentil", grams=200.0), Have(food_id="carrot")))
    assert "foam" not in cautions(planned(store, beef))
    assert "lentils foam and swell" in cautions(planned(store, lentils))


@pytest.mark.parametrize("food_id", ["feta", "halloumi", "cod", "anchovy"])
def test_what_brings_protein_is_not_called_light(store: Store, food_id: str) -> None:
    made = planned(store, Request(have=(Have(food_id="parsnip", qty=4.0), Have(food_id=food_id))))
    assert not any("light on protein" in said for said in made.advice)


def test_a_bird_is_not_offered_for_a_pan_whose_lid_stays_open(store: Store) -> None:
    made = planned(
        store,
        Request(
            have=(Have(food_id="whole-chicken", grams=1600.0), Have(food_id="potato", grams=900.0)),
            eaters=4.0,
        ),
    )
    assert "saute pan" not in {made.vessel, *(a.vessel for a in made.alternatives)}
