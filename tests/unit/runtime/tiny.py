"""A conversation small enough to test the runtime with, a clock that moves when told, and a house in memory.

What the cook writes:  "cook 60 120" begins a cook with steps due after so many
seconds; "swap" answers "swapped"; "stop" cancels the reminders; "boom" fails;
anything else is echoed. Due reminders are named, with how late they come.
"""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

from bot.core.actions import Button, CancelReminders, Outcome, Remind, Say
from bot.core.events import ButtonPressed, Event, OddMessage, RemindersDue, TextReceived
from bot.core.state import Chat
from bot.runtime.house import House
from bot.runtime.store import Store
from bot.transports.loopback import Loopback

NOON = datetime(2026, 3, 4, 12, 0, tzinfo=UTC)


def step(chat: Chat, event: Event, now: datetime) -> Outcome:
    """One step of the tiny conversation."""
    match event:
        case TextReceived(text="boom") | ButtonPressed(data="boom"):
            raise ZeroDivisionError("secret words of the cook")
        case TextReceived(text=text) if text.startswith("cook "):
            return _begin(chat, text.split()[1:], now)
        case TextReceived(text="stop"):
            cook_id = f"c{chat.cooks_begun}"
            return Outcome(state=chat, actions=(CancelReminders(cook_id=cook_id), Say(text="stopped")))
        case TextReceived(text="swap"):
            return Outcome(state=chat, actions=(Say(text="swapped"),))
        case TextReceived(text=text):
            return Outcome(state=chat, actions=(Say(text=f"echo {text}"),))
        case ButtonPressed(data=data):
            return Outcome(state=chat, actions=(Say(text=f"pressed {data}"),))
        case OddMessage(kind=kind):
            return Outcome(state=chat, actions=(Say(text=f"odd {kind}"),))
        case RemindersDue(reminders=due):
            late = [f"{r.step_id} late {(now - r.due_at).total_seconds():.0f}" for r in due]
            buttons = (
                (Button(label="Done", data=f"done {due[-1].key}"), Button(label="Later", data="later")),
            )
            key = "+".join(r.key for r in due)
            return Outcome(
                state=chat, actions=(Say(text="; ".join(late), key=key, urgent=True, buttons=buttons),)
            )


def _begin(chat: Chat, seconds: list[str], now: datetime) -> Outcome:
    chat = replace(chat, cooks_begun=chat.cooks_begun + 1)
    cook_id = f"c{chat.cooks_begun}"
    reminders = [
        Remind(
            key=f"{cook_id}:s{n}:0",
            cook_id=cook_id,
            step_id=f"s{n}",
            due_at=now + timedelta(seconds=float(s)),
        )
        for n, s in enumerate(seconds, 1)
    ]
    buttons = ((Button(label="Done", data="done"),),)
    return Outcome(state=chat, actions=(*reminders, Say(text=f"cook {cook_id} begun", buttons=buttons)))


async def think(chat: Chat, event: Event, now: datetime) -> Outcome:
    """The tiny conversation as the dispatcher calls it."""
    return step(chat, event, now)


class FakeClock:
    """A clock that stands until a test moves it."""

    pace = 1.0

    def __init__(self, start: datetime = NOON) -> None:
        self._now = start
        self._moved = asyncio.Event()

    def now(self) -> datetime:
        return self._now

    async def sleep_until(self, when: datetime) -> None:
        while self._now < when:
            await self._moved.wait()
            await asyncio.sleep(0)

    async def move(self, seconds: float) -> None:
        """Let time pass and everybody look at the clock."""
        self._now += timedelta(seconds=seconds)
        self._moved.set()
        self._moved = asyncio.Event()
        await asyncio.sleep(0)


class Table:
    """A running house with everything a test wants to look at."""

    def __init__(self, house: House, store: Store, platform: Loopback, clock: FakeClock) -> None:
        self.house, self.store, self.platform, self.clock = house, store, platform, clock

    async def say(self, text: str, chat_id: str = "1", key: str = "") -> None:
        """A cook writes, and it is answered."""
        self.platform.say(text, chat_id=chat_id, key=key)
        await self.platform.taken_in()
        await self.house.settled(chat_id)

    async def wait(self, seconds: float, chat_id: str = "1") -> None:
        """Time passes, and what is due is told."""
        await self.clock.move(seconds)
        for _ in range(20):
            await asyncio.sleep(0)
        await self.house.settled(chat_id)

    def texts(self, chat_id: str = "1") -> list[str]:
        """What the cook has seen."""
        return [message.text for message in self.platform.seen if message.chat_id == chat_id]


@asynccontextmanager
async def open_house(
    path: Path | None = None, clock: FakeClock | None = None, platform: Loopback | None = None
) -> AsyncIterator[Table]:
    """A house over the tiny conversation; `path` None keeps it in memory."""
    clock, platform = clock or FakeClock(), platform or Loopback()
    with Store(path) as store:
        async with House(store=store, transport=platform, clock=clock, think=think) as house:
            taking = asyncio.create_task(platform.run(house.receive))
            try:
                yield Table(house, store, platform, clock)
            finally:
                taking.cancel()
                await asyncio.gather(taking, return_exceptions=True)
