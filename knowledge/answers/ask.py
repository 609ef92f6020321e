"""Which typed answer takes a question."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace

from knowledge import accidents
from knowledge.answers.cite import cited
from knowledge.answers.cooking.cooking import bare_cook_time, cook_time
from knowledge.answers.cooking.cutting import cut_to_match, dish_cut, slower_of, usual_cuts
from knowledge.answers.cooking.eggs import boiled_eggs
from knowledge.answers.cooking.smoking import smoke
from knowledge.answers.cooking.steaks import steak_time
from knowledge.answers.cooking.vessels import vessel
from knowledge.answers.dangers.advice import advice, emergency
from knowledge.answers.dangers.curing import curing
from knowledge.answers.dangers.discarding import asked_whether_to_discard
from knowledge.answers.dangers.hot import kept_hot, warm_for_hours
from knowledge.answers.dangers.net import netted
from knowledge.answers.dangers.outage import cold_failed, cooker_failed, fridge_too_warm
from knowledge.answers.dangers.raw import raw
from knowledge.answers.dangers.sealed import sealed
from knowledge.answers.dangers.slow_cooker import slow_cooked, whistles
from knowledge.answers.dangers.standing import in_the_warm, left_out, needs_no_fridge, spoilt_in_the_warm
from knowledge.answers.eaters.allergy import allergens, suits
from knowledge.answers.eaters.at_risk import judged_for_eaters
from knowledge.answers.eaters.beside import eaters_diets, judged_beside, with_label
from knowledge.answers.eaters.contents import contents
from knowledge.answers.eaters.hidden import hidden
from knowledge.answers.guard import guarded
from knowledge.answers.heat.setting import rested, setting
from knowledge.answers.heat.temperature import asked_or_read_first, read_after_heating, temperature
from knowledge.answers.lore.about import what_is, when_to_add
from knowledge.answers.lore.craft import craft, craft_of
from knowledge.answers.lore.difference import difference
from knowledge.answers.lore.kind_of_food import kind_of_food
from knowledge.answers.lore.notes import remembered, technique, unknown
from knowledge.answers.lore.pairing import goes_with
from knowledge.answers.lore.season import season
from knowledge.answers.lore.terms import term
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.quantities.amounts import dish_serving, servings
from knowledge.answers.quantities.conversion import bare_measure, conversion, local_measure
from knowledge.answers.quantities.grains import grain_yield, water_ratio
from knowledge.answers.quantities.ovens import fan_oven, named_oven
from knowledge.answers.quantities.pots import pot_size
from knowledge.answers.quantities.proportions import proportion
from knowledge.answers.quantities.rates import rate
from knowledge.answers.quantities.scaling import scaled
from knowledge.answers.quantities.yields import cooked_yield
from knowledge.answers.reading.altitude import boiling, boiling_there
from knowledge.answers.reading.question import question_of
from knowledge.answers.reading.taken_back import as_meant
from knowledge.answers.several import (
    Typed,
    about,
    asked_alone,
    each,
    for_the_rest,
    heads,
    joined,
    questions_in,
)
from knowledge.answers.storing.keeping import keeping
from knowledge.answers.storing.refreezing import refrozen
from knowledge.answers.storing.thawing import thaw_time, thawed_in_time
from knowledge.answers.swaps.swaps import substitute, swap_for_missing, swap_for_someone
from knowledge.answers.swaps.swaps_told import other_name, swap_told
from knowledge.answers.swaps.without import made_without
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen

THE_REST = "The rest of what you ask I don't know."


def accident(question: Question) -> Answer | None:
    """What to do first about an accident or an illness, as the chat says it too."""
    found = accidents.heard(question.text) or accidents.heard(question.plain)  # with slips put right
    if found is None:
        return None
    return Answer(known=True, answer=found.says, sources=cited(question.store, found.source))


# What is answered of the whole message, before it is split or anything else of it is looked at.
URGENT: tuple[Typed, ...] = (
    accident,
    emergency,
    cooker_failed,
    cold_failed,
    fridge_too_warm,
    spoilt_in_the_warm,
)

# In order: what can hurt comes first, what is computed before what is only quoted.
TYPED: tuple[Typed, ...] = (
    *URGENT,
    remembered,
    curing,
    kind_of_food,
    difference,
    contents,
    hidden,
    made_without,
    swap_told,
    other_name,
    each(swap_for_someone),
    each(suits),
    each(swap_for_missing),
    asked_or_read_first,
    cut_to_match,
    dish_cut,
    slower_of,
    fan_oven,
    named_oven,
    scaled,
    rested,
    setting,
    kept_hot,
    warm_for_hours,
    left_out,
    needs_no_fridge,
    in_the_warm,
    read_after_heating,
    refrozen,
    thawed_in_time,
    thaw_time,
    boiled_eggs,
    whistles,
    slow_cooked,
    term,
    boiling_there,
    pot_size,
    dish_serving,
    proportion,
    bare_measure,
    local_measure,
    vessel,
    craft,
    advice,
    each(smoke),
    each(boiling),
    cooked_yield,
    grain_yield,
    conversion,
    each(season),
    raw,
    sealed,
    each(temperature),
    each(keeping),
    each(water_ratio),
    servings,
    each(usual_cuts),
    each(substitute),
    each(allergens),
    what_is,
    goes_with,
    technique,
    each(when_to_add),
    craft_of,
    steak_time,
    each(cook_time),
    each(bare_cook_time),
)

# Figures of one food, which are given for each of a list that another answer has left out.
FIGURES: tuple[Typed, ...] = (temperature, keeping, water_ratio, cook_time, bare_cook_time)

SURE = tuple(
    answer for answer in TYPED if answer not in (technique, craft_of)
)  # found by more than a likeness of words


def ask(
    text: str, *, store: Store, kitchen: Kitchen | None = None, ruled_out: tuple[str, ...] = ()
) -> Answer:
    """Answer a kitchen question from the tables. Never raises; unknown is `known=False`.

    `ruled_out` is what the eaters must not have, whatever the question says: "no nuts", "vegan"
    (see `eaters.ruled_out`); no swap is offered against it.
    """

    def read(part: str) -> Question:
        return question_of(part, store=store, kitchen=kitchen or Kitchen(), ruled_out=ruled_out)

    text = as_meant(text, read, store)
    whole = read(text)
    diets = (*ruled_out, *eaters_diets(whole))

    def read_for_them(part: str) -> Question:
        return replace(read(part), ruled_out=diets)

    answer = _answered(text, whole, read_for_them)
    told = judged_beside(whole, guarded(whole, answer) if answer is not None else unknown(whole))
    told = judged_for_eaters(whole, netted(whole, with_label(whole, told)))
    return asked_whether_to_discard(whole, told)


def _answered(text: str, whole: Question, read: Callable[[str], Question]) -> Answer | None:
    urgent = _first(whole, of=URGENT)
    if urgent is not None:
        return urgent
    summed = rate(whole)  # its amounts may stand in several sentences
    if summed is not None:
        return summed
    parts = questions_in(text)
    found = _one_by_one(parts, read) if len(parts) > 1 else None
    found = found or _first(whole)
    if found is not None and found.known:
        return for_the_rest(whole, found, FIGURES)
    if found is None and (alone := asked_alone(text)) != text:
        found = _first(read(alone))  # what was told around it led astray
    return found or _of_the_head(text, read)


def _of_the_head(text: str, read: Callable[[str], Question]) -> Answer | None:
    """The answer to a question on which another is hung that nobody takes."""
    found = (_first(read(head), of=SURE) for head in heads(text))
    told = next((answer for answer in found if answer is not None and answer.known), None)
    return replace(told, answer=f"{told.answer} {THE_REST}") if told else None


def _first(question: Question, of: Sequence[Typed] = TYPED) -> Answer | None:
    return next((found for answer in of if (found := answer(question)) is not None), None)


def _one_by_one(parts: Sequence[str], read: Callable[[str], Question]) -> Answer | None:
    """The questions of a message, each answered; None when none of them can be."""
    found: list[Answer] = []
    named: Mention | None = None
    is_open = False
    for part in parts:
        question = read(part)
        leans = not question.mentions
        if leans and named is not None:
            question = read(about(part, named))
        named = question.mentions[0] if question.mentions else named
        answer = _first(question, of=SURE if leans else TYPED)
        if answer is not None and answer.known:
            found.append(guarded(question, answer))
        elif not leans:
            is_open = True
    if not found:
        return None
    told = joined(found) if len(found) > 1 else found[0]
    return replace(told, answer=f"{told.answer} {THE_REST}") if is_open else told
