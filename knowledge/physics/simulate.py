"""Cases in, outcomes out: `cook`, `history`, `state_at`.

`cook` groups the cases by their number of phases, guesses for each how long it will take,
marches each group as one batch, and sends again with a better guess those that did not get
there or got there in the first few steps.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from knowledge.errors import OutOfRange
from knowledge.physics import browning, safety
from knowledge.physics.crossings import log_mean, summed, when_dosed, when_first
from knowledge.physics.doneness import dose_rate, dose_temperature
from knowledge.physics.limits import within
from knowledge.physics.march import Path, Pieces, columns_of, march, nominal_h, pieces_of
from knowledge.physics.model import Case, Goal, Heat, History, Medium, Outcome, PieceState

Array = NDArray[np.float64]

_Columns = TypeVar("_Columns", Pieces, "_Goals")

LONGEST_S = 86400.0
SPREAD = 1.25
"""`lo_s` and `hi_s` are the time over and times this: published times for one piece differ so much."""

_STEPS_ALONE = 40
_STEPS_BEFORE = 14  # in each phase before the last
_STEPS_LAST = 36
_ROUNDS = 5
_BATCH = 2000  # bounds the memory of one march
_LEAST_OVER, _LEAST_BROWN = 1.1, 1.25  # a piece that browns fast is not burnt as soon as it is done
_GUESS_BROWN_S = 600.0
_OVER_SHARE = 1.7  # how far past done a march looks for too much


def cook(cases: Sequence[Case], *, spread: float | Sequence[float] = SPREAD) -> list[Outcome]:
    """When each piece is done, safe and overdone; one batched march.

    `spread` is the factor either way of `lo_s` and `hi_s`: for all, or one a case (`chart.spread_of`).
    A piece that gets nowhere within a day, or whose medium cannot bring it to its end, has
    `done_s` None and a note that says so. Raises OutOfRange for a case that is no number.
    """
    results: list[Outcome | None] = [None] * len(cases)
    spreads = [spread] * len(cases) if isinstance(spread, (int, float)) else list(spread)
    by_phases: dict[int, list[int]] = {}
    for i, case in enumerate(cases):
        if not case.phases:
            raise OutOfRange("phases", 0, 1, 20, "phases")
        by_phases.setdefault(len(case.phases), []).append(i)
    for members in by_phases.values():
        for first in range(0, len(members), _BATCH):
            batch = members[first : first + _BATCH]
            for i, outcome in zip(
                batch, _cook([cases[i] for i in batch], [spreads[i] for i in batch]), strict=True
            ):
                results[i] = outcome
    return [r for r in results if r is not None]


def history(case: Case, times_s: Sequence[float]) -> History:
    """Temperatures, dose and kill of one piece at given times from its first phase.

    Times beyond a phase's end run on into the next; the last phase lasts as long as asked for.
    """
    wanted = np.array([within("time_s", t) for t in times_s], dtype=np.float64)
    end = max(float(wanted.max(initial=0.0)), 1.0)
    path, brown = _march_to(case, end, 90)
    dose, kill = _accumulate([case], path)
    _finite(path)

    def at(values: Array) -> tuple[float, ...]:
        return tuple(float(v) for v in np.interp(wanted, path.t[:, 0], values[:, 0]))

    return History(
        times_s=tuple(float(t) for t in wanted), core_degC=at(path.core), mean_degC=at(path.mean),
        surface_degC=at(path.surface), dose_min=at(dose), lethality_log=at(kill),
        evaporated_kg_m2=at(path.evaporated), browned_min=at(brown),
    )  # fmt: skip


def state_at(case: Case, time_s: float) -> PieceState:
    """The piece as it is at one moment, to go on from under other conditions."""
    within("time_s", time_s)
    if time_s <= 0.0 and case.state is not None:
        return case.state
    path, brown = _march_to(case, max(time_s, 1e-3), 60)
    _finite(path)
    dose, kill = _accumulate([case], path)
    last = path.last_modes[:, 0]
    return PieceState(
        modes_degC=tuple(float(v) for v in last[:-1]),
        core_remainder_K=float(last[-1]),
        dose_min=float(dose[-1, 0]),
        lethality_log=float(kill[-1, 0]),
        evaporated_kg_m2=float(path.evaporated[-1, 0]),
        browned_min=float(brown[-1, 0]),
    )


def _march_to(case: Case, end_s: float, steps: int) -> tuple[Path, Array]:
    """One case, exactly to a time, and its browning dose on the way."""
    phases, left = [], end_s
    for phase in case.phases:
        last = phase is case.phases[-1] or phase.duration_s is None
        span = left if last else min(float(phase.duration_s or 0.0), left)
        if span > 1e-6:
            phases.append((phase, span))
        left -= span
        if left <= 1e-9:
            break
    pieces = pieces_of([case])
    if not phases:
        phases = [(case.phases[0], 1e-3)]
    cut = Case(piece=case.piece, phases=tuple(p for p, _ in phases), goal=case.goal, state=case.state)
    durations = np.array([[span] for _, span in phases])
    path = march([cut], pieces, durations, [steps] * len(phases))
    rate = browning.rates([cut], pieces, path, [steps] * len(phases))
    return path, browning.doses([cut], rate, path)


def _finite(path: Path) -> None:
    for name in ("core", "mean", "surface", "evaporated"):
        values = getattr(path, name)
        if not np.isfinite(values).all():
            raise OutOfRange(name, float("nan"), -100.0, 400.0, "°C")


# Accumulated along a path


@dataclass(frozen=True, slots=True)
class _Goals:
    """Columns of the goals of a batch; infinite where a goal has no such limit."""

    dosed: NDArray[np.bool_]
    browns: NDArray[np.bool_]
    target: Array
    kappa: Array
    dose: Array
    z_below: Array
    z_above: Array
    cutoff: Array
    theta: Array
    over_core: Array
    over_dose: Array
    safe: Array
    browned: Array


def _goals(cases: Sequence[Case]) -> _Goals:
    columns = columns_of([c.goal for c in cases], _goal_row)
    return _Goals(columns[0] > 0.5, columns[1] > 0.5, *columns[2:])


def _goal_row(g: Goal) -> tuple[float, ...]:
    """A goal as the columns of `_Goals`."""
    inf = math.inf
    return (
        g.dose_min is not None, g.browns, inf if g.target_degC is None else g.target_degC, g.kappa,
        inf if g.dose_min is None else g.dose_min, g.z_below_K, g.z_above_K, g.cutoff_degC, g.theta,
        inf if g.over_degC is None else g.over_degC,
        inf if g.over_dose_min is None else g.over_dose_min,
        -inf if g.safe_degC is None else g.safe_degC,
        inf if g.browned_min is None else g.browned_min,
    )  # fmt: skip


def _accumulate(cases: Sequence[Case], path: Path) -> tuple[Array, Array]:
    """Dose [min] and kill [log10] of every case at every step."""
    goals = _goals(cases)
    return _dose(cases, _rates(goals, path), path), _kill(cases, path)


def _kill(cases: Sequence[Case], path: Path) -> Array:
    """Log10 reductions of every case at every step."""
    kill = np.zeros_like(path.core)
    alike: dict[tuple[str, int], list[int]] = {}
    for i, case in enumerate(cases):
        if case.goal.lethality:
            alike.setdefault((case.goal.lethality, round(case.goal.fat_pct)), []).append(i)
    for (table, fat), members in alike.items():
        rate = safety.kill_rate(path.core[:, members], table, fat)
        step = log_mean(rate[:-1], rate[1:]) * np.diff(path.t[:, members], axis=0)
        kill[1:, members] = np.cumsum(step, axis=0)
    kill += np.array([0.0 if c.state is None else c.state.lethality_log for c in cases])
    return kill


def _rates(goals: _Goals, path: Path) -> Array:
    """Minutes at 100 °C gained per minute."""
    Td = dose_temperature(path.core, path.mean, goals.theta)
    return dose_rate(Td, z_below_K=goals.z_below, z_above_K=goals.z_above, cutoff_degC=goals.cutoff)


def _dose(cases: Sequence[Case], rate: Array, path: Path) -> Array:
    dose = summed(rate, path.t)
    dose += np.array([0.0 if c.state is None else c.state.dose_min for c in cases])
    return dose


# One batch


def _cook(cases: list[Case], spreads: list[float]) -> list[Outcome]:
    """Cases with equally many phases."""
    phases = len(cases[0].phases)
    lead = np.array(
        [[max(float(p.duration_s or 0.0), 1e-3) for p in c.phases[:-1]] for c in cases], dtype=np.float64
    ).reshape(len(cases), phases - 1)
    pieces = pieces_of(cases)
    goals = _goals(cases)
    last = np.maximum(_OVER_SHARE * _guess(cases, pieces, goals) - lead.sum(axis=1), 30.0)
    steps = [_STEPS_ALONE] if phases == 1 else [_STEPS_BEFORE] * (phases - 1) + [_STEPS_LAST]
    outcomes: list[Outcome | None] = [None] * len(cases)
    todo = np.arange(len(cases))
    for turn in range(_ROUNDS):
        chosen = [cases[i] for i in todo]
        some, wanted = _take(pieces, todo), _take(goals, todo)
        durations = np.vstack([lead[todo].T, last[todo][None]])
        path = march(chosen, some, durations, steps)
        found = _Found(chosen, wanted, path, browning.clock(chosen, some, path, steps, wanted.browns))
        end = path.t[-1]
        unfinished = ~np.isfinite(found.done) & (end < LONGEST_S) & found.hopeful
        hasty = np.isfinite(found.done) & (found.done < 0.12 * end) & (last[todo] > 31.0) & (phases == 1)
        again = (unfinished | hasty) & (turn < _ROUNDS - 1)
        for i, repeat, outcome in zip(
            todo.tolist(), again.tolist(), found.outcomes([spreads[i] for i in todo]), strict=True
        ):
            if not repeat:
                outcomes[i] = outcome
        if not again.any():
            break
        grown = np.where(unfinished, 3.0 * last[todo], np.maximum(2.5 * found.done, 30.0))
        last[todo] = np.where(again, np.minimum(grown, LONGEST_S), last[todo])
        todo = todo[again]
    return [o for o in outcomes if o is not None]


def _take(columns: _Columns, which: NDArray[np.intp]) -> _Columns:
    return type(columns)(*(getattr(columns, name)[which] for name in columns.__slots__))


class _Found:
    """What a march tells about each of its cases."""

    def __init__(self, cases: list[Case], goals: _Goals, path: Path, brown: browning.Clock) -> None:
        _finite(path)
        self.cases, self.goals, self.path = cases, goals, path
        rate = _rates(goals, path)
        self.dose = _dose(cases, rate, path)
        reading = path.core + goals.kappa * (path.mean - path.core)
        by_core = when_first(reading, goals.target, path.t)
        by_dose = when_dosed(self.dose, rate, goals.dose, path.t)
        nothing = ~goals.dosed & ~np.isfinite(goals.target)
        self.taste = np.where(goals.dosed, by_dose, np.where(nothing, 0.0, by_core))
        self.safe = when_first(path.core, goals.safe, path.t)
        self.done = np.maximum(self.taste, self.safe)
        to_brown = np.isfinite(goals.browned)
        self.browned = brown.when(np.where(to_brown, goals.browned, browning.golden_min()))
        self.done = np.where(to_brown, np.maximum(self.done, self.browned), self.done)
        over_core = when_first(reading, goals.over_core, path.t)
        over_dose = when_dosed(self.dose, rate, goals.over_dose, path.t)
        # Beyond the march the piece is as hot as it gets, so the dose grows evenly.
        left = 60.0 * (goals.over_dose - self.dose[-1]) / np.maximum(rate[-1], 1e-9)
        over_dose = np.where(np.isfinite(over_dose), over_dose, path.t[-1] + left)
        over = np.where(goals.dosed, over_dose, np.where(to_brown, math.inf, over_core))
        over = np.maximum(over, self.done)
        least = np.where(to_brown, _LEAST_BROWN, _LEAST_OVER)
        self.over = np.maximum(np.minimum(over, brown.burnt()), self.done * least)
        # A piece that has come to rest short of its end never gets there.
        closing = path.mean[-1] - path.mean[-6]
        still = np.abs(closing) < 0.02
        gaining = goals.dosed & (rate[-1] * LONGEST_S / 60.0 > goals.dose)
        gaining |= to_brown & (brown.last_rate() * LONGEST_S / 60.0 > goals.browned)
        self.hopeful = ~still | (gaining & (path.core[-1] >= goals.safe - 0.05))

        # What the piece is like when it is done, or at the end of the march.
        at = np.where(np.isfinite(self.done), self.done, path.t[-1])
        after = np.minimum((path.t < at).sum(axis=0), path.t.shape[0] - 1)
        before, column = np.maximum(after - 1, 0), np.arange(len(cases))
        t0, t1 = path.t[before, column], path.t[after, column]
        share = np.where(t1 > t0, (at - t0) / np.where(t1 > t0, t1 - t0, 1.0), 1.0)

        def then(values: Array) -> Array:
            first, last = values[before, column], values[after, column]
            return np.asarray(first + share * (last - first))

        self.core, self.mean, self.kill = then(path.core), then(path.mean), then(_kill(cases, path))

    def outcomes(self, spreads: list[float]) -> list[Outcome]:
        """All cases, in order."""
        kill = np.minimum(self.kill, 99.0)
        columns = (self.done, self.over, self.safe, self.taste, self.browned, self.core, self.mean, kill)
        return [
            self._outcome(case, spread, *values)
            for case, spread, *values in zip(self.cases, spreads, *(c.tolist() for c in columns), strict=True)
        ]

    def _outcome(
        self, case: Case, spread: float, done: float, over: float, safe: float, taste: float, browned: float,
        core: float, mean: float, kill: float,
    ) -> Outcome:  # fmt: skip
        reached = done < math.inf
        if not reached:
            decided = "never reached"
        elif case.goal.browned_min is not None and browned > max(safe, taste):
            decided = "browning"
        elif safe > taste:
            decided = "safe minimum"
        else:
            decided = _DECIDED[case.goal.kind]
        return Outcome(
            done_s=done if reached else None,
            lo_s=done / spread if reached else None,
            hi_s=done * spread if reached else None,
            over_s=over if reached and over < math.inf else None,
            safe_s=None if safe == math.inf else max(safe, 0.0),
            core_degC=core,
            mean_degC=mean,
            lethality_log=kill,
            decided_by=decided,
            note="" if reached else _never(case.goal, core),
            browned_s=browned if browned < math.inf else None,
        )


_DECIDED = {
    "core": "core temperature", "warm": "warmed through", "soften": "softening", "wilt": "wilting",
    "hydrate": "taking up water", "collagen": "tough meat turning tender", "none": "nothing to wait for",
}  # fmt: skip


def _never(goal: Goal, core: float) -> str:
    wanted = max(t for t in (goal.target_degC, goal.safe_degC, -math.inf) if t is not None)
    if not goal.dose_min and math.isfinite(wanted):
        return f"stays at {core:.0f} °C inside, short of {wanted:.0f} °C"
    return f"not done within a day at {core:.0f} °C inside"


def _effective(m: Medium) -> float:
    """The temperature towards which a piece heats in a medium, evaporation counted."""
    if m.heat is Heat.DRY:
        return min(61.0 + 0.21 * m.ambient_degC, 98.0) if m.wetness > 0 else m.ambient_degC
    if m.heat is Heat.PAN:
        hot = m.contact_frac * m.pan_h_W_m2K
        rest = (1.0 - m.contact_frac) * m.h_W_m2K
        return min((hot * m.pan_degC + rest * m.ambient_degC) / max(hot + rest, 1e-9), 100.0)
    return m.ambient_degC


def _guess(cases: Sequence[Case], pieces: Pieces, goals: _Goals) -> Array:
    """Roughly how long each case takes in its last phase [s]; only the time grid depends on it.

    A first-order body: tau from conduction and surface in series, then the dose at the end.
    """
    last = [case.phases[-1].medium for case in cases]
    h, T, come_up = columns_of(last, lambda m: (nominal_h(m), _effective(m), m.come_up_s))
    level = np.maximum(np.where(np.isfinite(goals.target), goals.target, -200.0), goals.safe)
    start, dose = pieces.start, np.where(goals.dosed, goals.dose, 0.0)
    if any(case.state is not None for case in cases):
        states = (case.state for case in cases)
        start = np.array([
            own if state is None else state.modes_degC[0] for own, state in zip(start, states, strict=True)
        ])  # fmt: skip
    n, R = pieces.n, pieces.R
    biot = np.maximum(h * R / pieces.k * pieces.area, 1e-3)
    tau = R * R / pieces.alpha * (1.0 / (2.47 + 3.7 * n) + 1.0 / ((n + 1.0) * biot))
    left = np.clip((T - level) / np.maximum(T - start, 1.0), 0.03, 1.0)
    warming = np.where(level > -100.0, 0.5 * come_up + tau * np.log(1.3 / left), 0.0)
    z = np.where(T > 100.0, goals.z_above, goals.z_below)
    dosing = 60.0 * dose * 10.0 ** np.minimum((100.0 - T) / z, 3.0)
    softening = np.where(dose > 0.0, 0.6 * come_up + 1.8 * tau + dosing, 0.0)
    guesses = np.clip(np.maximum(warming, softening), 20.0, LONGEST_S / 3.0)
    guesses = np.where(np.isfinite(goals.browned), np.maximum(guesses, _GUESS_BROWN_S), guesses)
    lead = np.array([sum(float(p.duration_s or 0.0) for p in c.phases[:-1]) for c in cases])
    return np.asarray(guesses + lead)
