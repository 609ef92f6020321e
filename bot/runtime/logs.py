"""Log lines that name the event, the chat's hash and a reference; never texts, names or the token."""

from __future__ import annotations

import hashlib
import logging
import re
import secrets
import traceback
from pathlib import Path

_TOKEN = re.compile(r"\d+:[A-Za-z0-9_-]{6,}")


class _Masked(logging.Formatter):
    """The last look at a line before it is written: whatever looks like a token is masked."""

    def format(self, record: logging.LogRecord) -> str:
        return _TOKEN.sub("(token)", super().format(record))


def set_up(*, level: str = "INFO", path: Path | None = None) -> None:
    """Send our lines and the libraries' warnings to standard error, or to the file at `path`."""
    handler = logging.StreamHandler() if path is None else logging.FileHandler(path, delay=True)
    handler.setFormatter(_Masked("%(asctime)s %(levelname)s %(message)s"))
    root = logging.getLogger()
    root.handlers[:] = [handler]
    root.setLevel(logging.WARNING)
    logging.getLogger("bot").setLevel(level)


def new_reference() -> str:
    """A short mark that stands both in the log and in what the cook reads."""
    return secrets.token_hex(3)


def chat_tag(chat_id: str, salt: bytes) -> str:
    """A chat in the log: its id hashed with the salt of this installation."""
    return hashlib.blake2s(chat_id.encode(), key=salt, digest_size=4).hexdigest()


def where(error: BaseException) -> str:
    """Kind and place of an error on one line; its message may hold a cook's words and is left out."""
    frames = traceback.extract_tb(error.__traceback__)[-4:]
    path = " < ".join(
        f"{Path(frame.filename).name}:{frame.lineno} {frame.name}" for frame in reversed(frames)
    )
    return f"{type(error).__name__} at {path}"
