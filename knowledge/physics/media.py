"""Where a piece gets its heat from: one constructor a way of cooking.

Temperatures are the settings a cook knows; constants stand in `media.csv` with their
source. Every constructor raises OutOfRange for a setting that no kitchen has.
"""

from __future__ import annotations

from knowledge.errors import OutOfRange
from knowledge.physics.limits import within
from knowledge.physics.march import SIGMA
from knowledge.physics.model import Heat, Medium
from knowledge.physics.tables import constant
from knowledge.physics.water import SEA_LEVEL_PA, ambient_Pa, boiling_degC

SURFACES = {"cut": "wetness_cut", "meat": "wetness_meat", "skin": "wetness_skin"}
CROWDING = ("joint", "spaced", "piled")
SHEETS = ("dark", "dull", "bright", "foil", "glass")


def exposure_of(crowding: str | float) -> float:
    """Share of the surface that takes part in the heat of an oven's air.

    `crowding` is "joint", "spaced" or "piled", or a number from 0 (a finger between the
    pieces) to 1 (a heap), for which the share falls evenly.
    """
    return _crowded("exposure", crowding)


def _crowded(what: str, crowding: str | float) -> float:
    """A figure of `media.csv` that depends on how full the sheet is."""
    if isinstance(crowding, str):
        return constant(f"{what}_{crowding}")
    if not 0.0 <= crowding <= 1.0:
        raise OutOfRange("crowding", crowding, 0.0, 1.0, "")
    spaced, piled = constant(f"{what}_spaced"), constant(f"{what}_piled")
    return spaced + (piled - spaced) * crowding


def under_W_m2K(sheet: str, air_degC: float, h_W_m2K: float, crowding: str | float) -> float:
    """Coefficient from the oven through the sheet into the underside of what lies on it [W/m2K].

    Equation:
        1/U = 1/hs + rg + c/(up + down)       down = h + a hr,  up = (1 - c)(h + a' hr)
        hr = 4 sigma T**3                     T halfway between the air and a sheet at 120 °C [K]
    The sheet takes heat by air and radiation on its lower face and on what is free of its upper
    one, and gives it to the food on the covered share c through a film of fat and steam, hs.
    a is the absorptivity: dark enamel takes nearly all, bright metal a quarter; foil has a
    bright upper face (a'); glass holds back a little more (rg).
    """
    T = 0.5 * (air_degC + 120.0) + 273.15
    radiation = 4.0 * SIGMA * T**3
    below = constant("sheet_dull_absorptivity" if sheet == "foil" else f"sheet_{sheet}_absorptivity")
    above = constant(f"sheet_{sheet}_absorptivity")
    covered = _crowded("sheet_cover", crowding)
    taken = h_W_m2K + below * radiation + (1.0 - covered) * (h_W_m2K + above * radiation)
    held = constant("sheet_glass_m2K_W") if sheet == "glass" else 0.0
    return 1.0 / (1.0 / constant("sheet_h_W_m2K") + held + covered / taken)


def _medium(
    heat: Heat, ambient_degC: float, h_W_m2K: float, pressure_Pa: float, *,
    start_degC: float | None = None, come_up_s: float = 0.0, emissivity: float = 0.0, exposure: float = 1.0,
    pan_degC: float = 0.0, pan_h_W_m2K: float = 0.0, contact_frac: float = 0.0, wetness: float = 0.0,
    vapour_Pa: float = 0.0,
) -> Medium:  # fmt: skip
    return Medium(
        heat=heat, ambient_degC=ambient_degC,
        start_degC=ambient_degC if start_degC is None else start_degC,
        come_up_s=within("come_up_s", come_up_s), h_W_m2K=h_W_m2K, emissivity=emissivity, exposure=exposure,
        pan_degC=pan_degC, pan_h_W_m2K=pan_h_W_m2K, contact_frac=contact_frac, wetness=wetness,
        vapour_Pa=min(vapour_Pa, 0.6 * pressure_Pa), pressure_Pa=pressure_Pa,
    )  # fmt: skip


