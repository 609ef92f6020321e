"""Any question: no verdict below a minimum, nothing raises, nothing is made up."""

from __future__ import annotations

import re

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.answers import ask
from knowledge.foods.store import Store, open_store
from knowledge.planner.model import Kitchen

POULTRY = ("chicken", "turkey breast", "chicken thighs", "duck", "ground turkey", "chicken burger")
MEAT = ("pork chops", "steak", "lamb leg", "beef roast")
MINCED = ("ground beef", "lamb mince", "burger", "meatballs", "sausages", "meatloaf")
STORE = open_store()
MIXTURE = (
    "how long is safe chicken 155f 9**9 rice in fridge cups ml gram of 1/0 -5c 99999 mm cut with salmon"
    " for 4 people instead butter gas mark 12 boil at 99999 m freezer days old 0 vegan \U0001f357"
)
WAYS_TO_ASK = ("is {} safe at {}", "{1} {0} ok?", "{} reads {}, can i eat it", "can we eat {} at {}")


def said(pattern: str, food: str, temperature: str) -> str:
    return pattern.format(food, temperature)


@pytest.mark.parametrize("pattern", WAYS_TO_ASK)
@pytest.mark.parametrize(
    ("foods", "minimum_F"),
    [(POULTRY, 165), (MINCED, 160), (MEAT, 145)],  # USDA FSIS safe minimum internal temperature chart
    ids=["poultry", "minced", "whole"],
)
def test_a_temperature_below_the_usda_minimum_is_never_called_enough(
    store: Store, foods: tuple[str, ...], minimum_F: int, pattern: str
) -> None:
    for food in foods:
        for degF in (100, 120, minimum_F - 10, minimum_F - 3):
            for reading in (f"{degF}F", f"{(degF - 32) / 1.8:.0f}C"):
                answer = ask(said(pattern, food, reading), store=store).answer
                assert not answer.startswith("Yes"), (food, reading, answer)


@pytest.mark.parametrize("food", [*POULTRY, *MINCED, *MEAT])
def test_a_temperature_well_above_the_minimum_is_enough(store: Store, food: str) -> None:
    assert ask(f"is {food} safe at 170F", store=store).answer.startswith("Yes")


@pytest.mark.parametrize("setting", ["200c", "400f", "180 celsius"])
def test_an_oven_setting_is_no_core_temperature(store: Store, setting: str) -> None:
    answer = ask(f"chicken breast at {setting} how long", store=store)
    assert answer.known
    assert "enough" not in answer.answer
    assert re.search(r"\d+-\d+ min", answer.answer)


@pytest.mark.parametrize(
    "question",
    [
        "i found mushrooms in the forest, how long to fry",
        "cooked rice was out all night, is it fine",
        "the tin of beans is bulging but smells fine",
        "can i slow cook dried kidney beans from raw",
        "is it ok to eat raw cassava",
        "how do i deep fry in my pressure cooker",
        "my soup sat on the counter overnight",
        "can i thaw the turkey on the counter",
        "can i give my baby rare steak",
    ],
)
def test_dangers_are_named_with_their_authority(store: Store, question: str) -> None:
    answer = ask(question, store=store)
    assert answer.known
    assert answer.sources
    assert re.search(r"(?i)\bno\b|\bnot\b|never|don't|throw it away", answer.answer)


def test_the_same_question_in_other_words_gets_the_same_rule(store: Store) -> None:
    ways = (
        "can you reheat rice",
        "is it ok to warm up leftover rice",
        "reheating yesterday's rice in the pan?",
    )
    assert len({ask(text, store=store).answer for text in ways}) == 1


def test_the_kitchen_s_altitude_is_used(store: Store) -> None:
    low = ask("what temperature does water boil at", store=store)
    high = ask("what temperature does water boil at", store=store, kitchen=Kitchen(altitude_m=2500.0))
    assert "100.0" in low.answer
    found = re.search(r"boils at ([\d.]+)", high.answer)
    assert found
    assert float(found[1]) == pytest.approx(91.64, abs=0.15)  # IAPWS-IF97 at the ICAO pressure of 2500 m


