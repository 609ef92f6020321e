"""The terminal chat: a line typed is a message, a letter presses a button, messages may come at any time.

At a terminal the prompt is always there: prompt_toolkit keeps the partly typed
line whole while answers and reminders are written above it. With input from a
pipe or a file the lines are taken one after the other, each answered before the
next is taken, and echoed so that the output reads as a dialogue.
"""

from __future__ import annotations

import asyncio
import os
import re
import shutil
import sys
import textwrap
import threading
import uuid
from collections.abc import Awaitable, Callable, Sequence
from contextlib import ExitStack, suppress
from datetime import datetime
from io import TextIOWrapper
from string import ascii_lowercase
from typing import Protocol, TextIO

from bot.clock import Clock
from bot.core.actions import Button
from bot.core.events import ButtonPressed, TextReceived
from bot.transports.base import Delivery, Incoming, NotStoredError, Outgoing, Receive, Sent, readable

CHAT = "terminal"
LEAVING = frozenset({"bye", "quit", "exit", "/quit", "/exit"})
PROMPT = "> "
GUTTER = " " * 7  # as wide as "18:42  "
WIDEST = 92  # longer lines are tiring to read

# What the rest of a list item hangs behind: a bullet, "2. ", a minute ("  9  "), a time of day.
MARK = re.compile(r" *(?:[-•*▶] +|\d+\. +|\d\d:\d\d +|\d+  +)?")

Buttons = tuple[tuple[Button, ...], ...]


class Lines(Protocol):
    """Where lines come from and messages are shown."""

    async def next(self) -> str | None:
        """The next line, None when there are no more."""

    def show(self, text: str) -> None:
        """Write a message; a line being typed stays whole."""

    def close(self) -> None:
        """No more lines are wanted."""


class TypedLines:
    """Lines typed at a terminal."""

    def __init__(self) -> None:
        os.environ.setdefault("PROMPT_TOOLKIT_NO_CPR", "1")  # ask no terminal where its cursor is
        from prompt_toolkit import PromptSession
        from prompt_toolkit.patch_stdout import patch_stdout

        self._session: PromptSession[str] = PromptSession(PROMPT)
        self._above = ExitStack()  # once for all lines: between two of them keys must not be lost
        self._above.enter_context(patch_stdout(raw=True))

    async def next(self) -> str | None:
        """The next line typed; None after Ctrl-D or Ctrl-C."""
        try:
            return await self._session.prompt_async()
        except (EOFError, KeyboardInterrupt):
            return None

    def show(self, text: str) -> None:
        """Write above the line being typed."""
        print(text, flush=True)

    def close(self) -> None:
        """Write what is still to be written, and give the terminal back."""
        self._above.close()


class PipedLines:
    """Lines from a pipe or a file, echoed as they are taken."""

    def __init__(self, source: TextIO, sink: TextIO, *, answered: Callable[[], Awaitable[None]]) -> None:
        """`answered` returns when the last line has been handled and its answers shown."""
        self._source, self._sink, self._answered = source, sink, answered
        self._read: asyncio.Queue[str | None] = asyncio.Queue()
        self._reader: threading.Thread | None = None

    async def next(self) -> str | None:
        """The next line, once the last is answered; None at the end."""
        await self._answered()
        if self._reader is None:  # a daemon: a read that never returns must not keep the process alive
            loop = asyncio.get_running_loop()
            self._reader = threading.Thread(target=self._feed, args=(loop,), daemon=True)
            self._reader.start()
        line = await self._read.get()
        if line is not None and line.strip():
            self.show(f"{PROMPT}{line}")
        return line

    def _feed(self, loop: asyncio.AbstractEventLoop) -> None:
        with suppress(RuntimeError):  # the loop may have ended meanwhile
            for line in self._source:
                loop.call_soon_threadsafe(self._read.put_nowait, line.rstrip("\r\n"))
            loop.call_soon_threadsafe(self._read.put_nowait, None)

    def show(self, text: str) -> None:
        """Write a message."""
        print(text, file=self._sink, flush=True)

    def close(self) -> None:
        """Nothing to do: the reader is a daemon."""


