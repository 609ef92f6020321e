"""How long to boil an egg, soft, medium or hard, at the sea or in a kitchen that lies high.

The minutes at the sea are common practice, the table `egg_times.csv`; see `altitude.egg_time` for the rest.
"""

from __future__ import annotations

import math
from collections.abc import Mapping

from knowledge.answers.cite import cited
from knowledge.answers.cooking.ways import LOW_M
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.altitude import altitude_m, egg_time, says_altitude
from knowledge.answers.reading.heard import hears
from knowledge.physics.water import ambient_Pa, boiling_degC

SEA_DEGC = 100.0
FIRM = (
    "USDA FSIS advises white and yolk firm for all, and surely for the old, the pregnant and small children."
)
INTO_WATER = "from the fridge into simmering water, then into cold water; large eggs a minute more"


def boiled_eggs(question: Question) -> Answer | None:
    """The minutes of an egg boiled in its shell."""
    egg = any(food.animal == "egg" for food in question.foods) or hears(question, "an egg")
    if not egg or not hears(question, "boils an egg") or not hears(question, "asks egg minutes"):
        return None
    if says_altitude(question) or hears(question, "not boiling an egg"):
        return None
    height_m = altitude_m(question)
    rows = question.store.table("egg_times")
    wanted = [row for row in rows if question.says(*row["words"].split(";"))] or list(rows)
    times = ", ".join(f"{row['id']} ({row['what']}) {_minutes(row, height_m)} min" for row in wanted)
    cooler = f" At {height_m:.0f} m water boils at {_water_degC(height_m):.0f} °C, so it takes longer there."
    high = cooler if height_m >= LOW_M else ""
    return Answer(
        known=True,
        answer=f"Boiled egg: {times}, {INTO_WATER} (common practice).{high} {FIRM}",
        sources=cited(question.store, "A-FSIS-TEMP", *{row["source"] for row in wanted}),
    )


def _minutes(row: Mapping[str, str], height_m: float) -> str:
    """ "6-7" at the sea, more where water boils cooler."""
    longer = 1.0
    if height_m >= LOW_M:
        yolk_degC = float(row["yolk_degC"])
        there = egg_time(water_degC=_water_degC(height_m), yolk_degC=yolk_degC)
        longer = there / egg_time(water_degC=SEA_DEGC, yolk_degC=yolk_degC)
    low, high = (math.ceil(float(row[end]) * longer - 0.25) for end in ("minutes_lo", "minutes_hi"))
    return f"{low}-{high}" if low != high else f"{low}"


def _water_degC(height_m: float) -> float:
    return boiling_degC(ambient_Pa(height_m))
