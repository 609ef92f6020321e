"""The grammar of amounts. What an amount reads as is common practice; factors are exact (NIST)."""

from __future__ import annotations

import pytest

from knowledge.text.amounts import amount_at
from knowledge.text.tokens import tokenise


@pytest.mark.parametrize(
    ("said", "across_mm"),
    [("2 cm thick", 20.0), ("15mm", 15.0), ("1 inch", 25.4), ("one and a half cm", 15.0)],  # 1 in = 25.4 mm
)
def test_a_length_says_how_thick_and_not_how_much(said: str, across_mm: float) -> None:
    found = amount_at(tokenise(said), 0)

    assert found is not None
    assert (found[0].qty, found[0].unit, found[0].across_mm) == (None, None, across_mm)


@pytest.mark.parametrize(
    ("said", "qty", "unit", "grams"),
    [
        ("1 1/2 lb", 1.5, "lb", 680.4),  # 1 lb = 453.59237 g exactly (NIST Handbook 44)
        ("1,5 kg", 1.5, "kg", 1500),
        ("pound of", 1, "lb", 453.6),
        ("kilo and a half of", 1.5, "kg", 1500),
        ("2 doz", 24, "piece", None),
        ("1,500 g", 1500, "g", 1500),
        ("2x400g tins", 2, "can", 800),
        ("2 x 250 g packs", 2, "pack", 500),
        ("one 12 oz pack of", 1, "pack", 340.2),
        ("two 8 ounce", 2, "piece", 453.6),
        ("1lb 4oz", 20, "oz", 567.0),
        ("half a 500 g bag", 0.5, "bag", 250),
        ("half a dozen", 6, "piece", None),
        ("a couple of", 2, "piece", None),
        ("2-3", 2.5, "piece", None),
        ("two maybe three", 2.5, "piece", None),
        ("a third of a block of", 0.33, "block", None),
        ("3/4 of a", 0.75, "piece", None),
        ("1 dl", 100, "ml", None),
        ("2 # ", 2, "lb", 907.2),
        ("five hundred grams of", 500, "g", 500),
        ("one two three four five", 5, "piece", None),
        ("the rest of a tub of", None, "tub", None),
        ("some", None, None, None),
        ("x4", 4, "piece", None),
        ("2 big cans", 2, "can", None),
        ("3cm piece of", 1, "piece", None),
        ("a kilo and a half", 1.5, "kg", 1500),
        ("1 can (15 ounces)", 1, "can", 425.2),
        ("a pair of", 2, "piece", None),
    ],
)
def test_amounts_read_as_said(said: str, qty: float | None, unit: str | None, grams: float | None) -> None:
    found = amount_at(tokenise(said), 0)
    assert found is not None
    amount = found[0]
    assert (amount.qty, amount.unit) == (pytest.approx(qty) if qty else qty, unit)
    assert amount.grams == (pytest.approx(grams, rel=1e-3) if grams else None)


@pytest.mark.parametrize("said", ["155 f", "4 day old", "20 minutes", "carrots", "can i"])
def test_what_is_no_amount_is_not_read_as_one(said: str) -> None:
    assert amount_at(tokenise(said), 0) is None


def test_a_tower_of_powers_is_only_digits() -> None:
    found = amount_at(tokenise("9**9**9"), 0)
    assert found is not None
    assert found[0].qty == 9
