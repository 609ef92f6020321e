"""The tables that belong to physics, read once from `knowledge/data`.

Physics needs its constants before any store is opened (a medium is made without one),
so it reads its own few small files directly; the built knowledge file holds the same rows.
"""

from __future__ import annotations

import csv
from collections.abc import Mapping
from functools import cache
from pathlib import Path

from knowledge.errors import BadData

DATA = Path(__file__).parents[1] / "data"


@cache
def rows(name: str) -> tuple[Mapping[str, str], ...]:
    """The rows of one table as read. Raises BadData when the file is missing."""
    path = DATA / f"{name}.csv"
    try:
        with path.open(encoding="utf-8", newline="") as file:
            return tuple(csv.DictReader(file))
    except FileNotFoundError as error:
        raise BadData((f"{path.name}: missing from the installation",)) from error


@cache
def constants() -> dict[str, float]:
    """Constants of the media (`media.csv`), by id, in the units of the table."""
    return {row["id"]: float(row["value"]) for row in rows("media")}


def constant(name: str) -> float:
    """One constant of the media. Raises KeyError for a name that is not in `media.csv`."""
    return constants()[name]
