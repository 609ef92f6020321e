"""The same food in another state: "tinned tomatoes where you wanted fresh ones"."""

from __future__ import annotations

import re

from knowledge.text.cues import cue
from knowledge.text.seen import Seen
from knowledge.text.segments import state_words

_STATE = re.compile(rf"\b(?:{'|'.join(state_words())})\b")


def another_state(seen: Seen) -> str | None:
    """The state in which the one food of a text comes in, if the text names two."""
    if len({hit.phrase.foods[0].name for hit in seen.hits}) != 1:
        return None
    text = seen.masked
    said = [(match.span(), state_words()[match.group()]) for match in _STATE.finditer(text)]
    said += [((at, at + 1), state) for at, n in seen.where.items() if (state := _inside(seen, n))]
    said.sort()
    if len({state for _, state in said}) != 2:
        return None
    before, after = cue("same food", "leaves"), cue("same food", "is out")
    leaves = [state for (start, end), state in said if before.search(text[:start]) or after.match(text[end:])]
    frm = leaves[0] if leaves else said[-1][1]
    return next(state for _, state in said if state != frm)


def _inside(seen: Seen, n: int) -> str | None:
    """The state that a food's own name tells: "fresh basil"."""
    hit = seen.hits[n]
    words = (state_words().get(token.text) for token in seen.tokens[hit.start : hit.end])
    return hit.phrase.state or next(filter(None, words), None)
