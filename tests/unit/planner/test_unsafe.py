"""Wishes that make ill or burn are refused in words, and only those. Readings of our own."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.text import read
from knowledge.unsafe import refused_wishes


def refused(store: Store, text: str) -> str:
    return " ".join(c.text for c in refused_wishes(read(text, store=store), store=store))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("400g turkey mince, turkey burgers a little pink please, onions", "Not pink"),
        ("chicken thighs, medium rare if you can, leeks", "Not pink"),
        ("duck and bean stew and can it for the pantry. duck legs, leeks", "jars on the shelf"),
        ("make chicken stock and put it in jars in the cupboard, chicken, leeks", "jars on the shelf"),
        ("deep fry the cod, potatoes", "No deep frying"),
        ("chicken wings, got 2 litres of oil, big pot", "No deep frying"),
        ("pressure cooker: beef, leeks, want to lift the lid early to add peas", "never opened"),
        ("200g dried kidney beans, didnt soak, ready in 30 min", "never quick"),
        ("half cook the pork tonight and finish it tomorrow, pork, leeks", "half cooked"),
    ],
)
def test_an_unsafe_wish_is_named_and_refused(store: Store, text: str, said: str) -> None:
    assert said in refused(store, text)


@pytest.mark.parametrize(
    "text",
    [
        "2 sirloin steaks rare, potatoes",  # whole beef: the plan's own minimum says enough
        "turkey mince, pink lady apples",
        "chicken burgers, not pink in the middle",
        "can it be done in the oven? chicken, potatoes",
        "two jars of passata from the cupboard, mince",
        "deep fried tofu, noodles, pak choi",
        "no deep frying please. cod, potatoes",
        "tinned kidney beans, quick, rice",
        "quick dinner: white beans, rice",
    ],
)
def test_what_is_safe_is_not_refused(store: Store, text: str) -> None:
    assert refused(store, text) == ""
