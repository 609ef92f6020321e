"""Every table has a schema, and every column of it refuses what does not belong there."""

from __future__ import annotations

import csv
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.errors import BadData
from knowledge.foods import columns
from knowledge.foods.kinds import By, Form, Id, Kind, Number, Pattern, Schema, Word
from knowledge.foods.load import load
from knowledge.foods.schemas import FILES, SCHEMAS
from knowledge.foods.schemas_words import Cue
from knowledge.tables import DATA, Row, files, read

Cell = tuple[str, int, str, str]  # column, row, what is put there, the column that is told

TABLES = {path.stem: read(path)[0] for path in files()}


def schema(stem: str) -> Schema:
    return SCHEMAS[FILES[stem]]


def test_every_table_has_a_schema_and_every_schema_a_table() -> None:
    assert set(TABLES) == set(FILES)
    assert set(FILES.values()) == set(SCHEMAS)


@pytest.mark.parametrize("stem", sorted(FILES))
def test_the_columns_are_those_of_the_schema_and_figures_stand_beside_a_source(stem: str) -> None:
    columns = schema(stem).columns
    assert set(TABLES[stem].header) == set(columns)
    for column, kind in columns.items():
        if column == "source" or column.endswith("_src"):
            assert isinstance(kind, Id)
            assert kind.column == "sources.id"
        assert not kind.source or kind.source in columns, column
    if "source" in columns and not any(kind.source for kind in columns.values()):
        assert not [c for c, kind in columns.items() if isinstance(kind, Number) and not kind.whole]


def test_figures_and_ids_are_not_taken_for_text() -> None:
    """A column that holds but numbers, or but ids of foods, is said to be so."""
    foods = {row["id"] for stem in ("foods", "seasonings") for row in TABLES[stem].rows}
    for stem, table in TABLES.items():
        for column, kind in schema(stem).columns.items():
            cells = {row[column] for row in table.rows} - {""}
            if type(kind) is Kind and cells and column != "id":
                entries = {part for cell in cells for part in cell.split(";")}
                assert not all(cell.replace(".", "").isdecimal() for cell in cells), (stem, column)
                assert not entries <= foods, (stem, column)


def of_row(kind: Kind, row: Row) -> Kind | None:
    return kind.kinds.get(row[kind.column]) if isinstance(kind, By) else kind


def places(stem: str) -> Iterator[tuple[str, int, Kind]]:
    """A row for each column, never that of the column which says what this one holds."""
    rows = TABLES[stem].rows
    decides = {kind.column for kind in schema(stem).columns.values() if isinstance(kind, By)}
    for at, (column, kind) in enumerate(schema(stem).columns.items()):
        row = len(rows) - 1 if column in decides else at % (len(rows) - bool(decides))
        held = of_row(kind, rows[row])
        if held is not None:
            yield column, row, held


def nonsense(stem: str) -> Iterator[Cell]:
    wrong: dict[type[Kind], str] = {
        Number: "abc", Word: "sideways", Id: "no-such-thing", Form: "?!", Pattern: "(unclosed", Cue: "{gone}",
    }  # fmt: skip
    for column, row, kind in places(stem):
        if type(kind) in wrong:
            yield column, row, wrong[type(kind)], column


def not_a_number(stem: str) -> Iterator[Cell]:
    return ((c, row, "nan", c) for c, row, kind in places(stem) if isinstance(kind, Number))


def too_much(stem: str) -> Iterator[Cell]:
    for column, row, kind in places(stem):
        if isinstance(kind, Number):
            yield column, row, f"{10 * abs(kind.high) + 1:g}", column


def too_little(stem: str) -> Iterator[Cell]:
    return ((c, row, f"{k.low - 1:g}", c) for c, row, k in places(stem) if isinstance(k, Number))


def nothing(stem: str) -> Iterator[Cell]:
    return ((column, row, "", column) for column, row, kind in places(stem) if not kind.blank)


def no_source(stem: str) -> Iterator[Cell]:
    for column, kind in schema(stem).columns.items():
        held = ((n, of_row(kind, row)) for n, row in enumerate(TABLES[stem].rows) if row[column])
        place = next((n for n, by in held if by is not None and by.source), None)
        if kind.source and place is not None:
            yield kind.source, place, "", kind.source


