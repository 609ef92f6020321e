"""Checks a finished plan from the outside, by another route than the one that made it.

The search solves each dish alone in an ideal medium. Here the plan's own steps are
followed: what goes in when, from which temperature, how far cold additions draw the
vessel down and how long it takes to come back, how pressure rises and falls. Each food
is simulated along that path and compared with its end point, its upper edge and the
published minimum. Room, order and the sealed lid are checked in `written`.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from knowledge.foods.model import DoneKind, Food
from knowledge.foods.pieces import piece_of
from knowledge.foods.store import Store
from knowledge.physics import cook, goal, media
from knowledge.physics import piece as physics_piece
from knowledge.physics.model import Case, Medium, Outcome, Phase, Texture
from knowledge.physics.safety import minimum
from knowledge.planner.dinner import figures
from knowledge.planner.model import Do, Plan, PlanItem, Step
from knowledge.planner.written import FALL_S, SLACK_S, as_written

EARLY, LATE = 0.15, 0.15  # of the time in the heat: the spread that published times have among themselves
CORE_SLACK_K = 1.0  # what a kitchen thermometer can tell
HOB_W = 1400.0
OVEN_W = 1500.0
OVEN_J_K = 14_000.0  # air, racks and inner walls
WATER_J_KGK, FOOD_J_KGK = 4190.0, 3600.0
TEXTURES = {"crisp_tender": Texture.CRISP_TENDER, "soft": Texture.SOFT, "wilted": Texture.CRISP_TENDER}
DRY = ("roast", "roast-broil")
BROILER_DEGC, DOOR_DIP_K, DOOR_DIP_S = 320.0, 100.0, 45.0


@dataclass(frozen=True, slots=True, kw_only=True)
class ItemReport:
    """One food along the plan's own path. Times from the first food in the heat [s]."""

    food: str
    done_s: float | None
    over_s: float | None
    out_s: float
    safe: bool
    on_time: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class Report:
    """What the re-simulation found; `problems` is empty for a sound plan."""

    items: tuple[ItemReport, ...]
    problems: tuple[str, ...]
    unsafe: tuple[str, ...]
    spread_s: float  # latest minus earliest place within the windows, measured from their middles
    interventions: int

    @property
    def sound(self) -> bool:
        """Nothing unsafe, nothing broken, every food in its window."""
        return not self.problems and not self.unsafe


def check(plan: Plan, *, store: Store) -> Report:
    """Re-simulates a plan. Pure; raises nothing for a plan the planner can make."""
    cases = [_case(item, plan, store) for item in plan.items]
    outcomes = cook(cases)
    items = tuple(
        _judged(item, case, out, _in_heat_s(item, plan, store), _good_s(item, plan, store))
        for item, case, out in zip(plan.items, cases, outcomes, strict=True)
    )
    problems = [
        *as_written(plan, store=store),
        *_late_or_early(items),
    ]
    return Report(
        items=items,
        problems=tuple(problems),
        unsafe=tuple(i.food for i in items if not i.safe),
        spread_s=_spread_s(items),
        interventions=sum(s.do in (Do.ADD, Do.TURN, Do.TAKE_OUT) and s.at_s > 0 for s in plan.steps),
    )


def _case(item: PlanItem, plan: Plan, store: Store) -> Case:
    """The food's whole path as phases; the last one is open-ended."""
    food = figures(item.food_id, item.state, store)
    doneness = store.doneness(item.doneness or food.doneness)
    texture = TEXTURES.get(item.done.kind, Texture.TENDER)
    pieced = piece_of(food, store.cut(item.cut_id))
    if pieced.shape in ("joint", "bird"):
        pieced = replace(pieced, size_mm=item.size_mm)  # as heavy as the cook says
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
    return {"roast": "roast", "roast-broil": "roast", "saute": "saute", "sealed": "pressure"}.get(
        plan.settings.method, "simmer"
    )


def _phases(item: PlanItem, food: Food, plan: Plan, store: Store) -> Iterator[Phase]:
    """What surrounds the food from the moment it meets heat, read off the steps."""
    mine = [s for s in plan.steps if item.food_id in s.foods]
    brown = next((s for s in mine if s.do is Do.BROWN), None)
    adds = [s for s in mine if s.do is Do.ADD]
    last = adds[-1] if adds else brown
    surface = "meat" if food.part == "protein" else "cut"
    altitude = plan.request.kitchen.altitude_m
    if brown is not None:
        each_s = brown.hands_s / _batches(brown, plan, store)
        yield _fixed(
            media.open_pan(200.0, altitude_m=altitude, surface=surface, flat=_is_flat(item, food)), each_s
        )
        if last is not brown and last is not None:
            yield _fixed(media.resting(25.0, altitude_m=altitude), last.at_s - brown.at_s - brown.hands_s)
    elif plan.settings.method not in DRY and _in_open_pan(adds, plan):
        yield _fixed(media.open_pan(140.0, altitude_m=altitude), adds[0].hands_s)
    if plan.settings.method == "sealed":
        yield from _under_pressure(item, plan, store)
    else:
        at = last.at_s if last is not None else item.in_s
        broiled_at_s = min((i.in_s for i in plan.items if i.lane == "after"), default=math.inf)
        if at < broiled_at_s < item.out_s:
            yield _fixed(_medium(item, food, plan, store, at), broiled_at_s - at)
        if broiled_at_s < item.out_s:
            yield Phase(medium=_glowing(surface, altitude), duration_s=None)
            return
        yield Phase(medium=_medium(item, food, plan, store, at), duration_s=None)


