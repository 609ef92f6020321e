"""The words that the answers listen for, and the times that are said in words."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from knowledge import answers
from knowledge.answers.cooking.ways import WAYS
from knowledge.answers.heat.minimums import SAID_FIRST, said_minimum
from knowledge.answers.reading.ages import age_days
from knowledge.answers.reading.heard import hears, meanings, pattern
from knowledge.answers.reading.hours import hours_said
from knowledge.answers.reading.question import question_of
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen

CODE = "".join(path.read_text("utf-8") for path in Path(next(iter(answers.__path__))).rglob("*.py"))


def test_every_topic_is_listened_for(store: Store) -> None:
    topics = {row["topic"] for row in store.table("heard")}
    unheard = {topic for topic in topics if f'"{topic}"' not in CODE and f"{{{topic}}}" not in CODE}
    assert not unheard


def test_every_topic_listened_for_has_words(store: Store) -> None:
    asked = set(re.findall(r'(?:hears|meant)\(question, "([^"]+)"\)', CODE))
    assert asked
    for topic in asked:
        assert meanings(store, topic)


@pytest.mark.parametrize(("topic", "order"), [("has a minimum", SAID_FIRST), ("way of cooking", WAYS)])
def test_each_meaning_has_its_turn(store: Store, topic: str, order: tuple[str, ...]) -> None:
    assert set(order) == set(meanings(store, topic))


def test_a_dish_counts_before_what_is_in_it(store: Store) -> None:
    assert "165 °F" in answers.ask("what temp for a tuna and egg casserole inside", store=store).answer
    assert "165 °F" in answers.ask("internal temp of turkey mince patties", store=store).answer


def test_a_topic_that_has_no_words_is_a_slip_of_the_code(store: Store) -> None:
    question = question_of("soup", store=store, kitchen=Kitchen())
    with pytest.raises(KeyError, match="no such topic"):
        hears(question, "no such topic")


def test_the_words_of_a_topic_stand_in_a_grammar(store: Store) -> None:
    found = pattern(store, " in the {vehicle} ").search(" ham in the lunch box all day ")
    assert found is not None


def test_of_two_minima_the_dish_counts_first_wherever_its_row_sorts(store: Store) -> None:
    question = question_of("middle of a frittata casserole, how hot", store=store, kitchen=Kitchen())
    assert said_minimum(question) == "leftover"  # the hotter of the two minima


@pytest.mark.parametrize(
    ("text", "hours"),
    [
        ("trifle on the table for a couple of hours", 2.0),
        ("quiche on the side for one and a half hours", 1.5),
        ("prawns out from 11 am till 2 pm", 3.0),
        ("ham out since 10 am its 1 pm now", 3.0),
        ("stew out for 45 minutes", 0.75),
        ("tuna salad in the fridge", None),
    ],
)
def test_hours_said_in_words_or_by_the_clock(store: Store, text: str, hours: float | None) -> None:
    assert hours_said(question_of(text, store=store, kitchen=Kitchen())) == hours


@pytest.mark.parametrize(
    ("text", "days"),
    [
        ("is ham from a few days ago fine", 3.0),
        ("ham opened two weeks ago", 14.0),
        ("soup made on monday and now its thursday", 3.0),
        ("cooked rice on day 4 ", 4.0),
    ],
)
def test_days_said_in_words_or_by_the_weekday(store: Store, text: str, days: float) -> None:
    assert age_days(question_of(text, store=store, kitchen=Kitchen())) == days
