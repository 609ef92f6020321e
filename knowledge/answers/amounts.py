"""How much: water for grain and pulses, servings for eaters, the boil at an altitude."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import replace

from knowledge.answers.cite import cited
from knowledge.answers.measures import MASS_G, cup_grams, quantities
from knowledge.answers.model import Answer, Question

_PEOPLE = re.compile(
    r" (?:for|feeds?|serves?) (\d{1,2}|one|two|three|four|five|six|eight|ten)"
    r"(?: people| persons| adults| of us)? "
    r"(?!(?:cups?|mugs?|kg|g|grams?|lbs?|oz|tins?|cans?|ml|l|tbsp|tsp)\b)"
)
_COUNT = {"one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8, "ten": 10}
SHORT = 5  # words of a question like "potatoes for 6 people"
KINDS_OF_RICE = ("brown", "wild", "sushi", "basmati", "jasmine", "arborio")
KIN_RICE = {"white_rice": "rice", "whole_grain": "brown-rice"}  # kind of doneness -> the plain one
WHOLE_BIRD_G = 1000.0  # "a 2 kg chicken" is a whole one


def water_ratio(question: Question) -> Answer | None:
    """Water for a grain or pulse that drinks it all, by cups and by weight."""
    parts = re.search(r"\d ?: ?\d|\b\d to \d\b", question.text)  # "is it 1:2 for quinoa"
    wet = (
        bool(parts)
        or question.says("water", "liquid", "ratio")
        or (question.says("stock", "broth") and question.says("how much", "how many", "cup", "per"))
    )
    if not wet or question.says("cold water", "wash", "rinse", "reheat", "salt"):
        return None
    rows = {row["food_id"]: row for row in question.store.table("ratios")}
    held = [m for m in question.mentions if m.food.id in rows]
    if not held:
        return _like_its_kind(question, rows) or _pasta_water(question)
    mention = max(held, key=lambda m: m.end - m.start)  # "rice ... sushi rice": the one said more exactly
    if mention.phrase == "rice":  # "rice to water ratio, brown"
        kinds = (question.store.named(f"{word} rice") for word in KINDS_OF_RICE if question.says(f"{word}_"))
        kind = next((food for food in kinds if food and food.id in rows), None)
        mention = replace(mention, food=kind, phrase=kind.name) if kind else mention
    row = rows[mention.food.id]
    cups = _span(row["water_lo"], row["water_hi"])
    minutes = _span(row["minutes_lo"], row["minutes_hi"])
    middle = (float(row["water_lo"]) + float(row["water_hi"])) / 2
    water = f"{cups} {'cup' if cups == '1' else 'cups'} of water for 1 cup ({240 * middle:.0f} ml for 240 ml)"
    text = f"{mention.phrase.capitalize()}: {water}, {minutes} min, lid on"
    grams = next((q.value * MASS_G[q.unit] for q in quantities(question) if q.unit in MASS_G), None)
    said_cups = next((q.value for q in quantities(question) if q.unit == "cup" and q.value != 1), None)
    if grams:
        ml = grams / cup_grams(mention.food, question.store) * middle * 236.588
        text += f"; {grams:.0f} g takes about {round(ml / 10) * 10:.0f} ml"
    elif said_cups:
        text += f"; {said_cups:g} cups take {said_cups * middle:.1f} cups"
    return Answer(
        known=True,
        answer=f"{text}; makes {row['yield']} cups. The packet knows its own grain better.",
        sources=cited(question.store, row["source"]),
    )


def _like_its_kind(question: Question, rows: Mapping[str, Mapping[str, str]]) -> Answer | None:
    """Water for a rice that has no figure of its own: as for the plain rice of its kind."""
    mention = next((m for m in question.mentions if m.food.doneness in KIN_RICE), None)
    if mention is None:
        return None
    kin = question.store.food(KIN_RICE[mention.food.doneness])
    cups = _span(rows[kin.id]["water_lo"], rows[kin.id]["water_hi"])
    minutes = _span(rows[kin.id]["minutes_lo"], rows[kin.id]["minutes_hi"])
    text = (
        f"I hold no figure for {mention.phrase} itself; as for {kin.name}: {cups} cups of water for 1 cup, "
    )
    text += f"{minutes} min, lid on. Taste, and add hot water if it is still hard; the packet knows better."
    return Answer(known=True, answer=text, sources=cited(question.store, rows[kin.id]["source"]))


_MADE = re.compile(
    r" (?:dry|dried|raw|uncooked|cups? of) .*(?:makes?|gives?|yields?|turns? into|comes? out|when) .*cooked "
    r"| cooked (?:makes?|gives?|yields?) $| (?:makes?|gives?|yields?) .*when cooked "
    r"| how (?:much|many) .*cooked .*from .*(?:dry|dried|raw|uncooked) "
)


def grain_yield(question: Question) -> Answer | None:
    """What a cup of dry grain or pulse makes cooked."""
    if not _MADE.search(question.plain) and not question.says(
        "yield", "makes", "make when", "cooked from", "dry to cooked", "a cup make", "does it make",
        "dry make", "become", "expand", "how much cooked", "how many cups of cooked", "cups cooked",
    ):  # fmt: skip
        return None
    rows = {row["food_id"]: row for row in question.store.table("ratios")}
    mention = next((m for m in question.mentions if m.food.id in rows), None)
    if mention is None:
        pulse = next((m for m in question.mentions if m.food.doneness in ("bean", "chickpea")), None)
        text = _yielded(question, pulse.phrase, "2.5-3") if pulse else ""
        return Answer(known=True, answer=text, sources=cited(question.store, "A-NEBRASKA")) if text else None
    row = rows[mention.food.id]
    return Answer(
        known=True,
        answer=_yielded(question, mention.phrase, row["yield"]),
        sources=cited(question.store, row["source"]),
    )


def _yielded(question: Question, name: str, cups: str) -> str:
    """What the dry cups that are said make cooked, by what one makes: "3" or "2.5-3"."""
    said = next((q.value for q in quantities(question) if q.unit == "cup"), 1.0)
    made = "-".join(f"{said * float(one):g}" for one in cups.split("-"))
    return f"{said:g} {'cup' if said <= 1 else 'cups'} of dry {name} makes about {made} cups cooked."


def _pasta_water(question: Question) -> Answer | None:
    if not any(food.doneness in ("pasta", "noodle") for food in question.foods):
        return None
    return Answer(
        known=True,
        answer="Pasta in a pot of water: 1 l for 100 g, with 10 g of salt a litre. In one pan with its "
        "sauce: about 2 ml of liquid a gram beyond the sauce, stirred often.",
        sources=("common practice",),
    )


def servings(question: Question) -> Answer | None:
    """How many a weight feeds, or how much of a food for so many."""
    food = next((food for food in question.foods if food.serving_g), None)
    weight = next((q.value * MASS_G[q.unit] for q in quantities(question) if q.unit in MASS_G), None)
    whole = question.store.named(f"whole {food.name}") if food and weight and weight >= WHOLE_BIRD_G else None
    food = whole if whole and whole.serving_g else food
    feeds = question.says("how many people", "how many does", "how many will", "feed", "serves", "serve how")
    people = _PEOPLE.search(question.plain)
    per = question.says(
        "per person",
        "per adult",
        "per head",
        "each person",
        "a person",
        "per serving",
        "one serving",
        "portion size",
    )
    if (
        food is None
        or food.serving_g is None
        or not (
            feeds
            or per
            or (
                people
                and (
                    question.says("how much", "how many", "in grams", "in ounces", "what weight", "amount of")
                    or len(question.words) <= SHORT
                )
            )
        )
    ):
        return None
    name = next((m.phrase for m in question.mentions if m.food.id == food.id), food.name)
    one = f"{food.serving_g:.0f} g / {food.serving_g / 28.3495:.0f} oz"
    if weight and feeds:
        text = f"About {max(weight / food.serving_g, 1):.0f} at dinner: {one} of raw {name} each."
    elif people:
        count = _COUNT.get(people[1]) or int(people[1])
        total = count * food.serving_g
        text = f"For {count}: about {total:.0f} g ({total / 453.592:.1f} lb) of raw {name}, {one} each."
    else:
        text = f"About {one} of raw {name} for one adult at dinner."
    sources = [source for column, source in food.sources if column == "serving_g"]
    return Answer(
        known=True,
        answer=f"{text} Big eaters take half as much again.",
        sources=cited(question.store, *sources),
    )


def _span(low: str, high: str) -> str:
    return low if float(low) == float(high) else f"{low}-{high}"
