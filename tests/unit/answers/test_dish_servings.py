"""How much of a dish for so many eaters (`dish_servings.csv`: estimates, multiplied by hand)."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("how many litres of soup for 40 guests", "10-14 l"),
        ("how big a turkey for 10 people", "4.5-5 kg"),
        ("how much rice for jollof, party of 50", "4-5 kg"),
        ("how many kg of meat for a braai with 20 people", "6-8 kg"),
        ("how many samosas for 15 people", "30-45 pieces"),
        ("how much gravy do I need per person", "60-80 ml"),
        ("how much maize flour for sadza for 10 people", "1.1-1.4 kg"),
    ],
)
def test_a_dish_is_reckoned_for_its_eaters(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer


@pytest.mark.parametrize(
    "text",
    [
        "my soup serves 4, I need it for 10 people",
        "how long does a turkey for 10 people take",
        "can I keep soup for 20 people in the fridge",
        "2 kg of beef stew, is it enough for 6 people",
    ],
)
def test_eaters_alone_do_not_ask_how_much(store: Store, text: str) -> None:
    assert "big eaters take half as much again" not in ask(text, store=store).answer
