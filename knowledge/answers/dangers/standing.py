"""Food that stood out: the time or the warmth against the published limit.

USDA FSIS: 2 hours at room temperature in all, 1 hour above 32 °C / 90 °F. UK FSA: cooked rice
within 1 hour.
"""

from __future__ import annotations

from knowledge.answers.cautions import LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.dangers.air import HOT_ROOM_DEGC, air_degC, is_hot_day, is_warm_place
from knowledge.answers.dangers.hot import is_kept_hot, warm_for_hours
from knowledge.answers.dangers.stood import keeps_unchilled, perishable, stays_frozen, stood_out, thawed_out
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.degrees import both
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.hours import hours_said, span_of_hours

LIMIT_H, HOT_ROOM_H, RICE_H = 2.0, 1.0, 1.0
DAY_H = 24.0
RULE = (
    "2 hours at room temperature in all, 1 hour above 32 °C / 90 °F (USDA FSIS); cooked rice 1 hour (UK FSA)"
)
RICE_RULE = "cooked rice 1 hour (UK FSA), other food 2 hours in all, 1 hour above 32 °C / 90 °F (USDA FSIS)"
KEEPS = (
    "Yes: butter, hard cheese, bread, plain cakes and biscuits, fruit pies, whole fruit and vegetables, jam,"
    " ketchup and the like need no fridge for a night (USDA FSIS)."
)
UNLESS_FILLED = (
    "Covered, out of the sun; mould or a rancid smell: throw it away. With cream, custard, egg, soft cheese,"
    " meat or fish in or on it the limit is 2 hours, and then it goes."
)
NOTHING_SAVES_IT = (
    "Reheating, boiling or frying kills germs but does not destroy the toxins some have left, a cool room"
    " does not make it safe, and smell tells you nothing."
)
THAWED_OUT = (
    "A cold or icy middle does not save it: the outside was warm for hours, and cooking does not destroy the"
    " toxins some germs leave."
)
THAW_SO = "Thaw in the fridge, in cold water changed every 30 minutes or in the microwave (USDA FSIS)."
HISTAMINE = (
    "In tuna, mackerel and their kin histamine forms in the warm as well (FDA): neither cooking nor freezing"
    " destroys it, and it need not smell."
)
LONGER_OR_HOTTER = "Was it longer, or hotter than that, throw it away."
LONGER_ONLY = "Longer only kept hot at 60 °C / 140 °F or above, or on ice at 4 °C / 40 °F or below."
EAT_NOW = "eat it now, reheat it once to 74 °C / 165 °F, steaming hot, or put it in the fridge at once."
RAW_NOW = (
    "Raw: into the fridge now, or cook it through at once; don't eat it as it is. Marinate and thaw in the"
    " fridge only (USDA FSIS)."
)


def spoilt_in_the_warm(question: Question) -> Answer | None:
    """The verdict on food that stood out longer than the limit, whatever else is asked."""
    hours = _hours_out(question)
    if hours is None or hours <= _limit_h(question):
        return None
    span = span_of_hours(hours)
    if hears(question, "only planned"):
        return _told(
            question,
            f"No, don't: {span} out is over the limit, {_rule(question)}; after that it is thrown away.",
            *_nothing_saves_it(question),
        )
    return _told(
        question,
        f"No: throw it away. {span.capitalize()} out is over the limit: {_rule(question)}.",
        *_nothing_saves_it(question),
    )


def left_out(question: Question) -> Answer | None:
    """What to do with food that stood out for a time within the limit."""
    hours = _hours_out(question)
    if hours is None:
        return None
    return _told(
        question,
        f"{span_of_hours(hours).capitalize()} is within the limit ({RULE}), counting all the time it was"
        " out.",
        _what_now(question),
        LONGER_OR_HOTTER,
    )


def needs_no_fridge(question: Question) -> Answer | None:
    """The verdict on food that stood out and keeps for a day or two all the same."""
    hours = hours_said(question)
    if hours is None or hours > DAY_H or not (stood_out(question) and keeps_unchilled(question)):
        return None
    if hears(question, "standing on purpose"):
        return None
    return Answer(
        known=True,
        answer=" ".join((KEEPS, UNLESS_FILLED)),
        sources=cited(question.store, "A-FSIS-HANDLE"),
    )


def _rule(question: Question) -> str:
    return RICE_RULE if hears(question, "rice in it") else RULE


def _hours_out(question: Question) -> float | None:
    """How long perishable food stood out [h]; None where nothing tells of it."""
    hours = hours_said(question)
    if hours is None or hears(question, "standing on purpose") or stays_frozen(question):
        return None
    if warm_for_hours(question) is not None or is_kept_hot(question):
        return None
    out = stood_out(question) or thawed_out(question)
    return hours if is_warm_place(question) or (out and perishable(question)) else None


def _nothing_saves_it(question: Question) -> tuple[str, ...]:
    if thawed_out(question):
        return (THAWED_OUT, THAW_SO)
    if hears(question, "histamine fish"):
        return (HISTAMINE,)
    return (NOTHING_SAVES_IT,)


def in_the_warm(question: Question) -> Answer | None:
    """How long food may stand at the temperature of a day or a room, no time being said."""
    degC = air_degC(question)
    if degC is None or hears(question, "warm on purpose") or not perishable(question):
        return None
    limit = "1 hour" if degC >= HOT_ROOM_DEGC or hears(question, "rice in it") else "2 hours"
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


def _what_now(question: Question) -> str:
    """What to do with food that is still within the limit; nothing raw is eaten as it is."""
    if hears(question, "still raw") and not hears(question, "cooked there"):
        return RAW_NOW
    cooked = hears(question, "cooked before") or hears(question, "rice in it")
    if any(food.safety for food in question.foods) and not cooked:
        return f"Cooked: {EAT_NOW} {RAW_NOW}"
    return EAT_NOW[0].upper() + EAT_NOW[1:]
