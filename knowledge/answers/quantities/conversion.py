"""Measures in other measures: "how many ml in a cup", "grams in a cup of flour", "2 lb 4 oz to kg".

Factors stand in `measures.csv`; what a cup of a food weighs, in the food's own portions.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable
from dataclasses import replace

from knowledge.answers.cite import cited
from knowledge.answers.dangers.advice import row as advised
from knowledge.answers.model import Answer, Quantity, Question
from knowledge.answers.quantities.in_another import (
    ALIKE,
    THIRDS,
    WORTH_SAYING,
    Amount,
    as_said,
    converted,
    without,
    words_beside,
)
from knowledge.answers.quantities.ovens import from_gas_mark, other_scale, to_gas_mark
from knowledge.answers.quantities.portions import (
    piece_weight,
    pieces_fill,
    pieces_in_a_measure,
    pieces_weigh,
    sizes_swapped,
)
from knowledge.answers.reading.heard import hears, pattern
from knowledge.answers.reading.measures import (
    MASS_G,
    Measure,
    figure,
    measures,
    quantities,
    regions,
)
from knowledge.answers.reading.words import words_of
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
_INTO = {"in", "into", "to", "as", "how", "many", "much", "are", "equals"}  # between a measure and another
FEW = 3  # words beside a local measure with which nothing else is asked
_HELD_AGAINST = re.compile(r"^ (?:so |but |and )?(?:is|are|does|do|isn t|isnt|aren t|doesn t) ")
_SAME = {"the", "same", "as", "equal", "equals", "to", "about", "really", "exactly", "just", "always"}
_TINS_G = (200, 400, 800)  # as sold in Britain and Europe (CAN)
NEAR_TIN = 0.1  # share by which a tin may differ and still do for another


def conversion(question: Question) -> Answer | None:
    """A conversion of temperatures, measures, or the weight of a measure of a food."""
    return (
        to_gas_mark(question)
        or from_gas_mark(question)
        or other_scale(question)
        or _pressure(question)
        or sizes_swapped(question)
        or pieces_in_a_measure(question)
        or pieces_fill(question)
        or pieces_weigh(question)
        or _measure(question)
        or piece_weight(question)
    )


def bare_measure(question: Question) -> Answer | None:
    """ "A cup of quinoa", "2 sticks of butter in grams": a measure, and nothing else is asked."""
    said = quantities(question)
    if not said or len(said) > 2 or len(question.foods) > 1 or len(regions(question)) > 1:
        return None
    one, wanted = said[0], said[1:]
    named = {word for mention in question.mentions for word in mention.phrase.split()}
    known = named | words_of(question.store, "filler") | words_of(question.store, "measured")
    if set(without(question.plain, said).split()) - known - (_INTO if wanted else set()):
        return None
    measure = measures(question.store)[one.unit]
    if wanted:
        found = None if wanted[0].has_number else _in_measure(question, one, wanted[0].unit)
        exact = measure.kind == measures(question.store)[wanted[0].unit].kind
        return found if found and (exact or (question.foods and found.known)) else None
    asks_for_it = question.plain[: one.start].endswith(" in ")  # "a clove in teaspoons"
    if asks_for_it or measure.kind == "length" or measure.id in MASS_G or not question.foods:
        return None
    return _in_measure(question, one, "gram")


def local_measure(question: Question) -> Answer | None:
    """ "1 catty of pork", "2 tola or 1 masha", "a mudu of gari in kg": measures at home in one country."""
    known = measures(question.store)
    said = quantities(question)
    own = [q for q in said if known[q.unit].note]
    others = [q for q in said if not known[q.unit].note]
    if not own or any(q.has_number for q in others) or hears(question, "not how much of it"):
        return None
    little_else = len(words_beside(question)) <= FEW or sum(q.has_number for q in own) > 1
    if not (others or little_else or hears(question, "what a measure is")):
        return None
    told = [_locally(question, one, others) for one in {q.unit: q for q in own}.values()]
    return Answer(
        known=all(answer.known for answer in told),
        answer=" ".join(answer.answer for answer in told),
        sources=tuple(dict.fromkeys(source for answer in told for source in answer.sources)),
    )


def _locally(question: Question, one: Quantity, others: list[Quantity]) -> Answer:
    """One local measure in what is asked for, else in grams or millilitres, of a food in both."""
    known = measures(question.store)
    base = _BASE[known[one.unit].kind]
    wanted = sorted({q.unit for q in others if known[q.unit].kind != "length"}, key=lambda u: known[u].kind)
    found = _in_measure(question, one, wanted[0] if wanted else base)
    by_weight = "gram" if base == "millilitre" and question.foods and not wanted else ""
    for unit in [*wanted[1:2], *([by_weight] if by_weight else [])]:
        also = _in_measure(question, one, unit)
        if also.known:
            found = replace(found, answer=f"{also.answer.removesuffix(known[one.unit].note)}{found.answer}")
    return found


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


def _is_it(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "Is an Australian tablespoon 20 ml": a measure held against another."""
    known = measures(question.store)
    if len(said) != 2 or not _HELD_AGAINST.search(question.plain) or not said[1].has_number:
        return None
    one, other = said
    kind = known[one.unit].kind
    between = set(question.plain[one.end : other.start].split())
    if one.unit == other.unit or kind != known[other.unit].kind or between - _SAME:
        return None
    told = other.value * known[other.unit].size / (one.value * known[one.unit].size)
    verdict = "Yes" if abs(told - 1) <= WORTH_SAYING else "No"
    found = _in_measure(question, one, other.unit)
    return replace(found, answer=f"{verdict}: {found.answer}")


