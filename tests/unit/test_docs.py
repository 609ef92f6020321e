"""The docs name every command and setting there is, and none that is not."""

from __future__ import annotations

import re
from pathlib import Path

import bot
import knowledge
from bot.__main__ import COMMANDS

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text(encoding="utf-8")
SETTING = re.compile(r"PANWRIGHT_[A-Z]+(?:_[A-Z]+)*")


def test_every_command_is_in_the_readme_and_the_reverse() -> None:
    named = set(re.findall(r"(?<![./\w])panwright ([a-z]+)\b", README))
    assert named - {"chat", "serve"} == set(COMMANDS) - {"chat", "serve"}


def test_every_setting_is_in_the_readme_and_the_reverse() -> None:
    sources = [
        path.read_text(encoding="utf-8")
        for package in (bot, knowledge)
        for path in Path(package.__file__ or "").parent.rglob("*.py")
    ]
    assert set(SETTING.findall(README)) == {name for text in sources for name in SETTING.findall(text)}


def test_every_path_in_the_docs_exists() -> None:
    installed = {"bot": Path(bot.__file__).parent, "knowledge": Path(knowledge.__file__).parent}
    paths = re.findall(r"(?<![\w/])((?:bot|knowledge|tests|deploy)/[\w./-]*\w)", README + DEVELOPERS)
    missing = []
    for path in paths:
        top, _, rest = path.partition("/")
        if not (installed.get(top, ROOT / top) / rest).exists():
            missing.append(path)
    assert paths
    assert not missing


def test_every_table_and_module_that_a_page_names_exists() -> None:
    package = Path(knowledge.__file__).parent
    pages = [page.read_text(encoding="utf-8") for page in package.rglob("*.md")]
    pages += [README, DEVELOPERS]
    files = {path.name for folder in (package, Path(bot.__file__).parent) for path in folder.rglob("*.*")}
    files |= {path.name for path in (ROOT / "tests").rglob("*.py")}
    named = {name for page in pages for name in re.findall(r"`(?:[\w/]+/)?(\w+\.(?:csv|py))`", page)}
    assert len(named) > 10
    assert not named - files
