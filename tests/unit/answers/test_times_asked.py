"""Cooking times by side, by weight, by whistle, in a slow cooker, in the shell, under the grill."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen


def minutes_of(said: str, pattern: str) -> tuple[float, float]:
    found = re.search(pattern, said)
    assert found is not None, said
    return float(found[1]), float(found[2])


def test_a_steak_is_told_by_the_side_with_the_safe_time_first(store: Store) -> None:
    said = ask("rump steak 2 cm, medium rare, minutes per side?", store=store).answer
    safe = minutes_of(said, r"turned over: ([\d.]+)-([\d.]+) min a side")
    rarer = minutes_of(said, r"common practice\): ([\d.]+)-([\d.]+) min a side")
    assert safe[0] >= rarer[0]
    assert 2.0 <= safe[0] <= safe[1] <= 6.0  # charts: 2-4 minutes a side for 20 mm to medium and beyond
    assert "own risk" in said
    assert said.index("63 °C") < said.index("55 °C")


def test_a_thicker_steak_takes_longer_a_side(store: Store) -> None:
    thin, thick = (
        minutes_of(
            ask(f"{cm} cm ribeye each side how long", store=store).answer, r": ([\d.]+)-([\d.]+) min a side"
        )
        for cm in (2, 4)
    )
    assert thin[1] < thick[1]


@pytest.mark.parametrize(
    "question", ["jaccarded rump steak 2 cm rare how long each side", "steak strips how long"]
)
def test_no_time_for_a_rare_steak_that_was_needled_or_cut_up(store: Store, question: str) -> None:
    assert "in the trade (common practice): " not in ask(question, store=store).answer


def test_a_ham_to_boil_goes_by_its_weight(store: Store) -> None:
    # British charts: 20 minutes for 450 g and 20 more: 2 kg 109 minutes
    said = ask("2 kg ham, boil it for how long", store=store).answer
    low, high = minutes_of(said, r"\((\d+)-(\d+) min\)")
    assert low < 109 < high
    assert "70 °C" in said


def test_minutes_a_kilo_fall_with_the_weight(store: Store) -> None:
    said = ask("minutes per kilo for a roast turkey", store=store).answer
    assert re.search(r"about \d+ min a kilo", said)
    assert "less a kilo" in said


def test_a_baked_potato_takes_an_hour_and_more(store: Store) -> None:
    # common charts at 200 °C: 60-80 minutes
    low, high = minutes_of(ask("jacket spud oven how long", store=store).answer, r"(\d+)-(\d+) min")
    assert low >= 55
    assert high <= 100


def test_under_the_grill_is_no_oven(store: Store) -> None:
    assert "hot grill" in ask("how long does mackerel take under the grill", store=store).answer


@pytest.mark.parametrize(
    ("question", "part"),
    [
        ("oxtail slow cooker how many hours", "8-10 hours on low"),
        ("pulled pork crockpot time", "until it pulls apart"),
        ("masoor dal how many whistles", "2-3 whistles"),
        ("number of whistles for goat", "5-7 whistles"),
        ("jammy egg boil how many minutes", "8-9 min"),
    ],
)
def test_the_way_asked_for_and_only_it(store: Store, question: str, part: str) -> None:
    assert part in ask(question, store=store).answer


@pytest.mark.parametrize(
    "question",
    ["frozen chicken thighs in the slow cooker how long", "slow cooker went off for 3 hours with beef in it"],
)
def test_no_slow_cooker_hours_for_what_is_unsafe_in_it(store: Store, question: str) -> None:
    assert "on low" not in ask(question, store=store).answer


def test_an_egg_takes_longer_in_a_kitchen_that_lies_high(store: Store) -> None:
    here, high = (
        ask("hard boil an egg how many minutes", store=store, kitchen=Kitchen(altitude_m=height)).answer
        for height in (0.0, 2600.0)
    )
    assert "10-11 min" in here
    assert minutes_of(high, r"through\) (\d+)-(\d+) min")[0] > 11


def test_hard_boiled_eggs_that_are_kept_get_days(store: Store) -> None:
    assert "1 week" in ask("how long do hard boiled eggs last in the fridge", store=store).answer


def test_an_egg_at_the_sea_is_told_nothing_of_heights(store: Store) -> None:
    assert "longer" not in ask("soft boil an egg how many minutes", store=store).answer


def test_rice_may_stand_in_a_warm_room_one_hour(store: Store) -> None:
    assert "stand out 1 hour at most" in ask("cooked rice in a room of 24 C, how long", store=store).answer


@pytest.mark.parametrize(
    ("question", "part"),
    [
        ("what temperature is a gentle simmer", "85-95 °C"),
        ("red wine been open three weeks, use it for a stew?", "two weeks"),
        ("suckling pig, how hot should the thickest part get", "63 °C"),
        ("is boudin noir already cooked or do I cook it through", "label"),
        ("bison burger internal temperature", "burger: 71 °C"),
    ],
)
def test_small_questions_of_heat(store: Store, question: str, part: str) -> None:
    assert part.lower() in ask(question, store=store).answer.lower()
