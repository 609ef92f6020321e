"""What whole plans say against the ranges that cookery books print.

The ranges of tests/data/book_times.csv are common practice, from memory, no source: half a
kilo of one food in one vessel, minutes in the heat that cooks it (from full pressure, after
browning) until it is done. Books differ among themselves by a quarter or more.
"""

from __future__ import annotations

import csv
from functools import cache
from pathlib import Path

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Do, Have, Kitchen, Plan, Request, VesselAt

BOOK = Path(__file__).parents[2] / "data" / "book_times.csv"
WIDE, FAR = 1.25, 1.6


@cache
def rows() -> tuple[dict[str, str], ...]:
    with BOOK.open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))


def planned(row: dict[str, str], store: Store) -> Plan:
    have = Have(food_id=row["food_id"], grams=500.0, state=row["state"] or None, cut=row["cut"] or None)
    kitchen = Kitchen(vessels=(VesselAt(id=row["vessel"]),))
    made = plan(Request(have=(have,), eaters=2.0, eaters_said=True, kitchen=kitchen), store=store)
    assert isinstance(made, Plan)
    return made


def minutes(made: Plan) -> float:
    """From when it joins the heat that finishes it until it is done."""
    (item,) = made.items
    joined = [s.at_s for s in made.steps if s.do is Do.ADD and item.food_id in s.foods]
    start = max([item.in_s, *joined])
    if made.settings.pressure_kPa_gauge:
        start = next(s.at_s for s in made.steps if s.do is Do.HEAT and s.at_s > start)
    return (item.done.at_s - start) / 60.0


def off(row: dict[str, str], store: Store) -> float:
    """By what factor a plan's time is outside the range; 1 inside."""
    took = minutes(planned(row, store))
    return max(float(row["lo_min"]) / took, took / float(row["hi_min"]), 1.0)


@pytest.mark.parametrize("row", rows(), ids=lambda r: f"{r['food_id']} {r['state']} {r['vessel']}")
def test_no_plan_is_far_from_what_books_print(row: dict[str, str], store: Store) -> None:
    assert off(row, store) <= FAR
    assert check(planned(row, store), store=store).sound


def test_nearly_all_plans_are_within_a_quarter_of_the_printed_range(store: Store) -> None:
    assert len(rows()) >= 60
    within = [off(row, store) <= WIDE for row in rows()]
    assert sum(within) / len(within) >= 0.9
