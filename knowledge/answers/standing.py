"""Food that stood out: the time or the warmth against the published limit.

USDA FSIS: 2 hours at room temperature in all, 1 hour above 32 °C / 90 °F. UK FSA: cooked rice
within 1 hour.
"""

from __future__ import annotations

import re

from knowledge.answers.ages import hours_said, span_of_hours
from knowledge.answers.air import HOT_ROOM_DEGC, air_degC, is_hot_day, is_warm_place
from knowledge.answers.cautions import LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.degrees import both
from knowledge.answers.heard import hears, pattern
from knowledge.answers.hot import is_kept_hot
from knowledge.answers.model import Answer, Question
from knowledge.foods.model import Food

LIMIT_H, HOT_ROOM_H, RICE_H = 2.0, 1.0, 1.0
RULE = (
    "2 hours at room temperature in all, 1 hour above 32 °C / 90 °F (USDA FSIS); cooked rice 1 hour (UK FSA)"
)
NOTHING_SAVES_IT = (
    "Reheating, boiling or frying kills germs but does not destroy the toxins some have left, a cool room"
    " does not make it safe, and smell tells you nothing."
)
LONGER_OR_HOTTER = "Was it longer, or hotter than that, throw it away."
LONGER_ONLY = "Longer only kept hot at 60 °C / 140 °F or above, or on ice at 4 °C / 40 °F or below."
EAT_NOW = "eat it now, reheat it once to 74 °C / 165 °F, steaming hot, or put it in the fridge at once."
RAW_NOW = (
    "Raw: into the fridge now, or cook it through at once; don't eat it as it is. Marinate and thaw in the"
    " fridge only (USDA FSIS)."
)
_LEFT_THERE = (
    r" (?:in (?:(?:the|my|a|our) )?(?:(?:hot|warm|parked) )?{vehicle}"
    r"|in (?:(?:the|my|a|his|her) )?(?:\w+ )?{bag}"
    r"|(?:no|without(?: an?)?) {cold box}) "
)
_OUTSIDE = re.compile(  # "the outside" is of a food
    r"(?<! the) outside (?:(?:for|about|over|since|overnight|all) |\d)"
)


def left_out(question: Question) -> Answer | None:
    """The verdict on food that stood out for a time that is said."""
    hours = hours_said(question)
    if hours is None or hears(question, "standing on purpose") or is_kept_hot(question):
        return None
    if not is_warm_place(question) and not (_stood_out(question) and _is_perishable(question)):
        return None
    how_long = span_of_hours(hours).capitalize()
    if hours > _limit_h(question):
        return _told(
            question,
            f"No: throw it away. {how_long} out is over the limit: {RULE}.",
            NOTHING_SAVES_IT,
        )
    return _told(
        question,
        f"{how_long} is within the limit ({RULE}), counting all the time it was out.",
        _what_now(question),
        LONGER_OR_HOTTER,
    )


def in_the_warm(question: Question) -> Answer | None:
    """How long food may stand at the temperature of a day or a room, no time being said."""
    degC = air_degC(question)
    if degC is None or hears(question, "warm on purpose") or not _is_perishable(question):
        return None
    limit = "1 hour" if degC >= HOT_ROOM_DEGC else "2 hours"
    return _told(
        question,
        f"At {both(degC)} around it cooked or raw perishable food may stand out {limit} at most, in all"
        " (USDA FSIS: 2 hours, above 32 °C / 90 °F 1 hour; cooked rice 1 hour, UK FSA); after that throw it"
        " away.",
        LONGER_ONLY,
    )


def _told(question: Question, *sentences: str) -> Answer:
    return Answer(
        known=True,
        answer=" ".join((*sentences, LOCAL_RULES)),
        sources=cited(question.store, "A-FSIS-LEFT", "A-FSA-RICE"),
    )


def _limit_h(question: Question) -> float:
    if hears(question, "rice in it"):
        return RICE_H
    return HOT_ROOM_H if is_hot_day(question) else LIMIT_H


def _stood_out(question: Question) -> bool:
    plain = question.plain
    return (
        hears(question, "stood out")
        or pattern(question.store, _LEFT_THERE).search(plain) is not None
        or _OUTSIDE.search(plain) is not None
    )


def _is_perishable(question: Question) -> bool:
    dishes = question.store.table("words_dishes")
    return (
        hears(question, "perishable")
        or any(f" {row['dish']} " in question.plain for row in dishes)
        or any(_spoils(food) for food in question.foods)
    )


def _spoils(food: Food) -> bool:
    return bool(food.safety) or food.animal in ("dairy", "egg") or food.doneness in ("white_rice", "pasta")


def _what_now(question: Question) -> str:
    """What to do with food that is still within the limit; nothing raw is eaten as it is."""
    if hears(question, "still raw") and not hears(question, "cooked there"):
        return RAW_NOW
    cooked = hears(question, "cooked before") or hears(question, "rice in it")
    if any(food.safety for food in question.foods) and not cooked:
        return f"Cooked: {EAT_NOW} {RAW_NOW}"
    return EAT_NOW[0].upper() + EAT_NOW[1:]
