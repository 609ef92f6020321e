"""Whether a food suits an allergy or a diet, and the sentence that says so."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum, auto
from typing import assert_never

from knowledge import diets
from knowledge.answers.eaters.diets_said import ways_of_eating
from knowledge.answers.eaters.kinship import akin_to
from knowledge.answers.eaters.labelling import LEAVE_OUT, has, have, is_plural, listed
from knowledge.answers.eaters.uncertain import (
    barring_note,
    food_of,
    holds,
    is_warned,
    needs_label,
    tells_of_more,
    ways_barred_by_note,
)
from knowledge.answers.reading.subject import Subject
from knowledge.foods.model import Food
from knowledge.foods.store import Store

_NOT_KOSHER_BY_KIND = frozenset({"fish", "game"})  # only some kinds of these animals are allowed

_BY_SLAUGHTER = frozenset({"halal", "kosher"})


class Verdict(Enum):
    """What is known of a food for someone who must not have something."""

    HAS_IT = auto()
    KIN = auto()  # free of it, but may set off the same reaction
    MAYBE = auto()
    FREE = auto()
    UNKNOWN = auto()


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A food, and what its eater keeps to: "no nuts", "vegan"."""

    subject: Subject
    token: str
    store: Store
    is_bought: bool = False  # the very packet that the cook has, of which only its label tells

    @property
    def is_way_of_eating(self) -> bool:
        return self.token in ways_of_eating(self.store)

    @property
    def label(self) -> str:
        """What is looked for on a label, or the way of eating: "nuts", "vegan"."""
        return self.token if self.is_way_of_eating else self.token.removeprefix("no ")

    @property
    def food(self) -> Food | None:
        return self.subject.foods[0] if self.subject.foods else None

    @property
    def allergens(self) -> frozenset[str]:
        """What it has for sure."""
        return (self.food.allergens if self.food else frozenset()) | self.subject.has

    @property
    def note(self) -> str:
        return f" ({self.subject.note})" if self.subject.note else ""


def judged(case: Case) -> Verdict:
    """The verdict on a food; FREE only of what is known as a whole."""
    subject, token, store = case.subject, case.token, case.store
    is_barred = any(diets.bars(food, token) for food in subject.foods)
    if is_barred or subject.names_it or holds(subject.has, token, store):
        return Verdict.HAS_IT
    if not subject.exact:
        return Verdict.UNKNOWN
    may = holds(frozenset(subject.may), token, store)
    if case.food is None:
        return _judged_by_name(case, may=may)
    if akin_to(case.food, token, store):
        return Verdict.KIN
    warned = is_warned(case.food, token.removeprefix("no ")) or needs_label(case.food, token, store)
    doubtful = may or warned or token in ways_barred_by_note(case.food.does, store)
    return Verdict.MAYBE if doubtful else Verdict.FREE


def _judged_by_name(case: Case, *, may: bool) -> Verdict:
    """The verdict on what is no food of the tables, but has a row in `allergens_said.csv`."""
    held = case.subject.has
    if held and akin_to(food_of(held, case.store), case.token, case.store):
        return Verdict.KIN
    is_warned_of = f"not for a {case.label} allergy" in case.subject.note
    free = case.subject.single and not (may or is_warned_of or case.is_way_of_eating)
    return Verdict.FREE if free else Verdict.MAYBE


def said(case: Case, verdict: Verdict, *, if_held: str, if_free: str) -> str:
    """The verdict in words; `if_held` and `if_free` are the yes or no that leads."""
    name = case.subject.name
    match verdict:
        case Verdict.UNKNOWN:
            called = case.label if case.is_way_of_eating else f"free of {case.label}"
            return f"I don't know what is in {name}, so I can't call it {called}."
        case Verdict.HAS_IT:
            return _led(_barred_lead(case) if if_held == "No" else if_held, _has_it(case))
        case Verdict.KIN:
            return _kin(case)
        case Verdict.MAYBE:
            return _maybe(case, if_held)
        case Verdict.FREE if case.token in _BY_SLAUGHTER and case.food and case.food.animal in diets.MEAT:
            return (
                f"Yes, by its kind: plain {name} fits {case.label} if it was slaughtered by that rule,"
                " which only the certificate or the butcher tells."
            )
        case Verdict.FREE:
            verb = "have" if is_plural(name) else "has"
            if case.is_bought and not case.is_way_of_eating:
                return (
                    f"Not surely: plain {name} {verb} no {case.label} of its own, but what else got into"
                    ' yours, in the mill or the packing too, only its label tells ("may contain").'
                )
            fits = f"fits {case.label}" if case.is_way_of_eating else f"{verb} no {case.label} of its own"
            note = case.note if case.subject.single and not case.is_way_of_eating else ""
            return _led(if_free, f"plain {name} {fits}{note}.")
    assert_never(verdict)


