"""Whom a food does not suit: its allergens, and the diets that bar it."""

from __future__ import annotations

import re
from dataclasses import replace

from knowledge import diets
from knowledge.answers.advice import row
from knowledge.answers.cite import cited
from knowledge.answers.diets_said import diets_said
from knowledge.answers.kinship import akin_to
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.restraints import rules_out
from knowledge.answers.subject import Subject, subject_of
from knowledge.answers.uncertain import holds, is_warned, needs_label
from knowledge.foods.model import Food

CHECK = "Read the label, recipes differ; with an allergy ask a doctor."
_IS_ALLERGEN = (
    r" (?:is|are|does|do) [\w ]+ (?:(?:considered|count(?:ed)? as|classed as) )?(?:a |an )?"
    r"(?:dairy|gluten|nuts?|tree nuts?|wheat|soy|shellfish|crustaceans?|molluscs?) $"
)
POSITIVE = frozenset({"vegan", "vegetarian", "pescatarian", "halal", "kosher", "jain"})
_CONTAINS = re.compile(
    r" (?:what s in|whats in|what is in|contains?|have|has|got|any|are there|is there|(?:is|are) \w+ in|in it"
    rf"|made (?:with|of|from)|(?:what|which) [\w ]+ (?:is|are) in) |{_IS_ALLERGEN}"
)
_FIT = re.compile(
    r" (?:\w+ free|ok|okay|fine|safe|suitable|can (?:\w+ ){1,6}(?:have|eat)|can (?:i|we|he|she|they|a|my)"
    r"|eat|allerg\w*|intoleran\w*) "
)
_ASKS_OF_IT = re.compile(r" (?:is|are|can|does|do|has|have|will|would|may|eat|ok|okay|safe) ")
# A yes to these says that it is in there; a yes to "free of", "safe for" or "can she eat" that it is not.
_PRESENCE = re.compile(
    r" (?:allergens?|triggers?|sets? off)(?: \w+){0,3} $"
    r"| (?:problems?|risks?|risky|issues?|danger|dangerous|worry|concern|bad"
    r"|unsafe|harmful|off limits|forbidden|not (?:ok|okay|safe|suitable|allowed)) (?:for|with|to|if) "
    r"| (?:allergens?|triggers?) (?:risk|for|to|in) | should (?:\w+ ){1,5}(?:avoid|leave out|skip) "
)
_FOR_ALLERGY = re.compile(r" (?:free|allerg\w*|intoleran\w*|sensitiv\w*) ")
_ASKS_FIT = re.compile(
    r"^ (?:is|are|does|do|can|could|may|would|will|should|must) | (?:ok|okay|safe|suitable) (?:for|with|if) "
)
_ASKS_OTHER = re.compile(
    r" (?:how|what|why|when|where|which|instead|long|keep|fridge|raw|temp\w*|replace|swap) "
)
_NAMES_DIET = re.compile(
    r" (?:free|allerg\w*|intoleran\w*|sensitiv\w*|co?eliacs?|contains?|vegans?|vegetarians?|halal|kosher) "
)
_SHELLFISH = frozenset({"crustaceans", "molluscs"})
_ASKS_DIET = re.compile(
    r" (?:free|allerg\w*|intoleran\w*|contains?|have|has|got|vegans?|vegetarians?|veggie|pescatarian"
    r"|halal|kosher|jains?|coeliacs?|celiacs?|any|are there|is there|(?:is|are) \w+ in|suitable|ok for"
    rf"|safe for|can ?t (?:have|eat)|avoids?|made (?:with|of|from)|(?:what|which) [\w ]+ (?:is|are) in) "
    rf"|{_IS_ALLERGEN}"
)


