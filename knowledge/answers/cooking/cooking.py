"""How long a food takes in a way of cooking, computed for its usual pieces or the one named."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace

from knowledge.answers.cite import cited
from knowledge.answers.cooking.heating import NEVER, PULSES, Minutes, minutes, state_of
from knowledge.answers.cooking.sizes import (
    as_bought,
    at_size,
    by_weight,
    piece_weight_g,
    shown,
    size_mm,
    weight_g,
)
from knowledge.answers.cooking.ways import (
    LOW_M,
    cooks,
    is_elsewhere,
    is_fsis_oven,
    is_roast,
    is_slow,
    oven_degC,
    oven_said,
    saying,
    usual_ways,
    way_of,
)
from knowledge.answers.heat.minimums import CURED, safe_line
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.altitude import altitude_m
from knowledge.answers.reading.heard import hears, meant, pattern
from knowledge.foods.model import Cut, DoneKind, Food
from knowledge.foods.pieces import Pieced, piece_of
from knowledge.planner.lasting import least_s

CRISP = frozenset({"medium_veg", "quick_veg"})  # wanted tender-crisp as often as tender, in water or steam
PAN_MAX_MM = 45.0  # thicker pieces do not get done in an open pan
CUTS_TOLD = 3
STRIPS_MM = (3.0, 5.0, 8.0)  # meat for a wok, thin to thick (common practice)
STRIP = (3.0, 8.0)  # its width and length, in thicknesses
SLICED = ("poultry", "beef", "veal", "pork", "lamb", "goat", "game")
BARE_WORDS = 8  # a longer text is more than a food and a way
HOURS_FROM_MIN = 120.0  # from here on a time is said in hours

AIR_FRYER = (
    "That is for an oven; an air fryer is not one of my vessels: in its basket look a quarter to a third"
    " earlier, one loose layer, shaken halfway."
)
BEANS = "Fresh water, boil hard at least 10 minutes first (30 by FDA text), and cook until quite soft."
PRESSURE_FALLS = "Let the pressure fall by itself."
COMING_UP = "Coming up to pressure is extra; the manual comes first."
HAMS = (
    "Raw cured ham or gammon: 63 °C / 145 °F and 3 minutes' rest in the middle (USDA FSIS), UK 70 °C for 2"
    " minutes. One sold fully cooked is only reheated: 60 °C / 140 °F from the maker's sealed pack, else"
    " 74 °C"
    " / 165 °F (USDA FSIS)."
)
SLOWEST = 1.25  # an oven that is slow, over one that is not
LEAST_JOINT_G = 1500.0  # a joint for which minutes a kilo are asked
POUND_KG = 0.4536
NO_FIXED_RATE = "A heavy one needs less a kilo than a light one"
REST_A_ROAST = "Rest it 15-20 minutes."
TOUGH = (
    "Tough meat is done when a fork goes in easily, at about 93-96 °C / 200-205 °F inside: covered, with a"
    " little liquid, it stays moist. Rest it 30 minutes."
)
COOL_OVEN = (
    "USDA FSIS advises 163 °C / 325 °F or more for meat in an oven; lower is common practice for tough"
    " joints, thawed through and into a hot oven."
)

_BAKED_WHOLE = re.compile(
    r" whole | jackets? | spuds? | baked? (?:(?:an?|the|some|large|big) )*(?:sweet )?potato"
)
# A food and a way with nothing else asked: "roast parsnips", "parsnips in the oven".
_DO_IT = r"^ (?:(?:to|please) )?{cook it} (?!.* (?:or|vs|versus|instead|wine|good|best|why|dry|with) )"
_DONE_SO = (
    r"^ (?!.* (?:what|why|can|is|are|should|do|does|best|go|goes|with) )"
    r"(?:\w+ ){1,4}{cooked so} (?:times?|minutes)? ?$"
)


def cook_time(question: Question) -> Answer | None:
    """How long a food takes in a way of cooking, at its usual sizes or the one named."""
    return _timed(question) if hears(question, "asks how long it cooks") else None


def bare_cook_time(question: Question) -> Answer | None:
    """ "Turnips roasting 2 cm dice", "bake a jacket potato in oven": a food and a way, no other question."""
    if len(question.words) > BARE_WORDS or not way_of(question):
        return None
    is_bare = any(pattern(question.store, grammar).search(question.plain) for grammar in (_DO_IT, _DONE_SO))
    return _timed(question) if is_bare or _is_set(question) else None


def _is_set(question: Question) -> bool:
    """True where a size, a weight or a heat is said."""
    return (
        size_mm(question) is not None
        or weight_g(question) is not None
        or oven_said(question)
        or hears(question, "low and slow")
    )


def _timed(question: Question) -> Answer | None:
    mention = next((m for m in question.mentions if cooks(question.store, m.food)), None)
    if mention is None or is_elsewhere(question):
        return None
    food, way = as_bought(question, mention.food), way_of(question)
    if _is_in_strips(question, food, way):
        food, way = _as_strips(question, food), "saute"
    if not way and food.group == "tuber" and _BAKED_WHOLE.search(question.plain):
        way = "roast"
    ways = (way,) if way else usual_ways(question.store, food)
    if question.says("in a pot"):
        ways = tuple(one for one in ways if one != "pressure") or ways
    said = [text for one in ways if (text := _in_one_way(question, food, one))]
    if not said:
        return None
    charts = [row["source"] for one in ways if (row := _chart_row(question, food, one))]
    sentences = (
        f"{_named(question, food, mention.phrase)}, {'. '.join(said)}.",
        *_care(question, food, ways),
        *([AIR_FRYER] if question.says("airfryer") else []),
        f"{'By the usual charts' if charts else 'Computed for ordinary pieces'}; "
        f"{', '.join(filter(None, ('check early', safe_line(food, question))))}.",
    )
    return Answer(
        known=True,
        answer=" ".join(sentences),
        sources=cited(question.store, *(charts or ["A-PHYSICS"])),
    )


def _is_in_strips(question: Question, food: Food, way: str) -> bool:
    """True for meat in thin strips or slices for a wok, of no size that was said."""
    kind = question.store.doneness(food.doneness).kind
    meat = kind in (DoneKind.CORE, DoneKind.COLLAGEN) and food.group in SLICED
    return meat and way in ("", "saute") and size_mm(question) is None and hears(question, "in strips")


def _as_strips(question: Question, food: Food) -> Food:
    """Cut so thin even a tough joint is tender once it is hot through."""
    if question.store.doneness(food.doneness).kind is not DoneKind.COLLAGEN:
        return food
    return replace(food, doneness="poultry" if "poultry" in food.group else "tender_meat")


def _named(question: Question, food: Food, phrase: str) -> str:
    """The food as it was said, with "soaked" or "not soaked" for a pulse that needs it."""
    if food.doneness not in PULSES:
        return phrase.capitalize()
    soaked = "not soaked" if state_of(question, food) == "dried" else "soaked 8-12 hours"
    return f"{phrase.capitalize()}, {soaked}"


# The times of one way.


def _in_one_way(question: Question, food: Food, way: str) -> str:
    """The times of the pieces in one way of cooking, "" where there are none."""
    if _is_joint(question, food, way) and size_mm(question) is None:
        times = _of_a_roast(question, food, way)
    elif row := _chart_row(question, food, way):
        times = _span(float(row["minutes_lo"]), float(row["minutes_hi"]))
    else:
        times = "; ".join(_of_pieces(question, food, way))
    return f"{saying(question, way, food)}: {times}" if times else ""


def _is_joint(question: Question, food: Food, way: str) -> bool:
    """True for a whole bird or joint: in the oven always, in water where its weight is said."""
    if is_roast(question, food, way):
        return True
    whole = food.whole_shape in ("bird", "joint") and "whole" in food.cuts and not hears(question, "cut up")
    by_its_weight = weight_g(question) is not None or hears(question, "by the weight")
    return whole and way in ("boil", "braise") and by_its_weight


def _of_a_roast(question: Question, food: Food, way: str) -> str:
    """ "1.8 kg 62-85 min": a whole bird or joint of the weight said, or the usual one."""
    usual_g, said_g = piece_weight_g(food), weight_g(question)
    if hears(question, "by the weight") and usual_g:
        weights = [max(usual_g, LEAST_JOINT_G) * part for part in (0.75, 1.0, 1.5)]
        times = minutes(question, food, [by_weight(food, g, question.store) for g in weights], way)
        said = [_weighed(g, time) for g, time in zip(weights, times, strict=True) if time.latest]
        rate = _rate(weights[1], times[1])
        return f"{rate}; {', '.join(said)}. {NO_FIXED_RATE}" if said else ""
    (time,) = minutes(question, food, [by_weight(food, said_g, question.store)], way)
    grams = said_g or usual_g
    piece = by_weight(food, said_g, question.store)
    if not time.latest:
        return ""
    return _weighed(grams, time) if grams else f"{shown(piece)} {_span(time.earliest, time.latest)}"


def _weighed(grams: float, time: Minutes) -> str:
    return f"{grams / 1000:.2g} kg {_span(time.earliest, time.latest)}"


def _rate(grams: float, time: Minutes) -> str:
    """ "About 40 min a kilo (18 min a pound) at 2 kg": what the likeliest time comes to."""
    a_kilo = time.likeliest / (grams / 1000)
    return f"about {a_kilo:.0f} min a kilo ({a_kilo * POUND_KG:.0f} min a pound) at {grams / 1000:.2g} kg"


def _chart_row(question: Question, food: Food, way: str) -> Mapping[str, str] | None:
    """The row of `ratios.csv` of a grain or pulse that drinks its water; the charts hold at sea level."""
    if way not in ("boil", "braise") or altitude_m(question) >= LOW_M:
        return None
    return next((row for row in question.store.table("ratios") if row["food_id"] == food.id), None)


def _of_pieces(question: Question, food: Food, way: str) -> Iterator[str]:
    """ "20 mm 14-19 min" of each piece, vegetables in water or steam tender-crisp as well."""
    pieces = _pieces(question, food, way)
    is_crisp = food.doneness in CRISP and way in ("boil", "steam")
    firm = minutes(question, food, pieces, way, texture="crisp_tender") if is_crisp else [NEVER] * len(pieces)
    soft = minutes(question, food, pieces, way, texture=_texture(question, food, way))
    minced = food.group != "sausage" and "crumbled" in food.cuts
    for piece, first, last in zip(pieces, firm, soft, strict=True):
        time = _span(last.earliest, last.latest)
        if first.latest and last.latest:
            yield f"{shown(piece)} tender-crisp {_span(first.earliest, first.latest)}, soft {time}"
        elif last.latest:
            least = _least_min(question, food, way) if piece.shape == food.whole_shape else 0.0
            time = _span(max(last.earliest, least), max(last.latest, least * SLOWEST))
            yield f"{shown(piece, minced=minced)} {time}"


def _least_min(question: Question, food: Food, way: str) -> float:
    """What it takes to look done, in the oven: sausages are hot through before they are brown."""
    if way != "roast" or food.group != "sausage":
        return 0.0
    oven = oven_degC(question, food)
    return least_s(food, food.doneness, heat="dry", oven_degC=oven, store=question.store) / 60


def _texture(question: Question, food: Food, way: str) -> str:
    """Tender; a potato baked whole is wanted soft all through, fluffy, not only easy to pierce."""
    fluffy = way == "roast" and food.group == "tuber" and _BAKED_WHOLE.search(question.plain)
    return "soft" if fluffy else "tender"


def _pieces(question: Question, food: Food, way: str) -> list[Pieced]:
    """The piece of the size said, the food whole, or its usual cuts, each once."""
    store, said_mm = question.store, size_mm(question)
    if _is_in_strips(question, food, way):
        return [Pieced("brick", mm, *STRIP) for mm in STRIPS_MM]
    if said_mm is not None:
        return [at_size(store, food, said_mm)]
    soft = store.doneness(food.doneness).kind is DoneKind.SOFTEN and food.whole_mm is not None
    if _BAKED_WHOLE.search(question.plain) and ("whole" in food.cuts or soft):
        return [piece_of(food, store.cut("whole"))]
    cuts = [store.cut(cut_id) for cut_id in food.cuts[:CUTS_TOLD]]
    if hears(question, "on its cob") and "whole" in food.cuts:
        cuts = [store.cut("whole")]
    made = [piece_of(food, cut) for cut in _shaped(question, cuts)]
    if way == "saute":
        made = [piece for piece in made if piece.size_mm <= PAN_MAX_MM]
    return list({(p.shape, round(p.size_mm)): p for p in made}.values())


def _shaped(question: Question, cuts: list[Cut]) -> list[Cut]:
    """The shapes of mince that are meant: a burger is a patty, and crumbs are fried dry, not by grains."""
    shaped = [cut for cut in cuts if cut.id != "crumbled"]
    if len(shaped) == len(cuts):
        return cuts
    said = meant(question, "shape of mince", ("disk", "sphere"))
    return [cut for cut in shaped if cut.shape == said] or shaped or cuts


def _span(low: float, high: float) -> str:
    """A span of minutes: "9-14 min", "2.8-4.4 h (168-264 min)"."""
    if round(low) == round(high):
        return f"{high:.0f} min"
    both = f"{low:.0f}-{high:.0f} min"
    return f"{low / 60:.1f}-{high / 60:.1f} h ({both})" if high >= HOURS_FROM_MIN else both


# What goes with the time.


def _care(question: Question, food: Food, ways: tuple[str, ...]) -> Iterator[str]:
    """The hard boil of beans, the falling pressure, the rest of a roast."""
    if food.safety == CURED and food.whole_shape == "joint":
        yield HAMS
    if food.doneness == "bean":
        yield BEANS
    if "pressure" in ways:
        kind = question.store.doneness(food.doneness).kind
        if kind in (DoneKind.HYDRATE, DoneKind.COLLAGEN):
            yield PRESSURE_FALLS
        yield COMING_UP
    if any(is_slow(question, food, way) for way in ways):
        yield TOUGH
        if not is_fsis_oven(oven_degC(question, food)):
            yield COOL_OVEN
    elif any(is_roast(question, food, way) for way in ways):
        yield REST_A_ROAST
