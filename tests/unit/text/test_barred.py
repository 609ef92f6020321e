"""Lists of what an allergy bars, and kitchens in which something does not work tonight."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen
from knowledge.text import read
from knowledge.tonight import kitchen_of


def barred(text: str, store: Store) -> set[str]:
    reading = read(text, store=store)
    return {*reading.excluded, *reading.diet}


@pytest.mark.parametrize(
    "said",
    [
        "allergic to hazelnuts, lobster and mustard",
        "Lobster, hazelnut and mustard allergies",
        "allergies: mustard, hazelnut, lobster",
        "Allergies - lobster / hazelnut / mustard",
        "my daughter has a hazelnut, mustard and lobster allergy",
        "our guest cannot eat lobster or hazelnuts or mustard",
        "nan is intolerant to mustard & hazelnuts + lobster",
        "severely allergic to mustard as well as hazelnuts, and lobster too",
        "hazelnuts, lobster and mustard make him ill",
        "allergens:\n- lobster\n- mustard\n- hazelnuts",
    ],
)
@pytest.mark.parametrize(
    "fridge",
    ["500 g pork, 2 leeks, rice", "leeks and rice, some pork", "in the fridge: pork chops, leek, rice"],
)
def test_every_member_of_an_allergy_list_is_barred(said: str, fridge: str, store: Store) -> None:
    for text in (f"{said}. {fridge}", f"{fridge}. {said}"):
        reading = read(text, store=store)
        assert {"hazelnut", "lobster", "mustard"} <= set(reading.excluded), text
        names = {item.name for item in reading.items}
        assert not names & {"hazelnut", "lobster", "mustard"}, text
        assert {"leek", "rice"} <= names, text


@pytest.mark.parametrize(
    ("text", "bars"),
    [
        ("he can't do gluten or eggs. 300 g pork, rice", {"no gluten", "egg"}),
        ("no lactose, celery or nuts please: 300 g pork, rice", {"no dairy", "celery", "no nuts"}),
        ("soy and dairy intolerance in the house, 4 sausages, rice", {"no soy", "no dairy"}),
        ("coeliac, and allergic to molluscs and celery. pork, rice", {"no gluten", "no shellfish", "celery"}),
        ("dairy, sesame and egg free. 4 pork chops, rice", {"no dairy", "sesame seed", "egg"}),
        ("my aunt has a mango, papaya and mustard allergy. pork, rice", {"mango", "papaya", "mustard"}),
    ],
)
def test_groups_in_a_list_are_diets_and_foods_are_named(text: str, bars: set[str], store: Store) -> None:
    assert bars <= barred(text, store)


@pytest.mark.parametrize(
    ("text", "at_hand"),
    [
        ("allergic to almonds, pork chops, rice and leeks for 2", {"pork chop", "rice", "leek"}),
        ("allergic to almonds and have 2 eggs, rice, milk", {"egg", "rice", "milk"}),
        ("milk, eggs, leeks, and a sesame allergy to mind", {"milk", "egg", "leek"}),
        ("no almonds, eggs, milk, flour, 3 leeks", {"egg", "milk", "flour", "leek"}),
        ("free range eggs, milk, leeks for 2", {"egg", "milk", "leek"}),
        (
            "can't have celery, eggs 6, butter 100 g, leeks",
            {"egg", "butter", "leek"},
        ),  # what is counted is there
        ("wife is allergic to crab, 300 g cod, 2 eggs and rice", {"cod", "egg", "rice"}),
    ],
)
def test_a_fridge_beside_an_allergy_stays_at_hand(text: str, at_hand: set[str], store: Store) -> None:
    assert at_hand <= {item.name for item in read(text, store=store).items}


def kitchen(text: str, store: Store) -> Kitchen:
    return kitchen_of(read(text, store=store), Kitchen(), store=store)


@pytest.mark.parametrize(
    "said",
    [
        "oven's had it", "the oven has conked out", "our oven is on the fritz", "oven's being mended",
        "the oven stopped working", "oven died on sunday", "can't use my oven", "oven door is broken",
    ],
)  # fmt: skip
def test_an_oven_that_does_not_work_is_no_oven(said: str, store: Store) -> None:
    text = f"{said}. 4 trout, 500 g potatoes"
    assert "sheet pan" in read(text, store=store).not_vessel
    assert kitchen(text, store).oven_max_degC == 0.0
    assert not kitchen(text, store).broiler


@pytest.mark.parametrize(
    ("said", "left"),
    [
        ("the hob's packed in", {"sheet pan"}),
        ("no working stove here", {"sheet pan"}),
        ("hob is dead, but there is an electric pressure cooker", {"sheet pan", "pressure cooker"}),
        ("I only have a wok", {"saute pan"}),
        ("only got a casserole dish and a baking tray", {"lidded pot", "sheet pan"}),
        ("only salt and oil in the cupboard", {"sheet pan", "saute pan", "lidded pot", "pressure cooker"}),
    ],
)
def test_only_what_works_is_cooked_in(said: str, left: set[str], store: Store) -> None:
    assert {v.id for v in kitchen(f"{said}. 4 trout, 500 g potatoes", store).vessels} == left


@pytest.mark.parametrize("said", ["the cooker's seal is cracked", "lid of the pressure cooker is missing"])
def test_a_cooker_without_its_lid_is_none(said: str, store: Store) -> None:
    assert read(f"{said}, 500 g beef, 2 onions", store=store).not_vessel == ("pressure cooker",)


def test_a_list_before_the_word_allergy_bars_all_of_it_where_it_stands_alone(store: Store) -> None:
    assert set(read("mango, celery allergy. cod, rice", store=store).excluded) == {"mango", "celery"}
    assert read("cod, rice, mango allergy", store=store).excluded == ("mango",)


@pytest.mark.parametrize(
    ("text", "barred"),
    [
        ("she comes out in hives with mango. pork, rice", "mango"),
        ("my son swells up after kiwi. pork, rice", "kiwi"),
        ("pork, rice. not got: celery", "celery"),
        ("pork, rice, no longer got celery", "celery"),
        ("celery? never again. have pork, rice", "celery"),
    ],
)
def test_what_makes_ill_or_is_not_there_is_barred(store: Store, text: str, barred: str) -> None:
    reading = read(text, store=store)
    assert reading.excluded == (barred,)
    assert barred not in {item.name for item in reading.items}


def test_children_who_are_not_allowed_nuts_get_none(store: Store) -> None:
    assert read("the kids aren't allowed nuts. pork, rice", store=store).diet == ("no nuts",)
