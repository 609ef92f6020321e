"""Records of the planner: what is asked of it and what it answers.

Times are seconds; 0 is the moment when the first food meets heat, preparation
and preheating are negative. Nothing here knows a wall clock.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from enum import StrEnum


class Do(StrEnum):
    """Kinds of steps; the names are part of the scripting interface."""

    PREHEAT = "preheat"
    PREP = "prep"
    BROWN = "brown"
    ADD = "add"
    LID = "lid"
    HEAT = "heat"
    TURN = "turn"
    TAKE_OUT = "take out"
    RELEASE = "release"
    REST = "rest"
    CHECK = "check"
    SERVE = "serve"


class Verdict(StrEnum):
    """The answer to a swap."""

    TOGETHER = "together"  # nothing but the name changes, all windows still hold
    ADJUST = "adjust"  # works with the named change
    NO = "no"


@dataclass(frozen=True, slots=True, kw_only=True)
class VesselAt:
    """A vessel that stands in this kitchen; `size` is a VesselSize id, None for the usual one."""

    id: str
    size: str | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Kitchen:
    """What is there to cook with. The defaults are an ordinary kitchen at sea level."""

    vessels: tuple[VesselAt, ...] = (
        VesselAt(id="sheet pan"),
        VesselAt(id="saute pan"),
        VesselAt(id="lidded pot"),
        VesselAt(id="pressure cooker"),
    )
    oven_max_degC: float = 250.0
    fan_oven: bool = False
    broiler: bool = True
    sheet: str = "dull"  # what lies under the food in the oven: one of physics' `media.SHEETS`
    altitude_m: float = 0.0
    units: str = "metric"  # or "us"


@dataclass(frozen=True, slots=True, kw_only=True)
class Have:
    """One food at hand. Amounts as far as they are known; the planner assumes the rest and says so."""

    food_id: str
    grams: float | None = None
    qty: float | None = None
    unit: str | None = None
    size: str | None = None
    state: str | None = None  # canned, frozen, raw, leftover, cooked, dried, soaked; None: the usual one
    cut: str | None = None  # as the cook has it already ("ground", "whole", "diced", "bone-in")
    said: str = ""  # the cook's own word for one of it, used in replies
    several: bool = False  # said in the plural, without a number: "carrots"
    across_mm: float | None = None  # how thick a piece is, as said
    aside: bool = False  # to be served beside or on top, as the cook said: not cooked with the rest
    rough: str | None = None  # "little" ("a splash of") or "plenty", where no number was said


@dataclass(frozen=True, slots=True, kw_only=True)
class Swapped:
    """A replacement that was made: `out` left for `into`."""

    out: Have
    into: Have


@dataclass(frozen=True, slots=True, kw_only=True)
class Learned:
    """What earlier cooks taught about this kitchen: multipliers on time, 1 for none."""

    oven_pace: float = 1.0
    class_pace: tuple[tuple[str, float], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Caution:
    """A safety line with the authority behind it."""

    text: str
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class LeftOut:
    """A food that is not cooked in this plan."""

    food: str
    why: str
    said: str = ""  # the cook's own word for it

    @property
    def label(self) -> str:
        """As it is called in a reply."""
        return self.said or self.food


@dataclass(frozen=True, slots=True, kw_only=True)
class Request:
    """A dinner wanted."""

    have: tuple[Have, ...]
    eaters: float = 2.0
    eaters_said: bool = False
    ready_in_s: float | None = None  # from now to the table
    vessel: str | None = None
    not_vessels: tuple[str, ...] = ()
    excluded: tuple[str, ...] = ()  # food ids
    allergies: tuple[str, ...] = ()  # allergen tokens: what contains one stays out
    diets: tuple[str, ...] = ()
    wishes: tuple[str, ...] = ()
    flavours: tuple[str, ...] = ()  # ids of `flavours.csv`: the direction asked for, one of these
    unknown: tuple[str, ...] = ()  # names the reader could not place; they are left out, and said so
    read_as: tuple[tuple[str, str], ...] = ()  # the cook's words that were only nearly a food, and that food
    kitchen: Kitchen = field(default_factory=Kitchen)
    learned: Learned = field(default_factory=Learned)
    youngest: float | None = None  # age of the youngest eater [years], if a child is spoken of
    spoiled: tuple[str, ...] = ()  # food ids that stood out warm for hours; not cooked, and said so
    unfit: tuple[LeftOut, ...] = ()  # food ids whose part or state is not eaten ("rhubarb leaves"), and why
    alerts: tuple[Caution, ...] = ()  # what the message itself gave reason to warn of
    swapped: tuple[Swapped, ...] = ()  # what was replaced, so that a swap back finds the amounts again


@dataclass(frozen=True, slots=True, kw_only=True)
class Done:
    """When and how a food is done, within its window."""

    kind: str  # core_temp, tender, crisp_tender, soft, al_dente, wilted, warmed
    at_s: float
    window_s: tuple[float, float]  # earliest done, latest still good
    core_degC: float | None
    rest_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class PlanItem:
    """A food in a plan: how much, how cut, from when to when."""

    food_id: str
    food: str  # name to show
    grams: float
    state: str
    cut_id: str
    cut: str
    size_mm: float
    shape: str
    in_s: float
    out_s: float
    done: Done
    why: str
    doneness: str = ""  # class by which it is done: the food's own, or "warm_through" ...
    said: str = ""  # the cook's own word for one of it; "" when it is `food`
    called: str = ""  # as steps call it: plural when there are several
    on_top: bool = False  # lies on the others, out of the liquid
    lane: str = "main"  # the stage it finishes in: "main", the "second" sealing, "after" pressure
    lead: str = ""  # what happened in the open pan before: "browned", "seared", "softened", "soaked"
    add_s: float = 0.0  # when it goes into that stage, before the end of the stage

    @property
    def label(self) -> str:
        """As it is called in a reply: the cook's word, else its name; "carrots" when there are several."""
        return self.called or self.said or self.food


