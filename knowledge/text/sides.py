"""Which food of a swap leaves and which comes in, weighed by the words around each.

    p(side) = exp(sum of weights of the features) / the same summed over the sides

A food is weighed by the words before and after it, those between the first two foods, its
place among the foods, and what the patterns of `swaps` make of it; the likeliest pair of
different foods wins. The weights are in `words_sides.csv`, fitted to labelled messages by
`tests/benchmarks/fit_sides.py`, and can be read and mended by hand.
Source of the method: multinomial logistic regression, any textbook of statistics.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence, Set
from enum import StrEnum
from itertools import pairwise
from math import log

from knowledge.text.features import FOOD_WORD, senses, stem, words_of
from knowledge.text.likely import shares
from knowledge.text.swaps import SwapFound

BYSTANDER = "bystander"  # the fact of a food that is named for another reason: "nut allergy"
_NEAR = 4  # words before and after a food that are looked at
_MOST_FOODS = 6
_PARTING = frozenset(
    [",", ".", "!", "?", ":", "line", "so", "but", "and", "because", "becaus", "sinc", "cos"]
)


class Side(StrEnum):
    """What becomes of a food in a swap."""

    LEAVES = "leaves"
    COMES = "comes"
    STAYS = "stays"


def weighed(masked: str, ruled: SwapFound | None, facts: Mapping[int, Sequence[str]]) -> SwapFound:
    """The likeliest sides of the foods in a masked text, by their places in it.

    `ruled` is what the patterns make of it, `facts` what else is known of each food, by its place.
    """
    chances = [shares(found, "words_sides.csv", tuple(Side)) for found in features(masked, ruled, facts)]
    return likeliest(chances, sorted(facts), {place for place in facts if BYSTANDER in facts[place]})


def likeliest(
    chances: Sequence[Mapping[Side, float]], places: Sequence[int], bystanders: Set[int] = frozenset()
) -> SwapFound:
    """The pair of different foods, or one food alone, that is likeliest to be the sides of a swap."""
    gains = [
        {side: log(one[side] / one[Side.STAYS]) for side in (Side.LEAVES, Side.COMES)} for one in chances
    ]
    one_of = (None, *(n for n in range(len(gains)) if places[n] not in bystanders))
    pairs = [(frm, to) for frm in one_of for to in one_of if frm != to] or [(None, None)]
    frm, to = max(pairs, key=lambda pair: _gain(gains, pair))
    return SwapFound(None if frm is None else places[frm], None if to is None else places[to])


def _gain(gains: Sequence[Mapping[Side, float]], pair: tuple[int | None, int | None]) -> float:
    frm, to = pair
    leaves = 0.0 if frm is None else gains[frm][Side.LEAVES]
    return leaves + (0.0 if to is None else gains[to][Side.COMES])


def features(
    masked: str, ruled: SwapFound | None, facts: Mapping[int, Sequence[str]]
) -> list[frozenset[str]]:
    """What each food of a masked text is weighed by, in the order of their places."""
    said = [stem(word) for word in words_of(masked)]
    at = [n for n, word in enumerate(said) if word == FOOD_WORD][:_MOST_FOODS]
    known = sorted(facts)[: len(at)]
    whole = {*said, *(one for word in said for one in senses(word))}
    between = said[at[0] + 1 : at[1]] if len(at) > 1 else []
    out = []
    for order, (here, place) in enumerate(zip(at, known, strict=False)):
        nth = f"{order + 1}/{len(at)}"
        before, after = ["^", *said[:here]][-_NEAR:], [*said[here + 1 :], "$"][:_NEAR]
        found = {*facts[place], f"nth={nth}", f"rule={_rule(ruled, place)}"}
        for name, near in (("<", before[::-1]), (">", after)):
            found.update(f"{name}{n} {word}" for n, word in enumerate(near))
            found.update(f"{name} {word}" for word in near)
            found.update(f"{name} {one}" for word in near for one in senses(word))
            found.update(f"{name}{a} {b}" for a, b in pairwise(near))
        clause = _clause(said, here)
        found.update(f"in {word}" for word in clause)
        found.update(f"in {one}" for word in clause for one in senses(word))
        found.update(f"{nth} {word}" for word in whole)
        found.update(f"{nth} : {word}" for word in between)
        found.update(f"{nth} : {a} {b}" for a, b in pairwise(between))
        if len(between) <= _NEAR:
            found.add(f"{nth} = {' '.join(between) or FOOD_WORD}")
        out.append(frozenset(found))
    return out


def _clause(said: Sequence[str], here: int) -> Sequence[str]:
    """The words between the signs that part clauses before and after a food."""
    start = next((n + 1 for n in range(here, -1, -1) if said[n] in _PARTING), 0)
    end = next((n for n in range(here, len(said)) if said[n] in _PARTING), len(said))
    return said[start:end]


def _rule(ruled: SwapFound | None, place: int) -> str:
    if ruled is None:
        return "none"
    if place == ruled.frm:
        return Side.LEAVES
    return Side.COMES if place == ruled.to else Side.STAYS
