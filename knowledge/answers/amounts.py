"""How much of a food feeds so many, and how many a weight of it feeds."""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.heard import hears
from knowledge.answers.measures import said_g
from knowledge.answers.model import Answer, Question
from knowledge.answers.numbers import COUNT, count_of
from knowledge.foods.model import Food
from knowledge.units import convert

_PEOPLE = re.compile(
    rf" (?:for|feeds?|serves?) {COUNT}(?: people| persons| adults| of us)? "
    r"(?!(?:cups?|mugs?|kg|g|grams?|lbs?|oz|tins?|cans?|ml|l|tbsp|tsp)\b)"
)
SHORT = 5  # words of a question like "potatoes for 6 people"
WHOLE_BIRD_G = 1000.0  # "a 2 kg chicken" is a whole one


def servings(question: Question) -> Answer | None:
    """How many a weight feeds, or how much of a food for so many."""
    weight = said_g(question)
    food = _served(question, weight)
    if food is None or food.serving_g is None:
        return None
    people = _PEOPLE.search(question.plain)
    feeds = hears(question, "feeding")
    for_people = people and (hears(question, "how much of it") or len(question.words) <= SHORT)
    if not feeds and not for_people and not hears(question, "a serving"):
        return None
    name = next((m.phrase for m in question.mentions if m.food.id == food.id), food.name)
    one = f"{food.serving_g:.0f} g / {convert(food.serving_g, unit='g', to='oz'):.0f} oz"
    if weight and feeds:
        text = f"About {max(weight / food.serving_g, 1):.0f} at dinner: {one} of raw {name} each."
    elif people:
        count = count_of(people[1])
        total_g = count * food.serving_g
        pounds = convert(total_g, unit="g", to="lb")
        text = f"For {count}: about {total_g:.0f} g ({pounds:.1f} lb) of raw {name}, {one} each."
    else:
        text = f"About {one} of raw {name} for one adult at dinner."
    return Answer(
        known=True,
        answer=f"{text} Big eaters take half as much again.",
        sources=cited(question.store, dict(food.sources).get("serving_g", "")),
    )


def _served(question: Question, weight_g: float | None) -> Food | None:
    """The first food of the question that has a serving; the whole bird where its weight is that of one."""
    food = next((food for food in question.foods if food.serving_g), None)
    if food is None or weight_g is None or weight_g < WHOLE_BIRD_G:
        return food
    whole = question.store.named(f"whole {food.name}")
    return whole if whole and whole.serving_g else food
