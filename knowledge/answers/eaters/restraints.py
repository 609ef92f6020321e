"""Who must not have what: the allergens, diets and foods that a question rules out, in any wording.

"Nut free", "for a coeliac", "can't have dairy", "he avoids fish", "prawns make her ill": a
word of an allergen or a diet that is not itself the food to be replaced is ruled out,
whatever the verb, with its whole group and with what may set off the same reaction
(`cross_reactions.csv`). Better one swap too few than one that harms.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass

from knowledge import diets
from knowledge.answers.eaters.diets_said import diet_words, diets_said
from knowledge.answers.eaters.kinship import Kin, kin_rows, wider_of_diets, wider_of_foods
from knowledge.answers.eaters.labelling import CHECK
from knowledge.answers.eaters.uncertain import holds, may_hold, needs_label
from knowledge.answers.model import Mention, Question
from knowledge.answers.reading.heard import hears, pattern
from knowledge.answers.reading.naming import foods_in
from knowledge.answers.reading.words import meanings_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store

# What rules a food out, with up to two words between; `{topic}` is any word of a topic of `heard.csv`.
_BEFORE_IT = (
    r"\b(?:{rules out what follows}|allerg\w+ to|intoleran\w+ (?:to|of)|react\w* (?:\w+ )?to|avoid\w*"
    r"|can ?(?:t|not) {cannot do with food}"
    r"|(?:doesn|does|don|do|won|will|must|may|should|shouldn|mustn)(?: ?t| ?not)? (?:not )?{does with food}"
    r"|(?:{illness}|wheez\w*) (?:up )?(?:with|from|to|of|by|after)"
    r")(?: \w+){0,2}$"
)
_AFTER_IT = (
    r"^(?:free(?! of| from)|less|allerg\w*|intoleran\w*|sensitiv\w*|upsets?|disagrees?"
    r"|makes? \w+ (?:{is made ill}|itch\w*)|(?:is|are) {is ruled out}"
    r"|(?:brings?|gives?|sets?|triggers?) (?:me|him|her|them|us|my \w+)|gives? \w+ {illness given}"
    r")\b"
)
_BARE_NO = re.compile(r"\b(?:no|without|not any)(?: any)?(?:(?: \w+){1,3} (?:and|or|nor|no))?$")
_JOINS_A_LIST = ("and", "or", "nor")
REACH = 5  # words before a food in which a word may rule it out


@dataclass(frozen=True, slots=True, kw_only=True)
class Restraint:
    """What is ruled out: diets as tokens ("no nuts"), and foods by name."""

    diets: tuple[str, ...]
    foods: tuple[Mention, ...]
    kin: tuple[Kin, ...]  # the rows of `cross_reactions.csv` that these call up
    store: Store

    def __bool__(self) -> bool:
        return bool(self.diets or self.foods)

    def bars(self, food: Food) -> bool:
        """True if the food may not be offered: ruled out, akin to what is, or sold with it at times."""
        return self._is_ruled_out(food) or bool(self.akin(food)) or bool(self.may(food))

    def is_akin_only(self, food: Food) -> bool:
        """True if the food is free of what is ruled out, and left out for kinship alone."""
        return bool(self.akin(food)) and not self._is_ruled_out(food)

    def may(self, food: Food) -> tuple[str, ...]:
        """The allergens ruled out that what is sold as this food may hold, in order."""
        told = may_hold(self.store).get(food.id, frozenset[str]())
        refused = frozenset[str]().union(*(m.food.allergens for m in self.foods))
        return tuple(
            allergen
            for allergen in sorted(told)
            if allergen in refused or any(holds(frozenset({allergen}), d, self.store) for d in self.diets)
        )

    def labels(self, food: Food) -> tuple[str, ...]:
        """What is ruled out that only the label tells of: "gluten" of a sauce."""
        known = frozenset(diet_words(self.store).values())
        tokens = (d for d in self.diets if d in known and needs_label(food, d, self.store))
        return tuple(dict.fromkeys(token.removeprefix("no ") for token in tokens))

    def _is_ruled_out(self, food: Food) -> bool:
        shares = any(m.food.id == food.id or m.food.allergens & food.allergens for m in self.foods)
        return shares or bool(diets.barred_by(food, self.diets))

    def akin(self, food: Food) -> str:
        """What is ruled out that this food may set off the same reaction as, "" if nothing."""
        return next((kin.barred for kin in self.kin if kin.fits(food)), "")


def restraint(question: Question, *, apart: Iterable[Mention] = ()) -> Restraint:
    """What the question rules out; `apart` are the foods to be replaced and the ones held out instead."""
    store, apart = question.store, tuple(apart)
    others = [mention for mention in question.mentions if mention not in apart]
    foods = tuple(m for m in others if rules_out(question, m) or is_refused(question, m))
    tokens = [
        *diets_said(_without_names(question, apart, foods), store).values(),
        *_eating_little_of(question),
        *question.ruled_out,
        *(f"no {mention.phrase}" for mention in foods),
        *wider_of_foods((mention.food for mention in foods), store),
    ]
    tokens = list(dict.fromkeys([*tokens, *wider_of_diets(tokens, store)]))
    named = {*tokens, *(f"no {mention.food.id}" for mention in foods)}
    kin = tuple(row for row in kin_rows(store) if row.barred in named)
    return Restraint(diets=tuple(tokens), foods=foods, kin=kin, store=store)


def _without_names(question: Question, apart: tuple[Mention, ...], foods: tuple[Mention, ...]) -> str:
    """The question in which a word of a food's name is no word of a diet: "coconut milk" is no milk.

    What is ruled out stays, and so does a food whose whole name is such a word: "milk".
    """
    words = question.plain.split()
    left = list(words)
    for mention in question.mentions:
        own = " ".join(words[mention.start : mention.end])
        is_whole = any(own in (word, f"{word}s", f"{word}es") for word in diet_words(question.store))
        if mention in apart or not (is_whole or mention in foods):
            left[mention.start : mention.end] = ["·"] * (mention.end - mention.start)
    return f" {' '.join(left)} "


def _eating_little_of(question: Question) -> list[str]:
    """The tokens of "low salt" and the like, as far as the question says them."""
    meanings = meanings_of(question.store, "restraint")
    return [token for word, token in meanings.items() if question.says(word)]


def left_out(text: str, held: Restraint) -> str:
    """The warning of each food in an answer that the question rules out, "" for none."""
    barred = [food.name for food in foods_in(text, held.store) if held.bars(food)]
    return f"By what you said, leave out: {', '.join(dict.fromkeys(barred))}. {CHECK}" if barred else ""


def may_rule_out(question: Question) -> bool:
    """True if anything in the question may rule a food out, so that it is worth a closer look."""
    refused = any(is_refused(question, mention) for mention in question.mentions)
    return refused or bool(question.ruled_out) or speaks_of_harm(question)


def speaks_of_harm(question: Question) -> bool:
    """True if a word tells of an allergy, an illness, a ban or of guests: "no nuts" is then a restraint."""
    return hears(question, "restraint is likely")


_LISTED_AFTER = re.compile(r"(?:and|or|plus) \w+ (?:allerg|intoleran)")  # "milk and soy allergy"


def rules_out(question: Question, mention: Mention) -> bool:
    """True if the words around a food rule it out: "peanut free", "can't have milk", "eggs make her ill"."""
    words = question.plain.split()
    before = " ".join(words[_after_the_last(question, mention) : mention.start])
    after = " ".join(words[mention.end : mention.end + 3])
    if pattern(question.store, _AFTER_IT).match(after) or pattern(question.store, _BEFORE_IT).search(before):
        return True
    if _LISTED_AFTER.match(after) and diets_said(f" {mention.phrase} ", question.store):
        return True
    return is_refused(question, mention) and speaks_of_harm(question)


def _after_the_last(question: Question, mention: Mention) -> int:
    """From which word on a cue may speak of a food: not over another one that is no part of a list.

    "Allergic to fish, eat oyster sauce" is about the fish; "can't have milk, eggs or nuts" about all.
    """
    first = max(mention.start - REACH, 0)
    last = max((m.end for m in question.mentions if m.end <= mention.start), default=0)
    is_listed = last == mention.start or question.plain.split()[mention.start - 1] in _JOINS_A_LIST
    return first if is_listed else max(first, last)


def is_refused(question: Question, mention: Mention) -> bool:
    """True for a food right after "no" or "without": it is gone, or it must not be in it."""
    before = question.plain.split()[max(mention.start - REACH, 0) : mention.start]
    return _BARE_NO.search(" ".join(before)) is not None
