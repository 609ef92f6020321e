"""Whole evenings with the real knowledge: the wording is frozen, each plan is verified by another route."""

from __future__ import annotations

from pathlib import Path

import pytest

from knowledge import Knowledge, open_knowledge
from tests.golden.replay import FOLDER, README, dialogues, replay, with_dialogue


@pytest.fixture(scope="module")
def knowledge() -> Knowledge:
    return open_knowledge()


@pytest.mark.parametrize("path", dialogues(), ids=lambda path: path.stem)
def test_dialogue_goes_as_written_and_its_plans_are_sound(path: Path, knowledge: Knowledge) -> None:
    text = path.read_text(encoding="utf-8")
    now, faults = replay(text, knowledge)
    assert now == text
    assert not faults


def test_the_readme_shows_a_true_dialogue() -> None:
    readme = README.read_text(encoding="utf-8")
    assert readme == with_dialogue(readme, (FOLDER / "readme.txt").read_text(encoding="utf-8"))
