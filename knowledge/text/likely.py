"""How likely each kind of message, and each type of event, is by the words: a linear model.

    p(kind) = exp(sum of weights of the features) / the same summed over the kinds

The weights are in `words_kinds.csv` and `words_events.csv`; they are fitted to labelled
messages by `tests/benchmarks/fit_kinds.py`, and can be read and mended by hand. What the
rules make of a message is one feature among the others.
Source of the method: multinomial logistic regression, any textbook of statistics.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from enum import StrEnum
from functools import lru_cache
from math import exp
from typing import TypeVar

from knowledge.text.features import features
from knowledge.text.model import EventType, Kind
from knowledge.text.vocabulary import table

_Class = TypeVar("_Class", bound=StrEnum)


def kinds(found: frozenset[str]) -> Mapping[Kind, float]:
    """The probability of each kind by the features of a message; they sum to one."""
    return shares(found, "words_kinds.csv", tuple(Kind))


def event_types(masked: str, ruled: EventType | None) -> Mapping[EventType, float]:
    """The probability of each type of an event by its masked text and what the rules take it for."""
    found = features(masked, [event_fact(ruled)])
    return shares(found, "words_events.csv", tuple(EventType))


def event_fact(ruled: EventType | None) -> str:
    """The feature that tells what the rules take an event for."""
    return f"event={ruled or 'none'}"


@lru_cache(maxsize=4)
def _weights(name: str, classes: tuple[StrEnum, ...]) -> Mapping[str, tuple[float, ...]]:
    return {row["sign"]: tuple(float(row[one]) for one in classes) for row in table(name)}


def shares(found: frozenset[str], name: str, classes: Sequence[_Class]) -> Mapping[_Class, float]:
    """The probability of each class by the features found and the table of weights of that name."""
    known = _weights(name, tuple(classes))
    rows = [known[feature] for feature in found if feature in known]
    sums = [sum(column) for column in zip(*rows, strict=True)] or [0.0] * len(classes)
    top = max(sums)
    powers = [exp(total - top) for total in sums]
    whole = sum(powers)
    return {one: power / whole for one, power in zip(classes, powers, strict=True)}
