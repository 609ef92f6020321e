"""Safe temperatures: "what temp for pork chops", "is chicken safe at 155F".

Figures are those of `safe_minimums.csv`; USDA FSIS leads and the strictest other
authority is named beside it. A question about doneness gets the minimum first.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from knowledge.answers.cite import cited
from knowledge.answers.degrees import as_read, both, temperatures_degC
from knowledge.answers.model import Answer, Question
from knowledge.foods.model import Food
from knowledge.units import is_met

LOCAL = "Where your local food-safety rules ask for more, they come first."
LEADING = "USDA FSIS"
COLDEST_CORE_DEGC, HOTTEST_CORE_DEGC = 10.0, 105.0  # below a fridge is meant, above an oven or a pan
MINCED = (
    "ground",
    "mince",
    "burger",
    "meatball",
    "meatloaf",
    "meat loaf",
    "keema",
    "patty",
    "patties",
    "kofta",
    "sausage",
)
MEATS = frozenset({"whole_meat", "poultry", "ground_meat", "fish", "game", "offal", "ham_raw"})
CURED = "ham_raw"  # bacon and its like: raw pork, cured; ready-to-eat kinds only need heat for taste
Row = Mapping[str, str]


@dataclass(frozen=True, slots=True, kw_only=True)
class Minimum:
    """The safe minimum of what a question is about: the leading authority's, and all that name one."""

    what: str
    degC: float
    lead: Row
    rows: tuple[Row, ...]

    @property
    def line(self) -> str:
        """ "Turkey: 74 °C / 165 °F in the thickest part (USDA FSIS)." """
        figure = f"{_figure(self.lead)} in the thickest part ({self.lead['authority']})"
        return f"{self.what.capitalize()}: {figure}."

    @property
    def sources(self) -> tuple[str, ...]:
        """The ids of the sources, each once."""
        return tuple(dict.fromkeys(row["source"] for row in self.rows))


def minimum_of(question: Question) -> Minimum | None:
    """The safe minimum of the strictest food that the question names, None where none has one."""
    wanted = _minimum_id(question)
    rows = tuple(row for row in question.store.table("safe_minimums") if row["id"] == wanted)
    if not rows:
        return None
    lead = next((row for row in rows if row["authority"] == LEADING), rows[0])
    what = question.mentions[0].phrase if question.mentions else lead["what"]
    return Minimum(what=what, degC=float(lead["core_degC"]), lead=lead, rows=rows)


def temperature(question: Question) -> Answer | None:
    """A safe core temperature, or the verdict on one that was read."""
    said = temperatures_degC(question)
    read = tuple(degC for degC in said if COLDEST_CORE_DEGC <= degC <= HOTTEST_CORE_DEGC)
    if not _asked(question, bool(read)):
        return None
    minimum = minimum_of(question)
    if minimum is None:
        general = question.says("safe", "internal", "core", "kill", "minimum", "danger", "germ", "bacteria")
        return _all_of_them(question) if general and not question.mentions else None
    text = minimum.line
    if read:
        text = f"{_verdict(min(read), minimum.degC)} {text}"
    else:
        kind = minimum.lead["id"]
        text += _stricter(minimum.lead, minimum.rows) + _doneness(question, kind)
        if kind in ("poultry", "ground_meat", "fish", "offal", "game") and question.says(
            "rare", "pink", "undercooked", "underdone"
        ):
            text = f"No, not underdone. {text}"
    return Answer(
        known=True,
        answer=f"{text} Measure with a thermometer. {LOCAL}",
        sources=cited(question.store, *minimum.sources),
    )


def _asked(question: Question, read: bool) -> bool:
    if question.says("room temp"):
        return False
    if question.says("oven temp", "oven set", "wine temp", "boiling point", "smoke point", "water boil"):
        return False
    if question.says("how long", "how many minutes") and not question.says(
        "temp", "internal", "safe", "core"
    ):
        return False
    if question.says("temp", "internal", "degrees", "how hot", "how warm", "core temp", "inside of",
                     "the inside", "be inside", "be in the middle", "inside be", "should the middle",
                     "centre be", "center be"):  # fmt: skip
        return not any(food.smoke_degC for food in question.foods) and not _oven_only(question)
    if re.search(
        r" what (?:should|must|does|do|will|would) (?:\w+ ){1,5}(?:read|show|reach) ", question.plain
    ):
        return any(food.safety for food in question.foods)
    if question.says("safe minimum", "minimum safe", "done at what", "done at how", "cooked at what"):
        return any(food.safety for food in question.foods) or bool(_words_minimum(question))
    if question.says(
        "is done",
        "are done",
        "it done",
        "how done",
        "reach",
        "in the middle",
        "know when",
        "tell when",
        "cooked through",
        "fully cooked",
        "all the way through",
        "well done",
        "cook through",
        "is cooked",
        "are cooked",
        "it s cooked",
        "its cooked",
        "how do i know",
        "can i tell",
        "can you tell",
    ):
        return any(food.safety for food in question.foods)
    if question.says("how long", "cook time", "roasting time") and not question.says("safe", "temp", "ok"):
        return False
    if question.foods and not any(food.safety for food in question.foods):
        return False
    if re.search(r" (?:cook|get|come|go|heat|heated|reach)(?: \w+){0,4} to $", question.plain):
        return True
    if question.says("at what point", "when is", "when are") and question.says("safe"):
        return True
    if read and (question.foods or _words_minimum(question)):
        return True
    meat = any(food.safety in MEATS for food in question.foods)
    return (
        meat
        and question.says("rare", "blue", "medium", "undercooked", "underdone", "pink", "bloody")
        and question.says("safe", "ok", "fine", "inside", "can ", "eat", "is", "should")
    )


