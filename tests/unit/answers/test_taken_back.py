"""What is taken back in a question is not what is answered."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "wanted", "unwanted"),
    [
        ("core temp for trout, no wait, venison", "Venison", "Trout"),
        ("how long does kale keep, sorry I meant leeks", "Leeks", "Kale"),
        ("how long to boil beetroot or rather swede", "Swede", "Beetroot"),
        ("how much water for barley... no, millet", "Millet", "Barley"),
        ("not barley, quinoa: how much water", "Quinoa", "Barley"),
        ("what is fennel, scratch that, kohlrabi", "Kohlrabi", "Fennel"),
        ("chicken thighs no chicken breast: safe temp", "Chicken breast", "thigh"),
        ("how many cups is 300 g, sorry 400 g of sugar", "400", "300"),
        ("my aunt said 1 tbsp.. I mean how many grams is a tablespoon of butter", "gram", "I don't know"),
        ("how long do parsnips, not carrots, take to boil", "Parsnips", "Carrots"),
    ],
)
def test_the_last_word_counts(store: Store, text: str, wanted: str, unwanted: str) -> None:
    answer = ask(text, store=store).answer
    assert wanted in answer
    assert unwanted not in answer


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("sorry to ask again, how long do lentils keep", "Lentils"),  # an apology
        ("is it actually safe to eat lamb pink", "Lamb"),
        ("instead of butter, not margarine", "Instead of butter"),
        ("my nephew is allergic to eggs, not milk, is mayonnaise ok", "mayonnaise"),
        ("safe temp for rabbit and for hare", "Rabbit"),
    ],
)
def test_what_is_not_taken_back_stays(store: Store, text: str, wanted: str) -> None:
    assert wanted.lower() in ask(text, store=store).answer.lower()


def test_a_danger_that_was_said_first_is_still_heard(store: Store) -> None:
    said = ask("my boy is choking on a grape, no sorry, a cherry", store=store).answer
    assert "blows between the shoulder blades" in said
