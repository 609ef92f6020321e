"""Which food is meant: of the plan by its name, of the tables by what was said, and what may not be eaten."""

from __future__ import annotations

from knowledge.diets import barred_by
from knowledge.errors import UnknownFood
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.model import Have, Plan, PlanItem, Request


def item_named(plan: Plan, name: str | None, store: Store) -> PlanItem | None:
    """The item of the plan that a name means: by id, by name, by synonym, by a word of it."""
    if name is None:
        return None
    for item in plan.items:
        if name in (item.food_id, item.food, item.said):
            return item
    food = store.named(name)
    for item in plan.items:
        if food is not None and item.food_id == food.id:
            return item
    said = set(name.lower().split())
    near = [i for i in plan.items if said & set(f"{i.food} {i.said}".lower().split())]
    if not near and food is not None:
        near = [i for i in plan.items if store.food(i.food_id).group == food.group]
    return near[0] if len(near) == 1 else None


def food_of(to: Have | None, store: Store) -> Food | None:
    """The food of something at hand, by id or by the words for it."""
    if to is None:
        return None
    try:
        return store.food(to.food_id)
    except UnknownFood:
        return store.named(to.said or to.food_id)


def most_alike(plan: Plan, new: Food, store: Store) -> PlanItem | None:
    """What a new food most likely replaces: the same doneness class, else the same part of the plate."""
    foods = [(item, store.food(item.food_id)) for item in plan.items]
    by_class = [item for item, food in foods if food.doneness == new.doneness]
    by_part = [item for item, food in foods if food.part == new.part]
    return next((near[0] for near in (by_class, by_part) if len(near) == 1), None)


def barred(food: Food, request: Request) -> str:
    """Why this cook does not eat it; empty when nothing speaks against it."""
    if food.id in request.spoiled:
        return "it stood out warm for hours: throw it away, cooking does not make it safe"
    unfit = next((u.why for u in request.unfit if u.food == food.id), "")
    if unfit:
        return unfit
    bad = sorted(food.allergens & set(request.allergies))
    if bad:
        return f"it contains {words.listed(bad)}, and you said allergy"
    if food.id in request.excluded or food.name in request.excluded:
        return "you said no to it"
    for token in request.excluded:
        if barred_by(food, (f"no {token}",)):
            return f"you said no {token}"
    diets = barred_by(food, request.diets)
    return f"it does not go with: {', '.join(diets)}" if diets else ""
