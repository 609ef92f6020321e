"""Which food leaves and which comes in, in whatever order a cook says it."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.text import read
from knowledge.text.model import Context, Kind, Mode


@pytest.mark.parametrize(
    ("text", "frm", "to"),
    [
        ("the market only had turbot so goodbye halibut", "halibut", "turbot"),
        ("fennel was past saving, celery will go in", "fennel", "celery"),
        ("swap tempeh in for the tofu", "tofu", "tempeh"),
        ("you wrote swede, I bought celeriac", "rutabaga", "celery root"),
        ("no rosemary on the bush, thyme is all we have", "rosemary", "thyme"),
        ("they sent farro when I'd ordered barley", "barley", "farro"),
        ("out of ghee. butter?", "ghee", "butter"),
        ("statt Reis lieber Kartoffeln", "rice", "potato"),
        ("au lieu du riz, quinoa", "rice", "quinoa"),
    ],
)
def test_what_leaves_is_told_from_what_comes_in(store: Store, text: str, frm: str, to: str) -> None:
    reading = read(text, store=store)
    assert reading.kind is Kind.SWAP
    assert reading.swap is not None
    assert (reading.swap.frm, reading.swap.to) == (frm, to)


@pytest.mark.parametrize(
    ("text", "food", "state"),
    [
        ("tinned peaches where the plan wants fresh", "peach", "canned"),
        ("would frozen okra do as well as fresh", "okra", "frozen"),
        ("dried chickpeas rather than the tinned", "chickpea", "dried"),
        ("the fresh basil is slimy, dried basil instead", "basil", "dried"),
    ],
)
def test_a_food_can_make_way_for_itself_in_another_state(
    store: Store, text: str, food: str, state: str
) -> None:
    reading = read(text, store=store)
    assert reading.swap is not None
    assert (reading.swap.frm, reading.swap.to) == (food, food)
    assert [(item.name, item.state) for item in reading.items] == [(food, state)]


@pytest.mark.parametrize(
    ("text", "frm", "to"),
    [
        ("use the turkey legs, not the breasts", "turkey breast", "turkey leg"),
        ("lamb shoulder instead of the shanks", "lamb shank", "lamb shoulder"),
        ("green lentils not red", "red lentil", "green lentil"),
        (
            "sweet potatoes instead of potatoes",
            "potato",
            "sweet potato",
        ),
    ],
)
def test_half_a_name_is_completed_by_the_food_it_is_set_against(
    store: Store, text: str, frm: str, to: str
) -> None:
    reading = read(text, store=store)
    assert reading.swap is not None
    assert (reading.swap.frm, reading.swap.to) == (frm, to)


def test_an_allergy_named_beside_a_swap_is_no_side_of_it(store: Store) -> None:
    reading = read("swap the cashews out, nut allergy at the table", store=store)
    assert reading.swap is not None
    assert (reading.swap.frm, reading.swap.to) == ("cashew", None)


@pytest.mark.parametrize(
    ("text", "to", "state"),
    [
        ("what if I used frozen chard", "swiss chard", "frozen"),
        ("ok, what if we had turnips?", "turnip", None),
        ("can I use tinned lentils?", "lentil", "canned"),
        ("could we just use trout instead", "trout", None),
    ],
)
def test_a_food_asked_about_beside_a_plan_comes_in(
    store: Store, text: str, to: str, state: str | None
) -> None:
    context = Context(mode=Mode.PLANNED, foods=("cod", "potato", "swiss chard"))
    reading = read(text, store=store, context=context)
    assert reading.kind is Kind.SWAP
    assert reading.swap is not None
    assert (reading.swap.frm, reading.swap.to) == (None, to)
    assert [i.state for i in reading.items] == ([state] if state else [])


@pytest.mark.parametrize(
    "text", ["can i use my pressure cooker for rice", "can I use chicken left out overnight"]
)
def test_what_is_asked_of_the_world_stays_a_question(store: Store, text: str) -> None:
    context = Context(mode=Mode.PLANNED, foods=("cod", "potato", "swiss chard"))
    assert read(text, store=store, context=context).kind is Kind.QUESTION
