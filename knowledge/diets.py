"""Which foods a diet bars, from `data/diets.csv`.

A diet is a token of the reader: "vegetarian", "halal", "no dairy", "low salt" ... and
any other "no <group>". Each row of the table bars foods by one of their properties:

    animal, allergen, group    the food has it
    word                       the words stand in the food's name ("wine" bars "red wine")
    *_over_g                   100 g of the food hold more than so much
    any_animal                 the food is of animal origin at all
    same                       all that another diet bars
    except                     not this food, by id, although another row would: a sweet potato
                               is no nightshade, an artichoke no root

A diet without rows is read from its words: "no mango" bars what is called mango, "no
duck" what is of duck. A diet speaks of the food as it is usually sold; slaughter,
cross-contact and brands cannot be known here, and the answers say so.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache

from knowledge import tables
from knowledge.foods.model import Food, Role

# Words for one and the same rule; the table holds the one on the right.
ALIASES = {
    "no meats": "no meat",
    "no nut": "no nuts",
    "no milk": "no dairy",
    "no crustaceans": "no crustacean",
    "no molluscs": "no mollusc",
    "no mollusks": "no mollusc",
    "no shrimp": "no crustacean",
    "no prawn": "no crustacean",
    "no soya": "no soy",
    "no soybean": "no soy",
    "no sulfite": "no sulphite",
    "no bean": "no legume",
    "no pulse": "no legume",
    "no mutton": "no lamb",
    "gluten free": "no gluten",
    "dairy free": "no dairy",
    "nut free": "no nuts",
    "low sodium": "low salt",
    "no spice": "not spicy",
    "no chili": "not spicy",
    "plant based": "vegan",
}
MEAT = frozenset({"beef", "veal", "lamb", "goat", "venison", "poultry", "game", "meat"})


@lru_cache(maxsize=1)
def _table() -> dict[str, tuple[tuple[str, str], ...]]:
    rows: dict[str, list[tuple[str, str]]] = {}
    for row in tables.rows("diets"):
        rows.setdefault(row["diet"], []).append((row["by"], row["value"]))
    return {diet: tuple(rules) for diet, rules in rows.items()}


def known_diets() -> tuple[str, ...]:
    """The diets that have rules of their own, in order."""
    return tuple(sorted(_table()))


def bars(food: Food, diet: str) -> bool:
    """True if `diet` does not allow `food`; an unknown diet bars nothing but what bears its name."""
    token = _token(diet)
    rules = _table().get(token)
    if rules is not None and ("except", food.id) in rules:
        return False
    if rules is None:
        return token.startswith("no ") and _is_called(food, token.removeprefix("no "))
    return any(_breaks(food, by, value) for by, value in rules)


def allergens_barred(diets: Iterable[str]) -> tuple[str, ...]:
    """The allergens that these diets bar: "no dairy" bars milk."""
    found: list[str] = []
    for diet in diets:
        for by, value in _table().get(_token(diet), ()):
            if by == "allergen":
                found.append(value)
            elif by == "same":
                found += allergens_barred((value,))
    return tuple(dict.fromkeys(found))


def barred_by(food: Food, diets: Iterable[str]) -> tuple[str, ...]:
    """Those of `diets` that do not allow `food`, in their order."""
    return tuple(diet for diet in diets if bars(food, diet))


def clash(foods: Iterable[Food], diet: str) -> str | None:
    """Why these foods may not share a vessel under `diet`, although each is allowed; None if they may.

    The one such rule we hold is kosher: meat and milk are kept apart (common practice).
    """
    if _token(diet) != "kosher":
        return None
    here = list(foods)
    meat = next((food for food in here if _animals(food) & MEAT), None)
    milk = next((food for food in here if "milk" in food.allergens or "dairy" in _animals(food)), None)
    if meat is None or milk is None:
        return None
    return f"kosher cooking keeps meat ({meat.name}) and milk ({milk.name}) apart"


def _token(diet: str) -> str:
    words = re.sub(r"[-_\s]+", " ", diet.strip().lower())
    if words in _table():
        return words
    singular = re.sub(r"(?<=[a-z]{3})s$", "", words)
    return ALIASES.get(words) or ALIASES.get(singular) or (singular if singular in _table() else words)


def _animals(food: Food) -> frozenset[str]:
    return frozenset(re.split(r"\s*[+;,]\s*", food.animal)) - {""}


def _breaks(food: Food, by: str, value: str) -> bool:
    match by:
        case "animal":
            return value in _animals(food)
        case "any_animal":
            return bool(_animals(food) - {"alcohol"}) or bool(food.allergens & {"milk", "eggs"})
        case "allergen":
            return value in food.allergens
        case "group":
            return value == food.group
        case "except":
            return False
        case "word":
            return _has_words(food.name, value)
        case "same":
            return bars(food, value)
        case _:
            return _holds_more(food, by.removesuffix("_over_g"), float(value))


def _holds_more(food: Food, what: str, limit_g: float) -> bool:
    if what == "salt":
        return food.salt_g is not None and food.salt_g > limit_g
    body = food.composition
    if body is None:
        return False
    if what == "fat":  # a spoon of oil is measured, not eaten by the 100 g
        return food.part != "fat" and body.fat_g > limit_g
    starchy = body.carbohydrate_g - body.fibre_g > limit_g
    eaten = food.role is not Role.SEASON or food.group == "sweet"  # a pinch or a clove does not count
    return starchy and eaten and food.part != "aromatic"


def _is_called(food: Food, what: str) -> bool:
    singular = re.sub(r"(?<=[a-z]{3})s$", "", what)
    properties = {food.group, food.id, *food.allergens, *_animals(food)}
    return any(
        name in properties or name + "s" in properties or _has_words(food.name, name)
        for name in (what, singular)
    )


def _has_words(name: str, words: str) -> bool:
    return re.search(rf"(?<![\w-]){re.escape(words)}(?:e?s)?(?![\w-])", name) is not None
