"""One method and setting: which cut and which moment for each dish, and what has to stay out.

The exact search is `stabbing`; here quick foods are tried in both lanes and dishes that
refuse each other leave in the order in which they are missed least.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace
from functools import lru_cache
from itertools import pairwise

from knowledge.foods.model import Behaviour
from knowledge.planner.draft import AFTER, BROWNED, MAIN, SEARED, SECOND, SOFTENED, Placed, Way
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.methods import Method
from knowledge.planner.search.browning import is_mince
from knowledge.planner.search.frying import STILL, comes_last, staged
from knowledge.planner.search.scoring import edge_share, missed
from knowledge.planner.search.shortened import shortened
from knowledge.planner.search.stabbing import Chosen, Weights, Window, stab, way_cost
from knowledge.planner.search.ways import SOFTEN_S
from knowledge.planner.search.windows import kept_hot

WEIGHTS = Weights(per_add=0.5, per_s=0.02 / 60.0, edge=0.6)
WAITS_S = 480.0  # browned meat on its plate, while onions soften and the liquid comes to a boil
LONGER_S = 120.0  # of that, where the dish has its onions fried for longer (`stages.PLATE_DOWN_S`)
SHORT_S, LONG_S = 120.0, 15 * 60.0  # of a second sealing; shorter is stirred in, longer is no second one
FOAMING = frozenset({Behaviour.FOAMS, Behaviour.SWELLS})
TOASTED_BY = 1.25  # of its time: so long risotto rice is in, to be in the fat before the liquid; judgement
ONE_TRIP_S = 240.0  # nobody gets up twice within it, where once will do; common practice, no source
WELL_WITHIN = 0.5  # of the way from the best moment to the edge of a window; judgement
OUT = "out"  # the lane of what stays in the fridge


def lay(
    dishes: Sequence[Dish], method: Method, ways: list[list[Way]]
) -> tuple[tuple[Placed, ...], tuple[tuple[Dish, str], ...]] | None:
    """A way and an add time for each dish; those that refuse the method or the others, with why."""
    if not method.finish:
        return _lay(dishes, method, ways)
    both = [i for i, w in enumerate(ways) if len({x.lane_is(AFTER) for x in w}) == 2]
    trials: list[set[int]] = [set(), set(both), *({i} for i in both)]
    if method.seals_twice:  # there the second lid takes what can be under pressure
        trials = [set(), {i for i in both if _is_better_late(ways[i])}]
    found = []
    for n, late in enumerate(trials):
        if n and not late:
            continue
        kept = [
            [x for x in w if i not in both or x.lane_is(AFTER) == (i in late)] for i, w in enumerate(ways)
        ]
        laid = _lay(dishes, method, kept)
        if laid is not None:
            lost = sum(missed(dish) for dish, _ in laid[1])
            tired = sum(edge_share(p) for p in laid[0]) - sum(p.way.fit for p in laid[0]) * 0.5
            found.append((lost, tired + 0.4 * bool(late), n, laid))
    return min(found, key=lambda f: f[:3])[3] if found else None


def _lay(
    dishes: Sequence[Dish], method: Method, ways: list[list[Way]]
) -> tuple[tuple[Placed, ...], tuple[tuple[Dish, str], ...]] | None:
    """The best choice in which no meat waits half cooked: browned it goes in at once, or pale in its turn."""
    if method.kind == "pan":
        return _fried(dishes, method, ways)
    waiting: set[int] = set()
    for _ in dishes:
        led = [_led(w, "" if id(dish) in waiting else BROWNED) for dish, w in zip(dishes, ways, strict=True)]
        laid = _stabbed(dishes, method, led)
        if laid is None or method.kind != "wet":
            return laid
        longest = max((p.add_s for p in laid[0]), default=0.0)
        placed = tuple(_at_once(p, longest) for p in laid[0])
        more = {id(p.way.dish) for p in placed if _waits(p, longest)}
        if not more:
            return placed, laid[1]
        waiting |= more
    return laid


def _fried(
    dishes: Sequence[Dish], method: Method, ways: list[list[Way]]
) -> tuple[tuple[Placed, ...], tuple[tuple[Dish, str], ...]] | None:
    """An open pan: fish last beside what is done by then, or else fried first like all that lies still."""
    laid = None
    for lead in ("", SEARED):
        kept = [[w for w in ws if w.manner != STILL or w.lead == lead] or ws for ws in ways]
        laid = _stabbed(dishes, method, kept)
        if laid is None:
            continue
        longest = max((p.add_s for p in laid[0]), default=0.0)
        laid = tuple(_at_once(p, longest) for p in laid[0]), laid[1]
        if comes_last(laid[0]):
            return laid
    return laid


def _led(ways: list[Way], lead: str) -> list[Way]:
    """Of meat that may be browned or not, the ways that are or are not; all ways of everything else."""
    if not any(w.lead == BROWNED for w in ways):
        return ways
    return [w for w in ways if w.lead == lead or w.lane_is(AFTER)]


def _waits(placed: Placed, longest_s: float) -> bool:
    """Whether it would lie on a plate, raw in the middle, for longer than onions take (USDA FSIS: never)."""
    longer_s = LONGER_S if placed.way.dish.made.soften_s > SOFTEN_S else 0.0
    return placed.way.lead == BROWNED and longest_s - placed.add_s > WAITS_S - longer_s


def _at_once(placed: Placed, longest_s: float) -> Placed:
    """What is in the fat first, in from the start where it is good for so long.

    Browned meat that would wait, rice to be toasted; mince never comes out.
    """
    way = placed.way
    heap = way.lead == BROWNED and is_mince(way.dish, way.piece.shape)
    early = way.toasts and way.lane_is(MAIN) and longest_s <= TOASTED_BY * way.window.lo_s
    if (heap or early or _waits(placed, longest_s)) and way.window.hi_s >= longest_s:
        return replace(placed, add_s=longest_s)
    return placed


def _stabbed(
    dishes: Sequence[Dish], method: Method, ways: list[list[Way]]
) -> tuple[tuple[Placed, ...], tuple[tuple[Dish, str], ...]] | None:
    refused = [
        (dish, f"not for the {method.vessel} ({method.name})")
        for dish, w in zip(dishes, ways, strict=True)
        if not w
    ]
    live = [(dish, w) for dish, w in zip(dishes, ways, strict=True) if w]
    if method.finish:
        live = [(dish, shortened(method, w, live)) for dish, w in live]
        refused += [(dish, "would be past its best once the rest is done") for dish, w in live if not w]
        live = [(dish, w) for dish, w in live if w]
    limits = {MAIN: method.adds, AFTER: 2 if method.finish else 0}
    if method.seals_twice:
        limits = {MAIN: 1, SECOND: 1, AFTER: 2}
    timed = [(dish, w) for dish, w in live if w[0].lead != SOFTENED]
    softened = [w for _, w in live if w[0].lead == SOFTENED]
    windows = tuple(tuple(x.window for x in w) for _, w in timed)
    chosen = _chosen(windows, tuple(limits.items()))
    if chosen is None:  # they refuse each other: leave out what is missed least
        windows = tuple((*w, _stay_out(dish)) for (dish, _), w in zip(timed, windows, strict=True))
        chosen = _chosen(windows, ((OUT, 1), *limits.items()))
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
    if method.seals_twice and not _is_worth_two(placed):
        return None
    if method.finish == "broil" and len({p.way.window.lane for p in placed}) < 2:
        return None  # a roast like any other
    if method.kind != "pan":
        placed = in_one_go(placed)
    longest = max((p.add_s for p in placed if not p.way.lane_is(AFTER)), default=0.0)
    placed = plated(placed, softens=bool(softened))
    for w in softened:
        first = min(w, key=lambda x: (x.window.lo_s > longest, x.window.cost, x.window.lo_s))
        placed.append(Placed(way=first, add_s=max(longest, first.window.lo_s)))
    if placed and all(p.way.lead == SOFTENED for p in placed):
        longest = max(p.way.window.lo_s for p in placed)
        placed = [replace(p, add_s=longest) for p in placed]
    if method.kind == "pan":
        placed = staged(placed)
    return (tuple(placed), tuple(refused)) if placed else None


def _is_better_late(ways: list[Way]) -> bool:
    """Whether it takes better to being stirred in than to pressure."""
    late, early = ([w.fit for w in ways if w.lane_is(AFTER) == is_late] for is_late in (True, False))
    return max(late, default=0.0) > max(early, default=0.0)


@lru_cache(maxsize=512)
def _chosen(windows: tuple[tuple[Window, ...], ...], limits: tuple[tuple[str, int], ...]) -> Chosen | None:
    """`stab`, remembered: a pot and an open cooker, or a swap there and back, ask the same."""
    return stab(windows, weights=WEIGHTS, limits=dict(limits))


def _is_worth_two(placed: Sequence[Placed]) -> bool:
    """Whether a short second sealing follows a longer first one, and nothing foams when the lid comes off."""
    second = [p.add_s for p in placed if p.way.lane_is(SECOND)]
    first = max((p.add_s for p in placed if p.way.lane_is(MAIN)), default=0.0)
    if not second or not SHORT_S <= max(second) <= LONG_S or first - max(second) < SHORT_S:
        return False
    return not any(p.way.dish.food.pressure in FOAMING and p.way.lane_is(MAIN) for p in placed)


def plated(placed: Sequence[Placed], *, softens: bool) -> list[Placed]:
    """The same, with each steak or chop that rests kept hot for as long as the others cook."""
    longest = max((p.add_s for p in placed if not p.way.lane_is(AFTER) and not p.way.rests), default=0.0)
    waits_s = longest + (SOFTEN_S if softens else 0.0)
    found = []
    for p in placed:
        way, at = kept_hot(p.way, waits_s)
        found.append(Placed(way=way, add_s=at if p.way.rests else p.add_s))
    return found


def in_one_go(placed: Sequence[Placed]) -> list[Placed]:
    """The same, with what would go in minutes apart in together at a moment that is good for all of it."""
    found = list(placed)
    times = sorted({(p.way.window.lane, p.add_s) for p in placed})
    for (lane, later_s), (its, sooner_s) in pairwise(times):
        if lane != its or sooner_s - later_s > ONE_TRIP_S:
            continue
        both = [p for p in found if p.way.lane_is(lane) and later_s <= p.add_s <= sooner_s]
        windows = [p.way.window for p in both]
        lo_s = max(w.best_s - WELL_WITHIN * (w.best_s - w.lo_s) for w in windows)
        hi_s = min(w.best_s + WELL_WITHIN * (w.hi_s - w.best_s) for w in windows)
        if lo_s > hi_s or len({p.add_s for p in both}) < 2:
            continue
        moments = sorted({min(max(t, lo_s), hi_s) for w in windows for t in (w.lo_s, w.best_s, w.hi_s)})
        costs = [(sum(way_cost(w, t, WEIGHTS) for w in windows), t) for t in moments]
        at = min(costs)[1]
        found = [replace(p, add_s=at) if p in both else p for p in found]
    return found


def _stay_out(dish: Dish) -> Window:
    """Leaving a dish out, as a way that costs more than any other."""
    return Window(lane=OUT, lo_s=0.0, hi_s=0.0, best_s=0.0, cost=100.0 * missed(dish))


def _clash(timed: Sequence[tuple[Dish, list[Way]]], out: int) -> str:
    """By how much a dish misses the others."""
    mine = timed[out][1]
    lo, hi = min(w.window.lo_s for w in mine) / 60, max(w.window.hi_s for w in mine) / 60
    others = [(d.name, min(w.window.lo_s for w in ws) / 60) for j, (d, ws) in enumerate(timed) if j != out]
    name, need = max(others, key=lambda o: o[1], default=("", 0.0))
    if need > hi:
        return f"good for {hi:.0f} min at most, while {name} needs {need:.0f}"
    spans = [(d.name, max(w.window.hi_s for w in ws) / 60) for j, (d, ws) in enumerate(timed) if j != out]
    brief, most = min(spans, key=lambda o: o[1], default=("", math.inf))
    if most < lo:
        return f"needs {lo:.0f} min, while {brief} is good for {most:.0f} at most"
    return f"needs {lo:.0f} min, longer than the others can take"
