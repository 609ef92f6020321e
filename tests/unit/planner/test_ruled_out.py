"""What is not wanted: "nothing soupy", "anything but a curry"; read as such, planned as such, and said."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.model import Kitchen, Plan
from knowledge.requests import request_of
from knowledge.text import read
from knowledge.text.model import Context, Mode
from knowledge.wished import opposite, settled

NOW = datetime(2026, 2, 3, 17, 30, tzinfo=UTC)
FRIDGE = "4 chicken legs, 500 g potatoes, 3 leeks, "


def wishes(text: str, store: Store) -> tuple[str, ...]:
    return read(text, store=store, context=Context(mode=Mode.IDLE), now=NOW).wishes


def planned(text: str, store: Store) -> Plan:
    reading = read(text, store=store, context=Context(mode=Mode.IDLE), now=NOW)
    made = plan(request_of(reading, store=store, kitchen=Kitchen(), now=NOW), store=store)
    assert isinstance(made, Plan)
    return made


@pytest.mark.parametrize(
    ("said", "wish"),
    [
        ("no casserole tonight", "not stew"),
        ("i dont fancy soup", "not soup"),
        ("anything but a curry", "not curry"),
        ("we're tired of tray bakes", "not tray bake"),
        ("it must not be crispy, we had dental work", "not crisp"),
        ("no soup or stew", "not stew"),
        ("less sauce this time", "not saucy"),
    ],
)
def test_what_is_ruled_out_is_no_wish_for_it(said: str, wish: str, store: Store) -> None:
    found = wishes(f"{FRIDGE}{said}, for 3", store)
    assert wish in found
    assert opposite(wish) not in found


@pytest.mark.parametrize(
    ("said", "wish"),
    [
        ("no oven, something crispy", "crisp"),
        ("why not a stew", "stew"),
        ("not sure, maybe a soup", "soup"),
        ("no rush, stew is fine", "stew"),
        ("a stir fry, not a stew", "stir fry"),
    ],
)
def test_a_no_to_something_else_leaves_the_wish(said: str, wish: str, store: Store) -> None:
    assert wish in wishes(f"{FRIDGE}{said}, for 3", store)


def test_what_need_not_be_is_left_open(store: Store) -> None:
    assert not {"quick", "not quick"} & {*wishes(f"{FRIDGE}it doesn't have to be quick", store)}


def test_the_later_word_holds() -> None:
    assert settled(("stew", "quick"), ("not stew",)) == ("not stew", "quick")
    assert settled(("crisp", "quick"), ("saucy",)) == ("saucy", "quick")
    assert settled(("oven",), ("hob",)) == ("hob",)
    assert settled(("not crisp",), ("crisp",)) == ("crisp",)


def test_no_stew_is_planned_dry_and_said(store: Store) -> None:
    wet = planned(f"{FRIDGE}a stew, for 3", store)
    dry = planned(f"{FRIDGE}not a stew, for 3", store)
    assert (wet.settings.method, dry.settings.method) == ("braise", "roast")
    assert any("not a stew" in why for why in dry.why)


def test_no_fried_thing_is_not_fried(store: Store) -> None:
    made = planned("3 pork chops, 2 courgettes, a pepper, 2 apples, nothing fried, for 3", store)
    assert made.settings.hob is None


def test_a_wish_that_cannot_be_granted_is_said(store: Store) -> None:
    made = planned("800 g beef shin, 4 carrots, 2 onions, quick and not a stew, for 4", store)
    assert any(note.startswith("not a stew") for note in made.notes)
    assert any(note.startswith("quick: not this time") for note in made.notes)
