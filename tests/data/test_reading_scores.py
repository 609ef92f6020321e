"""Readings of labelled messages against their labels.

messages_dev.jsonl and names_dev.csv are the project's development corpus, adversarial on
purpose; messages_own_a to _d.jsonl are our own, each written and labelled before it was
tuned to (b and each batch of d, ids d e f v, were scored once before they were looked at), and
messages_own_f.jsonl is by another writer, who had not seen the reader: before its kinds of
faults were mended it gave names 0.919, kind 0.927, whole 0.691. The floors are the project's
targets, not our scores.

messages_own_e.jsonl was not tuned to: it was written last, scored once, and neither the
rules nor the weights of `words_kinds.csv` have seen it (one greeting that it showed to be
read as a food was added to the plain words). Its floors are the targets for
messages with foods and wording unseen. Of late it gives names 0.979, kind 0.984, amount 0.964,
swap 0.875, event type 1.000, whole 0.869; 60 newer messages of rare foods, a fifth of them swaps
and a third events, none of them looked at, gave names 0.922, kind 0.950, amount 0.930, swap 0.643,
event type 0.833, whole 0.683.
"""

from __future__ import annotations

import csv
import json
from collections import Counter
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

import pytest

from bot.commands.read import as_json
from knowledge.foods.store import Store
from knowledge.text import read
from knowledge.text.normalise import key

HERE = Path(__file__).parent


@pytest.fixture(scope="module")
def label() -> Callable[[str | None], str | None]:
    """Synonyms of the label list made equal, as the corpus asks."""
    same: dict[str, str] = {}
    with (HERE / "names_dev.csv").open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            for name in [row["name"], *filter(None, row["synonyms"].split(";"))]:
                same.setdefault(key(name), key(row["name"]))
    return lambda name: same.get(key(name), key(name)) if name else None


def _near(a: float | None, b: float | None) -> bool:
    return a is b if a is None or b is None else abs(a - b) <= 0.02 * max(abs(a), abs(b), 1e-9)


def _score(
    gold: Mapping[str, Any], got: Mapping[str, Any], label: Callable[[str | None], str | None]
) -> dict[str, tuple[int, int]]:
    """Right and asked, by field."""
    marks: dict[str, tuple[int, int]] = {"kind": (int(got["kind"] == gold["kind"]), 1)}
    wanted = {label(i["name"]): i for i in gold["items"]}
    found = {label(i["name"]): i for i in got["items"]}
    both = wanted.keys() & found.keys()
    marks["names"] = (2 * len(both), len(wanted) + len(found))
    marks["amount"] = (sum(_same_amount(wanted[k], found[k]) for k in both), len(both))
    marks["state"] = (sum(wanted[k]["state"] == found[k]["state"] for k in both), len(both))
    if gold["kind"] == "plan":
        for field in ("people", "ready_by", "vessel"):
            marks[field] = (int(got[field] == gold[field]), 1)
    if gold["swap"]:
        swap = got["swap"] or {}
        marks["swap"] = (int(all(label(swap.get(k)) == label(gold["swap"][k]) for k in ("from", "to"))), 1)
    if gold["event"]:
        event = got["event"] or {}
        marks["event type"] = (int(event.get("type") == gold["event"]["type"]), 1)
        marks["event item"] = (int(label(event.get("item")) == label(gold["event"]["item"])), 1)
        marks["event minutes"] = (int(_near(event.get("minutes"), gold["event"]["minutes"])), 1)
    marks["whole"] = (int(all(right == asked for right, asked in marks.values())), 1)
    return marks


def _same_amount(gold: Mapping[str, Any], got: Mapping[str, Any]) -> bool:
    counted = _near(gold["qty"], got["qty"]) and gold["unit"] == got["unit"]
    return counted or (gold["grams"] is not None and _near(gold["grams"], got["grams"]))


def _totals(
    store: Store, label: Callable[[str | None], str | None], file: str
) -> tuple[Counter[str], Counter[str]]:
    """Right and asked of a whole file, by field."""
    right: Counter[str] = Counter()
    asked: Counter[str] = Counter()
    for line in (HERE / file).read_text(encoding="utf-8").splitlines():
        gold = json.loads(line)
        for field, (good, all_) in _score(gold, as_json(read(gold["text"], store=store)), label).items():
            right[field] += good
            asked[field] += all_
    return right, asked


@pytest.mark.parametrize(
    ("file", "whole"),
    [
        ("messages_dev.jsonl", 0.82),
        ("messages_own_a.jsonl", 0.82),
        ("messages_own_b.jsonl", 0.82),
        ("messages_own_c.jsonl", 0.82),
        ("messages_own_d.jsonl", 0.82),
        ("messages_own_f.jsonl", 0.82),
    ],
)
def test_labelled_messages_are_read_as_well_as_promised(
    store: Store, label: Callable[[str | None], str | None], file: str, whole: float
) -> None:
    right, asked = _totals(store, label, file)
    floors = {"names": 0.97, "kind": 0.97, "amount": 0.96, "state": 0.96, "people": 0.96, "ready_by": 0.96,
              "vessel": 0.96, "swap": 0.9, "event type": 0.93, "event item": 0.88, "event minutes": 0.88,
              "whole": whole}  # fmt: skip
    missed = {f: round(right[f] / asked[f], 3) for f, floor in floors.items() if right[f] < floor * asked[f]}
    assert not missed


def test_messages_never_tuned_to_are_read_as_well_as_promised(
    store: Store, label: Callable[[str | None], str | None]
) -> None:
    right, asked = _totals(store, label, "messages_own_e.jsonl")
    floors = {"names": 0.92, "kind": 0.92, "amount": 0.92, "whole": 0.65}
    missed = {f: round(right[f] / asked[f], 3) for f, floor in floors.items() if right[f] < floor * asked[f]}
    assert not missed
