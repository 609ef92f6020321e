"""May it go back into the freezer: by how it thawed and whether it was cooked since.

USDA FSIS: what thawed in the fridge, or still holds ice crystals, may be refrozen; what thawed in water or
the microwave is cooked first; what lay over 2 hours in the warm is thrown away. UK FSA: no raw meat again.
"""

from __future__ import annotations

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears, meant

HOW_IT_THAWED = ("in the warm", "quickly", "still icy", "cold")  # the worst counts
VERDICTS = {
    "in the warm": (
        "No: thawed in the warm it is neither frozen again nor cooked after more than 2 hours, 1 hour"
        " above 32 °C"
        " / 90 °F: throw it away (USDA FSIS). Thaw it in the fridge, in cold water or in the microwave"
        " instead."
    ),
    "quickly": (
        "Cook it first: what was thawed in water or the microwave has been warm in places and is cooked at"
        " once"
        " (USDA FSIS). Cooked through, it may be frozen; only what thawed in the fridge may go back raw."
    ),
    "still icy": (
        "Yes, if it still holds ice crystals or reads 4 °C / 40 °F or below (USDA FSIS), at some loss of"
        " quality."
        " UK FSA: raw meat and fish are cooked before they are frozen again, and that is the cautious rule."
        " Soft and warmer than that for over 2 hours: throw it away."
    ),
    "cold": (
        "By USDA FSIS yes, if it thawed in the fridge and stayed at 4 °C / 40 °F or below: it loses some"
        " quality."
        " UK FSA says no for raw meat and fish: cook it first, then freeze it, and that is the cautious rule."
    ),
    "": (
        "Only if it thawed in the fridge and is still cold (USDA FSIS, at some loss of quality); thawed in"
        " cold"
        " water or the microwave, cook it first. UK FSA is stricter: raw meat and fish are cooked before"
        " they are"
        " frozen again. Left out over 2 hours: throw it away."
    ),
}
COOKED_SINCE = (
    "Yes: once cooked through it may be frozen, if it thawed cold: in the fridge, or in water or the"
    " microwave"
    " and was cooked at once (USDA FSIS, UK FSA). Cool it within 2 hours, freeze it in flat portions,"
    " reheat it once"
    " to 74 °C / 165 °F. Thawed in the warm for over 2 hours: throw it away, cooking does not save it."
)
UNLIKE_MEAT = (
    "No: melted ice cream is not frozen again, germs grow in it and it turns icy; throw it away (USDA FSIS)."
)
BREAD = "Yes, if it stayed wrapped and dry: bread only gets drier and staler each time (common practice)."
RULES = "Your local food-safety rules come first."


def refrozen(question: Question) -> Answer | None:
    """The verdict on freezing again what was thawed."""
    again = hears(question, "freezes again")
    thawed = hears(question, "thawed already") and hears(question, "freezes it")
    if not (again or thawed) or hears(question, "not freezing again"):
        return None
    return Answer(
        known=True,
        answer=f"{_verdict(question)} {RULES}",
        sources=cited(question.store, "A-FSIS-THAW", "A-FSA"),
    )


def _verdict(question: Question) -> str:
    if hears(question, "ice cream"):
        return UNLIKE_MEAT
    if question.foods and all(food.group == "bread" for food in question.foods):
        return BREAD
    how = meant(question, "how it thawed", HOW_IT_THAWED)
    if how != "in the warm" and hears(question, "cooked since"):
        return COOKED_SINCE
    return VERDICTS[how]
