"""A running cook: start, reminders, done and later, stop, finish, and changes while it runs.

What happens at the stove by itself (late, too fast, a probe reading ...) stands in
`stove`; the bookkeeping of steps in `schedule`. A told step blocks nothing: the
next reminder comes when its time comes, whether or not the cook has answered.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.core import schedule
from bot.core.actions import Action, Button, CancelReminders, Outcome, Remind, Say
from bot.core.events import DueReminder, RemindersDue
from bot.core.questions import Asked, ask, cleared, cook_button, turn_button
from bot.core.replies import cooks, plans, talk
from bot.core.state import Chat, LiveCook, LiveStep, StepStatus
from knowledge import Knowledge
from knowledge.planner.model import Do, Plan, Step

LATER_S = 5 * 60.0
MORE_S = 5 * 60.0  # "not done yet": check again after this, or a tenth of the cooking so far
JUST_NOW_S = 180.0  # a step ticked off this long after it was told: ask when it happened
ABANDONED_S = 4 * 3600.0  # an outage longer than this after the meal: close, say so once

JUDGED = frozenset({Do.CHECK, Do.TAKE_OUT, Do.SERVE})  # "done" is a judgement about food
INTO_HEAT = frozenset({Do.BROWN, Do.ADD, Do.LID, Do.HEAT})


# --- small readings of a cook -------------------------------------------------------------------


def running(state: Chat) -> LiveCook:
    """The cook; callers have checked that there is one."""
    if state.cook is None:
        raise ValueError("no cook is running")
    return state.cook


def offset(state: Chat) -> int | None:
    """The zone in which times of day are written."""
    return state.profile.utc_offset_min


def names(cook: LiveCook, step: Step) -> list[str]:
    """The foods of a step as the cook calls them."""
    shown = {item.food_id: item.food for item in cook.plan.items}
    return [shown.get(food_id, food_id) for food_id in step.foods]


def short(cook: LiveCook, live: LiveStep) -> str:
    """A step in three words."""
    step = schedule.step_of(cook, live)
    return cooks.short(step, names(cook, step))


def next_line(state: Chat, cook: LiveCook, now: datetime) -> str:
    """What is next and when; empty when nothing is."""
    left = schedule.waiting(cook)
    if not left:
        return ""
    together = [s for s in left if s.due_at == left[0].due_at]
    what = ", ".join(dict.fromkeys(short(cook, s) for s in together))
    return cooks.next_up(what, left[0].due_at, now, offset(state))


def buttons(cook: LiveCook, group: Sequence[LiveStep]) -> tuple[tuple[Button, ...], ...]:
    """The answers to a reminder."""
    head = group[0].number
    judged = schedule.step_of(cook, group[-1]).do in JUDGED
    other = (
        cook_button(cooks.NOT_YET, cook, "more", head)
        if judged
        else cook_button(cooks.LATER, cook, "later", head)
    )
    return ((cook_button(cooks.DONE, cook, "done", head), other),)


def told_now(state: Chat, cook: LiveCook, now: datetime, lead: str = "") -> Outcome:
    """The cook with what is due now told in one message; `lead` goes in front.

    Nothing due: `lead` alone, with what is next.
    """
    due = [s for s in schedule.waiting(cook) if s.due_at <= now + timedelta(seconds=1)]
    if not due:
        text = "\n".join(part for part in (lead, next_line(state, cook, now)) if part)
        return moved(state, cook, (Say(text=text),))
    group = _group(cook, due)
    after = schedule.tell(cook, group)
    text = _reminder_text(state, after, group, now, late_s=0.0)
    return moved(
        state,
        after,
        (
            Say(
                text=f"{lead}\n\n{text}" if lead else text,
                buttons=buttons(after, group),
                key=schedule.key(cook, group[0]),
                urgent=True,
            ),
        ),
    )


def _group(cook: LiveCook, due: Sequence[LiveStep]) -> list[LiveStep]:
    """All that is due, and what follows at once."""
    group = list(due)
    known = {s.number for s in group}
    group += [s for s in schedule.gathered(cook, group[-1]) if s.number not in known]
    return group


def _reminder_text(
    state: Chat, cook: LiveCook, group: Sequence[LiveStep], now: datetime, late_s: float
) -> str:
    text = cooks.todo([schedule.step_of(cook, s).text for s in group], late_s)
    after = next_line(state, cook, now)
    return f"{text}\n{after}" if after else text


def moved(state: Chat, cook: LiveCook, says: tuple[Action, ...]) -> Outcome:
    """The new cook in the state, with its reminders brought in line before anything is said."""
    return Outcome(state=replace(state, cook=cook), actions=(*schedule.reminders(state.cook, cook), *says))


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
    return told_now(state, cook, now, lead)


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
    top = (cook_button(cooks.FROM_THE_TOP, cook, "top", 0),)
    return Outcome(
        state=outcome.state,
        actions=tuple(
            replace(a, buttons=(*a.buttons, top)) if isinstance(a, Say) else a for a in outcome.actions
        ),
    )


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
                buttons=(
                    (
                        turn_button(cooks.STOP_AND_START, asked.asked_no, "yes"),
                        turn_button(cooks.KEEP_COOKING, asked.asked_no, "no"),
                    ),
                ),
            ),
        ),
    )


def stop_and_start(state: Chat, now: datetime) -> Outcome:
    """The first cook ends, the plan on the table begins."""
    cook = running(state)
    begun = start(replace(state, cook=None), now)
    return Outcome(state=begun.state, actions=(CancelReminders(cook_id=cook.cook_id), *begun.actions))


# --- reminders ----------------------------------------------------------------------------------


def reminded(state: Chat, event: RemindersDue, now: datetime, knowledge: Knowledge) -> Outcome:
    """Reminders are due: tell the steps, or after an outage sum up and ask.

    A reminder that is not the current one of a waiting step (moved, told, done, of
    an ended cook) changes nothing; one that came early is set again.
    """
    cook = state.cook
    mine = [r for r in event.reminders if cook is not None and r.cook_id == cook.cook_id]
    if cook is None or not mine:
        return Outcome(state=state)
    due, again = _current(cook, mine, now)
    closing = any(r.key == schedule.close_key(cook) for r in mine)
    if closing:
        closes_at = schedule.table_at(cook) + timedelta(seconds=schedule.CLOSE_AFTER_S)
        if closes_at <= now:
            return _close(state, knowledge, due)
        again.append(
            Remind(
                key=schedule.close_key(cook), cook_id=cook.cook_id, step_id=schedule.CLOSE, due_at=closes_at
            )
        )
    if not due:
        return Outcome(state=state, actions=tuple(again))
    late_s = (now - due[0].due_at).total_seconds()
    moments = {s.due_at for s in due if (now - s.due_at).total_seconds() > schedule.LATE_S}
    if len(moments) > 1:
        outcome = _missed(state, cook, due, now)
    else:
        group = _group(cook, due)
        after = schedule.tell(cook, group)
        text = _reminder_text(state, after, group, now, late_s if late_s > schedule.LATE_S else 0.0)
        say = Say(text=text, buttons=buttons(after, group), key=schedule.key(cook, group[0]), urgent=True)
        outcome = moved(state, after, (say,))
    return Outcome(state=outcome.state, actions=(*again, *outcome.actions))


def _current(
    cook: LiveCook, reminders: Sequence[DueReminder], now: datetime
) -> tuple[list[LiveStep], list[Action]]:
    """The waiting steps these reminders are about, in order; and those to be set again."""
    waiting = {schedule.key(cook, s): s for s in schedule.waiting(cook)}
    due: list[LiveStep] = []
    again: list[Action] = []
    for k in dict.fromkeys(r.key for r in reminders):
        live = waiting.get(k)
        if live is None:
            continue
        if live.due_at > now + timedelta(seconds=1):
            again.append(Remind(key=k, cook_id=cook.cook_id, step_id=live.step_id, due_at=live.due_at))
        else:
            due.append(live)
    # Whatever else is overdue belongs in the same message: nothing is told out of order.
    if due:
        known = {s.number for s in due}
        due += [s for s in waiting.values() if s.due_at <= now and s.number not in known]
    return sorted(due, key=lambda s: (s.due_at, s.number)), again


def _missed(state: Chat, cook: LiveCook, due: Sequence[LiveStep], now: datetime) -> Outcome:
    """Several moments were missed: one message, safety steps in full, one question."""
    ordered = sorted(due, key=lambda s: (not schedule.step_of(cook, s).safety, s.due_at, s.number))
    after = schedule.tell(cook, due)
    text = cooks.missed(
        due[0].due_at,
        now,
        [
            cooks.missed_line(
                s.due_at, schedule.step_of(cook, s).text, schedule.step_of(cook, s).safety, offset(state)
            )
            for s in ordered
        ],
        offset(state),
    )
    head = due[0].number
    rows = (
        (cook_button(cooks.ALL_DONE, after, "done", head), cook_button(cooks.FROM_HERE, after, "here", head)),
        (cook_button(cooks.STOP_IT, after, "stop", head),),
    )
    return moved(state, after, (Say(text=text, buttons=rows, key=schedule.key(cook, due[0]), urgent=True),))


def from_here(state: Chat, head: int, now: datetime) -> Outcome:
    """Nothing of what was missed has happened: it begins now, all that follows moves with it."""
    cook = running(state)
    group = [s for s in schedule.told(cook) if s.told_with == head]
    if not group:
        return Outcome(state=state, actions=(Say(text=cooks.EARLIER_STEP),))
    by_s = (now - group[0].due_at).total_seconds()
    gaps = [(s, s.due_at + timedelta(seconds=by_s)) for s in group]
    later = schedule.shift(cook, by_s)
    for live, at in gaps:
        later = schedule.tell_again(later, [live], at)
    lead = cooks.moved(by_s, schedule.table_at(later), offset(state))
    return told_now(state, later, now, lead)


# --- answers to a reminder ----------------------------------------------------------------------


def done(state: Chat, group: Sequence[LiveStep], now: datetime, knowledge: Knowledge) -> Outcome:
    """These steps are done. The serving step ends the cook; a late one asks when it happened."""
    cook = running(state)
    after = schedule.mark(cook, group, StepStatus.DONE)
    kinds = {schedule.step_of(cook, s).do for s in group}
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
    by_s = (at - group[0].due_at).total_seconds()
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


def _close(state: Chat, knowledge: Knowledge, due: Sequence[LiveStep]) -> Outcome:
    """Nobody ended it: close, once. Safety steps that were never told are still said."""
    cook = running(state)
    text, source = knowledge.leftovers([item.food_id for item in cook.plan.items])
    steps = [schedule.step_of(cook, s) for s in due]
    unsaid = [s.text for s in steps if s.safety]
    closing = cooks.closed(text, source)
    if unsaid:
        closing = f"{cooks.todo(unsaid)}\n\n{closing}"
    say = Say(text=closing, key=schedule.close_key(cook))
    return Outcome(
        state=replace(cleared(state), cook=None), actions=(CancelReminders(cook_id=cook.cook_id), say)
    )


def stop(state: Chat, now: datetime) -> Outcome:
    """End it all, at once; one button takes it back."""
    cook = running(state)
    sealed = cook.plan.settings.pressure_kPa_gauge is not None and schedule.elapsed_s(cook, now) > 0
    text = cooks.STOPPED + (cooks.STOPPED_SEALED if sealed else "") + cooks.STOPPED_UNDERDONE
    return Outcome(
        state=replace(cleared(state), cook=None, ended=cook),
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
    bare = replace(state, cook=None, ended=None)
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
    open_steps = schedule.told(cook)
    if open_steps:
        parts.append(cooks.still_open([schedule.step_of(cook, s).text for s in open_steps]))
    parts.append(next_line(state, cook, now))
    rows = (
        buttons(cook, [s for s in open_steps if s.told_with == open_steps[0].told_with]) if open_steps else ()
    )
    text = cooks.status([p for p in parts if p], schedule.table_at(cook), offset(state))
    return Outcome(state=state, actions=(Say(text=text, buttons=rows),))