def _batches(brown: Step, plan: Plan, store: Store) -> int:
    """In how many turns the meat of a browning step fits the floor of the vessel."""
    size = next(s for s in store.vessel(plan.vessel).sizes if s.id == plan.size)
    items = [i for i in plan.items if i.food_id in brown.foods]
    area = sum(
        i.grams
        * store.food(i.food_id).edible_frac
        / 1e3
        / 1050.0
        / (max(i.size_mm, 20.0 if i.shape == "grain" else 4.0) / 1e3)
        for i in items
    )
    return min(max(1, math.ceil(area / 0.72 / (size.area_m2 * 1.05))), 3)


def _fixed(medium: Medium, seconds: float) -> Phase:
    return Phase(medium=medium, duration_s=max(seconds, 1.0))


def _in_open_pan(adds: Sequence[Step], plan: Plan) -> bool:
    """Whether it is softened before the liquid comes."""
    pour = next((s.at_s for s in plan.steps if s.do in (Do.HEAT, Do.LID)), None)
    return bool(adds) and adds[0].hands_s > 120 and (pour is None or adds[0].at_s < pour)


def _under_pressure(item: PlanItem, plan: Plan, store: Store) -> Iterator[Phase]:
    at = {s.do: s.at_s for s in plan.steps if s.do in (Do.LID, Do.HEAT, Do.RELEASE)}
    altitude = plan.request.kitchen.altitude_m
    opened = at[Do.RELEASE] + FALL_S[plan.settings.release or "quick"]
    if item.lane == "after":
        yield Phase(medium=media.bubbling(altitude), duration_s=None)
        return
    gauge = plan.settings.pressure_kPa_gauge or 80.0
    rise = at[Do.HEAT] - at[Do.LID]
    yield _fixed(media.pressure(gauge, altitude, rise), at[Do.RELEASE] - at[Do.LID])
    falling = media.pressure(gauge * 0.35, altitude, 0.0)
    yield _fixed(falling, opened - at[Do.RELEASE])
    yield Phase(medium=media.bubbling(altitude), duration_s=None)


def _medium(item: PlanItem, food: Food, plan: Plan, store: Store, at_s: float) -> Medium:
    """The medium of the last phase, drawn down by what goes in cold with the food."""
    altitude = plan.request.kitchen.altitude_m
    cold_kg = sum(i.grams for i in plan.items if abs(_joins(i, plan) - at_s) < 30) / 1000.0
    match plan.settings.method:
        case "roast" | "roast-broil":
            degC = (plan.settings.oven_degC or 220.0) + (20.0 if plan.settings.fan else 0.0)
            drop = min(cold_kg * FOOD_J_KGK * 8.0 / OVEN_J_K + 12.0, 60.0)
            return media.oven(
                degC - 20.0 if plan.settings.fan else degC,
                fan=bool(plan.settings.fan),
                crowding=min(max((plan.fill - 0.6) / 0.8, 0.0), 1.0),
                surface="meat" if food.part == "protein" else "cut",
                altitude_m=altitude,
                start_degC=degC - drop - (20.0 if plan.settings.fan else 0.0),
                come_up_s=drop * OVEN_J_K / OVEN_W,
            )
        case "saute":
            return media.open_pan(
                200.0,
                altitude_m=altitude,
                surface="meat" if food.part == "protein" else "cut",
                flat=_is_flat(item, food),
            )
        case "braise-oven":
            return media.covered_oven(plan.settings.oven_degC or 175.0, altitude_m=altitude, start_degC=85.0)
        case _:
            inside = sum(i.grams for i in plan.items if _joins(i, plan) < at_s - 30) / 1000.0
            hot = inside * FOOD_J_KGK + (plan.liquid.ml if plan.liquid else 100.0) / 1000.0 * WATER_J_KGK
            drop = min(cold_kg * FOOD_J_KGK * 85.0 / (hot + cold_kg * FOOD_J_KGK), 60.0)
            back_s = min(cold_kg * FOOD_J_KGK * 0.35 * 90.0 / HOB_W, 900.0)  # the outer third warms first
            top = item.on_top
            make = media.on_top if top else media.stewing if _is_gentle(plan, store) else media.bubbling
            return make(altitude, start_degC=96.0 - altitude / 300.0 - drop, come_up_s=back_s)


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


