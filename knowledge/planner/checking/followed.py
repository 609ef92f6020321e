"""The path of one food as the steps of a finished plan have it: from medium to medium.

By another route than `heat`: what goes in cold draws the vessel down and it recovers, meat
waits on a plate, pressure rises, falls and leaves. Nothing of the search is used here.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace

from knowledge.foods.model import DoneKind, Food
from knowledge.foods.pieces import piece_of
from knowledge.foods.store import Store
from knowledge.physics import goal, media, vessels
from knowledge.physics import piece as physics_piece
from knowledge.physics.model import Case, Medium, Phase, Texture
from knowledge.physics.safety import minimum
from knowledge.planner.checking.written import SEALED, STEAMED, covered_m2, sealings, size_of
from knowledge.planner.gathering.dinner import figures
from knowledge.planner.model import Do, Plan, PlanItem, Step
from knowledge.planner.search.floor import batches as floor_batches
from knowledge.planner.search.floor import layer_m2, load_g

COLD_FILLED_DEGC, REOPENED_DEGC = 60.0, 80.0  # what lies in a cooker when its lid is locked
FRIDGE_DEGC, FOOD_CP = 6.0, 3600.0  # a home fridge; moist food [J/kgK]
NESTLED = ("fish", "shellfish")  # half in the sauce
TALL_MM = 58.0  # stands above its neighbours
LEAST_ML = 100.0  # of its own juice, where nothing was poured in
TEXTURES = {"crisp_tender": Texture.CRISP_TENDER, "soft": Texture.SOFT, "wilted": Texture.CRISP_TENDER}
SOAKING_DEGC = 95.0  # the mean of a lidded pot off the heat, while something soaks in it
DRY = ("roast", "roast-broil")
BROILER_DEGC, DOOR_DIP_K, DOOR_DIP_S = (
    320.0,
    100.0,
    45.0,
)  # as `search.heat` has it; the door opened to lay food under it, judgement


def case_of(item: PlanItem, plan: Plan, store: Store) -> Case:
    """The food's whole path as phases; the last one is open-ended."""
    food = figures(item.food_id, item.state, store)
    doneness = store.doneness(item.doneness or food.doneness)
    texture = TEXTURES.get(item.done.kind, Texture.TENDER)
    pieced = piece_of(food, store.cut(item.cut_id))
    pieced = replace(pieced, size_mm=item.size_mm)  # as heavy or as thick as the cook says
    state = item.state or food.start_state
    end = goal(food, doneness, texture=texture, method=_physics_name(plan), state=item.state or None)
    mince = item.doneness == "ground_meat" and food.safety == "whole_meat"
    published = minimum("leftover" if item.state == "leftover" else "ground_meat" if mince else food.safety)
    if published is not None:
        end = replace(end, safe_degC=published.core_degC)
    return Case(
        piece=physics_piece(
            food, size_mm=pieced.size_mm, shape=pieced.shape, ratio_1=pieced.ratio_1, ratio_2=pieced.ratio_2,
            state=state,
        ),
        phases=tuple(_phases(item, food, plan, store)),
        goal=end,
    )  # fmt: skip


def _physics_name(plan: Plan) -> str:
    """The method's name in the physics tables."""
    if plan.settings.method in SEALED:
        return "pressure"
    return {"roast": "roast", "roast-broil": "roast", "saute": "saute"}.get(plan.settings.method, "simmer")


def _phases(item: PlanItem, food: Food, plan: Plan, store: Store) -> Iterator[Phase]:
    """What surrounds the food from the moment it meets heat, read off the steps."""
    mine = [s for s in plan.steps if item.food_id in s.foods]
    brown = next((s for s in mine if s.do is Do.BROWN), None)
    adds = [s for s in mine if s.do is Do.ADD and slices_step(item, plan) is None]
    last = adds[-1] if adds else brown
    surface = "meat" if food.part == "protein" else "cut"
    altitude = plan.request.kitchen.altitude_m
    if brown is not None:
        each_s = brown.hands_s / batches(brown, plan, store)
        yield _fixed(
            media.open_pan(200.0, altitude_m=altitude, surface=surface, flat=_is_flat(item, food)), each_s
        )
        if last is not brown and last is not None:
            yield _fixed(media.resting(25.0, altitude_m=altitude), last.at_s - brown.at_s - brown.hands_s)
    elif plan.settings.method not in DRY and _in_open_pan(adds, plan):
        yield _fixed(media.open_pan(140.0, altitude_m=altitude), adds[0].hands_s)
    if plan.settings.method in SEALED:
        yield from _under_pressure(item, plan, store)
    else:
        at = last.at_s if last is not None else item.in_s
        broiled_at_s = min((i.in_s for i in plan.items if i.lane == "after"), default=math.inf)
        if at < broiled_at_s < item.out_s:
            yield _fixed(_medium(item, food, plan, store, at), broiled_at_s - at)
        if broiled_at_s < item.out_s:
            yield Phase(medium=_glowing(surface, altitude), duration_s=None)
            return
        yield from _then_boiled_down(_medium(item, food, plan, store, at), at, plan)


