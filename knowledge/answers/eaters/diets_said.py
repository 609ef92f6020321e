"""The words of allergens and diets, and what they mean: the role "diet" of `words_questions.csv`."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from knowledge.answers.reading.words import meanings_of
from knowledge.foods.store import Store

_BEGINNING = "allerg"  # "nut allerg" is the beginning of more than one word


def diet_words(store: Store) -> Mapping[str, str]:
    """Words of allergens and diets -> the token of the diet: "dairy" -> "no dairy"."""
    return meanings_of(store, "diet")


@lru_cache(maxsize=4)
def ways_of_eating(store: Store) -> frozenset[str]:
    """The tokens that name what is eaten, not what is left out: "vegan", "halal"."""
    return frozenset(token for token in diet_words(store).values() if not token.startswith("no "))


def diets_said(plain: str, store: Store) -> dict[str, str]:
    """The words of allergens and diets in a text, with their tokens; "eggplant" is no egg."""
    return {words: token for pattern, words, token in _patterns(store) if pattern.search(plain)}


@lru_cache(maxsize=4)
def _patterns(store: Store) -> tuple[tuple[re.Pattern[str], str, str], ...]:
    return tuple((_pattern(word), word, token) for word, token in diet_words(store).items())


def _pattern(word: str) -> re.Pattern[str]:
    end = "" if word.endswith(_BEGINNING) else "(?:e?s)? "
    return re.compile(rf" {re.escape(word)}{end}")
