"""Changing a cook that is running: swaps, additions, a forgotten food. What is in the vessel stays in."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime, timedelta

from bot.core import livecook, schedule, telling
from bot.core.actions import Outcome, Say
from bot.core.planning import directions, reading_request, swap_answer
from bot.core.questions import Asked, ask, cleared, yes_no
from bot.core.replies import cooks, plans, talk
from bot.core.state import Chat, LiveCook, LiveStep, StepStatus
from bot.core.telling import moved, offset, running
from knowledge import Knowledge
from knowledge.planner.model import Do, Have, NoPlan, Plan, PlanItem, Request
from knowledge.text.model import Reading

CHANGES_MAX = 6  # lines of a change that still fit a phone screen
NOW_S = 90.0  # "in now" answers an add step this close
SAME_S = 60.0  # a step moved by less is the same step


def differences(cook: LiveCook, plan: Plan, now: datetime, offset_min: int | None) -> list[str]:
    """What a new plan changes from now on, a line each, with clock times."""
    elapsed = schedule.elapsed_s(cook, now)
    old = {s.id: s for s in cook.plan.steps}
    had, has = {i.food_id: i.label for i in cook.plan.items}, {i.food_id: i.label for i in plan.items}
    parts = [cooks.no_longer(name) for food_id, name in had.items() if food_id not in has]
    for step in plan.steps:
        before = old.get(step.id)
        same = before is not None and abs(before.at_s - step.at_s) < SAME_S and before.foods == step.foods
        if step.at_s < elapsed - SAME_S or same or step.do is Do.SERVE:
            continue
        names = [has.get(f, f) for f in step.foods]
        at = max(now, cook.zero_at + timedelta(seconds=step.at_s))
        parts.append(cooks.at_line(at, cooks.short(step, names), offset_min))
    return parts[:CHANGES_MAX]


def propose(state: Chat, text: str, plan: Plan) -> Outcome:
    """A changed plan, with the question whether to take it."""
    asked = ask(state, Asked.TAKE, plan)
    row = yes_no(plans.TAKE_IT, plans.LEAVE_IT, asked)
    return Outcome(state=asked, actions=(Say(text=text, buttons=(row,)),))


def swap(state: Chat, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    """ "Parsnip instead of the carrots?" while cooking."""
    cook = running(state)
    elapsed = schedule.elapsed_s(cook, now)
    answer = swap_answer(cook.plan, reading, knowledge, elapsed_s=elapsed)
    if isinstance(answer, str):
        return Outcome(state=state, actions=(Say(text=answer),))
    if answer.plan is None or answer.plan.items == cook.plan.items:
        return Outcome(state=state, actions=(Say(text=plans.swap(replace(answer, plan=None))),))
    return propose(state, plans.swap(answer), answer.plan)


def amend(state: Chat, reading: Reading, now: datetime, knowledge: Knowledge) -> Outcome:
    """ "I also found leeks" while cooking."""
    cook = running(state)
    if reading.flavours and not reading.items:
        return directions(state, reading, now, knowledge)
    if reading.vessel not in (None, cook.plan.vessel) and not reading.items:
        return Outcome(state=state, actions=(Say(text=cooks.VESSEL_STAYS),))
    return _changed(
        state, reading_request(state, reading, now, knowledge, base=cook.plan.request), now, knowledge
    )


def _changed(state: Chat, request: Request, now: datetime, knowledge: Knowledge) -> Outcome:
    cook = running(state)
    if request == cook.plan.request:
        return livecook.status(state, now)
    answer = knowledge.replan(cook.plan, request=request, elapsed_s=schedule.elapsed_s(cook, now))
    if isinstance(answer, NoPlan):
        text = f"{cooks.CANT_CHANGE}\n{plans.why_not(answer)}"
        return Outcome(state=state, actions=(Say(text=text),))
    future = schedule.adopt(cook, answer, now)
    parts = differences(cook, answer, now, offset(state))
    if not parts and _amounts(answer) == _amounts(cook.plan):
        return Outcome(state=state, actions=(Say(text=cooks.NO_CHANGE),))
    text = cooks.changed_cook(parts, schedule.table_at(future), offset(state))
    return propose(state, f"{text} {cooks.TAKE_CHANGE}", answer)


def _amounts(plan: Plan) -> dict[str, int]:
    return {item.food_id: round(item.grams) for item in plan.items}


def take(state: Chat, plan: Plan, now: datetime) -> Outcome:
    """The proposed plan becomes the running one; only what changes is said."""
    cook = running(state)
    after = schedule.adopt(cook, plan, now)
    parts = differences(cook, plan, now, offset(state))
    lead = cooks.changed_cook(parts, schedule.table_at(after), offset(state))
    return telling.told_now(cleared(state), after, now, lead)


def keep(state: Chat) -> Outcome:
    """The proposal is turned down."""
    return Outcome(state=cleared(state), actions=(Say(text=talk.KEPT),))


def add_forgotten(
    state: Chat, name: str, item: PlanItem | None, now: datetime, knowledge: Knowledge
) -> Outcome:
    """A food that should be in and isn't goes in now; one that was never planned is figured in."""
    cook = running(state)
    elapsed = schedule.elapsed_s(cook, now)
    if item is None:
        food = knowledge.named(name)
        if food is None:
            return Outcome(state=state, actions=(Say(text=cooks.not_in_cook(name)),))
        request = cook.plan.request
        wanted = replace(request, have=(*request.have, Have(food_id=food.id, said=name)))
        return _changed(state, wanted, now, knowledge)
    if item.in_s > elapsed:
        at = cook.zero_at + timedelta(seconds=item.in_s)
        return Outcome(state=state, actions=(Say(text=cooks.not_yet_in(item.label, at, offset(state))),))
    # For the planner the food is not there yet: it joins like one that was found only now.
    request = cook.plan.request
    outside = replace(
        cook.plan,
        items=tuple(i for i in cook.plan.items if i is not item),
        steps=tuple(
            replace(s, foods=tuple(f for f in s.foods if f != item.food_id)) for s in cook.plan.steps
        ),
        request=replace(request, have=tuple(h for h in request.have if h.food_id != item.food_id)),
    )
    answer = knowledge.replan(outside, request=cook.plan.request, elapsed_s=elapsed)
    late_s = elapsed - item.in_s
    after = schedule.shift(cook, late_s) if isinstance(answer, NoPlan) else schedule.adopt(cook, answer, now)
    after = schedule.mark(after, _adds_now(after, item, now), StepStatus.DONE)
    by_s = (schedule.table_at(after) - schedule.table_at(cook)).total_seconds()
    text = cooks.add_now(item.label, by_s, schedule.table_at(after), offset(state))
    following = telling.next_line(state, after, now)
    return moved(state, after, (Say(text="\n".join(p for p in (text, following) if p), urgent=True),))


def _adds_now(cook: LiveCook, item: PlanItem, now: datetime) -> list[LiveStep]:
    """The steps that "in now" answers: this food alone, into the heat, due at once."""
    return [
        live
        for live in schedule.waiting(cook)
        if (live.due_at - now).total_seconds() <= NOW_S
        and schedule.step_of(cook, live).do is Do.ADD
        and schedule.step_of(cook, live).foods == (item.food_id,)
    ]
