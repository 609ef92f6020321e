"""The cooking model's equations solved by two other routes: what `panwright bench` measures beside it.

    compare_finite_volumes()   implicit finite volumes, all pieces at once (batched Thomas)
    compare_solve_ivp()        scipy's BDF on method-of-lines cells, one piece after the other

Both use the flux law of `march`, so that only the conduction solver differs. Each returns
seconds for both and the difference in the core temperature. Only the second needs scipy.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from time import perf_counter

import numpy as np
from numpy.typing import NDArray

from knowledge.foods.store import Store
from knowledge.physics import Case, Phase, goal, media, piece
from knowledge.physics.march import Law, Pieces, graded, march, medium_row, pieces_of

Array = NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two solvers on the same cases."""

    cases: int
    ours_s: float
    theirs_s: float
    worst_K: float  # largest difference of the core at the end

    @property
    def ratio(self) -> float:
        """How many times faster ours is, case by case."""
        return self.theirs_s / self.ours_s


def sample(store: Store, count: int) -> list[Case]:
    """Pieces of every size and medium of a kitchen."""
    foods = ("carrot", "potato", "chicken-thigh", "cod", "pork-loin", "broccoli")
    places = (media.oven(220.0), media.simmering(), media.open_pan(180.0), media.pressure(80.0))
    cases = []
    for i in range(count):
        food = store.food(foods[i % len(foods)])
        cases.append(
            Case(
                piece=piece(food, size_mm=10.0 + 5.0 * (i % 9), shape="brick", ratio_1=1.2, ratio_2=2.5),
                phases=(Phase(medium=places[(i // 6) % 4], duration_s=None),),
                goal=goal(food, store.doneness(food.doneness)),
            )
        )
    return cases


def _ends(pieces: Pieces) -> Array:
    """Times by which every piece is well under way: half a Fourier number."""
    return 0.6 * pieces.R**2 / pieces.alpha


def _laws(cases: Sequence[Case]) -> Array:
    return np.array([medium_row(c.phases[0].medium) for c in cases]).T.copy()


def _cells(n: float | Array, count: int) -> tuple[Array, Array]:
    """Face areas and volumes of equal cells in 0..1 of a body of exponent n, over those of the surface."""
    faces = np.linspace(0.0, 1.0, count + 1)[:, None]
    exponent = np.atleast_1d(n)[None, :]
    return faces**exponent * (faces > 0), np.diff(faces ** (exponent + 1.0), axis=0) / (exponent + 1.0)


def finite_volumes(cases: Sequence[Case], pieces: Pieces, ends: Array, *, cells: int, steps: int) -> Array:
    """Core temperatures at the ends, by implicit finite volumes."""
    law = Law(_laws(cases))
    area, volume = _cells(pieces.n, cells)
    dx = 1.0 / cells
    T = np.tile(pieces.start, (cells, 1))
    Ts, m = pieces.start.copy(), np.zeros(len(cases))
    times = graded(ends, steps)
    per_flux = pieces.area * pieces.R / pieces.k
    for j in range(steps):
        dt = times[j + 1] - times[j]
        tau = dt * pieces.alpha / pieces.R**2
        west, east = tau * area[:-1] / dx / volume, tau * area[1:] / dx / volume
        east[-1] = 0.0
        diagonal = 1.0 + west + east
        # Forward elimination with two right-hand sides: the old temperatures, and a unit surface flux.
        c, a, b = np.empty_like(T), np.empty_like(T), np.zeros_like(T)
        unit = tau / volume[-1]
        c[0], a[0] = east[0] / diagonal[0], T[0] / diagonal[0]
        for i in range(1, cells):
            pivot = diagonal[i] - west[i] * c[i - 1]
            c[i] = east[i] / pivot
            a[i] = (T[i] + west[i] * a[i - 1]) / pivot
        b[-1] = unit / pivot
        base, slope = a[-1], (b[-1] + 0.5 * dx) * per_flux
        Ts, lost = law.surface(base, slope, Ts, m, times[j + 1], rounds=3)
        G = (Ts - base) / (b[-1] + 0.5 * dx)
        T[-1] = a[-1] + b[-1] * G
        for i in range(cells - 2, -1, -1):
            T[i] = a[i] + c[i] * T[i + 1]
        if lost is not None:
            m = np.maximum(m + lost * dt, 0.0)
    return np.asarray(T[0] + (T[0] - T[1]) / 8.0)


def by_solve_ivp(case: Case, pieces: Pieces, end: float, *, cells: int = 40) -> float:
    """Core temperature of one piece at the end, by scipy's BDF. Raises ImportError without scipy."""
    from scipy.integrate import solve_ivp

    law = Law(_laws([case]))
    area, volume = _cells(pieces.n, cells)
    area, volume = area[:, 0], volume[:, 0]
    dx, rate = 1.0 / cells, float(pieces.alpha[0] / pieces.R[0] ** 2)
    per_flux = float(pieces.area[0] * pieces.R[0] / pieces.k[0])

    def slope(t: float, y: Array) -> Array:
        T, m = y[:-1], y[-1:]
        base = T[-1:]
        Ts, lost = law.surface(base, np.array([0.5 * dx * per_flux]), base, m, np.array([t]), rounds=8)
        G = (Ts[0] - T[-1]) / (0.5 * dx)
        flow = np.concatenate([[0.0], area[1:-1] * np.diff(T) / dx, [G]])
        return np.concatenate([rate * np.diff(flow) / volume, [0.0 if lost is None else float(lost[0])]])

    start = np.concatenate([np.full(cells, pieces.start[0]), [0.0]])
    y = solve_ivp(slope, (0.0, end), start, method="BDF", rtol=1e-5, atol=1e-4).y[:, -1]
    return float(y[0] + (y[0] - y[1]) / 8.0)


def compare_finite_volumes(store: Store, count: int = 192) -> Comparison:
    """Ours with 40 steps against finite volumes fine enough for a like error."""
    cases = sample(store, count)
    pieces = pieces_of(cases)
    ends = _ends(pieces)
    ours, core = _timed(lambda: march(cases, pieces, ends[None], [40]).core[-1])
    theirs, other = _timed(lambda: finite_volumes(cases, pieces, ends, cells=40, steps=200))
    return Comparison(count, ours, theirs, float(np.abs(core - other).max()))


def compare_solve_ivp(store: Store, count: int = 12) -> Comparison:
    """Ours, all at once, against scipy one by one; both times are for `count` pieces."""
    many = sample(store, 192)
    pieces = pieces_of(many)
    ours, core = _timed(lambda: march(many, pieces, _ends(pieces)[None], [40]).core[-1])
    cases = many[:: 192 // count][:count]
    began = perf_counter()
    others = []
    for case in cases:
        one = pieces_of([case])
        others.append(by_solve_ivp(case, one, float(_ends(one)[0])))
    theirs = perf_counter() - began
    worst = float(np.abs(core[:: 192 // count][:count] - np.array(others)).max())
    return Comparison(count, ours * count / 192.0, theirs, worst)


def _timed(run: Callable[[], Array]) -> tuple[float, Array]:
    """The best of three, and what came of it."""
    began = perf_counter()
    result = run()
    best = perf_counter() - began
    for _ in range(2):
        began = perf_counter()
        run()
        best = min(best, perf_counter() - began)
    return best, result
