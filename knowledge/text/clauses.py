"""Clauses of words: when a row of a table speaks.

Clauses are separated by ";", the alternatives in one by "|", each a beginning of words
("_" stands for a space, so that "rice_" is not "riced"); a clause that begins with "!" is
met when none of its words is said. A row speaks when each of its clauses is met.
"""

from __future__ import annotations

from functools import lru_cache

Clause = tuple[bool, tuple[str, ...]]  # whether one of the words is wanted, the words


def clauses_of(when: str) -> tuple[Clause, ...]:
    """The clauses of a cell."""
    return tuple(
        (not said.startswith("!"), tuple(said.removeprefix("!").split("|"))) for said in when.split(";")
    )


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
