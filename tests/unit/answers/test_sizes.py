"""The size of a piece as it is said."""

from __future__ import annotations

import pytest

from knowledge.answers.cooking.sizes import size_mm
from knowledge.answers.reading.question import question_of
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen


@pytest.mark.parametrize(
    ("text", "mm"),
    [
        ("pork chops 1 1/2 inch thick", 38.1),
        ("three quarters of an inch of swede", 19.05),
        ("a 2 cm dice of celeriac", 20.0),
        ("tuna steak 1in thick", 25.4),
        ("how long does one in the oven take", None),
        ("a 3 mm slice", 3.0),
        ("40 cm of sausage", None),  # no piece is so large
    ],
)
def test_a_size_is_read_in_its_unit(store: Store, text: str, mm: float | None) -> None:
    assert size_mm(question_of(text, store=store, kitchen=Kitchen())) == pytest.approx(mm)
