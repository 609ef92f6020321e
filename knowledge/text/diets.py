"""Rules on groups of food or on the meal, from `words_diets.csv`. By patterns over flat text."""

from __future__ import annotations

import re
from collections.abc import Iterable

from knowledge.diets import known_diets
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


_LIFTED = re.compile(
    r"(?<!dont )(?<!do not )(?<!never )(?<!cant )\b(?:forget|drop|lift|cancel|remove|delete|scrap|clear|"
    r"stop(?:ped)?|quit|no longer|no more|not|never was)"
    r"(?: (?:the|my|our|a|an|being|about|all|really|actually|that|im|i|am|we|were|are))* $"
)
_ALLOWED = re.compile(
    r"\b(?:can|may) (?:eat|have|do) (\w+?)s? again\b|\b(\w+?)s? (?:is|are) (?:ok|okay|fine|allowed) again\b"
)


def lifted(text: str) -> tuple[str, ...]:
    """Diets that a text says hold no longer: "not vegetarian any more", "I can eat nuts again".

    "I can't have gluten any more" lifts nothing: the words of a rule are never those that lift it.
    """
    diets(text)
    gone = [
        diet
        for diet, pattern in _DIETS
        for match in pattern.finditer(text)
        if _LIFTED.search(text[: match.start()])
    ]
    foods = [match[1] or match[2] for match in _ALLOWED.finditer(text)]
    allowed = [name for food in foods for name in (f"no {food}", f"no {food}s") if name in known_diets()]
    return tuple(dict.fromkeys([*gone, *allowed]))


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
