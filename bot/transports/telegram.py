"""Telegram by long polling; the only module that knows python-telegram-bot.

The library's own poller acknowledges an update as soon as it is fetched, so we
poll ourselves: the offset moves on only after `receive` has stored the update.
Updates are parsed one by one, so that one nobody can read does not hold up the
rest. Messages go out as plain text (no markup a cook's words could break).
"""

from __future__ import annotations

import asyncio
import logging
import os
import time
import warnings
from datetime import timedelta
from typing import Any, NoReturn
from urllib.parse import urlsplit

from telegram import Bot, CallbackQuery, InlineKeyboardButton, InlineKeyboardMarkup, Message, Update
from telegram.error import (
    BadRequest,
    ChatMigrated,
    Conflict,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
    TimedOut,
)
from telegram.request import HTTPXRequest

from bot.core.actions import Button
from bot.core.events import ButtonPressed, OddMessage, TextReceived
from bot.runtime.pacing import Pacing, Rate
from bot.transports.base import (
    Delivery,
    Incoming,
    Outgoing,
    Receive,
    Refused,
    Sent,
    TryLater,
    Unsure,
    readable,
)

ALLOWED_UPDATES = ["message", "callback_query"]  # always sent: the server keeps the list it was last given
POLL_S = 20
FIRST_WAIT_S, LONGEST_WAIT_S = 0.5, 30.0  # after a poll that failed
REJECTED_TRIES = 3  # one 401 or 404 may come from something in between; several in a row are meant
LONGEST_TEXT = 4096  # UTF-16 units; counting them so is safe however the server counts
LONGEST_DATA = 64  # bytes
# httpx's names for "the request never left": sending again cannot double the message.
NOT_SENT = frozenset({"ConnectError", "ConnectTimeout", "PoolTimeout", "UnsupportedProtocol", "ProxyError"})
MAYBE_SENT = frozenset({"ReadTimeout", "WriteTimeout", "ReadError", "WriteError", "RemoteProtocolError"})
# Attachments we can name to the cook, the most telling first.
KINDS = (
    *("photo", "voice", "audio", "video", "video_note", "animation", "sticker", "document", "location"),
    *("venue", "contact", "poll", "dice", "story"),
)

log = logging.getLogger(__name__)


class RejectedError(Exception):
    """The platform will not have this token; one line."""


def pacing() -> Pacing:
    """How fast to send, a little under what the platform advises.

    Advised: one message a second to a chat, 20 a minute to a group, 30 a second over all.
    """
    return Pacing(
        chat=Rate(burst=4, per_s=1.0), group=Rate(burst=4, per_s=0.25), everyone=Rate(burst=20, per_s=25.0)
    )


