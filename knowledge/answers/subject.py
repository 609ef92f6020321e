"""The food that an allergy question is about, by its whole name.

"Goat milk" is not goat, "tom yum" no tomato and "soy flour" not flour: a verdict is given
only on a name that is known as a whole. Dishes and the like that are no foods of the
tables stand in `allergens_said.csv` with what they hold and what they may hold.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from knowledge.answers.diets_said import diets_said
from knowledge.answers.model import Mention, Question
from knowledge.answers.restraints import rules_out
from knowledge.answers.words import words_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.text.normalise import singular


@dataclass(frozen=True, slots=True, kw_only=True)
class Subject:
    """What is asked about. `foods` holds each food of its name; `exact` is False when words are left over."""

    name: str
    foods: tuple[Food, ...] = ()
    exact: bool = True
    names_it: bool = False  # the allergen asked about is a word of its name: "soy flour"
    has: frozenset[str] = frozenset()  # allergens beyond those of the foods
    may: tuple[str, ...] = ()
    note: str = ""
    single: bool = False  # one ingredient, so that what is not listed is not in it


def subject_of(question: Question, asked: str, token: str) -> Subject | None:
    """The food that the question asks about; `asked` are the allergen's words, which are not it."""
    if told := _told(question, asked):
        return told
    for mention in question.mentions:
        if rules_out(question, mention) and len(question.mentions) > 1:
            continue
        found = _whole(question, mention, token)
        if found.name not in (asked, f"{asked}s", f"{asked}es", asked.removesuffix(" free")):
            return found
    return None


def _whole(question: Question, mention: Mention, token: str) -> Subject:
    """The mention with the words that stand right beside it and belong to its name."""
    words = question.plain.split()
    start, end = mention.start, mention.end
    while start > 0 and _belongs(question, words, start - 1):
        start -= 1
    while end < len(words) and _belongs(question, words, end):
        end += 1
    inside = [m for m in question.mentions if start <= m.start and m.end <= end]
    left_over = end - start - sum(m.end - m.start for m in inside)
    state = words[start - 1] if start > 0 else ""
    stated = [food for m in inside if (food := _by_name(question.store).get(f"{state} {m.food.name}"))]
    around = f" {' '.join(words[start : mention.start])} · {' '.join(words[mention.end : end])} "
    return Subject(
        name=" ".join(words[start:end]),
        foods=(*(m.food for m in inside), *stated),  # dried fruit holds what fresh fruit does not
        exact=left_over == 0 and len(inside) == 1 and mention.phrase not in _loose(question.store),
        names_it=token in diets_said(around, question.store).values(),
    )


def _belongs(question: Question, words: list[str], at: int) -> bool:
    """True for a word that may be part of a food's name, not of the question."""
    word = words[at]
    if word in _asking(question.store) or singular(word) in _asking(question.store) or not word.isalpha():
        return False
    cue = words[at + 1] if at + 1 < len(words) else ""
    said = diets_said(f" {word} ", question.store)
    return not (said and (re.match(r"(?:free|allerg|intoleran|$)", cue) or _is_whom(said)))


def _is_whom(said: dict[str, str]) -> bool:
    """ "Coeliac", "vegan": words for people, never of a food's name."""
    return any(not token.startswith("no ") or word.endswith("liac") for word, token in said.items())


def _told(question: Question, asked: str) -> Subject | None:
    found = [
        (phrase, row)
        for phrase, row in _rows(question.store)
        if phrase != asked and (f" {phrase} " in question.plain or f" {phrase}s " in question.plain)
    ]
    if not found:
        return None
    phrase, row = max(found, key=lambda entry: len(entry[0]))
    longer = [m for m in question.mentions if phrase in m.phrase and len(m.phrase) > len(phrase) + 1]
    if longer:
        return None
    food = question.store.named(phrase)
    return Subject(
        name=phrase,
        foods=(food,) if food else (),
        has=frozenset(filter(None, row["has"].split(";"))),
        may=tuple(filter(None, row["may"].split(";"))),
        note=row["note"],
        single=bool(row["plain"]),
    )


@lru_cache(maxsize=4)
def _rows(store: Store) -> tuple[tuple[str, dict[str, str]], ...]:
    return tuple(
        (phrase, dict(row)) for row in store.table("allergens_said") for phrase in row["words"].split(";")
    )


@lru_cache(maxsize=4)
def _by_name(store: Store) -> dict[str, Food]:
    return {food.name: food for food in store.foods()}


@lru_cache(maxsize=4)
def _asking(store: Store) -> frozenset[str]:
    return words_of(store, "stop") | words_of(store, "filler") | words_of(store, "asking")


def _loose(store: Store) -> frozenset[str]:
    """Names that stand for a food only in a wider sense: "tom" for tomato."""
    return words_of(store, "loose")
