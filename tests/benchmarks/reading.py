"""Ingredient lines read side by side with a general-purpose parser of ingredient lines.

    pip install panwright[bench]
    python -m tests.benchmarks.reading           right names, right amounts and lines a second of both
    python -m tests.benchmarks.reading --faults  ... and what each read otherwise than labelled

The lines and their labels are our own (`tests/data/ingredient_lines.csv`). One judge for
both: a name is right if it has the words of the label or stands for the same food in the
store; an amount is right if number and unit are, or the grams within 2 %.
"""

from __future__ import annotations

import csv
import sys
import time
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from knowledge.foods.store import Store, open_store
from knowledge.text import read
from knowledge.text.normalise import key
from knowledge.text.vocabulary import words

LINES = Path(__file__).parent.parent / "data" / "ingredient_lines.csv"
ROUNDS = 5


@dataclass(frozen=True, slots=True)
class Got:
    """What a reader made of a line."""

    name: str = ""
    qty: float | None = None
    unit: str | None = None
    grams: float | None = None


def ours(store: Store) -> Callable[[str], Got]:
    """Our reader; the first item counts."""

    def one(line: str) -> Got:
        items = read(line, store=store).items
        return Got(items[0].name, items[0].qty, items[0].unit, items[0].grams) if items else Got()

    return one


def theirs() -> Callable[[str], Got]:
    """The other parser; its units by our names, and what it counts without a unit we know as pieces."""
    from ingredient_slicer import IngredientSlicer

    def one(line: str) -> Got:
        try:
            found: Mapping[str, Any] = IngredientSlicer(line).to_json()
        except Exception as error:
            return Got(name=f"({type(error).__name__})")
        unit = words().units.get((key(found["unit"]),)) if found["unit"] else None
        grams = found["gram_weight"] if unit is not None and unit.kind == "weight" else None
        qty = found["quantity"]
        return Got(
            found["food"] or "",
            float(qty) if qty else None,
            (unit.id if unit else "piece") if qty else None,
            float(grams) if grams else None,
        )

    return one


def same_name(store: Store, label: str, name: str) -> bool:
    """Whether a name has all words of the label, or is another name of the same food."""
    if set(key(label).split()) <= set(key(name).split()):
        return True
    a, b = store.named(label), store.named(name)
    return a is not None and b is not None and a.id == b.id


def same_amount(row: Mapping[str, str], got: Got) -> bool:
    """Whether number and unit are those of the label, or the grams are."""
    qty = float(row["qty"]) if row["qty"] else None
    counted = near(qty, got.qty) and (qty is None or row["unit"] == got.unit)
    return counted or (bool(row["grams"]) and near(float(row["grams"]), got.grams))


def near(a: float | None, b: float | None) -> bool:
    """Equal within 2 %."""
    return a is b if a is None or b is None else abs(a - b) <= 0.02 * max(abs(a), abs(b))


def main() -> None:
    with LINES.open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    with open_store() as store:
        for who, reader in (("panwright", ours(store)), ("ingredient-slicer", theirs())):
            reader(rows[0]["line"])
            started = time.perf_counter()
            for _ in range(ROUNDS):
                results = [reader(row["line"]) for row in rows]
            a_second = ROUNDS * len(rows) / (time.perf_counter() - started)
            names = [same_name(store, row["name"], got.name) for row, got in zip(rows, results, strict=True)]
            amounts = [same_amount(row, got) for row, got in zip(rows, results, strict=True)]
            print(
                f"{who}: names {sum(names)} of {len(rows)}, amounts {sum(amounts)} of {len(rows)}, "
                f"{a_second:.0f} lines a second"
            )
            if "--faults" in sys.argv:
                for row, got, n, a in zip(rows, results, names, amounts, strict=True):
                    if not (n and a):
                        print(f"    {row['line']!r}: {got}")


if __name__ == "__main__":
    main()
