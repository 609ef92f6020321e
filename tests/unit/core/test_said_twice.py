"""What is told of the food, of a probe and of lessons, as often as cooks tell it."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.core.actions import Outcome, Say
from bot.core.conversation import step
from bot.core.events import TextReceived
from bot.core.state import Chat
from knowledge import open_knowledge
from tests.unit.core.kitchen import NOW

KNOWLEDGE = open_knowledge()


def after(*texts: str) -> Outcome:
    """The answer to the last text; a minute goes by before each."""
    outcome = Outcome(state=Chat(chat_id="1"), actions=())
    for minute, text in enumerate(texts):
        now = NOW + timedelta(minutes=minute)
        outcome = step(outcome.state, TextReceived(text=text), now, KNOWLEDGE)
    return outcome


def said(outcome: Outcome) -> str:
    return "\n".join(action.text for action in outcome.actions if isinstance(action, Say))


DINNER = "5 salmon fillets, fennel, new potatoes for 4"


def test_food_told_to_be_in_twice_ends_nothing() -> None:
    once = after(DINNER, "start", "potatoes are in")
    twice = after(DINNER, "start", "potatoes are in", "the potatoes are in", "potatoes in")
    assert once.state.cook is not None
    assert twice.state.cook is not None
    assert "already" in said(twice)
    assert [s.status for s in twice.state.cook.steps] == [s.status for s in once.state.cook.steps]


def test_food_that_is_not_in_the_plan_starts_no_cook() -> None:
    outcome = after(DINNER, "the leeks are in")
    assert outcome.state.cook is None
    assert "leek" in said(outcome)


@pytest.mark.parametrize("text", ["salmon 52", "salmon: 52", "the salmon is 52", "52"])
def test_a_food_and_a_number_are_a_probe_reading_while_it_cooks(text: str) -> None:
    outcome = after(DINNER, "start", "the salmon is in", text)
    assert outcome.state.offer is None  # no new plan for 52 salmon
    assert "52 °C" in said(outcome)


def test_words_that_nobody_knows_leave_the_plan_and_are_repeated() -> None:
    before = after(DINNER)
    outcome = after(DINNER, "blorp wuzzle florn")
    assert outcome.state.offer == before.state.offer
    assert "“blorp wuzzle florn”" in said(outcome)


@pytest.mark.parametrize(
    "text", ["what have I taught you?", "list the foods I taught you", "what did you learn"]
)
def test_lessons_are_listed(text: str) -> None:
    assert "zorple cooks like turnip" in said(after("zorple is like turnip", text))


@pytest.mark.parametrize("text", ["forget zorple", "please forget about zorple", "Unlearn “zorple”."])
def test_lessons_are_forgotten(text: str) -> None:
    outcome = after("zorple is like turnip", text)
    assert outcome.state.profile.taught == ()
