"""An amount in another measure: by its factor, or between volume and weight by what the food weighs."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Mention, Quantity, Question
from knowledge.answers.reading.measures import (
    US_CUP_ML,
    WATER_G_ML,
    CupWeight,
    Measure,
    density_g_ml,
    figure,
    measures,
    quantities,
    regions,
    told_weight,
)
from knowledge.answers.reading.words import words_of
from knowledge.foods.store import Store
from knowledge.text.normalise import singular

THIRDS = {"1/3": 1 / 3, "2/3": 2 / 3}  # what no decimal says
ALIKE = 0.005  # share by which the measures of two countries hardly differ
WORTH_SAYING = 0.03  # share from which another country's measure is told unasked
_WEIGH_IT = "I hold no weight for a cup of {}: weigh it, or go by the packet."
_FLOURS = " Most flours weigh 110-160 g a cup (wheat about 125 g); as a guide only."  # common practice
_IDLE = ("asking", "filler", "measured", "region", "stop")  # roles of words that name no food
_OTHER_FOODS = " Other foods weigh more or less: ask with the food."


@dataclass(frozen=True, slots=True, kw_only=True)
class Amount:
    """What is to be converted: as it is repeated to the cook, and its size in the base of its kind."""

    said: str  # "2 cups", "2 pounds 4 ounces"
    size: float  # [g, ml, mm]
    most: float  # the end of a range, else the same [g, ml, mm]
    measure: Measure
    at: int  # where it stands in the question


def as_said(value: float) -> str:
    """A number as a cook says it: "1/3", "1 2/3", "0.75", "250"."""
    whole, part = divmod(value, 1)
    third = next((said for said, size in THIRDS.items() if abs(part - size) < ALIKE), "")
    if third:
        return f"{whole:.0f} {third}" if whole else third
    return f"{round(value, 3):g}"


def converted(question: Question, amount: Amount, target: Measure) -> Answer:
    """An amount in another measure; between volume and weight by what the food weighs, else water."""
    source = amount.measure
    note = f" {source.note or target.note}".rstrip()
    if source.kind == target.kind:
        text = f"{amount.said} is {_counted(amount, 1 / target.size, target)}.{note}"
        elsewhere = _elsewhere(question, source, target)
        return Answer(known=True, answer=text + elsewhere, sources=cited(question.store, source.source))
    if "length" in (source.kind, target.kind):
        text = f"{source.id.capitalize()} and {target.id} measure different things."
        return Answer(known=True, answer=text, sources=cited(question.store, source.source))
    return _by_density(question, amount, target, note)


def _counted(amount: Amount, factor: float, target: Measure) -> str:
    """ "2.5 cups", "227-340 grams"."""
    figures = dict.fromkeys(figure(size * factor) for size in (amount.size, amount.most))
    return f"{'-'.join(figures)} {target.counted(float(list(figures)[-1]))}"


def _by_density(question: Question, amount: Amount, target: Measure, note: str) -> Answer:
    """A volume as a weight, or a weight as a volume."""
    store, others = question.store, ""
    name, found = _what_and_density(question, amount)
    if not name:
        name, found, others = "water", (WATER_G_ML, "A-NIST"), _OTHER_FOODS
    if found is None:
        return _no_weight(store, name)
    density, source = found
    factor = (density if amount.measure.kind == "volume" else 1 / density) / target.size
    of_it = amount.said if amount.said.endswith(f"of {name}") else f"{amount.said} of {name}"
    text = f"{of_it} is about {_counted(amount, factor, target)}.{note}{others}"
    return Answer(known=True, answer=text, sources=cited(store, source, "A-NIST"))


def _what_and_density(question: Question, amount: Amount) -> tuple[str, tuple[float, str] | None]:
    """What is measured, and what a millilitre of it weighs, None if unknown [g/ml]; "" for nothing named."""
    mention = _measured(question, amount)
    told = told_weight(question, behind=amount.at)
    if told and _is_nearer(question, told, mention):
        one, _ = told
        return one.name, (one.cup_g / US_CUP_ML, one.source)
    if mention is None:
        return " ".join(words_beside(question)), None
    if formed := _formed(question, mention):
        return formed, None
    return mention.phrase, density_g_ml(mention.food, question.store)


def _is_nearer(question: Question, told: tuple[CupWeight, int], mention: Mention | None) -> bool:
    """True where a name that is told a weight stands before the food, or holds its name: "cooked rice"."""
    if mention is None:
        return True
    one, at = told
    word = len(question.plain[:at].split())
    if mention.start < word + len(one.name.split()) and word < mention.end:
        return len(one.name) >= len(mention.phrase)
    return word < mention.start


def _measured(question: Question, amount: Amount) -> Mention | None:
    """The food that an amount is of: the first named behind it, else the first; never the "milk" of a tin."""
    tins = [q for q in quantities(question) if measures(question.store)[q.unit].note]
    names = {name for tin in tins for name in question.plain[tin.start : tin.end].split()}
    foods = [mention for mention in question.mentions if not set(mention.phrase.split()) <= names]
    word = len(question.plain[: amount.at].split())
    return next((mention for mention in foods if mention.start >= word), next(iter(foods), None))


def words_beside(question: Question) -> list[str]:
    """What is neither measure nor known food nor idle: where no food is known, it may be the name of one."""
    words = without(question.plain, quantities(question)).split()
    named = {word for mention in question.mentions for word in mention.phrase.split()}
    idle = (named | {"water"}).union(*(words_of(question.store, role) for role in _IDLE))
    return [word for word in words if word.isalpha() and not {word, singular(word)} & idle]


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


def without(plain: str, said: Sequence[Quantity]) -> str:
    """The question without its measures."""
    for quantity in sorted(said, key=lambda q: -q.start):
        plain = f"{plain[: quantity.start]} {plain[quantity.end :]}"
    return plain
