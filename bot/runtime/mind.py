"""Where the conversation thinks: one thread of its own, so that planning never holds up a reminder's send."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime
from typing import Protocol

from bot.core.actions import Outcome
from bot.core.events import Event, TextReceived
from bot.core.state import Chat

Step = Callable[[Chat, Event, datetime], Outcome]


class Think(Protocol):
    """Runs one step of a conversation."""

    async def __call__(self, chat: Chat, event: Event, now: datetime) -> Outcome:
        """The outcome of the event. Raises what the step raises."""


class Mind:
    """Runs steps one after the other in a thread.

    `awaken` is called in that thread before the first step and gives the step
    function: opening the knowledge there lets a chat show its prompt meanwhile.
    """

    def __init__(self, awaken: Callable[[], Step]) -> None:
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="mind")
        self._awaken = awaken
        self._step: Step | None = None

    async def __call__(self, chat: Chat, event: Event, now: datetime) -> Outcome:
        """The outcome of the event. Raises what the step, or the awakening, raises."""
        return await asyncio.get_running_loop().run_in_executor(self._thread, self._run, chat, event, now)

    def wake_up(self) -> asyncio.Future[Step]:
        """Begin awakening before the first step asks for it; the future raises what `awaken` raises."""
        waking = asyncio.get_running_loop().run_in_executor(self._thread, self._ready)
        waking.add_done_callback(lambda done: done.cancelled() or done.exception())  # seen if not awaited
        return waking

    def close(self) -> None:
        """Let the thread end after what it is at."""
        self._thread.shutdown(wait=False, cancel_futures=True)

    def _ready(self) -> Step:
        if self._step is None:
            self._step = self._awaken()
        return self._step

    def _run(self, chat: Chat, event: Event, now: datetime) -> Outcome:
        return self._ready()(chat, event, now)


def awaken() -> Step:
    """The conversation over the knowledge file, which is built first when it is missing or stale.

    One message is thought through for nobody, so that the first cook's is answered as fast as
    the rest: vocabularies and tables load with it.
    """
    from bot.core.conversation import step
    from knowledge import open_knowledge

    knowledge = open_knowledge()
    step(Chat(chat_id="nobody"), TextReceived(text="carrots"), datetime.now(UTC), knowledge)

    def think(chat: Chat, event: Event, now: datetime) -> Outcome:
        return step(chat, event, now, knowledge)

    return think
