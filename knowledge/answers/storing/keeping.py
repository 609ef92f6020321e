"""How long food keeps, and what to do with what is left over.

The figures are the foods' own (`fridge_days`, `freezer_months`, `cooked_days`) and, for
dishes, those of `storage.csv`; both hold the most cautious authority that we cite.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from knowledge.answers.cautions import IN_DOUBT, REHEAT_ONCE, SHORT_LOCAL_RULES
from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.reading.ages import age_days, span_of_days, span_of_months
from knowledge.answers.reading.heard import hears
from knowledge.answers.storing.places import by_its_label, where_kept
from knowledge.errors import UnknownFood
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.text.clauses import says

# "Still good for sandwiches": what it is wanted for, not what lies in the fridge.
_PURPOSE = re.compile(
    r" (?:for|to make|into) (?:(?:the|my|our|a|some|making|school|packed|work|cold) )*[^\W\d]+ "
)
CAUTIOUS_DAYS = 2.0  # any cooked food, UK FSA; USDA FSIS allows 3-4
COOKED_MONTHS = 2.0  # the shortest of cooked meat, poultry and dishes in the USDA FSIS data
CAUTIOUS_SOURCES = ("FSA-LEFT", "FSIS-STORE")
STAYS_SAFE_FROZEN = (
    "Kept at -18 °C / 0 °F all the time it stays safe to eat (USDA FSIS); only its quality falls."
)
FSIS_ALLOWS = "USDA FSIS allows 3-4 days for cooked food."
BETTER_NOT = "Better not: "
MIND_THE_DATE = "Mind the date on the pack."
COOK_BEFORE_FREEZING = "Cook or blanch them first: frozen raw they turn grey and watery."
BLANCH_BEFORE_FREEZING = (
    "Blanch most vegetables for 1-3 minutes first, and cook them straight from frozen (common practice)."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Keeps:
    """How long something keeps, in the fridge and, for quality, in the freezer."""

    what: str
    cooked: bool
    fridge_days: float
    freezer_months: float | None  # None: better not frozen
    sources: tuple[str, ...]  # ids


def keeping(question: Question) -> Answer | None:
    """How long a named food or dish keeps, or whether an age is too much."""
    old_days = age_days(question)
    asked = hears(question, "asks how long it keeps") or (old_days and hears(question, "asks to eat it"))
    if not asked or hears(question, "not stored"):
        return None
    kept = _dish(question)
    if kept is None:
        food = _food(question)
        if food is None:
            return None
        name, cooked = _name(question, food), _is_cooked(question, food)
        if not cooked and old_days is None and (place := where_kept(question, food, name)):
            return place
        shelved = food.fridge_days is None and food.start_state in ("room", "dry")
        if shelved and not cooked and old_days is None:
            return by_its_label(question, name)
        kept = _of_a_food(food, name, cooked=cooked)
    frozen = hears(question, "freezing") and not question.says("from frozen")
    said = _in_the_freezer(question, kept, old_days) if frozen else _in_the_fridge(question, kept, old_days)
    return Answer(
        known=True,
        answer=" ".join(said),
        sources=cited(question.store, *(kept.sources or CAUTIOUS_SOURCES)),
    )


def leftovers(food_ids: Sequence[str], *, store: Store) -> tuple[str, str]:
    """How to keep what is left of a dinner of these foods: the text and its source.

    Ids that are not in the tables are skipped.
    """
    foods = list(_known(food_ids, store))
    days = min((_cooked_days(food) for food in foods), default=CAUTIOUS_DAYS)
    rice = any(food.doneness == "white_rice" or "rice" in food.id.split("-") for food in foods)
    within = "1 hour (there is rice in it)" if rice else "2 hours"
    text = (
        f"Leftovers: into the fridge within {within}, shallow;"
        f" eat within {span_of_days(min(days, CAUTIOUS_DAYS))};"
        f" reheat once, steaming hot, 74 °C / 165 °F. {SHORT_LOCAL_RULES}"
    )
    return text, "UK Food Standards Agency (keeping), USDA FSIS (2 hours, reheating)"


def _known(food_ids: Sequence[str], store: Store) -> Iterator[Food]:
    for food_id in food_ids:
        try:
            yield store.food(food_id)
        except UnknownFood:
            continue


# What keeps.


def _without_purpose(question: Question) -> str:
    """The question less what a food named before is wanted for."""
    found = _PURPOSE.search(question.plain)
    if found is None or not any(m.phrase in question.plain[: found.start()] for m in question.mentions):
        return question.plain
    return f"{question.plain[: found.start()]} {question.plain[found.end() :]}"


def _dish(question: Question) -> Keeps | None:
    """The dish of `storage.csv` that is named; a word within a food's longer name is none."""
    rows = question.store.table("storage")
    plain = _without_purpose(question)
    row = next((row for row in rows if says(plain, *row["words"].split(";"))), None)
    if row is None:
        return None
    said = _dish_said(question, row["words"].split(";"))
    if any(_is_another(mention, said) for mention in question.mentions):
        return None
    return Keeps(
        what=row["what"] if said in row["what"] else f"{said} ({row['what']})",
        cooked=True,
        fridge_days=float(row["fridge_days"]),
        freezer_months=float(row["freezer_months"]),
        sources=(row["fridge_days_src"], row["freezer_months_src"]),
    )


