"""Notes on technique, found by the words of a question; and what to say when nothing is found.

A note answers when it holds most of the weight of the question's telling words, a rare
word weighing more than a common one. Words that no table knows weigh most of all, so
that a question about something else is not answered with whatever comes near.
"""

from __future__ import annotations

import math
import re
from functools import lru_cache

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.question import words_of
from knowledge.foods.store import Store
from knowledge.text.normalise import singular

ENOUGH = 0.6  # share of the weight of a question that a note must hold


def technique(question: Question) -> Answer | None:
    """The note on technique that the question asks for."""
    ranked = _ranked(question)
    if not ranked or ranked[0][0] < ENOUGH:
        return None
    _, text, source = ranked[0]
    return Answer(known=True, answer=text, sources=cited(question.store, source))


def unknown(question: Question) -> Answer:
    """An honest no, with the nearest that we do know."""
    foods = [food.name for food in question.foods][:3]
    near = [
        text.split(":")[0].split(".")[0] for share, text, _ in _ranked(question)[:2] if share >= ENOUGH / 2
    ]
    text = "I don't know that."
    if foods:
        text += f" Of {', '.join(foods)} I can tell: safe temperature, how long it keeps, cooking times, allergens, swaps."
    elif near:
        text += f" The nearest that I have: {'; '.join(near)}."
    else:
        text += " I know safe temperatures, storage, thawing, water for grains, conversions, swaps and cooking times."
    return Answer(known=False, answer=text, sources=())


def _ranked(question: Question) -> list[tuple[float, str, str]]:
    weights, notes = _index(question.store)
    rare = max(weights.values(), default=1.0)
    telling = {
        _stem(word)
        for word in question.words
        if word not in words_of(question.store, "stop") and not word.isdigit()
    } - {""}
    if not telling:
        return []
    whole = sum(weights.get(word, rare) for word in telling)
    scored = [
        (sum(weights[word] for word in telling & words) / whole, text, source)
        for words, text, source in notes
    ]
    return sorted((entry for entry in scored if entry[0] > 0), key=lambda entry: -entry[0])


def _stem(word: str) -> str:
    return re.sub(r"(?:ing|ed|ise|ize|y|e)$", "", singular(word)) if len(word) > 4 else singular(word)


@lru_cache(maxsize=4)
def _index(store: Store) -> tuple[dict[str, float], tuple[tuple[frozenset[str], str, str], ...]]:
    notes = tuple(
        (frozenset(_stem(word) for word in row["words"].lower().split()), row["text"], row["source"])
        for row in store.table("technique")
    )
    every = frozenset().union(*(words for words, _, _ in notes)) if notes else frozenset()
    weights = {word: math.log(1 + len(notes) / sum(word in words for words, _, _ in notes)) for word in every}
    return weights, notes
