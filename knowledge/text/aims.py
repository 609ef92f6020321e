"""Foods that only name the dish aimed at: "egg curry for 3: ...", "beans and dodo tonight. ..."."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import groupby

from knowledge.text.normalise import singular
from knowledge.text.roles import Role
from knowledge.text.segments import Found, Segment
from knowledge.text.vocabulary import words

_AIM_WORDS = frozenset(
    ["tonight", "idea", "night", "style", "fancy", "craving", "feel", "mood", "situation", "thinking"]
)
_HAVE_WORDS = frozenset(["have", "got", "ive", "weve", "theres", "there", "tengo"])
_AT_HAND = ("leftover", "frozen", "canned")
_SHORT = 5  # elements of a question that names a dish


def mark_aims(parts: Sequence[Segment]) -> None:
    """Give the foods that only name a dish the role AIM; foods must follow that are at hand."""
    sentences = [list(group) for _, group in groupby(parts, key=lambda s: s.sentence)]
    counts = [sum(len(s.of("food")) for s in sentence) for sentence in sentences]
    following = sum(counts)
    for n, sentence in enumerate(sentences):
        following -= counts[n]
        if counts[n] and following and _is_aim(sentence, sentences[n + 1], following):
            for food in _foods(sentence):
                if food.role is Role.HAVE:
                    food.role = Role.AIM


def _is_aim(sentence: Sequence[Segment], after: Sequence[Segment], following: int) -> bool:
    closer = sentence[-1].closer
    if closer != ":" and any(s.of("amount") for s in sentence):
        return False
    if any(e.mark[1] in _AT_HAND for s in sentence for e in s.of("mark")):
        return False
    said = {e.word for s in sentence for e in s.of("word")}
    dish = any((singular(word),) in words().dishes for word in said)
    labelled = closer == ":" and not said & _HAVE_WORDS
    asked = closer == "?" and sum(len(s.elements) for s in sentence) <= _SHORT and _begins_with_have(after)
    wanted = bool(said & _AIM_WORDS) and "no" not in said
    if asked or (labelled and dish):
        return True
    return following >= 2 and (labelled or wanted or dish)


def _foods(sentence: Sequence[Segment]) -> Iterator[Found]:
    return (e.food for s in sentence for e in s.elements if e.food)


def _begins_with_have(sentence: Sequence[Segment]) -> bool:
    first = next((s for s in sentence if s.elements), None)
    return first is not None and any(e.word in _HAVE_WORDS for e in first.elements[:3])
