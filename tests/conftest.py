"""What every test may ask for."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from knowledge.foods.store import Store, open_store


@pytest.fixture(scope="session")
def store() -> Iterator[Store]:
    """The foods, opened once."""
    with open_store() as opened:
        yield opened
