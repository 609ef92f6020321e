"""Two other ways of solving the same equations come to the same temperatures."""

from __future__ import annotations

import sys

import pytest

from bot.commands import bench, bench_solvers
from knowledge.foods.store import open_store
from knowledge.physics import cook, simulate


def test_finite_volumes_agree() -> None:
    with open_store() as store:
        assert bench_solvers.compare_finite_volumes(store, 48).worst_K < 1.0


def test_scipy_agrees() -> None:
    with open_store() as store:
        assert bench_solvers.compare_solve_ivp(store, 12).worst_K < 1.0


def test_few_steps_are_as_good_as_a_thousand(monkeypatch: pytest.MonkeyPatch) -> None:
    """Times on the grid that `cook` uses, within 1 % of a grid 30 times as fine."""
    with open_store() as store:
        cases = bench_solvers.sample(store, 216)
    usual = [o.done_s for o in cook(cases)]
    monkeypatch.setattr(simulate, "_STEPS_ALONE", 1000)
    fine = [o.done_s for o in cook(cases)]
    assert usual == pytest.approx(fine, rel=0.01)


def test_bench_says_what_to_install_for_the_other_solver(monkeypatch: pytest.MonkeyPatch) -> None:
    """scipy is for developers: without it the other figures are still printed."""
    monkeypatch.setitem(sys.modules, "scipy.integrate", None)
    with open_store() as store:
        assert bench.beside_scipy(store) is None


def test_bench_measures_beside_scipy() -> None:
    with open_store() as store:
        figure = bench.beside_scipy(store)
    assert figure is not None
    assert figure[1] > 1.0
