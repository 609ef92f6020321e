"""Somebody at risk eats with them: each food that is named and is not for them is judged.

`eater_foods.csv` holds the foods that are unsafe for a child, in pregnancy, in old age or with weak
immunity, however they are asked about: when they are named for such an eater (`when`), the words by
which an answer shows that it deals with them (`dealt`), and one sentence on each. What the chosen
answer leaves out is said with it; an answer about something else that nobody asked for gives way.
"""

from __future__ import annotations

from functools import lru_cache

from knowledge import accidents
from knowledge.answers.cite import cited
from knowledge.answers.dangers.net import HELP, Danger, deals_with, is_met
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.foods.store import Store
from knowledge.text.clauses import clauses_of


def judged_for_eaters(question: Question, answer: Answer) -> Answer:
    """The answer, with a word on each food named that the eater must not have so."""
    if accidents.heard(question.text) is not None:
        return answer  # first aid is read at a glance
    text = answer.answer.lower() if answer.known else ""
    named = tuple(row for row in unsafe_for_eaters(question.store) if is_met(question, row))
    missed = tuple(row for row in named if not deals_with(row, text))
    if not missed:
        return answer
    said = tuple(row.says.answer for row in missed)
    if len(missed) < len(named) or any(call in text for call in HELP):
        said = (answer.answer, *said)
    elif answer.known and (text.startswith("no") or hears(question, "asks something besides")):
        said = (*said, answer.answer)
    return Answer(
        known=True,
        answer=" ".join(said),
        sources=tuple(
            dict.fromkeys(
                (
                    *(source for row in missed for source in row.says.sources),
                    *(answer.sources if answer.answer in said else ()),
                )
            )
        ),
    )


@lru_cache(maxsize=4)
def unsafe_for_eaters(store: Store) -> tuple[Danger, ...]:
    """The table of what is not for eaters at risk, the lowest rank first."""
    rows = sorted(store.table("eater_foods"), key=lambda row: (int(row["rank"]), row["id"]))
    return tuple(
        Danger(
            id=row["id"],
            when=clauses_of(row["when"]),
            dealt=clauses_of(row["dealt"]),
            says=Answer(known=True, answer=row["answer"], sources=cited(store, row["source"])),
        )
        for row in rows
    )
