"""The columns of the food tables: what each may hold, and where its source stands.

`foods.csv` (foods that cook) and `seasonings.csv` (foods that season) share these
columns. A figure is a number with a range that kitchens know and a source beside it,
usually in `<column>_src`; the figures of a composition share `composition_src`, those
of the piece as bought `whole_src`. `composition_of` names the row of the source that
the composition is of: the food's own, or for an estimate that of the food nearest to it.
"""

from __future__ import annotations

from knowledge.foods.kinds import (
    SOURCE,
    TEXT,
    Form,
    Id,
    Kind,
    Number,
    Schema,
    Told,
    Word,
    listed,
    maybe,
    number,
    one_of,
)
from knowledge.foods.model import Behaviour, Role, When
from knowledge.tables import Row

COMPOSITION = ("water_g", "protein_g", "fat_g", "carbohydrate_g", "fibre_g", "ash_g")

SHAPE = one_of(
    "slab", "cylinder", "sphere", "brick", "rod", "disk", "floret", "leaf", "grain", "bird", "joint"
)
ALLERGEN = one_of(
    "milk", "eggs", "fish", "crustaceans", "molluscs", "tree nuts", "peanuts", "wheat",
    "gluten", "soybeans", "sesame", "celery", "mustard", "sulphites", "lupin",
)  # fmt: skip
ANIMAL = one_of(
    "alcohol", "beef", "dairy", "egg", "fish", "frog", "game", "gelatin", "goat", "honey", "lamb", "pork",
    "poultry", "shellfish",
)  # fmt: skip
GROUP = one_of(
    "acid", "amphibian", "beef", "brassica", "bread", "cabbage", "cheese", "cheese that cooks", "chili",
    "citrus", "condiment", "crumb", "crustacean", "cured meat", "dairy", "dairy-free", "dumpling", "egg",
    "fat", "frozen potato", "frozen vegetable", "fruit", "fruit vegetable", "game", "goat", "grain",
    "grain vegetable", "herb", "lamb", "leavening", "leftover", "liquid", "mollusc", "mushroom", "noodle",
    "nut", "offal", "oil", "oily fish", "onion", "pasta", "paste", "plant protein", "pod", "pork", "poultry",
    "prepared fish", "prepared meat", "prepared pulse", "prepared shellfish", "prepared starch", "pulse",
    "rice", "root", "salad", "salt", "sauce", "sausage", "seed", "shelled pea", "smoked fish", "spice",
    "squash", "stem", "stock", "summer squash", "sweet", "tender leaf", "thickener", "tinned fish",
    "tinned pulse", "tinned vegetable", "tough leaf", "tuber", "veal", "vinegar", "white fish", "wine",
)  # fmt: skip
PART = one_of(
    "acid", "aromatic", "dairy", "fat", "fruit", "garnish", "herb", "liquid", "nut", "protein", "salty",
    "sauce", "spice", "starch", "sweet", "thickener", "vegetable",
)  # fmt: skip

ALL_YEAR = "all year"
SEASON = Form(rf"{ALL_YEAR}|(1[0-2]|[1-9])-(1[0-2]|[1-9])", f"months like '9-3' or {ALL_YEAR!r}")
"""Months of harvest, first and last: "6-9" is June to September, "11-3" runs over the new year."""


def _sourced(column: str, low: float, high: float, unit: str = "") -> dict[str, Kind]:
    source = f"{column}_src"
    return {column: maybe(number(low, high, unit, source=source)), source: maybe(SOURCE)}


def _whole(low: float, high: float, unit: str = "") -> Number:
    return maybe(number(low, high, unit, source="whole_src"))


COLUMNS: dict[str, Kind] = {
    "id": Form("[a-z0-9]+(-[a-z0-9]+)*", "a slug such as 'bell-pepper'"),
    "name": TEXT,
    "group": GROUP,
    "role": Word(frozenset(Role)),
    "part": maybe(PART),
    "animal": maybe(listed(ANIMAL, "+")),
    **dict.fromkeys(COMPOSITION, maybe(number(0, 100, "g/100 g", source="composition_src"))),
    "composition_of": maybe(TEXT),
    "composition_src": maybe(SOURCE),
    **_sourced("density_kg_m3", 100, 2000, "kg/m3"),
    **_sourced("bulk_density_kg_m3", 20, 2000, "kg/m3"),
    "whole_shape": maybe(SHAPE),
    "whole_mm": _whole(0.3, 400, "mm"),
    "whole_ratio_1": _whole(1, 200),
    "whole_ratio_2": _whole(1, 400),
    "whole_src": maybe(SOURCE),
    "cuts": maybe(listed(Id("cut", "cuts.id"))),
    "doneness": maybe(Id("doneness class", "doneness.id")),
    **_sourced("dose_factor", 0.1, 10),
    **_sourced("target_degC", 40, 100, "degC"),
    **_sourced("over_degC", 45, 110, "degC"),
    "safety": maybe(Id("safe minimum", "safe_minimums.id")),
    "start_state": maybe(one_of("fridge", "room", "dry", "frozen", "canned")),
    **_sourced("water_uptake_g_per_g", 0, 8, "g/g"),
    **_sourced("loss_frac", 0, 0.95),
    "pressure": maybe(Word(frozenset(Behaviour))),
    **_sourced("edible_frac", 0.05, 1),
    **_sourced("serving_g", 0.05, 1000, "g"),
    **_sourced("fridge_days", 0, 730, "days"),
    **_sourced("freezer_months", 0, 36, "months"),
    **_sourced("cooked_days", 0, 60, "days"),
    "allergens": maybe(listed(ALLERGEN)),
    "when": maybe(Word(frozenset(When))),
    "does": maybe(TEXT),
    **_sourced("salt_g", 0, 100, "g/100 g"),
    **_sourced("smoke_degC", 100, 300, "degC"),
    "season": maybe(SEASON),
    "season_src": maybe(SOURCE),
    "notes": maybe(TEXT),
}
FIGURES = {column: kind for column, kind in COLUMNS.items() if isinstance(kind, Number)}

TO_COOK = ("part", "doneness", "cuts", "whole_shape", "whole_mm", "start_state", "serving_g")
"""What a food with the role "cook" must say besides, so that it can be planned."""


def _cooks(row: Row) -> Told:
    if row["role"] == Role.COOK:
        yield from ((column, "is empty") for column in TO_COOK if not row[column])


def _season_has_a_source(row: Row) -> Told:
    if row["season"] and not row["season_src"]:
        yield "season_src", "is empty, season needs a source"


def _composition(row: Row) -> Told:
    known = [c for c in COMPOSITION if row[c]]
    missing = [c for c in COMPOSITION if not row[c]]
    if known and missing:
        yield missing[0], f"is empty while {known[0]} is known; a composition is whole or absent"
    elif known:
        try:
            total = sum(float(row[c]) for c in known if c != "fibre_g")  # fibre is part of the carbohydrate
        except ValueError:
            return  # told as no number
        if not 93 <= total <= 107:
            yield "composition", f"adds up to {total:.1f} g, not 93-107 g/100 g"


FOODS = Schema(COLUMNS, (("id",), ("name",)), (_cooks, _season_has_a_source, _composition))
