"""How much curing salt goes into how much meat: `cures.csv`.

Nitrite poisons in a spoonful, so the answer is a weight for the meat that is named, and an
amount said beside it is held against that weight.
"""

from __future__ import annotations

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.measures import MASS_G, measures, quantities
from knowledge.text.clauses import clauses_of, met, says

G_PER_KG = 1000.0
TOO_FAR = 1.3  # scales of a kitchen and a heaped spoon: up to here an amount counts as the rule's
TSP_ML = 4.93
_CURING_SALT = clauses_of("{curing salt}")
_PINK_SALT_ON_MEAT = clauses_of("pink salt;{meat to cure}")


def curing(question: Question) -> Answer | None:
    """The curing salt for the meat that is named, or for each kilogram of it."""
    if not (met(question.plain, _CURING_SALT) or met(question.plain, _PINK_SALT_ON_MEAT)):
        return None
    if not (quantities(question) or question.says("how much", "how many", "dose", "amount", "percent")):
        return None
    cure = next(  # the last row has no words: the cure that is usually meant
        row
        for row in question.store.table("cures")
        if not row["words"] or says(question.plain, *row["words"].split(";"))
    )
    per_kg = float(cure["g_per_kg"] or 0)
    return Answer(
        known=True,
        answer=f"{_weighed(question, per_kg, float(cure['tsp_g'])) if per_kg else ''}{cure['says']}",
        sources=cited(question.store, cure["source"]),
    )


def _weighed(question: Question, per_kg: float, tsp_g: float) -> str:
    """ "For 2 kg of meat 5 g, weighed: " and, for an amount that is said, whether it is too much."""
    masses, spoons_g = [], 0.0
    held = measures(question.store)
    for said in quantities(question):
        if said.unit in MASS_G and said.has_number:
            masses.append(said.value * MASS_G[said.unit])
        elif said.has_number and said.unit in held and held[said.unit].kind == "volume":
            spoons_g = said.value * held[said.unit].size / TSP_ML * tsp_g
    meat_g = max(masses, default=0.0)
    if not meat_g:
        return ""
    right_g = meat_g / G_PER_KG * per_kg
    said_g = spoons_g or (min(masses) if len(masses) > 1 else 0.0)
    meat, spoons = f"{meat_g / G_PER_KG:.2g} kg of meat", f"about {right_g / tsp_g:.1f} tsp"
    need = f"{meat} takes {right_g:.3g} g ({spoons}), weighed. "
    if not said_g:
        return need
    if said_g > right_g * TOO_FAR:
        return f"Far too much, and nitrite poisons: {need}"
    if said_g < right_g / TOO_FAR:
        return f"Too little to guard the meat: {need}"
    return f"That is about right: {need}"
