"""Whom a food does not suit: its allergens, and the diets that bar it."""

from __future__ import annotations

import re

from knowledge.answers.dangers.advice import row
from knowledge.answers.eaters.allergy_asked import (
    asks_for_the_list,
    is_for_allergy,
    leads,
    names_allergy,
    names_diet,
    speaks_of_diet,
)
from knowledge.answers.eaters.allergy_verdict import Case, Verdict, judged, said
from knowledge.answers.eaters.diets_said import diets_said, ways_of_eating
from knowledge.answers.eaters.kinship import are_shellfish
from knowledge.answers.eaters.labelling import CHECK, LEAVE_OUT, authorities, has, listed, may_have
from knowledge.answers.eaters.restraints import is_refused, rules_out
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.subject import Subject, subject_of, without_free_names
from knowledge.answers.swaps.without import way_without

_ASKS_OF_SOMETHING = re.compile(r" (?:is|are|does|do|can) ")


def suits(question: Question) -> Answer | None:
    """Whether a food suits an allergy or a diet named outright, before a word of it leads elsewhere."""
    return allergens(question) if names_diet(question) else None


def allergens(question: Question) -> Answer | None:
    """The allergens of a food, or whether it suits a diet or an allergy."""
    if question.says("an allergen", "major allergen", "common allergen", "listed allergen"):
        return _listed(question) or row(question.store, "allergen-list")
    if question.mentions and asks_for_the_list(question):
        return _listed(question)
    return _of_diet(question) if speaks_of_diet(question) else None


def _of_diet(question: Question) -> Answer | None:
    """Whether the food asked about suits the diet or the allergy said."""
    asked = _asked_about(question)
    if asked is None:
        return _allergic_to(question) or (_listed(question) if question.says("allergen") else None)
    words, token = asked
    subject = subject_of(question, words, token)
    subject = _named_with_it(question, token, subject) or subject
    if subject is None:
        return _allergic_to(question) or _not_held(question, token)
    is_bought = hears(question, "own product")
    case = Case(subject=subject, token=token, store=question.store, is_bought=is_bought)
    verdict = judged(case)
    if_held, if_free = leads(question, is_way_of_eating=case.is_way_of_eating)
    text = said(case, verdict, if_held=if_held, if_free=if_free)
    if verdict is Verdict.HAS_IT and (way := way_without(token, question.plain, question.store)):
        text = f"{text} {way}"
    return _answer(question, text, known=verdict is not Verdict.UNKNOWN)


def _named_with_it(question: Question, token: str, dish: Subject | None) -> Subject | None:
    """The food named that surely breaks the diet, if the dish does not: walnuts on tabbouleh decide."""
    if dish is None or judged(Case(subject=dish, token=token, store=question.store)) is Verdict.HAS_IT:
        return None
    for mention in question.mentions:
        if mention.phrase in dish.name:
            continue
        is_asked = token in diets_said(f" {mention.phrase} ", question.store).values()
        if is_asked or rules_out(question, mention) or is_refused(question, mention):
            continue
        named = Subject(name=mention.phrase, foods=(mention.food,))
        if judged(Case(subject=named, token=token, store=question.store)) is Verdict.HAS_IT:
            return named
    return None


def _asked_about(question: Question) -> tuple[str, str] | None:
    """The allergen or diet that the question asks about, as said and as a token.

    Words before "free" or "allergy" are asked about before all others, then ways of eating:
    "is lobster kosher" asks about kosher, although lobster is an allergen's word.
    """
    store, plain = question.store, question.plain
    for mention in question.mentions:  # names that merely hold an allergen's word: "coconut milk"
        if " " in mention.phrase and not rules_out(question, mention):
            plain = plain.replace(f" {mention.phrase} ", " · ", 1)
    plain = without_free_names(plain, store)
    found = diets_said(plain, store)
    if not found:
        return None
    for_allergy = [words for words in found if is_for_allergy(plain, words)]
    asked = max(
        for_allergy or found,
        key=lambda words: (found[words] in ways_of_eating(store), store.named(words) is None, len(words)),
    )
    return asked, found[asked]


def _not_held(question: Question, token: str) -> Answer | None:
    """A no in words to "is this dish free of it" about something that no table holds."""
    is_asked = _ASKS_OF_SOMETHING.search(question.plain) and names_allergy(question)
    if question.mentions or not is_asked:
        return None
    text = f"I don't know what is in that, so I can't call it safe for one who keeps to {token}."
    return _answer(question, text, known=False)


def _allergic_to(question: Question) -> Answer | None:
    """ "Cashew allergy, is pesto ok": a food named as the allergy, and another asked about."""
    cause = next((mention for mention in question.mentions if rules_out(question, mention)), None)
    if cause is None:
        return None
    subject = subject_of(question, cause.phrase, f"no {cause.food.name}")
    alone = all(mention.food.id == cause.food.id for mention in question.mentions)
    if subject is None or (alone and not subject.has):
        return None
    held = subject.has.union(*(food.allergens for food in subject.foods))
    shared = cause.food.allergens & held
    if shared:
        text = f"No, not safe: {subject.name} {has(shared)}."
    elif are_shellfish(cause.food.allergens, question.store) and are_shellfish(held, question.store):
        text = (
            f"Not surely: {subject.name} {has(held)}, and who reacts to one shellfish may react to others."
            f" {LEAVE_OUT}"
        )
    elif may := cause.food.allergens.intersection(subject.may):
        text = f"Not surely: {subject.name} {may_have(may)}."
    else:
        text = f"Not surely: I can't see all that is in {subject.name}; look for {cause.phrase} on the label."
    return _answer(question, text)


def _listed(question: Question) -> Answer | None:
    """The allergens of the first food named; None where none is."""
    if not question.mentions:
        return None
    food = question.mentions[0].food
    held = listed(food.allergens) or "none of the EU fourteen or the US nine by itself"
    return _answer(question, f"{food.name.capitalize()}: {held}.")


def _answer(question: Question, text: str, *, known: bool = True) -> Answer:
    sources = authorities(question.store) if known else ()
    return Answer(known=known, answer=f"{text} {CHECK}", sources=sources)
