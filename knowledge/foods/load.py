"""Read the tables, check every row, report all problems at once.

    foods.csv, seasonings.csv            one row a food, same columns (see `columns`)
    names.csv, names_seasonings.csv      name, food_id, region, rank
    portions.csv, portions_seasonings    food_id, unit, size, grams, source
    sources*.csv                         id, author, year, title, part, licence, read
    cuts, vessels, vessel_sizes          the kitchen's own tables
    states                               food_id, state, variant_id: "pea", "frozen" has the figures of
                                         "frozen-pea", a food of its own in foods.csv
    food_factors                         food_id, dose_factor, target_degC, source: measured against
                                         published cooking times; replaces the figures in foods.csv
    every other *.csv                    a small table for the module that owns it, kept as read

A problem is one line: `foods.csv:31 density_kg_m3: 1.05 is outside 100-2000 kg/m3`.
"""

from __future__ import annotations

import csv
import hashlib
import io
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path

from knowledge.errors import BadData
from knowledge.foods import columns

DATA = Path(__file__).parents[1] / "data"

Row = dict[str, str]

FOOD_TABLES = ("foods", "seasonings")
FAMILIES = {  # several files that are one table: each kind of food keeps its own beside it
    "names": "names",
    "names_seasonings": "names",
    "portions": "portions",
    "portions_seasonings": "portions",
}
HEADERS: dict[str, tuple[str, ...]] = {
    "names": ("name", "food_id", "region", "rank"),
    "portions": ("food_id", "unit", "size", "grams", "source"),
    "sources": ("id", "author", "year", "title", "part", "licence", "read"),
    "cuts": ("id", "name", "shape", "size_mm", "ratio_1", "ratio_2", "parts", "knife_min_per_kg", "source"),
    "vessels": (
        "id", "methods", "needs_oven", "max_fill_frac", "max_fill_foaming_frac", "min_liquid_ml",
        "single_layer", "browns", "why", "source",
    ),
    "vessel_sizes": (
        "id", "vessel", "area_m2", "volume_l", "mass_kg", "cp_J_kgK", "serves", "usual", "sides_cm",
        "source",
    ),
    "states": ("food_id", "state", "variant_id"),
    "food_factors": ("food_id", "dose_factor", "target_degC", "source"),
}  # fmt: skip
NO_FIGURES = frozenset({"rank", "id", "word", "words"})
"""Columns of small tables whose numbers measure nothing: an order, a name."""
RANGES: dict[str, dict[str, columns.Figure]] = {
    "portions": {"grams": columns.Figure(0.01, 20000, "g", "source")},
    "cuts": {
        "size_mm": columns.Figure(0, 150, "mm", "source"),
        "ratio_1": columns.Figure(1, 100, "", "source"),
        "ratio_2": columns.Figure(1, 100, "", "source"),
        "parts": columns.Figure(0, 64, "", "source"),
        "knife_min_per_kg": columns.Figure(0, 60, "min/kg", "source"),
    },
    "vessels": {
        "max_fill_frac": columns.Figure(0.1, 1, "", "source"),
        "max_fill_foaming_frac": columns.Figure(0.1, 1, "", "source"),
        "min_liquid_ml": columns.Figure(0, 2000, "ml", "source"),
    },
    "vessel_sizes": {
        "area_m2": columns.Figure(0.005, 0.5, "m2", "source"),
        "volume_l": columns.Figure(0.2, 30, "l", "source"),
        "mass_kg": columns.Figure(0.2, 15, "kg", "source"),
        "cp_J_kgK": columns.Figure(300, 1200, "J/kgK", "source"),
        "serves": columns.Figure(0.5, 12, "", "source"),
    },
    "food_factors": {
        "dose_factor": columns.FIGURES["dose_factor"],
        "target_degC": columns.FIGURES["target_degC"],
    },
}


@dataclass(frozen=True, slots=True)
class Table:
    """The rows of one table, each with the place it was read from ("foods.csv:31")."""

    rows: tuple[Row, ...]
    places: tuple[str, ...]

    def placed(self) -> Iterator[tuple[str, Row]]:
        return zip(self.places, self.rows, strict=True)


@dataclass(frozen=True, slots=True)
class Tables:
    """Everything in the data folder, checked."""

    digest: str
    tables: Mapping[str, Table]

    def __getitem__(self, name: str) -> Table:
        return self.tables.get(name, Table((), ()))


