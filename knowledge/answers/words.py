"""The words that the answers listen for, by role: `words_questions.csv`."""

from __future__ import annotations

from functools import lru_cache

from knowledge.foods.store import Store


@lru_cache(maxsize=16)
def words_of(store: Store, role: str) -> frozenset[str]:
    """The words of one role: "stop", "filler", "ordinary", "ambiguous", "heard", "made" ..."""
    return frozenset(row["word"] for row in store.table("words_questions") if row["role"] == role)
