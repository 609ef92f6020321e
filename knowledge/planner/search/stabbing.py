"""Which cut for each food and when it goes in: interval stabbing with a choice of interval.

Every way a food can be cooked gives a window: the shortest and the longest time
before the end of a stage ("lane") at which it may go in and still be good. One
add time that lies inside the windows of several foods serves them all with one
intervention. The search finds the set of add times, and a way for each food,
with the least

    sum over foods (cost of the way + edge * distance from its best point)
    + per_add * number of add times + per_s * (sum over lanes of the longest add time)

How it is exact: every term is piecewise linear in the add times, so some optimum
has each add time at the `lo`, `best` or `hi` of a window. Those points are listed,
points that another point beats for every food are dropped, and all sets up to the
limits of the lanes are compared (numpy, one row a set). A stove with more than
four add times is not run by one pair of hands, which keeps the enumeration small.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations

import numpy as np
from numpy.typing import NDArray

MAX_SETS = 12_000  # sets of add times of one size that are compared; beyond it only the best points are


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """One way of cooking one food: times before the end of its lane [s], and what the way costs."""

    lane: str
    lo_s: float
    hi_s: float
    best_s: float
    cost: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """What the objective charges: one add time, one second of the longest one, one full window edge."""

    per_add: float
    per_s: float
    edge: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """For each food the index of its window and the add time; and the value of the objective."""

    ways: tuple[int, ...]
    adds_s: tuple[float, ...]
    cost: float


def way_cost(window: Window, at_s: float, weights: Weights) -> float:
    """What one way costs when the food goes in `at_s` before the end; infinite outside its window."""
    if not window.lo_s <= at_s <= window.hi_s:
        return float("inf")
    room_s = window.best_s - window.lo_s if at_s < window.best_s else window.hi_s - window.best_s
    off = abs(at_s - window.best_s) / room_s if room_s > 0 else 0.0
    return window.cost + weights.edge * off


def stab(foods: Sequence[Sequence[Window]], *, weights: Weights, limits: Mapping[str, int]) -> Chosen | None:
    """The cheapest add times and ways, or None when no set within the lane limits serves every food.

    `limits` is the number of add times that each lane allows (a sealed cooker: one).
    """
    if not foods:
        return Chosen(ways=(), adds_s=(), cost=0.0)
    if any(not ways for ways in foods):
        return None
    points = sorted(
        {(w.lane, at) for ways in foods for w in ways for at in (w.lo_s, w.best_s, w.hi_s)},
        key=lambda p: (p[0], p[1]),
    )
    cost, way = _tables(foods, points, weights)
    keep = _undominated(cost, points)
    points = [points[j] for j in keep]
    cost, way = cost[:, keep], way[:, keep]
    found = _best_set(cost, points, weights, limits)
    if found is None:
        return None
    chosen, value = found
    local = cost[:, chosen].argmin(axis=1)
    at = [chosen[int(j)] for j in local]
    return Chosen(
        ways=tuple(int(way[i, j]) for i, j in enumerate(at)),
        adds_s=tuple(points[j][1] for j in at),
        cost=value,
    )


def _tables(
    foods: Sequence[Sequence[Window]], points: Sequence[tuple[str, float]], weights: Weights
) -> tuple[NDArray[np.float64], NDArray[np.int64]]:
    """(foods x points) the least cost of stabbing each food at each point, and the way that gives it."""
    lanes = {lane: number for number, lane in enumerate(sorted({lane for lane, _ in points}))}
    lane_of = np.array([lanes[lane] for lane, _ in points])
    at = np.array([t for _, t in points])
    cost = np.full((len(foods), len(points)), np.inf)
    way = np.zeros((len(foods), len(points)), dtype=np.int64)
    for i, ways in enumerate(foods):
        lo = np.array([w.lo_s for w in ways])[:, None]
        hi = np.array([w.hi_s for w in ways])[:, None]
        best = np.array([w.best_s for w in ways])[:, None]
        base = np.array([w.cost for w in ways])[:, None]
        lane = np.array([lanes.get(w.lane, -1) for w in ways])[:, None]
        room = np.where(at < best, best - lo, hi - best)
        off = np.divide(np.abs(at - best), room, out=np.zeros_like(room), where=room > 0)
        table = np.where((at >= lo) & (at <= hi) & (lane_of == lane), base + weights.edge * off, np.inf)
        way[i] = table.argmin(axis=0)
        cost[i] = table.min(axis=0)
    return cost, way


def _undominated(cost: NDArray[np.float64], points: Sequence[tuple[str, float]]) -> list[int]:
    """Points that no other point of the same lane, no longer than they, equals or beats for every food."""
    count = len(points)
    lanes = np.array([lane for lane, _ in points])
    at = np.array([t for _, t in points])
    beats = (cost[:, :, None] <= cost[:, None, :]).all(axis=0)  # [k, j]: k is nowhere dearer than j
    beats &= (lanes[:, None] == lanes[None, :]) & (at[:, None] <= at[None, :])
    mutual = beats & beats.T
    order = np.arange(count)
    beats &= ~(mutual & (order[:, None] >= order[None, :]))  # of equals the first stays
    useful = np.isfinite(cost).any(axis=0)
    return [int(j) for j in np.flatnonzero(useful & ~beats.any(axis=0))]


@lru_cache(maxsize=256)
def _combinations(count: int, size: int) -> NDArray[np.int64]:
    """All sets of `size` out of `count`, one row a set."""
    return np.array(list(combinations(range(count), size)), dtype=np.int64).reshape(-1, size)


def _best_set(
    cost: NDArray[np.float64],
    points: Sequence[tuple[str, float]],
    weights: Weights,
    limits: Mapping[str, int],
) -> tuple[list[int], float] | None:
    """The cheapest set of points, trying one add time first, then two, ..."""
    count = len(points)
    best: tuple[list[int], float] | None = None
    floor = float(cost.min(axis=1).sum()) if count else np.inf
    names = sorted({lane for lane, _ in points})
    at = np.array([t for _, t in points])
    in_lane = {lane: np.array([p[0] == lane for p in points]) for lane in names}
    useful = list(range(count))
    for size in range(1, min(len(cost), sum(limits.get(lane, 0) for lane in names)) + 1):
        if best is not None and best[1] <= floor + weights.per_add * size:
            break  # even perfect points could not pay for one more add time
        useful = _most_useful(cost, useful, size)
        sets = np.array(useful, dtype=np.int64)[_combinations(len(useful), size)]
        if not len(sets):
            break
        allowed = np.ones(len(sets), dtype=bool)
        longest = np.zeros(len(sets))
        for lane in names:
            inside = in_lane[lane][sets]
            allowed &= inside.sum(axis=1) <= limits.get(lane, 0)
            longest += np.where(inside, at[sets], 0.0).max(axis=1)
        sets, longest = sets[allowed], longest[allowed]
        if not len(sets):
            continue
        least = cost[:, sets[:, 0]]
        for column in range(1, size):
            least = np.minimum(least, cost[:, sets[:, column]])
        values = least.sum(axis=0) + weights.per_add * size + weights.per_s * longest
        winner = int(values.argmin())
        if np.isfinite(values[winner]) and (best is None or values[winner] < best[1] - 1e-9):
            best = [int(j) for j in sets[winner]], float(values[winner])
    return best


def _most_useful(cost: NDArray[np.float64], useful: list[int], size: int) -> list[int]:
    """So many of the points that their sets can all be compared; those that serve most foods, cheapest."""
    count = len(useful)
    while count > size and _choose(count, size) > MAX_SETS:
        count -= 1
    if count == len(useful):
        return useful
    served = np.isfinite(cost).sum(axis=0)
    value = np.where(np.isfinite(cost), cost, 0.0).sum(axis=0)
    ranked = sorted(useful, key=lambda j: (-served[j], value[j], j))
    return sorted(ranked[:count])


def _choose(n: int, k: int) -> int:
    result = 1
    for i in range(k):
        result = result * (n - i) // (i + 1)
    return result
