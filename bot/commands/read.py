"""`panwright read`: messages in, what they were read as out, one JSON object a line."""

from __future__ import annotations

import argparse
import io
import json
import sys
from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

from knowledge.foods.store import open_store
from knowledge.text import read
from knowledge.text.model import Reading


def run(argv: Sequence[str]) -> int:
    """Read lines from standard input. Returns 0, or 2 if a line could not be used."""
    parser = argparse.ArgumentParser(
        prog="panwright read",
        description="Read cooks' messages. Lines in: plain text, or JSON objects with id and text.",
    )
    parser.add_argument("--now", metavar="2026-03-04T17:10", help="the clock that relative times count from")
    args = parser.parse_args(list(argv))
    now = _clock(args.now)
    if args.now and now is None:
        print(
            f"panwright read: --now {args.now!r}: expected a time such as 2026-03-04T17:10", file=sys.stderr
        )
        return 2
    for stream in (sys.stdin, sys.stdout):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors="backslashreplace")
    status = 0
    with open_store() as store:
        for number, line in enumerate(sys.stdin, 1):
            if not line.strip():
                continue
            message = _message(line.rstrip("\n"), number)
            if isinstance(message, str):
                print(f"panwright read: line {number}: {message}", file=sys.stderr)
                status = 2
                continue
            name, text = message
            print(json.dumps({"id": name, **as_json(read(text, store=store, now=now))}, ensure_ascii=False))
    return status


def _clock(said: str | None) -> datetime | None:
    try:
        return datetime.fromisoformat(said) if said else None
    except ValueError:
        return None


def _message(line: str, number: int) -> tuple[str, str] | str:
    """The id and text of a line, or what is wrong with it."""
    if not line.lstrip().startswith("{"):
        return str(number), line
    try:
        record = json.loads(line)
    except ValueError as error:
        return f'not a JSON object ({error}); expected {{"id": ..., "text": ...}}'
    if not isinstance(record, dict) or not isinstance(record.get("text"), str):
        return 'field "text": expected a string'
    return str(record.get("id", number)), record["text"]


def as_json(reading: Reading) -> Mapping[str, Any]:
    """A reading with the field names of the scripting interface."""
    event, swap, ready = reading.event, reading.swap, reading.ready_by
    return {
        "kind": reading.kind.value,
        "items": [
            {
                "name": item.name,
                "qty": item.qty,
                "unit": item.unit,
                "grams": item.grams,
                "state": item.state,
                "cut": item.cut,
                "food": item.food_id,
                "sure": item.sure,
            }
            for item in reading.items
        ],
        "excluded": list(reading.excluded),
        "diet": list(reading.diet),
        "people": reading.people,
        "ready_by": None if ready is None else ready.clock or {"in_min": ready.in_min},
        "vessel": reading.vessel,
        "not_vessel": list(reading.not_vessel),
        "event": event
        and {"type": event.type.value, "minutes": event.minutes, "item": event.item, "temp_c": event.temp_c},
        "swap": swap and {"from": swap.frm, "to": swap.to},
        "intent": reading.intent and reading.intent.value,
        "amends": reading.amends,
        "wishes": list(reading.wishes),
        "settings": dict(reading.settings),
        "unknown": list(reading.unknown),
        "asks": list(reading.asks),
    }
