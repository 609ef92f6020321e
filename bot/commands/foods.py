"""`panwright foods NAME`: what is known of a food, every figure with its source."""

from __future__ import annotations

import argparse
import json
import sys
from collections.abc import Callable, Iterator, Sequence
from dataclasses import asdict, fields
from textwrap import wrap
from typing import Any

from knowledge import diets
from knowledge.answers.lore.season import in_words
from knowledge.foods import columns
from knowledge.foods.model import Behaviour, DoneKind, Food, Role, When
from knowledge.foods.store import Source, Store, open_store

_TITLES = {
    "density_kg_m3": "density of a piece",
    "bulk_density_kg_m3": "density of a heap",
    "dose_factor": "time to soften, against its kind",
    "target_degC": "done at",
    "over_degC": "overdone at",
    "water_uptake_g_per_g": "water taken up",
    "loss_frac": "share lost in cooking",
    "edible_frac": "share that is eaten",
    "serving_g": "raw serving for one",
    "fridge_days": "keeps in the refrigerator",
    "freezer_months": "keeps in the freezer",
    "cooked_days": "keeps cooked and chilled",
    "salt_g": "salt",
    "smoke_degC": "smokes at",
}
_PART_OF = {"water_g": "water", "protein_g": "protein", "fat_g": "fat", "carbohydrate_g": "carbohydrate",
            "fibre_g": "of it fibre", "ash_g": "minerals"}  # fmt: skip
_PRESSURE = {
    Behaviour.FOAMS: "foams: fill half at most",
    Behaviour.SWELLS: "swells: fill half at most",
    Behaviour.FALLS_APART: "falls apart: better without",
    Behaviour.UNSUITABLE: "not for the pressure cooker",
}
_DIETS = ("vegetarian", "vegan", "pescatarian", "halal", "kosher", "jain")
_WIDTH = 100


def run(argv: Sequence[str]) -> int:
    """Exit status 0; 2 when a name is not known (the others are shown all the same)."""
    parser = argparse.ArgumentParser(prog="panwright foods", description=__doc__)
    parser.add_argument("names", nargs="*", metavar="NAME", help="a food, as anyone would call it")
    parser.add_argument("--json", action="store_true", help="one JSON object a line")
    args = parser.parse_args(argv)
    store = open_store()
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

    from knowledge.names import key

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
        "diets": [diet for diet in _DIETS if not diets.bars(food, diet)],
        "figures": {
            column: {"value": figure(food, column), "unit": _unit(column), "source": source}
            for column, source in food.sources
            if column in columns.FIGURES
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
    source_of = dict(food.sources)

    def mark(source: str) -> str:
        return f"[{marks.setdefault(source, len(marks) + 1)}]"

    yield f"{food.name} ({food.id})"
    yield f"  {food.group}, {food.part or food.role.value}" + (f": {food.does}" if food.does else "")
    for title, text in _facts(food, store):
        yield from wrap(f"{title}: {text}", _WIDTH, initial_indent="  ", subsequent_indent="      ")
    if food.season:
        yield f"  In season: {in_words(food.season)}, temperate north {mark(source_of['season'])}"
    if food.whole_mm:
        yield f"  As bought: {_size(food)}, {food.start_state} {mark(source_of['whole_mm'])}"
    if food.safety:
        yield from _minimum(food, store, mark)
    if food.composition:
        yield "  In 100 g, raw" + (f" ({food.composition_of})" if food.composition_of else "")
        body = ", ".join(f"{title} {figure(food, column):g} g" for column, title in _PART_OF.items())
        yield f"    {body} {mark(source_of['water_g'])}"
    for column, title in _TITLES.items():
        if column in source_of:
            yield f"  {title:<34} {_said(figure(food, column), _unit(column)):<18} {mark(source_of[column])}"
    if food.composition and "density_kg_m3" not in source_of:
        from knowledge.physics.properties import properties  # numpy only for a page

        density = properties(food.composition, T_degC=20.0).density_kg_m3
        computed = _said(round(density), "kg/m3")
        yield f"  {'density of a piece, computed':<34} {computed:<18} {mark('CHOI-OKOS')}"
    for portion in food.portions:
        unit = " ".join(filter(None, (portion.size, portion.unit)))
        yield f"  {'one ' + unit:<34} {_said(portion.grams, 'g'):<18} {mark(portion.source)}"
    for source, number in marks.items():
        yield from wrap(
            f"[{number}] {store.source(source)}{_terms(store.source(source))}",
            _WIDTH,
            initial_indent="  ",
            subsequent_indent="      ",
        )
    yield ""


def _terms(source: Source) -> str:
    """Under what terms the figures stand here, and whether they were written down from memory."""
    terms = filter(None, (source.licence, "from memory" if source.read == "memory" else ""))
    return "".join(f"; {term}" for term in terms)


def _facts(food: Food, store: Store) -> Iterator[tuple[str, str]]:
    if food.notes:
        yield "Mind", food.notes
    if others := [f"{name} ({region})" if region else name for name, region in store.synonyms(food.id)]:
        yield "Also called", ", ".join(others)
    yield "Allergens", ", ".join(sorted(food.allergens)) or "none of the listed ones"
    barred = diets.barred_by(food, _DIETS)
    yield "Fits", ", ".join(diet for diet in _DIETS if diet not in barred) or "no diet with rules of its own"
    if food.when:
        yield "Goes in", _WHEN[food.when]
    if food.cuts:
        yield "Cut", ", ".join(store.cut(cut).name for cut in food.cuts)
    if food.role is Role.COOK:
        kind = store.doneness(food.doneness)
        target = food.target_degC or kind.target_degC
        core = (
            f"at {target:g} °C in the core, "
            if target and kind.kind in (DoneKind.CORE, DoneKind.WARM)
            else ""
        )
        yield "Done", f"{core}as {food.doneness.replace('_', ' ')}"
    if food.pressure in _PRESSURE:
        yield "Under pressure", _PRESSURE[food.pressure]


_WHEN = {
    When.START: "at the start",
    When.AROMATICS: "with the aromatics",
    When.LIQUID: "with the liquid",
    When.END: "at the end",
    When.TABLE: "at the table",
}


def _size(food: Food) -> str:
    """The piece in millimetres: "rod of 23 x 23 x 150 mm"."""
    least = food.whole_mm or 0.0
    if food.whole_shape == "sphere":
        return f"ball of {least:g} mm"
    sides = sorted((least, least * food.whole_ratio_1, least * food.whole_ratio_2))
    return f"{food.whole_shape} of {' x '.join(f'{side:.3g}' for side in sides)} mm"


def _minimum(food: Food, store: Store, mark: Callable[[str], str]) -> Iterator[str]:
    for row in store.table("safe_minimums"):
        if row["id"] == food.safety and float(row["core_degC"]) < 100:
            hold = f", {row['hold']} {float(row['hold_s']) / 60:g} min" if float(row["hold_s"] or 0) else ""
            heat = f"{float(row['core_degC']):g} °C / {row['core_degF']} °F{hold}"
            yield f"  {'safe minimum, ' + row['authority']:<34} {heat:<18} {mark(row['source'])}"


def _unit(column: str) -> str:
    return columns.FIGURES[column].unit


def _said(value: float | None, unit: str) -> str:
    one = {"days": "day", "months": "month"}.get(unit, unit) if value == 1 else unit
    return f"{value:g} {one.replace('degC', '°C')}".strip()
