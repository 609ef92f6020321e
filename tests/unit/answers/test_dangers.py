"""What can hurt is answered as the authorities say, in whatever words it is asked."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

# USDA FSIS: 2 hours at room temperature, 1 hour above 32 °C / 90 °F. UK FSA: rice within 1 hour.
TOO_LONG = [
    "left cooked chicken out 3 hours can i reheat it",
    "cooked chicken out 3 hours in a cold kitchen ok?",
    "the lasagne has been on the side for five hours, reheat?",
    "rice out 90 minutes can i make fried rice",
    "prawn curry sat on the hob since 12 it is now 4, warm it up?",
    "forgot the soup on the stove overnight, boil it again?",
    "chicken was in the turned off oven all night can i warm it",
    "pizza stood on the counter since lunch, can i reheat it now",
    "beef out for 2 and a half hours, fry it?",
    "potato salad out for 90 minutes at 35C, still eat it?",
    "can i reheat stew i left out for 4 hrs if i boil it",
]


@pytest.mark.parametrize("text", TOO_LONG)
def test_food_out_too_long_is_thrown_away_whatever_is_planned(store: Store, text: str) -> None:
    answer = ask(text, store=store)
    assert re.match("No", answer.answer), answer.answer
    assert re.search("(?i)throw it away", answer.answer)
    assert "USDA FSIS" in answer.answer


@pytest.mark.parametrize(
    "text", ["chicken left out 45 minutes can i reheat it", "soup out for 1 hour, still ok?"]
)
def test_food_out_for_less_is_compared_with_the_limit(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert "within the limit" in answer
    assert "74 °C" in answer


# Fire services: no ice or water into hot fat.
@pytest.mark.parametrize(
    "text",
    [
        "can i put frozen chips in hot oil full of ice",
        "is it safe to fry frozen chicken in oil",
        "can i deep fry straight from the freezer",
        "can i deep fry wet chicken",
        "frozen dumplings into hot fat ok?",
        "icy prawns in the deep fat fryer",
        "can i drop frozen samosas into the oil",
    ],
)
def test_ice_never_goes_into_hot_oil(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert answer.startswith("No")
    assert "boils over" in answer


@pytest.mark.parametrize("food", ["akara", "puff puff", "plantain", "samosas", "fish", "schnitzel"])
def test_oil_for_frying_is_given_its_heat_not_its_smoke_point(store: Store, food: str) -> None:
    answer = ask(f"how hot should the oil be for {food}", store=store).answer
    assert "175-190 °C" in answer
    assert not re.search(r"2[2-9]\d °C", answer)


# CDC: garlic, herbs and vegetables in oil, refrigerated, at most 4 days.
@pytest.mark.parametrize(
    "text",
    [
        "home made chilli oil with fresh garlic keep how long on shelf",
        "homemade chili garlic oil room temperature",
        "infused rosemary oil shelf life",
        "sun dried tomatoes in oil home made counter",
        "garlic confit how long keep",
        "how long does basil in oil last",
    ],
)
def test_what_lies_in_oil_is_kept_cold_and_short(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert "botulism" in answer
    assert "4 days" in answer


# NHS: signs of an allergic reaction; who should see a doctor with food poisoning.
@pytest.mark.parametrize(
    "text",
    [
        "my kid has a rash after peanut butter",
        "i feel sick after eating raw oysters",
        "my child ate a bit of raw chicken",
        "oysters yesterday, now vomiting",
        "my lips are tingling since i had prawns",
        "how much ibuprofen can i take",
        "she can't breathe after the satay",
        "i ate undercooked pork last night",
    ],
)
def test_symptoms_are_sent_to_a_doctor(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert re.search("doctor|medical help|emergency", answer)


# FDA Bad Bug Book: beans soaked, and never half cooked; double the time unsoaked: common practice.
@pytest.mark.parametrize("bean", ["black beans", "pinto beans", "cannellini beans", "chickpeas"])
def test_unsoaked_pulses_under_pressure_get_their_long_time(store: Store, bean: str) -> None:
    for text in (
        f"how long to pressure cook unsoaked {bean}",
        f"{bean} from dry in the pressure cooker time",
    ):
        answer = ask(text, store=store).answer
        assert re.search("(?i)soak", answer)
        assert min(map(int, re.findall(r"(\d+)-\d+,? ", answer.partition("Counted from")[2]))) >= 25


# USDA FSIS 60 °C / 140 °F; UK 63 °C.
def test_hot_food_is_held_at_the_published_temperature(store: Store) -> None:
    for text in ("temp to keep soup hot for a buffet", "how hot must the bain marie be",
                 "what temperature to keep cooked rice hot"):  # fmt: skip
        assert "60 °C / 140 °F" in ask(text, store=store).answer
    assert ask("keep food warm at 50c for 3 hours", store=store).answer.startswith("No")
    assert ask("chafing dish reads 150F is that hot enough", store=store).answer.startswith("Yes")


@pytest.mark.parametrize(
    "text",
    [
        "tin of beans is bulging",
        "tinned chickpeas, the can is bulging a bit, ok?",
        "can i eat kidney beans from a leaking tin",
        "swollen can of lentils drained, safe?",
    ],
)
def test_a_bulging_tin_is_never_called_cooked_already(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert "botulism" in answer
    assert not answer.startswith("Tinned")


def test_a_lost_fire_a_burn_and_a_cut_are_answered_first(store: Store) -> None:
    assert "20 minutes" in ask("i burned my hand on steam", store=store).answer
    assert "door shut" in ask("the oven is on fire", store=store).answer
    assert (
        "bleed" in ask("i cut my finger badly", store=store).answer
        or "Press" in ask("i cut my finger badly", store=store).answer
    )
    assert "NEVER water" in ask("is it safe to put ice on burning oil", store=store).answer
    assert "emergency" in ask("her eyes are swollen after eating crab", store=store).answer


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("substitute for porcini, i found some in the forest", "expert"),  # NHS: wild mushrooms
        ("can i freeze mushrooms i picked in the woods", "expert"),
        ("apricot kernels in a cake", "cyanide"),  # UK FSA, EFSA
        ("chicken is slimy can i rinse and cook it", "throw it away"),  # USDA FSIS
        ("can i carry a burning pan outside", "don't carry it"),  # fire services
        ("swap sugar for honey for a baby", "under one year"),  # CDC, NHS
    ],
)
def test_a_danger_outranks_whatever_else_is_asked(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer
