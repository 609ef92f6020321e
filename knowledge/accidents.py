"""Accidents at the stove, told from cooking by their words; what to do comes before anything else."""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge.text.normalise import flatten
from knowledge.text.vocabulary import table


def first_aid(text: str) -> str | None:
    """What to do first about the accident that a message tells of; None when it tells of none.

    From `accidents.csv`, each row with the service whose advice it follows.
    """
    plain = flatten(text).text
    return next((says for pattern, says in _accidents() if pattern.search(plain)), None)


@lru_cache(maxsize=1)
def _accidents() -> tuple[tuple[re.Pattern[str], str], ...]:
    return tuple((re.compile(row["pattern"]), row["says"]) for row in table("accidents.csv"))
