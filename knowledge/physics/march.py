"""The solver: many pieces at once through time, each on its own clock.

Conduction with constant properties, surface flux q into a piece of exponent n:

    rho c dT/dt = k r**-n d/dr( r**n dT/dr ),      k dT/dr = q(Ts, t) at r = R

In zero-flux modes (see `modes`), with G = area q R / k and tau = alpha t / R**2:

    dc0/dtau = (n + 1) G                  c0 is the volume mean
    dck/dtau = -lam_k**2 ck + 2 G
    Ts = c0 + sum ck + rho_s G            Tcore = c0 + sum phi_k(0) ck + remainder

`rho_s` holds the modes left out at the surface (they follow at once); the modes left out at
the core are one more mode that relaxes to their steady value. Within a step the flux is
linear in time and the modes advance exactly; the first two steps of a phase, where the
surroundings jump, take the flux at their end (which damps). The surface balance is then one
scalar equation a piece, solved by Newton's method.

The flux is the sum of hot metal, air or liquid, radiation and evaporation:

    q = f hp (Tp - Ts) + X (1 - f) (h + hr)(Ta - Ts) / (1 + (h + hr) rc m) - L m'
    hr = eps sigma (Ta**2 + Ts**2)(Ta + Ts)         absolute temperatures
    m' = g ln[(P - pv)/(P - psat(Ts))]      1/g = 1/(X h b) + 1/(X h7 b w/(1 - w)/(1 + m/mc))

m is the water lost so far: the crust it leaves insulates (rc) and dries (mc); b turns a heat
coefficient into one of vapour (Lewis); h7 is still air. The logarithm keeps a wet surface
below boiling at any altitude.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TypeVar

import numpy as np
from numpy.typing import NDArray

from knowledge.physics import tables
from knowledge.physics.model import Case, Heat, Medium, Phase
from knowledge.physics.modes import MODES, eigen
from knowledge.physics.water import LATENT_J_KG

Array = NDArray[np.float64]
Shared = TypeVar("Shared")

SIGMA = 5.670374e-8
_VAPOUR = 0.622 / (1006.0 * 0.87 ** (2.0 / 3.0))  # kg/J: (Mw/Ma) / (cp of air, Lewis number**2/3)
# Antoine constants for mmHg and °C, below boiling: one exponential, and within 0.1 % of IAPWS-IF97 from
# 40 to 100 °C. Source: common property tables, checked against `water`.
_A, _B, _C = 8.07131, 1730.63, 233.426
_LN10 = float(np.log(10.0))
_LN_PA = _LN10 * _A + float(np.log(133.322))
_GRADING = 1.8
_BLOCK = 60_000  # numbers of one kind held for the next few steps; fits a processor's cache
_BRISK_BIOT = (1.2, 4.0)  # between these the two equivalents of a finite piece are mixed


@dataclass(frozen=True, slots=True)
class Pieces:
    """Columns of a batch: one entry a case."""

    n: Array
    R: Array
    area: Array
    k: Array
    alpha: Array
    start: Array

    def chosen(self, which: NDArray[np.intp]) -> Pieces:
        """Some of the columns."""
        return Pieces(*(getattr(self, name)[which] for name in self.__slots__))


@dataclass(frozen=True, slots=True)
class Path:
    """Temperatures at every step of every case: arrays of shape (steps + 1, cases)."""

    t: Array
    core: Array
    mean: Array
    surface: Array
    evaporated: Array
    last_modes: Array  # (MODES + 2, cases): mean, modes, core remainder at the end


def medium_row(m: Medium) -> tuple[float, ...]:
    """A medium as the columns that `Law` takes."""
    wetness = 0.0 if m.heat is Heat.WET else min(m.wetness, 0.98)
    return (
        m.contact_frac * m.pan_h_W_m2K,
        m.pan_degC - m.ambient_degC,
        m.exposure * (1.0 - m.contact_frac),
        m.h_W_m2K,
        m.emissivity,
        m.start_degC,
        m.ambient_degC,
        m.come_up_s,
        wetness / (1.0 - wetness),
        m.vapour_Pa,
        m.pressure_Pa,
    )


def columns_of(things: Sequence[Shared], row: Callable[[Shared], tuple[float, ...]]) -> Array:
    """Figures of things, one thing a column; those that many cases share are worked out once."""
    found: dict[int, int] = {}
    table: list[tuple[float, ...]] = []
    which: list[int] = []
    for thing in things:
        at = found.get(id(thing))
        if at is None:
            at = found[id(thing)] = len(table)
            table.append(row(thing))
        which.append(at)
    return np.ascontiguousarray(np.array(table, dtype=np.float64)[which].T)


def nominal_h(m: Medium) -> float:
    """Total coefficient of a medium at an ordinary surface, for the Biot number only [W/m2K]."""
    radiation = 4.0 * m.emissivity * SIGMA * (0.5 * (m.ambient_degC + 80.0) + 273.15) ** 3
    free = (1.0 - m.contact_frac) * m.exposure
    return m.contact_frac * m.pan_h_W_m2K + free * (m.h_W_m2K + radiation)


def pieces_of(cases: Sequence[Case]) -> Pieces:
    """The columns of a batch; each finite piece by the equivalent that suits its main medium."""
    main = [_main(case.phases).medium for case in cases]
    gather = [
        (p.exponent, p.half_size_m, p.area_factor, *p.brisk, p.k_W_mK, p.density_kg_m3 * p.cp_J_kgK,
         p.start_degC, p.wet_size)
        for p in (case.piece for case in cases)
    ]  # fmt: skip
    n, R, area, n2, R2, area2, k, rho_cp, start, wet = np.array(gather, dtype=np.float64).T
    h, in_liquid = columns_of(main, lambda m: (nominal_h(m), float(m.heat is Heat.WET)))
    wet = np.where(in_liquid > 0.5, wet, 1.0)
    R, R2 = wet * R, wet * R2
    low, high = np.log(_BRISK_BIOT)
    w = np.clip((np.log(h * R / k + 1e-12) - low) / (high - low), 0.0, 1.0)
    return Pieces(
        n=n + w * (n2 - n), R=R + w * (R2 - R), area=area + w * (area2 - area),
        k=k, alpha=k / rho_cp, start=start,
    )  # fmt: skip


def _main(phases: tuple[Phase, ...]) -> Phase:
    """The longest of those that heat: a rest afterwards does not change how the piece heated through."""
    heating = [p for p in phases if p.medium.heat is not Heat.AIR] or phases
    return max(heating, key=lambda p: 7200.0 if p.duration_s is None else p.duration_s)


def graded(total: Array, steps: int) -> Array:
    """Times of a phase, dense at its beginning: (steps + 1, cases)."""
    return np.linspace(0.0, 1.0, steps + 1)[:, None] ** _GRADING * total[None, :]


def march(cases: Sequence[Case], pieces: Pieces, durations: Array, steps: Sequence[int]) -> Path:
    """Follow all cases through their phases.

    Args: cases, all with the same number of phases; durations, (phases, cases) [s], above 0;
    steps, how many to take in each phase.
    """
    total, count = sum(steps), len(cases)
    media = [columns_of([c.phases[i].medium for c in cases], medium_row) for i in range(len(steps))]
    lam2, centre = eigen(pieces.n)
    last = (np.sqrt(lam2[-1]) + np.pi) ** 2
    lam2 = np.vstack([lam2, last])
    steady = -(pieces.n + 1.0) / (2.0 * (pieces.n + 3.0)) - (2.0 * centre / lam2[:-1]).sum(axis=0)
    rho_s = 1.0 / (pieces.n + 3.0) - (2.0 / lam2[:-1]).sum(axis=0)
    drive = np.full((MODES + 1, count), 2.0)
    drive[-1] = steady * last
    centre = np.vstack([centre, np.ones(count)])

    t = np.empty((total + 1, count))
    core, mean, surface, lost = (np.empty((total + 1, count)) for _ in range(4))
    c0, modes, m = _start(cases, pieces)
    Ts = c0 + modes[:-1].sum(axis=0)
    t[0], core[0], mean[0], surface[0], lost[0] = 0.0, c0 + (centre * modes).sum(axis=0), c0, Ts, m
    per_flux = pieces.area * pieces.R / pieces.k
    growth = pieces.n + 1.0
    scale = pieces.alpha / pieces.R**2
    G = np.zeros(count)
    block = max(_BLOCK // (count * (MODES + 1)), 1)
    j = 0
    for phase, taken in enumerate(steps):
        law, drying = Law(media[phase]), np.zeros(count)
        local = graded(durations[phase], taken)
        t[j + 1 : j + taken + 1] = t[j] + local[1:]
        dtau = np.diff(local, axis=0) * scale
        for i in range(taken):
            if i % block == 0:
                decay, early, late, felt = _advance(dtau[i : i + block], lam2, drive, damped=2 - i)
            b = i % block
            growing = growth * dtau[i]
            if i < 2:
                c0_base, growing_end = c0, growing
                modes = decay[b] * modes
            else:
                growing_end = 0.5 * growing
                c0_base = c0 + growing_end * G
                modes = decay[b] * modes + early[b] * G
            base = c0_base + modes[:-1].sum(axis=0)
            slope = growing_end + felt[b] + rho_s
            lasting = local[i + 1] - local[i]
            Ts, evaporation = law.surface(
                base, slope * per_flux, Ts, m + drying * lasting, local[i + 1], rounds=4 if i < 3 else 2
            )
            G = (Ts - base) / slope
            c0 = c0_base + growing_end * G
            modes += late[b] * G
            if evaporation is not None:
                before = evaporation if i < 2 else drying
                m = np.maximum(m + 0.5 * (before + evaporation) * lasting, 0.0)
                drying = np.maximum(evaporation, 0.0)
            j += 1
            core[j] = c0 + np.einsum("ij,ij->j", centre, modes)
            mean[j], surface[j], lost[j] = c0, Ts, m
    return Path(t, core, mean, surface, lost, np.vstack([c0, modes]))


def _advance(dtau: Array, lam2: Array, drive: Array, *, damped: int) -> tuple[Array, Array, Array, Array]:
    """How modes go through a few steps: what is left of them, and weights of the flux at both ends.

    The last array is what the surface feels of the flux at the end through the modes.

    In the first `damped` of the steps the flux at the end stands for the whole step.
    """
    x = lam2 * dtau[:, None]
    decay = np.exp(-x)
    whole = (1.0 - decay) / lam2
    late = (1.0 - whole / dtau[:, None]) / lam2
    if damped > 0:
        late[:damped] = whole[:damped]
    late *= drive
    return decay, whole * drive - late, late, late[:, :-1].sum(axis=1)


def _start(cases: Sequence[Case], pieces: Pieces) -> tuple[Array, Array, Array]:
    c0, modes, m = pieces.start.copy(), np.zeros((MODES + 1, len(cases))), np.zeros(len(cases))
    for i, case in enumerate(cases):
        if case.state is not None:
            c0[i] = case.state.modes_degC[0]
            modes[:-1, i] = case.state.modes_degC[1:]
            modes[-1, i] = case.state.core_remainder_K
            m[i] = case.state.evaporated_kg_m2
    return c0, modes, m


class Law:
    """The flux of one phase for all cases of a batch."""

    def __init__(self, columns: Array) -> None:
        (self.hp, self.hotter, self.X, self.h, eps, self.from_, self.to, self.come_up,
         wet, pv, P) = columns  # fmt: skip
        self.ramps = bool((self.come_up > 0.0).any())
        self.eps = eps * SIGMA if (eps > 0.0).any() else None
        self.contact = bool((self.hp > 0.0).any())
        self.top: Array | None = None
        self.wet = (wet > 0.0) & (self.X * self.h > 0.0)
        if self.wet.any():
            constants = tables.constants()
            self.crust = constants["crust_m4K_W_kg"]
            self.dries = constants["dry_out_kg_m2"]
            self.g_out = np.maximum(self.X * self.h * _VAPOUR, 1e-12)
            self.g_in = np.maximum(self.X * constants["oven_still_h_W_m2K"] * _VAPOUR * wet, 1e-12)
            self.P = P
            self.log_air = np.log(np.maximum(P - pv, 0.01 * P))
            boiling = _B / (_A - np.log10(0.995 * P / 133.322)) - _C
            self.top = np.where(self.wet, boiling, 1e4)

    def surface(
        self, base: Array, slope: Array, Ts: Array, m: Array, t: Array, *, rounds: int
    ) -> tuple[Array, Array | None]:
        """Surface temperature with Ts = base + slope q(Ts), and the rate of evaporation [kg/m2s]."""
        Ta = self.to
        if self.ramps:
            share = np.where(self.come_up > 0.0, np.minimum(t / np.maximum(self.come_up, 1e-9), 1.0), 1.0)
            Ta = self.from_ + (self.to - self.from_) * share
        if self.eps is None and self.top is None:  # linear: no iteration
            up = self.X * self.h
            if self.contact:
                return (base + slope * (up * Ta + self.hp * (Ta + self.hotter))) / (
                    1.0 + slope * (up + self.hp)
                ), None
            return (base + slope * up * Ta) / (1.0 + slope * up), None
        Ka = Ta + 273.15
        Ka2 = Ka * Ka
        metal = self.hp * (Ta + self.hotter) if self.contact else None
        if self.top is not None:
            insulates = self.crust * m
            g = 1.0 / (1.0 / self.g_out + (1.0 + m / self.dries) / self.g_in)
            g = np.where(self.wet, g, 0.0)
            Lg = LATENT_J_KG * g
            Ts = np.minimum(Ts, self.top)
        for _ in range(rounds):
            h = self.h
            if self.eps is not None:
                Ks = Ts + 273.15
                h = h + self.eps * (Ka2 + Ks * Ks) * (Ka + Ks)
            if self.top is not None:
                h = h / (1.0 + h * insulates)
            h = self.X * h
            q = h * (Ta - Ts)
            dq = -h
            if metal is not None:
                q = q + (metal - self.hp * Ts)
                dq = dq - self.hp
            if self.top is not None:
                warm = _C + Ts
                p = np.exp(_LN_PA - (_LN10 * _B) / np.maximum(warm, 60.0))
                dry = np.maximum(self.P - p, 0.002 * self.P)
                drive = self.log_air - np.log(dry)
                q = q - Lg * drive
                dq = dq - Lg * p * (_LN10 * _B) / (warm * warm * dry)
            Ts = Ts - (Ts - base - slope * q) / (1.0 - slope * dq)
            if self.top is not None:
                Ts = np.minimum(Ts, self.top)
        return Ts, (g * drive if self.top is not None else None)
