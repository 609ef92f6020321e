"""Safe temperatures: "what temp for pork chops", "is chicken safe at 155F".

The figure of the leading authority comes first and the strictest other one is named beside
it. A question about doneness gets the minimum before the word of the trade.
"""

from __future__ import annotations

import re

from knowledge.answers.cautions import MEASURE, STRICTER_LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.degrees import as_read, both, temperatures_degC
from knowledge.answers.heard import hears
from knowledge.answers.minimums import (
    COLDEST_CORE_DEGC,
    HOTTEST_CORE_DEGC,
    LEADING,
    MEATS,
    Minimum,
    core_degC,
    figure,
    leading,
    minimum_of,
    said_minimum,
)
from knowledge.answers.model import Answer, Question
from knowledge.units import is_met

NEVER_UNDERDONE = frozenset({"poultry", "ground_meat", "fish", "offal", "game"})
NOT_UNDERDONE = "No, not underdone."
_WHAT_IT_READS = re.compile(
    r" what (?:should|must|does|do|will|would) (?:\w+ ){1,5}(?:read|show|reach) "
)  # "what should the thermometer in a roast read"
_COOKED_TO = re.compile(r" (?:cook|get|come|go|heat|heated|reach)(?: \w+){0,4} to $")


def temperature(question: Question) -> Answer | None:
    """A safe core temperature, or the verdict on one that was read."""
    read = [d for d in temperatures_degC(question) if COLDEST_CORE_DEGC <= d <= HOTTEST_CORE_DEGC]
    if not _asked(question, is_read=bool(read)):
        return None
    minimum = minimum_of(question)
    if minimum is None:
        general = hears(question, "asks for all minima") and not question.mentions
        return _all_of_them(question) if general else None
    said = _of_a_reading(min(read), minimum) if read else _of_the_figure(question, minimum)
    return Answer(
        known=True,
        answer=" ".join((*said, MEASURE, STRICTER_LOCAL_RULES)),
        sources=cited(question.store, *minimum.sources),
    )


def _asked(question: Question, *, is_read: bool) -> bool:
    """True where the temperature inside a food is asked for; what is surest decides first."""
    has_minimum = any(food.safety for food in question.foods)
    word_has_one = bool(said_minimum(question))
    if hears(question, "no core temperature"):
        return False
    if hears(question, "asks how many minutes") and not hears(question, "asks a heat"):
        return False
    if hears(question, "asks the inside"):
        smokes = any(food.smoke_degC for food in question.foods)  # an oil is asked for its smoke point
        return not smokes and not _is_of_oven(question)
    if _WHAT_IT_READS.search(question.plain):
        return has_minimum
    if hears(question, "asks what is safe"):
        return has_minimum or word_has_one
    if hears(question, "asks when it is done"):
        return has_minimum
    if hears(question, "asks a cooking time") and not hears(question, "asks if it will do"):
        return False
    if question.foods and not has_minimum:
        return False
    return (
        _COOKED_TO.search(question.plain) is not None
        or (hears(question, "asks at what point") and question.says("safe"))
        or (is_read and (bool(question.foods) or word_has_one))
        or _asks_if_underdone_will_do(question)
    )


def _asks_if_underdone_will_do(question: Question) -> bool:
    return (
        any(food.safety in MEATS for food in question.foods)
        and hears(question, "underdone or medium")
        and hears(question, "asks to eat it so")
    )


def _is_of_oven(question: Question) -> bool:
    """True where every temperature said is one of an oven and a time is what is asked."""
    read = temperatures_degC(question)
    return bool(read) and min(read) > HOTTEST_CORE_DEGC and hears(question, "asks for minutes")


def _of_a_reading(coldest_degC: float, minimum: Minimum) -> tuple[str, ...]:
    read = as_read(coldest_degC)
    if is_met(coldest_degC, minimum.degC):
        return f"Yes, {read} is enough if that is the coldest spot.", minimum.line
    return f"No, not yet: {read} is below the safe minimum. Cook on.", minimum.line


def _of_the_figure(question: Question, minimum: Minimum) -> tuple[str, ...]:
    refused = minimum.id in NEVER_UNDERDONE and hears(question, "underdone")
    said = (NOT_UNDERDONE if refused else "", minimum.line, _stricter(minimum), _trade(question, minimum))
    return tuple(filter(None, said))


def _stricter(minimum: Minimum) -> str:
    """ "FSANZ asks for 75 °C." """
    row = minimum.stricter
    if row is None:
        return ""
    hold = f" for {float(row['hold_s']) / 60:.0f} min" if float(row["hold_s"] or 0) else ""
    return f"{row['authority']} asks for {core_degC(row):.0f} °C{hold}."


def _trade(question: Question, minimum: Minimum) -> str:
    """What the trade means by the word for a steak that is said, against the minimum."""
    if minimum.id != "whole_meat":
        return ""
    names = {row["name"]: core_degC(row) for row in question.store.table("steak_words")}
    name = max((name for name in names if f" {name} " in question.plain), key=len, default="")
    if not name:
        return ""
    means = f"{name.capitalize()} is {both(names[name])} in the trade (common practice)"
    if is_met(names[name], minimum.degC):
        return f"{means}."
    return f"{means}: below that minimum, at your own risk; not for frail eaters."


def _all_of_them(question: Question) -> Answer:
    rows = leading(question.store).values()
    listed = "; ".join(f"{row['what']} {figure(row)}" for row in rows)
    return Answer(
        known=True,
        answer=f"Safe core temperatures ({LEADING}): {listed}. {STRICTER_LOCAL_RULES}",
        sources=cited(question.store, *(row["source"] for row in rows)),
    )
