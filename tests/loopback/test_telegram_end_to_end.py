"""The whole bot as a real process against the stand-in, on a fast clock: fridge to table, and across kill -9.

What is checked is what a cook would see, not its wording: a plan that can be
started, every reminder of the plan once, a swap answered, a dinner served.
"""

from __future__ import annotations

import sqlite3
from collections import Counter
from pathlib import Path

from tests.loopback.process import Serving
from tests.loopback.standin import Seen, StandIn

REPEAT = "(you may have this already) "
PACE = 600.0  # an hour's dinner in six seconds
FRIDGE = "3 chicken thighs, 4 carrots, 500 g potatoes, 1 onion, for 2"


def with_button(server: StandIn, label: str) -> list[Seen]:
    return [
        message
        for message in server.seen
        if any(button["text"].lower().startswith(label) for row in message.keyboard for button in row)
    ]


def rows(home: Path, sql: str) -> list[tuple[str, ...]]:
    """What the bot itself has written down, read beside it."""
    database = sqlite3.connect(f"file:{home / 'bot.sqlite'}?mode=ro", uri=True)
    try:
        return database.execute(sql).fetchall()
    finally:
        database.close()


def open_reminders(home: Path) -> int:
    return int(rows(home, "SELECT count(*) FROM reminders WHERE state = 'waiting'")[0][0])


def check_ledger(server: StandIn, home: Path) -> None:
    """Every reminder was told; what the bot wrote the cook saw once, or again with the mark."""
    assert rows(home, "SELECT key FROM reminders WHERE state = 'waiting'") == []
    assert rows(home, "SELECT key FROM reminders WHERE state = 'fired'")
    assert rows(home, "SELECT id FROM outbox WHERE state <> 'sent'") == []
    written = Counter(text for (text,) in rows(home, "SELECT text FROM outbox"))
    seen = Counter(server.texts())
    unmarked = Counter({text: n for text, n in seen.items() if not text.startswith(REPEAT)})
    marked = Counter({text.removeprefix(REPEAT): n for text, n in seen.items() if text.startswith(REPEAT)})
    assert not unmarked - written  # nothing twice without the mark
    assert not written - unmarked - marked  # nothing lost


async def begin(server: StandIn, home: Path) -> None:
    """Text what is there, get a plan, start it."""
    server.say(FRIDGE)
    await server.until(lambda: bool(with_button(server, "start")), within_s=30.0)
    server.tap(with_button(server, "start")[-1], "start")
    await server.until(lambda: open_reminders(home) > 3)


async def test_from_the_fridge_to_the_table(tmp_path: Path) -> None:
    async with StandIn() as server, Serving(server, tmp_path, pace=PACE) as bot:
        server.say(FRIDGE)
        await server.until(lambda: bool(with_button(server, "start")), within_s=30.0)
        plan = with_button(server, "start")[-1].text.lower()
        assert all(food in plan for food in ("chicken", "carrot", "potato"))
        assert "74 °c" in plan  # USDA FSIS safe minimum for poultry

        before = len(server.seen)
        server.say("parsnips instead of the carrots?")
        await server.until(lambda: len(server.seen) > before)
        assert "parsnip" in server.texts()[-1].lower()

        server.tap(with_button(server, "start")[0], "start")
        await server.until(lambda: open_reminders(tmp_path) > 3)
        await server.until(lambda: bool(with_button(server, "done")))
        server.tap(with_button(server, "done")[-1], "done")
        before = len(server.seen)
        server.say("can I use turnip instead of the potatoes?")
        await server.until(lambda: any("turnip" in text.lower() for text in server.texts()[before:]))

        await server.until(lambda: open_reminders(tmp_path) == 0, within_s=60.0)
        await server.until(lambda: any("serve" in text.lower() for text in server.texts()))
        assert await bot.terminate() == 0
        check_ledger(server, tmp_path)
        assert len(server.answered_taps) == 2
        assert "ERROR" not in bot.log


async def test_the_same_across_kill_9(tmp_path: Path) -> None:
    async with StandIn() as server, Serving(server, tmp_path, pace=PACE) as bot:
        await begin(server, tmp_path)
        told = len(server.seen)
        await server.until(lambda: len(server.seen) > told + 1, within_s=30.0)
        await bot.kill()  # between two messages
        await bot.start()

        told = len(server.seen)
        server.on("sendMessage", delay_s=8.0)
        await server.until(lambda: len(server.seen) > told, within_s=30.0)
        await bot.kill()  # the server has the message, the bot does not know
        server.say("running 10 min late")
        await bot.start()

        await server.until(
            lambda: (
                open_reminders(tmp_path) == 0
                and not rows(tmp_path, "SELECT 1 FROM outbox WHERE state <> 'sent'")
            ),
            within_s=60.0,
        )
        assert await bot.terminate() == 0
        check_ledger(server, tmp_path)
        assert sum(text.startswith(REPEAT) for text in server.texts()) == 1
        assert "ERROR" not in bot.log
