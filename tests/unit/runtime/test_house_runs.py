"""The runtime over the tiny conversation: one transaction an event, reminders as rows, one delivery a key."""

from __future__ import annotations

import asyncio
import logging
import sqlite3
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest

from bot.core.actions import CancelReminders, Remind, Say
from bot.core.events import TextReceived
from bot.runtime.lock import StoreError
from bot.runtime.outbox import Outbox
from bot.runtime.store import Store
from bot.transports.base import Incoming, Refused, Sent, TryLater, Unsure
from bot.transports.loopback import Loopback
from tests.unit.runtime.tiny import NOON, FakeClock, open_house


async def test_a_message_is_answered_and_its_repeat_is_not() -> None:
    async with open_house() as table:
        await table.say("hello", key="k1")
        await table.say("hello", key="k1")
        assert table.texts() == ["echo hello"]


async def test_reminders_come_when_due_and_each_once() -> None:
    async with open_house() as table:
        await table.say("cook 60 120")
        await table.wait(59)
        assert table.texts() == ["cook c1 begun"]
        await table.wait(1)
        await table.wait(0)
        await table.wait(60)
        assert table.texts() == ["cook c1 begun", "s1 late 0", "s2 late 0"]
        await table.wait(10_000)
        assert len(table.texts()) == 3


async def test_cancelled_reminders_stay_silent() -> None:
    async with open_house() as table:
        await table.say("cook 60")
        await table.say("stop")
        await table.wait(120)
        assert table.texts() == ["cook c1 begun", "stopped"]


async def test_after_an_outage_missed_reminders_of_a_chat_come_in_one_event(tmp_path: Path) -> None:
    clock = FakeClock()
    async with open_house(tmp_path / "bot.sqlite", clock) as table:
        await table.say("cook 60 120 900")
    await clock.move(600)
    async with open_house(tmp_path / "bot.sqlite", clock) as table:
        await table.wait(0)
        assert table.texts() == ["s1 late 540; s2 late 480"]
        await table.wait(300)
        assert table.texts()[1:] == ["s3 late 0"]


async def test_a_failing_step_is_told_with_a_reference_and_the_cook_goes_on(
    caplog: pytest.LogCaptureFixture,
) -> None:
    async with open_house() as table:
        await table.say("cook 60")
        with caplog.at_level(logging.ERROR):
            await table.say("boom")
        told = table.texts()[-1]
        reference = caplog.records[-1].getMessage().split("note ")[1][:6]
        assert reference in told
        assert "secret" not in caplog.text
        await table.wait(60)
        assert table.texts()[-1] == "s1 late 0"


async def test_a_saved_state_nobody_can_read_is_set_aside_and_told() -> None:
    async with open_house() as table:
        table.store.finish("1", state=b'{"chat_id": 5}', actions=(), now=NOON)
        await table.say("hello")
        assert "begin a new one" in table.texts()[-1]
        await table.say("hello")
        assert table.texts()[-1] == "echo hello"


async def test_urgent_messages_go_before_chatter_and_chatter_in_order() -> None:
    platform = Loopback()
    async with open_house(platform=platform) as table:
        actions = (Say(text="one"), Say(text="two"), Say(text="now!", urgent=True), Say(text="three"))
        table.store.finish("1", state=None, actions=actions, now=NOON)
        await table.say("hello")
        assert table.texts() == ["now!", "one", "two", "three", "echo hello"]


async def test_one_key_is_delivered_once() -> None:
    async with open_house() as table:
        for _ in range(2):
            table.store.finish("1", state=None, actions=(Say(text="peas in", key="c1:s1:0"),), now=NOON)
        await table.say("hello")
        assert table.texts() == ["peas in", "echo hello"]


async def test_a_message_the_platform_puts_off_is_tried_again() -> None:
    platform = Loopback()
    platform.next_delivery(TryLater(after_s=0.01, reason="asked to wait"), arrives=False)
    async with open_house(platform=platform) as table:
        await table.say("hello")
        assert table.texts() == ["echo hello"]


