"""The time dinner is wanted: which draft keeps it, the fastest where none does, and what is said of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.planner import words
from knowledge.planner.draft import Draft
from knowledge.planner.gathering.feeding import served
from knowledge.planner.model import Plan, Request

GRACE_S = 45.0  # so much later nobody calls late
WORTH_S = 120.0  # saved, for another dinner to be the faster one
GIVES_UP = 6.0  # points of a dinner that may be lost to be in time
AS_MUCH = 0.7  # of what the best one feeds
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


def spare_s(plan: Plan, request: Request) -> float:
    """How long one may wait before beginning [s]; 0 when that is not worth a word."""
    if request.ready_in_s is None:
        return 0.0
    spare = request.ready_in_s - plan.total_s
    return spare if SPARE_S <= spare <= FAR_S else 0.0


def told(plan: Plan, best: Draft, request: Request) -> Iterator[str]:
    """The first line of a plan that is late, or has time: by how much, and what could be done."""
    if request.ready_in_s is None:
        return
    if request.ready_in_s <= 0:
        yield f"that time has passed; from now it takes {words.duration(plan.total_s)}"
    elif over := late_s(plan, request):
        line = f"{words.duration(over)} late: this takes {words.duration(plan.total_s)}, the fastest there is"
        slow = max(best.placed, key=lambda p: (p.add_s, p.way.dish.name))
        beside = len(best.placed) > 1 and slow.way.dish.part != "protein"
        could = f"without the {words.label(slow.way.dish)} it would be less" if beside else "begin at once"
        yield f"{line}; {could}"
    elif spare := spare_s(plan, request):
        yield f"time to spare: begin in {words.duration(spare)}, it takes {words.duration(plan.total_s)}"
