"""Whether a food may be eaten raw."""

from __future__ import annotations

from knowledge.answers.cautions import SHORT_LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.heat.minimums import safe_line
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears, meanings
from knowledge.foods.model import Food, Role
from knowledge.text.clauses import says


def raw(question: Question) -> Answer | None:
    """May a food be eaten raw: no for what can harm, with the reason and the authority."""
    asked = hears(question, "raw") and hears(question, "may it be eaten")
    if not asked or not question.foods or hears(question, "more than raw"):
        return None
    food = question.foods[-1]
    verdict = _verdict(question, food, _name(question, food))
    if not verdict:
        return None
    return Answer(
        known=True,
        answer=f"{verdict} {SHORT_LOCAL_RULES}",
        sources=cited(question.store, "A-FSIS-TEMP" if food.safety else "A-FSA"),
    )


def _name(question: Question, food: Food) -> str:
    said = next(m.phrase for m in reversed(question.mentions) if m.food.id == food.id)
    return said.removeprefix("raw ")


def _verdict(question: Question, food: Food, name: str) -> str:
    """One sentence, "" where the tables do not say."""
    if food.safety:
        return f"No, not raw: cook {name} through, {safe_line(food, question)}."
    if _notes_warn(question, food):
        return f"No, not raw: {name}: {food.notes}."
    if food.role is Role.FINISH or _is_eaten_raw(question, food):
        return f"Yes, washed well, {name} may be eaten raw. Frail eaters and pregnant women ask a doctor."
    if food.role is Role.COOK:
        return f"I would not eat {name} raw: it is meant to be cooked, and no authority I hold calls it safe."
    return ""


def _notes_warn(question: Question, food: Food) -> bool:
    """True where what a cook should know of the food speaks of harm or of cooking."""
    return says(f" {food.notes.lower()} ", *meanings(question.store, "harmful raw")[""])


def _is_eaten_raw(question: Question, food: Food) -> bool:
    own = {("food", food.id), ("group", food.group)}
    return any((row["by"], row["value"]) in own for row in question.store.table("eaten_raw"))
