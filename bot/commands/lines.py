"""What the commands of the scripting interface share: lines in, one JSON object a line out.

A line is plain text or a JSON object with `id` and `text`. A line that cannot be used is
named on stderr with what was expected; the good lines are answered all the same.
"""

from __future__ import annotations

import argparse
import io
import json
import sys
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from datetime import datetime
from typing import Any

from knowledge.errors import BadData

EVENING = datetime(2026, 1, 1, 17, 30)  # noqa: DTZ001  a cook's evening, when nobody says what time it is

Record = Mapping[str, Any]  # at least id and text
Answered = tuple[Mapping[str, Any], Sequence[str]]  # the fields of the answer, and what was wrong beside it


class UnusableError(Exception):
    """A line or an option that cannot be used; the text says what was expected."""


def clock_option(parser: argparse.ArgumentParser) -> None:
    """Give a command `--now`, the cook's clock."""
    parser.add_argument(
        "--now",
        metavar="2026-03-04T17:10",
        type=_clock,
        default=EVENING,
        help="the cook's clock; a kitchen's own comes first",
    )


def answer_lines(command: str, lines: Iterable[str], answer: Callable[[Record], Answered]) -> int:
    """Print the answer to every line.

    Returns the exit status: 0; 2 if a line could not be used; 1 if one met a bug of ours, which
    is named with its line, and does not cost the lines after it.
    """
    status = 0
    for number, line in enumerate(without_mark(lines), 1):
        if not line.strip():
            continue
        try:
            record = _record(line.rstrip("\n"), number)
            said, problems = answer(record)
        except UnusableError as error:
            problems = (str(error),)
        except BadData:
            raise  # of the tables, not of the line
        except Exception as error:
            print(
                f"panwright {command}: line {number}: a bug: {type(error).__name__}: {error}", file=sys.stderr
            )
            status = 1
            continue
        else:
            print(json.dumps({"id": record["id"], **said}, ensure_ascii=False), flush=True)
        for problem in problems:
            print(f"panwright {command}: line {number}: {problem}", file=sys.stderr)
            status = status or 2
    return status


def standard_input() -> Iterable[str]:
    """Standard input in UTF-8, whatever the machine says; broken bytes do not stop a run."""
    for stream, errors in ((sys.stdin, "surrogateescape"), (sys.stdout, "backslashreplace")):
        if isinstance(stream, io.TextIOWrapper):
            stream.reconfigure(encoding="utf-8", errors=errors)
    return sys.stdin


def without_mark(lines: Iterable[str]) -> Iterator[str]:
    """The lines without the byte order mark that some editors write before the first."""
    for number, line in enumerate(lines):
        yield line if number else line.removeprefix("\ufeff")


def _record(line: str, number: int) -> Record:
    if not line.lstrip().startswith("{"):
        return {"id": str(number), "text": line}
    try:
        record = json.loads(line, parse_constant=_no_number)
    except (ValueError, RecursionError) as error:
        raise UnusableError(f'not a JSON object ({error}); expected {{"id": ..., "text": ...}}') from error
    if not isinstance(record, dict) or not isinstance(record.get("text"), str):
        raise UnusableError('field "text": expected a string')
    return {**record, "id": record.get("id", str(number))}


def _no_number(said: str) -> float:
    raise ValueError(f"{said} is no number")


def _clock(said: str) -> datetime:
    try:
        return datetime.fromisoformat(said)
    except ValueError as error:
        raise argparse.ArgumentTypeError(f"{said!r}: expected a time such as 2026-03-04T17:10") from error
