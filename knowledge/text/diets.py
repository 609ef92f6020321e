"""Rules on groups of food or on the meal, from `words_diets.csv`. By patterns over flat text."""

from __future__ import annotations

import re
from collections.abc import Iterable

from knowledge.text.fields import Span
from knowledge.text.vocabulary import table


def _diet_patterns() -> Iterable[tuple[str, re.Pattern[str]]]:
    for row in table("words_diets.csv"):
        yield row["diet"], re.compile(rf"\b(?:{row['pattern']})\b")


_DIETS: list[tuple[str, re.Pattern[str]]] = []
_ONE_OF_SEVERAL = re.compile(
    r"\bone (?:of (?:us|them) )?(?:is )?(?:a )?(?:vegetarian|vegan|veggie)\b.*\b(?:two|both|"
    r"separate|rest|others?)\b"
)


def diets(text: str) -> tuple[tuple[str, ...], list[Span]]:
    """Rules on groups of food or on the meal, in the order of the text, and where they stand."""
    if not _DIETS:
        _DIETS.extend(_diet_patterns())
    found: dict[str, int] = {}
    used: list[Span] = []
    mixed = bool(_ONE_OF_SEVERAL.search(text))
    for diet, pattern in _DIETS:
        if mixed and diet in ("vegetarian", "vegan"):
            continue
        for match in pattern.finditer(text):
            found.setdefault(diet, match.start())
            used.append(match.span())
    if "vegan" in found and "vegetarian" in found:
        del found["vegetarian"]
    return tuple(sorted(found, key=lambda d: found[d])), used
