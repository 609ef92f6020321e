"""The conversation before anything is on the heat."""

from __future__ import annotations

from datetime import timedelta

import pytest

from bot.core.actions import Remind
from bot.core.events import ButtonPressed, OddMessage
from bot.core.questions import DATA_MAX_BYTES
from bot.core.state import from_json, to_json
from tests.unit.core.kitchen import NOW, START, after, says, send, tap, text_of


def test_a_list_of_foods_gets_a_plan_at_once_with_its_buttons() -> None:
    outcome = send(START, "chicken carrot")
    (say,) = says(outcome)
    assert say.text.splitlines()[0].startswith("Sheet pan (half sheet), for 2: about 55 min")
    assert "Put the carrot in." in say.text
    assert "• Poultry to 74 °C (FSIS)." in say.text
    assert [b.label for row in say.buttons for b in row] == ["Start", "Another way", "Why", "Change"]
    assert outcome.state.offer is not None


def test_an_allergy_that_comes_with_a_dinner_is_said_back() -> None:
    assert text_of(send(START, "chicken pea, no nuts")).startswith("Noted for tonight: no nuts.")


def test_a_deadline_is_answered_with_times_of_day() -> None:
    text = text_of(send(START, "chicken carrot by 18:30"))
    # The plan takes 55 min: 18:30 less 55 min.
    assert "Start by 17:35 to eat at 18:30." in text
    assert "18:30  Serve." in text


def test_a_deadline_that_cannot_be_met_says_by_how_much() -> None:
    text = text_of(send(START, "chicken carrot by 18:30", NOW.replace(hour=17, minute=45)))
    assert "10 min after 18:30" in text


def test_an_amendment_changes_the_plan_and_undo_goes_back() -> None:
    planned = after("chicken carrot", "also leek")
    assert planned.offer is not None
    assert [i.food for i in planned.offer.items] == ["chicken", "carrot", "leek"]
    back = send(planned, "undo")
    assert back.state.offer is not None
    assert [i.food for i in back.state.offer.items] == ["chicken", "carrot"]
    assert text_of(send(START, "undo")) == "There is no earlier plan to go back to."


def test_a_swap_is_offered_and_taken_by_button_or_word() -> None:
    asked = send(after("chicken carrot"), "parsnip for carrot")
    assert "Yes, cut to 10 mm dice." in text_of(asked)
    for taken in (tap(asked, "Yes, change it"), send(asked.state, "yes")):
        assert taken.state.offer is not None
        assert [i.food for i in taken.state.offer.items] == ["chicken", "parsnip"]
    kept = tap(asked, "No, keep mine")
    assert kept.state.offer == asked.state.offer
    assert "Kept" in text_of(kept)


def test_a_proposal_is_answered_by_naming_the_food() -> None:
    """What would come in is a yes, what would go is a no; any other food is neither."""
    asked = send(after("chicken carrot"), "parsnip for carrot")
    taken = send(asked.state, "parsnip")
    assert taken.state.offer is not None
    assert [i.food for i in taken.state.offer.items] == ["chicken", "parsnip"]
    kept = send(asked.state, "carrot")
    assert kept.state.offer == asked.state.offer
    assert "Kept" in text_of(kept)
    another = send(asked.state, "chicken potato leek")
    assert another.state.offer is not None
    assert [i.food for i in another.state.offer.items] == ["chicken", "potato", "leek"]


def test_one_food_alone_joins_the_plan_and_a_list_is_another_dinner() -> None:
    planned = after("chicken carrot")
    joined = send(planned, "leek")
    assert joined.state.offer is not None
    assert [i.food for i in joined.state.offer.items] == ["chicken", "carrot", "leek"]
    assert text_of(joined).startswith("With leek as well.")
    back = send(joined.state, "undo").state.offer
    assert back is not None
    assert [i.food for i in back.items] == ["chicken", "carrot"]
    assert send(planned, "carrot").state.offer == planned.offer
    later = send(planned, "leek", NOW + timedelta(hours=3)).state.offer
    assert later is not None
    assert [i.food for i in later.items] == ["leek"]


def test_a_second_tap_on_an_answered_question_changes_nothing() -> None:
    asked = send(after("chicken carrot"), "parsnip for carrot")
    data = says(asked)[0].buttons[0][0].data
    once = send(asked.state, ButtonPressed(data=data))
    twice = send(once.state, ButtonPressed(data=data))
    assert twice.state == once.state
    assert "earlier" in text_of(twice)


def test_a_swap_to_an_unknown_food_says_so() -> None:
    planned = after("chicken carrot")
    outcome = send(planned, "oca for carrot")
    assert "“oca”" in text_of(outcome)
    assert outcome.state == planned


def test_an_unknown_food_is_asked_about_and_the_rest_planned() -> None:
    outcome = send(START, "chicken oca")
    (say,) = says(outcome)
    assert "I don't know “oca”" in say.text
    assert outcome.state.offer is not None
    assert say.text.count("?") == 1


def test_an_unknown_food_is_taught_in_two_taps_and_kept() -> None:
    asked = send(START, "chicken oca")
    root = tap(asked, "Root")
    taught = tap(root, "Carrot")
    assert taught.state.profile.taught == (("oca", "carrot"),)
    assert taught.state.offer is not None
    assert [i.food for i in taught.state.offer.items] == ["chicken", "carrot"]
    assert "oca cooks like carrot" in text_of(send(taught.state, "settings"))
    again = send(taught.state, "oca")
    assert "I don't know" not in text_of(again)


