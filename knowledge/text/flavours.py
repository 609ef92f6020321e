"""The direction of flavour asked for beside the foods: "make it more Thai", "something Moroccan"."""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge.text.vocabulary import words
from knowledge.text.wishes import weighed


def flavours(text: str) -> tuple[str, ...]:
    """Ids of `flavours.csv` that the first direction wanted in a flat text may mean."""
    for match in _named().finditer(text):
        word = match.group()
        if weighed(word, text, match.start()) == word:
            return words().flavours[word]
    return ()


@lru_cache(maxsize=1)
def _named() -> re.Pattern[str]:
    longest_first = sorted(words().flavours, key=len, reverse=True)
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, longest_first))})\b")
