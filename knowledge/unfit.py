"""What a message says of food that must not be eaten, or only with care: `unfit.csv`.

Leaves of rhubarb, green potatoes, a bulging tin. The reader finds the foods; that they
are not fit lies in the words around them, and a plan must never pass over those.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache

from knowledge.foods.store import Store
from knowledge.planner.model import Caution, LeftOut


def unfit_in(text: str, *, store: Store) -> tuple[LeftOut, ...]:
    """Foods (by id) that the message calls by a part or in a state that is not eaten, and why."""
    return tuple(
        LeftOut(food=food_id, why=row["text"])
        for row in _said(text, store)
        for food_id in row["foods"].split(";")
        if food_id
    )


def alerts_in(text: str, *, store: Store) -> tuple[Caution, ...]:
    """What the cook should know because of what the message says."""
    rows = (row for row in _said(text, store) if not row["foods"])
    return tuple(Caution(text=row["text"], source=str(store.source(row["source"]))) for row in rows)


def _said(text: str, store: Store) -> Iterator[Mapping[str, str]]:
    plain = " ".join(re.findall(r"[a-z']+", text.lower()))
    for pattern, row in _patterns(store):
        if pattern.search(plain):
            yield row


@lru_cache(maxsize=4)
def _patterns(store: Store) -> tuple[tuple[re.Pattern[str], Mapping[str, str]], ...]:
    return tuple(
        (
            re.compile(
                r"\b(" + "|".join(re.escape(w.replace("-", " ")) for w in row["words"].split("|")) + r")\b"
            ),
            row,
        )
        for row in store.table("unfit")
    )
