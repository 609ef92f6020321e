"""The words the reader knows: food names, composite phrases, units, emoji, plain English.

Names come from the knowledge store and from `names_text.csv` (foods known by name
only); what a name reads as is decided here once, for all messages. Built once per
store and kept.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Mapping, Sequence, Set
from dataclasses import dataclass
from functools import cached_property, lru_cache
from typing import Protocol

from knowledge import tables
from knowledge.foods.model import Food
from knowledge.tables import Row
from knowledge.text.normalise import key, singular


class Names(Hashable, Protocol):
    """What the reader needs of `knowledge.foods.store.Store`."""

    def names(self) -> Mapping[str, tuple[str, ...]]: ...
    def named(self, name: str) -> Food | None: ...
    def food(self, food_id: str) -> Food: ...


@dataclass(frozen=True, slots=True)
class Named:
    """A food by its label, and its id in the store if it is there."""

    name: str
    food_id: str | None


@dataclass(frozen=True, slots=True)
class Phrase:
    """What a phrase of the vocabulary stands for: mostly one food."""

    foods: tuple[Named, ...]
    state: str | None = None
    cut: str | None = None
    unit: str | None = None


@dataclass(frozen=True, slots=True)
class Unit:
    """A kitchen unit. `kind`: weight, volume, container, count, piece or vague."""

    id: str
    kind: str
    grams: float | None


def table(name: str) -> Sequence[Row]:
    """The rows of one of the reader's tables in `knowledge/data`, by its file name."""
    return tables.rows(name.removesuffix(".csv"))


@dataclass(frozen=True, slots=True)
class Words:
    """Tables that do not depend on the store."""

    units: Mapping[tuple[str, ...], Unit]
    emoji: Mapping[str, str]
    common: frozenset[str]
    places: frozenset[str]  # countries, peoples, towns, months: no foods, and never bent into one
    dish_styles: Mapping[tuple[str, ...], str]  # "" for a dish without a style
    techniques: Mapping[
        tuple[str, ...], str
    ]  # ids of `dishes.csv`, of those that are made in a way of their own
    flavours: Mapping[str, tuple[str, ...]]  # "thai" -> ids of `flavours.csv`

    @property
    def dishes(self) -> Set[tuple[str, ...]]:
        """The dishes by name."""
        return self.dish_styles.keys()


@lru_cache(maxsize=1)
def words() -> Words:
    """The reader's tables, read once."""
    units = {}
    for row in table("units_kitchen.csv"):
        unit = Unit(row["unit"], row["kind"], float(row["grams"]) if row["grams"] else None)
        for word in filter(None, row["words"].split(";")):
            units[tuple(word.split())] = unit
    return Words(
        units=units,
        emoji={row["emoji"]: row["words"] for row in table("words_emoji.csv")},
        common=frozenset(row["word"] for row in table("words_common.csv")),
        places=frozenset(row["word"] for row in table("words_places.csv")),
        dish_styles={tuple(key(row["dish"]).split()): row["style"] for row in table("words_dishes.csv")},
        techniques={
            tuple(key(name).split()): row["dish"]
            for row in table("dishes.csv")
            for name in row["names"].split(";")
            if name
        },
        flavours=_flavours(),
    )


def _flavours() -> Mapping[str, tuple[str, ...]]:
    said: dict[str, list[str]] = {}
    for row in table("flavours.csv"):
        for word in row["said"].split(";"):
            said.setdefault(word, []).append(row["id"])
    return {word: tuple(ids) for word, ids in said.items()}


_STATE_WORDS = (
    "whole",
    "frozen",
    "fresh",
    "canned",
    "tinned",
    "raw",
    "cooked",
    "leftover",
    "boiled",
    "dried",
    "dry",
    "cold",
)
_HOLDERS = ("tin", "can", "jar", "bag", "pack", "packet", "bottle", "tube", "carton")
_NOT_NAMES = ("curry cut", "green", "pan", "date", "mushy")


def _left_to_the_grammar(known: str, mine: set[str]) -> bool:
    """Names of the store that are better read word by word: "frozen pea" is a pea, frozen.

    Plain English words are no foods by themselves either, unless our own table says so.
    """
    first, _, rest = known.partition(" ")
    if known in mine:
        return False
    if not rest:
        return known in words().common or known in _NOT_NAMES or (known,) in words().dishes
    last = known.rpartition(" ")
    return (
        known in _NOT_NAMES
        or (first in _STATE_WORDS and rest in mine)
        or (first in _HOLDERS)
        or (last[2] in _HOLDERS)
    )


