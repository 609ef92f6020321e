"""Food that must not be eaten is seen in the words of the message. Common practice; USDA FSIS."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Kitchen, Plan
from knowledge.requests import request_of
from knowledge.text import read
from knowledge.text.model import Context, Mode
from knowledge.unfit import gone_off

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=UTC)


def planned(store: Store, text: str) -> Plan:
    request = request_of(read(text, store=store), store=store, kitchen=Kitchen(), now=NOW)
    made = plan(request, store=store)
    assert isinstance(made, Plan)
    return made


@pytest.mark.parametrize(
    ("text", "food", "why"),
    [
        ("rhubarb leaves, potatoes, pork chops", "rhubarb", "poisonous"),
        ("green potatoes, carrots, sausages", "potato", "solanine"),
        ("mushrooms I picked, pasta, chicken thighs", "mushroom", "expert"),
    ],
)
def test_what_is_poisonous_stays_out_with_the_reason(store: Store, text: str, food: str, why: str) -> None:
    left = {x.food: x.why for x in planned(store, text).left_out}
    assert why in left[food]


@pytest.mark.parametrize(
    "text",
    ["rhubarb stalks, potatoes, pork chops", "new potatoes, green beans, sausages", "mushrooms, pasta, eggs"],
)
def test_near_misses_are_planned(store: Store, text: str) -> None:
    assert planned(store, text).left_out == ()


@pytest.mark.parametrize(
    ("text", "food", "why"),
    [
        ("turkey mince 400 g smells sour, potatoes, leeks", "ground-turkey", "smells off"),
        ("haddock 300 g, use by was last Friday, potatoes", "haddock", "use-by"),
        (
            "rice cooked four days ago, eggs, leeks",
            "rice",
            "it was cooked 4 days ago, and in the fridge it keeps 1 day",
        ),
    ],
)
def test_what_is_off_stays_out_and_is_warned_of(store: Store, text: str, food: str, why: str) -> None:
    """USDA FSIS and UK FSA: heat does not destroy the poisons."""
    made = planned(store, text)
    assert any(why in out.why for out in made.left_out)
    assert food not in {item.food_id for item in made.items}
    assert any("thrown away" in c.text or "not eaten" in c.text for c in made.cautions)


@pytest.mark.parametrize(
    ("text", "word"),
    [
        ("a stuffed chicken, carrots", "stuffing"),
        ("chicken thighs that smell off... well it smells off a bit, rice", "thrown away"),
        ("chickpeas from a bulging tin, onions, carrots", "botulism"),
    ],
)
def test_the_message_itself_gives_reason_to_warn(store: Store, text: str, word: str) -> None:
    assert any(word in c.text for c in planned(store, text).cautions)


def test_a_name_never_moves_a_raw_food_to_a_cooked_one(store: Store) -> None:
    for name in ("gammon", "gammon joint", "gammon steak", "raw prawns", "fresh chorizo"):
        food = store.named(name)
        assert food is None or food.doneness != "warm_through", name


def at_the_stove(store: Store, text: str) -> str:
    context = Context(mode=Mode.COOKING, foods=("duck leg", "mushroom", "leek"))
    return gone_off(read(text, store=store, context=context, now=NOW), store=store) or ""


@pytest.mark.parametrize("text", ["the duck smells sour", "duck legs have gone off", "the duck is slimy"])
def test_what_is_off_is_taken_out_while_the_rest_cooks(store: Store, text: str) -> None:
    assert "Take the duck" in at_the_stove(store, text)


@pytest.mark.parametrize(
    "text",
    [
        "the duck is off",
        "duck has turned",
        "mushrooms are slimy",
        "leeks gone green",
        "the duck smells great",
    ],
)
def test_what_happens_over_the_heat_is_no_spoilage(store: Store, text: str) -> None:
    assert at_the_stove(store, text) == ""
