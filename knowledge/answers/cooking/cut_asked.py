"""What a question about sizes asks: which foods, how they are cooked, in what time, which size is told."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from knowledge.answers.cooking.dish_cuts import DishCut, cut_of, dish_of
from knowledge.answers.cooking.sizes import at_size, said_of
from knowledge.answers.cooking.together import Wanted, is_cut
from knowledge.answers.cooking.ways import cooks, way_of
from knowledge.answers.model import Mention, Question
from knowledge.answers.reading.heard import hears, pattern
from knowledge.answers.reading.numbers import NUMBER, value_of
from knowledge.answers.reading.words import meanings_of
from knowledge.foods.model import DoneKind, Food
from knowledge.foods.pieces import Pieced, piece_of

MOST_FOODS = 4  # that one answer cuts
MINCED = "ground_meat"  # class of doneness, and of the safe minima
LEAST_MIN, MOST_MIN = 2.0, 300.0  # of a time that is said
_MINUTES = re.compile(rf" {NUMBER} ?(min|mins|minute|minutes|hour|hours|hr|hrs|h)(?= )")


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A question about several foods that are cooked together."""

    wanted: tuple[Wanted, ...]
    way: str
    in_min: float | None
    dish: tuple[DishCut, ...]


def foods_of(question: Question) -> list[Mention]:
    """What is cooked of the foods named, each once; of a dish that is a food too what goes into it."""
    dish, _ = dish_of(question)
    named = {m.food.id: m for m in reversed(question.mentions) if cooks(question.store, m.food)}
    parts = {
        food_id: m
        for food_id, m in named.items()
        if (m.food.doneness == MINCED or not _is_the_dish(question, m, dish))
        and not _is_of_the_one_beside(question, m)
    }
    named = parts or named
    return sorted(named.values(), key=lambda m: m.start)[:MOST_FOODS]


def _is_the_dish(question: Question, mention: Mention, dish: str) -> bool:
    """True for the dish itself, and for what of its name is never cut: the rice of "fried rice"."""
    whole_name = bool(dish) and dish in mention.phrase
    return whole_name or (mention.phrase in dish and not is_cut(question.store, mention.food))


def _is_of_the_one_beside(question: Question, mention: Mention) -> bool:
    """True for the "wedges" of "sweet potato wedges" and for the mince of "beef mince meatballs"."""
    nouns = {cut["name"].split()[-1] for cut in question.store.table("cuts")}
    behind = any(other.end == mention.start for other in question.mentions)
    shaped = any(m.start == mention.end and m.food.doneness == MINCED for m in question.mentions)
    return (behind and mention.phrase in nouns) or shaped


def asks_for_a_size(question: Question) -> bool:
    """True if a size is asked for, or something is cut to go with something else and no time is asked for."""
    if hears(question, "not cut"):
        return False
    if hears(question, "asks for a size"):
        return True
    if hears(question, "asks the inside"):  # "goat pieces, what temp is done"
        return False
    return hears(question, "cutting") and hears(question, "done together") and not is_timed(question)


def asks_if_together(question: Question) -> bool:
    """ "Will they cook at the same time?", "can I roast them together?"."""
    if hears(question, "not of the fire"):
        return False
    on_fire = bool(way_of(question)) or question.says("cook")
    return hears(question, "asks if together") or (question.says("together_") and on_fire)


def is_timed(question: Question) -> bool:
    return question.says("how long", "how many minutes", "what minutes", "when_")


def asked_of(question: Question, foods: Sequence[Mention]) -> Asked | None:
    _, dish = dish_of(question)
    way = _way(question, foods, dish)
    if way is None:
        return None
    rows = dish if dish and all(cut_of(m.food, dish) for m in foods) else ()
    aside = _aside(question, foods)
    wanted = tuple(
        Wanted(
            mention=mention,
            fixed=_fixed(question, mention),
            dish=cut_of(mention.food, rows),
            is_aside=mention in aside,
            is_to_cut=mention not in aside,
            is_sliced=mention not in aside and question.says("slice"),
        )
        for mention in foods
    )
    return Asked(wanted=wanted, way=way, in_min=_said_min(question), dish=rows)


def _way(question: Question, foods: Sequence[Mention], dish: Sequence[DishCut]) -> str | None:
    """How they are cooked: as said, as the dish is, else as mostly; None where they can't be."""
    kinds = {question.store.doneness(m.food.doneness).kind for m in foods}
    wet = DoneKind.HYDRATE in kinds
    said = "grill" if hears(question, "on skewers") else way_of(question)
    if said:
        return None if wet and said in ("roast", "grill") else said
    if dish:
        return dish[0].way or None
    if wet or any(_is_boiled(question, m.food) for m in foods):
        return "boil"
    if DoneKind.COLLAGEN in kinds:
        return "braise"
    alone = not any(m.food.animal for m in foods)
    return "boil" if alone and any(_is_boiled(question, m.food, "alone") for m in foods) else "roast"


def _is_boiled(question: Question, food: Food, when: str = "") -> bool:
    """True for what is mostly boiled, whatever it goes with or ("alone") where no meat is by it."""
    boiled = meanings_of(question.store, "boiled")
    return any(boiled.get(kind) == when for kind in (food.id, food.doneness))


def _aside(question: Question, foods: Sequence[Mention]) -> tuple[Mention, ...]:
    """What the others are to go with: "carrots to go with salmon", "with salmon, how big the carrots"."""
    words = question.plain.split()
    links = pattern(question.store, r"^(?:{goes beside}) ")
    for place, mention in enumerate(foods):
        before = words[foods[place - 1].end if place else 0 : mention.start]
        linked = any(links.match(f"{' '.join(before[at:])} ") for at in range(len(before)))
        if linked:
            return tuple(foods[place:]) if place else (mention,)
    return ()


def _fixed(question: Question, mention: Mention) -> Pieced | None:
    """The piece that is told: "2 cm potatoes", "julienne carrots", "whole mushrooms"."""
    food = mention.food
    said_mm = said_of(question, food)
    if said_mm is not None:
        return at_size(question.store, food, said_mm)
    cuts = meanings_of(question.store, "cut named")
    words = question.plain.split()
    near = (*words[max(mention.start - 2, 0) : mention.start], *words[mention.end : mention.end + 4])
    named = next((cuts[word] for word in near if word in cuts), None)
    others = [m for m in question.mentions if m is not mention and abs(m.start - mention.end) <= 1]
    return piece_of(food, question.store.cut(named)) if named and not others else None


def _said_min(question: Question) -> float | None:
    """The time that is given for all of it [min]."""
    found = _MINUTES.search(question.plain)
    if found is None:
        return None
    said = value_of(found[1]) * (60.0 if found[2].startswith("h") else 1.0)
    return said if LEAST_MIN <= said <= MOST_MIN else None
