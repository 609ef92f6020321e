"""`panwright swap`: would this replacement still finish with the rest? One JSON object a line."""

from __future__ import annotations

import argparse
from collections.abc import Mapping, Sequence
from datetime import datetime
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
from knowledge.planner.kitchens import described
from knowledge.planner.model import Have, NoPlan, SwapAnswer
from knowledge.text import read
from knowledge.text.model import Context

MOST_G = 1e6  # more than any kitchen holds


def run(argv: Sequence[str]) -> int:
    """Answer every line of standard input. Returns 0, or 2 if a line could not be used."""
    parser = argparse.ArgumentParser(
        prog="panwright swap",
        description="Lines in: JSON objects: id, text (the first message), from, to; also kitchen, grams.",
    )
    clock_option(parser)
    now: datetime = parser.parse_args(list(argv)).now
    with open_store() as store:

        def swapped(record: Record) -> Answered:
            _check(record)
            kitchen = described(record.get("kitchen"), store=store)
            made = plan(request_in(record["text"], kitchen, now, store), store=store)
            if isinstance(made, NoPlan):
                return _nothing_to_change(made), kitchen.problems
            to = _have(record.get("to"), record.get("grams"), now, store)
            answer = swap(made, frm=record.get("from") or None, to=to, store=store)
            return swap_json(answer), kitchen.problems

        return answer_lines("swap", standard_input(), swapped)


def _check(record: Record) -> None:
    for key in ("from", "to"):
        if record.get(key) is not None and not isinstance(record[key], str):
            raise UnusableError(f'field "{key}": expected a food name')
    if not record.get("from") and not record.get("to"):
        raise UnusableError('fields "from" and "to": expected at least one food name')
    grams = record.get("grams")
    is_number = isinstance(grams, int | float) and not isinstance(grams, bool)
    if grams is not None and not (is_number and 0.0 < grams <= MOST_G):
        raise UnusableError(f'field "grams": expected grams above 0 and up to {MOST_G:.0f}, got {grams!r}')


def _nothing_to_change(made: NoPlan) -> Mapping[str, Any]:
    return {
        "verdict": "no",
        "finish_shift_min": 0.0,
        "change": None,
        "text": f"There is no plan to change: {'; '.join(made.reasons)}",
        "cautions": [],
        "plan": answer_json(made),
    }


def _have(name: str | None, grams: float | None, now: datetime, store: Store) -> Have | None:
    """The new food as something at hand: by name, else as the reader understands the words."""
    if not name:
        return None
    food = store.named(name)
    if food is not None:
        return Have(food_id=food.id, grams=grams, said=food.name)
    items = read(name, store=store, context=Context(), now=now).items
    known = next((item for item in items if item.food_id is not None), None)
    if known is None or known.food_id is None:
        return Have(food_id=name, grams=grams, said=name)
    return Have(
        food_id=known.food_id,
        grams=grams if grams is not None else known.grams,
        qty=known.qty,
        unit=known.unit,
        size=known.size,
        state=known.state,
        cut=known.cut,
        said=known.name,
    )


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
