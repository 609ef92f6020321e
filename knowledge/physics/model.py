"""Records of the cooking model. The functions that use them are named in `knowledge.physics`.

A `Case` is one piece of food, going through phases of heat, towards one end
point. Cases are independent of each other, so that thousands are solved in one
batch. What one vessel does to all that lies in it is the business of
`physics.vessels`, which turns a vessel's heat balance into the phases.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Shape(StrEnum):
    """How a piece is built; see `shapes.exponent` for the geometry."""

    SLAB = "slab"
    CYLINDER = "cylinder"
    SPHERE = "sphere"
    BRICK = "brick"
    ROD = "rod"
    DISK = "disk"
    FLORET = "floret"
    LEAF = "leaf"
    GRAIN = "grain"
    BIRD = "bird"
    JOINT = "joint"


class Heat(StrEnum):
    """The law by which a medium gives heat to a surface."""

    DRY = "dry"  # air + radiation + evaporation: oven, broiler
    WET = "wet"  # liquid or condensing steam
    PAN = "pan"  # contact with hot metal on a fraction of the surface, air or steam on the rest
    AIR = "air"  # resting, still air


class Texture(StrEnum):
    """How done a softening food is wanted."""

    CRISP_TENDER = "crisp_tender"
    TENDER = "tender"
    SOFT = "soft"


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One piece of food: geometry and constant thermal properties."""

    exponent: float  # 0 slab, 1 cylinder, 2 sphere, anything between
    half_size_m: float  # half the smallest full dimension, size factor included, of the equivalent piece
    area_factor: float  # true surface over that of the equivalent piece
    brisk: tuple[float, float, float]  # the same three under brisk heat, where the inside resists most
    wet_size: float  # its size in liquid or steam, which gets into its gaps, over that in air
    k_W_mK: float
    density_kg_m3: float
    cp_J_kgK: float
    water_frac: float
    start_degC: float  # frozen: the equivalent start with the latent heat folded in
    skinned: bool  # skin or peel that slows evaporation
    mass_kg: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Medium:
    """The surroundings of a piece during one phase."""

    heat: Heat
    ambient_degC: float  # air, liquid or steam, at its end value
    start_degC: float  # value when the phase begins; equal to ambient_degC when there is no come-up
    come_up_s: float  # time in which it goes from start to ambient; 0 for none
    h_W_m2K: float  # convective, or the wet coefficient
    emissivity: float  # times view factor; 0 for no radiation
    exposure: float  # fraction of the surface that takes part: spaced 0.95, piled 0.58
    pan_degC: float  # metal in contact; DRY: the oven, which reaches the underside through the sheet
    pan_h_W_m2K: float
    contact_frac: float
    wetness: float  # 0 dry skin .. 1 free water; DRY only
    vapour_Pa: float  # partial pressure of water in the air; DRY only
    pressure_Pa: float  # ambient absolute pressure


@dataclass(frozen=True, slots=True, kw_only=True)
class Phase:
    """A medium for a time; the last phase of a case is open-ended (duration None)."""

    medium: Medium
    duration_s: float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Goal:
    """The end point of one piece.

    Either `target_degC` (core temperature, with the share kappa of the carry-over
    counted) or `dose_min` (minutes at 100 °C of the dose temperature). `over_*`
    is the upper edge of the window. `safe_degC` is the published minimum that the
    core must have reached, whatever the taste; None where none applies.
    """

    kind: str  # foods.model.DoneKind value
    target_degC: float | None
    kappa: float
    dose_min: float | None
    z_below_K: float
    z_above_K: float
    cutoff_degC: float
    theta: float
    over_degC: float | None
    over_dose_min: float | None
    safe_degC: float | None
    safe_hold_s: float
    lethality: str = ""  # table by which kill is counted: "", "meat", "chicken" or "turkey"
    fat_pct: float = 0.0
    browned_min: float | None = None  # minutes at 150 °C of the outside that done asks for; None: no matter
    browns: bool = False  # in dry heat: whether browning is followed


@dataclass(frozen=True, slots=True, kw_only=True)
class PieceState:
    """What a simulation knows about a piece at one moment, enough to go on from there."""

    modes_degC: tuple[float, ...]  # the mean, then the coefficients of the zero-flux modes
    core_remainder_K: float
    dose_min: float
    lethality_log: float
    evaporated_kg_m2: float
    browned_min: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Case:
    """A piece, the phases it goes through and its end point."""

    piece: Piece
    phases: tuple[Phase, ...]
    goal: Goal
    state: PieceState | None = None  # None: starts at piece.start_degC throughout


@dataclass(frozen=True, slots=True, kw_only=True)
class History:
    """A piece followed through a case, one value for each time asked for."""

    times_s: tuple[float, ...]
    core_degC: tuple[float, ...]
    mean_degC: tuple[float, ...]
    surface_degC: tuple[float, ...]
    dose_min: tuple[float, ...]
    lethality_log: tuple[float, ...]
    evaporated_kg_m2: tuple[float, ...]
    browned_min: tuple[float, ...]  # minutes at 150 °C of the outermost layer, see `browning`


@dataclass(frozen=True, slots=True, kw_only=True)
class Outcome:
    """What became of one case. Times in seconds from its first phase; None: not within the limit.

    `done_s` is when the end point AND the published safe minimum are both met.
    `lo_s`/`hi_s` bound `done_s` with the published spread of cooking times.
    """

    done_s: float | None
    lo_s: float | None
    hi_s: float | None
    over_s: float | None
    safe_s: float | None
    core_degC: float  # at done_s
    mean_degC: float  # at done_s
    lethality_log: float  # at done_s
    decided_by: str  # "core temperature", "softening", "safe minimum", ...
    note: str
    browned_s: float | None = None  # when its outside is brown, in dry heat; None too where it never is
