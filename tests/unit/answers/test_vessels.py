"""Which vessel, which size, with or without a lid, and whether another one will do."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

TOLD = [
    ("which pot for braising ox cheek", "lidded casserole"),
    ("what kind of pan for crepes", "flat, low-sided"),
    ("best vessel for dried chickpeas", "pressure cooker"),
    ("which pan is best for searing lamb chops", "no lid"),
    ("what pot should i use for egusi soup", "thick base"),
    ("pan or pot for risotto", "wide saute pan"),
    ("what size pot for soup for 4 people", "5 l"),
    ("what size pot for broth for 12 people", "11 litres"),
    ("do I need a lid for stir fried noodles", "No lid"),
    ("lid on or off for pilau", "Lid on"),
    ("can i roast carrots in a saucepan", "sheet pan"),
    ("can I make goulash in a baking tray", "Better not"),
    ("can you cook jollof in a saucepan", "Yes"),
    ("can I cook oxtail without a pressure cooker", "Yes, without"),
    ("how many portions fried rice in a 34 cm wok", "2-3 portions"),
    ("how many people does a 30 cm pan feed, how many portions in it", "about 5"),
    ("which vessel suits kohlrabi", "pan|pot"),
]


@pytest.mark.parametrize(("asked", "said"), TOLD)
def test_a_vessel_is_told_by_what_it_is_for(store: Store, asked: str, said: str) -> None:
    answer = ask(asked, store=store)
    assert answer.known
    assert re.search(said, answer.answer), answer.answer


OF_OTHER_THINGS = [
    ("can I keep stew in the pot in the fridge", "fridge"),
    ("how long do lentils take in a pot", "min"),
    ("the oil in the pan for my chips is on fire", "lid"),
    ("tamarind soup in a copper pot, can I", "Not"),
]


@pytest.mark.parametrize(("asked", "said"), OF_OTHER_THINGS)
def test_a_vessel_that_is_only_named_is_not_told(store: Store, asked: str, said: str) -> None:
    assert said in ask(asked, store=store).answer
