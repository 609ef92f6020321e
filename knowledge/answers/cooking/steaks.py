"""How long a steak, a chop or a fillet takes a side in a hot pan, by its thickness and doneness.

The time to the safe minimum is computed first; what the trade means by rare or medium lies below it and
is said as such, only for whole pieces that nothing was needled or rolled into.
"""

from __future__ import annotations

from knowledge.answers.cite import cited
from knowledge.answers.cooking.heating import Minutes, side_minutes
from knowledge.answers.cooking.sizes import at_size, size_mm
from knowledge.answers.cooking.ways import cooks, oven_said, way_of
from knowledge.answers.heat.minimums import is_formed, leading, safe_line
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.reading.degrees import both
from knowledge.answers.reading.heard import hears, meanings
from knowledge.text.clauses import says
from knowledge.units import is_met

SLAB = "slab"
WHOLE, FISH = "whole_meat", "fish"
THINNEST_MM, THICKEST_MM = 8.0, 50.0
OVEN_FROM_MM = 40.0
WAYS = ("", "saute", "grill")
GRILLED = "under or over a hot grill (broiler), 10 cm / 4 in away, turned over"
HOT = "in a hot pan (about 230 °C / 445 °F), turned over"
THICK = "A piece that thick is better seared a minute or two a side and finished in the oven, measured."
OWN_RISK = "below the safe minimum, at your own risk and not for frail eaters"


def steak_time(question: Question) -> Answer | None:
    """Minutes a side in a hot pan; None unless a steak or the like is asked for so."""
    mention = next((m for m in question.mentions if cooks(question.store, m.food)), None)
    if mention is None or way_of(question) not in WAYS or oven_said(question):
        return None
    food = mention.food
    if food.safety not in (WHOLE, FISH) or food.whole_shape != SLAB or not _is_asked(question, mention):
        return None
    thick_mm = size_mm(question) or food.whole_mm or 0.0
    if not THINNEST_MM <= thick_mm <= THICKEST_MM or is_formed(question):
        return None
    piece = at_size(question.store, food, thick_mm)
    row = leading(question.store)[food.safety]
    safe_degC = float(row["core_degC"])
    is_grilled = way_of(question) == "grill"
    safe = side_minutes(question, food, piece, safe_degC, is_grilled=is_grilled)
    if not safe.latest:
        return None
    sentences = (
        f"{mention.phrase.capitalize()}, {thick_mm:.0f} mm, {GRILLED if is_grilled else HOT}: {_a_side(safe)}"
        f"{' and 3 min rest' if row['hold'] == 'rest' else ''} for the safe {both(safe_degC)} (USDA FSIS).",
        _by_the_word(question, mention, thick_mm, safe_degC),
        THICK if thick_mm >= OVEN_FROM_MM else "",
        f"Computed; measure in the middle, {safe_line(food, question)}.",
    )
    return Answer(
        known=True, answer=" ".join(filter(None, sentences)), sources=cited(question.store, "A-PHYSICS")
    )


def _is_asked(question: Question, mention: Mention) -> bool:
    of_a_side = hears(question, "a side")
    name = f" {mention.phrase} "
    steak = says(name, *meanings(question.store, "named a steak")[""])
    return (of_a_side or hears(question, "asks how long it cooks")) and (
        of_a_side or (steak and not hears(question, "cut up smaller"))
    )


def _by_the_word(question: Question, mention: Mention, thick_mm: float, safe_degC: float) -> str:
    """ "Medium rare is 55 °C in the trade: 3-4.5 min a side, below the safe minimum ..." """
    if mention.food.safety != WHOLE:
        return ""
    words = {row["name"]: float(row["core_degC"]) for row in question.store.table("steak_words")}
    word = max((name for name in words if f" {name} " in question.plain), key=len, default="")
    if not word:
        return ""
    piece = at_size(question.store, mention.food, thick_mm)
    is_grilled = way_of(question) == "grill"
    time = side_minutes(question, mention.food, piece, words[word], is_grilled=is_grilled)
    means = f"{word.capitalize()} is {both(words[word])} in the trade (common practice): {_a_side(time)}"
    return f"{means}." if is_met(words[word], safe_degC) else f"{means}, {OWN_RISK}."


def _a_side(time: Minutes) -> str:
    low, high = round(2 * time.earliest) / 2, round(2 * time.latest) / 2
    return f"{low:g} min a side" if low == high else f"{low:g}-{high:g} min a side"
