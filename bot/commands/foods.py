"""`panwright foods NAME`: what is known of a food, every figure with its source."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Iterator, Sequence
from dataclasses import asdict, fields
from typing import Any

from knowledge.errors import BadData
from knowledge.foods import columns
from knowledge.foods.model import Food
from knowledge.foods.store import Store, open_store

_TITLES = {
    "water_g": "water",
    "protein_g": "protein",
    "fat_g": "fat",
    "carbohydrate_g": "carbohydrate",
    "fibre_g": "of it fibre",
    "ash_g": "ash",
    "density_kg_m3": "density of a piece",
    "bulk_density_kg_m3": "density of a heap",
    "whole_mm": "smallest size as bought",
    "whole_ratio_1": "second size over the smallest",
    "whole_ratio_2": "third size over the smallest",
    "dose_factor": "softening against its class",
    "target_degC": "done at",
    "over_degC": "overdone at",
    "water_uptake_g_per_g": "water taken up",
    "loss_frac": "share lost in cooking",
    "edible_frac": "edible share",
    "serving_g": "raw serving",
    "fridge_days": "keeps in the refrigerator",
    "freezer_months": "keeps in the freezer",
    "cooked_days": "keeps cooked, in the refrigerator",
    "salt_g": "salt",
    "smoke_degC": "smokes at",
}


def run(argv: Sequence[str]) -> int:
    """Exit status 0; 2 when a name is not known (the others are shown all the same)."""
    parser = argparse.ArgumentParser(prog="panwright foods", description=__doc__)
    parser.add_argument("names", nargs="*", metavar="NAME", help="a food, as anyone would call it")
    parser.add_argument("--json", action="store_true", help="one JSON object a line")
    args = parser.parse_args(argv)
    try:
        store = open_store()
    except BadData as error:
        print(error, file=sys.stderr)
        return 2
    if not args.names:
        for food in store.foods():
            print(json.dumps(brief(food, store), ensure_ascii=False) if args.json else _line(food))
        return 0
    status = 0
    for name in args.names:
        food_or_none = store.named(name)
        if food_or_none is None:
            near = nearest(name, store)
            print(f"no food called {name!r}; near: {', '.join(near) or 'nothing'}", file=sys.stderr)
            status = 2
        elif args.json:
            print(json.dumps(full(food_or_none, store), ensure_ascii=False))
        else:
            print("\n".join(page(food_or_none, store)))
    return status


def nearest(name: str, store: Store, count: int = 5) -> list[str]:
    """The names of foods whose name or synonym comes nearest, best first."""
    from rapidfuzz import fuzz, process

    from knowledge.text.normalise import key

    names = store.names()
    hits = process.extract(key(name), names.keys(), scorer=fuzz.WRatio, limit=count * 3, score_cutoff=60)
    found = dict.fromkeys(store.food(names[hit][0]).name for hit, _, _ in hits)
    return list(found)[:count]


def brief(food: Food, store: Store) -> dict[str, Any]:
    """What the list of all foods says of one."""
    return {
        "id": food.id,
        "name": food.name,
        "synonyms": [name for name, _ in store.synonyms(food.id)],
        "group": food.group,
        "role": food.role.value,
        "sources": sorted({source for _, source in food.sources} | {p.source for p in food.portions}),
        "allergens": sorted(food.allergens),
    }


def full(food: Food, store: Store) -> dict[str, Any]:
    """Everything about one food; each figure with its unit and the id of its source."""
    told = brief(food, store)
    left_out = {*told, *columns.FIGURES, "composition", "portions"}
    return {
        **told,
        **{field.name: getattr(food, field.name) for field in fields(food) if field.name not in left_out},
        "figures": {
            column: {"value": figure(food, column), "unit": columns.FIGURES[column].unit, "source": source}
            for column, source in food.sources
        },
        "portions": [asdict(portion) for portion in food.portions],
        "source_texts": {source: str(store.source(source)) for source in told["sources"]},
    }


def figure(food: Food, column: str) -> float | None:
    """The value of a figure, wherever the record keeps it."""
    value: float | None = getattr(food.composition if column in columns.COMPOSITION else food, column)
    return value


def _line(food: Food) -> str:
    return f"{food.name:<32} {food.group:<20} {food.does}"


def page(food: Food, store: Store) -> Iterator[str]:
    """One food for reading: what it is, its figures with a mark for each source, the sources."""
    marks: dict[str, int] = {}

    def mark(source: str) -> str:
        return f"[{marks.setdefault(source, len(marks) + 1)}]"

    yield f"{food.name} ({food.id})"
    yield f"  {food.group}, {food.part or food.role.value}" + (f": {food.does}" if food.does else "")
    if food.notes:
        yield f"  Mind: {food.notes}"
    if others := [f"{name} ({region})" if region else name for name, region in store.synonyms(food.id)]:
        yield f"  Also called: {', '.join(others)}"
    yield f"  Allergens: {', '.join(sorted(food.allergens)) or 'none of the listed ones'}"
    if food.cuts:
        yield f"  Cuts: {', '.join(store.cut(cut).name for cut in food.cuts)}"
    if food.whole_shape:
        yield f"  As bought: {food.whole_shape}, {food.start_state}; done as: {food.doneness}"
    yield f"  Under pressure: {food.pressure.value}" + (
        f"; safe minimum: {food.safety}" if food.safety else ""
    )
    for column, source in food.sources:
        unit = columns.FIGURES[column].unit.replace("degC", "°C")
        yield f"  {_TITLES[column]:<34} {figure(food, column):>8g} {unit:<8} {mark(source)}"
    for portion in food.portions:
        unit = " ".join(filter(None, (portion.size, portion.unit)))
        yield f"  {'one ' + unit:<34} {portion.grams:>8g} g        {mark(portion.source)}"
    for source, number in marks.items():
        yield f"  [{number}] {store.source(source)}"
    yield ""