class Telegram:
    """A bot on Telegram. Use as an async context manager."""

    def __init__(self, *, token: str, api: str) -> None:
        """`api` is the address to which the token is appended."""
        warnings.filterwarnings("ignore", message="Please use 'Bot.getUpdates'")  # `_fetch` means it
        os.environ.setdefault("PTB_TIMEDELTA", "true")  # waits as timedeltas, as the library will have them
        parts = urlsplit(api)
        # A proxy set for the internet must not swallow calls to a server on this machine.
        options = {"trust_env": parts.hostname not in ("127.0.0.1", "localhost", "::1")}
        self._sending = HTTPXRequest(connection_pool_size=24, read_timeout=15.0, httpx_kwargs=options)
        self._polling = HTTPXRequest(connection_pool_size=4, httpx_kwargs=options)
        self._bot = Bot(
            token,
            base_url=api,
            base_file_url=f"{parts.scheme}://{parts.netloc}/file/bot",
            request=self._sending,
            get_updates_request=self._polling,
        )
        self._offset = 0
        self._answers: set[asyncio.Task[None]] = set()
        self._parts_sent: dict[int, int] = {}  # of messages in several parts that wait to go on
        self._moved: dict[str, int] = {}  # groups that became supergroups while we run

    async def __aenter__(self) -> Telegram:
        await self._sending.initialize()
        await self._polling.initialize()
        return self

    async def __aexit__(self, *ending: object) -> None:
        if self._answers:
            await asyncio.wait(self._answers, timeout=2.0)
        for task in self._answers:
            task.cancel()
        await self._sending.shutdown()
        await self._polling.shutdown()

    # --- events in

    async def run(self, receive: Receive) -> None:
        """Take updates in until cancelled. Raises RejectedError when the token is not accepted."""
        failures = rejections = 0
        name: str | None = None
        while True:
            begun = time.monotonic()
            try:
                if name is None:
                    name = await self._introduce()
                updates = await self._fetch()
                for raw in updates:
                    await self._take(raw, name, receive)
                    self._offset = max(self._offset, int(raw["update_id"]) + 1)
                if failures:
                    log.info("polling: works again")
                failures = rejections = 0
                if not updates and time.monotonic() - begun < 0.2:
                    await asyncio.sleep(0.2)  # a server that does not wait must not be asked in a hot loop
            except InvalidToken:
                rejections += 1
                if rejections >= REJECTED_TRIES:
                    _reject()
                await asyncio.sleep(2 * FIRST_WAIT_S * rejections)
            except RetryAfter as error:
                await asyncio.sleep(_seconds(error) + 0.5)
            except TimedOut:
                failures += 1
                await asyncio.sleep(min(LONGEST_WAIT_S, 0.2 * failures))
            except Exception as error:
                failures += 1
                name = None if isinstance(error, Conflict) else name  # look whether a webhook is in the way
                log.warning("polling: %s; trying again", _reason(error))
                await asyncio.sleep(min(LONGEST_WAIT_S, FIRST_WAIT_S * 1.5**failures))

    async def _introduce(self) -> str:
        """Our user name; takes away a webhook that would keep updates from us."""
        me = await self._bot.get_me()
        await self._bot.delete_webhook()
        log.info("polling: connected")
        return me.username or ""

    async def _fetch(self) -> list[dict[str, Any]]:
        """The next updates, unparsed; acknowledges those before the offset."""
        got = await self._bot.do_api_request(
            "getUpdates",
            api_kwargs={"offset": self._offset, "timeout": POLL_S, "allowed_updates": ALLOWED_UPDATES},
            read_timeout=POLL_S + 5.0,
        )
        if not isinstance(got, list):
            raise TelegramError("no list of updates")
        return [raw for raw in got if isinstance(raw, dict) and isinstance(raw.get("update_id"), int)]

    async def _take(self, raw: dict[str, Any], name: str, receive: Receive) -> None:
        """Store one update; NotStoredError is let through. What cannot be read is logged and passed over."""
        try:
            update = Update.de_json(dict(raw), self._bot)
            incoming = incoming_of(update, bot_name=name, bot_id=self._bot_id)
        except Exception as error:
            log.error("update %s cannot be read (%s); passed over", raw["update_id"], type(error).__name__)
            return
        if update.callback_query is not None:
            self._answer(update.callback_query)
        if incoming is not None:
            await receive(incoming)

    @property
    def _bot_id(self) -> int:
        return int(self._bot.token.partition(":")[0])

    def _answer(self, query: CallbackQuery) -> None:
        """Tell the app that the tap has arrived, without waiting for it."""
        task = asyncio.create_task(self._answer_query(query.id))
        self._answers.add(task)
        task.add_done_callback(self._answers.discard)

    async def _answer_query(self, query_id: str) -> None:
        try:
            await self._bot.answer_callback_query(query_id)
        except TelegramError as error:  # too old, or the network: the tap counts all the same
            log.info("a tap could not be acknowledged: %s", _reason(error))

    # --- messages out

    async def deliver(self, message: Outgoing) -> Delivery:
        """Send one message, in parts when it is too long for one; the buttons stand under the last."""
        parts = split(message.text)
        markup = keyboard(message.buttons)
        chat = self._moved.get(message.chat_id, message.chat_id)
        first = self._parts_sent.pop(message.outbox_id, 0)
        sent: Message | None = None
        for number, part in enumerate(parts[first:], first):
            last = number == len(parts) - 1
            try:
                sent = await self._bot.send_message(chat, part, reply_markup=markup if last else None)
            except ChatMigrated as error:
                self._moved[message.chat_id] = error.new_chat_id
                return TryLater(after_s=0.0, reason="the group has moved")
            except Exception as error:
                if number:
                    self._parts_sent[message.outbox_id] = number
                return delivery_of(error)
        return Sent(reference="" if sent is None else str(sent.message_id))


def incoming_of(update: Update, *, bot_name: str, bot_id: int) -> Incoming | None:
    """The event in an update, None for what does not concern us. Raises on what cannot be read."""
    key = f"telegram:{update.update_id}"
    if (query := update.callback_query) is not None:
        chat_id = query.message.chat.id if query.message is not None else query.from_user.id
        if query.data is None:
            return None
        event = ButtonPressed(data=readable(query.data), who=str(query.from_user.id))
        return Incoming(key=key, chat_id=str(chat_id), event=event)
    message = update.message
    if message is None or message.chat.type == "channel":
        return None
    writer = message.from_user
    if writer is not None and writer.is_bot and message.sender_chat is None:
        return None  # two bots answering each other never end
    text = message.text or message.caption
    if message.chat.type != "private":
        text = addressed(text or "", message, bot_name=bot_name, bot_id=bot_id)
        if text is None:
            return None
    if text:
        said = TextReceived(text=readable(text), who="" if writer is None else str(writer.id))
        return Incoming(key=key, chat_id=str(message.chat.id), event=said)
    kind = next((kind for kind in KINDS if getattr(message, kind, None)), None)
    if kind is None:
        return None  # service messages: somebody joined, a title changed
    return Incoming(key=key, chat_id=str(message.chat.id), event=OddMessage(kind=kind))


