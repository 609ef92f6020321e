"""What to take instead of a food."""

from __future__ import annotations

import itertools
import re
from collections.abc import Sequence

from knowledge.answers.eaters.diets_said import diets_said
from knowledge.answers.eaters.labelling import CHECK, authorities, has, may_have
from knowledge.answers.eaters.restraints import (
    Restraint,
    is_refused,
    restraint,
    rules_out,
    speaks_of_harm,
)
from knowledge.answers.eaters.uncertain import may_hold
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.words import words_of
from knowledge.answers.swaps.leaving import held_out, is_only_offered, leaving, used_up
from knowledge.answers.swaps.swap_rows import StandIn, alike, foods_of, is_barred, stand_ins
from knowledge.answers.swaps.swaps_told import told_swap
from knowledge.answers.swaps.without import warned_of, way_without_food
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.text.clauses import clauses_of, met

# "What holds it together", "takes the place", "trade milk for": a swap with other words between.
_TAKES_THE_PLACE = re.compile(
    r" (?:holds? \w+ together|tak\w+ (?:the )?place|(?:trade|exchange|switch)(?: \w+){1,3} for) "
)
_MISSING = re.compile(
    r" (?:no|without|don ?t have|haven ?t got|can ?t (?:find|get)|out of|have no|don ?t like|hate) "
)
_AND_NOW = re.compile(
    r" (?:use|what|can i) | i (?:don|have|haven|ran|am|hate|ve|ve got)| im out|got no | for (?:the|my|a) "
)
_RAN_OUT = re.compile(r" (?:ran|run|running|am|im|i m|we re|are|all) out of ")
_GONE = re.compile(
    r"(?:^ out of| (?:am|im|i m|we re|were|are|is|all|fresh|clean|ran|run) out of| used up"
    r"| have no| got no| no more| short of| don ?t have any| haven ?t (?:got )?any"
    r"| (?:can|could)(?:n)? ?t (?:find|get|buy)|^ no"
    r"| there ?(?:is|s) no)(?: any| the| my| our)? "
)
_AT_HOME = re.compile(
    r"(?:what|left|at home|in the (?:house|cupboard|fridge|flat|shop)|help|need|for (?!how|\d))"
)
_SOMEONE = clauses_of("{infant}|{small child}|{pet}|{pregnant}")
_IN_PLACE_OF = re.compile(r" (?:instead of|in place of) (?=\w)")
_MADE_WITHOUT = re.compile(r" (?:free|less|without(?: any)?|vegan|plant based|no)(?: \w+){0,2} $")

SWAP = "Instead of"  # how every swap begins
SHORT = 6  # words of a remark like "out of baking powder"
NOTHING = "nothing that comes near, leave it out"


def swap_for_someone(question: Question) -> Answer | None:
    """A swap that is asked for by name and for someone's sake: it outranks what a word of it may bring up."""
    if not question.mentions or not _asks_for_swap(question):
        return None
    goes, comes, held = _meant(question)
    if not held:
        return None
    if goes.food.group == "egg" and (by_use := _by_use(question, goes, held)):
        return by_use
    if comes is None and is_only_offered(question, goes) and held.bars(goes.food):
        lead = "No, not safe" if goes.food.allergens or held.akin(goes.food) else "No"
        text = f"{lead}: {goes.phrase}{_why_barred(goes.food, held)}.{_for_the_cause(held)} {CHECK}"
        return Answer(known=True, answer=text, sources=authorities(question.store))
    return _answered(goes, comes, held)


def _for_the_cause(held: Restraint) -> str:
    """What may stand in for the food that is ruled out, when the one held out may not."""
    if not held.foods:
        return ""
    cause = held.foods[0]
    free = [row for row in stand_ins(cause.food, held.store) if not is_barred(row, held)]
    told = f" {SWAP} {cause.phrase}: {_ideas(free, ())}. {_warned(foods_of(free), held.store)}"
    return told.rstrip() if free else ""


def swap_for_missing(question: Question) -> Answer | None:
    """ "Out of cornflour for the gravy": what to take instead comes before a word about gravy."""
    gone = _GONE.search(question.plain)
    if gone is None or not _is_named_at(question, gone.end(), within=1):
        return None
    bare = gone.start() == 0 and gone[0].startswith(" no ")
    if (bare or " there" in gone[0]) and not _is_lack(question, gone.end()):
        return None
    return _by_use(question, *_meant_without_offer(question)) or _answered(*_meant(question))


