"""A wish about the plan on the table plans again and says what changed, or that nothing does.

With the real planner: what a wish does to a dinner is its business.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest

from bot.core.conversation import step
from bot.core.events import TextReceived
from bot.core.state import Chat, Profile
from knowledge import Knowledge
from knowledge.foods.store import Store
from knowledge.planner.model import Plan
from tests.unit.core.kitchen import text_of

NOW = datetime(2026, 2, 3, 17, 0, tzinfo=UTC)
FRIDGE = "5 chicken drumsticks, 500 g potatoes, 2 parsnips, 2 red onions, for 3"


@pytest.fixture(scope="module")
def knowledge(store: Store) -> Knowledge:
    return Knowledge(store=store)


def talked(knowledge: Knowledge, *texts: str) -> tuple[Plan, str]:
    """The plan on the table after these messages, and the last reply."""
    chat, said = Chat(chat_id="t", profile=Profile(utc_offset_min=0)), ""
    for n, text in enumerate(texts):
        now = NOW + timedelta(seconds=20.0 * n)
        outcome = step(chat, TextReceived(text=text), now, knowledge)
        chat, said = outcome.state, text_of(outcome)
    assert chat.offer is not None
    return chat.offer, said


def test_faster_is_faster_and_says_by_how_much(knowledge: Knowledge) -> None:
    fridge = "4 pork chops, potatoes, half a cabbage, for 3"
    before, _ = talked(knowledge, fridge)
    after, said = talked(knowledge, fridge, "faster")
    assert after.total_s < before.total_s - 120.0
    assert said.startswith("Changed: ")
    assert " shorter" in said.splitlines()[0]


def test_less_chopping_is_less_work(knowledge: Knowledge) -> None:
    before, _ = talked(knowledge, FRIDGE, "more sauce")
    after, said = talked(knowledge, FRIDGE, "more sauce", "less chopping")
    assert after.hands_on_s <= before.hands_on_s
    assert said.startswith(("Changed: ", "The plan stays as it is."))


def test_the_later_of_two_rival_wishes_holds(knowledge: Knowledge) -> None:
    wet, said = talked(knowledge, FRIDGE, "crisper please", "more sauce")
    assert "now in the" in said.splitlines()[0]
    assert wet.settings.method in ("braise", "saute-simmer", "sealed")
    dry, _ = talked(knowledge, FRIDGE, "more sauce", "crisper please")
    assert dry.settings.method in ("roast", "roast-broil")


def test_use_the_oven_is_an_oven(knowledge: Knowledge) -> None:
    made, _ = talked(knowledge, FRIDGE, "on the hob", "use the oven")
    assert made.settings.oven_degC is not None


def test_a_wish_that_changes_nothing_says_so(knowledge: Knowledge) -> None:
    made, said = talked(knowledge, FRIDGE, "not a stew")
    assert said == "The plan stays as it is."
    assert "not stew" in made.request.wishes


def test_why_gives_the_reasons(knowledge: Knowledge) -> None:
    made, said = talked(knowledge, FRIDGE, "why")
    assert "The time is set by the" in said
    assert all(item.label in said for item in made.items)


def test_several_foods_are_swapped_in_one_message(knowledge: Knowledge) -> None:
    made, said = talked(knowledge, FRIDGE, "swap the parsnips for carrots and the onions for leeks", "yes")
    assert {"carrot", "leek"} <= {item.food_id for item in made.items}
    assert not {"parsnip", "red-onion"} & {item.food_id for item in made.items}
    assert "leeks" in said


def test_a_lesson_about_a_known_food_says_that_it_is_known(knowledge: Knowledge) -> None:
    chat = Chat(chat_id="t")
    known = text_of(step(chat, TextReceived(text="oca is a root, like parsnip"), NOW, knowledge))
    assert known.startswith("I know oca already")
    new = text_of(step(chat, TextReceived(text="skirret is a root, like parsnip"), NOW, knowledge))
    assert "“skirret” cooks like parsnip" in new
