"""Which food is meant: of the plan by its name, of the tables by what was said, and what may not be eaten."""

from __future__ import annotations

from functools import lru_cache

from knowledge import tables
from knowledge.diets import barred_by
from knowledge.errors import UnknownFood
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.names import key
from knowledge.planner import words
from knowledge.planner.model import Have, Plan, PlanItem, Request

PACKING = frozenset("tin tins tinned can cans jar pack packet bag of the a an my our that some".split())  # noqa: SIM905


def item_named(plan: Plan, name: str | None, store: Store) -> PlanItem | None:
    """The item of the plan that a name means: by id, by name, by synonym, by a word of it.

    The food counts, not its state: "canned chickpeas" are the tin of chickpeas.
    """
    if name is None:
        return None
    for item in plan.items:
        if name in (item.food_id, item.food, item.said):
            return item
    bare = without_state(name)
    foods = [food for n in (name, bare) if (food := store.named(n)) is not None]
    for food in foods:
        for item in plan.items:
            if food.id in (item.food_id, store.in_state(item.food_id, item.state or None).id):
                return item
    said = set(key(bare).split())
    near = [(len(said & set(key(f"{i.food} {i.said}").split())), i) for i in plan.items]
    most = max((n for n, _ in near), default=0)
    found = [i for n, i in near if n == most > 0]
    if not found and foods:
        found = [i for i in plan.items if store.food(i.food_id).group == foods[0].group]
    return found[0] if len(found) == 1 else None


def have_named(plan: Plan, name: str | None, store: Store) -> Have | None:
    """What is at hand by that name, though it is not cooked: seasonings, what is scattered at the end."""
    if name is None:
        return None
    bare = without_state(name)
    food = store.named(name) or store.named(bare)
    ids = {name, food.id if food else name}
    exact = [h for h in plan.request.have if h.food_id in ids or (h.said and key(h.said) == key(bare))]
    if exact:
        return exact[0]
    said = set(key(bare).split())
    near = [h for h in plan.request.have if said & set(key(f"{h.said} {h.food_id}").split())]
    return near[0] if len(near) == 1 else None


def without_state(name: str) -> str:
    """The words of a name without those of its state or packing: "tinned chickpeas" are chickpeas."""
    kept = [w for w in name.replace(",", " ").split() if key(w) not in _state_words() | PACKING]
    return " ".join(kept) or name


@lru_cache(maxsize=1)
def _state_words() -> frozenset[str]:
    found = (r["phrase"] for r in tables.rows("words_states") if r["kind"] == "state")
    return frozenset(phrase for phrase in found if " " not in phrase)


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
    if not diets:
        return ""
    said = [diet if diet.startswith(("no ", "low ", "not ")) else f"it is to be {diet}" for diet in diets]
    return f"you said {words.listed(said)}"
