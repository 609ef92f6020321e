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
_NEAR = 2  # words before a dish that say it is there already


def styles(tokens: Sequence[Token], hits: Sequence[Hit]) -> tuple[str, ...]:
    """The styles of the dishes named outside the foods, in order; none of a leftover or a product."""
    taken = {n for hit in hits for n in range(hit.start, hit.end)}
    found: list[str] = []
    i = 0
    while i < len(tokens):
        length = next((n for n in (4, 3, 2, 1) if _dish(tokens, i, n) is not None), 0)
        if length and not taken & set(range(i, i + length)) and not _is_at_hand(tokens, i, length):
            found.append(_dish(tokens, i, length) or "")
        i += length or 1
    return tuple(dict.fromkeys(style for style in found if style))


def _dish(tokens: Sequence[Token], i: int, length: int) -> str | None:
    if i + length > len(tokens):
        return None
    return words().dish_styles.get(tuple(token.key for token in tokens[i : i + length]))


def _is_at_hand(tokens: Sequence[Token], i: int, length: int) -> bool:
    before = {token.key for token in tokens[max(i - _NEAR, 0) : i]}
    after = tokens[i + length].key if i + length < len(tokens) else ""
    return bool(before & _AT_HAND) or after in _OF_A_PRODUCT
