"""What would lend a dinner a direction of flavour: a few things, from one family, never required.

The family is the one of `flavours.csv` that suits what is there best (`knowledge.flavours`);
of what it names, only what most kitchens have is said (`cupboard.csv`), each with its
moment. Who names seasonings of their own knows where they are going and hears nothing.
Who asks for a direction ("make it Thai") hears all of it, whatever the cupboard holds.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache

from knowledge.flavours import LAYERS, Family, families_for
from knowledge.foods.model import Food, When
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.draft import SOFTENED, Draft
from knowledge.planner.gathering.meant import barred
from knowledge.planner.model import Request

ENOUGH = 3  # seasonings named: the cook has a direction
MOST, LEAST = 3, 2
MOST_ASKED = {
    "aromatics": 3,
    "spices": 3,
    "acids": 1,
    "finish": 2,
}  # of each layer, when the family is asked for
TRIED = 3  # families, best first
COMMON = 0.4  # of all families: what so many name says nothing about a direction
AT_END = frozenset({"acids", "finish"})
PLAIN = frozenset({"fat", "salty"})  # parts that say nothing about a direction


def flavour_hint(draft: Draft, request: Request, *, store: Store) -> str:
    """One line, "If you have them: cumin with the onion, lemon at the end."; "" for nothing to add."""
    there = tuple(h.food_id for h in request.have)
    if request.flavours:
        return _asked_for(draft, request, there, store)
    named = [s for s in draft.dinner.seasonings if s.food.part not in PLAIN]
    if len(named) >= ENOUGH:
        return ""
    suiting = _families(there, request.diets, (*request.excluded, *request.allergies), store)
    suiting = _going_on(_of_the_style(suiting, draft, store), draft, store)
    for family in suiting[:TRIED]:
        found = list(_told(family, draft, request, frozenset(there), store))
        if len(found) >= LEAST:
            return f"If you have them: {', '.join(found)}."
    return ""


def _asked_for(draft: Draft, request: Request, there: tuple[str, ...], store: Store) -> str:
    """The direction asked for, layer by layer: "Thai coconut: shallot from the start, lime at the end."."""
    suiting = _families(there, request.diets, (*request.excluded, *request.allergies), store)
    family = next((family for family in suiting if family.id in request.flavours), None)
    if family is None:
        return ""
    found: list[tuple[str, str]] = []
    for layer, ids in _layers(family).items():
        if layer == "acids" and {*ids} & {*there}:
            continue  # it is sharp already
        wanted = [store.food(i) for i in ids if i not in there and not _wants_liquid(i, draft, store)]
        allowed = [food for food in wanted if not barred(food, request)][: MOST_ASKED[layer]]
        found += [(food.name, _moment(layer, food, draft)) for food in allowed]
    return f"{family.name[0].upper()}{family.name[1:]}: {', '.join(_together(found))}." if found else ""


def _wants_liquid(food_id: str, draft: Draft, store: Store) -> bool:
    """True for wine on a sheet: it has to boil down, and nothing there boils."""
    return draft.method.kind == "dry" and store.food(food_id).group == "wine"


def _layers(family: Family) -> dict[str, tuple[str, ...]]:
    """The food ids of each layer, in the order in which they go in."""
    return {layer: getattr(family, layer) for layer in LAYERS}


def _of_the_style(found: tuple[Family, ...], draft: Draft, store: Store) -> tuple[Family, ...]:
    """Of the families those that go with the dish that was named, when any is made for it."""
    style = draft.dinner.style
    rows = {row["id"]: row["styles"].split(";") for row in store.table("flavours")}
    if style is None or not any(style.id in styles for styles in rows.values()):
        return found
    return tuple(family for family in found if style.id in rows[family.id])


def _going_on(found: tuple[Family, ...], draft: Draft, store: Store) -> tuple[Family, ...]:
    """Of the families those that go the way of what is there already: soy and ginger want no thyme.

    Onion and garlic, which most families name, point nowhere.
    """
    there = {s.food.id for s in draft.dinner.seasonings}
    there |= {p.way.dish.food.id for p in draft.placed if p.way.dish.part == "aromatic"}
    rows = [
        {food_id for layer in LAYERS for food_id in row[layer].split(";")} for row in store.table("flavours")
    ]
    pointing = {food_id for food_id in there if 0 < sum(food_id in row for row in rows) < COMMON * len(rows)}
    overlap = {family.id: len(pointing & {*family.have}) for family in found}
    most = max(overlap.values(), default=0)
    return tuple(f for f in found if overlap[f.id] == most) if most or not pointing else ()


@lru_cache(maxsize=256)
def _families(
    there: tuple[str, ...], diets: tuple[str, ...], excluded: tuple[str, ...], store: Store
) -> tuple[Family, ...]:
    return families_for(there, diets=diets, excluded=excluded, store=store)


def _told(
    family: Family, draft: Draft, request: Request, there: frozenset[str], store: Store
) -> Iterator[str]:
    """One of each layer with its moment, the spice before what comes at the end."""
    has = {p.way.dish.part for p in draft.placed}
    found: list[tuple[str, str]] = []
    for layer, ids in _layers(family).items():
        if there & {*ids} or (layer == "aromatics" and "aromatic" in has):
            continue  # it has something of that
        food = next((f for i in ids if (f := _at_hand(i, request, store)) is not None), None)
        if food is not None:
            found.append((food.name, _moment(layer, food, draft)))
    if len(found) > MOST:
        found.pop(2)  # one thing at the end is enough
    yield from _together(found)


def _together(found: Sequence[tuple[str, str]]) -> Iterator[str]:
    """What goes in at one moment, named together: "ginger and garlic first in the fat"."""
    merged: dict[str, list[str]] = {}
    for name, when in found:
        merged.setdefault(when, []).append(name)
    yield from (f"{words.listed(names)} {when}" for when, names in merged.items())


def _at_hand(food_id: str, request: Request, store: Store) -> Food | None:
    """The food, when most kitchens have it and this cook eats it."""
    if food_id not in _cupboard(store):
        return None
    food = store.food(food_id)
    return None if barred(food, request) else food


@lru_cache(maxsize=4)
def _cupboard(store: Store) -> frozenset[str]:
    return frozenset(row["id"] for row in store.table("cupboard"))


def _moment(layer: str, food: Food, draft: Draft) -> str:
    """When it goes in, in this method: by its layer, or by the food's own moment where that is earlier."""
    dry = draft.method.kind == "dry"
    if layer in AT_END and food.when is When.LIQUID and not dry:
        return "with the liquid"
    if layer in AT_END and food.when is not When.AROMATICS:  # tomato paste is fried, sharp as it is
        return "at the end"
    if dry:
        return "on the sheet" if layer == "aromatics" else "rubbed on"
    if layer == "aromatics":
        return "first in the fat" if draft.method.browns else "from the start"
    soft: Sequence[str] = [words.label(p.way.dish) for p in draft.placed if p.way.lead == SOFTENED]
    return f"with the {soft[0]}" if soft else "into the fat" if draft.method.browns else "into the water"
