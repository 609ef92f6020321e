"""What to take instead of a food."""

from __future__ import annotations

import re

from knowledge import diets
from knowledge.answers.allergy import CHECK, diet_words
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.words import words_of
from knowledge.foods.model import Food
from knowledge.text.normalise import key

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
# Who reacts to one may react to its kin, so that all of them are left out.
_KIN = (
    (frozenset({"tree nuts", "peanuts"}), "no nuts"),
    (frozenset({"crustaceans", "molluscs"}), "no shellfish"),
)
_FREE_AFTER = re.compile(r"(?:free|less|allerg\w*|intoleran\w*)$")
_FREE_BEFORE = re.compile(r"(?:\bfree (?:of|from)|\ballergic to|\ballergy to|\bintolerant to)$")
_OFFERED_BEFORE = re.compile(r"\b(?:use|using|try|with|by|is|are|will|would|could|does|do)(?: \w+)?$")
_OFFERED_AFTER = re.compile(r"(?:instead|in place|for|work|works|replace|as|be|do)\b")
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
    unwanted = _unwanted(question)
    leaving = _leaving(question, unwanted)
    suits = [d for word, d in diet_words(question.store).items() if _wants(question, word)]
    suits += [f"no {mention.phrase}" for mention in unwanted]
    suits += [diet for kin, diet in _KIN if any(m.food.allergens & kin for m in unwanted)]
    suits += [
        row["means"]
        for row in question.store.table("words_questions")
        if row["role"] == "restraint" and question.says(row["word"])
    ]
    rows = [
        row
        for row in question.store.table("substitutions")
        if row["food_id"] == leaving.food.id
        and not _barred(question, row["instead_id"], suits, unwanted)
        and not any(_barred(question, food.id, suits, unwanted) for food in _added(question, row["how"]))
    ]
    shunned = {m.food.id for m in unwanted} | {leaving.food.id}
    other = next((m for m in question.mentions if m.food.id not in shunned and _offered(question, m)), None)
    sauce = leaving.food.group in words_of(question.store, "made")  # more than its kind: has no like
    alike = [] if rows or sauce else _like(question, leaving.food, suits, unwanted)
    ideas = "; ".join(f"{_name(question, row['instead_id'])} ({row['how']})" for row in rows)
    ideas = ideas or ", ".join(food.name for food in alike) or "nothing that comes near, leave it out"
    text = f"Instead of {leaving.phrase}: {ideas}."
    if other is not None and not _barred(question, other.food.id, suits, unwanted):
        text += f" {other.phrase.capitalize()} for {leaving.phrase}: {other.food.does or 'try it'}; "
        text += "ask me to swap it in a plan and I compute the times."
    held = [
        _allergens(question, food_id)
        for food_id in (*(r["instead_id"] for r in rows), *(f.id for f in alike))
    ]
    new = sorted(frozenset().union(*held) - leaving.food.allergens)
    text += f" Mind allergies: {', '.join(new)}." if new else ""
    if suits:
        text += f" {CHECK}"
    return Answer(known=True, answer=text, sources=("common practice",))


def _unwanted(question: Question) -> tuple[Mention, ...]:
    """The foods said to be left out for someone's sake: "peanut free", "free of milk", "egg allergy"."""
    words = question.plain.split()

    def barred(mention: Mention) -> bool:
        before = " ".join(words[max(mention.start - 2, 0) : mention.start])
        after = words[mention.end] if mention.end < len(words) else ""
        return _FREE_AFTER.match(after) is not None or _FREE_BEFORE.search(before) is not None

    return tuple(mention for mention in question.mentions if barred(mention))


def _added(question: Question, how: str) -> tuple[Food, ...]:
    """The foods that a swap asks for beside the stand-in: "with toasted sesame seed", "1 part milk"."""
    words = re.findall(
        r"[a-z]+", re.sub(r"\b(?:without|no|not|less|tastes of|for (?:one|an|1))\b.*", "", how.lower())
    )
    runs = (" ".join(words[at : at + n]) for n in (1, 2) for at in range(len(words) - n + 1))
    found = (question.store.named(key(run)) for run in runs)
    return tuple(food for food in found if food is not None)


def _offered(question: Question, mention: Mention) -> bool:
    """True if the question holds this food out as the stand-in: "can I use milk instead", "with milk"."""
    words = question.plain.split()
    before = " ".join(words[max(mention.start - 2, 0) : mention.start])
    after = " ".join(words[mention.end : mention.end + 2])
    return _OFFERED_BEFORE.search(before) is not None or _OFFERED_AFTER.match(after) is not None


def _wants(question: Question, word: str) -> bool:
    """True if a diet's word is said as a wish: "dairy free", "for a coeliac", "vegan", "nut allergy"."""
    strong = ("vegan", "vegetarian", "halal", "kosher", "coeliac", "celiac", "jain", "pescatarian")
    own = (word,) if word.endswith((" free", " allerg")) else ()
    said: tuple[str, ...] = (
        *own,
        f"{word} free",
        f"{word}s free",
        f"{word} allerg",
        f"{word} intoler",
        f"without {word}",
    )
    said += tuple(f"{ahead} {word}" for ahead in ("free from", "free of", "allergic to", "intolerant to"))
    return (word in strong and f" {word} " in question.plain) or question.says(*said)


def _barred(question: Question, food_id: str, suits: list[str], unwanted: tuple[Mention, ...]) -> bool:
    if food_id == "water":
        return False
    food = question.store.food(food_id)
    shared = any(m.food.id == food_id or m.food.allergens & food.allergens for m in unwanted)
    return shared or bool(diets.barred_by(food, suits))


def _leaving(question: Question, unwanted: tuple[Mention, ...]) -> Mention:
    """The food to be replaced; never one that is named only to be kept out, if another is named."""
    eggs = next((m for m in question.mentions if m.food.group == "egg"), None)
    if eggs and question.says("bind"):
        return eggs
    mentions = tuple(m for m in question.mentions if m not in unwanted) or question.mentions
    for pattern in (_LEAVES, _FOR):
        for found in pattern.finditer(question.plain):
            at = len(question.plain[: found.end()].split())
            near = next((m for m in mentions if at <= m.start <= at + 1), None)
            if near:
                return near
    return mentions[0]


def _like(question: Question, food: Food, suits: list[str], unwanted: tuple[Mention, ...]) -> list[Food]:
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
            and not _barred(question, f.id, suits, unwanted)
        ),
        key=distance,
    )[:3]


def _name(question: Question, food_id: str) -> str:
    return food_id if food_id == "water" else question.store.food(food_id).name


def _allergens(question: Question, food_id: str) -> frozenset[str]:
    return frozenset() if food_id == "water" else question.store.food(food_id).allergens
