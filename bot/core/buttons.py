"""Buttons, and words that stand for one. An old button is answered truthfully and changes nothing."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime

from bot.core import changes, livecook, planning, schedule, stove, teaching, telling
from bot.core.actions import Outcome, Say
from bot.core.questions import Asked, Press, cleared, press
from bot.core.replies import cooks, plans, talk
from bot.core.state import Chat, LiveStep, Profile, StepStatus
from knowledge import Knowledge
from knowledge.text.model import CookEvent, EventType, Kind, Reading


def _say(state: Chat, text: str) -> Outcome:
    return Outcome(state=state, actions=(Say(text=text),))


def pressed(state: Chat, data: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """A tap."""
    tap = press(data)
    if tap is None:
        return _say(state, talk.OLD_BUTTON)
    if tap.kind == "p":
        return _plan_button(state, tap, now, knowledge)
    if tap.kind == "q":
        return _question_button(state, tap, now, knowledge)
    return _cook_button(state, tap, now, knowledge)


# --- under an offer -------------------------------------------------------------------------------


def _plan_button(state: Chat, tap: Press, now: datetime, knowledge: Knowledge) -> Outcome:
    if tap.verb == "start" and state.cook is not None and state.cook.offer_no == tap.number:
        return livecook.already(state, now)
    if state.offer is None or state.offer_no != tap.number:
        if state.offer is not None:
            return planning.shown(state, now, lead=talk.OLD_PLAN)
        return _say(state, talk.OLD_BUTTON)
    match tap.verb:
        case "start":
            return livecook.start(state, now)
        case "ways":
            return planning.ways(state)
        case "why":
            return planning.why(state, Reading(kind=Kind.QUESTION, text=""), now, knowledge)
        case "change":
            return planning.changes(state)
        case "vessel":
            return planning.in_vessel(state, tap.argument, now, knowledge)
        case "flavour":
            return planning.flavoured(state, tap.argument, now, knowledge)
        case "eaters" if tap.argument.isdecimal():
            return planning.for_eaters(state, float(tap.argument), now, knowledge)
    return _say(state, talk.OLD_BUTTON)


# --- under a question -----------------------------------------------------------------------------


def _question_button(state: Chat, tap: Press, now: datetime, knowledge: Knowledge) -> Outcome:
    if state.asked == Asked.NOTHING or state.asked_no != tap.number:
        return _say(state, talk.OLD_BUTTON)
    match Asked(state.asked), tap.verb:
        case (Asked.TAKE | Asked.SECOND | Asked.RESET, "yes" | "no"):
            outcome = answer_yes_no(state, tap.verb == "yes", now, knowledge)
            return outcome or _say(state, talk.OLD_BUTTON)
        case (Asked.DELAY, "late") if state.cook is not None and tap.argument.isdecimal():
            return stove.delayed(cleared(state), float(tap.argument), now)
        case (Asked.WHEN, "just") if state.cook is not None and tap.argument.isdecimal():
            return livecook.just_now(cleared(state), int(tap.argument), now)
        case (Asked.WHEN, "ontime") if state.cook is not None:
            return livecook.on_time(cleared(state), now)
        case (Asked.PROBE, "probe"):
            return probe_answer(state, tap.argument, now, knowledge)
        case (Asked.FOOD, "is"):
            return food_is(state, tap.argument, now, knowledge)
        case (Asked.FOOD, "kinds") if state.unplaced:
            return teaching.kinds(state)
        case (Asked.FOOD, "kind") if state.unplaced:
            return teaching.of_kind(state, tap.argument, knowledge)
        case (Asked.FOOD, "leave"):
            return _say(replace(cleared(state), unplaced=state.unplaced[1:]), talk.LEFT_OUT)
    return _say(state, talk.OLD_BUTTON)


def answer_yes_no(state: Chat, yes: bool, now: datetime, knowledge: Knowledge) -> Outcome | None:
    """Yes or no to the open question, by button or word; None when none is open."""
    match Asked(state.asked):
        case Asked.TAKE if state.pending is not None:
            if not yes:
                return changes.keep(state)
            if state.cook is not None:
                return changes.take(state, state.pending, now)
            return planning.take(state, state.pending, now)
        case Asked.SECOND if state.cook is not None:
            return livecook.stop_and_start(cleared(state), now) if yes else changes.keep(state)
        case Asked.RESET:
            forgotten = replace(cleared(state), profile=Profile() if yes else state.profile)
            return _say(forgotten, talk.RESET_DONE if yes else talk.RESET_KEPT)
        case Asked.FOOD if not yes:
            return _say(replace(cleared(state), unplaced=state.unplaced[1:]), talk.LEFT_OUT)
    return None


def food_is(state: Chat, name: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """The unknown food is, or cooks like, this one: kept, and the plan figured with it."""
    food = knowledge.named(name)
    if food is None or not state.unplaced:
        return _say(state, plans.swap_unknown(name, knowledge.near(name)))
    item, *others = state.unplaced
    said = item.phrase or item.name
    state = replace(teaching.learned(cleared(state), said, food.id), unplaced=tuple(others))
    lead = plans.taught(said, food.name)
    placed = replace(item, food_id=food.id, sure=True)
    reading = Reading(kind=Kind.PLAN, text=said, items=(placed,), amends=True)
    if state.cook is not None and state.offer is None:
        return changes.amend(state, reading, now, knowledge)
    base = planning.current_request(state, now)
    if base is not None:
        base = replace(base, unknown=tuple(u for u in base.unknown if u not in (item.name, item.phrase)))
    there = None if base is None else next((h for h in base.have if h.food_id == food.id), None)
    if base is not None and there is not None:
        # The food it cooks like is in the dinner already: more of it, where both are counted alike.
        if there.qty is not None and item.qty is not None and there.unit == item.unit:
            more = replace(there, qty=there.qty + item.qty)
            base = replace(base, have=tuple(more if h is there else h for h in base.have))
        return planning.again(state, base, now, knowledge, lead=lead)
    request = planning.reading_request(state, reading, now, knowledge, base=base)
    return planning.again(state, request, now, knowledge, lead=lead)


def probe_answer(state: Chat, name: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """Which food the reading was of."""
    if state.cook is None or not state.asked_about:
        return _say(state, talk.OLD_BUTTON)
    event = CookEvent(type=EventType.PROBE, item=name, temp_c=float(state.asked_about))
    return stove.probed(cleared(state), event, now, knowledge)


# --- under a reminder -----------------------------------------------------------------------------


def _cook_button(state: Chat, tap: Press, now: datetime, knowledge: Knowledge) -> Outcome:
    if tap.verb == "on":
        ended = state.ended
        if ended is not None and ended.number == tap.number and state.cook is None:
            return livecook.carry_on(state, now)
        return livecook.status(state, now) if state.cook is not None else _say(state, cooks.NOT_RUNNING)
    cook = state.cook
    if cook is None or cook.number != tap.number or not tap.argument.isdecimal():
        return _say(state, cooks.NOT_RUNNING)
    head = int(tap.argument)
    match tap.verb:
        case "top":
            return livecook.start_over(state, now) if _untouched(state) else livecook.status(state, now)
        case "wait":
            return livecook.wait_for_it(state, now) if _untouched(state) else livecook.status(state, now)
        case "stop":
            return livecook.stop(state, now)
        case "here":
            return telling.from_here(state, head, now)
        case "done" | "later" | "more":
            return _answered(state, tap.verb, head, now, knowledge)
    return _say(state, talk.OLD_BUTTON)


def _untouched(state: Chat) -> bool:
    """Nothing has been ticked off since the cook began: it may begin again."""
    cook = state.cook
    return cook is not None and all(
        s.status is not StepStatus.DONE or s.due_at < cook.started_at for s in cook.steps
    )


def answered(state: Chat, verb: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """ "Done", "later", "not yet" in words: about what was told last."""
    if verb == "done":
        return stove.ticked(state, CookEvent(type=EventType.DONE_STEP), now, knowledge)
    told = schedule.latest_told(telling.running(state))
    if not told or told[0].told_with is None:
        return livecook.status(state, now)
    return _answered(state, verb, told[0].told_with, now, knowledge)


def _answered(state: Chat, verb: str, head: int, now: datetime, knowledge: Knowledge) -> Outcome:
    """An answer to the message headed by step `head`; a second one changes nothing."""
    cook = telling.running(state)
    group = [s for s in schedule.told(cook) if s.told_with == head]
    if not group:
        return _repeated(state, verb, head, now, knowledge)
    match verb:
        case "done":
            return livecook.done(state, group, now, knowledge)
        case "later":
            return livecook.later(state, group, now)
        case _:
            return livecook.more(state, cook, group, now)


def _repeated(state: Chat, verb: str, head: int, now: datetime, knowledge: Knowledge) -> Outcome:
    """The steps of an old message: put back ones can still be ticked off, others are settled."""
    cook = telling.running(state)
    put_back: list[LiveStep] = [
        s for s in cook.steps if s.number == head and s.status is StepStatus.WAITING and s.nudges > 0
    ]
    if not put_back:
        return _say(state, cooks.EARLIER_STEP)
    if verb == "done":
        return livecook.done(state, put_back, now, knowledge)
    return _say(state, cooks.put_back(put_back[0].due_at, state.profile.utc_offset_min))
