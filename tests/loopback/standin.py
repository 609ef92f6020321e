"""A stand-in for the Bot API on 127.0.0.1, strict where the real server is, with a ledger of what cooks see.

An update leaves only when a later getUpdates has a higher offset. Deliveries
can be made late, lost (delivered, but the answer never comes) or refused. Facts
of the wire: the official API description (10.1) and python-telegram-bot 22.8.
"""

from __future__ import annotations

import asyncio
import json
import time
from collections import defaultdict
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from typing import Any

from aiohttp import web

LONGEST_TEXT = 4096
BUSINESS_S = 120.0  # the stand-in ends by itself after this long

Handler = Callable[[dict[str, str]], Awaitable[web.Response]]


@dataclass(frozen=True, slots=True)
class Seen:
    """A message as the cook sees it; `at` is when it arrived (monotonic seconds)."""

    message_id: int
    chat_id: str
    text: str
    keyboard: list[list[dict[str, str]]]
    at: float

    def data(self, label: str) -> str:
        """What the button carries whose label begins like this."""
        return next(
            b["callback_data"]
            for row in self.keyboard
            for b in row
            if b["text"].lower().startswith(label.lower())
        )


@dataclass(slots=True)
class Rule:
    """What happens to coming calls of a method."""

    times: int
    status: int = 200
    body: Any = None
    delay_s: float = 0.0
    loses_answer: bool = False
    chat_id: str = ""


