"""A running cook from start to end: begin it, tick its steps off, put them back, stop, finish.

How steps are told stands in `telling`, what happens at the stove by itself (late,
too fast, a probe reading ...) in `stove`, the bookkeeping of steps in `schedule`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.core import schedule
from bot.core.actions import Button, CancelReminders, Outcome, Say
from bot.core.questions import Asked, ask, cleared, cook_button, turn_button, yes_no
from bot.core.replies import cooks, plans, talk
from bot.core.state import Chat, LiveCook, LiveStep, StepStatus
from bot.core.telling import buttons, moved, next_line, offset, running, told_now
from knowledge import Knowledge
from knowledge.planner.model import Do, Plan

LATER_S = 5 * 60.0
MORE_S = 5 * 60.0  # "not done yet": check again after this, or a tenth of the cooking so far
JUST_NOW_S = 180.0  # a step ticked off this long after it was told: ask when it happened
SPARE_S = 600.0  # dinner earlier than asked for by this: offer to begin later
INTO_HEAT = frozenset({Do.BROWN, Do.ADD, Do.LID, Do.HEAT})


# --- start --------------------------------------------------------------------------------------


def start(state: Chat, now: datetime) -> Outcome:
    """Begin the plan on the table from its first step."""
    plan = state.offer
    if plan is None:
        return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))
    if state.cook is not None:
        return _second(state)
    first_s = min((step.at_s for step in plan.steps), default=0.0)
    state, cook = _begun(state, plan, now, now - timedelta(seconds=first_s))
    lead = cooks.started(schedule.table_at(cook), now, offset(state))
    outcome = told_now(state, cook, now, lead)
    spare_s = _spare_s(outcome.state)
    if spare_s < SPARE_S:
        return outcome
    label = cooks.wait_label(now + timedelta(seconds=spare_s), offset(state))
    return _with_row(outcome, (cook_button(label, cook, "wait", 0),))


def _spare_s(state: Chat) -> float:
    """How much too early dinner would be for the time that was asked for; 0 when none was."""
    cook, wanted_s = running(state), running(state).plan.request.ready_in_s
    if state.offered_at is None or wanted_s is None:
        return 0.0
    wanted = state.offered_at + timedelta(seconds=wanted_s)
    return max(0.0, (wanted - schedule.table_at(cook)).total_seconds())


def _with_row(outcome: Outcome, row: tuple[Button, ...]) -> Outcome:
    return Outcome(
        state=outcome.state,
        actions=tuple(
            replace(a, buttons=(*a.buttons, row)) if isinstance(a, Say) else a for a in outcome.actions
        ),
    )


def wait_for_it(state: Chat, now: datetime) -> Outcome:
    """Begin later, so that dinner is there when it was asked for."""
    cook, spare_s = running(state), _spare_s(state)
    begin = now + timedelta(seconds=spare_s)
    after = schedule.shift(cook, spare_s)
    for live in schedule.told(cook):
        after = schedule.tell_again(after, [live], live.due_at + timedelta(seconds=spare_s))
    text = cooks.waits(begin, schedule.table_at(after), offset(state))
    return moved(state, after, (Say(text=text),))


def start_hot(state: Chat, now: datetime, minutes_ago: float) -> Outcome:
    """Begin with the first food in the heat `minutes_ago`: "just put the tray in"."""
    plan = state.offer
    if plan is None:
        return Outcome(state=state, actions=(Say(text=talk.NO_PLAN_YET),))
    if state.cook is not None:
        return _second(state)
    # One second less, so that the step at zero counts as done by the new clock.
    zero_at = now - timedelta(minutes=minutes_ago) - timedelta(seconds=1)
    state, cook = _begun(state, plan, now, zero_at)
    lead = cooks.started_hot(schedule.table_at(cook), offset(state))
    outcome = told_now(state, cook, now, lead)
    return _with_row(outcome, (cook_button(cooks.FROM_THE_TOP, cook, "top", 0),))


def start_over(state: Chat, now: datetime) -> Outcome:
    """The cook had only begun to prepare: the same plan from its first step."""
    cook = running(state)
    cleared_state = replace(
        state, cook=None, offer=cook.plan, offer_no=cook.offer_no, cooks_begun=state.cooks_begun
    )
    begun = start(cleared_state, now)
    return Outcome(state=begun.state, actions=(CancelReminders(cook_id=cook.cook_id), *begun.actions))


def _begun(state: Chat, plan: Plan, now: datetime, zero_at: datetime) -> tuple[Chat, LiveCook]:
    number = state.cooks_begun + 1
    cook = schedule.begin(
        plan,
        cook_id=f"{state.chat_id}.{number}",
        number=number,
        offer_no=state.offer_no,
        now=now,
        zero_at=zero_at,
    )
    state = replace(cleared(state), cooks_begun=number, offer=None, previous=None, refusal=None, ended=None)
    return state, cook


def _second(state: Chat) -> Outcome:
    cook = running(state)
    asked = ask(state, Asked.SECOND)
    return Outcome(
        state=asked,
        actions=(
            Say(
                text=cooks.second_cook(schedule.table_at(cook), offset(state)),
                buttons=(yes_no(cooks.STOP_AND_START, cooks.KEEP_COOKING, asked),),
            ),
        ),
    )


def stop_and_start(state: Chat, now: datetime) -> Outcome:
    """The first cook ends, the plan on the table begins."""
    cook = running(state)
    begun = start(replace(state, cook=None), now)
    return Outcome(state=begun.state, actions=(CancelReminders(cook_id=cook.cook_id), *begun.actions))


# --- answers to a reminder ----------------------------------------------------------------------


def done(state: Chat, group: Sequence[LiveStep], now: datetime, knowledge: Knowledge) -> Outcome:
    """These steps are done. The serving step ends the cook; a late one asks when it happened."""
    cook = running(state)
    after = schedule.mark(cook, group, StepStatus.DONE)
    kinds = {schedule.step_of(cook, s).do for s in group}
    low = [i for i in cook.plan.items if i.food_id in cook.read_low and i.done.core_degC is not None]
    if low and Do.SERVE in kinds:
        goal = low[0].done.core_degC or 0.0
        text = cooks.read_low(low[0].label, goal, cook.plan.request.kitchen.units)
        return Outcome(state=replace(state, cook=replace(cook, read_low=())), actions=(Say(text=text),))
    if Do.SERVE in kinds or not any(s.status in schedule.OPEN for s in after.steps):
        return finish(state, knowledge)
    last = group[-1]
    late_s = (now - last.due_at).total_seconds()
    if kinds & INTO_HEAT and late_s > JUST_NOW_S and schedule.waiting(after):
        asked = ask(state, Asked.WHEN)
        say = Say(
            text=cooks.late_done(last.due_at, offset(state)),
            buttons=(
                (
                    turn_button(cooks.JUST_NOW, asked.asked_no, "just", str(last.number)),
                    turn_button(cooks.ON_TIME, asked.asked_no, "ontime", str(last.number)),
                ),
            ),
        )
        return moved(asked, after, (say,))
    if last.status is StepStatus.WAITING and kinds & schedule.HEATING and late_s < -60:
        return _anchored(state, after, late_s, now)
    return moved(state, after, (_good(state, after, now),))


def _good(state: Chat, cook: LiveCook, now: datetime) -> Say:
    return Say(text=cooks.done([next_line(state, cook, now) or cooks.NOTHING_LEFT]))


def _anchored(state: Chat, cook: LiveCook, by_s: float, now: datetime) -> Outcome:
    """A step happened earlier or later than planned: what waits moves with it."""
    after = schedule.shift(cook, by_s)
    return told_now(state, after, now, cooks.moved(by_s, schedule.table_at(after), offset(state)))


def just_now(state: Chat, number: int, now: datetime) -> Outcome:
    """The late step happened only now: what waits moves with it."""
    cook = running(state)
    live = next((s for s in cook.steps if s.number == number), None)
    if live is None:
        return Outcome(state=state, actions=(Say(text=cooks.EARLIER_STEP),))
    return _anchored(state, cook, (now - live.due_at).total_seconds(), now)


def on_time(state: Chat, now: datetime) -> Outcome:
    """The step ticked off late had happened when it was due: nothing moves."""
    return Outcome(state=state, actions=(_good(state, running(state), now),))


def later(state: Chat, group: Sequence[LiveStep], now: datetime) -> Outcome:
    """Told again in five minutes. Work that heat waits for takes all that follows with it."""
    cook = running(state)
    at = now + timedelta(seconds=LATER_S)
    by_s = (at - group[0].due_at).total_seconds()
    heating = any(schedule.step_of(cook, s).do in schedule.HEATING for s in group)
    after = schedule.shift(cook, by_s) if heating else cook
    after = schedule.tell_again(after, group, at)
    text = cooks.put_back(at, offset(state))
    if heating:
        text += " " + cooks.moved(by_s, schedule.table_at(after), offset(state))
    return moved(state, after, (Say(text=text),))


def more(state: Chat, cook: LiveCook, group: Sequence[LiveStep], now: datetime, name: str = "") -> Outcome:
    """Not done yet: look again after a tenth of the cooking so far, at least five minutes."""
    more_s = max(MORE_S, 60 * round(schedule.elapsed_s(cook, now) / 600))
    at = now + timedelta(seconds=more_s)
    by_s = max(0.0, (at - group[0].due_at).total_seconds())
    after = schedule.tell_again(schedule.shift(cook, by_s), group, at)
    text = cooks.more_time(name, at, schedule.table_at(after), offset(state))
    return moved(state, after, (Say(text=text),))


# --- the end ------------------------------------------------------------------------------------


def finish(state: Chat, knowledge: Knowledge) -> Outcome:
    """Served: how to keep what is left; no reminders remain."""
    cook = running(state)
    text, source = knowledge.leftovers([item.food_id for item in cook.plan.items])
    return Outcome(
        state=replace(cleared(state), cook=None, ended=None),
        actions=(CancelReminders(cook_id=cook.cook_id), Say(text=cooks.served(text, source))),
    )


def stop(state: Chat, now: datetime) -> Outcome:
    """End it all, at once; one button takes it back."""
    cook = running(state)
    sealed = cook.plan.settings.pressure_kPa_gauge is not None and schedule.elapsed_s(cook, now) > 0
    text = cooks.STOPPED + (cooks.STOPPED_SEALED if sealed else "") + cooks.STOPPED_UNDERDONE
    stopped = cleared(state)
    if stopped.offer is None:  # "start" begins it anew
        stopped = replace(stopped, offer=cook.plan, offer_no=cook.offer_no)
    return Outcome(
        state=replace(stopped, cook=None, ended=cook),
        actions=(
            CancelReminders(cook_id=cook.cook_id),
            Say(text=text, buttons=((cook_button(cooks.CARRY_ON, cook, "on", 0),),), urgent=True),
        ),
    )


def carry_on(state: Chat, now: datetime) -> Outcome:
    """A stop taken back: the reminders stand again, under new keys."""
    cook = state.ended
    if cook is None or state.cook is not None:
        return Outcome(state=state, actions=(Say(text=cooks.NOT_RUNNING),))
    fresh = schedule.changed(
        cook,
        (replace(s, nudges=s.nudges + 1) for s in cook.steps if s.status is StepStatus.WAITING),
    )
    beside = state.offer if state.offer_no != cook.offer_no else None
    bare = replace(state, cook=None, ended=None, offer=beside)
    return told_now(bare, fresh, now, cooks.carried_on(schedule.table_at(fresh), offset(state)))


def already(state: Chat, now: datetime) -> Outcome:
    """A second start."""
    cook = running(state)
    text = cooks.already_started(cook.started_at, schedule.table_at(cook), offset(state))
    following = next_line(state, cook, now)
    return Outcome(state=state, actions=(Say(text=f"{text}\n{following}" if following else text),))


def why(state: Chat) -> Outcome:
    """The reasons behind the running plan."""
    return Outcome(state=state, actions=(Say(text=plans.why(running(state).plan)),))


def shown(state: Chat, now: datetime) -> Outcome:
    """The running plan, what is left of it with times of day."""
    cook = running(state)
    left = [s for s in sorted(cook.steps, key=lambda s: (s.due_at, s.number)) if s.status in schedule.OPEN]
    rows = [cooks.at_line(s.due_at, schedule.step_of(cook, s).text, offset(state)) for s in left]
    text = cooks.status([plans.headline(cook.plan), *rows], schedule.table_at(cook), offset(state))
    return Outcome(state=state, actions=(Say(text=text),))


def status(state: Chat, now: datetime) -> Outcome:
    """Where things stand: what is open, what is next, when dinner is."""
    cook = running(state)
    parts = []
    open_steps = schedule.latest_told(cook)
    if open_steps:
        parts.append(cooks.still_open([schedule.step_of(cook, s).text for s in open_steps]))
    parts.append(next_line(state, cook, now))
    rows = buttons(cook, open_steps) if open_steps else ()
    text = cooks.status([p for p in parts if p], schedule.table_at(cook), offset(state))
    return Outcome(state=state, actions=(Say(text=text, buttons=rows),))
