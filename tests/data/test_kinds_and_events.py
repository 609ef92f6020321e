"""Kinds and events in the words of authors who never saw the reader.

kinds_events.csv, kinds_rest.csv and kinds_mixed.csv are by three authors, kinds_more.csv is our own.
The weights are fitted to all of them, so these figures are no forecast, and the floors are not
drawn from them: they are what folds left out of the fit gave, by `tests.benchmarks.fit_kinds --check`
(an event counts if kind and type are right, in the folds 0.91 * 0.82 and so on).
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

from knowledge.foods.store import Store
from knowledge.text import read

HERE = Path(__file__).parent


@pytest.mark.parametrize(
    ("file", "kind", "event"),
    [
        ("kinds_events.csv", 0.91, 0.74),
        ("kinds_rest.csv", 0.77, 0.0),
        ("kinds_mixed.csv", 0.88, 0.78),
        ("kinds_more.csv", 0.85, 0.70),
    ],
)
def test_kinds_and_events_are_told_as_well_as_in_folds_left_out(
    store: Store, file: str, kind: float, event: float
) -> None:
    with (HERE / file).open(encoding="utf-8", newline="") as rows:
        pairs = [(row, read(row["text"], store=store)) for row in csv.DictReader(rows)]
    kinds = [got.kind == row["kind"] for row, got in pairs]
    events = [got.event is not None and got.event.type == row["event"] for row, got in pairs if row["event"]]

    assert sum(kinds) >= kind * len(kinds)
    assert sum(events) >= event * len(events)
