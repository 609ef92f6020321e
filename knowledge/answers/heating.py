"""Which piece, which heat and which end point a question means, and how long that takes.

The pieces, media and end points are those of `knowledge.physics`.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from knowledge.answers.altitude import altitude_m
from knowledge.answers.measures import MASS_G, quantities
from knowledge.answers.model import Question
from knowledge.answers.ovens import FAN_K
from knowledge.errors import KnowledgeError
from knowledge.foods.model import DoneKind, Food, Role
from knowledge.foods.pieces import Pieced, piece_of
from knowledge.foods.store import Store
from knowledge.physics.model import Medium
from knowledge.text.normalise import singular
from knowledge.units import is_met

OVEN_DEGC, JOINT_DEGC, SLOW_DEGC, SLOW_MAX_DEGC = 200.0, 190.0, 150.0, 170.0
SLOW_MAX_DEGF_BARE = 220.0  # a bare number beyond is Fahrenheit where a joint is roasted low
PAN_DEGC, SEALED_KPA, COME_UP_S = 200.0, 80.0, 300.0
FSIS_OVEN_DEGC = 162.8  # USDA FSIS: 325 °F, the least for meat and poultry
DIAL_K = 3.0  # dials and charts call that 160 °C
LARGE_BIRD_MM = 110.0  # from about 2 kg a bird fills its tin and shades itself, as a joint does
PAN_MAX_MM = 45.0  # thicker pieces do not get done in an open pan
CRISP = frozenset({"medium_veg", "quick_veg"})  # wanted tender-crisp as often as tender, in water or steam
# Words of a way of cooking -> the way; in the order in which they are looked for.
WAYS = (
    ("pressure", ("pressure", "whistle", "cooker", "multicooker")),
    ("steam", ("steam",)),
    ("roast", ("roast", "oven", "bake", "baking", "sheet pan", "tray", "airfryer")),
    ("braise", ("braise", "braising", "stew", "simmer", "casserole", "poach")),
    ("boil", ("boil", "parboil", "blanch")),
    ("saute", ("saute", "fry", "pan", "stir fr", "sear", "skillet", "wok", "griddle")),
)
_ELSEWHERE = (
    "ricecooker",
    "slow cook",
    "slow-cook",
    "crock",
    "sous vide",
    "water bath",
    "microwave",
    "deep f",
)
_SIZE = re.compile(r" (\d+(?:\.\d+)?|1/2|3/4|half|one|an?) ?[- ]?(mm|cm|inch|inches|in)(?= )")
_CUT_AT = r"(?:cut|diced|sliced|chopped|cubes?|chunks?|pieces?|slices?|dice|at|to|into|in|is|are|of|about)"
_MM = {"mm": 1.0, "cm": 10.0, "inch": 25.4, "inches": 25.4, "in": 25.4}
_OVEN = re.compile(r" (\d{3}) ?(?:°|degrees? )?(c|f|celsius|fahrenheit)?(?: fan)? ")
_NOT_GRAMS = re.compile(r" \d{3} ?(?:g|gr|grams?|ml|kcal|m|metres?|feet|ft)(?= )")
_UNSOAKED = (
    "unsoaked",
    "without soak",
    "no soak",
    "not soaked",
    "from dry",
    "didn t soak",
    "haven t soaked",
    "unsoak",
)
_CUT_UP = ("steak", "strip", "cube", "chunk", "dice", "diced", "slice", "piece", "chop", "stew")
_SAYING = {
    "roast": "roasted at {:.0f} °C / {:.0f} °F", "boil": "boiled", "steam": "steamed",
    "braise": "simmered under a lid",
    "saute": "in a medium-hot pan",
    "pressure": "under pressure (80 kPa), counted from full pressure",
}  # fmt: skip


def cooks(store: Store, food: Food) -> bool:
    """True for a food that has an end point of cooking and a cut."""
    return food.role is Role.COOK and food.doneness not in ("", "none") and bool(food.cuts)


def way_of(question: Question) -> str:
    """The way of cooking that the question names, "" for none of ours."""
    named = " ".join(f" {m.phrase} " for m in question.mentions)
    for way, words in WAYS:
        if any(f" {word}" in question.plain and f" {word}" not in named for word in words):
            return way
    meat = any(food.animal and cooks(question.store, food) for food in question.foods)
    return "roast" if meat and oven_said(question) else ""  # "brisket at 250F": no core is so hot


def oven_said(question: Question) -> bool:
    """True where a number of three digits stands by "at", or with its scale, that only an oven has."""
    if question.says("oil_", "fat_", "fry", "deep f"):
        return False  # what is fried is as hot
    found = _OVEN.search(_NOT_GRAMS.sub(" ", question.plain))
    by_at = found is not None and question.plain[: found.start()].endswith(" at")
    return (
        found is not None and bool(by_at or found[2]) and float(found[1]) >= (200 if found[2] != "c" else 110)
    )


def is_elsewhere(question: Question) -> bool:
    """True if it is to be cooked in something that we compute nothing for."""
    return question.says(*_ELSEWHERE) and not question.says("oven", "slow cooked")


def weight_g(question: Question) -> float | None:
    """The first weight said in the question, with what stands right beside it ("2 lb 4 oz") [g]."""
    said = [q for q in quantities(question) if q.unit in MASS_G]
    if not said:
        return None
    first, rest = said[0], said[1:2]
    beside = [q for q in rest if question.plain[first.end : q.start].strip() in ("", "and")]
    return sum(q.value * MASS_G[q.unit] for q in (first, *beside))


def as_bought(question: Question, food: Food, whole_g: float) -> Food:
    """The whole bird where a weight of so much and more is said of "a chicken"."""
    heavy = (weight_g(question) or 0.0) >= whole_g
    bird = question.store.named(f"whole {food.name}") if heavy else None
    return bird if bird is not None and cooks(question.store, bird) else food


def usual_ways(store: Store, food: Food) -> tuple[str, ...]:
    """How a food is mostly cooked."""
    if food.whole_shape == "bird":
        return ("roast",)
    match store.doneness(food.doneness).kind:
        case DoneKind.HYDRATE:
            return ("boil",)
        case DoneKind.COLLAGEN:
            return ("braise", "pressure")
        case DoneKind.SOFTEN:
            return ("roast", "boil")
        case DoneKind.CORE:
            return ("roast",) if food.whole_shape == "joint" else ("roast", "saute")
        case _:
            return ("saute", "steam")


def is_roast(question: Question, food: Food, way: str) -> bool:
    """True for a whole bird or joint in the oven, which is asked for by weight."""
    return (
        way == "roast"
        and food.whole_shape in ("bird", "joint")
        and "whole" in food.cuts
        and not question.says(*_CUT_UP)
    )


def is_slow(question: Question, food: Food, way: str) -> bool:
    """True for tough meat in the oven: low, until it is tender."""
    return way == "roast" and question.store.doneness(food.doneness).kind is DoneKind.COLLAGEN


def size_mm(question: Question) -> float | None:
    """The size said in the question."""
    found = _SIZE.search(question.plain)
    return _mm(found) if found else None


def _mm(found: re.Match[str]) -> float | None:
    """The size that was found [mm], None for one that no piece has."""
    number = {"1/2": 0.5, "3/4": 0.75, "half": 0.5, "one": 1.0, "a": 1.0, "an": 1.0}.get(found[1])
    size = (float(found[1]) if number is None else number) * _MM[found[2]]
    return size if 1.0 <= size <= 150.0 else None


def oven_degC(question: Question, food: Food | None = None) -> float:
    """The oven's setting: as said, else the usual one for the food, lower with a fan."""
    found = _OVEN.search(_NOT_GRAMS.sub(" ", question.plain))
    slow = food is not None and is_slow(question, food, "roast")
    joint = food is not None and is_roast(question, food, "roast")
    usual = SLOW_DEGC if slow else JOINT_DEGC if joint else OVEN_DEGC
    usual -= FAN_K if has_fan(question) and not slow else 0.0
    if not found:
        return usual
    value = float(found[1])
    slow_degF = slow and value > SLOW_MAX_DEGF_BARE  # "pork shoulder at 225" is no oven at 225 °C
    fahrenheit = (found[2] or "")[:1] == "f" or (not found[2] and (value > 260 or slow_degF))
    degC = (value - 32) / 1.8 if fahrenheit else value
    if slow and degC > SLOW_MAX_DEGC:
        return usual
    return degC if 100.0 <= degC <= question.kitchen.oven_max_degC else usual


