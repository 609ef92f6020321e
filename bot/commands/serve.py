"""`panwright serve`: the bot on Telegram, by long polling."""

from __future__ import annotations

import argparse
import asyncio
import logging
import os
import signal
import sys
from contextlib import suppress

from bot import config
from bot.runtime import logs
from bot.runtime.house import House, open_clock
from bot.runtime.lock import StoreError
from bot.runtime.mind import Mind, awaken
from bot.runtime.store import Store
from knowledge.errors import KnowledgeError

ABOUT = """Serve Telegram by long polling until told to end. Settings are environment variables:
PANWRIGHT_TELEGRAM_TOKEN  the token of your bot (needed)
PANWRIGHT_TELEGRAM_API    address of the server, when it is not Telegram's own
PANWRIGHT_HOME            folder for what the bot keeps
PANWRIGHT_DB              the bot's file, when not telegram.sqlite in that folder
PANWRIGHT_PACE            run the clock so many times as fast, for trying it out
PANWRIGHT_LOG             DEBUG, INFO, WARNING or ERROR"""

log = logging.getLogger(__name__)


def run(argv: list[str]) -> int:
    """Serve until SIGTERM or SIGINT. 0, or 2 when a setting, the file or the token cannot be used."""
    parser = argparse.ArgumentParser(
        prog="panwright serve", description=ABOUT, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.parse_args(argv)
    try:
        settings = config.settings_of(os.environ)
    except config.SettingsError as error:
        for problem in error.problems:
            print(f"panwright serve: {problem}", file=sys.stderr)
        return 2
    from bot.transports.telegram import RejectedError

    logs.set_up(level=settings.log_level)
    try:
        with Store(settings.database) as store:
            asyncio.run(_serve(settings, store))
    except (StoreError, KnowledgeError, RejectedError) as error:
        print(f"panwright serve: {error}", file=sys.stderr)
        return 2
    return 0


async def _serve(settings: config.Settings, store: Store) -> None:
    from bot.transports.telegram import Telegram, pacing

    told_to_end = asyncio.Event()
    if sys.platform != "win32":  # there Ctrl-C ends it all the same
        for number in (signal.SIGTERM, signal.SIGINT):
            asyncio.get_running_loop().add_signal_handler(number, told_to_end.set)
    mind = Mind(awaken)
    try:
        await mind.wake_up()
        clock = open_clock(store, pace=settings.pace)
        async with Telegram(token=settings.token, api=settings.api) as platform:
            house = House(store=store, transport=platform, clock=clock, think=mind, pacing=pacing())
            async with house:
                log.info("serving")
                polling = asyncio.create_task(platform.run(house.receive), name="polling")
                ending = asyncio.create_task(told_to_end.wait(), name="ending")
                await asyncio.wait({polling, ending}, return_when=asyncio.FIRST_COMPLETED)
                polling.cancel()
                ending.cancel()
                with suppress(asyncio.CancelledError):
                    await polling
        log.info("ended")
    finally:
        mind.close()
