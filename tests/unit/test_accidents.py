"""Accidents are heard in any words, and kitchen talk that sounds like one is not taken for one."""

from __future__ import annotations

import pytest

from knowledge.accidents import first_aid


@pytest.mark.parametrize(
    ("text", "first"),  # after the advice of the NHS and of fire services, from memory
    [
        ("there is a fire in the oven", "Never water on burning fat"),
        ("grease fire help", "Never water on burning fat"),
        ("the pan is ON FIRE", "Never water on burning fat"),
        ("burned my finger", "20 minutes"),
        ("i burnt my arm on the oven", "20 minutes"),
        ("my son scalded his hand", "20 minutes"),
        ("sliced my thumb with the knife", "for 10 minutes"),
        ("cut the tip of my finger", "for 10 minutes"),
        ("i can smell gas", "light nothing"),
        ("he's choking on a bone", "between the shoulder blades"),
        ("her lips are swelling and she can't breathe", "emergency number"),
    ],
)
def test_an_accident_gets_first_aid(text: str, first: str) -> None:
    said = first_aid(text)
    assert said is not None
    assert first in said


@pytest.mark.parametrize(
    "text",
    [
        "carrots, fire roasted tomatoes, rice",
        "the onions are burning",
        "burnt the toast",
        "i burned the bottom of the pot",
        "cut my carrots too thick",
        "sliced the meat, chopped my onions",
        "gas hob, no oven",
        "fire pit tonight: sausages and corn",
        "ladies fingers 200 g, potatoes",
        "fish fingers and peas",
        "burn off the alcohol",
        "the steak is still bleeding juice",
    ],
)
def test_kitchen_talk_is_no_accident(text: str) -> None:
    assert first_aid(text) is None
