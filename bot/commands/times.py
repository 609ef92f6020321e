"""`panwright times`: pieces of food in, cooking times out.

    panwright times FILE.csv            one row a piece -> CSV: id, time_min, lo, hi, note
    panwright times < FILE.csv
    panwright times --explain "carrot 20 mm dice, roast 220 C" [--plot FILE.png]

Columns in (blanks are allowed): id, food, cut_text, shape, size_mm, mass_g, start_state, method,
medium_temp_c, endpoint_kind, core_temp_c, altitude_m.
"""

from __future__ import annotations

import argparse
import csv
import math
import sys
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Protocol

from bot.commands.lines import standard_input, without_mark
from knowledge.errors import KnowledgeError
from knowledge.foods.store import Store, open_store
from knowledge.physics import Outcome, cook
from knowledge.physics.chart import Read, Row, read_row

COLUMNS = ("id", "time_min", "time_min_lo", "time_min_hi", "note")
READ = (
    "id", "food", "cut_text", "shape", "size_mm", "mass_g", "start_state", "method", "medium_temp_c",
    "endpoint_kind", "core_temp_c", "altitude_m",
)  # fmt: skip
LINE, PROBLEM = "(line)", "(problem)"  # of a row: where it begins, and why it is none; no column is called so
RANGE_MIDDLE = 0.98
"""Middle of the range over the time: cooks look early, and published ranges begin there (fitted)."""
LEAST_S = 30.0
"""Under pressure the way up may do it all; nobody times less than this."""


def run(argv: list[str]) -> int:
    """Answer a table or explain one piece. Returns 0, or 2 when a row or the file could not be used."""
    parser = argparse.ArgumentParser(prog="panwright times", description="cooking times by computation")
    parser.add_argument("file", nargs="?", default="-", help="CSV with a header; -: standard input")
    parser.add_argument("--explain", metavar="TEXT", help='one piece, e.g. "carrot 20 mm dice, roast 220 C"')
    parser.add_argument("--plot", metavar="FILE.png", help="with --explain: draw temperatures and dose")
    options = parser.parse_args(argv)
    store = open_store()
    if options.explain is not None:
        from bot.commands.times_explain import explain

        return explain(options.explain, store, plot=options.plot)
    if options.file == "-":
        return _table(standard_input(), store)
    try:
        file = open(options.file, encoding="utf-8", errors="backslashreplace", newline="")  # noqa: SIM115
    except OSError as error:
        print(f"panwright times: {options.file} cannot be read: {error.strerror}", file=sys.stderr)
        return 2
    with file:
        return _table(file, store)


def _table(file: Iterable[str], store: Store) -> int:
    reader = csv.reader(without_mark(file))
    try:
        header = [name.strip() for name in next(reader, [])]
    except csv.Error:
        header = []
    twice = sorted({name for name in header if name and header.count(name) > 1})
    if "food" not in header or twice:
        wanted = (
            f"names {', '.join(twice)} twice"
            if twice
            else "must name the columns; 'food' and 'method' at least"
        )
        print(f"panwright times: the first line {wanted}", file=sys.stderr)
        return 2
    rows = list(_rows(reader, header))
    status = 0
    out = csv.writer(sys.stdout, lineterminator="\n")
    out.writerow(COLUMNS)
    for number, (line, answer) in enumerate(zip(rows, answers(rows, store), strict=True), start=1):
        if answer.problem:
            print(f"line {line[LINE]}: {answer.problem}", file=sys.stderr)
            status = 2
        out.writerow((line.get("id") or str(number), *answer.cells()))
    return status


def _rows(reader: Rows, header: Sequence[str]) -> Iterator[dict[str, str]]:
    """The rows by their columns, with the line each begins in and what is wrong with it as a row."""
    while True:
        begins = reader.line_num + 1
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            yield {LINE: str(begins), PROBLEM: f"no row of a table ({error})"}
            continue
        if not any(cell.strip() for cell in cells):
            continue
        row = {**dict(zip(header, (cell.strip() for cell in cells), strict=False)), LINE: str(begins)}
        if any("\n" in row.get(column, "") for column in READ):
            row[PROBLEM] = (
                f"a quote that is not closed makes one row of it and what follows, to line {reader.line_num}"
            )
            row["id"] = row.get("id", "").partition("\n")[0]
        elif any(cell.strip() for cell in cells[len(header) :]):
            row[PROBLEM] = f"expected {len(header)} cells, got {len(cells)}"
        yield row


class Rows(Protocol):
    """What the csv module reads with: rows of cells, and how many lines it has taken."""

    line_num: int

    def __iter__(self) -> Iterator[list[str]]: ...

    def __next__(self) -> list[str]: ...


class Answered:
    """The answer to one row: a time with its range, or why there is none."""

    def __init__(self, read: Read | None, outcome: Outcome | None, problem: str = "") -> None:
        self.read, self.outcome, self.problem = read, outcome, problem

    def cells(self) -> tuple[str, str, str, str]:
        """time_min, time_min_lo, time_min_hi, note."""
        if self.read is None or self.outcome is None:
            return "", "", "", self.problem
        done = self.outcome.done_s
        if done is None:
            return "", "", "", self.outcome.note
        counted = max(done - self.read.not_counted_s, LEAST_S)
        middle = RANGE_MIDDLE * counted
        low, high = middle / self.read.spread, middle * self.read.spread
        return (
            f"{counted / 60:.2f}", f"{low / 60:.2f}", f"{high / 60:.2f}",
            self.read.note or self.outcome.decided_by,
        )  # fmt: skip


def answers(rows: Sequence[Mapping[str, str]], store: Store) -> list[Answered]:
    """All rows, solved in one batch."""
    answered: list[Answered] = []
    for line in rows:
        try:
            answered.append(Answered(read_row(row_of(line), store), None))
        except KnowledgeError as error:
            answered.append(Answered(None, None, str(error)))
        except BadCellError as error:
            answered.append(Answered(None, None, str(error)))
    good = [a for a in answered if a.read is not None]
    for a, outcome in zip(good, cook([a.read.case for a in good if a.read]), strict=True):
        a.outcome = outcome
    return answered


class BadCellError(ValueError):
    """A cell that is no number where one was expected."""


def _number(line: Mapping[str, str], column: str) -> float | None:
    cell = line.get(column, "")
    if not cell:
        return None
    try:
        value = float(cell)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise BadCellError(f"{column}: expected a number, got {cell!r}")
    return value


def row_of(line: Mapping[str, str]) -> Row:
    """One line of the table. Raises BadCellError."""
    if PROBLEM in line:
        raise BadCellError(line[PROBLEM])
    food = line.get("food", "")
    if not food:
        raise BadCellError("food: a name is needed")
    return Row(
        food=food,
        cut_text=line.get("cut_text", ""),
        shape=line.get("shape", ""),
        size_mm=_number(line, "size_mm"),
        mass_g=_number(line, "mass_g"),
        start_state=line.get("start_state", ""),
        method=line.get("method", "") or "roast",
        medium_degC=_number(line, "medium_temp_c"),
        endpoint=line.get("endpoint_kind", ""),
        core_degC=_number(line, "core_temp_c"),
        altitude_m=_number(line, "altitude_m") or 0.0,
    )


def predictions(lines: Iterable[Mapping[str, str]], store: Store) -> dict[str, float | None]:
    """Minutes by id, for tests and the cross-validation."""
    rows = list(lines)
    found: dict[str, float | None] = {}
    for line, answer in zip(rows, answers(rows, store), strict=True):
        minutes = answer.cells()[0]
        found[line["id"]] = float(minutes) if minutes else None
    return found
