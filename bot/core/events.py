"""What can happen to a conversation. A closed union: `match` on it ends with `assert_never`."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class TextReceived:
    """The cook wrote something. `who` is a stable id of the writer, for groups."""

    text: str
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class ButtonPressed:
    """A button was tapped (in the terminal: its letter typed). `data` is what the button carries."""

    data: str
    who: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class OddMessage:
    """A message without text we could read: a photo, a voice note, a sticker ..."""

    kind: str


@dataclass(frozen=True, slots=True, kw_only=True)
class DueReminder:
    """One reminder whose time has come."""

    key: str
    cook_id: str
    step_id: str
    due_at: datetime


@dataclass(frozen=True, slots=True, kw_only=True)
class RemindersDue:
    """One or more reminders of a chat are due; after an outage several come together."""

    reminders: tuple[DueReminder, ...]


Event = TextReceived | ButtonPressed | OddMessage | RemindersDue