def boil_down(plan: Plan) -> Step | None:
    """The step in which the sauce is boiled down with the lid off."""
    return next((s for s in plan.steps if s.do is Do.HEAT and "boil the sauce down" in s.text), None)


def _then_boiled_down(medium: Medium, at_s: float, plan: Plan) -> Iterator[Phase]:
    """Under the lid, and at the end in a sauce that boils hard."""
    down = boil_down(plan)
    if down is not None and at_s < down.at_s:
        yield _fixed(medium, down.at_s - at_s)
        medium = media.boiling(plan.request.kitchen.altitude_m)
    yield Phase(medium=medium, duration_s=None)


def batches(brown: Step, plan: Plan, store: Store) -> int:
    """In how many turns the meat of a browning step fits the floor of the vessel."""
    size = size_of(plan, store)
    items = [i for i in plan.items if i.food_id in brown.foods and i.shape != "grain"]  # mince is one heap
    covers = sum(
        layer_m2(store.food(i.food_id), i.grams, shape=i.shape, size_mm=i.size_mm, cut_id=i.cut_id)
        for i in items
    )
    load = sum(load_g(i.grams, shape=i.shape, size_mm=i.size_mm) for i in items)
    return floor_batches(load, covers, size.area_m2)


def slices_step(item: PlanItem, plan: Plan) -> Step | None:
    """The step in which it comes back in slices, done and rested already; None when it does not."""
    mine = (s for s in plan.steps if s.do is Do.ADD and item.food_id in s.foods)
    return next((s for s in mine if s.text.startswith("Slices of")), None)


def in_pan_s(item: PlanItem, plan: Plan, store: Store) -> float:
    """How long one piece is browned: its own turn in the pan."""
    brown = next(s for s in plan.steps if s.do is Do.BROWN and item.food_id in s.foods)
    return brown.hands_s / batches(brown, plan, store)


def _fixed(medium: Medium, seconds: float) -> Phase:
    return Phase(medium=medium, duration_s=max(seconds, 1.0))


def _in_open_pan(adds: Sequence[Step], plan: Plan) -> bool:
    """Whether it is softened before the liquid comes."""
    pour = next((s.at_s for s in plan.steps if s.do in (Do.HEAT, Do.LID)), None)
    return bool(adds) and adds[0].hands_s > 120 and (pour is None or adds[0].at_s < pour)


def _under_pressure(item: PlanItem, plan: Plan, store: Store) -> Iterator[Phase]:
    """Each sealing that it is in for: up, held, let go, and the open boil until the next or the table."""
    altitude = plan.request.kitchen.altitude_m
    gauge = plan.settings.pressure_kPa_gauge or 80.0
    at = joins_at(item, plan)
    found = sealings(plan)
    for number, now in enumerate(found):
        if now.opened_s <= at + 1.0:
            continue
        start_degC = REOPENED_DEGC if number else COLD_FILLED_DEGC
        rising = media.pressure(gauge, altitude, now.full_s - now.lid_s, start_degC=start_degC)
        yield _fixed(rising, now.release_s - now.lid_s)
        fall_s = now.opened_s - now.release_s
        yield _fixed(media.releasing(gauge, altitude, duration_s=fall_s), fall_s)
        if number + 1 < len(found):
            yield _fixed(media.stewing(altitude), found[number + 1].lid_s - now.opened_s)
    yield Phase(medium=media.bubbling(altitude), duration_s=None)