def _is_lack(question: Question, place: int) -> bool:
    """True for "no butter for the sauce", "no rice vinegar at home"; "no nuts for my son" keeps them out."""
    if speaks_of_harm(question) or met(question.plain, _SOMEONE):
        return False
    at = len(question.plain[:place].split())
    first = next((m for m in question.mentions if m.start >= at), question.mentions[0])
    after = " ".join(question.plain.split()[first.end :])
    return _AT_HOME.match(after) is not None and not diets_said(f" {first.phrase} ", question.store)


def substitute(question: Question) -> Answer | None:
    """What to take instead of a food."""
    if not question.mentions or _is_unknown(question):
        return None
    asks = _asks_for_swap(question) or _is_missing(question)
    if not (asks or _is_made_without(question) or _is_pair(question)):
        return None
    return _by_use(question, *_meant_without_offer(question)) or _answered(*_meant(question))


def _meant_without_offer(question: Question) -> tuple[Mention, Restraint]:
    goes, _, held = _meant(question)
    return goes, held


def _by_use(question: Question, goes: Mention, held: Restraint) -> Answer | None:
    """What replaces eggs in the dish named: they bind a burger, and raise a sponge."""
    text = way_without_food(goes.food, question.plain, held.store)
    if not text:
        return None
    head, _, way = text.partition(": ")  # "Binding without egg, for each egg: ..."
    each = "for each egg " if "each egg" in head else ""
    warned = (warned_of(text, held) or CHECK) if held else ""
    answer = f"{SWAP} {goes.phrase}: {each}{way} {warned}".strip()
    return Answer(known=True, answer=answer, sources=("common practice",))


def _asks_for_swap(question: Question) -> bool:
    said = hears(question, "asks for a swap") or _TAKES_THE_PLACE.search(question.plain) is not None
    return said or _asks_which_one(question)


def _asks_which_one(question: Question) -> bool:
    """True for "the tamarind is over, I have lime and tomato: which one should I put"."""
    lacks = used_up(question) or _RAN_OUT.search(question.plain) or _is_missing(question)
    return bool(lacks) and len(question.foods) > 1 and hears(question, "asks which of them to take")


def _is_named_at(question: Question, place: int, *, within: int) -> bool:
    """True if a food is named so many words behind a place (of signs) in the question."""
    at = len(question.plain[:place].split())
    return any(at <= mention.start <= at + within for mention in question.mentions)


def _is_missing(question: Question) -> bool:
    """True if a food stands right after the words of lack: "no oven, how do I roast potatoes" lacks none."""
    short = len(question.words) <= SHORT and not question.says("is", "are", "can", "cook")
    if not short and _AND_NOW.search(question.plain) is None:
        return False
    return any(_is_named_at(question, lack.end(), within=2) for lack in _MISSING.finditer(question.plain))


def _is_pair(question: Question) -> bool:
    """True for "yogurt for sour cream": two foods that do the same, and the first held out for the second."""
    words = question.plain.split()
    return any(
        first.end + 1 == second.start
        and words[first.end] == "for"
        and first.food.id != second.food.id
        and (first.food.group == second.food.group or _is_listed(second.food, first.food, question.store))
        for first, second in itertools.pairwise(question.mentions)
    )


def _is_listed(goes: Food, comes: Food, store: Store) -> bool:
    return any(food.id == comes.id for food in foods_of(stand_ins(goes, store)))


def _is_unknown(question: Question) -> bool:
    """True if what is to be replaced is no food of the tables: what is held out is not taken for it."""
    found = _IN_PLACE_OF.search(question.plain)
    if found is None:
        return False
    at = len(question.plain[: found.end()].split())
    return all(mention.end <= at for mention in question.mentions)


