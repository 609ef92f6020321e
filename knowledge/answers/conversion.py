"""Measures in other measures: "how many ml in a cup", "grams in a cup of flour", "2 lb 4 oz to kg".

Factors stand in `measures.csv`; what a cup of a food weighs, in the food's own portions.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable
from dataclasses import dataclass

from knowledge.answers.advice import row as advised
from knowledge.answers.cite import cited
from knowledge.answers.heard import hears, pattern
from knowledge.answers.measures import (
    MASS_G,
    WATER_G_ML,
    Measure,
    density_g_ml,
    figure,
    measures,
    quantities,
    regions,
)
from knowledge.answers.model import Answer, Mention, Quantity, Question
from knowledge.answers.ovens import from_gas_mark, other_scale, to_gas_mark
from knowledge.answers.portions import piece_weight
from knowledge.answers.words import words_of
from knowledge.foods.store import Store
from knowledge.units import convert

_HOW_MANY = re.compile(r" how (?:many|much) $")
_HOW_MUCH_IS = re.compile(r" how much (?:is|are|for|does|do|would|will) ")
# "Grams of salt per litre for pasta" asks how much to put in, not what it weighs.
_DOSE = (
    r" {dosed} (?:\w+ ){0,2}?(?:per|to (?:an?|the|each|every)|for (?:each|every|an?)) (?:\w+ )?"
    r"(?:lit(?:re|er)|kilo|kg|gallon|quart|cup|pound|lb)s? "
)
_PRESSURES = {"psi": "psi", "kpa": "kPa", "bar": "bar", "bars": "bar", "mbar": "mbar", "atm": "atm"}
_PRESSURE = "|".join(sorted(_PRESSURES, key=len, reverse=True))
_GAUGE = re.compile(
    rf" (\d+(?:\.\d+)?) ?({_PRESSURE}) (?:(?:pressure|is|how|much|many|equals?) )*"
    rf"(?:in|to|into|as) ({_PRESSURE}) "
)
_BASE = {"mass": "gram", "volume": "millilitre"}  # what is meant where no other measure is named
ALIKE = 0.005  # share by which the measures of two countries hardly differ
WORTH_SAYING = 0.03  # share from which another country's measure is told unasked

_WEIGH_IT = "I hold no weight for a cup of {}: weigh it, or go by the packet."
_FLOURS = " Most flours weigh 110-160 g a cup (wheat about 125 g); as a guide only."  # common practice
_OTHER_FOODS = " Other foods weigh more or less: ask with the food."


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """What is to be converted: as it is repeated to the cook, and its size in the base of its kind."""

    said: str  # "2 cups", "2 pounds 4 ounces"
    size: float  # [g, ml, mm]
    measure: Measure


def conversion(question: Question) -> Answer | None:
    """A conversion of temperatures, measures, or the weight of a measure of a food."""
    return (
        to_gas_mark(question)
        or from_gas_mark(question)
        or other_scale(question)
        or _pressure(question)
        or _measure(question)
        or piece_weight(question)
    )


def bare_measure(question: Question) -> Answer | None:
    """ "A cup of quinoa", "a knob of butter": a measure of a food and no other word asks what it weighs."""
    said = quantities(question)
    if len(said) != 1 or len(question.foods) != 1:
        return None
    (one,) = said
    before, behind = question.plain[: one.start], question.plain[one.end :]
    named = {word for mention in question.mentions for word in mention.phrase.split()}
    known = named | words_of(question.store, "filler") | words_of(question.store, "measured")
    asks_for_it = before.endswith(" in ")  # "a clove in teaspoons"
    if asks_for_it or set(f"{before} {behind}".split()) - known:
        return None
    measure = measures(question.store)[one.unit]
    if measure.kind == "length" or measure.id in MASS_G:
        return None
    return _in_measure(question, one, "gram")


def _pressure(question: Question) -> Answer | None:
    """ "15 psi in kPa": the gauge of a cooker in another country's unit."""
    found = _GAUGE.search(question.plain)
    if found is None:
        return None
    value, unit, to = float(found[1]), _PRESSURES[found[2]], _PRESSURES[found[3]]
    text = f"{value:g} {unit} is {convert(value, unit=unit, to=to):.3g} {to}."
    return Answer(known=True, answer=text, sources=("definition of the units",))


