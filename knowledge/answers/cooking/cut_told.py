"""Sizes, times and what goes in when, in words."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.answers.cooking.cut_asked import MINCED, Asked
from knowledge.answers.cooking.dish_cuts import DishCut
from knowledge.answers.cooking.together import Timed, is_close
from knowledge.answers.cooking.ways import saying
from knowledge.answers.heat.minimums import minimum_of, safe_line, said_minimum
from knowledge.answers.model import Mention, Question
from knowledge.answers.reading.degrees import both
from knowledge.planner.words import listed
from knowledge.units import size

MOST_MINIMA = 2  # that are repeated
AS_IS = "as they are"
_DIVIDED = {
    "halved": "halves",
    "quartered": "quarters",
    "cut in eighths": "eighths",
    "flattened": "flat pieces",
}


def sizes_and_times(question: Question, asked: Asked, chosen: Sequence[Timed]) -> str:
    """The sizes, the time, and what goes in first where no cut makes them ready together."""
    cut = newly_cut(asked, chosen)
    left = [t for t in chosen if t not in cut]
    slowest = max(t.min for t in chosen)
    how = saying(question, asked.way)
    each = by_size([(_uncut(t), sized(t)) for t in cut])
    beside = listed([f"{t.mention.phrase} ({sized(t, inches=False)})" for t in left])
    together = asked.in_min is None and all(is_close(t.min, slowest) for t in chosen)
    if together:
        rest = f", ready with {beside}" if cut and left else f"{beside}: ready together" if left else ""
        head = f"Cut {each}" if cut else "Yes: "
        return f"{head}{rest}: {in_minutes(slowest)}, {how}."
    times = listed([f"{t.mention.phrase} {in_minutes(t.min)}" for t in chosen])
    head = f"Cut {each}{', with ' + beside if left else ''}" if cut else f"Leave {beside}"
    return f"{head}: {times}, {how}.{starts(asked, chosen)}"


def by_size(sized: Sequence[tuple[str, str]]) -> str:
    """ "Leeks into 10 mm coins", what has the same size named together."""
    sizes = dict.fromkeys(said for _, said in sized)
    return listed([f"{listed([what for what, of in sized if of == said])} into {said}" for said in sizes])


def _uncut(timed: Timed) -> str:
    """The food without the word for its pieces: "cauliflower" of "cauliflower florets"."""
    return timed.mention.phrase.removesuffix(f" {timed.noun}").removesuffix(f" {timed.noun.rstrip('s')}")


def starts(asked: Asked, chosen: Sequence[Timed]) -> str:
    """What goes in when, so that all is ready at the same moment."""
    slow = max(chosen, key=lambda t: t.min)
    if asked.in_min is None:
        later = sorted((t for t in chosen if not is_close(t.min, slow.min)), key=lambda t: -t.min)
        first = listed([t.mention.phrase for t in chosen if t not in later])
        steps = listed([f"{t.mention.phrase} {in_minutes(slow.min - t.min)} later" for t in later])
        return f" Begin with {first}; add {steps}." if steps else ""
    if slow.min > asked.in_min and not is_close(slow.min, asked.in_min):
        short = f"{in_minutes(asked.in_min)} is too short for {slow.mention.phrase}"
        return f" {short}: give it {in_minutes(slow.min)}."
    early = sorted((t for t in chosen if not is_close(t.min, asked.in_min)), key=lambda t: -t.min)
    steps = listed([f"{t.mention.phrase} after {in_minutes(asked.in_min - t.min)}" for t in early])
    return f" To be ready at {in_minutes(asked.in_min)}, put in {steps}." if steps else ""


def safe_minima(question: Question, foods: Sequence[Mention]) -> str:
    """The safe minima of the meat among the foods; what is minced has that of mince."""
    kind = minimum_of(question) if said_minimum(question) == MINCED else None
    told = f"safe at {both(kind.degC)} ({kind.lead['authority']})" if kind else ""
    lines = [
        f" {m.phrase.capitalize()}: {told or line}." for m in foods if (line := safe_line(m.food, question))
    ]
    return "".join(lines[:MOST_MINIMA])


def newly_cut(asked: Asked, chosen: Sequence[Timed]) -> list[Timed]:
    """What is cut as we say: not what stays as it is or whose size was told."""
    return [t for t in chosen if t.noun not in ("", AS_IS) and not _is_told(asked, t)]


def _is_told(asked: Asked, timed: Timed) -> bool:
    return any(one.mention is timed.mention and one.fixed is not None for one in asked.wanted)


def sized(timed: Timed, *, inches: bool = True) -> str:
    """ "15 mm (1/2 inch) cubes", "15 mm cubes", "halves", "as they are"."""
    if timed.noun in ("", AS_IS):
        as_is = AS_IS if timed.mention.phrase.endswith("s") else "as it is"
        is_tiny = timed.piece.shape in ("leaf", "grain")
        return as_is if is_tiny else f"{as_is}, {size(timed.piece.size_mm, 'metric')}"
    if timed.noun in _DIVIDED or timed.piece.shape in ("leaf", "grain"):
        return _DIVIDED.get(timed.noun, timed.noun)
    mm = timed.piece.size_mm
    other = f" ({size(mm, 'us')})" if inches else ""
    return f"{size(mm, 'metric')}{other} {timed.noun}"


def range_of(row: DishCut) -> str:
    """ "2-3 mm (1/8 inch) slices"."""
    if row.cut == AS_IS:
        return row.cut
    low, high = size(row.from_mm, "us"), size(row.to_mm, "us")
    inches = high if low == high else f"{low.removesuffix(' inch')}-{high}"
    mm = f"{row.from_mm:.0f}" if row.from_mm == row.to_mm else f"{row.from_mm:.0f}-{row.to_mm:.0f}"
    return f"{mm} mm ({inches}) {row.cut}"


def in_minutes(minutes_taken: float) -> str:
    return f"{minutes_taken:.0f} min"
