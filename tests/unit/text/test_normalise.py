"""The plain form of messages and the look-up form of names."""

from __future__ import annotations

import pytest

from knowledge.text.normalise import flatten, key


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("Za'atar", "zaatar"),
        ("Black-eyed peas", "black eyed pea"),
        ("crème fraîche", "creme fraiche"),
        ("Jalapeños", "jalapeno"),
        ("goat’s cheese", "goat cheese"),
        ("octopus", "octopus"),
        ("couscous", "couscous"),
        ("radishes", "radish"),
        ("mangoes", "mango"),
        ("bay leaves", "bay leaf"),
        ("olives", "olive"),
        ("swiss chard", "swiss chard"),
    ],
)
def test_names_meet_in_one_singular_key(name: str, expected: str) -> None:
    assert key(name) == expected


def test_fractions_and_signs_become_plain_text() -> None:
    assert flatten("1½ lb").text.split() == ["1", "1/2", "lb"]
    assert flatten("2×400 g").text == "2x400 g"
    assert flatten("pot w/ lid").text == "pot with  lid"


def test_food_emoji_are_words_and_repeats_are_counts() -> None:
    assert flatten("🌽🌽🌽", {"🌽": "corn"}).text.split() == ["3", "corn"]


def test_the_cooks_own_words_come_back() -> None:
    flat = flatten("Two Jalapeños, please")
    start = flat.text.index("jal")
    assert flat.said(start, start + len("jalapenos")) == "Jalapeños"


def test_no_letter_of_right_to_left_marks_or_surrogates_is_left() -> None:
    assert flatten("\u202ecarrots\u202c \ud83d").text.strip() == "carrots"
