"""The safety lines of a plan, each with the authority behind it. Few, plain, and never left out."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.foods.model import DoneKind
from knowledge.foods.store import Store
from knowledge.physics.safety import Minimum, minimum
from knowledge.planner import words
from knowledge.planner.draft import Draft
from knowledge.planner.model import Caution

FSIS = "USDA FSIS (USDA-FSIS-MIN)"
FDA_BEANS = "US FDA, Bad Bug Book: phytohaemagglutinin"
MANUAL = "the cooker's own manual"


def cautions(draft: Draft, *, store: Store) -> Iterator[Caution]:
    """What this cook should know before starting."""
    units = draft.kitchen.units
    seen: set[str] = set()
    for placed in draft.placed:
        dish = placed.way.dish
        safety_id = dish.safety
        published = minimum(safety_id)
        if published is None or safety_id in seen or (dish.kind == "warm_through" and dish.state == "canned"):
            continue
        seen.add(safety_id)
        yield _minimum(dish.name, published, units)
    if any(d.way.dish.kind in ("tender_meat",) for d in draft.placed):
        yield Caution(
            text="Many cooks serve beef, lamb and pork pinker; I plan to the published minimum.",
            source=FSIS,
        )
    for placed in draft.placed:
        dish = placed.way.dish
        if dish.kind == "bean" and dish.state == "dried":
            yield Caution(
                text=f"Dry {dish.name}: a hard boil of 30 min first (pressure does it); never undercooked, "
                "never in a slow cooker alone.",
                source=FDA_BEANS,
            )
        if dish.state == "frozen" and store.doneness(dish.kind).kind is DoneKind.CORE:
            yield Caution(text=f"{dish.name} from frozen: check the middle twice.", source=FSIS)
    if draft.method.kind == "sealed":
        yield Caution(
            text="Pressure cooker: never over the fill line, never open it under pressure, valve clean.",
            source=MANUAL,
        )
    if draft.method.kind == "pan":
        yield Caution(text="Hot fat: dry the food first, turn the handle inwards.", source="common practice")
    allergens = sorted({a for p in draft.placed for a in p.way.dish.food.allergens} | {
        a for s in (*draft.dinner.seasonings, *draft.dinner.sides) for a in s.food.allergens
    })  # fmt: skip
    if allergens:
        yield Caution(
            text=f"Contains {words.listed(allergens)}.", source="EU 1169/2011 and US FALCPA allergen lists"
        )


def _minimum(name: str, published: Minimum, units: str) -> Caution:
    rest = (
        f", then rest {published.hold_s / 60:.0f} min"
        if published.hold == "rest" and published.hold_s
        else ""
    )
    degC = words.temperature(published.core_degC, units)
    return Caution(
        text=f"{name[:1].upper()}{name[1:]}: at least {degC} in the thickest part{rest}.",
        source=f"{published.authority} ({published.source})",
    )
