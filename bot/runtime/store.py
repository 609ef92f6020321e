"""What the bot must not forget, in one SQLite file with one writer.

Every change is one short immediate transaction (a read that turns into a write
could fail at once with "database is locked"). `accept` stores an event before it
is acknowledged; `finish` writes new state, reminders, messages and the event's
end together; the outbox and the reminder loop only look at rows.

Opening takes a lock that lives as long as the process: a second one is refused.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import Any

import msgspec
from sqlite_utils import Database

from bot.core.actions import Action, Button, CancelReminders, Remind, Say
from bot.core.events import ButtonPressed, DueReminder, OddMessage, RemindersDue, TextReceived
from bot.runtime.lock import StoreError, hold_lock, plain
from bot.runtime.migrations import KNOWN, migrations
from bot.transports.base import Incoming

KEEP_DONE_S = 7 * 86_400.0  # platforms repeat an update for a day at most

_KINDS: dict[str, type[TextReceived | ButtonPressed | OddMessage]] = {
    kind.__name__: kind for kind in (TextReceived, ButtonPressed, OddMessage)
}
_Rows = tuple[tuple[Button, ...], ...]


class _MovedError(Exception):
    """A reminder is no longer what it was when its event was made."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """A row of the outbox, as the delivery needs it."""

    id: int
    chat_id: str
    text: str
    buttons: _Rows
    urgent: bool
    attempts: int
    maybe_repeat: bool
    written_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class ClockRow:
    """How the bot's clock ran last: it showed `shown_at` at the real time `real_at`."""

    real_at: datetime
    shown_at: datetime
    pace: float


