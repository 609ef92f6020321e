"""Every vessel, size, method and setting that this kitchen has, each laid out at its best.

For each method the exact search (`stabbing`) picks a cut and an add time for every
dish. A draft is then judged the way a cook would: what the food wants to be, what has
to stay out, the time, the number of trips to the stove, room, and the wishes.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.foods.model import Vessel, VesselSize
from knowledge.foods.store import Store
from knowledge.planner import room, stages
from knowledge.planner.amounts import APPETITE, is_flavour
from knowledge.planner.dinner import Dinner, Dish, scaled
from knowledge.planner.draft import AFTER, MAIN, SEARED, SOFTENED, Draft, Placed, Way
from knowledge.planner.methods import Method, methods, whole_mm
from knowledge.planner.model import Kitchen, Request
from knowledge.planner.shortened import shortened
from knowledge.planner.stabbing import Weights, Window, stab
from knowledge.planner.ways import SOFTEN_S, Setting, kept_hot, solve

WEIGHTS = Weights(per_add=0.5, per_s=0.02 / 60.0, edge=0.6)
PART_WEIGHT = {"protein": 3.0, "starch": 2.0, "vegetable": 1.5, "aromatic": 0.4}
LEFT_OUT = {"protein": 12.0, "starch": 7.0, "vegetable": 4.5, "aromatic": 1.0}
MINUTE = 0.05  # a minute beyond what an evening has anyway
EVENING_MIN = 45.0
ROAST_MIN = 110.0  # who buys a joint or a bird has that evening
LATE_MINUTE = 0.4  # a minute beyond the deadline
COLD_MINUTE = 0.15  # a minute that a steak waits beyond ten
SEALED_FOR = (
    "tough_",
    "stewing",
    "bean",
    "chickpea",
    "hominy",
    "whole_grain",
    "lentil",
    "split_pea",
    "pearl",
    "hard_",
)
SAVES = 0.75  # a cooker that takes more than this part of a pot's time is not worth its trouble
ROAST_MM = 70.0  # from here a joint or a bird is black outside before the middle is done in a hot oven
HURRIED_S = 45 * 60.0
KEPT_BACK = 10.0  # points for all that was said; a vessel that holds it wins
OUT = "out"  # the lane of what stays in the fridge
PLATE_G = 430.0  # what an adult eats for dinner, as it comes from the pan
BOWL_G = 600.0  # a soup that is dinner
LEAN = 0.55  # of a plate counts however little protein is on it
LIGHT_PLATE_G = 330.0  # of it, when nothing starchy is in it
TROUBLE = 2.5  # a cooker is one more thing to wash and watch; it must save time to be worth it
OPEN_LID = 6.0  # points for a cooker that was asked for and is used as a pot
CREAMY = frozenset({"dairy"})  # milk, cream, yogurt: nothing to pour over a tray
BROIL_WISHES = frozenset({"broil", "crisp"})
DEFAULT_VESSELS = Kitchen().vessels


def drafts(dinner: Dinner, request: Request, *, store: Store) -> list[Draft]:
    """All drafts, best first; empty when nothing can be cooked in this kitchen."""
    pairs = list(_pairs(dinner, request, store))
    solved = solve(dinner.dishes, pairs, request, store=store)
    found: list[Draft] = []
    for method, setting in pairs:
        ways = solved[method.id, setting]
        vessel = store.vessel(method.vessel)
        for draft in _for_sizes(dinner, request, vessel, method, setting, ways):
            found.append(draft)
    found = [replace(d, score=d.score - _pressure_for_nothing(d, found, request)) for d in found]
    return sorted(found, key=lambda d: (-d.score, d.vessel.id, d.method.id, d.setting or 0.0))


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
    here = {v.id for v in request.kitchen.vessels}
    for method in methods(store):
        if method.vessel not in here or method.vessel in request.not_vessels:
            continue
        if request.vessel and method.vessel != request.vessel:
            continue
        if method.heat == "oven" and request.kitchen.oven_max_degC < 150:
            continue
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


def sizes_here(kitchen: Kitchen, vessel: Vessel) -> list[VesselSize]:
    """The sizes to choose from, usual first: the one said, or in an unknown kitchen the usual and larger."""
    said = [v.size for v in kitchen.vessels if v.id == vessel.id]
    by_id = {size.id: size for size in vessel.sizes}
    named = [by_id[s] for s in said if s in by_id]
    if named:
        return named
    usual = next((s for s in vessel.sizes if s.usual), vessel.sizes[0])
    larger = (
        [s for s in vessel.sizes if s.serves > usual.serves] if kitchen.vessels == DEFAULT_VESSELS else []
    )
    return [usual, *sorted(larger, key=lambda s: s.serves)]


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
        asked = request.eaters_said and vessel.single_layer  # for more eaters than said, as full as it goes
        fits = fits and (not asked or size.serves >= dinner.eaters - 0.25)
        if fits or number == len(sizes) - 1:
            if draft.fill > room.limit(vessel, method, [p.way for p in placed]):
                draft = _shrunk(draft, dinner, request, refused)
            if draft.fill <= 1.02 * room.limit(vessel, method, [p.way for p in draft.placed]):
                yield draft
            return


def lay(
    dishes: Sequence[Dish], method: Method, ways: list[list[Way]]
) -> tuple[tuple[Placed, ...], tuple[tuple[Dish, str], ...]] | None:
    """A way and an add time for each dish; those that refuse the method or the others, with why."""
    if not method.finish:
        return _lay(dishes, method, ways)
    both = [i for i, w in enumerate(ways) if len({x.window.lane for x in w}) == 2]
    trials: list[set[int]] = [set(), set(both), *({i} for i in both)]
    found = []
    for n, late in enumerate(trials):
        if n and not late:
            continue
        kept = [
            [x for x in w if i not in both or x.lane_is(AFTER) == (i in late)] for i, w in enumerate(ways)
        ]
        laid = _lay(dishes, method, kept)
        if laid is not None:
            lost = sum(LEFT_OUT.get(dish.part, 4.0) for dish, _ in laid[1])
            tired = sum(_edge(p) for p in laid[0]) - sum(p.way.fit for p in laid[0]) * 0.5
            found.append((lost, tired + 0.4 * bool(late), n, laid))
    return min(found, key=lambda f: f[:3])[3] if found else None


def _lay(
    dishes: Sequence[Dish], method: Method, ways: list[list[Way]]
) -> tuple[tuple[Placed, ...], tuple[tuple[Dish, str], ...]] | None:
    refused = [
        (dish, f"not for the {method.vessel} ({method.name}); cook it beside")
        for dish, w in zip(dishes, ways, strict=True)
        if not w
    ]
    live = [(dish, w) for dish, w in zip(dishes, ways, strict=True) if w]
    if method.finish:
        live = [(dish, shortened(method, w, live)) for dish, w in live]
        refused += [(dish, "would be past its best once the rest is done") for dish, w in live if not w]
        live = [(dish, w) for dish, w in live if w]
    limits = {MAIN: method.adds, AFTER: 2 if method.finish else 0}
    timed = [(dish, w) for dish, w in live if w[0].lead != SOFTENED]
    softened = [w for _, w in live if w[0].lead == SOFTENED]
    windows = [[x.window for x in w] for _, w in timed]
    chosen = stab(windows, weights=WEIGHTS, limits=limits)
    if chosen is None:  # they refuse each other: leave out what is missed least
        windows = [[*w, _stay_out(dish)] for (dish, _), w in zip(timed, windows, strict=True)]
        chosen = stab(windows, weights=WEIGHTS, limits={**limits, OUT: 1})
    if chosen is None:
        return None
    placed = []
    for n, ((dish, w), k, at) in enumerate(zip(timed, chosen.ways, chosen.adds_s, strict=True)):
        if k < len(w):
            placed.append(Placed(way=w[k], add_s=at))
        else:
            refused.append((dish, _clash(timed, n)))
    if method.kind == "sealed" and not any(p.way.lane_is(MAIN) for p in placed):
        return None  # nothing wants the pressure: the cooker is a pot then
    if method.finish == "broil" and len({p.way.window.lane for p in placed}) < 2:
        return None  # a roast like any other
    longest = max((p.add_s for p in placed if not p.way.lane_is(AFTER)), default=0.0)
    waits_s = longest + (SOFTEN_S if softened else 0.0)
    for n, p in enumerate(placed):
        if p.way.rests:
            way, at = kept_hot(p.way, waits_s)
            placed[n] = Placed(way=way, add_s=at)
    for w in softened:
        first = min(w, key=lambda x: (x.window.lo_s > longest, x.window.cost, x.window.lo_s))
        placed.append(Placed(way=first, add_s=max(longest, first.window.lo_s)))
    if placed and all(p.way.lead == SOFTENED for p in placed):
        longest = max(p.way.window.lo_s for p in placed)
        placed = [replace(p, add_s=longest) for p in placed]
    return (tuple(placed), tuple(refused)) if placed else None


def _stay_out(dish: Dish) -> Window:
    """Leaving a dish out, as a way that costs more than any other."""
    return Window(lane=OUT, lo_s=0.0, hi_s=0.0, best_s=0.0, cost=100.0 * LEFT_OUT.get(dish.part, 4.0))


def _clash(timed: Sequence[tuple[Dish, list[Way]]], out: int) -> str:
    """By how much a dish misses the others."""
    mine = timed[out][1]
    lo, hi = min(w.window.lo_s for w in mine) / 60, max(w.window.hi_s for w in mine) / 60
    others = [(d.name, min(w.window.lo_s for w in ws) / 60) for j, (d, ws) in enumerate(timed) if j != out]
    name, need = max(others, key=lambda o: o[1], default=("", 0.0))
    if need > hi:
        return f"good for {hi:.0f} min at most, while {name} needs {need:.0f}"
    return f"needs {lo:.0f} min, longer than the others can take"


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
    liquid = room.liquid(
        method, vessel, size, ways, dinner.seasonings, longest, soup_for=dinner.soup_for
    )  # fmt: skip
    slow = method.kind == "sealed" and stages.is_slow(ways)
    when = stages.stages(method, setting, size, placed, liquid, slow_release=slow)
    draft = Draft(
        vessel=vessel,
        size=size,
        method=method,
        setting=setting,
        dinner=dinner,
        kitchen=request.kitchen,
        placed=placed,
        refused=refused,
        fill=room.fill(vessel, size, method, ways, liquid.ml if liquid else 0.0),
        liquid=liquid,
        slow_release=slow,
        stages=when,
        start_s=stages.start_s(method, placed, when),
        score=0.0,
    )
    return replace(draft, score=score(draft, request))


def _shrunk(draft: Draft, dinner: Dinner, request: Request, refused: tuple[tuple[Dish, str], ...]) -> Draft:
    """Less of everything until it fits; the rest is for another day or a second round."""
    for _ in range(6):
        limit = room.limit(draft.vessel, draft.method, [p.way for p in draft.placed])
        if draft.fill <= limit:
            break
        factor = max(0.96 * limit / draft.fill, 0.2)
        placed = tuple(replace(p, way=replace(p.way, dish=scaled(p.way.dish, factor))) for p in draft.placed)
        draft = draft_with(
            dinner, request, draft.vessel, draft.size, draft.method, draft.setting, placed, refused
        )
    return draft


def served(draft: Draft) -> float:
    """How many it feeds: by the protein when there is one, else by all of it."""
    dishes = [p.way.dish for p in draft.placed]
    if draft.dinner.soup_for:
        bowls = (sum(d.plate_g for d in dishes) + (draft.liquid.ml if draft.liquid else 0.0)) / BOWL_G
        return max(0.5, round(bowls * 2) / 2)
    return served_by(dishes, filling=any(d.part == "starch" for d in draft.dinner.dishes))


def served_by(dishes: Sequence[Dish], *, filling: bool) -> float:
    """How many adults these feed for dinner, to the half.

    Between what the protein alone would say and what all of it weighs on the plate; with
    nothing `filling` in the dinner, bread or rice goes beside it. A second protein stands
    partly in the place of a starch.
    """
    by_plate = sum(d.plate_g for d in dishes) / (PLATE_G if filling else LIGHT_PLATE_G)
    proteins = [d.servings for d in dishes if d.part == "protein" and not is_flavour(d.food)]
    mains = sorted(proteins, reverse=True)
    if not mains:
        return max(0.5, round(by_plate * 2) / 2)
    by_protein = max(APPETITE * (mains[0] + 0.5 * sum(mains[1:])), LEAN * by_plate)
    feeds = min(math.sqrt(by_protein * by_plate), 1.6 * by_plate, 1.3 * by_protein)
    return max(0.5, round(2 * feeds) / 2)


def score(draft: Draft, request: Request) -> float:
    """Points out of about ten; see PROBLEM.md for the order of what counts."""
    fits = [(PART_WEIGHT.get(p.way.dish.part, 1.0), p.way.fit) for p in draft.placed]
    if not fits:
        return -100.0
    mean = sum(w * f for w, f in fits) / sum(w for w, _ in fits)
    worst = min((f for w, f in fits if w >= 1.5), default=mean)
    points = mean + 0.35 * min(worst - 7.0, 0.0)
    points -= sum(LEFT_OUT.get(dish.part, 4.0) for dish, _ in draft.refused)
    total_min = (draft.stages.serve_s - draft.start_s) / 60.0
    hurry = 2.5 if "quick" in request.wishes else 1.0
    joint = any(whole_mm(p.way.dish) >= ROAST_MM for p in draft.placed if p.way.dish.part == "protein")
    free_min = 20.0 if "quick" in request.wishes else ROAST_MIN if joint else EVENING_MIN
    points -= hurry * MINUTE * max(total_min - free_min, 0.0)
    if request.ready_in_s is not None and request.ready_in_s > 0:
        points -= LATE_MINUTE * max(total_min - request.ready_in_s / 60.0, 0.0)
    points -= 0.3 * len({round(p.add_s) for p in draft.placed if p.way.lead != SOFTENED})
    points -= sum(_edge(p) for p in draft.placed) * 0.5
    if any(p.way.lead == SEARED and p.way.cut.id == "whole" for p in draft.placed):
        cold_min = (draft.stages.main_end_s - draft.stages.softened_s) / 60.0
        points -= COLD_MINUTE * max(cold_min - 10.0, 0.0)
    feeds = served(draft)
    if feeds < 0.8 * draft.dinner.eaters and feeds < 0.95 * served_by(draft.dinner.dishes, filling=True):
        points -= 5.0 * (1.0 - feeds / draft.dinner.eaters)
    points -= KEPT_BACK * _kept_back(draft)
    if draft.method.kind == "sealed" and not any(
        p.way.dish.kind.startswith(SEALED_FOR) for p in draft.placed
    ):
        points -= TROUBLE
    points += _wishes(draft, request) + _sauce(draft)
    return points


def _kept_back(draft: Draft) -> float:
    """The share of what the cook said is there that does not fit, by weight."""
    said = {(d.food.id, d.state): d.grams for d in draft.dinner.dishes if not d.assumed}
    total = sum(said.values())
    kept = sum(
        max(said.get((p.way.dish.food.id, p.way.dish.state), 0.0) - p.way.dish.grams, 0.0)
        for p in draft.placed
    )
    return kept / total if total else 0.0


def _edge(placed: Placed) -> float:
    """How near the edge of its window a dish is eaten, 0 to 1."""
    w = placed.way.window
    room_s = w.best_s - w.lo_s if placed.add_s < w.best_s else w.hi_s - w.best_s
    return min(1.0, abs(placed.add_s - w.best_s) / room_s) if room_s > 0 else 0.0


def _wishes(draft: Draft, request: Request) -> float:
    method = draft.method
    gains = {
        "crisp": 4.0 * method.crisp,
        "saucy": 4.0 * method.wet,
        "soup": 6.0 * method.wet,
        "stew": 5.0 * method.wet,
        "stir fry": 5.0 if method.kind == "pan" else 0.0,
        "tray bake": 5.0 if method.kind == "dry" else 0.0,
        "soft": 2.0 * method.wet,
        "broil": 5.0 if method.finish == "broil" else 0.0,
        "oven": 5.0 if method.heat == "oven" else 0.0,
        "quick": 0.0,
    }
    return sum(gains.get(wish, 0.0) for wish in request.wishes)


def _sauce(draft: Draft) -> float:
    """Coconut milk, wine, cream, tinned tomatoes and the like want a wet dish."""
    pourable = sum(1 for s in draft.dinner.seasonings if room.is_poured(s) or s.food.group in CREAMY)
    pourable += sum(1 for p in draft.placed if room.is_saucy(p.way.dish))
    return (0.6 if draft.method.wet else -1.2) * min(pourable, 2)
