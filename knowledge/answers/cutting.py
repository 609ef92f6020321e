"""How small to cut foods: so that they are done together, and as a dish asks for it."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from knowledge.answers.cite import cited
from knowledge.answers.dish_cuts import DishCut, cut_of, dish_of
from knowledge.answers.heard import hears, pattern
from knowledge.answers.heating import minutes
from knowledge.answers.minimums import safe_line
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.numbers import NUMBER, value_of
from knowledge.answers.sizes import at_size, said_of, whole
from knowledge.answers.together import Timed, Wanted, as_cooked, is_close, is_cut, matched, noun_of
from knowledge.answers.ways import cooks, saying, way_of
from knowledge.answers.words import meanings_of
from knowledge.foods.model import DoneKind, Food
from knowledge.foods.pieces import Pieced, piece_of
from knowledge.planner.words import listed
from knowledge.units import size

USUAL_CUTS = 3  # that are named
MOST_FOODS = 4  # that one answer cuts
LONG_WAYS = ("braise", "pressure")  # in which meat is long past its safe temperature when it is tender
ALIKE = 1.25  # sizes that differ by less are the same to a cook
LEAST_MIN, MOST_MIN = 2.0, 300.0  # of a time that is said
AS_IS = "as they are"
_DIVIDED = {
    "halved": "halves",
    "quartered": "quarters",
    "cut in eighths": "eighths",
    "flattened": "flat pieces",
}
_MINUTES = re.compile(rf" {NUMBER} ?(min|mins|minute|minutes|hour|hours|hr|hrs|h)(?= )")


@dataclass(frozen=True, slots=True, kw_only=True)
class Asked:
    """A question about several foods that are cooked together."""

    wanted: tuple[Wanted, ...]
    way: str
    in_min: float | None
    dish: tuple[DishCut, ...]


def cut_to_match(question: Question) -> Answer | None:
    """The sizes at which several foods are done together, or whether they are so as usually cut."""
    is_verdict = _asks_if_together(question)
    if not (is_verdict or _asks_for_a_size(question)):
        return None
    foods = _foods(question)
    asked = _asked(question, foods) if foods else None
    if asked is None or (len(foods) < 2 and asked.in_min is None):
        return None
    chosen = matched(question, asked.wanted, asked.way, in_min=asked.in_min)
    if chosen is None:
        return None
    verdict = _as_usual(question, asked) if is_verdict and not hears(question, "how small") else ""
    if verdict.startswith("Yes, nearly"):
        told = verdict
    elif verdict and not _cut(asked, chosen):
        told = f"{verdict.strip()}{_starts(asked, chosen)}"
    else:
        told = verdict + _alike(question, chosen) + _told(question, asked, chosen)
    safe = [
        f" {t.mention.phrase.capitalize()}: {line}."
        for t in chosen
        if (line := safe_line(t.mention.food, question)) and asked.way not in LONG_WAYS
    ]
    return Answer(
        known=True,
        answer=told + "".join(safe[:2]),
        sources=cited(question.store, *(("A-PHYSICS", "CP") if asked.dish else ("A-PHYSICS",))),
    )


def dish_cut(question: Question) -> Answer | None:
    """How the foods of a dish are usually cut: "dice for a salsa", "slices for a gratin"."""
    asks = hears(question, "asks for a size") or hears(question, "asks how to cut")
    if not asks or hears(question, "not cut") or _is_timed(question):
        return None
    dish, rows = dish_of(question)
    if not rows:
        return None
    foods = _foods(question)
    of_foods = [
        (m.phrase, row) for m in foods if is_cut(question.store, m.food) and (row := cut_of(m.food, rows))
    ]
    wide = sorted((r for r in rows if _is_wide(r)), key=lambda r: "meat" in r.of)
    named = of_foods or [("meat" if "meat" in r.of else "vegetables", r) for r in wide]
    each = _by_size([(what, _range(row)) for what, row in named])
    dish = rows[0].dish if any(m.phrase in dish for m in foods) else dish
    notes = dict.fromkeys(f" {row.note}." for _, row in named if row.note)
    safe = [f" {m.phrase.capitalize()}: {s}." for m in foods if (s := safe_line(m.food, question))]
    return Answer(
        known=True,
        answer=f"For {dish} cut {each}, all alike (common practice)."
        f"{''.join(notes)}{''.join(safe[:1]) if rows[0].way not in LONG_WAYS else ''}",
        sources=cited(question.store, rows[0].source),
    )


def usual_cuts(question: Question) -> Answer | None:
    """How a food is usually cut, where nothing is named that it goes with."""
    foods = _foods(question)
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


# Reading.


def _foods(question: Question) -> list[Mention]:
    """What is cooked of the foods named, each once; of a dish that is a food too what goes into it."""
    dish, _ = dish_of(question)
    named = {m.food.id: m for m in reversed(question.mentions) if cooks(question.store, m.food)}
    parts = {
        food_id: m
        for food_id, m in named.items()
        if not (dish and dish in m.phrase) and not _is_of_the_one_before(question, m)
    }
    named = parts or named
    return sorted(named.values(), key=lambda m: m.start)[:MOST_FOODS]


def _is_of_the_one_before(question: Question, mention: Mention) -> bool:
    """True for the "wedges" of "sweet potato wedges": a word for pieces right behind another food."""
    nouns = {cut["name"].split()[-1] for cut in question.store.table("cuts")}
    behind = any(other.end == mention.start for other in question.mentions)
    return behind and mention.phrase in nouns


def _asks_for_a_size(question: Question) -> bool:
    """True if a size is asked for, or something is cut to go with something else and no time is asked for."""
    if hears(question, "not cut"):
        return False
    if hears(question, "asks for a size"):
        return True
    return hears(question, "cutting") and hears(question, "done together") and not _is_timed(question)


def _asks_if_together(question: Question) -> bool:
    """ "Will they cook at the same time?", "can I roast them together?"."""
    if hears(question, "not of the fire"):
        return False
    on_fire = bool(way_of(question)) or question.says("cook")
    return hears(question, "asks if together") or (question.says("together_") and on_fire)


def _is_timed(question: Question) -> bool:
    return question.says("how long", "how many minutes", "what minutes", "when_")


def _asked(question: Question, foods: Sequence[Mention]) -> Asked | None:
    _, dish = dish_of(question)
    way = _way(question, foods, dish)
    if way is None:
        return None
    rows = dish if dish and all(cut_of(m.food, dish) for m in foods) else ()
    aside = _aside(question, foods)
    wanted = tuple(
        Wanted(
            mention=mention,
            fixed=_fixed(question, mention),
            dish=cut_of(mention.food, rows),
            is_aside=mention in aside,
            is_to_cut=mention not in aside,
            is_sliced=mention not in aside and question.says("slice"),
        )
        for mention in foods
    )
    return Asked(wanted=wanted, way=way, in_min=_said_min(question), dish=rows)


def _way(question: Question, foods: Sequence[Mention], dish: Sequence[DishCut]) -> str | None:
    """How they are cooked: as said, as the dish is, else as mostly; None where they can't be."""
    kinds = {question.store.doneness(m.food.doneness).kind for m in foods}
    wet = DoneKind.HYDRATE in kinds
    said = "grill" if hears(question, "on skewers") else way_of(question)
    if said:
        return None if wet and said in ("roast", "grill") else said
    if dish:
        return dish[0].way or None
    if wet or any(_is_boiled(question, m.food) for m in foods):
        return "boil"
    if DoneKind.COLLAGEN in kinds:
        return "braise"
    alone = not any(m.food.animal for m in foods)
    return "boil" if alone and any(_is_boiled(question, m.food, "alone") for m in foods) else "roast"


