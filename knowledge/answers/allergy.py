"""Whom a food does not suit: its allergens, and the diets that bar it."""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge import diets
from knowledge.answers.advice import row
from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.words import words_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store

CHECK = "Read the label, recipes differ; with an allergy ask a doctor."
_IS_ALLERGEN = (
    r" (?:is|are|does|do) [\w ]+ (?:(?:considered|count(?:ed)? as|classed as) )?(?:a |an )?"
    r"(?:dairy|gluten|nuts?|tree nuts?|wheat|soy|shellfish|crustaceans?|molluscs?) $"
)
_CONTAINS = re.compile(
    r" (?:what s in|whats in|what is in|contains?|have|has|got|any|are there|is there|(?:is|are) \w+ in|in it"
    rf"|made (?:with|of|from)|(?:what|which) [\w ]+ (?:is|are) in) |{_IS_ALLERGEN}"
)
_FIT = re.compile(
    r" (?:\w+ free|ok|okay|fine|safe|suitable|can (?:i|we|he|she|they|a|my)|eat|allerg\w*|intoleran\w*) "
)
_SHELLFISH = frozenset({"crustaceans", "molluscs"})
_ASKS_DIET = re.compile(
    r" (?:free|allerg\w*|intoleran\w*|contains?|have|has|got|vegans?|vegetarians?|veggie|pescatarian"
    r"|halal|kosher|jains?|coeliacs?|celiacs?|any|are there|is there|(?:is|are) \w+ in|suitable|ok for"
    rf"|safe for|made (?:with|of|from)|(?:what|which) [\w ]+ (?:is|are) in) |{_IS_ALLERGEN}"
)


def allergens(question: Question) -> Answer | None:
    """The allergens of a food, or whether it suits a diet or an allergy."""
    plain = question.plain
    if question.says("an allergen", "major allergen", "common allergen", "listed allergen"):
        return (
            _listed(question, question.mentions[0])
            if question.foods
            else row(question.store, "allergen-list")
        )
    if (
        question.says("allergen", "allergic to", "allergies in")
        and question.mentions
        and not re.search(r" (?:is|are|can|does|do|has|have) ", plain.replace("what allergens are", ""))
    ):
        return _listed(question, question.mentions[0])
    if not _ASKS_DIET.search(plain):
        return None
    meant = diet_words(question.store)
    words = max((w for w in meant if f" {w}" in plain and not _is_the_food(question, w)), key=len, default="")
    if not words:
        if own := _allergic_to(question):
            return own
        return (
            _listed(question, question.mentions[0])
            if question.says("allergen") and question.mentions
            else None
        )
    others = [
        m for m in question.mentions if m.phrase not in (words, words.removesuffix(" free"), f"{words}s")
    ]
    mention = next(iter(others), None)
    if mention is None:
        return None
    food, token = mention.food, meant[words]
    barred = diets.bars(food, token)
    positive = token in ("vegan", "vegetarian", "pescatarian", "halal", "kosher", "jain")
    inside = question.says("what s in", "whats in", "what is in") and not positive
    contains = inside or (_CONTAINS.search(plain) is not None and not positive and _FIT.search(plain) is None)
    yes = barred if contains else not barred  # in doubt the question is whether it may be eaten
    label = token if positive else token.removeprefix("no ")
    if barred:
        why = _why(food, token)
        so = f", so it is not {token}" if positive else ""
        text = f"{'Yes' if yes else 'No'}: {food.name} {why or 'does not go with it'}{so}."
    else:
        fits = f"fits {label}" if positive else f"has no {label} of its own"
        text = f"{'Yes' if yes else 'No'}: plain {food.name} {fits}."
        made = not positive and food.group in words_of(question.store, "made") and token != "no alcohol"
        if made:
            text = f"Not surely: {food.name} has no {label} by itself, but what is sold may hold some."
        if token in ("no crustacean", "no mollusc", "no shellfish") and food.allergens & _SHELLFISH:
            has = ", ".join(sorted(food.allergens & _SHELLFISH))
            text = f"Not surely: {food.name} has {has}, and who reacts to one shellfish may react to others."
        unsure = label in food.does and re.search(r"may hold|often|label", food.does)
        if unsure or (token == "vegetarian" and "rennet" in food.does):
            text = f"Not surely: {food.name}: {food.does}."
    return Answer(
        known=True, answer=f"{text} {CHECK}", sources=cited(question.store, "EU-1169", "A-FDA-ALLERGEN")
    )


@lru_cache(maxsize=4)
def diet_words(store: Store) -> dict[str, str]:
    rows = store.table("words_questions")
    return {row["word"]: row["means"] for row in rows if row["role"] == "diet"}


def _allergic_to(question: Question) -> Answer | None:
    """ "Cashew allergy, is pesto ok": a food named as the allergy, and another asked about."""
    said = question.plain
    cause = next(
        (m for m in question.mentions if f" {m.phrase} allerg" in said or f" allergic to {m.phrase}" in said),
        None,
    )
    other = next((m for m in question.mentions if cause and m.food.id != cause.food.id), None)
    if cause is None or other is None:
        return None
    shared = sorted(cause.food.allergens & other.food.allergens)
    if shared:
        text = f"No, unless the label says otherwise: {other.food.name} has {', '.join(shared)}."
    else:
        text = (
            f"Not surely: I can't see all that is in {other.food.name}; look for {cause.phrase} on the label."
        )
    return Answer(
        known=True, answer=f"{text} {CHECK}", sources=cited(question.store, "EU-1169", "A-FDA-ALLERGEN")
    )


def _is_the_food(question: Question, words: str) -> bool:
    """True where the diet's word is part of the food asked about: "coconut milk", "peanut butter"."""
    plain = question.plain
    for mention in question.mentions:
        if words in mention.phrase and len(mention.phrase) > len(words) + 1:
            plain = plain.replace(f" {mention.phrase} ", " ", 1)
    return f" {words}" not in plain


def _why(food: Food, token: str) -> str:
    if token == "kosher" and food.animal in ("fish", "game"):
        return "is not of a kind that kosher law allows"
    if food.allergens:
        return f"has {', '.join(sorted(food.allergens))}"
    if food.animal == "alcohol":
        return "is made with alcohol"
    return f"is of animal origin ({food.animal})" if food.animal else ""


def _listed(question: Question, mention: Mention) -> Answer:
    food = mention.food
    if food.allergens:
        text = f"{food.name.capitalize()}: {', '.join(sorted(food.allergens))}"
    else:
        text = f"{food.name.capitalize()}: none of the EU fourteen or the US nine by itself"
    return Answer(
        known=True, answer=f"{text}. {CHECK}", sources=cited(question.store, "EU-1169", "A-FDA-ALLERGEN")
    )
