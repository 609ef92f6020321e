"""Numbers as they are said in a question: "3", "2,5", "1 1/2", "three quarters of a", "two and a half"."""

from __future__ import annotations

_WHOLE = (
    "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve",
)  # fmt: skip
_PART = {"half": 1 / 2, "quarter": 1 / 4, "third": 1 / 3}
_PARTS = {"two thirds": 2 / 3, "three quarters": 3 / 4, "three quarter": 3 / 4}
_OF_ONE = ("", " a", " an", " of a", " of an")  # "half a cup", "a third of a cup"

COUNTS = {word: count for count, word in enumerate(_WHOLE, start=1)}
"""Words for whole numbers."""

_SAID: dict[str, float] = {
    "a": 1.0,
    "an": 1.0,
    **COUNTS,
    **{f"{word} and a half": count + 0.5 for word, count in COUNTS.items()},
    **{f"{count} and a half": count + 0.5 for count in COUNTS.values()},
    **{f"{a}{part}{of}": size for part, size in _PART.items() for a in ("", "a ", "one ") for of in _OF_ONE},
    **{f"{parts}{of}": size for parts, size in _PARTS.items() for of in _OF_ONE},
}

COUNT = rf"(\d{{1,3}}|{'|'.join(COUNTS)})"
"""A whole number of things or people, as one group of a regular expression; `count_of` reads it."""

_WORDS = "|".join(sorted(_SAID, key=len, reverse=True))
NUMBER = rf"({_WORDS}|\d+(?:[.,]\d+)?(?: \d/\d)?|\d/\d)"
"""Any number, as one group of a regular expression; `value_of` reads it."""


def count_of(said: str) -> int:
    """The number that `COUNT` has found."""
    return COUNTS.get(said) or int(said)


def value_of(said: str) -> float:
    """The number that `NUMBER` has found; a fraction over nothing counts as its upper part."""
    if said in _SAID:
        return _SAID[said]
    total = 0.0
    for part in said.replace(",", ".").split():
        top, _, bottom = part.partition("/")
        total += float(top) / (float(bottom or 1) or 1.0)
    return total
