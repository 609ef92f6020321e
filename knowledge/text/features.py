"""What a message is weighed by: its words in plain form, pairs of them, and what they are about.

Words are cut to their stems ("burning", "burnt" -> "burn"), also to their stretches of
four letters (slips and forms nobody listed), and to the senses of `words_senses.csv`
("scorched" is @burnt). Times, temperatures, amounts and foods are one word each.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache
from itertools import pairwise

from knowledge.text.fields import NUM
from knowledge.text.normalise import FOOD
from knowledge.text.vocabulary import table

ALWAYS = "*"  # the feature that every message has
FOOD_WORD = "F"  # any food
_N = r"\d+(?:[.,]\d+)?"
_SCALE = r"(?:[cf]|celsius|fahrenheit)\b"
_MADE_ONE = (
    ("CLOCK", re.compile(r"\b\d{1,2}[:.]\d\d\b|\b\d{1,2} ?[ap]m\b|\boclock\b")),
    ("HEAT", re.compile(rf"{_N} ?(?:(?:°|deg\w*) ?(?:{_SCALE})?|{_SCALE})")),
    ("TIME", re.compile(rf"(?:{_N}|\b{NUM}) ?(?:mins?|minutes?|hours?|hrs?|hr|h|m|secs?|seconds?)\b")),
    ("MUCH", re.compile(rf"{_N} ?(?:g|kg|ml|l|lbs?|oz|cups?|tins?|tbsp|tsp)\b")),
    ("#", re.compile(_N)),
)  # fmt: skip
_WORD = re.compile(rf"{FOOD}|#|[A-Z]+|[a-z]+|->|[?!,.:\n>=/]")
_NAMES = {FOOD: FOOD_WORD, "\n": "line"}
_MOST_WORDS = 60
_MOST_FOODS = 5
_WORDS_A_STEP, _MOST_STEPS = 4, 6
_STRETCH = 4  # letters
_ENDINGS = ("ing", "edly", "ed", "es", "s", "ly")
_SHORTEST = 3  # letters of a stem


def words_of(masked: str) -> list[str]:
    """The words of a masked text, each food, number and time under one name."""
    for name, pattern in _MADE_ONE:
        masked = pattern.sub(f" {name} ", masked)
    return [_NAMES.get(word, word) for word in _WORD.findall(masked)[:_MOST_WORDS]]


@lru_cache(maxsize=4096)
def stem(word: str) -> str:
    """A word without its endings: "chopped", "chopping" and "chops" are "chop"."""
    if len(word) <= _SHORTEST or not word.isalpha():
        return word
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= _SHORTEST:
            word = word.removesuffix(ending)
            break
    if len(word) > _SHORTEST and word[-1] == word[-2] and word[-1] not in "sl":
        word = word[:-1]
    return word[:-1] if len(word) > _SHORTEST and word[-1] in "ey" else word


@lru_cache(maxsize=1)
def _senses() -> Mapping[str, tuple[str, ...]]:
    """The senses of each stem."""
    out: dict[str, dict[str, None]] = {}
    for row in table("words_senses.csv"):
        out.setdefault(stem(row["word"]), {})["@" + row["sense"]] = None
    return {word: tuple(senses) for word, senses in out.items()}


def senses(word: str) -> tuple[str, ...]:
    """The senses of a stem, each with its sign."""
    return _senses().get(word, ())


@lru_cache(maxsize=4096)
def _stretches(word: str) -> tuple[str, ...]:
    if len(word) < _SHORTEST or not (word.isalpha() and word.islower()):
        return ()
    edged = f"<{word}>"
    return tuple("~" + edged[i : i + _STRETCH] for i in range(len(edged) - _STRETCH + 1))


def features(masked: str, facts: Iterable[str] = ()) -> frozenset[str]:
    """All that a masked text is weighed by, and the facts that are known of it beside."""
    said = words_of(masked)
    stems = [stem(word) for word in said]
    found = {*stems, *facts, ALWAYS}
    found.update(f"{a} {b}" for a, b in zip(["^", *stems], [*stems, "$"], strict=True))
    for a, b in pairwise(stems):
        found.update(f"{one} {b}" for one in senses(a))
        found.update(f"{a} {one}" for one in senses(b))
    for word in said:
        found.update(_stretches(word))
    for word in stems:
        found.update(senses(word))
    found.add(f"foods={min(said.count('F'), _MOST_FOODS)}")
    found.add(f"length={min(len(said) // _WORDS_A_STEP, _MOST_STEPS)}")
    return frozenset(found)
