"""A dish made without what is in it: `made_without.csv`, for "egg free meringue" or "pesto without nuts".

It is a wish, not the question whether the dish is free of it; where that is asked and the dish
is not, the way to make it follows the no.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache

from knowledge.answers.eaters.diets_said import diets_said
from knowledge.answers.eaters.kinship import diets_by_allergen, wider_of_diets
from knowledge.answers.eaters.labelling import CHECK, authorities
from knowledge.answers.eaters.restraints import Restraint, left_out, restraint
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.tables import items

MOST = 2  # ways that one reply tells: without egg, without dairy

_VERDICT = re.compile(
    r"^ (?:is|are|does|do|was|were) (?!there an?|it possible|you know|i make|you make)"
    r"| (?:ok|okay|safe|suitable|fine) (?:for|with|if|to)| (?:eat|have|keep|store|fridge|freeze|long) "
)
_FREE = " (?:free|less) "
_LACKS = (
    r" (?:no|without|w o|minus|omit|skip|leave out|leaving out|avoiding)(?: any| the)?(?: \w+ (?:and|or))? "
)
_WARNS = re.compile(r"allerg|react|\bMind\b|label")
_DOES_WITHOUT = re.compile(r"(?i)\b(?:without|free of|not|for each|for)\b[^,.;(]*")
_VEGAN = ("no egg", "no dairy", "vegan")


def made_without(question: Question) -> Answer | None:
    """How a dish is made without what the question wants left out of it."""
    if any(hears(question, topic) for topic in ("asks for a swap", "own product")):
        return None  # of the jar that was bought only a verdict can be told
    if _VERDICT.search(question.plain):
        return None
    told = [
        text for token in _wished(question) if (text := way_without(token, question.plain, question.store))
    ]
    if not told:
        return None
    text = " ".join(dict.fromkeys(told[:MOST]))
    warned = warned_of(text, restraint(question))
    return Answer(known=True, answer=f"{text} {warned or CHECK}", sources=authorities(question.store))


def warned_of(text: str, held: Restraint) -> str:
    """What is to be left out of a way to make a dish; what it does without, or warns of, is no part of it."""
    part_of_it = " ".join(s for s in re.split(r"(?<=[.;]) ", text) if not _WARNS.search(s))
    return left_out(_DOES_WITHOUT.sub(" ", part_of_it), held) if held else ""


def way_without(token: str, plain: str, store: Store) -> str:
    """How the dish named is made without this, "" where the table does not say."""
    for barred in (token, *wider_of_diets([token], store)):
        said = [(dish, text) for dish, text in _dishes(store).get(barred, ()) if f" {dish} " in plain]
        if said:
            return max(said, key=lambda one: len(one[0]))[1]
    return ""


def way_without_food(food: Food, plain: str, store: Store) -> str:
    """How a dish is made that lacks its eggs: what replaces them goes by what they do there."""
    if food.group != "egg":
        return ""
    diets = diets_by_allergen(store)
    ways = (way_without(diets[allergen], plain, store) for allergen in food.allergens if allergen in diets)
    return next(filter(None, ways), "")


def _wished(question: Question) -> Iterable[str]:
    """What is to be left out, as tokens; of a vegan dish its eggs and its milk."""
    plain = question.plain.replace(" eggless ", " egg free ").replace(" dairyless ", " dairy free ")
    for words, token in diets_said(plain, question.store).items():
        one = rf"{re.escape(words.removesuffix(' free'))}(?:e?s)?"
        if token == "vegan":
            yield from _VEGAN
        elif re.search(rf" {one}{_FREE}|{_LACKS}{one} | {one} (?:and|or|and no) \w+{_FREE}", plain):
            yield token


@lru_cache(maxsize=4)
def _dishes(store: Store) -> Mapping[str, tuple[tuple[str, str], ...]]:
    """What is left out -> the dishes, each with the way it is made without."""
    rows = store.table("made_without")
    return {
        without: tuple(
            (dish, row["text"]) for row in rows if row["without"] == without for dish in items(row["dishes"])
        )
        for without in {row["without"] for row in rows}
    }
