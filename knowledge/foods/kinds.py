"""What a cell of a table may hold, and the one loop that holds every cell against it.

A `Schema` names the columns of a table and gives each a kind; `schemas` lists those of
all tables. A kind says what is wrong with a cell in words that name what was expected.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import KW_ONLY, dataclass, field, replace
from itertools import pairwise
from typing import TypeVar

from knowledge.tables import Row, Table

Known = Callable[[str], frozenset[str] | None]
"""All that a column of another table holds ("foods.id"); None if that table could not be read."""
Told = Iterator[tuple[str, str]]  # column, what is wrong there

_NUMBER = re.compile(r"-?[0-9]+(\.[0-9]+)?")


@dataclass(frozen=True)
class Kind:
    """Text of any kind; the other kinds allow less."""

    _: KW_ONLY
    blank: bool = False  # whether the cell may be empty
    several: str = ""  # what stands between the entries of a cell that lists several
    source: str = ""  # of a figure: the column that holds its source

    def problems(self, column: str, row: Row, known: Known) -> Told:
        cell = row[column]
        if not cell:
            if not self.blank:
                yield column, "is empty"
            return
        for entry in (part.strip() for part in cell.split(self.several)) if self.several else (cell,):
            if wrong := self.refuses(entry, known):
                yield column, wrong

    def refuses(self, entry: str, known: Known) -> str:
        """What is wrong with one entry; "" if nothing is."""
        return ""


@dataclass(frozen=True)
class Number(Kind):
    """A figure within the range that kitchens know, its source beside it."""

    low: float
    high: float
    unit: str = ""
    _: KW_ONLY
    whole: bool = False

    def refuses(self, entry: str, known: Known) -> str:
        span = f"{self.low:g}-{self.high:g} {self.unit}".rstrip()
        if not _NUMBER.fullmatch(entry):
            return f"{entry!r} is not a number; expected {span}"
        if not self.low <= float(entry) <= self.high:
            return f"{entry} is outside {span}"
        return f"{entry} is not a whole number" if self.whole and "." in entry else ""


@dataclass(frozen=True)
class Word(Kind):
    """One of a closed list."""

    words: frozenset[str]

    def refuses(self, entry: str, known: Known) -> str:
        return "" if entry in self.words else f"{entry!r} is not one of {', '.join(sorted(self.words))}"


@dataclass(frozen=True)
class Id(Kind):
    """What one of the columns named holds: `Id("food", "foods.id")`."""

    what: str
    column: str
    _: KW_ONLY
    also: tuple[str, ...] = ()  # other columns that will do
    words: frozenset[str] = frozenset()  # and words that no table lists

    def refuses(self, entry: str, known: Known) -> str:
        columns = (self.column, *self.also)
        held = [known(column) for column in columns]
        if entry in self.words or any(ids is None or entry in ids for ids in held):
            return ""
        return f"no {self.what} {entry!r} in {' or '.join(columns)}"


@dataclass(frozen=True)
class Form(Kind):
    """Text of one form; `like` says which, in words."""

    pattern: str
    like: str

    def refuses(self, entry: str, known: Known) -> str:
        return "" if re.fullmatch(self.pattern, entry) else f"{entry!r} is not {self.like}"


@dataclass(frozen=True)
class Pattern(Kind):
    """A regular expression."""

    def refuses(self, entry: str, known: Known) -> str:
        try:
            re.compile(entry)
        except re.error as error:
            return f"{entry!r} is not a regular expression: {error}"
        return ""


@dataclass(frozen=True)
class By(Kind):
    """What this column holds depends on the word in another column."""

    column: str
    kinds: Mapping[str, Kind] = field(hash=False)

    def problems(self, column: str, row: Row, known: Known) -> Told:
        kind = self.kinds.get(row[self.column])
        if kind is not None:  # a word that is not known is told where it stands
            yield from kind.problems(column, row, known)


Rule = Callable[[Row], Told]
K = TypeVar("K", bound=Kind)

TEXT = Kind()
SOURCE = Id("source", "sources.id")
YES_NO = Word(frozenset({"yes", "no"}))
YES = Word(frozenset({"yes"}), blank=True)  # "yes" or nothing


@dataclass(frozen=True)
class Schema:
    """The columns of a table, which of them tell its rows apart, and what else holds of a row."""

    columns: Mapping[str, Kind]
    unique: tuple[tuple[str, ...], ...] = ()
    rules: tuple[Rule, ...] = ()

    def problems(self, table: Table, known: Known) -> Iterator[str]:
        """Everything wrong with the cells of a table, one line each."""
        figures = [(column, kind.source) for column, kind in self.columns.items() if kind.source]
        for place, row in table.placed():
            told = dict[str, list[str]]()
            for column, kind in self.columns.items():
                for at, wrong in kind.problems(column, row, known):
                    told.setdefault(at, []).append(wrong)
            for column, source in figures:
                if not row[source] and _NUMBER.fullmatch(row[column]):
                    told[source] = [f"is empty, {column} needs a source"]
            for rule in self.rules:
                for at, wrong in rule(row):
                    told.setdefault(at, []).append(wrong)
            yield from (f"{place} {at}: {wrong}" for at, wrongs in told.items() for wrong in wrongs)
        for keys in self.unique:
            yield from _unique(table, keys)


def _unique(table: Table, keys: tuple[str, ...]) -> Iterator[str]:
    seen: dict[tuple[str, ...], str] = {}
    for place, row in table.placed():
        key = tuple(row[k] for k in keys)
        if key in seen:
            yield f"{place} {'+'.join(keys)}: {'/'.join(key)!r} is already at {seen[key]}"
        seen.setdefault(key, place)


# How schemas are written.


def table(*of_rows: str | Rule, **columns: Kind) -> Schema:
    """The schema of a table; `of_rows`: what tells rows apart ("id", "name+size"), and rules."""
    unique = tuple(tuple(said.split("+")) for said in of_rows if isinstance(said, str))
    return Schema(columns, unique, tuple(said for said in of_rows if not isinstance(said, str)))


def maybe(kind: K) -> K:
    """The same, or nothing."""
    return replace(kind, blank=True)


def listed(kind: K, separator: str = ";") -> K:
    """Several of the same."""
    return replace(kind, several=separator)


def number(low: float, high: float, unit: str = "", *, source: str = "source") -> Number:
    """A figure with its source in the column `source`."""
    return Number(low, high, unit, source=source)


def rank(low: float = 0, high: float = 9999) -> Number:
    """A whole number that measures nothing: an order."""
    return Number(low, high, whole=True)


def one_of(*words: str) -> Word:
    """One of these words."""
    return Word(frozenset(words))


def rising(*columns: str) -> Rule:
    """Figures that do not fall from one column to the next, where they are given."""

    def rule(row: Row) -> Told:
        given = [(c, float(row[c])) for c in columns if _NUMBER.fullmatch(row[c])]
        for (low, least), (high, most) in pairwise(given):
            if most < least:
                yield high, f"{row[high]} is less than {low} {row[low]}"

    return rule
