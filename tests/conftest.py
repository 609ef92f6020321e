"""What every test may ask for."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from knowledge.foods.store import Store, open_store
from knowledge.planner import choose
from knowledge.planner.checking.verify import check
from knowledge.planner.model import NoPlan, Plan, Request


@pytest.fixture(scope="session")
def store() -> Iterator[Store]:
    """The foods, opened once."""
    with open_store() as opened:
        yield opened


@pytest.fixture(scope="session", autouse=True)
def every_plan_is_followed() -> Iterator[None]:
    """Every plan that any test asks for is re-simulated from its steps: safe, within room, in order."""
    plan = choose.plan

    def followed(request: Request, *, store: Store) -> Plan | NoPlan:
        made = plan(request, store=store)
        shown = made if isinstance(made, Plan) else made.nearest
        if shown is not None:
            report = check(shown, store=store)
            assert report.unsafe == ()
            assert [p for p in report.problems if any(word in p for word in BROKEN)] == []
        return made

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(choose, "plan", followed)
        yield


BROKEN = ("full", "sealed", "liquid", "order")
