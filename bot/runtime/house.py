"""The parts put together: one file, one transport, one mind; open, run, close."""

from __future__ import annotations

import asyncio
from datetime import UTC, datetime, timedelta
from types import TracebackType

from bot.clock import Clock, SystemClock
from bot.runtime.dispatcher import Dispatcher
from bot.runtime.mind import Think
from bot.runtime.outbox import Outbox
from bot.runtime.pacing import UNPACED, Pacing
from bot.runtime.reminders import Reminders
from bot.runtime.store import ClockRow, Store
from bot.transports.base import Incoming, Transport

CLOSE_WITHIN_S = 3.0  # for the events and again for the sends under way
COOK_IS_PAST_S = 6 * 3600.0


class House:
    """Everything between a transport and the conversation. Use as an async context manager."""

    def __init__(
        self, *, store: Store, transport: Transport, clock: Clock, think: Think, pacing: Pacing = UNPACED
    ) -> None:
        self._store, self._clock = store, clock
        self._reminders = Reminders(store=store, clock=clock)
        self._outbox = Outbox(store=store, transport=transport, clock=clock, pacing=pacing)
        self._dispatcher = Dispatcher(
            store=store,
            clock=clock,
            think=think,
            outbox=self._outbox,
            rescheduled=self._reminders.changed,
        )
        self._alarm: asyncio.Task[None] | None = None

    async def __aenter__(self) -> House:
        self._outbox.begin()
        self._dispatcher.begin()
        self._alarm = asyncio.create_task(self._reminders.run(self._dispatcher.wake), name="reminders")
        return self

    async def __aexit__(
        self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None
    ) -> None:
        if self._alarm is not None:
            self._alarm.cancel()
            await asyncio.gather(self._alarm, return_exceptions=True)
        await self._dispatcher.close(within_s=CLOSE_WITHIN_S)
        await self._outbox.close(within_s=CLOSE_WITHIN_S)

    async def receive(self, incoming: Incoming) -> None:
        """Store an event and see to it; returns once it is stored."""
        await self._dispatcher.receive(incoming)

    async def settled(self, chat_id: str) -> None:
        """Return when everything known of this chat has been handled and delivered."""
        await self._dispatcher.settled(chat_id)
        await self._outbox.drained(chat_id)

    async def cooked_out(self, chat_id: str) -> None:
        """Return when this chat has no reminder left and everything is delivered."""
        await self.settled(chat_id)
        while (due_at := self._store.next_reminder(chat_id)) is not None:
            await self._clock.sleep_until(due_at)
            self._dispatcher.wake(chat_id)
            await self.settled(chat_id)


def open_clock(store: Store, *, pace: float) -> SystemClock:
    """The clock for this file: real time, or the time its cook has reached.

    An accelerated run leaves reminders ahead of the real time. While such a cook
    is on, its clock goes on from where it was, at the pace it had; once it is
    past, the clock is the real one again.
    """
    real = datetime.now(UTC)
    shown = real
    last, latest_due = store.clock(), store.latest_due()
    if last is not None and latest_due is not None:
        reached = last.shown_at + (real - last.real_at) * last.pace
        if latest_due > reached - timedelta(seconds=COOK_IS_PAST_S):
            shown = max(reached, last.shown_at)
    store.set_clock(ClockRow(real_at=real, shown_at=shown, pace=pace))
    return SystemClock(pace=pace, start=shown)
