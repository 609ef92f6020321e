"""Safe core temperatures of what a question is about: `safe_minimums.csv`.

USDA FSIS leads; where several foods are named, the strictest counts.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from knowledge.answers.model import Question
from knowledge.answers.reading.degrees import both
from knowledge.answers.reading.heard import hears, meanings, meant
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.text.clauses import says

Row = Mapping[str, str]

LEADING = "USDA FSIS"
COLDEST_CORE_DEGC, HOTTEST_CORE_DEGC = 10.0, 105.0  # below a fridge is meant, above an oven or a pan
MEATS = frozenset({"whole_meat", "poultry", "ground_meat", "fish", "game", "offal", "ham_raw"})
WHOLE = frozenset({"whole_meat", "game"})  # pieces whose middle holds no germs as it grew
SAID_FIRST = ("leftover", "ground_meat", "poultry", "egg", "fish", "shellfish", "whole_meat")
FORMED = "formed_meat"  # rolled, tied, tenderised, injected: the germs of its outside are inside
CURED = "ham_raw"  # bacon and its like: raw pork, cured; ready-to-eat kinds only need heat for taste


@dataclass(frozen=True, slots=True, kw_only=True)
class Minimum:
    """The safe minimum of what a question is about: the leading authority's, and all that name one."""

    what: str
    lead: Row
    rows: tuple[Row, ...]

    @property
    def id(self) -> str:
        """The kind of food: "poultry", "whole_meat" ..."""
        return self.lead["id"]

    @property
    def degC(self) -> float:
        """The leading authority's figure."""
        return core_degC(self.lead)

    @property
    def line(self) -> str:
        """ "Turkey: 74 °C / 165 °F in the thickest part (USDA FSIS)." """
        return (
            f"{self.what.capitalize()}: {figure(self.lead)} in the thickest part ({self.lead['authority']})."
        )

    @property
    def stricter(self) -> Row | None:
        """The row of the strictest authority that asks for more than the leading one."""
        higher = (row for row in self.rows if round(core_degC(row)) > round(self.degC))  # 73.9 °C is 74
        return max(higher, key=core_degC, default=None)

    @property
    def sources(self) -> tuple[str, ...]:
        """The ids of the sources, each once."""
        return tuple(dict.fromkeys(row["source"] for row in self.rows))


def minimum_of(question: Question) -> Minimum | None:
    """The safe minimum of the strictest food that the question names, None where none has one."""
    wanted = _id_of(question)
    rows = tuple(row for row in question.store.table("safe_minimums") if row["id"] == wanted)
    if not rows:
        return None
    lead = next((row for row in rows if row["authority"] == LEADING), rows[0])
    return Minimum(what=_named(question, wanted) or lead["what"], lead=lead, rows=rows)


def _named(question: Question, kind: str) -> str:
    """What the figure is of, as it was said: of "egg casserole" the casserole, of "rolled brisket" that."""
    if kind == FORMED:
        what, how = question.mentions[0].phrase if question.mentions else "", _word(question, "formed")
        return what if how in what.split() else f"{how} {what}".strip()
    own = next((m.phrase for m in question.mentions if (m.food.safety or CURED) == kind), "")
    word = "" if own else _word(question, "has a minimum", kind)
    beside = (f"{m.phrase} {word}" for m in question.mentions if f" {m.phrase} {word} " in question.plain)
    return own or next(beside, word)  # "venison burger"


def _word(question: Question, topic: str, means: str = "") -> str:
    """The word of a topic as it stands in the question."""
    starts = meanings(question.store, topic).get(means, ())
    return next((word for word in question.plain.split() if says(f" {word} ", *starts)), "")


def leading(store: Store) -> dict[str, Row]:
    """The rows of the leading authority, by the kind of food."""
    return {row["id"]: row for row in store.table("safe_minimums") if row["authority"] == LEADING}


def safe_line(food: Food, question: Question) -> str:
    """The minimum of a food in a few words, "" if it has none."""
    if not food.safety:
        return ""
    of_its_name = (  # a kielbasa is a sausage, sold raw too
        kind
        for kind, words in meanings(question.store, "has a minimum").items()
        if says(f" {food.name} ", *words)
    )
    degC = _leading_degC(question.store)
    hottest = max(degC.get(kind, 0.0) for kind in (food.safety, *of_its_name))
    return f"safe at {both(hottest)} (USDA FSIS)" if hottest else ""


def core_degC(row: Row) -> float:
    """The temperature that a row asks for in the middle."""
    return float(row["core_degC"])


def figure(row: Row) -> str:
    """ "63 °C / 145 °F and 3 min rest"."""
    minutes = f"{float(row['hold_s']) / 60:.0f} min"
    held = {"rest": f" and {minutes} rest", "hold": f" for {minutes}"}.get(row["hold"], "")
    return both(core_degC(row)) + held


def said_minimum(question: Question) -> str:
    """The kind of food that a word of the question means: a dish and mince before what is in them."""
    return meant(question, "has a minimum", SAID_FIRST)


def _id_of(question: Question) -> str:
    said = said_minimum(question)
    if said == "ground_meat":  # minced, it is no longer a whole piece of whatever is named
        return "poultry" if hears(question, "bird") else "ground_meat"
    if said == "leftover":
        return said
    if is_formed(question):
        return FORMED
    named = [food.safety or CURED for food in question.foods if food.safety or food.doneness == "cured"]
    degC = _leading_degC(question.store)
    return max(named, key=lambda kind: degC.get(kind, 0.0), default=said)


def is_formed(question: Question) -> bool:
    """True for a piece of meat whose outside was rolled, tied, forced or needled into its middle."""
    whole = any(food.safety in WHOLE for food in question.foods) or said_minimum(question) == "whole_meat"
    return whole and hears(question, "formed")


@lru_cache(maxsize=4)
def _leading_degC(store: Store) -> dict[str, float]:
    return {kind: core_degC(row) for kind, row in leading(store).items()}
