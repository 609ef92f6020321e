"""Delivering what was saved: in each chat in order, urgent first, one key one delivery.

A message is marked "sending" before it is tried. A crash leaves that mark, so
that at the next start exactly the one cut off goes out again and says so. A
chat has one worker while it has messages; chats do not wait for each other.
"""

from __future__ import annotations

import asyncio
import logging
import sqlite3

from bot.clock import Clock
from bot.core.notices import as_delivered
from bot.runtime import logs
from bot.runtime.pacing import Pacing
from bot.runtime.store import Message, Store
from bot.runtime.workers import ChatWorkers
from bot.transports.base import Delivery, Outgoing, Refused, Sent, Transport, TryLater, Unsure

AT_ONCE = 12  # messages under way at the same time, over all chats
FIRST_WAIT_S, LONGEST_WAIT_S = 1.0, 60.0
UNSURE_TRIES = 4  # a message that may have arrived each time is not repeated for ever
HELD_UP_S = 120.0  # an urgent message later than this says so ...
HELD_UP_REAL_S = 5.0  # ... unless that is only the haste of an accelerated clock
KEEP_TRYING_S = 12 * 3600.0  # after that nobody is at the stove any more

log = logging.getLogger(__name__)


class Outbox:
    """Sends the rows of the outbox through a transport."""

    def __init__(self, *, store: Store, transport: Transport, clock: Clock, pacing: Pacing) -> None:
        self._store, self._transport, self._clock, self._pacing = store, transport, clock, pacing
        self._workers = ChatWorkers(self._work, name="outbox")
        self._slots = asyncio.Semaphore(AT_ONCE)
        self._salt = store.salt()

    def begin(self) -> None:
        """Take up what an earlier process left; what it was cut off in is marked as a possible repeat."""
        again = self._store.requeue_cut_off()
        if again:
            log.warning("outbox: %d message(s) cut off in an earlier run go out again, marked so", again)
        for chat_id in self._store.chats_with_messages():
            self.wake(chat_id)

    def wake(self, chat_id: str) -> None:
        """Something was saved for this chat."""
        self._workers.wake(chat_id)

    async def drained(self, chat_id: str) -> None:
        """Return when nothing of this chat waits to be delivered."""
        await self._workers.idle(chat_id)

    async def close(self, *, within_s: float) -> None:
        """Finish what is under way; what takes longer stays marked and is repeated at the next start."""
        await self._workers.close(within_s=within_s)

    async def _work(self, chat_id: str) -> None:
        tries = 0
        while not self._workers.closing and self._store.next_message(chat_id) is not None:
            try:
                wait_s = await self._deliver_next(chat_id, tries)
            except sqlite3.Error as error:
                log.error("outbox: chat %s: %s", logs.chat_tag(chat_id, self._salt), logs.where(error))
                wait_s = LONGEST_WAIT_S
            tries = 0 if wait_s == 0.0 else tries + 1
            await self._pause(wait_s)

    async def _pause(self, wait_s: float) -> None:
        """Sleep, but not into the closing down."""
        loop = asyncio.get_running_loop()
        until = loop.time() + wait_s
        while not self._workers.closing and (left_s := until - loop.time()) > 0:
            await asyncio.sleep(min(left_s, 0.5))

    async def _deliver_next(self, chat_id: str, tries: int) -> float:
        """Try the next message; returns how long to leave this chat in peace [s]."""
        async with self._slots:
            await self._pacing.turn(chat_id)
            message = self._store.next_message(chat_id)  # an urgent one may have come meanwhile
            if message is None:
                return 0.0
            late_s = (self._clock.now() - message.written_at).total_seconds()
            if late_s > KEEP_TRYING_S:
                log.error("outbox: message %d given up after %.0f h", message.id, late_s / 3600.0)
                self._store.mark(message.id, "given up", reference="too old")
                return 0.0
            self._store.mark_sending(message.id)
            delivery = await self._try(message, late_s)
        return self._note(message, delivery, tries)

    async def _try(self, message: Message, late_s: float) -> Delivery:
        outgoing = Outgoing(
            outbox_id=message.id,
            chat_id=message.chat_id,
            text=as_delivered(
                message.text,
                maybe_repeat=message.maybe_repeat,
                late_s=late_s if message.urgent and self._is_held_up(late_s) else 0.0,
            ),
            buttons=message.buttons,
            maybe_repeat=message.maybe_repeat,
        )
        try:
            return await self._transport.deliver(outgoing)
        except Exception as error:  # a transport must not raise; if one does, chats must not stop
            log.error("outbox: message %d: %s", message.id, logs.where(error))
            return Unsure(reason=type(error).__name__)

    def _is_held_up(self, late_s: float) -> bool:
        return late_s >= max(HELD_UP_S, HELD_UP_REAL_S * self._clock.pace)

    def _note(self, message: Message, delivery: Delivery, tries: int) -> float:
        tag = logs.chat_tag(message.chat_id, self._salt)
        back_off_s = min(LONGEST_WAIT_S, FIRST_WAIT_S * 2.0**tries)
        match delivery:
            case Sent(reference=reference):
                self._store.mark(message.id, "sent", reference=reference)
                return 0.0
            case TryLater(after_s=after_s, reason=reason):
                log.warning("outbox: message %d to chat %s waits: %s", message.id, tag, reason)
                self._store.mark(message.id, "queued", reference=reason)
                return back_off_s if after_s is None else max(after_s, 0.05)
            case Unsure(reason=reason) if message.attempts + 1 < UNSURE_TRIES:
                log.warning("outbox: message %d to chat %s may have arrived: %s", message.id, tag, reason)
                self._store.mark(message.id, "queued", reference=reason, maybe_repeat=True)
                return back_off_s
            case Unsure(reason=reason):
                log.error("outbox: message %d to chat %s left unsure: %s", message.id, tag, reason)
                self._store.mark(message.id, "unsure", reference=reason)
                return 0.0
            case Refused(reason=reason):
                log.error("outbox: message %d to chat %s refused: %s", message.id, tag, reason)
                self._store.mark(message.id, "refused", reference=reason)
                return 0.0
