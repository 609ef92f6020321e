"""Safe temperatures: "what temp for pork chops", "is chicken safe at 155F".

The figure of the leading authority comes first and the strictest other one is named beside
it. A question about doneness gets the minimum before the word of the trade.
"""

from __future__ import annotations

import re
from dataclasses import replace

from knowledge.answers.cautions import MEASURE, STRICTER_LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.heat.holds import held_instead, held_long_enough
from knowledge.answers.heat.minimums import (
    COLDEST_CORE_DEGC,
    FORMED,
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
from knowledge.answers.reading.degrees import as_read, both, temperatures_degC
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.owners import CORE, NOBODY, owned
from knowledge.foods.model import DoneKind
from knowledge.units import is_met

NEVER_UNDERDONE = frozenset({"poultry", "ground_meat", "fish", "offal", "game", "formed_meat"})
NOT_UNDERDONE = "No, not pink or underdone."
GERMS_INSIDE = (
    "No, not pink: rolling, tying, stuffing, injecting or needling carries germs from the outside into"
    " the middle."
)
COLDEST_COUNTS = "The coldest reading counts, not the average."
STUFFING = "Stuffing must reach 74 °C / 165 °F in its middle (USDA FSIS)."
PINK_BUT_HOT = "Pink near the bone with the middle that hot is pigment and marrow, harmless."
NOT_TENDER_YET = (
    "Safe is not tender: it pulls apart only at about 90-96 °C / 195-205 °F inside (common practice), so go"
    " on."
)
TENDER_FROM_DEGC = 88.0  # a fork goes in
NO_PINK = "For this eater nothing pink: the UK FSA's 70 °C for 2 minutes is surer for whole cuts."
_WHEN_DONE = re.compile(  # "what temp is done" for a goat curry
    r" (?:what|which) (?:internal |core |inside |safe )?temp(?:erature)?s?(?: inside)? (?:is|are|s)"
    r"(?: \w+){0,4}? (?:done|ready|cooked) "
)
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
    said = _of_a_reading(question, min(read), minimum) if read else _of_the_figure(question, minimum)
    return Answer(
        known=True,
        answer=" ".join((*said, MEASURE, STRICTER_LOCAL_RULES)),
        sources=cited(question.store, *minimum.sources),
    )


def asked_or_read_first(question: Question) -> Answer | None:
    """A core temperature that is asked for or read, where a cut, a dish or an eater is named too."""
    inside = any(heat.owner in (CORE, NOBODY) for heat in owned(question))
    if _WHEN_DONE.search(question.plain) or (inside and hears(question, "where it was read")):
        return temperature(question)
    if not inside or not hears(question, "somebody at risk"):
        return None
    told = temperature(question)
    pink = told is not None and told.answer.startswith("Yes") and hears(question, "no pink for them")
    return replace(told, answer=f"{told.answer} {NO_PINK}") if told is not None and pink else told


def read_after_heating(question: Question) -> Answer | None:
    """The verdict on a reading in what was heated again, or in a stuffing, before any general word on"
    " them."""
    inside = [heat.degC for heat in owned(question) if heat.owner in (CORE, NOBODY)]
    read = [degC for degC in inside if COLDEST_CORE_DEGC <= degC <= HOTTEST_CORE_DEGC]
    again, stuffing = hears(question, "heated again"), hears(question, "of the stuffing")
    if not read or not (again or stuffing) or hears(question, "not a core of leftovers"):
        return None
    row = leading(question.store)["poultry" if stuffing and not again else "leftover"]
    minimum = Minimum(
        what="stuffing and the meat round it" if stuffing else "reheated food", lead=row, rows=(row,)
    )
    coldest = "" if is_met(min(read), minimum.degC) or len(read) < 2 else COLDEST_COUNTS
    return Answer(
        known=True,
        answer=" ".join(filter(None, (*_of_a_reading(question, min(read), minimum), coldest, MEASURE))),
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


def _of_a_reading(question: Question, coldest_degC: float, minimum: Minimum) -> tuple[str, ...]:
    read = as_read(coldest_degC)
    if not is_met(coldest_degC, minimum.degC):
        enough = held_long_enough(question, coldest_degC, minimum)
        if enough:
            return (enough, minimum.line)
        hold = held_instead(question, coldest_degC, minimum)
        verdict = "is below the safe minimum" + (" as a mere reading." if hold else ". Cook on.")
        return tuple(filter(None, (f"No, not yet: {read} {verdict}", hold, minimum.line)))
    notes = (
        PINK_BUT_HOT if minimum.id == "poultry" and hears(question, "underdone") else "",
        NOT_TENDER_YET if coldest_degC < TENDER_FROM_DEGC and _wants_it_pulled(question) else "",
    )
    return (f"Yes, {read} is enough if that is the coldest spot.", *filter(None, notes), minimum.line)


def _wants_it_pulled(question: Question) -> bool:
    tough = any(
        question.store.doneness(f.doneness).kind is DoneKind.COLLAGEN for f in question.foods if f.doneness
    )
    return tough and hears(question, "pulled apart")


def _of_the_figure(question: Question, minimum: Minimum) -> tuple[str, ...]:
    refused = minimum.id in NEVER_UNDERDONE and hears(question, "underdone")
    if minimum.id == FORMED:
        no = GERMS_INSIDE if refused or hears(question, "underdone or medium") else ""
        return tuple(filter(None, (no, minimum.line, STUFFING if hears(question, "of the stuffing") else "")))
    signs = _signs(minimum) if hears(question, "asks for signs") else ""
    said = (
        NOT_UNDERDONE if refused else "", signs, minimum.line, _stricter(minimum), _trade(question, minimum)
    )  # fmt: skip
    return tuple(filter(None, said))


def _signs(minimum: Minimum) -> str:
    """What a cook sees when it is done, beside the figure that decides."""
    signs = minimum.lead["signs"]
    return f"Done when {signs}; surest is the figure." if signs else ""


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
