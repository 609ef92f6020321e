"""How small to cut foods: so that they are done together, and as a dish asks for it."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.answers.cite import cited
from knowledge.answers.cooking.cut_asked import (
    Asked,
    asked_of,
    asks_for_a_size,
    asks_if_together,
    foods_of,
    is_timed,
)
from knowledge.answers.cooking.cut_told import (
    by_size,
    in_minutes,
    newly_cut,
    range_of,
    safe_minima,
    sized,
    sizes_and_times,
    starts,
)
from knowledge.answers.cooking.dish_cuts import DishCut, cut_of, dish_of
from knowledge.answers.cooking.heating import minutes
from knowledge.answers.cooking.sizes import whole
from knowledge.answers.cooking.together import Timed, as_cooked, is_close, is_cut, matched, noun_of
from knowledge.answers.cooking.ways import saying
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.planner.words import listed

USUAL_CUTS = 3  # that are named
LONG_WAYS = ("braise", "pressure")  # in which meat is long past its safe temperature when it is tender
ALIKE = 1.25  # sizes that differ by less are the same to a cook


def cut_to_match(question: Question) -> Answer | None:
    """The sizes at which several foods are done together, or whether they are so as usually cut."""
    is_verdict = asks_if_together(question)
    if not (is_verdict or asks_for_a_size(question)):
        return None
    foods = foods_of(question)
    asked = asked_of(question, foods) if foods else None
    if asked is None or (len(foods) < 2 and asked.in_min is None):
        return None
    chosen = matched(question, asked.wanted, asked.way, in_min=asked.in_min)
    if chosen is None:
        return None
    verdict = _as_usual(question, asked) if is_verdict and not hears(question, "how small") else ""
    if verdict.startswith("Yes, nearly"):
        told = verdict
    elif verdict and not newly_cut(asked, chosen):
        told = f"{verdict.strip()}{starts(asked, chosen)}"
    else:
        told = verdict + _alike(question, chosen) + sizes_and_times(question, asked, chosen)
    safe = safe_minima(question, [t.mention for t in chosen]) if asked.way not in LONG_WAYS else ""
    return Answer(
        known=True,
        answer=told + safe,
        sources=cited(question.store, *(("A-PHYSICS", "CP") if asked.dish else ("A-PHYSICS",))),
    )


def slower_of(question: Question) -> Answer | None:
    """Which of two foods takes longer, as they are usually cut."""
    foods = foods_of(question)
    compares = hears(question, "asks which is slower") and not hears(question, "not of the fire")
    asked = asked_of(question, foods) if compares and len(foods) == 2 else None
    if asked is None:
        return None
    first, second = _usually(question, asked)
    if not first.min or not second.min:
        return None
    slow, quick = (first, second) if first.min >= second.min else (second, first)
    times = " against ".join(
        f"{t.mention.phrase} ({sized(t, inches=False)}) {in_minutes(t.min)}" for t in (slow, quick)
    )
    if is_close(quick.min, slow.min):
        text = f"Hardly any difference: {times}, {saying(question, asked.way)}."
    else:
        name, many = slow.mention.phrase, slow.mention.phrase.endswith("s")
        longer = f"{name} take{'' if many else 's'} longer and go{'' if many else 'es'} in first"
        said_so = _said_so(question, is_first_slow=slow is first)
        text = f"{said_so}{longer}: {times}, {saying(question, asked.way)}."
        text = text[0].upper() + text[1:]
    return Answer(known=True, answer=text, sources=cited(question.store, "A-PHYSICS"))


def _said_so(question: Question, *, is_first_slow: bool) -> str:
    """ "Yes: " where it is asked whether one takes longer and it does, "" where it is asked which one."""
    if not hears(question, "asks yes or no", plain=f" {question.words[0]} "):
        return ""
    is_right = is_first_slow is not question.says("faster", "quicker", "cook faster", "cooks faster")
    return "Yes: " if is_right else "No: "


def dish_cut(question: Question) -> Answer | None:
    """How the foods of a dish are usually cut: "dice for a salsa", "slices for a gratin"."""
    asks = hears(question, "asks for a size") or hears(question, "asks how to cut")
    if not asks or hears(question, "not cut") or is_timed(question):
        return None
    dish, rows = dish_of(question)
    if not rows:
        return None
    foods = foods_of(question)
    of_foods = [
        (m.phrase, row) for m in foods if is_cut(question.store, m.food) and (row := cut_of(m.food, rows))
    ]
    wide = sorted((r for r in rows if _is_wide(r)), key=lambda r: "meat" in r.of)
    named = of_foods or [("meat" if "meat" in r.of else "vegetables", r) for r in wide]
    each = f"cut {by_size([(what, range_of(row)) for what, row in named])}, all alike"
    if len(named) == 1 and any(m.phrase in dish or dish in m.phrase for m in foods):
        dish, each = foods[0].phrase, range_of(named[0][1])  # the dish itself: a burger, chips
    notes = dict.fromkeys(f" {row.note}." for _, row in named if row.note)
    safe = safe_minima(question, foods) if rows[0].way not in LONG_WAYS else ""
    return Answer(
        known=True,
        answer=f"For {dish}{':' if each[0].isdigit() else ''} {each} (common practice)."
        f"{''.join(notes)}{safe}",
        sources=cited(question.store, rows[0].source),
    )


def usual_cuts(question: Question) -> Answer | None:
    """How a food is usually cut, where nothing is named that it goes with."""
    foods = foods_of(question)
    cutting = question.says("cut", "chop", "dice", "slice")
    if not cutting or not hears(question, "asks for a size") or len(foods) != 1:
        return None
    mention = foods[0]
    cuts = ", ".join(question.store.cut(cut_id).name for cut_id in mention.food.cuts[:USUAL_CUTS])
    return Answer(
        known=True,
        answer=f"{mention.phrase.capitalize()}: usually {cuts}. "
        "Name what it goes with and I compute the size.",
        sources=cited(question.store, "CP"),
    )


def _as_usual(question: Question, asked: Asked) -> str:
    """Whether the foods are done together as they are usually cut."""
    timed = _usually(question, asked)
    each = listed([f"{t.mention.phrase} ({sized(t, inches=False)}) {in_minutes(t.min)}" for t in timed])
    slowest = max(t.min for t in timed)
    if all(t.min and is_close(t.min, slowest) for t in timed):
        return f"Yes, nearly: {each}, {saying(question, asked.way)}."
    if any(one.fixed for one in asked.wanted):
        return f"No: {each}. "
    if hears(question, "may i"):
        return f"Yes, but not all of it takes as long: {each}. "
    return f"No, not as they are usually cut: {each}. "


def _usually(question: Question, asked: Asked) -> list[Timed]:
    """The foods as they are told or usually cut, and what they take."""
    timed = []
    for one in asked.wanted:
        piece = one.fixed or whole(question.store, one.mention.food)
        (taken,) = minutes(question, as_cooked(one.mention.food, asked.way), [piece], asked.way)
        noun = noun_of(question.store, one.mention.food, piece)
        timed.append(Timed(mention=one.mention, piece=piece, noun=noun, min=taken.likeliest))
    return timed


def _alike(question: Question, chosen: Sequence[Timed]) -> str:
    """ "Yes" or "No" to whether they are cut to the same size."""
    if not hears(question, "same size"):
        return ""
    sizes = [t.piece.size_mm for t in chosen]
    return "Yes, nearly. " if max(sizes) <= ALIKE * min(sizes) else "No. "


def _is_wide(row: DishCut) -> bool:
    return not {"meat", "veg"}.isdisjoint(row.of)
