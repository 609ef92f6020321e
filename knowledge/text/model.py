"""What a message was read as. Field names follow the scripting interface.

`Reading` is made by `knowledge.text.read` from a message and the `Context` in
which it was written: the same words mean something else before, during and
after a cook.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Kind(StrEnum):
    """What the cook wants with a message."""

    PLAN = "plan"
    SWAP = "swap"
    COOK_EVENT = "cook_event"
    QUESTION = "question"
    SETTING = "setting"
    OTHER = "other"


class Mode(StrEnum):
    """Where the conversation stands."""

    IDLE = "idle"
    PLANNED = "planned"  # a plan is on the table, not started
    COOKING = "cooking"


class EventType(StrEnum):
    """What happened at the stove."""

    STARTED = "started"
    DONE_STEP = "done_step"
    DELAY = "delay"
    PROBE = "probe"
    NOT_DONE = "not_done"
    TOO_FAST = "too_fast"
    SKIP = "skip"
    STOP = "stop"
    OVEN_NOT_HOT = "oven_not_hot"
    FORGOT = "forgot"


class Intent(StrEnum):
    """Short requests that are about the conversation rather than about food."""

    START = "start"
    HELP = "help"
    GREETING = "greeting"
    THANKS = "thanks"
    WHY = "why"
    SHOW = "show"  # show the plan again
    STATUS = "status"  # "what's next", "how long"
    OTHER_VESSEL = "other vessel"  # show me another way
    FLAVOUR = "flavour"  # which spices, what direction of taste
    YES = "yes"
    NO = "no"
    UNDO = "undo"
    FORGET = "forget"  # clear the plan
    SETTINGS = "settings"
    ABUSE = "abuse"


@dataclass(frozen=True, slots=True, kw_only=True)
class Context:
    """What the conversation knows when a message comes in."""

    mode: Mode = Mode.IDLE
    foods: tuple[str, ...] = ()  # food names in the plan in hand or the running cook
    taught: tuple[tuple[str, str], ...] = ()  # (name, food id it behaves like), this cook's own


@dataclass(frozen=True, slots=True, kw_only=True)
class Item:
    """One food that the writer has, as said."""

    name: str  # plain singular US name
    food_id: str | None  # None: not in the tables
    qty: float | None
    unit: str | None
    grams: float | None  # only from a weight in the text
    state: str | None  # canned, frozen, raw, leftover, cooked, dried
    cut: str | None
    size: str | None  # small, large, ... only if said
    phrase: str  # the cook's own words
    sure: bool  # False: a near match that should be shown as such
    across_mm: float | None = None  # how thick a piece is, as said ("3 cm thick")
    form: str = ""  # what the mince is shaped into: "patty", "meatball"
    rough: str | None = None  # "little" ("a splash of", "bit of") or "plenty" ("lots of"): no number said


@dataclass(frozen=True, slots=True, kw_only=True)
class ReadyBy:
    """A deadline: a clock time "HH:MM", or minutes from now. Exactly one is set."""

    clock: str | None = None
    in_min: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class CookEvent:
    """Something that happened during tonight's cooking."""

    type: EventType
    minutes: float | None = None
    item: str | None = None
    temp_c: float | None = None
    goes_in: bool = False  # the food went into the heat, or into the pot


@dataclass(frozen=True, slots=True, kw_only=True)
class OutWarm:
    """A perishable food that was left in the warm; `hours` is None where that is not told."""

    name: str
    food_id: str
    hours: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Spoilt:
    """A food with a sign of `spoilage.csv` that it may have gone off; `days` since it was cooked or got."""

    name: str
    food_id: str
    sign: str
    eaten: bool  # in spite of the sign: mould on a carrot is cut out
    days: float | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapRead:
    """`frm` leaves, `to` comes in; None where the text leaves it open."""

    frm: str | None
    to: str | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Reading:
    """A message, read.

    `amends` is true of a PLAN reading that changes the plan in hand: then only what it
    names changes (`items` join, `excluded` leave, `people`, `ready_by`, `vessel`,
    `not_vessel`, `diet` and `wishes` take the place of the earlier ones).
    """

    kind: Kind
    text: str
    items: tuple[Item, ...] = ()
    excluded: tuple[str, ...] = ()
    allergies: tuple[str, ...] = ()  # those of `excluded` that an allergy bars: what contains them goes too
    dropped: tuple[str, ...] = ()  # foods at hand, in the cook's words, that are among `excluded`
    diet: tuple[str, ...] = ()
    diet_lifted: tuple[str, ...] = ()  # diets that hold no longer ("I'm not vegetarian any more")
    people: float | None = None
    ready_by: ReadyBy | None = None
    vessel: str | None = None
    not_vessel: tuple[str, ...] = ()
    event: CookEvent | None = None
    swap: SwapRead | None = None
    also: tuple[SwapRead, ...] = ()  # further swaps of the same message
    intent: Intent | None = None
    amends: bool = False  # changes the plan in hand ("no carrots after all", "make it 6")
    wishes: tuple[str, ...] = ()  # "crisp", "saucy", "quick", "less chopping", "oven"; a style; "not stew"
    flavours: tuple[str, ...] = ()  # families of `flavours.csv` that the direction asked for may mean
    settings: tuple[tuple[str, str], ...] = ()  # ("units", "us"), ("altitude_m", "1600"), ...
    out_warm: tuple[OutWarm, ...] = ()
    spoilt: tuple[Spoilt, ...] = ()
    youngest: float | None = None  # age of the youngest eater [years], if a child is spoken of
    unknown: tuple[str, ...] = ()  # food-like words that were not placed, in the cook's words
    # What an unknown food is like: (its name, a food's label). The name is "" for the one asked about last.
    teaches: tuple[str, str] | None = None
    asks: tuple[str, ...] = ()  # questions worth asking back, one line each
