"""Tables -> file: every problem is told at once, nothing half-made is left behind."""

from __future__ import annotations

import csv
import io
import shutil
import sqlite3
from collections.abc import Callable
from pathlib import Path

import pytest

from bot.__main__ import main
from bot.commands import build as command
from knowledge.errors import BadData
from knowledge.foods import store
from knowledge.foods.build import build
from knowledge.foods.load import load
from knowledge.tables import DATA


@pytest.fixture
def tables(tmp_path: Path) -> Path:
    folder = tmp_path / "tables"
    shutil.copytree(DATA, folder)
    return folder


def edit(path: Path, change: Callable[[list[str], list[list[str]]], None]) -> None:
    """Change a table: `change(header, rows)` edits in place."""
    with path.open(encoding="utf-8", newline="") as file:
        header, *rows = list(csv.reader(file))
    change(header, rows)
    with path.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file, lineterminator="\n").writerows([header, *rows])


def put(column: str, value: str, row: int = 0) -> Callable[[list[str], list[list[str]]], None]:
    def change(header: list[str], rows: list[list[str]]) -> None:
        rows[row][header.index(column)] = value

    return change


def problems(folder: Path) -> tuple[str, ...]:
    with pytest.raises(BadData) as caught:
        load(folder)
    return caught.value.problems


def test_same_tables_give_the_same_bytes(tmp_path: Path, tables: Path) -> None:
    one, two = tmp_path / "one.sqlite", tmp_path / "two.sqlite"
    build(one, tables)
    build(two, tables)
    assert one.read_bytes() == two.read_bytes()


def test_a_number_out_of_range_is_named_with_file_line_column_and_range(tables: Path) -> None:
    edit(tables / "foods.csv", put("density_kg_m3", "1.05", row=29))
    assert "foods.csv:31 density_kg_m3: 1.05 is outside 100-2000 kg/m3" in problems(tables)


@pytest.mark.parametrize(
    ("column", "value", "told"),
    [
        ("serving_g", "a lot", "serving_g: 'a lot' is not a number"),
        ("role", "main", "role: 'main' is not one of cook, finish, season"),
        ("whole_shape", "banana", "whole_shape: 'banana' is not one of"),
        ("allergens", "milk;pollen", "allergens: 'pollen' is not one of"),
        ("cuts", "whole;pulverised", "cuts: no cut 'pulverised'"),
        ("doneness", "well done", "doneness: no doneness class 'well done'"),
        ("serving_g_src", "", "serving_g_src: is empty, serving_g needs a source"),
        ("serving_g_src", "HEARSAY", "serving_g_src: no source 'HEARSAY'"),
        ("water_g", "12", "composition: adds up to"),
        ("protein_g", "", "protein_g: is empty while water_g is known"),
        ("name", "", "name: is empty"),
        ("whole_mm", "", "whole_mm: is empty"),
        ("season", "summer", "season: 'summer' is not months"),
        ("season", "0-13", "season: '0-13' is not months"),
        ("season_src", "", "season_src: is empty, season needs a source"),
    ],
)
def test_a_wrong_cell_is_told(tables: Path, column: str, value: str, told: str) -> None:
    def change(header: list[str], rows: list[list[str]]) -> None:
        carrot = next(row for row in rows if row[0] == "carrot")
        carrot[header.index(column)] = value

    edit(tables / "foods.csv", change)
    assert any(told in problem for problem in problems(tables))


def test_a_figure_of_a_small_table_needs_its_source(tables: Path) -> None:
    edit(tables / "doneness.csv", put("source", ""))
    assert any("doneness.csv:2 source: is empty, " in problem for problem in problems(tables))


def test_all_problems_come_at_once(tables: Path) -> None:
    edit(tables / "foods.csv", put("serving_g", "-4"))
    edit(tables / "portions.csv", put("grams", "nil"))
    edit(tables / "cuts.csv", lambda header, rows: rows.append(rows[0]))
    edit(tables / "names.csv", put("food_id", "unobtainium"))
    said = problems(tables)
    assert {line.split(":")[0] for line in said} >= {"foods.csv", "portions.csv", "cuts.csv", "names.csv"}


def test_a_missing_column_and_a_short_row_are_told(tables: Path) -> None:
    (tables / "cuts.csv").write_text("id,name\nwhole,whole\n", encoding="utf-8")
    with (tables / "names.csv").open("a", encoding="utf-8") as file:
        file.write("lonely\n")
    said = problems(tables)
    assert any(line.startswith("cuts.csv:1 header: ") and "no column 'shape'" in line for line in said)
    assert any("1 cells where the header has 4" in line for line in said)


