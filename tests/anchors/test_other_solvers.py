"""Two other ways of solving the same equations come to the same temperatures."""

from __future__ import annotations

from knowledge.foods.store import open_store
from tests.benchmarks.references import compare_finite_volumes, compare_solve_ivp


def test_finite_volumes_agree() -> None:
    with open_store() as store:
        assert compare_finite_volumes(store, 48).worst_K < 1.0


def test_scipy_agrees() -> None:
    with open_store() as store:
        assert compare_solve_ivp(store, 12).worst_K < 1.0