class Store:
    """The bot's file. Raises StoreError from the constructor; use it as a context manager."""

    def __init__(self, path: Path | None) -> None:
        """Open or make the file at `path`; None keeps everything in memory, for tests."""
        self._lock: sqlite3.Connection | None = None
        name = ":memory:" if path is None else str(path)
        try:
            if path is not None:
                path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
                self._lock = hold_lock(path)
            connection = sqlite3.connect(name, isolation_level=None, timeout=5.0, check_same_thread=False)
            connection.row_factory = sqlite3.Row
            self._db = Database(connection)
            self._prepare(in_memory=path is None)
        except (OSError, sqlite3.Error) as error:
            if self._lock is not None:
                self._lock.close()
            raise StoreError(f"cannot use {name}: {plain(error)}") from error

    def _prepare(self, *, in_memory: bool) -> None:
        applied = {migration.name for migration in migrations.applied(self._db)}
        if applied - KNOWN:
            raise sqlite3.DatabaseError("it was written by a newer Panwright; use that one")
        if not applied and self._db.table_names():
            raise sqlite3.DatabaseError("it is not a Panwright file; nothing was changed")
        if not in_memory:
            self._db.enable_wal()
        self._db.execute("PRAGMA synchronous = FULL")
        if KNOWN - applied:
            migrations.apply(self._db)

    def __enter__(self) -> Store:
        return self

    def __exit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        self.close()

    def close(self) -> None:
        """Close the file and let go of the lock."""
        self._db.close()
        if self._lock is not None:
            self._lock.close()

    @contextmanager
    def _transaction(self) -> Iterator[None]:
        self._db.execute("BEGIN IMMEDIATE")
        try:
            yield
        except BaseException:
            self._db.rollback()
            raise
        self._db.commit()

    def _rows(self, sql: str, *parameters: Any) -> list[sqlite3.Row]:
        return list(self._db.execute(sql, parameters).fetchall())

    def _one(self, sql: str, *parameters: Any) -> sqlite3.Row | None:
        row: sqlite3.Row | None = self._db.execute(sql, parameters).fetchone()
        return row

    # --- events in

    def accept(self, incoming: Incoming, now: datetime) -> bool:
        """Keep an event until it is handled. False when its key is known already."""
        event = incoming.event
        if isinstance(event, RemindersDue):
            raise TypeError("reminders come from their rows, not from a transport")
        with self._transaction():
            cursor = self._db.execute(
                "INSERT OR IGNORE INTO inbox (key, chat_id, kind, body, received_at) VALUES (?, ?, ?, ?, ?)",
                (incoming.key, incoming.chat_id, type(event).__name__, msgspec.json.encode(event), _s(now)),
            )
            return cursor.rowcount == 1

    def next_event(self, chat_id: str) -> tuple[int, TextReceived | ButtonPressed | OddMessage] | None:
        """The oldest event of a chat that waits, with its row id."""
        row = self._one(
            "SELECT id, kind, body FROM inbox WHERE state = 'new' AND chat_id = ? ORDER BY id LIMIT 1",
            chat_id,
        )
        if row is None:
            return None
        return row["id"], msgspec.json.decode(row["body"], type=_KINDS[row["kind"]])

    def chats_with_events(self) -> list[str]:
        """Chats that have an event waiting."""
        return [row[0] for row in self._rows("SELECT DISTINCT chat_id FROM inbox WHERE state = 'new'")]

    # --- state

    def state(self, chat_id: str) -> bytes | None:
        """The saved conversation as JSON, None for a new chat."""
        row = self._one("SELECT state FROM chats WHERE chat_id = ?", chat_id)
        return None if row is None else bytes(row["state"])

    def finish(
        self,
        chat_id: str,
        *,
        state: bytes | None,
        actions: Iterable[Action],
        now: datetime,
        event_id: int | None = None,
        fired: tuple[DueReminder, ...] = (),
        failure: str = "",
        set_aside: bytes | None = None,
    ) -> bool:
        """Write the outcome of one event in one transaction.

        `state` None leaves the saved one; `set_aside` keeps one that could not be
        read. `fired` are the reminders this event was made of: if any of them was
        moved or taken meanwhile nothing is written and False is returned.
        """
        try:
            with self._transaction():
                for reminder in fired:
                    self._claim(chat_id, reminder)
                if state is not None:
                    self._db.execute(
                        "INSERT INTO chats (chat_id, state, set_aside) VALUES (?, ?, ?) "
                        "ON CONFLICT (chat_id) DO UPDATE SET state = excluded.state, "
                        "set_aside = coalesce(excluded.set_aside, set_aside)",
                        (chat_id, state, set_aside),
                    )
                for action in actions:
                    self._write(chat_id, action, now)
                if event_id is not None:
                    self._db.execute(
                        "UPDATE inbox SET state = ?, reference = ? WHERE id = ?",
                        ("failed" if failure else "done", failure, event_id),
                    )
        except _MovedError:
            return False
        return True

    def _claim(self, chat_id: str, reminder: DueReminder) -> None:
        claimed = self._db.execute(
            "UPDATE reminders SET state = 'fired' "
            "WHERE chat_id = ? AND key = ? AND due_at = ? AND state = 'waiting'",
            (chat_id, reminder.key, _s(reminder.due_at)),
        )
        if claimed.rowcount != 1:
            raise _MovedError

    def _write(self, chat_id: str, action: Action, now: datetime) -> None:
        match action:
            case Say():
                self._db.execute(
                    "INSERT OR IGNORE INTO outbox (chat_id, key, text, buttons, urgent, written_at) "
                    "VALUES (?, ?, ?, ?, ?, ?)",
                    (
                        chat_id,
                        action.key,
                        action.text,
                        msgspec.json.encode(action.buttons).decode(),
                        int(action.urgent),
                        _s(now),
                    ),
                )
            case Remind():
                self._db.execute(
                    "INSERT INTO reminders (chat_id, key, cook_id, step_id, due_at) VALUES (?, ?, ?, ?, ?) "
                    "ON CONFLICT (chat_id, key) DO UPDATE SET due_at = excluded.due_at, state = 'waiting' "
                    "WHERE reminders.state <> 'fired'",
                    (chat_id, action.key, action.cook_id, action.step_id, _s(action.due_at)),
                )
            case CancelReminders(cook_id=cook_id, keys=None):
                self._db.execute(
                    "UPDATE reminders SET state = 'cancelled' "
                    "WHERE chat_id = ? AND cook_id = ? AND state = 'waiting'",
                    (chat_id, cook_id),
                )
            case CancelReminders(cook_id=cook_id, keys=tuple() as keys):
                for key in keys:
                    self._db.execute(
                        "UPDATE reminders SET state = 'cancelled' "
                        "WHERE chat_id = ? AND cook_id = ? AND key = ? AND state = 'waiting'",
                        (chat_id, cook_id, key),
                    )

    # --- reminders

    def due(self, chat_id: str, now: datetime) -> tuple[DueReminder, ...]:
        """All reminders of a chat whose time has come, earliest first."""
        rows = self._rows(
            "SELECT key, cook_id, step_id, due_at FROM reminders "
            "WHERE state = 'waiting' AND chat_id = ? AND due_at <= ? ORDER BY due_at, key",
            chat_id,
            _s(now),
        )
        return tuple(
            DueReminder(
                key=row["key"], cook_id=row["cook_id"], step_id=row["step_id"], due_at=_at(row["due_at"])
            )
            for row in rows
        )

    def chats_due(self, now: datetime) -> list[str]:
        """Chats with a reminder whose time has come, the longest overdue first."""
        return [
            row[0]
            for row in self._rows(
                "SELECT chat_id FROM reminders WHERE state = 'waiting' AND due_at <= ? "
                "GROUP BY chat_id ORDER BY min(due_at)",
                _s(now),
            )
        ]

    def next_due(self, after: datetime) -> datetime | None:
        """When the next reminder later than `after` comes due."""
        row = self._one("SELECT min(due_at) FROM reminders WHERE state = 'waiting' AND due_at > ?", _s(after))
        return None if row is None or row[0] is None else _at(row[0])

    def next_reminder(self, chat_id: str) -> datetime | None:
        """When the next reminder of a chat comes due, or came; None when it waits for none."""
        row = self._one("SELECT min(due_at) FROM reminders WHERE state = 'waiting' AND chat_id = ?", chat_id)
        return None if row is None or row[0] is None else _at(row[0])

    def latest_due(self) -> datetime | None:
        """The latest time any reminder stood for, waiting or past; None when there never was one."""
        row = self._one("SELECT max(due_at) FROM reminders WHERE state <> 'cancelled'")
        return None if row is None or row[0] is None else _at(row[0])

    # --- messages out

    def next_message(self, chat_id: str) -> Message | None:
        """What goes out next in a chat: urgent before chatter, each in order."""
        row = self._one(
            "SELECT * FROM outbox WHERE state = 'queued' AND chat_id = ? ORDER BY urgent DESC, id LIMIT 1",
            chat_id,
        )
        return None if row is None else _message(row)

    def last_with_buttons(self, chat_id: str) -> Message | None:
        """The latest delivered message of a chat that carries buttons."""
        row = self._one(
            "SELECT * FROM outbox WHERE chat_id = ? AND state = 'sent' AND buttons <> '[]' "
            "ORDER BY id DESC LIMIT 1",
            chat_id,
        )
        return None if row is None else _message(row)

    def chats_with_messages(self) -> list[str]:
        """Chats that have something to be delivered."""
        return [row[0] for row in self._rows("SELECT DISTINCT chat_id FROM outbox WHERE state = 'queued'")]

    def mark_sending(self, message_id: int) -> None:
        """Note, before it is tried, that a message is being sent."""
        with self._transaction():
            self._db.execute(
                "UPDATE outbox SET state = 'sending', attempts = attempts + 1 WHERE id = ?", (message_id,)
            )

    def mark(self, message_id: int, state: str, *, reference: str = "", maybe_repeat: bool = False) -> None:
        """Note how a try ended: 'sent', 'queued' (again), 'unsure', 'refused' or 'given up'."""
        with self._transaction():
            self._db.execute(
                "UPDATE outbox SET state = ?, reference = ?, maybe_repeat = maybe_repeat | ? WHERE id = ?",
                (state, reference, int(maybe_repeat), message_id),
            )

    def requeue_cut_off(self) -> int:
        """After a crash: queue what was being sent again, marked as a possible repeat. Returns how many."""
        with self._transaction():
            cursor = self._db.execute(
                "UPDATE outbox SET state = 'queued', maybe_repeat = 1 WHERE state = 'sending'"
            )
            return int(cursor.rowcount)

    # --- housekeeping

    def forget_old(self, now: datetime) -> None:
        """Drop handled events, past reminders and delivered messages older than a week."""
        before = _s(now) - KEEP_DONE_S
        with self._transaction():
            self._db.execute("DELETE FROM inbox WHERE state <> 'new' AND received_at < ?", (before,))
            self._db.execute("DELETE FROM reminders WHERE state <> 'waiting' AND due_at < ?", (before,))
            self._db.execute(
                "DELETE FROM outbox WHERE state NOT IN ('queued', 'sending') AND written_at < ?", (before,)
            )

    def salt(self) -> bytes:
        """Random bytes of this file, for hashing chat ids in logs."""
        row = self._one("SELECT value FROM salt")
        return bytes(row["value"]) if row is not None else b""

    def clock(self) -> ClockRow | None:
        """How the clock ran when the file was last used."""
        row = self._one("SELECT real_at, shown_at, pace FROM clock")
        if row is None:
            return None
        return ClockRow(real_at=_at(row["real_at"]), shown_at=_at(row["shown_at"]), pace=row["pace"])

    def set_clock(self, clock: ClockRow) -> None:
        """Keep how the clock runs from now on."""
        with self._transaction():
            self._db.execute(
                "INSERT OR REPLACE INTO clock (only_row, real_at, shown_at, pace) VALUES (1, ?, ?, ?)",
                (_s(clock.real_at), _s(clock.shown_at), clock.pace),
            )


def _message(row: sqlite3.Row) -> Message:
    return Message(
        id=row["id"],
        chat_id=row["chat_id"],
        text=row["text"],
        buttons=msgspec.json.decode(row["buttons"], type=_Rows),
        urgent=bool(row["urgent"]),
        attempts=row["attempts"],
        maybe_repeat=bool(row["maybe_repeat"]),
        written_at=_at(row["written_at"]),
    )


def _s(when: datetime) -> float:
    return when.timestamp()


def _at(seconds: float) -> datetime:
    return datetime.fromtimestamp(seconds, UTC)
