"""The Telegram transport against the stand-in: what is taken in, how sending ends, what polling survives."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.core.actions import Button
from bot.core.events import ButtonPressed, OddMessage, TextReceived
from bot.transports.base import Incoming, NotStoredError, Outgoing, Refused, Sent, TryLater, Unsure
from bot.transports.telegram import RejectedError, Telegram, split
from tests.loopback.standin import StandIn


@pytest.fixture(autouse=True)
def _impatient(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("bot.transports.telegram.FIRST_WAIT_S", 0.05)


class Polling:
    """A transport that takes updates in from a stand-in; `got` is what it handed on."""

    def __init__(self, server: StandIn, bot: Telegram) -> None:
        self.server, self.bot = server, bot
        self.got: list[Incoming] = []
        self.fails = 0
        self.task: asyncio.Task[None]

    async def receive(self, incoming: Incoming) -> None:
        if self.fails:
            self.fails -= 1
            raise NotStoredError("disk full")
        self.got.append(incoming)

    async def until(self, count: int) -> list[Any]:
        await self.server.until(lambda: len(self.got) >= count)
        return [incoming.event for incoming in self.got]


@asynccontextmanager
async def polling(*, webhook: str = "") -> AsyncIterator[Polling]:
    async with StandIn(webhook=webhook) as server, Telegram(token=server.token, api=server.api) as bot:
        run = Polling(server, bot)
        run.task = asyncio.create_task(bot.run(run.receive))
        try:
            yield run
        finally:
            run.task.cancel()
            await asyncio.gather(run.task, return_exceptions=True)


def outgoing(text: str = "stir", *, chat: str = "7", data: str = "d") -> Outgoing:
    rows = ((Button(label="Done", data=data),),)
    return Outgoing(outbox_id=1, chat_id=chat, text=text, buttons=rows, maybe_repeat=False)


async def test_texts_taps_and_odd_messages_become_events() -> None:
    async with polling() as run:
        run.server.say("carrots")
        await run.until(1)
        assert isinstance(await run.bot.deliver(outgoing(data="d:1")), Sent)
        run.server.tap(run.server.seen[-1], "Done")
        photo = [{"file_id": "a", "file_unique_id": "b", "width": 1, "height": 1}]
        run.server.push({"message": run.server.message(photo=photo, caption="two leeks")})
        run.server.push({"message": run.server.message(photo=photo)})
        run.server.push({"message": run.server.message(new_chat_title="x")})  # nothing to answer
        run.server.say("last")
        assert await run.until(5) == [
            TextReceived(text="carrots", who="7"),
            ButtonPressed(data="d:1", who="7"),
            TextReceived(text="two leeks", who="7"),
            OddMessage(kind="photo"),
            TextReceived(text="last", who="7"),
        ]
        await run.server.until(lambda: len(run.server.answered_taps) == 1)
        assert run.server.allowed == ["message", "callback_query"]


async def test_an_update_is_acknowledged_only_after_it_is_stored() -> None:
    async with polling() as run:
        await run.server.until(lambda: run.server.calls["getUpdates"] >= 1)
        run.fails = 2  # the store refuses twice: a bot that had acknowledged would lose the message
        run.server.say("carrots")
        assert await run.until(1) == [TextReceived(text="carrots", who="7")]
        await run.server.until(lambda: run.server.unacknowledged == 0)


async def test_an_unreadable_update_does_not_hold_up_the_next_one() -> None:
    async with polling() as run:
        run.server.push(
            {"message": {"message_id": 5, "chat": {"id": 7, "type": "private"}, "text": "no date"}}
        )
        run.server.say("good")
        assert await run.until(1) == [TextReceived(text="good", who="7")]
        assert run.server.calls["getUpdates"] < 10  # and no hot loop


@pytest.mark.parametrize(
    ("status", "body"),
    [
        (
            409,
            {
                "ok": False,
                "error_code": 409,
                "description": "Conflict: terminated by other getUpdates request",
            },
        ),
        (502, "<html>bad gateway</html>"),
        (200, "no json"),
        (200, {"ok": False}),
        (401, {"ok": False, "error_code": 401, "description": "Unauthorized"}),
        (429, {"ok": False, "error_code": 429, "description": "x", "parameters": {"retry_after": 1}}),
    ],
)
async def test_polling_recovers_from_a_bad_answer(status: int, body: Any) -> None:
    async with polling() as run:
        run.server.on("getUpdates", status=status, body=body, times=2)
        run.server.say("still here")
        assert await run.until(1) == [TextReceived(text="still here", who="7")]
        assert run.server.calls["getUpdates"] < 10


async def test_a_webhook_left_on_the_server_is_taken_away() -> None:
    async with polling(webhook="https://example.org") as run:
        run.server.say("hello")
        await run.until(1)
        run.server.webhook = "https://example.org"
        run.server._news.set()
        run.server.say("again")
        assert len(await run.until(2)) == 2


async def test_a_rejected_token_ends_with_one_line_that_does_not_hold_it() -> None:
    async with StandIn() as server, Telegram(token="99:WRONG", api=server.api) as bot:

        async def receive(incoming: Incoming) -> None:
            raise AssertionError

        with pytest.raises(RejectedError) as caught:
            await asyncio.wait_for(bot.run(receive), 15)
        assert "WRONG" not in str(caught.value)


async def test_groups_are_heard_only_when_they_mean_the_bot() -> None:
    async with polling() as run:
        me = {"id": 123456, "is_bot": True, "first_name": "Pan"}
        mine = run.server.message(chat=-5, text="plan", **{"from": me})
        for fields in (
            {"text": "what's for dinner"},
            {"text": "/plan@other_bot leeks"},
            {"text": "/plan@pan_test_bot leeks"},
            {"text": "@pan_test_bot leeks and rice"},
            {"text": "done", "reply_to_message": mine},
            {"text": "/done"},
        ):
            run.server.push({"message": run.server.message(chat=-5, **fields)})
        events = await run.until(4)
        assert [event.text for event in events] == ["/plan leeks", "leeks and rice", "done", "/done"]


@pytest.mark.parametrize(
    ("status", "description", "parameters", "expected"),
    [
        (403, "Forbidden: bot was blocked by the user", {}, Refused),
        (400, "Bad Request: chat not found", {}, Refused),
        (429, "Too Many Requests: retry after 3", {"retry_after": 3}, TryLater),
        (502, "Bad Gateway", {}, TryLater),
    ],
)
async def test_refusals_of_a_message(
    status: int, description: str, parameters: dict[str, int], expected: type
) -> None:
    async with polling() as run:
        body = {"ok": False, "error_code": status, "description": description, "parameters": parameters}
        run.server.on("sendMessage", status=status, body=body)
        delivery = await run.bot.deliver(outgoing())
        assert isinstance(delivery, expected)
        if isinstance(delivery, TryLater) and parameters:
            assert delivery.after_s == 3.0
        assert not run.server.seen


async def test_a_lost_answer_is_unsure_and_a_closed_port_is_not() -> None:
    async with polling() as run:
        run.server.lose("sendMessage")
        assert isinstance(await run.bot.deliver(outgoing()), Unsure)
        assert run.server.texts() == ["stir"]
    async with Telegram(token="1:AA", api="http://127.0.0.1:9/bot") as bot:
        assert isinstance(await bot.deliver(outgoing()), TryLater)


async def test_a_button_the_server_would_refuse_does_not_lose_the_message() -> None:
    async with polling() as run:
        assert isinstance(await run.bot.deliver(outgoing(data="ä" * 33)), Sent)
        assert run.server.seen[-1].keyboard == []


async def test_a_long_text_goes_out_in_parts_with_buttons_under_the_last() -> None:
    async with polling() as run:
        text = "\n\n".join(f"step {n}: " + "🥕" * 120 for n in range(40))
        assert isinstance(await run.bot.deliver(outgoing(text)), Sent)
        assert len(run.server.seen) > 1
        assert [bool(message.keyboard) for message in run.server.seen] == [False] * (
            len(run.server.seen) - 1
        ) + [True]
        assert "\n\n".join(run.server.texts()) == text


@given(st.text(alphabet=st.characters(codec="utf-8"), max_size=400), st.integers(4, 60))
def test_splitting_loses_no_word_and_keeps_the_limit(text: str, longest: int) -> None:
    parts = split(text, longest)
    assert all(0 < len(part.encode("utf-16-le")) // 2 <= longest for part in parts)
    if text.strip():
        assert "".join("".join(parts).split()) == "".join(text.split())
