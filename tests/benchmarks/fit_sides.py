"""Fit the weights by which the food that leaves is told from the one that comes in.

    python -m tests.benchmarks.fit_sides          writes words_sides.csv
    python -m tests.benchmarks.fit_sides --check  prints how well folds that were left out are told apart

The same regression as `fit_kinds`, over the foods of the labelled swaps: `swap_sides.csv`, by several
authors, and those of the messages that may be fitted to. The patterns of swaps were written with the
messages before the eyes, so what they make of those is not learnt from.
"""

from __future__ import annotations

import csv
import json
import sys
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from knowledge.foods.store import open_store
from knowledge.text import sides
from knowledge.text.exchange import facts
from knowledge.text.read import swap_of
from knowledge.text.seen import Seen
from knowledge.text.sides import Side
from knowledge.text.swaps import SwapFound
from tests.benchmarks.fit_kinds import DATA, FOLDS, TUNED, Example, Weights, fit, write

OTHERS = "swap_sides.csv"
SOURCE = "FIT-SIDES"
MESSAGES = tuple(file for file in TUNED if file.endswith(".jsonl"))


@dataclass(frozen=True, slots=True)
class Swap:
    """A labelled swap, seen by the reader."""

    file: str
    seen: Seen
    ruled: SwapFound | None
    sides: dict[int, Side]  # of each food, by its place


def labelled() -> list[Swap]:
    """The swaps that may be fitted to: two sides that are different foods, or one alone."""
    out = []
    with open_store() as store:
        for file, text, frm, to in _rows():
            seen, ruled = swap_of(text, store=store)
            names = {place: seen.hits[n].phrase.foods[0].name for place, n in seen.where.items()}
            if frm == to or not {frm, to} & set(names.values()):
                continue
            out.append(Swap(file, seen, ruled, _sides(names, frm, to)))
    return out


def _sides(names: dict[int, str], frm: str, to: str) -> dict[int, Side]:
    """The side of each food; of several mentions of one food, the first counts."""
    out = dict.fromkeys(names, Side.STAYS)
    for name, side in ((frm, Side.LEAVES), (to, Side.COMES)):
        place = next((place for place in sorted(names) if names[place] == name), None)
        if place is not None:
            out[place] = side
    return out


def _rows() -> list[tuple[str, str, str, str]]:
    rows = csv.DictReader((DATA / OTHERS).read_text(encoding="utf-8").splitlines())
    out = [(OTHERS, row["text"], row["frm"], row["to"]) for row in rows]
    for file in MESSAGES:
        for line in (DATA / file).read_text(encoding="utf-8").splitlines():
            message = json.loads(line)
            if message["swap"]:
                swap = message["swap"]
                out.append((file, message["text"], swap["from"] or "", swap["to"] or ""))
    return out


def examples(swaps: Sequence[Swap]) -> list[Example]:
    """What the sides are told by."""
    order = list(Side)
    return [
        Example(found, order.index(swap.sides[place]), 1.0)
        for swap in swaps
        for found, place in zip(
            sides.features(swap.seen.masked, swap.ruled if swap.file == OTHERS else None, facts(swap.seen)),
            sorted(swap.sides),
            strict=False,
        )
    ]


def check(swaps: Sequence[Swap]) -> None:
    """Prints the share of swaps with both sides right, in folds left out; before that, by patterns alone."""
    new = [swap for swap in swaps if swap.file == OTHERS]
    right = by_rules = 0
    for fold in range(FOLDS):
        left = new[fold::FOLDS]
        kept = {id(swap) for swap in left}
        weights = fit(examples([swap for swap in swaps if id(swap) not in kept]), len(Side))
        for swap in left:
            good = _weighed(weights, swap) == swap.sides
            right += good
            by_rules += _told(swap, swap.ruled) == swap.sides
            if not good and "-v" in sys.argv:
                print(swap.seen.flat.text, swap.seen.masked, swap.sides, _weighed(weights, swap))
    print(f"both sides right: {right / len(new):.3f} of {len(new)}, by patterns {by_rules / len(new):.3f}")


def _told(swap: Swap, found: SwapFound | None) -> dict[int, Side]:
    out = dict.fromkeys(swap.sides, Side.STAYS)
    if found is not None:
        out |= {p: side for p, side in ((found.frm, Side.LEAVES), (found.to, Side.COMES)) if p is not None}
    return out


def _weighed(weights: Weights, swap: Swap) -> dict[int, Side]:
    order = list(Side)
    none = np.zeros(len(order))
    chances = []
    for found in sides.features(swap.seen.masked, swap.ruled, facts(swap.seen)):
        power = np.exp(sum((weights.get(feature, none) for feature in found), none))
        chances.append(dict(zip(order, power / power.sum(), strict=True)))
    return _told(swap, sides.likeliest(chances, sorted(swap.sides)))


def main() -> None:
    swaps = labelled()
    if "--check" in sys.argv:
        check(swaps)
        return
    write("words_sides.csv", fit(examples(swaps), len(Side)), Side, SOURCE)
    print(f"fitted to {len(swaps)} swaps")


if __name__ == "__main__":
    main()
