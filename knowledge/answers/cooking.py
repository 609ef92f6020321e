"""How long a food takes in a way of cooking, computed for its usual pieces or the one named."""

from __future__ import annotations

import re
from collections.abc import Mapping

from knowledge.answers.altitude import altitude_m
from knowledge.answers.cite import cited
from knowledge.answers.heating import minutes, state_of
from knowledge.answers.minimums import safe_line
from knowledge.answers.model import Answer, Question
from knowledge.answers.sizes import as_bought, at_size, by_weight, piece_weight_g, shown, size_mm, weight_g
from knowledge.answers.ways import (
    cooks,
    is_elsewhere,
    is_roast,
    is_slow,
    oven_degC,
    oven_said,
    saying,
    usual_ways,
    way_of,
)
from knowledge.foods.model import Cut, DoneKind, Food
from knowledge.foods.pieces import Pieced, piece_of

CRISP = frozenset({"medium_veg", "quick_veg"})  # wanted tender-crisp as often as tender, in water or steam
PAN_MAX_MM = 45.0  # thicker pieces do not get done in an open pan
_BAKED = re.compile(r" whole | jacket | baked? (?:an? |the |some |large |big )*(?:sweet )?potato")
BARE_WORDS = 8
_BARE = re.compile(
    r"^ (?:(?:to |please )?(?:bake|boil|steam|roast|simmer|braise|saute|fry|pressure cook|baking|boiling"
    r"|steaming"
    r"|roasting|braising|baked|boiled|steamed) (?!.* (?:or|vs|versus|instead|wine|good|best|why|dry|with) )"
    r"|(?!.* (?:what|why|can|is|are|should|do|does|best|go|goes|with) )(?:\w+ ){1,4}"
    r"(?:in (?:the |an )?oven|oven|boiled|steamed|roasted|baked|roasting|roast|pressure cooked) (?:times?"
    r"|minutes)? ?$)"
)
HOW = (
    "how do i cook", "how to cook", "how do you cook", "how should i cook", "how would you cook",
    "way to cook", "how can i cook", "how best to cook", "how are they cooked", "how do i prepare",
    "how do i roast", "how do i bake", "how do i boil", "how do i steam", "how to roast", "how to boil",
    "how to steam", "how to bake",
)  # fmt: skip
AIR_FRYER = (
    " That is for an oven; an air fryer is not one of my vessels: in its basket look a quarter to a third"
    " earlier, one loose layer, shaken halfway."
)
_SHAPES = {"disk": ("burger", "patty", "patties", "hamburger"), "sphere": ("ball", "meatball", "kofta")}
ADVISED_DEGC = 160.0  # USDA FSIS: 325 °F, on dials and charts 160 °C
LOW_M = 300.0  # up to here the charts hold
MANY_HOURS_MIN = 100.0  # from here on a time is said in hours


def cook_time(question: Question) -> Answer | None:
    """How long a food takes in a way of cooking, at its usual sizes or the one named."""
    asked = question.says(
        *HOW, "how long", "cook time", "cooking time", "how many min", "minutes", "mins_", "per side",
        "time_", "times_",
        "how much time", "hours", "timing", "roasting time", "oven time", "how many hours",
    )  # fmt: skip
    return _timed(question) if asked else None


def bare_cook_time(question: Question) -> Answer | None:
    """ "Turnips roasting 2 cm dice", "bake a jacket potato in oven": a food and a way, no other question."""
    told = size_mm(question) is not None or weight_g(question) is not None or oven_said(question)
    told = told or question.says("low and slow", "slow roast")
    sized = way_of(question) and told
    if len(question.words) > BARE_WORDS or not (sized or (_BARE.search(question.plain) and way_of(question))):
        return None
    return _timed(question)


def _timed(question: Question) -> Answer | None:
    mention = next((m for m in question.mentions if cooks(question.store, m.food)), None)
    if mention is None or is_elsewhere(question):
        return None
    food, way = as_bought(question, mention.food), way_of(question)
    ways = (way,) if way else usual_ways(question.store, food)
    said = [text for one in ways if (text := _in_one_way(question, food, one))]
    if not said:
        return None
    safe = safe_line(food, question)
    text = f"{_named(question, food, mention.phrase)}, {'. '.join(said)}."
    text += _with_care(question, food, ways)
    if question.says("airfryer"):
        text += AIR_FRYER
    charts = [row["source"] for one in ways if (row := _chart_row(question, food, one))]
    how = "By the usual charts" if charts else "Computed for ordinary pieces"
    text += f" {how}; check early{f', {safe}' if safe else ''}."
    return Answer(known=True, answer=text, sources=cited(question.store, *(charts or ["A-PHYSICS"])))


