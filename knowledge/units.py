"""Numbers with a unit: convert on the way in, format on the way out.

The only module that imports pint, and only for units outside the kitchen's own list:
building pint's registry takes a third of a second, which a chat should not wait for.
The kitchen's list is exact by definition; a test compares each entry with pint.
A cook's text never comes here: `text.amounts` has its own small grammar.

Formatting rounds once, to what a cook can measure: 5 g, 10 °C or 25 °F on an oven.
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
    "inch": ("length", 25.4),
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


def celsius(degF: float) -> float:
    """Fahrenheit to Celsius. Raises OutOfRange below absolute zero."""
    if degF < -459.67:
        raise OutOfRange("temperature", degF, -459.67, 1e6, "°F")
    return (degF - 32.0) / 1.8


def fahrenheit(degC: float) -> float:
    """Celsius to Fahrenheit. Raises OutOfRange below absolute zero."""
    if degC < -273.15:
        raise OutOfRange("temperature", degC, -273.15, 1e6, "°C")
    return degC * 1.8 + 32.0


def _to(value: float, step: float) -> float:
    return step * round(value / step)


def mass(grams: float, *, units: str = "metric") -> str:
    """A mass as a cook weighs it: 5 g steps above 20 g, or ounces and pounds ("us")."""
    if units == "us":
        ounces = grams / KITCHEN["oz"][1]
        if ounces >= 16:
            return f"{_to(ounces / 16, 0.25):g} lb"
        return f"{max(0.25, _to(ounces, 0.25 if ounces < 4 else 0.5)):g} oz"
    if grams >= 1000:
        return f"{_to(grams / 1000, 0.05):g} kg"
    return f"{max(1.0, _to(grams, 1 if grams < 20 else 5)):.0f} g"


def volume(ml: float, *, units: str = "metric") -> str:
    """A volume of liquid as a cook measures it: spoons, then 10 ml steps, or cups ("us")."""
    if ml < 4 * KITCHEN["tbsp"][1]:
        spoon = "tbsp" if ml >= KITCHEN["tbsp"][1] else "tsp"
        return f"{max(0.25, _to(ml / KITCHEN[spoon][1], 0.5 if spoon == 'tbsp' else 0.25)):g} {spoon}"
    if units == "us":
        cups = ml / KITCHEN["cup"][1]
        return f"{_to(cups, 0.25):g} {'cup' if cups <= 1.125 else 'cups'}"
    return f"{_to(ml / 1000, 0.05):g} l" if ml >= 1000 else f"{_to(ml, 10):.0f} ml"


_EIGHTHS = {1: "1/8", 2: "1/4", 3: "3/8", 4: "1/2", 5: "5/8", 6: "3/4", 7: "7/8"}


def length(mm: float, *, units: str = "metric") -> str:
    """The size of a piece: millimetres, or inches in eighths ("us")."""
    if units == "us":
        whole, eighths = divmod(max(1, round(mm / 25.4 * 8)), 8)
        return f"{' '.join(filter(None, (str(whole) if whole else '', _EIGHTHS.get(eighths, ''))))} in"
    return f"{_to(mm, 5) / 10:g} cm" if mm >= 100 else f"{max(1, round(mm))} mm"


def temperature(degC: float, *, units: str = "metric") -> str:
    """A temperature of food, to the degree."""
    return f"{fahrenheit(degC):.0f} °F" if units == "us" else f"{degC:.0f} °C"


def oven(degC: float, *, units: str = "metric") -> str:
    """A setting that an oven has: 10 °C or 25 °F steps."""
    return f"{_to(fahrenheit(degC), 25):.0f} °F" if units == "us" else f"{_to(degC, 10):.0f} °C"
