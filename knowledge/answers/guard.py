"""A last look at an answer for someone who must not have something.

Advice is written for all; "thicken it with flour" is no answer to someone who avoids
gluten. What an answer names against what the question rules out is said to be left out.
"""

from __future__ import annotations

import re
from dataclasses import replace

from knowledge.answers.eaters.labelling import CHECK
from knowledge.answers.eaters.restraints import Restraint, left_out, may_rule_out, restraint
from knowledge.answers.model import Answer, Question
from knowledge.answers.swaps.swaps import SWAP
from knowledge.answers.swaps.swaps_told import is_told_swap

_SENTENCES = re.compile(r"(?<=[.!?])(?= [A-Z0-9])")
_WAYS = re.compile(r"(?=[;,] or )")  # "boil it down; or 1 tbsp flour": each way, with what begins it
_LEAVES_OUT = re.compile(r"\b(?:without|free of|not|no|leave out)\b")
_END = re.compile(r"(?: \((?:common practice|[A-Z][^()]*)\))?[.!]?$")  # its source is the sentence's


def guarded(question: Question, answer: Answer) -> Answer:
    """The answer, with a warning of each food in it that the question rules out."""
    if (
        CHECK in answer.answer
        or answer.answer.startswith(SWAP)
        or is_told_swap(answer.answer, question.store)
    ):
        return answer  # a swap keeps to what is ruled out by itself; what is missing is no restraint
    if not may_rule_out(question):
        return answer
    held = restraint(question)
    kept = "".join(_without_barred(sentence, held) for sentence in _SENTENCES.split(answer.answer))
    warned = left_out(kept, held)
    return replace(answer, answer=f"{kept} {warned}".strip())


def _without_barred(sentence: str, held: Restraint) -> str:
    """A sentence of several ways without those that need what is ruled out; the first way stays."""
    first, *ways = _WAYS.split(sentence)
    kept = [way for way in ways if not left_out(way, held) or _LEAVES_OUT.search(way)]
    if len(kept) == len(ways):
        return sentence
    cited = "" if kept and kept[-1] is ways[-1] else _END.search(sentence)
    end = cited[0] if cited else ""
    return f"{first}{''.join(kept)}".rstrip(" ;,") + (end or "")