def _this_or_that(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "Is it 3 or 4 tsp a tablespoon"."""
    if len(said) < 3 or not question.plain[said[0].end : said[1].start].strip().startswith("or"):
        return None
    if said[0].unit == said[1].unit != said[2].unit:
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
            most=first.value * big.size + second.value * small.size,
            measure=big,
            at=first.start,
        )
        return converted(question, both, target)
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
    once = tuple({q.unit: q for q in said}.values())  # "1 dl, I mean 1 dl of flour": what is said last
    if len(once) < 2:
        return None
    first, second, *_ = once
    per = question.plain[first.end : second.start].rstrip().endswith("per")
    asked_first = _HOW_MANY.search(question.plain[: first.start]) is not None
    target_first = asked_first or (not first.has_number and (second.has_number or per))
    target, source = (first, second) if target_first else (second, first)
    return _in_measure(question, source, target.unit)


def _tin(question: Question, said: tuple[Quantity, ...]) -> Answer | None:
    """ "A 14.5 oz can": in grams, and the metric tin that comes near."""
    for one in said:
        behind = question.plain[one.end :].split()[:1]
        if one.unit in ("ounce", "fluid ounce") and behind and behind[0] in ("can", "cans", "tin", "tins"):
            grams = one.value * MASS_G["ounce"]
            tin_g = min(_TINS_G, key=lambda tin: abs(tin - grams))
            near = f": a {tin_g} g tin" if abs(tin_g - grams) <= NEAR_TIN * tin_g else ""
            text = f"A {one.value:g} oz can is {grams:.0f} g{near}. Its weight is that of all that is in it."
            return Answer(known=True, answer=text, sources=cited(question.store, "CAN"))
    return None


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
    _is_it,
    _this_or_that,
    _compound,
    _only_named,
    _price,
    _tin,
    _one_in_another,
    _weighed,
)


def _in_measure(question: Question, said: Quantity, unit: str) -> Answer:
    """A quantity in the measure of that id."""
    known = measures(question.store)
    measure, target = known[said.unit], known[unit]
    numbers = dict.fromkeys(as_said(value) for value in (said.value, said.most))
    amount = Amount(
        said=f"{'-'.join(numbers)} {measure.counted(1 if as_said(said.most) in THIRDS else said.most)}",
        size=said.value * measure.size,
        most=said.most * measure.size,
        measure=measure,
        at=said.start,
    )
    return converted(question, amount, target)
