"""The tables that belong to physics, and the constants of the media among them.

Physics needs its constants before any store is opened (a medium is made without one),
so it reads its own few small files directly; the built knowledge file holds the same rows.
"""

from __future__ import annotations

from functools import cache

from knowledge.tables import rows

__all__ = ["constant", "constants", "rows"]


@cache
def constants() -> dict[str, float]:
    """Constants of the media (`media.csv`), by id, in the units of the table."""
    return {row["id"]: float(row["value"]) for row in rows("media")}


def constant(name: str) -> float:
    """One constant of the media. Raises KeyError for a name that is not in `media.csv`."""
    return constants()[name]
