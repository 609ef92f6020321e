"""The safety lines of a plan, each with the authority behind it. Few, plain, and never left out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from knowledge.foods.model import DoneKind
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.draft import Draft
from knowledge.planner.model import Caution

FSIS = "USDA FSIS, safe minimum internal temperature chart"
FDA_BEANS = "US FDA, Bad Bug Book: phytohaemagglutinin"
MANUAL = "the cooker's own manual"


def cautions(draft: Draft, *, store: Store) -> Iterator[Caution]:
    """What this cook should know before starting."""
    units = draft.kitchen.units
    minimums = {row["id"]: row for row in store.table("safe_minimums")}
    seen: set[str] = set()
    for placed in draft.placed:
        dish = placed.way.dish
        safety = "leftover" if dish.state == "leftover" else dish.food.safety
        if dish.kind == "warm_through" and safety != "leftover":
            continue
        if safety in seen or safety not in minimums:
            continue
        seen.add(safety)
        yield _minimum(dish.name, minimums[safety], units)
    if any(d.way.dish.kind in ("tender_meat",) for d in draft.placed):
        yield Caution(
            text="Many cooks serve beef, lamb and pork pinker than that; the published minimum is what I plan.",
            source=FSIS,
        )
    for placed in draft.placed:
        dish = placed.way.dish
        if dish.kind == "bean" and dish.state == "dried":
            yield Caution(
                text=f"Dry {dish.name}: boil hard for at least 10 min (pressure does it); never eat undercooked, "
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


def _minimum(name: str, row: Mapping[str, str], units: str) -> Caution:
    degC = next((float(v) for k, v in row.items() if k and k.endswith("degC") and v), 74.0)
    rest = float(row.get("rest_min") or row.get("hold_min") or 0.0)
    then = f", then rest {rest:.0f} min" if rest else ""
    source = row.get("authority") or row.get("source") or FSIS
    return Caution(text=f"{name[:1].upper()}{name[1:]}: {words.temperature(degC, units)} in the thickest part{then}.",
                   source=source)  # fmt: skip
