"""The clock at the rim: the only place that asks what time it is."""

from __future__ import annotations

import asyncio
import time
from datetime import UTC, datetime, timedelta
from typing import Protocol


class Clock(Protocol):
    """Wall-clock time in UTC, and sleeping on it."""

    def now(self) -> datetime:
        """The time now, aware, UTC."""

    async def sleep_until(self, when: datetime) -> None:
        """Return when `when` has come."""


class SystemClock:
    """The machine's clock, `pace` times as fast from the moment it is made (1: real time).

    Runs on the monotonic clock from its start, so that a step of the machine's
    clock while we run neither fires nor delays a reminder.
    """

    def __init__(self, *, pace: float = 1.0, start: datetime | None = None) -> None:
        self.pace = pace
        self._start = start or datetime.now(UTC)
        self._monotonic_start = time.monotonic()

    def now(self) -> datetime:
        """Start plus elapsed monotonic time times the pace."""
        return self._start + timedelta(seconds=(time.monotonic() - self._monotonic_start) * self.pace)

    async def sleep_until(self, when: datetime) -> None:
        """Sleep in real seconds until `when` on this clock."""
        while (left_s := (when - self.now()).total_seconds()) > 0:
            await asyncio.sleep(left_s / self.pace)
