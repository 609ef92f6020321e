"""The words that the answers listen for, by role: `words_questions.csv`."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from knowledge.foods.store import Store


@lru_cache(maxsize=64)
def words_of(store: Store, role: str) -> frozenset[str]:
    """The words of one role: "stop", "filler", "ordinary", "ambiguous", "heard", "made" ..."""
    return frozenset(row["word"] for row in store.table("words_questions") if row["role"] == role)


@lru_cache(maxsize=64)
def meanings_of(store: Store, role: str) -> Mapping[str, str]:
    """The words of one role, in the order of the table, and what each means: "dairy" -> "no dairy"."""
    return {row["word"]: row["means"] for row in store.table("words_questions") if row["role"] == role}


@lru_cache(maxsize=64)
def either_of(store: Store, role: str) -> str:
    """The words of one role as the alternatives of a regular expression, the longest first."""
    words = sorted(words_of(store, role), key=lambda word: (-len(word), word))
    return "|".join(map(re.escape, words))
