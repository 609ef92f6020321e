"""What raw food gives cooked, and how much raw food a cooked amount takes.

By weight from the water that a food drinks and the share that it loses until it is done; by cups,
for grain and pulses, from `ratios.csv`.
"""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Mention, Quantity, Question
from knowledge.answers.quantities.grains import PULSE_YIELD, PULSE_YIELD_SOURCE, PULSES, ratios
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.measures import cup_grams, figure, measures, quantities
from knowledge.foods.model import Food

_STATE = re.compile(r" (?:of )?(?:(dry|dried|raw|uncooked|fresh)|(cooked|boiled|roasted|wilted))(?= )")
_HOW_MUCH = re.compile(r" how (?:much|many) ")
_DOWN = " It shrinks to about a tenth of its heap."  # leaves; common practice
DRY = frozenset({"grain", "noodle", "pasta", "pulse"})  # groups that are bought dry
UNIT_G = 100.0  # the amount that is told where none is said


def cooked_yield(question: Question) -> Answer | None:
    """ "How much dry rice for 6 cups cooked", "200 g of pasta weighs how much cooked"."""
    states = {bool(match[2]) for match in _STATE.finditer(question.plain)}
    if not hears(question, "what a measure is") and not hears(question, "cooked down"):
        return None
    if len(states) < 2 and not hears(question, "cooked down"):
        return None
    mention = next((m for m in question.mentions if _factor(m.food)), None)
    if mention is None or hears(question, "not how much of it"):
        return None
    said = next((q for q in quantities(question) if q.has_number), None)
    if said and measures(question.store)[said.unit].kind == "volume":
        return _by_cups(question, mention, said)
    return _by_weight(question, mention, said)


def _asks_raw(question: Question) -> bool:
    """True where the raw amount is asked for: the one stated is cooked, or "how much raw" is said."""
    for one in quantities(question):
        stated = _STATE.match(question.plain, one.end)
        if one.has_number and stated:
            return bool(stated[2])
    asked = _HOW_MUCH.search(question.plain)
    behind = _STATE.search(question.plain, asked.end() - 1) if asked else None
    if behind:
        return not behind[2]
    said = _STATE.search(question.plain)
    return bool(said and said[2])


def _factor(food: Food) -> float | None:
    """The weight cooked over the weight raw, None where it is not known."""
    if food.group in DRY or food.start_state == "dry":
        return 1 + food.water_uptake_g_per_g if food.water_uptake_g_per_g else None
    return 1 - food.loss_frac if food.loss_frac else None


def _by_weight(question: Question, mention: Mention, said: Quantity | None) -> Answer:
    food = mention.food
    factor = _factor(food) or 1.0
    measure = measures(question.store)[said.unit if said else "gram"]
    amount = said.value if said else UNIT_G
    raw = "dry" if food.group in DRY or food.start_state == "dry" else "raw"
    given = f"{figure(amount)} {measure.counted(amount)}"
    if _asks_raw(question):
        result = amount / factor
        text = (
            f"For {given} cooked: about {_about(result)} {measure.counted(result)} of {raw} {mention.phrase}"
        )
    else:
        result = amount * factor
        text = (
            f"{given} of {raw} {mention.phrase} gives about {_about(result)} {measure.counted(result)} cooked"
        )
    text += f" ({factor:.2g} times its weight)." + (_DOWN if food.group == "leaf" else "")
    sources = food.sources_of("water_uptake_g_per_g" if raw == "dry" else "loss_frac")
    return Answer(known=True, answer=text, sources=cited(question.store, *sources))


def _about(value: float) -> str:
    return f"{value:.0f}" if value >= 10 else figure(value)


def _by_cups(question: Question, mention: Mention, said: Quantity) -> Answer | None:
    """Cups for cups, and the weight of the dry ones."""
    food, measure = mention.food, measures(question.store)[said.unit]
    ratio = ratios(question.store).get(food.id)
    if ratio is None and food.doneness not in PULSES:
        return None
    makes, source = (ratio.makes, ratio.source) if ratio else (PULSE_YIELD, PULSE_YIELD_SOURCE)
    times = [float(one) for one in makes.split("-")]
    if not _asks_raw(question):
        cooked = "-".join(figure(said.value * one) for one in times)
        given = f"{figure(said.value)} {measure.counted(said.value)}"
        text = f"{given} of dry {mention.phrase} makes about {cooked} {measure.counted(2)} cooked."
        return Answer(known=True, answer=text, sources=cited(question.store, source))
    dry = "-".join(figure(said.value / one) for one in reversed(times))
    grams = said.value / times[0] * measure.size / measures(question.store)["cup"].size
    weight = 5 * round(grams * cup_grams(food, question.store) / 5)
    text = (
        f"For {figure(said.value)} {measure.counted(said.value)} cooked: about {dry} {measure.counted(2)} "
        f"of dry {mention.phrase}, {weight} g; one makes {makes}."
    )
    return Answer(known=True, answer=text, sources=cited(question.store, source))
