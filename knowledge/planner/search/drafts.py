"""Every vessel, size, method and setting that this kitchen has, each laid out at its best.

For each method the exact search (`stabbing`) picks a cut and an add time for every
dish. A draft is then judged the way a cook would: what the food wants to be, what has
to stay out, the time, the number of trips to the stove, room, and the wishes.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import replace

from knowledge.foods.model import Vessel, VesselSize
from knowledge.foods.store import Store
from knowledge.planner.draft import Draft, Placed, Way
from knowledge.planner.gathering.dinner import Dinner, Dish, scaled
from knowledge.planner.kitchens import sizes_here
from knowledge.planner.methods import Method, methods, whole_mm
from knowledge.planner.model import Liquid, Request
from knowledge.planner.search import deadline, room, stages
from knowledge.planner.search.laying import lay
from knowledge.planner.search.load import load_here
from knowledge.planner.search.reducing import reduce_s
from knowledge.planner.search.rounds import takes_two
from knowledge.planner.search.scoring import ROAST_MM, TROUBLE, missed, score
from knowledge.planner.search.ways import Setting, solve

SAVES = 0.75  # a cooker that takes more than this part of a pot's time is not worth its trouble
ALIKE = 0.15  # points that no cook could tell apart
HURRIED_S = 45 * 60.0  # a deadline as near as this hurries; judgement
OPEN_COOKER, POT = "open-cooker", "lidded pot"
OPEN_LID = 6.0  # points for a cooker that was asked for and is used as a pot
LEAST_OVEN_degC = 150.0  # cooler than that nothing roasts
PINCH_G = 30.0  # of garlic, ginger, chili: as much for less of a dinner; judgement
EVEN = 0.5  # of all there is, in each of two rounds
BROIL_WISHES = frozenset({"broil", "crisp"})
ROUNDING = 1.02  # over the room there is, but never where a valve could block
HOPELESS = 12.0  # points behind before it begins: more than method, time and wishes make up for


def drafts(dinner: Dinner, request: Request, *, store: Store) -> list[Draft]:
    """All drafts, best first; empty when nothing can be cooked in this kitchen."""
    pairs = list(_pairs(dinner, request, store))
    vessels = {method.vessel for method, _ in pairs}
    loads = {v: load_here(dinner.dishes, request.kitchen, store.vessel(v), store) for v in vessels}
    solved = solve(dinner.dishes, pairs, request, store=store, loads=loads)
    found: list[Draft] = []
    lacking = {pair: _lacks(dinner, solved[pair[0].id, pair[1]]) for pair in pairs}
    for method, setting in sorted(pairs, key=lambda pair: lacking[pair]):
        if lacking[method, setting] >= HOPELESS and any(not d.refused for d in found):
            break  # it has nothing for the meat, and others take everything
        ways = solved[method.id, setting]
        vessel = store.vessel(method.vessel)
        found.extend(_for_sizes(dinner, request, vessel, method, setting, ways))
    found = [replace(d, score=d.score - _pressure_for_nothing(d, found, request)) for d in found]
    best_first = sorted(found, key=lambda d: (-d.score, *_usual_order(d)))
    alike = [d for d in best_first if d.score >= best_first[0].score - ALIKE]
    first = sorted(alike, key=_usual_order)[:1]  # a gram more must not turn one into another
    return deadline.ordered([*first, *(d for d in best_first if d not in first)], request)


def _usual_order(draft: Draft) -> tuple[str, str, float]:
    return draft.vessel.id, draft.method.id, draft.setting or 0.0


def _lacks(dinner: Dinner, ways: Sequence[Sequence[Way]]) -> float:
    """What a method cannot take at all, in points for leaving it out."""
    return sum(missed(d) for d, w in zip(dinner.dishes, ways, strict=True) if not w)


def _pressure_for_nothing(draft: Draft, found: Sequence[Draft], request: Request) -> float:
    """What a cooker costs that saves less than a quarter of the time of the same dinner in a pot.

    One who asks for the cooker, or has nothing else, wants pressure: then it is the open lid that costs.
    """
    if draft.vessel.id == request.vessel or {v.id for v in request.kitchen.vessels} == {draft.vessel.id}:
        sealed = any(d.method.kind == "sealed" and len(d.refused) <= len(draft.refused) for d in found)
        return OPEN_LID if sealed and draft.method.kind != "sealed" else 0.0
    if draft.method.kind != "sealed":
        return 0.0
    pots = [
        d.stages.serve_s - d.start_s
        for d in found
        if d.method.kind == "wet" and len(d.refused) <= len(draft.refused)
    ]
    took = draft.stages.serve_s - draft.start_s
    return TROUBLE if took > SAVES * min(pots, default=math.inf) else 0.0


def _pairs(dinner: Dinner, request: Request, store: Store) -> Iterator[tuple[Method, Setting]]:
    """The methods and settings this kitchen and this cook allow."""
    thick = any(d.part == "protein" and whole_mm(d) >= ROAST_MM for d in dinner.dishes)
    in_time = request.ready_in_s is not None and 0.0 < request.ready_in_s < HURRIED_S
    quick = in_time or "quick" in request.wishes
    here = {v.id for v in request.kitchen.vessels} - {*request.not_vessels}
    for method in methods(store):
        if method.vessel not in here:
            continue
        if request.vessel and method.vessel != request.vessel:
            continue
        if method.heat == "oven" and request.kitchen.oven_max_degC < LEAST_OVEN_degC:
            continue
        if method.id == OPEN_COOKER and method.vessel != request.vessel and POT in here:
            continue  # a pot by another name
        if method.finish == "broil" and not (request.kitchen.broiler and BROIL_WISHES & {*request.wishes}):
            continue
        settings: Sequence[Setting] = method.settings or (None,)
        if method.heat == "oven":
            top = request.kitchen.oven_max_degC
            wanted = method.settings
            if thick and method.thick_settings:
                wanted = method.thick_settings
            elif quick and method.quick_settings:
                wanted = method.quick_settings
            settings = [s for s in wanted if s <= top] or [top]
        for setting in settings:
            yield method, setting


def _for_sizes(
    dinner: Dinner,
    request: Request,
    vessel: Vessel,
    method: Method,
    setting: Setting,
    ways: list[list[Way]],
) -> Iterator[Draft]:
    laid = lay(dinner.dishes, method, ways)
    if laid is None:
        return
    placed, refused = laid
    sizes = sizes_here(request.kitchen, vessel)
    for number, size in enumerate(sizes):
        draft = draft_with(dinner, request, vessel, size, method, setting, placed, refused)
        fits = draft.fill <= room.limit(vessel, method, [p.way for p in placed])
        if fits or number == len(sizes) - 1:
            if draft.fill > room.limit(vessel, method, [p.way for p in placed]):
                draft = _shrunk(draft, dinner, request, refused)
            rounding = 1.0 if method.kind == "sealed" or vessel.single_layer else ROUNDING
            if draft.fill <= rounding * room.limit(vessel, method, [p.way for p in draft.placed]):
                yield draft
            return


def draft_with(
    dinner: Dinner,
    request: Request,
    vessel: Vessel,
    size: VesselSize,
    method: Method,
    setting: Setting,
    placed: tuple[Placed, ...],
    refused: tuple[tuple[Dish, str], ...],
) -> Draft:
    """A draft with these dishes placed: liquid, fill, stages, beginning and score follow."""
    ways = [p.way for p in placed]
    longest = max((p.add_s for p in placed), default=0.0)
    liquid = _liquid(dinner, vessel, size, method, placed)
    slow = stages.lets_down_slowly(method, ways)
    down_s = reduce_s(method, placed, liquid, dinner, room.gone_ml(method, size, longest))
    when = stages.stages(
        method, setting, size, placed, liquid,
        slow_release=slow, altitude_m=request.kitchen.altitude_m, reduce_s=down_s,
    )  # fmt: skip
    draft = Draft(
        vessel=vessel,
        size=size,
        method=method,
        setting=setting,
        dinner=dinner,
        kitchen=request.kitchen,
        placed=placed,
        refused=refused,
        fill=_fill(dinner, vessel, size, method, placed),
        liquid=liquid,
        slow_release=slow,
        stages=when,
        start_s=stages.start_s(method, placed, when),
        score=0.0,
    )
    return replace(draft, score=score(draft, request))


def _liquid(
    dinner: Dinner, vessel: Vessel, size: VesselSize, method: Method, placed: Sequence[Placed]
) -> Liquid | None:
    """The water or stock that these dishes want."""
    longest = max((p.add_s for p in placed), default=0.0)
    return room.liquid(
        method, vessel, size, [p.way for p in placed], dinner.seasonings, longest,
        least_ml=dinner.least_ml, most_ml=dinner.most_ml,
    )  # fmt: skip


def _fill(
    dinner: Dinner, vessel: Vessel, size: VesselSize, method: Method, placed: Sequence[Placed]
) -> float:
    """How full the vessel is with these dishes and all that is poured over them."""
    liquid = _liquid(dinner, vessel, size, method, placed)
    poured = (liquid.ml if liquid else 0.0) + room.poured_ml(method, dinner.seasonings)
    return room.fill(vessel, size, method, [p.way for p in placed], poured)


def _shrunk(draft: Draft, dinner: Dinner, request: Request, refused: tuple[tuple[Dish, str], ...]) -> Draft:
    """Less until it fits; the rest is for another day or a second round."""
    evenly = _in_two_even_rounds(draft, dinner, request, refused)
    if evenly is not None:
        return evenly
    for _ in range(6):
        limit = room.limit(draft.vessel, draft.method, [p.way for p in draft.placed])
        if draft.fill <= limit:
            break
        placed = _most_that_fits(draft, limit)
        draft = draft_with(
            dinner, request, draft.vessel, draft.size, draft.method, draft.setting, placed, refused
        )
    return draft


def _in_two_even_rounds(
    draft: Draft, dinner: Dinner, request: Request, refused: tuple[tuple[Dish, str], ...]
) -> Draft | None:
    """Half of everything, where it takes two rounds on a sheet anyway: each is then a dinner; else None."""
    if not draft.vessel.single_layer:
        return None
    meant = {(d.food.id, d.state): d for d in dinner.dishes}
    halves = tuple(_less(p, EVEN, meant) for p in draft.placed)
    even = draft_with(dinner, request, draft.vessel, draft.size, draft.method, draft.setting, halves, refused)
    full, fitting = (
        draft_with(
            dinner, request, draft.vessel, draft.size, draft.method, draft.setting,
            _most_that_fits(crowded, 1.0), refused,
        )
        for crowded in (draft, even)
    )  # fmt: skip
    return fitting if fitting.fill <= 1.0 and takes_two(full) and takes_two(fitting) else None


def _most_that_fits(draft: Draft, limit: float) -> tuple[Placed, ...]:
    """As much as there is room for, with its liquid.

    First what nobody weighed gives way, then potatoes and rice, then vegetables; meat keeps together
    and only goes down with all the rest.
    """
    meant = {(d.food.id, d.state): d for d in draft.dinner.dishes}
    placed = draft.placed
    for concerned, least in GIVE_WAY:
        factor = 1.0
        before = placed
        while factor > least:
            factor -= 0.04
            placed = tuple(_less(p, factor, meant) if concerned(p.way.dish) else p for p in before)
            if _fill(draft.dinner, draft.vessel, draft.size, draft.method, placed) <= limit:
                return placed
    return placed


def _less(placed: Placed, factor: float, meant: Mapping[tuple[str, str], Dish]) -> Placed:
    """So much of what was meant of it; what is less already stays."""
    dish = placed.way.dish
    if dish.part == "aromatic" and dish.grams <= PINCH_G:
        return placed  # it takes no room
    whole = meant.get((dish.food.id, dish.state), dish)
    grams = scaled(whole, factor, cut_up=not placed.way.cut.parts).grams
    return replace(placed, way=replace(placed.way, dish=replace(dish, grams=min(dish.grams, grams))))


GIVE_WAY: tuple[tuple[Callable[[Dish], bool], float], ...] = (  # who, down to which part of what was meant
    (lambda dish: dish.assumed and dish.part != "protein", 0.6),
    (lambda dish: dish.part == "starch", 0.6),
    (lambda dish: dish.part != "protein", 0.75),
    (lambda dish: dish.part != "protein", 0.35),
    (lambda dish: True, 0.2),
)
