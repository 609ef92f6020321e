"""The clock: accelerated, across restarts, and what an accelerated clock does to lateness."""

from __future__ import annotations

import logging
from datetime import UTC, datetime, timedelta

import pytest

from bot.clock import SystemClock
from bot.core.actions import Remind
from bot.core.events import DueReminder
from bot.runtime import logs
from bot.runtime.dispatcher import punctual
from bot.runtime.house import open_clock
from bot.runtime.store import ClockRow, Store
from tests.unit.runtime.tiny import NOON, FakeClock

HOUR = timedelta(hours=1)


async def test_an_accelerated_clock_reaches_a_time_that_much_sooner() -> None:
    clock = SystemClock(pace=3_600.0, start=NOON)
    await clock.sleep_until(NOON + timedelta(seconds=60))
    assert clock.now() >= NOON + timedelta(seconds=60)


def store_after_a_fast_run(*, began: datetime, due_at: datetime) -> Store:
    """A store whose clock ran 60 times as fast from `began`, with a reminder at `due_at`."""
    store = Store(None)
    store.set_clock(ClockRow(real_at=began, shown_at=began, pace=60.0))
    reminder = Remind(key="c1:s1:0", cook_id="c1", step_id="s1", due_at=due_at)
    store.finish("1", state=None, actions=(reminder,), now=began)
    return store


def test_a_cook_begun_on_a_fast_clock_goes_on_where_it_was() -> None:
    began = datetime.now(UTC) - timedelta(minutes=1)  # an hour on the fast clock
    with store_after_a_fast_run(began=began, due_at=began + 2 * HOUR) as store:
        shown = open_clock(store, pace=1.0).now()
        assert began + HOUR <= shown < began + HOUR + timedelta(minutes=10)


def test_when_that_cook_is_long_past_the_clock_is_the_real_one_again() -> None:
    began = datetime.now(UTC) - timedelta(hours=5)  # 300 hours on the fast clock
    with store_after_a_fast_run(began=began, due_at=began + 2 * HOUR) as store:
        assert abs(open_clock(store, pace=1.0).now() - datetime.now(UTC)) < timedelta(seconds=5)


def due(*seconds: float) -> tuple[DueReminder, ...]:
    return tuple(
        DueReminder(key=f"k{s}", cook_id="c1", step_id="s", due_at=NOON + timedelta(seconds=s))
        for s in seconds
    )


def test_the_haste_of_a_fast_clock_makes_no_reminder_late() -> None:
    clock = FakeClock(NOON + timedelta(seconds=400))
    clock.pace = 600.0
    together, now = punctual(due(0, 30, 300), clock)
    assert [reminder.key for reminder in together] == ["k0", "k30"]
    assert now == NOON + timedelta(seconds=30)


def test_a_real_delay_brings_all_that_was_missed_at_the_time_it_is() -> None:
    clock = FakeClock(NOON + timedelta(seconds=400))
    together, now = punctual(due(0, 30, 300), clock)
    assert len(together) == 3
    assert now == clock.now()


def test_log_lines_hold_no_token_and_no_chat_id(capsys: pytest.CaptureFixture[str]) -> None:
    saved = logging.getLogger().handlers[:]
    try:
        logs.set_up()
        logging.getLogger("bot.x").error(
            "called https://host/bot%s/getMe", "123456:AAHdqTcvCH1vGWJxfSeofSAs0K5PALDsaw"
        )
    finally:
        logging.getLogger().handlers[:] = saved
    err = capsys.readouterr().err
    assert "AAHdq" not in err
    assert "(token)" in err
    assert logs.chat_tag("123", b"a") != logs.chat_tag("123", b"b")
