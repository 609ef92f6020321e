"""Foods that season: how many, what is in them, when they go in, against published lists."""

from __future__ import annotations

import pytest

from knowledge.foods.model import Role, When
from knowledge.foods.store import Store

# The US nine (FALCPA, FASTER Act) and the EU fourteen (Regulation 1169/2011, annex II).
ALLERGENS = {
    "soy sauce": {"wheat", "gluten", "soybeans"},
    "ghee": {"milk"},
    "butter": {"milk"},
    "fish sauce": {"fish"},
    "worcestershire sauce": {"fish"},
    "shrimp paste": {"crustaceans"},
    "dried shrimp": {"crustaceans"},
    "oyster sauce": {"molluscs"},
    "tahini": {"sesame"},
    "sesame oil": {"sesame"},
    "hummus": {"sesame"},
    "za'atar": {"sesame"},
    "dukkah": {"sesame", "tree nuts"},
    "pesto": {"milk", "tree nuts"},
    "almond": {"tree nuts"},
    "cashew": {"tree nuts"},
    "walnut": {"tree nuts"},
    "hazelnut": {"tree nuts"},
    "pecan": {"tree nuts"},
    "pistachio": {"tree nuts"},
    "macadamia": {"tree nuts"},
    "brazil nut": {"tree nuts"},
    "peanut": {"peanuts"},
    "peanut butter": {"peanuts"},
    "satay sauce": {"peanuts"},
    "mayonnaise": {"eggs"},
    "mustard": {"mustard"},
    "mustard seed": {"mustard"},
    "mustard oil": {"mustard"},
    "curry powder": {"mustard"},
    "celery salt": {"celery"},
    "celery seed": {"celery"},
    "stock cube": {"celery"},
    "red wine": {"sulphites"},
    "white wine": {"sulphites"},
    "flour": {"wheat", "gluten"},
    "breadcrumbs": {"wheat", "gluten"},
    "miso": {"soybeans"},
    "tamari": {"soybeans"},
    "heavy cream": {"milk"},
    "yogurt": {"milk"},
    "parmesan": {"milk"},
    "feta": {"milk"},
    "beer": {"gluten"},
    "black vinegar": {"gluten"},
    "hoisin sauce": {"soybeans"},
    "gochujang": {"soybeans"},
    "suya spice": {"peanuts"},
    "asafoetida": {"wheat"},
    "curry paste": {"crustaceans"},
    "dashi": {"fish"},
    "fish stock": {"fish"},
}


@pytest.mark.parametrize("name", ALLERGENS)
def test_allergens_of_the_published_lists_are_named(store: Store, name: str) -> None:
    food = store.named(name)
    assert food is not None
    assert ALLERGENS[name] <= food.allergens


def seasonings(store: Store) -> list[str]:
    return [food.id for food in store.foods() if food.role is not Role.COOK]


def test_there_are_enough_of_them(store: Store) -> None:
    assert len(seasonings(store)) >= 250


def test_each_group_carries_its_allergen(store: Store) -> None:
    plant = {"dairy-free"}
    for food in store.foods():
        if food.group in ("dairy", "cheese") and food.group not in plant:
            assert "milk" in food.allergens, food.id
        if food.group == "nut" and food.id not in ("peanut", "coconut"):
            assert "tree nuts" in food.allergens, food.id


def test_each_seasoning_says_when_it_goes_in_and_what_it_does(store: Store) -> None:
    silent = [
        food.id
        for food in store.foods()
        if food.role is Role.SEASON and (food.when is None or not food.does or not food.part)
    ]
    assert silent == []


def test_each_can_be_measured_by_the_spoon(store: Store) -> None:
    for food in store.foods():
        if food.role is Role.SEASON and food.group != "fruit":
            assert {"tbsp", "tsp"} <= {portion.unit for portion in food.portions}, food.id


