"""The measures of a question, and what a measure of a food weighs.

Measures and the words for them stand in `measures.csv`; a measure that differs between
countries is that of the country spoken of, else that of the US.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from knowledge.answers.model import Quantity, Question
from knowledge.answers.reading.numbers import NUMBER, value_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner.words import plural
from knowledge.units import KITCHEN

MASS_G = {unit: KITCHEN[short][1] for unit, short in
          (("gram", "g"), ("kilogram", "kg"), ("ounce", "oz"), ("pound", "lb"))}  # fmt: skip
"""The measures in which food is weighed out, by id of `measures.csv` [g]."""

US_CUP_ML = KITCHEN["cup"][1]
WATER_G_ML = 1.0
_RANGE = rf"(?:(?:-| to )(?=\d){NUMBER})?"  # "2-3", "1 1/2 to 2"
_BY_THE_GRAM = re.compile(r"\d gram$")  # "200 gram flour": no flour of the pulse called gram
_IRREGULAR = {"foot": "feet"}
_PORTIONS = (("cup", "cup"), ("tbsp", "tablespoon"), ("tsp", "teaspoon"))  # unit of a portion, measure


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """A row of `measures.csv`. `of` is the measure that a country has its own of: "cup" for "UK cup".

    A measure with a `note` is at home in one country or kitchen and not the same everywhere.
    """

    id: str
    kind: str  # "mass", "volume", "length"
    size: float  # [g, ml, mm]
    region: str
    of: str
    source: str
    note: str
    numbered: bool  # its words mean it behind a number only: "2 mugs"

    def counted(self, value: float) -> str:
        """The name behind a number: "cup" for 1, else "cups"."""
        if value == 1:
            return self.id
        thing, of, what = self.id.partition(" of ")
        return _IRREGULAR.get(thing, plural(thing)) + of + what


@lru_cache(maxsize=4)
def measures(store: Store) -> Mapping[str, Measure]:
    """Every measure by its id."""
    return {
        row["id"]: Measure(
            id=row["id"],
            kind=row["kind"],
            size=float(row["factor"]),
            region=row["region"],
            of=row["of"],
            source=row["source"],
            note=row["note"],
            numbered=bool(row["numbered"]),
        )
        for row in store.table("measures")
    }


def quantities(question: Question) -> tuple[Quantity, ...]:
    """Numbers with units of measure, in order; a unit without a number counts as one."""
    pattern, units = _unit_pattern(question.store)
    said = regions(question)
    own = _own_measures(question.store, said[0]) if len(said) == 1 else {}
    return tuple(
        Quantity(
            value=value_of(found[1]) if found[1] else 1.0,
            most=value_of(found[2] or found[1]) if found[1] else 1.0,
            unit=own.get(units[found[3]], units[found[3]]),
            has_number=bool(found[1]),
            start=found.start(),
            end=found.end(),
        )
        for found in pattern.finditer(question.plain)
        if found[1] or not measures(question.store)[units[found[3]]].numbered
    )


def said_g(question: Question) -> float | None:
    """The first weight in the question [g]."""
    return next((q.value * MASS_G[q.unit] for q in quantities(question) if q.unit in MASS_G), None)


def said_cups(question: Question) -> float | None:
    """The first number of cups in the question."""
    return next((q.value for q in quantities(question) if q.unit == "cup"), None)


def regions(question: Question) -> tuple[str, ...]:
    """The countries whose measures are spoken of, in order: "uk", "us", "au"."""
    words = _region_words(question.store)
    said = [(question.plain.find(f" {word} "), region) for word, region in words]
    return tuple(dict.fromkeys(region for at, region in sorted(said) if at >= 0))


def density_g_ml(food: Food, store: Store) -> tuple[float, str] | None:
    """Grams a millilitre as it is measured, and the source; where nothing is known None, never water's."""
    for unit, measure in _PORTIONS:
        for portion in food.portions:
            if portion.unit == unit and not portion.size:
                return portion.grams / measures(store)[measure].size, portion.source
    if food.bulk_density_kg_m3:
        return food.bulk_density_kg_m3 / 1000, dict(food.sources).get("bulk_density_kg_m3", "")
    return None


def cup_grams(food: Food, store: Store) -> float:
    """What a US cup of a food weighs, as water if nothing is known [g]."""
    density, _ = density_g_ml(food, store) or (WATER_G_ML, "")
    return density * US_CUP_ML


@lru_cache(maxsize=4)
def _region_words(store: Store) -> tuple[tuple[str, str], ...]:
    """The words for countries, each with the region whose measures it means."""
    rows = store.table("words_questions")
    return tuple((row["word"], row["means"]) for row in rows if row["role"] == "region")


@dataclass(frozen=True, slots=True, kw_only=True)
class CupWeight:
    """What a US cup of something weighs that is no food of the tables: a row of `cup_weights.csv`."""

    name: str
    cup_g: float
    source: str


def told_weight(question: Question, *, behind: int) -> tuple[CupWeight, int] | None:
    """The first name of `cup_weights.csv` behind a place, else in the question, and its place in letters."""
    for start in (behind, 0):
        said = [
            (at, -len(one.name), one)
            for one in _cup_weights(question.store)
            if (at := question.plain.find(f" {one.name} ", start)) >= 0
            and not _BY_THE_GRAM.search(question.plain[: at + len(" gram")])
        ]
        if said:
            at, _, one = min(said, key=lambda entry: entry[:2])
            return one, at
    return None


@lru_cache(maxsize=4)
def _cup_weights(store: Store) -> tuple[CupWeight, ...]:
    return tuple(
        CupWeight(name=name, cup_g=float(row["cup_g"]), source=row["source"])
        for row in store.table("cup_weights")
        for name in row["words"].split(";")
    )


@lru_cache(maxsize=16)
def _own_measures(store: Store, region: str) -> dict[str, str]:
    """A measure's id -> the id of the measure of that name in a country."""
    return {measure.of: measure.id for measure in measures(store).values() if measure.region == region}


@lru_cache(maxsize=4)
def _unit_pattern(store: Store) -> tuple[re.Pattern[str], dict[str, str]]:
    """What hears a measure with its number, and the id of the measure that each word means."""
    units = {word: row["id"] for row in store.table("measures") for word in row["words"].split(";")}
    words = "|".join(re.escape(word) for word in sorted(units, key=len, reverse=True))
    return re.compile(rf"(?<= )(?:{NUMBER}{_RANGE} ?)?({words})(?= )"), units


def figure(value: float) -> str:
    """A number with as many digits as a kitchen scale tells: "250", "12.5", "0.33"."""
    if value >= 100:
        return f"{value:.0f}"
    return f"{value:.1f}".removesuffix(".0") if value >= 3 else f"{value:.2f}".rstrip("0").rstrip(".")