def data_files(folder: Path = DATA) -> list[Path]:
    """The tables of a data folder, in a fixed order."""
    return sorted(folder.glob("*.csv"))


def digest(folder: Path = DATA) -> str:
    """A short name for the content of all tables; it names the file built from them."""
    total = hashlib.blake2b(digest_size=8)
    for path in data_files(folder):
        total.update(path.name.encode() + b"\0" + path.read_bytes() + b"\0")
    return total.hexdigest()


def load(folder: Path = DATA) -> Tables:
    """All tables of a folder. Raises BadData with every problem found."""
    tables, problems = read(folder)
    problems += [*_check_foods(tables), *_check_small(tables), *_check_references(tables)]
    if problems:
        raise BadData(tuple(problems))
    return tables


def read(folder: Path = DATA) -> tuple[Tables, list[str]]:
    """The tables as they stand, unchecked but for their form, and the problems of form."""
    problems: list[str] = []
    found: dict[str, tuple[list[Row], list[str]]] = {}
    for path in data_files(folder):
        family = FAMILIES.get(path.stem, "sources" if path.stem.startswith("sources") else path.stem)
        rows, places = found.setdefault(family, ([], []))
        for place, row in _rows(path, family, problems):
            rows.append(row)
            places.append(place)
    tables = {name: Table(tuple(rows), tuple(places)) for name, (rows, places) in found.items()}
    return Tables(digest(folder), tables), problems


def _rows(path: Path, family: str, problems: list[str]) -> Iterator[tuple[str, Row]]:
    try:
        text = path.read_bytes().decode("utf-8")
    except UnicodeDecodeError as error:
        problems.append(f"{path.name}: not UTF-8 text (byte {error.start})")
        return
    reader = csv.reader(io.StringIO(text, newline=""))
    header = next(reader, [])
    expected = columns.HEADER if family in FOOD_TABLES else HEADERS.get(family)
    if expected is not None and tuple(header) != expected:
        unknown, missing = set(header) - set(expected), set(expected) - set(header)
        said = [f"unknown column {c!r}" for c in sorted(unknown)] + [
            f"no column {c!r}" for c in sorted(missing)
        ]
        problems.append(f"{path.name}:1 header: {', '.join(said) or 'columns are in another order'}")
        if missing:
            return
    for cells in reader:
        place = f"{path.name}:{reader.line_num}"
        if not cells:
            continue
        if len(cells) != len(header):
            problems.append(f"{place} row: {len(cells)} cells where the header has {len(header)}")
            continue
        yield place, dict(zip(header, (cell.strip() for cell in cells), strict=True))


def items(cell: str) -> list[str]:
    """The entries of a cell that lists several, separated by semicolons."""
    return [part.strip() for part in cell.split(";") if part.strip()]


def _number(place: str, column: str, cell: str, figure: columns.Figure) -> Iterator[str]:
    try:
        value = float(cell)
    except ValueError:
        yield f"{place} {column}: {cell!r} is not a number"
        return
    if not figure.low <= value <= figure.high:
        span = f"{figure.low:g}-{figure.high:g} {figure.unit}".rstrip()
        yield f"{place} {column}: {cell} is outside {span}"


def _unique(table: Table, keys: Sequence[str]) -> Iterator[str]:
    seen: dict[tuple[str, ...], str] = {}
    for place, row in table.placed():
        key = tuple(row.get(k, "") for k in keys)
        if key in seen:
            yield f"{place} {'+'.join(keys)}: {'/'.join(key)!r} is already at {seen[key]}"
        seen.setdefault(key, place)


def _check_foods(tables: Tables) -> Iterator[str]:
    every = Table(
        tuple(row for name in FOOD_TABLES for row in tables[name].rows),
        tuple(place for name in FOOD_TABLES for place in tables[name].places),
    )
    yield from _unique(every, ("id",))
    yield from _unique(every, ("name",))
    for place, row in every.placed():
        yield from _check_food(place, row)


