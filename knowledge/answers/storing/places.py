"""Where a food is kept: `storage_places.csv`, and how long it keeps there uncooked."""

from __future__ import annotations

from collections.abc import Mapping

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.ages import span_of_days, span_of_months
from knowledge.answers.reading.heard import hears, pattern
from knowledge.foods.model import Food

Row = Mapping[str, str]

UNCHILLED = "not in the fridge"  # words of `storage_places.csv`
NO_FRIDGE = "no fridge needed"
LOOK_IT_OVER = (
    "often longer: look it over, throw away what is soft, wet or mouldy. Cut: wrapped in the fridge, and used"
    " soon."
)
LABEL_DECIDES = (
    "It keeps for months to the date on its label; once opened as the label says, with a clean dry spoon."
    " Mould, a rancid or odd smell: throw it away. In doubt throw it out."
)
_WHERE = (
    r" how (?:should|do|can|to|is|are|would|best).* (?:keep|store|stored|kept) "
    r"| (?:keep|store)(?: \w+){1,3} how $"
    r"| (?:stop|keep|prevent|avoid)(?: \w+){0,4} (?:going|getting|turning|wilting|rotting|spoiling|becoming) "
    r"| keeps (?:going|getting|turning|wilting) "
    r"| or (?:(?:the|in the|on the) )?{storage place} "
    r"| (?:keep|store|put|belongs?|go|goes|stored|kept|live)(?: \w+){0,3} in the {storage place} $"
)


def where_kept(question: Question, food: Food, name: str) -> Answer | None:
    """Where a food is kept raw: asked for, or all that can be said where no table gives days for it."""
    row = _row(question, food)
    if row is None:
        return None
    return (
        _outside_the_fridge(question, food, name, row)
        or _where(question, food, name, row)
        or _on_the_shelf(question, food, name, row)
    )


def _outside_the_fridge(question: Question, food: Food, name: str, row: Row) -> Answer | None:
    """How long a food keeps that is better not chilled."""
    if UNCHILLED not in row["where"] or not food.fridge_days:
        return None
    if not hears(question, "asks how many days") or hears(question, "chilled or cut"):
        return None
    kept = f"whole and sound at least {span_of_days(food.fridge_days)}, {LOOK_IT_OVER}"
    return Answer(
        known=True,
        answer=f"{name.capitalize()}: {row['where']}; {kept}",
        sources=cited(question.store, row["source"], *food.sources_of("fridge_days")),
    )


def _where(question: Question, food: Food, name: str, row: Row) -> Answer | None:
    """Where a food is kept, when that is asked rather than how long."""
    if not _asks_where(question) or (food.start_state == "dry" and row["by"] == "part"):
        return None
    place = _place(question, name, row)
    if not food.fridge_days or "fridge" not in row["where"] or UNCHILLED in row["where"]:
        return Answer(known=True, answer=place, sources=cited(question.store, row["source"]))
    chilled = f"In the fridge {span_of_days(food.fridge_days)}, to be cautious"
    if food.freezer_months:
        chilled += f"; about {span_of_months(food.freezer_months)} in the freezer for quality"
    return Answer(
        known=True,
        answer=f"{place} {chilled}.",
        sources=cited(question.store, row["source"], *food.sources_of("fridge_days", "freezer_months")),
    )


def _on_the_shelf(question: Question, food: Food, name: str, row: Row) -> Answer | None:
    """A food of the cupboard that no table gives days for: its label decides."""
    if food.fridge_days is not None or row["by"] == "part" or question.says("freez", "cooked"):
        return None
    own = row["by"] == "food"
    if not own and (food.start_state not in ("room", "dry") or food.safety):
        return None
    cooked = f" Cooked: {span_of_days(food.cooked_days)} in the fridge." if food.cooked_days else ""
    return Answer(
        known=True,
        answer=f"{_place(question, name, row)} {LABEL_DECIDES}{cooked}",
        sources=cited(question.store, row["source"]),
    )


def _place(question: Question, name: str, row: Row) -> str:
    """ "Ghee: in the cupboard ...", with No before it where the fridge is asked for and not needed."""
    if NO_FRIDGE in row["where"] and hears(question, "asks if it is chilled"):
        return f"No: {name}: {row['where']}."
    return f"{name.capitalize()}: {row['where']}."


def by_its_label(question: Question, name: str) -> Answer:
    """What is said of a food of the cupboard that stands in no table of days or places."""
    return Answer(
        known=True,
        answer=f"{name.capitalize()}: dry, dark and closed in a cupboard. {LABEL_DECIDES}",
        sources=cited(question.store, "CP"),
    )


def _asks_where(question: Question) -> bool:
    if hears(question, "asks how many days") or question.says("freez"):
        return False
    said = pattern(question.store, _WHERE).search(question.plain)
    return hears(question, "asks where it is kept") or said is not None


def _row(question: Question, food: Food) -> Row | None:
    """The row of `storage_places.csv` that fits best: of the food, its group, its part of a dinner."""
    rows = {(row["by"], row["value"]): row for row in question.store.table("storage_places")}
    own = (("food", food.id), ("group", food.group), ("part", food.part))
    return next((rows[place] for place in own if place in rows), None)
