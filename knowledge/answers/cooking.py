"""Answers that are computed: how long a food takes, how small to cut it to go with another.

The pieces, media and end points are those of `knowledge.physics`; here stands only which
of them a question means.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

from knowledge.answers.amounts import WHOLE_BIRD_G
from knowledge.answers.cite import cited
from knowledge.answers.conversion import MASS_G
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.question import altitude_m, quantities
from knowledge.answers.temperature import safe_line
from knowledge.errors import KnowledgeError
from knowledge.foods.model import DoneKind, Food, Role
from knowledge.foods.pieces import Pieced, piece_of
from knowledge.foods.store import Store
from knowledge.physics.model import Medium
from knowledge.text.normalise import singular

SIZES_MM = (8.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0)
_BAKED = re.compile(r" whole | jacket | baked? (?:an? |the |some |large |big )*(?:sweet )?potato")
BARE_WORDS = 8
HOW = (
    "how do i cook", "how to cook", "how do you cook", "how should i cook", "how would you cook",
    "way to cook", "how can i cook", "how best to cook", "how are they cooked", "how do i prepare",
)  # fmt: skip
CUTTING = ("cut", "size", "thick", "dice", "slice", "chunk", "piece", "cube", "thin")
MATCHING = (
    "match", "same", "as fast", "together", "alongside", "to go with", "finish with", "ready",
    "keep up", "done",
    "equal", "in time", "with", "for_",
)  # fmt: skip
OVEN_DEGC, SEALED_KPA = 200.0, 80.0
# Words of a way of cooking -> the way; in the order in which they are looked for.
WAYS = (
    ("pressure", ("pressure", "whistle", "cooker", "multicooker")),
    ("steam", ("steam",)),
    ("roast", ("roast", "oven", "bake", "baking", "sheet pan", "tray", "air fry")),
    ("braise", ("braise", "braising", "stew", "simmer", "casserole", "poach")),
    ("boil", ("boil", "parboil", "blanch")),
    ("saute", ("saute", "fry", "pan", "stir fr", "sear", "skillet", "wok")),
)
_SIZE = re.compile(r" (\d+(?:\.\d+)?|1/2|3/4|half|one|an?) ?[- ]?(mm|cm|inch|inches|in)(?= )")
_MM = {"mm": 1.0, "cm": 10.0, "inch": 25.4, "inches": 25.4, "in": 25.4}
_OVEN = re.compile(r" (\d{3}) ?(?:°|degrees? )?(c|f|celsius|fahrenheit)? ")
_SAYING = {
    "roast": "roasted at {:.0f} °C / {:.0f} °F", "boil": "boiled", "steam": "steamed",
    "braise": "simmered under a lid",
    "saute": "in a medium-hot pan", "pressure": "under pressure (80 kPa), counted from locking the lid",
}  # fmt: skip


def cook_time(question: Question) -> Answer | None:
    """How long a food takes in a way of cooking, at its usual sizes or the one named."""
    if not question.says(
        *HOW,
        "how long",
        "cook time",
        "cooking time",
        "how many min",
        "minutes",
        "time_",
        "how much time",
        "roasting time",
        "oven time",
    ):
        return None
    return _timed(question)


def _timed(question: Question) -> Answer | None:
    mention = next((m for m in question.mentions if _cooks(question.store, m.food)), None)
    if mention is None:
        return None
    food, way = _as_bought(question, mention.food), _way(question)
    ways = (way,) if way else _usual_ways(question.store, food)
    size = _size_mm(question)
    said = []
    for one in ways:
        pieces = _pieces(question.store, food, size, whole=_BAKED.search(question.plain) is not None)
        times = _minutes(question, food, pieces, one)
        done = [
            f"{_shown(p)} {lo:.0f}-{hi:.0f} min" for p, (lo, _, hi) in zip(pieces, times, strict=True) if hi
        ]
        if done:
            said.append(f"{_saying(question, one)}: {'; '.join(done)}")
    if not said:
        return None
    safe = safe_line(food, question)
    text = f"{mention.phrase.capitalize()}, {'. '.join(said)}. Computed for ordinary pieces; check early"
    return Answer(
        known=True,
        answer=f"{text}{f', {safe}' if safe else ''}.",
        sources=cited(question.store, "A-PHYSICS"),
    )


def bare_cook_time(question: Question) -> Answer | None:
    """ "Turnips roasting 2 cm dice": a food, a way and a size with no other question in it."""
    if len(question.words) > BARE_WORDS or not _way(question) or _size_mm(question) is None:
        return None
    return _timed(question)


def cut_to_match(question: Question) -> Answer | None:
    """The size at which one food is done together with another."""
    foods = [m for m in question.mentions if _cooks(question.store, m.food)]
    asks = question.says("how small", "how big", "how thick", "what size", "which size", "how large",
                         "how thin", "how should i cut", "cut small", "size to cut", "size should",
                         "cut size", "how fine",
                         "bigger or smaller", "smaller or bigger", "larger or smaller", "thicker or thinner",
                         "same size", "finish together", "done together", "ready together", "even size",
                         "cut to cook", "cut to go", "cut to match", "cut for")  # fmt: skip
    pair = question.says(*CUTTING) and question.says(*MATCHING)
    timed = question.says("how long", "minutes", "when")
    if not foods or not (asks or (pair and not timed and len({m.food.id for m in foods}) > 1)):
        return None
    if len({m.food.id for m in foods}) < 2:
        return _usual_cuts(question, foods[0]) if question.says("cut", "chop", "dice", "slice") else None
    cut, other = foods[0], foods[1]
    wet = any(question.store.doneness(m.food.doneness).kind is DoneKind.HYDRATE for m in (cut, other))
    if wet and _way(question) == "roast":
        return None  # dry grain and pulses do not roast done
    way = _way(question) or (
        "boil" if wet or question.says("pot_", "soup", "stew", "curry", "broth") else "roast"
    )
    fixed = _as_said(question, other.food)
    ((_, target_min, _),) = _minutes(question, other.food, [fixed], way)
    tried = [_at_size(question.store, cut.food, mm) for mm in SIZES_MM if mm <= (cut.food.whole_mm or 60.0)]
    if not tried:  # thin as it is, like the wall of a pepper: no cut makes it slower
        ((_, minutes, _),) = _minutes(question, cut.food, [_whole(question.store, cut.food)], way)
        usual = question.store.cut(cut.food.cuts[0]).name
        text = f"{cut.phrase.capitalize()} are thin: any cut ({usual}) takes {minutes:.0f} min, while "
        text += f"{other.phrase} ({_shown(fixed)}) takes {target_min:.0f} min, {_saying(question, way)}."
        return Answer(known=True, answer=text, sources=cited(question.store, "A-PHYSICS"))
    times = _minutes(question, cut.food, tried, way)
    fits = [
        (abs(m - target_min), p, m) for p, (_, m, _) in zip(tried, times, strict=True) if m and target_min
    ]
    if not fits:
        return None
    off, piece, minutes = min(fits, key=lambda entry: (round(entry[0], 1), -entry[1].size_mm))
    text = (
        f"Cut {cut.phrase} to about {piece.size_mm:.0f} mm ({piece.size_mm / 25.4:.1f} in): "
        f"{minutes:.0f} min, while {other.phrase} ({_shown(fixed)}) takes {target_min:.0f} min, "
        f"{_saying(question, way)}."
    )
    if off > max(3.0, 0.15 * target_min):
        if minutes > target_min:
            text += f" Even so it is slower: give {cut.phrase} {minutes - target_min:.0f} min start."
        else:
            text += f" It is quicker even so: add it {target_min - minutes:.0f} min later."
    return Answer(known=True, answer=text, sources=cited(question.store, "A-PHYSICS"))


def _usual_cuts(question: Question, mention: Mention) -> Answer:
    cuts = [question.store.cut(cut_id).name for cut_id in mention.food.cuts[:3]]
    return Answer(
        known=True,
        answer=f"{mention.phrase.capitalize()}: usually {', '.join(cuts)}. "
        "Name what it goes with and I compute the size.",
        sources=cited(question.store, "CP"),
    )


def _cooks(store: Store, food: Food) -> bool:
    return food.role is Role.COOK and food.doneness not in ("", "none") and bool(food.cuts)


def _way(question: Question) -> str:
    named = " ".join(f" {m.phrase} " for m in question.mentions)
    for way, words in WAYS:
        if any(f" {word}" in question.plain and f" {word}" not in named for word in words):
            return way
    return ""


def _as_bought(question: Question, food: Food) -> Food:
    """The whole bird where a weight of a kilogram and more is said of "a chicken"."""
    heavy = any(q.value * MASS_G.get(q.unit, 0) >= WHOLE_BIRD_G for q in quantities(question))
    whole = question.store.named(f"whole {food.name}") if heavy else None
    return whole if whole is not None and _cooks(question.store, whole) else food


def _usual_ways(store: Store, food: Food) -> tuple[str, ...]:
    match store.doneness(food.doneness).kind:
        case DoneKind.HYDRATE:
            return ("boil",)
        case DoneKind.COLLAGEN:
            return ("braise", "pressure")
        case DoneKind.SOFTEN:
            return ("roast", "boil")
        case DoneKind.CORE:
            return ("roast", "saute")
        case _:
            return ("saute", "steam")


def _size_mm(question: Question) -> float | None:
    found = _SIZE.search(question.plain)
    if not found:
        return None
    number = {"1/2": 0.5, "3/4": 0.75, "half": 0.5, "one": 1.0, "a": 1.0, "an": 1.0}.get(found[1])
    size = (float(found[1]) if number is None else number) * _MM[found[2]]
    return size if 1.0 <= size <= 150.0 else None


def _oven_degC(question: Question) -> float:
    found = _OVEN.search(question.plain)
    if not found:
        return OVEN_DEGC
    value = float(found[1])
    degC = (value - 32) / 1.8 if (found[2] or "")[:1] == "f" or (not found[2] and value > 260) else value
    return degC if 100.0 <= degC <= question.kitchen.oven_max_degC else OVEN_DEGC


def _whole(store: Store, food: Food) -> Pieced:
    return piece_of(food, store.cut(food.cuts[0]))


def _as_said(question: Question, food: Food) -> Pieced:
    """The piece by the cut named in the question ("wedges", "whole"), else the usual one."""
    cuts = [question.store.cut(cut_id) for cut_id in food.cuts]
    named = (
        cut
        for cut in cuts
        if {singular(w) for w in re.findall(r"[a-z]+", cut.name)} & set(question.words) - {"mm"}
    )
    return piece_of(food, next(named, cuts[0]))


def _at_size(store: Store, food: Food, size_mm: float) -> Pieced:
    usual = _whole(store, food)
    meat = store.doneness(food.doneness).kind in (DoneKind.CORE, DoneKind.COLLAGEN)
    if meat or usual.shape in ("grain", "leaf", "floret"):
        return Pieced(usual.shape, size_mm, usual.ratio_1, usual.ratio_2)
    return Pieced("brick", size_mm, 1.0, 1.0)


def _pieces(store: Store, food: Food, size_mm: float | None, *, whole: bool) -> list[Pieced]:
    if size_mm is not None:
        return [_at_size(store, food, size_mm)]
    if whole:
        return [piece_of(food, store.cut("whole"))]
    made = [piece_of(food, store.cut(cut_id)) for cut_id in food.cuts[:3]]
    return list({(p.shape, round(p.size_mm)): p for p in made}.values())


def _minutes(
    question: Question, food: Food, pieces: Sequence[Pieced], way: str
) -> list[tuple[float, float, float]]:
    """Earliest, likeliest and latest minutes of each piece; zeros where there is no answer."""
    from knowledge import physics  # numpy only when a time is asked for

    medium = _medium(question, food, way)
    doneness = question.store.doneness(food.doneness)
    state = "frozen" if question.says("frozen") else None
    try:
        cases = [
            physics.Case(
                piece=physics.piece(
                    food, size_mm=p.size_mm, shape=p.shape, ratio_1=p.ratio_1, ratio_2=p.ratio_2, state=state
                ),
                phases=(physics.Phase(medium=medium, duration_s=None),),
                goal=physics.goal(food, doneness, method=way, state=state),
            )
            for p in pieces
        ]
        outcomes = physics.cook(cases)
    except KnowledgeError:
        return [(0.0, 0.0, 0.0)] * len(pieces)
    return [((o.lo_s or 0) / 60, (o.done_s or 0) / 60, (o.hi_s or 0) / 60) for o in outcomes]


def _medium(question: Question, food: Food, way: str) -> Medium:
    from knowledge.physics import media

    height_m = altitude_m(question)
    kind = question.store.doneness(food.doneness).kind
    surface = "meat" if kind in (DoneKind.CORE, DoneKind.COLLAGEN) else "cut"
    match way:
        case "roast":
            return media.oven(
                _oven_degC(question), fan=question.kitchen.fan_oven, surface=surface, altitude_m=height_m
            )
        case "steam":
            return media.steaming(height_m)
        case "braise":
            return media.simmering(height_m)
        case "pressure":
            return media.pressure(SEALED_KPA, height_m)
        case "saute":
            return media.open_pan(180.0, surface=surface, altitude_m=height_m)
        case _:
            return media.boiling(height_m)


def _saying(question: Question, way: str) -> str:
    degC = _oven_degC(question)
    return _SAYING[way].format(degC, degC * 1.8 + 32)


def _shown(piece: Pieced) -> str:
    if piece.shape in ("grain", "leaf"):
        return "as it is"
    return f"{piece.size_mm:.0f} mm"
