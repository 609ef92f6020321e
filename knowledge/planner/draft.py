"""Records between the search and the plan: ways of cooking, a laid-out dinner, its stages.

A `Draft` is one complete answer (vessel, size, method, setting, a way and an add time
for every dish) before it is written out; drafts are what the planner compares.
"""

from __future__ import annotations

from dataclasses import dataclass

from knowledge.foods.model import Cut, Vessel, VesselSize
from knowledge.foods.pieces import Pieced
from knowledge.physics.model import Case
from knowledge.planner.gathering.dinner import Dinner, Dish
from knowledge.planner.methods import Method
from knowledge.planner.model import Kitchen, Liquid
from knowledge.planner.search.stabbing import Window

MAIN, SECOND, AFTER = "main", "second", "after"  # second: in for the second of two sealings
BROWNED, SEARED, SOFTENED, SOAKED = "browned", "seared", "softened", "soaked"


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One way of cooking one dish, solved.

    `lead` is what happens before its lane: browned (and back into the liquid), seared
    until done and put back at the end, or softened with the aromatics, for `lead_s`.
    Times in `window` are before the end of the lane, `rest_s` included when the food
    comes out earlier than the rest to stand.
    """

    dish: Dish
    doneness: str  # class by which it is done here: thighs in a braise are done like tough meat
    cut: Cut
    piece: Pieced
    case: Case
    window: Window
    lead: str
    lead_s: float
    top: bool  # lies on the others, out of the liquid
    done: str  # kind of doneness, in the words of the scripting interface
    core_degC: float | None  # what a thermometer should show when it comes out
    rest_s: float
    fit: float
    doubt_s: float = 0.0  # by how much published times differ from the one reckoned, either way
    slices: bool = False  # of what rests: cut across the grain, it is hot again in a minute
    rewarmed: bool = False  # rested, sliced, and back in for the last minute
    toasts: bool = False  # in the hot fat first, where it is in from the start: risotto rice
    manner: str = ""  # of `pan_manners.csv`: how it behaves in an open pan
    rests: bool = False  # seared until done, and out of the pan until the table: steaks and chops
    held: bool = False  # done when it comes out of the pan; laid back only to be hot

    def lane_is(self, lane: str) -> bool:
        """Whether the way cooks in that lane."""
        return self.window.lane == lane


@dataclass(frozen=True, slots=True, kw_only=True)
class Placed:
    """A way and when it goes into its lane [s before the end of the lane]."""

    way: Way
    add_s: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Stages:
    """When the stages of a cook begin and end [s from the first food in the heat]."""

    preheat_s: float  # how long before 0 the heat goes on
    browned_s: float  # end of browning or searing
    softened_s: float  # end of softening the aromatics
    main_start_s: float  # simmering, or in the oven, or the lid locked
    at_pressure_s: float  # equals main_start_s when there is no pressure
    main_end_s: float
    opened_s: float  # pressure gone; equals main_end_s when there is none
    after_end_s: float
    serve_s: float
    first_end_s: float  # the first pressure is let go; these four equal main_end_s when there is but one
    reopened_s: float  # the second lot goes in
    resealed_s: float
    at_pressure_again_s: float
    still_s: float = 0.0  # at the end of browning, for what lies still by itself
    toast_s: float = 0.0  # at the end of softening, for grains in the fat before any liquid
    reduce_s: float = 0.0  # at the end the lid is off and the sauce boils down for so long

    @property
    def meat_out_s(self) -> float:
        """When browned meat leaves the pan, before what lies still goes in."""
        return self.browned_s - self.still_s


@dataclass(frozen=True, slots=True, kw_only=True)
class Draft:
    """One complete dinner in one vessel."""

    vessel: Vessel
    size: VesselSize
    method: Method
    setting: float | None
    dinner: Dinner
    kitchen: Kitchen
    placed: tuple[Placed, ...]
    refused: tuple[tuple[Dish, str], ...]  # dishes that this method cannot take, and why
    fill: float
    liquid: Liquid | None
    slow_release: bool
    stages: Stages
    start_s: float  # when the cook begins: knife, preheating
    score: float
