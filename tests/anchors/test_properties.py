"""Thermal properties, water and air against handbooks, a steam-table library and the standard atmosphere."""

from __future__ import annotations

import pytest
import seuif97

from knowledge.errors import OutOfRange
from knowledge.foods.model import Composition
from knowledge.physics.properties import properties
from knowledge.physics.water import ambient_Pa, boiling_degC, saturation_Pa


def food(
    water: float, protein: float, fat: float, carbohydrate: float, fibre: float, ash: float
) -> Composition:
    return Composition(
        water_g=water, protein_g=protein, fat_g=fat, carbohydrate_g=carbohydrate, fibre_g=fibre, ash_g=ash
    )


CARROT = food(88.29, 0.93, 0.24, 9.58, 2.8, 0.97)
POTATO = food(79.34, 2.02, 0.09, 17.47, 2.2, 1.08)
CHICKEN = food(73.9, 22.5, 2.62, 0, 0, 1.13)
BEEF = food(61.87, 17.17, 20, 0, 0, 0.84)


@pytest.mark.parametrize(
    ("stuff", "T_degC", "density", "cp", "k", "alpha"),
    [  # Choi & Okos 1986 worked on USDA SR27 compositions, parallel conductivity
        (CARROT, 5, 1038.6, 3.8783, 0.5497, 0.1365),
        (CARROT, 60, 1024.8, 3.901, 0.6214, 0.1554),
        (CARROT, 100, 1001.1, 3.9336, 0.6494, 0.1649),
        (POTATO, 20, 1074.9, 3.6522, 0.5494, 0.14),
        (POTATO, 100, 1039.0, 3.7087, 0.6259, 0.1624),
        (CHICKEN, 5, 1061.2, 3.5984, 0.4955, 0.1298),
        (CHICKEN, 60, 1045.2, 3.6257, 0.5622, 0.1483),
        (BEEF, 20, 1026.5, 3.3488, 0.453, 0.1318),
        (BEEF, 100, 990.2, 3.4066, 0.5063, 0.1501),
    ],
)
def test_properties_follow_choi_and_okos(
    stuff: Composition, T_degC: float, density: float, cp: float, k: float, alpha: float
) -> None:
    p = properties(stuff, T_degC=T_degC)
    assert p.density_kg_m3 == pytest.approx(density, rel=0.005)
    assert p.cp_J_kgK == pytest.approx(1000 * cp, rel=0.005)
    assert p.k_W_mK == pytest.approx(k, rel=0.005)
    assert 1e6 * p.diffusivity_m2_s == pytest.approx(alpha, rel=0.005)


@pytest.mark.parametrize("altitude_m", [0, 500, 1000, 1500, 2000, 2500, 3000])
@pytest.mark.parametrize("gauge_kPa", [0, 30, 55, 70, 80, 103.4, 105])
def test_boiling_point_follows_steam_tables(altitude_m: float, gauge_kPa: float) -> None:
    """IAPWS-IF97 by the seuif97 library, within 0.1 °C."""
    absolute = ambient_Pa(altitude_m) + 1000 * gauge_kPa
    assert boiling_degC(absolute) == pytest.approx(seuif97.px2t(absolute / 1e6, 0.0), abs=0.1)


def test_vapour_pressure_is_the_boiling_point_read_backwards() -> None:
    for T in (40.0, 80.0, 99.0, 105.0, 120.0):
        assert boiling_degC(saturation_Pa(T)) == pytest.approx(T, abs=0.03)


@pytest.mark.parametrize(
    ("altitude_m", "pascal"),
    [(0, 101325), (500, 95461), (1000, 89875), (1500, 84556), (2000, 79495), (2500, 74683), (3000, 70109)],
)
def test_air_pressure_follows_the_standard_atmosphere(altitude_m: float, pascal: float) -> None:
    """ICAO Doc 7488 / ISO 2533, within 0.1 hPa."""
    assert ambient_Pa(altitude_m) == pytest.approx(pascal, abs=10)


def test_everest_is_refused_by_name() -> None:
    with pytest.raises(OutOfRange, match="altitude_m: 8849 m is outside"):
        ambient_Pa(8849)
