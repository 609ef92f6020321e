"""The dish aimed at, and so the style of it: "aloo gobi for 3" is a dry dish, "pho tonight" a soup."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.text.match import Hit
from knowledge.text.tokens import Token
from knowledge.text.vocabulary import words
from knowledge.text.wishes import weighed
from knowledge.wished import NOT

_AT_HAND = frozenset({"leftover", "yesterday", "frozen", "tinned", "canned", "tin", "can", "jar", "packet"})
_OF_A_PRODUCT = frozenset(
    {"paste", "powder", "sauce", "leaf", "cube", "mix", "meat", "spice", "seasoning", "pack"}
)
_MADE_FOR = frozenset({"paste", "sauce", "mix", "kit"})
Phrase = tuple[str, ...]
_NEAR = 2  # words before a dish that say it is there already


def styles(tokens: Sequence[Token], hits: Sequence[Hit], text: str) -> tuple[str, ...]:
    """The style of the dish named first outside the foods, after those not wanted; none of a leftover.

    A dish that is made in a way of its own follows its style by name: "stew" and "chilli". A jar made for
    a dish ("curry paste", "stir fry sauce") tells the style when nothing else does.
    "Not a stew" is "not stew", and what is named beside it still counts.
    """
    taken = {n for hit in hits for n in range(hit.start, hit.end)}
    unwanted, named, made = [], "", ""
    for i, style, dish in _named(tokens, [n for n in range(len(tokens)) if n not in taken]):
        wish = weighed(style, text, tokens[i].start)
        if wish == style:
            named, made = style, words().techniques.get(dish, "")
            break
        unwanted += [wish] if wish else []
    if not named:
        jars = (n for hit in hits if tokens[hit.end - 1].key in _MADE_FOR for n in range(hit.start, hit.end))
        named = next((style for _, style, _ in _named(tokens, list(jars), of_a_jar=True)), "")
    wanted = [named, made] if f"{NOT}{named}" not in unwanted else []
    return (*unwanted, *filter(None, wanted))


def _named(
    tokens: Sequence[Token], places: Sequence[int], *, of_a_jar: bool = False
) -> Iterator[tuple[int, str, Phrase]]:
    """The dishes with a style that lie wholly in these places: the token each begins at, style, words."""
    free, beyond = set(places), 0
    for i in places:
        if i < beyond:
            continue  # the "fry" of a stir fry
        length = next((n for n in (4, 3, 2, 1) if _dish(tokens, i, n) is not None), 0)
        if (
            length
            and free.issuperset(range(i, i + length))
            and (of_a_jar or not _is_at_hand(tokens, i, length))
        ):
            beyond = i + length
            if style := _dish(tokens, i, length):
                yield i, style, _phrase(tokens, i, length)


def _dish(tokens: Sequence[Token], i: int, length: int) -> str | None:
    if i + length > len(tokens):
        return None
    return words().dish_styles.get(_phrase(tokens, i, length))


def _phrase(tokens: Sequence[Token], i: int, length: int) -> Phrase:
    return tuple(token.key for token in tokens[i : i + length])


def _is_at_hand(tokens: Sequence[Token], i: int, length: int) -> bool:
    before = {token.key for token in tokens[max(i - _NEAR, 0) : i]}
    after = tokens[i + length].key if i + length < len(tokens) else ""
    return bool(before & _AT_HAND) or after in _OF_A_PRODUCT
