"""Swaps in words of their own: `swaps_said.csv`, by the name that was said.

A name tells more than the food it stands for: double cream and heavy cream are one food of the
tables, yet who asks for double cream in Texas wants to hear of heavy cream first; and yeast or
cake flour are no foods of the tables at all.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache

from knowledge.answers.eaters.restraints import left_out, restraint
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.swaps.leaving import goes_at, goes_before
from knowledge.foods.store import Store
from knowledge.tables import items

_AND_NOW = re.compile(r" (?:use|using|what|how|can i|could i|do i|make|help) | (?:for|in) (?:the|my|a) ")
SHORT = 6  # words of a remark like "out of yeast"


def told_swap(name: str, store: Store) -> str:
    """What is said to take instead of a thing of this name, "" where the table has nothing."""
    return _by_name(store).get(name, "")


def swap_told(question: Question) -> Answer | None:
    """What to take instead of a thing that is no food of the tables, or goes by a name of its own there."""
    name = missing(question)
    if name is None or any(name in mention.phrase for mention in question.mentions):
        return None
    held = restraint(question)
    text = told_swap(name, question.store)
    warned = left_out(text, held) if held else ""
    return Answer(known=True, answer=" ".join(filter(None, (text, warned))), sources=("common practice",))


def other_name(question: Question) -> Answer | None:
    """ "What is caster sugar called in America": the row of the name tells where it goes by another."""
    if not hears(question, "asks for another name"):
        return None
    name = next(iter(_places(question, question.plain.split()).values()), None)
    if name is None:
        return None
    return Answer(known=True, answer=told_swap(name, question.store), sources=("common practice",))


def is_told_swap(text: str, store: Store) -> bool:
    """True for an answer of the table: what is missing is no restraint on it."""
    return text in _by_name(store).values()


def missing(question: Question) -> str | None:
    """The name of the table that the question wants replaced: behind "no", before "substitute"."""
    asks = hears(question, "asks for a swap") or hears(question, "asks for a stand in")
    is_short = len(question.words) <= SHORT and not question.says("is_", "are_", "how_")
    if not (asks or is_short or _AND_NOW.search(question.plain)):
        return None
    words = question.plain.split()
    places = _places(question, words)
    behind = (
        places[at + skipped] for at in goes_at(question) for skipped in (0, 1) if at + skipped in places
    )
    found = next(behind, None)
    if found is None and asks:
        found = next(
            (name for at, name in places.items() if goes_before(words, at + len(name.split()))), None
        )
    return found


def _places(question: Question, words: list[str]) -> dict[int, str]:
    """Where (in words) each name of the table begins; of several at one place the longest."""
    found: dict[int, str] = {}
    longest = max(map(len, map(str.split, _by_name(question.store))))
    at = 0
    while at < len(words):
        spans = (" ".join(words[at:end]) for end in range(min(at + longest, len(words)), at, -1))
        name = next((span for span in spans if span in _by_name(question.store)), None)
        if name is not None:
            found[at] = name
        at += len(name.split()) if name else 1
    return found


@lru_cache(maxsize=4)
def _by_name(store: Store) -> Mapping[str, str]:
    rows = store.table("swaps_said")
    return {name: row["text"] for row in rows for name in items(row["names"])}
