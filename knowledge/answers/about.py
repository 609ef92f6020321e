"""What a food is, what it may be swapped for, whom it does not suit, when its fat smokes."""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge import diets
from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.question import both, temperatures_degC, words_of
from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store

CHECK = "Read the label, recipes differ; with an allergy ask a doctor."
_INSTEAD = re.compile(
    r" (?:instead|binders?|binds?|substitut\w*|subs?|swap\w*|replac\w*|alternativ\w*|in place of|stand in"
    r"|use for|options for|what else) "
)
_MISSING = re.compile(
    r" (?:no|without|don ?t have|haven ?t got|can ?t (?:find|get)|out of|ran out of|have no|don ?t like"
    r"|hate) "
)
_AND_NOW = re.compile(r" (?:use|what|can i) | i (?:don|have|haven|ran|am|hate|ve|ve got)| im out|got no | for (?:the|my|a) ")
_LEAVES = re.compile(
    r" (?:instead of|substitut\w* for|subs? for|replacements? for|alternativ\w* (?:to|for)|in place of"
    r"|replace|swap for|use for|stand in for|out of|no|without|don ?t have(?: any)?|have no)"
    r" (?:any |the |my |some |a |an )?"
)
_FOR = re.compile(r" for (?:the |my |a )?")
_IS_IT = re.compile(
    r" (?:is|are) (?:an? )?[\w ]{2,20} (?:an?|just|really|another (?:name|word) for) [\w ]{2,20} $"
)
_OTHER_NAME = re.compile(r" (?:word for|name for|call an?|called in|other name|another name|synonym) ")
_WHAT_IS = re.compile(
    r" (?:what is|what s|whats|what are|wat is|what does|tell me about|explain|define|meaning of|what kind of"
    r"|describe|know about) "
)
_CONTAINS = re.compile(
    r" (?:what s in|whats in|what is in|contains?|have|has|got|any|are there|is there|(?:is|are) \w+ in|in it|made (?:with|of|from)) "
)
_FIT = re.compile(
    r" (?:\w+ free|ok|okay|fine|safe|suitable|can (?:i|we|he|she|they|a|my)|eat|allerg\w*|intoleran\w*) "
)
_ASKS_DIET = re.compile(
    r" (?:free|allerg\w*|intoleran\w*|contains?|have|has|got|vegans?|vegetarians?|veggie|pescatarian"
    r"|halal|kosher|jains?|coeliacs?|celiacs?|any|are there|is there|(?:is|are) \w+ in|suitable|ok for"
    r"|safe for|made (?:with|of|from)) "
)


def allergens(question: Question) -> Answer | None:
    """The allergens of a food, or whether it suits a diet or an allergy."""
    plain = question.plain
    if question.says("an allergen", "major allergen", "common allergen", "listed allergen") and question.foods:
        return _listed(question, question.mentions[0])
    if (
        question.says("allergen", "allergic to", "allergies in")
        and question.mentions
        and not re.search(r" (?:is|are|can|does|do|has|have) ", plain.replace("what allergens are", ""))
    ):
        return _listed(question, question.mentions[0])
    if not _ASKS_DIET.search(plain):
        return None
    meant = _diet_words(question.store)
    words = max((w for w in meant if f" {w}" in plain and not _is_the_food(question, w)), key=len, default="")
    if not words:
        return (
            _listed(question, question.mentions[0])
            if question.says("allergen") and question.mentions
            else None
        )
    others = [
        m for m in question.mentions if m.phrase not in (words, words.removesuffix(" free"), f"{words}s")
    ]
    mention = next(iter(others), None)
    if mention is None:
        return None
    food, token = mention.food, meant[words]
    barred = diets.bars(food, token)
    positive = token in ("vegan", "vegetarian", "pescatarian", "halal", "kosher", "jain")
    inside = question.says("what s in", "whats in", "what is in") and not positive
    contains = inside or (_CONTAINS.search(plain) is not None and not positive and _FIT.search(plain) is None)
    yes = barred if contains else not barred  # in doubt the question is whether it may be eaten
    label = token if positive else token.removeprefix("no ")
    if barred:
        why = _why(food, token)
        so = f", so it is not {token}" if positive else ""
        text = f"{'Yes' if yes else 'No'}: {food.name} {why or 'does not go with it'}{so}."
    else:
        fits = f"fits {label}" if positive else f"has no {label} of its own"
        text = f"{'Yes' if yes else 'No'}: plain {food.name} {fits}."
        unsure = label in food.does and re.search(r"may hold|often|label", food.does)
        if unsure or (token == "vegetarian" and "rennet" in food.does):
            text = f"Not surely: {food.name}: {food.does}."
    return Answer(
        known=True, answer=f"{text} {CHECK}", sources=cited(question.store, "EU-1169", "A-FDA-ALLERGEN")
    )


