"""Raw and cooked amounts, either way."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "must"),
    [
        # UC Davis: a cup of quinoa makes 2.75, barley 3.5; common ratio: rice 3
        ("I need 7 cups of cooked barley, how much dry barley is that", "about 2 cups of dry"),
        ("how much does 1 cup dry rice make cooked", "makes about 3 cups"),
        ("how much uncooked rice for 9 cups cooked", "about 3 cups of dry"),
        # University of Nebraska: dry beans make two and a half to three times their cups
        ("4 cups of dried pinto beans makes how many cups cooked", "10-12 cups"),
        # by weight: pasta 2.2, meat a quarter less
        ("300 g dry spaghetti is how much cooked", "660 grams"),
        ("how much raw chicken breast for 600 g cooked chicken", "800 grams"),
        ("raw to cooked weight of chicken breast", "75 grams"),
    ],
)
def test_raw_for_cooked_and_cooked_for_raw(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer


@pytest.mark.parametrize(
    "text",
    [
        "can I keep cooked rice and raw chicken on one shelf",
        "how much cooked chicken for 4 people",
        "how long to cook 200 g dry pasta",
    ],
)
def test_no_yield_is_told_unasked(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert "times its weight" not in answer
    assert "cups cooked" not in answer
