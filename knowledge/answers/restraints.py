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
from functools import lru_cache

from knowledge import diets
from knowledge.answers.model import Mention, Question
from knowledge.answers.uncertain import holds, may_hold, needs_label
from knowledge.foods.model import Food
from knowledge.foods.store import Store

# Who reacts to one may react to its kin, so that all of them are left out.
_KIN = (
    (frozenset({"tree nuts", "peanuts"}), "no nuts"),
    (frozenset({"crustaceans", "molluscs"}), "no shellfish"),
    (frozenset({"milk"}), "no dairy"),
    (frozenset({"gluten", "wheat"}), "no gluten"),
)
_WIDER = {"no tree nut": "no nuts", "no peanut": "no nuts", "no crustacean": "no shellfish",
          "no mollusc": "no shellfish", "no lactose": "no dairy"}  # fmt: skip
# Words that rule a food out before or after it, with a few words between.
_BEFORE = re.compile(
    r"(?:\bfree (?:of|from)|\ballerg\w+ to|\bintoleran\w+ (?:to|of)|\breact\w* (?:\w+ )?to|\bsensitive to"
    r"|\bavoid\w*|\bcan ?(?:t|not) (?:have|eat|do|take|touch|stand|tolerate|digest|handle|be near|stomach)"
    r"|\b(?:doesn|does|don|do|won|will|must|may|should|shouldn|mustn)(?: ?t| ?not)? (?:not )?(?:have|eat"
    r"|do|touch"
    r"|take|tolerate)|\bnever eats?|\bno longer eats?|\bbans?|\bbanned|\bforbids?|\bnot allowed|\boff"
    r"|\b(?:ill|sick|swells?|swell up|reacts?|itchy?|wheez\w*|poorly|rash|hives|died?"
    r"|flares? up) (?:up )?(?:with|from|to|of|by|after)"
    r"|\bneither|\bkeep out|\bleave out|\bnone of|\bnor)(?: \w+){0,2}$"
)
_AFTER = re.compile(
    r"^(?:free(?! of| from)|less|allerg\w*|intoleran\w*|sensitiv\w*|makes? \w+ (?:ill|sick|react|swell"
    r"|itch\w*|wheeze|poorly)"
    r"|(?:is|are) (?:out|banned|forbidden|not allowed|off|deadly|dangerous|a no)|(?:brings?|gives?|sets?"
    r"|triggers?) (?:me|him|her|them|us|my \w+)"
    r"|upsets?|disagrees?|gives? \w+ (?:hives|a rash|cramps))\b"
)
_BARE_NO = re.compile(r"\b(?:no|without|not any)(?: any)?(?:(?: \w+){1,3} (?:and|or|nor|no))?$")
ANY_CUE = re.compile(
    r" (?:free|allerg\w*|intoleran\w*|avoid\w*|react\w*|hives|rash|ill|sick|bans?|banned|allowed|coeliacs?"
    r"|celiacs?|anaphyla\w*|can ?t (?:have|eat|do)|cannot (?:have|eat|do)|doesn ?t (?:eat|do|have)"
    r"|don ?t (?:eat|do)|can not (?:have|eat)|sensitive|epipen|guests?|school|swell\w*|poorly|upset\w*"
    r"|tolerate|nursery|please) "
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Restraint:
    """What is ruled out: diets as tokens ("no nuts"), and foods by name."""

    diets: tuple[str, ...]
    foods: tuple[Mention, ...]
    kin: tuple[tuple[str, str, str], ...]  # the rows of `cross_reactions.csv` that these call up
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
        return next((barred for barred, by, value in self.kin if _is(food, by, value)), "")


def restraint(question: Question, *, apart: Iterable[Mention] = ()) -> Restraint:
    """What the question rules out; `apart` are the foods to be replaced and the ones held out instead."""
    apart = tuple(apart)
    words = question.plain.split()
    others = (m for m in question.mentions if m not in apart)
    foods = tuple(m for m in others if rules_out(question, m) or is_refused(question, m))
    left = list(words)
    for mention in question.mentions:
        own = " ".join(words[mention.start : mention.end])
        whole = any(own in (word, f"{word}s", f"{word}es") for word in diet_words(question.store))
        if mention in apart or not (whole or mention in foods):
            left[mention.start : mention.end] = ["·"] * (mention.end - mention.start)
    tokens = list(diets_said(f" {' '.join(left)} ", question.store).values())
    tokens += [
        row["means"]
        for row in question.store.table("words_questions")
        if row["role"] == "restraint" and question.says(row["word"])
    ]
    tokens += question.ruled_out
    tokens += [f"no {mention.phrase}" for mention in foods]
    tokens += [diet for kin, diet in _KIN if any(m.food.allergens & kin for m in foods)]
    tokens += [_WIDER[token] for token in tokens if token in _WIDER]
    tokens = list(dict.fromkeys(tokens))
    named = {*tokens, *(f"no {m.food.id}" for m in foods)}
    kin = tuple(row for row in _kin_rows(question.store) if row[0] in named)
    return Restraint(diets=tuple(tokens), foods=foods, kin=kin, store=question.store)


def rules_out(question: Question, mention: Mention) -> bool:
    """True if the words around a food rule it out: "peanut free", "can't have milk", "eggs make her ill"."""
    words = question.plain.split()
    before = " ".join(words[_after_the_last(question, mention) : mention.start])
    after = " ".join(words[mention.end : mention.end + 3])
    if _AFTER.match(after) or _BEFORE.search(before):
        return True
    return is_refused(question, mention) and ANY_CUE.search(question.plain) is not None


def _after_the_last(question: Question, mention: Mention) -> int:
    """From which word on a cue may speak of a food: not over another one that is no part of a list.

    "Allergic to fish, eat oyster sauce" is about the fish; "can't have milk, eggs or nuts" about all.
    """
    first = max(mention.start - 5, 0)
    last = max((m.end for m in question.mentions if m.end <= mention.start), default=0)
    listed = last == mention.start or question.plain.split()[mention.start - 1] in ("and", "or", "nor")
    return first if listed else max(first, last)


def is_refused(question: Question, mention: Mention) -> bool:
    """True for a food right after "no" or "without": it is gone, or it must not be in it."""
    words = question.plain.split()
    return _BARE_NO.search(" ".join(words[max(mention.start - 5, 0) : mention.start])) is not None


@lru_cache(maxsize=4)
def diet_words(store: Store) -> dict[str, str]:
    """Words of allergens and diets -> the token of the diet: "dairy" -> "no dairy"."""
    rows = store.table("words_questions")
    return {row["word"]: row["means"] for row in rows if row["role"] == "diet"}


def diets_said(plain: str, store: Store) -> dict[str, str]:
    """The words of allergens and diets in a text, with their tokens; "eggplant" is no egg."""
    return {words: token for pattern, words, token in _patterns(store) if pattern.search(plain)}


@lru_cache(maxsize=4)
def _patterns(store: Store) -> tuple[tuple[re.Pattern[str], str, str], ...]:
    return tuple(
        (re.compile(rf" {re.escape(word)}{r'' if word.endswith('allerg') else '(?:e?s)? '}"), word, token)
        for word, token in diet_words(store).items()
    )


def akin_to(food: Food, token: str, store: Store) -> bool:
    """True if who keeps to `token` may react to this food too, although it holds nothing of it."""
    return any(barred == token and _is(food, by, value) for barred, by, value in _kin_rows(store))


@lru_cache(maxsize=4)
def _kin_rows(store: Store) -> tuple[tuple[str, str, str], ...]:
    return tuple((row["barred"], row["by"], row["value"]) for row in store.table("cross_reactions"))


def _is(food: Food, by: str, value: str) -> bool:
    return value in {"food": (food.id,), "group": (food.group,), "allergen": food.allergens}[by]
