"""Air and water: pressure by altitude, boiling point by pressure.

Everything that altitude does to a dinner goes through these functions.
"""

from __future__ import annotations

from knowledge.physics.limits import within

SEA_LEVEL_PA = 101325.0
LATENT_J_KG = 2.257e6
"""Heat of vaporisation of water at 100 °C (IAPWS)."""

# Constants of the saturation line. Source: IAPWS-IF97, region 4, table 34.
_N = (
    0.11670521452767e4, -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5, -0.32325550322333e7,
    0.14915108613530e2, -0.48232657361591e4, 0.40511340542057e6, -0.23855557567849, 0.65017534844798e3,
)  # fmt: skip


def ambient_Pa(altitude_m: float) -> float:
    """Air pressure at an altitude.

    Equation: p = 101325 (1 - 2.25577e-5 z)**5.25588
    Valid for: -450 to 5500 m. Raises OutOfRange.
    Source: ICAO standard atmosphere (ISO 2533).
    Example: 1500 m -> 84556 Pa
    """
    z = within("altitude_m", altitude_m)
    return float(SEA_LEVEL_PA * (1.0 - 2.25577e-5 * z) ** 5.25588)


def saturation_Pa(T_degC: float) -> float:
    """Vapour pressure of water.

    Equation: p = (2 C / (-B + sqrt(B**2 - 4 A C)))**4 MPa, with A, B, C quadratic in
        theta = T + n9 / (T - n10), T in K
    Valid for: 0 to 200 °C. Raises OutOfRange.
    Source: IAPWS-IF97, equation 30.
    Example: 100 °C -> 101.42 kPa
    """
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = _N
    T = within("T_degC", T_degC, "saturation_degC") + 273.15
    theta = T + n9 / (T - n10)
    a = theta * theta + n1 * theta + n2
    b = n3 * theta * theta + n4 * theta + n5
    c = n6 * theta * theta + n7 * theta + n8
    return float(1e6 * (2.0 * c / (-b + (b * b - 4.0 * a * c) ** 0.5)) ** 4)


def boiling_degC(pressure_Pa: float) -> float:
    """Temperature at which water boils under an absolute pressure.

    Equation: the same line solved for T (backward equation), with beta = (p / MPa)**(1/4)
    Valid for: 700 Pa to 600 kPa. Raises OutOfRange.
    Source: IAPWS-IF97, equation 31.
    Example: 101325 Pa -> 99.97 °C; 171325 Pa -> 115.39 °C
    """
    n1, n2, n3, n4, n5, n6, n7, n8, n9, n10 = _N
    beta = (within("pressure_Pa", pressure_Pa) / 1e6) ** 0.25
    e = beta * beta + n3 * beta + n6
    f = n1 * beta * beta + n4 * beta + n7
    g = n2 * beta * beta + n5 * beta + n8
    d = 2.0 * g / (-f - (f * f - 4.0 * e * g) ** 0.5)
    return float(0.5 * (n10 + d - ((n10 + d) ** 2 - 4.0 * (n9 + n10 * d)) ** 0.5) - 273.15)
