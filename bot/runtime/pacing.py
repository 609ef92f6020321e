"""How fast messages may go out: a bucket for each chat and one for all, in real seconds."""

from __future__ import annotations

import asyncio
import time
from dataclasses import dataclass

MOST_CHATS = 1_000  # buckets that are full again are dropped beyond this many


@dataclass(frozen=True, slots=True, kw_only=True)
class Rate:
    """`burst` messages at once, then `per_s` a second."""

    burst: float
    per_s: float


class _Bucket:
    def __init__(self, rate: Rate) -> None:
        self._rate = rate
        self._left = rate.burst
        self._at = time.monotonic()

    def take(self) -> float:
        """Take one; returns the seconds to wait before using it."""
        self._left = self.left() - 1.0
        self._at = time.monotonic()
        return max(0.0, -self._left / self._rate.per_s)

    def left(self) -> float:
        grown = (time.monotonic() - self._at) * self._rate.per_s
        return min(self._rate.burst, self._left + grown)

    def is_full(self) -> bool:
        return self.left() >= self._rate.burst


class Pacing:
    """Waits until a message to a chat may go out."""

    def __init__(self, *, chat: Rate, group: Rate, everyone: Rate) -> None:
        """Rates for a chat of one, for a group (its id begins with a minus), and over all."""
        self._chat, self._group = chat, group
        self._everyone = _Bucket(everyone)
        self._chats: dict[str, _Bucket] = {}

    async def turn(self, chat_id: str) -> None:
        """Return when it is this chat's turn."""
        if chat_id not in self._chats:
            if len(self._chats) >= MOST_CHATS:
                self._chats = {name: bucket for name, bucket in self._chats.items() if not bucket.is_full()}
            self._chats[chat_id] = _Bucket(self._group if chat_id.startswith("-") else self._chat)
        await asyncio.sleep(self._chats[chat_id].take())
        await asyncio.sleep(self._everyone.take())


UNPACED = Pacing(
    chat=Rate(burst=1e9, per_s=1e9), group=Rate(burst=1e9, per_s=1e9), everyone=Rate(burst=1e9, per_s=1e9)
)
