"""What the conversation can ask for. A closed union: `match` on it ends with `assert_never`.

An action that must happen once carries a `key`: the outbox delivers one message
a key, and a reminder with a known key is moved, not doubled.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from bot.core.state import Chat


@dataclass(frozen=True, slots=True, kw_only=True)
class Button:
    """A button: what is read on it, and what comes back (at most 64 bytes)."""

    label: str
    data: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Say:
    """A message to the cook: plain text, in paragraphs; the transport lays it out.

    `key` is set where the message must not be sent twice (reminders). `urgent`
    goes before chatter. Rows of buttons stand under the text.
    """

    text: str
    buttons: tuple[tuple[Button, ...], ...] = ()
    key: str = ""
    urgent: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Remind:
    """Wake this conversation at `due_at` for a step of a cook. Same key again: moves it."""

    key: str
    cook_id: str
    step_id: str
    due_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class CancelReminders:
    """Forget reminders of a cook: those with these keys, or all when `keys` is None."""

    cook_id: str
    keys: tuple[str, ...] | None = None


Action = Say | Remind | CancelReminders


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What a step of the conversation comes to: the new state and what to do."""

    state: Chat
    actions: tuple[Action, ...] = ()
