"""Checks a finished plan from the outside, by another route than the one that made it.

The search solves each dish alone in an ideal medium. Here the plan's own steps are
followed: what goes in when, from which temperature, how far cold additions draw the
vessel down and how long it takes to come back, how pressure rises and falls. Each food
is simulated along that path and compared with its end point, its upper edge and the
published minimum. Room, order and the sealed lid are checked in `written`.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from knowledge.foods.store import Store
from knowledge.physics import cook
from knowledge.physics.model import Case, Outcome
from knowledge.planner import lasting
from knowledge.planner.checking.followed import DRY, case_of, in_pan_s
from knowledge.planner.checking.waiting import on_the_plate
from knowledge.planner.checking.written import SLACK_S, as_written, sealings
from knowledge.planner.gathering.dinner import figures
from knowledge.planner.model import Do, Plan, PlanItem
from knowledge.planner.techniques import technique_of, treatment
from knowledge.units import is_met

EARLY, LATE = 0.15, 0.15  # of the time in the heat: the spread that published times have among themselves
FAN_K = 20.0  # a fan oven is set so much lower for the same heat
LOOKS = 4  # at a plan while it is made; each gives what is not surely safe more time
SPARE_S, LONGEST_OWED_S = 30.0, 1800.0  # added to what is owed, and the most that one look adds; judgement


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemReport:
    """One food along the plan's own path. Times from the first food in the heat [s]."""

    food: str
    done_s: float | None
    over_s: float | None
    out_s: float
    owed_s: float  # how much longer it wants in the heat for the published minimum; 0 when that is met
    on_time: bool

    @property
    def safe(self) -> bool:
        """The published minimum is met, or there is none."""
        return self.owed_s == 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """What the re-simulation found; `problems` is empty for a sound plan."""

    items: tuple[ItemReport, ...]
    problems: tuple[str, ...]
    unsafe: tuple[str, ...]
    spread_s: float  # latest minus earliest place within the windows, measured from their middles
    interventions: int

    @property
    def sound(self) -> bool:
        """Nothing unsafe, nothing broken, every food in its window."""
        return not self.problems and not self.unsafe


def check(plan: Plan, *, store: Store) -> Report:
    """Re-simulates a plan. Pure; raises nothing for a plan the planner can make."""
    cases = [case_of(item, plan, store) for item in plan.items]
    outcomes = cook(cases)
    items = tuple(
        _judged(
            item,
            case,
            out,
            _in_heat_s(item, plan, store),
            _good_s(item, plan, store),
            measured=_is_measured(item, plan),
        )
        for item, case, out in zip(plan.items, cases, outcomes, strict=True)
    )
    problems = [
        *as_written(plan, store=store),
        *_late_or_early(items),
        *on_the_plate(plan, store=store),
    ]
    return Report(
        items=items,
        problems=tuple(problems),
        unsafe=tuple(i.food for i in items if not i.safe),
        spread_s=_spread_s(items),
        interventions=sum(s.do in (Do.ADD, Do.TURN, Do.TAKE_OUT) and s.at_s > 0 for s in plan.steps),
    )


def owed(plan: Plan, *, store: Store) -> dict[str, float]:
    """By food, how much longer it wants in the heat [s] for its published minimum; those that meet it not."""
    watched = [
        (item, case) for item in plan.items if (case := case_of(item, plan, store)).goal.safe_degC is not None
    ]
    found: dict[str, float] = {}
    for (item, case), out in zip(watched, cook([case for _, case in watched]), strict=True):
        in_heat_s = _in_heat_s(item, plan, store)
        lacks_s = _owed_s(item, case, out, in_heat_s + item.done.rest_s, measured=_is_measured(item, plan))
        if lacks_s:
            found[item.food_id] = lacks_s
    return found


def _in_heat_s(item: PlanItem, plan: Plan, store: Store) -> float:
    """How long one piece is in the heat: of what is only seared, its own turn in the pan."""
    mine = [s for s in plan.steps if item.food_id in s.foods]
    brown = next((s for s in mine if s.do is Do.BROWN), None)
    heap = item.shape == "grain"  # mince stays in
    if brown is None or heap or plan.settings.method != "saute":
        return item.out_s - item.in_s
    if item.out_s <= brown.at_s + brown.hands_s + SLACK_S and item.out_s < plan.cooking_s - 1.0:
        return in_pan_s(item, plan, store)
    return item.out_s - item.in_s