def allergens(question: Question) -> Answer | None:
    """The allergens of a food, or whether it suits a diet or an allergy."""
    plain = question.plain
    if question.says("an allergen", "major allergen", "common allergen", "listed allergen"):
        return (
            _listed(question, question.mentions[0])
            if question.foods
            else row(question.store, "allergen-list")
        )
    if (
        question.says("allergen", "allergic to", "allergies in")
        and question.mentions
        and not _ASKS_OF_IT.search(plain.replace("what allergens are", ""))
    ):
        return _listed(question, question.mentions[0])
    if not _ASKS_DIET.search(plain):
        return None
    asked = _asked_about(question)
    if asked is None:
        if own := _allergic_to(question):
            return own
        return (
            _listed(question, question.mentions[0])
            if question.says("allergen") and question.mentions
            else None
        )
    words, token = asked
    subject = subject_of(question, words, token)
    if subject is None:
        return _allergic_to(question) or _unheld(question, token)
    text, known = _phrased(question, subject, token, _verdict(question, subject, token))
    sources = cited(question.store, "EU-1169", "A-FDA-ALLERGEN") if known else ()
    return Answer(known=known, answer=f"{text} {CHECK}", sources=sources)


def suits(question: Question) -> Answer | None:
    """Whether a food suits an allergy or a diet named outright, before a word of it leads elsewhere."""
    plain = question.plain
    asks = _ASKS_FIT.search(plain) and not _ASKS_OTHER.search(plain)
    return allergens(question) if asks and _NAMES_DIET.search(plain) else None


def _asked_about(question: Question) -> tuple[str, str] | None:
    """The allergen or diet that the question asks about, as said and as a token."""
    plain = question.plain
    for mention in question.mentions:  # names that merely hold an allergen's word: "coconut milk"
        if " " in mention.phrase and not rules_out(question, mention):
            plain = plain.replace(f" {mention.phrase} ", " · ", 1)
    said = diets_said(plain, question.store)
    if not said:
        return None
    for_whom = [w for w in said if _FOR_ALLERGY.match(plain[plain.rfind(f" {w}") + 1 + len(w) :])]
    store = question.store  # "is lobster kosher" asks about kosher, although lobster is an allergen's word
    words = max(for_whom or said, key=lambda w: (said[w] in POSITIVE, store.named(w) is None, len(w)))
    return words, said[words]


def _unheld(question: Question, token: str) -> Answer | None:
    """A no in words to "is this dish free of it" about something that no table holds."""
    fit = re.search(r" (?:is|are|does|do|can) ", question.plain) and not question.mentions
    if not fit or not (_FOR_ALLERGY.search(question.plain) or _CONTAINS.search(question.plain)):
        return None
    text = f"I don't know what is in that, so I can't call it safe for one who keeps to {token}. {CHECK}"
    return Answer(known=False, answer=text, sources=())


def _verdict(question: Question, subject: Subject, token: str) -> str:
    """ "no" if the food has it, "maybe", "kin", "yes" if it is free of it, "unknown" where I can't tell."""
    store = question.store
    barred = any(diets.bars(food, token) for food in subject.foods)
    if barred or subject.names_it or holds(subject.has, token, store):
        return "no"
    if not subject.exact:
        return "unknown"
    food = subject.foods[0] if subject.foods else None
    may = holds(frozenset(subject.may), token, store)
    if food is None:
        if subject.has and akin_to(replace(store.food("salt"), allergens=subject.has), token, store):
            return "kin"
        return "yes" if subject.single and not may and token not in POSITIVE else "maybe"
    shellfish = token in ("no crustacean", "no mollusc", "no shellfish") and food.allergens & _SHELLFISH
    if shellfish or akin_to(food, token, store):
        return "kin"
    warned = is_warned(food, token.removeprefix("no "))
    rennet = token == "vegetarian" and "rennet" in food.does
    return "maybe" if may or warned or rennet or needs_label(food, token, store) else "yes"


