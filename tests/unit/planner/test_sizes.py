"""Vessels in the size a cook says: the form of their kind, and never more room than there is.

Round vessels of one form: floor with the square of the width, room with its cube. Geometry.
"""

from __future__ import annotations

import pytest

from knowledge.foods.model import VesselSize
from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Plan
from knowledge.planner.sizes import size_of
from tests.unit.planner.kitchen import asked


def sized(store: Store, vessel: str, said: str) -> VesselSize:
    found = size_of(store.vessel(vessel), said)
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("said", "cm"), [("22 cm", 22.0), ("26cm", 26.0), ("8 inch", 20.32), ("32 cm", 32.0)]
)
def test_a_pan_has_the_floor_of_its_width(store: Store, said: str, cm: float) -> None:
    near, other = sized(store, "saute pan", "24 cm"), sized(store, "saute pan", "30 cm")
    floor = sized(store, "saute pan", said).area_m2
    assert near.area_m2 * (cm / 24.0) ** 2 == pytest.approx(floor, rel=0.06)
    assert other.area_m2 * (cm / 30.0) ** 2 == pytest.approx(floor, rel=0.06)


@pytest.mark.parametrize(
    ("vessel", "said", "litres"),
    [
        ("lidded pot", "2.2 l", 2.2),
        ("lidded pot", "4,5 litres", 4.5),
        ("lidded pot", "3 quart", 2.84),
        ("pressure cooker", "4 l", 4.0),
        ("pressure cooker", "6 quart", 5.68),
        ("pressure cooker", "10 l", 10.0),
    ],
)
def test_a_pot_holds_what_is_said(store: Store, vessel: str, said: str, litres: float) -> None:
    size = sized(store, vessel, said)
    assert size.volume_l == pytest.approx(litres, rel=0.01)
    smaller = [s for s in store.vessel(vessel).sizes if (s.volume_l or 0.0) < litres]
    assert all(size.area_m2 > s.area_m2 for s in smaller)


@pytest.mark.parametrize(
    ("said", "sides_cm"),
    [("38 x 27 cm", (38.0, 27.0)), ("28x36cm", (36.0, 28.0)), ("16 by 11 inch", (40.6, 27.9))],
)
def test_a_tray_has_the_floor_of_its_sides(store: Store, said: str, sides_cm: tuple[float, float]) -> None:
    half = sized(store, "sheet pan", "half")
    size = sized(store, "sheet pan", said)
    assert size.sides_cm == pytest.approx(sides_cm, abs=0.1)
    share = sides_cm[0] * sides_cm[1] / (half.sides_cm[0] * half.sides_cm[1])
    assert size.area_m2 == pytest.approx(share * half.area_m2, rel=0.1)


@pytest.mark.parametrize(
    ("vessel", "said"),
    [("saute pan", "26 cm"), ("saute pan", "9 inch"), ("lidded pot", "26 cm"), ("lidded pot", "2.5 l"),
     ("pressure cooker", "5 quart"), ("sheet pan", "40 x 25 cm"), ("sheet pan", "15 x 11 inch")],
)  # fmt: skip
def test_the_name_of_a_size_means_it_again(store: Store, vessel: str, said: str) -> None:
    size = sized(store, vessel, said)
    assert size_of(store.vessel(vessel), size.id) == size


@pytest.mark.parametrize("said", ["300 cm", "0.3 l", "900 l"])
def test_no_kitchen_has_such_a_pot(store: Store, said: str) -> None:
    assert size_of(store.vessel("lidded pot"), said) is None


@pytest.mark.parametrize(
    ("text", "vessel", "size"),
    [
        ("3 pork chops, cabbage, apples, for 3 in my 26 cm frying pan", "saute pan", "26 cm"),
        ("3 pork chops, cabbage, 1 l stock, for 3, a 22 cm pan", "saute pan", "22 cm"),
        ("600 g lamb neck, swede, carrots, for 3, 4.5 l pot", "lidded pot", "4.5 l"),
        ("600 g lamb neck, swede, carrots, for 3, in a 5 l pressure cooker", "pressure cooker", "5 l"),
        ("600 g lamb neck, swede, carrots, for 3, 5 l cooker", "pressure cooker", "5 l"),
        ("3 duck legs, parsnips, for 3 on a 36 x 28 cm tray", "sheet pan", "36 x 28 cm tray"),
        ("3 duck legs, parsnips, for 3, in a 9 inch cast iron skillet", "saute pan", "9 inch"),
        ('3 duck legs, parsnips, for 3, my 13" frying pan', "saute pan", "13 inch"),
        ("600 g lamb neck, swede, carrots, for 3, 3,5 l pot", "lidded pot", "3.5 l"),
        ("600 g lamb neck, swede, carrots, for 3, 2.75 litre saucepan", "lidded pot", "2.75 l"),
        ("3 duck legs, parsnips, for 3, 38cm x 28cm roasting tin", "sheet pan", "38 x 28 cm tray"),
    ],
)
def test_a_dinner_is_planned_in_the_vessel_said(store: Store, text: str, vessel: str, size: str) -> None:
    made = plan(asked(store, text), store=store)
    assert isinstance(made, Plan)
    assert (made.vessel, made.size) == (vessel, size)
    assert not [line for line in check(made, store=store).problems if "too full" in line]


@pytest.mark.parametrize(
    "text",
    [
        "600 g lamb neck, swede, 4 l slow cooker",
        "lamb neck, 2 l stock in the pot",
        "lamb neck, 1 l stock, saucepan",
    ],
)
def test_what_is_no_vessel_of_ours_has_no_size(store: Store, text: str) -> None:
    request = asked(store, text)
    assert all(v.size is None for v in request.kitchen.vessels)
