"""One pair of hands: what is cut when, so that each food is ready at its moment.

Cutting is one machine with due dates (the add times). Earliest due date first is
optimal for the largest lateness (Jackson), so the latest possible beginning follows
by laying the jobs out backwards, last due last, around the times when the hands are
taken (browning, stirring). Jobs may be broken off and taken up again, as knife work is.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

ROUNDING_S = 1e-6  # sums of floats: a gap that fits but for the last bit fits


@dataclass(frozen=True, slots=True, kw_only=True)
class Job:
    """Hands for `hands_s`, finished by `due_s`."""

    id: str
    hands_s: float
    due_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Slot:
    """A job laid out: from its beginning to its end."""

    id: str
    start_s: float
    end_s: float


def in_order(jobs: Sequence[Job]) -> list[Job]:
    """Earliest due date first; ties by id, so that the order is always the same."""
    return sorted(jobs, key=lambda job: (job.due_s, job.id))


def latest_start_s(jobs: Sequence[Job], busy: Sequence[tuple[float, float]]) -> float:
    """The latest moment to begin at which every job still meets its due date (0 when there are none)."""
    taken = _joined(busy)
    edge = float("inf")
    for job in reversed(in_order(jobs)):
        edge = _back(min(edge, job.due_s), job.hands_s, taken)
    return min(edge, 0.0) if jobs else 0.0


def lay_out(jobs: Sequence[Job], busy: Sequence[tuple[float, float]], *, start_s: float) -> tuple[Slot, ...]:
    """The jobs one after the other from `start_s`, around the busy times, as early as they can be."""
    taken = _joined(busy)
    now = start_s
    slots = []
    for job in in_order(jobs):
        begin = _free_from(now, taken)
        end = _forward(begin, job.hands_s, taken)
        slots.append(Slot(id=job.id, start_s=begin, end_s=end))
        now = end
    return tuple(slots)


def _joined(busy: Sequence[tuple[float, float]]) -> list[tuple[float, float]]:
    """The busy times in order, those that overlap as one."""
    joined: list[tuple[float, float]] = []
    for start, end in sorted(busy):
        if joined and start <= joined[-1][1]:
            joined[-1] = joined[-1][0], max(joined[-1][1], end)
        else:
            joined.append((start, end))
    return joined


def _free_from(at_s: float, taken: Sequence[tuple[float, float]]) -> float:
    for start, end in taken:
        if start <= at_s < end:
            at_s = end
    return at_s


def _forward(at_s: float, need_s: float, taken: Sequence[tuple[float, float]]) -> float:
    """When `need_s` of free time after `at_s` is used up."""
    for start, end in taken:
        if end <= at_s:
            continue
        free = max(start - at_s, 0.0)
        if need_s <= free + ROUNDING_S:
            return at_s + need_s
        need_s -= free
        at_s = max(at_s, end)
    return at_s + need_s


def _back(at_s: float, need_s: float, taken: Sequence[tuple[float, float]]) -> float:
    """The latest moment from which `need_s` of free time fits before `at_s`."""
    for start, end in reversed(taken):
        if start >= at_s:
            continue
        free = max(at_s - end, 0.0)
        if need_s <= free + ROUNDING_S:
            return at_s - need_s
        need_s -= free
        at_s = min(at_s, start)
    return at_s - need_s
