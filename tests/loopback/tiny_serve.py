"""`panwright serve` with the tiny conversation in place of the real one: the runtime and Telegram alone."""

from __future__ import annotations

import sys

from bot.commands import serve
from bot.runtime.mind import Step
from tests.unit.runtime.tiny import step


def awaken() -> Step:
    return step


if __name__ == "__main__":
    serve.awaken = awaken  # type: ignore[attr-defined]
    sys.exit(serve.run(sys.argv[1:]))