def oven(
    air_degC: float, *, fan: bool = False, crowding: str | float = "spaced", surface: str = "cut",
    sheet: str = "dull", altitude_m: float = 0.0, start_degC: float | None = None, come_up_s: float = 0.0,
) -> Medium:  # fmt: skip
    """Dry roasting: air, radiation and evaporation, and from below the sheet.

    Args: air_degC, the setting [°C]; crowding, see `exposure_of`; surface, "cut", "meat" or
    "skin"; sheet, one of `SHEETS` ("dull": used, as most are); start_degC and come_up_s when a cold
    load has drawn the oven down further than opening its door does.
    """
    within("oven_degC", air_degC)
    if start_degC is None:
        start_degC = constant("oven_come_up_frac") * air_degC
        come_up_s = come_up_s or constant("oven_come_up_s")
    pressure = ambient_Pa(altitude_m)
    h = constant("oven_fan_h_W_m2K" if fan else "oven_still_h_W_m2K") * (pressure / SEA_LEVEL_PA) ** 0.5
    return _medium(
        Heat.DRY, air_degC, h, pressure, start_degC=start_degC, come_up_s=come_up_s,
        emissivity=constant("oven_emissivity"), exposure=exposure_of(crowding), pan_degC=air_degC,
        pan_h_W_m2K=under_W_m2K(sheet, air_degC, h, crowding),
        contact_frac=_crowded("sheet_contact", crowding),
        wetness=constant(SURFACES[surface]), vapour_Pa=constant("oven_vapour_Pa"),
    )  # fmt: skip


def broiler(
    environment_degC: float = 290.0, *, surface: str = "meat", cubes: bool = False, altitude_m: float = 0.0
) -> Medium:
    """Under the broiler or on a grill, turned half way: radiation from one side at a time.

    `environment_degC` tells how strong it is by a black oven that would shine as much: about 290 at
    10 cm, 260 at 13 cm, 230 at 18 cm (`broiler_degC`). The heater itself is far hotter and fills a small
    part of the view, so that the flux hardly falls as the surface warms, and time grows about with thickness.
    `cubes`: side by side on a skewer; top and bottom take turns, the four sides are in each other's shade.
    """
    within("broiler_degC", environment_degC)
    pressure = ambient_Pa(altitude_m)
    heater = constant("broiler_heater_degC")
    seen = ((environment_degC + 273.15) / (heater + 273.15)) ** 4
    return _medium(
        Heat.DRY, heater, constant("broiler_h_W_m2K"), pressure,
        emissivity=constant("oven_emissivity") * constant("broiler_side_frac") * seen,
        exposure=constant("broiler_cubes_exposure") if cubes else 1.0,
        wetness=constant(SURFACES[surface]), vapour_Pa=constant("oven_vapour_Pa"),
    )  # fmt: skip


def broiler_degC(distance_m: float) -> float:
    """The strength of a broiler, for `broiler`, on what lies `distance_m` below it.

    Equation: (E + 273)/(E0 + 273) = (d/d0)**-0.2    E0 290 °C at d0 0.10 m
    The flux falls with the power 0.8 of the distance: the heater is about as wide as it is far.
    Example: 15 cm -> 246 °C
    """
    near = within("distance_m", distance_m) / constant("broiler_usual_m")
    return float((constant("broiler_usual_degC") + 273.15) * near**-0.2 - 273.15)


def covered_dish(oven_degC: float, *, altitude_m: float = 0.0, start_degC: float = 20.0) -> Medium:
    """In a covered or foil-wrapped dish in the oven, with little liquid: steam, once it is hot."""
    within("oven_degC", oven_degC)
    top = min(boiling_degC(ambient_Pa(altitude_m)) - constant("boil_drop_K"), oven_degC)
    come_up = constant("covered_dish_come_up_s") * (232.0 - 60.0) / max(oven_degC - 60.0, 20.0)
    return _medium(
        Heat.WET, top, constant("covered_dish_h_W_m2K"), ambient_Pa(altitude_m),
        start_degC=start_degC, come_up_s=min(come_up, 7200.0),
    )  # fmt: skip


def covered_oven(oven_degC: float, *, altitude_m: float = 0.0, start_degC: float = 60.0) -> Medium:
    """Braising in a covered pot in the oven: the liquid stays a little below boiling."""
    within("oven_degC", oven_degC)
    top = min(
        boiling_degC(ambient_Pa(altitude_m)) - constant("covered_oven_drop_K"),
        oven_degC - constant("covered_oven_drop_K"),
    )
    come_up = constant("covered_oven_come_up_s") * (170.0 - 60.0) / max(oven_degC - 60.0, 20.0)
    return _medium(
        Heat.WET, top, constant("gentle_h_W_m2K"), ambient_Pa(altitude_m),
        start_degC=min(start_degC, top), come_up_s=min(come_up, 7200.0),
    )  # fmt: skip


