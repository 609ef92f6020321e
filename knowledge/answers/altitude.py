"""How high the kitchen lies, and where water boils there."""

from __future__ import annotations

import re

from knowledge.answers.advice import row as advised
from knowledge.answers.cite import cited
from knowledge.answers.degrees import both
from knowledge.answers.model import Answer, Question
from knowledge.physics.water import ambient_Pa, boiling_degC
from knowledge.units import convert, fahrenheit

_HEIGHT = re.compile(r" (\d{1,2}[,.]?\d{3}|\d{2,5}|0) ?(m|metres?|meters?|feet|ft|foot|masl)(?= )")
HIGHEST_M = 5000.0  # no kitchen lies higher
NOTICED_M = 300.0  # below it nobody cooks otherwise than at sea level (common practice)

# Longer in the water for each 500 m: vegetables, potatoes and pasta; pulses and rice (common practice).
_LONGER_VEGETABLES, _LONGER_PULSES, _STEP_M = 0.08, 0.15, 500.0
_LONGER = (
    " Simmered food takes longer there: vegetables, potatoes and pasta about {vegetables:.0f} % longer, "
    "pulses and rice about {pulses:.0f} %; roasting hardly changes, a pressure cooker makes up for most "
    "of it."
)


def altitude_m(question: Question) -> float:
    """The altitude said in the question, else that of the kitchen; one that no kitchen has is left out."""
    found = _HEIGHT.search(question.plain)
    if not found:
        return _place_m(question) or question.kitchen.altitude_m
    said = float(re.sub(r"[,.]", "", found[1]))
    height_m = convert(said, unit="ft", to="m") if found[2].startswith("f") else said
    return height_m if height_m <= HIGHEST_M else question.kitchen.altitude_m


def says_altitude(question: Question) -> bool:
    """True if a height in metres or feet, or a city that lies high, stands in the question."""
    return _HEIGHT.search(question.plain) is not None or _place_m(question) > 0.0


def _place_m(question: Question) -> float:
    """The height of a city named in the question, 0 if none is [m]."""
    rows = question.store.table("places_high")
    return max(
        (float(row["altitude_m"]) for row in rows if f" {row['place']} " in question.plain), default=0.0
    )


def boiling_there(question: Question) -> Answer | None:
    """The boil at an altitude or in a city that is named, before any general word on altitude."""
    sealed = question.says("pressure", "cooker")
    return boiling(question) if says_altitude(question) and not sealed else None


def boiling(question: Question) -> Answer | None:
    """The temperature at which water boils, at a named altitude or at that of the kitchen."""
    named = says_altitude(question)
    high = named or question.says("altitude", "sea level", "elevation", "high up", "mountain")
    if not _asks_of_the_boil(question, high=high, named=named):
        return None
    if high and question.says("pressure cook", "pressurecook", "cooker"):
        return advised(question.store, "altitude-pressure")
    height_m = altitude_m(question)
    if height_m == 0 and high and not question.says("sea level") and not named:
        return advised(question.store, "altitude-all")
    degC = boiling_degC(ambient_Pa(height_m))
    return Answer(
        known=True,
        answer=f"Water boils at {degC:.1f} °C / {fahrenheit(degC):.0f} °F at {height_m:.0f} m "
        f"({convert(height_m, unit='m', to='ft'):.0f} ft); {both(100)} at sea level.{_longer(height_m)}",
        sources=cited(question.store, "A-IAPWS"),
    )


def _asks_of_the_boil(question: Question, *, high: bool, named: bool) -> bool:
    """True if the boil is asked for, or what the height of the kitchen does to cooking."""
    if question.foods and question.says("how long", "minutes") and not question.says("longer"):
        return False
    cooking = question.says("boil", "cook", "longer", "take", "simmer", "affect", "adjust")
    of_a_food = named and bool(question.foods)
    return (high and (cooking or of_a_food)) or question.says("water boil", "boiling point")


def _longer(height_m: float) -> str:
    """How much longer food takes in water at that height; "" where nobody would notice."""
    if height_m < NOTICED_M:
        return ""
    vegetables, pulses = (
        100 * ((1 + share) ** (height_m / _STEP_M) - 1) for share in (_LONGER_VEGETABLES, _LONGER_PULSES)
    )
    return _LONGER.format(vegetables=vegetables, pulses=pulses)