@lru_cache(maxsize=4)
def _diet_words(store: Store) -> dict[str, str]:
    rows = store.table("words_questions")
    return {row["word"]: row["means"] for row in rows if row["role"] == "diet"}


def _is_the_food(question: Question, words: str) -> bool:
    """True where the diet's word is part of the food asked about: "coconut milk", "peanut butter"."""
    named = [m for m in question.mentions if words in m.phrase]
    return (
        bool(named)
        and f" {words}" not in question.plain.replace(f" {named[0].phrase}", " ", 1)
        and (len(question.mentions) == 1)
    )


def _why(food: Food, token: str) -> str:
    if food.allergens:
        return f"has {', '.join(sorted(food.allergens))}"
    if food.animal == "alcohol":
        return "is made with alcohol"
    return f"is of animal origin ({food.animal})" if food.animal else ""


def _listed(question: Question, mention: Mention) -> Answer:
    food = mention.food
    if food.allergens:
        text = f"{food.name.capitalize()}: {', '.join(sorted(food.allergens))}"
    else:
        text = f"{food.name.capitalize()}: none of the EU fourteen or the US nine by itself"
    return Answer(
        known=True, answer=f"{text}. {CHECK}", sources=cited(question.store, "EU-1169", "A-FDA-ALLERGEN")
    )


def smoke(question: Question) -> Answer | None:
    """Smoke points of fats."""
    named = [m.food for m in question.mentions if m.food.smoke_degC and m.phrase != "oil"]
    hot = [degC for degC in temperatures_degC(question) if degC > 110]
    asked = question.says(
        "smoke point", "smoking point", "high heat", "burning point", "smoke at", "smoke temp", "best oil",
        "what oil", "which oil", "oil is best", "oil for",
        *(("max_", "maximum", "how hot", "highest") if named else ()),
    )  # fmt: skip
    heated = question.says(
        "fry", "cook with", "burn", "how high", "how hot can", "sear", "roast", "saute", "grill"
    )
    if not asked and not (named and (hot or heated) and len(question.foods) == 1):
        return None
    fats = named
    if fats:
        said = "; ".join(f"{food.name} {both(food.smoke_degC or 0)}" for food in fats)
        text = f"Smoke point, the cautious end: {said}. Refined fats stand more, unrefined ones less"
    else:
        every = sorted(
            (f for f in question.store.foods() if f.smoke_degC), key=lambda f: -(f.smoke_degC or 0)
        )
        said = "; ".join(f"{food.name} {both(food.smoke_degC or 0)}" for food in every[:6])
        low = [f"{f.name} {both(f.smoke_degC or 0)}" for f in every if f.id in ("olive-oil", "butter")]
        text = f"Highest smoke points: {said}; {', '.join(low)}"
    text += "; tables differ by 30 °C."
    if named and hot:
        smokes = (named[0].smoke_degC or 0) <= hot[0]
        verdict = "Too hot for it bare in a pan" if smokes else "Yes, below its smoke point"
        text = f"{verdict} at {both(hot[0])}. {text}" + (
            " In an oven moist food stays cooler." if smokes else ""
        )
    if question.says("high heat"):
        text += " For high heat take one above 220 °C / 428 °F."
    return Answer(
        known=True, answer=f"{text} Never heat fat until it smokes.", sources=cited(question.store, "S-SMOKE")
    )


def substitute(question: Question) -> Answer | None:
    """What to take instead of a food."""
    plain = question.plain
    wanted = _INSTEAD.search(plain) or (_MISSING.search(plain) and _AND_NOW.search(plain))
    if not wanted or not question.mentions:
        return None
    leaving = _leaving(question)
    suits = [d for word, d in _diet_words(question.store).items() if _wants(question, word)]
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
            ", ".join(food.name for food in _like(question, leaving.food))
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
    said = (f"{word} free", f"{word} allerg", f"{word} intoler")
    return f" {word} " in question.plain and (word in strong or question.says(*said))