def _oven_only(question: Question) -> bool:
    """True where every temperature said is one of an oven and a time is what is asked."""
    read = temperatures_degC(question)
    return bool(read) and min(read) > HOTTEST_CORE_DEGC and question.says("how long", "time", "minutes")


def _words_minimum(question: Question) -> str:
    if question.says("leftover", "casserole", "reheat", "lasagn"):
        return "leftover"
    if question.says(*MINCED):
        birds = question.says("chicken", "turkey", "poultry", "duck")
        return "poultry" if birds else "ground_meat"
    for minimum, words in (
        ("poultry", ("poultry", "bird", "stuffing")),
        ("egg", ("egg", "omelet", "frittata", "quiche")),
        ("fish", ("fish",)),
        ("shellfish", ("shellfish", "seafood")),
        ("whole_meat", ("steak", "roast_", "joint", "chop_", "chops", "meat_")),
    ):
        if question.says(*words):
            return minimum
    return ""


def _minimum_id(question: Question) -> str:
    by_words = _words_minimum(question)
    if by_words in ("leftover", "ground_meat") or (by_words == "poultry" and question.says(*MINCED)):
        return by_words
    named = [food.safety or CURED for food in question.foods if food.safety or food.doneness == "cured"]
    strict = max(named, key=lambda m: _degC(question, m), default="")
    return strict or by_words


def _degC(question: Question, minimum: str) -> float:
    rows = question.store.table("safe_minimums")
    return max(
        (float(r["core_degC"]) for r in rows if r["id"] == minimum and r["authority"] == LEADING), default=0
    )


def _figure(row: Row) -> str:
    hold_s = float(row["hold_s"] or 0)
    rest = f" and {hold_s / 60:.0f} min rest" if hold_s == 180 else ""
    return both(float(row["core_degC"])) + rest


def _verdict(read_degC: float, need_degC: float) -> str:
    read = as_read(read_degC)
    if is_met(read_degC, need_degC):
        return f"Yes, {read} is enough if that is the coldest spot."
    return f"No, not yet: {read} is below the safe minimum. Cook on."


def _stricter(lead: Row, rows: Sequence[Row]) -> str:
    others = [
        r
        for r in rows
        if r["authority"] != lead["authority"] and float(r["core_degC"]) > float(lead["core_degC"])
    ]
    if not others:
        return ""
    other = max(others, key=lambda r: float(r["core_degC"]))
    hold = f" for {float(other['hold_s']) / 60:.0f} min" if float(other["hold_s"] or 0) else ""
    return f" {other['authority']} asks for {float(other['core_degC']):.0f} °C{hold}."


def _doneness(question: Question, minimum: str) -> str:
    if minimum != "whole_meat":
        return ""
    names = {row["name"]: float(row["core_degC"]) for row in question.store.table("steak_words")}
    said = [name for name in names if f" {name} " in question.plain]
    if not said:
        return ""
    name = max(said, key=len)
    degC = names[name]
    below = degC < 62.5
    text = f" {name.capitalize()} is {both(degC)} in the trade (common practice)"
    return text + (": below that minimum, at your own risk; not for frail eaters." if below else ".")


def _all_of_them(question: Question) -> Answer:
    store = question.store
    rows = [row for row in store.table("safe_minimums") if row["authority"] == LEADING]
    listed = "; ".join(f"{row['what']} {_figure(row)}" for row in rows)
    return Answer(
        known=True,
        answer=f"Safe core temperatures (USDA FSIS): {listed}. {LOCAL}",
        sources=cited(store, *dict.fromkeys(row["source"] for row in rows)),
    )


def safe_line(food: Food, question: Question) -> str:
    """The minimum of a food in a few words, "" if it has none."""
    degC = _degC(question, food.safety)
    return f"safe at {both(degC)} (USDA FSIS)" if degC else ""