def _is_measured(item: PlanItem, plan: Plan) -> bool:
    """Whether a step has the cook look into it before it leaves the heat."""
    checks = (s for s in plan.steps if s.do in (Do.CHECK, Do.TAKE_OUT) and s.safety)
    return any(item.food_id in s.foods and s.at_s <= item.out_s + SLACK_S for s in checks)


def _judged(
    item: PlanItem, case: Case, out: Outcome, in_heat: float, good_s: float, *, measured: bool
) -> ItemReport:
    """Whether the food is done, not overdone and safe when it leaves the heat."""
    rest = item.done.rest_s
    done, over = out.done_s, out.over_s
    if done is not None and over is not None:
        over = max(over, done + good_s)
    slack = SLACK_S + EARLY * in_heat
    on_time = done is not None and done <= in_heat + rest + slack
    if over is not None and over < in_heat * (1.0 - LATE) - SLACK_S:
        on_time = False
    return ItemReport(
        food=item.food,
        done_s=None if done is None else item.in_s + done,
        over_s=None if over is None else item.in_s + over,
        out_s=item.out_s,
        owed_s=_owed_s(item, case, out, in_heat + rest, measured=measured),
        on_time=on_time,
    )


def _owed_s(item: PlanItem, case: Case, out: Outcome, available_s: float, *, measured: bool) -> float:
    """How much longer it must stay to meet the published minimum; inf when it never does, or is told wrong.

    Where a step `measured` it before it left the heat, the cook finds out what the spread of
    cooking times may bring, and the food stays in.
    """
    if case.goal.safe_degC is None:
        return 0.0
    if item.done.core_degC is None and item.done.kind in ("core_temp", "warmed"):
        return math.inf
    if item.done.core_degC is not None and not is_met(item.done.core_degC, case.goal.safe_degC):
        return math.inf
    if out.safe_s is None:
        return math.inf
    spread = available_s * EARLY + SLACK_S if measured else 0.0
    return max(out.safe_s - available_s - spread, 0.0)


def _good_s(item: PlanItem, plan: Plan, store: Store) -> float:
    """How long past done a food gets no worse, by the table of what melts, renders or only keeps warm."""
    if item.done.window_s[1] - item.done.window_s[0] > 4 * 3600.0:
        return 6 * 3600.0  # softened in the fat first, to fall apart
    heat = "dry" if plan.settings.method in DRY else "pan" if plan.settings.method == "saute" else "wet"
    food = figures(item.food_id, item.state, store)
    good_s = lasting.good_s(food, item.doneness, cut_id=item.cut_id, heat=heat, store=store)
    oven = plan.settings.oven_degC
    static = oven + FAN_K if oven and plan.settings.fan else oven
    technique = technique_of(plan.request.wishes, store)
    good_s += treatment(technique, frozenset({food.id, food.group, item.doneness}), item.doneness).simmer_s
    good_s += lasting.least_s(food, item.doneness, heat=heat, oven_degC=static, store=store)
    return good_s + _slow_end_s(plan) if good_s and item.lane == "main" else good_s


def _slow_end_s(plan: Plan) -> float:
    """Of falling pressure and of the boil after it, what adds nothing to cooking at full pressure."""
    if not sealings(plan):
        return 0.0
    last = sealings(plan)[-1]
    fall_s = last.opened_s - last.release_s
    after_s = max(max(i.out_s for i in plan.items) - last.opened_s, 0.0)
    return 0.4 * fall_s + 0.6 * after_s


def _late_or_early(items: Sequence[ItemReport]) -> Iterator[str]:
    for item in items:
        if not item.on_time:
            done = "never" if item.done_s is None else f"{item.done_s / 60:.0f} min"
            over = "" if item.over_s is None else f", past its best at {item.over_s / 60:.0f}"
            yield f"{item.food}: out at {item.out_s / 60:.0f} min, done at {done}{over}"


def _spread_s(items: Sequence[ItemReport]) -> float:
    """How far apart the foods lie in their windows: out time less the middle of the window, clipped to it."""
    places = []
    for item in items:
        if item.done_s is None:
            continue
        over = item.over_s if item.over_s is not None else item.out_s
        inside = min(max(item.out_s, item.done_s), max(over, item.done_s))
        places.append(item.out_s - inside)
    return max(places) - min(places) if places else 0.0
