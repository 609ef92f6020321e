"""Sums of a recipe: so much per so much for what is there, shares and multiples."""

from __future__ import annotations

import pytest

from knowledge.answers import ask
from knowledge.foods.store import Store

SUMS = [
    ("3 oz of rub per 4 lb of brisket, my brisket is 12 lb", ["9 ounces (255 g)"]),
    ("6 kg of ribs. The rub says 1 oz per 2 lb. how many g?", ["188 grams"]),
    ("8 g of salt to each kg, and there are 4.5 kg of lamb", ["36 grams"]),
    ("2 tbsp per litre, I have 7 litres of water", ["14 tablespoons"]),
    ("recipe takes 4 eggs for 300 g of flour, how many eggs for 750 g", ["10 eggs"]),
    ("1.5 kg of dough needs 30 g salt, how much for 4 kg", ["80 grams"]),
    ("3% salt for 4 kg of cabbage", ["120 g of salt"]),
    ("65 percent hydration on 800 g flour", ["520 g of water"]),
    ("5% brine with 3 litres water how much salt", ["150 g of salt"]),
    ("15% of 1.2 kg", ["180 g"]),
    ("half of 1 1/2 cups", ["0.75 cups", "12 tablespoons"]),
    ("triple 3/4 tsp", ["2.25 teaspoons"]),
    ("2.5 times 2/3 cup", ["1.67 cups"]),
]

NO_SUM = [
    "mince with 20% fat, 500 g, how long to fry",
    "paracetamol 15 ml per 10 kg, my child is 12 kg",
    "cure no 1 is 2.5 g per kg, I have 4 kg of pork belly",
    "200 g of rice for 2 people",
    "cook 20 minutes per lb for 5 lb of beef",
    "1% salt for 2 kg cabbage sauerkraut",  # a danger, answered as such
    "70% chocolate, 200 g, how do I melt it",
]


@pytest.mark.parametrize(("text", "must"), SUMS)
def test_amounts_are_reckoned_for_what_is_there(store: Store, text: str, must: list[str]) -> None:
    answer = ask(text, store=store)
    assert answer.known
    for fact in must:
        assert fact in answer.answer


@pytest.mark.parametrize("text", NO_SUM)
def test_other_numbers_are_no_sum(store: Store, text: str) -> None:
    assert ask(text, store=store).sources != ("arithmetic",)
