"""The tables of the bot's one SQLite file, as steps that only go forward.

Times are UTC seconds since 1970 on the bot's clock (which an accelerated run
lets run faster); JSON columns hold what `store` writes there.
"""

from __future__ import annotations

from sqlite_utils import Database, Migrations

migrations = Migrations("panwright")


@migrations()
def first_tables(db: Database) -> None:
    """Conversations, what came in, what is to be woken for, what goes out."""
    statements = (
        """CREATE TABLE chats (
            chat_id TEXT PRIMARY KEY,
            state BLOB NOT NULL,
            set_aside BLOB
        ) STRICT""",
        """CREATE TABLE inbox (
            id INTEGER PRIMARY KEY,
            key TEXT NOT NULL UNIQUE,
            chat_id TEXT NOT NULL,
            kind TEXT NOT NULL,
            body BLOB NOT NULL,
            received_at REAL NOT NULL,
            state TEXT NOT NULL DEFAULT 'new' CHECK (state IN ('new', 'done', 'failed')),
            reference TEXT NOT NULL DEFAULT ''
        ) STRICT""",
        "CREATE INDEX inbox_waiting ON inbox (chat_id, id) WHERE state = 'new'",
        """CREATE TABLE reminders (
            chat_id TEXT NOT NULL,
            key TEXT NOT NULL,
            cook_id TEXT NOT NULL,
            step_id TEXT NOT NULL,
            due_at REAL NOT NULL,
            state TEXT NOT NULL DEFAULT 'waiting' CHECK (state IN ('waiting', 'fired', 'cancelled')),
            PRIMARY KEY (chat_id, key)
        ) STRICT""",
        "CREATE INDEX reminders_due ON reminders (due_at) WHERE state = 'waiting'",
        """CREATE TABLE outbox (
            id INTEGER PRIMARY KEY,
            chat_id TEXT NOT NULL,
            key TEXT NOT NULL DEFAULT '',
            text TEXT NOT NULL,
            buttons TEXT NOT NULL,
            urgent INTEGER NOT NULL DEFAULT 0,
            state TEXT NOT NULL DEFAULT 'queued'
                CHECK (state IN ('queued', 'sending', 'sent', 'unsure', 'refused', 'given up')),
            attempts INTEGER NOT NULL DEFAULT 0,
            maybe_repeat INTEGER NOT NULL DEFAULT 0,
            written_at REAL NOT NULL,
            reference TEXT NOT NULL DEFAULT ''
        ) STRICT""",
        "CREATE INDEX outbox_waiting ON outbox (chat_id, urgent DESC, id) WHERE state = 'queued'",
        "CREATE UNIQUE INDEX outbox_once ON outbox (chat_id, key) WHERE key <> ''",
        """CREATE TABLE clock (
            only_row INTEGER PRIMARY KEY CHECK (only_row = 1),
            real_at REAL NOT NULL,
            shown_at REAL NOT NULL,
            pace REAL NOT NULL
        ) STRICT""",
        "CREATE TABLE salt (only_row INTEGER PRIMARY KEY CHECK (only_row = 1), value BLOB NOT NULL) STRICT",
        "INSERT INTO salt VALUES (1, randomblob(16))",
    )
    for statement in statements:
        db.execute(statement)


KNOWN = frozenset(migration.name for migration in migrations.pending(Database(memory=True)))
