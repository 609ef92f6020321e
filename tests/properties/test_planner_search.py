"""The two searches of the planner against brute force over all choices."""

from __future__ import annotations

from itertools import permutations, product

from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.planner.search.prep import Job, latest_start_s, lay_out
from knowledge.planner.search.stabbing import Weights, Window, stab, way_cost

WEIGHTS = Weights(per_add=0.3, per_s=0.0002, edge=1.0)


@st.composite
def windows(draw: st.DrawFn) -> Window:
    lo = draw(st.integers(0, 40)) * 60.0
    best = lo + draw(st.integers(0, 20)) * 60.0
    hi = best + draw(st.integers(0, 20)) * 60.0
    return Window(
        lane=draw(st.sampled_from(["main", "main", "after"])),
        lo_s=lo,
        best_s=best,
        hi_s=hi,
        cost=draw(st.integers(0, 4)) / 4,
    )


FOODS = st.lists(st.lists(windows(), min_size=1, max_size=3), min_size=1, max_size=4)
LIMITS = st.fixed_dictionaries({"main": st.integers(1, 3), "after": st.integers(0, 2)})


def brute(foods: list[list[Window]], limits: dict[str, int]) -> float:
    """The least objective over every choice of way and of a breakpoint for every food."""
    breaks = {
        lane: sorted(
            {t for ways in foods for w in ways if w.lane == lane for t in (w.lo_s, w.best_s, w.hi_s)}
        )
        for lane in ("main", "after")
    }
    each = [[(w, t) for w in ways for t in breaks[w.lane] if w.lo_s <= t <= w.hi_s] for ways in foods]
    best = float("inf")
    for choice in product(*each):
        adds = {(w.lane, t) for w, t in choice}
        if any(sum(lane == name for lane, _ in adds) > limit for name, limit in limits.items()):
            continue
        longest = sum(max((t for lane, t in adds if lane == name), default=0.0) for name in limits)
        value = sum(way_cost(w, t, WEIGHTS) for w, t in choice)
        best = min(best, value + WEIGHTS.per_add * len(adds) + WEIGHTS.per_s * longest)
    return best


@settings(max_examples=1500, deadline=None)
@given(FOODS, LIMITS)
def test_stabbing_is_never_worse_than_brute_force(foods: list[list[Window]], limits: dict[str, int]) -> None:
    if len(foods) == 4:
        foods = [ways[:2] for ways in foods]
    found = stab(foods, weights=WEIGHTS, limits=limits)
    least = brute(foods, limits)
    assert (found is None) == (least == float("inf"))
    if found is not None:
        assert found.cost <= least * 1.01 + 1e-9
        told = sum(way_cost(foods[i][w], found.adds_s[i], WEIGHTS) for i, w in enumerate(found.ways))
        assert told <= found.cost + 1e-9


def feasible(jobs: list[Job], order: tuple[Job, ...], busy: list[tuple[int, int]], start: int) -> bool:
    """Whether the jobs, cut in this order second by second from `start`, all meet their due dates."""
    now = start
    for job in order:
        left = job.hands_s
        while left > 0:
            if not any(a <= now < b for a, b in busy):
                left -= 1
            now += 1
        if now > job.due_s:
            return False
    return True


@settings(max_examples=500, deadline=None)
@given(
    st.lists(st.tuples(st.integers(1, 6), st.integers(0, 25)), min_size=1, max_size=4),
    st.lists(st.tuples(st.integers(-5, 20), st.integers(1, 5)), max_size=2),
)
def test_knife_work_begins_as_late_as_any_order_allows(
    work: list[tuple[int, int]], taken: list[tuple[int, int]]
) -> None:
    jobs = [Job(id=str(i), hands_s=hands, due_s=due) for i, (hands, due) in enumerate(work)]
    busy = [(start, start + length) for start, length in taken]
    start = latest_start_s(jobs, busy)
    latest = max(
        s for s in range(-80, 1) if any(feasible(jobs, order, busy, s) for order in permutations(jobs))
    )
    assert start == latest
    assert all(
        slot.end_s <= next(j.due_s for j in jobs if j.id == slot.id)
        for slot in lay_out(jobs, busy, start_s=start)
    )
