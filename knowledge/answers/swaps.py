"""What to take instead of a food."""

from __future__ import annotations

import itertools
import re
from collections.abc import Mapping

from knowledge.answers.cite import cited
from knowledge.answers.diets_said import diets_said
from knowledge.answers.labelling import CHECK
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.restraints import Restraint, is_refused, restraint, rules_out, speaks_of_harm
from knowledge.answers.uncertain import may_hold
from knowledge.answers.words import words_of
from knowledge.foods.model import Food
from knowledge.text.normalise import key

_INSTEAD = re.compile(
    r" (?:instead|binders?|binds?|bind|holds? \w+ together|substitut\w*|subs?|swap\w*|replac\w*|alternativ\w*"
    r"|in place of|stand in"
    r"|stands in|use for|what for|options for|what else|other than|besides|use rather than|rather than"
    r"|tak\w+ (?:the )?place"
    r"|(?:trade|exchange|switch)(?: \w+){1,3} for) "
)
_MISSING = re.compile(
    r" (?:no|without|don ?t have|haven ?t got|can ?t (?:find|get)|out of|ran out of|have no|don ?t like"
    r"|hate) "
)
_AND_NOW = re.compile(
    r" (?:use|what|can i) | i (?:don|have|haven|ran|am|hate|ve|ve got)| im out|got no | for (?:the|my|a) "
)
_GONE = re.compile(
    r"(?:^ out of| (?:am|im|i m|we re|were|are|is|all|fresh|clean) out of| ran out of| run out of| used up"
    r"| have no| got no| no more| don ?t have any| haven ?t (?:got )?any)(?: any| the| my| our)? "
)
# What goes, the surest words first: "no nuts please, what instead of walnuts" is about the walnuts.
_LEAVES = tuple(
    re.compile(rf" (?:{words}) (?:any |the |my |some |a |an |her |his |our |plain |cow s |cows )*")
    for words in (
        r"instead of|in place of|rather than|substitut\w* for|subs? for|replacements? (?:for|of)|replacing"
        r"|alternativ\w* (?:to|for|of)|replaces?|stands? in for|else than|other than|besides|(?:trade"
        r"|exchange|switch)(?: out)?|place of",
        r"swaps? for|swap(?:ping)?(?: out)?|use for|do for",
        r"out of|ran out of|don ?t have(?: any)?|haven ?t got(?: any)?|have no|got no|can ?t (?:find|get)",
        r"for|no|without|hate|don ?t like",
    )
)
_REPLACED_AFTER = re.compile(
    r"(?:replacements?|substitutes?|alternatives?|swaps?|subs?|stand ins?)\b(?! for| of)"
)
_OFFERED_BEFORE = re.compile(r"\b(?:use|using|try|with|by|is|are|will|would|could|does|do)(?: \w+)?$")
_OFFERED_AFTER = re.compile(r"(?:instead|in place|for|work|works|replace|as|be|do)\b")
_INSTEAD_AFTER = re.compile(r"\b(?:instead|in place|as an? (?:swap|option|substitute|replacement))\b(?! of)")
_WAY_TO_MAKE = re.compile(r" (?:free|less|without(?: any)?|vegan|plant based|no)(?: \w+){0,2} $")
_ASKS_FIT = re.compile(
    r" (?:is|are|does|do|contains?|ok|okay|safe|suitable|eat|have|allergens?|temperature|long|keep) "
)

SWAP = "Instead of"  # how every swap begins
SHORT = 6  # words of a remark like "out of baking powder"


def swap_for_someone(question: Question) -> Answer | None:
    """A swap that is asked for by name and for someone's sake: it outranks what a word of it may bring up."""
    if not question.mentions or not _INSTEAD.search(question.plain):
        return None
    leaving, held_out, held = _meant(question)
    if not held:
        return None
    if held_out is None and _is_only_offered(question, leaving) and held.bars(leaving.food):
        text = f"No: {leaving.phrase}{_why_barred(leaving.food, held)}. {CHECK}"
        return Answer(known=True, answer=text, sources=cited(question.store, "EU-1169", "A-FDA-ALLERGEN"))
    return _answered(question, leaving, held_out, held)


def _is_only_offered(question: Question, mention: Mention) -> bool:
    """True for "milk allergy, goat's milk instead?": what is asked is whether this one may be had."""
    words = question.plain.split()
    before = f" {' '.join(words[: mention.start])} "
    goes = any(found.end() == len(before) for pattern in _LEAVES[:3] for found in pattern.finditer(before))
    after = " ".join(words[mention.end : mention.end + 3])
    return not goes and (_INSTEAD_AFTER.search(after) is not None or _offered(question, mention))


def substitute(question: Question) -> Answer | None:
    """What to take instead of a food."""
    plain = question.plain
    short = len(question.words) <= SHORT and not question.says("is", "are", "can", "cook")
    missing = _is_missing(question) and (_AND_NOW.search(plain) or short)
    if not question.mentions or _is_unknown(question):
        return None
    if not (_INSTEAD.search(plain) or missing or _is_way_to_make(question) or _is_pair(question)):
        return None
    return _answered(question, *_meant(question))


