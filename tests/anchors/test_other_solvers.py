"""Two other ways of solving the same equations come to the same temperatures."""

from __future__ import annotations

import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest

from knowledge.foods.store import open_store
from knowledge.physics import cook, simulate


@pytest.fixture(scope="module")
def references() -> ModuleType:
    """`tests/benchmarks/references.py`, found by place: the suite also runs against an installed wheel."""
    path = Path(__file__).parents[1] / "benchmarks" / "references.py"
    spec = importlib.util.spec_from_file_location("panwright_references", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    sys.modules[spec.name] = module
    spec.loader.exec_module(module)
    return module


def test_finite_volumes_agree(references: ModuleType) -> None:
    with open_store() as store:
        assert references.compare_finite_volumes(store, 48).worst_K < 1.0


def test_scipy_agrees(references: ModuleType) -> None:
    with open_store() as store:
        assert references.compare_solve_ivp(store, 12).worst_K < 1.0


def test_few_steps_are_as_good_as_a_thousand(references: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    """Times on the grid that `cook` uses, within 1 % of a grid 30 times as fine."""
    with open_store() as store:
        cases = references.sample(store, 216)
    usual = [o.done_s for o in cook(cases)]
    monkeypatch.setattr(simulate, "_STEPS_ALONE", 1000)
    fine = [o.done_s for o in cook(cases)]
    assert usual == pytest.approx(fine, rel=0.01)
