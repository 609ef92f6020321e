"""The clock at the rim: the only place that asks what time it is."""

from __future__ import annotations

import asyncio
import time
from datetime import UTC, datetime, timedelta
from typing import Protocol

LONGEST_NAP_S = 1.0  # timers stand still while a laptop sleeps; a short nap notices the waking


class Clock(Protocol):
    """Wall-clock time in UTC, and sleeping on it."""

    @property
    def pace(self) -> float:
        """Seconds this clock shows in one real second."""

    def now(self) -> datetime:
        """The time now, aware, UTC."""

    async def sleep_until(self, when: datetime) -> None:
        """Return when `when` has come."""


class SystemClock:
    """The machine's clock, `pace` times as fast from the moment it is made (1: real time).

    Runs on elapsed time from its start, so that a step of the machine's clock
    while we run neither fires nor delays a reminder. Elapsed time includes the
    time a laptop slept, where the system can tell.
    """

    def __init__(self, *, pace: float = 1.0, start: datetime | None = None) -> None:
        self._pace = pace
        self._start = start or datetime.now(UTC)
        self._elapsed_at_start = _elapsed_s()

    @property
    def pace(self) -> float:
        """Seconds this clock shows in one real second."""
        return self._pace

    def now(self) -> datetime:
        """Start plus elapsed time times the pace."""
        return self._start + timedelta(seconds=(_elapsed_s() - self._elapsed_at_start) * self._pace)

    async def sleep_until(self, when: datetime) -> None:
        """Sleep in real seconds until `when` on this clock."""
        while (left_s := (when - self.now()).total_seconds() / self._pace) > 0:
            await asyncio.sleep(min(left_s, LONGEST_NAP_S))


def _elapsed_s() -> float:
    """Seconds that only ever grow, sleep of the machine included on Linux."""
    if hasattr(time, "CLOCK_BOOTTIME"):
        return time.clock_gettime(time.CLOCK_BOOTTIME)
    return time.monotonic()
