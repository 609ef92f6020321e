"""Ranges that hold for every kitchen; whatever lies outside is refused by name, never clamped."""

from __future__ import annotations

import math

from knowledge.errors import OutOfRange

RANGES: dict[str, tuple[float, float, str]] = {
    "size_mm": (0.1, 400.0, "mm"),
    "ratio": (1.0, 1000.0, ""),
    "mass_kg": (1e-6, 30.0, "kg"),
    "start_degC": (-40.0, 95.0, "°C"),
    "core_degC": (20.0, 120.0, "°C"),
    "oven_degC": (40.0, 350.0, "°C"),
    "distance_m": (0.03, 0.5, "m"),
    "broiler_degC": (100.0, 500.0, "°C"),
    "pan_degC": (40.0, 320.0, "°C"),
    "liquid_degC": (30.0, 130.0, "°C"),
    "air_degC": (-10.0, 60.0, "°C"),
    "probe_degC": (-20.0, 130.0, "°C"),
    "gauge_kPa": (0.0, 150.0, "kPa"),
    "altitude_m": (-450.0, 5500.0, "m"),
    "come_up_s": (0.0, 7200.0, "s"),
    "time_s": (0.0, 360000.0, "s"),
    "saturation_degC": (0.0, 200.0, "°C"),
    "pressure_Pa": (700.0, 600000.0, "Pa"),
    "power_W": (50.0, 10000.0, "W"),
    "volume_l": (0.0, 40.0, "l"),
}


def within(name: str, value: float, kind: str | None = None) -> float:
    """The value itself. Raises OutOfRange when it is outside the range of its kind, or not a number."""
    low, high, unit = RANGES[kind or name]
    if not (math.isfinite(value) and low <= value <= high):
        raise OutOfRange(name, value, low, high, unit)
    return float(value)
