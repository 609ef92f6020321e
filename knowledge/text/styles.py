"""The dish aimed at, and so the style of it: "aloo gobi for 3" is a dry dish, "pho tonight" a soup."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.text.match import Hit
from knowledge.text.tokens import Token
from knowledge.text.vocabulary import words

_AT_HAND = frozenset({"leftover", "yesterday", "frozen", "tinned", "canned", "tin", "can", "jar", "packet"})
_OF_A_PRODUCT = frozenset(
    {"paste", "powder", "sauce", "leaf", "cube", "mix", "meat", "spice", "seasoning", "pack"}
)
_MADE_FOR = frozenset({"paste", "sauce", "mix", "kit"})
_NEAR = 2  # words before a dish that say it is there already


def styles(tokens: Sequence[Token], hits: Sequence[Hit]) -> tuple[str, ...]:
    """The style of the dish named first outside the foods; none of a leftover.

    A jar made for a dish ("curry paste", "stir fry sauce") tells the style when nothing else does.
    """
    taken = {n for hit in hits for n in range(hit.start, hit.end)}
    named = _first(tokens, [n for n in range(len(tokens)) if n not in taken])
    if named:
        return (named,)
    jars = (n for hit in hits if tokens[hit.end - 1].key in _MADE_FOR for n in range(hit.start, hit.end))
    made_for = _first(tokens, list(jars), of_a_jar=True)
    return (made_for,) if made_for else ()


def _first(tokens: Sequence[Token], places: Sequence[int], *, of_a_jar: bool = False) -> str:
    """The first style among the dishes that lie wholly in these places."""
    free = set(places)
    for i in places:
        length = next((n for n in (4, 3, 2, 1) if _dish(tokens, i, n) is not None), 0)
        if (
            length
            and free.issuperset(range(i, i + length))
            and (of_a_jar or not _is_at_hand(tokens, i, length))
        ):
            style = _dish(tokens, i, length)
            if style:
                return style
    return ""


def _dish(tokens: Sequence[Token], i: int, length: int) -> str | None:
    if i + length > len(tokens):
        return None
    return words().dish_styles.get(tuple(token.key for token in tokens[i : i + length]))


def _is_at_hand(tokens: Sequence[Token], i: int, length: int) -> bool:
    before = {token.key for token in tokens[max(i - _NEAR, 0) : i]}
    after = tokens[i + length].key if i + length < len(tokens) else ""
    return bool(before & _AT_HAND) or after in _OF_A_PRODUCT
