"""Which foods a diet bars. The lists are common practice but for the allergens (EU 1169/2011, US FALCPA)."""

from __future__ import annotations

import pytest

from knowledge.diets import barred_by, bars, clash
from knowledge.foods.store import Store

BARRED = {
    "vegetarian": "chicken thigh, salmon, shrimp, lard, fish sauce, chicken stock, gelatin, dashi",
    "vegan": "egg, butter, honey, parmesan, milk, beef, ghee, mayonnaise",
    "pescatarian": "beef, bacon, chicken breast, lard",
    "halal": "bacon, ham, red wine, lard, pork chop, mirin, beer",
    "kosher": "pork chop, shrimp, mussel, squid, catfish, bacon",
    "jain": "onion, garlic, potato, carrot, egg, chicken breast, honey, mushroom, ginger, beet",
    "no meat": "beef, lamb leg, chicken breast, bacon, duck leg",
    "no beef": "beef, ground beef, steak, beef stock",
    "no pork": "bacon, ham, chorizo, pork chop, lard",
    "no shellfish": "shrimp, mussel, squid, oyster sauce, shrimp paste",
    "no dairy": "milk, butter, ghee, feta, heavy cream, pesto",
    "no gluten": "pasta, couscous, soy sauce, flour, barley, bulgur, breadcrumbs",
    "no nuts": "almond, peanut, pesto, cashew, peanut butter",
    "no sesame": "tahini, sesame oil, hummus",
    "no soy": "tofu, soy sauce, miso",
    "no celery": "celery, celery root, stock cube",
    "no mustard": "mustard, mustard seed",
    "no eggs": "egg, mayonnaise",
    "no fish": "salmon, fish sauce, worcestershire sauce",
    "no alcohol": "red wine, beer, mirin",
    "low salt": "soy sauce, fish sauce, stock cube, miso, bacon",
    "low carb": "rice, pasta, potato",
    "not spicy": "cayenne, gochujang, harissa, jalapeno",
    "no duck": "duck leg, duck breast",
    "no potato": "potato, french fry, potato wedge",
    "no nightshade": "potato, tomato, eggplant, bell pepper, paprika, ketchup, jalapeno, salsa",
}
ALLOWED = {
    "vegetarian": "egg, milk, tofu, carrot, honey",
    "vegan": "tofu, coconut milk, lentil, olive oil, tahini",
    "pescatarian": "salmon, shrimp, egg",
    "halal": "beef, chicken thigh, cider vinegar",
    "kosher": "salmon, beef, chicken thigh",
    "jain": "milk, cabbage, lentil, tomato, ghee, artichoke, plantain, kohlrabi",
    "no potato": "sweet potato, yam",
    "no nightshade": "sweet potato, black pepper, sichuan pepper, yam",
    "no dairy": "coconut milk, peanut butter, egg",
    "no gluten": "rice, tamari, potato, cornstarch, corn tortilla",
    "no nuts": "coconut milk, butternut squash, nutmeg, sunflower seed",
    "no fish": "shrimp, beef",
    "no pork": "beef, turkey breast",
    "low salt": "carrot, chicken breast, olive oil",
    "low carb": "broccoli, chicken breast, garlic",
    "not spicy": "black pepper, paprika, ginger",
}


def pairs(table: dict[str, str]) -> list[tuple[str, str]]:
    return [(diet, name) for diet, names in table.items() for name in names.split(", ")]


@pytest.mark.parametrize(("diet", "name"), pairs(BARRED))
def test_barred(store: Store, diet: str, name: str) -> None:
    food = store.named(name)
    assert food is not None
    assert bars(food, diet)


@pytest.mark.parametrize(("diet", "name"), pairs(ALLOWED))
def test_allowed(store: Store, diet: str, name: str) -> None:
    food = store.named(name)
    assert food is not None
    assert not bars(food, diet)


def test_vegan_bars_all_that_vegetarian_bars(store: Store) -> None:
    for food in store.foods():
        if bars(food, "vegetarian"):
            assert bars(food, "vegan"), food.id


def test_an_allergen_rule_bars_every_food_that_names_the_allergen(store: Store) -> None:
    rules = {
        "no dairy": "milk",
        "no gluten": "gluten",
        "no nuts": "tree nuts",
        "no peanut": "peanuts",
        "no sesame": "sesame",
        "no soy": "soybeans",
        "no egg": "eggs",
        "no fish": "fish",
        "no celery": "celery",
        "no mustard": "mustard",
        "no lupin": "lupin",
        "no sulphite": "sulphites",
    }
    for food in store.foods():
        for diet, allergen in rules.items():
            if allergen in food.allergens:
                assert bars(food, diet), (food.id, diet)


def test_spelling_of_a_diet_does_not_matter(store: Store) -> None:
    butter = store.food("butter")
    assert barred_by(butter, ["No Dairy", "dairy-free", "no milk", "gluten free"]) == (
        "No Dairy",
        "dairy-free",
        "no milk",
    )


def test_kosher_keeps_meat_and_milk_apart(store: Store) -> None:
    meat, milk, fish = store.food("beef"), store.food("butter"), store.food("salmon")
    assert clash([meat, milk], "kosher")
    assert clash([fish, milk], "kosher") is None
    assert clash([meat, milk], "halal") is None
