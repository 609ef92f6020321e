"""Cold or heat that failed: the fridge, the freezer, the current, the slow cooker, the oven.

USDA FSIS: a closed fridge keeps food safe for about 4 hours, a full freezer 48, a half full one 24;
what still has ice crystals or is at 4 °C / 40 °F or below may be refrozen or cooked. Food that a cooker
left below 60 °C / 140 °F for over 2 hours is thrown away, and so is what stood there for a time unknown.
"""

from __future__ import annotations

import re
from dataclasses import replace

from knowledge.answers.cautions import LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.dangers.advice import row
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears, pattern
from knowledge.answers.reading.hours import LONG_H, hours_in, span_of_hours
from knowledge.units import celsius

WARMEST_FRIDGE_DEGC, HOTTEST_ROOM_DEGC = 5.0, 30.0  # UK FSA: 5; above a room's it is no fridge's reading
_NO_READING = "pm|am|days?|hours?|h|min|mins|minutes?|weeks?|months?|people|g|kg|ml|l|lbs?|oz|eggs?|litres?"
_FRIDGE_READS = re.compile(
    r" (?:fridge|refrigerator|fridges)(?: thermometer)?"
    r"(?: (?!freezer|oven|core|probe|thaw\w*|to|for|in)[^\W\d]+){0,5}?"
    r"(?P<reads> (?:temp|temperature|at|says|said|shows?|showed|showing|reads?|reading|hit|reached"
    r"|(?:up|crept|rose|went|only) to))?"
    r"(?: (?:about|around|only|still|nearly|almost|over))?"
    r" (?P<number>\d{1,2}(?:\.\d+)?) ?(?P<degrees>°|degrees?|deg)? ?(?P<scale>c|f|celsius|fahrenheit)?"
    rf"(?= )(?! (?:{_NO_READING}) )"
)
THROWN = "No: throw away meat, fish, milk, eggs and cooked food that lay in it so long."

FRIDGE_H, FULL_FREEZER_H, HALF_FREEZER_H = 4.0, 48.0, 24.0
COOKER_H = 2.0
_AUX = (
    r"(?:(?:has|have|had|was|is|are|were|been|be|just|all|suddenly|s|it|itself|got|being|there|no|keeps?|kept"
    r"|will|never|went|gone|don|dey) )"
)
_POWER_FAILED = (
    rf" (?:{{current}}) {_AUX}{{0,3}}{{fails}} "
    r"| (?:no|without|zero|lost|lose|losing) (?:the )?(?:{current}) "
    r"| (?:took|taken|take|takes|cut|seized|bring|brought|interrupted) (?:our |the |my )?(?:{current}) "
    r"| {outage} "
)
_COLD_FAILED = (
    rf"(?<! in the)(?<! in my)(?<! in our)(?<! in) {{cold keeper}} (?:door )?{_AUX}{{0,4}}{{stops}} "
    rf"| {{cold keeper}} (?:door )?(?:(?:has|have|had|was|is|were|been|just|being|left) ){{1,3}}{{stops}} "
    r"| (?:unplugged|switched off|turned off|knocked off|defrosted|left open)"
    r" (?:the |my |our )?{cold keeper} "
    r"| left (?:the |my |our )?{cold keeper} (?:door )?(?:open|ajar|unplugged|off) "
    r"| (?:ice|ice packs?) (?:has |had |have |all )?(?:melted|gone|ran out) "
)
_COOKER_FAILED = (
    r" {cooks alone} (?:(?:had|has|was|were|is|been|just|must|have|somehow|accidentally|it|itself|got|be|then"
    r"|suddenly|never|not) ){0,4}{stops} "
    r"| (?:turned|switched|tripped|knocked|shut) off (?:the |my |our )?{cooks alone} "
    r"| {cooks alone} (?:\w+ ){0,6}?(?:turned|switched|tripped|knocked|shut|went|cut|clicked|timed)"
    r" (?:itself )?(?:off|out) "
    r"| (?:forgot|forgotten|failed) to (?:switch|turn|plug|start|press) (?:\w+ ){0,4}?{cooks alone} "
    r"| {cooks alone} (?:\w+ ){0,6}?(?:forgot|forgotten|failed) to (?:switch|turn|plug|start|press) "
    r"| {cooks alone} (?:\w+ ){0,4}?(?:wasn t|was not|wasnt|isn t|not|never|hadn t been|hadnt been)"
    r" (?:\w+ )?(?:on|plugged in|turned on|switched on|working) "
)
_FRIDGE_TOO = re.compile(r" (?:fridge|refrigerator|ref|frig) (?!freezer )")


def cooker_failed(question: Question) -> Answer | None:
    """The verdict on food in a slow cooker or an oven that went off."""
    found = pattern(question.store, _COOKER_FAILED).search(question.plain)
    by_power = hears(question, "cooks alone") and _power_failed(question)
    if not (found or by_power) or hears(question, "appliance itself"):
        return None
    hours = hours_in(question.plain, question)
    was_cooking = hears(question, "was cooking")
    names_food = hears(question, "food inside") and not hears(question, "oven named")
    if hours is None and not (was_cooking or names_food):
        return None
    if hours is not None and hours <= COOKER_H and not hears(question, "time unknown"):
        first = (
            f"Finish it now on the hob or in an oven: {span_of_hours(hours)} off is within the 2 hours that"
            " food may be below 60 °C / 140 °F (USDA FSIS)."
        )
        then = "Bring it to 74 °C / 165 °F in the middle without a pause; was it longer, throw it away."
    else:
        first = (
            "No: throw it away. Below 60 °C / 140 °F for over 2 hours, or for a time nobody knows, it is not"
            " safe (USDA FSIS), also where it looks done or is still warm."
        )
        then = "Finishing it on the hob kills germs but does not destroy the toxins some leave."
    return _told(question, first, then)