def _check_food(place: str, row: Row) -> Iterator[str]:
    for column in (*columns.REQUIRED, *(columns.REQUIRED_TO_COOK if row["role"] == "cook" else ())):
        if not row[column]:
            yield f"{place} {column}: is empty"
    for column, figure in columns.FIGURES.items():
        if row[column]:
            yield from _number(place, column, row[column], figure)
            if not row[figure.source]:
                yield f"{place} {figure.source}: is empty, {column} needs a source"
    for column, known in columns.WORDS.items():
        for word in items(row[column]):
            if word not in known:
                yield f"{place} {column}: {word!r} is not one of {', '.join(sorted(known))}"
    if row["season"] and not columns.SEASON.fullmatch(row["season"]):
        yield f"{place} season: {row['season']!r} is not months like '9-3' or {columns.ALL_YEAR!r}"
    if row["season"] and not row["season_src"]:
        yield f"{place} season_src: is empty, season needs a source"
    yield from _check_composition(place, row)


def _check_composition(place: str, row: Row) -> Iterator[str]:
    known = [c for c in columns.COMPOSITION if row[c]]
    if known and len(known) < len(columns.COMPOSITION):
        missing = [c for c in columns.COMPOSITION if not row[c]]
        yield f"{place} {missing[0]}: is empty while {known[0]} is known; a composition is whole or absent"
        return
    try:
        total = sum(float(row[c]) for c in known if c != "fibre_g")  # fibre is part of the carbohydrate
    except ValueError:
        return
    if known and not 93 <= total <= 107:
        yield f"{place} composition: adds up to {total:.1f} g, not 93-107 g/100 g"


def _check_small(tables: Tables) -> Iterator[str]:
    """The tables of names, portions, sources, cuts and vessels: unique keys, plausible numbers."""
    keys = {
        "names": ("name", "food_id"),
        "portions": ("food_id", "unit", "size"),
        "food_factors": ("food_id",),
        "states": ("food_id", "state"),
        **dict.fromkeys(("sources", "cuts", "vessels", "vessel_sizes"), ("id",)),
    }
    keys["vessel_sizes"] = ("id", "vessel")
    for name, key in keys.items():
        yield from _unique(tables[name], key)
        for place, row in tables[name].placed():
            for column, figure in RANGES.get(name, {}).items():
                if row[column]:
                    yield from _number(place, column, row[column], figure)
            if name == "names" and row["rank"] and not row["rank"].isdecimal():
                yield f"{place} rank: {row['rank']!r} is not a whole number"


def _check_references(tables: Tables) -> Iterator[str]:
    """Every id that one table uses exists in the table it points to."""
    sources = {row["id"] for row in tables["sources"].rows}
    foods = {row["id"] for name in FOOD_TABLES for row in tables[name].rows}
    cuts = {row["id"] for row in tables["cuts"].rows}
    vessels = {row["id"] for row in tables["vessels"].rows}
    classes = {row["id"] for row in tables["doneness"].rows}
    minimums = {row["id"] for row in tables["safe_minimums"].rows if "id" in row}

    def point(
        table: str, column: str, target: Iterable[str], what: str, *, many: bool = False
    ) -> Iterator[str]:
        known = set(target)
        for place, row in tables[table].placed():
            for value in items(row[column]) if many else [row[column]]:
                if value and value not in known:
                    yield f"{place} {column}: no {what} {value!r}"

    for name, table in tables.tables.items():
        for column in table.rows[0] if table.rows else ():
            if column == "source" or column.endswith("_src"):
                yield from point(name, column, sources, "source")
        yield from _check_sourced(table)
    for name in FOOD_TABLES:
        yield from point(name, "cuts", cuts, "cut", many=True)
        if classes:
            yield from point(name, "doneness", classes, "doneness class")
        if minimums:
            yield from point(name, "safety", minimums, "safe minimum")
    for name in ("names", "portions", "food_factors", "states"):
        yield from point(name, "food_id", foods, "food")
    yield from point("states", "variant_id", foods, "food")
    yield from point("vessel_sizes", "vessel", vessels, "vessel")
    yield from point("vessels", "methods", (row["id"] for row in tables["methods"].rows), "method", many=True)


def _check_sourced(table: Table) -> Iterator[str]:
    """Every figure of a small table has a source beside it; the food tables are checked by column."""
    for place, row in table.placed():
        if "composition_src" in row or "licence" in row:
            continue  # a food, checked by its columns; a source itself
        for column, cell in row.items():
            if column in NO_FIGURES or not _is_figure(cell):
                continue
            source = f"{column}_src" if f"{column}_src" in row else "source"
            if not row.get(source):
                yield f"{place} {source}: is empty, {column} needs a source"


def _is_figure(cell: str) -> bool:
    return re.fullmatch(r"-?\d+(?:\.\d+)?", cell) is not None
