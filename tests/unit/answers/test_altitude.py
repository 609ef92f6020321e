"""Eggs and cakes in a kitchen that lies high."""

from __future__ import annotations

import math

import pytest

from knowledge.answers import ask
from knowledge.answers.reading.altitude import egg_time
from knowledge.foods.store import Store


def test_the_time_of_an_egg_follows_its_equation() -> None:
    assert egg_time(water_degC=100.0, yolk_degC=77.0) == pytest.approx(math.log(0.76 * 96 / 23))


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("how long do I hard boil eggs in cusco", "hard about 16 min"),
        ("do I boil eggs longer at 2400 m", "Yes, longer"),
        ("my muffins sink, I bake at 2200 m, what do I change", "1/4 tsp less"),
        ("sponge cake at 400 m", "hardly anything changes"),
    ],
)
def test_eggs_and_cakes_are_told_apart_from_the_boil(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer


def test_other_food_keeps_the_boil(store: Store) -> None:
    assert ask("do potatoes boil longer at 2400 m", store=store).answer.startswith("Water boils at 92.0")
