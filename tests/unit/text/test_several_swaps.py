"""Two foods and more changed in one message, in either order of words; a list of foods is none."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.text import read
from knowledge.text.model import Context, Kind, Mode

PLANNED = Context(mode=Mode.PLANNED, foods=("turnip", "shallot", "cod", "bulgur"))


@pytest.mark.parametrize(
    "said",
    [
        "swap the turnips for swede and the shallots for leeks",
        "swede instead of turnips, and leeks instead of shallots",
        "replace the turnips with swede, the shallots with leeks",
    ],
)
def test_every_pair_is_read(said: str, store: Store) -> None:
    reading = read(said, store=store, context=PLANNED)
    assert reading.kind is Kind.SWAP
    assert reading.swap is not None
    pairs = [(pair.frm, pair.to) for pair in (reading.swap, *reading.also)]
    assert pairs == [("turnip", "rutabaga"), ("shallot", "leek")]


@pytest.mark.parametrize(
    "said",
    [
        "turnips and swede for roasting, shallots and leeks for the pot",
        "400 g turnips for the soup and 3 shallots for the base",
        "swap the turnips for swede",
    ],
)
def test_other_messages_hold_no_second_swap(said: str, store: Store) -> None:
    assert read(said, store=store, context=PLANNED).also == ()
