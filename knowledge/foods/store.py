"""Look-ups in the built knowledge file. Gives records, never rows or cursors.

`open_store()` builds the file from the tables when it is missing or the tables have
changed: its name holds the digest of the tables, so a stale file is simply not found.
Opening reads nothing but the version; each record is made when first asked for and kept.
"""

from __future__ import annotations

import json
import os
import sqlite3
import sys
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from types import MappingProxyType
from typing import Any

from knowledge.errors import BadData, UnknownFood
from knowledge.foods import records
from knowledge.foods.model import Cut, Doneness, Food, Vessel
from knowledge.names import key
from knowledge.tables import DATA, digest

FORMAT = 2
"""Version of the file's layout that this code writes and reads."""

_KEPT_FILES = 4


@dataclass(frozen=True, slots=True, kw_only=True)
class Source:
    """Where a figure comes from."""

    id: str
    author: str
    year: str
    title: str
    part: str  # page, table or row
    licence: str
    read: str  # when it was read, or "memory"

    def __str__(self) -> str:
        who = " ".join(part for part in (self.author, f"({self.year})" if self.year else "") if part)
        return ", ".join(part for part in (who, self.title, self.part) if part)


def home() -> Path:
    """The folder for files this program makes for itself; PANWRIGHT_HOME overrides it."""
    if said := os.environ.get("PANWRIGHT_HOME"):
        return Path(said).expanduser()
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA", Path.home())) / "panwright"
    return Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "panwright"


def default_path(tables: Path = DATA) -> Path:
    """Where the file built from the present tables lies, or will lie."""
    return home() / f"knowledge-{digest(tables)}.{FORMAT}.sqlite"


def open_store(path: Path | None = None) -> Store:
    """Open the knowledge file read-only; without a path, build it first if it is missing or damaged.

    Raises BadData: the tables have problems (all are listed), or the file of that path cannot
    be used (missing, not ours, from a newer version). Files built before stay where they are, but
    are not opened instead: the reader, the diets and the physics read tables of their own,
    and what is planned must not come from two states of them.
    """
    if path is None:
        path = default_path()
        if path.exists():
            with suppress(BadData):  # cut short or overwritten: only a copy of the tables, made again
                return Store(path)
        from knowledge.foods.build import build  # sqlite-utils only when it is needed

        build(path)
        _forget_old_files(path)
    return Store(path)


def _built_files(folder: Path) -> list[tuple[float, Path]]:
    return [(p.stat().st_mtime, p) for p in folder.glob(f"knowledge-*.{FORMAT}.sqlite")]


def _forget_old_files(newest: Path) -> None:
    """Keep the files of the last few states of the tables; other versions may share the folder."""
    for _, old in sorted(_built_files(newest.parent), reverse=True)[_KEPT_FILES:]:
        if old != newest:
            old.unlink(missing_ok=True)