def addressed(text: str, message: Message, *, bot_name: str, bot_id: int) -> str | None:
    """What a group says to us: commands, replies to us and mentions, our name taken out; else None."""
    mention = f"@{bot_name}".lower()
    words = text.split()
    if words and words[0].startswith("/"):
        command, at, name = words[0].partition("@")
        if at and name.lower() != bot_name.lower():
            return None
        return command + text.lstrip()[len(words[0]) :]
    replied = message.reply_to_message
    is_reply = replied is not None and replied.from_user is not None and replied.from_user.id == bot_id
    is_mention = bool(bot_name) and any(word.lower().rstrip(",.:!?") == mention for word in words)
    if is_mention:
        return " ".join(word for word in words if word.lower().rstrip(",.:!?") != mention) or "/help"
    return text if is_reply else None


def keyboard(buttons: tuple[tuple[Button, ...], ...]) -> InlineKeyboardMarkup | None:
    """Buttons under a message; one with data the platform would refuse is left out, not the message."""
    rows = [
        [InlineKeyboardButton(button.label, callback_data=button.data) for button in row if _fits(button)]
        for row in buttons
    ]
    rows = [row for row in rows if row]
    return InlineKeyboardMarkup(rows) if rows else None


def _fits(button: Button) -> bool:
    fits = bool(button.label) and 1 <= len(button.data.encode()) <= LONGEST_DATA
    if not fits:
        log.error("a button is left out: %d bytes of data", len(button.data.encode()))
    return fits


def split(text: str, longest: int = LONGEST_TEXT) -> list[str]:
    """A text in parts of at most `longest` UTF-16 units.

    Parts end at a paragraph where possible, else at a line, a word, or anywhere.
    """
    text = text.strip() or "…"
    parts: list[str] = []
    while _units(text) > longest:
        room = _prefix(text, longest)
        cut = next((at for mark in ("\n\n", "\n", " ") if (at := text.rfind(mark, 1, room + 1)) > 0), room)
        parts.append(text[:cut].rstrip() or "…")
        text = text[cut:].lstrip()
    return [*parts, text] if text else parts


def _units(text: str) -> int:
    return len(text.encode("utf-16-le", "surrogatepass")) // 2


def _prefix(text: str, units: int) -> int:
    """How many characters of the text make at most so many UTF-16 units."""
    room = min(len(text), units)
    while _units(text[:room]) > units:
        room -= max(1, (_units(text[:room]) - units) // 2)
    return room


def delivery_of(error: Exception) -> Delivery:
    """What a failed call means for the message: sure not to have arrived, unsure, or never to arrive."""
    cause = type(error.__cause__).__name__
    match error:
        case RetryAfter():
            return TryLater(after_s=_seconds(error), reason="asked to wait")
        case Forbidden():
            return Refused(reason=_reason(error))
        case BadRequest():  # before NetworkError, whose child it is
            return Refused(reason=_reason(error))
        case InvalidToken() | Conflict():
            return TryLater(after_s=30.0, reason=_reason(error))
        case NetworkError() if cause in NOT_SENT:
            return TryLater(after_s=None, reason=cause)
        case NetworkError() if isinstance(error, TimedOut) or cause in MAYBE_SENT:
            return Unsure(reason=cause)
        case NetworkError():  # an error status: the server did not take it
            return TryLater(after_s=None, reason=_reason(error))
        case _:  # an answer that cannot be read came with a status of success
            return Unsure(reason=type(error).__name__)


def _seconds(error: RetryAfter) -> float:
    wait = error.retry_after
    return max(1.0, wait.total_seconds() if isinstance(wait, timedelta) else float(wait))


def _reason(error: Exception) -> str:
    """An error in a few words; the platform's own texts name no cook, and the log masks tokens."""
    return (
        f"{type(error).__name__}: {str(error)[:120]}"
        if isinstance(error, TelegramError)
        else type(error).__name__
    )


def _reject() -> NoReturn:
    raise RejectedError("the platform does not accept PANWRIGHT_TELEGRAM_TOKEN (or PANWRIGHT_TELEGRAM_API)")