class Vocabulary:
    """All food phrases, by their words in the singular."""

    def __init__(self, store: Names) -> None:
        self._store = store
        self.phrases: dict[tuple[str, ...], Phrase] = {}
        self.plural_only: set[str] = set()
        self.own: set[tuple[str, ...]] = set()
        own = table("names_text.csv")
        mine = {key(said) for row in own for said in [row["name"], *row["synonyms"].split(";")] if said}
        for known, ids in store.names().items():
            if ids and not _left_to_the_grammar(known, mine):
                self._put(known, (Named(store.food(ids[0]).name, ids[0]),))
        for row in own:
            named = self._named(row["name"])
            for said in filter(None, [row["name"], *row["synonyms"].split(";")]):
                self._put(key(said), (self._exactly(said, named),))
                self.own.add(tuple(key(said).split()))
                if said.isalpha() and key(said) != said.lower() and key(said) in words().common:
                    self.plural_only.add(key(said))
        for row in table("words_phrases.csv"):
            foods = tuple(self._named(name) for name in row["foods"].split(";"))
            self._put(
                key(row["phrase"]), foods, row["state"] or None, row["cut"] or None, row["unit"] or None
            )
        self.lengths: dict[str, tuple[int, ...]] = {}
        for phrase in self.phrases:
            self.lengths[phrase[0]] = (*self.lengths.get(phrase[0], ()), len(phrase))
        self.lengths = {w: tuple(sorted(set(ns), reverse=True)) for w, ns in self.lengths.items()}

    def _named(self, name: str) -> Named:
        food = self._store.named(name)
        return Named(name, food.id if food else None)

    def _exactly(self, said: str, named: Named) -> Named:
        """The label of the row, with the figures of the very food said where there are any."""
        food = self._store.named(said)
        return Named(named.name, food.id) if food and key(food.name) == key(said) else named

    def _put(
        self,
        known: str,
        foods: tuple[Named, ...],
        state: str | None = None,
        cut: str | None = None,
        unit: str | None = None,
    ) -> None:
        if known:
            self.phrases[tuple(known.split())] = Phrase(foods, state, cut, unit)

    def get(self, keys: Iterable[str]) -> Phrase | None:
        """The phrase made of these words (in the singular), if it is one."""
        return self.phrases.get(tuple(keys))

    def food(self, named: Named) -> Food | None:
        """The figures of a named food, if the store has them."""
        return self._store.food(named.food_id) if named.food_id else None

    def names_food(self, known: str) -> bool:
        """Whether it is a food's own name, also one that is a plain word in other talk ("heart")."""
        food = self._store.named(known) if known in self._store.names() else None
        return food is not None and key(food.name) == known

    def meanings(self, known: str) -> tuple[str, ...]:
        """The ids of all foods that a name (in the form of `key`) may mean, best first."""
        phrase = self.phrases.get(tuple(known.split()))
        own = [named.food_id for named in phrase.foods if named.food_id] if phrase else []
        return tuple(dict.fromkeys([*own, *self._store.names().get(known, ())]))

    def named(self, name: str) -> Named:
        """The food a name stands for; one that nobody knows keeps its name."""
        phrase = self.phrases.get(tuple(key(name).split()))
        return phrase.foods[0] if phrase else Named(name, None)

    @cached_property
    def food_words(self) -> frozenset[str]:
        """Every word that occurs in a food phrase."""
        return frozenset(word for phrase in self.phrases for word in phrase)

    @cached_property
    def animals(self) -> frozenset[tuple[str, str]]:
        """Words that are the name of an animal's meat, with the animal: others begin with it ("beef rib")."""
        named = {food.name: food.food_id for phrase in self.phrases.values() for food in phrase.foods}
        heads = {name.split()[0] for name in named if " " in name}
        own = ((name, self._store.food(named[name] or "")) for name in heads & named.keys() if named[name])
        return frozenset((name, food.animal) for name, food in own if food.animal)

    @cached_property
    def following(self) -> Mapping[str, tuple[str, ...]]:
        """The last words of two-word phrases, by their first word."""
        groups: dict[str, list[str]] = {}
        for phrase in sorted(self.phrases):
            if len(phrase) == 2 and phrase[0].isalpha() and phrase[1].isalpha():
                groups.setdefault(phrase[0], []).append(phrase[1])
        return {first: tuple(group) for first, group in groups.items()}

    @cached_property
    def by_initial(self) -> Mapping[str, tuple[str, ...]]:
        """Food words of four letters and more by their first letter, for near matches."""
        plain = words().common
        groups: dict[str, list[str]] = {}
        for word in sorted(self.food_words):
            if len(word) >= 4 and word.isalpha() and (word not in plain or (word,) in self.phrases):
                groups.setdefault(word[0], []).append(word)
        return {letter: tuple(group) for letter, group in groups.items()}

    @cached_property
    def plain(self) -> frozenset[str]:
        """Words that are no food by themselves and must not be corrected into one."""
        known = words()
        units = {word for phrase in known.units for word in phrase}
        dishes = {word for dish in known.dishes for word in dish}
        named = known.common | known.places
        return frozenset(map(singular, named)) | named | units | dishes


@lru_cache(maxsize=4)
def vocabulary(store: Names) -> Vocabulary:
    """The vocabulary over a store, built when first asked for."""
    return Vocabulary(store)
