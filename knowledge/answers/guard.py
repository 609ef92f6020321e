"""A last look at an answer for someone who must not have something.

Advice is written for all; "thicken it with flour" is no answer to someone who avoids
gluten. Of several ways that an answer holds out, those with what the question rules out are
cut; where it stands in the one way there is, what takes its place is said before it.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from knowledge.answers.eaters.labelling import CHECK
from knowledge.answers.eaters.restraints import Restraint, may_rule_out, restraint
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.naming import foods_in
from knowledge.answers.swaps.swap_rows import foods_of, is_barred, stand_ins
from knowledge.answers.swaps.swaps import SWAP
from knowledge.answers.swaps.swaps_told import is_told_swap
from knowledge.foods.model import Food

# What a sentence says of a food without holding it out: what it does without, or stands in for.
_NOT_OFFERED = re.compile(
    r"(?i)\b(?:without|free of|not|no|never|instead of|in place of|less)\b[^,.;:(]*"
    r"|\b(?:plant|vegan|soy|oat|rice|almond|(?:gluten|dairy|lactose|milk|nut|egg)[- ]free)(?: \w+)? ?"
    r"(?:milk|cream|yogh?urt|butter|flour|cheese|pasta|noodles|bread|baking powder)\b"
)
_TELLS_OF_ALLERGENS = re.compile(r"(?i)allerg|coeliac|\bmind\b|\blabel|no (?:stand-in|swap)")
_SENTENCE_END = re.compile(r"(?<=[.!?]) (?=[A-Z\"'(])")
_ENDING = re.compile(r"(?P<ending>(?: \([^()]*\))?[.!?]?)$")  # "... (common practice)."
_LISTS = "; "
_STEPS = re.compile(r", (?![^(]*\))")  # not inside brackets
_WAYS = re.compile(r" or (?![^(]*\))")
_OR = "or "


@dataclass(frozen=True, slots=True, kw_only=True)
class _Cut:
    """A sentence without the ways that are ruled out, and what is ruled out and still stands in it."""

    text: str
    stays: tuple[Food, ...] = ()
    is_cut: bool = False


def guarded(question: Question, answer: Answer) -> Answer:
    """The answer without the ways in it that the question rules out, or with what to take in their place."""
    if (
        CHECK in answer.answer
        or answer.answer.startswith(SWAP)
        or is_told_swap(answer.answer, question.store)
        or not may_rule_out(question)
    ):
        return answer  # a swap keeps to what is ruled out by itself; what is missing is no restraint
    held = restraint(question)
    cuts = [_cut(sentence, held) for sentence in _SENTENCE_END.split(answer.answer)]
    stays = tuple({food.id: food for cut in cuts for food in cut.stays}.values())
    if not stays and not any(cut.is_cut for cut in cuts):
        return answer
    told = " ".join(cut.text for cut in cuts)
    return replace(
        answer, answer=" ".join(filter(None, (_instead(_beside(question, stays), held), told, CHECK)))
    )


def _cut(sentence: str, held: Restraint) -> _Cut:
    stays = _offered(sentence, held)
    if not stays:
        return _Cut(text=sentence)
    ending = _ENDING.search(sentence)
    end = ending["ending"] if ending else ""
    head, colon, listed = sentence.removesuffix(end).rpartition(": ")
    lists = listed.split(_LISTS)
    left = [_cut_list(one, held, has_verb=bool(colon) and one is lists[0]) for one in lists]
    free = [one for one in left if one]
    are_ways = len(free) == len(lists) or any(one.startswith(_OR) for one in lists)
    if not (are_ways and free):
        return _Cut(text=sentence, stays=stays)
    head = "" if _offered(head, held) else f"{head}{colon}"
    told = f"{head}{_LISTS.join(free).removeprefix(_OR)}{end}"
    return _Cut(text=f"{told[0].upper()}{told[1:]}", is_cut=True)


def _cut_list(listed: str, held: Restraint, *, has_verb: bool) -> str:
    """What is left of ways side by side, "cream, stock or wine"; "" where they are steps of one way.

    The first has the verb of the others, "add cream or stock", unless it stands before the list.
    """
    steps = _STEPS.split(listed)
    are_ways = len(steps) > 1 and (steps[-1].startswith(_OR) or bool(_WAYS.search(steps[-1])))
    left: list[str] = []
    for place, step in enumerate(steps):
        is_told = has_verb if place == 0 else are_ways
        told = _cut_step(step, held, has_verb=is_told)
        if not told and not (are_ways and is_told):
            return ""
        left += [told] if told else []
    if left and are_ways and len(left) > 1 and _offered(steps[-1], held):
        left[-1] = f"{_OR}{left[-1].removeprefix(_OR)}"
    return ", ".join(left)


def _cut_step(step: str, held: Restraint, *, has_verb: bool) -> str:
    if not _offered(step, held):
        return step
    ways = _WAYS.split(step.removeprefix(_OR))
    free = [way for way in ways if not _offered(way, held)]
    if not free or not (has_verb or free[0] == ways[0]):
        return ""
    told = " or ".join(free)
    return f"{_OR}{told}" if step.startswith(_OR) else told


def _offered(text: str, held: Restraint) -> tuple[Food, ...]:
    """The foods that a text holds out although they are ruled out, each once."""
    if _TELLS_OF_ALLERGENS.search(text):
        return ()
    named = foods_in(_NOT_OFFERED.sub(" ", text), held.store)
    return tuple({food.id: food for food in named if held.bars(food)}.values())


def _beside(question: Question, stays: Sequence[Food]) -> Sequence[Food]:
    """What is ruled out beside the dish that was asked about: of the gravy its flour."""
    return [food for food in stays if food not in question.foods] or stays


def _instead(barred: Sequence[Food], held: Restraint) -> str:
    """What takes the place of what is ruled out in the only way there is, said before it."""
    if not barred:
        return ""
    told: list[str] = []
    for food in barred:
        free = foods_of([row for row in stand_ins(food, held.store) if not is_barred(row, held)])
        told.append(f"{free[0].name} for {food.name}" if free else f"no {food.name}")
    return f"For what you said: {', '.join(told)}."
