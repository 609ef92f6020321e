"""What a thermometer shows against what an authority asks: the coldest reading, never rounded up to it."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


# USDA FSIS: poultry 165 °F / 73.9 °C, ground meat 160 °F / 71.1 °C; hot food is kept at 140 °F / 60 °C.
@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("the turkey breast reads 176F at the edge but 158F in the middle, is it safe?", "No"),
        ("duck legs show 68 C at the bone and 80 C elsewhere, done?", "No"),
        ("turkey breast reads 167F at the edge and 166F in the middle, is it safe?", "Yes"),
        ("meatballs: one at 75 C and one at 69 C, are they safe to eat?", "No"),
        ("is the stew on the buffet hot enough at 139F?", "No"),
        ("is dal kept hot at 59.7 C hot enough?", "No"),
        ("the chafing dish is 66 C on top and 55 C below, is that hot enough?", "No"),
        ("is the stew on the buffet hot enough at 66 C?", "Yes"),
        ("is gravy held hot at 140F hot enough?", "By USDA FSIS yes"),
    ],
)
def test_the_coldest_reading_decides(store: Store, text: str, begins: str) -> None:
    answer = ask(text, store=store).answer
    assert answer.startswith(begins), answer


def test_a_reading_is_told_as_it_was_read(store: Store) -> None:
    answer = ask("is dal kept hot at 59.7 C hot enough?", store=store).answer
    assert "59.7 °C" in answer, answer