def _medium(item: PlanItem, food: Food, plan: Plan, store: Store, at_s: float) -> Medium:
    """The medium of the last phase, drawn down by what goes in cold with the food."""
    altitude = plan.request.kitchen.altitude_m
    size = size_of(plan, store)
    cold_kg = sum(i.grams for i in plan.items if abs(joins_at(i, plan) - at_s) < 30) / 1000.0
    cold = [vessels.Load(mass_kg=max(cold_kg, 1e-3), cp_J_kgK=FOOD_CP, at_degC=FRIDGE_DEGC)]
    match plan.settings.method:
        case "roast" | "roast-broil":
            degC = (plan.settings.oven_degC or 220.0) + (20.0 if plan.settings.fan else 0.0)
            air_degC = degC - 20.0 if plan.settings.fan else degC
            start_degC, back_s = vessels.oven_after_loading(
                setting_degC=air_degC, tray_kg=size.mass_kg, tray_cp_J_kgK=size.cp_J_kgK, foods=cold
            )
            crowded = vessels.crowding(
                area_m2=size.area_m2, pieces_area_m2=covered_m2(plan, store), flat=_is_flat(item, food)
            )
            return media.oven(
                air_degC,
                fan=bool(plan.settings.fan),
                crowding=0.0
                if item.size_mm >= TALL_MM
                else vessels.felt(crowded, size_mm=item.size_mm, flat=_is_flat(item, food)),
                surface="meat" if food.part == "protein" else "cut",
                sheet=plan.request.kitchen.sheet,
                altitude_m=altitude,
                start_degC=start_degC,
                come_up_s=back_s,
            )
        case "saute":
            surface = "meat" if food.part == "protein" else "cut"
            pan = media.open_pan(200.0, altitude_m=altitude, surface=surface, flat=_is_flat(item, food))
            layers = max(covered_m2(plan, store, _stirred(plan, store)) / size.area_m2, 1.0)
            return pan if food.part == "protein" else replace(pan, contact_frac=pan.contact_frac / layers)
        case "braise-oven":
            return media.covered_oven(plan.settings.oven_degC or 175.0, altitude_m=altitude, start_degC=85.0)
        case _:
            make = _lid_medium(item, food, plan, store)
            if _only_soaks(item, plan):
                return media.simmering(altitude, SOAKING_DEGC - altitude / 300.0)
            start_degC, back_s = vessels.after_adding(
                pot_kg=size.mass_kg,
                pot_cp_J_kgK=size.cp_J_kgK,
                water_kg=(plan.liquid.ml if plan.liquid else LEAST_ML) / 1000.0,
                liquid_degC=make(altitude).ambient_degC,
                foods=cold,
                altitude_m=altitude,
            )
            return make(altitude, start_degC=start_degC, come_up_s=back_s)


def _stirred(plan: Plan, store: Store) -> list[PlanItem]:
    """What is tossed about together: not meat, fish and eggs, which lie or run by themselves."""
    foods = ((i, store.food(i.food_id)) for i in plan.items)
    return [i for i, food in foods if not (food.part == "protein" and food.animal)]


def _lid_medium(item: PlanItem, food: Food, plan: Plan, store: Store) -> Callable[..., Medium]:
    """Under a lid on the hob: steam over water or over a bed, or liquid that bubbles or only trembles."""
    if plan.settings.method in STEAMED or (item.on_top and food.part != "protein"):
        return media.steaming
    if item.on_top and item.doneness not in NESTLED:
        return media.on_top
    if _is_gentle(plan, store):
        return media.stewing
    return media.nestled if item.on_top else media.bubbling


def _only_soaks(item: PlanItem, plan: Plan) -> bool:
    """Whether its step says that the heat goes off."""
    adds = [s for s in plan.steps if s.do is Do.ADD and item.food_id in s.foods]
    return bool(adds) and "off the heat" in adds[-1].text.lower()


def _glowing(surface: str, altitude_m: float) -> Medium:
    """Under the broiler: the heater dips while the door is open and the sheet slides back."""
    full = media.broiler(BROILER_DEGC, surface=surface, altitude_m=altitude_m)
    return replace(full, start_degC=full.ambient_degC - DOOR_DIP_K, come_up_s=DOOR_DIP_S)


def _is_flat(item: PlanItem, food: Food) -> bool:
    return food.part == "protein" and item.shape in ("slab", "disk")


def _is_gentle(plan: Plan, store: Store) -> bool:
    """Tough meat in the pot: the cook keeps it at a tremble."""
    return any(
        all(
            store.doneness(kind).kind is DoneKind.COLLAGEN
            for kind in (item.doneness, store.food(item.food_id).doneness)  # thighs only simmer until tender
        )
        for item in plan.items
    )


def joins_at(item: PlanItem, plan: Plan) -> float:
    adds = [s.at_s for s in plan.steps if s.do is Do.ADD and item.food_id in s.foods]
    return adds[-1] if adds else item.in_s
