"""Room and liquid: does it fit, and how much to pour in.

A sheet pan holds one layer; a pot or cooker holds a heap and its liquid, up to a
fraction that depends on whether something foams or swells. The liquid is computed:
what grain and pulses drink until done, what boils away, and half the depth of the
meat for a braise, less what the tins and the cream bring along.
"""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.foods.model import Behaviour, Vessel, VesselSize, When
from knowledge.planner.dinner import Dish, Seasoning
from knowledge.planner.draft import AFTER, Way
from knowledge.planner.methods import Method
from knowledge.planner.model import Liquid

LAYER_PACKING = 0.72  # share of the floor that pieces of one layer cover when they do not touch much
SHEET_FULL = 0.95
HEAP_PACKING = 0.6  # solid share of a heap of pieces
WILTS_TO = 0.25  # leaves go in by the handful and sink
FILM_M = 0.006  # liquid in a saute pan
DENSITY = 1050.0


def floor_m2(ways: Sequence[Way]) -> float:
    """The floor that the pieces of these ways cover in one layer [m2]."""
    total = 0.0
    for way in ways:
        depth_m = max(way.piece.size_mm, 4.0) / 1000.0
        if way.piece.shape == "leaf":
            depth_m = 0.02
        total += way.dish.grams * way.dish.food.edible_frac / 1000.0 / DENSITY / depth_m
    return total / LAYER_PACKING


def heap_l(ways: Sequence[Way]) -> float:
    """The room a heap of these takes [l], leaves wilted."""
    total = 0.0
    for way in ways:
        food = way.dish.food
        solid = way.dish.grams * food.edible_frac / (food.density_kg_m3 or DENSITY)
        total += solid / HEAP_PACKING
    return total


def fill(vessel: Vessel, size: VesselSize, method: Method, ways: Sequence[Way], liquid_ml: float) -> float:
    """How full the vessel is, as a share of its floor (sheet) or its volume at the worst moment."""
    if vessel.single_layer:
        return floor_m2(ways) / size.area_m2
    inside = [way for way in ways if not (method.kind == "sealed" and way.lane_is(AFTER))]
    swell = sum(
        way.dish.grams / 1000.0 * (way.dish.food.water_uptake_g_per_g or 0.0)
        for way in inside
        if way.done in ("tender", "al_dente") and way.dish.kind != "warm_through"
    )
    solids = sum(
        w.dish.grams * w.dish.food.edible_frac / (w.dish.food.density_kg_m3 or DENSITY) for w in inside
    )
    wet = solids + liquid_ml / 1000.0
    return max(heap_l(inside), wet, solids + swell) / (size.volume_l or 1.0)


def limit(vessel: Vessel, method: Method, ways: Sequence[Way]) -> float:
    """How full it may be."""
    if vessel.single_layer:
        return SHEET_FULL
    rising = method.kind == "sealed" and any(
        way.dish.food.pressure in (Behaviour.FOAMS, Behaviour.SWELLS) and way.dish.kind != "warm_through"
        for way in ways
    )
    return vessel.max_fill_foaming_frac if rising else vessel.max_fill_frac


def drinks_ml(way: Way) -> float:
    """What a dish takes up until it is done [ml]."""
    if way.dish.kind == "warm_through" or way.done not in ("tender", "al_dente"):
        return 0.0
    return way.dish.grams * (way.dish.food.water_uptake_g_per_g or 0.0)


def liquid(
    method: Method,
    vessel: Vessel,
    size: VesselSize,
    ways: Sequence[Way],
    seasonings: Sequence[Seasoning],
    cooking_s: float,
) -> Liquid | None:
    """What to pour in, or None where nothing is."""
    if method.liquid == "none":
        return None
    drunk = sum(drinks_ml(way) for way in ways)
    gone = method.evaporation_ml_h * cooking_s / 3600.0 * (size.area_m2 / 0.045)
    brought = sum(0.9 * (s.grams or 0.0) for s in seasonings if is_poured(s) and s.food.group != "stock")
    brought += sum(0.6 * way.dish.grams for way in ways if is_saucy(way.dish))
    slowest = max((way.window.lo_s for way in ways), default=0.0)
    first = [w for w in ways if drinks_ml(w) == 0.0 and (w.lead or w.window.lo_s > 0.5 * slowest)]
    bodies = sum(w.dish.grams / DENSITY for w in first) / HEAP_PACKING  # litres, of what is in from the start
    reasons = []
    match method.liquid:
        case "half":
            base = 0.5 * bodies * (1.0 - HEAP_PACKING) * 1000.0 + 120.0
            reasons.append("half way up what braises")
        case "film":
            base = min(FILM_M * size.area_m2 * 1e6, 250.0)
            reasons.append("a finger's width under the lid")
        case _:
            base = vessel.min_liquid_ml
            reasons.append("the least a cooker needs for steam")
    if drunk:
        reasons = [
            f"{_grains(ways)} drinks {round(drunk / 10) * 10:.0f} ml",
            "the rest boils away or makes the sauce",
        ]
        base = max(0.35 * base, vessel.min_liquid_ml if method.kind == "sealed" else 0.0, 0.12 * drunk)
    ml = max(drunk + gone + base - brought, vessel.min_liquid_ml if method.kind == "sealed" else 0.0, 0.0)
    ml = round(ml / 50.0) * 50.0
    if ml < 50.0:
        return None
    return Liquid(what=_what(seasonings), ml=ml, why="; ".join(reasons))


def _grains(ways: Sequence[Way]) -> str:
    return " and ".join(way.dish.name for way in ways if drinks_ml(way) > 0)


def _what(seasonings: Sequence[Seasoning]) -> str:
    return next((s.name for s in seasonings if s.food.group == "stock"), "water or stock")


def is_poured(seasoning: Seasoning) -> bool:
    """Whether it is a liquid that makes a sauce."""
    return seasoning.food.when is When.LIQUID and seasoning.food.part in ("liquid", "sauce")


def is_saucy(dish: Dish) -> bool:
    """Tinned tomatoes and their like: cooked already, with their juice."""
    return dish.state == "canned" and dish.food.group == "fruit vegetable"