def cold_failed(question: Question) -> Answer | None:
    """The verdict on what was in a fridge or freezer that had no current."""
    fridge_off = pattern(question.store, _COLD_FAILED).search(question.plain) is not None
    if not fridge_off and not _power_failed(question):
        return None
    if hears(question, "no cold in it"):
        return None
    hours = hours_in(question.plain, question)
    if hours is None and question.says("days"):
        hours = LONG_H
    if hears(question, "freezer named"):
        freezer = _of_a_freezer(question, hours)
        if _FRIDGE_TOO.search(question.plain):  # "and the fridge stuff?"
            return _told(question, f"The freezer: {freezer[0]}", freezer[1], *_fridge_too(question, hours))
        return _told(question, *freezer)
    return _told(question, *_of_a_fridge(question, hours))


def fridge_too_warm(question: Question) -> Answer | None:
    """The verdict on what lay in a fridge that reads too warm, whatever else is asked."""
    if not _warm_readings_degC(question) or hears(question, "fridge reading of something else"):
        return None
    told = row(question.store, "fridge-warm")
    hours = hours_in(question.plain, question)
    is_long = (hours is not None and hours > COOKER_H) or hears(question, "for days")
    if told is None or not is_long:
        return told
    return replace(told, answer=f"{THROWN} {told.answer}")


def _warm_readings_degC(question: Question) -> list[float]:
    """What a fridge is said to read, where that is too warm for food and no warmer than a room."""
    found = (
        (float(said["number"]), said["scale"] or "")
        for said in _FRIDGE_READS.finditer(question.plain)
        if said["reads"] or said["scale"] or said["degrees"]
    )
    read = (celsius(n) if scale.startswith("f") or n > HOTTEST_ROOM_DEGC else n for n, scale in found)
    return [degC for degC in read if WARMEST_FRIDGE_DEGC < round(degC, 1) <= HOTTEST_ROOM_DEGC]


def _power_failed(question: Question) -> bool:
    return pattern(question.store, _POWER_FAILED).search(question.plain) is not None


THROW = (
    "Meat, fish, milk, eggs and cooked food go; hard cheese, butter, jam, whole fruit and vegetables keep. A"
    " good smell proves nothing, and cooking does not destroy the toxins some germs leave."
)
FREEZER = (
    "A full closed freezer holds 48 hours, a half full one 24; what still has ice may be refrozen or cooked."
)


def _of_a_fridge(question: Question, hours: float | None) -> tuple[str, ...]:
    rule = "a closed fridge keeps food safe for about 4 hours, an opened one less (USDA FSIS)"
    if hears(question, "door open"):
        return (
            "Throw away meat, fish, milk, eggs and cooked food that was above 4 °C / 40 °F for over 2 hours,"
            f" or for a time you don't know (USDA FSIS): an open door lets the cold out, while {rule}.",
            "What still reads 4 °C / 40 °F or below is kept.",
        )
    if hours is None:
        return (f"{rule[0].upper()}{rule[1:]}. After that throw it away.", THROW, FREEZER)
    if hours > FRIDGE_H:
        span = "That long" if hours == LONG_H else span_of_hours(hours).capitalize()
        return (f"No: throw it away. {span} without cold is over the limit: {rule}.", THROW)
    return (
        f"Yes, if the door stayed shut: {span_of_hours(hours)} is within the limit, {rule}.",
        "Measure: at 4 °C / 40 °F or below it is kept; what was above that for over 2 hours is thrown away.",
    )


def _fridge_too(question: Question, hours: float | None) -> tuple[str, ...]:
    first, *more = _of_a_fridge(question, hours)
    return (f"The fridge: {first}", *(sentence for sentence in more if sentence != FREEZER))


def _of_a_freezer(question: Question, hours: float | None) -> tuple[str, ...]:
    rule = "a full closed freezer holds 48 hours, a half full one 24 (USDA FSIS)"
    warm = hears(question, "warmed through")
    if hears(question, "icy still") and not warm:
        return (
            "Yes: what still has ice crystals, or reads 4 °C / 40 °F or below, may be refrozen or cooked at"
            " once (USDA FSIS; the UK FSA asks to cook raw meat before it is frozen again).",
            f"By the clock {rule}; what got warmer for over 2 hours is thrown away, whatever it smells like.",
        )
    limit = HALF_FREEZER_H if hears(question, "half full") else FULL_FREEZER_H
    if warm or (hours is not None and hours > limit):
        return (
            f"No: throw it away. It got warm: {rule}, and above 4 °C / 40 °F for over 2 hours food is not"
            " safe.",
            "Only what still has ice crystals or reads 4 °C / 40 °F or below may be refrozen or cooked;"
            " cooking does not destroy the toxins some germs leave.",
        )
    return (
        f"Only what still has ice crystals or reads 4 °C / 40 °F or below may be refrozen or cooked: {rule},"
        " the fridge 4.",
        "What got warmer for over 2 hours is thrown away; a good smell proves nothing.",
    )


def _told(question: Question, *sentences: str) -> Answer:
    return Answer(
        known=True,
        answer=" ".join((*sentences, LOCAL_RULES)),
        sources=cited(question.store, "A-FSIS-HANDLE", "A-FSIS-LEFT"),
    )
