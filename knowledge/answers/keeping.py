"""How long food keeps, and what to do with what is left over.

The figures are the foods' own (`fridge_days`, `freezer_months`, `cooked_days`) and, for
dishes, those of `storage.csv`; both hold the most cautious authority that we cite.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.errors import UnknownFood
from knowledge.foods.model import Food
from knowledge.foods.store import Store

CAUTIOUS_DAYS = 2.0  # any cooked food, UK FSA; USDA FSIS allows 3-4
COOKED_MONTHS = 2.0  # the shortest of cooked meat, poultry and dishes in the USDA FSIS data
ASKED = (
    "best place", "good place", "after opening", "be frozen", "opened", "since opening", "open for",
    "stored", "keep", "storing", "last", "store", "storage", "fridge", "refrigerat", "freez", "shelf",
    "go off", "goes off", "spoil", "still good", "still ok", "still fine", "still safe", "still eat",
    "still edible", "good for", "days old", "day old", "days ago", "week old", "weeks old", "too old",
    "from last week", "from sunday", "since",
)  # fmt: skip
NOT_STORED = (
    "moist", "juicy", "stay crisp", "crunchy", "from getting", "from turning", "straight from",
    "from the freezer",
    "from freezer", "keep tender",
    "keep pace", "keep up", "keeps pace", "keep its shape", "keep their shape", "keep crisp", "keep it crisp",
    "keep green", "keep it green", "keep warm", "keep hot",
    "from sticking", "from going", "from burning", "from drying", "from splitting", "from falling",
    "sticking",
)  # fmt: skip
COOKED = (
    "cooked", "leftover", "left over", "roasted", "boiled", "fried", "baked", "grilled", "reheat",
    "last night", "yesterday", "mashed", "steamed", "barbecued", "poached", "stewed", "sauteed",
    "braised", "hard boiled",
)  # fmt: skip
EATEN = (
    "eat", "have", "ok_", "okay", "fine", "safe", "good", "still", "use", "reheat", "bin_", "finish",
)  # fmt: skip
_AGE = re.compile(
    r" (?:(\d+|a|one|two|three|four|five|six|seven|ten)[ -]?)?(day|week|month)s?"
    r" (?:old|ago|in the|after|later|since|past|still|now|ok|okay|safe|fine|good|is it)"
)
_AFTER_DAYS = re.compile(
    r" after (\d+|a|one|two|three|four|five|six|seven|ten)[ -]?(day|week|month)s?"
    r"(?= (?:in the fridge|chilled|still)| $)"
)
_NUMBER = {"a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "ten": 10}
_WEEK = ["monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday"]
_WEEKDAY = re.compile(rf" ({'|'.join(day[:3] + '(?:' + day[3:] + ')?' for day in _WEEK)}) ")
_TODAY = re.compile(r" (?:its|it s|it is|today is|today s|todays|now|and now|now is)(?: now| already)? $")
_WHERE = re.compile(
    r" where | storing | how (?:should|do|can|to|is|are|would|best).* (?:keep|store|stored|kept) "
    r"| best (?:way to (?:keep|store)|place) | (?:keep|store)(?: \w+){1,3} how $"
    r"|fridge or | or (?:the |in the |on the )?(?:fridge|counter|cupboard|pantry) "
    r"| (?:keep|store|put|belongs?|go|goes|stored|kept|live)(?: \w+){0,3} in the (?:fridge|cupboard|pantry) $"
    r"| (?:refrigerate|need the fridge|need refrigerat\w+|be refrigerated) "
)
_UNCHILLED = "not in the fridge"  # words of `storage_places.csv`
_DAYS = {"day": 1.0, "week": 7.0, "month": 30.0}


def keeping(question: Question) -> Answer | None:
    """How long a named food or dish keeps, or whether an age is too much."""
    old = age_days(question)
    if not (question.says(*ASKED) or (old and question.says(*EATEN))) or question.says(
        "in season", *NOT_STORED
    ):
        return None
    dish = _dish(question)
    foods = [food for food in question.foods if food.part not in ("herb", "spice")] or list(question.foods)
    if dish is None and not foods:
        return None
    cooked = dish is not None or question.says(*COOKED) or _is_roast(question)
    if dish is not None:
        what, days = dish["what"], float(dish["fridge_days"])
        months: float | None = float(dish["freezer_months"])
        sources: tuple[str, ...] = (dish["fridge_days_src"], dish["freezer_months_src"])
    else:
        food = foods[0]
        shelf = question.says("cupboard", "pantry", "uncooked", "packet", "dry_", "dried", "best before")
        cooked = cooked or (  # nobody chills it raw
            food.fridge_days is None and food.start_state == "dry" and not shelf
        )
        name = question.mentions[0].phrase
        what = f"cooked {name}" if cooked and not name.startswith("cooked") else name
        days = _fridge_days(food, cooked)
        months = food.freezer_months
        if cooked and (months or food.start_state == "dry"):
            months = min(months or COOKED_MONTHS, COOKED_MONTHS)
        if not cooked and old is None:
            answer = _place(question, food, name, days, months) or _on_the_shelf(question, food, name)
            if answer:
                return answer
        sources = _sources_of(food, "cooked_days" if cooked else "fridge_days", "freezer_months")
    freezer = question.says("freez", "be frozen") and not question.says("from frozen")
    return Answer(
        known=True,
        answer=_phrased(question, what, days, months, old=old, freezer=freezer, cooked=cooked),
        sources=cited(question.store, *(sources or ("FSA-LEFT", "FSIS-STORE"))),
    )


def leftovers(food_ids: Sequence[str], *, store: Store) -> tuple[str, str]:
    """How to keep what is left of a dinner of these foods: the text and its source.

    Ids that are not in the tables are skipped.
    """
    days = CAUTIOUS_DAYS
    rice = False
    for food_id in food_ids:
        try:
            food = store.food(food_id)
        except UnknownFood:
            continue
        days = min(days, _fridge_days(food, cooked=True))
        rice = rice or food.doneness in ("white_rice",) or "rice" in food.id.split("-")
    within = "1 hour (there is rice in it)" if rice else "2 hours"
    text = (
        f"Leftovers: into the fridge within {within}, shallow; eat within {_span(days)}; "
        "reheat once, steaming hot, 74 °C / 165 °F. Your local rules come first."
    )
    source = "UK Food Standards Agency (keeping), USDA FSIS (2 hours, reheating)"
    return text, source


def _dish(question: Question) -> dict[str, str] | None:
    for row in question.store.table("storage"):
        if question.says(*(f"{word}" for word in row["words"].split(";"))):
            return dict(row)
    return None


def _fridge_days(food: Food, cooked: bool) -> float:
    if cooked:
        return food.cooked_days if food.cooked_days is not None else CAUTIOUS_DAYS
    return food.fridge_days if food.fridge_days is not None else CAUTIOUS_DAYS


def _sources_of(food: Food, *columns: str) -> tuple[str, ...]:
    return tuple(dict.fromkeys(source for column, source in food.sources if column in columns))


def _phrased(
    question: Question,
    what: str,
    days: float,
    months: float | None,
    *,
    old: float | None,
    freezer: bool,
    cooked: bool,
) -> str:
    chilled = f"{what.capitalize()}: {_span(days)} in the fridge, to be cautious"
    frozen = f"about {_months(months)} in the freezer for quality" if months else "better not frozen"
    text = (
        f"{what.capitalize()}: {frozen}; in the fridge {_span(days)}." if freezer else f"{chilled}; {frozen}."
    )
    if old and not freezer:
        if old > days:
            text = f"No, I would not: {text}"
        else:
            text = f"Yes, if it went into the fridge within 2 hours and stayed cold: {text}"
    if freezer and not cooked and (rule := _before_freezing(question)):
        text += rule
    tail = " Reheat once to 74 °C / 165 °F." if cooked else " Mind the date on the pack."
    if freezer and old:
        text += " Kept at -18 °C / 0 °F all the time it stays safe to eat (USDA FSIS); only its quality "
        text += "falls."
    wider = " USDA FSIS allows 3-4 days for cooked food." if cooked and days > 1 else ""
    return f"{text}{wider}{tail} In doubt throw it out; local rules come first (UK FSA, USDA FSIS)."


def age_days(question: Question) -> float | None:
    """How old the food is: "4 days old", "a week after opening", "made on sunday, it's thursday"."""
    if count := re.search(r" day (\d{1,2}) ", question.plain):
        return float(count[1])
    if age := _AGE.search(question.plain):
        return (_NUMBER.get(age[1] or "a") or float(age[1])) * _DAYS[age[2]]
    if after := _AFTER_DAYS.search(question.plain):
        return (_NUMBER.get(after[1]) or float(after[1])) * _DAYS[after[2]]
    said = list(_WEEKDAY.finditer(question.plain))
    if len(said) != 2:
        return None
    first, second = said
    if _TODAY.search(question.plain[: first.start() + 1]):
        first, second = second, first
    elif not _TODAY.search(question.plain[: second.start() + 1]):
        return None
    number = {day[:3]: place for place, day in enumerate(_WEEK)}
    return float((number[second[1][:3]] - number[first[1][:3]]) % 7) or None


def _is_roast(question: Question) -> bool:
    """ "Roast potatoes" are cooked already; "a beef roast" may be raw."""
    return any(
        f" roast {m.phrase} " in question.plain or m.phrase.startswith("roast ") for m in question.mentions
    )


def _before_freezing(question: Question) -> str:
    food = next((food for food in question.foods if food.part in ("vegetable", "starch")), None)
    if food is None or (food.start_state != "fridge" and food.group != "tuber"):
        return ""
    if food.group == "tuber":
        return " Cook or blanch them first: frozen raw they turn grey and watery."
    return (
        " Blanch most vegetables for 1-3 minutes first, and cook them straight from frozen (common practice)."
    )


def _place(question: Question, food: Food, name: str, days: float, months: float | None) -> Answer | None:
    """Where a food is kept, when that is asked rather than how long."""
    row = _place_row(question, food)
    timed, cold = question.says("how long", "how many days"), question.says("fridge", "freez", "cut_")
    if timed and not cold and row is not None and _UNCHILLED in row["where"]:
        text = f"{name.capitalize()}: {row['where']}; whole and sound at least {_span(days)}, often longer: "
        text += (
            "look it over, throw away what is soft, wet or mouldy. Cut: wrapped in the fridge, and used soon."
        )
        told = cited(question.store, row["source"], *_sources_of(food, "fridge_days"))
        return Answer(known=True, answer=text, sources=told)
    if not _WHERE.search(question.plain) or timed or question.says("freez"):
        return None
    if row is None or (food.start_state == "dry" and row["by"] == "part"):
        return None
    text = f"{name.capitalize()}: {row['where']}."
    sources = [row["source"]]
    if food.fridge_days and "fridge" in row["where"]:
        text += f" In the fridge {_span(days)}, to be cautious"
        text += f"; about {_months(months)} in the freezer for quality." if months else "."
        sources += _sources_of(food, "fridge_days", "freezer_months")
    return Answer(known=True, answer=text, sources=cited(question.store, *sources))


def _on_the_shelf(question: Question, food: Food, name: str) -> Answer | None:
    """A food of the cupboard that no table gives days for: where it is kept, and that its label decides."""
    if food.fridge_days is not None or food.start_state not in ("room", "dry") or food.safety:
        return None
    row = _place_row(question, food)
    if row is None or row["by"] == "part" or question.says("freez", "cooked"):
        return None
    text = f"{name.capitalize()}: {row['where']}. It keeps for months to the date on its label; once "
    text += "opened as the "
    text += "label says, with a clean dry spoon. Mould, a rancid or odd smell: throw it away. In doubt "
    text += "throw it out."
    return Answer(known=True, answer=text, sources=cited(question.store, row["source"]))


def _place_row(question: Question, food: Food) -> Mapping[str, str] | None:
    """The row of `storage_places.csv` that fits best: of the food, its group, its part of a dinner."""
    rows = question.store.table("storage_places")
    fits = {"food": food.id, "group": food.group, "part": food.part}
    ranked = (
        row
        for by in ("food", "group", "part")
        for row in rows
        if row["by"] == by and row["value"] == fits[by]
    )
    return next(ranked, None)


def _span(days: float) -> str:
    if days >= 14:
        return f"{days / 7:.0f} weeks"
    return "1 day" if days == 1 else f"{days:g} days"


def _months(months: float) -> str:
    return f"{months:g} month" + ("s" if months != 1 else "") if months != 2 else "2-3 months"
