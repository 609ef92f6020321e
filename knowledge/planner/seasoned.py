"""Where each seasoning goes in, so that none that the cook named is forgotten.

The table gives each seasoning its moment; the method decides what that moment is: there
is no fat to wake spices in when nothing is softened, and a tray has no liquid to pour into.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from knowledge.foods.model import When
from knowledge.planner.dinner import Seasoning
from knowledge.planner.draft import SOFTENED, Draft
from knowledge.units import volume

SAUCES = frozenset({"liquid", "sauce", "dairy", "fat", "thickener"})
SCATTERED = frozenset({"cheese"})  # melts at the table
SALTY_G = 2.0
SAID_ML = 40.0  # less than that of a liquid is not measured


@dataclass(frozen=True, slots=True, kw_only=True)
class Seasoned:
    """Names of the seasonings by the moment they go in."""

    fat: list[str] = field(default_factory=list)  # what the cooking begins in
    rub: list[str] = field(default_factory=list)  # on the raw food
    warmed: list[str] = field(default_factory=list)  # in the fat for the last minute of softening
    pour: list[str] = field(default_factory=list)  # with the liquid
    late: list[str] = field(default_factory=list)  # sauces and cream, for the last minutes of heat
    scatter: list[str] = field(default_factory=list)  # off the heat
    table: list[str] = field(default_factory=list)


def seasoned(draft: Draft, units: str) -> Seasoned:
    """Every seasoning of the dinner at exactly one moment of this draft."""
    at = Seasoned()
    softens = any(p.way.lead == SOFTENED for p in draft.placed)
    for s in draft.dinner.seasonings:
        if draft.liquid is None or s.name != draft.liquid.what:
            getattr(at, _moment(s, draft.method.kind, softens=softens)).append(_said(s, units))
    return at


def _moment(s: Seasoning, kind: str, *, softens: bool) -> str:
    match s.food.when or When.END:
        case When.START:
            return "fat" if s.food.part == "fat" else "rub"
        case When.AROMATICS:
            if softens:
                return "warmed"
            return "rub" if kind in ("dry", "pan") else "pour"
        case When.LIQUID:
            if kind in ("wet", "sealed"):
                return "pour"
            if s.food.part == "liquid" and kind == "dry":
                return "pour"
            return "late" if s.food.part in (*SAUCES, "salty", "sweet", "acid") else "rub"
        case When.END:
            is_sauce = s.food.part in SAUCES and s.food.group not in SCATTERED
            if is_sauce:
                return "table" if kind == "dry" else "late"
            return "scatter"
        case _:
            return "table"


def _said(s: Seasoning, units: str) -> str:
    fluid = s.food.part == "liquid" or (s.food.group == "dairy" and s.food.part != "fat")
    if fluid and (s.grams or 0.0) >= SAID_ML:
        return f"{volume(s.grams or 0.0, units)} {s.name}"
    return s.name


def salty(names: Sequence[tuple[str, float | None]]) -> list[str]:
    """Those that bring salt enough for the dish: `SALTY_G` in 100 g."""
    return [name for name, salt_g in names if (salt_g or 0.0) >= SALTY_G]
