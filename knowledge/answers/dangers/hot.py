"""Food kept hot: the temperature it is held at, against the published limit.

USDA FSIS: 60 °C / 140 °F or above, else 2 hours in all. UK FSA: 63 °C.
"""

from __future__ import annotations

import re

from knowledge.answers.cautions import LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.dangers.air import air_degC
from knowledge.answers.dangers.stood import perishable
from knowledge.answers.heat.minimums import MEATS
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.degrees import as_read, both, temperatures_degC
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.hours import hours_said
from knowledge.units import celsius, is_met

HOLD_DEGC, UK_HOLD_DEGC = 60.0, 63.0
HOTTEST_HELD_DEGC = 110.0  # beyond it is an oven that cooks
RULE = (
    f"Keep hot food at {both(HOLD_DEGC)} or above all through (USDA FSIS; UK {both(UK_HOLD_DEGC)}), measured,"
    " and only food that was cooked through before; put it in steaming hot. Below that at most 2 hours in"
    " all, 1 hour above 32 °C / 90 °F, rice 1 hour; then throw it away."
)
TAKE_THE_UK_S = "By USDA FSIS yes, if that is the coldest spot; the UK asks 63 °C, take that to be sure."
LIMIT_H = 2.0
BOILING_DEGC = 100.0
_NO_SCALE = re.compile(r" (\d{2,3}) ?(?:degrees?|deg|°)(?= )")
ONLY_MEASURED = (
    "Only if it stays steaming hot all that time, measured; was it merely warm, or you don't know, throw it"
    " away."
)
WITHOUT_HEAT = (
    "No, unless a thermometer shows it never fell below 60 °C / 140 °F: what keeps warm without heat cools"
    " within a few hours, so throw it away."
)
_KEEPING_IT_HOT = re.compile(
    r" (?:keep|keeping|hold|holding|kept|held|leave|serve) (?:\w+ ){1,4}(?:hot|warm) "
    r"(?!kitchen|car|room|day|place|spot|garage|van|boot|weather|house|climate)"
    r"| (?:keep|keeping|hold|holding|leave) (?:\w+ ){1,4}at \d.* (?:all day|all night|overnight|hours|until"
    r"|till|party|guests|service) "
)
_HELD_FOR_MINUTES = re.compile(
    r"^(?!.* (?:cooked|buffet|steam table|bain|chafing|guests|serv\w+|hot|warm) )"
    r".* (?:held|hold|holding|stays|stayed) (?:at|there)(?= .*(?:how long|how many min|\d ?(?:min|sec)))"
)
_COOKING_IT_THERE = re.compile(
    r" (?:to cook|(?:can|could|may) i cook|raw|uncooked"
    r"|cook (?:the |my |a )?\w+ (?:on|in|at) (?:the )?(?:keep )?warm) "
)


def kept_hot(question: Question) -> Answer | None:
    """The temperature at which cooked food is kept hot, or the verdict on one."""
    if not is_kept_hot(question):
        return None
    read = _read_degC(question)
    return held_hot(question, read) if read or hears(question, "asks how hot") else None


def _read_degC(question: Question) -> tuple[float, ...]:
    """The temperatures at which food may be held; a bare one is Fahrenheit where Celsius would boil."""
    bare = (float(found) for found in _NO_SCALE.findall(question.plain))
    told = temperatures_degC(question) or tuple(celsius(n) if n > BOILING_DEGC else n for n in bare)
    return tuple(degC for degC in told if degC <= HOTTEST_HELD_DEGC)


def warm_for_hours(question: Question) -> Answer | None:
    """The rule for cooked food that was only warm for longer than it may stand, no temperature being read."""
    hours = hours_said(question)
    if (
        hours is None
        or hours <= LIMIT_H
        or temperatures_degC(question)
        or hears(question, "standing on purpose")
    ):
        return None
    warm = hears(question, "barely warm") or is_kept_hot(question)
    if not warm or hears(question, "heated, not kept hot") or _COOKING_IT_THERE.search(question.plain):
        return None
    if not perishable(question):
        return None
    first = WITHOUT_HEAT if hears(question, "kept without heat") else ONLY_MEASURED
    return Answer(
        known=True,
        answer=f"{first} {RULE} {LOCAL_RULES}",
        sources=cited(question.store, "A-FSIS-LEFT", "A-FSA"),
    )


def held_hot(question: Question, read: tuple[float, ...]) -> Answer:
    """The rule for food kept hot, with the verdict on the coldest of the temperatures read [°C]."""
    said = (*_verdict(min(read, default=None)), RULE, LOCAL_RULES)
    return Answer(known=True, answer=" ".join(said), sources=cited(question.store, "A-FSIS-LEFT", "A-FSA"))


def is_kept_hot(question: Question) -> bool:
    """True where food that is cooked is to stay hot; what is raw is not kept hot, it is cooked there."""
    if air_degC(question) is not None or _COOKING_IT_THERE.search(question.plain):
        return False
    if hears(question, "heated, not kept hot"):
        return False
    if _HELD_FOR_MINUTES.search(question.plain) and any(food.safety in MEATS for food in question.foods):
        return False  # so meat is made safe, not served
    return hears(question, "kept hot") or _KEEPING_IT_HOT.search(question.plain) is not None


def _verdict(coldest_degC: float | None) -> tuple[str, ...]:
    if coldest_degC is None:
        return ()  # a question for the figure
    if not is_met(coldest_degC, HOLD_DEGC):
        return (f"No: {as_read(coldest_degC)} is too cool, germs grow there.",)
    if not is_met(coldest_degC, UK_HOLD_DEGC):
        return (TAKE_THE_UK_S,)
    return (f"Yes, if {as_read(coldest_degC)} is the coldest spot.",)
