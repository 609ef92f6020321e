"""The heat around a food against the heat inside it, and rest that makes up for nothing (USDA FSIS)."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "core"),
    [
        ("is an oven at 85C all right for duck legs", "74 °C / 165 °F"),
        ("goose overnight at 190F in the oven?", "74 °C / 165 °F"),
        ("thermostat set to 170F for a turkey breast, fine?", "74 °C / 165 °F"),
        ("veal roast at 68C for 9 hours ok", "63 °C / 145 °F"),
        ("meatloaf in a low oven at 95C, safe?", "71 °C / 160 °F"),
        ("trout baked at 75C ok?", "63 °C / 145 °F"),
        ("smoke chicken drumsticks in the smoker at 165F", "74 °C / 165 °F"),
        ("pork belly in a water bath at 58C for 12 hours", "63 °C / 145 °F"),
        ("quail cooked in the oven at 88C for 4 hours, safe?", "74 °C / 165 °F"),
        ("keep the oven at 80C for a raw guinea fowl, fine?", "74 °C / 165 °F"),
        ("slow cooker keeps 62C, are the turkey legs all right", "74 °C / 165 °F"),
        ("duck low and slow at 82C right?", "74 °C / 165 °F"),
        ("air fryer turkey burgers at 165F fine?", "74 °C / 165 °F"),
    ],
)
def test_the_heat_around_it_is_never_taken_for_the_core(store: Store, text: str, core: str) -> None:
    answer = ask(text, store=store).answer
    assert re.match("No: .*not the inside", answer), answer
    assert core in answer


def test_an_oven_for_meat_is_at_least_what_fsis_asks(store: Store) -> None:
    assert "163 °C / 325 °F or more" in ask("can i bake chicken legs in the oven at 130C", store=store).answer
    for text in ("can i bake chicken legs in the oven at 200C", "is 160C fan ok for a roast duck"):
        assert not ask(text, store=store).answer.startswith(("No", "Yes"))


def test_a_smoker_or_cooker_within_its_range_gets_no_plain_yes(store: Store) -> None:
    for text in ("brisket in the smoker at 240F ok", "slow cooker at 200F for thighs of chicken, safe?"):
        answer = ask(text, store=store).answer
        assert re.search("not the inside", answer), answer
        assert not answer.startswith(("Yes", "No"))


@pytest.mark.parametrize(
    ("text", "lead"),
    [
        ("the duck came out of the oven at 76C, safe?", "Yes, 76"),
        ("probe in the turkey thigh reads 68C, oven at 190C", "No, not yet: 68"),
        ("lamb chops 64C inside ok", "Yes, 64"),
        ("keep the cooked wings in the oven at 50C?", "No: 50 °C"),
        ("raw duck left at 27C for 4 hours", "No: throw it away"),
    ],
)
def test_a_core_and_food_kept_hot_stay_what_they_are(store: Store, text: str, lead: str) -> None:
    assert ask(text, store=store).answer.startswith(lead), ask(text, store=store).answer


@pytest.mark.parametrize(
    "text",
    [
        "take the goose off at 152F and let it rest",
        "quail at 66C, rest ten minutes, ok?",
        "turkey mince at 68C then resting, fine?",
        "pull the capon at 158F, carryover does it?",
        "beef patties off the heat at 145F, rested",
        "leg of lamb 52C and then rest, safe?",
        "carryover takes a turkey from 158 to 166, fine?",
    ],
)
def test_no_rest_makes_up_for_a_core_below_its_minimum(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert re.match("No: .*below the safe minimum", answer), answer


def test_how_long_to_rest_is_still_told(store: Store) -> None:
    assert "at least 3 minutes" in ask("how long must a leg of lamb rest", store=store).answer


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("how long for a lamb shoulder at 230", "110 °C / 230 °F"),
        ("beef chuck at 260F how many hours", "127 °C / 260 °F"),
        ("goat shoulder 2 kg at 120C, how long", "120 °C / 250 °F"),
    ],
)
def test_tough_meat_low_and_slow_is_timed_in_the_oven(store: Store, text: str, said: str) -> None:
    answer = ask(text, store=store).answer
    assert said in answer, answer
    assert " h (" in answer
    assert "163 °C / 325 °F" in answer


def test_a_warm_setting_cooks_nothing(store: Store) -> None:
    for text in (
        "can i cook raw duck on the warm setting of my multicooker",
        "slow cooker on warm to cook pork",
    ):
        answer = ask(text, store=store).answer
        assert answer.startswith("No: a warm setting"), answer
    assert "60 °C / 140 °F" in ask("how hot must cooked pork be on the warm setting", store=store).answer


def test_a_question_for_the_oven_is_not_answered_with_the_core_alone(store: Store) -> None:
    answer = ask("how hot should my oven be for a goose", store=store).answer
    assert "Never below 163 °C / 325 °F" in answer, answer


def test_low_and_slow_without_a_number_is_timed_at_the_usual_heat(store: Store) -> None:
    assert " h (" in ask("spare ribs oven low and slow", store=store).answer