def test_a_larger_piece_takes_longer(store: Store) -> None:
    def longest(size: str) -> int:
        found = re.findall(r"-(\d+) min", ask(f"how long to boil {size} potato cubes", store=store).answer)
        return max(map(int, found))

    assert longest("1 cm") < longest("3 cm") < longest("6 cm")


def test_a_cut_to_match_lies_within_a_kitchen_s_sizes(store: Store) -> None:
    answer = ask("how small should i cut carrots to go with salmon", store=store)
    size = re.search(r"into (\d+) mm", answer.answer)
    assert size
    assert 5 <= int(size[1]) <= 60


def test_a_swap_for_an_allergy_leaves_the_allergen_out(store: Store) -> None:
    assert "tamari" in ask("gluten free replacement for soy sauce", store=store).answer
    dairy = ask("dairy free alternative to butter", store=store).answer
    assert "ghee" not in dairy
    assert "olive oil" in dairy


ALLERGIC = [
    ("satay", "peanut"), ("peanut butter", "nut"), ("pesto", "nut"), ("tahini", "sesame"), ("ghee", "dairy"),
    ("soy sauce", "gluten"), ("couscous", "wheat"), ("oyster sauce", "shellfish"), ("miso", "soy"),
    ("fish sauce", "fish"), ("mayonnaise", "egg"), ("stock cube", "celery"), ("curry powder", "mustard"),
]  # fmt: skip
WAYS_TO_ASK_FOR_SOMEONE = (
    "is {0} ok with a {1} allergy",
    "my kid has a {1} allergy, can she eat {0}",
    "allergic to {1}, is {0} safe?",
    "my son is allergic to {1} can he have {0}",
)


@pytest.mark.parametrize("pattern", WAYS_TO_ASK_FOR_SOMEONE)
@pytest.mark.parametrize(("food", "allergen"), ALLERGIC)
def test_a_food_is_never_called_fit_for_who_is_allergic_to_it(
    store: Store, food: str, allergen: str, pattern: str
) -> None:
    answer = ask(pattern.format(food, allergen), store=store).answer
    assert not re.match(r"Yes|Not surely", answer), answer


def test_an_unknown_food_is_not_guessed(store: Store) -> None:
    answer = ask("how long should i cook flonkroot", store=store)
    assert not answer.known
    assert "I don't know" in answer.answer


@settings(max_examples=200, deadline=None)
@given(st.text(max_size=300))
def test_any_text_gets_an_answer(text: str) -> None:
    answer = ask(text, store=STORE)
    assert answer.answer
    assert answer.known or not answer.sources


@settings(max_examples=150, deadline=None)
@given(
    st.lists(
        st.sampled_from(MIXTURE.split()),
        max_size=12,
    )
)
def test_any_mixture_of_kitchen_words_gets_an_answer(words: list[str]) -> None:
    assert ask(" ".join(words), store=STORE).answer


@pytest.mark.parametrize(
    ("said", "enough"),  # USDA FSIS minima: 165, 145 and 160 °F, printed as 73.9, 62.8 and 71.1 °C
    [
        ("chicken safe at 73.5 C", False),
        ("chicken safe at 164.5 F", False),
        ("chicken safe at 165 F", True),
        ("chicken safe at 74 C", True),
        ("pork chop done at 62.4 C", False),
        ("pork chop done at 63 C", True),
        ("ground beef ok at 70.9 C", False),
        ("ground beef ok at 159.5 F", False),
        ("ground beef ok at 71 C", True),
    ],
)
def test_a_reading_short_of_a_minimum_is_never_rounded_up_to_it(
    store: Store, said: str, enough: bool
) -> None:
    assert ask(f"is {said}?", store=store).answer.startswith("Yes" if enough else "No")
