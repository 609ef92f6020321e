"""What went wrong at the stove, how it is saved, why a step is done: `craft.csv`.

A row is about a thing and what befell it or is asked of it (`about`), in clauses as in `text.clauses`.
An alternative "@mushy" stands for all the words of that notion in `craft_words.csv`, so that a row
need not know how a cook puts it. Of the rows that speak the one with most clauses answers, of these
the one of lowest rank, then the one of fewest words. Ranks are those of `advice.csv`: an advice of
lower rank is said instead. Nothing is said to a question about something else too: how long a dish
keeps, whether it is safe, what to put instead (the notion `otherwise`), unless the row listens for
that very word.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from functools import lru_cache

from knowledge.answers.cite import cited
from knowledge.answers.dangers.advice import first_rank
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.degrees import temperatures_degC
from knowledge.answers.reading.words import words_of
from knowledge.foods.store import Store
from knowledge.text.clauses import Clause, clauses_of, met, says
from knowledge.text.normalise import singular

OTHERWISE = "otherwise"
FAILING = "failing"  # the words by which a cook complains of something, whatever it is
_TOLD_AMOUNT = re.compile(r" \d+(?:\.\d+)? ?(?:g|grams?|kg|oz|ounces?|ml)(?= )")
NARROW = 14  # words of a note's first clause: it is about one thing, not about sauces at large


@dataclass(frozen=True, slots=True, kw_only=True)
class Note:
    """A row of `craft.csv`, its notions spelled out."""

    rank: int
    about: tuple[Clause, ...]
    text: str
    source: str

    @property
    def said(self) -> frozenset[str]:
        """The beginnings of words that the note listens for."""
        return frozenset(word for wanted, words in self.about if wanted for word in words)

    @property
    def words(self) -> frozenset[str]:
        """Every word of the note, in the singular."""
        said = " ".join([*self.said, self.text]).lower()
        return frozenset(singular(word) for word in re.findall("[a-z]+", said))

    @property
    def depth(self) -> int:
        """How many things must be said: the note that asks for more is the narrower one."""
        return sum(wanted for wanted, _ in self.about)


def craft(question: Question) -> Answer | None:
    """The note about what went wrong or is asked, unless an advice comes first."""
    told = [note for note in _notes(question.store) if met(question.plain, note.about)]
    told = [note for note in told if not _asks_otherwise(question, note)]
    if not told:
        return None
    best = min(told, key=lambda note: (-note.depth, note.rank, len(note.said)))
    before = first_rank(question)
    if before is not None and before < best.rank:
        return None
    return Answer(known=True, answer=best.text, sources=cited(question.store, best.source))


def craft_of(question: Question) -> Answer | None:
    """The note about a thing of which the question complains in words that no note knows.

    Of several notes about it the one that shares most words with the question, if one does.
    """
    if not says(question.plain, *notions(question.store)[FAILING]):
        return None
    near = [note for note in _notes(question.store) if _is_about(question, note)]
    near = [note for note in near if not _asks_otherwise(question, note)]
    telling = {word for word in question.words if word not in words_of(question.store, "stop")}
    shared = {note: len(telling & note.words) for note in near}
    best = max(shared.values(), default=0)
    found = [note for note in near if shared[note] == best]
    if len(found) != 1 or first_rank(question) is not None:
        return None
    return Answer(known=True, answer=found[0].text, sources=cited(question.store, found[0].source))


def _is_about(question: Question, note: Note) -> bool:
    (_, thing), *_ = note.about
    others = tuple(clause for clause in note.about if not clause[0])
    return len(thing) <= NARROW and says(question.plain, *thing) and met(question.plain, others)


def _asks_otherwise(question: Question, note: Note) -> bool:
    """True if a reading is told, or something is asked that the note does not listen for."""
    plain = _TOLD_AMOUNT.sub(" ", question.plain)  # of what went in: nothing is asked by it
    heard = [start for start in notions(question.store)[OTHERWISE] if says(plain, start)]
    unheard = [start for start in heard if not any(start.strip("_") in said for said in note.said)]
    return bool(unheard or temperatures_degC(question))


@lru_cache(maxsize=4)
def notions(store: Store) -> dict[str, tuple[str, ...]]:
    """The words of each notion."""
    return {row["notion"]: tuple(row["words"].split(";")) for row in store.table("craft_words")}


@lru_cache(maxsize=4)
def _notes(store: Store) -> tuple[Note, ...]:
    return tuple(
        Note(
            rank=int(row["rank"]),
            about=tuple(
                (wanted, tuple(_spelled(words, store))) for wanted, words in clauses_of(row["about"])
            ),
            text=row["text"],
            source=row["source"],
        )
        for row in store.table("craft")
    )


def _spelled(words: tuple[str, ...], store: Store) -> Iterator[str]:
    for word in words:
        if word.startswith("@"):
            yield from notions(store)[word[1:]]
        else:
            yield word
