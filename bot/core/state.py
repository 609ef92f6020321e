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

VERSION = 1


class StepStatus(StrEnum):
    """Where a step of a running cook stands."""

    WAITING = "waiting"  # its reminder has not come yet
    TOLD = "told"  # reminded, the cook has not answered
    DONE = "done"
    SKIPPED = "skipped"


@dataclass(frozen=True, slots=True, kw_only=True)
class LiveStep:
    """A step of the plan on the clock. `nudges` counts how often "later" moved it."""

    step_id: str
    due_at: datetime
    status: StepStatus = StepStatus.WAITING
    nudges: int = 0


@dataclass(frozen=True, slots=True, kw_only=True)
class LiveCook:
    """Something is on the heat. `zero_at` is the wall clock of the plan's second 0 (UTC)."""

    cook_id: str
    plan: Plan
    started_at: datetime
    zero_at: datetime
    steps: tuple[LiveStep, ...]


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
    """One conversation. `offer` is the plan on the table, `refusal` what was answered
    when there was none; `previous` is what "undo" goes back to."""

    chat_id: str
    version: int = VERSION
    profile: Profile = field(default_factory=Profile)
    offer: Plan | None = None
    refusal: NoPlan | None = None
    previous: Plan | None = None
    asked: str = ""  # the one question that waits for an answer, as a token of core.conversation
    cook: LiveCook | None = None
    cooks_begun: int = 0


def to_json(chat: Chat) -> bytes:
    """The state as JSON."""
    return msgspec.json.encode(chat)


def from_json(data: bytes) -> Chat:
    """The state back from JSON. Raises msgspec.ValidationError on what is not one."""
    return msgspec.json.decode(data, type=Chat)
