"""The heat around a food is not the heat inside it: "turkey at 175F in the oven overnight".

USDA FSIS: an oven for meat and poultry is set to 163 °C / 325 °F or more, a smoker to 107-149 °C /
225-300 °F; a slow cooker works at 77-138 °C / 170-280 °F.
"""

from __future__ import annotations

import re

from knowledge.answers.cautions import MEASURE, STRICTER_LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.cooking.ways import FSIS_OVEN_DEGC, has_fan, is_fsis_oven, is_slow
from knowledge.answers.dangers.hot import held_hot
from knowledge.answers.heat.holds import held_instead
from knowledge.answers.heat.minimums import COLDEST_CORE_DEGC, HOTTEST_CORE_DEGC, Minimum, minimum_of
from knowledge.answers.model import Answer, Question
from knowledge.answers.quantities.ovens import FAN_K
from knowledge.answers.reading.degrees import as_read, both
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.owners import CORE, HEAT, NOBODY, Owned, owned
from knowledge.units import is_met

SMOKER_DEGC, HOTTEST_SMOKER_DEGC = 107.2, 160.0  # 225 °F; hotter it is a grill, or a cooker set to fry
SLOW_COOKER_DEGC = 76.7  # 170 °F
LOW_AND_SLOW_DEGC = 105.0  # from here tough joints are roasted low, by common practice
SMOKER_RULE = "USDA FSIS: keep a smoker at 107-149 °C / 225-300 °F, for thawed food only."
SLOW_COOKER_RULE = "USDA FSIS: a slow cooker works at 77-138 °C / 170-280 °F, for thawed food only."
BATH_RULE = "In a bath the middle gets there only after hours; I plan none."
HOT_OVEN_RULE = (
    f"USDA FSIS asks for {both(FSIS_OVEN_DEGC)} or more (a fan oven about 20 °C less); the core decides."
)
COOL_OVEN_RULE = (
    f"USDA FSIS: set an oven to {both(FSIS_OVEN_DEGC)} or more for meat and poultry, also for many hours or"
    " overnight: in less heat the middle stays for hours where germs grow."
)
TENDER = "Tough meat is tender at about 93-96 °C / 200-205 °F inside."
LEAVE_IT_ON = "Leave it on the heat until the thermometer shows that, then rest it."

RESTED = "Three minutes of rest are part of that rule; rested so long, it may be eaten."

_TAKEN_OFF_AT = re.compile(  # "pull it at 57 for medium rare", "probe says 60, take it out for medium?"
    r" (?:pull|take|taking|pulling|remove|removing)(?: (?!freezer|fridge)\w+){0,4}? (?:at|out|off)"
    r"(?= .*(?:rare|medium|pink|well done|carry|rest))(?! of the (?:freezer|fridge))"
)
_OIL = re.compile(r" (?:oil|fat|fryer)(?: \w+)? (?:at|to|is|of) \d| fry\w* (?:\w+ ){0,3}?at \d")
_KEEPING_WARM = re.compile(r" keep \w+ (?:\w+ )?(?:warm|hot)")
_COOKED_BEFORE = re.compile(  # "cooked chicken at 50C", not "cooked at 50C"
    r" cooked (?!(?:at|in|for|on|to|through|until|safe|ok|it|all) |over|slow)"
)


def setting(question: Question) -> Answer | None:
    """The verdict on a temperature of the oven, smoker, bath or slow cooker; None where there is none."""
    if hears(question, "not a setting") or _OIL.search(question.plain):
        return None
    minimum = minimum_of(question)
    around = [heat for heat in owned(question) if heat.owner not in (CORE, NOBODY)]
    if minimum is None or not around:
        return None
    lowest = min(around, key=lambda heat: heat.degC)
    if _is_held(question):
        return held_hot(question, (lowest.degC,))
    if lowest.owner in ("oven", HEAT):
        return _in_oven(question, lowest, minimum)
    if lowest.degC > HOTTEST_SMOKER_DEGC:
        return None
    rule, least_degC = {
        "grill or smoker": (SMOKER_RULE, SMOKER_DEGC),
        "slow cooker": (SLOW_COOKER_RULE, SLOW_COOKER_DEGC),
        "bath": (BATH_RULE, minimum.degC),
    }[lowest.owner]
    return _told(question, lowest, minimum, rule, is_enough=is_met(lowest.degC, least_degC))


