"""The foods that a sentence of our own tables names."""

from __future__ import annotations

import re

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.text.normalise import key

LONGEST = 3  # words of a name


def foods_in(text: str, store: Store, *, longest: int = LONGEST) -> list[Food]:
    """The foods that a text names, in order, each by the longest name: "coconut milk" is no milk."""
    words = re.findall(r"[a-z]+", text.lower())
    found: list[Food] = []
    at = 0
    while at < len(words):
        food, length = _named_at(words[at : at + longest], store)
        found += [food] if food else []
        at += length
    return found


def _named_at(words: list[str], store: Store) -> tuple[Food | None, int]:
    """The food that the first words name, and by how many; one is passed over where they name none."""
    for length in range(len(words), 0, -1):
        food = store.named(key(" ".join(words[:length])))
        if food is not None:
            return food, length
    return None, 1
