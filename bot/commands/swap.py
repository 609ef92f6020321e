"""`panwright swap`: would this replacement still finish with the rest? One JSON object a line."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

from bot.commands.plan import answer_json, as_utf8, clock, message, plan_json, request_in
from knowledge.foods.store import Store, open_store
from knowledge.planner import plan, swap
from knowledge.planner.kitchens import described
from knowledge.planner.model import Have, NoPlan, SwapAnswer
from knowledge.text import read
from knowledge.text.model import Context


def run(argv: Sequence[str]) -> int:
    """Answer every line of standard input. Returns 0, or 2 if a line could not be used."""
    parser = argparse.ArgumentParser(
        prog="panwright swap",
        description="Lines in: JSON objects: id, text (the first message), from, to; also kitchen, grams.",
    )
    parser.add_argument(
        "--now", metavar="2026-03-04T17:10", help="the cook's clock; a kitchen's own comes first"
    )
    args = parser.parse_args(list(argv))
    now = clock(args.now)
    if now is None:
        print(
            f"panwright swap: --now {args.now!r}: expected a time such as 2026-03-04T17:10", file=sys.stderr
        )
        return 2
    as_utf8()
    status = 0
    with open_store() as store:
        for number, line in enumerate(sys.stdin, 1):
            if not line.strip():
                continue
            record = message(line.rstrip("\n"), number)
            wrong = record if isinstance(record, str) else _wrong(record)
            if wrong or isinstance(record, str):
                print(f"panwright swap: line {number}: {wrong}", file=sys.stderr)
                status = 2
                continue
            kitchen = described(record.get("kitchen"), store=store)
            for problem in kitchen.problems:
                print(f"panwright swap: line {number}: {problem}", file=sys.stderr)
                status = 2
            made = plan(request_in(record["text"], kitchen, now, store), store=store)
            if isinstance(made, NoPlan):
                said = {
                    "verdict": "no",
                    "finish_shift_min": 0.0,
                    "change": None,
                    "text": f"There is no plan to change: {'; '.join(made.reasons)}",
                    "cautions": [],
                    "plan": answer_json(made),
                }
            else:
                to = _have(record.get("to"), record.get("grams"), now, store)
                said = dict(swap_json(swap(made, frm=record.get("from") or None, to=to, store=store)))
            print(json.dumps({"id": record["id"], **said}, ensure_ascii=False))
    return status


def _wrong(record: Mapping[str, Any]) -> str:
    for key in ("from", "to"):
        if record.get(key) is not None and not isinstance(record[key], str):
            return f'field "{key}": expected a food name'
    if not record.get("from") and not record.get("to"):
        return 'fields "from" and "to": expected at least one food name'
    grams = record.get("grams")
    if grams is not None and (isinstance(grams, bool) or not isinstance(grams, int | float) or grams <= 0):
        return f'field "grams": expected a positive number, got {grams!r}'
    return ""


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