def rested(question: Question) -> Answer | None:
    """The verdict on food taken off at a temperature and rested: below its minimum rest makes up for
    nothing, from there on the rest told is what the rule asks for.
    """
    minimum = minimum_of(question)
    rests, taken_off = hears(question, "rests"), _TAKEN_OFF_AT.search(question.plain) is not None
    if minimum is None or not (rests or taken_off) or hears(question, "dough"):
        return None
    inside = (heat.degC for heat in owned(question) if taken_off or heat.owner in (CORE, NOBODY))
    coldest = min((d for d in inside if COLDEST_CORE_DEGC <= d <= HOTTEST_CORE_DEGC), default=None)
    if coldest is None:
        return None
    if not is_met(coldest, minimum.degC):
        verdict = (
            f"No: {as_read(coldest)} is below the safe minimum, and no rest is counted on to make up for it."
        )
        what_then = LEAVE_IT_ON
    elif (
        hears(question, "asks leave")
        and not hears(question, "asks how long")
        and not hears(question, "served unrested")
    ):
        verdict = f"Yes, {as_read(coldest)} is enough, pink or not, if that was the coldest spot."
        what_then = RESTED if minimum.lead["hold"] == "rest" else ""
    else:
        return None
    return Answer(
        known=True,
        answer=" ".join(filter(None, (verdict, minimum.line, what_then, STRICTER_LOCAL_RULES))),
        sources=cited(question.store, *minimum.sources),
    )


def _is_held(question: Question) -> bool:
    """True for cooked food that is only kept warm there."""
    if hears(question, "not cooked yet"):
        return False
    return (
        hears(question, "held warm")
        or _KEEPING_WARM.search(question.plain) is not None
        or _COOKED_BEFORE.search(question.plain) is not None
    )


def _in_oven(question: Question, heat: Owned, minimum: Minimum) -> Answer | None:
    """The verdict on an oven; None where it is hot enough, or low on purpose, and no verdict is asked."""
    as_if_still_degC = heat.degC + (FAN_K if has_fan(question) else 0.0)
    if is_fsis_oven(as_if_still_degC):
        asked = hears(question, "asks leave") and not hears(question, "asks how long")
        return _told(question, heat, minimum, HOT_OVEN_RULE, is_enough=True) if asked else None
    low_on_purpose = heat.degC >= LOW_AND_SLOW_DEGC and _is_tough(question)
    if low_on_purpose and not hears(question, "asks leave overnight"):
        return None
    return _told(question, heat, minimum, COOL_OVEN_RULE, is_enough=False)


def _is_tough(question: Question) -> bool:
    return any(is_slow(question, food, "roast") for food in question.foods)


def _told(question: Question, heat: Owned, minimum: Minimum, rule: str, *, is_enough: bool) -> Answer:
    name = "heat around it" if heat.owner == HEAT else f"heat of the {heat.owner}"
    held = "" if heat.owner != "bath" else held_instead(question, heat.degC, minimum)
    sentences = (
        f"{'' if is_enough else 'No: '}{as_read(heat.degC)} is the {name}, not the inside.",
        *([held] if held else [rule]),
        minimum.line,
        *([TENDER] if _is_tough(question) else []),
        MEASURE,
        STRICTER_LOCAL_RULES,
    )
    return Answer(
        known=True,
        answer=" ".join(sentences),
        sources=cited(question.store, "A-FSIS-HANDLE", *minimum.sources),
    )
