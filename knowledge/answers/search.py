"""Full-text search over what the tables say: notes on technique, advice, foods.

An SQLite FTS5 index in memory, filled at the first search from the opened store. It
finds what comes near; whether that answers a question is decided in `notes`.
"""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import lru_cache

from knowledge.foods.store import Store


@dataclass(frozen=True, slots=True, kw_only=True)
class Entry:
    """Something that the tables hold."""

    kind: str  # "technique", "advice", "food"
    id: str
    title: str


def nearest(store: Store, words: Iterable[str], *, kind: str = "", limit: int = 8) -> tuple[Entry, ...]:
    """Entries that hold any of these words, best first (BM25, the title counting four times)."""
    query = " OR ".join(f'"{word}"' for word in words if re.fullmatch(r"\w+", word))
    if not query:
        return ()
    rows = _index(store).execute(
        "SELECT kind, id, shown FROM entries WHERE entries MATCH ? AND kind LIKE ?"
        " ORDER BY bm25(entries, 0, 0, 0, 4, 1), id LIMIT ?",
        (f"{{title body}}: ({query})", kind or "%", limit),
    )
    return tuple(Entry(kind=row[0], id=row[1], title=row[2]) for row in rows)


@lru_cache(maxsize=4)
def _index(store: Store) -> sqlite3.Connection:
    database = sqlite3.connect(":memory:", check_same_thread=False)
    database.execute(
        "CREATE VIRTUAL TABLE entries USING fts5(kind UNINDEXED, id UNINDEXED, shown UNINDEXED, title, body,"
        " tokenize = 'porter unicode61 remove_diacritics 2')"
    )
    database.executemany("INSERT INTO entries VALUES (?, ?, ?, ?, ?)", _entries(store))
    return database


def _entries(store: Store) -> Iterator[tuple[str, str, str, str, str]]:
    """What can be found: kind, id, how it is shown, title, body."""
    for row in store.table("technique"):
        yield "technique", row["id"], _as_title(row["id"]), row["words"], row["text"]
    for row in store.table("advice"):
        if row["source"]:  # without one it says what we do not know
            yield "advice", row["id"], _as_title(row["id"]), _as_title(row["id"]), row["answer"]
    names: dict[str, list[str]] = {}
    for name, (best, *_) in store.names().items():
        names.setdefault(best, []).append(name)
    for food in store.foods():
        yield "food", food.id, food.name, " ".join([food.name, *names.get(food.id, [])]), food.does


def _as_title(row_id: str) -> str:
    return row_id.replace("-", " ")
