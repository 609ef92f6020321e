"""A step as it is written: what is done, when, with which foods."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.planner.draft import BROWNED, Draft, Placed
from knowledge.planner.model import Do, Step
from knowledge.planner.search.browning import is_mince
from knowledge.planner.search.stages import add_at_s
from knowledge.planner.writing.handling import BOIL_UP, OFF_HEAT


def step(do: Do, at_s: float, text: str, placed: Sequence[Placed] = (), *, hands_s: float = 30.0,
         safety: bool = False) -> Step:  # fmt: skip
    """A step; its id comes with its place among the others."""
    foods = tuple(dict.fromkeys(p.way.dish.food.id for p in placed))
    return Step(id="", at_s=at_s, do=do, foods=foods, text=text, hands_s=hands_s, safety=safety)


def all_join_at_once(draft: Draft) -> bool:
    """Whether the browned meat is in the way of nothing and stays where it is."""
    first = max(p.add_s for p in draft.placed)
    stays = all(p.add_s == first for p in draft.placed if p.way.lead == BROWNED)
    return stays and draft.stages.softened_s == draft.stages.browned_s


def stays_in(placed: Placed) -> bool:
    """Whether it is browned and never leaves the pan: mince."""
    return placed.way.lead == BROWNED and is_mince(placed.way.dish, placed.way.piece.shape)


def groups_in(placed: Sequence[Placed], draft: Draft) -> list[tuple[float, list[Placed]]]:
    """Dishes by the moment they go into their lane, earliest first."""
    by_time: dict[float, list[Placed]] = {}
    for p in placed:
        by_time.setdefault(round(add_at_s(p, draft.stages), 3), []).append(p)
    return sorted(by_time.items())


def each_once(sentences: Iterator[str]) -> str:
    """Each sentence once, with a blank before it."""
    return "".join(f" {s}" for s in dict.fromkeys(sentences) if s and s not in (OFF_HEAT, BOIL_UP))
