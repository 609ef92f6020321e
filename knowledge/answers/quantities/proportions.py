"""How much of one thing to another: salt to cabbage, rice to urad dal, water to maize flour.

Preparations stand in `proportions.csv`, what goes into each in `proportion_parts.csv`, its first part
being the one that the others go by. An amount of any part that the question states scales all the others.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import lru_cache

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Quantity, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.measures import WATER_G_ML, density_g_ml, measures, quantities
from knowledge.answers.reading.numbers import NUMBER, value_of
from knowledge.foods.store import Store
from knowledge.planner.words import listed, plural
from knowledge.text.clauses import Clause, clauses_of, met

_VOLUME_ML = {"ml": 1.0, "l": 1000.0, "tsp": 5.0, "tbsp": 15.0, "cup": 236.588}
"""Units of a part that is measured [ml]; spoons as in a metric kitchen, the cup of the US."""
_ASKED_UNIT = re.compile(r" how many $")
_NEAR = 40  # letters within which an amount and what it is of stand


@dataclass(frozen=True, slots=True, kw_only=True)
class Part:
    """What goes into a preparation: from `low` to `high` of its unit; `words` are beginnings of its names."""

    name: str
    words: tuple[str, ...]
    low: float
    high: float
    unit: str  # "g", "ml", "l", "cup", "tbsp", "tsp", "piece"
    food_id: str

    @property
    def middle(self) -> float:
        return (self.low + self.high) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class Proportion:
    """A preparation; the amounts of its parts go by the first of them."""

    whens: tuple[tuple[Clause, ...], ...]
    title: str
    parts: tuple[Part, ...]
    note: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Stated:
    """An amount of a part that the question names, in the unit of that part."""

    part: Part
    amount: float
    said: str
    metric: bool  # said in grams or litres, so that cups are answered in them too


def proportion(question: Question) -> Answer | None:
    """How much of each part goes into a preparation, for the amount that is stated."""
    found = _prepared(question)
    if found is None or hears(question, "not how much of it"):
        return None
    if not _asks_how_much(question, found):
        return None
    stated = _stated(question, found)
    by_table = _sentence(found, None)
    text = f"{found.title[0].upper()}{found.title[1:]}: {by_table}."
    if stated and not 0.99 < stated.amount / stated.part.middle < 1.01:
        text = f"{_sentence(found, stated).capitalize()} ({found.title}: {by_table})."
    return Answer(
        known=True, answer=f"{text} {found.note}".strip(), sources=cited(question.store, found.source)
    )


def _asks_how_much(question: Question, found: Proportion) -> bool:
    """True where the ratio is asked for, or how much of one part, or one part for another."""
    if "%" in question.plain or hears(question, "in what ratio"):
        return True
    named = sorted(at for part in found.parts if (at := _where(question.plain, part)) is not None)
    if len(named) < 2:
        return bool(named) and hears(question, "amount of a part")
    one_to_the_other = " to " in question.plain[named[0] : named[-1] + 1]  # "rice to urad dal"
    measured = any(q.has_number for q in quantities(question))  # "water for 500 g of flour"
    return one_to_the_other or measured or hears(question, "amount of a part")


def _prepared(question: Question) -> Proportion | None:
    """The preparation spoken of; where several are, that of the longest name."""
    found = [
        (len(named), proportion)
        for proportion in _proportions(question.store)
        for when in proportion.whens
        if met(question.plain, when) and (named := _name_said(question.plain, when))
    ]
    return max(found, key=lambda entry: entry[0])[1] if found else None


def _name_said(plain: str, when: tuple[Clause, ...]) -> str:
    """The longest name of the first clause that is said."""
    _, names = when[0]
    return max((name for name in names if f" {name.replace('_', ' ')}" in plain), key=len, default="")


def _says(plain: str, part: Part) -> bool:
    return _where(plain, part) is not None


def _where(plain: str, part: Part) -> int | None:
    """Where a part is first named."""
    found = [at for word in part.words if (at := plain.find(f" {word.replace('_', ' ')}")) >= 0]
    return min(found, default=None)


def _stated(question: Question, found: Proportion) -> Stated | None:
    """The first amount in the question that is one of a part."""
    said = quantities(question)
    for at, quantity in enumerate(said):
        start = said[at - 1].end if at else 0
        end = said[at + 1].start if at + 1 < len(said) else len(question.plain)
        before, after = question.plain[start : quantity.start], question.plain[quantity.end : end]
        per = before.endswith(" per ") and quantity.unit != "cup"  # a coffee cup is not the measure
        if not (quantity.has_number or per) or _ASKED_UNIT.search(before):
            continue
        for part in _by_nearness(found.parts, before[-_NEAR:], after.partition(" how ")[0][:_NEAR]):
            amount = _in_unit_of(part, quantity, question.store)
            if amount is not None:
                words = question.plain[quantity.start : quantity.end]
                words = words if quantity.has_number else f"1 {words}"
                unit = measures(question.store)[quantity.unit]
                metric = unit.id in ("gram", "kilogram", "litre", "millilitre", "decilitre")
                return Stated(part=part, amount=amount, said=words, metric=metric)
    return next(_counted(question.plain, found), None)


def _by_nearness(parts: tuple[Part, ...], before: str, after: str) -> list[Part]:
    """The parts that an amount may be of: named behind it, named before it, else what the others go by."""
    named = [
        part for part in parts if before.rstrip().endswith(tuple(word.strip("_ ") for word in part.words))
    ]
    if named and " how " not in before:
        return [*named, parts[0]]  # "fresh yeast 25 g"
    behind = sorted((at, rank) for rank, part in enumerate(parts) if (at := _where(after, part)) is not None)
    ahead = [] if behind else [part for part in parts[1:] if _says(before, part)]
    return [*(parts[rank] for _, rank in behind), parts[0], *ahead]


def _counted(plain: str, found: Proportion) -> Iterator[Stated]:
    """ "For 3 eggs", "6 gelatine leaves": parts that are counted."""
    for part in (part for part in found.parts if part.unit == "piece"):
        names = "|".join(word.rstrip("_") for word in part.words)
        for match in re.finditer(rf"(?<!how many) {NUMBER} (?:\w+ )?(?:{names})\w* ", plain):
            amount = value_of(match[1])
            if amount:
                yield Stated(part=part, amount=amount, said=f"{amount:g}", metric=False)


def _in_unit_of(part: Part, quantity: Quantity, store: Store) -> float | None:
    """A quantity in the unit of a part; None where it cannot be one of it."""
    measure = measures(store)[quantity.unit]
    size = quantity.value * measure.size
    if part.unit == "piece" or measure.kind == "length":
        return None
    if part.unit == "g":
        return size if measure.kind == "mass" else _times(size, _density(part, store))
    ml = size if measure.kind == "volume" else _times(size, _inverse(_density(part, store)))
    return None if ml is None else ml / _VOLUME_ML[part.unit]


def _density(part: Part, store: Store) -> float | None:
    """Grams a millilitre: of the food, of water for a liquid, else unknown [g/ml]."""
    if part.food_id:
        found = density_g_ml(store.food(part.food_id), store)
        return found[0] if found else None
    return WATER_G_ML if part.unit in ("l", "ml") or "water" in part.name else None


def _times(value: float, factor: float | None) -> float | None:
    return None if factor is None else value * factor


def _inverse(value: float | None) -> float | None:
    return None if value is None else 1 / value


def _sentence(found: Proportion, stated: Stated | None) -> str:
    """ "20-25 g of salt for 1 kg of cabbage"; or "for 5 kg of cabbage: 100-125 g of salt"."""
    base = stated.part if stated else found.parts[0]
    least, most, metric = 1.0, 1.0, False
    if stated:
        least, most, metric = stated.amount / base.high, stated.amount / base.low, stated.metric
    others = listed([_amount(part, least, most, metric=metric) for part in found.parts if part is not base])
    if stated is None:
        return f"{others} for {_amount(base, 1.0, 1.0, metric=False)}"
    name = _name(base, stated.amount) if base.unit == "piece" else f"of {base.name}"
    return f"for {stated.said} {name}: {others}"


def _amount(part: Part, least: float, most: float, *, metric: bool) -> str:
    """ "20-25 g of salt", "2 eggs": a part, `least` to `most` times."""
    low, high, unit = part.low * least, part.high * most, part.unit
    if metric and unit == "cup" and not part.food_id:
        low, high, unit = low * _VOLUME_ML["cup"], high * _VOLUME_ML["cup"], "ml"
    for small, large in (("g", "kg"), ("ml", "l")):
        if unit == small and low >= 1000:
            low, high, unit = low / 1000, high / 1000, large
    if unit == "l" and low < 1:
        low, high, unit = low * 1000, high * 1000, "ml"
    span = "-".join(dict.fromkeys((_rounded(low), _rounded(high))))
    if unit == "piece":
        return f"{span} {_name(part, high)}"
    if unit == "cup":
        unit = "cup" if high <= 1 else "cups"
    return f"{span} {unit} of {part.name}"


def _name(part: Part, count: float) -> str:
    return part.name if count <= 1 else plural(part.name)


def _rounded(value: float) -> str:
    """As one weighs it out: 2.25, 14, 125, 1240."""
    if value >= 100:
        return f"{5 * round(value / 5)}"
    if value >= 10:
        return f"{value:.0f}"
    quarter = round(value * 4) / 4
    return f"{quarter:g}" if abs(value - quarter) < 0.03 else f"{value:.2g}"


@lru_cache(maxsize=4)
def _proportions(store: Store) -> tuple[Proportion, ...]:
    parts: dict[str, list[Part]] = {}
    for row in store.table("proportion_parts"):
        parts.setdefault(row["proportion_id"], []).append(_part(row))
    return tuple(
        Proportion(
            whens=tuple(clauses_of(row[column]) for column in ("when", "or_when") if row[column]),
            title=row["title"],
            parts=tuple(parts[row["id"]]),
            note=row["note"],
            source=row["source"],
        )
        for row in store.table("proportions")
    )


def _part(row: Mapping[str, str]) -> Part:
    return Part(
        name=row["part"],
        words=tuple(row["words"].split(";")),
        low=float(row["lo"]),
        high=float(row["hi"]),
        unit=row["unit"],
        food_id=row["food_id"],
    )
