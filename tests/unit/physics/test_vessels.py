"""The vessel's own heat, and thermometer readings."""

from __future__ import annotations

import pytest

from knowledge.errors import NeverReached, OutOfRange
from knowledge.foods.store import Store
from knowledge.physics import Case, Phase, cook, goal, history, media, piece
from knowledge.physics.probe import fit_to_probe
from knowledge.physics.vessels import (
    WATER_CP,
    Load,
    after_adding,
    come_up_s,
    crowding,
    mixed_degC,
    oven_after_loading,
    pressure_come_up_s,
    release_s,
)

POTATOES = Load(mass_kg=1.0, cp_J_kgK=3650.0, at_degC=5.0)
POT = {"pot_kg": 2.5, "pot_cp_J_kgK": 500.0}


def test_equal_waters_meet_half_way() -> None:
    water = [Load(mass_kg=1.0, cp_J_kgK=WATER_CP, at_degC=T) for T in (100.0, 20.0)]
    assert mixed_degC(water) == pytest.approx(60.0)


def test_two_litres_come_to_the_boil_as_by_hand() -> None:
    """(2 x 4180 + 1 x 500) x 80 K / 1500 W = 472.5 s, without losses."""
    loads = [
        Load(mass_kg=2.0, cp_J_kgK=WATER_CP, at_degC=20.0), Load(mass_kg=1.0, cp_J_kgK=500.0, at_degC=20.0)
    ]  # fmt: skip
    assert come_up_s(loads, to_degC=100.0, power_W=1500.0, loss_W_K=0.0) == pytest.approx(472.5, rel=0.001)
    assert come_up_s(loads, to_degC=100.0, power_W=1500.0) > 472.5


def test_a_candle_never_boils_a_pot() -> None:
    loads = [Load(mass_kg=3.0, cp_J_kgK=WATER_CP, at_degC=20.0)]
    with pytest.raises(NeverReached):
        come_up_s(loads, to_degC=99.0, power_W=60.0, loss_W_K=2.0)


def test_a_kilo_of_cold_potatoes_cools_the_pot_and_everything_in_it(store: Store) -> None:
    fallen, back = after_adding(**POT, water_kg=2.0, liquid_degC=99.0, foods=[POTATOES])
    assert 75.0 < fallen < 95.0
    assert 60.0 < back < 600.0
    food = store.food("carrot")
    made = piece(food, size_mm=20.0, shape="brick")
    end = goal(food, store.doneness(food.doneness))
    alone, joined = cook(
        [
            Case(piece=made, phases=(Phase(medium=m, duration_s=None),), goal=end)
            for m in (media.boiling(), media.boiling(start_degC=fallen, come_up_s=back))
        ]
    )
    assert alone.done_s is not None
    assert joined.done_s is not None
    assert joined.done_s > alone.done_s + 10.0


def test_more_cold_food_cools_more() -> None:
    once = after_adding(**POT, water_kg=2.0, liquid_degC=99.0, foods=[POTATOES])
    twice = after_adding(**POT, water_kg=2.0, liquid_degC=99.0, foods=[POTATOES, POTATOES])
    assert twice[0] < once[0]
    assert twice[1] > once[1]


def test_coming_up_to_pressure_takes_minutes_and_grows_with_the_load() -> None:
    """Common practice, no source: 4 to 15 minutes for a household cooker."""
    light = pressure_come_up_s(**POT, water_kg=0.5, foods=[POTATOES], gauge_kPa=80.0)
    heavy = pressure_come_up_s(**POT, water_kg=2.0, foods=[POTATOES, POTATOES], gauge_kPa=80.0)
    assert 120.0 < light < heavy < 1200.0


def test_quick_release_is_quick() -> None:
    assert release_s(gauge_kPa=80.0, quick=True) <= 60.0
    assert 240.0 < release_s(gauge_kPa=80.0, quick=False) < 1200.0


def test_a_loaded_sheet_draws_the_oven_down() -> None:
    start, back = oven_after_loading(setting_degC=220.0, tray_kg=1.0, tray_cp_J_kgK=480.0, foods=[POTATOES])
    assert 80.0 < start < 160.0
    assert 120.0 < back < 900.0


def test_crowding_begins_where_no_finger_fits_and_flat_pieces_feel_it_less() -> None:
    assert crowding(area_m2=0.13, pieces_area_m2=0.055) == 0.0
    assert 0.2 < crowding(area_m2=0.13, pieces_area_m2=0.09) < 0.6
    assert crowding(area_m2=0.13, pieces_area_m2=0.2) == 1.0
    assert crowding(area_m2=0.13, pieces_area_m2=0.09, flat=True) < 0.25


def roast(store: Store, size_mm: float) -> Case:
    food = store.food("pork-loin")
    return Case(
        piece=piece(food, size_mm=size_mm, shape="rod", ratio_1=2.0),
        phases=(Phase(medium=media.oven(180.0, surface="meat"), duration_s=None),),
        goal=goal(food, store.doneness(food.doneness)),
    )


def test_a_reading_finds_the_true_thickness(store: Store) -> None:
    truth, assumed = roast(store, 84.0), roast(store, 70.0)
    reading = history(truth, [1800.0]).core_degC[0]
    fitted = fit_to_probe(assumed, time_s=1800.0, core_degC=reading)
    assert fitted.believable
    assert fitted.thickness_factor == pytest.approx(84.0 / 70.0, rel=0.01)
    a, b = cook([truth, fitted.case])
    assert a.done_s is not None
    assert b.done_s == pytest.approx(a.done_s, rel=0.01)


def test_an_impossible_reading_is_not_believed(store: Store) -> None:
    fitted = fit_to_probe(roast(store, 70.0), time_s=300.0, core_degC=95.0)
    assert not fitted.believable
    with pytest.raises(OutOfRange):
        fit_to_probe(roast(store, 70.0), time_s=300.0, core_degC=451.0)


def test_slow_heat_that_never_arrives_says_so(store: Store) -> None:
    food = store.food("chicken-thigh")
    case = Case(
        piece=piece(food, size_mm=30.0, shape="brick", ratio_1=2.0, ratio_2=3.0),
        phases=(Phase(medium=media.simmering(0.0, 65.0), duration_s=None),),
        goal=goal(food, store.doneness(food.doneness)),
    )
    outcome = cook([case])[0]
    assert outcome.done_s is None
    assert "short of 74 °C" in outcome.note
