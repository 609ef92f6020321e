"""The steps of a sheet pan: in, more onto it, turned, and the last minutes under the broiler."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.planner import words
from knowledge.planner.draft import AFTER, Placed
from knowledge.planner.model import Do, Step
from knowledge.planner.search.stages import add_at_s, out_s
from knowledge.planner.writing.phrases import Telling, capital, names, sheet_name
from knowledge.planner.writing.telling import each_once, groups_in, step

GLOW_S = 240.0  # until a broiler glows
TURN_FROM_MM = 18.0  # under the broiler; what is thinner is done from above
TURN_FROM_S = 22 * 60.0  # shorter roasts need no turning
ALL_ROUND_FROM_S = 12 * 60.0  # but sausages and wings do, from here


def on_the_tray(tell: Telling) -> Iterator[Step]:
    draft = tell.draft
    end = draft.stages.after_end_s
    groups = groups_in([p for p in draft.placed if not p.way.lane_is(AFTER)], draft)
    for number, (at, members) in enumerate(groups):
        lies = each_once(tell.hand(p).tray for p in members)
        if number == 0:
            around = f" Pour {words.listed(tell.seasoned.pour)} around." if tell.seasoned.pour else ""
            where = f"on the {sheet_name(draft.size, tell.units)} in one layer, into the middle of the oven"
            text = f"{capital(names(members))} {where}.{lies}{around}"
        else:
            there = names([p for _, group in groups[:number] for p in group if out_s(p, draft.stages) > at])
            text = (
                f"Oven out, push the {there} aside, {names(members)} on, back in: "
                f"{words.duration(end - at)} to go.{lies}"
            )
        yield step(Do.ADD, at, text, members, hands_s=60)
    first = groups[0][0]
    end = draft.stages.main_end_s
    half = first + 0.55 * (end - first)
    busy_then = any(abs(at - half) < 420 for at, _ in groups[1:])
    turned = [p for p in draft.placed if _is_turned(p, tell, first, end, half)]
    if turned and not busy_then:
        yield step(Do.TURN, half, f"Turn {names(turned)}; back in.", turned, hands_s=60)
    yield from _broil(tell)


def _broil(tell: Telling) -> Iterator[Step]:
    """What is laid on last, under the broiler, and turned half way where it is thick."""
    draft = tell.draft
    when = draft.stages
    groups = groups_in([p for p in draft.placed if p.way.lane_is(AFTER)], draft)
    if not groups:
        return
    glow = max(when.main_end_s - GLOW_S, when.main_start_s + 60.0)
    yield step(
        Do.HEAT, min(glow, when.main_end_s), "Oven over to broiler, on full, so that it glows.", hands_s=20
    )
    for number, (at, members) in enumerate(groups):
        togo = words.duration(when.after_end_s - at)
        text = (
            f"Sheet out; lay on {names(members)}, dry and oiled. Back in, one rack below the top, under the "
            f"broiler: {togo}. Stay beside it: fat can catch fire, and it burns in a minute."
            if number == 0
            else f"Lay on {names(members)}: {togo} to go under the broiler."
        )
        yield step(Do.ADD, at, text, members, hands_s=60, safety=number == 0)
    thick = [p for _, group in groups for p in group if p.way.piece.size_mm >= TURN_FROM_MM]
    if thick:
        half = when.after_end_s - 0.5 * min(p.add_s for p in thick)
        yield step(Do.TURN, half, f"Turn {names(thick)} once; back under the broiler.", thick, hands_s=45)


def _is_turned(placed: Placed, tell: Telling, first_s: float, end_s: float, half_s: float) -> bool:
    """Roots and chips on a long roast; what browns all round on a shorter one too."""
    if add_at_s(placed, tell.draft.stages) >= half_s - 300.0:
        return False
    if tell.hand(placed).turn:
        return end_s - first_s > ALL_ROUND_FROM_S
    return placed.way.dish.part in ("vegetable", "starch") and end_s - first_s > TURN_FROM_S
