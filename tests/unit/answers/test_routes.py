"""Ordinary kitchen questions that another card once took: pans, tins, prices, cuts, cobs, cold dough."""

from __future__ import annotations

import re

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store


@pytest.mark.parametrize(
    ("text", "must", "never"),
    [
        # common practice throughout, no source, where none is named
        ("crepes: stainless or non stick pan?", "Non-stick is the easy one", "cleaning"),
        ("rhubarb compote, cast iron pot or stainless", "stainless steel, enamel or glass", "cleaning"),
        ("stains on my oven door, how do i get them off", "not cleaning or repairs", ""),
        ("what size cake tin for a 2 egg victoria sandwich", "15 cm / 6 in", "saute pan"),
        ("is a water bath necessary for a baked custard", "gentle", "outside my four vessels"),
        ("kitchen is chilly, my pizza dough has hardly risen", "^Wait, the cold slows it", ""),
        ("loaf barely moved in two hours, its 14 degrees in here", "foams within 10 minutes", ""),
        ("what does firm ball mean", "118-120 °C", "not hot enough"),
        ("two jacket spuds in the microwave, how many mins", "two 8-12", "don't know"),
        ("1 inch lamb cutlets seared already, minutes in the oven?", "4-7 minutes.*63 °C", "Computed"),
        ("which cut of pork for a slow braise", "^Shoulder", "cubes"),
        ("what beef for quick fajitas", "flank, skirt", "don't know"),
        ("which joint of lamb for sunday lunch, roasting", "lamb: leg", "don't know"),
        ("best part of goat for curry", "neck and shank", "cubes"),
        ("cauliflower stalks, do i throw them away", "as good as the rest", ""),
        ("how many tsp is a clove of garlic minced", "about 1 tsp", "flat of a knife"),
        # storage: UK FSA on cooked rice; USDA FSIS on the freezer
        ("made jambalaya last night, how many days does it keep", "within 1 day|no longer than 1 day", ""),
        ("how long do frozen prawns and other seafood stay good", "3-6", "cooked from frozen"),
        ("how long can i keep samosas in the fridge", "2 days", "don't know"),
        # the rice of sushi drinks its own measure (1.1-1.2 by volume), half a cup dry a head
        ("sushi night for 6 people, how much rice do i need", "6 people 3 cups", "2 cups of water"),
        ("how much water for 300 g sushi rice", "390 ml", "a head"),
    ],
)
def test_a_kitchen_question_gets_its_own_card(store: Store, text: str, must: str, never: str) -> None:
    said = ask(text, store=store).answer
    assert re.search(must, said), said
    assert not (never and re.search(never, said)), said


@pytest.mark.parametrize(
    "text",
    [
        "how much is a kilo of yam in the market",
        "what does a pound of cheddar cost",
        "price of palm oil per litre today",
        "how much are eggs at the supermarket",
    ],
)
def test_prices_are_not_known(store: Store, text: str) -> None:
    said = ask(text, store=store)
    assert not said.known
    assert said.answer == "I know nothing of prices."


def test_a_serving_of_what_the_market_sells_is_no_price(store: Store) -> None:
    assert "price" not in ask("how much rice from the market for 6 people", store=store).answer


@pytest.mark.parametrize(
    ("text", "must", "never"),
    [
        ("honey is finished, i have golden syrup and sugar. which one do i use?", "^Instead of honey", "pan"),
        ("yogurt has run out, got sour cream and milk, which should i put in the marinade", "of yogurt", ""),
        ("recipe wants 3 tins of chickpeas, how much does one cup of dried ones make", "240 g", "3 inch"),
        ("area of an 8 inch round tin", "324 cm²", "240 g"),  # pi / 4 of 20.3 cm squared
        ("how long must i boil ears of corn", "48 mm", "as it is"),
        ("is a us tablespoon 20 ml", "^No: 1 tablespoon is 14.8", "40"),
        ("is an aussie tablespoon 20 ml", "^Yes: 1 Australian tablespoon is 20", ""),  # NIST; AU metric
        ("1 aus tablespoon against uk tablespoon, same thing?", "20 ml.*15 ml; they differ", ""),
        # made with rennet of the stomach of calves or lambs, by their rules (common practice)
        ("is pecorino ok for vegetarians", "^No: pecorino is made with animal rennet", "^Yes"),
        ("can a vegetarian have cottage cheese", "^(?!No)", "rennet;"),
        ("sheet pan or pot for carrots", "sheet pan: .*lidded pot: ", "saute pan"),
        ("tray or lidded pot for pasta", "[Rr]ather a lidded pot", "saute pan"),
        ("how many cups do 2 large onions make chopped", "about 1.9 cups", ""),  # USDA: 150 g; 160 g a cup
        ("how many cups in a carrot, diced", "about 0.5 cups", ""),  # USDA: 61 g; 128 g a cup
        ("pieces of lamb for the pilaf, what internal temp is done", "63 °C", "Cut lamb"),
        ("jasmine rice in the instant pot, how many minutes", "3-5 minutes", "boiled"),
        ("onions still pale after half an hour, i want them caramelised", "40-60 minutes", ""),
        ("can raw prawns and rice cook together in one pot", "^Yes.*cooked through", "I do not plan"),
        ("my radishes went bendy, any way back", "cold water", "oven"),
    ],
)
def test_a_question_is_not_taken_for_another(store: Store, text: str, must: str, never: str) -> None:
    said = ask(text, store=store).answer
    assert re.search(must, said), said
    assert not (never and re.search(never, said)), said


def test_raw_chicken_is_still_not_eaten(store: Store) -> None:
    assert not ask("can i eat raw chicken together with rice", store=store).answer.startswith("Yes")


def test_a_question_is_answered_though_something_is_hung_on_it(store: Store) -> None:
    said = ask("how long do hard boiled eggs keep because my aunt's parrot sings", store=store).answer
    assert "week" in said


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("substitute for buttermilk, no dairy", "lemon juice or vinegar"),
        ("mascarpone without dairy, what instead", "silken tofu"),
        ("instead of evaporated milk for a milk allergy", "coconut milk"),
        ("noodles replacement for a coeliac", "labelled free of gluten: .*rice noodle"),
    ],
)
def test_something_is_left_to_swap_for_what_many_cannot_have(store: Store, text: str, must: str) -> None:
    said = ask(text, store=store).answer
    assert re.search(must, said), said
    assert "leave it out" not in said


def test_bread_is_done_by_its_sound_and_meat_beside_it_is_not(store: Store) -> None:
    assert "93-96 °C" in ask("how can i tell a loaf is ready", store=store).answer
    assert "hollow" not in ask("how do i know the pork is done, served in rolls", store=store).answer


def test_which_one_alone_is_not_answered_with_a_card(store: Store) -> None:
    assert not ask("which one would be the best?", store=store).known


def test_a_lemon_is_measured_by_its_juice(store: Store) -> None:
    assert "cut up" not in ask("how many tbsp are in a lemon", store=store).answer


@pytest.mark.parametrize("food", ["samosas", "empanadas", "a burrito", "khachapuri"])
def test_a_filled_pastry_is_no_safer_at_room_temperature(store: Store, food: str) -> None:
    said = ask(f"how long does {food} last at room temperature", store=store).answer
    assert "Not over 2 hours" in said, said  # USDA FSIS
