"""Published safe minimums, kill by time and temperature, and the rules that are not negotiable.

The tables hold what the authorities print; nothing in the program lowers them. A figure is
looked up by what the food is ("poultry", "ground_meat" ...) and by authority; the default is
the United States' (USDA FSIS). Local rules and the appliance's manual come first: say so.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import NDArray

from knowledge.physics import tables

Array = NDArray[np.float64]

DEFAULT_AUTHORITY = "USDA FSIS"

HOLD_HOT_DEGC = 60.0
"""Cooked food waits at this temperature or above. Source: US Food Code 3-501.16 prints 57 °C (135 °F);
FSIS tells consumers 60 °C (140 °F)."""
CHILL_FIRST = (21.0, 7200.0)
CHILL_THEN = (5.0, 14400.0)
"""Cooling: to 21 °C within 2 h, to 5 °C within 4 h more. Source: US Food Code 3-501.14; FSANZ 3.2.2."""
HOME_COOLING_S = 7200.0
"""At home: shallow, and in the fridge within two hours. Source: USDA FSIS."""
REHEAT_DEGC = 73.9
RAW_BEAN_BOIL_S = 1800.0
"""Raw kidney beans: 30 minutes at a full boil after soaking (FDA, Bad Bug Book); never slow-cooked raw."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Minimum:
    """What an authority asks of one kind of food."""

    id: str
    authority: str
    what: str
    core_degC: float
    core_degF: float
    hold_s: float
    hold: str  # "rest", "hold" or "boil": what the time is for; "" for none
    source: str
    note: str


@cache
def minimums() -> tuple[Minimum, ...]:
    """Every published minimum, the default authority first within an id."""
    return tuple(
        Minimum(
            id=row["id"], authority=row["authority"], what=row["what"], core_degC=float(row["core_degC"]),
            core_degF=float(row["core_degF"]), hold_s=float(row["hold_s"] or 0.0), hold=row["hold"],
            source=row["source"], note=row["note"],
        )
        for row in tables.rows("safe_minimums")
    )  # fmt: skip


@cache
def minimum(safety_id: str, authority: str = DEFAULT_AUTHORITY) -> Minimum | None:
    """The minimum for one kind of food; the default authority's where the asked one has none.

    None for a kind that needs none ("") and for rules that are not a core temperature ("raw_bean").
    """
    if safety_id in ("", "raw_bean"):
        return None
    found = {m.authority: m for m in minimums() if m.id == safety_id}
    return found.get(authority) or found.get(DEFAULT_AUTHORITY)


def lethality_table(safety_id: str, animal: str, name: str = "") -> str:
    """Which table counts the kill in a food: "chicken", "turkey", "meat" or none."""
    if safety_id == "poultry":
        return "turkey" if "turkey" in name else "chicken"
    return "meat" if safety_id in ("ground_meat", "whole_meat", "ham_raw") else ""


# Kill

_INSTANT_S = 1.0
WANTED_LOG = {"chicken": 7.0, "turkey": 7.0, "meat": 6.5}


@dataclass(frozen=True, slots=True)
class Lethality:
    """Time at temperature for a wanted kill: log10 seconds at each printed temperature."""

    log: float
    degC: Array
    log_seconds: Array


@cache
def lethality(table: str, fat_pct: float = 0.0) -> Lethality:
    """The FSIS table of one species (poultry: at its fat content, interpolated between columns).

    Where 0 s is printed ("instantly") the cautious reading is one second.
    Source: FSIS-GD-2021-0014 (Revised Appendix A), tables 2 to 6; for moist surfaces.
    """
    if table == "meat":
        pairs = [
            (float(r["core_degF"]), float(r["seconds_6_5_log"]) or _INSTANT_S)
            for r in tables.rows("lethality_meat")
        ]
    else:
        fat = min(max(fat_pct, 1.0), 12.0)
        low = min(int(fat), 11)
        pairs = []
        for r in tables.rows("lethality_poultry"):
            if r["species"] == table:
                a, b = (float(r[f"seconds_fat_{f}"]) or _INSTANT_S for f in (low, low + 1))
                pairs.append((float(r["core_degF"]), a * (b / a) ** (fat - low)))
    degF, seconds = np.array(sorted(pairs)).T
    return Lethality(WANTED_LOG[table], (degF - 32.0) / 1.8, np.log10(seconds))


def hold_s(table: str, core_degC: float, *, fat_pct: float = 0.0) -> float | None:
    """Time at a core temperature for the wanted kill, interpolated in log time as printed [s].

    None below the coldest printed row: the table gives no credit there.
    Example: chicken, 12 % fat, 60 °C (140 °F) -> 2100 s
    """
    t = lethality(table, fat_pct)
    if core_degC < t.degC[0] - 1e-9:
        return None
    return float(10.0 ** np.interp(core_degC, t.degC, t.log_seconds))


def kill_rate(core_degC: Array, table: str, fat_pct: float = 0.0) -> Array:
    """Log10 reductions a second at a core temperature; none below the coldest printed row."""
    t = lethality(table, fat_pct)
    rate = t.log / 10.0 ** np.interp(core_degC, t.degC, t.log_seconds)
    return np.where(core_degC >= t.degC[0], rate, 0.0)
