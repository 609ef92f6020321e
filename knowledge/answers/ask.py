"""Which typed answer takes a question."""

from __future__ import annotations

from collections.abc import Callable

from knowledge import accidents
from knowledge.answers.about import smoke, term, what_is, when_to_add
from knowledge.answers.advice import advice, emergency
from knowledge.answers.allergy import allergens, suits
from knowledge.answers.altitude import boiling, boiling_there
from knowledge.answers.amounts import grain_yield, servings, water_ratio
from knowledge.answers.cite import cited
from knowledge.answers.conversion import bare_measure, conversion
from knowledge.answers.cooking import bare_cook_time, cook_time
from knowledge.answers.cutting import cut_to_match, usual_cuts
from knowledge.answers.guard import guarded
from knowledge.answers.hot import kept_hot
from knowledge.answers.keeping import keeping
from knowledge.answers.model import Answer, Question
from knowledge.answers.notes import technique, unknown
from knowledge.answers.ovens import fan_oven
from knowledge.answers.pairing import goes_with
from knowledge.answers.question import question_of
from knowledge.answers.raw import raw
from knowledge.answers.scaling import scaled
from knowledge.answers.sealed import sealed
from knowledge.answers.season import season
from knowledge.answers.setting import rested, setting
from knowledge.answers.standing import in_the_warm, left_out
from knowledge.answers.swaps import substitute, swap_for_missing, swap_for_someone
from knowledge.answers.temperature import temperature
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen


def accident(question: Question) -> Answer | None:
    """What to do first about an accident or an illness, as the chat says it too."""
    found = accidents.heard(question.text) or accidents.heard(question.plain)  # with slips put right
    if found is None:
        return None
    return Answer(known=True, answer=found.says, sources=cited(question.store, found.source))


# In order: what can hurt comes first, what is computed before what is only quoted.
TYPED: tuple[Callable[[Question], Answer | None], ...] = (
    accident,
    emergency,
    swap_for_someone,
    suits,
    swap_for_missing,
    cut_to_match,
    fan_oven,
    scaled,
    setting,
    rested,
    left_out,
    in_the_warm,
    kept_hot,
    boiling_there,
    term,
    bare_measure,
    advice,
    smoke,
    boiling,
    grain_yield,
    conversion,
    season,
    raw,
    sealed,
    temperature,
    keeping,
    water_ratio,
    servings,
    usual_cuts,
    substitute,
    allergens,
    what_is,
    goes_with,
    technique,
    when_to_add,
    cook_time,
    bare_cook_time,
)


def ask(
    text: str, *, store: Store, kitchen: Kitchen | None = None, ruled_out: tuple[str, ...] = ()
) -> Answer:
    """Answer a kitchen question from the tables. Never raises; unknown is `known=False`.

    `ruled_out` is what the eaters must not have, whatever the question says: "no nuts", "vegan"
    (see `eaters.ruled_out`); no swap is offered against it.
    """
    question = question_of(text, store=store, kitchen=kitchen or Kitchen(), ruled_out=ruled_out)
    for answer in TYPED:
        found = answer(question)
        if found is not None:
            return guarded(question, found)
    return unknown(question)
