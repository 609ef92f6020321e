"""Notes on technique, found by the words of a question; and what to say when nothing is.

A note answers when it holds most of the weight of the question's telling words, a rare
word weighing more than a common one. Words that no table knows weigh most of all, so
that a question about something else is not answered with whatever comes near.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from knowledge.answers.cite import cited
from knowledge.answers.lore.search import nearest
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.words import words_of
from knowledge.foods.store import Store
from knowledge.text.normalise import singular

ENOUGH = 0.6  # share of the weight of a question that a note must hold
OF_A_FOOD = 0.35  # weight of a food's name: "why sear a steak" is about searing
LOOKED_AT = 16  # notes, those that the search finds nearest
FOODS_NAMED = 3  # in an honest no

_TIME = re.compile(r"\d (?:min|hour|second)")
_ENDING = re.compile(r"(?:ing|ed|ise|ize|y|e)$")
_STEMMED_FROM = 5  # letters; shorter words keep their ending

_REMEMBERED = re.compile(
    r" (?:what|which|when|where|how much|how many|who) (?:\w+ )?did (?:i|we|my \w+|our \w+) "
    r"(?:put|use|cook|make|add|serve|buy|bake|eat|have) (?!.*(?:wrong|should|ill|sick|vomit|poison))"
)

_NO = "I don't know that."
_OF_FOODS = (
    f"{_NO} Of {{foods}} I can tell: safe temperature, how long it keeps, cooking times, allergens, swaps."
)
_IN_GENERAL = (
    f"{_NO} I know safe temperatures, storage, thawing, water for grains, conversions, swaps and times."
)


@dataclass(frozen=True, slots=True)
class Note:
    """A row of `technique.csv`; `places` says of the stem of each word where it first stands."""

    places: Mapping[str, int]
    text: str
    source: str


@dataclass(frozen=True, slots=True)
class Asked:
    """What a question tells, in stems of its words; `named` are those of foods."""

    telling: frozenset[str]
    named: frozenset[str]
    timed: bool  # a time is asked for


def technique(question: Question) -> Answer | None:
    """The note on technique that the question asks for."""
    note = _best(question)
    if note is None:
        return None
    if question.foods and _asks_a_time(question) and not _TIME.search(note.text):
        return None  # better computed than quoted
    return Answer(known=True, answer=note.text, sources=cited(question.store, note.source))


def remembered(question: Question) -> Answer | None:
    """ "What did I put in it last week": nobody told us."""
    return unknown(question) if _REMEMBERED.search(question.plain) else None


def unknown(question: Question) -> Answer:
    """An honest no, with what can be told of the foods named."""
    foods = ", ".join(food.name for food in question.foods[:FOODS_NAMED])
    return Answer(known=False, answer=_OF_FOODS.format(foods=foods) if foods else _IN_GENERAL, sources=())


def _asks_a_time(question: Question) -> bool:
    return question.says("how long", "minutes", "time_")


def _best(question: Question) -> Note | None:
    """The note that holds most of the question's weight; None where none holds enough.

    Of a tie the note in which the words stand first, then the narrower one.
    """
    asked = _asked(question)
    if not asked.telling:
        return None
    weights, notes = _index(question.store)
    weighed = {word: _weight(word, asked, weights) for word in asked.telling}
    whole = sum(weighed.values())
    sought = _told(question) | asked.named
    near = nearest(question.store, sought, limit=LOOKED_AT)
    found = []
    for note in (notes[note_id] for note_id in near):
        if _speaks_of(note, asked):
            share = sum(weight for word, weight in weighed.items() if word in note.places) / whole
            place = sum(note.places.get(word, 0) for word in asked.telling)
            found.append((-share, place, len(note.places), note.text, note))
    if not found:
        return None
    share, *_, note = min(found, key=lambda entry: entry[:-1])
    return note if -share >= ENOUGH else None


def _weight(word: str, asked: Asked, weights: Mapping[str, float]) -> float:
    """What a word weighs; one that no note holds, as much as the rarest."""
    rare = max(weights.values(), default=1.0)
    return weights.get(word, rare) * (OF_A_FOOD if word in asked.named else 1.0)


def _speaks_of(note: Note, asked: Asked) -> bool:
    """True unless the note shares only a food with the question, or is of other foods than the one timed."""
    shares_more = any(word in note.places for word in asked.telling - asked.named)
    if asked.timed and asked.named:  # "how long to boil yam" is not answered with the eggs' time
        return shares_more and any(word in note.places for word in asked.named)
    return shares_more


def _told(question: Question) -> frozenset[str]:
    """The words of the question that say what it is about."""
    stop = words_of(question.store, "stop")
    return frozenset(word for word in question.words if word not in stop and not word.isdigit())


def _asked(question: Question) -> Asked:
    """The question in stems; a food goes by our name where the notes know that only ("zucchini")."""
    weights, _ = _index(question.store)
    telling = {_stem(word) for word in _told(question)} - {""}
    named: set[str] = set()
    for mention in question.mentions:
        said = {_stem(word) for word in question.words[mention.start : mention.end]}
        named |= said
        if said.isdisjoint(weights):
            ours = {_stem(word) for word in mention.food.name.split()}
            telling = telling - said | ours
            named |= ours
    return Asked(telling=frozenset(telling), named=frozenset(named), timed=_asks_a_time(question))


def _stem(word: str) -> str:
    one = singular(word)
    return _ENDING.sub("", one) if len(word) >= _STEMMED_FROM else one


@lru_cache(maxsize=4)
def _index(store: Store) -> tuple[Mapping[str, float], Mapping[str, Note]]:
    """Weight of each word, and the notes by id."""
    notes = {
        row["id"]: Note(places=_places(row["words"].lower().split()), text=row["text"], source=row["source"])
        for row in store.table("technique")
    }
    holding = Counter(word for note in notes.values() for word in note.places)
    return {word: math.log(1 + len(notes) / n) for word, n in holding.items()}, notes


def _places(words: list[str]) -> dict[str, int]:
    """Where the stem of each word first stands."""
    return {_stem(word): place for place, word in reversed(list(enumerate(words)))}
