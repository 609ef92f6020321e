"""A last look at an answer for someone who must not have something.

Advice is written for all; "thicken it with flour" is no answer to someone who avoids
gluten. What an answer names against what the question rules out is said to be left out.
"""

from __future__ import annotations

from dataclasses import replace

from knowledge.answers.labelling import CHECK
from knowledge.answers.model import Answer, Question
from knowledge.answers.naming import foods_in
from knowledge.answers.restraints import may_rule_out, restraint
from knowledge.answers.swaps import SWAP


def guarded(question: Question, answer: Answer) -> Answer:
    """The answer, with a warning of each food in it that the question rules out."""
    if CHECK in answer.answer or answer.answer.startswith(SWAP):
        return answer  # a swap keeps to what is ruled out by itself; what is missing is no restraint
    held = restraint(question) if may_rule_out(question) else None
    barred = [food for food in foods_in(answer.answer, question.store) if held.bars(food)] if held else []
    if not barred:
        return answer
    names = ", ".join(dict.fromkeys(food.name for food in barred))
    return replace(answer, answer=f"{answer.answer} By what you said, leave out: {names}. {CHECK}")
