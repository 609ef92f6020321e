"""Whether something has to go is answered so that nobody keeps it; several eaters are all answered."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    "text",
    [
        "do I have to bin the cooked prawns that stood out 5 hours",
        "must i throw away the lettuce? i cut it on the board after the raw turkey, only wiped it",
        "should we chuck the milk that was in the car for 6 hours",
    ],
)
def test_what_is_to_be_thrown_away_is_a_yes(store: Store, text: str) -> None:
    said = ask(text, store=store).answer
    assert said.startswith("Yes"), said
    assert "throw" in said


@pytest.mark.parametrize(
    "text", ["may we eat prawns that stood out 5 hours", "can i still use milk left out 6 hours"]
)
def test_asked_whether_it_may_be_eaten_it_is_a_no(store: Store, text: str) -> None:
    assert ask(text, store=store).answer.startswith("No")


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("tree nut allergy at the table, coconut bars with hazelnut paste?", "No, not safe: hazelnut"),
        ("nut allergy, laksa with coconut and macadamias ok", "No, not safe: macadamia"),
        ("one of us is vegan, the other allergic to peanuts: peanut noodles ok?", "No, not safe: peanut"),
        ("egg and milk allergy, would sheep yogurt do", "No: the milk of goats, sheep"),
    ],
)  # fmt: skip
def test_no_food_named_beside_an_allergy_is_passed_over(store: Store, text: str, wanted: str) -> None:
    assert wanted in ask(text, store=store).answer


def test_coconut_alone_is_told_once(store: Store) -> None:
    said = ask("friend with a nut allergy, is coconut fine?", store=store).answer
    assert said.startswith("Not a plain yes or no.")


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("goose breast just out of the oven, says 64", "No, not yet: 64 °C"),
        ("pork loin from the oven 66 in the middle", "Yes, 66 °C"),
        ("is my turkey done? it has been in for ages", "Turkey: 74 °C"),
        ("are the pork chops done yet", "Pork chops: 63 °C"),
        ("curry in the fridge for 5 days, still good?", "No, I would not:"),
        ("soft boiled egg, how many minutes, straight from the fridge", "Boiled egg: soft"),
    ],
)  # fmt: skip
def test_one_word_does_not_lead_astray(store: Store, text: str, wanted: str) -> None:
    assert ask(text, store=store).answer.startswith(wanted)


def test_tins_said_to_be_sound_are_not_taken_for_blown(store: Store) -> None:
    said = ask("tins from 2021, no rust and no dents, are they ok?", store=store).answer
    assert "botulism" not in said
    assert "botulism" in ask("tin with a deep dent, is it ok?", store=store).answer
