"""Another vessel is a row: a clay pot is added to a copy of the tables and cooked in, without any code."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from knowledge.foods.build import build
from knowledge.foods.store import Store, open_store
from knowledge.planner import plan
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Do, Have, Kitchen, Plan, Request, VesselAt
from knowledge.tables import DATA

CLAY_POT = 'clay pot,clay-braise,0.7,0.5,150,no,no,1.3,clay pots?,clay pot,"slow, even heat",CP'
SIZE = "4 l,clay pot,0.04,4,2.8,850,4,yes,,CP"
METHOD = "clay-braise,braise in clay,clay pot,wet,hob,,,,,0,no,yes,3,140,half,1,0,0.05,,braise,CP"


@pytest.fixture(scope="module")
def equipped(tmp_path_factory: pytest.TempPathFactory) -> Store:
    tables = tmp_path_factory.mktemp("kitchen") / "tables"
    shutil.copytree(DATA, tables, ignore=shutil.ignore_patterns("*.py", "__pycache__"))
    for name, row in (("vessels", CLAY_POT), ("vessel_sizes", SIZE), ("methods", METHOD)):
        add(tables / f"{name}.csv", row)
    built = tables.parent / "k.sqlite"
    build(built, tables)
    return open_store(built)


def add(table: Path, row: str) -> None:
    head, *rows = table.read_text(encoding="utf-8").splitlines()
    table.write_text("\n".join([head, *sorted([*rows, row])]) + "\n", encoding="utf-8")


def test_a_dinner_is_planned_in_a_vessel_that_is_only_a_row(equipped: Store) -> None:
    have = (Have(food_id="stew-beef", grams=600), Have(food_id="carrot", qty=3), Have(food_id="onion", qty=1))
    kitchen = Kitchen(vessels=(VesselAt(id="clay pot"),))
    made = plan(Request(have=have, eaters=3.0, eaters_said=True, kitchen=kitchen), store=equipped)
    assert isinstance(made, Plan)
    assert (made.vessel, made.size) == ("clay pot", "4 l")
    assert made.liquid is not None
    assert any("clay pot" in s.text for s in made.steps if s.do in (Do.PREHEAT, Do.ADD, Do.HEAT, Do.LID))
    assert check(made, store=equipped).sound
