"""Grain, rice and pulses: the water that they drink, and what a dry cup makes cooked (`ratios.csv`)."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.measures import US_CUP_ML, cup_grams, said_cups, said_g
from knowledge.foods.store import Store

_CUP_ML = 240.0  # a cup as an answer prints it: no cook measures 237 ml
PULSES = frozenset({"bean", "chickpea"})  # classes of doneness
PULSE_YIELD, PULSE_YIELD_SOURCE = "2.5-3", "A-NEBRASKA"  # cups cooked from a dry one

_PARTS = re.compile(r"\d ?: ?\d|\b\d to \d\b")  # "is it 1:2 for quinoa"
_MADE = re.compile(
    r" (?:dry|dried|raw|uncooked|cups? of) .*(?:makes?|gives?|yields?|turns? into|comes? out|when) .*cooked "
    r"| cooked (?:makes?|gives?|yields?) $| (?:makes?|gives?|yields?) .*when cooked "
    r"| how (?:much|many) .*cooked .*from .*(?:dry|dried|raw|uncooked) "
)
_WATER = "{name}: {cups} of water for 1 cup ({ml:.0f} ml for {cup_ml:.0f} ml), {minutes} min, lid on"
_MAKES = "; makes {makes} cups. The packet knows its own grain better."
_LIKE = (
    "I hold no figure for {name} itself; as for {kin}: {cups} cups of water for 1 cup, {minutes} min, lid "
    "on. Taste, and add hot water if it is still hard; the packet knows better."
)
_PASTA = Answer(
    known=True,
    answer="Pasta in a pot of water: 1 l for 100 g, with 10 g of salt a litre. In one pan with its "
    "sauce: about 2 ml of liquid a gram beyond the sauce, stirred often.",
    sources=("common practice",),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ratio:
    """A row of `ratios.csv`, for one dry cup with the lid on; spans as they are printed ("1.5-1.75")."""

    water: str  # cups
    water_cups: float  # the middle of the span
    minutes: str
    makes: str  # cups cooked
    for_class: str  # the class of doneness whose foods without a row of their own cook like this one
    source: str


@lru_cache(maxsize=4)
def ratios(store: Store) -> Mapping[str, Ratio]:
    """The foods, by id, that drink all their water, and how much it is."""
    return {
        row["food_id"]: Ratio(
            water=_span(row["water_lo"], row["water_hi"]),
            water_cups=(float(row["water_lo"]) + float(row["water_hi"])) / 2,
            minutes=_span(row["minutes_lo"], row["minutes_hi"]),
            makes=row["yield"],
            for_class=row["for_class"],
            source=row["source"],
        )
        for row in store.table("ratios")
    }


def _span(low: str, high: str) -> str:
    return low if float(low) == float(high) else f"{low}-{high}"


def water_ratio(question: Question) -> Answer | None:
    """Water for a grain or pulse that drinks it all, by cups and by weight; for pasta, what it swims in."""
    stock = question.says("stock", "broth") and question.says("how much", "how many", "cup", "per")
    wet = question.says("water", "liquid", "ratio") or _PARTS.search(question.text) or stock
    if not wet or question.says("cold water", "wash", "rinse", "reheat", "salt"):
        return None
    known = ratios(question.store)
    held = [mention for mention in question.mentions if mention.food.id in known]
    if not held:
        return _like_its_kind(question) or _pasta_water(question)
    said = max(held, key=lambda m: m.end - m.start)  # "rice ... sushi rice": the one said more exactly
    mention = _rice_said_apart(question, said) if said.phrase == "rice" else said
    ratio = known[mention.food.id]
    water = _WATER.format(
        name=mention.phrase.capitalize(),
        cups=f"{ratio.water} {'cup' if ratio.water == '1' else 'cups'}",
        ml=_CUP_ML * ratio.water_cups,
        cup_ml=_CUP_ML,
        minutes=ratio.minutes,
    )
    return Answer(
        known=True,
        answer=water + _for_what_is_said(question, mention, ratio) + _MAKES.format(makes=ratio.makes),
        sources=cited(question.store, ratio.source),
    )


def _rice_said_apart(question: Question, mention: Mention) -> Mention:
    """ "Rice to water ratio, brown": the rice with the word that stands elsewhere in the question."""
    for word in question.plain.split():
        kind = question.store.named(f"{word} rice")
        if kind is not None and kind.id in ratios(question.store):
            return replace(mention, food=kind, phrase=kind.name)
    return mention


def _for_what_is_said(question: Question, mention: Mention, ratio: Ratio) -> str:
    """ "; 300 g takes about 760 ml", "; 3 cups take 6.0 cups"; "" where no amount, or one cup, is said."""
    if grams := said_g(question):
        ml = grams / cup_grams(mention.food, question.store) * ratio.water_cups * US_CUP_ML
        return f"; {grams:.0f} g takes about {round(ml / 10) * 10} ml"
    cups = said_cups(question)
    return f"; {cups:g} cups take {cups * ratio.water_cups:.1f} cups" if cups and cups != 1 else ""


def _like_its_kind(question: Question) -> Answer | None:
    """Water for a rice that has no figure of its own: as for the plain rice of its kind."""
    plain = {ratio.for_class: food_id for food_id, ratio in ratios(question.store).items() if ratio.for_class}
    mention = next((m for m in question.mentions if m.food.doneness in plain), None)
    if mention is None:
        return None
    kin = question.store.food(plain[mention.food.doneness])
    ratio = ratios(question.store)[kin.id]
    text = _LIKE.format(name=mention.phrase, kin=kin.name, cups=ratio.water, minutes=ratio.minutes)
    return Answer(known=True, answer=text, sources=cited(question.store, ratio.source))


def _pasta_water(question: Question) -> Answer | None:
    """The water that pasta swims in, or drinks in a pan with its sauce."""
    return _PASTA if any(food.doneness in ("pasta", "noodle") for food in question.foods) else None


def grain_yield(question: Question) -> Answer | None:
    """What a cup of dry grain or pulse makes cooked."""
    if not _MADE.search(question.plain) and not hears(question, "made of dry"):
        return None
    known = ratios(question.store)
    if grain := next((m for m in question.mentions if m.food.id in known), None):
        ratio = known[grain.food.id]
        return _yielded(question, grain.phrase, ratio.makes, ratio.source)
    if pulse := next((m for m in question.mentions if m.food.doneness in PULSES), None):
        return _yielded(question, pulse.phrase, PULSE_YIELD, PULSE_YIELD_SOURCE)
    return None


def _yielded(question: Question, name: str, makes: str, source: str) -> Answer:
    """What the dry cups that are said make cooked, by what one makes: "3" or "2.5-3"."""
    cups = said_cups(question)
    dry = 1.0 if cups is None else cups
    cooked = "-".join(f"{dry * float(one):g}" for one in makes.split("-"))
    text = f"{dry:g} {'cup' if dry <= 1 else 'cups'} of dry {name} makes about {cooked} cups cooked."
    return Answer(known=True, answer=text, sources=cited(question.store, source))