def has_fan(question: Question) -> bool:
    """True if a fan oven is meant."""
    return question.kitchen.fan_oven or question.says("fan_", "convection", "fan oven")


def is_fsis_oven(degC: float) -> bool:
    """True for an oven as hot as USDA FSIS asks for meat and poultry, by what a dial can show."""
    return is_met(degC + DIAL_K, FSIS_OVEN_DEGC)


def whole(store: Store, food: Food) -> Pieced:
    """The piece by the food's usual cut."""
    return piece_of(food, store.cut(food.cuts[0]))


def as_said(question: Question, food: Food) -> Pieced:
    """The piece by the size or the cut said of it ("2 cm potatoes", "wedges"), else the usual one."""
    own = next((m.phrase for m in question.mentions if m.food.id == food.id), food.name)
    for found in _SIZE.finditer(question.plain):
        before = re.match(rf" (?:\w+ )?{re.escape(own)} ", question.plain[found.end() :])
        after = re.search(rf" {re.escape(own)} (?:{_CUT_AT} )*$", f"{question.plain[: found.start()]} ")
        if (before or after) and (said_mm := _mm(found)):
            return at_size(question.store, food, said_mm)
    cuts = [question.store.cut(cut_id) for cut_id in food.cuts]
    named = (
        cut
        for cut in cuts
        if {singular(w) for w in re.findall(r"[a-z]+", cut.name)} & set(question.words) - {"mm"}
    )
    return piece_of(food, next(named, cuts[0]))


