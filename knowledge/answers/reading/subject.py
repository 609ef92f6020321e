"""The food that an allergy question is about, by its whole name.

"Goat milk" is not goat, "tom yum" no tomato and "soy flour" not flour: a verdict is given
only on a name that is known as a whole. Dishes and the like that are no foods of the
tables stand in `allergens_said.csv` with what they hold and what they may hold.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache, reduce

from knowledge.answers.eaters.diets_said import diets_said
from knowledge.answers.eaters.restraints import rules_out
from knowledge.answers.model import Mention, Question
from knowledge.answers.reading.words import words_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.tables import items
from knowledge.text.normalise import singular

_NO_NAME = re.compile(r"(?:free|allerg|intoleran|$)")  # "nut free", "nut allergy": no part of a name


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
        found = _whole(question, mention, asked, token)
        if found.name not in (asked, f"{asked}s", f"{asked}es", asked.removesuffix(" free")):
            return found
    return None


def _whole(question: Question, mention: Mention, asked: str, token: str) -> Subject:
    """The mention with the words that stand right beside it and belong to its name."""
    words = _asked_parted(question, mention, asked).split()
    start, end = _stretch(question, mention, words)
    inside = [m for m in question.mentions if start <= m.start and m.end <= end]
    left_over = end - start - sum(m.end - m.start for m in inside)
    loose = mention.phrase in words_of(question.store, "loose")  # "tom" for tomato
    around = f" {' '.join(words[start : mention.start])} · {' '.join(words[mention.end : end])} "
    return Subject(
        name=" ".join(words[start:end]),
        foods=(*(m.food for m in inside), *_in_the_state_before(question.store, inside, words[:start])),
        exact=left_over == 0 and len(inside) == 1 and not loose,
        names_it=token in diets_said(around, question.store).values(),
    )


def _asked_parted(question: Question, mention: Mention, asked: str) -> str:
    """The words of the question; those asked about are no part of a name: "soy sauce | tree nut free"."""
    parted = " ".join("·" for _ in asked.split())
    return (
        question.plain
        if asked in mention.phrase
        else re.sub(rf" {re.escape(asked)}(?= (?:free|allerg|intoleran))", f" {parted}", question.plain)
    )


def _stretch(question: Question, mention: Mention, words: list[str]) -> tuple[int, int]:
    """Where the name around a mention begins and ends, in words."""
    start, end = mention.start, mention.end
    while start > 0 and _belongs(question, words, start - 1):
        start -= 1
    while end < len(words) and _belongs(question, words, end):
        end += 1
    return start, end


def _in_the_state_before(store: Store, inside: list[Mention], before: list[str]) -> list[Food]:
    """The foods in the state said right before their name: dried fruit holds what fresh fruit does not."""
    state = before[-1] if before else ""
    by_name = _by_name(store)
    return [food for m in inside if (food := by_name.get(f"{state} {m.food.name}"))]


def _belongs(question: Question, words: list[str], at: int) -> bool:
    """True for a word that may be part of a food's name, not of the question."""
    word, asking = words[at], _asking(question.store)
    if word in asking or singular(word) in asking or not word.isalpha():
        return False
    cue = words[at + 1] if at + 1 < len(words) else ""
    said = diets_said(f" {word} ", question.store)
    return not (said and (_NO_NAME.match(cue) or _is_whom(said)))


def _is_whom(said: dict[str, str]) -> bool:
    """ "Coeliac", "vegan": words for people, never of a food's name."""
    return any(not token.startswith("no ") or word.endswith("liac") for word, token in said.items())


def _told(question: Question, asked: str) -> Subject | None:
    """The dish or the like that `allergens_said.csv` knows; a longer name of a food goes before it."""
    phrase = max(
        (known for known in _dishes(question.store) if known != asked and _is_said(known, question.plain)),
        key=len,
        default=None,
    )
    if phrase is None or any(
        phrase in m.phrase and len(m.phrase) > len(phrase) + 1 for m in question.mentions
    ):
        return None
    return _of_row(question.store, phrase)


def _of_row(store: Store, phrase: str) -> Subject:
    row = _dishes(store)[phrase]
    food = store.named(phrase)
    return Subject(
        name=phrase,
        foods=(food,) if food else (),
        has=frozenset(items(row["has"])),
        may=tuple(items(row["may"])),
        note=row["note"],
        single=bool(row["plain"]),
    )


def named_so(question: Question) -> list[tuple[int, int, Subject]]:
    """Each food and each dish of `allergens_said.csv` that is named, with its place (of words), in order."""
    words = question.plain.split()
    found: list[tuple[int, int, Subject]] = []
    mentions = {mention.start: mention for mention in question.mentions}
    at = 0
    while at < len(words):
        mention = mentions.get(at)
        length = mention.end - at if mention else 0
        dish = next(
            (
                name
                for n in range(_longest(question.store), 0, -1)
                if (name := _dish_at(question, words, at, n))
            ),
            None,
        )
        if dish is not None and len(dish.split()) >= length:
            length = len(dish.split())
            found.append((at, at + length, _of_row(question.store, dish)))
        elif mention is not None:
            found.append((at, mention.end, Subject(name=mention.phrase, foods=(mention.food,))))
        at += max(length, 1)
    return found


def _dish_at(question: Question, words: list[str], at: int, length: int) -> str | None:
    """The name of `allergens_said.csv` that stands there, in as many words, its plural too."""
    said = " ".join(words[at : at + length])
    dishes = _dishes(question.store)
    return next((name for name in (said, said.removesuffix("s")) if name in dishes), None)


@lru_cache(maxsize=4)
def _longest(store: Store) -> int:
    return max(len(name.split()) for name in _dishes(store))


def told_names(store: Store) -> frozenset[str]:
    """The names of `allergens_said.csv`, as they are said."""
    return frozenset(_dishes(store))


def without_free_names(plain: str, store: Store) -> str:
    """The words without names like "gluten free flour": such a word in front is not asked about."""
    names = (name for name in _dishes(store) if " free " in name and f" {name} " in plain)
    return reduce(lambda left, name: left.replace(name, "·"), sorted(names, key=len, reverse=True), plain)


def _is_said(phrase: str, plain: str) -> bool:
    return f" {phrase} " in plain or f" {phrase}s " in plain


@lru_cache(maxsize=4)
def _dishes(store: Store) -> Mapping[str, Mapping[str, str]]:
    """The rows of `allergens_said.csv` by each of their words."""
    return {phrase: row for row in store.table("allergens_said") for phrase in items(row["words"])}


@lru_cache(maxsize=4)
def _by_name(store: Store) -> Mapping[str, Food]:
    return {food.name: food for food in store.foods()}


@lru_cache(maxsize=4)
def _asking(store: Store) -> frozenset[str]:
    """Words that belong to a question, not to the name of what it is about."""
    return words_of(store, "stop") | words_of(store, "filler") | words_of(store, "asking")