def _is_boiled(question: Question, food: Food, when: str = "") -> bool:
    """True for what is mostly boiled, whatever it goes with or ("alone") where no meat is by it."""
    boiled = meanings_of(question.store, "boiled")
    return any(boiled.get(kind) == when for kind in (food.id, food.doneness))


def _aside(question: Question, foods: Sequence[Mention]) -> tuple[Mention, ...]:
    """What the others are to go with: "carrots to go with salmon", "with salmon, how big the carrots"."""
    words = question.plain.split()
    links = pattern(question.store, r"^(?:{goes beside}) ")
    for place, mention in enumerate(foods):
        before = words[foods[place - 1].end if place else 0 : mention.start]
        linked = any(links.match(f"{' '.join(before[at:])} ") for at in range(len(before)))
        if linked:
            return tuple(foods[place:]) if place else (mention,)
    return ()


def _fixed(question: Question, mention: Mention) -> Pieced | None:
    """The piece that is told: "2 cm potatoes", "julienne carrots", "whole mushrooms"."""
    food = mention.food
    said_mm = said_of(question, food)
    if said_mm is not None:
        return at_size(question.store, food, said_mm)
    cuts = meanings_of(question.store, "cut named")
    words = question.plain.split()
    near = (*words[max(mention.start - 2, 0) : mention.start], *words[mention.end : mention.end + 4])
    named = next((cuts[word] for word in near if word in cuts), None)
    others = [m for m in question.mentions if m is not mention and abs(m.start - mention.end) <= 1]
    return piece_of(food, question.store.cut(named)) if named and not others else None


def _said_min(question: Question) -> float | None:
    """The time that is given for all of it [min]."""
    found = _MINUTES.search(question.plain)
    if found is None:
        return None
    said = value_of(found[1]) * (60.0 if found[2].startswith("h") else 1.0)
    return said if LEAST_MIN <= said <= MOST_MIN else None


# Telling.


