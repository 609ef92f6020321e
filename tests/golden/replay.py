"""Replaying a dialogue through the real conversation with a clock that the dialogue moves.

A dialogue is a text file: lines that begin with `# ` describe it, `> words` is what
the cook writes, `> [Done]` a button tapped, `+12 min` time passing, `+12 min away`
time passing while the bot is down. All other lines are the bot's and are checked:
`17:15 | text`, then the rows of buttons. Every plan on the way is verified.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

from bot.core.actions import Say
from bot.core.replies.layout import clock
from bot.core.state import Chat, Profile
from knowledge import Knowledge
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Plan
from tests.unit.core.evening import Evening

FOLDER = Path(__file__).parent
README = FOLDER.parents[1] / "README.md"
SHOWN = re.compile(r"(?<=```text\n).*?(?=```)", re.DOTALL)  # the dialogue in the README: readme.txt
NOW = datetime(2026, 3, 4, 17, 0, tzinfo=UTC)
WAIT = re.compile(r"\+(\d+) min( away)?")


def dialogues() -> list[Path]:
    """All dialogues, in order of name."""
    return sorted(FOLDER.glob("*.txt"))


def with_dialogue(readme: str, dialogue: str) -> str:
    """The README with this dialogue shown in it, without the line that describes it."""
    return SHOWN.sub(lambda _: dialogue.partition("\n\n")[2], readme, count=1)


def script(text: str) -> Iterator[str]:
    """The lines of a dialogue that are not the bot's."""
    for line in text.splitlines():
        if line.startswith(("# ", "> ")) or WAIT.fullmatch(line):
            yield line


def replay(text: str, knowledge: Knowledge) -> tuple[str, list[str]]:
    """The dialogue as it goes now, and what the verifier has against its plans."""
    evening = Evening(
        state=Chat(chat_id="golden", profile=Profile(utc_offset_min=0)), now=NOW, knowledge=knowledge
    )
    out: list[str] = []
    faults: list[str] = []
    verified: list[Plan] = []
    for line in script(text):
        if out and not (line.startswith("# ") and out[-1].startswith("# ")):
            out.append("")
        out.append(line)
        heard = len(evening.heard)
        if (pause := WAIT.fullmatch(line)) is not None:
            (evening.sleep if pause[2] else evening.wait)(float(pause[1]))
        elif line.startswith("> ["):
            evening.tap(line[3:].rstrip("]"))
        elif line.startswith("> "):
            evening.text(line[2:])
        out += [row for at, say in evening.heard[heard:] for row in _written(at, say)]
        for plan in (evening.state.offer, evening.state.cook.plan if evening.state.cook else None):
            if plan is not None and plan not in verified:
                verified.append(plan)
                report = check(plan, store=knowledge.store)
                faults += [f"{line}: {fault}" for fault in (*report.unsafe, *report.problems)]
    return "\n".join(out) + "\n", faults


def _written(at: datetime, say: Say) -> Iterator[str]:
    first, *rest = say.text.split("\n")
    yield f"{clock(at, 0)} | {first}"
    for line in rest:
        yield f"      | {line}".rstrip()
    for row in say.buttons:
        yield "        " + " ".join(f"[{button.label}]" for button in row)
