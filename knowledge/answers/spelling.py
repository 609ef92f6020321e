"""Slips of the keyboard in a question: "wat temprature for chiken" -> "temperature", "chicken".

Only a word that no table knows is changed, and only to one a slip or two away that
begins with the same letter. What is unknown beyond that stays as it was said.
"""

from __future__ import annotations

import re
from functools import lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from knowledge.answers.words import words_of
from knowledge.foods.store import Store
from knowledge.text.normalise import singular

SHORTEST = 5  # letters; below that a slip is as likely another word
TWO_SLIPS = 8  # letters from which two slips are still the same word
ENDINGS = ("e", "ed", "es", "ing", "s", "y")
LISTENED_FOR = (
    "topics",
    "technique",
    "measures",
    "storage",
)  # tables whose words are listened for, beside the advice


def corrected(words: list[str], store: Store) -> list[str]:
    """The words with slips put right."""
    known = _vocabulary(store)
    return [_nearest(word, store) if _is_odd(word, known) else word for word in words]


def _is_odd(word: str, known: frozenset[str]) -> bool:
    return len(word) >= SHORTEST and word.isalpha() and word not in known and singular(word) not in known


@lru_cache(maxsize=512)
def _nearest(word: str, store: Store) -> str:
    slips = 2 if len(word) >= TWO_SLIPS else 1
    choices = _by_letter(store).get(word[0], ())
    for form in dict.fromkeys((word, singular(word))):  # foods are named in the singular
        found = process.extractOne(form, choices, scorer=OSA.distance, score_cutoff=slips)
        if found:
            return found[0]
    return word


@lru_cache(maxsize=4)
def _vocabulary(store: Store) -> frozenset[str]:
    """Every word that a question may hold: names of foods, common words, words of the tables."""
    named = {word for name in (*store.names(), *_terms(store)) for word in name.split()}
    common = {row["word"] for name in ("words_common", "words_questions") for row in store.table(name)}
    dishes = {row["dish"] for row in store.table("words_dishes")}
    heard = {word for row in store.table("heard")
             for word in re.findall(r"[a-z]+", row["words"])}  # fmt: skip
    return frozenset(named | common | dishes | heard) | _telling(store) | _craft(store) | _measured_out(store)


@lru_cache(maxsize=4)
def _craft(store: Store) -> frozenset[str]:
    """The words that the notes on craft listen for: beginnings, "crumbl" in all its forms."""
    said = [row["words"] for row in store.table("craft_words")]
    said += [row["about"] for row in store.table("craft")]
    stems = {word for text in said for word in re.findall("[a-z]+", text)}
    return frozenset(stem + end for stem in stems for end in ("", *ENDINGS))


@lru_cache(maxsize=4)
def _measured_out(store: Store) -> frozenset[str]:
    """The words for what is measured out, served and baked, which stand for themselves: "moderate" oven."""
    worded = ("cup_weights", "dish_servings", "oven_words", "proportion_parts")
    said = [row["words"] for name in worded for row in store.table(name)]
    said += [row[column] for column in ("when", "or_when") for row in store.table("proportions")]
    return frozenset(word for text in said for word in re.findall("[a-z]+", text))


def _terms(store: Store) -> tuple[str, ...]:
    """The names of dishes and things that `terms.csv` explains."""
    return tuple(name for row in store.table("terms") for name in row["names"].split(";"))


@lru_cache(maxsize=4)
def _telling(store: Store) -> frozenset[str]:
    """The words that the answers listen for."""
    said = [row["when"] for row in store.table("advice")]
    said += [row["words"] for name in LISTENED_FOR for row in store.table(name)]
    words = {word for text in said for word in re.findall(r"[a-z]+", text)}
    return frozenset(words) | words_of(store, "heard")


@lru_cache(maxsize=4)
def _by_letter(store: Store) -> dict[str, tuple[str, ...]]:
    """What a slip may have been meant for, by first letter: foods and the words listened for."""
    names = {word for name in (*store.names(), *_terms(store)) for word in name.split()}
    letters: dict[str, list[str]] = {}
    for word in sorted(names | _telling(store)):
        if len(word) >= SHORTEST:
            letters.setdefault(word[0], []).append(word)
    return {letter: tuple(words) for letter, words in letters.items()}
