"""One food for another, in the many ways cooks say it. Patterns over masked text.

Each pattern names its foods `a` (comes in) and `b` (leaves); the first that fits wins.
"""

from __future__ import annotations

from dataclasses import dataclass

from knowledge.text.cues import cue, separate_cues
from knowledge.text.normalise import FOOD


@dataclass(frozen=True, slots=True)
class SwapFound:
    """Places of the foods in masked text; `frm` or `to` None where the text leaves it open."""

    frm: int | None
    to: int | None


def swap(masked: str) -> SwapFound | None:
    """The first swap that a masked text asks for, by the signs of its foods."""
    if masked.count(FOOD) == 1 and cue("same food", "").search(masked):
        place = masked.index(FOOD)
        return SwapFound(place, place)
    for _, pattern in separate_cues("swap"):
        match = pattern.search(masked)
        if match:
            groups = match.groupdict()
            return SwapFound(
                match.start("b") if groups.get("b") else None, match.start("a") if groups.get("a") else None
            )
    return None
