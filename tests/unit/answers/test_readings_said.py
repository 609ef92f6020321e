"""Readings of a thermometer, in words too, and what the figure beside them is of."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.answers.reading.numbers import in_digits
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("said", "digits"),
    [
        ("sixty three degrees", "63 degrees"),
        ("a hundred and sixty f", "160 f"),
        ("two hundred degrees", "200 degrees"),
        ("a sixty minute rest", "a 60 minute rest"),
        ("since one forty five", "since one 45"),
        ("one hundred one", "one hundred one"),
    ],
)
def test_large_numbers_in_words(said: str, digits: str) -> None:
    assert in_digits(said) == digits


def test_a_thermometer_says_one_and_thirty_eight_for_138() -> None:
    assert in_digits("reads one thirty eight", is_reading=True) == "reads 138"


@pytest.mark.parametrize(
    ("question", "first"),
    [
        ("turkey burger probe reads one fifty-two, done?", "No, not yet: 66.7 °C / 152 °F"),
        ("leftover chilli heated again, thermometer says 68 C", "No, not yet: 68 °C"),
        ("stuffing in the goose shows 72 C but the thigh 80, fine?", "No, not yet: 72 °C"),
        ("cottage pie reheated to 76 C inside, fine?", "Yes, 76 °C"),
    ],
)
def test_a_reading_gets_its_verdict(store: Store, question: str, first: str) -> None:
    assert ask(question, store=store).answer.startswith(first)


@pytest.mark.parametrize(
    "question",
    [
        "can a boned and rolled leg of lamb be pink",
        "blade-tenderised sirloin steak rare ok?",
        "is a tied veal roast ok pink?",
    ],
)
def test_what_was_rolled_or_needled_is_not_pink(store: Store, question: str) -> None:
    said = ask(question, store=store).answer
    assert said.startswith("No, not pink")
    assert "70 °C" in said
    assert "trade" not in said


def test_a_plain_steak_still_gets_the_word_of_the_trade(store: Store) -> None:
    assert "in the trade" in ask("is a rare rump steak ok", store=store).answer


@pytest.mark.parametrize(
    ("question", "hold"),
    [
        ("is chicken breast at 62 C ok if held there long enough?", "20 minutes"),
        ("pork core 57 C for 25 minutes ok?", "47 minutes"),
    ],
)
def test_a_low_reading_is_no_first_and_the_published_hold_second(
    store: Store, question: str, hold: str
) -> None:
    said = ask(question, store=store).answer
    assert said.startswith("No")
    assert hold in said
    assert "not the core" in said


@pytest.mark.parametrize(
    "question",
    ["raw mince beef how many days", "lamb, minced, raw: fridge?", "ground raw pork in the fridge how long"],
)
def test_minced_in_any_order_of_words_keeps_one_day(store: Store, question: str) -> None:
    assert "1 day in the fridge" in ask(question, store=store).answer


def test_beef_beside_ground_pepper_is_not_minced(store: Store) -> None:
    assert "3 days" in ask("beef, ground pepper: how long does it keep in the fridge", store=store).answer


def test_the_figure_names_what_it_is_of(store: Store) -> None:
    assert ask("internal temperature of a potato casserole", store=store).answer.startswith(
        "Potato casserole: 74 °C"
    )


def test_safe_is_not_yet_tender(store: Store) -> None:
    said = ask("brisket reads 64 C inside, can I shred it now", store=store).answer
    assert "90-96 °C" in said


def test_a_core_that_is_held_is_no_food_kept_hot(store: Store) -> None:
    assert ask("turkey core held at 64 C, ok?", store=store).answer.startswith("No")


def test_the_word_for_rolling_is_said_once(store: Store) -> None:
    assert "Rolled rolled" not in ask("is rolled lamb shoulder ok pink", store=store).answer
