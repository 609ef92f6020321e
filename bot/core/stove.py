"""What happens at the stove: late, not done, done early, a probe reading, forgotten, left out, no heat.

Every event of a running cook has an answer here. Facts about heat come from the plan and
from `Knowledge.after_probe`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from bot.core import livecook, schedule, telling
from bot.core.actions import Outcome, Say
from bot.core.changes import add_forgotten
from bot.core.questions import Asked, ask, turn_button
from bot.core.replies import cooks, talk
from bot.core.replies.layout import span
from bot.core.state import Chat, LiveCook, LiveStep, StepStatus
from bot.core.telling import moved, offset, running
from knowledge import Knowledge
from knowledge.planner.model import Do, Plan, PlanItem
from knowledge.text.model import CookEvent, EventType
from knowledge.units import is_met

DELAY_MAX_MIN = 240.0
DELAYS_MIN = (5, 10, 20)
EARLY_IN_S = 120.0  # nobody is so exact
WAIT_FOR_HEAT_S = 5 * 60.0
MEASURE_AGAIN_S = 10 * 60.0
READING_DEGC = (-30.0, 130.0)  # food in a kitchen, frozen to just short of frying
SOONEST_S = 60.0


# Words for steps that have no food of their own, for "skip the resting".
STEP_WORDS = {
    "rest": Do.REST,
    "sear": Do.BROWN,
    "brown": Do.BROWN,
    "turn": Do.TURN,
    "flip": Do.TURN,
    "stir": Do.TURN,
    "check": Do.CHECK,
    "preheat": Do.PREHEAT,
}


def happened(state: Chat, event: CookEvent, text: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """An event of a running cook, and the text that told of it."""
    if event.item is not None and event.type not in (EventType.FORGOT, EventType.SKIP, EventType.STOP):
        cook = running(state)
        if item_of(cook.plan, event.item, knowledge) is None and not mentioned(
            cook.plan, event.item, knowledge
        ):
            answer = (
                knowledge.ask(text, kitchen=state.profile.kitchen, diets=state.profile.diets)
                if text.rstrip().endswith("?")
                else None
            )
            if answer is not None and answer.known:  # "chicken pink in the middle, ok?" about another dinner
                said = talk.answer(answer.known, answer.answer, answer.sources)
                return Outcome(state=state, actions=(Say(text=said),))
            return Outcome(state=state, actions=(Say(text=cooks.not_in_cook(event.item)),))
    match event.type:
        case EventType.STARTED | EventType.DONE_STEP:
            return ticked(state, event, now, knowledge)
        case EventType.DELAY:
            return delayed(state, event.minutes, now)
        case EventType.PROBE:
            return probed(state, event, now, knowledge)
        case EventType.NOT_DONE:
            return not_done(state, event.item, now, knowledge)
        case EventType.TOO_FAST:
            return too_fast(state, event.item, now, knowledge)
        case EventType.SKIP:
            return skipped(state, event.item, text, now, knowledge)
        case EventType.STOP:
            return livecook.stop(state, now)
        case EventType.OVEN_NOT_HOT:
            return no_heat(state, now)
        case EventType.FORGOT:
            return forgot(state, event, now, knowledge)


# --- which food, which step ---------------------------------------------------------------------


def item_of(plan: Plan, name: str | None, knowledge: Knowledge) -> PlanItem | None:
    """The food of the plan that a name means; a kind is enough ("chicken" for a chicken thigh)."""
    if not name:
        return None
    food = knowledge.named(name)
    for item in plan.items:
        if food is not None and item.food_id == food.id:
            return item
    words = set(name.lower().split())
    near = [i for i in plan.items if words <= set(f"{i.food} {i.said}".lower().split())]
    near = near or [i for i in plan.items if words & set(f"{i.food} {i.said}".lower().split())]
    return near[0] if len(near) == 1 else None


def steps_about(cook: LiveCook, item: PlanItem, steps: Sequence[LiveStep]) -> list[LiveStep]:
    """Those of the steps that are about a food."""
    return [s for s in steps if item.food_id in schedule.step_of(cook, s).foods]


def mentioned(plan: Plan, name: str, knowledge: Knowledge) -> bool:
    """A seasoning has no window of its own, but a step or the list may name it."""
    food = knowledge.named(name)
    in_list = food is not None and any(have.food_id == food.id for have in plan.request.have)
    words = set(name.lower().split())
    near = any(words & set(f"{item.food} {item.said}".lower().split()) for item in plan.items)
    return in_list or near or any(name.lower() in step.text.lower() for step in plan.steps)


# --- done ---------------------------------------------------------------------------------------


def ticked(state: Chat, event: CookEvent, now: datetime, knowledge: Knowledge) -> Outcome:
    """ "Done", "carrots are in", "flipped the salmon": the told steps, or the next one early."""
    cook = running(state)
    at = now - timedelta(minutes=event.minutes or 0)
    open_steps, ahead = schedule.told(cook), schedule.waiting(cook)
    if event.item is not None:
        item = item_of(cook.plan, event.item, knowledge)
        if item is not None and event.goes_in:
            return _went_in(state, item, at, now, knowledge)
        about = (
            []
            if item is None
            else steps_about(cook, item, open_steps)[:1] or steps_about(cook, item, ahead)[:1]
        )
        # What is named but not waited for ("foil off", a food of no step) answers the open step.
        if about:
            return livecook.done(state, about, at, knowledge)
    latest = schedule.latest_told(cook)
    if latest:
        # One "done" answers everything told so far; when it happened is asked of the last alone.
        earlier = [s for s in open_steps if s.told_with != latest[0].told_with]
        state = replace(state, cook=schedule.mark(cook, earlier, StepStatus.DONE))
        return livecook.done(state, latest, at, knowledge)
    if ahead:
        return livecook.done(state, ahead[:1], at, knowledge)
    return livecook.finish(state, knowledge)


def _went_in(state: Chat, item: PlanItem, at: datetime, now: datetime, knowledge: Knowledge) -> Outcome:
    """ "Carrots are in" answers the step that puts them into the heat, and what comes before it; told again,
    it changes nothing."""
    cook = running(state)
    left = steps_about(cook, item, [*schedule.told(cook), *schedule.waiting(cook)])
    into = next((s for s in left if schedule.step_of(cook, s).do in livecook.INTO_HEAT), None)
    if into is None:
        text = cooks.already_in(item.label)
        following = telling.next_line(state, cook, now)
        return Outcome(state=state, actions=(Say(text="\n".join(p for p in (text, following) if p)),))
    before = [s for s in left if s.number < into.number]
    state = replace(state, cook=schedule.mark(cook, before, StepStatus.DONE))
    return livecook.done(state, [into], at, knowledge)


# --- late ---------------------------------------------------------------------------------------


def delayed(state: Chat, minutes: float | None, now: datetime) -> Outcome:
    """Everything left moves; food on the heat that cooked on is named, with its own time."""
    if minutes is None:
        asked = ask(state, Asked.DELAY)
        row = tuple(turn_button(span(m), asked.asked_no, "late", str(m)) for m in DELAYS_MIN)
        return Outcome(state=asked, actions=(Say(text=cooks.HOW_LONG, buttons=(row,)),))
    if not 0 < minutes <= DELAY_MAX_MIN:
        return Outcome(state=state, actions=(Say(text=cooks.TOO_LONG),))
    cook = running(state)
    by_s = minutes * 60
    after = schedule.shift(cook, by_s)
    after = schedule.tell_again(after, schedule.latest_told(cook), now + timedelta(seconds=by_s))
    text = cooks.moved(by_s, schedule.table_at(after), offset(state))
    elapsed = schedule.elapsed_s(cook, now)
    hot = [i for i in cook.plan.items if i.in_s < elapsed < i.out_s]
    if hot:
        first = min(hot, key=lambda i: i.done.window_s[0])
        check_at = cook.zero_at + timedelta(seconds=max(first.done.at_s, elapsed))
        text += " " + cooks.in_the_heat([first.label], check_at, offset(state))
    return moved(state, after, (Say(text=text),))


def no_heat(state: Chat, now: datetime) -> Outcome:
    """The oven or the cooker is not hot: all waits, and is asked again."""
    cook = running(state)
    at = now + timedelta(seconds=WAIT_FOR_HEAT_S)
    after = schedule.shift(cook, WAIT_FOR_HEAT_S)
    after = schedule.tell_again(after, schedule.latest_told(cook), at)
    left = schedule.waiting(after)
    sealed = cook.plan.settings.pressure_kPa_gauge is not None
    text = cooks.wait_for_heat(left[0].due_at if left else at, offset(state), sealed=sealed)
    return moved(state, after, (Say(text=text),))


# --- how done it is -----------------------------------------------------------------------------


def not_done(state: Chat, name: str | None, now: datetime, knowledge: Knowledge) -> Outcome:
    """Still hard: as it should be by now, or more time and a check again."""
    cook = running(state)
    item = item_of(cook.plan, name, knowledge)
    shown = item.label if item is not None else ""
    if item is not None and schedule.elapsed_s(cook, now) < item.done.window_s[0] - 60:
        due = cook.zero_at + timedelta(seconds=item.done.at_s)
        return Outcome(state=state, actions=(Say(text=cooks.not_due(shown, due, offset(state))),))
    judged = [s for s in schedule.told(cook) if schedule.step_of(cook, s).do in telling.JUDGED]
    if not judged:
        # Nothing to judge has been told: the next judgement (or the last step) moves.
        left = schedule.waiting(cook)
        ahead = [s for s in left if schedule.step_of(cook, s).do in telling.JUDGED] or left[-1:]
        if not ahead:
            return livecook.status(state, now)
        if (ahead[0].due_at - now).total_seconds() > schedule.LATE_S:
            text = cooks.not_due(shown or "dinner", ahead[0].due_at, offset(state))
            return Outcome(state=state, actions=(Say(text=text),))
        cook = schedule.tell(cook, ahead[:1])
        judged = [s for s in cook.steps if s.number == ahead[0].number]
    head = judged[-1].told_with
    return livecook.more(state, cook, [s for s in judged if s.told_with == head], now, shown)


def too_fast(state: Chat, name: str | None, now: datetime, knowledge: Knowledge) -> Outcome:
    """Done before its time: out with it, measured first where a published minimum applies."""
    cook = running(state)
    item = item_of(cook.plan, name, knowledge)
    if item is None:
        return Outcome(state=state, actions=(Say(text=cooks.BURNING),))
    if (early := _not_in_yet(state, item, now)) is not None:
        return early
    half_s = (item.in_s + item.done.window_s[0]) / 2
    if schedule.elapsed_s(cook, now) < half_s:  # too hot outside, far from done inside
        return Outcome(state=state, actions=(Say(text=cooks.not_through(item.label)),))
    units = cook.plan.request.kitchen.units
    text = cooks.out_early(item.label, item.done.core_degC, units)
    outs = [
        s
        for s in cook.steps
        if s.status in schedule.OPEN
        and schedule.step_of(cook, s).do is Do.TAKE_OUT
        and schedule.step_of(cook, s).foods == (item.food_id,)
        and not schedule.step_of(cook, s).safety
    ]
    return moved(state, schedule.mark(cook, outs, StepStatus.DONE), (Say(text=text),))


def _not_in_yet(state: Chat, item: PlanItem, now: datetime) -> Outcome | None:
    """What is told of a food that by the clock is not in the heat: whether it is in already."""
    cook = running(state)
    if schedule.elapsed_s(cook, now) >= item.in_s - EARLY_IN_S:
        return None
    at = cook.zero_at + timedelta(seconds=item.in_s)
    return Outcome(state=state, actions=(Say(text=cooks.in_already(item.label, at, offset(state))),))


def probed(state: Chat, event: CookEvent, now: datetime, knowledge: Knowledge) -> Outcome:
    """A thermometer reading: done, or how much longer and when to measure again."""
    cook, units = running(state), running(state).plan.request.kitchen.units
    read = event.temp_c
    measured = [i for i in cook.plan.items if i.done.core_degC is not None]
    item = item_of(cook.plan, event.item, knowledge) or (measured[0] if len(measured) == 1 else None)
    if read is None or not READING_DEGC[0] <= read <= READING_DEGC[1]:
        text = cooks.probe_odd(read, units) if read is not None else cooks.PROBE_HOW_MUCH
        return Outcome(state=state, actions=(Say(text=text),))
    if item is None:
        return _which(state, measured, read)
    if item.done.core_degC is None:
        return Outcome(state=state, actions=(Say(text=cooks.probe_soft(item.label)),))
    if (early := _not_in_yet(state, item, now)) is not None:
        return early
    goal = item.done.core_degC
    if is_met(read, goal):
        text = cooks.probe_done(item.label, read, goal, item.done.rest_s, units)
        low = tuple(f for f in cook.read_low if f != item.food_id)
        return Outcome(state=replace(state, cook=replace(cook, read_low=low)), actions=(Say(text=text),))
    left_s = knowledge.after_probe(
        cook.plan, item.food_id, elapsed_s=schedule.elapsed_s(cook, now), core_degC=read
    )
    left_s = None if left_s is None else max(left_s, SOONEST_S)
    again = now + timedelta(seconds=MEASURE_AGAIN_S if left_s is None else left_s)
    cook = replace(cook, read_low=tuple(dict.fromkeys((*cook.read_low, item.food_id))))
    after = cook
    ahead = [
        s
        for s in steps_about(cook, item, [*schedule.told(cook), *schedule.waiting(cook)])
        if schedule.step_of(cook, s).do in telling.JUDGED
    ][:1]
    checks = [s for s in ahead if schedule.step_of(cook, s).do is Do.CHECK and s.due_at > again]
    if checks:
        after = schedule.changed(cook, [replace(checks[0], due_at=again)])
    elif ahead and ahead[0].due_at < again:
        by_s = (again - ahead[0].due_at).total_seconds()
        after = schedule.shift(cook, by_s, after=ahead[0].due_at)
        if ahead[0].status is StepStatus.TOLD:
            after = schedule.tell_again(after, ahead, again)
    if left_s is None:
        text = cooks.probe_not_rising(item.label, read, goal, units)
    else:
        text = cooks.probe_more(item.label, read, goal, left_s, again, units, offset(state))
    if schedule.table_at(after) != schedule.table_at(cook):
        text += f" {cooks.table(schedule.table_at(after), offset(state))}"
    return moved(state, after, (Say(text=text),))


def _which(state: Chat, measured: Sequence[PlanItem], read_degC: float) -> Outcome:
    if not measured:
        return Outcome(state=state, actions=(Say(text=cooks.NO_PROBE),))
    asked = ask(state, Asked.PROBE, about=f"{read_degC:g}")
    rows = tuple((turn_button(i.label, asked.asked_no, "probe", i.food_id),) for i in measured)
    return Outcome(
        state=asked, actions=(Say(text=cooks.probe_which([i.label for i in measured]), buttons=rows),)
    )


# --- left out, forgotten ------------------------------------------------------------------------


def skipped(state: Chat, name: str | None, text: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """Steps that are only about a food, of a kind, or at hand are left out; safety steps are not."""
    cook = running(state)
    open_steps = [*schedule.latest_told(cook), *schedule.waiting(cook)]
    if name is not None:
        item = item_of(cook.plan, name, knowledge)
        food = knowledge.named(name)
        food_id = item.food_id if item is not None else food.id if food is not None else ""
        chosen = [s for s in open_steps if schedule.step_of(cook, s).foods == (food_id,)]
    else:
        kinds = {do for word, do in STEP_WORDS.items() if word in text.lower()}
        chosen = [s for s in open_steps if schedule.step_of(cook, s).do in kinds]
        if not kinds:
            chosen = [s for s in open_steps[:1] if schedule.step_of(cook, s).do not in livecook.INTO_HEAT]
    if not chosen and name is None:
        return Outcome(state=state, actions=(Say(text=cooks.SKIP_WHAT),))
    if not chosen:
        return Outcome(state=state, actions=(Say(text=cooks.NOTHING_TO_SKIP),))
    safety = [s for s in chosen if schedule.step_of(cook, s).safety]
    rest = [s for s in chosen if s not in safety]
    parts = [cooks.skipped([telling.short(cook, s) for s in rest])] if rest else []
    parts += [cooks.safety_stays(schedule.step_of(cook, s).text) for s in safety[:1]]
    after = schedule.mark(cook, rest, StepStatus.SKIPPED)
    following = telling.next_line(state, after, now)
    return moved(state, after, (Say(text="\n".join(p for p in (*parts, following) if p)),))


def forgot(state: Chat, event: CookEvent, now: datetime, knowledge: Knowledge) -> Outcome:
    """Heat that was never on: count from now. A food: in with it now, the rest figured again."""
    cook = running(state)
    if event.item is not None:
        return add_forgotten(state, event.item, item_of(cook.plan, event.item, knowledge), now, knowledge)
    elapsed = schedule.elapsed_s(cook, now)
    by_s = event.minutes * 60 if event.minutes is not None else max(0.0, elapsed)
    after = schedule.shift(cook, by_s)
    text = cooks.cold_start(schedule.table_at(after), offset(state))
    return moved(state, after, (Say(text=text),))
