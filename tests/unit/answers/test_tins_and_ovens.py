"""Tins by their areas, ovens by their words, pieces by their weight."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "must"),
    [
        # geometry: pi/4 for a circle
        ("two 9 inch rounds, I have a 9x13 inch tin", "by 0.92"),
        ("a 30 x 20 cm tray, I have three 15 cm round tins", "by 0.88"),
        ("from a 9 inch square tin to a 23 cm square tin", "by 1.01"),  # inches are not centimetres
        ("how much does a 23 cm round tin 4 cm deep hold", "1.7 l"),
        ("area of a 10 inch round tin", "507 cm²"),
    ],
)
def test_tins_go_by_their_areas(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("my gran's book says a moderate oven, what temperature", "180 °C / 350 °F, gas mark 4"),
        ("what is a very hot oven in celsius", "230-250 °C / 450-475 °F"),
        ("gas mark 1/4 in celsius", "225 °F"),
    ],
)
def test_ovens_of_old_books_have_degrees(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("how many grams are 4 medium carrots", "4 medium carrots: about 244 g"),
        ("weight of 8 garlic cloves", "about 24 g"),
        ("3 cloves of garlic in grams", "about 9 g"),
    ],
)
def test_pieces_weigh_as_many_as_are_said(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer


def test_an_oven_that_is_only_named_gets_no_degrees(store: Store) -> None:
    assert "gas mark" not in ask("how long in a slow oven for beef shin", store=store).answer
