"""Numbers as they are said in a question: "3", "2,5", "1 1/2", "three quarters of a", "two and a half"."""

from __future__ import annotations

import re

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


_TENS = {word: 10 * count for count, word in enumerate(
    ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"), start=2
)}  # fmt: skip
_TEN, _ONE = "|".join(_TENS), "|".join(_WHOLE[:9])
_HUNDREDS = "one|two|three|four|five"
_LARGE = re.compile(
    rf"\b(?:(?P<named>{_HUNDREDS}|a) hundred(?: and)?(?: |$))?(?P<tens>{_TEN})(?: (?P<ones>{_ONE}))?\b"
    rf"|\b(?P<round>{_HUNDREDS}|a) hundred\b(?! (?:and )?(?:{_ONE})\b)"
)
_SPOKEN = re.compile(rf"\b(?P<hundreds>{_HUNDREDS}) (?P<rest>{_TEN})(?: (?P<ones>{_ONE}))?\b")


def in_digits(plain: str, *, is_reading: bool = False) -> str:
    """A text with its large numbers in digits: "sixty three", "a hundred and sixty".

    `is_reading`: a thermometer is spoken of, so that "one forty eight" is 148, no time of the day.
    """
    if is_reading:
        plain = _SPOKEN.sub(
            lambda said: str(100 * COUNTS[said[1]] + _TENS[said[2]] + COUNTS.get(said[3] or "", 0)), plain
        )
    return _LARGE.sub(_digits, plain)


def _digits(said: re.Match[str]) -> str:
    hundreds = said["named"] or said["round"] or ""
    tens, ones = _TENS.get(said["tens"] or "", 0), COUNTS.get(said["ones"] or "", 0)
    return str(100 * (COUNTS.get(hundreds, 1) if hundreds else 0) + tens + ones)


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
