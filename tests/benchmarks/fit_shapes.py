"""Make `shape_fits.csv`: one-dimensional pieces that heat through like bricks, rods and disks.

    python -m tests.benchmarks.fit_shapes > knowledge/data/shape_fits.csv      (about two minutes)

For every pair of ratios and each kind of heat the three numbers (exponent, size, area) are chosen
so that times to theta 0.5, 0.3, 0.2 and 0.1 agree with the exact product of one-dimensional
solutions (Newman's rule) at four Biot numbers.
"""

from __future__ import annotations

import csv
import sys
from functools import cache

import numpy as np
from scipy.interpolate import RegularGridInterpolator
from scipy.optimize import brentq, minimize
from scipy.special import gamma, jv

THETAS = (0.5, 0.3, 0.2, 0.1)
BIOTS = {"gentle": (0.25, 0.5, 1.0, 1.8), "brisk": (3.0, 8.0, 20.0, 60.0)}
RATIOS = (1, 1.25, 1.6, 2, 2.5, 3, 3.7, 4.5, 5.2, 6, 8, 12, 20)
FOURIER = np.geomspace(0.003, 400.0, 500)
EARLIEST = 2e-3  # before that the middle knows nothing


def series(n: float, biot: float, fourier: np.ndarray, terms: int = 30) -> np.ndarray:
    """Centre temperature of a body of exponent n: z J_(nu+1)(z) = Bi J_nu(z), nu = (n - 1)/2."""
    nu = (n - 1.0) / 2.0

    def f(z: float) -> float:
        return float(z * jv(nu + 1.0, z) - biot * jv(nu, z))

    grid = np.linspace(1e-6, terms * np.pi, terms * 60)
    values = np.array([f(z) for z in grid])
    theta = np.zeros_like(fourier)
    for i in np.nonzero(values[:-1] * values[1:] < 0.0)[0]:
        z = brentq(f, grid[i], grid[i + 1])
        centre = (z / 2.0) ** nu / gamma(nu + 1.0)
        norm = 0.5 * (jv(nu, z) ** 2 - jv(nu - 1.0, z) * jv(nu + 1.0, z))
        theta += centre * jv(nu + 1.0, z) / z / norm * np.exp(-z * z * fourier)
    return theta


@cache
def _part(n: float, biot: float, stretch: float) -> np.ndarray:
    fourier = FOURIER / stretch**2
    return np.where(fourier < EARLIEST, 1.0, series(n, biot * stretch, np.maximum(fourier, EARLIEST)))


def exact(family: str, b1: float, b2: float, biot: float) -> list[float]:
    """Log Fourier numbers at which the middle of the finite piece reaches each theta."""
    if family == "brick":
        theta = _part(0.0, biot, 1.0) * _part(0.0, biot, b1) * _part(0.0, biot, b2)
    elif family == "rod":
        theta = _part(1.0, biot, 1.0) * _part(0.0, biot, b1)
    else:
        theta = _part(0.0, biot, 1.0) * _part(1.0, biot, b1)
    return _times(theta)


def _times(theta: np.ndarray) -> list[float]:
    log = -np.log(np.clip(theta, 1e-12, None))
    late = FOURIER > 0.02
    return [float(np.log(np.interp(-np.log(t), log[late], FOURIER[late]))) for t in THETAS]


def main() -> None:
    """Print the table."""
    exponents, biots = np.linspace(0.0, 2.5, 11), np.linspace(np.log(0.1), np.log(300.0), 16)
    known = [[_times(series(n, float(np.exp(b)), FOURIER, 12)) for b in biots] for n in exponents]
    one_dimensional = RegularGridInterpolator(
        (exponents, biots), np.array(known), bounds_error=False, fill_value=None
    )
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(["family", "heat", "ratio_1", "ratio_2", "exponent", "size", "area", "worst_pct", "source"])
    shapes = [("brick", b1, b2) for b1 in RATIOS for b2 in RATIOS if b2 >= b1]
    shapes += [(family, b, 1) for family in ("disk", "rod") for b in RATIOS]
    for family, b1, b2 in shapes:
        for heat, numbers in BIOTS.items():
            wanted = np.array([exact(family, b1, b2, biot) for biot in numbers])

            def error(
                x: np.ndarray, wanted: np.ndarray = wanted, numbers: tuple[float, ...] = numbers
            ) -> np.ndarray:
                size, area = np.exp(x[1]), np.exp(x[2])
                at = [[x[0], np.log(biot * area * size)] for biot in numbers]
                return np.asarray(one_dimensional(at) + 2.0 * x[1] - wanted)

            def cost(x: np.ndarray) -> float:
                outside = max(0.0, x[0] - 2.4) + max(0.0, -x[0])
                return float(np.mean(error(x) ** 2) + 100.0 * outside**2)

            best = min(
                (
                    minimize(
                        cost, [n, 0.02, 0.02], method="Nelder-Mead", options={"xatol": 1e-3, "fatol": 1e-8}
                    )
                    for n in (0.3, 1.2, 2.0)
                ),
                key=lambda r: r.fun,
            ).x
            worst = 100.0 * float(np.abs(error(best)).max())
            out.writerow(
                (family, heat, b1, b2, f"{best[0]:.4f}", f"{np.exp(best[1]):.4f}", f"{np.exp(best[2]):.4f}",
                 f"{worst:.1f}", "EXACT-SHAPES")
            )  # fmt: skip


if __name__ == "__main__":
    main()
