"""The points of a draft, as a cook would judge it; the order of what counts is in PROBLEM.md."""

from __future__ import annotations

from knowledge.planner.draft import SEARED, SOFTENED, Draft, Placed
from knowledge.planner.gathering.amounts import is_flavour
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.gathering.feeding import served, served_by
from knowledge.planner.methods import whole_mm
from knowledge.planner.model import Request
from knowledge.planner.search import room
from knowledge.planner.search.frying import LATE
from knowledge.wished import ruled_out

PART_WEIGHT = {"protein": 3.0, "starch": 2.0, "vegetable": 1.5, "aromatic": 0.4}
LEFT_OUT = {"protein": 12.0, "starch": 7.0, "vegetable": 4.5, "aromatic": 1.0}
MINUTE = 0.05  # a minute beyond what an evening has anyway
HURRY = 5.0  # times as much, for one who wants it quick
EVENING_MIN = 45.0  # what a weeknight has for dinner anyway; judgement
ROAST_MIN = 110.0  # who buys a joint or a bird has that evening
LATE_MINUTE = 0.4  # a minute beyond the deadline
LATEST_MIN = 30.0  # later than that is late all the same: no reason to leave the meat out
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
ROAST_MM = 70.0  # from here a joint or a bird is black outside before the middle is done in a hot oven
AHEAD_MIN, MARGIN_MIN, LEISURE_MIN = 150.0, 30.0, 210.0  # dinner so far ahead: no hurry but for a margin
SURE = 0.3  # of the room to an edge, which is left however uncertain a food is; judgement
KEPT_BACK = 14.0  # points for all that was said; a vessel that holds it wins
TWICE = 1.2  # to let the pressure go, fill up and lock again
TROUBLE = 2.5  # a cooker is one more thing to wash and watch; it must save time to be worth it
SAUCE, NO_SAUCE = 0.6, -1.2  # points for each of what makes a sauce, where it does and where it cannot


def missed(dish: Dish) -> float:
    """Points for leaving a dish out: what fills most, flavour meat as little as a vegetable."""
    return LEFT_OUT.get("vegetable" if is_flavour(dish.food) else dish.part, 4.0)


def score(draft: Draft, request: Request) -> float:
    """Points out of about ten; see PROBLEM.md for the order of what counts."""
    fits = [(PART_WEIGHT.get(p.way.dish.part, 1.0), p.way.fit) for p in draft.placed]
    if not fits:
        return -100.0
    mean = sum(w * f for w, f in fits) / sum(w for w, _ in fits)
    worst = min((f for w, f in fits if w >= 1.5), default=mean)
    points = mean + 0.35 * min(worst - 7.0, 0.0)
    points -= sum(missed(dish) for dish, _ in draft.refused)
    total_min = (draft.stages.serve_s - draft.start_s) / 60.0
    hurry = HURRY if "quick" in request.wishes else 1.0
    joint = any(whole_mm(p.way.dish) >= ROAST_MM for p in draft.placed if p.way.dish.part == "protein")
    free_min = 20.0 if "quick" in request.wishes else ROAST_MIN if joint else EVENING_MIN
    free_min = max(free_min, _leisure_min(request))
    points -= hurry * MINUTE * max(total_min - free_min, 0.0)
    if request.ready_in_s is not None and request.ready_in_s > 0:
        points -= LATE_MINUTE * min(max(total_min - request.ready_in_s / 60.0, 0.0), LATEST_MIN)
    points -= 0.3 * len({round(p.add_s) for p in draft.placed if _is_a_trip(p)})
    points -= sum(edge_share(p) for p in draft.placed) * 0.5
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
    if draft.method.kind == "sealed" and _leisure_min(request):
        points -= TROUBLE  # speed is all it brings
    points -= TWICE * draft.method.seals_twice
    points += _wishes(draft, request) + _sauce(draft)
    return points


def _is_a_trip(placed: Placed) -> bool:
    """Whether it is one more thing to do; garlic is thrown in while one stands there."""
    return placed.way.lead != SOFTENED and placed.way.manner != LATE


def _leisure_min(request: Request) -> float:
    """How long a dinner may take when its time is hours away: the better one before the faster one."""
    ahead_min = (request.ready_in_s or 0.0) / 60.0
    return min(ahead_min - MARGIN_MIN, LEISURE_MIN) if ahead_min >= AHEAD_MIN else 0.0


def _kept_back(draft: Draft) -> float:
    """The share of what the cook said is there that does not fit, by weight."""
    said = {(d.food.id, d.state): d.grams for d in draft.dinner.dishes if not d.assumed}
    total = sum(said.values())
    kept = sum(
        max(said.get((p.way.dish.food.id, p.way.dish.state), 0.0) - p.way.dish.grams, 0.0)
        for p in draft.placed
    )
    return kept / total if total else 0.0


def edge_share(placed: Placed) -> float:
    """How near the edge of its window a dish is eaten, 0 to 1; what is uncertain has less room.

    The room is from the best moment to the edge, less what published times of the food differ by.
    """
    w = placed.way.window
    room_s = w.best_s - w.lo_s if placed.add_s < w.best_s else w.hi_s - w.best_s
    sure_s = max(room_s - placed.way.doubt_s, SURE * room_s)
    return min(1.0, abs(placed.add_s - w.best_s) / sure_s) if sure_s > 0 else 0.0


def _wishes(draft: Draft, request: Request) -> float:
    method = draft.method
    gains = {
        "crisp": 6.0 * method.crisp,
        "saucy": 4.0 * method.wet,
        "soft": 2.0 * method.wet,
        "broil": 5.0 if method.finish == "broil" else 0.0,
        "oven": 5.0 if method.heat == "oven" else 0.0,
        "quick": 0.0,
    }
    style = draft.dinner.style
    named = style.points.get(method.id, 0.0) if style is not None else 0.0
    unwanted = [gains.get(wish, 0.0) for wish in ruled_out(request.wishes)]
    unwanted += [s.points.get(method.id, 0.0) for s in draft.dinner.ruled_out]
    return named + sum(gains.get(wish, 0.0) for wish in request.wishes) - max(unwanted, default=0.0)


def _sauce(draft: Draft) -> float:
    """Coconut milk, wine, cream, tinned tomatoes and the like want a wet dish; steam only takes butter."""
    seasonings = draft.dinner.seasonings
    poured = sum(1 for s in seasonings if room.is_poured(s))
    poured += sum(1 for p in draft.placed if room.is_saucy(p.way.dish))
    creamy = sum(1 for s in seasonings if room.is_creamy(s))
    if draft.method.steams and poured + creamy:
        return NO_SAUCE * min(poured + creamy, 2)
    return (SAUCE if draft.method.wet else NO_SAUCE) * min(poured + creamy, 2)
