"""Mince in the shape that was named, a bird laid flat. Common practice, no source, but for the minima.

A spatchcocked chicken roasts in about two thirds of the time of a whole one, 45-60 min at 220 °C;
burgers of 20 mm fry 8-12 min in all.
"""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.planner.model import Do, Have
from tests.unit.planner.kitchen import item, only, planned


@pytest.mark.parametrize(
    ("said", "cut"), [("beef burger", "ground"), ("beef mince", "patty"), ("burgers", None)]
)
def test_burgers_are_patties_in_a_pan(store: Store, said: str, cut: str | None) -> None:
    made = planned(store, Have(food_id="ground-beef", said=said, cut=cut), Have(food_id="potato"))
    one = item(made, "ground-beef")
    assert one.cut_id == "patty"
    assert made.vessel in ("saute pan", "sheet pan")
    brown = [s for s in made.steps if s.do is Do.BROWN]
    assert all("turn once" in s.text and 6 * 60 <= s.hands_s <= 14 * 60 for s in brown)
    assert one.done.core_degC is not None
    assert one.done.core_degC >= 71.0  # USDA FSIS, ground meat


def test_kofte_are_balls_and_mince_is_loose(store: Store) -> None:
    kofte = planned(store, Have(food_id="ground-lamb", said="lamb kofte"), Have(food_id="tomato"))
    mince = planned(store, Have(food_id="ground-lamb", said="lamb mince"), Have(food_id="tomato"))
    assert item(kofte, "ground-lamb").cut_id == "meatball"
    assert item(mince, "ground-lamb").cut_id == "crumbled"


@pytest.mark.parametrize("said", ["spatchcocked chicken", "spatchcock chicken", "butterflied chicken"])
def test_a_flat_bird_takes_two_thirds_of_a_whole_one(store: Store, said: str) -> None:
    flat = planned(store, Have(food_id="whole-chicken", said=said, cut="whole"), kitchen=only("sheet pan"))
    whole = planned(store, Have(food_id="whole-chicken", said="whole chicken"), kitchen=only("sheet pan"))
    took = [item(made, "whole-chicken").out_s / 60.0 for made in (flat, whole)]
    assert item(flat, "whole-chicken").cut_id == "flattened"
    assert 40 <= took[0] <= 65
    assert took[0] <= 0.8 * took[1]
    core = item(flat, "whole-chicken").done.core_degC
    assert core is not None
    assert core >= 73.8  # USDA FSIS, poultry
