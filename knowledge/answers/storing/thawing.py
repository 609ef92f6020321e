"""How long a piece takes to thaw, by its weight, and what to do when there is no time for it.

USDA FSIS: in the fridge 24 hours for 4-5 lb, in cold water 30 minutes a pound, changed every 30 minutes;
from frozen half as long again.
"""

from __future__ import annotations

import math

from knowledge.answers.cite import cited
from knowledge.answers.cooking.sizes import weight_g
from knowledge.answers.model import Answer, Question
from knowledge.answers.quantities.amounts import WHOLE_BIRD_G
from knowledge.answers.reading.heard import hears

POUND_G = 453.6
FRIDGE_H_PER_LB, WATER_MIN_PER_LB = 24 / 4, 30.0  # the slow end of "4-5 lb"
LEAST_WATER_MIN = 60.0  # a small pack; "a pound or less may thaw in an hour or less"
LEAST_FRIDGE_H = 24.0
AT_ONCE = "cook it at once"
NEVER_WARM = "Never on the counter or in hot water."
FROM_FROZEN = (
    "Or cook it from frozen, without stuffing, in an oven at 163 °C / 325 °F or more, in half as long"
    " again as"
    " usual; not in a slow cooker, nor a thick piece in a pan, and measured"
)
THIN_FROM_FROZEN = (
    "Thin pieces, mince and prawns can be cooked from frozen in half as long again, not in a slow cooker"
)
USUAL_WATER = "30 minutes a pound (about 1 hour a kilo; 1 hour for a small pack)"


def thawed_in_time(question: Question) -> Answer | None:
    """The quickest safe way, where something is frozen and the time is short."""
    frozen = hears(question, "still frozen") and hears(question, "eaten soon")
    thaw = hears(question, "thaws it") and hears(question, "in a hurry")
    if not (frozen or thaw) or hears(question, "not thawing in a hurry"):
        return None
    water = _water(question) or USUAL_WATER
    birds = any(food.whole_shape in ("bird", "joint") for food in question.foods)
    large = birds or (weight_g(question) or 0.0) >= WHOLE_BIRD_G
    instead = FROM_FROZEN if large else THIN_FROM_FROZEN
    return _told(
        question,
        f"Quickest and safe: in cold water, in a tight bag, the water changed every 30 minutes: {water}, then"
        f" {AT_ONCE}. A microwave on defrost is quicker for small pieces, then {AT_ONCE} too.",
        f"{instead}: poultry 74 °C / 165 °F, minced meat 71 °C / 160 °F, other meat and fish 63 °C / 145 °F.",
        f"{NEVER_WARM[:-1]} (USDA FSIS).",
    )


def thaw_time(question: Question) -> Answer | None:
    """How long a piece of the weight said thaws."""
    grams = weight_g(question)
    if grams is None or not hears(question, "thaws it") or not hears(question, "asks how long"):
        return None
    hours = max(grams / POUND_G * FRIDGE_H_PER_LB, LEAST_FRIDGE_H)
    fridge = f"{hours:.0f} hours" if hours < 36 else f"{math.ceil(hours / 24):.0f} days"
    return _told(
        question,
        f"In the fridge about {fridge} for {grams / 1000:.2g} kg; in cold water, changed every 30 minutes,"
        f" about {_water(question)}, then {AT_ONCE}.",
        f"USDA FSIS: 24 hours for each 4-5 lb / 2 kg in the fridge, 30 minutes a pound in water."
        f" {NEVER_WARM}",
    )


def _water(question: Question) -> str:
    """How long the weight said takes in cold water, "" where none is said."""
    grams = weight_g(question)
    if grams is None:
        return ""
    hours = max(grams / POUND_G * WATER_MIN_PER_LB, LEAST_WATER_MIN) / 60
    rounded = math.ceil(2 * hours) / 2
    return "1 hour" if rounded == 1 else f"{rounded:g} hours"


def _told(question: Question, *sentences: str) -> Answer:
    return Answer(known=True, answer=" ".join(sentences), sources=cited(question.store, "A-FSIS-THAW"))
