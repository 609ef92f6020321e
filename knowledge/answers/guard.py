"""A last look at an answer for someone who must not have something.

Advice is written for all; "thicken it with flour" is no answer to someone who avoids
gluten. What an answer names against what the question rules out is said to be left out.
"""

from __future__ import annotations

import re
from dataclasses import replace

from knowledge.answers.allergy import CHECK
from knowledge.answers.model import Answer, Question
from knowledge.answers.restraints import ANY_CUE, is_refused, restraint
from knowledge.answers.swaps import SWAP
from knowledge.foods.model import Food
from knowledge.text.normalise import key


def guarded(question: Question, answer: Answer) -> Answer:
    """The answer, with a warning of each food in it that the question rules out."""
    refused = any(is_refused(question, mention) for mention in question.mentions)
    said = refused or question.ruled_out or ANY_CUE.search(question.plain)
    if not said or CHECK in answer.answer or answer.answer.startswith(SWAP):
        return answer  # a swap keeps to what is ruled out by itself; what is missing is no restraint
    held = restraint(question)
    barred = [food for food in _named(question, answer.answer) if held.bars(food)] if held else []
    if not barred:
        return answer
    names = ", ".join(dict.fromkeys(food.name for food in barred))
    return replace(answer, answer=f"{answer.answer} By what you said, leave out: {names}. {CHECK}")


def _named(question: Question, text: str) -> list[Food]:
    words = re.findall(r"[a-z]+", text.lower())
    found, at = [], 0
    while at < len(words):
        for length in (3, 2, 1):  # "coconut milk" is no milk
            food = question.store.named(key(" ".join(words[at : at + length])))
            if food is not None:
                found.append(food)
                at += length - 1
                break
        at += 1
    return found
