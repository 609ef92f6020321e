"""What kind of food something is: "is quinoa a grain", "is rhubarb a fruit or a vegetable".

`food_kinds.csv` says it of a food by its name, else of its whole group. It is denied of a food
with a row of its own, and of a group that something beside it is of that kind.
"""

from __future__ import annotations

import re
from collections.abc import Mapping

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import meanings
from knowledge.foods.model import Food
from knowledge.tables import items

_ASKED = re.compile(
    r" (?:is|are) (?:an? |the |your |some )?(?P<food>\w[\w ]{1,30}?) (?:(?:really|actually|technically|even"
    r"|considered|classed as|counted as|classified as|seen as|just|still) )*(?:an? |the )?"
    r"(?:(?:kind|type|sort|form) of (?:an? )?)?(?P<kinds>\w[\w ]{2,40}) $"
)
_TAIL = re.compile(r" (?:or what|or not|please|then|in cooking|in the kitchen|botanically) $")
_ALLERGENS = ("crustacean", "fish", "mollusc", "shellfish")  # told of as such by the allergens
_OR = re.compile(r" or (?:an? |the )?")


def kind_of_food(question: Question) -> Answer | None:
    """Whether a food is of a kind, or which of two."""
    found = _ASKED.search(_TAIL.sub(" ", question.plain))
    if found is None or len(question.foods) > 2 or not question.mentions:
        return None
    kinds = [_kind(question, said) for said in _OR.split(found["kinds"])]
    food = question.store.named(found["food"]) or question.foods[0]
    named = question.mentions[0].phrase
    row = _row(question, food)
    if None in kinds or set(kinds) <= set(_ALLERGENS) or named != found["food"] or row is None:
        return None
    asked, known = [kind for kind in kinds if kind], items(row["kinds"])
    text = row["text"].replace("it is", f"{named} {'are' if question.says('are') else 'is'}", 1)
    if len(asked) > 1:
        return _told(question, row, f"{text[0].upper()}{text[1:]}.")
    if asked[0] in known:
        return _told(question, row, f"Yes: {text}.")
    is_denied = row["of"] == food.name or _is_beside(question, asked[0], known)
    return _told(question, row, f"No: {text}.") if is_denied else None


def _is_beside(question: Question, kind: str, known: list[str]) -> bool:
    """True for a kind beside those that a food is of: oily fish for a white fish, a tuber for a root."""
    rows = (items(row["kinds"]) for row in question.store.table("food_kinds"))
    return any(kind in kinds and not set(kinds).isdisjoint(known) for kinds in rows)


def _kind(question: Question, said: str) -> str | None:
    words = meanings(question.store, "kind of food")
    return next((kind for kind, named in words.items() if said.strip() in named), None)


def _row(question: Question, food: Food) -> Mapping[str, str] | None:
    rows = {row["of"]: row for row in question.store.table("food_kinds")}
    return rows.get(food.name) or rows.get(food.group)


def _told(question: Question, row: Mapping[str, str], text: str) -> Answer:
    return Answer(known=True, answer=text, sources=cited(question.store, row["source"]))
