"""Foods whose name begins with another food: puddings, and what is shaped of one animal's mince."""

from __future__ import annotations

import pytest

from knowledge.foods.store import Store
from knowledge.text import read


@pytest.mark.parametrize(
    ("said", "head"),
    [
        ("raspberry cheesecake", "cheesecake"),
        ("coffee ice cream", "ice cream"),
        ("almond croissants", "croissant"),
        ("carrot cake", "cake"),
        ("banana bread", "banana bread"),
    ],
)
def test_a_pudding_is_not_the_fruit_in_its_name(store: Store, said: str, head: str) -> None:
    """It has no figures of its own, so it is told back and nothing of it is cooked."""
    found = read(f"haddock, {said}, leeks", store=store).items
    assert [(i.name, i.food_id is None) for i in found] == [
        ("haddock", False),
        (head, True),
        ("leek", False),
    ]
    assert found[1].phrase == said


@pytest.mark.parametrize("text", ["leeks cake", "apples, cake", "apples and a cake", "carrots for a cake"])
def test_a_food_beside_a_pudding_stays_a_food(store: Store, text: str) -> None:
    assert read(f"haddock, {text}", store=store).items[1].food_id is not None


@pytest.mark.parametrize(
    ("text", "food_id", "qty"),
    [
        ("12 venison meatballs, swede", "venison-meatball", 12.0),
        ("3 pork burgers, cabbage", "pork-burger", 3.0),
        ("chicken kofta, rice", "chicken-meatball", None),
        ("turkey patties, corn", "turkey-burger", None),
    ],
)
def test_the_animal_before_a_shape_says_what_it_is_made_of(
    store: Store, text: str, food_id: str, qty: float | None
) -> None:
    found = read(text, store=store).items
    assert len(found) == 2
    assert found[0].food_id == food_id
    assert found[0].qty == qty


def test_shapes_of_poultry_have_the_minimum_of_poultry(store: Store) -> None:
    """USDA FSIS, Safe Minimum Internal Temperature Chart: ground poultry 74 °C, other mince 71 °C."""
    assert {store.food(f"{a}-{s}").safety for a in ("chicken", "turkey") for s in ("meatball", "burger")} == {
        "poultry"
    }
    assert store.food("lamb-burger").safety == "ground_meat"
