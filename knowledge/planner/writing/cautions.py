"""The safety lines of a plan, each with the authority behind it. Few, plain, and never left out.

Minimums come from `safe_minimums.csv`, one line for each hazard from `hazards.csv`, and
what is dangerous about one food from its own notes.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from knowledge.foods.model import Behaviour, DoneKind, Food
from knowledge.foods.store import Store
from knowledge.physics.safety import minimum
from knowledge.planner import words
from knowledge.planner.draft import AFTER, Draft, Placed
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.model import Caution, Request
from knowledge.planner.writing.handling import handling
from knowledge.planner.writing.phrases import capital, is_probed
from knowledge.planner.writing.young import for_the_young
from knowledge.units import temperature

FSIS = "USDA FSIS (USDA-FSIS-MIN)"
NOT_NAMED = ", as for poultry, as its meat is not named; {} if it is surely pork, beef or lamb"
OPEN_KIND = "sausage"  # which may be of any meat
ALLERGENS = "EU and US allergen lists (EU 1169/2011, FALCPA)"
SERVED_PINKER = frozenset({"beef", "lamb"})
IN_STOCK = {  # what a cube or carton often holds, by the diet that bars it
    "no gluten": "gluten", "no wheat": "gluten", "no dairy": "milk", "no lactose": "milk",
    "no celery": "celery", "no soy": "soy", "no allium": "onion and garlic", "no pork": "pork",
    "no meat": "meat", "vegetarian": "meat", "vegan": "meat and milk", "halal": "pork and alcohol",
    "kosher": "meat or milk", "low salt": "salt",
}  # fmt: skip
STOCK_ALLERGENS = frozenset(
    {"milk", "gluten", "wheat", "celery", "soybeans", "fish", "crustaceans", "mustard"}
)
GLUTEN = frozenset({"gluten", "wheat"})
MADE = frozenset({"sauce", "salty", "spice"})  # parts of the plate
LABELLED = frozenset({"sauce", "condiment", "paste"})  # groups that are made with more than their name
MEATS = frozenset(
    {"pork", "beef", "lamb", "veal", "chicken", "turkey", "venison", "duck", "goat", "mutton", "boar"}
)
WARMED = frozenset({"canned", "cooked", "leftover"})


def cautions(draft: Draft, request: Request, *, store: Store) -> Iterator[Caution]:
    """What this cook should know before starting."""
    placed = draft.placed
    named = [(p.way.dish.food, words.label(p.way.dish)) for p in placed]
    named += [(s.food, s.name) for s in (*draft.dinner.seasonings, *draft.dinner.sides)]
    yield from for_the_young(named, request, store)
    yield from _stock(draft, request)
    yield from _kept_shut(draft, request)
    yield from minimums(placed, draft.kitchen.units, store=store)
    if not request.alerts and any(_is_served_pinker(p) for p in placed):  # no word of pink to who was warned
        yield Caution(
            text="Many cooks serve whole beef and lamb pinker; I plan to the published minimum.", source=FSIS
        )
    if draft.method.finish == "broil" and any(p.way.lane_is(AFTER) for p in placed):
        yield Caution(
            text="Broiler: stay beside it, dripping fat can catch fire; then heat off, door shut, no water.",
            source="common practice, fire safety advice",
        )
    yield from hazards([p.way.dish for p in placed], kind=draft.method.kind, store=store)
    foods = [p.way.dish.food for p in placed]
    foods += [s.food for s in (*draft.dinner.seasonings, *draft.dinner.sides)]
    allergens = sorted({a for food in foods for a in food.allergens})
    if allergens:
        yield Caution(text=f"Contains {words.listed(allergens)}.", source=ALLERGENS)


def _stock(draft: Draft, request: Request) -> Iterator[Caution]:
    """Cubes and cartons hold what a diet or an allergy bars, often unseen."""
    if draft.liquid is None or "stock" not in draft.liquid.what:
        return
    barred = [IN_STOCK[d] for d in request.diets if d in IN_STOCK]
    barred += [a for a in request.allergies if a in STOCK_ALLERGENS]
    if barred:
        yield Caution(
            text=f"Check the stock for {words.listed(barred)}, or take water: cubes often hold it.",
            source=ALLERGENS,
        )


def _kept_shut(draft: Draft, request: Request) -> Iterator[Caution]:
    """What an allergy bars but lies in the same kitchen: traces on spoons and boards are enough."""
    barred = [left.label for left in draft.dinner.left_out if request.allergies and "allergy" in left.why]
    if barred:
        yield Caution(
            text=f"The {words.listed(barred)}: away from here, shut; clean board, knife, spoons and hands.",
            source=ALLERGENS,
        )
    if "no gluten" in request.diets or "gluten" in request.allergies:
        used = [s for s in draft.dinner.seasonings if s.food.part in MADE and not s.food.allergens & GLUTEN]
        doubtful = [s.name for s in used if s.food.group in LABELLED]
        if doubtful:
            text = f"Check the label of the {words.listed(doubtful)} for gluten."
            yield Caution(text=text, source=ALLERGENS)


def hazards(dishes: list[Dish], *, kind: str, store: Store) -> Iterator[Caution]:
    """One line for each hazard among these dishes, and the notes of each food.

    `kind` is the method's ("dry", "pan", "wet", "sealed"); "" asks for what holds in any.
    """
    rows = sorted(store.table("hazards"), key=lambda row: (int(row["rank"]), row["id"]))
    said: set[str] = set()
    for row in rows:
        if row["only_one_of"] in said or (row["methods"] and kind not in row["methods"].split(";")):
            continue
        concerned = [d for d in dishes if _concerns(row, d, store)]
        if concerned or (row["by"] == "always" and kind):
            said.add(row["only_one_of"] or row["id"])
            names = words.listed([words.label(d) for d in concerned])
            yield Caution(
                text=capital(row["text"].format(food=names)), source=str(store.source(row["source"]))
            )
    for dish in dishes:
        if dish.food.notes and not _is_made_harmless(dish):
            text = f"{words.label(dish)}: {dish.food.notes}."
            yield Caution(text=capital(text), source="common practice, food safety advice")


def allergens_of(food: Food, name: str) -> Iterator[Caution]:
    """What one food brings in."""
    if food.allergens:
        text = f"{capital(name)} contains {words.listed(sorted(food.allergens))}."
        yield Caution(text=text, source=ALLERGENS)


def minimums(placed: tuple[Placed, ...], units: str, *, store: Store) -> Iterator[Caution]:
    """The published minimum of what a thermometer can tell, with the number the steps name."""
    seen: set[tuple[str, float]] = set()
    for p in placed:
        dish, shown = p.way.dish, p.way.core_degC
        published = minimum(dish.safety)
        if published is None or (shown is None and dish.safety != "poultry"):
            continue  # no rule, or tough meat that is tender only long past it; of poultry it is always said
        degC = max(shown or 0.0, published.core_degC)
        if (dish.safety, degC) in seen:
            continue
        seen.add((dish.safety, degC))
        rest = ""
        if published.hold == "rest" and published.hold_s and dish.state not in WARMED:
            rest = f", then rest {published.hold_s / 60:.0f} min"
        least = f"at least {temperature(degC, units)}"
        if dish.kind == "sausage" and degC > published.core_degC + 1.0:
            known = temperature(published.core_degC, units)
            meat = _named_meat(dish)
            rest = f" ({known} is the published minimum for {meat})" if meat else NOT_NAMED.format(known)
        sign = handling(dish, store=store).sign or "hot all through"
        how = f"{least} in the thickest part{rest}" if is_probed(p) else f"{sign} ({least})"
        yield Caution(
            text=f"{capital(words.label(dish))}: {how}.", source=f"{published.authority} ({published.source})"
        )


def _named_meat(dish: Dish) -> str:
    """The meat in its name, or of a kind that is always the same meat; "" when that is open."""
    said = next((w for w in dish.name.lower().split() if w in MEATS), "")
    return said or (dish.food.animal if dish.food.id != OPEN_KIND else "")


def _is_served_pinker(placed: Placed) -> bool:
    """Whole-muscle beef and lamb, cooked to a core temperature: what kitchens serve below the minimum."""
    dish = placed.way.dish
    whole = dish.safety == "whole_meat" and dish.kind == "tender_meat"
    return whole and dish.food.animal in SERVED_PINKER and placed.way.core_degC is not None


def _is_made_harmless(dish: Dish) -> bool:
    """Whether what the notes warn of is over: tinned, or cooked by someone before."""
    return dish.is_raw_bean or (dish.kind == "warm_through" and dish.food.doneness != "warm_through")


def _concerns(row: Mapping[str, str], dish: Dish, store: Store) -> bool:
    if row["states"] and (dish.state or "usual") not in row["states"].split(";"):
        return False
    value = row["value"]
    match row["by"]:
        case "raw":
            return dish.is_raw_bean
        case "safety":
            return dish.safety == value and dish.kind != "warm_through"
        case "frozen":
            return dish.state == "frozen" and store.doneness(dish.kind).kind is DoneKind.CORE
        case "foams":
            foaming = dish.food.pressure in (Behaviour.FOAMS, Behaviour.SWELLS)
            return foaming and dish.kind != "warm_through"
        case "food":
            return dish.food.id == value
        case "group":
            return dish.food.group == value
        case _:
            return False