async def test_a_chat_is_left_in_peace_for_as_long_as_the_platform_asks(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    waits: list[float] = []

    async def wait(_: Outbox, wait_s: float) -> None:
        waits.append(wait_s)
        await asyncio.sleep(0)

    monkeypatch.setattr(Outbox, "_pause", wait)
    platform = Loopback()
    for asked_s in (47.0, 300.0):
        platform.next_delivery(TryLater(after_s=asked_s, reason="asked to wait"), arrives=False)
    async with open_house(platform=platform) as table:
        await table.say("hello")
        assert table.texts() == ["echo hello"]
    assert waits[:2] == [47.0, 300.0]


async def test_a_message_that_may_have_arrived_is_repeated_and_says_so(
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setattr("bot.runtime.outbox.FIRST_WAIT_S", 0.01)
    platform = Loopback()
    platform.next_delivery(Unsure(reason="ReadTimeout"), arrives=True)
    async with open_house(platform=platform) as table:
        await table.say("hello")
        assert table.texts() == ["echo hello", "(you may have this already) echo hello"]


async def test_a_refused_message_does_not_hold_up_the_next() -> None:
    platform = Loopback()
    platform.next_delivery(Refused(reason="blocked"), arrives=False)
    async with open_house(platform=platform) as table:
        await table.say("one")
        await table.say("two")
        assert table.texts() == ["echo two"]


async def test_an_urgent_message_held_up_says_how_late_it_is() -> None:
    clock = FakeClock()
    async with open_house(clock=clock) as table:
        table.store.finish(
            "1", state=None, actions=(Say(text="heat off", urgent=True), Say(text="chatter")), now=NOON
        )
        await clock.move(300)
        await table.say("hello")
        assert table.texts() == ["5 min late: heat off", "chatter", "echo hello"]


async def test_what_could_not_be_sent_all_day_is_given_up_and_nothing_later_waits_for_it() -> None:
    clock = FakeClock()
    async with open_house(clock=clock) as table:
        table.store.finish("1", state=None, actions=(Say(text="lid on", urgent=True),), now=NOON)
        await clock.move(20 * 3600)  # dinner is long over
        await table.say("good morning")
        assert table.texts() == ["echo good morning"]
        assert table.store.next_message("1") is None


async def test_only_the_message_cut_off_by_a_crash_is_marked(tmp_path: Path) -> None:
    path = tmp_path / "bot.sqlite"
    with Store(path) as store:
        actions = tuple(Say(text=text, key=text) for text in ("sent", "cut off", "waiting"))
        store.finish("1", state=None, actions=actions, now=NOON)
        for reference in ("sent", "cut off"):
            message = store.next_message("1")
            assert message is not None
            store.mark_sending(message.id)
            if reference == "sent":
                store.mark(message.id, "sent")
    async with open_house(path) as table:
        await table.house.settled("1")
        assert table.texts() == ["(you may have this already) cut off", "waiting"]


async def test_an_event_stored_before_a_crash_is_handled_after_it(tmp_path: Path) -> None:
    path = tmp_path / "bot.sqlite"
    with Store(path) as store:
        assert store.accept(Incoming(key="u1", chat_id="1", event=TextReceived(text="hello")), NOON)
    async with open_house(path) as table:
        await table.house.settled("1")
        await table.say("hello", key="u1")
        assert table.texts() == ["echo hello"]


async def test_a_chat_that_cannot_be_reached_does_not_hold_up_another() -> None:
    class Stuck(Loopback):
        async def deliver(self, message: object) -> Sent:
            if message.chat_id == "1":  # type: ignore[attr-defined]
                await asyncio.sleep(60)
            return await super().deliver(message)  # type: ignore[arg-type, return-value]

    async with open_house(platform=Stuck()) as table:
        table.platform.say("hello", chat_id="1")
        async with asyncio.timeout(5):
            await table.say("hello", chat_id="2")
        assert table.texts("2") == ["echo hello"]
        table.house._outbox._workers._tasks["1"].cancel()


async def test_closing_leaves_nothing_half_done(tmp_path: Path) -> None:
    path = tmp_path / "bot.sqlite"
    async with open_house(path) as table:
        for n in range(30):
            table.platform.say(f"m{n}")
        await table.platform.taken_in()
    async with open_house(path) as again:
        await again.house.settled("1")
        assert table.texts() + again.texts() == [f"echo m{n}" for n in range(30)]


def remind(key: str = "c1:s1:0", minutes: float = 1) -> Remind:
    return Remind(key=key, cook_id="c1", step_id="s1", due_at=NOON + timedelta(minutes=minutes))


def test_a_known_reminder_is_moved_and_a_fired_one_never_comes_back() -> None:
    with Store(None) as store:
        store.finish("1", state=None, actions=(remind(), remind(minutes=5)), now=NOON)
        assert store.due("1", NOON + timedelta(minutes=4)) == ()
        due = store.due("1", NOON + timedelta(minutes=5))
        assert [reminder.key for reminder in due] == ["c1:s1:0"]
        assert store.finish("1", state=None, actions=(), now=NOON, fired=due)
        store.finish("1", state=None, actions=(remind(minutes=6),), now=NOON)
        assert store.due("1", NOON + timedelta(hours=1)) == ()


def test_a_cancelled_reminder_can_be_set_again() -> None:
    with Store(None) as store:
        actions = (remind(), CancelReminders(cook_id="c1", keys=("c1:s1:0",)))
        store.finish("1", state=None, actions=actions, now=NOON)
        assert store.next_reminder("1") is None
        store.finish("1", state=None, actions=(remind(minutes=2),), now=NOON)
        assert store.next_reminder("1") == NOON + timedelta(minutes=2)


def test_the_outcome_of_a_reminder_that_moved_meanwhile_is_dropped_whole() -> None:
    with Store(None) as store:
        store.finish("1", state=None, actions=(remind(),), now=NOON)
        due = store.due("1", NOON + timedelta(minutes=1))
        store.finish("1", state=None, actions=(remind(minutes=9),), now=NOON)
        assert not store.finish("1", state=b"{}", actions=(Say(text="too early"),), now=NOON, fired=due)
        assert store.state("1") is None
        assert store.next_message("1") is None


def test_a_second_process_on_one_file_is_refused_in_one_line(tmp_path: Path) -> None:
    path = tmp_path / "bot.sqlite"
    with Store(path):
        with pytest.raises(StoreError, match="another Panwright is using") as caught:
            Store(path)
        assert "\n" not in str(caught.value)
    Store(path).close()


@pytest.mark.parametrize("content", [b"not a database at all, only words " * 40, b"\0" * 4096])
def test_a_damaged_file_is_refused_and_left_as_it_is(tmp_path: Path, content: bytes) -> None:
    path = tmp_path / "bot.sqlite"
    path.write_bytes(content)
    with pytest.raises(StoreError):
        Store(path)
    assert path.read_bytes() == content


def test_a_file_of_something_else_or_of_a_newer_version_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "other.sqlite"
    with sqlite3.connect(path) as other:
        other.execute("CREATE TABLE recipes (id INTEGER)")
    other.close()
    with pytest.raises(StoreError, match="not a Panwright file"):
        Store(path)
    path = tmp_path / "newer.sqlite"
    Store(path).close()
    with sqlite3.connect(path) as newer:
        newer.execute(
            "INSERT INTO _sqlite_migrations (migration_set, name) VALUES ('panwright', 'from_2031')"
        )
    newer.close()
    with pytest.raises(StoreError, match="newer"):
        Store(path)


def test_what_is_old_is_forgotten_and_what_waits_is_not() -> None:
    with Store(None) as store:
        store.accept(Incoming(key="new", chat_id="1", event=TextReceived(text="x")), NOON)
        store.finish("1", state=None, actions=(remind(), Say(text="hello")), now=NOON)
        store.forget_old(NOON + timedelta(days=30))
        assert store.next_event("1") is not None
        assert store.next_message("1") is not None
        assert store.next_reminder("1") is not None


async def test_many_chats_are_served_side_by_side() -> None:
    async with open_house() as table:
        chats = [str(n) for n in range(50)]
        for chat in chats:
            table.platform.say("cook 30", chat_id=chat)
        await table.platform.taken_in()
        for chat in chats:
            await table.house.settled(chat)
        await table.clock.move(30)
        for chat in chats:
            await _until(lambda chat=chat: len(table.texts(chat)) == 2)  # type: ignore[misc]


async def _until(holds: Callable[[], bool]) -> None:
    async with asyncio.timeout(5):
        while not holds():
            await asyncio.sleep(0)
