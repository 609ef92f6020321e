"""CSV tables -> one read-only SQLite file. Same tables, same bytes.

The file holds the tables row by row; `store` turns rows into records. It is written
beside its place and moved there when complete, so that a broken table or a full disk
never harms the file in use.
"""

from __future__ import annotations

import json
import os
import tempfile
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path
from time import perf_counter
from typing import Any

import sqlite_utils

from knowledge.errors import BadData
from knowledge.foods.load import Tables, load
from knowledge.foods.schemas import SCHEMAS
from knowledge.foods.store import FORMAT
from knowledge.names import key
from knowledge.tables import DATA, Row

_OWN = {"foods", "names", "portions", "sources", "food_factors"}
_STATE_WORDS = frozenset(("frozen", "canned", "tinned", "tin", "can", "cooked", "leftover", "dried", "dry"))


@dataclass(frozen=True, slots=True)
class Built:
    """What a build made."""

    path: Path
    cooking: int
    seasoning: int
    names: int
    portions: int
    sources: int
    size_bytes: int
    seconds: float


def build(path: Path, folder: Path = DATA) -> Built:
    """Build the knowledge file at `path` from the tables in `folder`.

    Raises BadData with every problem in the tables, or when the place cannot be
    written; the file that was there before stays.
    """
    began = perf_counter()
    tables = load(folder)
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handle, name = tempfile.mkstemp(dir=path.parent, prefix=".building-", suffix=".sqlite")
        os.close(handle)
        draft = Path(name)
        try:
            _write(draft, tables)
            os.replace(draft, path)
        finally:
            draft.unlink(missing_ok=True)
    except OSError as error:
        raise BadData(
            (f"cannot write {path}: {error.strerror}; set PANWRIGHT_HOME to a folder that can be written",)
        ) from error
    roles = [row["role"] for row in _foods(tables)]
    return Built(
        path=path,
        cooking=roles.count("cook"),
        seasoning=len(roles) - roles.count("cook"),
        names=len(names_of(tables)),
        portions=len(tables["portions"].rows),
        sources=len(tables["sources"].rows),
        size_bytes=path.stat().st_size,
        seconds=perf_counter() - began,
    )


def names_of(tables: Tables) -> dict[str, list[str]]:
    """Normalised name -> ids of the foods it may mean, best first.

    A food's own name comes before any synonym; among synonyms the lower rank wins.
    An emoji has no letters to normalise and stands for itself. The names of a food in a
    state (see states.csv) belong to the plain food: "chopped tomatoes" are tomatoes; one
    that says the state in words ("frozen peas") is left to the reader of both words.
    """
    ranked: dict[str, dict[str, int]] = {}
    plain = {row["variant_id"]: row["food_id"] for row in tables["states"].rows}

    def put(name: str, food_id: str, rank: int) -> None:
        form = key(name) or name
        if food_id in plain:
            if not _STATE_WORDS.isdisjoint(form.split()):
                return
            food_id, rank = plain[food_id], rank + 1
        held = ranked.setdefault(form, {})
        held[food_id] = min(rank, held.get(food_id, rank))

    for row in _foods(tables):
        put(row["name"], row["id"], 0)
        put(row["id"].replace("-", " "), row["id"], 0)
    for row in tables["names"].rows:
        put(row["name"], row["food_id"], int(row["rank"] or 1))
    return {
        name: sorted(held, key=lambda food_id: (held[food_id], food_id))
        for name, held in sorted(ranked.items())
    }


def _foods(tables: Tables) -> list[Row]:
    return sorted(tables["foods"].rows, key=lambda row: row["id"])


def _food_rows(tables: Tables) -> list[dict[str, str]]:
    """The rows of all foods, with the measured factors in place of those of the tables."""
    measured = {row["food_id"]: row for row in tables["food_factors"].rows}
    rows = []
    for food in _foods(tables):
        row = dict(food)
        better = measured.get(row["id"], {})
        for column in ("dose_factor", "target_degC"):
            if better.get(column):
                row[column], row[f"{column}_src"] = better[column], better["source"]
        rows.append(row)
    return rows


def _write(path: Path, tables: Tables) -> None:
    database = sqlite_utils.Database(path)
    try:
        database.execute("PRAGMA journal_mode = OFF")
        with database.atomic():
            _fill(database, tables)
        database.execute(f"PRAGMA user_version = {FORMAT}")
        database.vacuum()
    finally:
        database.close()


def _fill(database: sqlite_utils.Database, tables: Tables) -> None:
    def make(name: str, kinds: dict[str, type], rows: Iterable[Mapping[str, Any]], pk: str | None) -> None:
        table = database.table(name)
        table.create(kinds, pk=pk)
        table.insert_all(map(dict, rows))
        if pk is None:
            table.create_index(["food_id"])

    make("meta", {"name": str, "value": str}, [{"name": "digest", "value": tables.digest}], "name")
    make("foods", dict.fromkeys(SCHEMAS["foods"].columns, str), _food_rows(tables), "id")
    make(
        "names",
        {"name": str, "food_ids": str},
        ({"name": name, "food_ids": ";".join(ids)} for name, ids in names_of(tables).items()),
        "name",
    )
    by_id = {food["id"]: food["name"] for food in _foods(tables)}
    in_a_state = sorted({row["variant_id"] for row in tables["states"].rows})
    make(
        "stated_names",
        {"name": str, "food_id": str},
        ({"name": key(by_id[food_id]), "food_id": food_id} for food_id in in_a_state),
        "name",
    )
    make(
        "said_names",
        {"food_id": str, "name": str, "region": str},
        ({k: row[k] for k in ("food_id", "name", "region")} for row in tables["names"].rows),
        None,
    )
    make(
        "portions",
        {"food_id": str, "unit": str, "size": str, "grams": float, "source": str},
        tables["portions"].rows,
        None,
    )
    make("sources", dict.fromkeys(SCHEMAS["sources"].columns, str), tables["sources"].rows, "id")
    make(
        "small",
        {"name": str, "rows": str},
        (
            {"name": name, "rows": json.dumps(tables[name].rows, ensure_ascii=False)}
            for name in sorted(tables.tables)
            if name not in _OWN
        ),
        "name",
    )
