"""A direction of flavour: asked for, offered as buttons, kept with the plan, and never against a diet."""

from __future__ import annotations

import pytest

from bot.core.conversation import step
from bot.core.events import ButtonPressed, TextReceived
from bot.core.state import Chat
from knowledge import Knowledge
from knowledge.foods.store import Store
from tests.unit.core.kitchen import NOW, says, text_of

FRIDGE = "4 chicken legs, 3 turnips, 2 leeks, for 3"


@pytest.fixture
def known(store: Store) -> Knowledge:
    return Knowledge(store)


def planned(known: Knowledge, text: str = FRIDGE) -> Chat:
    return step(Chat(chat_id="t"), TextReceived(text=text), NOW, known).state


@pytest.mark.parametrize(
    "text",
    [
        "any flavour ideas?",
        "which spices should I use",
        "how could we make it less bland",
        "what goes with this?",
    ],
)
def test_directions_are_offered_and_one_tap_takes_one(known: Knowledge, text: str) -> None:
    state = planned(known)
    asked = step(state, TextReceived(text=text), NOW, known)
    rows = says(asked)[0].buttons
    assert len(rows) == 3
    taken = step(asked.state, ButtonPressed(data=rows[1][0].data), NOW, known)
    offer, before = taken.state.offer, state.offer
    assert offer is not None
    assert before is not None
    assert offer.flavour.startswith(rows[1][0].label)
    assert offer.steps == before.steps
    assert text_of(taken).startswith(rows[1][0].label)


def test_a_direction_is_asked_for_by_its_people(known: Knowledge) -> None:
    state = step(planned(known), TextReceived(text="can you make it Moroccan?"), NOW, known).state
    assert state.offer is not None
    assert state.offer.flavour.startswith("Warm North African: ")
    more = step(state, TextReceived(text="for 4"), NOW, known).state.offer  # it stays for what follows
    assert more is not None
    assert more.flavour.startswith("Warm North African: ")


def test_it_comes_with_the_foods_too_and_not_when_it_is_not_wanted(known: Knowledge) -> None:
    wanted = planned(known, f"{FRIDGE}, something japanese")
    assert wanted.offer is not None
    assert wanted.offer.flavour.startswith("Miso and sesame: ")
    unwanted = planned(known, f"{FRIDGE}, nothing japanese please")
    assert unwanted.offer is not None
    assert "iso and sesame" not in unwanted.offer.flavour
    sold = planned(known, "italian sausages, potatoes, greek yogurt, for 2")  # names of foods
    assert sold.offer is not None
    assert sold.offer.request.flavours == ()


def test_what_the_eaters_must_not_have_is_not_in_it(known: Knowledge) -> None:
    state = planned(known, "chickpeas, eggplant, sweet potato, for 2, vegan, sesame allergy")
    offer = step(state, TextReceived(text="make it lebanese"), NOW, known).state.offer
    assert offer is not None
    assert offer.flavour.startswith("Eastern Mediterranean: ")
    assert "tahini" not in offer.flavour


def test_one_more_food_may_be_asked_for(known: Knowledge) -> None:
    state = step(planned(known), TextReceived(text="could I add some peas?"), NOW, known).state
    assert state.offer is not None
    assert "pea" in {item.food_id for item in state.offer.items}
    asked = step(planned(known), TextReceived(text="can I add water to hot oil?"), NOW, known)
    assert asked.state.offer == planned(known).offer


def test_a_question_that_says_nothing_of_the_plan_is_not_answered_by_it(known: Knowledge) -> None:
    said = text_of(step(planned(known), TextReceived(text="what should I serve with it"), NOW, known))
    assert "stays as it is" not in said


def test_a_direction_adds_no_wine_to_a_tray_and_no_second_sharp_thing(known: Knowledge) -> None:
    tray = planned(known, "trout fillets, asparagus, baby potatoes, for 2, make it greek").offer
    assert tray is not None
    assert tray.vessel == "sheet pan"
    assert "wine" not in tray.flavour
    sharp = planned(known, "trout fillets, asparagus, baby potatoes, a lemon, for 2, make it greek").offer
    assert sharp is not None
    assert not any(word in sharp.flavour.partition(":")[2] for word in ("lemon", "wine"))
