"""`panwright COMMAND ...`: find the command, run it, turn its end into an exit status.

Each command is a module with `run(argv) -> int`; only the one asked for is imported,
so that the chat opens at once. Exit status: 0 answered, 2 the input or the tables could
not be used, 1 a bug (said in one line, never a traceback).
"""

from __future__ import annotations

import importlib
import os
import sys
from collections.abc import Sequence

COMMANDS = {
    "chat": ("bot.commands.chat", "talk in this terminal (--pace 60: the clock runs sixty times faster)"),
    "serve": ("bot.commands.serve", "serve Telegram by long polling (needs PANWRIGHT_TELEGRAM_TOKEN)"),
    "plan": ("bot.commands.plan", "messages in, one-vessel plans out (JSON lines)"),
    "swap": ("bot.commands.swap", "would this replacement still finish with the rest? (JSON lines)"),
    "read": ("bot.commands.read", "messages in, what they were read as out (JSON lines)"),
    "times": ("bot.commands.times", "pieces of food in, cooking times out (CSV); --explain one"),
    "ask": ("bot.commands.ask", "kitchen questions in, answers with sources out (JSON lines)"),
    "foods": ("bot.commands.foods", "what is known of a food, every figure with its source"),
    "build": ("bot.commands.build", "build the knowledge file from the tables; --check lists all problems"),
    "bench": ("bot.commands.bench", "measure speed, one figure a line"),
}


def usage() -> str:
    """The list of commands, one a line."""
    width = max(map(len, COMMANDS))
    return "\n".join(
        ["usage: panwright COMMAND [options]   (panwright COMMAND --help tells more)", ""]
        + [f"  {name:<{width}}  {what}" for name, (_, what) in COMMANDS.items()]
    )


def main(argv: Sequence[str] | None = None) -> int:
    """Run one command. Returns the exit status."""
    args = list(sys.argv[1:] if argv is None else argv)
    if not args or args[0] in ("-h", "--help", "help"):
        print(usage())
        return 0
    name, *rest = args
    if name not in COMMANDS:
        print(f"panwright: there is no command {name!r}\n\n{usage()}", file=sys.stderr)
        return 2
    try:
        status = int(importlib.import_module(COMMANDS[name][0]).run(rest))
        sys.stdout.flush()
        return status
    except BrokenPipeError:
        _close_output()
        return 0
    except KeyboardInterrupt:
        return 130
    except OSError as error:  # a full disk, a file that may not be read: not ours to mend
        _close_output()
        where = f"{error.filename}: " if error.filename else ""
        print(f"panwright {name}: {where}{error.strerror or error}", file=sys.stderr)
        return 2
    except Exception as error:
        return _told(name, error)


def _close_output() -> None:
    """What is still to be written goes nowhere: nobody reads it, or there is no room."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _told(name: str, error: Exception) -> int:
    """Say on stderr what stopped a command: each problem of the tables a line, else one line."""
    from knowledge.errors import BadData

    if isinstance(error, BadData):
        for problem in error.problems:
            print(f"panwright {name}: {problem}", file=sys.stderr)
        return 2
    print(f"panwright {name}: a bug: {type(error).__name__}: {error}", file=sys.stderr)
    return 1


if __name__ == "__main__":
    sys.exit(main())
