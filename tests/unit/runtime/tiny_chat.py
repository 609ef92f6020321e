"""`panwright chat` with the tiny conversation in place of the real one."""

from __future__ import annotations

import sys

from bot.commands import chat
from bot.runtime.mind import Step
from tests.unit.runtime.tiny import step


def awaken() -> Step:
    return step


if __name__ == "__main__":
    chat.awaken = awaken  # type: ignore[attr-defined]
    sys.exit(chat.run(sys.argv[1:]))
