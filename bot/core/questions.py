"""The one question that may wait for an answer, and the buttons that carry their own whereabouts.

A button's data is `kind:number:verb[:argument]`, at most 64 bytes: `p` for a plan
on the table (number of the offer), `q` for a question (its number), `c` for a cook
(its number, then the number of a step). An old button is known by its number and
answered truthfully.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from enum import StrEnum

from bot.core.actions import Button
from bot.core.state import Chat, LiveCook
from knowledge import Knowledge
from knowledge.planner.model import Plan
from knowledge.text.model import EventType, Intent, Kind, Reading

SHORT_WORDS = 8  # in more there is something else besides
DATA_MAX_BYTES = 64  # the limit of the tightest transport


class Asked(StrEnum):
    """What was asked; kept in `Chat.asked`."""

    NOTHING = ""
    TAKE = "take"  # take the pending plan?
    FOOD = "food"  # what is the first of `unplaced`?
    WHEN = "when"  # did the step ticked off late happen just now?
    DELAY = "delay"  # how many minutes late?
    PROBE = "probe"  # a reading of which food?
    RESET = "reset"  # forget everything kept about this cook?
    SECOND = "second"  # stop the running cook for the plan on the table?


@dataclass(frozen=True, slots=True, kw_only=True)
class Press:
    """A button's data, taken apart."""

    kind: str
    number: int
    verb: str
    argument: str


def press(data: str) -> Press | None:
    """The parts of a button's data; None for what no button of ours carries."""
    parts = data.split(":", 3)
    if len(parts) < 3 or parts[0] not in ("p", "q", "c") or not (parts[1].isascii() and parts[1].isdigit()):
        return None
    return Press(
        kind=parts[0], number=int(parts[1]), verb=parts[2], argument=parts[3] if len(parts) == 4 else ""
    )


def _button(label: str, data: str) -> Button:
    return Button(label=label, data=data.encode()[:DATA_MAX_BYTES].decode(errors="ignore"))


def plan_button(label: str, offer_no: int, verb: str, argument: str = "") -> Button:
    """A button under an offer."""
    return _button(label, f"p:{offer_no}:{verb}:{argument}")


def turn_button(label: str, number: int, verb: str, argument: str = "") -> Button:
    """A button under a question."""
    return _button(label, f"q:{number}:{verb}:{argument}")


def yes_no(yes: str, no: str, state: Chat) -> tuple[Button, Button]:
    """The two buttons of the question that is open."""
    return turn_button(yes, state.asked_no, "yes"), turn_button(no, state.asked_no, "no")


def cook_button(label: str, cook: LiveCook, verb: str, step_number: int) -> Button:
    """A button under a message of a running cook."""
    return _button(label, f"c:{cook.number}:{verb}:{step_number}")


def ask(state: Chat, what: Asked, pending: Plan | None = None, about: str = "") -> Chat:
    """The state with a question open; an earlier one is dropped."""
    turn = state.turn + 1
    return replace(state, turn=turn, asked=what.value, asked_no=turn, pending=pending, asked_about=about)


def cleared(state: Chat) -> Chat:
    """The state without an open question."""
    return replace(state, asked=Asked.NOTHING.value, pending=None, asked_about="")


def taken(state: Chat, reading: Reading, knowledge: Knowledge) -> bool | None:
    """Whether the proposed plan is taken, by a word or by the food alone; None when that is not the answer.

    "Ok, use the parsnips" names only what would come in: a yes. "No, keep the swede" names only
    what would go: a no.
    """
    if reading.intent is Intent.START:
        return True  # "great, do it"; a bare "start" never comes here
    held = state.cook.plan if state.cook is not None else state.offer
    if held is None or state.pending is None or len(reading.text.split()) > SHORT_WORDS:
        return None
    event = None if reading.event is None else reading.event.type
    if reading.kind in (Kind.QUESTION, Kind.SETTING) or any(i.qty is not None for i in reading.items):
        return None
    named = {item.food_id for item in reading.items}
    said = (reading.event.item if reading.event is not None else None) or (
        reading.swap.to if reading.swap is not None else None
    )
    if said is not None and (food := knowledge.named(said)) is not None:
        named.add(food.id)
    before = {have.food_id for have in held.request.have}
    after = {have.food_id for have in state.pending.request.have}
    if named and named <= after - before:
        return True
    if named and named <= before - after and event in (None, EventType.SKIP):
        return False
    return None
