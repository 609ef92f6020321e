"""How high the kitchen lies, and where water boils there."""

from __future__ import annotations

import math
import re

from knowledge.answers.cite import cited
from knowledge.answers.dangers.advice import row as advised
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.degrees import both
from knowledge.answers.reading.heard import hears
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

FRIDGE_EGG_DEGC = 4.0
SOFT_EGG_MIN, SOFT_YOLK_DEGC = 6.0, 65.0  # at sea level, from the fridge into boiling water (common practice)
HARD_EGG_MIN, HARD_YOLK_DEGC = 11.0, 77.0
_EGGS = (
    "At {height_m:.0f} m, where water boils at {degC:.1f} °C, from the fridge into boiling water: soft about "
    "{soft:.0f} min (6 at sea level), hard about {hard:.0f} min (11). For the frail, small children and in "
    "pregnancy until white and yolk are firm."
)
_BAKING = (
    "At {height_m:.0f} m ({ft:.0f} ft), where gas swells more and water dries faster: for each teaspoon of "
    "baking powder take {powder_tsp} tsp less, for each cup of sugar {sugar_tbsp} tbsp less, for each cup of "
    "liquid {liquid_tbsp} tbsp more; the oven 8-14 °C / 15-25 °F hotter, and look earlier. Yeast dough rises "
    "faster: a quarter less yeast, punched down when doubled. Start with the smaller change."
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
    if not says_altitude(question) or question.says("pressure", "cooker"):
        return None
    return _baked(question) or _eggs(question) or boiling(question)


def _baked(question: Question) -> Answer | None:
    """What a recipe for baking changes at that height (`altitude_baking.csv`)."""
    if not hears(question, "baked at a height"):
        return None
    height_m = altitude_m(question)
    rows = [row for row in question.store.table("altitude_baking") if height_m >= float(row["from_m"])]
    if not rows:
        text = f"At {height_m:.0f} m hardly anything changes: a recipe is altered from about 900 m / 3000 ft."
        return Answer(known=True, answer=text, sources=cited(question.store, "A-CSU"))
    row = max(rows, key=lambda row: float(row["from_m"]))
    text = _BAKING.format(height_m=height_m, ft=convert(height_m, unit="m", to="ft"), **row)
    return Answer(known=True, answer=text, sources=cited(question.store, row["source"]))


def _eggs(question: Question) -> Answer | None:
    """Minutes for boiled eggs at that height, from those at sea level."""
    if not any(food.animal == "egg" for food in question.foods) or not hears(question, "boiled egg"):
        return None
    height_m = altitude_m(question)
    water_degC = boiling_degC(ambient_Pa(height_m))
    soft, hard = (
        minutes * egg_time(water_degC=water_degC, yolk_degC=yolk) / egg_time(water_degC=100.0, yolk_degC=yolk)
        for minutes, yolk in ((SOFT_EGG_MIN, SOFT_YOLK_DEGC), (HARD_EGG_MIN, HARD_YOLK_DEGC))
    )
    longer = "Yes, longer. " if question.says("longer", "do i", "do you") and height_m >= NOTICED_M else ""
    text = longer + _EGGS.format(height_m=height_m, soft=soft, hard=hard, degC=water_degC)
    return Answer(known=True, answer=text, sources=cited(question.store, "A-WILLIAMS", "A-IAPWS", "CP"))


def egg_time(*, water_degC: float, yolk_degC: float) -> float:
    """How long an egg takes, up to a factor of its size, until the edge of its yolk is that hot.

    Equation:
        time ~ ln(0.76 * (egg - water) / (yolk - water))      egg from the fridge
    Valid for: yolk below water.
    Source: A-WILLIAMS.
    Example: water 100, yolk 77, egg 4 -> ln(0.76 * 96 / 23) = 1.155
    """
    return math.log(0.76 * (water_degC - FRIDGE_EGG_DEGC) / (water_degC - yolk_degC))


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
