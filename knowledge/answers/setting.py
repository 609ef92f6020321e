"""The heat around a food is not the heat inside it: "turkey at 175F in the oven overnight".

A temperature belongs to whatever is named nearest to it: an oven, smoker, bath or slow cooker, or
the middle of the food. One that is held for hours, or that no core ever has, is of the surroundings too.
USDA FSIS: an oven for meat and poultry is set to 163 °C / 325 °F or more, a smoker to 107-149 °C /
225-300 °F; a slow cooker works at 77-138 °C / 170-280 °F.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from knowledge.answers.air import PLACE_MAX_DEGC
from knowledge.answers.cautions import STRICTER_LOCAL_RULES as LOCAL
from knowledge.answers.cite import cited
from knowledge.answers.degrees import TEMPERATURE, as_read, both
from knowledge.answers.heating import has_fan, is_slow
from knowledge.answers.hot import held_hot
from knowledge.answers.minimums import HOTTEST_CORE_DEGC, MEATS, Minimum, minimum_of
from knowledge.answers.model import Answer, Question
from knowledge.units import celsius, is_met

OVEN_DEGC = 162.8  # 325 °F
DIAL_K = 3.0  # dials and charts call 325 °F 160 °C
FAN_K = 20.0  # a fan oven is set so much lower
SMOKER_DEGC, HOTTEST_SMOKER_DEGC, SLOW_COOKER_DEGC = 107.2, 160.0, 76.7  # 225 °F, a grill from there, 170 °F
SMOKER_RULE = "USDA FSIS: keep a smoker at 107-149 °C / 225-300 °F, for thawed food only."
SLOW_COOKER_RULE = "USDA FSIS: a slow cooker works at 77-138 °C / 170-280 °F, for thawed food only."
HEAT = "heat"  # owner of a temperature that is of the surroundings, whatever gives it
LOW_AND_SLOW_DEGC = 105.0  # from here tough joints are roasted low, by common practice
DOUBTFUL_FROM = 160.0  # a bare number of an oven from here to the next may be of either scale
FAHRENHEIT_FROM = 260.0  # a bare number from here on is Fahrenheit
_AROUND = {
    "grill or smoker": re.compile(r"smokers?|smoking|barbecue|bbq|pellet grill|grill|kamado"),
    "slow cooker": re.compile(r"slow cookers?|crock ?pots?|crock"),
    "bath": re.compile(r"sous vide|water bath|circulator|immersion"),
    "oven": re.compile(
        r"ovens?|airfryer|roaster|dehydrator|thermostat|set (?:to|at)|dial(?:led)?|preheat\w*"
        r"|roast(?:ing|ed)? at|bak(?:e|ed|ing) at"
    ),
}
_KNOBS = ("set ", "dial", "thermostat", "preheat")  # of whatever else is named
_OIL = re.compile(r" (?:oil|fat|fryer)(?: \w+)? (?:at|to|is|of) \d| fry\w* (?:\w+ ){0,3}?at \d")
_CORE = re.compile(
    r" (?:core|inside|internal\w*|middle|centre|center|thermometer|probe|thickest|reads?|reading|reach\w*"
    r"|hits?|(?:got|gets|comes?|came|cooked) to|until|measures?|done at|is it done|bone|breast is|thigh is) "
)
_ITS_OWN = re.compile(
    r" (oven|smoker|grill|roaster|bath) (?:thermometer )?(?:reads|says|shows|only reaches|reaches|hits) "
)
_OUT_OF_IT = re.compile(
    r" (?:out of|off|from|leaves|left) (?:the |my |our )?(?:oven|smoker|grill|slow cooker|bath) "
)
_FOR_HOURS = re.compile(
    r" (?:low temperature|low temp|low heat|low and slow|slow roast\w*|overnight|all night|all day"
    r"|(?:for|about) (?:several |many |\w+ )?(?:hours?|hrs?)|\d+ ?(?:-|to)? ?\d* ?(?:hours?|hrs?|h)"
    r"|(?:two|three|four|five|six|eight|ten|twelve) hours?) "
)
_BARE = re.compile(
    r"(?:(?<= at )|(?<= from )|(?<= until )|(?<= hits )|(?<= reads )"
    r"|(?<= to )|(?<= on )|(?<= of )|(?<= oven ))(\d{2,3})(?: degrees?| deg)?(?= )"
    r"(?! (?:min|hour|g |kg|ml|per))"
)
_HELD = re.compile(
    r" (?:keep \w+ (?:\w+ )?(?:warm|hot)|keep warm|kept (?:warm|hot)|hold(?:ing)?|warming|stay warm"
    r"|rotisserie|cooked (?!at |in |for |on |to |over|slow|through |until |safe |ok |it |all ))"
)
_RAW_YET = (
    "raw",
    "uncooked",
    "to cook",
    "slow cooked",
    "is it cooked",
    "reheat",
    "warm up",
    "warm a",
    "heat up",
)
_NOT_THIS = (
    "thaw", "defrost", "marinat", "dough", "yogurt", "yoghurt", "jerky", "biltong", "proof", "plates",
    "smoke point", "oil temp", "how hot should", "what temp", "which temp", "what oven", "convert",
    "in celsius", "in fahrenheit", "gas mark", "pressure",
)  # fmt: skip
_RESTS = ("rest_", "rests", "rested", "resting", "carry over", "carryover", "carries over", "coast")


@dataclass(frozen=True, slots=True, kw_only=True)
class Said:
    """A temperature in the question and its owner: a key of `_AROUND`, "core", `HEAT`, or "" for none."""

    degC: float
    owner: str
    at: int  # position in the plain text


def setting(question: Question) -> Answer | None:
    """The verdict on a temperature of the oven, smoker, bath or slow cooker; None where there is none."""
    if question.says(*_NOT_THIS) or _OIL.search(question.plain):
        return None
    minimum = minimum_of(question)
    around = [said for said in _said(question) if said.owner not in ("core", "")]
    if minimum is None or not around:
        return None
    lowest = min(around, key=lambda said: said.degC)
    if _HELD.search(question.plain) and not question.says(*_RAW_YET):
        return held_hot(question, (lowest.degC,))
    if lowest.owner in ("oven", HEAT):
        return _in_oven(question, lowest, minimum)
    rule, least_degC = {
        "grill or smoker": (SMOKER_RULE, SMOKER_DEGC),
        "slow cooker": (SLOW_COOKER_RULE, SLOW_COOKER_DEGC),
        "bath": ("In a bath the middle gets there only after hours; I plan none.", minimum.degC),
    }[lowest.owner]
    if lowest.degC > HOTTEST_SMOKER_DEGC:
        return None  # a grill, or a cooker set to fry
    lead = "" if is_met(lowest.degC, least_degC) else "No: "
    return _told(question, lowest, minimum, rule, lead=lead)


def _in_oven(question: Question, said: Said, minimum: Minimum) -> Answer | None:
    fan_K = FAN_K if has_fan(question) else 0.0
    if is_met(said.degC + fan_K + DIAL_K, OVEN_DEGC):
        asked = question.says("ok", "fine", "safe", "enough", "right") and not question.says(
            "how long", "time_"
        )
        rule = (
            f"USDA FSIS asks for {both(OVEN_DEGC)} or more (a fan oven about 20 °C less); the core decides."
        )
        return _told(question, said, minimum, rule, lead="") if asked else None
    verdict = question.says(
        "safe", "ok", "fine", "can i", "can you", "right", "enough", "overnight", "all night"
    )
    if said.degC >= LOW_AND_SLOW_DEGC and _is_tough(question) and not verdict:
        return None  # how long it takes low and slow is what is asked
    rule = (
        f"USDA FSIS: set an oven to {both(OVEN_DEGC)} or more for meat and poultry, also for many hours or "
    )
    rule += "overnight: in less heat the middle stays for hours where germs grow."
    return _told(question, said, minimum, rule, lead="No: ")


def _is_tough(question: Question) -> bool:
    return any(is_slow(question, food, "roast") for food in question.foods)


def _told(question: Question, said: Said, minimum: Minimum, rule: str, *, lead: str) -> Answer:
    name = "heat around it" if said.owner == HEAT else f"heat of the {said.owner}"
    text = f"{lead}{as_read(said.degC)} is the {name}, not the inside. {rule} {minimum.line} "
    if _is_tough(question):
        text += "Tough meat is tender at about 93-96 °C / 200-205 °F inside. "
    return Answer(
        known=True,
        answer=f"{text}Measure with a thermometer. {LOCAL}",
        sources=cited(question.store, "A-FSIS-HANDLE", *minimum.sources),
    )


def rested(question: Question) -> Answer | None:
    """The verdict on food taken off below its minimum to be rested: rest makes up for nothing."""
    minimum = minimum_of(question)
    if minimum is None or not question.says(*_RESTS) or question.says("dough", "batter"):
        return None
    read = [
        said.degC
        for said in _said(question)
        if said.owner in ("core", "") and 10.0 <= said.degC <= HOTTEST_CORE_DEGC
    ]
    if not read or is_met(min(read), minimum.degC):
        return None
    text = (
        f"No: {as_read(min(read))} is below the safe minimum, and no rest is counted on to make up for it. "
    )
    text += f"{minimum.line} Leave it on the heat until the thermometer shows that, then rest it. {LOCAL}"
    return Answer(known=True, answer=text, sources=cited(question.store, *minimum.sources))


def _said(question: Question) -> tuple[Said, ...]:
    """The temperatures in the question, each with its owner."""
    plain = _OUT_OF_IT.sub(" is it done ", question.plain)  # what comes out of the oven has its own heat
    plain = _ITS_OWN.sub(r" \1 \1 ", plain)
    owners = [(m.start(), m.end(), name) for name, words in _AROUND.items()
              for m in re.finditer(rf"(?<= )(?:{words.pattern})(?= )", plain)]  # fmt: skip
    real = [owner for owner in owners if not plain[owner[0] :].startswith(_KNOBS)]
    owners = real or owners
    named = [name for _, _, name in owners]
    owners += [(m.start() + 1, m.end(1), "core") for m in re.finditer(rf"(?=({_CORE.pattern}))", plain)]
    meat = any(food.safety in MEATS for food in question.foods)
    found = []
    for at, end, value, unit in _numbers(plain):
        owner = min(owners, key=lambda o: min(abs(o[0] - end), abs(o[1] - at)), default=(0, 0, ""))[2]
        if (
            owner in ("", "core")
            and meat
            and (
                _for_hours(plain, owner, _degC(value, unit, owner))
                or _degC(value, unit, "core") > HOTTEST_CORE_DEGC
            )
        ):
            owner = named[0] if named else HEAT
        if not unit and owner != "core" and DOUBTFUL_FROM < value <= FAHRENHEIT_FROM:
            continue  # 200 in an oven may be either
        found.append(Said(degC=_degC(value, unit, owner), owner=owner, at=at))
    return tuple(found)


def _for_hours(plain: str, owner: str, degC: float) -> bool:
    """True for a heat held for hours; what is no warmer than a hot day is that of a place."""
    return owner == "" and degC > PLACE_MAX_DEGC and _FOR_HOURS.search(plain) is not None


def _degC(value: float, unit: str, owner: str) -> float:
    """A number of a scale in °C; a bare one is Fahrenheit where Celsius would be too hot for its owner."""
    fahrenheit = unit.startswith("f") or (
        not unit and value > (100.0 if owner in ("core", "") else FAHRENHEIT_FROM)
    )
    return celsius(value) if fahrenheit else value


def _numbers(plain: str) -> list[tuple[int, int, float, str]]:
    """Where each temperature stands, its number and the first letter of its scale, "" for a bare one."""
    scaled = [(m.start(), m.end(), float(m[1]), m[2][0]) for m in TEMPERATURE.finditer(plain)]
    scaled = [(at, end, value, "c" if unit == "c" else "f") for at, end, value, unit in scaled]
    return scaled or [(m.start(), m.end(), float(m[1]), "") for m in _BARE.finditer(plain)]
