"""A net under the chosen answer: no danger that a question tells of is passed over in silence.

One typed answer takes a question, and what else the question holds is lost to it. `dangers.csv`
holds the dangers: the words that tell of each (`when`), the words by which an answer shows that it
deals with it (`dealt`), and what is said where it does not, its own text or that of a row of
`advice.csv`. The rows of `advice.csv` that tell of a hazard belong to the net as well, each by its own
words: `advice_hazards.csv` names them. An answer that passes over a danger is replaced. One that is itself
about another danger of the question stays: the worse of the two comes first, of the other the first
sentence stands behind. A second danger that the first one's text does not deal with is told after
it in the same way.

In `when` the clauses are those of `text.clauses`; `@meat` and `@animal` stand for a food of that
kind that is named.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from knowledge.answers.cite import cited
from knowledge.answers.dangers.advice import row as advice_row
from knowledge.answers.dangers.advice import turned
from knowledge.answers.model import Answer, Question
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.text.clauses import Clause, clauses_of, says

MEATS = frozenset({"whole_meat", "ground_meat", "poultry", "game", "offal", "ham_raw"})
_IS: Mapping[str, Callable[[Food], bool]] = {
    "@meat": lambda food: food.safety in MEATS,
    "@animal": lambda food: bool(food.safety) or food.animal in ("egg", "dairy"),
}
HELP = (
    "emergency number",
    "poison control",
    "fire brigade",
)  # an answer that calls for help is not displaced
THROWN_AWAY = "no: throw it away"  # nothing is left of it that could be another danger
_SENTENCE_END = re.compile(r"(?<=[.!?]) (?=[A-Z])")


@dataclass(frozen=True, slots=True, kw_only=True)
class Danger:
    """A danger: when a question tells of it, when an answer deals with it, and what is said of it."""

    id: str
    when: tuple[Clause, ...]
    dealt: tuple[Clause, ...]
    says: Answer


def netted(question: Question, answer: Answer) -> Answer:
    """The answer, unless the question tells of a danger that it passes over: then what is said of that."""
    text = answer.answer.lower() if answer.known else ""  # "I don't know that" deals with nothing
    if any(call in text for call in HELP) or text.startswith(THROWN_AWAY):
        return answer
    met = met_by(question)
    missed = next((danger for danger in met if not deals_with(danger, text)), None)
    if missed is None:
        return answer
    said = replace(missed.says, answer=turned(question, missed.says.answer))
    if any(deals_with(danger, text) for danger in met):
        worse_is_told = missed is not met[0]
        return _behind(answer, said) if worse_is_told else _behind(said, answer)
    told = said.answer.lower()
    second = next((danger for danger in met if not deals_with(danger, told)), None)
    return said if second is None else _behind(said, second.says)


def _behind(first: Answer, then: Answer) -> Answer:
    """An answer, and the first sentence of another behind it."""
    return Answer(
        known=True,
        answer=f"{first.answer} {_SENTENCE_END.split(then.answer)[0]}",
        sources=tuple(dict.fromkeys((*first.sources, *then.sources))),
    )


def met_by(question: Question) -> tuple[Danger, ...]:
    """The dangers that a question tells of, the worst first."""
    return tuple(danger for danger in dangers(question.store) if is_met(question, danger))


def deals_with(danger: Danger, text: str) -> bool:
    """True if an answer, in lower case, shows that it deals with a danger."""
    return all(any(word in text for word in words) for _, words in danger.dealt)


def is_met(question: Question, danger: Danger) -> bool:
    """True if a question tells of a danger."""
    return all(_says(question, words) is wanted for wanted, words in danger.when)


def _says(question: Question, words: tuple[str, ...]) -> bool:
    kinds = [_IS[word] for word in words if word in _IS]
    if any(is_one(food) for is_one in kinds for food in question.foods):
        return True
    return says(question.plain, *(word for word in words if word not in _IS))


@lru_cache(maxsize=4)
def dangers(store: Store) -> tuple[Danger, ...]:
    """The table of dangers, the lowest rank first, then the hazards of `advice.csv` in their order."""
    rows = sorted(store.table("dangers"), key=lambda row: (int(row["rank"]), row["id"]))
    told = tuple(
        Danger(
            id=row["id"],
            when=clauses_of(row["when"]),
            dealt=clauses_of(row["dealt"]),
            says=_said(store, row),
        )
        for row in rows
    )
    return (*told, *_hazards(store))


def _hazards(store: Store) -> tuple[Danger, ...]:
    """The rows of `advice.csv` that tell of a hazard."""
    dealt = {row["advice"]: row["dealt"] for row in store.table("advice_hazards")}
    rows = sorted(store.table("advice"), key=lambda row: int(row["rank"]))
    return tuple(
        Danger(
            id=row["id"],
            when=clauses_of(row["when"]),
            dealt=clauses_of(dealt[row["id"]]),
            says=Answer(known=True, answer=row["answer"], sources=cited(store, row["source"])),
        )
        for row in rows
        if row["id"] in dealt
    )


def _said(store: Store, row: Mapping[str, str]) -> Answer:
    if row["answer"]:
        return Answer(known=True, answer=row["answer"], sources=cited(store, row["source"]))
    told = advice_row(store, row["advice"])
    if told is None:
        raise KeyError(row["advice"])
    return told
