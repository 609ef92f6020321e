"""The terminal chat: layout, letters for buttons, piped input in order, and the command around it."""

from __future__ import annotations

import asyncio
import io
import os
import select
import subprocess
import sys
import time
from contextlib import suppress
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.core.actions import Button
from bot.core.events import ButtonPressed, Event, TextReceived
from bot.transports.base import Incoming, NotStoredError, Outgoing
from bot.transports.console import Console, PipedLines, laid_out
from tests.unit.runtime.tiny import NOON, FakeClock

ROOT = Path(__file__).parents[3]
ROWS = (
    (Button(label="Start", data="s:1"), Button(label="Another way", data="w:1")),
    (Button(label="Why", data="y:1"),),
)


class Typed:
    """A console whose lines a test gives; `events` is what came of them."""

    def __init__(self, text: str) -> None:
        self.sink = io.StringIO()
        self.events: list[Event] = []
        self.fails = 0
        lines = PipedLines(io.StringIO(text), self.sink, answered=self.answer)
        self.console = Console(lines=lines, clock=FakeClock())
        self.answers: list[tuple[tuple[Button, ...], ...]] = []

    async def receive(self, incoming: Incoming) -> None:
        if self.fails:
            self.fails -= 1
            raise NotStoredError("disk full")
        self.events.append(incoming.event)

    async def answer(self) -> None:
        if self.events and self.answers:
            buttons = self.answers.pop(0)
            await self.console.deliver(
                Outgoing(outbox_id=1, chat_id="x", text="well", buttons=buttons, maybe_repeat=False)
            )

    async def run(self) -> list[Event]:
        await asyncio.wait_for(self.console.run(self.receive), 5)
        return self.events


async def test_a_letter_presses_the_button_it_stands_beside() -> None:
    typed = Typed("carrots\nB\nc\n")
    typed.answers = [ROWS]
    assert await typed.run() == [
        TextReceived(text="carrots"),
        ButtonPressed(data="w:1"),
        ButtonPressed(data="y:1"),
    ]


async def test_only_letters_of_the_latest_buttons_press_anything() -> None:
    typed = Typed("one\ntwo\nc\nz\n")
    typed.answers = [ROWS, ((Button(label="Done", data="d:1"),),)]
    assert (await typed.run())[2:] == [TextReceived(text="c"), TextReceived(text="z")]


async def test_a_message_without_buttons_leaves_the_earlier_ones_in_reach() -> None:
    typed = Typed("one\ntwo\na\n")
    typed.answers = [ROWS, ()]
    assert (await typed.run())[-1] == ButtonPressed(data="s:1")


@pytest.mark.parametrize("word", ["bye", "Quit", "exit"])
async def test_leaving_ends_the_input(word: str) -> None:
    assert await Typed(f"one\n{word}\ntwo\n").run() == [TextReceived(text="one")]


async def test_blank_lines_are_passed_over_and_the_last_line_needs_no_end() -> None:
    assert await Typed("\n   \none\n\ntwo").run() == [TextReceived(text="one"), TextReceived(text="two")]


async def test_what_cannot_be_kept_is_said_and_the_chat_goes_on() -> None:
    typed = Typed("one\ntwo\n")
    typed.fails = 1
    assert await typed.run() == [TextReceived(text="two")]
    assert "disk full" in typed.sink.getvalue()


def test_a_message_stands_beside_its_time_with_its_buttons_under_it() -> None:
    shown = laid_out("Potatoes in.\nCarrots next.", ROWS, NOON, width=80).split("\n")
    assert shown[0] == f"{NOON.astimezone():%H:%M}  Potatoes in."
    assert shown[1] == "       Carrots next."
    assert shown[3:5] == ["       [a] Start   [b] Another way", "       [c] Why"]


def test_a_long_list_item_hangs_under_its_first_word() -> None:
    shown = laid_out("• " + "word " * 30, (), NOON, width=60).split("\n")
    assert shown[1].startswith(" " * 9 + "word")


def test_a_line_that_begins_with_an_amount_hangs_under_its_step() -> None:
    shown = laid_out("  0  800 g " + "word " * 30, (), NOON, width=60).split("\n")
    assert shown[1].startswith(" " * 12 + "word")
    shown = laid_out("68 °C " + "word " * 30, (), NOON, width=60).split("\n")
    assert shown[1].startswith(" " * 7 + "word")


@given(st.text(alphabet=st.characters(codec="utf-8"), max_size=300), st.integers(20, 120))
def test_no_word_is_lost_in_the_layout(text: str, width: int) -> None:
    shown = laid_out(text, (), NOON, width=width)
    assert "".join(shown[5:].split()) == "".join(text.split())