def test_a_table_that_is_not_text_is_told(tables: Path) -> None:
    (tables / "names.csv").write_bytes(b"name,food_id,region,rank\n\xff\xfe,carrot,,\n")
    assert any("names.csv: not UTF-8 text" in line for line in problems(tables))


def test_a_broken_row_stops_the_build_and_the_old_file_stays(tmp_path: Path, tables: Path) -> None:
    target = tmp_path / "knowledge.sqlite"
    build(target, tables)
    before = target.read_bytes()
    edit(tables / "foods.csv", put("serving_g", "0"))
    with pytest.raises(BadData):
        build(target, tables)
    assert target.read_bytes() == before
    assert [p.name for p in tmp_path.glob("*.sqlite")] == ["knowledge.sqlite"]


@pytest.fixture
def broken(tmp_path: Path, tables: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Our own tables with two problems, and the file of the time before; that file."""
    monkeypatch.setenv("PANWRIGHT_HOME", str(tmp_path / "home"))
    before = store.default_path(tables)
    build(before, tables)
    edit(tables / "foods.csv", put("serving_g", "0"))
    edit(tables / "tolerant.csv", put("wet_min", "abc"))
    now = store.default_path(tables)
    monkeypatch.setattr(store, "default_path", lambda: now)
    monkeypatch.setattr("knowledge.foods.build.build.__defaults__", (tables,))
    return before


@pytest.mark.parametrize("command", ["plan", "ask", "read", "swap", "times", "foods"])
def test_broken_tables_stop_every_command_with_a_line_for_each_problem(
    broken: Path, command: str, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("carrots, chicken thighs\n"))
    content = broken.read_bytes()
    assert main([command]) == 2
    out, err = capsys.readouterr()
    assert not out
    assert err.splitlines() == [
        f"panwright {command}: foods.csv:2 serving_g: 0 is outside 0.05-1000 g",
        f"panwright {command}: tolerant.csv:2 wet_min: 'abc' is not a number; expected 0-600 min",
    ]
    assert [path.read_bytes() for path in broken.parent.glob("*.sqlite")] == [content]


def test_the_command_counts_what_it_built_and_exits_2_on_problems(
    tmp_path: Path, tables: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    out = tmp_path / "k.sqlite"
    assert command.run(["--tables", str(tables), "--out", str(out)]) == 0
    lines = [line.split(maxsplit=1) for line in capsys.readouterr().out.splitlines()[:5]]
    counts = {what: int(count) for count, what in lines}
    assert counts["foods that cook"] >= 450
    assert counts["foods that season or finish"] >= 250
    assert counts["names and synonyms"] >= 2500
    assert out.stat().st_size < 5_000_000
    assert command.run(["--check", "--tables", str(tables)]) == 0
    edit(tables / "foods.csv", put("serving_g", "0"))
    assert command.run(["--check", "--tables", str(tables)]) == 2
    assert "foods.csv:2 serving_g" in capsys.readouterr().err


def test_no_tables_no_file(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "k.sqlite"
    assert command.run(["--tables", str(tmp_path / "nowhere"), "--out", str(out)]) == 2
    assert "nowhere: expected a folder with the tables" in capsys.readouterr().err
    assert not out.exists()


def test_a_place_that_cannot_be_written_is_told(tmp_path: Path, tables: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    with pytest.raises(BadData, match="PANWRIGHT_HOME"):
        build(tmp_path / "file" / "k.sqlite", tables)


def test_a_file_from_a_newer_version_is_refused_with_the_command_that_helps(
    tmp_path: Path, tables: Path
) -> None:
    target = tmp_path / "k.sqlite"
    build(target, tables)
    with sqlite3.connect(target) as database:
        database.execute(f"PRAGMA user_version = {store.FORMAT + 1}")
    database.close()
    with pytest.raises(BadData, match=r"newer version.*panwright build"):
        store.open_store(target)


@pytest.mark.parametrize("content", [b"", b"not a database at all, only words" * 50])
def test_a_file_that_is_no_knowledge_file_is_refused(tmp_path: Path, content: bytes) -> None:
    target = tmp_path / "k.sqlite"
    target.write_bytes(content)
    with pytest.raises(BadData, match="panwright build"):
        store.open_store(target)
    with pytest.raises(BadData, match="does not exist"):
        store.open_store(tmp_path / "nowhere.sqlite")
