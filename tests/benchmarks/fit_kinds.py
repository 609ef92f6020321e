"""Fit the weights by which kinds of messages and types of events are told apart.

    python -m tests.benchmarks.fit_kinds          writes words_kinds.csv and words_events.csv
    python -m tests.benchmarks.fit_kinds --check  prints how well folds that were left out are told apart

Multinomial logistic regression with an L2 penalty, by L-BFGS (scipy). The messages of
`messages_own_e.jsonl` and `_f` are never fitted to: they are the test. The rules were written with
`TUNED` before the eyes, so what they make of those is not learnt from: it would be trusted
too much. Messages of authors who never saw the reader count double.
"""

from __future__ import annotations

import csv
import json
import sys
from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import minimize
from scipy.sparse import csr_matrix

from knowledge.foods.store import open_store
from knowledge.text import likely
from knowledge.text.events import event_type
from knowledge.text.features import features
from knowledge.text.kinds import Signs, facts
from knowledge.text.model import EventType, Kind
from knowledge.text.read import signs_of

DATA = Path(__file__).parent.parent / "data"
TABLES = Path(__file__).parents[2] / "knowledge" / "data"
TUNED = ("messages_dev.jsonl", "messages_own_a.jsonl", "messages_own_b.jsonl", "messages_own_c.jsonl",
         "messages_own_d.jsonl", "kinds_own.csv")  # fmt: skip
OTHERS = ("kinds_events.csv", "kinds_rest.csv", "kinds_mixed.csv")  # by authors who never saw the reader
FILES = (*TUNED, *OTHERS, "kinds_more.csv", "questions.jsonl")
OTHERS_COUNT = 2.0
PENALTY = 2.0
SMALLEST = 0.09  # features with less weight than this for every class are left out
RARE = 3  # a feature must occur in this many messages
FOLDS = 5
SOURCE = "FIT-KINDS"

Weights = Mapping[str, NDArray[np.float64]]


@dataclass(frozen=True, slots=True)
class Message:
    """A labelled message, seen by the reader."""

    file: str
    signs: Signs
    kind: Kind
    event: EventType | None


@dataclass(frozen=True, slots=True)
class Example:
    """The features of a message and the place of its class."""

    found: frozenset[str]
    right: int
    counts: float


def labelled(files: Sequence[str] = FILES) -> list[Message]:
    """Every message that may be fitted to, in which there is a word beside the foods."""
    out = []
    with open_store() as store:
        for file in files:
            for text, kind, event in _rows(file):
                signs = signs_of(text, store=store)
                if not signs.bare:
                    out.append(Message(file, signs, Kind(kind), EventType(event) if event else None))
    return out


def _rows(file: str) -> list[tuple[str, str, str]]:
    text = (DATA / file).read_text(encoding="utf-8")
    if file.endswith(".csv"):
        return [(r["text"], r["kind"], r.get("event") or "") for r in csv.DictReader(text.splitlines())]
    rows = [json.loads(line) for line in text.splitlines()]
    return [(r["text"], r.get("kind", "question"), (r.get("event") or {}).get("type", "")) for r in rows]


def of_kinds(messages: Sequence[Message], *, fitting: bool) -> list[Example]:
    """What kinds are told by."""
    kinds = list(Kind)
    return [
        Example(
            features(m.signs.masked, facts(m.signs, rules=not (fitting and m.file in TUNED))),
            kinds.index(m.kind),
            _counts(m),
        )
        for m in messages
    ]


def of_events(messages: Sequence[Message], *, fitting: bool) -> list[Example]:
    """What types of events are told by."""
    types = list(EventType)
    return [
        Example(
            features(
                m.signs.masked,
                [] if fitting and m.file in TUNED else [likely.event_fact(event_type(m.signs.masked))],
            ),
            types.index(m.event),
            _counts(m),
        )
        for m in messages
        if m.event is not None
    ]


def _counts(message: Message) -> float:
    return OTHERS_COUNT if message.file in OTHERS else 1.0


def fit(examples: Sequence[Example], classes: int) -> Weights:
    """Weights of each feature for the classes, in their order."""
    counts = Counter(feature for example in examples for feature in example.found)
    known = sorted(feature for feature, n in counts.items() if n >= RARE)
    place = {feature: i for i, feature in enumerate(known)}
    at = [(row, place[f]) for row, example in enumerate(examples) for f in example.found if f in place]
    rows, columns = zip(*at, strict=True)
    seen = csr_matrix((np.ones(len(at)), (rows, columns)), shape=(len(examples), len(known)))
    back = seen.T.tocsr()
    target = np.zeros((len(examples), classes))
    target[np.arange(len(examples)), [example.right for example in examples]] = 1
    times = np.array([example.counts for example in examples])[:, None]

    def loss(flat: NDArray[np.float64]) -> tuple[float, NDArray[np.float64]]:
        weights = flat.reshape(len(known), classes)
        score = seen @ weights
        score -= score.max(axis=1, keepdims=True)
        share = np.exp(score)
        share /= share.sum(axis=1, keepdims=True)
        cost = -np.sum(times * target * np.log(share + 1e-12)) + PENALTY / 2 * np.sum(weights**2)
        return float(cost), (back @ (times * (share - target)) + PENALTY * weights).ravel()

    best = minimize(
        loss, np.zeros(len(known) * classes), jac=True, method="L-BFGS-B", options={"maxiter": 150}
    )
    found = dict(zip(known, best.x.reshape(len(known), classes).round(2), strict=True))
    return {feature: w for feature, w in found.items() if np.abs(w).max() >= SMALLEST}


def told_apart(weights: Weights, examples: Sequence[Example], classes: int) -> list[bool]:
    """Which examples get their class."""
    none = np.zeros(classes)
    return [
        int(np.argmax(sum((weights.get(feature, none) for feature in e.found), none))) == e.right
        for e in examples
    ]


def check(messages: Sequence[Message]) -> None:
    """Prints the share of messages told right in folds left out, by file."""
    ways: tuple[tuple[str, Callable[..., list[Example]], int], ...] = (
        ("kind", of_kinds, len(Kind)), ("event", of_events, len(EventType))
    )  # fmt: skip
    for name, of, classes in ways:
        right: Counter[str] = Counter()
        asked: Counter[str] = Counter()
        used = [m for m in messages if name == "kind" or m.event is not None]
        for fold in range(FOLDS):
            rest = [m for i, m in enumerate(used) if i % FOLDS != fold]
            weights = fit(of(rest, fitting=True), classes)
            left = used[fold::FOLDS]
            for m, good in zip(left, told_apart(weights, of(left, fitting=False), classes), strict=True):
                right[m.file] += good
                asked[m.file] += 1
        print(name, {file: f"{right[file] / asked[file]:.3f} of {asked[file]}" for file in asked})


def write(table: str, weights: Weights, classes: type[StrEnum], source: str = SOURCE) -> None:
    """The table, sorted by feature."""
    with (TABLES / table).open("w", encoding="utf-8", newline="") as file:
        out = csv.writer(file, lineterminator="\n")
        out.writerow(["sign", *(one.value for one in classes), "source"])
        for feature in sorted(weights):
            out.writerow([feature, *(f"{w + 0:g}" for w in weights[feature]), source])


def main() -> None:
    messages = labelled()
    if "--check" in sys.argv:
        check(messages)
        return
    write("words_kinds.csv", fit(of_kinds(messages, fitting=True), len(Kind)), Kind)
    write("words_events.csv", fit(of_events(messages, fitting=True), len(EventType)), EventType)
    print(f"fitted to {len(messages)} messages")


if __name__ == "__main__":
    main()
