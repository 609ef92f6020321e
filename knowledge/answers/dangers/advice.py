"""Advice from `advice.csv`: rules of safety and habit, matched by words.

A row speaks when each clause of `when` is met (see `text.clauses`). The row with the lowest rank wins;
the dangers stand first. A row without a source says what we do not know.
"""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.foods.store import Store
from knowledge.text.clauses import Clause, clauses_of, met

_ASKS_DANGER = clauses_of("{asks danger};!{asks permission}")
URGENT = 30  # rows up to this rank outrank every other answer

# A "No" that only says that something hurts, so that it may be turned round.
_HURTS = re.compile(r"^No(?=:|, (?:never|poison|with)\b[^:.]*:)")


def emergency(question: Question) -> Answer | None:
    """The advice that comes before anything else: a reaction, an illness, a baby's honey."""
    return _first(question, up_to=URGENT)


def advice(question: Question) -> Answer | None:
    """The first advice whose words are all in the question."""
    return _first(question)


def first_rank(question: Question) -> int | None:
    """The rank of the advice that would be given."""
    return next((rank for rank, when, _, _ in _rules(question.store) if met(question.plain, when)), None)


def _first(question: Question, *, up_to: int | None = None) -> Answer | None:
    for rank, clauses, text, source in _rules(question.store):
        if up_to is not None and rank > up_to:
            return None
        if met(question.plain, clauses):
            return Answer(
                known=bool(source), answer=turned(question, text), sources=cited(question.store, source)
            )
    return None


def turned(question: Question, text: str) -> str:
    """ "Is it dangerous to ...?" is answered with "Yes" where "may I ...?" is with "No"."""
    if met(question.plain, _ASKS_DANGER):
        return _HURTS.sub("Yes", text)
    return text


def row(store: Store, row_id: str) -> Answer | None:
    """One row of the table, for an answer that is reached by another way."""
    for found in store.table("advice"):
        if found["id"] == row_id:
            source = found["source"]
            return Answer(known=bool(source), answer=found["answer"], sources=cited(store, source))
    return None


@lru_cache(maxsize=4)
def _rules(store: Store) -> tuple[tuple[int, tuple[Clause, ...], str, str], ...]:
    rows = sorted(store.table("advice"), key=lambda row: int(row["rank"]))
    return tuple(
        (
            int(row["rank"]),
            clauses_of(row["when"]),
            row["answer"],
            row["source"],
        )
        for row in rows
    )
