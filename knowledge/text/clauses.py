"""Clauses of words: when a row of a table speaks.

Clauses are separated by ";", the alternatives in one by "|", each a beginning of words
("_" stands for a space, so that "rice_" is not "riced"); a clause that begins with "!" is
met when none of its words is said. A row speaks when each of its clauses is met.
An alternative in braces, "{pregnant}", stands for the words of that topic of `topics.csv`.
"""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge.tables import rows

_TOPIC = re.compile(r"\{([a-z ]+)\}")

Clause = tuple[bool, tuple[str, ...]]  # whether one of the words is wanted, the words


def clauses_of(when: str) -> tuple[Clause, ...]:
    """The clauses of a cell."""
    return tuple(
        (not said.startswith("!"), tuple(said.removeprefix("!").split("|")))
        for said in spelled_out(when).split(";")
    )


def spelled_out(when: str) -> str:
    """A cell with the words of each topic in its place. Raises KeyError for a topic that has none."""
    return _TOPIC.sub(lambda part: _topics()[part[1]], when)


@lru_cache(maxsize=1)
def _topics() -> dict[str, str]:
    return {row["topic"]: row["words"].replace(";", "|") for row in rows("topics")}


def says(plain: str, *starts: str) -> bool:
    """True if a word, or a run of words, of a text with a space around each begins with one of `starts`."""
    return any(map(plain.__contains__, _beginnings(starts)))


@lru_cache(maxsize=16384)  # every clause of the tables, asked of every question
def _beginnings(starts: tuple[str, ...]) -> tuple[str, ...]:
    """The words as they stand in a text when they begin a word of it."""
    return tuple(f" {start.replace('_', ' ')}" for start in starts)


def met(plain: str, clauses: tuple[Clause, ...]) -> bool:
    """True if every clause is met by the words of a text."""
    return all(says(plain, *words) is wanted for wanted, words in clauses)