def chat(
    *options: str, text: str = "", home: Path, tiny: bool = True, seconds: float = 30.0
) -> subprocess.CompletedProcess[str]:
    """`panwright chat` as a process, its input piped."""
    module = "tests.unit.runtime.tiny_chat" if tiny else "bot"
    command = [sys.executable, "-m", module, *(() if tiny else ("chat",)), *options]
    path = os.pathsep.join([str(ROOT), os.environ.get("PYTHONPATH", "")])
    environment = {**os.environ, "PANWRIGHT_HOME": str(home), "PYTHONPATH": path, "COLUMNS": "90"}
    return subprocess.run(
        command, input=text, capture_output=True, text=True, timeout=seconds, env=environment, check=False
    )


def test_piped_lines_are_answered_in_order_and_a_fast_cook_is_kept_on_to_its_end(tmp_path: Path) -> None:
    done = chat("--pace", "600", text="hello\ncook 60 300\nswap\n", home=tmp_path)
    assert (done.returncode, done.stderr) == (0, "")
    told = [
        done.stdout.index(text)
        for text in ("> hello", "echo hello", "c1 begun", "swapped", "s1 late 0", "s2 late 0")
    ]
    assert told == sorted(told)


def test_leaving_a_cook_says_so_and_coming_back_resumes_it(tmp_path: Path) -> None:
    left = chat(text="cook 2\n", home=tmp_path)
    assert "goes on" in left.stdout
    assert "s1" not in left.stdout
    time.sleep(2.0)
    back = chat(text="a\n", home=tmp_path)
    assert "Welcome back" in back.stdout
    assert "echo status" in back.stdout  # how things stand now, not only the last message
    assert back.stdout.count("s1 late") == 1


def test_a_folder_that_cannot_be_written_is_said_in_one_line(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("in the way")
    done = chat("--data", str(tmp_path / "file" / "x.sqlite"), text="hello\n", home=tmp_path)
    assert done.returncode == 2
    assert done.stderr.startswith("panwright chat: cannot use")
    assert done.stderr.count("\n") == 1


@pytest.mark.parametrize("pace", ["0", "fast", "-1"])
def test_a_pace_no_clock_can_run_at_is_refused(pace: str, tmp_path: Path) -> None:
    done = chat("--pace", pace, home=tmp_path)
    assert done.returncode == 2
    assert "is not a number from 1" in done.stderr


def test_bytes_that_are_no_text_end_nothing(tmp_path: Path) -> None:
    path = os.pathsep.join([str(ROOT), os.environ.get("PYTHONPATH", "")])
    done = subprocess.run(
        [sys.executable, "-m", "tests.unit.runtime.tiny_chat"],
        input=b"\xff\xfe leeks\nswap\n",
        capture_output=True,
        timeout=30,
        env={**os.environ, "PANWRIGHT_HOME": str(tmp_path), "PYTHONPATH": path},
        check=False,
    )
    assert done.returncode == 0
    assert b"swapped" in done.stdout


def test_a_reminder_leaves_the_line_being_typed_whole(tmp_path: Path) -> None:
    import pty

    master, slave = pty.openpty()
    path = os.pathsep.join([str(ROOT), os.environ.get("PYTHONPATH", "")])
    environment = {**os.environ, "PANWRIGHT_HOME": str(tmp_path), "PYTHONPATH": path, "TERM": "xterm"}
    command = [sys.executable, "-m", "tests.unit.runtime.tiny_chat", "--pace", "60"]
    with subprocess.Popen(command, stdin=slave, stdout=slave, stderr=slave, env=environment) as process:
        os.close(slave)
        try:
            screen = Screen(master)
            screen.until(">")
            os.write(master, b"cook 60\r")
            screen.until("begun")
            os.write(master, b"hel")
            screen.until("s1 late 0")
            screen.until("hel")  # drawn again under the reminder
            os.write(master, b"lo\r")
            screen.until("echo hello")
            os.write(master, b"cook 900\rbye\r")
            screen.until("goes on")
            screen.leave()
            assert process.wait(10) == 0
        finally:
            process.kill()
            os.close(master)


class Screen:
    """What a terminal was sent."""

    def __init__(self, master: int) -> None:
        self._master, self._sent = master, ""

    def until(self, text: str, *, within_s: float = 15.0) -> None:
        """Read until the text comes; what stood before it is used up."""
        ends = time.monotonic() + within_s
        while text not in self._sent:
            ready, _, _ = select.select([self._master], [], [], max(0.0, ends - time.monotonic()))
            if not ready:
                raise TimeoutError(f"{text!r} not in {self._sent!r}")
            self._sent += os.read(self._master, 65_536).decode(errors="replace")
        self._sent = self._sent.partition(text)[2]

    def leave(self, *, within_s: float = 10.0) -> None:
        """Press Ctrl-D until the other side closes; a terminal nobody reads keeps its program waiting."""
        ends = time.monotonic() + within_s
        with suppress(OSError):
            while time.monotonic() < ends:
                os.write(self._master, b"\x04")
                if select.select([self._master], [], [], 0.5)[0] and not os.read(self._master, 65_536):
                    return