def _phrased(question: Question, subject: Subject, token: str, verdict: str) -> tuple[str, bool]:
    """The answer in words, and whether it is one."""
    positive = token in POSITIVE
    label = token if positive else token.removeprefix("no ")
    name, food = subject.name, (subject.foods[0] if subject.foods else None)
    yes, no = _yes_and_no(question, positive)
    note = f" ({subject.note})" if subject.note else ""
    others = f" It may also hold {', '.join(subject.may)}." if subject.may else ""
    match verdict:
        case "unknown":
            said = f"free of {label}" if not positive else label
            return f"I don't know what is in {name}, so I can't call it {said}.", False
        case "no":
            so = f", so it is not {token}" if positive else ""
            return _led(yes, f"{name} {_why_not(subject, token, label)}{so}{note}.{others}"), True
        case "kin":
            every = (food.allergens if food else frozenset()) | subject.has
            has = f" has {', '.join(sorted(every))}, and" if every else ""
            text = f"Not surely: {name}{has} may set off the same reaction as {label} in some people{note}."
            return f"{text} Leave it out until a doctor says otherwise.", True
        case "maybe":
            does = f": {food.does}" if food and food.does and re.search(r"rennet|may hold", food.does) else ""
            held = f" may hold {', '.join(subject.may)}" if subject.may else ""
            does = does or held or f" has no {label} by itself, but what is sold may hold some"
            sure = sorted((food.allergens if food else frozenset()) | subject.has)
            has = f" It has {', '.join(sure)}." if sure else ""
            return f"Not surely: {name}{does}{note}.{has}", True
        case _:
            fits = f"fits {label}" if positive else f"has no {label} of its own"
            return _led(no, f"plain {name} {fits}."), True


def _yes_and_no(question: Question, positive: bool) -> tuple[str, str]:
    """The word that leads when it is in there, and when it is not; "" where the question leaves it open."""
    named_only = all(
        "allerg" in found[0] or "intoleran" in found[0] for found in _FIT.finditer(question.plain)
    )
    fit = not named_only or (_ASKS_FIT.search(question.plain) and not _CONTAINS.search(question.plain))
    if _PRESENCE.search(question.plain):
        return ("Yes", "No") if named_only else ("", "")  # "can he eat it, should he avoid it"
    if positive or fit:
        return "No", "Yes"
    return ("Yes", "No") if _is_asked_what_is_in(question) else ("", "")


def _led(lead: str, text: str) -> str:
    return f"{lead}: {text}" if lead else f"{text[0].upper()}{text[1:]}"


def _why_not(subject: Subject, token: str, label: str) -> str:
    why = next((_why(food, token) for food in subject.foods if diets.bars(food, token)), "")
    held = f"has {', '.join(sorted(subject.has))}" if subject.has else ""
    return why or held or f"is made with {label}, by its name"


def _is_asked_what_is_in(question: Question) -> bool:
    inside = question.says("what s in", "whats in", "what is in")
    return inside or (_CONTAINS.search(question.plain) is not None and _FIT.search(question.plain) is None)


def _allergic_to(question: Question) -> Answer | None:
    """ "Cashew allergy, is pesto ok": a food named as the allergy, and another asked about."""
    cause = next((m for m in question.mentions if rules_out(question, m)), None)
    other = next((m for m in question.mentions if cause and m.food.id != cause.food.id), None)
    if cause is None:
        return None
    subject = subject_of(question, cause.phrase, f"no {cause.food.name}")
    held = frozenset().union(*(f.allergens for f in subject.foods), subject.has) if subject else frozenset()
    if subject is None or (other is None and not subject.has):
        return None
    shared = sorted(cause.food.allergens & held)
    both_shellfish = cause.food.allergens & _SHELLFISH and held & _SHELLFISH
    if both_shellfish and not shared:
        text = f"Not surely: {subject.name} has {', '.join(sorted(held))}, and who reacts to one shellfish "
        text += "may react "
        text += "to others. Leave it out until a doctor says otherwise."
    elif shared:
        text = f"No, unless the label says otherwise: {subject.name} has {', '.join(shared)}."
    else:
        text = f"Not surely: I can't see all that is in {subject.name}; look for {cause.phrase} on the label."
    return Answer(
        known=True, answer=f"{text} {CHECK}", sources=cited(question.store, "EU-1169", "A-FDA-ALLERGEN")
    )


def _why(food: Food, token: str) -> str:
    if token == "kosher" and food.animal in ("fish", "game"):
        return "is not of a kind that kosher law allows"
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
