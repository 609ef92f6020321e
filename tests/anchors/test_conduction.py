"""Conduction against exact series and worked problems of the handbooks."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.special import j0, j1, jn_zeros

from knowledge.physics import Case, Goal, Medium, Phase, Piece, cook
from knowledge.physics.geometry import equivalent
from knowledge.physics.march import march, pieces_of
from knowledge.physics.model import Heat

Numbers = np.ndarray[tuple[int, ...], np.dtype[np.float64]]

K, RHO, CP, R = 0.6, 1000.0, 4000.0, 0.01
ALPHA = K / (RHO * CP)
EXPONENT = {"slab": 0.0, "cylinder": 1.0, "sphere": 2.0}
NO_GOAL = Goal(
    kind="core",
    target_degC=1e9,
    kappa=0.0,
    dose_min=None,
    z_below_K=27.0,
    z_above_K=42.0,
    cutoff_degC=60.0,
    theta=0.0,
    over_degC=None,
    over_dose_min=None,
    safe_degC=None,
    safe_hold_s=0.0,
)


def liquid(h: float, degC: float = 100.0) -> Medium:
    return Medium(
        heat=Heat.WET,
        ambient_degC=degC,
        start_degC=degC,
        come_up_s=0.0,
        h_W_m2K=h,
        emissivity=0.0,
        exposure=1.0,
        pan_degC=0.0,
        pan_h_W_m2K=0.0,
        contact_frac=0.0,
        wetness=0.0,
        vapour_Pa=0.0,
        pressure_Pa=101325.0,
    )


def body(
    exponent: float,
    half_size_m: float,
    *,
    k: float = K,
    rho_cp: float = RHO * CP,
    start: float = 0.0,
    area: float = 1.0,
) -> Piece:
    return Piece(
        exponent=exponent,
        half_size_m=half_size_m,
        area_factor=area,
        brisk=(exponent, half_size_m, area),
        wet_size=1.0,
        k_W_mK=k,
        density_kg_m3=1000.0,
        cp_J_kgK=rho_cp / 1000.0,
        water_frac=0.8,
        start_degC=start,
        skinned=False,
        mass_kg=0.1,
    )


def case(piece: Piece, medium: Medium, goal: Goal = NO_GOAL) -> Case:
    return Case(piece=piece, phases=(Phase(medium=medium, duration_s=None),), goal=goal)


@cache
def roots(shape: str, biot: float, count: int = 60) -> np.ndarray:
    """Roots of the characteristic equation (Carslaw & Jaeger; any heat transfer textbook), by scipy."""
    found = []
    bessel = [0.0, *jn_zeros(1, count)]
    zeros = jn_zeros(0, count)
    for i in range(count):
        if shape == "slab":
            f, low, high = (
                lambda z: z * math.sin(z) - biot * math.cos(z),
                i * math.pi,
                (i + 0.5) * math.pi,
            )
        elif shape == "sphere":
            f, low, high = (
                lambda z: (1 - biot) * math.sin(z) - z * math.cos(z),
                i * math.pi + 1e-9,
                (i + 1) * math.pi,
            )
        else:
            f, low, high = lambda z: z * j1(z) - biot * j0(z), bessel[i] + 1e-12, zeros[i]
        found.append(brentq(f, low, high, xtol=1e-13))
    return np.array(found)


def exact(shape: str, biot: float, fourier: Numbers) -> Numbers:
    """Centre temperature (Ta - T)/(Ta - T0) by the full series."""
    z = roots(shape, biot)
    if shape == "slab":
        c = 4 * np.sin(z) / (2 * z + np.sin(2 * z))
    elif shape == "sphere":
        c = 4 * (np.sin(z) - z * np.cos(z)) / (2 * z - np.sin(2 * z))
    else:
        c = 2 / z * j1(z) / (j0(z) ** 2 + j1(z) ** 2)
    series: Numbers = (c[:, None] * np.exp(-(z[:, None] ** 2) * fourier)).sum(axis=0)
    return series


BIOTS = (0.1, 0.5, 1.0, 2.0, 5.0, 10.0, 50.0, 100.0)
FOURIERS = np.array([0.05, 0.1, 0.2, 0.3, 0.5, 0.8, 1.0, 1.5, 2.0])


@pytest.mark.parametrize("shape", EXPONENT)
def test_centre_follows_the_exact_series(shape: str) -> None:
    worst = 0.0
    for biot in BIOTS:
        expected = exact(shape, biot, FOURIERS)
        for fourier, theta in zip(FOURIERS, expected, strict=True):
            c = case(body(EXPONENT[shape], R), liquid(biot * K / R))
            path = march([c], pieces_of([c]), np.array([[fourier * R * R / ALPHA]]), [45])
            worst = max(worst, abs(1.0 - path.core[-1, 0] / 100.0 - theta))
    assert worst <= 0.001


@pytest.mark.parametrize(
    ("k", "alpha", "h", "start", "around", "target", "radius", "seconds"),
    [  # full series; statements from heat transfer and food engineering textbooks
        (0.627, 1.51e-7, 1200.0, 5.0, 95.0, 70.0, 0.025, 861.5),  # Cengel, boiled egg
        (0.6, 1.4e-7, 1400.0, 8.0, 97.0, 70.0, 0.0275, 1062.5),  # Cengel, problem
        (0.607, 1.46e-7, 800.0, 4.3, 100.0, 74.0, 0.0275, 1104.5),
        (0.607, 1.46e-7, 800.0, 8.0, 100.0, 60.0, 0.0275, 839.0),
        (0.355, 0.355 / (820 * 3600), 50.0, 15.0, 2.0, 3.0, 0.03, 3777.7),  # Singh & Heldman, apple
    ],
)
def test_worked_problems(
    k: float,
    alpha: float,
    h: float,
    start: float,
    around: float,
    target: float,
    radius: float,
    seconds: float,
) -> None:
    # Cooling is heating upside down: the equation is linear in temperature.
    flip = 1.0 if around > start else -1.0
    piece = body(2.0, radius, k=k, rho_cp=k / alpha, start=flip * start)
    goal = replace(NO_GOAL, target_degC=flip * target)
    done = cook([case(piece, liquid(h, flip * around), goal)])[0].done_s
    assert done == pytest.approx(seconds, rel=0.003)


FINITE = [
    ("brick", 1.0, 1.0),
    ("brick", 1.0, 1.4),
    ("brick", 1.0, 2.5),
    ("brick", 1.3, 1.7),
    ("brick", 1.0, 6.0),
    ("brick", 1.8, 2.6),
    ("brick", 2.2, 5.0),
    ("brick", 3.5, 5.0),
    ("rod", 1.4, 1.0),
    ("rod", 2.5, 1.0),
    ("rod", 6.0, 1.0),
    ("disk", 1.4, 1.0),
    ("disk", 2.5, 1.0),
    ("disk", 5.0, 1.0),
    ("disk", 9.0, 1.0),
    ("brick", 1.4, 9.0),
    ("brick", 4.0, 7.0),
    ("rod", 3.3, 1.0),
]


def product(family: str, b1: float, b2: float, biot: float, fourier: Numbers) -> Numbers:
    """Product of one-dimensional solutions (Newman's rule)."""

    def part(shape: str, stretch: float) -> Numbers:
        f = fourier / stretch**2
        return np.where(f < 2e-3, 1.0, exact(shape, biot * stretch, np.maximum(f, 2e-3)))

    if family == "brick":
        return part("slab", 1.0) * part("slab", b1) * part("slab", b2)
    if family == "rod":
        return part("cylinder", 1.0) * part("slab", b1)
    return part("slab", 1.0) * part("cylinder", b1)


def test_finite_pieces_follow_product_solutions() -> None:
    """Times to theta 0.5, 0.3 and 0.1: within 2 % (rms) and 6 % at worst, ratios off the table's nodes."""
    fourier = np.geomspace(0.02, 60.0, 400)
    errors = []
    for family, b1, b2 in FINITE:
        for heat, biots in (("gentle", (0.3, 1.0)), ("brisk", (5.0, 30.0))):
            n, size, area = equivalent(family, heat, b1, b2)
            for biot in biots:
                theta = product(family, b1, b2, biot, fourier)
                c = case(body(n, size * R, area=area), liquid(biot * K / R))
                end = float(np.interp(-math.log(0.08), -np.log(theta), fourier)) * R * R / ALPHA
                path = march([c], pieces_of([c]), np.array([[end]]), [150])
                ours = 1.0 - path.core[:, 0] / 100.0
                for level in (0.5, 0.3, 0.1):
                    wanted = np.interp(-math.log(level), -np.log(theta), fourier) * R * R / ALPHA
                    got = np.interp(-level, -ours, path.t[:, 0])
                    errors.append(math.log(got / wanted))
    assert math.sqrt(np.mean(np.square(errors))) <= 0.02
    assert max(map(abs, errors)) <= 0.06


def test_two_phases_equal_one() -> None:
    """Splitting a phase changes nothing."""
    goal = replace(NO_GOAL, target_degC=70.0)
    whole = case(body(1.0, 0.02), liquid(200.0), goal)
    split = Case(
        piece=whole.piece,
        phases=(Phase(medium=liquid(200.0), duration_s=300.0), *whole.phases),
        goal=goal,
    )
    one, two = (o.done_s for o in cook([whole, split]))
    assert two == pytest.approx(one, rel=0.005)
