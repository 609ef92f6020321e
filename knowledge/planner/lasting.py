"""How long a food is left in the heat however soon it is done, and how long it gets no worse: two tables.

`least_times.csv`: tins take up the taste of a sauce, red lentils break up, sausages colour on a tray.
`tolerant.csv`: what melts, renders or only keeps warm. Common practice, no source.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner.methods import NEAREST

COLUMNS = {"wet": "wet_min", "sealed": "sealed_min", "pan": "pan_min", "dry": "dry_min"}
LEAST_DEGC, DRY_DEGC = 200.0, 100.0  # the oven of the table; the surface that its heat must dry first


def least_s(food: Food, kind: str, *, heat: str, oven_degC: float | None, store: Store) -> float:
    """How long it cooks at least [s]; in another oven than the table's in inverse to what dries its surface.

    Args:
        kind: the class by which it is done.
        heat: of `COLUMNS`.
    """
    rows = store.table("least_times")
    found = {by: m for by, _, m in _rows(rows, food, kind, heat) if m}
    minutes = next((found[by] for by in NEAREST if by in found), 0.0)
    pace = (LEAST_DEGC - DRY_DEGC) / ((oven_degC or LEAST_DEGC) - DRY_DEGC) if heat == "dry" else 1.0
    return minutes * pace * 60.0


def good_s(food: Food, kind: str, *, cut_id: str, heat: str, store: Store) -> float:
    """How long past done it still gets no worse [s]."""
    rows = _rows(store.table("tolerant"), food, kind, heat)
    found = {by: m for by, cut, m in rows if cut in ("", cut_id)}
    return next((found[by] for by in NEAREST if by in found), 0.0) * 60.0


def _rows(
    rows: Sequence[Mapping[str, str]], food: Food, kind: str, heat: str
) -> list[tuple[str, str, float]]:
    """Of each row that speaks for the food: by what it does, for which cut, the minutes."""
    mine = {"food": food.id, "group": food.group, "class": kind}
    column = COLUMNS[heat]
    return [
        (row["by"], row.get("cut", ""), float(row.get(column) or 0.0))
        for row in rows
        if mine[row["by"]] == row["value"] and row["of_class"] in ("", kind)
    ]
