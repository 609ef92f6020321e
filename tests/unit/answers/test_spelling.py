"""Slips of the keyboard are put right; what a kitchen somewhere calls so is none."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.answers.reading.spelling import corrected
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("slip", "meant"),
    [
        ("rosmary", "rosemary"),
        ("buter", "butter"),
        ("sause", "sauce"),
        ("basel", "basil"),
        ("haddok", "haddock"),
        ("salmin", "salmon"),
        ("caulifower", "cauliflower"),
        ("tumeric", "turmeric"),
        ("sweed", "swede"),
    ],
)
def test_a_slip_is_put_right(store: Store, slip: str, meant: str) -> None:
    assert corrected([slip], store) == [meant]


@pytest.mark.parametrize(
    "word",
    ["jamun", "chapli", "shirazi", "shami", "lechona", "mandi", "caldillo", "garba", "kottu", "vatana",
     "mangu", "harira", "turon", "carbonada", "stifado", "khinkali", "bistek", "plonk", "zorbin"],
)  # fmt: skip
def test_a_word_of_some_kitchen_is_not_bent(store: Store, word: str) -> None:
    assert corrected([word], store) == [word]


def test_a_name_written_as_one_word_is_taken_apart(store: Store) -> None:
    assert corrected(["lambchops"], store) == ["lamb", "chops"]
    assert corrected(["swordfish", "buttermilk"], store) == ["swordfish", "buttermilk"]


def test_no_verdict_is_given_on_a_neighbour_in_spelling(store: Store) -> None:
    for text in ("is lechona made with pork, vegetarian?", "shami kebab core temperature", "garba allergens"):
        answer = ask(text, store=store).answer.lower()
        assert not any(word in answer for word in ("shaki", "tripe", "gamba", "shrimp"))
