"""A flat message as tokens: words, numbers and signs."""

from __future__ import annotations

import re
from dataclasses import dataclass

from knowledge.text.normalise import singular

_TOKEN = re.compile(r"\d{1,9}(?:[.,]\d{1,6})?|[^\W\d_]+|\n|[^\w\s]|_|\d+", re.UNICODE)
_LIST_NUMBER = re.compile(r"(?m)^[ ]*(?:step )?\d{1,2}[.)][ ]+(?=[^\s\d])")


@dataclass(frozen=True, slots=True)
class Token:
    """One token. `key` is the singular of a word; `value` the number of a number."""

    text: str
    key: str
    start: int
    end: int
    value: float | None = None

    @property
    def is_word(self) -> bool:
        return self.value is None and self.text[0].isalpha()

    @property
    def is_number(self) -> bool:
        return self.value is not None


def tokenise(text: str) -> list[Token]:
    """Tokens of a flat text. Numbers that only count the lines of a list are left out."""
    counted = [m.span() for m in _LIST_NUMBER.finditer(text)]
    skip = counted if len(counted) > 1 else []
    tokens: list[Token] = []
    for match in _TOKEN.finditer(text):
        start, end = match.span()
        if skip and any(a <= start < b for a, b in skip):
            continue
        word = match.group()
        if word[0].isdecimal():
            tokens.append(Token(word, word, start, end, number(word)))
        else:
            tokens.append(Token(word, singular(word) if word[0].isalpha() else word, start, end))
    return tokens


def number(digits: str) -> float | None:
    """Value of digits with a point or a comma: "1,5" is one and a half, "7,500" is thousands."""
    if len(digits) > 12:
        return None
    head, comma, tail = digits.partition(",")
    if comma:
        return float(head + tail) if len(tail) == 3 and head != "0" else float(f"{head}.{tail}")
    return float(digits)