def _liquid(
    h: float, altitude_m: float, *, liquid_degC: float | None, start_degC: float | None, come_up_s: float
) -> Medium:
    pressure = ambient_Pa(altitude_m)
    top = boiling_degC(pressure) - constant("boil_drop_K")
    if liquid_degC is not None:
        top = min(within("liquid_degC", liquid_degC), top)
    return _medium(Heat.WET, top, h, pressure, start_degC=start_degC, come_up_s=come_up_s)


def boiling(altitude_m: float = 0.0, *, start_degC: float | None = None, come_up_s: float = 0.0) -> Medium:
    """In liquid at a rolling boil; `start_degC` and `come_up_s` when it has to come back to it."""
    return _liquid(
        constant("boil_h_W_m2K"), altitude_m, liquid_degC=None, start_degC=start_degC, come_up_s=come_up_s
    )


def simmering(
    altitude_m: float = 0.0, liquid_degC: float | None = None, *,
    start_degC: float | None = None, come_up_s: float = 0.0,
) -> Medium:  # fmt: skip
    """In liquid at `liquid_degC`, or just below boiling; the cooler, the less it moves: `stirred_W_m2K`."""
    return _liquid(
        stirred_W_m2K(100.0 if liquid_degC is None else liquid_degC), altitude_m, liquid_degC=liquid_degC,
        start_degC=start_degC, come_up_s=come_up_s,
    )  # fmt: skip


def stirred_W_m2K(liquid_degC: float) -> float:
    """Coefficient in liquid that is kept at a temperature at sea level [W/m2K].

    Bubbles all over stir it (`lively`); where it only trembles, and cooler still, it rises by its own
    warmth past pieces that lie close (`gentle`); in between the logarithm goes evenly.
    """
    lively, gentle = constant("lively_drop_K"), constant("gentle_drop_K")
    share = min(max((100.0 - liquid_degC - lively) / (gentle - lively), 0.0), 1.0)
    top, low = constant("lively_h_W_m2K"), constant("gentle_h_W_m2K")
    return float(top * (low / top) ** share)


def bubbling(altitude_m: float = 0.0, *, start_degC: float | None = None, come_up_s: float = 0.0) -> Medium:
    """Under a lid at a lively simmer: bubbles all over, a little short of a rolling boil."""
    return _below_boiling("lively", altitude_m, start_degC, come_up_s)


def stewing(altitude_m: float = 0.0, *, start_degC: float | None = None, come_up_s: float = 0.0) -> Medium:
    """Under a lid at the lowest heat, as tough meat is braised: the liquid trembles."""
    return _below_boiling("gentle", altitude_m, start_degC, come_up_s)


def nestled(altitude_m: float = 0.0, *, start_degC: float | None = None, come_up_s: float = 0.0) -> Medium:
    """Under a lid, half in a sauce that bubbles and half in the steam above it, as fish is laid on."""
    return _below_boiling("nestled", altitude_m, start_degC, come_up_s)


def _below_boiling(how: str, altitude_m: float, start_degC: float | None, come_up_s: float) -> Medium:
    degC = boiling_degC(ambient_Pa(altitude_m)) - constant(f"{how}_drop_K")
    return _liquid(
        constant(f"{how}_h_W_m2K"), altitude_m, liquid_degC=degC, start_degC=start_degC, come_up_s=come_up_s
    )


def steaming(altitude_m: float = 0.0, *, start_degC: float | None = None, come_up_s: float = 0.0) -> Medium:
    """In steam, over boiling water, under a lid."""
    return _liquid(
        constant("steam_h_W_m2K"), altitude_m, liquid_degC=None, start_degC=start_degC, come_up_s=come_up_s
    )


def on_top(altitude_m: float = 0.0, *, start_degC: float | None = None, come_up_s: float = 0.0) -> Medium:
    """Lying on simmering food under a lid, half out of the liquid."""
    return _liquid(
        constant("covered_pan_h_W_m2K"), altitude_m, liquid_degC=None, start_degC=start_degC,
        come_up_s=come_up_s,
    )  # fmt: skip