def _is_made_without(question: Question) -> bool:
    """ "Peanut free satay sauce", "egg free mayonnaise": a dish named with what must not be in it."""
    dish = question.mentions[-1]
    is_made = dish.food.group in words_of(question.store, "made") or restraint(question, apart=[dish]).bars(
        dish.food
    )
    if not is_made or not stand_ins(dish.food, question.store):
        return False
    if rules_out(question, dish) or hears(question, "asks of the food itself"):
        return False
    before = f" {' '.join(question.plain.split()[: dish.start])} "
    if _MADE_WITHOUT.search(before) is None:
        return False
    return len(question.mentions) > 1 or bool(diets_said(before, question.store))


def _meant(question: Question) -> tuple[Mention, Mention | None, Restraint]:
    """What is to be replaced, what the question itself holds out instead, and what is ruled out."""
    goes = leaving(question)
    comes = held_out(question, goes)
    same = [m for m in question.mentions if m.phrase == goes.phrase and not is_refused(question, m)]
    apart = [m for m in (goes, *same, comes) if m is not None and not rules_out(question, m)]
    return goes, comes, restraint(question, apart=apart)


def _answered(goes: Mention, comes: Mention | None, held: Restraint) -> Answer:
    told = told_swap(goes.phrase, held.store)
    if told and not held and (comes is None or comes.phrase in told):
        return Answer(known=True, answer=told, sources=("common practice",))
    rows = stand_ins(goes.food, held.store)
    free = [row for row in rows if not is_barred(row, held)]
    free.sort(key=lambda row: comes is None or row.food is None or row.food.id != comes.food.id)  # it leads
    near = [] if free else alike(goes.food, held)
    offered = foods_of(free) + near
    sentences = [
        f"{SWAP} {goes.phrase}: {_ideas(free, near)}.",
        _verdict(comes, goes, held) if comes else "",
        _warned(offered, held.store),
        _labelled(offered, held) if held else "",
        _kin_left_out(foods_of(rows), held) if held else "",
        CHECK if held else "",
    ]
    sources = authorities(held.store) if held else ()
    text = " ".join(filter(None, sentences))
    return Answer(known=True, answer=text, sources=("common practice", *sources))


def _ideas(rows: Sequence[StandIn], near: Sequence[Food]) -> str:
    listed = "; ".join(f"{row.name} ({row.how})" for row in rows)
    return listed or ", ".join(food.name for food in near) or NOTHING


def _why_barred(food: Food, held: Restraint) -> str:
    """What goes after the name of a food that is ruled out."""
    if held.is_akin_only(food) and (akin := held.akin(food)):
        return f" may set off the same reaction ({akin.removeprefix('no ')})"
    return f" {may_have(held.may(food)) or has(food.allergens) or 'does not go with what you said'}"


def _verdict(comes: Mention, goes: Mention, held: Restraint) -> str:
    """What is said of the food that the question itself holds out."""
    food = comes.food
    if held.bars(food):
        return f"Not {comes.phrase}: it{_why_barred(food, held)}."
    allergens = f" ({has(food.allergens)})" if food.allergens else ""
    return (
        f"{comes.phrase.capitalize()}{allergens} for {goes.phrase}: {food.does or 'try it'};"
        " ask me to swap it in a plan and I compute the times."
    )


def _warned(offered: Sequence[Food], store: Store) -> str:
    """The allergens of every food offered, also those that it shares with the one replaced."""
    held = {food.name: (has(food.allergens), may_have(may_hold(store).get(food.id, ()))) for food in offered}
    told = [f"{name} {' and '.join(filter(None, parts))}" for name, parts in held.items() if any(parts)]
    return f"Mind allergies: {'; '.join(told)}." if told else ""


def _labelled(offered: Sequence[Food], held: Restraint) -> str:
    """What is offered but sold in many makings: only with a label free of what is ruled out."""
    labels = {food.name: of_food for food in offered if (of_food := held.labels(food))}
    if not labels:
        return ""
    free_of = dict.fromkeys(itertools.chain.from_iterable(labels.values()))
    return f"Only one labelled free of {', '.join(free_of)}: {', '.join(labels)}."


def _kin_left_out(listed: Sequence[Food], held: Restraint) -> str:
    akin = dict.fromkeys(food.name for food in listed if held.is_akin_only(food))
    if not akin:
        return ""
    return f"Left out, since it may set off the same allergy: {', '.join(akin)}; ask a doctor."
