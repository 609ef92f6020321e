"""Wishes that rule something out: "not stew" beside "stew", and what two messages want together."""

from __future__ import annotations

NOT = "not "  # before a wish that is ruled out
RIVALS = (
    frozenset({"crisp", "saucy"}), frozenset({"crisp", "soft"}), frozenset({"crisp", "soup"}),
    frozenset({"crisp", "stew"}), frozenset({"oven", "hob"}), frozenset({"broil", "hob"}),
)  # fmt: skip


def opposite(wish: str) -> str:
    """The wish that this one takes the place of: "stew" of "not stew", and the reverse."""
    return wish.removeprefix(NOT) if wish.startswith(NOT) else f"{NOT}{wish}"


def ruled_out(wishes: tuple[str, ...]) -> tuple[str, ...]:
    """What is not wanted, by its own name."""
    return tuple(wish.removeprefix(NOT) for wish in wishes if wish.startswith(NOT))


def settled(earlier: tuple[str, ...], later: tuple[str, ...]) -> tuple[str, ...]:
    """Both together, each once, the later ones first; they hold against what cannot be beside them."""
    gone = {opposite(wish) for wish in later}
    gone |= {rival for pair in RIVALS for wish in pair & {*later} for rival in pair - {wish}} - {*later}
    return tuple(dict.fromkeys((*later, *(wish for wish in earlier if wish not in gone))))
