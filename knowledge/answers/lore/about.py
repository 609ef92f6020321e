"""What a food is, what it is called elsewhere, and when it goes in."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.words import words_of
from knowledge.foods.model import Food, Role, When

_IS_IT = re.compile(
    r" (?:is|are) (?:an? )?[\w ]{2,20} (?:an?|just|really|another (?:name|word) for) [\w ]{2,20} $"
)
_EMPHASIS = re.compile(r" (?:on earth|the heck|the hell|exactly|even|actually|please) ")
_MADE_OF = re.compile(r" made (?:of|from|out of|with)(?= )")
_AND_THEN = re.compile(  # "... and what do I do with it": told of by what the food is like to cook
    r" and (?:what|how) (?:do|can|should|would) (?:i|you|we) (?:do with|use|cook|eat|prepare)"
    r" (?:it|them|this)(?= )"
)
LONGEST_WHAT_IS = 8  # words; a longer question asks for more than what a food is
OTHER_NAMES = 8  # shown of a food
_WHEN: Mapping[When, str] = {
    When.START: "at the start",
    When.AROMATICS: "with the aromatics",
    When.LIQUID: "with the liquid",
    When.END: "at the end",
    When.TABLE: "at the table",
}


def what_is(question: Question) -> Answer | None:
    """A food in a few words; two foods side by side."""
    mentions, foods = question.mentions, question.foods
    alike = _IS_IT.search(question.plain) is not None or hears(question, "compares")
    if len(foods) == 1 and len(mentions) >= 2 and alike:
        one, other = mentions[0].phrase, mentions[1].phrase
        text = f"Much the same: {one} and {other} are both {foods[0].name} to me."
        return _told(question, f"{text} {described(question, foods[0])}", foods[0])
    if len(foods) >= 2 and (alike or hears(question, "side by side")):
        text = " ".join(described(question, food) for food in foods[:2])
        return _told(question, text, *foods[:2])
    if len(foods) == 1 and (hears(question, "asks for another name") or _is_what_is(question)):
        return _told(question, f"{described(question, foods[0])}{_holding(question, foods[0])}", foods[0])
    return None


def _holding(question: Question, food: Food) -> str:
    """The allergens of a food of which it is asked what it is made of."""
    if not food.allergens or not _MADE_OF.search(question.plain):
        return ""
    return f" It has {', '.join(sorted(food.allergens))}."


def _is_what_is(question: Question) -> bool:
    """True if nothing but what a food is can be meant: no word is left that speaks of something else."""
    asked = _MADE_OF.sub(" ", _AND_THEN.sub(" ", question.plain)).split()
    if not what_is_said(question) or len(asked) > LONGEST_WHAT_IS:
        return False
    named = {word for m in question.mentions for word in question.words[m.start : m.end]}
    beside = set(question.plain.split()) - set(asked)
    return not set(question.words) - named - beside - words_of(question.store, "filler")


def what_is_said(question: Question) -> bool:
    """True if it is asked what something is."""
    return hears(replace(question, plain=without_emphasis(question.plain)), "asks what it is")


def without_emphasis(plain: str) -> str:
    """A question without "on earth" and the like."""
    return _EMPHASIS.sub(" ", plain)


def _told(question: Question, text: str, *foods: Food) -> Answer:
    sources = [source for food in foods for source in _sources(food)]
    return Answer(known=True, answer=text, sources=cited(question.store, *sources))


def when_to_add(question: Question) -> Answer | None:
    """ "When do I add vinegar": the moment a seasoning goes in."""
    asked = hears(question, "asks when") and hears(question, "adds a seasoning")
    food = next((food for food in question.foods if food.when), None)
    if not asked or food is None:
        return None
    why = f": {food.does}" if food.does else ""
    text = f"{food.name.capitalize()} goes in {_when(food)}{why}."
    return Answer(known=True, answer=text, sources=cited(question.store, "CP"))


def _sources(food: Food) -> tuple[str, ...]:
    return tuple(dict.fromkeys(source for _, source in food.sources))[:2] or ("CP",)


def described(question: Question, food: Food) -> str:
    """A food by its names, its kind and what it does."""
    other = [name for name, _ in question.store.synonyms(food.id) if name.isascii()]
    said = {m.phrase for m in question.mentions}
    names = [n for n in other if n in said] + [n for n in other if n not in said]
    called = f", also called {', '.join(dict.fromkeys(names[:OTHER_NAMES]))}" if names else ""
    kind = food.group if food.role is not Role.SEASON else f"{food.group}, goes in {_when(food)}"
    tail = f" {food.does[0].upper()}{food.does[1:]}." if food.does else ""
    return f"{food.name.capitalize()} ({kind}){called}.{tail}"


def _when(food: Food) -> str:
    return _WHEN[food.when] if food.when else "when you like"
