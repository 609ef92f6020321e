"""Whether it is enough for those who eat, and what would round it off."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from knowledge.foods.model import Food
from knowledge.planner.draft import Draft
from knowledge.planner.gathering import amounts
from knowledge.planner.gathering.feeding import served_by
from knowledge.planner.model import Request
from knowledge.planner.search import rounds

LIGHT, PORTIONS = 0.75, 1.4  # of the eaters: from here on it is said
FAR_TOO_LITTLE = 0.26  # of the eaters: a quarter, and the first thing to be said
FILLING = ("protein", "starch")
RICH_G = 12.0  # of protein in 100 g: cheese and anchovies, not milk


def far_too_little(draft: Draft, request: Request) -> Iterator[str]:
    """That most would leave the table hungry, and what is missing."""
    if not _is_far_too_little(draft, request):
        return
    parts = {d.part for d in draft.dinner.dishes}
    lacking = ["meat, fish, eggs, beans or tofu"] * ("protein" not in parts)
    lacking += ["potatoes, rice, pasta or bread"] * ("starch" not in parts)
    feeds = amounts.persons(rounds.fed(draft), draft.dinner.eaters, said=True)
    more = f"add {' and '.join(lacking)}" if lacking else "take more of it, or cook something beside it"
    yield f"far too little for {draft.dinner.eaters:g}: it feeds about {feeds}; {more}"


def is_no_dinner(draft: Draft, request: Request) -> bool:
    """Whether all that there is, as said, is a bite of vegetables for a tableful."""
    dishes, left_out = draft.dinner.dishes, draft.dinner.left_out
    known = not left_out and not request.unknown and not any(d.assumed for d in dishes)
    return known and _is_far_too_little(draft, request) and not any(d.part in FILLING for d in dishes)


def _is_far_too_little(draft: Draft, request: Request) -> bool:
    """Whether nobody could be full of it; what is there and kept for another day counts as well."""
    least = FAR_TOO_LITTLE * draft.dinner.eaters
    if not request.eaters_said or rounds.fed(draft) > least:
        return False
    said = {have.food_id: have for have in request.have}
    there = [
        replace(dish, grams=max(dish.grams, amounts.grams_of(dish.food, said[dish.food.id]) or 0.0))
        for dish in draft.dinner.dishes
        if dish.food.id in said
    ]
    return served_by(there, filling=any(d.part == "starch" for d in there)) <= least


def advice(draft: Draft, request: Request) -> Iterator[str]:
    """What would round it off, when there is not enough for everyone or no protein."""
    feeds, eaters = rounds.fed(draft), draft.dinner.eaters
    far = _is_far_too_little(draft, request)  # then it has been said at the top
    beside = any(side.food.part == "starch" for side in draft.dinner.sides)
    if not far and not beside and request.eaters_said and feeds < LIGHT * eaters:
        whole = amounts.persons(feeds, eaters, said=True)
        short = f"feeds about {whole}" if whole < eaters else "on the light side"
        yield f"{short}: for {eaters:g}, put bread or a salad beside it"
    elif request.eaters_said and feeds > PORTIONS * eaters:
        yield f"about {feeds:.0f} portions: what is left goes into the fridge within two hours"
    if not draft.dinner.sides and not any(_brings_protein(f) for f in _all_foods(draft)):
        yield "light on protein: an egg, cheese, beans or tofu would round it off"


def _all_foods(draft: Draft) -> Iterator[Food]:
    yield from (d.food for d in draft.dinner.dishes)
    yield from (s.food for s in draft.dinner.seasonings)


def _brings_protein(food: Food) -> bool:
    """Whether it is a protein, or the cheese or small fish that stand in for one."""
    rich_g = food.composition.protein_g if food.composition else 0.0
    return food.part == "protein" or (food.animal in ("dairy", "fish") and (rich_g or 0.0) >= RICH_G)
