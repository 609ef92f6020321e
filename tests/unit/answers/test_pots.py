"""The pot for a batch: what it swells to, and how full a pot may be."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "least_l", "most_l"),
    [
        # rice: 185 g a cup, a cup makes three; at most three quarters full
        ("how large a pot for 4 kg of rice", 18, 23),
        ("what size pot do I need for 8 litres of stew", 10, 11),
        ("pot size for 1 kg of spaghetti", 13, 14),
        ("how big a pot for 3 kg of potatoes", 6, 9),
    ],
)
def test_a_pot_is_reckoned_from_the_batch(store: Store, text: str, least_l: float, most_l: float) -> None:
    found = re.match(r"About ([\d.]+) l", ask(text, store=store).answer)
    assert found
    assert least_l <= float(found[1]) <= most_l


@pytest.mark.parametrize(
    ("text", "verdict"),
    [
        ("will 2 kg of rice fit in a 7 litre pot, or what size pot", "No"),
        ("is a 12 litre pot big enough for 1 kg of rice", "Yes"),
        ("can I do 1 kg of dried chickpeas in a 5 litre pressure cooker", "No"),
    ],
)
def test_a_pot_that_is_named_gets_a_verdict(store: Store, text: str, verdict: str) -> None:
    assert ask(text, store=store).answer.startswith(verdict)


def test_a_pot_for_a_way_of_cooking_is_no_sum(store: Store) -> None:
    assert "About" not in ask("what pot for braising short ribs", store=store).answer[:6]
