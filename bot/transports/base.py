"""The edge towards a chat platform: events come in, messages go out, and each delivery says how it ended."""

from __future__ import annotations

from collections.abc import Awaitable, Callable
from dataclasses import dataclass
from typing import Protocol

from bot.core.actions import Button
from bot.core.events import Event


@dataclass(frozen=True, slots=True, kw_only=True)
class Incoming:
    """An event from a chat. `key` is unique for it on this platform: the same key twice is handled once."""

    key: str
    chat_id: str
    event: Event


@dataclass(frozen=True, slots=True, kw_only=True)
class Outgoing:
    """A message to deliver. `maybe_repeat`: an earlier try may have arrived; the text says so."""

    outbox_id: int
    chat_id: str
    text: str
    buttons: tuple[tuple[Button, ...], ...]
    maybe_repeat: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Sent:
    """The platform took it; `reference` is its own id for the message."""

    reference: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TryLater:
    """Not delivered, try again. `after_s` as the platform asks; None: the outbox decides."""

    after_s: float | None
    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Unsure:
    """It may or may not have arrived (cut off between sending and the answer)."""

    reason: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Refused:
    """It will never arrive (blocked, chat gone, message unacceptable)."""

    reason: str


Delivery = Sent | TryLater | Unsure | Refused


class NotStoredError(Exception):
    """An event could not be stored; hand it over again later. The text is a few words why."""


def readable(text: str) -> str:
    """A text as it can be stored: halves of characters, which no encoding takes, become question marks."""
    return text.encode("utf-8", "replace").decode("utf-8")


Receive = Callable[[Incoming], Awaitable[None]]


class Transport(Protocol):
    """A chat platform."""

    async def run(self, receive: Receive) -> None:
        """Take events in until cancelled or the platform ends.

        `receive` returns once the event is stored, and raises NotStoredError when it cannot be.
        """

    async def deliver(self, message: Outgoing) -> Delivery:
        """Send one message. Never raises for what the platform or the network does."""
