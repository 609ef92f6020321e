"""Wishes that rule something out: "not stew" beside "stew", and what two messages want together."""

from __future__ import annotations

NOT = "not "  # before a wish that is ruled out


def opposite(wish: str) -> str:
    """The wish that this one takes the place of: "stew" of "not stew", and the reverse."""
    return wish.removeprefix(NOT) if wish.startswith(NOT) else f"{NOT}{wish}"


def ruled_out(wishes: tuple[str, ...]) -> tuple[str, ...]:
    """What is not wanted, by its own name."""
    return tuple(wish.removeprefix(NOT) for wish in wishes if wish.startswith(NOT))


def settled(earlier: tuple[str, ...], later: tuple[str, ...]) -> tuple[str, ...]:
    """Both together, each once; what was said later holds."""
    gone = {opposite(wish) for wish in later}
    return tuple(dict.fromkeys((*(wish for wish in earlier if wish not in gone), *later)))
