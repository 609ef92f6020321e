"""What goes with a food: the flavour families that suit it best."""

from __future__ import annotations

from knowledge.answers.cite import cited
from knowledge.answers.heard import hears
from knowledge.answers.model import Answer, Question
from knowledge.answers.words import words_of
from knowledge.flavours import Family, families_for

SHOWN = 3  # directions in an answer
STRANGE = 1  # words that are let pass although they speak of no food


def goes_with(question: Question) -> Answer | None:
    """Three directions of flavour for the foods named."""
    if not question.foods or not hears(question, "asks for pairings") or len(_strange(question)) > STRANGE:
        return None
    families = families_for([food.id for food in question.foods], store=question.store)[:SHOWN]
    if not families:
        return None
    named = " and ".join(dict.fromkeys(m.phrase for m in question.mentions))
    ways = "; ".join(_said(family, question) for family in families)
    return Answer(
        known=True, answer=f"With {named}: {ways}.", sources=cited(question.store, families[0].source)
    )


def _strange(question: Question) -> set[str]:
    """Words that speak of something else than food: "what shoes go with a green dress"."""
    said = {w for m in question.mentions for w in question.words[m.start : m.end]}
    known = frozenset[str]().union(*(words_of(question.store, role) for role in ("stop", "filler", "pairs")))
    return {word for word in question.words if word not in said and word not in known}


def _said(family: Family, question: Question) -> str:
    return f"{family.name} ({', '.join(question.store.food(food_id).name for food_id in family.tellers)})"
