"""What is kept of a conversation: frozen, versioned, to and from JSON.

Plans are relative (seconds from the first food in the heat); only `LiveCook`
holds wall-clock times, so "I am ten minutes late" is one shift, not a new plan.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime
from enum import StrEnum

import msgspec

from knowledge.planner.model import Kitchen, Learned, NoPlan, Plan
from knowledge.text.model import Item

VERSION = 1


class StepStatus(StrEnum):
    """Where a step of a running cook stands."""

    WAITING = "waiting"  # its reminder has not come yet
    TOLD = "told"  # reminded, the cook has not answered
    DONE = "done"
    SKIPPED = "skipped"


@dataclass(frozen=True, slots=True, kw_only=True)
class LiveStep:
    """A step of the plan on the clock.

    `number` is unique in the cook and never used again; buttons carry it. `nudges`
    counts how often the step was put back after it had been told, so that each
    telling has a key of its own. `told_with` is the number of the step that heads
    the message in which this one was told.
    """

    number: int
    step_id: str
    due_at: datetime
    status: StepStatus = StepStatus.WAITING
    nudges: int = 0
    told_with: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class LiveCook:
    """Something is on the heat. `zero_at` is the wall clock of the plan's second 0 (UTC).

    `number` counts the cooks of this chat, `offer_no` says which offer it was begun from.
    """

    cook_id: str
    number: int
    offer_no: int
    plan: Plan
    started_at: datetime
    zero_at: datetime
    steps: tuple[LiveStep, ...]  # in order of number
    next_number: int
    read_low: tuple[str, ...] = ()  # foods whose last thermometer reading was below its goal


@dataclass(frozen=True, slots=True, kw_only=True)
class Profile:
    """What holds beyond tonight."""

    kitchen: Kitchen = field(default_factory=Kitchen)
    eaters: float | None = None
    diets: tuple[str, ...] = ()
    excluded: tuple[str, ...] = ()
    utc_offset_min: int | None = None  # None: the machine's own zone
    taught: tuple[tuple[str, str], ...] = ()  # (name, food id it behaves like)
    learned: Learned = field(default_factory=Learned)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chat:
    """One conversation.

    `offer` is the plan on the table, made at `offered_at`; `refusal` what was answered
    when there was none; `previous` is what "undo" goes back to. Offers and questions
    are counted by `turn`, so that a button knows whether it is still meant.
    """

    chat_id: str
    version: int = VERSION
    profile: Profile = field(default_factory=Profile)
    turn: int = 0
    offer: Plan | None = None
    offer_no: int = 0
    offered_at: datetime | None = None
    refusal: NoPlan | None = None
    previous: Plan | None = None
    asked: str = ""  # the one question that waits for an answer, a value of core.questions.Asked
    asked_no: int = 0
    asked_about: str = ""  # what the question needs to remember, e.g. a thermometer reading
    pending: Plan | None = None  # the plan that the question is about
    unplaced: tuple[Item, ...] = ()  # foods of the offer's message that nothing in the tables fits
    cook: LiveCook | None = None
    ended: LiveCook | None = None  # the cook that was stopped last, until the next one begins
    cooks_begun: int = 0


def to_json(chat: Chat) -> bytes:
    """The state as JSON."""
    return msgspec.json.encode(chat)


def from_json(data: bytes) -> Chat:
    """The state back from JSON. Raises msgspec.ValidationError on what is not one."""
    return msgspec.json.decode(data, type=Chat)
