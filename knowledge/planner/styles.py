"""Styles of dishes, from `styles.csv`: what a soup, a curry or a stir-fry asks of method, cut and liquid.

A style is not a recipe. It moves the choice towards the methods that cooks use for it, says
between which sizes its pieces lie so that they can be eaten with a spoon or seared in a
minute, and how much liquid a plate of it has.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from knowledge.foods.store import Store
from knowledge.wished import ruled_out

DRY_ML_HEAD = 80.0  # what is left on a plate that is to be no soup or stew; common practice, no source
SPOONED_ML = 250.0  # for one eater, from here it is a soup
THIN_MM = 14.0
Sizes = tuple[float, float]  # from, to [mm]


@dataclass(frozen=True, slots=True, kw_only=True)
class Style:
    """One row of the table; None where the style does not mind."""

    id: str
    says: str  # "a soup"
    points: Mapping[str, float]  # by method id
    least_ml_head: float = 0.0
    most_ml_head: float | None = None
    meat_mm: Sizes | None = None
    vegetable_mm: Sizes | None = None
    meat_cut: str = ""  # of meat that has no cut of its own in those sizes

    @property
    def is_spooned(self) -> bool:
        """Whether the liquid is the dish."""
        return self.least_ml_head >= SPOONED_ML

    @property
    def is_thin(self) -> bool:
        """Whether its meat is done in the minutes that thin slices take."""
        return self.meat_mm is not None and self.meat_mm[1] <= THIN_MM


def style_of(wishes: Sequence[str], store: Store) -> Style | None:
    """The style among the wishes, the first one named; None when no dish was named."""
    known = _styles(store)
    return next((known[wish] for wish in wishes if wish in known), None)


def style_named(style_id: str, store: Store) -> Style | None:
    """One style by its id; None for ""."""
    return _styles(store).get(style_id)


def styles_ruled_out(wishes: Sequence[str], store: Store) -> tuple[Style, ...]:
    """The styles that are not wanted: "not a stew"."""
    return tuple(style for wish in ruled_out(tuple(wishes)) if (style := _styles(store).get(wish)))


@lru_cache(maxsize=4)
def _styles(store: Store) -> Mapping[str, Style]:
    methods = [row["id"] for row in store.table("methods")]
    return {
        row["style"]: Style(
            id=row["style"],
            says=row["says"],
            points={method: float(row[method] or 0.0) for method in methods if method in row},
            least_ml_head=float(row["least_ml_head"] or 0.0),
            most_ml_head=float(row["most_ml_head"]) if row["most_ml_head"] else None,
            meat_cut=row["meat_cut"],
            meat_mm=_sizes(row["meat_from_mm"], row["meat_to_mm"]),
            vegetable_mm=_sizes(row["veg_from_mm"], row["veg_to_mm"]),
        )
        for row in store.table("styles")
    }


def _sizes(low: str, high: str) -> Sizes | None:
    return (float(low), float(high)) if low and high else None
