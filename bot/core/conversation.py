"""The conversation: one pure function from state and event to new state and actions.

A chat is in one of three modes. IDLE: nothing on the table (a refusal may be). PLANNED:
a plan is on the table. COOKING: a plan is on the clock; another may lie beside it.
Lists of food make a plan in every mode; "start" leads from PLANNED to COOKING, "done" with
the last step and "stop" back. What a message is about (its `Topic`) and the mode select a
handler in `TABLE`; what is not in the table gets a kind "not now, because".
An open question is looked at first: "yes", "10 minutes" or "like parsnip" answer it.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import datetime
from enum import StrEnum
from typing import assert_never

from bot.core import buttons, changes, livecook, planning, schedule, settings, stove, teaching, telling
from bot.core.actions import Outcome, Say
from bot.core.events import ButtonPressed, Event, OddMessage, RemindersDue, TextReceived
from bot.core.questions import Asked, ask, cleared, taken, yes_no
from bot.core.replies import cooks, plans, talk
from bot.core.replies.layout import local
from bot.core.state import Chat
from knowledge import Knowledge
from knowledge.foods.model import Role
from knowledge.planner.model import Plan
from knowledge.text.model import Context, CookEvent, EventType, Intent, Kind, Mode, Reading

TEXT_MAX = 5_000  # characters that are read; the rest of a longer message is not


class Topic(StrEnum):
    """What a message is about, as the table sees it."""

    PLAN = "plan"  # foods, a dinner is wanted
    AMEND = "amend"  # changes the plan in hand
    SWAP = "swap"
    START = "start"
    STARTED = "started"  # food is in the heat
    STOVE = "stove"  # anything else that happens while cooking
    STOP = "stop"
    QUESTION = "question"
    SETTING = "setting"
    SETTINGS = "settings"
    TEACH = "teach"
    WHY = "why"
    SHOW = "show"
    STATUS = "status"
    WAYS = "other vessel"
    FLAVOUR = "flavour"
    UNDO = "undo"
    FORGET = "forget"
    YES = "yes"
    NO = "no"
    HELP = "help"
    GREETING = "greeting"
    THANKS = "thanks"
    ABUSE = "abuse"
    NOTHING = "nothing"  # no food, no wish: nonsense, other matters


@dataclass(frozen=True, slots=True, kw_only=True)
class Message:
    """A text with what it was read as."""

    reading: Reading
    now: datetime
    knowledge: Knowledge


Handler = Callable[[Chat, Message], Outcome]


def step(state: Chat, event: Event, now: datetime, knowledge: Knowledge) -> Outcome:
    """What an event does to a conversation. Pure: same arguments, same result."""
    match event:
        case TextReceived():
            return _text(state, event.text, now, knowledge)
        case ButtonPressed():
            return buttons.pressed(state, event.data, now, knowledge)
        case OddMessage():
            return _say(state, talk.odd(event.kind))
        case RemindersDue():
            return telling.reminded(state, event, now, knowledge)
        case _:
            assert_never(event)


def mode_of(state: Chat) -> Mode:
    """Where the conversation stands."""
    if state.cook is not None:
        return Mode.COOKING
    return Mode.PLANNED if state.offer is not None else Mode.IDLE


# --- texts ----------------------------------------------------------------------------------------


# Words that mean one thing alone on a line, with or without a slash in front.
WORDS: Mapping[str, Topic] = {
    "start": Topic.START,
    "go": Topic.START,
    "stop": Topic.STOP,
    "help": Topic.HELP,
    "plan": Topic.SHOW,
    "show": Topic.SHOW,
    "status": Topic.STATUS,
    "next": Topic.STATUS,
    "why": Topic.WHY,
    "undo": Topic.UNDO,
    "settings": Topic.SETTINGS,
    "yes": Topic.YES,
    "no": Topic.NO,
}
REMINDER_WORDS: Mapping[str, str] = {
    "done": "done",
    "ok done": "done",
    "later": "later",
    "not yet": "more",
    "not done": "more",
    "not done yet": "more",
}


def _text(state: Chat, text: str, now: datetime, knowledge: Knowledge) -> Outcome:
    text = text.strip()[:TEXT_MAX]
    command, _, rest = text.removeprefix("/").partition(" ")
    if text.startswith("/"):
        command = command.partition("@")[0].lower()  # groups write /stop@name
        if command not in WORDS:
            return _say(state, talk.unknown_command(command))
        if command != "plan" or not rest.strip():
            return _command(state, command, now, knowledge)
        text = rest.strip()
    if not text:
        return _say(state, talk.EMPTY)
    word = " ".join(text.lower().rstrip("?!. ").split())
    first_aid = knowledge.first_aid(text)  # before anything else; the cook is left as it is
    if first_aid is not None:
        return _say(state, first_aid)
    if word in WORDS:
        return _dispatch(state, WORDS[word], Message(reading=_blank(text), now=now, knowledge=knowledge))
    if word in REMINDER_WORDS:
        if state.cook is None:
            return _dispatch(state, Topic.STOVE, Message(reading=_blank(text), now=now, knowledge=knowledge))
        return buttons.answered(state, REMINDER_WORDS[word], now, knowledge)
    lesson = teaching.to_forget(state, text)
    if lesson is not None:
        return teaching.forgotten(state, lesson)
    cook_plan = state.cook.plan if state.cook is not None else state.offer
    context = Context(
        mode=mode_of(state),
        foods=tuple(item.food for item in cook_plan.items) if cook_plan is not None else (),
        taught=state.profile.taught,
    )
    reading = knowledge.read(text, context=context, now=local(now, state.profile.utc_offset_min))
    if state.cook is not None and reading.kind in (Kind.COOK_EVENT, Kind.PLAN, Kind.OTHER):
        off = knowledge.gone_off(reading)
        if off is not None:
            return _say(state, off)
    message = Message(reading=reading, now=now, knowledge=knowledge)
    return _answer(state, message) or _dispatch(state, topic_of(reading), message)


def _command(state: Chat, command: str, now: datetime, knowledge: Knowledge) -> Outcome:
    """A bare slash command. "/start" is also what a chat platform sends at first contact."""
    if command == "start" and mode_of(state) is Mode.IDLE:
        return _say(state, talk.HELLO)
    return _dispatch(state, WORDS[command], Message(reading=_blank(command), now=now, knowledge=knowledge))


def _blank(text: str) -> Reading:
    return Reading(kind=Kind.OTHER, text=text)


def topic_of(reading: Reading) -> Topic:
    """The row of the table for a reading."""
    if reading.teaches is not None:
        return Topic.TEACH
    if reading.intent is not None:
        return Topic(reading.intent.value)
    match reading.kind:
        case Kind.PLAN:
            if reading == Reading(kind=Kind.PLAN, text=reading.text, amends=reading.amends):
                return Topic.QUESTION  # "what should I serve with it"
            # Nothing to cook in it: it can only be about the plan in hand ("no cabbage").
            return Topic.AMEND if reading.amends or not reading.items else Topic.PLAN
        case Kind.SWAP:
            return Topic.SWAP
        case Kind.QUESTION:
            return Topic.QUESTION
        case Kind.SETTING:
            return Topic.SETTING
        case Kind.COOK_EVENT:
            kind = None if reading.event is None else reading.event.type
            if kind is EventType.STARTED:
                return Topic.STARTED
            return Topic.STOP if kind is EventType.STOP else Topic.STOVE
        case Kind.OTHER:
            return Topic.AMEND if reading.amends else Topic.NOTHING


def _dispatch(state: Chat, topic: Topic, message: Message) -> Outcome:
    mode = mode_of(state)
    handler = TABLE[topic].get(mode)
    return _say(state, talk.not_in(mode.value)) if handler is None else handler(state, message)


# --- an open question -----------------------------------------------------------------------------


def _answer(state: Chat, message: Message) -> Outcome | None:
    """What the message means as the answer to the open question; None when it is none."""
    reading = message.reading
    match Asked(state.asked):
        case Asked.TAKE if (yes := taken(state, reading, message.knowledge)) is not None:
            return buttons.answer_yes_no(state, yes, message.now, message.knowledge)
        case Asked.DELAY if reading.event is None and reading.ready_by is not None:
            if reading.ready_by.in_min is None:
                return None
            return stove.delayed(cleared(state), reading.ready_by.in_min, message.now)
        case Asked.PROBE if len(reading.items) == 1 and reading.event is None:
            return buttons.probe_answer(state, reading.items[0].name, message.now, message.knowledge)
        case Asked.FOOD if reading.kind in (Kind.PLAN, Kind.OTHER, Kind.QUESTION) and not reading.amends:
            placed = [item for item in reading.items if item.food_id is not None]
            if len(placed) == 1 and placed[0].qty is None:
                return buttons.food_is(state, placed[0].name, message.now, message.knowledge)
    return None


# --- handlers that need no module of their own -----------------------------------------------------


def _say(state: Chat, text: str) -> Outcome:
    return Outcome(state=state, actions=(Say(text=text),))


def _fixed(text: str) -> Handler:
    return lambda state, message: _say(state, text)


def _ask(state: Chat, message: Message) -> Outcome:
    answer = message.knowledge.ask(
        message.reading.text, kitchen=state.profile.kitchen, diets=state.profile.diets
    )
    return _say(state, talk.answer(answer.known, answer.answer, answer.sources))


def _flavour(state: Chat, message: Message) -> Outcome:
    """ "What spices go with lamb?" is answered; "any flavour ideas?" is about the dinner in hand."""
    named = [i for i in message.reading.items if i.sure and i.food_id is not None]
    cooked = any(message.knowledge.food(item.food_id or "").role is Role.COOK for item in named)
    if cooked or (state.offer is None and state.cook is None):
        return _ask_or_list(state, message)
    return planning.directions(state, message.reading, message.now, message.knowledge)


def _ask_or_list(state: Chat, message: Message) -> Outcome:
    """A swap without a plan: the knowledge base may still know; else a list is wanted."""
    answer = message.knowledge.ask(
        message.reading.text, kitchen=state.profile.kitchen, diets=state.profile.diets
    )
    return _say(state, answer.answer if answer.known else talk.NO_PLAN_YET)


def _set(state: Chat, message: Message) -> Outcome:
    """A setting: kept, confirmed in one line; the plan on the table follows it."""
    if settings.forgets_all(message.reading):
        asked = ask(state, Asked.RESET)
        row = yes_no(talk.RESET_YES, talk.RESET_NO, asked)
        return Outcome(state=asked, actions=(Say(text=talk.RESET_ASK, buttons=(row,)),))
    profile, text = settings.apply(state.profile, message.reading, message.knowledge)
    changed = profile != state.profile
    state = replace(state, profile=profile)
    base = planning.current_request(state, message.now) if mode_of(state) is Mode.PLANNED else None
    if not changed or base is None:
        return _say(state, text)
    base = settings.released(base, message.reading)
    request = planning.under_profile(base, profile, message.knowledge)
    answer = message.knowledge.plan(request)
    if isinstance(answer, Plan) and replace(answer, request=base) == state.offer:
        return _say(replace(state, offer=answer, offered_at=message.now), text)
    return planning.offer(cleared(state), answer, message.now, lead=text)


def _teach(state: Chat, message: Message) -> Outcome:
    """ "Oca is a root, like parsnip"; without a name it is about the food asked for."""
    if message.reading.teaches is None:
        return _say(state, talk.NOTHING_EDIBLE)
    name, like = message.reading.teaches
    if not name and state.unplaced:
        return buttons.food_is(state, like, message.now, message.knowledge)
    food = message.knowledge.named(like)
    if food is None:
        return _say(state, plans.swap_unknown(like, message.knowledge.near(like)))
    if not name:
        told = message.knowledge.named(message.reading.text.lower().partition(" is ")[0].strip())
        known = told is not None and told.id != food.id
        return _say(state, talk.known_already(told.name) if told and known else talk.teach_what(food.name))
    if any(item.phrase == name or item.name == name for item in state.unplaced):
        return buttons.food_is(state, like, message.now, message.knowledge)
    return _say(teaching.learned(state, name, food.id), plans.taught(name, food.name))


def _nothing(state: Chat, message: Message) -> Outcome:
    if message.reading.unknown and mode_of(state) is Mode.IDLE:
        return _say(state, plans.all_unknown(message.reading.unknown) + " " + talk.SEND_EXAMPLE)
    return _say(state, talk.not_understood(message.reading.text, mode_of(state).value))


def _forget(state: Chat, message: Message) -> Outcome:
    """The plan is off the table; what cooks goes on. (A lesson: see `_text`.)"""
    return planning.dropped(state) if state.offer is not None else _say(state, talk.NOTHING_TO_FORGET)


def _started(state: Chat, message: Message) -> Outcome:
    event, plan = message.reading.event, state.offer
    if event is not None and event.item is not None and plan is not None:
        known = message.knowledge
        item = stove.item_of(plan, event.item, known)
        if item is None and not stove.mentioned(plan, event.item, known):
            return _say(state, cooks.not_in_cook(event.item))
    return livecook.start_hot(state, message.now, (event.minutes or 0.0) if event is not None else 0.0)


def _stove(state: Chat, message: Message) -> Outcome:
    event = message.reading.event or CookEvent(type=EventType.DONE_STEP)
    return stove.happened(state, event, message.reading.text, message.now, message.knowledge)


def _start_while_cooking(state: Chat, message: Message) -> Outcome:
    """ "Start" with a plan beside the cook asks; without one it is running already."""
    if state.offer is not None:
        return livecook.start(state, message.now)
    return livecook.already(state, message.now)


def _yes(state: Chat, message: Message) -> Outcome:
    outcome = buttons.answer_yes_no(state, True, message.now, message.knowledge)
    if outcome is None and state.cook is not None and schedule.latest_told(state.cook):
        return buttons.answered(state, "done", message.now, message.knowledge)
    return outcome or _say(state, talk.YES_TO_WHAT if mode_of(state) is not Mode.COOKING else talk.GO_ON)


def _no(state: Chat, message: Message) -> Outcome:
    outcome = buttons.answer_yes_no(state, False, message.now, message.knowledge)
    return outcome or _say(state, talk.NO_TO_WHAT if mode_of(state) is not Mode.COOKING else talk.GO_ON)


def _show_cook(state: Chat, message: Message) -> Outcome:
    return livecook.shown(state, message.now)


def _every(handler: Handler) -> dict[Mode, Handler]:
    return {Mode.IDLE: handler, Mode.PLANNED: handler, Mode.COOKING: handler}


def _row(
    idle: Handler | None = None, planned: Handler | None = None, cooking: Handler | None = None
) -> dict[Mode, Handler]:
    row = {Mode.IDLE: idle, Mode.PLANNED: planned, Mode.COOKING: cooking}
    return {mode: handler for mode, handler in row.items() if handler is not None}


def _planned(handler: Callable[[Chat, Reading, datetime, Knowledge], Outcome]) -> Handler:
    return lambda state, m: handler(state, m.reading, m.now, m.knowledge)


_NEW = _planned(planning.new_plan)
_AMEND = _planned(planning.amended)

# Which message is welcome in which mode, and who answers it.
TABLE: Mapping[Topic, Mapping[Mode, Handler]] = {
    # topic          nothing planned      a plan on the table   cooking
    Topic.PLAN: _row(_NEW, _planned(planning.joined_or_new), _planned(planning.beside)),
    Topic.AMEND: _row(_AMEND, _AMEND, _planned(changes.amend)),
    Topic.SWAP: _row(_ask_or_list, _planned(planning.swapped), _planned(changes.swap)),
    Topic.START: _row(None, lambda s, m: livecook.start(s, m.now), _start_while_cooking),
    Topic.STARTED: _row(_fixed(talk.NO_COOK), _started, _stove),
    Topic.STOVE: _row(_fixed(talk.NO_COOK), None, _stove),
    Topic.STOP: _row(_fixed(talk.NO_COOK), _fixed(talk.NOT_STARTED), lambda s, m: livecook.stop(s, m.now)),
    Topic.QUESTION: _every(_ask),
    Topic.SETTING: _every(_set),
    Topic.SETTINGS: _every(lambda s, m: _say(s, talk.profile(s.profile))),
    Topic.TEACH: _every(_teach),
    Topic.WHY: _row(_planned(planning.why), _planned(planning.why), lambda s, m: livecook.why(s)),
    Topic.SHOW: _row(None, lambda s, m: planning.shown(s, m.now), _show_cook),
    Topic.STATUS: _row(None, lambda s, m: planning.shown(s, m.now), lambda s, m: livecook.status(s, m.now)),
    Topic.WAYS: _row(None, lambda s, m: planning.ways(s), _fixed(cooks.VESSEL_STAYS)),
    Topic.FLAVOUR: _every(_flavour),
    Topic.UNDO: _row(
        lambda s, m: planning.undone(s, m.now), lambda s, m: planning.undone(s, m.now), _fixed(cooks.NO_UNDO)
    ),
    Topic.FORGET: _row(_forget, _forget, _forget),
    Topic.YES: _every(_yes),
    Topic.NO: _every(_no),
    Topic.HELP: _every(_fixed(talk.HELP)),
    Topic.GREETING: _row(
        _fixed(talk.HELLO), _fixed(talk.HELLO_AGAIN), lambda s, m: livecook.status(s, m.now)
    ),
    Topic.THANKS: _row(_fixed(talk.THANKS), _fixed(talk.THANKS), _fixed(talk.THANKS_COOKING)),
    Topic.ABUSE: _every(_fixed(talk.CALM)),
    Topic.NOTHING: _every(_nothing),
}

_UNKNOWN_INTENTS = {intent.value for intent in Intent} - {topic.value for topic in Topic}
if _UNKNOWN_INTENTS:  # an intent added to the reader must be given a row here
    raise TypeError(f"no topic for intents {sorted(_UNKNOWN_INTENTS)}")