def at_size(store: Store, food: Food, size_mm: float) -> Pieced:
    """The piece of a size: cubes of a vegetable, meat in the shape of its cut."""
    usual = whole(store, food)
    meat = store.doneness(food.doneness).kind in (DoneKind.CORE, DoneKind.COLLAGEN)
    if meat or usual.shape in ("grain", "leaf", "floret"):
        return Pieced(usual.shape, size_mm, usual.ratio_1, usual.ratio_2)
    return Pieced("brick", size_mm, 1.0, 1.0)


def by_weight(food: Food, grams: float | None, store: Store) -> Pieced:
    """A whole joint or bird as heavy as is said: twice the weight is a quarter thicker."""
    piece = piece_of(food, store.cut("whole"))
    usual_g = piece_weight_g(food)
    if not grams or not usual_g:
        return piece
    return replace(piece, size_mm=piece.size_mm * (grams / usual_g) ** (1.0 / 3.0))


def piece_weight_g(food: Food) -> float | None:
    """What the piece as bought weighs, of no special size [g]."""
    return next((p.grams for p in food.portions if p.unit == "piece" and not p.size), None)


def shown(piece: Pieced, *, minced: bool = False) -> str:
    """The size of a piece in words; what is shaped of mince says its shape."""
    if piece.shape in ("grain", "leaf"):
        return "as it is"
    shape = {"sphere": " balls", "disk": " patties"}.get(piece.shape, "") if minced else ""
    return f"{piece.size_mm:.0f} mm{shape}"


def saying(question: Question, way: str, food: Food | None = None) -> str:
    """The way of cooking in words, with its setting."""
    degC = oven_degC(question, food)
    text = _SAYING[way].format(degC, round((degC * 1.8 + 32) / 5) * 5)
    if way == "roast" and has_fan(question):
        text += " with a fan"
    height_m = altitude_m(question)
    return f"{text} at {height_m:.0f} m" if height_m >= 300 and way != "roast" else text


def state_of(question: Question, food: Food) -> str | None:
    """ "frozen", "dried" (a pulse that was not soaked) or None for the usual state."""
    if question.says("frozen"):
        return "frozen"
    pulse = food.doneness in ("bean", "chickpea")
    return "dried" if pulse and question.says(*_UNSOAKED) else None


def minutes(
    question: Question, food: Food, pieces: Sequence[Pieced], way: str, *, texture: str = "tender"
) -> list[tuple[float, float, float]]:
    """Earliest, likeliest and latest minutes of each piece; zeros where there is no answer.

    Under pressure they count from full pressure. Tough meat is wanted soft.
    """
    from knowledge import physics  # numpy only when a time is asked for

    doneness, state = question.store.doneness(food.doneness), state_of(question, food)
    tough = doneness.kind is DoneKind.COLLAGEN  # wanted softer than "a fork goes in", as in a plan
    wanted = physics.Texture.SOFT if tough else physics.Texture(texture)
    try:
        cases = [
            physics.Case(
                piece=physics.piece(
                    food, size_mm=p.size_mm, shape=p.shape, ratio_1=p.ratio_1, ratio_2=p.ratio_2, state=state
                ),
                phases=(physics.Phase(medium=_medium(question, food, p, way), duration_s=None),),
                goal=physics.goal(food, doneness, method=way, state=state, texture=wanted),
            )
            for p in pieces
        ]
        outcomes = physics.cook(cases)
    except KnowledgeError:
        return [(0.0, 0.0, 0.0)] * len(pieces)
    before_s = COME_UP_S if way == "pressure" else 0.0
    return [
        tuple(max((s - before_s) / 60, 1.0) if s else 0.0 for s in (o.lo_s, o.done_s, o.hi_s))  # type: ignore[misc]
        for o in outcomes
    ]


def _medium(question: Question, food: Food, piece: Pieced, way: str) -> Medium:
    from knowledge.physics import media

    height_m = altitude_m(question)
    kind = question.store.doneness(food.doneness).kind
    surface = "meat" if kind in (DoneKind.CORE, DoneKind.COLLAGEN) else "cut"
    match way:
        case "roast":
            return media.oven(
                oven_degC(question, food),
                fan=has_fan(question),
                crowding="joint" if piece.shape == "joint" or piece.size_mm > LARGE_BIRD_MM else "spaced",
                surface=surface,
                sheet=question.kitchen.sheet,
                altitude_m=height_m,
            )
        case "steam":
            return media.steaming(height_m)
        case "braise":
            return media.simmering(height_m)
        case "pressure":
            return media.pressure(SEALED_KPA, height_m, COME_UP_S)
        case "saute":
            flat = surface == "meat" and piece.shape in ("slab", "disk")
            return media.open_pan(PAN_DEGC, surface=surface, altitude_m=height_m, flat=flat)
        case _:
            return media.boiling(height_m)
