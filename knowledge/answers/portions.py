"""What one piece, clove or bunch of a food weighs, and how many of them make a weight."""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.heard import hears
from knowledge.answers.measures import figure, said_g
from knowledge.answers.model import Answer, Question
from knowledge.foods.model import Food, Portion
from knowledge.units import convert

_HOW_MANY_OF_THEM = re.compile(
    r" how many (?!grams|g |ounces|oz|cups?|ml|tbsp|tsp|tablespoons?|teaspoons?|people|min|hours|seconds"
    r"|times|days)"
)


def piece_weight(question: Question) -> Answer | None:
    """What one piece, clove or bunch of a food weighs."""
    how_many = _HOW_MANY_OF_THEM.search(question.plain) is not None
    asked = how_many or hears(question, "weight of one")
    if not asked or not question.foods or hears(question, "weight for eaters"):
        return None
    food = question.foods[-1]
    said = [p for p in food.portions if question.says(p.unit) and p.unit != "cup"]
    if how_many and (counted := _small_in_large(question, food, said)):
        return counted
    portion = next(iter(said or _pieces(question, food)), None)
    if portion is None:
        return None
    text = _weighs(food, portion)
    grams = said_g(question)
    if how_many and grams:
        text = f"{grams:.0f} g is about {max(1, round(grams / portion.grams))} of them. {text}"
    return Answer(known=True, answer=text, sources=cited(question.store, portion.source))


def _small_in_large(question: Question, food: Food, said: list[Portion]) -> Answer | None:
    """ "How many cloves in a head of garlic": the small portion is said before the large one."""
    by_unit = {portion.unit: portion for portion in said}.values()
    in_order = sorted(by_unit, key=lambda portion: question.plain.find(f" {portion.unit}"))
    if len(in_order) != 2 or in_order[0].grams >= in_order[1].grams:
        return None
    small, large = in_order
    count = round(large.grams / small.grams)
    return Answer(
        known=True,
        answer=f"A {large.unit} of {food.name} holds about {count} {small.unit}s.",
        sources=cited(question.store, small.source, large.source),
    )


def _pieces(question: Question, food: Food) -> list[Portion]:
    """Whole pieces of the food, of the size that is said first."""
    pieces = [p for p in food.portions if p.unit == "piece" and (not p.size or question.says(p.size))]
    return sorted(pieces, key=lambda portion: not portion.size)


def _weighs(food: Food, portion: Portion) -> str:
    """ "One large onion: about 225 g (7.9 oz)."."""
    of_unit = f"{portion.unit} of {food.name}"
    name = f"{portion.size} {food.name}".strip() if portion.unit == "piece" else of_unit
    ounces = convert(portion.grams, unit="g", to="oz")
    return f"One {name}: about {figure(portion.grams)} g ({ounces:.1f} oz)."
