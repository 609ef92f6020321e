"""Room and liquid: does it fit, and how much to pour in.

A sheet pan holds one layer; a pot or cooker holds a heap and its liquid, up to a
fraction that depends on whether something foams or swells. The liquid is computed:
what grain and pulses drink until done and what they swim in (`liquids.csv`), what boils
away, and half the depth of the meat for a braise, less what tins, wine and cream bring
along and what vegetables and meat give off themselves.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from knowledge.foods.model import Behaviour, Vessel, VesselSize, When
from knowledge.physics.safety import RAW_BEAN_BOIL_S
from knowledge.planner.draft import AFTER, BROWNED, SECOND, SOFTENED, Way
from knowledge.planner.gathering.dinner import Dish, Seasoning
from knowledge.planner.methods import Method
from knowledge.planner.model import Liquid
from knowledge.planner.search.floor import PANFUL_KG_M2, SHEET_FULL, bulk_g, layer_m2
from knowledge.planner.search.frying import tossed_kg

HEAP_PACKING = 0.6  # solid share of a heap of pieces
JUICE = 0.4  # of a tin of tomatoes runs
FILM_M = 0.003  # liquid in a saute pan
STEAM_M = 0.008  # under what steams: enough to stay wet, too little to boil what lies lowest
DENSITY = 1050.0  # of a food without a figure of its own [kg/m3]: most are 1000 to 1100
LOW_LID = 0.35  # of what a lively simmer loses, boils away where grain drinks on low heat
ON_TOP = 0.5  # of what joins a braise later, counts for the liquid
COOKER_ML_G = 0.4  # of meat under pressure, for a gravy that does not catch
OPEN_ML_H = 400.0  # bubbling with the lid off
PAN_LEFT, GRAIN_LEFT = 0.25, 0.35  # of what the method asks for, where grain drinks
BOILED_DOWN = 0.5  # is left of wine, and of the juice of tomatoes, that fry down before the stock
GIVEN = 0.5  # of what a food loses in cooking, is there while the grain still drinks
SOAKED_DRINKS = 0.2  # of what the dry pulse would
MOST_PANFULS = 2.2  # tossed at once; more of it stews in its own juice
JUICY_S = 300.0  # in for so long, a vegetable gives its juice to the sauce
OPENED = 0.7  # once the lid is off, what joins may stand so much higher; judgement
WET_SHARE = 0.9  # water in what is poured and has no figure of its own
CREAMY_ML = 30.0  # of something creamy for each eater, two spoons: less of it is a finish; judgement
OPENS_ML = 100.0  # of wine or water under shells, to steam them open; common practice, no source
HARD_BOIL_ML_H = 900.0  # a rolling boil, lid ajar


def floor_m2(ways: Sequence[Way]) -> float:
    """The floor that the pieces of these ways cover in one layer [m2]."""
    return sum(
        layer_m2(w.dish.food, w.dish.grams, shape=w.piece.shape, size_mm=w.piece.size_mm, cut_id=w.cut.id)
        for w in ways
    )


def heap_l(ways: Sequence[Way]) -> float:
    """The room a heap of these takes [l] once they have swollen; bones lie in its gaps."""
    return sum(
        (_solid_l(way, way.dish.grams * way.dish.food.edible_frac) + drinks_ml(way) / 1000.0) / HEAP_PACKING
        for way in ways
    )


def _solid_l(way: Way, grams: float) -> float:
    """What so much of a food takes of the room [l]; the soaked is weighed dry and has drunk already."""
    soaked = (1.0 - SOAKED_DRINKS) * (way.dish.food.water_uptake_g_per_g or 0.0)
    more_g = soaked * grams if way.dish.state == "soaked" else 0.0
    return (grams + more_g) / (way.dish.food.density_kg_m3 or DENSITY)


def poured_ml(method: Method, seasonings: Sequence[Seasoning]) -> float:
    """What cartons, tins and bottles add to the water or stock [ml]; cream comes when the lid is off."""
    sealed = method.kind == "sealed"
    return sum(
        s.used_ml if is_creamy(s) else s.grams or 0.0
        for s in seasonings
        if (is_poured(s) and s.food.group != "stock") or (is_creamy(s) and not sealed)
    )


def fill(vessel: Vessel, size: VesselSize, method: Method, ways: Sequence[Way], liquid_ml: float) -> float:
    """How full the vessel is, as a share of one full layer (sheet) or its volume at the worst moment.

    Args:
        liquid_ml: all that is poured in. Juice that food gives and water that it takes up
            only move from one into the other: bones and all, there is as much of both
            together as in the cold. What swells may stand above its liquid, though.
    """
    if vessel.single_layer:
        return floor_m2(ways) / (SHEET_FULL * size.area_m2)
    inside = [way for way in ways if not (method.kind == "sealed" and way.lane_is(AFTER))]
    full = _stands_l(inside, liquid_ml) / (size.volume_l or 1.0)
    if len(inside) < len(ways):
        full = max(full, OPENED * _stands_l(ways, liquid_ml) / (size.volume_l or 1.0))
    if method.kind != "pan":
        return full
    panfuls = tossed_kg(ways) / (PANFUL_KG_M2 * size.area_m2)
    return max(full, panfuls / MOST_PANFULS * vessel.max_fill_frac)


def _stands_l(ways: Sequence[Way], liquid_ml: float) -> float:
    """Up to where it stands: all that lies in the liquid, or a heap above it."""
    wet = sum(_solid_l(way, bulk_g(way.dish.food, way.dish.grams)) for way in ways) + liquid_ml / 1000.0
    return max(heap_l(ways), wet)


def limit(vessel: Vessel, method: Method, ways: Sequence[Way]) -> float:
    """How full it may be."""
    if vessel.single_layer:
        return 1.0
    rising = method.kind == "sealed" and any(
        way.dish.food.pressure in (Behaviour.FOAMS, Behaviour.SWELLS) and way.dish.kind != "warm_through"
        for way in ways
    )
    return vessel.max_fill_foaming_frac if rising else vessel.max_fill_frac


def drinks_ml(way: Way) -> float:
    """What a dish takes up until it is done [ml]."""
    if way.dish.kind == "warm_through" or way.done not in ("tender", "al_dente"):
        return 0.0
    soaked = SOAKED_DRINKS if way.dish.state == "soaked" else 1.0
    return soaked * way.dish.grams * (way.dish.food.water_uptake_g_per_g or 0.0)


def liquid(
    method: Method,
    vessel: Vessel,
    size: VesselSize,
    ways: Sequence[Way],
    seasonings: Sequence[Seasoning],
    cooking_s: float,
    *,
    least_ml: float = 0.0,
    most_ml: float = math.inf,
) -> Liquid | None:
    """What to pour in, or None where nothing is.

    `least_ml` and `most_ml` bound what is on the plates in the end, as the style of the dish has it.
    """
    if method.liquid == "none":
        return None
    floor_ml = vessel.min_liquid_ml if method.kind == "sealed" else 0.0
    drunk = sum(drinks_ml(way) for way in ways)
    gone = gone_ml(method, size, cooking_s)
    base, reason = _base(method, vessel, size, ways)
    reasons = [reason]
    given = 0.0
    if drunk:
        swims = sum(w.dish.swims_ml_g * w.dish.grams for w in ways if drinks_ml(w) > 0)
        stew = max(1.0 - drunk / base, 0.0) if method.liquid == "half" and base else 0.0
        base = max(_around_grain_ml(method, base, ways, stew), swims)
        gone *= LOW_LID + (1.0 - LOW_LID) * stew
        given = min(sum(given_ml(way) for way in ways), 0.15 * drunk)
        reasons = [f"{_grains(ways)} takes up {round(drunk / 10) * 10:.0f} ml"]
        reasons.append(
            "the rest boils away or makes the sauce" if swims > 0.2 * drunk else "it drinks it all"
        )
    elif own := sum(-w.dish.swims_ml_g * w.dish.grams for w in ways if w.dish.swims_ml_g < 0):
        base = max(base - own, min(base, OPENS_ML))
        reasons = ["little: the shells give their own"]
    elif method.liquid in ("film", "half"):
        juicy = [way for way in ways if way.window.lo_s > JUICY_S and (way.lead or not way.dish.food.animal)]
        given = min(sum(given_ml(way) for way in juicy), 0.5 * base)
    elif all(way.dish.kind == "warm_through" for way in ways):
        base *= 0.3  # nothing to cook, only steam to heat through
    if method.kind == "sealed" and drunk:
        open_s = max((way.window.lo_s for way in ways if way.lane_is(AFTER) and drinks_ml(way)), default=0.0)
        gone += OPEN_ML_H * open_s / 3600.0 * (size.area_m2 / 0.045)
    if method.kind == "wet" and any(way.dish.is_raw_bean for way in ways):
        gone += HARD_BOIL_ML_H * RAW_BEAN_BOIL_S / 3600.0 * (size.area_m2 / 0.045)
    fried = any(way.lead in (BROWNED, SOFTENED) or way.toasts for way in ways)
    brought = sum(
        _wet_share(s) * (BOILED_DOWN if fried and s.food.group == "wine" else 1.0) * (s.grams or 0.0)
        for s in seasonings
        if is_poured(s) and s.food.group != "stock"
    )
    brought += sum(0.5 * s.used_ml for s in seasonings if is_creamy(s))
    inside = [w for w in ways if not (method.kind == "sealed" and (w.lane_is(AFTER) or w.lane_is(SECOND)))]
    later = sum(JUICE * w.dish.grams for w in ways if is_saucy(w.dish) and w not in inside)
    brought += sum(
        JUICE * w.dish.grams * (BOILED_DOWN if w.lead == SOFTENED else 1.0)
        for w in inside
        if is_saucy(w.dish)
    )
    ml = drunk + gone + base - brought - given
    ml = max(min(ml, drunk + gone + most_ml - brought), drunk + least_ml - brought - later)
    ml = round(max(ml, floor_ml) / 50.0) * 50.0
    if ml < 50.0:
        return None
    return Liquid(what="water" if method.steams else _what(seasonings), ml=ml, why="; ".join(reasons))


def gone_ml(method: Method, size: VesselSize, cooking_s: float) -> float:
    """What leaves as steam under the lid [ml]."""
    return method.evaporation_ml_h * cooking_s / 3600.0 * (size.area_m2 / 0.045)


def _base(method: Method, vessel: Vessel, size: VesselSize, ways: Sequence[Way]) -> tuple[float, str]:
    """What the method itself asks for [ml], and why."""
    match method.liquid:
        case "half":
            half = 0.5 * _bodies_l(ways) * (1.0 - HEAP_PACKING) * 1000.0 + 120.0
            return half, "half way up what braises"
        case "steam":
            return STEAM_M * size.area_m2 * 1e6, "a finger's width of water makes the steam"
        case "film":
            return min(FILM_M * size.area_m2 * 1e6, 250.0), "enough under the lid to steam in"
        case _:
            meat_g = sum(w.dish.grams for w in ways if w.dish.food.animal and not w.lane_is(AFTER))
            if COOKER_ML_G * meat_g > vessel.min_liquid_ml:
                return COOKER_ML_G * meat_g, "enough for the meat's own gravy under pressure"
            return vessel.min_liquid_ml, "the least a cooker needs for steam"


def _around_grain_ml(method: Method, base: float, ways: Sequence[Way], stew: float) -> float:
    """What stays beside grain that drinks [ml]: little in a pan; in a pot the more, the less grain there is.

    Args:
        stew: 1 for a stew without any grain, 0 for grain that could drink all of what braises in.
    """
    if method.liquid == "film":
        return PAN_LEFT * base
    if method.liquid == "half" and _bodies_l(ways) > 0.3:
        return (GRAIN_LEFT + (1.0 - GRAIN_LEFT) * stew) * base
    return 0.0


def _bodies_l(ways: Sequence[Way]) -> float:
    """The room that what is in from the start takes, grain and what comes wet from its tin apart [l].

    What joins later lies on top of it and sinks half in.
    """
    slowest = max((way.window.lo_s for way in ways), default=0.0)
    dry = [w for w in ways if drinks_ml(w) == 0.0 and (w.dish.food.animal or w.dish.kind != "warm_through")]
    dry = [w for w in dry if w.dish.swims_ml_g >= 0]
    first = [w for w in dry if w.lead or w.window.lo_s > 0.5 * slowest]
    kg = sum(w.dish.grams for w in first) + ON_TOP * sum(w.dish.grams for w in dry if w not in first)
    return kg / DENSITY / HEAP_PACKING


def given_ml(way: Way) -> float:
    """The juice a dish gives while the others drink [ml]: of what it loses, fat is none."""
    if drinks_ml(way) > 0 or way.dish.kind == "warm_through" or way.top:
        return 0.0
    made_of = way.dish.food.composition
    fluid_g = made_of.water_g + made_of.fat_g if made_of is not None else 0.0
    juice = made_of.water_g / fluid_g if made_of is not None and fluid_g else 1.0
    return GIVEN * juice * way.dish.grams * (way.dish.food.loss_frac or 0.0)


def _grains(ways: Sequence[Way]) -> str:
    return " and ".join(way.dish.name for way in ways if drinks_ml(way) > 0)


def _what(seasonings: Sequence[Seasoning]) -> str:
    stock = next((s for s in seasonings if s.food.group == "stock"), None)
    if stock is None:
        return "water or stock"
    return f"stock from a {stock.name}" if stock.is_cube else stock.name


def is_poured(seasoning: Seasoning) -> bool:
    """Whether it is a liquid that makes a sauce, or a table sauce by the jar."""
    liquid = seasoning.food.when is When.LIQUID and seasoning.food.part in ("liquid", "sauce")
    return liquid or seasoning.simmers


def _wet_share(seasoning: Seasoning) -> float:
    """Of what is poured, the share that grain can drink: coconut milk is a quarter fat, salsa is thick."""
    if seasoning.simmers:
        return JUICE
    made_of = seasoning.food.composition
    return made_of.water_g / 100.0 if made_of is not None else WET_SHARE


def is_creamy(seasoning: Seasoning) -> bool:
    """So much milk, cream or yogurt that it makes a sauce, late as it goes in; a spoonful is a finish."""
    food = seasoning.food
    dairy = food.group == "dairy" and food.part == "dairy" and not is_poured(seasoning)
    return dairy and seasoning.head_ml >= CREAMY_ML


def is_saucy(dish: Dish) -> bool:
    """Tinned tomatoes and their like: cooked already, with their juice."""
    return dish.state == "canned" and dish.food.group == "fruit vegetable"