@dataclass(slots=True)
class StandIn:
    """The server. `seen` is the ledger; `calls` counts calls by method."""

    token: str = "123456:TESTTOKENTESTTOKENTESTTOKENTEST"
    seen: list[Seen] = field(default_factory=list)
    calls: dict[str, int] = field(default_factory=lambda: defaultdict(int))
    answered_taps: list[str] = field(default_factory=list)
    allowed: list[str] | None = None
    webhook: str = ""
    _updates: list[dict[str, Any]] = field(default_factory=list)
    _rules: dict[str, list[Rule]] = field(default_factory=lambda: defaultdict(list))
    _news: asyncio.Event = field(default_factory=asyncio.Event)
    _next_update: int = 1000
    _next_message: int = 1
    _waiting_poll: asyncio.Task[Any] | None = None
    _runner: web.AppRunner | None = None
    _end: asyncio.TimerHandle | None = None
    port: int = 0
    _methods: dict[str, Handler] = field(init=False)

    def __post_init__(self) -> None:
        self._methods = {
            "getMe": self._get_me,
            "deleteWebhook": self._delete_webhook,
            "getUpdates": self._get_updates,
            "sendMessage": self._send_message,
            "answerCallbackQuery": self._answer_callback_query,
        }

    async def __aenter__(self) -> StandIn:
        app = web.Application()
        app.router.add_route("*", "/bot{token}/{method}", self._call)
        self._runner = web.AppRunner(app, access_log=None, shutdown_timeout=0.5)
        await self._runner.setup()
        site = web.TCPSite(self._runner, "127.0.0.1", self.port)
        await site.start()
        self.port = self._runner.addresses[0][1]
        loop = asyncio.get_running_loop()
        self._end = loop.call_later(BUSINESS_S, lambda: loop.create_task(self._stop()))
        return self

    async def __aexit__(self, *ending: object) -> None:
        await self._stop()

    async def _stop(self) -> None:
        if self._end is not None:
            self._end.cancel()
        if self._runner is not None:
            await self._runner.cleanup()
            self._runner = None

    @property
    def api(self) -> str:
        return f"http://127.0.0.1:{self.port}/bot"

    # --- what a test does

    def push(self, update: dict[str, Any]) -> int:
        """Queue an update; returns its id."""
        self._next_update += 1
        self._updates.append({"update_id": self._next_update, **update})
        self._news.set()
        return self._next_update

    def say(self, text: str, *, chat: int = 7) -> int:
        """A cook writes in a chat of their own."""
        return self.push({"message": self.message(text=text, chat=chat)})

    def message(self, *, chat: int = 7, **fields: Any) -> dict[str, Any]:
        """A message as updates carry it."""
        self._next_message += 1
        kind = "private" if chat > 0 else "group"
        return {
            "message_id": self._next_message,
            "date": int(time.time()),
            "chat": {"id": chat, "type": kind, "first_name": "A"},
            "from": {"id": abs(chat), "is_bot": False, "first_name": "A"},
            **fields,
        }

    def tap(self, message: Seen, label: str) -> int:
        """A cook taps a button of a message."""
        chat = int(message.chat_id)
        under = {"message_id": message.message_id, "date": int(time.time()), "text": message.text}
        return self.push(
            {
                "callback_query": {
                    "id": f"q{self._next_update}",
                    "from": {"id": abs(chat), "is_bot": False, "first_name": "A"},
                    "chat_instance": "1",
                    "message": {**under, "chat": {"id": chat, "type": "private", "first_name": "A"}},
                    "data": message.data(label),
                }
            }
        )

    def on(
        self,
        method: str,
        *,
        status: int = 200,
        body: Any = None,
        delay_s: float = 0.0,
        times: int = 1,
        chat: str = "",
    ) -> None:
        """Script the answers to coming calls; 200 without a body handles the call and answers late."""
        self._rules[method].append(Rule(times, status, body, delay_s, False, chat))

    def lose(self, method: str, *, times: int = 1) -> None:
        """Handle coming calls, but close the connection without an answer."""
        self._rules[method].append(Rule(times, loses_answer=True))

    def texts(self, chat: int = 7) -> list[str]:
        """What a cook has seen, in order."""
        return [message.text for message in self.seen if message.chat_id == str(chat)]

    @property
    def unacknowledged(self) -> int:
        return len(self._updates)

    async def until(self, holds: Any, *, within_s: float = 15.0) -> None:
        """Return when `holds()` is true. Raises TimeoutError with what was seen."""
        try:
            async with asyncio.timeout(within_s):
                while not holds():
                    await asyncio.sleep(0.02)
        except TimeoutError:
            raise TimeoutError(f"seen so far: {[message.text for message in self.seen]}") from None

    # --- what the server does

    async def _call(self, request: web.Request) -> web.StreamResponse:
        method = request.match_info["method"]
        self.calls[method] += 1
        fields = {name: str(value) for name, value in (await request.post()).items()}
        fields |= dict(request.query)
        if request.match_info["token"] != self.token:
            return _error(401, "Unauthorized")
        rule = self._rule(method, fields)
        if rule is not None and (rule.status != 200 or rule.body is not None):
            await asyncio.sleep(rule.delay_s)
            if isinstance(rule.body, str):
                return web.Response(status=rule.status, text=rule.body, content_type="text/html")
            body = rule.body or {"ok": False, "error_code": rule.status, "description": "scripted"}
            return web.json_response(body, status=rule.status)
        handler = self._methods.get(method)
        if handler is None:
            return _error(404, "Not Found: method not found")
        answer: web.StreamResponse = await handler(fields)
        if rule is not None:
            await asyncio.sleep(rule.delay_s)
            if rule.loses_answer and request.transport is not None:
                request.transport.abort()
        return answer

    def _rule(self, method: str, fields: dict[str, str]) -> Rule | None:
        for rule in self._rules[method]:
            if rule.times > 0 and rule.chat_id in ("", fields.get("chat_id")):
                rule.times -= 1
                return rule
        return None

    async def _get_me(self, fields: dict[str, str]) -> web.Response:
        return _ok({"id": 123456, "is_bot": True, "first_name": "Pan", "username": "pan_test_bot"})

    async def _delete_webhook(self, fields: dict[str, str]) -> web.Response:
        self.webhook = ""
        return _ok(True)

    async def _get_updates(self, fields: dict[str, str]) -> web.Response:
        if self.webhook:
            return _error(409, "Conflict: can't use getUpdates method while webhook is active")
        if "allowed_updates" in fields:  # the last list given stays
            self.allowed = json.loads(fields["allowed_updates"])
        if self._waiting_poll is not None and not self._waiting_poll.done():
            self._waiting_poll.cancel()
        offset = int(fields.get("offset", 0))
        self._updates = [update for update in self._updates if update["update_id"] >= offset]
        self._waiting_poll = asyncio.create_task(self._poll(offset, float(fields.get("timeout", 0))))
        try:
            return _ok(await asyncio.shield(self._waiting_poll))
        except asyncio.CancelledError:
            if self._waiting_poll.done():
                return _error(409, "Conflict: terminated by other getUpdates request")
            self._waiting_poll.cancel()
            raise

    async def _poll(self, offset: int, timeout_s: float) -> list[dict[str, Any]]:
        until = time.monotonic() + timeout_s
        while True:
            batch = [
                update for update in self._updates if update["update_id"] >= offset and self._wants(update)
            ]
            left_s = until - time.monotonic()
            if batch or left_s <= 0:
                return batch[:100]
            self._news.clear()
            try:
                async with asyncio.timeout(left_s):
                    await self._news.wait()
            except TimeoutError:
                return []

    def _wants(self, update: dict[str, Any]) -> bool:
        return self.allowed is None or any(kind in update for kind in self.allowed)

    async def _send_message(self, fields: dict[str, str]) -> web.Response:
        text = fields.get("text", "").strip()
        if not text:
            return _error(400, "Bad Request: message text is empty")
        if len(text.encode("utf-16-le")) // 2 > LONGEST_TEXT:
            return _error(400, "Bad Request: message is too long")
        keyboard = json.loads(fields.get("reply_markup", '{"inline_keyboard": []}'))["inline_keyboard"]
        for row in keyboard:
            for button in row:
                if not 1 <= len(button.get("callback_data", "").encode()) <= 64 or not button["text"]:
                    return _error(400, "Bad Request: BUTTON_DATA_INVALID")
        self._next_message += 1
        chat_id = fields["chat_id"]
        self.seen.append(Seen(self._next_message, chat_id, text, keyboard, time.monotonic()))
        message = self.message(text=text, chat=int(chat_id))
        return _ok({**message, "message_id": self.seen[-1].message_id})

    async def _answer_callback_query(self, fields: dict[str, str]) -> web.Response:
        self.answered_taps.append(fields["callback_query_id"])
        return _ok(True)


def _ok(result: Any) -> web.Response:
    return web.json_response({"ok": True, "result": result})


def _error(status: int, description: str, **parameters: Any) -> web.Response:
    body = {"ok": False, "error_code": status, "description": description, "parameters": parameters}
    return web.json_response(body, status=status)