def _joins(item: PlanItem, plan: Plan) -> float:
    adds = [s.at_s for s in plan.steps if s.do is Do.ADD and item.food_id in s.foods]
    return adds[-1] if adds else item.in_s


def _in_heat_s(item: PlanItem, plan: Plan, store: Store) -> float:
    """How long one piece is in the heat: of what is only seared, its own turn in the pan."""
    mine = [s for s in plan.steps if item.food_id in s.foods]
    brown = next((s for s in mine if s.do is Do.BROWN), None)
    seared = plan.settings.method == "saute" and not any(s.do is Do.ADD for s in mine)
    if brown is not None and seared and item.out_s < plan.cooking_s - 1.0:
        return brown.hands_s / _batches(brown, plan, store)
    return item.out_s - item.in_s


def _judged(item: PlanItem, case: Case, out: Outcome, in_heat: float, good_s: float) -> ItemReport:
    """Whether the food is done, not overdone and safe when it leaves the heat."""
    rest = item.done.rest_s
    done, over = out.done_s, out.over_s
    if done is not None and over is not None:
        over = max(over, done + good_s)
    slack = SLACK_S + EARLY * in_heat
    on_time = done is not None and done <= in_heat + rest + slack
    if over is not None and over < in_heat * (1.0 - LATE) - SLACK_S:
        on_time = False
    return ItemReport(
        food=item.food,
        done_s=None if done is None else item.in_s + done,
        over_s=None if over is None else item.in_s + over,
        out_s=item.out_s,
        safe=_is_safe(item, case, out, in_heat + rest),
        on_time=on_time,
    )


def _is_safe(item: PlanItem, case: Case, out: Outcome, available_s: float) -> bool:
    """The published minimum is met in the time there is, or the thermometer step holds the food back."""
    if case.goal.safe_degC is None:
        return True
    if item.done.core_degC is None and item.done.kind in ("core_temp", "warmed"):
        return False
    if item.done.core_degC is not None and item.done.core_degC < case.goal.safe_degC - CORE_SLACK_K:
        return False
    return out.safe_s is not None and out.safe_s <= available_s * (1.0 + EARLY) + SLACK_S


def _good_s(item: PlanItem, plan: Plan, store: Store) -> float:
    """How long past done a food gets no worse, by the table of what melts, renders or only keeps warm."""
    if plan.settings.method in DRY:
        return 0.0
    if item.done.window_s[1] - item.done.window_s[0] > 4 * 3600.0:
        return 6 * 3600.0  # softened in the fat first, to fall apart
    column = "pan_min" if plan.settings.method == "saute" else "wet_min"
    food = figures(item.food_id, item.state, store)
    mine = {"food": food.id, "group": food.group, "class": item.doneness}
    found = [
        float(row[column]) * 60.0
        for row in store.table("tolerant")
        if mine[row["by"]] == row["value"]
        and row["cut"] in ("", item.cut_id)
        and row["of_class"] in ("", item.doneness)
    ]
    good_s = max(found, default=0.0)
    return good_s + _slow_end_s(plan) if good_s and item.lane == "main" else good_s


def _slow_end_s(plan: Plan) -> float:
    """Of falling pressure and of the boil after it, what adds nothing to cooking at full pressure."""
    if plan.settings.method != "sealed":
        return 0.0
    release = next((s.at_s for s in plan.steps if s.do is Do.RELEASE), plan.cooking_s)
    fall_s = FALL_S[plan.settings.release or "quick"]
    after_s = max(max(i.out_s for i in plan.items) - release - fall_s, 0.0)
    return 0.4 * fall_s + 0.6 * after_s


def _late_or_early(items: Sequence[ItemReport]) -> Iterator[str]:
    for item in items:
        if not item.on_time:
            done = "never" if item.done_s is None else f"{item.done_s / 60:.0f} min"
            over = "" if item.over_s is None else f", past its best at {item.over_s / 60:.0f}"
            yield f"{item.food}: out at {item.out_s / 60:.0f} min, done at {done}{over}"


def _spread_s(items: Sequence[ItemReport]) -> float:
    """How far apart the foods lie in their windows: out time less the middle of the window, clipped to it."""
    places = []
    for item in items:
        if item.done_s is None:
            continue
        over = item.over_s if item.over_s is not None else item.out_s
        inside = min(max(item.out_s, item.done_s), max(over, item.done_s))
        places.append(item.out_s - inside)
    return max(places) - min(places) if places else 0.0
