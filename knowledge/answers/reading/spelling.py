"""Slips of the keyboard in a question: "wat temprature for chiken" -> "temperature", "chicken".

Only a word that no table knows is changed, and only to one a slip or two away that begins with the
same letter; a word of a kitchen that is no food of ours stands in `words_kitchen.csv`. In a short word
one letter may stand for another only where the two sound alike or lie side by side on the keyboard:
"chapli" is no slip for "chawli". What is unknown beyond that stays as it was said.
"""

from __future__ import annotations

import re
from functools import lru_cache

from rapidfuzz import process
from rapidfuzz.distance import OSA

from knowledge.answers.reading.words import words_of
from knowledge.foods.store import Store
from knowledge.text.normalise import singular

SHORTEST = 5  # letters; below that a slip is as likely another word
TWO_SLIPS = 8  # letters from which two slips are still the same word
SHORTEST_PART = 3  # letters of a word that was joined to the next
STRICT_TO = 6  # letters up to which another letter must be one that is easily taken for the right one
_VOWELS = "aeiouy"
_SOUND_ALIKE = tuple(map(frozenset, ("ck", "cs", "sz", "gj", "fv", "bp", "dt", "mn", "lr", "qk")))
_KEYS = ("qwertyuiop", "asdfghjkl", "zxcvbnm")
ENDINGS = ("e", "ed", "es", "ing", "s", "y")
COMMON = ("words_common", "words_questions", "words_kitchen")  # tables of words that are no slips
LISTENED_FOR = (
    "topics",
    "technique",
    "measures",
    "storage",
    "dish_cuts",
)  # tables whose words are listened for, beside the advice


def corrected(words: list[str], store: Store) -> list[str]:
    """The words with slips put right."""
    known = _vocabulary(store)
    right = (_put_right(word, store) if _is_odd(word, known) else word for word in words)
    return [part for word in right for part in word.split()]


def _is_odd(word: str, known: frozenset[str]) -> bool:
    return len(word) >= SHORTEST and word.isalpha() and word not in known and singular(word) not in known


def _put_right(word: str, store: Store) -> str:
    """A food's name written as one word as its words ("porkchops"), else the word that was meant."""
    names = store.names()
    for at in range(SHORTEST_PART, len(word) - SHORTEST_PART + 1):
        if f"{word[:at]} {singular(word[at:])}" in names:
            return f"{word[:at]} {word[at:]}"
    return _nearest(word, store)


@lru_cache(maxsize=512)
def _nearest(word: str, store: Store) -> str:
    """The word that was meant: the fewest slips away, rather a food's name, of the same consonants."""
    slips = 2 if len(word) >= TWO_SLIPS else 1
    choices = _by_letter(store).get(word[0], ())
    for form in dict.fromkeys((word, singular(word))):  # foods are named in the singular
        found = process.extract(form, choices, scorer=OSA.distance, score_cutoff=slips, limit=None)
        near = [(distance, other) for other, distance, _ in found if _may_be(form, other)]
        if near:
            return min(near, key=lambda pair: (pair[0], *_unlike(form, pair[1], store)))[1]
    return word


def _unlike(word: str, other: str, store: Store) -> tuple[bool, bool, bool, str]:
    sounds_other = _consonants(word) != _consonants(other)
    return other not in _own_names(store), sounds_other, other not in _named(store), other


def _consonants(word: str) -> str:
    """A word without its vowels, a doubled letter once."""
    kept = [letter for letter in word if letter not in _VOWELS]
    return "".join(letter for at, letter in enumerate(kept) if at == 0 or kept[at - 1] != letter)


def _may_be(word: str, other: str) -> bool:
    """True if a short word may be a slip for another one: a letter too many, too few, or one like it."""
    if len(word) > STRICT_TO or len(word) != len(other):
        return True
    apart = [(a, b) for a, b in zip(word, other, strict=True) if a != b]
    return len(apart) != 1 or _is_like(*apart[0])


def _is_like(letter: str, other: str) -> bool:
    both = frozenset((letter, other))
    beside = any(letter + other in row or other + letter in row for row in _KEYS)
    return beside or both in _SOUND_ALIKE or both <= frozenset(_VOWELS)


@lru_cache(maxsize=4)
def _own_names(store: Store) -> frozenset[str]:
    """What the foods are called at their own place: "cream" of "sour cream"."""
    return frozenset(food.name.split()[-1] for food in store.foods())


@lru_cache(maxsize=4)
def _named(store: Store) -> frozenset[str]:
    """Every word of a food's or a dish's name."""
    return frozenset(word for name in (*store.names(), *_terms(store)) for word in name.split())


@lru_cache(maxsize=4)
def _vocabulary(store: Store) -> frozenset[str]:
    """Every word that a question may hold: names of foods, common words, words of the tables."""
    common = {row["word"] for name in COMMON for row in store.table(name)}
    dishes = {row["dish"] for row in store.table("words_dishes")}
    heard = {word for row in store.table("heard")
             for word in re.findall(r"[a-z]+", row["words"])}  # fmt: skip
    places = {word for row in store.table("lands") for word in row["land"].split()}
    grown = {word for row in store.table("season_places") for word in re.findall("[a-z]+", row["names"])}
    told = _telling(store) | _craft(store) | _measured_out(store)
    return frozenset(_named(store) | common | dishes | heard | places | grown) | told


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
    letters: dict[str, list[str]] = {}
    for word in sorted(_named(store) | _telling(store)):
        if len(word) >= SHORTEST:
            letters.setdefault(word[0], []).append(word)
    return {letter: tuple(words) for letter, words in letters.items()}