class Store:
    """The knowledge file, opened. Safe to share: nothing in it changes."""

    def __init__(self, path: Path) -> None:
        self.path = path
        if not path.is_file():
            raise BadData((f"{path} does not exist: build it with `panwright build`",))
        try:
            self._db = sqlite3.connect(
                f"{path.resolve().as_uri()}?mode=ro&immutable=1", uri=True, check_same_thread=False
            )
            version = int(self._db.execute("PRAGMA user_version").fetchone()[0])
        except sqlite3.DatabaseError as error:
            raise BadData(
                (f"{path} is not a knowledge file ({error}): rebuild it with `panwright build`",)
            ) from error
        if version != FORMAT:
            self._db.close()
            age = "a newer" if version > FORMAT else "another"
            raise BadData(
                (
                    f"{path} was built by {age} version (layout {version}, this program reads {FORMAT}): "
                    "rebuild it with `panwright build`",
                )
            )
        self._foods: dict[str, Food] = {}
        self._small: dict[str, tuple[Mapping[str, str], ...]] = {}

    def close(self) -> None:
        """Let go of the file."""
        self._db.close()

    def __enter__(self) -> Store:
        return self

    def __exit__(self, *exc: object) -> None:
        self.close()

    # Foods

    def food(self, food_id: str) -> Food:
        """One food by id. Raises UnknownFood."""
        if (known := self._foods.get(food_id)) is not None:
            return known
        row = self._row("foods", "id", food_id)
        if row is None:
            raise UnknownFood(food_id)
        portions = self._all("SELECT * FROM portions WHERE food_id = ?", food_id)
        return self._foods.setdefault(food_id, records.food(row, portions))

    def foods(self) -> tuple[Food, ...]:
        """Every food, in order of id."""
        return self._every_food

    @cached_property
    def _every_food(self) -> tuple[Food, ...]:
        portions: dict[str, list[dict[str, Any]]] = {}
        for row in self._all("SELECT * FROM portions"):
            portions.setdefault(row["food_id"], []).append(row)
        for row in self._all("SELECT * FROM foods"):
            if row["id"] not in self._foods:
                self._foods[row["id"]] = records.food(row, portions.get(row["id"], []))
        return tuple(self._foods[food_id] for food_id in self.food_ids())

    def food_ids(self) -> tuple[str, ...]:
        """Every food's id, in order."""
        return self._food_ids

    @cached_property
    def _food_ids(self) -> tuple[str, ...]:
        return tuple(row["id"] for row in self._all("SELECT id FROM foods ORDER BY id"))

    def names(self) -> Mapping[str, tuple[str, ...]]:
        """Normalised name or synonym -> ids of the foods it may mean, best first."""
        return self._names

    @cached_property
    def _names(self) -> Mapping[str, tuple[str, ...]]:
        rows = self._db.execute("SELECT name, food_ids FROM names ORDER BY name").fetchall()
        return MappingProxyType({name: tuple(ids.split(";")) for name, ids in rows})

    def named(self, name: str) -> Food | None:
        """One food by its exact name or a synonym, however it is written; None if there is none."""
        form = name if name in self._names else key(name) or name.strip()
        if ids := self._names.get(form):
            return self.food(ids[0])
        stated = self._row("stated_names", "name", form)  # "frozen pea", which `names` leaves out
        return self.food(stated["food_id"]) if stated else None

    def in_state(self, food_id: str, state: str | None) -> Food:
        """The food with the figures it has in a state ("pea", "frozen"); itself where none differ."""
        return self.food(self._variants.get((food_id, state or ""), food_id))

    def state_named(self, food_id: str, name: str) -> str | None:
        """The state of a food that its name says ("sardines in oil" are tinned); None where it says none."""
        variant = self._said_in_a_state.get(key(name))
        return next((s for (of, s), v in self._variants.items() if (of, v) == (food_id, variant)), None)

    @cached_property
    def _said_in_a_state(self) -> dict[str, str]:
        """Names of variants, which `names` gives to the plain food: "sardines in oil"."""
        variants = {v for (of, _), v in self._variants.items() if v != of}
        rows = self._all("SELECT name, food_id FROM said_names ORDER BY name")
        return {key(row["name"]): row["food_id"] for row in rows if row["food_id"] in variants}

    @cached_property
    def _variants(self) -> dict[tuple[str, str], str]:
        return {(row["food_id"], row["state"]): row["variant_id"] for row in self.table("states")}

    def synonyms(self, food_id: str) -> tuple[tuple[str, str], ...]:
        """Other names of a food as people write them, each with its region ("" for everywhere)."""
        rows = self._all("SELECT name, region FROM said_names WHERE food_id = ? ORDER BY name", food_id)
        return tuple((row["name"], row["region"]) for row in rows)

    # The kitchen

    def cut(self, cut_id: str) -> Cut:
        """One cut by id. Raises KeyError: cut ids come from the tables."""
        return self._cuts[cut_id]

    def cuts(self) -> tuple[Cut, ...]:
        """Every cut, in order of id."""
        return tuple(self._cuts.values())

    @cached_property
    def _cuts(self) -> dict[str, Cut]:
        return {row["id"]: records.cut(row) for row in self.table("cuts")}

    def vessel(self, vessel_id: str) -> Vessel:
        """One vessel by id. Raises KeyError."""
        return self._vessels[vessel_id]

    def vessels(self) -> tuple[Vessel, ...]:
        """Every vessel with its sizes."""
        return tuple(self._vessels.values())

    @cached_property
    def _vessels(self) -> dict[str, Vessel]:
        sizes = [records.vessel_size(row) for row in self.table("vessel_sizes")]
        return {
            row["id"]: records.vessel(row, tuple(s for s in sizes if s.vessel == row["id"]))
            for row in self.table("vessels")
        }

    def doneness(self, class_id: str) -> Doneness:
        """One doneness class by id. Raises KeyError."""
        return self._classes[class_id]

    @cached_property
    def _classes(self) -> dict[str, Doneness]:
        return {row["id"]: records.doneness(row) for row in self.table("doneness")}

    # Tables and sources

    def table(self, name: str) -> tuple[Mapping[str, str], ...]:
        """The rows of a small table as read, for the module that owns it; none if there is no such table."""
        if name not in self._small:
            row = self._row("small", "name", name)
            self._small[name] = tuple(json.loads(row["rows"])) if row else ()
        return self._small[name]

    def source(self, source_id: str) -> Source:
        """Where a figure comes from. Raises KeyError: source ids come from the tables."""
        return self._sources[source_id]

    @cached_property
    def _sources(self) -> dict[str, Source]:
        return {row["id"]: Source(**row) for row in self._all("SELECT * FROM sources")}

    def _row(self, table: str, column: str, value: str) -> dict[str, Any] | None:
        rows = self._all(f"SELECT * FROM {table} WHERE {column} = ?", value)
        return rows[0] if rows else None

    def _all(self, query: str, *values: str) -> list[dict[str, Any]]:
        cursor = self._db.execute(query, values)
        names = [column[0] for column in cursor.description]
        return [dict(zip(names, row, strict=True)) for row in cursor.fetchall()]
