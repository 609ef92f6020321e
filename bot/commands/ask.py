"""`panwright ask`: kitchen questions in, answers with their sources out, one JSON object a line."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterable, Iterator, Sequence

from bot.commands.plan import as_utf8, message
from knowledge.answers import ask
from knowledge.foods.store import Store, open_store
from knowledge.planner.kitchens import described


def run(argv: Sequence[str]) -> int:
    """Answer the question given, or every line of standard input; 2 if a line could not be used."""
    parser = argparse.ArgumentParser(
        prog="panwright ask",
        description="Answer kitchen questions. Lines in: text, or JSON objects with id, text and kitchen.",
    )
    parser.add_argument("question", nargs="*", help="one question; without it, lines from standard input")
    args = parser.parse_args(list(argv))
    as_utf8()
    status = 0
    lines: Iterable[str] = [" ".join(args.question)] if args.question else sys.stdin
    with open_store() as store:
        for problem in _answer(lines, store):
            print(f"panwright ask: {problem}", file=sys.stderr)
            status = 2
    return status


def _answer(lines: Iterable[str], store: Store) -> Iterator[str]:
    """Print the answers; yield what could not be used, as it comes."""
    for number, line in enumerate(lines, 1):
        if not line.strip():
            continue
        record = message(line.rstrip("\n"), number)
        if isinstance(record, str):
            yield f"line {number}: {record}"
            continue
        kitchen = described(record.get("kitchen"), store=store)
        yield from (f"line {number}: {problem}" for problem in kitchen.problems)
        said = ask(record["text"], store=store, kitchen=kitchen.kitchen)
        print(
            json.dumps(
                {"id": record["id"], "known": said.known, "answer": said.answer, "sources": said.sources},
                ensure_ascii=False,
            ),
            flush=True,
        )