def _barred_lead(case: Case) -> str:
    """No bare "No" before an allergen that is in it: it would read as "free of it"."""
    return "No" if case.is_way_of_eating else "No, not safe"


def _has_it(case: Case) -> str:
    so = f", so it is not {case.token}" if case.is_way_of_eating else ""
    may = [allergen for allergen in case.subject.may if allergen not in case.allergens]
    more = f" It may also hold {', '.join(may)}." if may else ""
    return f"{case.subject.name} {_why_not(case)}{so}{case.note}.{more}"


def _kin(case: Case) -> str:
    holds_more = f" {have(case.subject.name, case.allergens)}, and" if case.allergens else ""
    return (
        f"Not surely: {case.subject.name}{holds_more} may set off the same reaction as {case.label}"
        f" in some people{case.note}. {LEAVE_OUT}"
    )


def _maybe(case: Case, if_held: str) -> str:
    if case.food and (made := barring_note(case.food.does, case.token, case.store)):
        only = f"only one whose label says {case.label}, made with another rennet"
        return _led(if_held, f"{case.subject.name} is {made}{case.note}; {only}.")
    sure = f" It {has(case.allergens)}." if case.allergens and not case.is_way_of_eating else ""
    return f"Not surely: {case.subject.name}{_doubt(case)}{case.note}.{sure}"


def _doubt(case: Case) -> str:
    """What goes after the name of a food that may hold it."""
    if case.food and tells_of_more(case.food.does, case.store):
        return f": {case.food.does}"
    if case.is_way_of_eating:
        return f" may be {case.label} or not, as it is made"
    if case.subject.may:
        return f" may hold {', '.join(case.subject.may)}"
    verb = "have" if is_plural(case.subject.name) else "has"
    return f" {verb} no {case.label} by itself, but what is sold may hold some"


def _why_not(case: Case) -> str:
    """What goes after the name of a food that has it."""
    barred = (food for food in case.subject.foods if diets.bars(food, case.token))
    why = next((_why_barred(food, case) for food in barred), "")
    return why or _barring_first(case, case.subject.has) or f"is made with {case.label}, by its name"


def _why_barred(food: Food, case: Case) -> str:
    """What in a food bars it; for a way of eating the animal it is of before what else it holds."""
    if case.token == "kosher" and food.animal in _NOT_KOSHER_BY_KIND:
        return "is not of a kind that kosher law allows"
    if food.animal == "alcohol" and (case.is_way_of_eating or case.token == "no alcohol"):
        return "is made with alcohol"
    barring = [
        allergen for allergen in food.allergens if holds(frozenset({allergen}), case.token, case.store)
    ]
    if food.animal and case.is_way_of_eating and not barring:
        return f"is of animal origin ({food.animal})"
    if food.allergens and (barring or not case.is_way_of_eating):
        return _barring_first(case, food.allergens)
    return f"is of animal origin ({food.animal})" if food.animal else ""


def _barring_first(case: Case, allergens: frozenset[str]) -> str:
    """ "has tree nuts; also milk": what bars it before what else it has."""
    barring = [one for one in allergens if holds(frozenset({one}), case.token, case.store)]
    name = case.subject.name
    if not barring:
        return have(name, allergens)
    others = listed(allergens.difference(barring))
    also = f", and also {others}" if others and not case.is_way_of_eating else ""
    return f"{have(name, barring)}{also}"


def _led(lead: str, text: str) -> str:
    return f"{lead}: {text}" if lead else f"{text[0].upper()}{text[1:]}"
