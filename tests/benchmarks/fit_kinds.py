"""Fit the weights by which kinds of messages are told apart, from the labelled messages.

    python -m tests.benchmarks.fit_kinds          writes knowledge/data/words_kinds.csv
    python -m tests.benchmarks.fit_kinds --check  prints how well folds that were left out are told apart

Multinomial logistic regression with an L2 penalty, by L-BFGS (scipy). The messages of
`messages_own_e.jsonl` are never fitted to: they are the test.
"""

from __future__ import annotations

import csv
import json
import sys
from collections import Counter
from collections.abc import Mapping, Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import minimize

from knowledge.foods.store import open_store
from knowledge.text.likely import signs
from knowledge.text.model import Context, Kind
from knowledge.text.normalise import flatten
from knowledge.text.seen import look
from knowledge.text.tokens import tokenise
from knowledge.text.vocabulary import vocabulary, words

DATA = Path(__file__).parent.parent / "data"
TABLE = Path(__file__).parents[2] / "knowledge" / "data" / "words_kinds.csv"
FILES = ("dev", "own_a", "own_b", "own_c", "own_d")
PENALTY = 1.0
SMALLEST = 0.03  # signs with less weight than this for every kind are left out
RARE = 2  # a sign must occur in this many messages
FOLDS = 5
SOURCE = "FIT-KINDS"

Weights = Mapping[str, NDArray[np.float64]]


def labelled() -> list[tuple[frozenset[str], Kind]]:
    """Signs and kind of every message that may be fitted to."""
    pairs = []
    for name in FILES:
        for line in (DATA / f"messages_{name}.jsonl").read_text(encoding="utf-8").splitlines():
            message = json.loads(line)
            pairs.append((message["text"], message["kind"]))
    with (DATA / "kinds_own.csv").open(encoding="utf-8", newline="") as file:
        pairs += [(row["text"], row["kind"]) for row in csv.DictReader(file)]
    with open_store() as store:
        vocab = vocabulary(store)
        out = []
        for text, kind in pairs:
            flat = flatten(text, words().emoji)
            out.append((signs(look(flat, tokenise(flat.text), vocab, Context()).masked), Kind(kind)))
    return out


def fit(examples: Sequence[tuple[frozenset[str], Kind]]) -> Weights:
    """Weights of each sign for the kinds, in their order."""
    counts = Counter(sign for found, _ in examples for sign in found)
    known = sorted(sign for sign, n in counts.items() if n >= RARE)
    place = {sign: i for i, sign in enumerate(known)}
    kinds = list(Kind)
    seen = np.zeros((len(examples), len(known)))
    target = np.zeros((len(examples), len(kinds)))
    for row, (found, kind) in enumerate(examples):
        seen[row, [place[sign] for sign in found if sign in place]] = 1
        target[row, kinds.index(kind)] = 1

    def loss(flat: NDArray[np.float64]) -> tuple[float, NDArray[np.float64]]:
        weights = flat.reshape(len(known), len(kinds))
        score = seen @ weights
        score -= score.max(axis=1, keepdims=True)
        share = np.exp(score)
        share /= share.sum(axis=1, keepdims=True)
        cost = -np.sum(target * np.log(share + 1e-12)) + PENALTY / 2 * np.sum(weights**2)
        return float(cost), (seen.T @ (share - target) + PENALTY * weights).ravel()

    best = minimize(loss, np.zeros(len(known) * len(kinds)), jac=True, method="L-BFGS-B")
    return dict(zip(known, best.x.reshape(len(known), len(kinds)), strict=True))


def told_apart(weights: Weights, examples: Sequence[tuple[frozenset[str], Kind]]) -> int:
    """How many examples get their kind."""
    kinds = list(Kind)
    none = np.zeros(len(kinds))
    return sum(
        kinds[int(np.argmax(sum((weights.get(sign, none) for sign in found), none)))] is kind
        for found, kind in examples
    )


def write(weights: Weights) -> None:
    """The table, sorted by sign."""
    with TABLE.open("w", encoding="utf-8", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["sign", *(kind.value for kind in Kind), "source"])
        for sign in sorted(weights):
            if np.abs(weights[sign]).max() >= SMALLEST:
                out.writerow([sign, *(f"{w:.2f}" for w in weights[sign]), SOURCE])


def main() -> None:
    examples = labelled()
    if "--check" in sys.argv:
        right = sum(
            told_apart(fit([e for i, e in enumerate(examples) if i % FOLDS != fold]), examples[fold::FOLDS])
            for fold in range(FOLDS)
        )
        print(f"{right} of {len(examples)} messages in folds left out get their kind")
        return
    write(fit(examples))
    print(f"fitted to {len(examples)} messages: {TABLE.name}")


if __name__ == "__main__":
    main()
