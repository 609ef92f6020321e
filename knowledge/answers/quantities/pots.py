"""How large a pot a batch needs: what it swells to, and how full a pot may be (`vessels.csv`)."""

from __future__ import annotations

import math
from dataclasses import dataclass

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Mention, Quantity, Question
from knowledge.answers.quantities.grains import PULSE_YIELD, PULSES, ratios
from knowledge.answers.reading.heard import hears, pattern
from knowledge.answers.reading.measures import US_CUP_ML, cup_grams, measures, quantities
from knowledge.foods.model import Behaviour, Food

_IS_POT = r"^(?:s|ns)? ?(?:{a sized pot})"  # "a 5 litre pot": behind its measure
PASTA_L_KG = 10.0  # water that pasta swims in (common practice: 1 l for 100 g)
COVERED = 1.1  # what lies in water takes a tenth more than its heap (common practice)
BROTH_L_KG = 1.0  # of meat and stews (common practice)
_SHARES = {0.75: "three quarters", 0.5: "half"}
LARGEST_L = 12.0  # above it two pots are easier to lift (common practice)
WHOLE_BIRD = 2.2  # litres a kilogram that a bird lies in (common practice)


_COOKED = "{said} comes to about {litres} l cooked"
_AS_IT_IS = "{said} is about {litres} l"
_IN_WATER = "{said} takes about {litres} l with its water"
_PASTA = "{said} swims in about {litres} l of water, 1 l for 100 g (half of that will do, stirred often)"
_IN_BROTH = "{said} takes about {litres} l with as much liquid"


@dataclass(frozen=True, slots=True, kw_only=True)
class Batch:
    """What is to be cooked, and what it comes to in the pot."""

    said: str  # "5 kg of rice"
    litres: float  # at its fullest
    comes_to: str  # a sentence above
    foams: bool = False


def pot_size(question: Question) -> Answer | None:
    """The pot for a batch that is said by weight or volume; whether one that is said will hold it."""
    if not hears(question, "how large a pot"):
        return None
    pot_l = _pot(question)
    batch = _batch(question, pot_l)
    if batch is None:
        return None
    sealed = question.says("pressure", "instant pot", "cooker") and not question.says("ricecooker")
    vessel = question.store.vessel("pressure cooker" if sealed else "lidded pot")
    fill = vessel.max_fill_foaming_frac if sealed or batch.foams else vessel.max_fill_frac
    need_l = batch.litres / fill
    told = batch.comes_to.format(said=batch.said, litres=_litres(batch.litres))
    told += f", and a {vessel.id} is filled at most {_SHARES.get(fill, f'{100 * fill:.0f} %')} full"
    if pot_l is None:
        text = f"About {_litres(need_l)} l: {told}."
    else:
        text = f"{'Yes' if pot_l >= need_l else 'No, too small'}: {told}; that asks for {_litres(need_l)} l."
    if need_l > LARGEST_L and (pot_l is None or pot_l < need_l):
        text += f" Two pots of {_litres(need_l / 2)} l are easier to stir and to lift."
    return Answer(known=True, answer=text, sources=cited(question.store, "CP"))


def _pot(question: Question) -> float | None:
    """The size of the pot that is spoken of [l]."""
    is_pot = pattern(question.store, _IS_POT)
    for one in quantities(question):
        measure = measures(question.store)[one.unit]
        if one.has_number and measure.kind == "volume" and is_pot.match(question.plain[one.end :].lstrip()):
            return one.value * measure.size / 1000
    return None


def _batch(question: Question, pot_l: float | None) -> Batch | None:
    for one in quantities(question):
        measure = measures(question.store)[one.unit]
        if not one.has_number or measure.kind == "length":
            continue
        litres = one.value * measure.size / 1000
        if measure.kind == "volume" and pot_l is not None and math.isclose(litres, pot_l):
            continue
        mention = _behind(question, one)
        words = question.plain[one.start : one.end]
        if mention is None and measure.kind == "volume":
            return Batch(said=words, litres=litres, comes_to=_AS_IT_IS)
        if mention is None:
            return None
        said = f"{words} of {mention.phrase}"
        if measure.kind == "mass":
            return _weighed(question, mention.food, said, one.value * measure.size)
        if mention.food.start_state == "dry" and not question.says("cooked"):
            return Batch(said=said, litres=litres * _swells(question, mention.food), comes_to=_COOKED)
        foams = mention.food.pressure is not Behaviour.FINE and not question.says("cooked")
        return Batch(said=said, litres=litres, comes_to=_AS_IT_IS, foams=foams)
    return None


def _behind(question: Question, one: Quantity) -> Mention | None:
    """The food that an amount is of: the first behind it, else any."""
    word = len(question.plain[: one.start].split())
    return next((m for m in question.mentions if m.start >= word), next(iter(question.mentions), None))


def _weighed(question: Question, food: Food, said: str, grams: float) -> Batch | None:
    """A weight of a food as it lies in the pot."""
    heap_l = grams / cup_grams(food, question.store) * US_CUP_ML / 1000
    if food.group in ("pasta", "noodle") or food.doneness == "pasta":
        return Batch(said=said, litres=grams / 1000 * PASTA_L_KG, comes_to=_PASTA)
    if food.start_state == "dry" or food.group in ("grain", "pulse"):
        return Batch(said=said, litres=heap_l * _swells(question, food), comes_to=_COOKED)
    if food.animal == "poultry" and food.name.startswith("whole "):
        return Batch(said=said, litres=grams / 1000 * WHOLE_BIRD, comes_to=_IN_WATER)
    if food.animal:
        return Batch(said=said, litres=grams / 1000 * (1 + BROTH_L_KG), comes_to=_IN_BROTH)
    if food.group == "leaf":
        return None  # wilts as it goes in, handful by handful
    return Batch(said=said, litres=heap_l * COVERED, comes_to=_IN_WATER)


def _swells(question: Question, food: Food) -> float:
    """Cups cooked from a dry one."""
    ratio = ratios(question.store).get(food.id)
    makes = ratio.makes if ratio else PULSE_YIELD if food.doneness in PULSES else ""
    if makes:
        return float(makes.split("-")[-1])
    return 1 + (food.water_uptake_g_per_g or 0.0)


def _litres(value: float) -> str:
    return f"{value:.0f}" if value >= 10 else f"{math.ceil(value * 2) / 2:g}"
