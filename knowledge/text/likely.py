"""How likely each kind is, by the words of a message: a linear model over its signs.

    p(kind) = exp(sum of weights of the signs) / the same summed over the kinds

The signs are the words and word pairs of the masked text, its number of foods and its
length. The weights are in `words_kinds.csv`; they are fitted to labelled messages by
`tests/benchmarks/fit_kinds.py`, and can be read and mended by hand.
Source of the method: multinomial logistic regression, any textbook of statistics.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from math import exp

from knowledge.text.model import Kind
from knowledge.text.normalise import FOOD
from knowledge.text.vocabulary import table

ALWAYS = "*"  # the sign that every message has
_NUMBER = re.compile(r"\d+(?:[.:]\d+)?")
_WORD = re.compile(rf"{FOOD}|#|[a-z]+|[?!,.:\n]")
FEWEST_WORDS = 2  # with fewer known words or pairs, every kind is as likely
_MOST_WORDS = 60
_MOST_FOODS = 5
_WORDS_A_STEP, _MOST_STEPS = 4, 6
_NAMES = {FOOD: "F", "\n": "line"}


def signs(masked: str) -> frozenset[str]:
    """What the model looks at in a masked text: words, pairs of them (^ begins, $ ends it), foods, length."""
    said = _WORD.findall(_NUMBER.sub("#", masked))[:_MOST_WORDS]
    said = [_NAMES.get(word, word) for word in said]
    pairs = (f"{a} {b}" for a, b in zip(["^", *said], [*said, "$"], strict=True))
    foods = min(said.count("F"), _MOST_FOODS)
    steps = min(len(said) // _WORDS_A_STEP, _MOST_STEPS)
    return frozenset([*said, *pairs, f"foods={foods}", f"length={steps}", ALWAYS])


@lru_cache(maxsize=1)
def _weights() -> Mapping[str, tuple[float, ...]]:
    return {row["sign"]: tuple(float(row[kind]) for kind in Kind) for row in table("words_kinds.csv")}


def likely(masked: str) -> Mapping[Kind, float]:
    """The probability of each kind; they sum to one."""
    known = _weights()
    found = [sign for sign in signs(masked) if sign in known]
    if sum(sign[0].isalpha() and "=" not in sign for sign in found) < FEWEST_WORDS:
        return {kind: 1 / len(Kind) for kind in Kind}
    rows = [known[sign] for sign in found]
    sums = [sum(column) for column in zip(*rows, strict=True)]
    top = max(sums)
    powers = [exp(total - top) for total in sums]
    return {kind: power / sum(powers) for kind, power in zip(Kind, powers, strict=True)}
