"""The ways of cooking in each vessel and how well each kind of food takes to them.

Both come from tables: `methods.csv` (one row a way of cooking) and `method_fit.csv`
(0 to 10 for each doneness class; blank when it cannot be done). Ten means "this is
what a cook would do with it", five "edible, not why one buys it".
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from knowledge.foods.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class Method:
    """One way of cooking in one vessel."""

    id: str
    name: str
    vessel: str
    kind: str  # "dry" oven, "pan" open pan, "wet" under a lid with liquid, "sealed" pressure
    heat: str  # "oven" or "hob"
    settings: tuple[float, ...]  # oven or pan °C, gauge kPa; empty when there is nothing to set
    usual: float | None
    preheat_s: float
    browns: bool
    lid: bool
    adds: int  # add times that the cook can manage
    evaporation_ml_h: float
    liquid: str  # "none", "film", "half", "least"
    wet: float  # 0 to 1, how much sauce there is
    crisp: float  # 0 to 1, how crisp things get
    hands: float  # share of the cooking time with the hands at the stove


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """How a class takes to each method (0-10), and where it lies in a wet one: "in", "top", "browned"."""

    by_method: Mapping[str, float]
    after: float | None  # stirred in after pressure is released
    way: str
    wet_cut: str  # how it goes into everything but an oven, where that is not one of its cuts; "" for none


@lru_cache(maxsize=4)
def methods(store: Store) -> tuple[Method, ...]:
    """All methods, by id."""
    return tuple(
        Method(
            id=row["id"],
            name=row["name"],
            vessel=row["vessel"],
            kind=row["kind"],
            heat=row["heat"],
            settings=tuple(float(s) for s in row["settings"].split(";") if s),
            usual=float(row["usual_setting"]) if row["usual_setting"] else None,
            preheat_s=float(row["preheat_min"]) * 60.0,
            browns=row["browns"] == "yes",
            lid=row["lid"] == "yes",
            adds=int(row["adds"]),
            evaporation_ml_h=float(row["evaporation_ml_h"]),
            liquid=row["liquid"],
            wet=float(row["wet"]),
            crisp=float(row["crisp"]),
            hands=float(row["hands_share"]),
        )
        for row in store.table("methods")
    )


@lru_cache(maxsize=4)
def fits(store: Store) -> Mapping[str, Fit]:
    """Fit by doneness class."""
    known = {method.id for method in methods(store)}
    return {
        row["class"]: Fit(
            by_method={name: float(row[name]) for name in known if row.get(name)},
            after=float(row["after"]) if row["after"] else None,
            way=row["way"],
            wet_cut=row["wet_cut"],
        )
        for row in store.table("method_fit")
    }
