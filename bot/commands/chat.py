"""`panwright chat`: the bot in this terminal."""

from __future__ import annotations

import argparse
import asyncio
import os
import sys
import uuid
from pathlib import Path

from bot import config
from bot.core.events import TextReceived
from bot.runtime import logs
from bot.runtime.house import House, open_clock
from bot.runtime.lock import StoreError
from bot.runtime.mind import Mind, awaken
from bot.runtime.store import Store
from bot.transports.base import Incoming
from bot.transports.console import CHAT, Console, Lines, PipedLines, lines_of_this_terminal
from knowledge.errors import KnowledgeError

HELLO = 'Panwright. Write what is in the fridge, for how many, by when. "help" tells more, Ctrl-D leaves.'
HASTE = "The clock runs {pace:g} times as fast."
BACK = "Welcome back. The last you saw, and below it how things stand now:"
STATUS = "status"
GOES_ON = "Your cook goes on. Its reminders wait here: open the chat again with the same data file."
FILE_HELP = "file that keeps the conversation (default: one in your data folder)"


def run(argv: list[str]) -> int:
    """Talk until the cook leaves. 0, or 2 when an option or the data file cannot be used."""
    parser = argparse.ArgumentParser(
        prog="panwright chat",
        description="Talk with Panwright in this terminal. Input may be piped; with a faster clock a cook "
        "begun there is kept on until its last reminder.",
    )
    parser.add_argument("--pace", type=_pace, default=1.0, help="run the clock this many times as fast")
    parser.add_argument("--data", type=Path, metavar="FILE", help=FILE_HELP)
    options = parser.parse_args(argv)
    path: Path = options.data or config.home(os.environ) / "chat.sqlite"
    try:
        with Store(path) as store:
            logs.set_up(path=path.with_suffix(".log"))
            asyncio.run(_talk(store, pace=options.pace))
    except (StoreError, KnowledgeError) as error:
        print(f"panwright chat: {error}", file=sys.stderr)
        return 2
    return 0


def _pace(text: str) -> float:
    try:
        return config.pace_of(text)
    except ValueError as error:
        raise argparse.ArgumentTypeError(str(error)) from error


async def _talk(store: Store, *, pace: float) -> None:
    async def answered() -> None:
        await house.settled(CHAT)

    lines = lines_of_this_terminal(answered=answered)
    mind = Mind(awaken)
    waking = mind.wake_up()
    if isinstance(lines, PipedLines):  # an accelerated clock must not run while the tables are read
        await waking
    clock = open_clock(store, pace=pace)
    console = Console(lines=lines, clock=clock)
    house = House(store=store, transport=console, clock=clock, think=mind)
    lines.show(HELLO if clock.pace == 1.0 else f"{HELLO}\n{HASTE.format(pace=clock.pace)}")
    try:
        async with house:
            await _welcome_back(store, console, lines, house)
            await console.run(house.receive)
            await house.settled(CHAT)
            if isinstance(lines, PipedLines) and pace > 1.0:
                await house.cooked_out(CHAT)
            elif store.next_reminder(CHAT) is not None:
                lines.show(GOES_ON)
    finally:
        mind.close()


async def _welcome_back(store: Store, console: Console, lines: Lines, house: House) -> None:
    """After a break: the last message that had buttons, and how things stand by now."""
    last = store.last_with_buttons(CHAT)
    if last is None or store.next_reminder(CHAT) is None:
        return
    lines.show(f"\n{BACK}\n{console.laid_out(last.text, last.buttons, last.written_at)}")
    await house.receive(Incoming(key=uuid.uuid4().hex, chat_id=CHAT, event=TextReceived(text=STATUS)))
