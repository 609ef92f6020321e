"""The form under which names are looked up: lower case, no accents, singular words."""

from __future__ import annotations

import re
import unicodedata
from functools import lru_cache

QUOTES = "'\u2018\u2019\u02bc\u0060\u00b4\u2032"

_LETTERS_WITHOUT_PARTS = {"ø": "o", "đ": "d", "ł": "l", "ß": "ss", "æ": "ae", "œ": "oe", "ı": "i", "ð": "d"}
_IRREGULAR = {
    "leaves": "leaf", "loaves": "loaf", "halves": "half", "calves": "calf", "knives": "knife",
    "chillies": "chilli", "chilies": "chili", "quiches": "quiche", "cookies": "cookie", "pies": "pie",
    "brownies": "brownie", "smoothies": "smoothie", "veggies": "veggie", "tatties": "tattie",
    "mushies": "mushie", "brassicas": "brassica", "ramen": "ramen", "feet": "foot", "geese": "goose",
    "roasties": "roastie", "fries": "fries",
    "mealies": "mealie", "eddoes": "eddo", "cloves": "clove", "aloes": "aloe",
}  # fmt: skip
_SINGULAR_ALREADY = ("ss", "us", "is")  # swiss, asparagus, cassis
_WORDS = re.compile(r"[^\W_]+")
_INNER_QUOTE = re.compile(rf"(?<=[^\W_])[{QUOTES}](?=[^\W\d_])")  # za'atar, don't, lamb's

_WITH = re.compile(r"(?<![a-z])w/")


@lru_cache(maxsize=8192)
def singular(word: str) -> str:
    """The singular of a lower-case English word, by rule; `singular(singular(w)) == singular(w)`."""
    if word in _IRREGULAR:
        return _IRREGULAR[word]
    if len(word) <= 3 or not word.endswith("s"):
        return word
    if word.endswith("ies"):
        return word[:-3] + "y"
    if word.endswith(("oes", "ches", "shes", "sses", "xes", "zzes")):
        return word[:-2]
    if word.endswith(_SINGULAR_ALREADY):
        return word
    return word[:-1]


@lru_cache(maxsize=8192)
def key(name: str) -> str:
    """The form under which a food name is looked up: lower case, no accents, singular words."""
    whole = _INNER_QUOTE.sub("", name)
    plain = whole if whole.isascii() else "".join(c if c < "\x80" else letters(c) for c in whole)
    return " ".join(singular(word) for word in _WORDS.findall(_WITH.sub("with ", plain.lower())))


@lru_cache(maxsize=2048)
def letters(char: str) -> str:
    """A non-ASCII character without accents; fractions and the like as ASCII; marks vanish."""
    kind = unicodedata.category(char)
    if kind in ("Mn", "Me", "Cf", "Cs", "Co", "Cn"):
        return ""
    if kind.startswith("Z"):
        return " "
    plain = unicodedata.normalize("NFKD", char).replace("\u2044", "/")
    plain = "".join(c for c in plain if unicodedata.category(c) not in ("Mn", "Me", "Cf", "Cs", "Co"))
    if kind == "No" and "/" in plain:
        return f" {plain} "
    return "".join(_LETTERS_WITHOUT_PARTS.get(c, c) for c in plain.lower())
