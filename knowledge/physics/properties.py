"""Thermal properties of a food from what it is made of.

Density, heat capacity and conductivity are sums over water, protein, fat, carbohydrate,
fibre and ash, each a polynomial in temperature. `carbohydrate_g` of a `Composition`
includes the fibre, as food tables print it; the two are separated here.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache

from knowledge.errors import OutOfRange
from knowledge.foods.model import Composition

# (a, b, c) of value = a + b T + c T**2, T in °C, -40..150; water above freezing.
# Source: Choi & Okos 1986, as reprinted in food engineering handbooks.
# Order: water, protein, fat, carbohydrate, fibre, ash.
_DENSITY = (  # kg/m3
    (997.18, 0.0031439, -0.0037574), (1329.9, -0.5184, 0.0), (925.59, -0.41757, 0.0),
    (1599.1, -0.31046, 0.0), (1311.5, -0.36589, 0.0), (2423.8, -0.28063, 0.0),
)  # fmt: skip
_CP = (  # kJ/kgK
    (4.1762, -9.0864e-5, 5.4731e-6), (2.0082, 1.2089e-3, -1.3129e-6), (1.9842, 1.4733e-3, -4.8008e-6),
    (1.5488, 1.9625e-3, -5.9399e-6), (1.8459, 1.8306e-3, -4.6509e-6), (1.0926, 1.8896e-3, -3.6817e-6),
)  # fmt: skip
_K = (  # W/mK; the slope for fat is -2.76e-4 (some copies misprint -2.76e-3)
    (0.57109, 1.7625e-3, -6.7036e-6), (0.17881, 1.1958e-3, -2.7178e-6), (0.18071, -2.7604e-4, -1.7749e-7),
    (0.20141, 1.3874e-3, -4.3312e-6), (0.18331, 1.2497e-3, -3.1683e-6), (0.32962, 1.4011e-3, -2.9069e-6),
)  # fmt: skip

REFERENCE_DEGC = 50.0
"""Properties are taken once, at this temperature: half way between the fridge and done."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Properties:
    """Thermal properties of one food at one temperature."""

    density_kg_m3: float
    cp_J_kgK: float
    k_W_mK: float
    water_frac: float

    @property
    def diffusivity_m2_s(self) -> float:
        """k / (density cp)."""
        return self.k_W_mK / (self.density_kg_m3 * self.cp_J_kgK)


def _at(coefficients: tuple[tuple[float, float, float], ...], T: float) -> list[float]:
    return [a + b * T + c * T * T for a, b, c in coefficients]


@lru_cache(maxsize=4096)
def properties(composition: Composition, *, T_degC: float = REFERENCE_DEGC) -> Properties:
    """Density, heat capacity and conductivity of a food.

    Equation:
        1/rho = sum x_i / rho_i      cp = sum x_i cp_i
        k = sum v_i k_i              v_i = (x_i / rho_i) / sum(x_j / rho_j)     (parallel)
    Args: mass fractions x_i from `composition`, normalised to 1; T_degC, -40 to 150.
    Valid for: food above freezing without large pores.
    Raises: OutOfRange for a temperature outside the range or a composition without mass.
    Source: Choi & Okos 1986.
    Example: raw carrot at 60 °C -> 1025 kg/m3, 3901 J/kgK, 0.621 W/mK
    """
    if not -40.0 <= T_degC <= 150.0:
        raise OutOfRange("T_degC", T_degC, -40.0, 150.0, "°C")
    parts = [
        composition.water_g,
        composition.protein_g,
        composition.fat_g,
        max(composition.carbohydrate_g - composition.fibre_g, 0.0),
        composition.fibre_g,
        composition.ash_g,
    ]
    total = sum(parts)
    if not 20.0 <= total <= 200.0:
        raise OutOfRange("composition", total, 20.0, 200.0, "g in 100 g")
    x = [part / total for part in parts]
    volumes = [f / rho for f, rho in zip(x, _at(_DENSITY, T_degC), strict=True)]
    volume = sum(volumes)
    return Properties(
        density_kg_m3=1.0 / volume,
        cp_J_kgK=1000.0 * sum(f * cp for f, cp in zip(x, _at(_CP, T_degC), strict=True)),
        k_W_mK=sum(v / volume * k for v, k in zip(volumes, _at(_K, T_degC), strict=True)),
        water_frac=x[0],
    )
