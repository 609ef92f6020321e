"""Why this plan: what set the time, which cut made it fit, what would break it."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.planner import words
from knowledge.planner.draft import AFTER, BROWNED, SEARED, SECOND, SOFTENED, Draft, Placed
from knowledge.planner.model import Request
from knowledge.planner.search.drafts import LEAST_OVEN_degC
from knowledge.planner.search.heat import boils_hard
from knowledge.planner.search.stages import add_at_s, knife_s
from knowledge.planner.writing.phrases import item_cut
from knowledge.wished import NOT

SPARED = 0.5  # of the most points of a style: a method with less does not make it
DECIDED = {  # wishes that are granted or not, in words
    "crisp": "crisp", "broil": "under the broiler", "saucy": "more sauce", "quick": "quick",
    "oven": "in the oven", "hob": "on the hob",
}  # fmt: skip
CRISP, SAUCY = 0.7, 0.7  # of `methods.csv`: from here it is one
QUICK_S, LITTLE_KNIFE_S = 40 * 60.0, 8 * 60.0
WORTH_PRESSURE_S = 2700.0  # what simmers longer than this is what one buys a cooker for


def reasons(draft: Draft, request: Request) -> Iterator[str]:
    """The reasons a teacher would give, most important first."""
    if draft.method.id == "open-cooker":
        long = any(p.way.window.lo_s > WORTH_PRESSURE_S for p in draft.placed)
        reason = "these foods would not be done together under it" if long else "nothing here needs it"
        yield f"pressure cooker as a pot, its lid laid on and not locked, no pressure: {reason}"
    else:
        yield f"{draft.vessel.id}: {draft.vessel.why}"
    timed = [p for p in draft.placed if p.way.lead != SOFTENED and not p.way.rests]
    if timed:
        slow = max(timed, key=lambda p: (p.way.window.lo_s, p.way.dish.name))
        cut = "" if slow.way.cut.id == "whole" else f" ({item_cut(slow, draft)})"
        need = words.duration(slow.way.window.lo_s)
        yield f"the time is set by the {words.label(slow.way.dish)}{cut}: {need}"
        tight = min(timed, key=lambda p: (_room_s(p), p.way.dish.name))
        if tight.way.lead != SEARED and _room_s(tight) < 1200:
            since, until = (words.minutes(s) for s in (tight.way.window.lo_s, tight.way.window.hi_s))
            name = words.label(tight.way.dish)
            span = f"{since}-{until}" if until > since else f"for about a minute, {since}"
            yield f"watch the {name}: good {span} min after going in, so eat on time"
    if granted := [said for wish in request.wishes if (said := _granted(wish, draft))]:
        yield f"as you wished: {words.listed(granted)}"


def denied(draft: Draft, request: Request) -> Iterator[str]:
    """The wishes that this dinner cannot grant, each with what stands in its way."""
    for wish in request.wishes:
        if not _granted(wish, draft) and (said := _said(wish, draft)):
            yield f"{said}: not this time, {_in_the_way(wish, draft, request)}"


def _said(wish: str, draft: Draft) -> str:
    """A wish in words, of those that a dinner grants or not; "" for the others."""
    named = wish.removeprefix(NOT)
    style = next((s for s in (draft.dinner.style, *draft.dinner.ruled_out) if s and s.id == named), None)
    if style is None and named not in DECIDED:
        return ""
    said = style.says if style is not None else DECIDED[named]
    return f"not {said}" if wish.startswith(NOT) else said


def _in_the_way(wish: str, draft: Draft, request: Request) -> str:
    if wish in ("oven", "broil") and (
        request.kitchen.oven_max_degC < LEAST_OVEN_degC or not _has_tray(request)
    ):
        return "there is no oven tonight"
    slow = max(draft.placed, key=lambda p: (p.way.window.lo_s * (p.way.lead != SOFTENED), p.way.dish.name))
    name, need = words.label(slow.way.dish), words.duration(slow.way.window.lo_s)
    if wish == "quick":
        return f"the {name} {'take' if words.is_plural(name) else 'takes'} {need}"
    if wish.startswith(NOT) and draft.method.wet >= SAUCY:
        return f"only liquid and {need} make the {name} tender"
    return f"better to {draft.method.name} with what is there"


def _has_tray(request: Request) -> bool:
    return any(v.id in ("sheet pan", "lidded pot") for v in request.kitchen.vessels)


def _granted(wish: str, draft: Draft) -> str:
    """A wish in words, when this dinner grants it; empty when it does not, or always would."""
    style, method = draft.dinner.style, draft.method
    if wish.startswith(NOT):
        return _spared(wish.removeprefix(NOT), draft)
    total_s = draft.stages.serve_s - draft.start_s
    granted = {
        "crisp": method.crisp >= CRISP,
        "broil": method.finish == "broil",
        "saucy": method.wet >= SAUCY,
        "soft": method.kind != "pan",
        "quick": total_s <= QUICK_S,
        "oven": method.heat == "oven",
        "hob": method.heat == "hob",
        "less chopping": sum(knife_s(p.way) for p in draft.placed) <= LITTLE_KNIFE_S,
    }
    if style is not None and wish == style.id:
        said = draft.dinner.technique.says or style.says
        return said if style.points.get(method.id, 0.0) > 0.0 else ""
    return wish if granted.get(wish, False) else ""


def _spared(wish: str, draft: Draft) -> str:
    """What was ruled out, in words, when this dinner keeps clear of it."""
    style = next((s for s in draft.dinner.ruled_out if s.id == wish), None)
    if style is not None:
        most = max(style.points.values(), default=0.0)
        return f"not {style.says}" if style.points.get(draft.method.id, 0.0) <= SPARED * most else ""
    kept = {"saucy": draft.method.wet < SAUCY, "crisp": draft.method.crisp < CRISP}
    return f"not {wish}" if kept.get(wish, False) else ""


def item_reason(placed: Placed, draft: Draft) -> str:
    """One line on why this food goes in when it does, in this cut."""
    way, when = placed.way, draft.stages
    need = words.duration(way.window.lo_s)
    if way.rewarmed:
        return "seared until done, rested, and sliced back in for the last minute: hot and still juicy"
    if way.rests:
        return "seared until done, then rests on a plate while the others cook"
    if boils_hard(way.dish, draft.method):
        return f"boils hard first, then simmers until tender: {need} in all"
    if way.lead == SEARED and way.cut.id == "whole":
        return "seared first, rests while the others cook, and goes back in to be done and hot"
    if way.lead == SEARED:
        return "seared until done, back at the end so that it stays juicy"
    if way.lead == SOFTENED:
        return "first in the fat: the base of the flavour"
    if way.lane_is(AFTER) and draft.method.finish == "broil":
        return f"quick: {need} under the broiler, while the rest browns"
    if way.lane_is(SECOND):
        return f"{need} at pressure are enough, so it waits for the second, short sealing"
    if way.lane_is(AFTER):
        return f"too quick for pressure; {need} in the open cooker"
    if when.at_pressure_s > when.main_start_s:
        held_s = when.main_end_s - when.at_pressure_s
        if 2.0 * way.window.lo_s < held_s and way.cut.id == "whole":
            return f"tender after {need} at pressure; whole, it keeps its shape until the rest is done"
        return f"done after {need} at pressure in this cut, so it is ready with the rest"
    if add_at_s(placed, when) <= when.main_start_s + 1:
        base = "browned for flavour, then " if way.lead == BROWNED else ""
        return f"{base}{need} from here, so it goes in first"
    if way.lead == BROWNED:
        return f"browned for flavour, then back in: {need} are enough"
    return f"{need} are enough, so it joins later"


def _room_s(placed: Placed) -> float:
    return placed.way.window.hi_s - placed.way.window.lo_s
