"""More than one food changed at once: "carrots for parsnips and onions for leeks".

The message falls into clauses with two foods each. The first is a swap like any other; the others
say which leaves by a link of their own ("instead of"), or go the way of the first ("for").
"""

from __future__ import annotations

import re
from itertools import pairwise

from knowledge.text import swaps
from knowledge.text.cues import cue
from knowledge.text.normalise import FOOD

_CLAUSES = re.compile(r"[,;.\n]+(?: and\b)?|\band\b")


def several(masked: str) -> tuple[swaps.SwapFound, ...]:
    """Every swap of a message that asks for two or more and for nothing else; none otherwise."""
    clauses = _with_two_foods(masked)
    if len(clauses) < 2:
        return ()
    at, clause = clauses[0]
    first = swaps.swap(clause)
    if first is None or first.frm is None or first.to is None:
        return ()
    found = [swaps.SwapFound(at + first.frm, at + first.to)]
    for start, other in clauses[1:]:
        a, b = other.index(FOOD), other.rindex(FOOD)
        link = other[a + len(FOOD) : b]
        if cue("several", "instead").search(link):
            found.append(swaps.SwapFound(start + b, start + a))
        elif cue("several", "for").search(link):
            ahead = first.frm < first.to
            found.append(swaps.SwapFound(start + (a if ahead else b), start + (b if ahead else a)))
        else:
            return ()
    return tuple(found)


def _with_two_foods(masked: str) -> list[tuple[int, str]]:
    """The clauses and where they begin, when each that names a food names two."""
    cuts = [0, *(m.end() for m in _CLAUSES.finditer(masked)), len(masked)]
    parts = [(a, masked[a:b]) for a, b in pairwise(cuts)]
    named = [(at, part) for at, part in parts if FOOD in part]
    return named if all(part.count(FOOD) == 2 for _, part in named) else []
