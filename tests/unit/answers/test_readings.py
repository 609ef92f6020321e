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


# 0 °F = -17.8 °C, -40 is the same on both scales: definition of the scale
@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("convert -20 C to F", "-20 °C is -4 °F"),
        ("what is -10°F in celsius", "-10 °F is -23 °C"),
        ("−40 c in fahrenheit", "-40 °C is -40 °F"),
        ("160 -180 C in F", "180 °C is 356 °F"),  # a range
    ],
)
def test_a_minus_before_a_temperature_is_read(store: Store, text: str, says: str) -> None:
    assert says in ask(text, store=store).answer


def test_the_cold_of_a_freezer_is_no_reading_of_a_core(store: Store) -> None:
    assert "Cook on" not in ask("is duck safe in a freezer at -18 C", store=store).answer
