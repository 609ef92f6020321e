"""How a dinner is wanted beside its foods: crisp, saucy, quick; and what is not wanted: "nothing soupy".

A wish is a pattern of `words_cues.csv`. What stands before it in the same clause decides whether it
is wanted ("crispy please"), not wanted ("not too spicy", "no soup or stew"), or no matter
("doesn't have to be quick"). An unwanted wish is named "not soup".
"""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.text.cues import cue, cues
from knowledge.wished import NOT

CLAUSE = 80  # characters before a wish in which its "not" may stand
Span = tuple[int, int]


def wishes(text: str) -> tuple[str, ...]:
    """The wishes of a flat text, each once, unwanted ones with "not " before them."""
    return tuple(dict.fromkeys(wish for wish, _ in _found(text)))


def wish_spans(text: str) -> list[Span]:
    """Where the wishes stand, wanted or not."""
    return [span for _, span in _found(text, dropped=True)]


def weighed(wish: str, text: str, start: int) -> str:
    """A wish that begins at `start`: itself, with "not " before it, or "" when it is left open."""
    if wish.startswith(NOT):
        return wish  # its pattern says so itself
    before = text[max(start - CLAUSE, 0) : start]
    if cue("unwanted", "open").search(before):
        return ""
    return f"{NOT}{wish}" if cue("unwanted", "").search(before) else wish


def _found(text: str, *, dropped: bool = False) -> Iterator[tuple[str, Span]]:
    for wish, pattern in cues("wish"):
        for match in pattern.finditer(text):
            said = weighed(wish, text, match.start())
            if said or dropped:
                yield said or wish, match.span()