def _measure(question: Question) -> Answer | None:
    """The first way of asking for another measure that the question is."""
    said = quantities(question)
    if not said or pattern(question.store, _DOSE).search(question.plain):
        return None
    return next((found for way in _WAYS if (found := way(question, said)) is not None), None)


def _by_country(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "A UK pint against a US one": what the measure is in each country named."""
    known = measures(question.store)
    countries = regions(question)
    metric = question.says("metric")
    own = [known[q.unit] for q in said if known[q.unit].of]
    if len(countries) + metric < 2 or not own:
        return None
    base = known[own[0].of]
    kin = [measure for measure in known.values() if measure.of == base.id]
    told = [measure for measure in kin if measure.region in countries]
    told += [measure for measure in kin if metric and measure.region == "au"]
    sizes = ", ".join(f"1 {_of_country(one)} is {figure(one.size)} ml" for one in told or [base])
    differ = ""
    if len(told) > 1:
        alike = abs(told[-1].size / told[0].size - 1) <= ALIKE
        differ = "; hardly any difference" if alike else "; they differ"
    return Answer(known=True, answer=f"{sizes}{differ}.", sources=cited(question.store, own[0].source))


def _of_country(measure: Measure) -> str:
    """The name with its country, which that of the US does without elsewhere."""
    return f"US {measure.id.removeprefix('US ')}" if measure.id == measure.of else measure.id


def _this_or_that(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "Is it 3 or 4 tsp a tablespoon"."""
    if len(said) >= 3 and said[0].unit == said[1].unit != said[2].unit:
        return _in_measure(question, said[2], said[0].unit)
    return None


def _compound(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "2 lb 4 oz to kg", "1 cup and 2 tbsp in ml": two measures of one kind, counted, side by side."""
    known = measures(question.store)
    for at, (first, second) in enumerate(itertools.pairwise(said)):
        big, small = known[first.unit], known[second.unit]
        together = question.plain[first.end : second.start].strip() in ("", "and", "plus")
        counted = first.has_number and second.has_number
        if not together or not counted or big.kind != small.kind or big == small:
            continue
        named = [known[q.unit] for q in (*said[at + 2 :], *said[:at])]
        target = next(iter(named), known.get(_BASE.get(big.kind, "")))
        if target is None:
            return None
        both = Amount(
            said=f"{first.value:g} {big.counted(first.value)} {second.value:g} {small.counted(second.value)}",
            size=first.value * big.size + second.value * small.size,
            measure=big,
        )
        return _converted(question, both, target)
    return None


def _only_named(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "What is a dessertspoon": in millilitres."""
    named = question.says("what is", "what s", "whats", "how big is", "equal") and not question.foods
    if named and len(said) == 1 and measures(question.store)[said[0].unit].kind == "volume":
        return _in_measure(question, said[0], "millilitre")
    return None


def _price(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "How much is a kilo of goat": a weight of a food, and nothing that it is wanted in."""
    if not question.foods or not _HOW_MUCH_IS.search(question.plain):
        return None
    by_weight = len(said) == 1 and said[0].unit in MASS_G and not hears(question, "a weight wanted in")
    return advised(question.store, "outside-price") if by_weight or hears(question, "priced today") else None


def _one_in_another(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "How many ml in a cup", "2 cups in ml", "grams per cup": what is counted is turned into the other."""
    if len(said) < 2 or said[0].unit == said[1].unit:
        return None
    first, second, *_ = said
    per = question.plain[first.end : second.start].rstrip().endswith("per")
    asked_first = _HOW_MANY.search(question.plain[: first.start]) is not None
    target_first = asked_first or (not first.has_number and (second.has_number or per))
    target, source = (first, second) if target_first else (second, first)
    return _in_measure(question, source, target.unit)


def _weighed(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "What does a cup of flour weigh", "how heavy is 1 lb"; of a measure of no food there is no weight."""
    if not hears(question, "weighed"):
        return None
    last = said[-1]
    if measures(question.store)[last.unit].kind != "mass":
        return _in_measure(question, last, "gram") if question.foods else None
    wanted_in = question.plain[: last.start].endswith(" in ")  # "a medium onion in grams"
    if wanted_in and len(said) == 1 and question.foods:
        return None
    return _in_measure(question, last, "ounce" if last.unit == "gram" else "gram")


_WAYS: tuple[Callable[[Question, tuple[Quantity, ...]], Answer | None], ...] = (
    _by_country,
    _this_or_that,
    _compound,
    _only_named,
    _price,
    _one_in_another,
    _weighed,
)


def _in_measure(question: Question, said: Quantity, unit: str) -> Answer:
    """A quantity in the measure of that id."""
    known = measures(question.store)
    measure, target = known[said.unit], known[unit]
    number = round(said.value, 3) if measure.kind == target.kind else said.value
    amount = Amount(
        said=f"{number:g} {measure.counted(said.value)}", size=said.value * measure.size, measure=measure
    )
    return _converted(question, amount, target)


def _converted(question: Question, amount: Amount, target: Measure) -> Answer:
    """An amount in another measure; between volume and weight by what the food weighs, else water."""
    source = amount.measure
    if source.kind == target.kind:
        result = amount.size / target.size
        text = f"{amount.said} is {figure(result)} {target.counted(result)}."
        elsewhere = _elsewhere(question, source, target)
        return Answer(known=True, answer=text + elsewhere, sources=cited(question.store, source.source))
    if "length" in (source.kind, target.kind):
        text = f"{source.id.capitalize()} and {target.id} measure different things."
        return Answer(known=True, answer=text, sources=cited(question.store, source.source))
    return _by_density(question, amount, target)


def _by_density(question: Question, amount: Amount, target: Measure) -> Answer:
    """A volume as a weight, or a weight as a volume."""
    store, name, others = question.store, "water", _OTHER_FOODS
    found: tuple[float, str] | None = (WATER_G_ML, "A-NIST")
    if question.foods:
        first = question.mentions[0]
        formed = _formed(question, first)
        name, others = formed or first.phrase, ""
        found = None if formed else density_g_ml(first.food, store)
    if found is None:
        return _no_weight(store, name)
    density, source = found
    base = amount.size * density if amount.measure.kind == "volume" else amount.size / density
    result = figure(base / target.size)
    of_it = amount.said if amount.said.endswith(f"of {name}") else f"{amount.said} of {name}"
    text = f"{of_it} is about {result} {target.counted(float(result))}.{others}"
    return Answer(known=True, answer=text, sources=cited(store, source, "A-NIST"))


def _elsewhere(question: Question, *said: Measure) -> str:
    """What the measure is in another country, where that differs and no country is said."""
    if regions(question) or question.foods:
        return ""
    for measure in said:
        for other in measures(question.store).values():
            if other.of == measure.id != other.id and abs(other.size / measure.size - 1) > WORTH_SAYING:
                return f" US measure; 1 {other.id} is {figure(other.size)} ml."
    return ""


def _formed(question: Question, mention: Mention) -> str:
    """The name with a word of form beside it, "" if none: "buckwheat flour" weighs other than buckwheat."""
    behind, before = (words_of(question.store, role) for role in ("form behind", "form before"))
    if mention.food.group == "nut" and before & set(mention.phrase.split()):
        return mention.phrase  # known by that name, weighed as the whole nut
    words = question.plain.split()
    if mention.end < len(words) and words[mention.end] in behind:
        return " ".join(words[mention.start : mention.end + 1])
    if mention.start > 0 and words[mention.start - 1] in before:
        return " ".join(words[mention.start - 1 : mention.end])
    return ""


def _no_weight(store: Store, name: str) -> Answer:
    """An honest no; for flours the range of those that are known."""
    if "flour" in name:
        return Answer(known=True, answer=_WEIGH_IT.format(name) + _FLOURS, sources=cited(store, "CP"))
    return Answer(known=False, answer=_WEIGH_IT.format(name), sources=())
