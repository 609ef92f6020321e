"""Browning, with its own clock: minutes at 150 °C of the outermost layer, in dry heat.

The march keeps a moist surface below boiling; what browns is the layer outside it, dried by the
water that has left, which holds the heat back (r m) and comes nearer to the temperature of its
surroundings Te the more it has dried, and all the way when the piece has no water left:

    T = Ts + (Te - Ts) y/(1 + y)       y = h r m/(1 - m/m0)
    B = s integral 10**((T - 150)/z) dt

In an oven Te is the air, h heat of air and radiation, s = 1. In a pan Te is the metal, h the
contact, and only what touches it dries and browns: m/f, for a share s = f of the time. m0 is all
the water of the piece over its surface. Liquid, steam and still air brown nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import NDArray

from knowledge.physics import tables
from knowledge.physics.crossings import summed, when_dosed
from knowledge.physics.march import SIGMA, Path, Pieces, columns_of
from knowledge.physics.model import Case, Heat, Medium

Array = NDArray[np.float64]

BROWNING_DEGC = 150.0
SMALL_M = 0.02  # half the thickness of a piece that is small enough to burn as a whole
BURNT_OVER_BROWNED = 30.0  # crumbs that brown at a touch burn as soon; common practice, no source
_WETTEST = 0.98  # share of the water that can leave; the rest is bound
_NONE = (0.0,) * 7


@cache
def wanted_min(food_id: str, class_id: str) -> float | None:
    """Dose by which a food is called browned, where being browned is what done means (`browned.csv`)."""
    known = {row["id"]: float(row["browned_min"]) for row in tables.rows("browned")}
    return known.get(food_id, known.get(class_id))


def golden_min() -> float:
    """Dose at which the outside is called golden brown."""
    return tables.constant("brown_golden_s") / 60.0


@dataclass(frozen=True, slots=True)
class Clock:
    """Browning along a march, for those of its cases that are in dry heat."""

    which: NDArray[np.intp]
    t: Array  # as `rate` and `dose`: a column for each of them
    rate: Array
    dose: Array
    small: NDArray[np.bool_]  # what burns as a whole
    wanted: Array  # dose that done waits for; infinite for none
    count: int  # of all cases

    def when(self, level: Array) -> Array:
        """Time at which each case of the march has reached a dose [s]; infinite if never."""
        return self._among_all(self._when(level[self.which]))

    def burnt(self) -> Array:
        """Time at which each small piece is burnt [s], past the march at its last rate; else infinite."""
        level = np.minimum(tables.constant("brown_burnt_s") / 60.0, BURNT_OVER_BROWNED * self.wanted)
        level = np.where(self.small, level, np.inf)
        left = 60.0 * (level - self.dose[-1]) / np.maximum(self.rate[-1], 1e-9)
        past = self.dose[-1] < level
        return self._among_all(np.where(past, self.t[-1] + left, self._when(level)))

    def last_rate(self) -> Array:
        """Minutes at 150 °C gained per minute at the end; 0 where nothing browns."""
        everywhere = np.zeros(self.count)
        everywhere[self.which] = self.rate[-1]
        return everywhere

    def _when(self, level: Array) -> Array:
        return when_dosed(self.dose, self.rate, level, self.t) if self.which.size else level

    def _among_all(self, times: Array) -> Array:
        everywhere = np.full(self.count, np.inf)
        everywhere[self.which] = times
        return everywhere


def clock(
    cases: Sequence[Case], pieces: Pieces, path: Path, steps: Sequence[int], browns: NDArray[np.bool_]
) -> Clock:
    """Browning of those cases that are marked, at every step."""
    which = np.flatnonzero(browns)
    here = Path(*(getattr(path, name)[:, which] for name in Path.__slots__))
    if not which.size:
        return Clock(which, here.t, here.t, here.t, browns[which], here.t[0], len(cases))
    some = [cases[i] for i in which.tolist()]
    rate = rates(some, pieces.chosen(which), here, steps)
    small = pieces.R[which] < SMALL_M
    wanted = np.array([c.goal.browned_min or np.inf for c in some])
    return Clock(which, here.t, rate, doses(some, rate, here), small, wanted, len(cases))


def rates(cases: Sequence[Case], pieces: Pieces, path: Path, steps: Sequence[int]) -> Array:
    """Minutes at 150 °C gained per minute, at every step of every case.

    `steps` are those of each phase. At a change of phase the rate is that of the phase before.
    """
    rate = np.zeros_like(path.core)
    water = np.array([c.piece.water_frac * c.piece.density_kg_m3 for c in cases])
    most = np.maximum(water * pieces.R / ((pieces.n + 1.0) * pieces.area), 1e-6)
    first = 0
    for phase, taken in enumerate(steps):
        columns = columns_of([c.phases[phase].medium for c in cases], _row)
        if columns[0].any():
            here = slice(first + (phase > 0), first + taken + 1)
            rate[here] = _rate(columns, path.surface[here], path.evaporated[here], most)
        first += taken
    return rate


def _row(m: Medium) -> tuple[float, ...]:
    """Share of the time, surroundings, coefficient, emissivity, share of the surface, crust, reach."""
    crust, z = tables.constant("brown_crust_m4K_W_kg"), tables.constant("brown_z_K")
    if m.heat is Heat.DRY:
        return 1.0, m.ambient_degC, m.h_W_m2K, m.emissivity * SIGMA, 1.0, crust, z
    if m.heat is Heat.PAN and m.contact_frac > 0.0:
        return m.contact_frac, m.pan_degC, m.pan_h_W_m2K, 0.0, m.contact_frac, crust, z
    return (*_NONE[:4], 1.0, crust, z)


def _rate(columns: Array, Ts: Array, m: Array, most: Array) -> Array:
    share, Te, h, eps, part, crust, z = columns
    Ks, Ke = Ts + 273.15, Te + 273.15
    h = h + eps * (Ke * Ke + Ks * Ks) * (Ke + Ks)
    y = h * crust * (m / part) / (1.0 - np.minimum(m / most, _WETTEST))
    T = Ts + (Te - Ts) * y / (1.0 + y)
    return np.asarray(share * 10.0 ** (np.minimum(T - BROWNING_DEGC, 150.0) / z))


def doses(cases: Sequence[Case], rate: Array, path: Path) -> Array:
    """The dose of every case at every step [min at 150 °C]."""
    dose = summed(rate, path.t)
    dose += np.array([0.0 if c.state is None else c.state.browned_min for c in cases])
    return dose
