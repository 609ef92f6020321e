"""`panwright read`: messages in, what they were read as out, one JSON object a line."""

from __future__ import annotations

import argparse
from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

from bot.commands.lines import Answered, Record, answer_lines, clock_option, standard_input
from knowledge.foods.store import open_store
from knowledge.text import read
from knowledge.text.model import Reading


def run(argv: Sequence[str]) -> int:
    """Read lines from standard input. Returns 0, or 2 if a line could not be used."""
    parser = argparse.ArgumentParser(
        prog="panwright read",
        description="Read cooks' messages. Lines in: plain text, or JSON objects with id and text.",
    )
    clock_option(parser)
    now: datetime = parser.parse_args(list(argv)).now
    with open_store() as store:

        def understood(record: Record) -> Answered:
            return as_json(read(record["text"], store=store, now=now)), ()

        return answer_lines("read", standard_input(), understood)


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
