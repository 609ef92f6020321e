"""Children under five at the table: what they choke on is cut, what burns stays out of the common pan.

Round, firm food is cut lengthwise for them (UK National Health Service, advice on choking);
which foods are concerned is a table, `young.csv`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.model import Caution, Request

UNDER_YEARS = 5.0  # NHS: no whole nuts for children under five, grapes and the like cut small
CHOKING, HOT = "choking", "hot"


def is_young(request: Request) -> bool:
    """Whether a child under five eats with them."""
    return request.youngest is not None and request.youngest < UNDER_YEARS


def is_hot(food: Food, store: Store) -> bool:
    """Whether it burns a small mouth."""
    return _risk(food, store) == HOT


def for_the_young(named: Iterable[tuple[Food, str]], request: Request, store: Store) -> Iterator[Caution]:
    """What to do with these foods, by the names they go by, before a small child eats them."""
    if not is_young(request):
        return
    foods = list(named)
    if round_ones := [name for food, name in foods if _risk(food, store) == CHOKING]:
        text = f"For a child under five: cut the {words.listed(round_ones)} lengthwise, in quarters."
        yield Caution(text=text, source="UK National Health Service, choking (A-NHS)")
    if hot := [name for food, name in foods if is_hot(food, store)]:
        hot_ones = words.listed([words.in_spoons(name) for name in hot])
        text = f"{hot_ones}: at the table for those who want it, not in the common pan."
        yield Caution(text=text[:1].upper() + text[1:], source="common practice")


def _risk(food: Food, store: Store) -> str:
    mine = {"food": food.id, "group": food.group}
    rows = store.table("young")
    return next((row["risk"] for row in rows if mine[row["by"]] == row["value"]), "")
