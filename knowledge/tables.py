"""The one reader of the tables in `knowledge/data`: CSV in UTF-8, cells without spaces around them.

`rows` gives the rows of a table to the module that owns it, before any store is opened; the
knowledge file holds the same rows. What the cells must hold is checked by `foods.load`
before a knowledge file is built: no command runs on tables that have not passed.
"""

from __future__ import annotations

import csv
import hashlib
import io
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from knowledge.errors import BadData

DATA = Path(__file__).parent / "data"

Row = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Table:
    """The rows of one table, each with the place it was read from ("foods.csv:31")."""

    header: tuple[str, ...]
    rows: tuple[Row, ...]
    places: tuple[str, ...]

    def placed(self) -> Iterator[tuple[str, Row]]:
        return zip(self.places, self.rows, strict=True)


def files(folder: Path = DATA) -> list[Path]:
    """The tables of a folder, in a fixed order."""
    return sorted(folder.glob("*.csv"))


def read(path: Path) -> tuple[Table, list[str]]:
    """A table as it stands, and what is wrong with its form."""
    problems: list[str] = []
    try:
        text = path.read_bytes().decode("utf-8")
    except OSError as error:
        return Table((), (), ()), [f"{path.name}: cannot be read: {error.strerror}"]
    except UnicodeDecodeError as error:
        return Table((), (), ()), [f"{path.name}: not UTF-8 text (byte {error.start})"]
    reader = csv.reader(io.StringIO(text, newline=""))
    rows: list[Row] = []
    places: list[str] = []
    header: tuple[str, ...] = ()
    try:
        header = tuple(next(reader, []))
        for cells in reader:
            place = f"{path.name}:{reader.line_num}"
            if len(cells) == len(header):
                rows.append(dict(zip(header, map(str.strip, cells), strict=True)))
                places.append(place)
            elif cells:
                problems.append(f"{place} row: {len(cells)} cells where the header has {len(header)}")
    except csv.Error as error:
        problems.append(f"{path.name}:{reader.line_num} row: {error}")
    return Table(header, tuple(rows), tuple(places)), problems


def items(cell: str) -> list[str]:
    """The entries of a cell that lists several, separated by semicolons."""
    return [part.strip() for part in cell.split(";") if part.strip()]


def digest(folder: Path = DATA) -> str:
    """A short name for the content of all tables; it names the file built from them."""
    total = hashlib.blake2b(digest_size=8)
    for path in files(folder):
        total.update(path.name.encode() + b"\0" + path.read_bytes() + b"\0")
    return total.hexdigest()


@cache
def rows(name: str) -> tuple[Row, ...]:
    """The rows of one of our own tables. Raises BadData when the file is missing or broken in form."""
    table, problems = read(DATA / f"{name}.csv")
    if problems:
        raise BadData(tuple(problems))
    return table.rows