def _in_one_way(question: Question, food: Food, way: str) -> str:
    """The times of the pieces in one way of cooking, "" where there are none."""
    if is_roast(question, food, way) and size_mm(question) is None:
        piece = by_weight(food, weight_g(question), question.store)
        ((low, _, high),) = minutes(question, food, [piece], way)
        grams = weight_g(question) or piece_weight_g(food)
        name = f"{grams / 1000:.2g} kg" if grams else shown(piece)
        return f"{saying(question, way, food)}: {name} {_span(low, high)}" if high else ""
    if row := _chart_row(question, food, way):
        return f"{saying(question, way, food)}: {_span(float(row['minutes_lo']), float(row['minutes_hi']))}"
    pieces = _pieces(question, food, way)
    crisp = food.doneness in CRISP and way in ("boil", "steam")
    firm = minutes(question, food, pieces, way, texture="crisp_tender") if crisp else []
    times = minutes(question, food, pieces, way)
    done = []
    for at, (piece, (low, _, high)) in enumerate(zip(pieces, times, strict=True)):
        if not high:
            continue
        if firm and firm[at][2]:
            done.append(
                f"{shown(piece)} tender-crisp {_span(firm[at][0], firm[at][2])}, soft {_span(low, high)}"
            )
        else:
            minced = food.group != "sausage" and "crumbled" in food.cuts
            done.append(f"{shown(piece, minced=minced)} {_span(low, high)}")
    return f"{saying(question, way, food)}: {'; '.join(done)}" if done else ""


def _chart_row(question: Question, food: Food, way: str) -> Mapping[str, str] | None:
    """The row of `ratios.csv` of a grain or pulse that drinks its water; the charts hold at sea level."""
    if way not in ("boil", "braise") or altitude_m(question) >= LOW_M:
        return None
    return next((row for row in question.store.table("ratios") if row["food_id"] == food.id), None)


def _pieces(question: Question, food: Food, way: str) -> list[Pieced]:
    store, size = question.store, size_mm(question)
    if size is not None:
        return [at_size(store, food, size)]
    soft = store.doneness(food.doneness).kind is DoneKind.SOFTEN and food.whole_mm is not None
    if _BAKED.search(question.plain) and ("whole" in food.cuts or soft):
        return [piece_of(food, store.cut("whole"))]
    cuts = [store.cut(cut_id) for cut_id in food.cuts[:3]]
    if any(cut.id == "crumbled" for cut in cuts):  # loose mince is fried until it is dry, not by its grains
        cuts = _shapes_said(question, cuts)
    made = [piece_of(food, cut) for cut in cuts]
    if way == "saute":
        made = [piece for piece in made if piece.size_mm <= PAN_MAX_MM]
    return list({(p.shape, round(p.size_mm)): p for p in made}.values())


def _shapes_said(question: Question, cuts: list[Cut]) -> list[Cut]:
    """The shapes of minced meat that are meant: a burger is a patty, never crumbs or balls."""
    shaped = [cut for cut in cuts if cut.id != "crumbled"]
    said = next((shape for shape, words in _SHAPES.items() if question.says(*words)), "")
    return [cut for cut in shaped if cut.shape == said] or shaped or cuts


def _named(question: Question, food: Food, phrase: str) -> str:
    """The food as it was said, with "soaked" or "not soaked" for a pulse that needs it."""
    if food.doneness in ("bean", "chickpea"):
        soaked = "not soaked" if state_of(question, food) == "dried" else "soaked 8-12 hours"
        return f"{phrase.capitalize()}, {soaked}"
    return phrase.capitalize()


def _with_care(question: Question, food: Food, ways: tuple[str, ...]) -> str:
    """What goes with the time: the hard boil of beans, the falling pressure, the rest of a roast."""
    kind = question.store.doneness(food.doneness).kind
    text = ""
    if food.doneness == "bean":
        text += (
            " Fresh water, boil hard at least 10 minutes first (30 by FDA text), and cook until quite soft."
        )
    if "pressure" in ways:
        if kind in (DoneKind.HYDRATE, DoneKind.COLLAGEN):
            text += " Let the pressure fall by itself."
        text += " Coming up to pressure is extra; the manual comes first."
    if any(is_slow(question, food, way) for way in ways):
        text += (
            " Tough meat is done when a fork goes in easily, at about 93-96 °C / 200-205 °F inside: covered,"
        )
        text += " with a little liquid, it stays moist. Rest it 30 minutes."
        if oven_degC(question, food) < ADVISED_DEGC:
            text += " USDA FSIS advises 163 °C / 325 °F or more for meat in an oven; lower is common practice"
            text += " for tough joints, thawed through and into a hot oven."
    elif any(is_roast(question, food, way) for way in ways):
        text += " Rest it 15-20 minutes."
    return text


def _span(low: float, high: float) -> str:
    """A span of time: "9-14 min", "2.8-4.4 h"."""
    if round(low) == round(high):
        return f"{high:.0f} min"
    if high >= MANY_HOURS_MIN + 20:
        return f"{low / 60:.1f}-{high / 60:.1f} h ({low:.0f}-{high:.0f} min)"
    return f"{low:.0f}-{high:.0f} min"
