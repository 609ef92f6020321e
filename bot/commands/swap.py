"""`panwright swap`: would this replacement still finish with the rest? One JSON object a line."""

from __future__ import annotations

import argparse
import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime
from itertools import zip_longest
from typing import Any

from bot.commands.lines import (
    Answered,
    Record,
    UnusableError,
    answer_lines,
    clock_option,
    standard_input,
)
from bot.commands.plan import answer_json, plan_json, request_in
from knowledge.foods.store import Store, open_store
from knowledge.planner import plan, swap
from knowledge.planner.changing.several import one_by_one
from knowledge.planner.kitchens import described
from knowledge.planner.model import Have, NoPlan, SwapAnswer
from knowledge.requests import have_of
from knowledge.text import foods_in
from knowledge.text.model import Item

JOINED = re.compile(r",|\band\b|&|\+")  # what stands between two foods
MOST_G = 1e6  # more than any kitchen holds


def run(argv: Sequence[str]) -> int:
    """Answer every line of standard input. Returns 0, or 2 if a line could not be used."""
    parser = argparse.ArgumentParser(
        prog="panwright swap",
        description="Lines in: JSON objects: id, text (the first message), from, to (names, or lists); "
        "also kitchen, grams.",
    )
    clock_option(parser)
    now: datetime = parser.parse_args(list(argv)).now
    with open_store() as store:

        def swapped(record: Record) -> Answered:
            _check(record)
            kitchen = described(record.get("kitchen"), store=store)
            made = plan(request_in(record, kitchen, now, store), store=store)
            if isinstance(made, NoPlan):
                return _nothing_to_change(made), kitchen.problems
            pairs = [
                (leaving(frm, store), incoming(to, record.get("grams"), store))
                for frm, to in zip_longest(_foods(record, "from", store), _foods(record, "to", store))
            ]
            answer = one_by_one(made, pairs, lambda now, frm, to: swap(now, frm=frm, to=to, store=store))
            return swap_json(answer), kitchen.problems

        return answer_lines("swap", standard_input(), swapped)


def _check(record: Record) -> None:
    for key in ("from", "to"):
        if not all(name is None or isinstance(name, str) for name in _names(record, key)):
            raise UnusableError(f'field "{key}": expected a food name, or a list of them')
    if not any(frm or to for frm, to in _pairs(record)):
        raise UnusableError('fields "from" and "to": expected at least one food name')
    grams = record.get("grams")
    is_number = isinstance(grams, int | float) and not isinstance(grams, bool)
    if grams is not None and not (is_number and 0.0 < grams <= MOST_G):
        raise UnusableError(f'field "grams": expected grams above 0 and up to {MOST_G:.0f}, got {grams!r}')


def _names(record: Record, key: str) -> Sequence[Any]:
    """One name, or several."""
    value = record.get(key)
    return value if isinstance(value, list) else [value]


def _foods(record: Record, key: str, store: Store) -> list[str | None]:
    """One name for each food: "carrots and peas" are two, as a list of them is."""
    return [one for name in _names(record, key) for one in _apart(name, store)]


def _apart(name: str | None, store: Store) -> list[str | None]:
    """The foods joined in a name, or the name as it stands where it is one food or not all are known."""
    parts = [part.strip() for part in JOINED.split(name or "") if part.strip()]
    one = name is None or store.named(name) is not None or len(parts) < 2
    known = all(store.named(part) is not None or _item(part, store) is not None for part in parts)
    return [name] if one or not known else [*parts]


def _pairs(record: Record) -> list[tuple[str | None, str | None]]:
    """What leaves with what comes in; names beyond the shorter list only leave, or only come in."""
    return list(zip_longest(_names(record, "from"), _names(record, "to")))


def _nothing_to_change(made: NoPlan) -> Mapping[str, Any]:
    return {
        "verdict": "no",
        "finish_shift_min": 0.0,
        "change": None,
        "text": f"There is no plan to change: {'; '.join(made.reasons)}",
        "cautions": [],
        "plan": answer_json(made),
    }


def incoming(name: str | None, grams: float | None, store: Store) -> Have | None:
    """The new food as something at hand, with the state, cut and amount said of it."""
    if not name:
        return None
    item = _item(name, store)
    if item is not None:
        have = have_of(item, store)
        return have if grams is None else replace(have, grams=grams, qty=None, unit=None)
    food = store.named(name)
    return Have(food_id=food.id if food else name, grams=grams, said=food.name if food else name)


def leaving(name: str | None, store: Store) -> str | None:
    """The name of the food that leaves; of a description ("bone-in chicken thighs") the food in it."""
    if not name or store.named(name) is not None:
        return name or None
    item = _item(name, store)
    return name if item is None else item.food_id


def _item(words: str, store: Store) -> Item | None:
    """The one known food that a few words are read as; None if they are none or several."""
    items = foods_in(words, store=store)
    return items[0] if len(items) == 1 and items[0].food_id is not None else None


def swap_json(answer: SwapAnswer) -> Mapping[str, Any]:
    """A verdict with the field names of the scripting interface."""
    change: dict[str, Any] = {}
    for key, value in answer.change:
        change[key] = float(value) if key.endswith(("_min", "grams")) else value
    return {
        "verdict": answer.verdict.value,
        "finish_shift_min": round(answer.finish_shift_s / 60.0, 1),
        "change": change or None,
        "text": answer.text,
        "cautions": [{"text": c.text, "source": c.source} for c in answer.cautions],
        "plan": plan_json(answer.plan) if answer.plan is not None else None,
    }
