"""How long food takes in a slow cooker, and how many whistles it is given: two tables of common practice."""

from __future__ import annotations

from collections.abc import Mapping

from knowledge.answers.cite import cited
from knowledge.answers.cooking.ways import cooks
from knowledge.answers.heat.minimums import safe_line
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.reading.heard import hears
from knowledge.foods.model import Food

NEAREST = ("food", "group", "class")  # the row that speaks most closely of a food
USE = (
    "Thawed through, half to two thirds full, lid on; cubes a quarter less than a joint of 1.5-2 kg. It is"
    " done by"
    " the thermometer, not by the clock"
)
NO_FIXED_TIME = (
    "A whistle is no fixed time, about 2-4 minutes each once at pressure; let it fall by itself, and the"
    " cooker's"
    " manual comes first."
)
BOIL_FIRST = "Soaked, and boiled hard for 10 minutes first (30 by FDA text) in fresh water."


def slow_cooked(question: Question) -> Answer | None:
    """The hours on low and on high."""
    if not hears(question, "slow cooker") or not hears(question, "asks how long it cooks"):
        return None
    mention = _cooked(question)
    if mention is None or hears(question, "not cooking slowly"):
        return None
    row = _row(question, "slow_cooker", _meant(question, mention.food))
    if row is None:
        return None
    low, high = (f"{row[f'{heat}_h_lo']}-{row[f'{heat}_h_hi']} hours" for heat in ("low", "high"))
    safe = safe_line(mention.food, question)
    measured = f"{USE}: {safe}." if safe else f"{USE}."
    return Answer(
        known=True,
        answer=f"{mention.phrase.capitalize()} in a slow cooker: {low} on low or {high} on high, "
        f"{row['until']} (common practice). {measured}",
        sources=cited(question.store, row["source"], "A-FSIS-HANDLE"),
    )


def whistles(question: Question) -> Answer | None:
    """How many whistles a food is given."""
    mention = _cooked(question)
    if mention is None or not hears(question, "whistles") or hears(question, "how much water"):
        return None
    row = _row(question, "whistles", mention.food)
    if row is None:
        return None
    soaked = f" {BOIL_FIRST}" if mention.food.doneness == "bean" else ""
    return Answer(
        known=True,
        answer=f"{mention.phrase.capitalize()}: {row['whistles_lo']}-{row['whistles_hi']} whistles,"
        f" {row['until']} (common practice).{soaked} {NO_FIXED_TIME}",
        sources=cited(question.store, row["source"], "A-MANUAL"),
    )


def _cooked(question: Question) -> Mention | None:
    return next((m for m in question.mentions if cooks(question.store, m.food)), None)


def _meant(question: Question, food: Food) -> Food:
    """The shoulder of pork where it is to be pulled: the tough cut that suits a slow cooker."""
    shoulder = question.store.named(f"{food.name} shoulder") if hears(question, "pulled apart") else None
    return shoulder or food


def _row(question: Question, table: str, food: Food) -> Mapping[str, str] | None:
    rows = {(row["by"], row["value"]): row for row in question.store.table(table)}
    own = {"food": food.id, "group": food.group, "class": food.doneness}
    return next((rows[place] for by in NEAREST if (place := (by, own[by])) in rows), None)
