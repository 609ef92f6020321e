"""How much of a food feeds so many, and how many a weight of it feeds."""

from __future__ import annotations

import re
from collections.abc import Mapping

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.measures import MASS_G, quantities, said_g
from knowledge.answers.reading.numbers import COUNT, count_of
from knowledge.foods.model import Food
from knowledge.units import convert

_PEOPLE = re.compile(
    rf" (?:for|feeds?|serves?) {COUNT}(?: people| persons| adults| of us)? "
    r"(?!(?:cups?|mugs?|kg|g|grams?|lbs?|oz|tins?|cans?|ml|l|tbsp|tsp)\b)"
)
_HEADS = re.compile(
    rf" {COUNT} (?:people|persons?|adults|guests|of us|heads|pax|eaters|kids|children|men|friends)"
    r"| (?:party|family|group|crowd) of (\d{1,3}) "
)
LARGE = 1000  # grams or millilitres from which kilograms and litres are said
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


def dish_serving(question: Question) -> Answer | None:
    """How much of a dish for so many, or for one: "soup for 20", "wings per person"."""
    heads = _HEADS.search(question.plain) or _PEOPLE.search(question.plain)
    asked = hears(question, "how much of it") or hears(question, "a weight for eaters")
    each = hears(question, "a serving") or question.says("each_")
    if not (heads and (asked or len(question.words) <= SHORT)) and not (each and asked):
        return None
    rows = [row for row in question.store.table("dish_servings") if _is_dish(question, row)]
    weighed = any(q.has_number and q.unit in MASS_G for q in quantities(question))
    if not rows or weighed or hears(question, "not for eaters"):
        return None
    row = max(rows, key=lambda row: max(len(word) for word in _said_of(question, row)))
    low, high = float(row["lo"]), float(row["hi"])
    one = f"{_span(low, high, row['unit'])} each"
    note = f" ({row['note']})" if row["note"] else ""
    if heads:
        count = count_of(next(group for group in heads.groups() if group))
        total = _span(count * low, count * high, row["unit"])
        text = f"For {count}: about {total} {_of(row)}, {one}{note}."
    else:
        text = f"About {_span(low, high, row['unit'])} {_of(row)} for one adult{note}."
    text += " Half for small children; big eaters take half as much again."
    return Answer(known=True, answer=text, sources=cited(question.store, row["source"]))


def _of(row: Mapping[str, str]) -> str:
    return row["of"] if row["unit"] == "piece" else f"of {row['of']}"


def _is_dish(question: Question, row: Mapping[str, str]) -> bool:
    unless = row["unless"].split(";") if row["unless"] else []
    return bool(_said_of(question, row)) and not question.says(*unless)


def _said_of(question: Question, row: Mapping[str, str]) -> list[str]:
    return [word for word in row["words"].split(";") if question.says(word)]


def _span(low: float, high: float, unit: str) -> str:
    """ "250-350 ml", "5-7 l", "6-8"."""
    if unit != "piece" and low >= LARGE:
        low, high, unit = low / 1000, high / 1000, {"g": "kg", "ml": "l"}[unit]
    numbers = dict.fromkeys(f"{value:.0f}" if value >= 10 else f"{value:.2g}" for value in (low, high))
    return f"{'-'.join(numbers)} {unit}".removesuffix(" piece")


def _served(question: Question, weight_g: float | None) -> Food | None:
    """The first food of the question that has a serving; the whole bird where its weight is that of one."""
    food = next((food for food in question.foods if food.serving_g), None)
    if food is None or weight_g is None or weight_g < WHOLE_BIRD_G:
        return food
    whole = question.store.named(f"whole {food.name}")
    return whole if whole and whole.serving_g else food
