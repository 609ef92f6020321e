"""The last steps: the check with a thermometer or by looks, out of the heat, the rest, the table."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.planner import words
from knowledge.planner.cooking import done_s
from knowledge.planner.draft import Placed
from knowledge.planner.model import Do, Step
from knowledge.planner.phrases import Telling, capital, core_text, names, targets
from knowledge.planner.seasoned import salty
from knowledge.planner.stages import add_at_s, out_s
from knowledge.planner.telling import step

SHORT_REST_S = 300.0  # a longer rest begins while the others still cook
AFTER_ADD_S = 60.0
CHECK_BEFORE_S = 120.0  # what is done long before is looked at with the rest


def finish(tell: Telling) -> Iterator[Step]:
    """Check, out, rest, serve."""
    draft = tell.draft
    when = draft.stages
    end = when.after_end_s
    rewarmed = [p for p in draft.placed if p.way.rewarmed]
    yield from _check([p for p in rewarmed if p.way.core_degC is not None], when.browned_s, tell)
    early = [p for p in draft.placed if out_s(p, when) < end - 1]
    for at in sorted({out_s(p, when) for p in early}):
        members = [p for p in early if out_s(p, when) == at]
        yield from _check([p for p in members if p.way.core_degC is not None], at, tell)
        rest = "rest under foil" if draft.method.kind != "pan" else "rest on a warm plate"
        text = f"{capital(names(members))} out{core_text(members, tell.units)}; {rest}."
        yield step(Do.TAKE_OUT, at, text, members, safety=True)
    yield from _check(
        [p for p in draft.placed if p.way.core_degC is not None and p not in early and p not in rewarmed],
        end,
        tell,
    )
    yield from _rest(tell, end)
    yield step(Do.SERVE, when.serve_s, _table(tell), draft.placed, hands_s=60)


def _check(probed: list[Placed], out_at_s: float, tell: Telling) -> Iterator[Step]:
    """Once they are done by the plan's own numbers, before they leave the heat."""
    if not probed:
        return
    draft = tell.draft
    done = max(max(done_s(p, draft), add_at_s(p, draft.stages) + AFTER_ADD_S) for p in probed)
    at = min(max(done, out_at_s - CHECK_BEFORE_S), out_at_s)
    text = f"Check: {targets(probed, tell)}. Not there yet: a few minutes more."
    yield step(Do.CHECK, at, text, probed, hands_s=45, safety=True)


def _rest(tell: Telling, end_s: float) -> Iterator[Step]:
    rested = [p for p in tell.draft.placed if 0 < p.way.rest_s <= SHORT_REST_S and not p.way.rests]
    if rested:
        rest = max(p.way.rest_s for p in rested)
        how = {"dry": "out of the oven", "pan": "off the heat"}.get(
            tell.draft.method.kind, "lid on, off the heat"
        )
        text = f"{capital(how)}: let the {names(rested)} stand {words.duration(rest)}."
        yield step(Do.REST, end_s, text, rested, hands_s=20)


def _table(tell: Telling) -> str:
    draft, said = tell.draft, tell.seasoned
    parts = []
    if said.scatter:
        how = "Scatter over" if draft.method.kind == "dry" else "Stir in or scatter"
        parts.append(f"{how} {words.listed(said.scatter)}.")
    if draft.dinner.soup_for and all(p.way.dish.part != "protein" for p in draft.placed):
        parts.append("Blend it smooth, off the heat, or crush half of it.")
    mine = [(p.way.dish.name, p.way.dish.food.salt_g) for p in draft.placed]
    mine += [(s.name, s.food.salt_g) for s in draft.dinner.seasonings if s.food.part in ("dairy", "sauce")]
    if salts := salty(mine):
        parts.append(
            f"Taste before you salt: {words.listed(salts)} bring{'s' if len(salts) == 1 else ''} salt."
        )
    else:
        parts.append("Taste for salt.")
    parts.append(f"Serve{f' with {words.listed(said.table)}' if said.table else ''}.")
    if draft.dinner.sides:
        parts.append(f"On the side: {words.listed([s.name for s in draft.dinner.sides])}.")
    return " ".join(parts)
