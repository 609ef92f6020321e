"""The columns of the food tables: what each may hold, and where its source stands.

`foods.csv` (foods that cook) and `seasonings.csv` (foods that season) share these
columns. A figure is a number with a range that kitchens know and a source beside it,
usually in `<column>_src`; the figures of a composition share `composition_src`, those
of the piece as bought `whole_src`. `composition_of` names the row of the source that
the composition is of: the food's own, or for an estimate that of the food nearest to it.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from knowledge.foods.model import Behaviour, Role, When

COMPOSITION = ("water_g", "protein_g", "fat_g", "carbohydrate_g", "fibre_g", "ash_g")

HEADER = (
    "id", "name", "group", "role", "part", "animal",
    *COMPOSITION, "composition_of", "composition_src",
    "density_kg_m3", "density_kg_m3_src", "bulk_density_kg_m3", "bulk_density_kg_m3_src",
    "whole_shape", "whole_mm", "whole_ratio_1", "whole_ratio_2", "whole_src",
    "cuts", "doneness", "dose_factor", "dose_factor_src",
    "target_degC", "target_degC_src", "over_degC", "over_degC_src", "safety", "start_state",
    "water_uptake_g_per_g", "water_uptake_g_per_g_src", "loss_frac", "loss_frac_src", "pressure",
    "edible_frac", "edible_frac_src", "serving_g", "serving_g_src",
    "fridge_days", "fridge_days_src", "freezer_months", "freezer_months_src",
    "cooked_days", "cooked_days_src",
    "allergens", "when", "does", "salt_g", "salt_g_src", "smoke_degC", "smoke_degC_src",
    "season", "season_src", "notes",
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Figure:
    """The range that kitchens know for a number, its unit, and the column of its source."""

    low: float
    high: float
    unit: str
    source: str


def _own(column: str, low: float, high: float, unit: str = "") -> tuple[str, Figure]:
    return column, Figure(low, high, unit, f"{column}_src")


FIGURES: dict[str, Figure] = {
    **{column: Figure(0, 100, "g/100 g", "composition_src") for column in COMPOSITION},
    "whole_mm": Figure(0.3, 400, "mm", "whole_src"),
    "whole_ratio_1": Figure(1, 200, "", "whole_src"),
    "whole_ratio_2": Figure(1, 400, "", "whole_src"),
    **dict(
        (
            _own("density_kg_m3", 100, 2000, "kg/m3"),
            _own("bulk_density_kg_m3", 20, 2000, "kg/m3"),
            _own("dose_factor", 0.1, 10),
            _own("target_degC", 40, 100, "degC"),
            _own("over_degC", 45, 110, "degC"),
            _own("water_uptake_g_per_g", 0, 8, "g/g"),
            _own("loss_frac", 0, 0.95),
            _own("edible_frac", 0.05, 1),
            _own("serving_g", 0.05, 1000, "g"),
            _own("fridge_days", 0, 730, "days"),
            _own("freezer_months", 0, 36, "months"),
            _own("cooked_days", 0, 60, "days"),
            _own("salt_g", 0, 100, "g/100 g"),
            _own("smoke_degC", 100, 300, "degC"),
        )
    ),
}

WORDS: dict[str, frozenset[str]] = {
    "role": frozenset(Role),
    "pressure": frozenset(Behaviour),
    "when": frozenset(When),
    "whole_shape": frozenset(
        ["slab", "cylinder", "sphere", "brick", "rod", "disk", "floret", "leaf", "grain", "bird", "joint"]
    ),
    "start_state": frozenset({"fridge", "room", "dry", "frozen", "canned"}),
    "allergens": frozenset(
        {
            "milk", "eggs", "fish", "crustaceans", "molluscs", "tree nuts", "peanuts", "wheat",
            "gluten", "soybeans", "sesame", "celery", "mustard", "sulphites", "lupin",
        }
    ),
}  # fmt: skip
"""Columns that hold words from a closed list."""

ALL_YEAR = "all year"
SEASON = re.compile(rf"{ALL_YEAR}|(1[0-2]|[1-9])-(1[0-2]|[1-9])")
"""Months of harvest, first and last: "6-9" is June to September, "11-3" runs over the new year."""

REQUIRED = ("id", "name", "group", "role")
REQUIRED_TO_COOK = ("part", "doneness", "cuts", "whole_shape", "whole_mm", "start_state", "serving_g")
"""What a food with the role "cook" must say besides, so that it can be planned."""
