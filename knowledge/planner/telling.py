"""A step as it is written: what is done, when, with which foods."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.planner.draft import Placed
from knowledge.planner.model import Do, Step


def step(do: Do, at_s: float, text: str, placed: Sequence[Placed] = (), *, hands_s: float = 30.0,
         safety: bool = False) -> Step:  # fmt: skip
    """A step; its id comes with its place among the others."""
    foods = tuple(dict.fromkeys(p.way.dish.food.id for p in placed))
    return Step(id="", at_s=at_s, do=do, foods=foods, text=text, hands_s=hands_s, safety=safety)
