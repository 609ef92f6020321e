"""Who must not have one thing, and what else may harm them: `allergens.csv`, `cross_reactions.csv`.

To each allergen of the law belong the diet of who names it, the wider diet that is kept to
when a food is ruled out for it (who reacts to walnuts is offered no peanuts), and the narrow
diet that is taken for the wider one: no crustacean, no shellfish.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import NamedTuple

from knowledge.foods.model import Food
from knowledge.foods.store import Store

SHELLFISH = "no shellfish"


class Kin(NamedTuple):
    """Who keeps to `barred` may react to the food, group or allergen `value` too."""

    barred: str
    by: str
    value: str

    def fits(self, food: Food) -> bool:
        return self.value in {"food": (food.id,), "group": (food.group,), "allergen": food.allergens}[self.by]


@lru_cache(maxsize=4)
def kin_rows(store: Store) -> tuple[Kin, ...]:
    """The rows of `cross_reactions.csv`."""
    return tuple(Kin(row["barred"], row["by"], row["value"]) for row in store.table("cross_reactions"))


def akin_to(food: Food, token: str, store: Store) -> bool:
    """True if who keeps to `token` may react to this food too, although it holds nothing of it."""
    return any(kin.barred == token and kin.fits(food) for kin in kin_rows(store))


@lru_cache(maxsize=4)
def diets_by_allergen(store: Store) -> Mapping[str, str]:
    """Allergen -> what who names it must not have: "crustaceans" -> "no shellfish"."""
    return {row["allergen"]: row["diet"] for row in store.table("allergens")}


def are_shellfish(allergens: Iterable[str], store: Store) -> bool:
    """True if one of the allergens is shellfish of any kind."""
    return any(diets_by_allergen(store)[allergen] == SHELLFISH for allergen in allergens)


def wider_of_foods(foods: Iterable[Food], store: Store) -> list[str]:
    """The wider diets of those who must not have these foods, as the table has them: of cashews "no nuts"."""
    allergens = frozenset[str]().union(*(food.allergens for food in foods))
    rows = store.table("allergens")
    return [row["wider"] for row in rows if row["wider"] and row["allergen"] in allergens]


def wider_of_diets(tokens: Iterable[str], store: Store) -> list[str]:
    """The wider diets of narrow ones: of "no crustacean" "no shellfish"."""
    wider = {row["narrow"]: row["wider"] for row in store.table("allergens") if row["narrow"]}
    return [wider[token] for token in tokens if token in wider]
