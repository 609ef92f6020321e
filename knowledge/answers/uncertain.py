"""What is sold under a food's name may hold more than the food: `allergens_said.csv`.

Miso may hold fish, margarine soy. Where an allergy answer says "not surely" for that
reason, the food is no swap for someone who must not have it; one that is made of many
things, or whose note says to mind the label, is taken only with a label free of it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace
from functools import lru_cache

from knowledge import diets
from knowledge.answers.words import words_of
from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store

_WARNED = re.compile(r"may hold|often|label")
BY_HABIT = frozenset(
    {"vegan", "vegetarian", "pescatarian", "halal", "kosher", "jain"}
)  # ways of eating: a trace on the label is not asked after


def holds(allergens: frozenset[str], token: str, store: Store) -> bool:
    """True if something with these allergens breaks a diet: "milk" breaks "no dairy" and "vegan"."""
    blank = replace(store.food("salt"), allergens=allergens, animal="", group="", name="")
    return bool(allergens) and diets.bars(blank, token)


@lru_cache(maxsize=4)
def may_hold(store: Store) -> Mapping[str, frozenset[str]]:
    """Food id -> the allergens that what is sold under its name has or may hold, beyond its own."""
    said: dict[str, frozenset[str]] = {}
    for row in store.table("allergens_said"):
        held = frozenset(filter(None, f"{row['has']};{row['may']}".split(";")))
        said.update(dict.fromkeys(row["words"].split(";"), held))
    found = {}
    for food in store.foods():
        names = [food.name]
        if food.role is Role.SEASON or food.group in words_of(store, "made"):
            names += [name for name, _ in store.synonyms(food.id)]  # "burger" is more than its beef
        told = frozenset[str]().union(*(said.get(name, frozenset()) for name in names)) - food.allergens
        if told:
            found[food.id] = told
    return found


def needs_label(food: Food, token: str, store: Store) -> bool:
    """True if only the label tells whether what is sold is free of what `token` bars."""
    if token in BY_HABIT or token == "no alcohol":
        return False
    label = token.removeprefix("no ")
    return food.group in words_of(store, "made") or is_warned(food, label)


def is_warned(food: Food, label: str) -> bool:
    """True if the food's own note says to look for this allergen: "usually without wheat, see the label"."""
    return label in food.does and _WARNED.search(food.does) is not None
