"""A last look at an answer for someone who must not have something.

Advice is written for all; "thicken it with flour" is no answer to someone who avoids
gluten. What an answer names against what the question rules out is said to be left out.
"""

from __future__ import annotations

from dataclasses import replace

from knowledge.answers.eaters.labelling import CHECK
from knowledge.answers.eaters.restraints import left_out, may_rule_out, restraint
from knowledge.answers.model import Answer, Question
from knowledge.answers.swaps.swaps import SWAP
from knowledge.answers.swaps.swaps_told import is_told_swap


def guarded(question: Question, answer: Answer) -> Answer:
    """The answer, with a warning of each food in it that the question rules out."""
    if (
        CHECK in answer.answer
        or answer.answer.startswith(SWAP)
        or is_told_swap(answer.answer, question.store)
    ):
        return answer  # a swap keeps to what is ruled out by itself; what is missing is no restraint
    warned = left_out(answer.answer, restraint(question)) if may_rule_out(question) else ""
    return replace(answer, answer=f"{answer.answer} {warned}") if warned else answer
