"""Food that stood in the warm: after two hours at room temperature it is thrown away (USDA FSIS)."""

from __future__ import annotations

from datetime import datetime

import pytest

from knowledge.foods.store import Store
from knowledge.text import read
from knowledge.text.model import Kind

EVENING = datetime(2026, 3, 4, 18, 0)  # noqa: DTZ001  the cook's own clock


def hours(store: Store, text: str) -> dict[str, float | None]:
    return {one.name: one.hours for one in read(text, store=store, now=EVENING).out_warm}


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("mackerel been sat on the side since 9 this morning, leeks", {"mackerel": 9}),
        ("forgot the lamb chops in the boot for 4 hours, leeks", {"lamb chop": 4}),
        ("turkey mince out of the fridge since lunchtime, leeks", {"ground turkey": 5.5}),
        ("hake out of the freezer since noon, leeks", {"hake": 6}),
        ("prawns were in my bag all day, noodles", {"shrimp": 8}),
        ("the freezer was unplugged overnight: mince, peas, sausages", {"ground beef": 8, "sausage": 8}),
        ("had the duck breasts out since 2, leeks", {"duck breast": 4}),
        ("left the shopping in the car since 11, chicken, yoghurt, apples", {"chicken": 7, "yogurt": 7}),
        ("cooked rice that has been on the counter since last night, eggs", {"rice": 8}),
        ("pork left on the bench since 15:30. leeks", {"pork": 2.5}),
        ("got the stew pot out, veal left out since 1, beans soaked overnight", {"veal": 5}),
        ("turkey breast marinated on the counter since 10 this morning, leeks", {"turkey breast": 8}),
        ("trout in a hot car for an hour, leeks", {"trout": 2}),  # above 32 °C one hour counts as two
        ("leeks, eggs, left the veal on the worktop for 3 hours", {"veal": 3}),
        ("meatballs, mince left in the car for 6 hours, leeks", {"ground beef": 6}),
        ("mince, bacon and sausages sat out for 4 hours", {"ground beef": 4, "bacon": 4, "sausage": 4}),
        ("bacon and sausages sat out for 20 min, leeks", {"bacon": 1 / 3, "sausage": 1 / 3}),
        ("i left the salmon on the table, leeks", {"salmon": None}),
        ("forgot to put the mince back in the fridge, leeks", {"ground beef": None}),
    ],
)
def test_how_long_it_stood_in_the_warm(store: Store, text: str, expected: dict[str, float | None]) -> None:
    assert hours(store, text) == pytest.approx(expected, abs=0.01)


@pytest.mark.parametrize(
    "text",
    [
        "take the chicken out at 6, leeks",
        "left out the onions, chicken, leeks",
        "chicken defrosted overnight in the fridge, leeks",
        "leeks and onions been in the car for 5 hours, chicken",
        "i was out all day. chicken, leeks",
        "been out since this morning, chicken and leeks tonight",
        "we ran out of leeks yesterday. chicken, onions",
        "carrots on the counter for 3 days, leeks, bacon from the fridge",
        "two tins of tuna been in the car all day, leeks",
        "mince frozen solid, forgot to take it out, leeks",
        "kids are out until 6, chicken, leeks",
        "eat in 3 hours, chicken out of the freezer, leeks",
        "got the big casserole out, 200 g beans (soaked since last night), veal 400 g, leeks",
        "took the kids out this morning. turkey mince, leeks",
        "the wok is out, duck strips brined since last night, leeks",
        "have a steamer out - lentils soaked overnight, trout, leeks",
        "veal came out of the freezer last night and into the fridge, leeks",
    ],
)
def test_what_only_sounds_like_it(store: Store, text: str) -> None:
    assert hours(store, text) == {}


def test_a_time_that_is_not_told_is_asked_for(store: Store) -> None:
    assert any("How long" in ask for ask in read("left the cod on the side, leeks", store=store).asks)


def test_meat_forgotten_in_the_warm_is_a_plan_to_warn_of(store: Store) -> None:
    assert read("chicken forgotten in the car for 5 hours, rice", store=store, now=EVENING).kind is Kind.PLAN
