"""Full-text search over the notes on technique (`technique.csv`).

An SQLite FTS5 index in memory, filled at the first search from the opened store. It
finds what comes near; whether that answers a question is decided in `notes`.
"""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Iterable
from functools import lru_cache

from knowledge.foods.store import Store

_WORD = re.compile(r"\w+")
_TITLE, _BODY = 4, 1  # what a word counts in the words of a note, and in its text


def nearest(store: Store, words: Iterable[str], *, limit: int) -> tuple[str, ...]:
    """Ids of the notes that hold any of these words, best first (BM25)."""
    query = " OR ".join(f'"{word}"' for word in words if _WORD.fullmatch(word))
    if not query:
        return ()
    rows = _index(store).execute(
        "SELECT id FROM notes WHERE notes MATCH ? ORDER BY bm25(notes, 0, ?, ?), id LIMIT ?",
        (f"{{title body}}: ({query})", _TITLE, _BODY, limit),
    )
    return tuple(row[0] for row in rows)


@lru_cache(maxsize=4)
def _index(store: Store) -> sqlite3.Connection:
    database = sqlite3.connect(":memory:", check_same_thread=False)
    database.execute(
        "CREATE VIRTUAL TABLE notes USING fts5(id UNINDEXED, title, body,"
        " tokenize = 'porter unicode61 remove_diacritics 2')"
    )
    rows = ((row["id"], row["words"], row["text"]) for row in store.table("technique"))
    database.executemany("INSERT INTO notes VALUES (?, ?, ?)", rows)
    return database
