"""What goes with a food: the flavour families that suit it best."""

from __future__ import annotations

from collections import Counter

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.words import words_of
from knowledge.flavours import LAYERS, Family, families_for

SHOWN = 3  # directions in an answer
SHOWN_ALONE = 6  # herbs or spices
KINDS = ("herb", "spice")  # groups of food that a question may ask for alone
STRANGE = 1  # words that are let pass although they speak of no food


def goes_with(question: Question) -> Answer | None:
    """Three directions of flavour for the foods named."""
    if not question.foods or not hears(question, "asks for pairings") or len(_strange(question)) > STRANGE:
        return None
    families = families_for(
        [food.id for food in question.foods], diets=question.ruled_out, store=question.store
    )[:SHOWN]
    if not families:
        return None
    named = " and ".join(dict.fromkeys(m.phrase for m in question.mentions))
    ways = "; ".join(_said(family, question) for family in families)
    text = f"With {named}: {ways}."
    kind = next((kind for kind in KINDS if question.says(kind)), None)
    if kind is not None and (alone := _of_kind(question, kind)):
        text = f"{kind.capitalize()}s that go with {named}: {', '.join(alone)}. Whole directions: {ways}."
    return Answer(known=True, answer=text, sources=cited(question.store, families[0].source))


def _of_kind(question: Question, kind: str) -> list[str]:
    """Names of the herbs or spices in the families that are made for these foods, the most frequent first."""
    asked = {word for food in question.foods for word in (food.animal, food.group)} - {""}
    counted: Counter[str] = Counter()
    for row in question.store.table("flavours"):
        if asked & {*row["suits"].split(";")}:
            counted.update({i for layer in LAYERS for i in row[layer].split(";") if i})
    foods = (question.store.food(food_id) for food_id, _ in sorted(counted.items(), key=_most_first))
    return [food.name for food in foods if food.group == kind][:SHOWN_ALONE]


def _most_first(counted: tuple[str, int]) -> tuple[int, str]:
    return -counted[1], counted[0]


def _strange(question: Question) -> set[str]:
    """Words that speak of something else than food: "what shoes go with a green dress"."""
    said = {w for m in question.mentions for w in question.words[m.start : m.end]}
    known = frozenset[str]().union(*(words_of(question.store, role) for role in ("stop", "filler", "pairs")))
    return {word for word in question.words if word not in said and word not in known}


def _said(family: Family, question: Question) -> str:
    return f"{family.name} ({', '.join(question.store.food(food_id).name for food_id in family.tellers)})"
