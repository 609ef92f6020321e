"""A plan on the clock: beginning, moving, telling and changing the steps of a running cook.

Pure bookkeeping over `LiveCook`; what is said about it stands in `livecook` and
`stove`. A step waits, is told, and is done or skipped. Its reminder has the key
`cook:step:n`, where n counts how often it was put back after being told: moving a
waiting step keeps the key (the row moves), telling a step again takes a new one.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace
from datetime import datetime, timedelta

from bot.core.actions import Action, CancelReminders, Remind
from bot.core.state import LiveCook, LiveStep, StepStatus
from knowledge.planner.model import Do, Plan, Step

GATHER_S = 45.0  # steps that follow a told one this closely are told with it
GATHER_WORK_S = 120.0  # the same among things to do before and into the heat
LATE_S = 120.0  # a reminder later than this says so
CLOSE = "close"  # the step id of the reminder that closes a cook nobody ended
CLOSE_AFTER_S = 45 * 60.0  # time to eat; leftovers go to the fridge well within two hours

OPEN = (StepStatus.WAITING, StepStatus.TOLD)
# Steps from which heat is counted: done late, everything after them is late.
HEATING = frozenset({Do.PREHEAT, Do.PREP, Do.BROWN, Do.ADD, Do.LID, Do.HEAT})


def begin(
    plan: Plan, *, cook_id: str, number: int, offer_no: int, now: datetime, zero_at: datetime
) -> LiveCook:
    """The plan on the clock. Steps that lie before `now` by the new clock count as done."""
    steps = tuple(
        LiveStep(
            number=n,
            step_id=step.id,
            due_at=zero_at + timedelta(seconds=step.at_s),
            status=StepStatus.DONE if zero_at + timedelta(seconds=step.at_s) < now else StepStatus.WAITING,
        )
        for n, step in enumerate(plan.steps, 1)
    )
    return LiveCook(
        cook_id=cook_id,
        number=number,
        offer_no=offer_no,
        plan=plan,
        started_at=now,
        zero_at=zero_at,
        steps=steps,
        next_number=len(steps) + 1,
    )


def key(cook: LiveCook, live: LiveStep) -> str:
    """The key of the reminder, and of the message, of this telling of a step."""
    return f"{cook.cook_id}:{live.step_id}:{live.nudges}"


def close_key(cook: LiveCook) -> str:
    """The key of the reminder that closes the cook."""
    return f"{cook.cook_id}:{CLOSE}:0"


def closes_at(cook: LiveCook) -> datetime:
    """When a cook that nobody ends closes itself."""
    return table_at(cook) + timedelta(seconds=CLOSE_AFTER_S)


def latest_told(cook: LiveCook) -> list[LiveStep]:
    """The steps of the latest message that are not ticked off."""
    open_steps = told(cook)
    return [s for s in open_steps if s.told_with == open_steps[-1].told_with] if open_steps else []


def step_of(cook: LiveCook, live: LiveStep) -> Step:
    """The step of the plan behind a live step."""
    return next(step for step in cook.plan.steps if step.id == live.step_id)


def waiting(cook: LiveCook) -> list[LiveStep]:
    """Steps that have not been told, in order of time."""
    return sorted(
        (s for s in cook.steps if s.status is StepStatus.WAITING), key=lambda s: (s.due_at, s.number)
    )


def told(cook: LiveCook) -> list[LiveStep]:
    """Steps told and not ticked off, oldest first."""
    return sorted((s for s in cook.steps if s.status is StepStatus.TOLD), key=lambda s: (s.due_at, s.number))


def elapsed_s(cook: LiveCook, now: datetime) -> float:
    """The plan's time."""
    return (now - cook.zero_at).total_seconds()


def table_at(cook: LiveCook) -> datetime:
    """When dinner is on the table as things stand: the serving step, or the last one."""
    last = max(cook.steps, key=lambda s: s.due_at)
    serving = [s for s in cook.steps if step_of(cook, s).do is Do.SERVE]
    return max((s.due_at for s in serving), default=last.due_at)


def changed(cook: LiveCook, news: Iterable[LiveStep]) -> LiveCook:
    """The cook with these steps in the place of those with their numbers."""
    by_number = {s.number: s for s in news}
    return replace(cook, steps=tuple(by_number.get(s.number, s) for s in cook.steps))


