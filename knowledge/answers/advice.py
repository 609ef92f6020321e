"""Advice from `advice.csv`: rules of safety and habit, matched by words.

A row speaks when each clause of `when` is met: clauses are separated by ";", the
alternatives in one by "|", each a beginning of words (see `Question.says`). The row with
the lowest rank wins; the dangers stand first. A row without a source says what we do
not know.
"""

from __future__ import annotations

from functools import lru_cache

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.foods.store import Store


def advice(question: Question) -> Answer | None:
    """The first advice whose words are all in the question."""
    for clauses, text, source in _rules(question.store):
        if all(question.says(*clause) for clause in clauses):
            return Answer(known=bool(source), answer=text, sources=cited(question.store, source))
    return None


@lru_cache(maxsize=4)
def _rules(store: Store) -> tuple[tuple[tuple[tuple[str, ...], ...], str, str], ...]:
    rows = sorted(store.table("advice"), key=lambda row: int(row["rank"]))
    return tuple(
        (
            tuple(tuple(clause.split("|")) for clause in row["when"].split(";")),
            row["answer"],
            row["source"],
        )
        for row in rows
    )
