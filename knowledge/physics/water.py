"""Air and water: pressure by altitude, boiling point by pressure.

Everything that altitude does to a dinner goes through these functions.
"""

from __future__ import annotations

from typing import overload

import numpy as np
from numpy.typing import NDArray

from knowledge.physics.limits import within

SEA_LEVEL_PA = 101325.0
LATENT_J_KG = 2.257e6
"""Heat of vaporisation of water at 100 °C (IAPWS)."""

_MMHG_PA = 133.322
# Antoine constants for mmHg and °C, below and above 100 °C.
# Source: Lange's Handbook of Chemistry, as in common property tables (checked against IAPWS-IF97).
_BELOW = (8.07131, 1730.63, 233.426)
_ABOVE = (8.14019, 1810.94, 244.485)


def ambient_Pa(altitude_m: float) -> float:
    """Air pressure at an altitude.

    Equation: p = 101325 (1 - 2.25577e-5 z)**5.25588
    Valid for: -450 to 5500 m. Raises OutOfRange.
    Source: ICAO standard atmosphere (ISO 2533).
    Example: 1500 m -> 84556 Pa
    """
    z = within("altitude_m", altitude_m)
    return SEA_LEVEL_PA * (1.0 - 2.25577e-5 * z) ** 5.25588


@overload
def saturation_Pa(T_degC: float) -> float: ...
@overload
def saturation_Pa(T_degC: NDArray[np.float64]) -> NDArray[np.float64]: ...
def saturation_Pa(T_degC: float | NDArray[np.float64]) -> float | NDArray[np.float64]:
    """Vapour pressure of water.

    Equation: log10(p / mmHg) = A - B / (C + T), one set of constants up to 100 °C, one above
    Valid for: 0 to 130 °C within 0.4 %; below 0 only that it is small matters here.
    Source: Antoine equation; constants see module.
    Example: 100 °C -> 101.3 kPa
    """
    T = np.asarray(T_degC, dtype=np.float64)
    low, high = (_MMHG_PA * 10.0 ** (a - b / (np.maximum(c + T, 60.0))) for a, b, c in (_BELOW, _ABOVE))
    p = np.where(T <= 100.0, low, high)
    return p if isinstance(T_degC, np.ndarray) else float(p)


def boiling_degC(pressure_Pa: float) -> float:
    """Temperature at which water boils under an absolute pressure.

    Equation: T = B / (A - log10(p / mmHg)) - C
    Valid for: 600 Pa to 600 kPa; within 0.1 °C of IAPWS-IF97 from 60 to 210 kPa. Raises OutOfRange.
    Source: Antoine equation, two sets of constants.
    Example: 101325 Pa -> 99.99 °C; 171325 Pa -> 115.3 °C
    """
    p = within("pressure_Pa", pressure_Pa) / _MMHG_PA
    log = float(np.log10(p))
    a, b, c = _BELOW
    below = b / (a - log) - c
    if below <= 100.0:
        return below
    a, b, c = _ABOVE
    return max(b / (a - log) - c, 100.0)