def swap_for_missing(question: Question) -> Answer | None:
    """ "Out of cornflour for the gravy": what to take instead comes before a word about gravy."""
    gone = _GONE.search(question.plain)
    if gone is None:
        return None
    at = len(question.plain[: gone.end()].split())
    if not any(at <= m.start <= at + 1 for m in question.mentions):
        return None
    leaving, held_out, held = _meant(question)
    return _answered(question, leaving, held_out, held)


def _is_pair(question: Question) -> bool:
    """True for "yogurt for sour cream": two foods that do the same, and the first held out for the second."""
    words = question.plain.split()
    return any(
        first.end + 1 == second.start
        and words[first.end] == "for"
        and first.food.id != second.food.id
        and (first.food.group == second.food.group or _is_listed(question, second.food, first.food))
        for first, second in itertools.pairwise(question.mentions)
    )


def _is_listed(question: Question, leaving: Food, instead: Food) -> bool:
    rows = question.store.table("substitutions")
    return any(row["food_id"] == leaving.id and row["instead_id"] == instead.id for row in rows)


def _is_unknown(question: Question) -> bool:
    """True if what is to be replaced is no food of the tables: what is held out is not taken for it."""
    found = re.search(r" (?:instead of|in place of) (?=\w)", question.plain)
    if found is None:
        return False
    at = len(question.plain[: found.end()].split())
    return all(m.end <= at for m in question.mentions)


def _is_missing(question: Question) -> bool:
    """True if a food stands right after the words of lack: "no oven, how do I roast potatoes" lacks none."""
    for found in _MISSING.finditer(question.plain):
        at = len(question.plain[: found.end()].split())
        if any(at <= m.start <= at + 2 for m in question.mentions):
            return True
    return False


def _meant(question: Question) -> tuple[Mention, Mention | None, Restraint]:
    """What is to be replaced, what the question itself holds out instead, and what is ruled out."""
    leaving = _leaving(question)
    others = [m for m in question.mentions if m.food.id != leaving.food.id and not rules_out(question, m)]
    held_out = next((m for m in others if not is_refused(question, m) and _offered(question, m)), None)
    same = [m for m in question.mentions if m.phrase == leaving.phrase and not is_refused(question, m)]
    apart = [m for m in (leaving, *same, held_out) if m is not None and not rules_out(question, m)]
    return leaving, held_out, restraint(question, apart=apart)


def _answered(question: Question, leaving: Mention, held_out: Mention | None, held: Restraint) -> Answer:
    listed = [r for r in question.store.table("substitutions") if r["food_id"] == leaving.food.id]
    rows = [row for row in listed if not _is_barred(question, row, held)]
    rows.sort(
        key=lambda row: held_out is None or row["instead_id"] != held_out.food.id
    )  # the one named first
    sauce = leaving.food.group in words_of(question.store, "made")  # more than its kind: has no like
    alike = [] if rows or sauce else _like(question, leaving.food, held)
    ideas = "; ".join(f"{_name(question, row['instead_id'])} ({row['how']})" for row in rows)
    ideas = ideas or ", ".join(food.name for food in alike) or "nothing that comes near, leave it out"
    text = f"{SWAP} {leaving.phrase}: {ideas}."
    if held_out is not None:
        text += _verdict(question, held_out, leaving, held)
    offered = [question.store.food(row["instead_id"]) for row in rows if row["instead_id"] != "water"] + alike
    text += _warned(question, offered)
    if held:
        text += _labelled(offered, held) + _kin_left_out(question, listed, held) + f" {CHECK}"
    sources = cited(question.store, "EU-1169", "A-FDA-ALLERGEN") if held else ()
    return Answer(known=True, answer=text, sources=("common practice", *sources))


def _is_way_to_make(question: Question) -> bool:
    """ "Peanut free satay sauce", "egg free mayonnaise": a dish named with what must not be in it."""
    last = question.mentions[-1]
    words = question.plain.split()
    before = f" {' '.join(words[: last.start])} "
    here = any(row["food_id"] == last.food.id for row in question.store.table("substitutions"))
    made = last.food.group in words_of(question.store, "made")
    return (
        here
        and made
        and not rules_out(question, last)
        and not _ASKS_FIT.search(question.plain)
        and _WAY_TO_MAKE.search(before) is not None
        and bool(diets_said(before, question.store) or len(question.mentions) > 1)
    )


def _why_barred(food: Food, held: Restraint) -> str:
    """What goes after the name of a food that is ruled out."""
    if akin := held.akin(food):
        return f" may set off the same reaction ({akin.removeprefix('no ')})"
    if may := held.may(food):
        return f" may hold {', '.join(may)}"
    return (
        f" has {', '.join(sorted(food.allergens))}" if food.allergens else " does not go with what you said"
    )


