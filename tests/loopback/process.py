"""`panwright serve` as a real process against the stand-in, bounded in time, with KILL, TERM and restart."""

from __future__ import annotations

import asyncio
import os
import signal
import sys
from pathlib import Path

from tests.loopback.standin import StandIn


class Serving:
    """A `panwright serve` that can be killed and started again on the same file."""

    def __init__(self, server: StandIn, home: Path, *, pace: float, program: list[str] | None = None) -> None:
        """`program`: what to run instead of the installed command, for tests of the runtime alone."""
        self._program = program or [sys.executable, "-m", "bot", "serve"]
        kept = {name: value for name, value in os.environ.items() if not name.startswith("PANWRIGHT_")}
        self._environment = kept | {
            "PANWRIGHT_TELEGRAM_TOKEN": server.token,
            "PANWRIGHT_TELEGRAM_API": server.api,
            "PANWRIGHT_DB": str(home / "bot.sqlite"),
            "PANWRIGHT_PACE": f"{pace:g}",
            "PYTHONUNBUFFERED": "1",
        }
        self._log = home / "serve.log"
        self._process: asyncio.subprocess.Process | None = None

    async def __aenter__(self) -> Serving:
        await self.start()
        return self

    async def __aexit__(self, *ending: object) -> None:
        if self._process is not None and self._process.returncode is None:
            self._process.kill()
            await self._process.wait()

    async def start(self) -> None:
        """Start the process."""
        with self._log.open("ab") as log:
            self._process = await asyncio.create_subprocess_exec(
                *self._program,
                env=self._environment,
                stdin=asyncio.subprocess.DEVNULL,
                stdout=log,
                stderr=log,
            )

    async def kill(self) -> None:
        """kill -9."""
        await self._end(signal.SIGKILL)

    async def terminate(self) -> int:
        """TERM; returns the exit status."""
        return await self._end(signal.SIGTERM)

    async def _end(self, number: signal.Signals) -> int:
        assert self._process is not None
        self._process.send_signal(number)
        return await asyncio.wait_for(self._process.wait(), 10)

    async def ended(self) -> int:
        """Wait for it to end by itself; returns the exit status."""
        assert self._process is not None
        return await asyncio.wait_for(self._process.wait(), 20)

    @property
    def log(self) -> str:
        """All it has written, over restarts."""
        return self._log.read_text(encoding="utf-8")
