"""How much of one thing to another: from the table, and scaled to what the question states."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

# Figures of common practice, and of the NCHFP for fermenting; scaled by hand.
ASKED = [
    ("4 kilos of white cabbage for kraut, salt?", ["80-100 g"]),
    ("what percent salt for sauerkraut", ["20-25 g", "2 %"]),
    ("salt for kimchi, 2.5 kg of napa cabbage, how much", ["50-75 g"]),
    ("idli batter, 2 cups urad dal, how much rice", ["6-8 cups"]),
    ("appam: rice to coconut", ["0.75-1 cup"]),
    ("amala powder to water", ["2-2.5 cups of water"]),
    ("rice to dal proportion for dosa", ["3-4 cups of rice"]),
    ("sadza: how many cups of water to 3 cups mealie meal", ["4.5-6 cups"]),
    ("how much water do I put for 2 cups of masa harina", ["1.25-1.5 cups"]),
    ("sushi rice vinegar for 600 g of rice", ["90-120 ml", "40-60 g of sugar"]),
    ("how much kombu for 3 litres of dashi", ["30-60 g"]),
    ("hydration for focaccia with 1 kg flour", ["750-800 ml"]),
    ("how many yolks for 1 litre of creme anglaise milk", ["8-12 egg yolks"]),
    ("how much flour and butter for bechamel with 750 ml milk", ["60-75 g of butter"]),
    ("5 eggs, how much flour for fresh pasta", ["500 g of flour"]),
    ("how much fresh yeast is 14 g of instant yeast", ["42 g of fresh yeast"]),
    ("cornstarch to thicken 3 cups of gravy", ["3 tbsp"]),
    ("greek coffee, how much coffee a cup", ["6-7 g"]),
    ("grams of coffee to a litre for french press", ["55-65 g"]),
]

# Named, but not asked how much of it goes in.
OTHERWISE = [
    "how long does kimchi keep in the fridge",
    "is dosa gluten free",
    "can I leave idli batter out to ferment overnight",
    "how much sauerkraut for 5 people",
    "can i use polenta to make tortillas",
    "how many people does 1 kg of polenta feed",
    "how hot is the oil for tempura",
    "how much time does jam need",
]


@pytest.mark.parametrize(("text", "must"), ASKED)
def test_amounts_follow_what_is_stated(store: Store, text: str, must: list[str]) -> None:
    answer = ask(text, store=store)
    assert answer.known
    for fact in must:
        assert fact in answer.answer


@pytest.mark.parametrize("text", OTHERWISE)
def test_a_preparation_that_is_only_named_gets_no_amounts(store: Store, text: str) -> None:
    answer = ask(text, store=store).answer
    assert " for 1 " not in answer
    assert not answer.startswith("For 1 kg")


def test_kilos_are_not_people(store: Store) -> None:
    assert "300-375 g of salt" in ask("sauerkraut from 15 kilos of cabbage, salt?", store=store).answer


def test_an_amount_of_a_part_with_a_range_gives_a_range(store: Store) -> None:
    assert "1-1.3 cups of urad dal" in ask("4 cups rice for dosa, how much urad dal", store=store).answer


@pytest.mark.parametrize(
    ("text", "must"),
    [
        ("instant yeast 10 g, how much fresh yeast is that", "30 g of fresh yeast"),
        ("fresh yeast 50 g, how much dry", "17 g of instant yeast"),
        ("8 leaf gelatine in powder, how many grams", "14-16 g of powder"),
    ],
)
def test_an_amount_belongs_to_what_stands_before_it(store: Store, text: str, must: str) -> None:
    assert must in ask(text, store=store).answer
