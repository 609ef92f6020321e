"""Units: exact factors against pint; what a cook reads can be measured and is near the truth."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge import units
from knowledge.errors import OutOfRange

PINT_NAMES = {"fl oz": "fluid_ounce", "l": "liter", "ml": "milliliter", "h": "hour", "min": "minute"}


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry[float]:
    return pint.UnitRegistry()


@pytest.mark.parametrize("unit", sorted(units.KITCHEN))
def test_the_kitchen_list_agrees_with_pint(unit: str, registry: pint.UnitRegistry[float]) -> None:
    dimension, size = units.KITCHEN[unit]
    base = {"mass": "gram", "volume": "milliliter", "length": "millimeter", "time": "second"}[dimension]
    assert registry.Quantity(1.0, PINT_NAMES.get(unit, unit)).to(base).magnitude == pytest.approx(
        size, rel=1e-9
    )


def test_other_units_come_from_pint() -> None:
    assert units.convert(15.0, unit="psi", to="kPa") == pytest.approx(
        103.42, rel=1e-4
    )  # NIST SP 811: 1 psi 6.894757 kPa


def test_unknown_and_unlike_units_are_refused() -> None:
    with pytest.raises(KeyError):
        units.convert(1, unit="smidgen", to="g")
    with pytest.raises(ValueError, match="mass"):
        units.convert(1, unit="g", to="ml")
    with pytest.raises(ValueError, match="different things"):
        units.convert(1, unit="psi", to="gram")


def test_fixed_points_of_the_temperature_scales() -> None:
    assert units.fahrenheit(100) == pytest.approx(212)  # definition: water boils at 212 degF, freezes at 32
    assert units.fahrenheit(0) == pytest.approx(32)
    assert units.fahrenheit(-40) == pytest.approx(-40)
    with pytest.raises(OutOfRange):
        units.fahrenheit(-300)


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        (units.weight(437, "metric"), "435 g"),
        (units.weight(12.4, "metric"), "12 g"),
        (units.weight(1520, "metric"), "1.5 kg"),
        (units.weight(454, "us"), "1 lb"),
        (units.weight(113, "us"), "4 oz"),
        (units.volume(347, "metric"), "350 ml"),
        (units.volume(1500, "metric"), "1.5 l"),
        (units.volume(237, "us"), "1 cup"),
        (units.volume(480, "us"), "2 cups"),
        (units.size(12.5, "us"), "1/2 inch"),
        (units.size(38, "us"), "1 1/2 inch"),
        (units.size(25.4, "us"), "1 inch"),
        (units.size(20, "metric"), "20 mm"),
        (units.temperature(73.9, "us"), "165 °F"),
        (units.temperature(73.9, "metric"), "74 °C"),
        (units.oven(218, "metric"), "220 °C"),
        (units.oven(218, "us"), "425 °F"),
    ],
)
def test_what_a_cook_reads(said: str, expected: str) -> None:
    assert said == expected


@given(st.floats(0.5, 9000), st.sampled_from(["metric", "us"]))
def test_a_mass_as_said_is_within_an_eighth_of_the_truth(grams: float, system: str) -> None:
    *value, unit = units.weight(grams, system).split(" ")
    said = units.convert(sum(float(Fraction(part)) for part in value), unit=unit, to="g")
    assert said == pytest.approx(grams, rel=0.13, abs=28.0)


@given(st.floats(0.1, 9000), st.sampled_from(["metric", "us"]))
def test_there_is_always_something_to_measure(ml: float, system: str) -> None:
    assert Fraction(units.volume(ml, system).split(" ")[0]) > 0
