"""Notes on technique, found by the words of a question; and what to say when nothing is.

A note answers when it holds most of the weight of the question's telling words, a rare
word weighing more than a common one. Words that no table knows weigh most of all, so
that a question about something else is not answered with whatever comes near.
"""

from __future__ import annotations

import math
import re
from collections import Counter
from functools import lru_cache

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.search import nearest
from knowledge.answers.words import words_of
from knowledge.foods.store import Store
from knowledge.text.normalise import singular

_TIME = re.compile(r"\d (?:min|hour|second)")
ENOUGH = 0.6  # share of the weight of a question that a note must hold
OF_A_FOOD = 0.35  # weight of a food's name: "why sear a steak" is about searing


def technique(question: Question) -> Answer | None:
    """The note on technique that the question asks for."""
    ranked = _ranked(question)
    if not ranked or ranked[0][0] < ENOUGH:
        return None
    _, text, source = ranked[0]
    timed = question.foods and question.says("how long", "minutes", "time_")
    if timed and not _TIME.search(text):
        return None  # a time is asked: better computed than quoted
    return Answer(known=True, answer=text, sources=cited(question.store, source))


def unknown(question: Question) -> Answer:
    """An honest no, with what can be told of the foods named."""
    foods = [food.name for food in question.foods][:3]
    text = "I don't know that."
    if foods:
        text += f" Of {', '.join(foods)} I can tell: safe temperature, how long it keeps, cooking times, "
        text += "allergens, swaps."
    else:
        text += " I know safe temperatures, storage, thawing, water for grains, conversions, swaps and times."
    return Answer(known=False, answer=text, sources=())


def _telling(question: Question) -> frozenset[str]:
    stop = words_of(question.store, "stop")
    return frozenset(word for word in question.words if word not in stop and not word.isdigit())


def _ranked(question: Question) -> list[tuple[float, str, str]]:
    """Share of the question's weight that each note holds, the note and its source, best first."""
    weights, notes = _index(question.store)
    rare = max(weights.values(), default=1.0)
    telling = {_stem(word) for word in _telling(question)} - {""}
    named = {_stem(word) for m in question.mentions for word in question.words[m.start : m.end]}
    for mention in question.mentions:  # "courgette": the note says zucchini
        if not any(_stem(w) in weights for w in question.words[mention.start : mention.end]):
            own = {_stem(word) for word in mention.food.name.split()}
            telling = telling - {_stem(w) for w in question.words[mention.start : mention.end]} | own
            named |= own
    if not telling:
        return []

    def weight(word: str) -> float:
        return weights.get(word, rare) * (OF_A_FOOD if word in named else 1.0)

    whole = sum(weight(word) for word in telling)
    timed = bool(named) and question.says("how long", "minutes", "time_")
    found = []
    for entry in nearest(question.store, _telling(question) | named, kind="technique", limit=16):
        words, text, source = notes[entry.id]
        if not any(word in words for word in telling - named):
            continue  # shares a food and nothing else with the question
        if timed and not any(word in words for word in named):
            continue  # "how long to boil yam" is not answered with the eggs' time
        share = sum(weight(word) for word in telling if word in words) / whole
        place = sum(words.get(word, 0) for word in telling)  # of a tie: the note that a word leads
        found.append((-share, place, len(words), text, source))  # of a tie still: the narrower note
    return [(-share, text, source) for share, _, _, text, source in sorted(found)]


def _stem(word: str) -> str:
    return re.sub(r"(?:ing|ed|ise|ize|y|e)$", "", singular(word)) if len(word) > 4 else singular(word)


@lru_cache(maxsize=4)
def _index(store: Store) -> tuple[dict[str, float], dict[str, tuple[dict[str, int], str, str]]]:
    """Weight of each word, and the notes by id with the place of each of their words."""
    notes = {
        row["id"]: (_places(row["words"].lower().split()), row["text"], row["source"])
        for row in store.table("technique")
    }
    holding = Counter(word for words, _, _ in notes.values() for word in words)
    return {word: math.log(1 + len(notes) / n) for word, n in holding.items()}, notes


def _places(words: list[str]) -> dict[str, int]:
    return {_stem(word): place for place, word in reversed(list(enumerate(words)))}
