"""Whatever happens in whatever order, with restarts: each reminder is told once, a cancelled one never."""

from __future__ import annotations

import asyncio
import tempfile
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st

from bot.transports.loopback import Loopback
from tests.unit.runtime.tiny import FakeClock, open_house

SECONDS = st.integers(1, 500)
Happening = tuple[str, list[int]]  # what, and the seconds it names: one for a wait, one a reminder for a cook
HAPPENING: st.SearchStrategy[Happening] = st.one_of(
    st.tuples(st.just("cook"), st.lists(SECONDS, min_size=1, max_size=4)),
    st.tuples(st.sampled_from(["wait", "away"]), st.lists(SECONDS, min_size=1, max_size=1)),
    st.tuples(st.sampled_from(["stop", "boom", "again"]), st.just([])),
)


class Expected:
    """What should be told, kept by the simplest means: a list of due times."""

    def __init__(self) -> None:
        self.now, self.told, self.cook = 0, 0, 0
        self.waiting: list[tuple[int, int]] = []  # due, cook

    def begin(self, seconds: list[int]) -> None:
        self.cook += 1
        self.waiting += [(self.now + s, self.cook) for s in seconds]

    def stop(self) -> None:
        self.waiting = [(due, cook) for due, cook in self.waiting if cook != self.cook]

    def wait(self, seconds: int) -> None:
        self.now += seconds
        self.told += sum(due <= self.now for due, _ in self.waiting)
        self.waiting = [(due, cook) for due, cook in self.waiting if due > self.now]


async def live(path: Path, happenings: list[Happening]) -> tuple[int, int]:
    """Run the happenings; returns how many reminders were told and how many should have been."""
    clock, platform, expected = FakeClock(), Loopback(), Expected()
    pending = list(happenings)
    while True:
        async with open_house(path, clock, platform) as table:
            await table.wait(0)
            while pending and pending[0][0] != "away":
                what, detail = pending.pop(0)
                if what == "cook":
                    expected.begin(detail)
                    await table.say("cook " + " ".join(map(str, detail)))
                elif what == "wait":
                    expected.wait(detail[0])
                    await table.wait(detail[0])
                elif what == "again":
                    await table.say("hello", key="the same key each time")
                else:
                    expected.stop() if what == "stop" else None
                    await table.say(what)
            if not pending:
                expected.wait(1_000)
                await table.wait(1_000)
                break
        _, seconds = pending.pop(0)
        expected.wait(seconds[0])
        await clock.move(seconds[0])
    told = sum(message.text.count(" late ") for message in platform.seen)
    return told, expected.told


@settings(max_examples=60, deadline=None)
@given(st.lists(HAPPENING, max_size=12))
def test_each_reminder_is_told_once_and_a_cancelled_one_never(happenings: list[Happening]) -> None:
    with tempfile.TemporaryDirectory() as folder:
        told, expected = asyncio.run(live(Path(folder) / "bot.sqlite", happenings))
    assert told == expected
