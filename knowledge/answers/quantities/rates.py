"""Sums of a recipe: "2 oz per 5 lb, for 10 kg", "2.5 % salt of 3 kg", "half of 3/4 cup"."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator
from dataclasses import dataclass

from knowledge.answers.model import Answer, Quantity, Question
from knowledge.answers.reading.heard import hears, meant
from knowledge.answers.reading.measures import MASS_G, figure, measures, quantities
from knowledge.answers.reading.numbers import NUMBER, value_of
from knowledge.planner.words import plural

_EACH = re.compile(r" (?:per|for every|for each|to every|to each|in every|in each|to an?|for an?|/) $")
_GOES_WITH = re.compile(r" (?:for|to|in|with|on) (?:about |the |my )?$")
_TAKES = re.compile(r" (?:needs?|takes?|uses?|wants?|calls for|asks for|gets?|has|is|says) (?:about )?$")
_PERCENT = re.compile(r" (\d+(?:[.,]\d+)?) ?(?:%|percent|per cent) ")
_OF = re.compile(r"(?:%|percent|per cent) (?:of|on|for) (?:the |my )?$")
_TIMES = re.compile(rf" (?:(double|twice|triple|quadruple)|{NUMBER} ?(?:x|times)|{NUMBER} of) $")
_FOLD = {"double": 2.0, "twice": 2.0, "triple": 3.0, "quadruple": 4.0}
_SHARED = ("salt", "sugar", "yeast", "water")  # what a percentage is of, the surest word first
SPOONS_A_CUP = 16
LITTLE_ELSE = 3  # words beside a sum with which nothing else is asked


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """An amount in the question: a measure or a count of pieces."""

    kind: str  # "mass", "volume", or the name of what is counted
    size: float  # [g, ml, pieces]
    unit: str  # id of the measure, "" for a count
    said: str
    start: int
    end: int
    counted: bool  # a number stands before it


def rate(question: Question) -> Answer | None:
    """So much of one thing to so much of another, for what is there; a share; a multiple."""
    if hears(question, "no sum"):
        return None
    return _share(question) or _for_what_is_there(question) or _multiple(question)


def _for_what_is_there(question: Question) -> Answer | None:
    """ "2 oz per 5 lb, for 10 kg", "3 eggs for 250 g of flour, how many for 400 g"."""
    items = _items(question)
    for part, base in _pairs(question.plain, items):
        rest = [item for item in items if item not in (part, base)]
        there = [item for item in rest if item.kind == base.kind and item.counted]
        if not there:
            continue
        times = there[-1].size / base.size
        asked = [item.unit for item in rest if item.kind == part.kind and not item.counted and item.unit]
        amount = _printed(question, part, part.size * times, asked[-1] if asked else part.unit)
        text = f"{amount} for {there[-1].said}: {part.said} for {base.said}, times {figure(times)}."
        return Answer(known=True, answer=text, sources=("arithmetic",))
    return None


def _pairs(plain: str, items: tuple[Item, ...]) -> Iterator[tuple[Item, Item]]:
    """Which amount goes with which: the part and what it is for, the surest first."""
    beside = list(itertools.pairwise(items))
    for first, second in beside:
        if _EACH.search(f" {plain[first.end : second.start]}") and first.counted:
            yield first, second
    for first, second in beside:
        between = f" {plain[first.end : second.start]}"
        if first.counted and second.counted and _GOES_WITH.search(between):
            yield first, second
        if first.counted and second.counted and _TAKES.search(between):
            yield second, first


def _items(question: Question) -> tuple[Item, ...]:
    known = measures(question.store)
    found = [
        _measured(q, known[q.unit].kind, known[q.unit].size, question.plain) for q in quantities(question)
    ]
    for mention in question.mentions:
        counted = re.compile(rf" {NUMBER} (?:\w+ )?({re.escape(mention.phrase)}) ").search(question.plain)
        if counted and not any(item.start <= counted.start(1) < item.end for item in found):
            count = value_of(counted[1])
            found.append(
                Item(
                    kind=mention.food.name, size=count, unit="", said=f"{counted[1]} {counted[2]}",
                    start=counted.start(1), end=counted.end(2), counted=True,
                )
            )  # fmt: skip
    return tuple(sorted((item for item in found if item.size), key=lambda item: item.start))


def _measured(said: Quantity, kind: str, size: float, plain: str) -> Item:
    words = plain[said.start : said.end]
    return Item(
        kind=kind,
        size=said.value * size,
        unit=said.unit,
        said=words if said.has_number else f"1 {words}",
        start=said.start,
        end=said.end,
        counted=said.has_number,
    )


def _printed(question: Question, part: Item, size: float, unit: str) -> str:
    """ "8.8 ounces (250 g)", "5 eggs (4.8)"."""
    if not unit:
        name = part.kind if round(size) == 1 else plural(part.kind)
        exact = "" if abs(size - round(size)) < 0.05 else f" ({size:.1f})"
        return f"{max(round(size), 1)} {name}{exact}"
    measure = measures(question.store)[unit]
    number = figure(size / measure.size)
    metric = f" ({figure(size)} g)" if unit in MASS_G and unit not in ("gram", "kilogram") else ""
    return f"{number} {measure.counted(float(number))}{metric}"


def _share(question: Question) -> Answer | None:
    """ "2.5 % salt of 3 kg", "70 % hydration with 600 g of flour": by weight."""
    found = _PERCENT.search(question.plain)
    said = [
        q for q in quantities(question) if q.has_number and measures(question.store)[q.unit].kind != "length"
    ]
    if found is None or len(said) != 1:
        return None
    of_it = meant(question, "a share of it", _SHARED)
    if not of_it and not _OF.search(question.plain[: said[0].start]):
        return None
    measure = measures(question.store)[said[0].unit]
    percent, base = float(found[1].replace(",", ".")), said[0].value * measure.size
    unit = "g" if measure.kind == "mass" or of_it in ("salt", "sugar", "yeast") else "ml"
    amount = base * percent / 100  # of a litre of water as of its weight, 1 g a ml
    name = f" of {of_it}" if of_it else ""
    words = question.plain[said[0].start : said[0].end]
    text = f"{figure(amount)} {unit}{name}: {percent:g} % of {words}, by weight."
    return Answer(known=True, answer=text, sources=("arithmetic",))


def _multiple(question: Question) -> Answer | None:
    """ "Half of 3/4 cup", "double 1 3/4 cups", "1.5 times 2/3 cup"."""
    said = [q for q in quantities(question) if q.has_number]
    if len(said) != 1 or len(question.plain.split()) > LITTLE_ELSE + 8 or len(question.foods) > 1:
        return None
    (one,) = said
    found = _TIMES.search(f" {question.plain[: one.start]}")
    if found is None:
        return None
    times = _FOLD[found[1]] if found[1] else value_of(found[2] or found[3])
    measure = measures(question.store)[one.unit]
    value = one.value * times
    text = f"{figure(value)} {measure.counted(value)}"
    if measure.id == "cup":
        spoons = value * SPOONS_A_CUP
        text += f", that is {figure(round(spoons, 1))} tablespoons" if spoons <= 2 * SPOONS_A_CUP else ""
    return Answer(known=True, answer=f"{text}.", sources=("arithmetic",))
