"""The last gate: a plan that holds what an allergy bars is never shown, whatever went wrong before.

It looks at the finished plan alone: at the foods of its items and steps, and at the very line that
tells what the dinner contains. Advice and hints that name something barred are left out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from dataclasses import replace

from knowledge.diets import allergens_barred
from knowledge.errors import UnknownFood
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.names import key
from knowledge.planner import words
from knowledge.planner.gathering.meant import barred
from knowledge.planner.model import NoPlan, Plan, Request

LONGEST = 3  # words of a food's name that are looked for in a line
CONTAINS = "Contains "


def withheld(answer: Plan | NoPlan, *, store: Store) -> Plan | NoPlan:
    """The answer, or why it is kept back; its nearest plan passes the same gate."""
    if isinstance(answer, NoPlan):
        nearest = withheld(answer.nearest, store=store) if answer.nearest else None
        return replace(answer, nearest=nearest if isinstance(nearest, Plan) else None)
    request = answer.request
    tokens = {*request.allergies, *allergens_barred(request.diets)}
    found = sorted(tokens & {*_held(answer, store)})
    if found:
        reason = (
            f"it would contain {words.listed(found)}, and you spoke of an allergy: "
            "say again what is at hand and what nobody may eat"
        )
        return NoPlan(reasons=(reason,), nearest=None, request=request)
    return replace(
        answer,
        advice=tuple(line for line in answer.advice if not _names_barred(line, request, store)),
        flavour="" if _names_barred(answer.flavour, request, store) else answer.flavour,
    )


def _held(plan: Plan, store: Store) -> Iterator[str]:
    """Every allergen of what is in the plan, and those that it says it contains."""
    ids = {item.food_id for item in plan.items} | {food for step in plan.steps for food in step.foods}
    for food_id in ids:
        try:
            yield from store.food(food_id).allergens
        except UnknownFood:
            continue
    for caution in plan.cautions:
        if caution.text.startswith(CONTAINS):
            yield from re.split(r", | and ", caution.text.removeprefix(CONTAINS).rstrip("."))


def _names_barred(line: str, request: Request, store: Store) -> bool:
    """Whether a line of advice names a food that this cook does not eat."""
    if not (request.allergies or request.diets or request.excluded):
        return False
    return any(barred(food, request) for food in _foods(line, store))


def _foods(line: str, store: Store) -> Iterable[Food]:
    """The foods that a line names, by the longest names in it."""
    spoken = [key(word) for word in re.findall(r"[^\W\d_]+", line)]
    n = 0
    while n < len(spoken):
        for length in range(LONGEST, 0, -1):
            ids = store.names().get(" ".join(spoken[n : n + length]), ())
            if ids and n + length <= len(spoken):
                yield store.food(ids[0])
                break
        else:
            length = 1
        n += length