def _dish_said(question: Question, words: Sequence[str]) -> str:
    """The dish as it stands in the question: "lasagne" of the beginning "lasagn"."""
    start = next(word for word in words if question.says(word)).rstrip("_")
    at = question.plain.index(f" {start}") + 1
    return question.plain[at : question.plain.index(" ", at + len(start))]


def _is_another(mention: Mention, said: str) -> bool:
    """True for "curry leaves", which is no curry; "leftover curry" and "beef stew" are."""
    words = mention.phrase.split()
    return said in words[:-1] or (said in words and mention.food.start_state in ("dry", "room"))


def _name(question: Question, food: Food) -> str:
    """The food that the figures are of, as it was said."""
    return next(m.phrase for m in question.mentions if m.food.id == food.id)


def _food(question: Question) -> Food | None:
    """The food asked about: the first that is no seasoning, where there is one."""
    eaten = (food for food in question.foods if food.part not in ("herb", "spice"))
    return next(eaten, None) or next(iter(question.foods), None)


def _is_cooked(question: Question, food: Food) -> bool:
    """True for what is said to be cooked, and for a dry food in the fridge: nobody chills it raw."""
    if hears(question, "cooked food") or _is_roast(question):
        return True
    dry = food.fridge_days is None and food.start_state == "dry" and not food.safety
    return (
        dry
        and (hears(question, "chilled") or age_days(question) is not None)
        and not hears(question, "dry in its packet")
    )


def _is_roast(question: Question) -> bool:
    """ "Roast potatoes" are cooked already; "a beef roast" may be raw."""
    return any(
        f" roast {m.phrase} " in question.plain or m.phrase.startswith("roast ") for m in question.mentions
    )


def _of_a_food(food: Food, name: str, *, cooked: bool) -> Keeps:
    months = food.freezer_months
    if not cooked:
        days = food.fridge_days if food.fridge_days is not None else CAUTIOUS_DAYS
        return Keeps(
            what=name,
            cooked=False,
            fridge_days=days,
            freezer_months=months,
            sources=food.sources_of("fridge_days", "freezer_months"),
        )
    if months or food.start_state == "dry":
        months = min(months or COOKED_MONTHS, COOKED_MONTHS)
    return Keeps(
        what=name if name.startswith("cooked") else f"cooked {name}",
        cooked=True,
        fridge_days=_cooked_days(food),
        freezer_months=months,
        sources=food.sources_of("cooked_days", "freezer_months"),
    )


def _cooked_days(food: Food) -> float:
    return food.cooked_days if food.cooked_days is not None else CAUTIOUS_DAYS


# What is said of it.


def _in_the_fridge(question: Question, kept: Keeps, old_days: float | None) -> Iterator[str]:
    if old_days:
        yield (
            "No, I would not:"
            if old_days > kept.fridge_days
            else "Yes, if it went into the fridge within 2 hours and stayed cold:"
        )
    days = span_of_days(kept.fridge_days)
    if hears(question, "unopened") and not kept.cooked:
        yield f"{kept.what.capitalize()}, unopened: to the date on its pack, kept as the pack says."
        yield f"Once opened {days} in the fridge, to be cautious{_frozen(kept, '; ')}."
    else:
        opened = ", once opened" if hears(question, "opened") and not kept.cooked else ""
        yield (
            f"{kept.what.capitalize()}{opened}: {days} in the fridge, to be cautious{_frozen(kept, '; ')}."
        )
    yield from _how_to_use(kept)


def _in_the_freezer(question: Question, kept: Keeps, old_days: float | None) -> Iterator[str]:
    verdict = ""
    if hears(question, "asks may it be frozen") and not hears(question, "asks how long") and not old_days:
        verdict = "Yes: " if kept.freezer_months else BETTER_NOT
    days = span_of_days(kept.fridge_days)
    what = kept.what if verdict else kept.what.capitalize()
    frozen = " loses its texture" if verdict == BETTER_NOT else _frozen(kept, ": ")
    yield f"{verdict}{what}{frozen}; in the fridge {days}."
    if kept.freezer_months and not kept.cooked:
        yield from _before_freezing(question)
    if old_days:
        yield STAYS_SAFE_FROZEN
    yield from _how_to_use(kept)


def _frozen(kept: Keeps, before: str) -> str:
    """What is said of the freezer, behind what it follows."""
    if not kept.freezer_months:
        return f"{before}better not frozen"
    return f"{before}about {span_of_months(kept.freezer_months)} in the freezer for quality"


def _how_to_use(kept: Keeps) -> Iterator[str]:
    if kept.cooked and kept.fridge_days > 1:
        yield FSIS_ALLOWS
    yield REHEAT_ONCE if kept.cooked else MIND_THE_DATE
    yield IN_DOUBT


def _before_freezing(question: Question) -> Iterator[str]:
    food = next((food for food in question.foods if food.part == "vegetable" or food.group == "tuber"), None)
    if food is not None and food.group == "tuber":
        yield COOK_BEFORE_FREEZING
    elif food is not None and food.start_state == "fridge":
        yield BLANCH_BEFORE_FREEZING