def mark(cook: LiveCook, steps: Iterable[LiveStep], status: StepStatus) -> LiveCook:
    """The cook with these steps done, skipped ..."""
    return changed(cook, (replace(s, status=status) for s in steps))


def gathered(cook: LiveCook, first: LiveStep) -> list[LiveStep]:
    """The steps to be told together with `first`: those at the same moment, and knife work in a row."""
    group = [first]
    for live in waiting(cook):
        if live.due_at < first.due_at or live.number == first.number:
            continue
        do, before = step_of(cook, live).do, step_of(cook, group[-1]).do
        limit_s = GATHER_WORK_S if do in HEATING and before in HEATING else GATHER_S
        close = (live.due_at - first.due_at).total_seconds() <= limit_s
        in_a_row = do is Do.PREP and before in (Do.PREP, Do.PREHEAT)
        if not (close or in_a_row):
            break
        group.append(live)
    return group


def tell(cook: LiveCook, group: Iterable[LiveStep]) -> LiveCook:
    """The cook with these steps told, in one message headed by the first."""
    steps = list(group)
    head = steps[0].number
    return changed(cook, (replace(s, status=StepStatus.TOLD, told_with=head) for s in steps))


def shift(cook: LiveCook, by_s: float, *, after: datetime | None = None) -> LiveCook:
    """Everything that waits moves; `after` leaves steps due earlier where they are."""
    by = timedelta(seconds=by_s)
    moved = [
        replace(s, due_at=s.due_at + by)
        for s in cook.steps
        if s.status is StepStatus.WAITING and (after is None or s.due_at >= after)
    ]
    return replace(changed(cook, moved), zero_at=cook.zero_at + by)


def tell_again(cook: LiveCook, steps: Iterable[LiveStep], at: datetime) -> LiveCook:
    """Steps already told wait again, until `at`, under a new key."""
    return changed(
        cook,
        (
            replace(s, status=StepStatus.WAITING, due_at=at, nudges=s.nudges + 1, told_with=None)
            for s in steps
        ),
    )


def reminders(old: LiveCook | None, new: LiveCook) -> tuple[Action, ...]:
    """What the store of reminders must do to get from the old cook to the new one."""
    had = {} if old is None else {key(old, s): s.due_at for s in waiting(old)}
    want = {key(new, s): s for s in waiting(new)}
    gone = tuple(k for k in had if k not in want)
    actions: list[Action] = []
    if gone:
        actions.append(CancelReminders(cook_id=new.cook_id, keys=gone))
    actions += [
        Remind(key=k, cook_id=new.cook_id, step_id=s.step_id, due_at=s.due_at)
        for k, s in want.items()
        if had.get(k) != s.due_at
    ]
    if old is None or closes_at(old) != closes_at(new):
        actions.append(Remind(key=close_key(new), cook_id=new.cook_id, step_id=CLOSE, due_at=closes_at(new)))
    return tuple(actions)


def adopt(cook: LiveCook, plan: Plan, now: datetime) -> LiveCook:
    """A new plan for a running cook: what is past keeps its standing, the rest goes on the clock.

    A step that lies in the past and was never told counts as done (the planner
    leaves what has happened as it was), unless it keeps dinner safe or is about a
    food that the old plan did not have: then it is due now.
    """
    known = {s.step_id: s for s in cook.steps}
    old = {s.id: s for s in cook.plan.steps}
    had = {item.food_id for item in cook.plan.items}
    steps: list[LiveStep] = []
    number = cook.next_number
    for step in plan.steps:
        same_id = known.get(step.id)
        before = old.get(step.id)
        same = before is not None and (before.do, before.foods) == (step.do, step.foods)
        live = same_id if same else None
        if live is not None and live.status is not StepStatus.WAITING:
            steps.append(live)
            continue
        due_at = cook.zero_at + timedelta(seconds=step.at_s)
        needed = step.safety or any(food_id not in had for food_id in step.foods)
        if due_at < now - timedelta(seconds=LATE_S) and not needed:
            status = StepStatus.DONE
        else:
            status, due_at = StepStatus.WAITING, max(due_at, now)
        if live is None:
            # An id that another step had before: this one's telling needs a key of its own.
            nudges = same_id.nudges + 1 if same_id is not None else 0
            live = LiveStep(number=number, step_id=step.id, due_at=due_at, nudges=nudges)
            number += 1
        steps.append(replace(live, due_at=due_at, status=status))
    return replace(cook, plan=plan, steps=tuple(steps), next_number=number)
