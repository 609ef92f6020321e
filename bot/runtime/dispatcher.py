"""From an event to its effects: load the chat, take a step, save everything at once, then deliver.

A chat has one worker while something waits for it; that worker is the chat's
lock. It asks the store what comes next (due reminders before messages, so that
a flood of messages delays no reminder), and the store is the queue: what is not
finished when the process dies is found again at the next start.

This is the one place that catches everything. A step that fails is logged with
a reference, the cook reads one line with it, and nothing of the event's
effects is kept; a due reminder is then said in the plain words of its plan.
"""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections.abc import Callable
from datetime import datetime, timedelta
from functools import partial

import msgspec

from bot.clock import Clock
from bot.core import notices
from bot.core.actions import Action, Say
from bot.core.events import DueReminder, Event, RemindersDue
from bot.core.state import Chat, from_json, to_json
from bot.runtime import logs
from bot.runtime.mind import Think
from bot.runtime.outbox import Outbox
from bot.runtime.store import Store
from bot.runtime.workers import ChatWorkers
from bot.transports.base import Incoming, NotStoredError

HASTE_S = 1.0  # real seconds of delay taken as none: an accelerated clock does not make a reminder late
TOGETHER_S = 60.0  # punctual reminders further apart than this are separate events
RETRY_S = 5.0  # when the file cannot be written

log = logging.getLogger(__name__)


class Dispatcher:
    """Handles what comes in, one event of a chat at a time, chats side by side."""

    def __init__(
        self, *, store: Store, clock: Clock, think: Think, outbox: Outbox, rescheduled: Callable[[], None]
    ) -> None:
        """`rescheduled` is called after reminders may have changed."""
        self._store, self._clock, self._think, self._outbox = store, clock, think, outbox
        self._rescheduled = rescheduled
        self._workers = ChatWorkers(self._work, name="chat")
        self._salt = store.salt()

    def begin(self) -> None:
        """Take up events that an earlier process left unfinished."""
        for chat_id in self._store.chats_with_events():
            self.wake(chat_id)

    async def receive(self, incoming: Incoming) -> None:
        """Store an event and see to it. Once this returns the event may be acknowledged.

        Raises NotStoredError when it could not be stored.
        """
        try:
            is_new = self._store.accept(incoming, self._clock.now())
        except (sqlite3.Error, OSError) as error:
            raise NotStoredError(str(error)) from error
        if is_new:
            self.wake(incoming.chat_id)

    def wake(self, chat_id: str) -> None:
        """Something waits for this chat."""
        self._workers.wake(chat_id)

    async def settled(self, chat_id: str) -> None:
        """Return when nothing waits to be handled in this chat."""
        await self._workers.idle(chat_id)

    async def close(self, *, within_s: float) -> None:
        """Finish the events under way; the rest stays stored for the next start."""
        await self._workers.close(within_s=within_s)

    async def _work(self, chat_id: str) -> None:
        while not self._workers.closing:
            try:
                handled = await self._handle_next(chat_id)
            except (sqlite3.Error, OSError) as error:
                log.error("chat %s: cannot save: %s", self._tag(chat_id), logs.where(error))
                await asyncio.sleep(RETRY_S)
                continue
            if not handled:
                return

    async def _handle_next(self, chat_id: str) -> bool:
        """Handle due reminders or else the oldest message. False when there is neither."""
        due, now = punctual(self._store.due(chat_id, self._clock.now()), self._clock)
        if due:
            await self._handle(chat_id, RemindersDue(reminders=due), now, due=due)
            return True
        waiting = self._store.next_event(chat_id)
        if waiting is None:
            return False
        event_id, event = waiting
        await self._handle(chat_id, event, self._clock.now(), event_id=event_id)
        return True

    async def _handle(
        self,
        chat_id: str,
        event: Event,
        now: datetime,
        *,
        event_id: int | None = None,
        due: tuple[DueReminder, ...] = (),
    ) -> None:
        saved = self._store.state(chat_id)
        chat: Chat | None = None
        set_aside: bytes | None = None
        actions: tuple[Action, ...]
        state: bytes | None
        failure = ""
        try:
            chat = from_json(saved) if saved is not None else Chat(chat_id=chat_id)
            outcome = await self._think(chat, event, now)
            state, actions = to_json(outcome.state), outcome.actions
        except msgspec.ValidationError as error:
            failure = self._log_failure(chat_id, event, error)
            state, set_aside = to_json(Chat(chat_id=chat_id)), saved
            actions = (Say(text=notices.started_over(failure)),)
        except Exception as error:
            failure = self._log_failure(chat_id, event, error)
            state, actions = None, self._fallback(chat, due, failure)
        finish = partial(
            self._store.finish,
            chat_id,
            now=self._clock.now(),
            event_id=event_id,
            fired=due,
            set_aside=set_aside,
        )
        try:
            kept = finish(state=state, actions=actions, failure=failure)
        except (TypeError, ValueError) as error:  # an outcome that cannot be written down, rolled back
            failure = self._log_failure(chat_id, event, error)
            kept = finish(state=None, actions=self._fallback(chat, due, failure), failure=failure)
        if kept:
            self._rescheduled()
            self._outbox.wake(chat_id)

    def _fallback(
        self, chat: Chat | None, due: tuple[DueReminder, ...], reference: str
    ) -> tuple[Action, ...]:
        if due:
            key = "+".join(reminder.key for reminder in due)
            return (Say(text=notices.bare_reminder(chat, due, reference), key=key, urgent=True),)
        return (Say(text=notices.trouble(reference)),)

    def _log_failure(self, chat_id: str, event: Event, error: Exception) -> str:
        reference = logs.new_reference()
        log.error(
            "%s in chat %s failed (note %s): %s",
            type(event).__name__,
            self._tag(chat_id),
            reference,
            logs.where(error),
        )
        return reference

    def _tag(self, chat_id: str) -> str:
        return logs.chat_tag(chat_id, self._salt)


def punctual(due: tuple[DueReminder, ...], clock: Clock) -> tuple[tuple[DueReminder, ...], datetime]:
    """Which due reminders make the next event, and the time it happens at.

    A delay of up to `HASTE_S` real seconds is none: the event happens at its due
    time, and reminders further apart come one after the other. A real delay, as
    after an outage, brings all of them together at the time it is.
    """
    now = clock.now()
    if not due or (now - due[0].due_at).total_seconds() > HASTE_S * clock.pace:
        return due, now
    until = due[0].due_at + timedelta(seconds=TOGETHER_S)
    together = tuple(reminder for reminder in due if reminder.due_at <= until)
    return together, together[-1].due_at
