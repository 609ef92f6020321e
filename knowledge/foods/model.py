"""Records of the knowledge base: what a food, a cut and a vessel are.

All frozen; built from the tables in `knowledge/data` (one row a food, a source
beside each figure). A figure that is not known is None; zero means zero.
"""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum


class Role(StrEnum):
    """What a food is in a dinner."""

    COOK = "cook"  # has a doneness of its own; the planner gives it a cut and a time
    SEASON = "season"  # herbs, spices, fats, sauces, acids, dairy: goes in at a moment
    FINISH = "finish"  # eaten as it is: salad leaf, fresh fruit, bread; never goes on the heat


class DoneKind(StrEnum):
    """Which of the rules of `physics.doneness` says when a food is done."""

    CORE = "core"  # a core temperature (tender meat, poultry, fish, sausage, egg)
    SOFTEN = "soften"  # a softening dose (vegetables, fruit)
    HYDRATE = "hydrate"  # a dose that includes taking up water (grain, pasta, pulse)
    COLLAGEN = "collagen"  # a dose in which tough meat turns tender
    WILT = "wilt"  # thin leaves
    WARM = "warm"  # cooked already: only to be heated through
    NONE = "none"  # not cooked by us


class Behaviour(StrEnum):
    """How a food takes sealed pressure."""

    FINE = "fine"
    FOAMS = "foams"
    SWELLS = "swells"
    FALLS_APART = "falls apart"
    UNSUITABLE = "unsuitable"


class When(StrEnum):
    """The moment a seasoning goes in."""

    START = "start"
    AROMATICS = "aromatics"
    LIQUID = "liquid"
    END = "end"
    TABLE = "table"


@dataclass(frozen=True, slots=True, kw_only=True)
class Composition:
    """Grams in 100 g of the edible, raw food."""

    water_g: float
    protein_g: float
    fat_g: float
    carbohydrate_g: float  # total, fibre included, as USDA prints it
    fibre_g: float
    ash_g: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Portion:
    """What one named unit of a food weighs ("piece", "piece large", "cup", "bunch", "can" ...)."""

    unit: str
    size: str  # "", "small", "large", ...
    grams: float
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Cut:
    """A culinary cut: a shape with its smallest dimension.

    `shape` is one of `physics.shapes.Shape`; the ratios are the other two
    dimensions over the smallest one (1 where they do not apply). A cut that divides
    the food as bought ("whole", "halved", "quartered") has shape "whole", size 0 and
    the number of `parts`; `pieces.piece_of` gives the piece that results.
    """

    id: str  # "medium dice"
    name: str  # as said to a cook: "12 mm dice"
    shape: str
    size_mm: float
    ratio_1: float
    ratio_2: float
    knife_min_per_kg: float
    source: str
    parts: int = 0  # pieces that the whole becomes; 0 for a cut of fixed size


@dataclass(frozen=True, slots=True, kw_only=True)
class Doneness:
    """A doneness class: the row of `doneness.csv` that a food points to.

    Doses are minutes at 100 °C at "tender"; factors are relative to that dose.
    `over_factor` (doses) and `over_degC` (core) bound the window above: beyond
    them the food is mushy, dry or burnt.
    """

    id: str
    kind: DoneKind
    dose_min: float | None
    z_below_K: float | None
    z_above_K: float | None
    cutoff_degC: float | None
    theta: float  # weight of the mean temperature in the dose temperature
    kappa: float  # share of the carry-over that counts towards a core target
    target_degC: float | None
    crisp_factor: float | None
    soft_factor: float | None
    over_factor: float | None
    over_degC: float | None
    roast_factor: float | None  # browning stands in for a longer dose in dry heat
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Food:
    """One food with every figure that the rest of the program may use."""

    id: str  # slug, e.g. "carrot"
    name: str  # plain singular US name, e.g. "carrot"
    group: str  # "root", "leaf", "poultry", "fish", "pulse", "grain", "spice", ...
    role: Role
    composition: Composition | None
    density_kg_m3: float | None  # of one piece
    bulk_density_kg_m3: float | None  # of a heap of it
    portions: tuple[Portion, ...]
    whole_shape: str | None  # the piece as bought
    whole_mm: float | None  # its smallest full dimension
    whole_ratio_1: float
    whole_ratio_2: float
    cuts: tuple[str, ...]  # ids of the cuts that make sense, usual first
    doneness: str  # id of a Doneness row
    dose_factor: float  # this food against its class
    target_degC: float | None  # overrides the class
    over_degC: float | None
    safety: str  # id of a row of `safe_minimums.csv`, "" if none applies
    start_state: str  # "fridge", "room", "dry", "frozen", "canned"
    water_uptake_g_per_g: float | None  # absorbed until done
    loss_frac: float | None  # mass lost until done
    pressure: Behaviour
    edible_frac: float
    serving_g: float | None  # raw, one adult, at dinner
    fridge_days: float | None
    freezer_months: float | None
    cooked_days: float | None
    allergens: frozenset[str]  # "milk", "eggs", "fish", "crustaceans", "tree nuts", "peanuts", ...
    animal: str  # "", "beef", "pork", "lamb", "poultry", "fish", "shellfish", "egg", "dairy", "honey", ...
    part: str  # what it is in a dinner: "protein", "starch", "vegetable", "aromatic", "liquid", "fat", ...
    when: When | None  # seasonings
    does: str  # what it does or is like, in a few words
    salt_g: float | None  # per 100 g
    smoke_degC: float | None
    sources: tuple[tuple[str, str], ...]  # (column, source id), every figure
    composition_of: str = ""  # the row of its source: "11124 Carrots, raw"
    season: str = ""  # months of harvest in the northern temperate zone: "9-3", "all year"; "" unknown
    notes: str = ""  # what a cook should know: poison, foam, bones, colour

    def sources_of(self, *columns: str) -> tuple[str, ...]:
        """The ids of the sources of these figures, each once."""
        return tuple(dict.fromkeys(source for column, source in self.sources if column in columns))


@dataclass(frozen=True, slots=True, kw_only=True)
class VesselSize:
    """One size of a vessel as sold."""

    id: str  # "half sheet", "28 cm", "5 l"
    vessel: str  # Vessel.id
    area_m2: float  # usable floor
    volume_l: float | None
    mass_kg: float
    cp_J_kgK: float
    serves: float
    usual: bool
    sides_cm: tuple[float, ...]  # of a sheet, outside; () for what is round
    source: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Vessel:
    """A vessel: what heat it can give and how much it may hold."""

    id: str  # such as "sheet pan"
    methods: tuple[str, ...]  # ids of `methods.csv`
    max_fill_frac: float
    max_fill_foaming_frac: float
    min_liquid_ml: float
    single_layer: bool
    browns: bool
    dome: float  # so many times as deep as its rim, what stands in it may be: lids are domed
    why: str  # what it is good at, as the reason for choosing it
    sizes: tuple[VesselSize, ...]
    source: str