def _verdict(question: Question, mention: Mention, leaving: Mention, held: Restraint) -> str:
    """What is said of the food that the question itself holds out."""
    food = mention.food
    if held.bars(food):
        return f" Not {mention.phrase}: it{_why_barred(food, held)}."
    has = f" (has {', '.join(sorted(food.allergens))})" if food.allergens else ""
    text = f" {mention.phrase.capitalize()}{has} for {leaving.phrase}: {food.does or 'try it'}; "
    return f"{text}ask me to swap it in a plan and I compute the times."


def _warned(question: Question, offered: list[Food]) -> str:
    """The allergens of every food offered, also those that it shares with the one replaced."""
    may = may_hold(question.store)
    told = []
    for food in offered:
        has = f"has {', '.join(sorted(food.allergens))}" if food.allergens else ""
        held = f"may hold {', '.join(sorted(may[food.id]))}" if food.id in may else ""
        if has or held:
            told.append(f"{food.name} {' and '.join(filter(None, (has, held)))}")
    return f" Mind allergies: {'; '.join(dict.fromkeys(told))}." if told else ""


def _labelled(offered: list[Food], held: Restraint) -> str:
    """What is offered but sold in many makings: only with a label free of what is ruled out."""
    told = {food.name: held.labels(food) for food in offered}
    names = [name for name, labels in told.items() if labels]
    if not names:
        return ""
    free_of = dict.fromkeys(label for labels in told.values() for label in labels)
    return f" Only one labelled free of {', '.join(free_of)}: {', '.join(names)}."


def _kin_left_out(question: Question, listed: list[Mapping[str, str]], held: Restraint) -> str:
    foods = [question.store.food(row["instead_id"]) for row in listed if row["instead_id"] != "water"]
    akin = [food.name for food in foods if held.is_akin_only(food)]
    if not akin:
        return ""
    return (
        f" Left out, since it may set off the same allergy: {', '.join(dict.fromkeys(akin))}; ask a doctor."
    )


def _is_barred(question: Question, row: Mapping[str, str], held: Restraint) -> bool:
    if "rennet" in row["how"] and {"vegetarian", "vegan"} & set(held.diets):
        return True
    here = [] if row["instead_id"] == "water" else [question.store.food(row["instead_id"])]
    return any(held.bars(food) for food in (*here, *_added(question, row["how"])))


def _leaving(question: Question) -> Mention:
    """The food to be replaced; never one that is named only to be kept out, if another is named."""
    eggs = next((m for m in question.mentions if m.food.group == "egg"), None)
    if eggs and question.says("bind", "hold"):
        return eggs
    kept = tuple(m for m in question.mentions if not rules_out(question, m))
    words = question.plain.split()
    before = next((m for m in kept if _REPLACED_AFTER.match(" ".join(words[m.end : m.end + 2]))), None)
    if before is not None:
        return before  # "almond replacement without soy"
    for mentions in (kept, question.mentions):
        for pattern in _LEAVES:
            for found in pattern.finditer(question.plain):
                at = len(question.plain[: found.end()].split())
                near = next((m for m in mentions if at < m.end and m.start <= at + 1), None)
                if near:
                    return near
        if mentions and speaks_of_harm(question):
            not_a_diet = [m for m in mentions if not diets_said(f" {m.phrase} ", question.store)]
            return (not_a_diet or list(mentions))[0]
        if mentions:
            return mentions[0]
    return question.mentions[0]


def _added(question: Question, how: str) -> tuple[Food, ...]:
    """The foods that a swap asks for beside the stand-in: "with toasted sesame seed", "1 part milk"."""
    said = re.sub(
        r"\b(?:without|no|not|less|tastes of|in place of|instead of|for (?:one|an|1))\b[^,;]*", "", how
    )
    words = re.findall(r"[a-z]+", said.lower())
    found, at = [], 0
    while at < len(words):
        for length in (2, 1):  # "coconut milk" is no milk
            food = question.store.named(key(" ".join(words[at : at + length])))
            if food is not None:
                found.append(food)
                at += length - 1
                break
        at += 1
    return tuple(found)


def _offered(question: Question, mention: Mention) -> bool:
    """True if the question holds this food out as the stand-in: "can I use milk instead", "with milk"."""
    words = question.plain.split()
    before = " ".join(words[max(mention.start - 2, 0) : mention.start])
    after = " ".join(words[mention.end : mention.end + 2])
    return _OFFERED_BEFORE.search(before) is not None or _OFFERED_AFTER.match(after) is not None


def _like(question: Question, food: Food, held: Restraint) -> list[Food]:
    """The three foods that are nearest by kind, use and the words for what they do."""
    words = set(re.findall(r"\w{4,}", food.does))

    def distance(other: Food) -> tuple[bool, bool, bool, int]:
        alike = len(words & set(re.findall(r"\w{4,}", other.does)))
        return other.part != food.part, other.doneness != food.doneness, other.when != food.when, -alike

    return sorted(
        (
            f
            for f in question.store.foods()
            if f.group == food.group and f.id != food.id and f.role is food.role and not held.bars(f)
        ),
        key=distance,
    )[:3]


def _name(question: Question, food_id: str) -> str:
    return food_id if food_id == "water" else question.store.food(food_id).name