def open_pan(
    pan_degC: float,
    *,
    altitude_m: float = 0.0,
    surface: str = "cut",
    contact_frac: float | None = None,
    flat: bool = False,
    start_degC: float | None = None,
    come_up_s: float = 0.0,
) -> Medium:
    """In a hot pan without a lid: metal on a share of the surface, hot damp air on the rest.

    `flat`: a steak, a fillet, a chop, that lies on the metal with a whole face. `start_degC`: of the
    metal, when what goes in cold has cooled it, and `come_up_s` until it is hot again; the air above follows.
    """
    within("pan_degC", pan_degC)
    air = min(constant("open_pan_air_degC"), pan_degC)
    fallen = 0.0 if start_degC is None else pan_degC - within("pan_degC", start_degC)
    if contact_frac is None:
        contact_frac = constant("flat_contact_frac" if flat else "contact_frac")
    return _medium(
        Heat.PAN, air, constant("open_pan_h_W_m2K"), ambient_Pa(altitude_m), start_degC=air - fallen,
        come_up_s=come_up_s, pan_degC=pan_degC, pan_h_W_m2K=constant("pan_h_W_m2K"),
        contact_frac=contact_frac, wetness=constant(SURFACES[surface]), vapour_Pa=constant("oven_vapour_Pa"),
    )  # fmt: skip


def covered_pan(pan_degC: float, *, altitude_m: float = 0.0, contact_frac: float | None = None) -> Medium:
    """In a hot pan under a lid, with a little liquid: metal below, steam around."""
    within("pan_degC", pan_degC)
    pressure = ambient_Pa(altitude_m)
    boiling_point = boiling_degC(pressure)
    return _medium(
        Heat.PAN, min(boiling_point - constant("boil_drop_K"), pan_degC), constant("covered_pan_h_W_m2K"),
        pressure, pan_degC=min(pan_degC, boiling_point + 20.0), pan_h_W_m2K=constant("pan_h_W_m2K"),
        contact_frac=constant("contact_frac") if contact_frac is None else contact_frac,
    )  # fmt: skip


def pressure(
    gauge_kPa: float, altitude_m: float = 0.0, come_up_s: float | None = None, *, start_degC: float = 60.0
) -> Medium:
    """Sealed, at a gauge pressure [kPa]: liquid or steam at its boiling point, reached in `come_up_s`.

    Times in this medium count from locking the lid. Without `come_up_s`, the usual one of `media.csv`.
    """
    inside = ambient_Pa(altitude_m) + 1000.0 * within("gauge_kPa", gauge_kPa)
    return _medium(
        Heat.WET, boiling_degC(inside), constant("boil_h_W_m2K"), inside, start_degC=start_degC,
        come_up_s=constant("pressure_come_up_s") if come_up_s is None else come_up_s,
    )  # fmt: skip


def releasing(gauge_kPa: float, altitude_m: float = 0.0, *, duration_s: float) -> Medium:
    """In a cooker that lets its pressure go: from the boiling point inside down to that of the kitchen.

    A phase of `duration_s` (see `vessels.release_s`) between cooking and opening: what lies in
    the cooker goes on cooking in it.
    """
    inside = ambient_Pa(altitude_m) + 1000.0 * within("gauge_kPa", gauge_kPa)
    outside = ambient_Pa(altitude_m)
    return _medium(
        Heat.WET, boiling_degC(outside), constant("boil_h_W_m2K"), outside, start_degC=boiling_degC(inside),
        come_up_s=duration_s,
    )  # fmt: skip


def resting(air_degC: float = 20.0, *, altitude_m: float = 0.0, covered: bool = True) -> Medium:
    """On a warm board, loosely covered or not: still air; the heat inside evens out."""
    within("air_degC", air_degC)
    return _medium(
        Heat.AIR, air_degC, constant("carry_air_h_W_m2K"), ambient_Pa(altitude_m),
        emissivity=constant("oven_emissivity") * (0.5 if covered else 1.0), exposure=0.8 if covered else 1.0,
        wetness=0.0 if covered else constant("wetness_meat"), vapour_Pa=1200.0,
    )  # fmt: skip
