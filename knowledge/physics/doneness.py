"""When a piece is done: a core temperature, or a dose of heat.

1. Tender meat, fish, poultry, what is only warmed: T_core + kappa (T_mean - T_core) = target.
2. What softens, takes up water or turns tender: the dose

       F = integral of 10**((Td - 100)/z) s(Td) dt        Td = T_core + theta (T_mean - T_core)

   in minutes at 100 °C, with one z below 100 °C and another above, and a smooth cut-off s
   below which nothing softens.
3. Whatever the taste, the published minimum of `safety` comes on top.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

import numpy as np
from numpy.typing import NDArray

from knowledge.foods.model import DoneKind, Doneness, Food
from knowledge.physics import browning, safety, tables
from knowledge.physics.limits import within
from knowledge.physics.model import Goal, Texture

Array = NDArray[np.float64]

DRY_HEAT = frozenset({"roast", "broil"})
BROWNING = frozenset({"roast", "saute"})
_CUTOFF_WIDTH_K = 2.5


@dataclass(frozen=True, slots=True)
class Extra:
    """What a class brings beyond its record: factors on the dose by state and method, browning."""

    frozen: float  # blanched before
    dried: float  # not soaked
    pan: float  # wilted in a pan rather than boiled soft
    brown_degC: float  # core by the time that the outside is browned in dry heat; 0 for no matter


@cache
def extra(class_id: str) -> Extra:
    """The columns of `doneness.csv` that only this module uses."""
    for row in tables.rows("doneness"):
        if row["id"] == class_id:
            return Extra(
                float(row["frozen_factor"] or 1.0), float(row["dry_factor"] or 1.0),
                float(row["pan_factor"] or 1.0), float(row["brown_degC"] or 0.0),
            )  # fmt: skip
    return Extra(1.0, 1.0, 1.0, 0.0)


def goal(
    food: Food, doneness: Doneness, *, texture: Texture | str = Texture.TENDER, method: str = "",
    state: str | None = None, to_degC: float | None = None, pace: float = 1.0,
) -> Goal:  # fmt: skip
    """The end point of a food.

    Args:
        doneness: its class; `Food` carries what is its own (dose factor, target)
        texture: how soft a softening food is wanted
        method: "roast" and "broil" count browning as part of tenderness
        state: "frozen" (blanched), "dried" (not soaked), "canned", "cooked" ...
        to_degC: another core temperature than the class's, 20-120 °C
        pace: this cook's own multiplier on the dose
    Raises: OutOfRange.
    """
    if to_degC is not None:
        within("core_degC", to_degC)
    minimum = safety.minimum(food.safety) if food.safety else None
    target = to_degC if to_degC is not None else (food.target_degC or doneness.target_degC)
    over = food.over_degC or doneness.over_degC
    dose: float | None = None
    kind = doneness.kind
    if to_degC is not None and kind in (DoneKind.COLLAGEN, DoneKind.SOFTEN):
        kind, over = DoneKind.CORE, max(over or 0.0, to_degC + 12.0)
    if kind in (DoneKind.SOFTEN, DoneKind.HYDRATE, DoneKind.COLLAGEN, DoneKind.WILT):
        dose = (
            (doneness.dose_min or 0.0) * food.dose_factor * pace * _factor(doneness, texture, method, state)
        )
        target = None
    elif target is not None and method in BROWNING:
        target = max(target, extra(doneness.id).brown_degC, _crisp_degC(food.id))
    if target is not None and over is not None:
        over = max(over, target + 6.0)
    return Goal(
        kind=kind.value,
        target_degC=target,
        kappa=_kappa(doneness, method, asked=to_degC is not None),
        dose_min=dose,
        z_below_K=doneness.z_below_K or 27.0,
        z_above_K=doneness.z_above_K or 42.0,
        cutoff_degC=doneness.cutoff_degC or 60.0,
        theta=doneness.theta,
        over_degC=over if dose is None else None,
        over_dose_min=None if dose is None else dose * _over(doneness, texture),
        safe_degC=minimum.core_degC if minimum else None,
        safe_hold_s=minimum.hold_s if minimum else 0.0,
        lethality=safety.lethality_table(food.safety, food.animal, food.name),
        fat_pct=food.composition.fat_g if food.composition else 0.0,
        browned_min=browning.wanted_min(food.id, doneness.id) if method in DRY_HEAT | BROWNING else None,
        browns=method in DRY_HEAT | BROWNING,
    )


@cache
def _crisp_degC(food_id: str) -> float:
    """Core by the time that the skin of a small piece is crisp and its sinews soft; 0 for no matter."""
    return next((float(r["core_degC"]) for r in tables.rows("crisp_core") if r["food_id"] == food_id), 0.0)


def _kappa(doneness: Doneness, method: str, *, asked: bool) -> float:
    """Share of mean less core by which the core still rises, counted in.

    Most of it after a broiler; after a hot pan too where a core is asked for, as charts give it after
    standing. Without one the published minimum decides, before any rise.
    """
    fierce = method == "broil" or (method == "saute" and asked)
    if fierce and doneness.kind is DoneKind.CORE:
        return tables.constant("broiler_kappa")
    return doneness.kappa


def _factor(doneness: Doneness, texture: Texture | str, method: str, state: str | None) -> float:
    factor = 1.0
    if texture == Texture.CRISP_TENDER:
        factor *= doneness.crisp_factor or 1.0
    elif texture == Texture.SOFT:
        factor *= doneness.soft_factor or 1.0
    if method in DRY_HEAT:
        factor *= doneness.roast_factor or 1.0
    more = extra(doneness.id)
    if method == "saute":
        factor *= more.pan
    if state == "frozen":
        factor *= more.frozen
    elif state in ("dried", "dry"):
        factor *= more.dried
    return factor


def _over(doneness: Doneness, texture: Texture | str) -> float:
    """Dose at which it is too soft, over the dose at which it is done.

    A crisp-tender vegetable is overdone when it is soft; a soft one keeps its margin.
    """
    over = doneness.over_factor or 3.0
    if texture == Texture.SOFT:
        return max(over / (doneness.soft_factor or 1.0), 1.5)
    return over


def dose_rate(Td: Array, *, z_below_K: Array, z_above_K: Array, cutoff_degC: Array) -> Array:
    """Minutes at 100 °C gained per minute at the dose temperature.

    Equation: 10**((Td - 100)/z) / (1 + exp(-(Td - cutoff)/2.5 K)),  z by the side of 100 °C
    """
    over = Td - 100.0
    power = over / np.where(over > 0.0, z_above_K, z_below_K)
    return 10.0**power / (1.0 + np.exp(np.clip(-(Td - cutoff_degC) / _CUTOFF_WIDTH_K, -50.0, 50.0)))


def dose_temperature(core: Array, mean: Array, theta: Array) -> Array:
    """The temperature that counts: from the core (theta 0) to the mean (1) or beyond."""
    return core + theta * (mean - core)
