"""Read all tables of a folder, hold every cell against its schema, report all problems at once.

What each table holds is said in `schemas`; a table that is not named there is kept as read
(the tests let none of ours be so).
A problem is one line: `foods.csv:31 density_kg_m3: 1.05 is outside 100-2000 kg/m3`.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Set
from dataclasses import dataclass
from functools import cache
from pathlib import Path

from knowledge.errors import BadData
from knowledge.foods.schemas import FILES, SCHEMAS
from knowledge.tables import DATA, Table, digest, files
from knowledge.tables import read as read_file

EMPTY = Table((), (), ())


@dataclass(frozen=True, slots=True)
class Tables:
    """Everything in the data folder, checked."""

    digest: str
    tables: Mapping[str, Table]

    def __getitem__(self, name: str) -> Table:
        return self.tables.get(name, EMPTY)


def load(folder: Path = DATA) -> Tables:
    """All tables of a folder. Raises BadData with every problem found."""
    tables, problems = read(folder)
    problems += check(tables)
    if problems:
        raise BadData(tuple(problems))
    return tables


def read(folder: Path = DATA) -> tuple[Tables, list[str]]:
    """The tables as they stand, and what is wrong with their form: files, headers, rows."""
    found = {path.stem: path for path in files(folder)}
    if not found:
        return Tables("", {}), [f"{folder}: expected a folder with the tables, *.csv"]
    problems = [f"{name}.csv: is missing from {folder}" for name in sorted(FILES.keys() - found.keys())]
    tables: dict[str, Table] = {}
    for stem, path in found.items():
        table, wrong = read_file(path)
        name = FILES.get(stem, stem)
        problems += wrong or _form(path.name, table, name)
        if _columns(name) <= set(table.header):
            before = tables.get(name, EMPTY)
            tables[name] = Table(table.header, before.rows + table.rows, before.places + table.places)
    return Tables(digest(folder), tables), problems


def _columns(name: str) -> Set[str]:
    return SCHEMAS[name].columns.keys() if name in SCHEMAS else set()


def _form(file: str, table: Table, name: str) -> Iterator[str]:
    columns = _columns(name) or set(table.header)
    said = [f"unknown column {c!r}, not in schemas.py" for c in table.header if c not in columns]
    said += [f"no column {c!r}" for c in columns if c not in table.header]
    if said:
        yield f"{file}:1 header: {', '.join(said)}"
    elif not table.rows:
        yield f"{file}: has no rows"


def check(tables: Tables) -> list[str]:
    """Everything wrong with the cells, table by table."""

    @cache
    def known(column: str) -> frozenset[str] | None:
        name, _, column = column.partition(".")
        return frozenset(row[column] for row in tables[name].rows) if name in tables.tables else None

    return [
        problem
        for name, schema in SCHEMAS.items()
        if name in tables.tables
        for problem in schema.problems(tables[name], known)
    ]
