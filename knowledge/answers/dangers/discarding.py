""" "Do I have to bin it?": a "No" to eating it would be read as "keep it"."""

from __future__ import annotations

import re
from dataclasses import replace

from knowledge.answers.model import Answer, Question

_ASKS = re.compile(
    r" (?:(?:do|should|shall|must|need) (?:i|we|you|they|she|he)"
    r"|(?:need|needs|have|has|got|better|time) to|gotta)"
    r" (?:\w+ ){0,8}?"
    r"(?:bin|binned|throw|thrown|chuck|chucked|toss|tossed|discard|discarded|dump|dumped|ditch|rid"
    r"|pour it away|pour it out)(?= )"
)
_NO = re.compile(r"^No(?:, (?:not safe|never|don't eat it))?(?=[:,])")
_THROWN = re.compile(r"\bthrow|\bthrown\b|\bdiscard")


def asked_whether_to_discard(question: Question, answer: Answer) -> Answer:
    """The answer, with "Yes" before what is to be thrown away where that is what was asked."""
    said = _NO.match(answer.answer)
    if said is None or not _ASKS.search(question.plain) or not _THROWN.search(answer.answer):
        return answer
    return replace(answer, answer=f"Yes{answer.answer[said.end() :]}")