class Console:
    """One cook at one terminal."""

    def __init__(self, *, lines: Lines, clock: Clock) -> None:
        self._lines, self._clock = lines, clock
        self._offered: dict[str, Button] = {}

    def laid_out(self, text: str, buttons: Buttons, when: datetime) -> str:
        """A message as this screen shows it; from now on its buttons are what letters press."""
        if buttons:
            self._offered = lettered(buttons)
        width = min(WIDEST, shutil.get_terminal_size((WIDEST, 24)).columns)
        return laid_out(text, buttons, when, width=width)

    async def run(self, receive: Receive) -> None:
        """Take lines until there are no more or the cook says bye."""
        try:
            await self._take_lines(receive)
        finally:
            self._lines.close()

    async def _take_lines(self, receive: Receive) -> None:
        while (line := await self._lines.next()) is not None:
            said = line.strip()
            if said.lower() in LEAVING:
                return
            if not said:
                continue
            button = self._offered.get(said.lower())
            event = ButtonPressed(data=button.data) if button else TextReceived(text=readable(line))
            try:
                await receive(Incoming(key=uuid.uuid4().hex, chat_id=CHAT, event=event))
            except NotStoredError as error:
                self._lines.show(f"That could not be kept ({error}). Please send it again.")

    async def deliver(self, message: Outgoing) -> Delivery:
        """Show a message with the time and its buttons."""
        self._lines.show(self.laid_out(message.text, message.buttons, self._clock.now()))
        return Sent(reference="shown")


def lettered(buttons: Buttons) -> dict[str, Button]:
    """A letter for each button, in reading order."""
    return dict(zip(ascii_lowercase, (button for row in buttons for button in row), strict=False))


def laid_out(text: str, buttons: Buttons, when: datetime, *, width: int) -> str:
    """A message for the screen: the time in the margin, long lines folded, buttons as letters."""
    room = max(20, width - len(GUTTER))
    lines = [folded for line in text.split("\n") for folded in _fold(line, room)]
    if buttons:
        letters = iter(lettered(buttons))
        labels = [
            [f"[{letter}] {button.label}" for button, letter in zip(row, letters, strict=False)]
            for row in buttons
        ]
        lines += ["", *(folded for row in labels for folded in _fold_row(row, room))]
    stamp = when.astimezone().strftime("%H:%M")
    shown = [f"{GUTTER}{line}".rstrip() for line in lines]
    return "\n".join([f"{stamp}  {shown[0].lstrip() if shown else ''}".rstrip(), *shown[1:], ""])


def _fold(line: str, room: int) -> list[str]:
    """A line in pieces of at most `room`; list items hang under their first word."""
    mark = MARK.match(line)
    hang = " " * min(len(mark.group()) if mark else 0, room // 3)
    return textwrap.wrap(line, room, subsequent_indent=hang, break_long_words=True) or [""]


def _fold_row(labels: Sequence[str], room: int) -> list[str]:
    """A row of buttons on as few lines as fit."""
    lines: list[str] = []
    for label in labels:
        joined = f"{lines[-1]}   {label}" if lines else label
        if lines and len(joined) <= room:
            lines[-1] = joined
        else:
            lines.append(label)
    return lines


def lines_of_this_terminal(*, answered: Callable[[], Awaitable[None]]) -> Lines:
    """Typed lines at a terminal, else lines from the pipe; see `PipedLines` for `answered`."""
    for stream in (sys.stdin, sys.stdout):  # bytes that are no text must not end a chat
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="replace")
    if sys.stdin.isatty() and sys.stdout.isatty():
        return TypedLines()
    return PipedLines(sys.stdin, sys.stdout, answered=answered)