@dataclass(frozen=True, slots=True, kw_only=True)
class Step:
    """Something the cook does. `hands_s` is how long it keeps both hands busy."""

    id: str  # unique in the plan, stable when times shift
    at_s: float
    do: Do
    foods: tuple[str, ...]  # food ids
    text: str
    hands_s: float = 0.0
    safety: bool = False  # never merged away, never dropped


@dataclass(frozen=True, slots=True, kw_only=True)
class Settings:
    """Where the knobs stand; only those that apply are set."""

    oven_degC: float | None = None
    fan: bool | None = None
    hob: str | None = None  # "high", "medium", "low", or a short sequence
    pressure_kPa_gauge: float | None = None
    release: str | None = None  # "quick" or "slow"
    method: str = ""  # id of the method, e.g. "roast", "braise", "sealed"


@dataclass(frozen=True, slots=True, kw_only=True)
class Liquid:
    """What to pour in."""

    what: str
    ml: float
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Alternative:
    """Another vessel that would do, with what it costs and brings."""

    vessel: str
    total_s: float
    why: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Plan:
    """A one-vessel dinner, complete."""

    vessel: str
    size: str
    fill: float
    settings: Settings
    serves: float
    total_s: float  # from "I start" to the table
    hands_on_s: float
    cooking_s: float  # from the first food in to the table
    items: tuple[PlanItem, ...]
    liquid: Liquid | None
    steps: tuple[Step, ...]  # in order of at_s
    cautions: tuple[Caution, ...]
    left_out: tuple[LeftOut, ...]
    assumed: tuple[str, ...]
    alternatives: tuple[Alternative, ...]
    why: tuple[str, ...]
    request: Request  # what it answers, so that a change can plan again
    advice: tuple[str, ...] = ()  # what would round it off
    late_s: float = 0.0  # by how much it misses the time that was asked for
    spare_s: float = 0.0  # how long one may wait before beginning, when that is long
    timing: str = ""  # the first line when it is late or has time to spare
    remedy: str = ""  # what would make a late dinner less late
    notes: tuple[str, ...] = ()  # what is worth a line of its own: the mountains, a wish that is not granted
    quicker: str = ""  # what was tried to make it quicker, when that was wished
    flavour: str = ""  # a line: what would lend it a direction of flavour, if it is there


@dataclass(frozen=True, slots=True, kw_only=True)
class NoPlan:
    """No good dinner in one vessel, with the reasons and the nearest good plan."""

    reasons: tuple[str, ...]
    nearest: Plan | None
    request: Request


@dataclass(frozen=True, slots=True, kw_only=True)
class SwapAnswer:
    """Would this replacement still finish with the rest?"""

    verdict: Verdict
    finish_shift_s: float
    change: tuple[tuple[str, str], ...]  # ("cut", "20 mm dice"), ("in_min", "12"), ...
    text: str
    cautions: tuple[Caution, ...]
    plan: Plan | None
