"""Checks of a finished plan as it is written: order, room, the sealed lid, beans, nothing forgotten.

No heat is simulated here; `verify` does that.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from knowledge.foods.model import Behaviour, VesselSize
from knowledge.foods.store import Store
from knowledge.physics.safety import RAW_BEAN_BOIL_S
from knowledge.planner.gathering.dinner import figures, gather
from knowledge.planner.model import Do, Plan, PlanItem
from knowledge.planner.search.floor import SHEET_FULL, layer_m2
from knowledge.planner.sizes import size_named
from knowledge.planner.words import plural

SLACK_S = 60.0  # plans are told in whole minutes
SEALED = ("sealed", "sealed-twice")
STEAMED = ("steam", "steam-pan")
LIDDED_ML_MIN, BOILED_ML_MIN = 3.0, 37.0  # under a lid; open, 1.4 kW over the latent heat of water
POURED = ("liquid", "dairy", "sauce")
WET, LATER = ("liquid", "sauce"), ("stock", "dairy")  # with the food; counted as water, or at the end
LEAST_SAUCE_ML = 40.0  # for each eater; with less it catches
STEAM_ML_MIN = 6.0  # what leaves under the rim of a lid while it steams; common practice, no source
FALL_S = {"quick": 90.0, "slow": 720.0}  # of pressure; common practice, no source
VESSEL_OVER = 1.03  # rounding


@dataclass(frozen=True, slots=True, kw_only=True)
class Sealing:
    """One time under pressure [s from the first food in the heat]."""

    lid_s: float
    full_s: float
    release_s: float
    opened_s: float


def as_written(plan: Plan, *, store: Store) -> Iterator[str]:
    """What is wrong with the plan on paper, a sentence each."""
    yield from _order(plan)
    yield from _room(plan, store)
    yield from _sealed(plan)
    yield from _water_lasts(plan)
    yield from _sauce_lasts(plan, store)
    yield from _boiled(plan)
    yield from _forgotten(plan, store)


def _order(plan: Plan) -> Iterator[str]:
    times = [s.at_s for s in plan.steps]
    if times != sorted(times):
        yield "the steps are not in order"
    for item in plan.items:
        if item.in_s < -SLACK_S or item.out_s > plan.cooking_s + SLACK_S:
            yield f"{item.food} is in the heat before the start or after the table"
        prepared = [s for s in plan.steps if s.do is Do.PREP and item.food_id in s.foods]
        if any(s.at_s + s.hands_s > item.in_s + SLACK_S for s in prepared):
            yield f"{item.food} is not ready when it should go in"


def _room(plan: Plan, store: Store) -> Iterator[str]:
    """Room, measured from the items as they stand."""
    vessel = store.vessel(plan.vessel)
    size = size_of(plan, store)
    limit = SHEET_FULL if vessel.single_layer else vessel.max_fill_frac
    if plan.settings.method in SEALED and any(_rises(i, store) for i in plan.items):
        limit = vessel.max_fill_foaming_frac
    full = covered_m2(plan, store) / size.area_m2 if vessel.single_layer else _volume(plan, store, size)
    if full > limit * VESSEL_OVER:
        yield f"the {plan.size} is too full: {full:.2f} of it"
    if plan.settings.method in SEALED and (plan.liquid is None or plan.liquid.ml < vessel.min_liquid_ml):
        yield "too little liquid for a pressure cooker"


def _rises(item: PlanItem, store: Store) -> bool:
    """Whether it foams or swells under the lid and could reach the valve."""
    rising = store.food(item.food_id).pressure in (Behaviour.FOAMS, Behaviour.SWELLS)
    return rising and item.lane != "after" and item.doneness != "warm_through"


def size_of(plan: Plan, store: Store) -> VesselSize:
    """The size of the vessel that the plan cooks in."""
    return size_named(store.vessel(plan.vessel), plan.size)


def covered_m2(plan: Plan, store: Store, items: Sequence[PlanItem] | None = None) -> float:
    """The floor that these items, or everything in the plan, take lying side by side [m2]."""
    return sum(
        layer_m2(
            figures(i.food_id, i.state, store), i.grams, shape=i.shape, size_mm=i.size_mm, cut_id=i.cut_id
        )
        for i in (plan.items if items is None else items)
    )


def _volume(plan: Plan, store: Store, size: VesselSize) -> float:
    """How full it is before it is hot: all that is poured over all that lies there, or a heap above it."""
    flesh = whole = 0.0
    for item in plan.items:
        if item.lane == "after":
            continue
        food = figures(item.food_id, item.state, store)
        litres = item.grams / (food.density_kg_m3 or 1050.0)
        flesh += litres * food.edible_frac
        whole += litres if food.animal else litres * food.edible_frac  # bones lie in it too
    poured = plan.liquid.ml if plan.liquid else 0.0
    poured += sum(
        s.grams or 0.0
        for s in gather(plan.request, store=store).seasonings
        if s.food.part in WET and s.food.group not in LATER
    )
    return max(whole + poured / 1000.0, flesh / 0.62) / (size.volume_l or 1.0)


def _sealed(plan: Plan) -> Iterator[str]:
    """Nothing goes into a locked cooker."""
    if plan.settings.method not in SEALED:
        return
    found = sealings(plan)
    if not found:
        yield "a pressure cooker without lid and release"
    for step in plan.steps:
        shut = any(s.lid_s <= step.at_s < s.opened_s - 1 for s in found)
        if shut and step.do in (Do.ADD, Do.TURN, Do.BROWN, Do.TAKE_OUT):
            yield f"something is added while the cooker is sealed: {step.text}"


def _water_lasts(plan: Plan) -> Iterator[str]:
    """What steams must not boil dry."""
    if plan.settings.method in STEAMED:
        gone_ml = STEAM_ML_MIN * plan.cooking_s / 60.0
        if plan.liquid is None or plan.liquid.ml < gone_ml:
            yield f"the {plan.vessel} boils dry: {gone_ml:.0f} ml leave as steam"


def _sauce_lasts(plan: Plan, store: Store) -> Iterator[str]:
    """What is boiled down must not boil away."""
    down = next((s for s in plan.steps if s.do is Do.HEAT and "boil the sauce down" in s.text), None)
    if down is None or plan.liquid is None:
        return
    open_min = (max(i.out_s for i in plan.items) - down.at_s) / 60.0
    under_lid = 0.0 if plan.settings.method in SEALED else down.at_s / 60.0
    given = sum(i.grams * (figures(i.food_id, i.state, store).loss_frac or 0.0) for i in plan.items)
    wine = sum(s.grams or 0.0 for s in gather(plan.request, store=store).seasonings if s.food.part in POURED)
    left = plan.liquid.ml + wine + given - BOILED_ML_MIN * open_min - LIDDED_ML_MIN * under_lid
    if left < LEAST_SAUCE_ML * plan.serves:
        yield f"the sauce boils away: {max(left, 0.0):.0f} ml left"


def sealings(plan: Plan) -> tuple[Sealing, ...]:
    """Each time the lid is locked, read off the steps, and how its pressure is let go."""
    lids, full, releases = (
        [s.at_s for s in plan.steps if s.do is do] for do in (Do.LID, Do.HEAT, Do.RELEASE)
    )
    slow = ["by itself" in s.text for s in plan.steps if s.do is Do.RELEASE]
    if plan.settings.method not in SEALED or not lids or not len(lids) == len(releases) <= len(full):
        return ()
    fall_s = [FALL_S["slow" if by_itself else "quick"] for by_itself in slow]
    return tuple(
        Sealing(
            lid_s=lid, full_s=next(at for at in full if at >= lid), release_s=release, opened_s=release + fall
        )
        for lid, release, fall in zip(lids, releases, fall_s, strict=True)
    )


def _boiled(plan: Plan) -> Iterator[str]:
    """Raw beans boil hard for as long as the FDA asks, by steps of their own."""
    for item in plan.items:
        if item.doneness != "bean" or plan.settings.method in SEALED:
            continue
        mine = [s for s in plan.steps if item.food_id in s.foods and s.safety]
        boil = next((s.at_s for s in mine if s.do is Do.ADD and "boil hard" in s.text), None)
        down = next((s.at_s for s in mine if s.do is Do.HEAT), None)
        if boil is None or down is None or down - boil < RAW_BEAN_BOIL_S - 1.0:
            yield f"{item.food}: not boiled hard for {RAW_BEAN_BOIL_S / 60:.0f} min"


def _forgotten(plan: Plan, store: Store) -> Iterator[str]:
    """Every seasoning and side that was named has its place in some step."""
    said = " ".join(step.text for step in plan.steps).lower()
    dinner = gather(plan.request, store=store)
    for named in (*dinner.seasonings, *dinner.sides):
        if not any(name.lower() in said for name in (named.name, plural(named.name))):
            yield f"{named.name} is in no step"
