"""A finite piece -> the one-dimensional piece that heats through like it.

A brick, short rod or disk is replaced by a piece of fractional shape exponent n, half size
R' and surface A', chosen so that its centre follows the exact product solution
(`shape_fits.csv`, made by `tests/benchmarks/fit_shapes.py`). Two sets: gentle heat (Biot
number up to about 2: oven, pan, resting) and brisk (3 and above: liquid and steam).
"""

from __future__ import annotations

from functools import cache, lru_cache

import numpy as np

from knowledge.physics import tables

Equivalent = tuple[float, float, float]
"""Exponent, size over half the smallest dimension, area factor."""

_LEAST = 0.05  # 1/ratio: beyond 20 times as long, a piece is as good as endless
_INFINITE: dict[str, Equivalent] = {"brick": (0.0, 1.0, 1.0), "rod": (1.0, 1.0, 1.0), "disk": (0.0, 1.0, 1.0)}


@cache
def _nodes(family: str, heat: str) -> tuple[tuple[float, ...], dict[tuple[float, float], Equivalent]]:
    found: dict[tuple[float, float], Equivalent] = {}
    for row in tables.rows("shape_fits"):
        if row["family"] == family and row["heat"] == heat:
            b1, b2 = 1.0 / float(row["ratio_1"]), 1.0 / float(row["ratio_2"])
            value = (float(row["exponent"]), float(row["size"]), float(row["area"]))
            found[b1, b2] = value
            if family == "brick":
                found[b2, b1] = value
    return tuple(sorted({b1 for b1, _ in found})), found


@lru_cache(maxsize=4096)
def equivalent(family: str, heat: str, ratio_1: float, ratio_2: float) -> Equivalent:
    """The one-dimensional piece for a "brick", "rod" or "disk" under "gentle" or "brisk" heat.

    Linear between the nodes of the table in 1/ratio.
    """
    u1, u2 = 1.0 / ratio_1, 1.0 / ratio_2 if family == "brick" else 1.0
    if u1 < _LEAST / 2 and (u2 < _LEAST / 2 or family != "brick"):
        return _INFINITE[family]
    grid, at = _nodes(family, heat)
    u1, u2 = max(u1, _LEAST), max(u2, _LEAST)
    if family != "brick":
        values = np.array([at[g, 1.0] for g in grid])
        mixed = [float(np.interp(u1, grid, values[:, i])) for i in range(3)]
        return mixed[0], mixed[1], mixed[2]
    rows = [[float(np.interp(u2, grid, [at[g, h][i] for h in grid])) for g in grid] for i in range(3)]
    mixed = [float(np.interp(u1, grid, row)) for row in rows]
    return mixed[0], mixed[1], mixed[2]
