"""Zero-flux modes of a piece, for any shape exponent.

The temperature inside a slab (n = 0), long cylinder (1), sphere (2) or anything between
is written as a sum of modes, each of which relaxes on its own:

    phi_k(x) = x**-nu J_nu(lam_k x) / J_nu(lam_k)       nu = (n - 1)/2,  x = r/R
    J_(nu+1)(lam_k) = 0        (no flux through the surface)

The eigenvalues come from McMahon's expansion, made exact by Newton's method on the power
series of the Bessel function, once, at import, on a grid of exponents; pieces interpolate.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]

MODES = 6
MAX_EXPONENT = 2.4
_GRID = np.linspace(0.0, MAX_EXPONENT, 49)


def _bessel(order: float, z: Array) -> Array:
    """J_order(z) for 0 < z < 25 by its power series."""
    term = (z / 2.0) ** order / math.gamma(order + 1.0)
    total = term.copy()
    for m in range(1, 60):
        term = term * (-(z * z) / 4.0) / (m * (m + order))
        total += term
    return total


def _zeros(order: float) -> Array:
    """The first MODES positive zeros of J_order, order 0.5 to 1.7."""
    k = np.arange(1, MODES + 1)
    b = (k + order / 2.0 - 0.25) * math.pi
    mu = 4.0 * order * order
    z: Array = b - (mu - 1.0) / (8.0 * b) - 4.0 * (mu - 1.0) * (7.0 * mu - 31.0) / (3.0 * (8.0 * b) ** 3)
    for _ in range(4):
        value = _bessel(order, z)
        slope = order / z * value - _bessel(order + 1.0, z)
        z = z - value / slope
    return z


def _table() -> tuple[Array, Array]:
    lam2, centre = np.empty((_GRID.size, MODES)), np.empty((_GRID.size, MODES))
    for i, n in enumerate(_GRID):
        nu = (n - 1.0) / 2.0
        z = _zeros(nu + 1.0)
        lam2[i] = z * z
        # x**-nu J_nu(z x) at x = 0 is (z/2)**nu / Gamma(nu + 1)
        centre[i] = (z / 2.0) ** nu / math.gamma(nu + 1.0) / _bessel(nu, z)
    return lam2, centre


_LAM2, _CENTRE = _table()


def eigen(exponent: Array) -> tuple[Array, Array]:
    """Squared eigenvalues and centre values of the modes, each of shape (MODES, pieces)."""
    at = np.clip(exponent, 0.0, MAX_EXPONENT) / _GRID[1]
    low = np.minimum(at.astype(np.intp), _GRID.size - 2)
    w = (at - low)[:, None]
    lam2 = _LAM2[low] * (1.0 - w) + _LAM2[low + 1] * w
    centre = _CENTRE[low] * (1.0 - w) + _CENTRE[low + 1] * w
    return np.ascontiguousarray(lam2.T), np.ascontiguousarray(centre.T)