def _as_usual(question: Question, asked: Asked) -> str:
    """Whether the foods are done together as they are usually cut."""
    timed = []
    for one in asked.wanted:
        piece = one.fixed or whole(question.store, one.mention.food)
        (taken,) = minutes(question, as_cooked(one.mention.food, asked.way), [piece], asked.way)
        noun = noun_of(question.store, one.mention.food, piece)
        timed.append(Timed(mention=one.mention, piece=piece, noun=noun, min=taken.likeliest))
    each = listed([f"{t.mention.phrase} ({_sized(t, inches=False)}) {_minutes(t.min)}" for t in timed])
    slowest = max(t.min for t in timed)
    if all(t.min and is_close(t.min, slowest) for t in timed):
        return f"Yes, nearly: {each}, {saying(question, asked.way)}."
    if hears(question, "may i"):
        return f"Yes, but not all of it takes as long: {each}. "
    return f"No, not as they are usually cut: {each}. "


def _alike(question: Question, chosen: Sequence[Timed]) -> str:
    """ "Yes" or "No" to whether they are cut to the same size."""
    if not hears(question, "same size"):
        return ""
    sizes = [t.piece.size_mm for t in chosen]
    return "Yes, nearly. " if max(sizes) <= ALIKE * min(sizes) else "No. "


def _told(question: Question, asked: Asked, chosen: Sequence[Timed]) -> str:
    """The sizes, the time, and what goes in first where no cut makes them ready together."""
    cut = _cut(asked, chosen)
    left = [t for t in chosen if t not in cut]
    slowest = max(t.min for t in chosen)
    how = saying(question, asked.way)
    each = _by_size([(_uncut(t), _sized(t)) for t in cut])
    beside = listed([f"{t.mention.phrase} ({_sized(t, inches=False)})" for t in left])
    together = asked.in_min is None and all(is_close(t.min, slowest) for t in chosen)
    if together:
        rest = f", ready with {beside}" if cut and left else f"{beside}: ready together" if left else ""
        head = f"Cut {each}" if cut else ""
        return f"{head}{rest}: {_minutes(slowest)}, {how}."
    times = listed([f"{t.mention.phrase} {_minutes(t.min)}" for t in chosen])
    head = f"Cut {each}{', with ' + beside if left else ''}" if cut else f"Leave {beside}"
    return f"{head}: {times}, {how}.{_starts(asked, chosen)}"


def _by_size(sized: Sequence[tuple[str, str]]) -> str:
    """ "Leeks into 10 mm coins", what has the same size named together."""
    sizes = dict.fromkeys(said for _, said in sized)
    return listed([f"{listed([what for what, of in sized if of == said])} into {said}" for said in sizes])


def _uncut(timed: Timed) -> str:
    """The food without the word for its pieces: "cauliflower" of "cauliflower florets"."""
    return timed.mention.phrase.removesuffix(f" {timed.noun}").removesuffix(f" {timed.noun.rstrip('s')}")


def _starts(asked: Asked, chosen: Sequence[Timed]) -> str:
    """What goes in when, so that all is ready at the same moment."""
    slow = max(chosen, key=lambda t: t.min)
    if asked.in_min is None:
        later = sorted((t for t in chosen if not is_close(t.min, slow.min)), key=lambda t: -t.min)
        first = listed([t.mention.phrase for t in chosen if t not in later])
        steps = listed([f"{t.mention.phrase} {_minutes(slow.min - t.min)} later" for t in later])
        return f" Begin with {first}; add {steps}." if steps else ""
    if slow.min > asked.in_min and not is_close(slow.min, asked.in_min):
        short = f"{_minutes(asked.in_min)} is too short for {slow.mention.phrase}"
        return f" {short}: give it {_minutes(slow.min)}."
    early = sorted((t for t in chosen if not is_close(t.min, asked.in_min)), key=lambda t: -t.min)
    steps = listed([f"{t.mention.phrase} after {_minutes(asked.in_min - t.min)}" for t in early])
    return f" To be ready at {_minutes(asked.in_min)}, put in {steps}." if steps else ""


def _cut(asked: Asked, chosen: Sequence[Timed]) -> list[Timed]:
    """What is cut as we say: not what stays as it is or whose size was told."""
    return [t for t in chosen if t.noun not in ("", AS_IS) and not _is_told(asked, t)]


def _is_told(asked: Asked, timed: Timed) -> bool:
    return any(one.mention is timed.mention and one.fixed is not None for one in asked.wanted)


def _sized(timed: Timed, *, inches: bool = True) -> str:
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


def _range(row: DishCut) -> str:
    """ "2-3 mm (1/8 inch) slices"."""
    if row.cut == AS_IS:
        return row.cut
    low, high = size(row.from_mm, "us"), size(row.to_mm, "us")
    inches = high if low == high else f"{low.removesuffix(' inch')}-{high}"
    mm = f"{row.from_mm:.0f}" if row.from_mm == row.to_mm else f"{row.from_mm:.0f}-{row.to_mm:.0f}"
    return f"{mm} mm ({inches}) {row.cut}"


def _is_wide(row: DishCut) -> bool:
    return not {"meat", "veg"}.isdisjoint(row.of)


def _minutes(minutes_taken: float) -> str:
    return f"{minutes_taken:.0f} min"
