"""One process a file: a lock that ends with its process, and what is said when a file cannot be used."""

from __future__ import annotations

import sqlite3
from pathlib import Path


class StoreError(Exception):
    """The file cannot be used; the text is one line that says why and what to do."""


def hold_lock(path: Path) -> sqlite3.Connection:
    """A lock that the system lets go when the process ends, however it ends."""
    lock = sqlite3.connect(f"{path}.lock", isolation_level=None, timeout=0.0, check_same_thread=False)
    try:
        lock.execute("BEGIN EXCLUSIVE")
    except sqlite3.OperationalError as error:
        lock.close()
        if "locked" in str(error):
            raise StoreError(f"another Panwright is using {path}; stop that one first") from error
        raise
    return lock


def plain(error: Exception) -> str:
    """An error of the system in one line, without the path it may repeat."""
    if isinstance(error, OSError) and error.strerror:
        return error.strerror
    known = {
        "file is not a database": "it is damaged or not a Panwright file; nothing was changed",
        "unable to open database file": "the folder or file cannot be written",
        "attempt to write a readonly database": "the folder or file cannot be written",
    }
    return known.get(str(error), str(error))
