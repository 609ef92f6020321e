"""What to take instead of a food."""

from __future__ import annotations

import re

from knowledge import diets
from knowledge.answers.allergy import diet_words
from knowledge.answers.model import Answer, Mention, Question
from knowledge.foods.model import Food

_INSTEAD = re.compile(
    r" (?:instead|binders?|binds?|substitut\w*|subs?|swap\w*|replac\w*|alternativ\w*|in place of|stand in"
    r"|use for|options for|what else) "
)
_MISSING = re.compile(
    r" (?:no|without|don ?t have|haven ?t got|can ?t (?:find|get)|out of|ran out of|have no|don ?t like"
    r"|hate) "
)
_AND_NOW = re.compile(
    r" (?:use|what|can i) | i (?:don|have|haven|ran|am|hate|ve|ve got)| im out|got no | for (?:the|my|a) "
)
_LEAVES = re.compile(
    r" (?:instead of|substitut\w* for|subs? for|replacements? for|alternativ\w* (?:to|for)|in place of"
    r"|replace|swap for|use for|stand in for|out of|no|without|don ?t have(?: any)?|have no)"
    r" (?:any |the |my |some |a |an )?"
)
_FOR = re.compile(r" for (?:the |my |a )?")


SHORT = 6  # words of a remark like "out of baking powder"


def substitute(question: Question) -> Answer | None:
    """What to take instead of a food."""
    plain = question.plain
    short = len(question.words) <= SHORT and not question.says("is", "are", "can", "cook")
    missing = _MISSING.search(plain) and (_AND_NOW.search(plain) or short)
    wanted = _INSTEAD.search(plain) or missing
    if not wanted or not question.mentions:
        return None
    leaving = _leaving(question)
    suits = [d for word, d in diet_words(question.store).items() if _wants(question, word)]
    rows = [
        row
        for row in question.store.table("substitutions")
        if row["food_id"] == leaving.food.id and not _barred(question, row["instead_id"], suits)
    ]
    other = next((m for m in question.mentions if m.food.id != leaving.food.id), None)
    if rows:
        ideas = "; ".join(f"{_name(question, row['instead_id'])} ({row['how']})" for row in rows)
    else:
        ideas = (
            ", ".join(food.name for food in _like(question, leaving.food, suits))
            or "nothing that comes near, leave it out"
        )
    text = f"Instead of {leaving.phrase}: {ideas}."
    if other is not None:
        text += f" {other.phrase.capitalize()} for {leaving.phrase}: {other.food.does or 'try it'}; "
        text += "ask me to swap it in a plan and I compute the times."
    new = sorted(
        {a for row in rows for a in _allergens(question, row["instead_id"])} - leaving.food.allergens
    )
    text += f" Mind allergies: {', '.join(new)}." if new else ""
    return Answer(known=True, answer=text, sources=("common practice",))


def _wants(question: Question, word: str) -> bool:
    """True if a diet's word is said as a wish: "dairy free", "for a coeliac", "vegan", "nut allergy"."""
    strong = ("vegan", "vegetarian", "halal", "kosher", "coeliac", "celiac", "jain", "pescatarian")
    own = (word,) if word.endswith((" free", " allerg")) else ()
    said = (*own, f"{word} free", f"{word}s free", f"{word} allerg", f"{word} intoler", f"without {word}")
    return (word in strong and f" {word} " in question.plain) or question.says(*said)


def _barred(question: Question, food_id: str, suits: list[str]) -> bool:
    return food_id != "water" and bool(diets.barred_by(question.store.food(food_id), suits))


def _leaving(question: Question) -> Mention:
    eggs = next((m for m in question.mentions if m.food.group == "egg"), None)
    if eggs and question.says("bind"):
        return eggs
    for pattern in (_LEAVES, _FOR):
        for found in pattern.finditer(question.plain):
            at = len(question.plain[: found.end()].split())
            near = next((m for m in question.mentions if at <= m.start <= at + 1), None)
            if near:
                return near
    return question.mentions[0]


def _like(question: Question, food: Food, suits: list[str]) -> list[Food]:
    """The three foods that are nearest by kind, use and the words for what they do."""
    words = set(re.findall(r"\w{4,}", food.does))

    def distance(other: Food) -> tuple[bool, bool, bool, int]:
        alike = len(words & set(re.findall(r"\w{4,}", other.does)))
        return other.part != food.part, other.doneness != food.doneness, other.when != food.when, -alike

    return sorted(
        (
            f
            for f in question.store.foods()
            if f.group == food.group
            and f.id != food.id
            and f.role is food.role
            and not _barred(question, f.id, suits)
        ),
        key=distance,
    )[:3]


def _name(question: Question, food_id: str) -> str:
    return food_id if food_id == "water" else question.store.food(food_id).name


def _allergens(question: Question, food_id: str) -> frozenset[str]:
    return frozenset() if food_id == "water" else question.store.food(food_id).allergens
