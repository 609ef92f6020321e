"""Where an allergen hides: `hidden_sources.csv`, for "mustard allergy, what hidden foods"."""

from __future__ import annotations

from knowledge.answers.eaters.allergy_asked import names_allergy
from knowledge.answers.eaters.diets_said import diets_said
from knowledge.answers.eaters.labelling import CHECK, authorities
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears


def hidden(question: Question) -> Answer | None:
    """The foods an allergen is not looked for in, and its names on labels; None if a food is asked about."""
    asks = hears(question, "asks where it hides") or (
        hears(question, "asks what to avoid") and names_allergy(question)
    )
    if not asks:
        return None
    said = diets_said(question.plain, question.store)
    rows = [row for row in question.store.table("hidden_sources") if row["barred"] in said.values()]
    allergens = {words for words, token in said.items() if token in {row["barred"] for row in rows}}
    if not rows or any(not _is_allergen(mention.phrase, allergens) for mention in question.mentions):
        return None
    if len(rows) > 1 and "no nuts" in said.values():
        rows = [row for row in rows if row["barred"] not in ("no tree nut",)]
    told = [
        f"{row['name'].capitalize()} can hide in {row['foods']}. On the label look for {row['labels']}."
        for row in rows
    ]
    return Answer(known=True, answer=" ".join([*told, CHECK]), sources=authorities(question.store))


def _is_allergen(phrase: str, allergens: set[str]) -> bool:
    return any(word in phrase for word in allergens)
