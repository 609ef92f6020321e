"""Whether a food suits a pressure cooker."""

from __future__ import annotations

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.foods.model import Behaviour, Role

MANUAL_DECIDES = "The appliance's manual decides."
_VERDICTS = {
    Behaviour.UNSUITABLE: "No: {} is not for a pressure cooker.",
    Behaviour.FALLS_APART: "Better not: {} falls apart under pressure; add it after the pressure is off.",
    Behaviour.FOAMS: "Yes, with care: {} foams and can block the valve. Fill at most half.",
    Behaviour.SWELLS: "Yes, with care: {} swells. Fill at most half.",
}
_SUITS = (
    "Yes: {} does well under pressure. Fill at most two thirds, with at least 250 ml / 1 cup of thin liquid."
)


def sealed(question: Question) -> Answer | None:
    """Whether a food may go into a pressure cooker."""
    asked = hears(question, "may i") and hears(question, "pressure cooker")
    if not asked or hears(question, "more than sealing"):
        return None
    food = next((food for food in question.foods if food.role is Role.COOK), None)
    if food is None:
        return None
    verdict = _VERDICTS.get(food.pressure, "").format(food.name) or _SUITS.format(food.name.capitalize())
    return Answer(known=True, answer=f"{verdict} {MANUAL_DECIDES}", sources=cited(question.store, "A-MANUAL"))
