"""The real knowledge file, opened once: the planner has no fakes of its own."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from knowledge.foods.store import Store, open_store


@pytest.fixture(scope="session")
def store() -> Iterator[Store]:
    with open_store() as opened:
        yield opened
