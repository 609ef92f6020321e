"""Telling the steps of a running cook: the message of a reminder, what comes next, what was missed.

A told step blocks nothing: the next reminder comes when its time comes, whether or
not the cook has answered. The bookkeeping of steps stands in `schedule`, the answers
in `livecook` and `stove`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.core import schedule
from bot.core.actions import Action, Button, CancelReminders, Outcome, Say
from bot.core.events import DueReminder, RemindersDue
from bot.core.questions import cleared, cook_button
from bot.core.replies import cooks
from bot.core.state import Chat, LiveCook, LiveStep
from knowledge import Knowledge
from knowledge.planner.model import Do, Step

JUDGED = frozenset({Do.CHECK, Do.TAKE_OUT, Do.SERVE})  # "done" is a judgement about food


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
    shown = {item.food_id: item.label for item in cook.plan.items}
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


# --- reminders ----------------------------------------------------------------------------------


def reminded(state: Chat, event: RemindersDue, now: datetime, knowledge: Knowledge) -> Outcome:
    """Reminders are due: tell the steps, or after an outage sum up and ask.

    A reminder that is not the current one of a waiting step (moved, told, done, of
    an ended cook) changes nothing.
    """
    cook = state.cook
    mine = [r for r in event.reminders if cook is not None and r.cook_id == cook.cook_id]
    if cook is None or not mine:
        return Outcome(state=state)
    due = _current(cook, mine)
    if any(r.key == schedule.close_key(cook) for r in mine) and schedule.closes_at(cook) <= now:
        return _close(state, knowledge, due)
    early = [s for s in due if s.due_at > now + timedelta(seconds=1)]
    if early:  # the rows and the state disagree: the state is right, under a new key
        return moved(state, schedule.changed(cook, (replace(s, nudges=s.nudges + 1) for s in early)), ())
    if not due:
        return Outcome(state=state)
    # Whatever else is overdue belongs in the same message: nothing is told out of order.
    due = [s for s in schedule.waiting(cook) if s.due_at <= now]
    late_s = (now - due[0].due_at).total_seconds()
    moments = {s.due_at for s in due if (now - s.due_at).total_seconds() > schedule.LATE_S}
    if len(moments) > 1:
        return _missed(state, cook, due, now)
    group = _group(cook, due)
    after = schedule.tell(cook, group)
    text = _reminder_text(state, after, group, now, late_s if late_s > schedule.LATE_S else 0.0)
    say = Say(text=text, buttons=buttons(after, group), key=schedule.key(cook, group[0]), urgent=True)
    return moved(state, after, (say,))


def _current(cook: LiveCook, reminders: Sequence[DueReminder]) -> list[LiveStep]:
    """The waiting steps these reminders are about, in order; those of the past are about none."""
    waiting = {schedule.key(cook, s): s for s in schedule.waiting(cook)}
    found = (waiting.get(k) for k in dict.fromkeys(r.key for r in reminders))
    return sorted((s for s in found if s is not None), key=lambda s: (s.due_at, s.number))


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
