"""The same bot in memory, for tests: what was delivered is a list, deliveries can be made to go wrong."""

from __future__ import annotations

import asyncio
from collections import deque

from bot.core.events import ButtonPressed, TextReceived
from bot.transports.base import Delivery, Incoming, Outgoing, Receive, Sent


class Loopback:
    """A chat platform without a network. `seen` is what cooks see, in order."""

    def __init__(self) -> None:
        self.seen: list[Outgoing] = []
        self._script: deque[tuple[Delivery, bool]] = deque()
        self._incoming: asyncio.Queue[Incoming] = asyncio.Queue()
        self._count = 0

    def say(self, text: str, *, chat_id: str = "1", key: str = "") -> None:
        """A cook writes."""
        self._put(Incoming(key=key or self._next_key(), chat_id=chat_id, event=TextReceived(text=text)))

    def press(self, data: str, *, chat_id: str = "1", key: str = "") -> None:
        """A cook taps a button."""
        self._put(Incoming(key=key or self._next_key(), chat_id=chat_id, event=ButtonPressed(data=data)))

    def next_delivery(self, result: Delivery, *, arrives: bool) -> None:
        """Script how a coming delivery ends, and whether the cook sees it all the same."""
        self._script.append((result, arrives))

    async def run(self, receive: Receive) -> None:
        """Take events in until cancelled."""
        while True:
            await receive(await self._incoming.get())
            self._incoming.task_done()

    async def taken_in(self) -> None:
        """Return when every event has been stored."""
        await self._incoming.join()

    async def deliver(self, message: Outgoing) -> Delivery:
        """Show the message, or do as scripted."""
        result, arrives = self._script.popleft() if self._script else (Sent(reference="seen"), True)
        if arrives:
            self.seen.append(message)
        return result

    def _put(self, incoming: Incoming) -> None:
        self._incoming.put_nowait(incoming)

    def _next_key(self) -> str:
        self._count += 1
        return f"loopback:{self._count}"
