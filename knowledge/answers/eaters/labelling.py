"""What is said of allergens, each thing in one place: the lists, the cautions, the authorities."""

from __future__ import annotations

from collections.abc import Iterable

from knowledge.answers.cite import cited
from knowledge.foods.store import Store
from knowledge.text.normalise import singular

CHECK = "Read the label, recipes differ; with an allergy ask a doctor."
LEAVE_OUT = "Leave it out until a doctor says otherwise."


def authorities(store: Store) -> tuple[str, ...]:
    """Who says which allergens must be told: the EU's fourteen, the nine of the US."""
    return cited(store, "EU-1169", "A-FDA-ALLERGEN")


def is_plural(name: str) -> bool:
    """True for "eggs", "prawns": they have, an egg has."""
    last = name.rsplit(" ", 1)[-1]
    return last.endswith("s") and not last.endswith("ss") and singular(last) != last


def have(name: str, allergens: Iterable[str]) -> str:
    """ "eggs have eggs", "pesto has milk", "" for none; the name stands before it."""
    return has(allergens).replace("has", "have", 1) if is_plural(name) else has(allergens)


def listed(allergens: Iterable[str]) -> str:
    """ "eggs, milk"."""
    return ", ".join(sorted(allergens))


def has(allergens: Iterable[str]) -> str:
    """ "has eggs, milk", "" for none."""
    return f"has {said}" if (said := listed(allergens)) else ""


def may_have(allergens: Iterable[str]) -> str:
    """ "may hold eggs, milk", "" for none."""
    return f"may hold {said}" if (said := listed(allergens)) else ""
