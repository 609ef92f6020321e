"""Sums along a march, and when a value that is known at every step first reaches a level."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]


def when_first(values: Array, level: Array, t: Array) -> Array:
    """Time when each column first reaches its level, linear within a step; infinite if never."""
    reached = values >= level
    any_ = reached.any(axis=0)
    i = np.argmax(reached, axis=0)
    column = np.arange(values.shape[1])
    j = np.maximum(i - 1, 0)
    v0, v1, t0, t1 = values[j, column], values[i, column], t[j, column], t[i, column]
    gap = v1 - v0
    share = np.where(gap > 0.0, (np.minimum(level, v1) - v0) / np.where(gap > 0.0, gap, 1.0), 1.0)
    when = np.where(i == 0, t0, t0 + np.clip(share, 0.0, 1.0) * (t1 - t0))
    return np.where(any_, when, math.inf)


def when_dosed(dose: Array, rate: Array, level: Array, t: Array) -> Array:
    """As `when_first` for a dose: within a step the rate grows evenly in its logarithm."""
    reached = dose >= level
    any_ = reached.any(axis=0)
    i = np.argmax(reached, axis=0)
    column = np.arange(dose.shape[1])
    j = np.maximum(i - 1, 0)
    span = t[i, column] - t[j, column]
    r0 = np.maximum(rate[j, column], 1e-12)
    growth = np.log(np.maximum(rate[i, column], 1e-12) / r0)
    need = 60.0 * (np.where(any_, level, 0.0) - dose[j, column]) / (r0 * np.maximum(span, 1e-9))
    flat = np.abs(growth) < 1e-6
    curved = np.log1p(np.maximum(need * growth, -0.999999)) / np.where(flat, 1.0, growth)
    share = np.clip(np.where(flat, need, curved), 0.0, 1.0)
    return np.where(any_, np.where(i == 0, t[0], t[j, column] + share * span), math.inf)


def summed(rate: Array, t: Array) -> Array:
    """Minutes gained until every step, of a rate in minutes a minute; t in seconds."""
    total = np.zeros_like(rate)
    total[1:] = np.cumsum(log_mean(rate[:-1], rate[1:]) * np.diff(t, axis=0) / 60.0, axis=0)
    return total


def log_mean(a: Array, b: Array) -> Array:
    """Mean of a rate that grows evenly in its logarithm from a to b; exact for exponentials."""
    a, b = np.maximum(a, 1e-300), np.maximum(b, 1e-300)
    growth = np.log(b / a)
    small = np.abs(growth) < 1e-6
    return np.where(small, 0.5 * (a + b), (b - a) / np.where(small, 1.0, growth))
