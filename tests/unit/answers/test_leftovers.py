"""The line about leftovers at the end of a cook."""

from __future__ import annotations

from knowledge.answers import leftovers
from knowledge.foods.store import Store


def test_rice_is_cooled_within_an_hour_and_kept_a_day(store: Store) -> None:
    # UK Food Standards Agency: cool rice within 1 hour, keep it for no longer than 1 day
    text, source = leftovers(["chicken-thigh", "rice"], store=store)
    assert "1 hour" in text
    assert "1 day" in text
    assert "Food Standards Agency" in source


def test_a_stew_keeps_two_days_at_most(store: Store) -> None:
    text, _ = leftovers(["stew-beef", "carrot"], store=store)
    assert "2 hours" in text  # USDA FSIS
    assert "2 days" in text  # UK FSA: within 48 hours
    assert "74 °C / 165 °F" in text


def test_unknown_ids_do_not_matter(store: Store) -> None:
    assert leftovers(["nothing-of-the-kind"], store=store) == leftovers([], store=store)
