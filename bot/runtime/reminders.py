"""Waking chats when their reminders come due. The rows are the reminders; this is only an alarm clock."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections.abc import Callable
from datetime import timedelta

from bot.clock import Clock
from bot.runtime import logs
from bot.runtime.store import Store

LONGEST_SLEEP_S = 3600.0  # look at the rows at least this often
HOUSEKEEPING_S = 6 * 3600.0
RETRY_S = 5.0

log = logging.getLogger(__name__)


class Reminders:
    """Sleeps until the next due row, then wakes its chat."""

    def __init__(self, *, store: Store, clock: Clock) -> None:
        self._store, self._clock = store, clock
        self._changed = asyncio.Event()

    def changed(self) -> None:
        """Rows may have changed; look again."""
        self._changed.set()

    async def run(self, wake: Callable[[str], None]) -> None:
        """Wake chats until cancelled."""
        tidied_at = None
        while True:
            self._changed.clear()
            try:
                now = self._clock.now()
                if tidied_at is None or (now - tidied_at).total_seconds() > HOUSEKEEPING_S:
                    self._store.forget_old(now)
                    tidied_at = now
                for chat_id in self._store.chats_due(now):
                    wake(chat_id)
                until = self._store.next_due(now)
            except sqlite3.Error as error:
                log.error("reminders: cannot read the rows: %s", logs.where(error))
                await asyncio.sleep(RETRY_S)
                continue
            latest = now + timedelta(seconds=LONGEST_SLEEP_S)
            sleep = asyncio.create_task(self._clock.sleep_until(min(until, latest) if until else latest))
            change = asyncio.create_task(self._changed.wait())
            try:
                await asyncio.wait({sleep, change}, return_when=asyncio.FIRST_COMPLETED)
            finally:
                sleep.cancel()
                change.cancel()
