"""What a setting keeps, takes back and says."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from bot.core import settings
from bot.core.actions import Say
from bot.core.conversation import step
from bot.core.events import TextReceived
from bot.core.replies import talk
from bot.core.state import Chat, Profile
from knowledge import Knowledge
from knowledge.foods.store import open_store
from knowledge.text.model import Context


@pytest.fixture(scope="module")
def knowledge() -> Knowledge:
    return Knowledge(open_store())


def said(profile: Profile, text: str, knowledge: Knowledge) -> tuple[Profile, str]:
    reading = knowledge.read(text, context=Context(), now=datetime(2026, 1, 1, 18, tzinfo=UTC))
    return settings.apply(profile, reading, knowledge)


def test_an_allergy_bars_the_allergen_and_is_said_back(knowledge: Knowledge) -> None:
    profile, text = said(Profile(), "I'm allergic to sesame", knowledge)
    assert profile.diets == ("no sesame",)  # so tahini and halva stay out as well
    assert text == "Noted: no sesame."
    assert profile.eaters is None


def test_a_diet_can_be_lifted_again(knowledge: Knowledge) -> None:
    profile, _ = said(Profile(), "I'm vegetarian", knowledge)
    profile, _ = said(profile, "allergic to nuts", knowledge)
    profile, text = said(profile, "forget vegetarian", knowledge)
    assert profile.diets == ("no nuts",)
    assert "vegetarian" in text
    profile, _ = said(profile, "I can eat nuts again", knowledge)
    assert profile.diets == ()


@pytest.mark.parametrize("text", ["forget that I'm vegetarian", "I'm not vegetarian any more"])
def test_a_diet_is_lifted_however_it_is_said(knowledge: Knowledge, text: str) -> None:
    profile, _ = said(Profile(diets=("vegetarian",)), text, knowledge)
    assert profile.diets == ()


def test_everything_kept_is_forgotten_only_after_a_yes(knowledge: Knowledge) -> None:
    now = datetime(2026, 1, 1, 18, tzinfo=UTC)
    chat = Chat(chat_id="1", profile=Profile(diets=("no nuts",), eaters=4.0))
    asked = step(chat, TextReceived(text="clear my settings"), now, knowledge)
    assert asked.state.profile == chat.profile
    assert step(asked.state, TextReceived(text="no"), now, knowledge).state.profile == chat.profile
    assert step(asked.state, TextReceived(text="yes"), now, knowledge).state.profile == Profile()


def test_an_oven_that_is_back_brings_the_sheet_pan_back(knowledge: Knowledge) -> None:
    profile, _ = said(Profile(), "I have no oven", knowledge)
    assert all(v.id != "sheet pan" for v in profile.kitchen.vessels)
    profile, text = said(profile, "I have an oven", knowledge)
    assert any(v.id == "sheet pan" for v in profile.kitchen.vessels)
    assert "sheet pan" in text


def test_a_town_asks_for_its_height(knowledge: Knowledge) -> None:
    profile, text = said(Profile(), "I live in Denver", knowledge)
    assert profile == Profile()
    assert "1600 m" in text


def test_what_the_sheet_is_like_is_kept_and_shown(knowledge: Knowledge) -> None:
    profile, text = said(Profile(), "my sheet pan is black", knowledge)
    assert profile.kitchen.sheet == "dark"
    assert "a dark sheet" in text
    assert "a dark sheet" in talk.profile(profile)


def test_the_size_of_the_pot_is_kept(knowledge: Knowledge) -> None:
    profile, _ = said(Profile(), "my pot is 3 litres", knowledge)
    assert next(v.size for v in profile.kitchen.vessels if v.id == "lidded pot") == "3 l"


def test_an_allergy_said_with_a_dinner_is_said_back(knowledge: Knowledge) -> None:
    text = "salmon, rice, sesame seeds, my daughter can't have sesame"
    said = step(Chat(chat_id="1"), TextReceived(text=text), datetime(2026, 1, 1, 18, tzinfo=UTC), knowledge)
    first = next(a.text for a in said.actions if isinstance(a, Say))
    assert first.startswith("Noted for tonight: no sesame; left out: sesame seeds. Packets differ")
