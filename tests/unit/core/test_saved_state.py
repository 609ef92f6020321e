"""A conversation saved by an earlier release is still one: its running cook goes on."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

from bot.core.conversation import mode_of
from bot.core.state import VERSION, from_json, to_json
from knowledge.text.model import Mode
from tests.unit.core.kitchen import NOW, send, text_of

SAVED = Path(__file__).parent / "saved_in_version_1.json"


def test_a_cook_saved_in_version_1_goes_on() -> None:
    """The file was written when version 1 was released; it is never written again."""
    chat = from_json(SAVED.read_bytes())
    assert chat.version == VERSION == 1
    assert mode_of(chat) is Mode.COOKING
    assert text_of(send(chat, "what's next", NOW + timedelta(minutes=25)))
    assert from_json(to_json(chat)) == chat
