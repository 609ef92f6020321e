"""Numbers with a unit: convert on the way in, format on the way out.

The only module that imports pint, and only for units outside the kitchen's own list:
building pint's registry takes a third of a second, which a chat should not wait for.
The kitchen's list is exact by definition; a test compares each entry with pint.
A cook's text never comes here: `text.amounts` has its own small grammar.

Formatting rounds once, to what a cook can measure; `units` is "metric" or "us".
"""

from __future__ import annotations

from functools import lru_cache
from typing import Any

from knowledge.errors import OutOfRange

# unit -> (dimension, size in the base unit of the dimension: g, ml, mm, s)
KITCHEN: dict[str, tuple[str, float]] = {
    "g": ("mass", 1.0),
    "kg": ("mass", 1000.0),
    "oz": ("mass", 28.349523125),
    "lb": ("mass", 453.59237),
    "ml": ("volume", 1.0),
    "l": ("volume", 1000.0),
    "tsp": ("volume", 4.92892159375),
    "tbsp": ("volume", 14.78676478125),
    "fl oz": ("volume", 29.5735295625),
    "cup": ("volume", 236.5882365),
    "pint": ("volume", 473.176473),
    "quart": ("volume", 946.352946),
    "mm": ("length", 1.0),
    "cm": ("length", 10.0),
    "m": ("length", 1000.0),
    "inch": ("length", 25.4),
    "ft": ("length", 304.8),
    "s": ("time", 1.0),
    "min": ("time", 60.0),
    "h": ("time", 3600.0),
}


@lru_cache(maxsize=1)
def _registry() -> Any:
    import pint

    return pint.UnitRegistry()


@lru_cache(maxsize=256)
def factor(unit: str, to: str) -> float:
    """How many `to` one `unit` is. Raises KeyError for a unit nobody knows, ValueError for
    units of different dimensions."""
    if unit in KITCHEN and to in KITCHEN:
        (dimension, size), (other, base) = KITCHEN[unit], KITCHEN[to]
        if dimension != other:
            raise ValueError(f"{unit} is a {dimension}, {to} a {other}")
        return size / base
    registry = _registry()
    for name in (unit, to):
        if name not in registry:
            raise KeyError(name)
    if not registry(unit).check(registry(to).dimensionality):
        raise ValueError(f"{unit} and {to} measure different things")
    return float(registry.Quantity(1.0, unit).to(to).magnitude)


def convert(value: float, *, unit: str, to: str) -> float:
    """A number in another unit, for units that share their zero (not temperatures).

    Raises KeyError: unknown unit; ValueError: the units measure different things.
    """
    return value * factor(unit, to)


ABSOLUTE_ZERO_DEGC = -273.15


def fahrenheit(degC: float) -> float:
    """Celsius to Fahrenheit. Raises OutOfRange below absolute zero."""
    if degC < ABSOLUTE_ZERO_DEGC:
        raise OutOfRange("temperature", degC, ABSOLUTE_ZERO_DEGC, 1e6, "°C")
    return degC * 1.8 + 32.0


def celsius(degF: float) -> float:
    """Fahrenheit to Celsius."""
    return (degF - 32.0) / 1.8


ROUNDED_K = 0.1
"""Minima are printed in whole °F and kept in Celsius to the tenth: 165 °F is 73.89 °C and written 73.9."""


def is_met(read_degC: float, minimum_degC: float) -> bool:
    """Whether a reading, or a goal, is as hot as a published minimum; nothing is rounded up to it."""
    return read_degC >= minimum_degC - ROUNDED_K


OVEN_DEGF, OVEN_K = 25, 10
"""The steps of an oven's dial in the two scales."""

PINCH_TSP, FINE_TSP, MOST_TSP, MOST_TBSP = 0.17, 1.1, 2.75, 6.5
"""Below the first it is a pinch, to the second quarters of a teaspoon are measured, then halves; from
the third tablespoons, from the fourth cups or millilitres."""

_QUARTERS = ("", "1/4", "1/2", "3/4")
_EIGHTHS = ("", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8")


def _mixed(whole: int, part: str) -> str:
    """ "2 1/2", "1/2", "2"."""
    return " ".join(p for p in (str(whole) if whole else "", part) if p)


def weight(grams: float, units: str) -> str:
    """A weight of food: "12 g", "435 g", "1.2 kg"; "12 oz", "2 1/2 lb" ("us")."""
    if units == "us":
        ounces = grams / KITCHEN["oz"][1]
        if ounces < 15.5:
            return f"{max(1, round(ounces))} oz"
        pounds, quarters = divmod(round(ounces / 4), 4)
        return f"{_mixed(pounds, _QUARTERS[quarters])} lb"
    if grams < 50:
        return f"{max(1, round(grams))} g"
    if grams < 1000:
        return f"{5 * round(grams / 5)} g"
    return f"{grams / 1000:.1f} kg".replace(".0 kg", " kg")


def volume(ml: float, units: str) -> str:
    """A volume of liquid: 50 ml steps, or quarter cups ("us")."""
    if units == "us":
        quarters = max(1, round(ml / KITCHEN["cup"][1] * 4))
        cups, part = divmod(quarters, 4)
        return f"{_mixed(cups, _QUARTERS[part])} cup{'s' if quarters > 4 else ''}"
    if ml >= 1000:
        return f"{ml / 1000:.1f} l".replace(".0 l", " l")
    return f"{max(50, round(ml / 50) * 50):.0f} ml"


def spoons(ml: float, units: str) -> str:
    """A small volume in spoons, which both systems share: "1/4 tsp", "1 1/2 tsp", "3 tbsp"; then `volume`.

    Below a sixth of a teaspoon it is "a pinch".
    """
    tsp = ml / KITCHEN["tsp"][1]
    if tsp < PINCH_TSP:
        return "a pinch"
    if tsp < MOST_TSP:
        measured = round(tsp * 4) if tsp < FINE_TSP else 2 * round(tsp * 2)
        whole, quarters = divmod(max(1, measured), 4)
        return f"{_mixed(whole, _QUARTERS[quarters])} tsp"
    tbsp = ml / KITCHEN["tbsp"][1]
    if tbsp < MOST_TBSP:
        whole, halves = divmod(max(2, round(tbsp * 2)), 2)
        return f"{_mixed(whole, _QUARTERS[2 * halves])} tbsp"
    return volume(ml, units)


def size(mm: float, units: str) -> str:
    """The size of a cut: millimetres, or inches in eighths, coarser for large pieces ("us")."""
    if units != "us":
        return f"{mm:.0f} mm"
    step = 1 if mm < 12 else 2 if mm < 24 else 4  # nobody measures an eighth on a large piece
    whole, eighths = divmod(max(1, round(mm / KITCHEN["inch"][1] * 8 / step) * step), 8)
    return f"{_mixed(whole, _EIGHTHS[eighths])} inch"


def temperature(degC: float, units: str) -> str:
    """A temperature of food, to the degree that a thermometer shows."""
    return f"{fahrenheit(degC):.0f} °F" if units == "us" else f"{degC:.0f} °C"


def oven(degC: float, units: str) -> str:
    """A setting that an oven has: steps of 10 °C (175 is one, too) or 25 °F."""
    if units == "us":
        return f"{round(fahrenheit(degC) / OVEN_DEGF) * OVEN_DEGF} °F"
    return "175 °C" if degC == 175 else f"{round(degC / OVEN_K) * OVEN_K} °C"