# Smoke points, °C, low and high end of an encyclopaedia table of cooking oils; tables differ by 30 °C.
SMOKE = {
    "avocado oil": (270, 270),
    "beef tallow": (250, 250),
    "butter": (150, 150),
    "ghee": (250, 250),
    "canola oil": (190, 232),
    "coconut oil": (177, 204),
    "corn oil": (178, 238),
    "grapeseed oil": (216, 216),
    "lard": (190, 190),
    "mustard oil": (250, 250),
    "olive oil": (190, 243),
    "peanut oil": (160, 232),
    "rice bran oil": (232, 232),
    "sesame oil": (177, 232),
    "soybean oil": (234, 234),
    "sunflower oil": (107, 254),
    "vegetable oil": (220, 220),
}


@pytest.mark.parametrize("fat", SMOKE)
def test_smoke_points_lie_in_the_published_range(store: Store, fat: str) -> None:
    food = store.named(fat)
    assert food is not None
    assert food.smoke_degC is not None
    assert SMOKE[fat][0] <= food.smoke_degC <= SMOKE[fat][1]


# Sodium in mg/100 g, USDA SR28, from memory; salt is 2.54 times sodium. Within a third: makers differ.
SODIUM_MG = {"soy sauce": 5493, "fish sauce": 7851, "feta": 1116, "cheddar": 653, "miso": 3728, "caper": 2348}


@pytest.mark.parametrize("name", SODIUM_MG)
def test_salt_agrees_with_published_sodium(store: Store, name: str) -> None:
    food = store.named(name)
    assert food is not None
    assert food.salt_g == pytest.approx(SODIUM_MG[name] * 2.54 / 1000, rel=0.34)


# Water, g/100 g, USDA National Nutrient Database SR27.
WATER = {
    "butter": 15.87,
    "cheddar": 37.1,
    "feta": 55.22,
    "cream cheese": 54.44,
    "parmesan": 29.16,
    "heavy cream": 57.71,
    "honey": 17.1,
    "maple syrup": 32.39,
    "almond": 4.41,
}


@pytest.mark.parametrize("name", WATER)
def test_water_agrees_with_usda(store: Store, name: str) -> None:
    food = store.named(name)
    assert food is not None
    assert food.composition is not None
    assert food.composition.water_g == pytest.approx(WATER[name], abs=3)


# The same food by another region's name: common usage, no source.
NAMES = {
    "hing": "asafoetida",
    "jeera": "cumin",
    "haldi": "turmeric",
    "dhania": "cilantro",
    "fresh coriander": "cilantro",
    "double cream": "heavy cream",
    "crema": "sour cream",
    "cornflour": "cornstarch",
    "passata": "tomato puree",
    "rapeseed oil": "canola oil",
    "groundnut oil": "peanut oil",
    "red oil": "palm oil",
    "iru": "locust bean",
    "achiote": "annatto",
    "besan": "chickpea flour",
    "nam pla": "fish sauce",
    "belacan": "shrimp paste",
    "icing sugar": "powdered sugar",
    "bicarbonate of soda": "baking soda",
    "kecap manis": "sweet soy sauce",
    "houmous": "hummus",
    "gur": "jaggery",
    "pimenton": "smoked paprika",
    "evoo": "olive oil",
}


@pytest.mark.parametrize("name", NAMES)
def test_names_of_other_kitchens_are_known(store: Store, name: str) -> None:
    food = store.named(name)
    assert food is not None
    assert food.name == NAMES[name]


def when_of(name: str, store: Store) -> When:
    """When a dish takes the seasoning of this name."""
    food = store.named(name)
    assert food is not None, name
    assert food.when is not None, name
    return food.when


def test_tender_herbs_go_in_at_the_end_and_woody_ones_early(store: Store) -> None:
    # common practice, no source
    for name in ("basil", "parsley", "cilantro", "mint", "dill", "chive"):
        assert when_of(name, store) in (When.END, When.TABLE), name
    for name in ("thyme", "rosemary", "bay leaf"):
        assert when_of(name, store) in (When.START, When.AROMATICS, When.LIQUID), name
