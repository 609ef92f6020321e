"""Food kept hot: the temperature it is held at, against the published limit.

USDA FSIS: 60 °C / 140 °F or above, else 2 hours in all. UK FSA: 63 °C.
"""

from __future__ import annotations

import re

from knowledge.answers.air import air_degC
from knowledge.answers.cautions import LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.degrees import as_read, both, temperatures_degC
from knowledge.answers.heard import hears
from knowledge.answers.model import Answer, Question
from knowledge.units import is_met

HOLD_DEGC, UK_HOLD_DEGC = 60.0, 63.0
HOTTEST_HELD_DEGC = 110.0  # beyond it is an oven that cooks
RULE = (
    f"Keep hot food at {both(HOLD_DEGC)} or above all through (USDA FSIS; UK {both(UK_HOLD_DEGC)}), measured,"
    " and only food that was cooked through before; put it in steaming hot. Below that at most 2 hours in"
    " all, 1 hour above 32 °C / 90 °F, rice 1 hour; then throw it away."
)
TAKE_THE_UK_S = "By USDA FSIS yes, if that is the coldest spot; the UK asks 63 °C, take that to be sure."
_KEEPING_IT_HOT = re.compile(
    r" (?:keep|keeping|hold|holding|kept|held|leave|serve) (?:\w+ ){1,4}(?:hot|warm) "
    r"| (?:keep|keeping|hold|holding|leave) (?:\w+ ){1,4}at \d.* (?:all day|all night|overnight|hours|until"
    r"|till|party|guests|service) "
)
_COOKING_IT_THERE = re.compile(
    r" (?:to cook|(?:can|could|may) i cook|raw|uncooked"
    r"|cook (?:the |my |a )?\w+ (?:on|in|at) (?:the )?(?:keep )?warm) "
)


def kept_hot(question: Question) -> Answer | None:
    """The temperature at which cooked food is kept hot, or the verdict on one."""
    if not is_kept_hot(question):
        return None
    read = tuple(degC for degC in temperatures_degC(question) if degC <= HOTTEST_HELD_DEGC)
    return held_hot(question, read) if read or hears(question, "asks how hot") else None


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
    return hears(question, "kept hot") or _KEEPING_IT_HOT.search(question.plain) is not None


def _verdict(coldest_degC: float | None) -> tuple[str, ...]:
    if coldest_degC is None:
        return ()  # a question for the figure
    if not is_met(coldest_degC, HOLD_DEGC):
        return (f"No: {as_read(coldest_degC)} is too cool, germs grow there.",)
    if not is_met(coldest_degC, UK_HOLD_DEGC):
        return (TAKE_THE_UK_S,)
    return (f"Yes, if {as_read(coldest_degC)} is the coldest spot.",)