ROUNDS = (nonsense, not_a_number, too_much, too_little, nothing, no_source)


@pytest.fixture(scope="module", params=ROUNDS, ids=lambda wrong: wrong.__name__)
def round_of(
    request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory
) -> tuple[object, set[str]]:
    """All tables with one such cell in every column of each; where the check then points."""
    folder = tmp_path_factory.mktemp("tables")
    for stem, table in TABLES.items():
        rows = [dict(row) for row in table.rows]
        for column, row, cell, _ in request.param(stem):
            rows[row][column] = cell
        write(folder / f"{stem}.csv", table.header, rows)
    return request.param, set(heads(folder))


def write(path: Path, header: tuple[str, ...], rows: list[dict[str, str]]) -> None:
    with path.open("w", encoding="utf-8", newline="") as file:
        out = csv.DictWriter(file, header, lineterminator="\n")
        out.writeheader()
        out.writerows(rows)


def heads(folder: Path) -> Iterator[str]:
    with pytest.raises(BadData) as caught:
        load(folder)
    for problem in caught.value.problems:
        place, _, rest = problem.partition(" ")
        yield f"{place} {rest.partition(':')[0]}"


@pytest.mark.parametrize("stem", sorted(FILES))
def test_every_column_refuses_what_does_not_belong(stem: str, round_of: tuple[object, set[str]]) -> None:
    wrong, told = round_of
    assert callable(wrong)
    cells = list(wrong(stem))
    missed = [f"{at}: {c!r}" for _, row, c, at in cells if f"{stem}.csv:{row + 2} {at}" not in told]
    assert not missed


def test_a_row_that_comes_twice_is_told_in_every_table(tmp_path: Path) -> None:
    for stem, table in TABLES.items():
        write(tmp_path / f"{stem}.csv", table.header, [dict(row) for row in (*table.rows, table.rows[0])])
    told = set(heads(tmp_path))
    for stem, table in TABLES.items():
        for keys in schema(stem).unique:
            assert f"{stem}.csv:{len(table.rows) + 2} {'+'.join(keys)}" in told


def test_every_table_that_is_missing_is_told(tmp_path: Path) -> None:
    shutil.copy(DATA / "sources.csv", tmp_path)
    told = {problem.partition(":")[0] for problem in problems(tmp_path) if ": is missing from" in problem}
    assert told == {f"{stem}.csv" for stem in FILES} - {"sources.csv"}


def problems(folder: Path) -> tuple[str, ...]:
    with pytest.raises(BadData) as caught:
        load(folder)
    return caught.value.problems


def test_an_empty_table_and_no_tables_at_all_are_told(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(DATA, tmp_path / "tables"))
    (folder / "handling.csv").write_text(",".join(TABLES["handling"].header) + "\n", encoding="utf-8")
    (folder / "storage.csv").write_bytes(b"")
    said = problems(folder)
    assert "handling.csv: has no rows" in said
    assert any(line.startswith("storage.csv:1 header: ") for line in said)
    (tmp_path / "empty").mkdir()
    for nowhere in (tmp_path / "empty", tmp_path / "nowhere"):
        assert problems(nowhere) == (f"{nowhere}: expected a folder with the tables, *.csv",)


def test_a_fahrenheit_that_is_not_its_celsius_is_told(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(DATA, tmp_path / "tables"))
    table = TABLES["safe_minimums"]
    rows = [dict(row) for row in table.rows]
    rows[0]["core_degF"] = "150"
    write(folder / "safe_minimums.csv", table.header, rows)
    assert problems(folder) == (
        f"safe_minimums.csv:2 core_degF: 150 degF is not {rows[0]['core_degC']} degC",
    )


@given(column=st.sampled_from(sorted(columns.FIGURES)), cell=st.text(max_size=12))
def test_no_cell_whatsoever_breaks_the_check(column: str, cell: str) -> None:
    row = {column: cell, columns.FIGURES[column].source: "CP"}
    for at, wrong in columns.FIGURES[column].problems(column, row, lambda _: None):
        assert at == column
        assert "expected" in wrong or "outside" in wrong
