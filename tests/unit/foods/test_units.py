"""Units: exact factors against pint; what a cook reads can be measured and is near the truth."""

from __future__ import annotations

import pint
import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge import units
from knowledge.errors import OutOfRange

PINT_NAMES = {"fl oz": "fluid_ounce", "l": "liter", "ml": "milliliter", "h": "hour", "min": "minute"}


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry:
    return pint.UnitRegistry()


@pytest.mark.parametrize("unit", sorted(units.KITCHEN))
def test_the_kitchen_list_agrees_with_pint(unit: str, registry: pint.UnitRegistry) -> None:
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
    assert units.celsius(212) == pytest.approx(100)  # definition: water boils at 212 degF, freezes at 32
    assert units.celsius(32) == pytest.approx(0)
    assert units.fahrenheit(-40) == pytest.approx(-40)
    with pytest.raises(OutOfRange):
        units.celsius(-500)
    with pytest.raises(OutOfRange):
        units.fahrenheit(-300)


@pytest.mark.parametrize(
    ("said", "expected"),
    [
        (units.mass(437), "435 g"),
        (units.mass(12.4), "12 g"),
        (units.mass(1520), "1.5 kg"),
        (units.mass(454, units="us"), "1 lb"),
        (units.mass(113, units="us"), "4 oz"),
        (units.volume(5), "1 tsp"),
        (units.volume(30), "2 tbsp"),
        (units.volume(347), "350 ml"),
        (units.volume(1500), "1.5 l"),
        (units.volume(237, units="us"), "1 cup"),
        (units.volume(480, units="us"), "2 cups"),
        (units.length(12.5, units="us"), "1/2 in"),
        (units.length(38, units="us"), "1 1/2 in"),
        (units.length(25.4, units="us"), "1 in"),
        (units.length(20), "20 mm"),
        (units.length(330), "33 cm"),
        (units.temperature(73.9, units="us"), "165 °F"),
        (units.temperature(73.9), "74 °C"),
        (units.oven(218), "220 °C"),
        (units.oven(218, units="us"), "425 °F"),
    ],
)
def test_what_a_cook_reads(said: str, expected: str) -> None:
    assert said == expected


@given(st.floats(0.5, 9000), st.sampled_from(["metric", "us"]))
def test_a_mass_as_said_is_within_an_eighth_of_the_truth(grams: float, system: str) -> None:
    value, unit = units.mass(grams, units=system).split(" ")
    said = units.convert(float(value), unit=unit, to="g")
    assert said == pytest.approx(grams, rel=0.13, abs=7.2)


@given(st.floats(0.1, 9000), st.sampled_from(["metric", "us"]))
def test_there_is_always_something_to_measure(ml: float, system: str) -> None:
    assert float(units.volume(ml, units=system).split(" ")[0]) > 0
