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
from knowledge.answers.eaters.diets_said import ways_of_eating
from knowledge.answers.reading.words import meanings_of, words_of
from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store

_WARNED = re.compile(r"may hold|often|label")  # how the notes of our tables warn


def holds(allergens: frozenset[str], token: str, store: Store) -> bool:
    """True if something with these allergens breaks a diet: "milk" breaks "no dairy" and "vegan"."""
    return bool(allergens) and diets.bars(food_of(allergens, store), token)


def food_of(allergens: frozenset[str], store: Store) -> Food:
    """A food of which nothing is known but its allergens."""
    return replace(store.food("salt"), allergens=allergens, animal="", group="", name="")


@lru_cache(maxsize=4)
def may_hold(store: Store) -> Mapping[str, frozenset[str]]:
    """Food id -> the allergens that what is sold under its name has or may hold, beyond its own."""
    said = _told_of_names(store)
    told = {
        food.id: frozenset[str]().union(*(said.get(name, frozenset()) for name in _names(food, store)))
        for food in store.foods()
    }
    return {food_id: more for food_id, held in told.items() if (more := held - store.food(food_id).allergens)}


def _told_of_names(store: Store) -> Mapping[str, frozenset[str]]:
    """Each name of `allergens_said.csv` -> what it has and what it may hold."""
    return {
        name: frozenset(filter(None, f"{row['has']};{row['may']}".split(";")))
        for row in store.table("allergens_said")
        for name in row["words"].split(";")
    }


def _names(food: Food, store: Store) -> list[str]:
    """The names that stand for a food alone: "burger" is more than its beef."""
    if food.role is Role.SEASON or food.group in words_of(store, "made"):
        return [food.name, *(name for name, _ in store.synonyms(food.id))]
    return [food.name]


def needs_label(food: Food, token: str, store: Store) -> bool:
    """True if only the label tells whether what is sold is free of what `token` bars.

    A way of eating asks after no trace on a label, and alcohol is no allergen that one must tell of.
    """
    if token in ways_of_eating(store) or token == "no alcohol":
        return False
    return food.group in words_of(store, "made") or is_warned(food, token.removeprefix("no "))


def is_warned(food: Food, label: str) -> bool:
    """True if the food's own note says to look for this allergen: "usually without wheat, see the label"."""
    return label in food.does and _WARNED.search(food.does) is not None


def tells_of_more(note: str, store: Store) -> bool:
    """True if the note of a food tells of what is not in every make of it: "may hold fish", "rennet"."""
    return "may hold" in note or bool(ways_barred_by_note(note, store))


def barring_note(note: str, token: str, store: Store) -> str:
    """The part of a note that surely bars a way of eating: "made with animal rennet", "" where it may be."""
    parts = (part.strip() for part in note.split(";"))
    sure = (part for part in parts if part.startswith("made with ") and "may" not in part.split())
    return next((part for part in sure if token in ways_barred_by_note(part, store)), "")


def ways_barred_by_note(note: str, store: Store) -> frozenset[str]:
    """The ways of eating that a word of a note bars: "rennet" bars vegetarian and vegan."""
    barred = (ways for word, ways in meanings_of(store, "noted").items() if word in note)
    return frozenset(way for ways in barred for way in ways.split(";"))