def _barred(question: Question, food_id: str, suits: list[str]) -> bool:
    return food_id != "water" and bool(diets.barred_by(question.store.food(food_id), suits))


def _leaving(question: Question) -> Mention:
    if question.says("bind") and (eggs := next((m for m in question.mentions if m.food.group == "egg"), None)):
        return eggs
    for pattern in (_LEAVES, _FOR):
        for found in pattern.finditer(question.plain):
            at = len(question.plain[: found.end()].split())
            near = next((m for m in question.mentions if at <= m.start <= at + 1), None)
            if near:
                return near
    return question.mentions[0]


def _like(question: Question, food: Food) -> list[Food]:
    """The three foods that are nearest by kind, use and the words for what they do."""
    words = set(re.findall(r"\w{4,}", food.does))

    def distance(other: Food) -> tuple[bool, bool, bool, int]:
        alike = len(words & set(re.findall(r"\w{4,}", other.does)))
        return other.part != food.part, other.doneness != food.doneness, other.when != food.when, -alike

    return sorted(
        (
            f
            for f in question.store.foods()
            if f.group == food.group and f.id != food.id and f.role is food.role
        ),
        key=distance,
    )[:3]


def _name(question: Question, food_id: str) -> str:
    return food_id if food_id == "water" else question.store.food(food_id).name


def _allergens(question: Question, food_id: str) -> frozenset[str]:
    return frozenset() if food_id == "water" else question.store.food(food_id).allergens


def what_is(question: Question) -> Answer | None:
    """A food in a few words; two foods side by side."""
    mentions = question.mentions
    alike = _IS_IT.search(question.plain) is not None or question.says(
        "difference", "same as", "same thing", "versus", "vs_", "the same"
    )
    if alike and len(mentions) >= 2 and len(question.foods) == 1:
        food = question.foods[0]
        text = f"Much the same: {mentions[0].phrase} and {mentions[1].phrase} are both {food.name} to me. "
        return Answer(
            known=True, answer=text + _described(question, food), sources=cited(question.store, *_src(food))
        )
    if len(question.foods) >= 2 and (alike or question.says("vs", "compare", "or_")):
        first, second = question.foods[:2]
        text = f"{_described(question, first)} {_described(question, second)}"
        return Answer(known=True, answer=text, sources=cited(question.store, *_src(first), *_src(second)))
    if len(question.foods) == 1 and _OTHER_NAME.search(question.plain):
        food = question.foods[0]
        return Answer(
            known=True, answer=_described(question, food), sources=cited(question.store, *_src(food))
        )
    asked = _WHAT_IS.search(question.plain)
    if not asked or len(question.foods) != 1 or len(question.words) > 8:
        return None
    left = set(question.words) - {w for m in mentions for w in question.words[m.start : m.end]}
    if left - words_of(question.store, "filler"):
        return None
    food = question.foods[0]
    return Answer(known=True, answer=_described(question, food), sources=cited(question.store, *_src(food)))


def _src(food: Food) -> tuple[str, ...]:
    return tuple(dict.fromkeys(source for _, source in food.sources))[:2] or ("CP",)


def _described(question: Question, food: Food) -> str:
    other = [name for name, _ in question.store.synonyms(food.id) if name.isascii()]
    said = {m.phrase for m in question.mentions}
    names = [n for n in other if n in said] + [n for n in other if n not in said]
    called = f", also called {', '.join(dict.fromkeys(names[:8]))}" if names else ""
    kind = food.group if food.role is not Role.SEASON else f"{food.group}, goes in {_when(food)}"
    tail = f" {food.does[0].upper()}{food.does[1:]}." if food.does else ""
    return f"{food.name.capitalize()} ({kind}){called}.{tail}"


def _when(food: Food) -> str:
    return {
        "start": "at the start", "aromatics": "with the aromatics", "liquid": "with the liquid",
        "end": "at the end", "table": "at the table",
    }.get(str(food.when.value) if food.when else "", "when you like")  # fmt: skip
