"""The real reader answers the open question "change the plan?" in the words that cooks use."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.core.actions import Say
from bot.core.conversation import step
from bot.core.events import TextReceived
from bot.core.state import Chat
from knowledge import open_knowledge
from tests.unit.core.kitchen import NOW

KNOWLEDGE = open_knowledge()


def chat(*texts: str) -> Chat:
    state = Chat(chat_id="1")
    for minute, text in enumerate(texts):
        state = step(state, TextReceived(text=text), NOW + timedelta(minutes=minute), KNOWLEDGE).state
    return state


def foods(state: Chat) -> set[str]:
    plan = state.cook.plan if state.cook is not None else state.offer
    assert plan is not None
    return {item.food_id for item in plan.items}


FIRST = (
    "5 pork chops, a turnip, kale and leeks for 4 in the pot",
    "would kohlrabi do instead of the turnip?",
)


@pytest.mark.parametrize(
    "answer",
    [
        "ok use kohlrabi",
        "kohlrabi then",
        "yes, kohlrabi please",
        "great, do it",
        "do that",
        "sure, swap them",
        "lets do kohlrabi",
    ],
)
@pytest.mark.parametrize("cooking", [False, True])
def test_yes_in_other_words(answer: str, cooking: bool) -> None:
    texts = (FIRST[0], "start", FIRST[1]) if cooking else FIRST
    asked = chat(*texts)
    assert asked.pending is not None
    outcome = step(asked, TextReceived(text=answer), NOW + timedelta(minutes=3), KNOWLEDGE)
    assert "kohlrabi" in foods(outcome.state)
    assert "turnip" not in foods(outcome.state)
    assert {"kale", "leek"} <= foods(outcome.state)
    assert (outcome.state.cook is not None) == cooking


@pytest.mark.parametrize(
    "answer", ["no keep the turnip", "stick with turnip please", "turnip", "nope", "hmm no"]
)
def test_no_in_other_words(answer: str) -> None:
    asked = chat(*FIRST)
    kept = step(asked, TextReceived(text=answer), NOW + timedelta(minutes=3), KNOWLEDGE).state
    assert kept.offer == asked.offer
    assert kept.pending is None


def test_why_not_another_vessel_compares_and_offers_it() -> None:
    planned = chat("5 pork chops, a turnip, kale and leeks for 4 in the pot")
    asked = step(planned, TextReceived(text="why not the saute pan?"), NOW + timedelta(minutes=1), KNOWLEDGE)
    (say,) = asked.actions
    assert isinstance(say, Say)
    assert "saute pan would do it too: about" in say.text
    assert asked.state.offer == planned.offer
    taken = step(asked.state, TextReceived(text="yes"), NOW + timedelta(minutes=2), KNOWLEDGE).state
    assert taken.offer is not None
    assert taken.offer.vessel == "saute pan"


def test_why_alone_gives_the_reasons() -> None:
    planned = chat("5 pork chops, a turnip, kale and leeks for 4 in the pot")
    told = step(planned, TextReceived(text="why"), NOW + timedelta(minutes=1), KNOWLEDGE)
    assert told.state == planned


@pytest.mark.parametrize("words", ["the lid wont open", "pressure hasnt come up yet"])
def test_a_lid_that_holds_pressure_is_never_forced(words: str) -> None:
    cooking = chat("oxtail 1 kg, leeks, barley for 4, in the pressure cooker", "start")
    assert cooking.cook is not None
    told = step(cooking, TextReceived(text=words), NOW + timedelta(minutes=50), KNOWLEDGE)
    said = " ".join(a.text for a in told.actions if isinstance(a, Say))
    assert "never force it" in said


def test_another_hour_is_planned_backwards_from() -> None:
    planned = chat("5 pork chops, a turnip, kale and leeks for 4 in the pot")
    told = step(planned, TextReceived(text="9 pm instead"), NOW + timedelta(minutes=1), KNOWLEDGE)
    (say,) = told.actions
    assert isinstance(say, Say)
    assert "to eat at 21:00" in say.text


def test_a_lesson_about_nothing_asks_what_it_is_about() -> None:
    planned = chat("5 pork chops, a turnip, kale and leeks for 4 in the pot")
    told = step(planned, TextReceived(text="it's a root, like parsnip"), NOW, KNOWLEDGE)
    (say,) = told.actions
    assert isinstance(say, Say)
    assert say.text.startswith("Which food is like parsnip?")
    assert told.state.profile.taught == ()
