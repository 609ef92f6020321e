"""The ways of cooking in each vessel and how well each kind of food takes to them.

Both come from tables: `methods.csv` (one row a way of cooking) and `method_fit.csv`
(0 to 10; blank when it cannot be done). Ten means "this is what a cook would do with
it", five "edible, not why one buys it". A row speaks for a food, for a group of foods
or for a doneness class, from a thickness on: a joint is not for the pan that suits a
steak of the same meat. The nearest row counts.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.names import key
from knowledge.planner.gathering.dinner import FLAT, Dish

WHOLE_SAID = frozenset({"whole", "bone-in", "fillet", "boneless", "baby", "peeled"})
FINISHES = {"boil": "after", "broil": "broiled"}  # columns of `method_fit.csv`
NEAREST = ("form", "food", "group", "class")  # whose row counts before whose


@dataclass(frozen=True, slots=True, kw_only=True)
class Method:
    """One way of cooking in one vessel."""

    id: str
    name: str
    vessel: str
    kind: str  # "dry" oven, "pan" open pan, "wet" under a lid with liquid, "sealed" pressure
    heat: str  # "oven" or "hob"
    settings: tuple[float, ...]  # oven or pan °C, gauge kPa; empty when there is nothing to set
    thick_settings: tuple[float, ...]  # for joints and whole birds, where they differ
    quick_settings: tuple[float, ...]  # when time is short, where they differ
    usual: float | None
    preheat_s: float
    browns: bool
    lid: bool
    adds: int  # add times that the cook can manage
    evaporation_ml_h: float
    liquid: str  # "none", "film", "half", "least", "steam" (a little water that nothing lies in)
    wet: float  # 0 to 1, how much sauce there is
    crisp: float  # 0 to 1, how crisp things get
    hands: float  # share of the cooking time with the hands at the stove
    finish: str  # what quick foods end in while the rest stays: "boil" after pressure, "broil", "" for none
    fits_as: str  # the method whose column of `method_fit.csv` counts for it too; its own id for its own

    @property
    def seals_twice(self) -> bool:
        """Whether the cooker is opened once, filled up and locked again."""
        return self.kind == "sealed" and self.adds > 1

    @property
    def steams(self) -> bool:
        """Whether all of it lies in steam."""
        return self.liquid == "steam"


@dataclass(frozen=True, slots=True, kw_only=True)
class Fit:
    """How a food takes to each method (0-10).

    `way` is where it lies in a wet one: "in" the liquid, on "top", "browned" in the fat and
    taken out, "fried" in the fat and left there, "sweated" likewise unless the pot simmers for hours;
    "soaked" in boiling water before a dry pan; "toasted" in the fat before any liquid.
    """

    by_method: Mapping[str, float]
    by_finish: Mapping[str, float]  # stirred in after pressure is released, laid on under the broiler
    way: str
    from_mm: float  # it counts for pieces of this thickness and more
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
            settings=_numbers(row["settings"]),
            thick_settings=_numbers(row["thick_settings"]),
            quick_settings=_numbers(row["quick_settings"]),
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
            finish=row["finish"],
            fits_as=row["fits_as"] or row["id"],
        )
        for row in store.table("methods")
    )


def _numbers(cell: str) -> tuple[float, ...]:
    return tuple(float(s) for s in cell.split(";") if s)


def fit_of(dish: Dish, store: Store) -> Fit | None:
    """How a dish takes to the methods: by its food, else its group, else its class; None when unknown."""
    return _nearest(dish.food, store, kind=dish.kind, form=form_of(dish, store), thick_mm=whole_mm(dish))


def fit_of_food(food: Food, store: Store) -> Fit | None:
    """How a food takes to the methods as it is usually cut; None when unknown."""
    whole = not food.cuts or food.cuts[0] == "whole"
    return _nearest(food, store, kind=food.doneness, thick_mm=(food.whole_mm or 0.0) if whole else 0.0)


def _nearest(food: Food, store: Store, *, kind: str, thick_mm: float, form: str = "") -> Fit | None:
    mine = {"form": form, "food": food.id, "group": food.group, "class": kind}
    for by in NEAREST:
        rows = _fits(store).get((by, mine[by], kind), ())
        found = next((fit for fit in rows if fit.from_mm <= thick_mm), None)
        if found is not None:
            return found
    return None


def form_of(dish: Dish, store: Store) -> str:
    """Into what it is shaped, as the cook calls it ("burgers", "spatchcocked"): a cut id, or ""."""
    if dish.cut_said in _flat(store):
        return FLAT
    if dish.kind != "ground_meat":
        return ""
    said = {dish.cut_said, *key(dish.name).split()}
    return next((cut for word, cut in _forms(store).items() if word in said), "")


@lru_cache(maxsize=4)
def _flat(store: Store) -> frozenset[str]:
    return frozenset(row["said"] for row in store.table("cuts_said") if row["cuts"] == FLAT)


@lru_cache(maxsize=4)
def _forms(store: Store) -> Mapping[str, str]:
    return {row["word"]: row["cut"] for row in store.table("words_forms")}


def whole_mm(dish: Dish) -> float:
    """How thick a piece of it is as bought, when that is how it is cooked; 0 for what is cut up."""
    usual = dish.food.cuts[0] if dish.food.cuts else "whole"
    whole = usual == "whole" if not dish.cut_said else dish.cut_said in WHOLE_SAID
    return (dish.food.whole_mm or 0.0) if whole else 0.0


@lru_cache(maxsize=4)
def _fits(store: Store) -> Mapping[tuple[str, str, str], tuple[Fit, ...]]:
    """The rows by what they speak for and the class they are limited to, thickest first."""
    columns = {method.id: method.fits_as for method in methods(store)}
    found: dict[tuple[str, str, str], list[Fit]] = {}
    for row in store.table("method_fit"):
        fit = Fit(
            by_method={name: float(row[column]) for name, column in columns.items() if row[column]},
            by_finish={name: float(row[column]) for name, column in FINISHES.items() if row[column]},
            way=row["way"],
            from_mm=float(row["from_mm"] or 0.0),
            wet_cut=row["wet_cut"],
        )
        key = (row["by"], row["value"], row["of_class"] or row["value"])
        found.setdefault(key, []).append(fit)
    return {key: tuple(sorted(rows, key=lambda f: -f.from_mm)) for key, rows in found.items()}
