"""`panwright ask`: kitchen questions in, answers with their sources out, one JSON object a line."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from bot.commands.lines import Answered, Record, answer_lines, standard_input
from knowledge.answers import ask
from knowledge.answers.eaters.eaters import ruled_out
from knowledge.foods.store import open_store
from knowledge.planner.kitchens import described


def run(argv: Sequence[str]) -> int:
    """Answer the question given, or every line of standard input; 2 if a line could not be used."""
    parser = argparse.ArgumentParser(
        prog="panwright ask",
        description="Answer kitchen questions. Lines in: text, or JSON objects with id, text and kitchen.",
    )
    parser.add_argument("question", nargs="*", help="one question; without it, lines from standard input")
    question = " ".join(parser.parse_args(list(argv)).question)
    lines = standard_input()
    with open_store() as store:

        def answered(record: Record) -> Answered:
            kitchen = described(record.get("kitchen"), store=store)
            tokens, unknown = ruled_out(record.get("kitchen"), store=store)
            said = ask(record["text"], store=store, kitchen=kitchen.kitchen, ruled_out=tokens)
            fields = {"known": said.known, "answer": said.answer, "sources": said.sources}
            return fields, (*kitchen.problems, *unknown)

        return answer_lines("ask", [question] if question else lines, answered)
