"""One task a chat: what belongs to a chat is done in order, chats do not wait for each other."""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable


class ChatWorkers:
    """Runs `work(chat_id)` once at a time for each chat that was woken, until it returns."""

    def __init__(self, work: Callable[[str], Awaitable[None]], *, name: str) -> None:
        self._work = work
        self._name = name
        self._tasks: dict[str, asyncio.Task[None]] = {}
        self.closing = False

    def wake(self, chat_id: str) -> None:
        """Something waits for this chat."""
        if not self.closing and chat_id not in self._tasks:
            self._tasks[chat_id] = asyncio.create_task(self._run(chat_id), name=f"{self._name} {chat_id}")

    async def idle(self, chat_id: str) -> None:
        """Return when nothing of this chat is under way."""
        while (task := self._tasks.get(chat_id)) is not None:
            await asyncio.wait({task})

    async def close(self, *, within_s: float) -> None:
        """Let what is under way end; what takes longer is cancelled. Nothing new begins."""
        self.closing = True
        tasks = set(self._tasks.values())
        if tasks:
            _, late = await asyncio.wait(tasks, timeout=within_s)
            for task in late:
                task.cancel()
            await asyncio.gather(*late, return_exceptions=True)

    async def _run(self, chat_id: str) -> None:
        try:
            await self._work(chat_id)
        finally:
            del self._tasks[chat_id]
