"""What a message says of food that must not be eaten, or only with care: `unfit.csv`, `spoilage.csv`.

Leaves of rhubarb, green potatoes, a bulging tin. The reader finds the foods; that they
are not fit lies in the words around them, and a plan must never pass over those. Of what has
gone off the reader also finds which food it is said of.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import lru_cache

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner.model import Caution, LeftOut
from knowledge.tables import items
from knowledge.text.model import Reading, Spoilt
from knowledge.text.spoilt import spoilage

AT_THE_STOVE = (
    "Take the {food} out. {alert} What has cooked with it goes too; was it not in yet, say “no {food}” "
    "and the rest goes on."
)
_WORD = re.compile(r"[a-z']+")


def spoilt_in(reading: Reading, *, store: Store) -> Iterator[LeftOut]:
    """Foods that are said to be off, past their date or cooked too long ago, and why they stay out."""
    for one in reading.spoilt:
        if not one.eaten:
            limit = days_said(store.food(one.food_id).cooked_days or 0.0)
            why = spoilage(one.sign)["why"].format(age=days_said(one.days or 0.0), limit=limit)
            yield LeftOut(food=one.food_id, why=why)


def spoilage_alert(one: Spoilt, food: Food, name: str, *, store: Store) -> Caution:
    """What the cook should know of a food with a sign of spoilage."""
    row = spoilage(one.sign)
    text = row["otherwise"] if one.eaten else row["alert"]
    limit = days_said(food.cooked_days or 0.0)
    return Caution(text=text.format(food=name, limit=limit), source=str(store.source(row["source"])))


def gone_off(reading: Reading, *, store: Store) -> str | None:
    """What to say at the stove of a food that is said to be off; None when it can't be meant.

    Over the heat "the chicken is off" is off the heat, and what is fried may turn, stick or smell.
    """
    for one in reading.spoilt:
        row = spoilage(one.sign)
        is_animal = bool(store.food(one.food_id).animal)
        meant = row["at_the_stove"] == "yes" or (row["at_the_stove"] == "of an animal" and is_animal)
        if meant and not one.eaten:
            return AT_THE_STOVE.format(food=one.name, alert=row["alert"])
    return None


def days_said(days: float) -> str:
    """ "1 day", "3 days"."""
    return f"{days:.0f} day{'' if round(days) == 1 else 's'}"


def unfit_in(text: str, *, store: Store) -> tuple[LeftOut, ...]:
    """Foods (by id) that the message calls by a part or in a state that is not eaten, and why."""
    return tuple(
        LeftOut(food=food_id, why=row["text"])
        for row in _said(text, store)
        for food_id in items(row["foods"])
    )


def alerts_in(text: str, *, store: Store) -> tuple[Caution, ...]:
    """What the cook should know because of what the message says."""
    rows = (row for row in _said(text, store) if not row["foods"])
    return tuple(Caution(text=row["text"], source=str(store.source(row["source"]))) for row in rows)


def _said(text: str, store: Store) -> Iterator[Mapping[str, str]]:
    """The rows of `unfit.csv` whose words are in a message."""
    plain = " ".join(_WORD.findall(text.lower()))
    return (row for pattern, row in _patterns(store) if pattern.search(plain))


@lru_cache(maxsize=4)
def _patterns(store: Store) -> tuple[tuple[re.Pattern[str], Mapping[str, str]], ...]:
    """The rows of `unfit.csv`, each with what hears its words; a hyphen there is a space here."""
    return tuple((_any_of(row["words"].replace("-", " ").split("|")), row) for row in store.table("unfit"))


def _any_of(phrases: list[str]) -> re.Pattern[str]:
    """What hears one of the phrases, in whole words."""
    return re.compile(rf"\b(?:{'|'.join(map(re.escape, phrases))})\b")
