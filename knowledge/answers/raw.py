"""Whether a food may be eaten raw, and whether the pressure cooker suits it."""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.minimums import safe_line
from knowledge.answers.model import Answer, Question
from knowledge.foods.model import Behaviour, Food, Role

_RAW = re.compile(r" raw | uncooked | without cooking | not cooked ")
_MAY = re.compile(
    r" (?:can|may|safe|ok|okay|fine|eat|eaten|edible|eating|poisonous|toxic|bad|dangerous|is|are) "
)
_ASKS_ELSE = (
    "how long", "keep", "store", "fridge", "freez", "last", "weigh", "temp", "wash", "serving", "how much",
    "cook", "smell", "off_", "left", "counter", "board", "baby", "toddler", "swap", "instead",
)  # fmt: skip
_SEALED = re.compile(r" pressure cook\w* | under pressure | pressure cooker ")


def raw(question: Question) -> Answer | None:
    """May a food be eaten raw: no for what can harm, with the reason and the authority."""
    asked = _RAW.search(question.plain) and _MAY.search(question.plain)
    if not asked or not question.foods or question.says(*_ASKS_ELSE):
        return None
    food = question.foods[-1]
    name = next(m.phrase for m in reversed(question.mentions) if m.food.id == food.id).removeprefix("raw ")
    sources = ["A-FSIS-TEMP"] if food.safety else ["A-FSA"]
    if food.safety:
        text = f"No, not raw: cook {name} through, {safe_line(food, question)}."
    elif food.notes and re.search(r"poison|raw|cook|boil|germs|stings", food.notes):
        text = f"No, not raw: {name}: {food.notes}."
    elif food.role is Role.FINISH or _is_eaten_raw(question, food):
        text = f"Yes, washed well, {name} may be eaten raw. Frail eaters and pregnant women ask a doctor."
    elif food.role is Role.COOK:
        text = f"I would not eat {name} raw: it is meant to be cooked, and no authority I hold calls it safe."
    else:
        return None
    return Answer(
        known=True, answer=f"{text} Your local rules come first.", sources=cited(question.store, *sources)
    )


def _is_eaten_raw(question: Question, food: Food) -> bool:
    own = {("food", food.id), ("group", food.group)}
    return any((row["by"], row["value"]) in own for row in question.store.table("eaten_raw"))


def sealed(question: Question) -> Answer | None:
    """Whether a food may go into a pressure cooker."""
    may = question.says(
        "can i",
        "can you",
        "can we",
        "is it ok",
        "ok to",
        "okay to",
        "safe to",
        "suitable",
        "good in",
        "should i",
    )
    if (
        not may
        or not _SEALED.search(question.plain)
        or question.says("how long", "minutes", "open", "water", "fill")
    ):
        return None
    food = next((f for f in question.foods if f.role is Role.COOK), None)
    if food is None:
        return None
    return Answer(
        known=True,
        answer=f"{_verdict(food)} The appliance's manual decides.",
        sources=cited(question.store, "A-MANUAL"),
    )


def _verdict(food: Food) -> str:
    name = food.name.capitalize()
    match food.pressure:
        case Behaviour.UNSUITABLE:
            return f"No: {food.name} is not for a pressure cooker."
        case Behaviour.FALLS_APART:
            return f"Better not: {food.name} falls apart under pressure; add it after the pressure is off."
        case Behaviour.FOAMS:
            return f"Yes, with care: {food.name} foams and can block the valve. Fill at most half."
        case Behaviour.SWELLS:
            return f"Yes, with care: {food.name} swells. Fill at most half."
        case _:
            return (
                f"Yes: {name} does well under pressure. Fill at most two thirds, with at least 250 ml / 1 cup"
                " of thin liquid."
            )