def test_an_unknown_food_is_taught_in_words() -> None:
    taught = send(after("chicken oca"), "like parsnip")
    assert taught.state.profile.taught == (("oca", "parsnip"),)


def test_a_refusal_gives_reasons_and_offers_the_nearest() -> None:
    refused = send(after("i am vegetarian"), "chicken carrot")
    text = text_of(refused)
    assert "Chicken is not vegetarian." in text
    assert "The nearest that works:" in text
    assert refused.state.offer is not None
    assert [i.food for i in refused.state.offer.items] == ["carrot"]


def test_a_new_diet_plans_the_dinner_on_the_table_again() -> None:
    outcome = send(after("chicken carrot"), "i am vegetarian")
    assert outcome.state.offer is not None
    assert [i.food for i in outcome.state.offer.items] == ["carrot"]
    assert text_of(outcome).startswith("Noted: vegetarian.")


def test_another_way_lists_vessels_and_takes_one() -> None:
    outcome = send(after("chicken carrot"), "another way")
    assert "lidded pot" in text_of(outcome)
    pot = tap(outcome, "Lidded pot, 65 min")
    assert pot.state.offer is not None
    assert pot.state.offer.vessel == "lidded pot"


def test_a_button_of_an_earlier_plan_shows_the_present_one() -> None:
    first = send(START, "chicken carrot")
    second = send(first.state, "potato")
    old = tap(first, "Start")
    stale = send(second.state, ButtonPressed(data=says(first)[0].buttons[0][0].data))
    assert old.state.cook is not None
    assert stale.state == second.state
    assert "earlier plan" in text_of(stale)


def test_settings_are_confirmed_in_one_line_and_bad_ones_asked_back() -> None:
    us = send(START, "use ounces")
    assert us.state.profile.kitchen.units == "us"
    assert len(text_of(us).splitlines()) == 1
    hot = send(START, "oven to 900")
    assert hot.state == START
    assert "between 150 °C and 320 °C" in text_of(hot)
    assert "can't keep that" in text_of(send(START, "ring a bell"))


@pytest.mark.parametrize(
    "words",
    [
        "",
        "   ",
        "🙂🙂🙂",
        "asdf qwer",
        "x" * 5000,
        "/nonsense",
        "you idiot",
        "hello",
        "thanks",
        "help",
        "how hot",
    ],
)
@pytest.mark.parametrize("mode", ["idle", "planned", "cooking"])
def test_anything_else_gets_one_kind_message_and_loses_nothing(words: str, mode: str) -> None:
    state = {"idle": START, "planned": after("chicken carrot"), "cooking": after("chicken carrot", "start")}[
        mode
    ]
    outcome = send(state, words)
    assert len(says(outcome)) == 1
    assert 0 < len(text_of(outcome)) < 800
    assert outcome.state == state


@pytest.mark.parametrize("kind", ["photo", "voice", "sticker", "video_note"])
def test_odd_messages_get_one_sentence(kind: str) -> None:
    outcome = send(START, OddMessage(kind=kind))
    assert len(says(outcome)) == 1
    assert outcome.state == START


@pytest.mark.parametrize(
    "data", ["", "p:1", "p:x:start", "z:1:2:3", "c:9:done:1", "q:9:yes:", "p:9:start:", "p:1:fly:", "x" * 70]
)
def test_a_button_from_nowhere_changes_nothing(data: str) -> None:
    for state in (START, after("chicken carrot"), after("chicken carrot", "start")):
        outcome = send(state, ButtonPressed(data=data))
        assert outcome.state == state
        assert len(says(outcome)) == 1


def test_telegram_start_greets_and_start_with_a_plan_begins() -> None:
    assert "Text me what is in the fridge" in text_of(send(START, "/start"))
    assert send(after("chicken carrot"), "/start@thebot").state.cook is not None
    assert "no plan" in text_of(send(START, "start"))


def test_the_plan_command_takes_a_list() -> None:
    assert send(START, "/plan chicken carrot").state.offer is not None


def test_button_data_fit_the_tightest_transport() -> None:
    for words in ("chicken carrot oca", "another way"):
        for say in says(send(after("chicken carrot"), words)):
            assert all(len(b.data.encode()) <= DATA_MAX_BYTES for row in say.buttons for b in row)


def test_state_survives_json_in_every_mode() -> None:
    for words in (
        ("chicken oca",),
        ("chicken carrot", "parsnip for carrot"),
        ("chicken carrot", "start", "stop"),
    ):
        state = after(*words)
        assert from_json(to_json(state)) == state


def test_planning_sets_no_reminders() -> None:
    outcome = send(START, "chicken carrot")
    assert not [a for a in outcome.actions if isinstance(a, Remind)]


def test_a_changed_plan_does_not_say_the_same_cautions_again() -> None:
    first = send(START, "chicken carrot")
    again = text_of(send(first.state, "make it 6"))
    assert "Poultry to 74 °C" not in again
    assert "The other safety lines above still hold." in again
