"""How small to cut one food so that it is done together with another."""

from __future__ import annotations

from dataclasses import dataclass

from knowledge.answers.cite import cited
from knowledge.answers.heard import hears
from knowledge.answers.heating import minutes
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.sizes import as_said, at_size, shown, whole
from knowledge.answers.ways import cooks, saying, way_of
from knowledge.foods.model import DoneKind
from knowledge.foods.pieces import Pieced
from knowledge.units import convert

SIZES_MM = (8.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0, 30.0, 35.0, 40.0)
"""Nobody cuts larger pieces to eat (common practice): what is slower still goes in first."""

TRAY_MIN_MM = 15.0  # smaller pieces scorch on a tray before they are soft (common practice)
TOGETHER_MIN, TOGETHER_SHARE = 3.0, 0.15  # so far apart in minutes, or of the time, is done together
USUAL_CUTS = 3  # that are named


@dataclass(frozen=True, slots=True, kw_only=True)
class Timed:
    """A food in pieces and the minutes that they take."""

    mention: Mention
    piece: Pieced
    min: float

    def __str__(self) -> str:
        return f"{self.mention.phrase} ({shown(self.piece)}) takes {self.min:.0f} min"


def cut_to_match(question: Question) -> Answer | None:
    """The size at which one food is done together with another."""
    foods = _foods(question)
    if len({mention.food.id for mention in foods}) < 2 or not _asks_for_a_size(question):
        return None
    cut, other = foods[0], foods[1]
    way = _way(question, cut, other)
    if way is None:
        return None
    fixed = as_said(question, other.food)
    (taken,) = minutes(question, other.food, [fixed], way)
    beside = Timed(mention=other, piece=fixed, min=taken.likeliest)
    tried = _tried(question, cut, way)
    if not tried:
        return Answer(
            known=True,
            answer=_thin_as_it_is(question, cut, beside, way),
            sources=cited(question.store, "A-PHYSICS"),
        )
    times = minutes(question, cut.food, tried, way)
    fits = [
        Timed(mention=cut, piece=piece, min=time.likeliest)
        for piece, time in zip(tried, times, strict=True)
        if time.likeliest and beside.min
    ]
    if not fits:
        return None
    best = min(fits, key=lambda timed: (round(abs(timed.min - beside.min), 1), -timed.piece.size_mm))
    inches = convert(best.piece.size_mm, unit="mm", to="inch")
    text = (
        f"Cut {cut.phrase} to about {best.piece.size_mm:.0f} mm ({inches:.1f} in): {best.min:.0f} min, "
        f"while {beside}, {saying(question, way)}.{_apart(best, beside)}"
    )
    return Answer(known=True, answer=text, sources=cited(question.store, "A-PHYSICS"))


def usual_cuts(question: Question) -> Answer | None:
    """How a food is usually cut, where nothing is named that it goes with."""
    foods = _foods(question)
    cutting = question.says("cut", "chop", "dice", "slice")
    if not cutting or not hears(question, "asks for a size") or len({m.food.id for m in foods}) != 1:
        return None
    mention = foods[0]
    cuts = ", ".join(question.store.cut(cut_id).name for cut_id in mention.food.cuts[:USUAL_CUTS])
    return Answer(
        known=True,
        answer=f"{mention.phrase.capitalize()}: usually {cuts}. "
        "Name what it goes with and I compute the size.",
        sources=cited(question.store, "CP"),
    )


def _foods(question: Question) -> list[Mention]:
    return [mention for mention in question.mentions if cooks(question.store, mention.food)]


def _asks_for_a_size(question: Question) -> bool:
    """True if a size is asked for, or something is cut to go with something else and no time is asked for."""
    if hears(question, "asks for a size"):
        return True
    timed = question.says("how long", "minutes", "when")
    return hears(question, "cutting") and hears(question, "done together") and not timed


def _way(question: Question, *mentions: Mention) -> str | None:
    """How the two are cooked; None where they can't be: dry grain and pulses do not roast done."""
    kinds = {question.store.doneness(mention.food.doneness).kind for mention in mentions}
    wet = DoneKind.HYDRATE in kinds
    said = way_of(question)
    if said:
        return None if wet and said == "roast" else said
    return "boil" if wet or question.says("pot_", "soup", "stew", "curry", "broth") else "roast"


def _tried(question: Question, cut: Mention, way: str) -> list[Pieced]:
    """The pieces that the food can be cut to, from small to large."""
    least_mm = TRAY_MIN_MM if way == "roast" else 0.0
    most_mm = max(cut.food.whole_mm or SIZES_MM[-1], least_mm)
    return [at_size(question.store, cut.food, mm) for mm in SIZES_MM if least_mm <= mm <= most_mm]


def _thin_as_it_is(question: Question, cut: Mention, beside: Timed, way: str) -> str:
    """Of what is as thin as the wall of a pepper: no cut makes it slower."""
    (taken,) = minutes(question, cut.food, [whole(question.store, cut.food)], way)
    usual = question.store.cut(cut.food.cuts[0]).name
    return (
        f"{cut.phrase.capitalize()} are thin: any cut ({usual}) takes {taken.likeliest:.0f} min, "
        f"while {beside}, {saying(question, way)}."
    )


def _apart(best: Timed, beside: Timed) -> str:
    """What to do where even the best size is not done together with the other food, else ""."""
    late_min = best.min - beside.min
    if abs(late_min) <= max(TOGETHER_MIN, TOGETHER_SHARE * beside.min):
        return ""
    if late_min > 0:
        return f" Even so it is slower: give {best.mention.phrase} {late_min:.0f} min start."
    return f" It is quicker even so: add it {-late_min:.0f} min later."
