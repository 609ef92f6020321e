from collections.abc import Iterator

import pytest

from knowledge.foods.store import Store, open_store


@pytest.fixture(scope="session")
def store() -> Iterator[Store]:
    with open_store() as opened:
        yield opened
