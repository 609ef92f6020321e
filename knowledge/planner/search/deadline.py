"""The time dinner is wanted: which draft keeps it, the fastest where none does, and what is said of it."""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.planner import words
from knowledge.planner.draft import SOFTENED, Draft
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.gathering.feeding import served
from knowledge.planner.model import Plan, Request

GRACE_S = 45.0  # so much later nobody calls late
WORTH_S = 120.0  # saved, for another dinner to be the faster one
GIVES_UP = 6.0  # points of a dinner that may be lost to be in time
AS_MUCH = 0.7  # of what the best one feeds
HOPELESS_S = 90 * 60.0  # later than that the answer is no, with the nearest there is
SPARE_S, FAR_S = 30 * 60.0, 20 * 3600.0  # so far ahead it is said when to begin; not of another day


def took_s(draft: Draft) -> float:
    """From the first knife stroke to the table [s]."""
    return draft.stages.serve_s - draft.start_s


def ordered(found: Sequence[Draft], request: Request) -> list[Draft]:
    """The drafts, best first: in time before late, and when all are late the fastest of a full dinner."""
    drafts = list(found)
    if not drafts or request.ready_in_s is None:
        return drafts
    due_s = request.ready_in_s + GRACE_S
    best = drafts[0]
    if took_s(best) <= due_s:
        return drafts
    full = [d for d in drafts if _is_as_full(d, best)]
    in_time = [d for d in full if took_s(d) <= due_s and d.score > best.score - GIVES_UP]
    fastest = min(full, key=lambda d: (took_s(d), -d.score))
    first = in_time[0] if in_time else fastest if took_s(fastest) < took_s(best) - WORTH_S else best
    return [first, *(d for d in drafts if d is not first)]


def _is_as_full(draft: Draft, best: Draft) -> bool:
    """Whether it is the same dinner in another way, with nothing more left out."""
    lost = len(draft.refused) <= len(best.refused) and len(draft.placed) >= len(best.placed)
    return lost and served(draft) >= AS_MUCH * served(best)


def late_s(plan: Plan, request: Request) -> float:
    """By how much it misses the time [s]; 0 in time or when none was said."""
    if request.ready_in_s is None:
        return 0.0
    over = plan.total_s - max(request.ready_in_s, 0.0)
    return over if over > 2 * GRACE_S else 0.0


def is_out_of_reach(plan: Plan, request: Request) -> bool:
    """Whether it is so late that nobody would wait: an hour and a half and more, and most of its own time."""
    over = late_s(plan, request)
    return over > HOPELESS_S and over > 0.5 * plan.total_s and (request.ready_in_s or 0.0) > 0.0


def spare_s(plan: Plan, request: Request) -> float:
    """How long one may wait before beginning [s]; 0 when that is not worth a word."""
    if request.ready_in_s is None:
        return 0.0
    spare = request.ready_in_s - plan.total_s
    return spare if SPARE_S <= spare <= FAR_S else 0.0


def timing(plan: Plan, request: Request) -> str:
    """The first line of a plan that is late, or has time: by how much, or when to begin; "" for neither."""
    if request.ready_in_s is None:
        return ""
    takes = words.duration(plan.total_s)
    if request.ready_in_s <= 0:
        return f"that time has passed; from now it takes {takes}"
    if over := late_s(plan, request):
        return f"{words.duration(over)} late: this takes {takes}"
    if spare := spare_s(plan, request):
        return f"time to spare: begin in {words.duration(spare)}, it takes {takes}"
    return ""


def held_up_by(best: Draft) -> Dish | None:
    """What a late dinner could do without: the slowest food that is not what it is about; None for none."""
    timed = [p for p in best.placed if p.way.lead != SOFTENED]
    beside = [p for p in timed if p.way.dish.part != "protein"]
    if len(timed) < 2 or not beside:
        return None
    return max(beside, key=lambda p: (p.way.window.lo_s, p.way.dish.name)).way.dish


def remedy(plan: Plan, without: Dish | None, then: Plan | None, request: Request) -> str:
    """What would make it less late: the plan `then` made without the food that holds it up."""
    fastest = "that is the fastest there is"
    same = then is None or words.duration(then.total_s) == words.duration(plan.total_s)
    if without is None or then is None or same or plan.total_s - then.total_s < WORTH_S:
        return f"{fastest}; begin at once"
    left = f"without the {words.label(without)} it takes {words.duration(then.total_s)}"
    return f"{fastest}; {left}{'' if late_s(then, request) else ', in time'}"
