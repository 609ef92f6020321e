"""A real process over the tiny conversation, killed at the worst moments.

Nothing is lost, and nothing is doubled but the one message cut off, which says so.
"""

from __future__ import annotations

import os
import re
import sys
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest

from bot.core.notices import as_delivered
from tests.loopback.process import Serving
from tests.loopback.standin import StandIn

ROOT = Path(__file__).parents[2]
TINY = [sys.executable, "-m", "tests.loopback.tiny_serve"]
REPEAT = "(you may have this already) "


@asynccontextmanager
async def serving(home: Path, *, pace: float = 60.0) -> AsyncIterator[tuple[StandIn, Serving]]:
    async with StandIn() as server:
        bot = Serving(server, home, pace=pace, program=TINY)
        async with bot:
            yield server, bot


@pytest.fixture(autouse=True)
def _tests_can_be_imported(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PYTHONPATH", os.pathsep.join([str(ROOT), os.environ.get("PYTHONPATH", "")]))


def plain(texts: list[str]) -> list[str]:
    said = [re.sub(r"^\d+ min late: ", "", text.removeprefix(REPEAT)) for text in texts]
    return [text.split(" late")[0].split(": ")[-1] for text in said]


async def test_kill_between_reminders_loses_none_and_doubles_none(tmp_path: Path) -> None:
    async with serving(tmp_path) as (server, bot):
        server.say("cook 30 90 150 210")
        await server.until(lambda: len(server.seen) >= 2)
        await bot.kill()
        await bot.start()
        await server.until(lambda: "s4" in "".join(server.texts()))
        told = "; ".join(server.texts())
        assert [told.count(f"s{n} late") for n in (1, 2, 3, 4)] == [1, 1, 1, 1]


async def test_kill_after_the_server_took_a_message_repeats_that_one_and_says_so(tmp_path: Path) -> None:
    async with serving(tmp_path) as (server, bot):
        server.say("hello")
        await server.until(lambda: len(server.seen) == 1)
        server.on("sendMessage", delay_s=5.0)  # it arrives, the answer does not
        server.say("cook 600")
        await server.until(lambda: len(server.seen) == 2)
        await bot.kill()
        await bot.start()
        await server.until(lambda: len(server.seen) == 3)
        server.say("swap")
        await server.until(lambda: len(server.seen) == 4)
        assert server.texts() == ["echo hello", "cook c1 begun", f"{REPEAT}cook c1 begun", "swapped"]


async def test_a_message_fetched_but_not_answered_when_killed_is_answered_after_it(tmp_path: Path) -> None:
    async with serving(tmp_path) as (server, bot):
        server.on("sendMessage", status=502, body="<html>", times=100)
        for text in ("one", "two", "three"):
            server.say(text)
        await server.until(lambda: server.unacknowledged == 0)
        await bot.kill()
        server._rules.clear()
        await bot.start()
        await server.until(lambda: len(server.seen) >= 3)
        assert plain(server.texts()) == ["echo one", "echo two", "echo three"]


async def test_term_ends_in_time_with_a_send_under_way_and_the_rest_goes_out_later(tmp_path: Path) -> None:
    async with serving(tmp_path) as (server, bot):
        server.say("cook 60 300")
        await server.until(lambda: len(server.seen) == 1)
        server.on("sendMessage", delay_s=30.0)
        await server.until(lambda: len(server.seen) == 2)
        assert await bot.terminate() == 0
        await bot.start()
        await server.until(lambda: "s2" in server.texts()[-1])
        assert plain(server.texts()) == ["cook c1 begun", "s1", "s1", "s2"]
        assert server.texts()[2].startswith(REPEAT)


async def test_a_chat_told_to_wait_does_not_hold_up_another(tmp_path: Path) -> None:
    async with serving(tmp_path) as (server, _bot):
        wait = {"ok": False, "error_code": 429, "description": "x", "parameters": {"retry_after": 2}}
        server.on("sendMessage", status=429, body=wait, chat="7")
        server.say("slow")
        server.say("quick", chat=8)
        await server.until(lambda: len(server.seen) == 2)
        assert [message.chat_id for message in server.seen] == ["8", "7"]


async def test_the_log_holds_no_text_no_token_and_no_chat_id(tmp_path: Path) -> None:
    async with serving(tmp_path) as (server, bot):
        server.say("boom", chat=700_123)
        server.say("aubergine", chat=700_123)
        await server.until(lambda: len(server.seen) == 2)
        await bot.terminate()
        assert "failed (note" in bot.log
        for secret in ("aubergine", "secret", "700123", server.token.partition(":")[2]):
            assert secret not in bot.log


async def test_a_second_process_on_the_same_file_is_refused(tmp_path: Path) -> None:
    async with serving(tmp_path) as (server, bot):
        server.say("hello")
        await server.until(lambda: len(server.seen) == 1)
        second = Serving(server, tmp_path, pace=60.0, program=TINY)
        async with second:
            assert await second.ended() == 2
        assert "another Panwright is using" in bot.log


async def test_a_rejected_token_ends_the_process_with_one_line(tmp_path: Path) -> None:
    async with StandIn() as server:
        good = server.token
        server.token = "1:another"
        bot = Serving(server, tmp_path, pace=1.0)
        server.token = good
        async with bot:
            assert await bot.ended() == 2
        assert "PANWRIGHT_TELEGRAM_TOKEN" in bot.log
        assert "Traceback" not in bot.log


async def test_the_server_may_be_away_when_the_bot_starts(tmp_path: Path) -> None:
    async with StandIn() as away:
        port = away.port
    async with StandIn(port=port) as first:
        token = first.token
    gone = StandIn(token=token, port=port)
    async with Serving(gone, tmp_path, pace=60.0, program=TINY), gone:
        gone.say("hello")
        await gone.until(lambda: len(gone.seen) == 1)


def test_what_the_tests_call_the_repeat_mark_is_what_is_said() -> None:
    assert as_delivered("x", maybe_repeat=True, late_s=0.0) == f"{REPEAT}x"
