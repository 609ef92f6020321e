"""What is said of allergens, each thing in one place: the lists, the cautions, the authorities."""

from __future__ import annotations

from collections.abc import Iterable

from knowledge.answers.cite import cited
from knowledge.foods.store import Store

CHECK = "Read the label, recipes differ; with an allergy ask a doctor."
LEAVE_OUT = "Leave it out until a doctor says otherwise."


def authorities(store: Store) -> tuple[str, ...]:
    """Who says which allergens must be told: the EU's fourteen, the nine of the US."""
    return cited(store, "EU-1169", "A-FDA-ALLERGEN")


def listed(allergens: Iterable[str]) -> str:
    """ "eggs, milk"."""
    return ", ".join(sorted(allergens))


def has(allergens: Iterable[str]) -> str:
    """ "has eggs, milk", "" for none."""
    return f"has {said}" if (said := listed(allergens)) else ""


def may_have(allergens: Iterable[str]) -> str:
    """ "may hold eggs, milk", "" for none."""
    return f"may hold {said}" if (said := listed(allergens)) else ""
