"""The house rules that can be read off the sources: which way imports point, what the core may not know."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import bot
import knowledge

ROOTS = {"knowledge": Path(knowledge.__file__).parent, "bot": Path(bot.__file__).parent}

# (package, what it may never import): the arrows of DEVELOPERS.md.
FORBIDDEN = [
    ("knowledge", {"bot", "telegram", "asyncio"}),
    ("knowledge.physics", {"knowledge.planner", "knowledge.text", "knowledge.answers", "sqlite3"}),
    ("knowledge.foods", {"knowledge.planner", "knowledge.answers", "knowledge.text", "knowledge.physics"}),
    ("knowledge.tables", {"knowledge.foods", "knowledge.names"}),
    ("knowledge.names", {"knowledge.foods", "knowledge.tables"}),
    ("knowledge.text", {"knowledge.planner", "knowledge.answers", "pint", "knowledge.units"}),
    ("knowledge.text", {"knowledge.physics", "numpy"}),  # the chat opens before numpy is loaded
    ("knowledge.planner", {"knowledge.text", "sqlite3", "sqlite_utils", "logging", "random"}),
    ("bot.core", {"asyncio", "sqlite3", "sqlite_utils", "telegram", "logging", "random", "bot.runtime"}),
    ("bot.core", {"bot.transports", "bot.commands"}),
    ("bot.transports", {"knowledge.planner", "bot.commands"}),
    ("bot.runtime", {"telegram", "bot.commands", "knowledge.planner"}),
]


def modules(package: str) -> Iterator[tuple[str, ast.Module]]:
    top, *rest = package.split(".")
    folder = ROOTS[top].joinpath(*rest)
    for path in sorted(folder.rglob("*.py")) or [folder.with_suffix(".py")]:
        name = ".".join([top, *path.relative_to(ROOTS[top]).with_suffix("").parts])
        yield name.removesuffix(".__init__"), ast.parse(path.read_text(encoding="utf-8"))


def imported(tree: ast.Module) -> set[str]:
    names: set[str] = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            names.update(alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module and node.level == 0:
            names.add(node.module)
            names.update(f"{node.module}.{alias.name}" for alias in node.names)
    return names


def within(name: str, package: str) -> bool:
    return name == package or name.startswith(package + ".")


@pytest.mark.parametrize(("package", "barred"), FORBIDDEN, ids=lambda x: x if isinstance(x, str) else "")
def test_imports_point_one_way(package: str, barred: set[str]) -> None:
    wrong = [
        f"{name} imports {got}"
        for name, tree in modules(package)
        for got in imported(tree)
        if any(within(got, bad) for bad in barred)
    ]
    assert not wrong


def test_only_their_owners_import_pint_telegram_and_csv() -> None:
    owners = {
        "csv": {"knowledge.tables", "bot.commands.times"},
        "pint": {"knowledge.units"},
        "telegram": {"bot.transports.telegram"},
    }
    wrong = [
        f"{name} imports {got}"
        for package in ROOTS
        for name, tree in modules(package)
        for got in imported(tree)
        for library, allowed in owners.items()
        if within(got, library) and name not in allowed
    ]
    assert not wrong


def test_the_core_and_the_planner_never_ask_the_time() -> None:
    asked = [
        f"{name}:{node.lineno}"
        for package in ("bot.core", "knowledge.physics", "knowledge.planner")
        for name, tree in modules(package)
        for node in ast.walk(tree)
        if isinstance(node, ast.Attribute)
        and node.attr in {"now", "utcnow", "today", "monotonic"}
        and isinstance(node.value, ast.Name)
        and node.value.id in {"datetime", "date", "time"}
    ]
    assert not asked
