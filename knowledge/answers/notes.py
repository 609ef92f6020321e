"""Notes on technique, found by the words of a question; and what to say when nothing is found.

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
    timed = question.foods and question.says("how long", "minutes", "cook time")
    if timed and "minute" not in text:
        return None  # a time is asked: better computed than quoted
    return Answer(known=True, answer=text, sources=cited(question.store, source))


def unknown(question: Question) -> Answer:
    """An honest no, with the nearest that we do know."""
    foods = [food.name for food in question.foods][:3]
    near = [
        text.split(":")[0].split(".")[0] for share, text, _ in _ranked(question)[:2] if share >= ENOUGH / 2
    ]
    text = "I don't know that."
    if foods:
        text += f" Of {', '.join(foods)} I can tell: safe temperature, how long it keeps, cooking times, "
        text += "allergens, swaps."
    elif near:
        text += f" The nearest that I have: {'; '.join(near)}."
    else:
        text += " I know safe temperatures, storage, thawing, water for grains, conversions, swaps and times."
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
    found = (
        (sum(weights[word] for word in telling if word in words) / whole, text, source)
        for words, text, source in notes
    )
    places = {text: sum(words.get(word, 0) for word in telling) for words, text, _ in notes}
    ranked = sorted(
        found, key=lambda entry: (-entry[0], places[entry[1]])
    )  # a tie: the word that leads a note
    return [entry for entry in ranked if entry[0] > 0]


def _stem(word: str) -> str:
    return re.sub(r"(?:ing|ed|ise|ize|y|e)$", "", singular(word)) if len(word) > 4 else singular(word)


@lru_cache(maxsize=4)
def _index(store: Store) -> tuple[dict[str, float], tuple[tuple[dict[str, int], str, str], ...]]:
    """Weight of each word, and the notes with the place of each of their words."""
    notes = tuple(
        (_places(row["words"].lower().split()), row["text"], row["source"])
        for row in store.table("technique")
    )
    holding = Counter(word for words, _, _ in notes for word in words)
    return {word: math.log(1 + len(notes) / n) for word, n in holding.items()}, notes


def _places(words: list[str]) -> dict[str, int]:
    return {_stem(word): place for place, word in reversed(list(enumerate(words)))}
