"""A dish in a method as a case for the physics: which media it goes through, towards which end.

The only module of the search that speaks to `knowledge.physics` (with `ways`, which
solves the cases). `verify` builds its own cases, so that a mistake here is seen there.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import lru_cache, partial

from knowledge.foods.model import DoneKind
from knowledge.foods.pieces import Pieced
from knowledge.foods.store import Store
from knowledge.physics import goal as physics_goal
from knowledge.physics import media
from knowledge.physics import piece as physics_piece
from knowledge.physics.model import Case, Goal, Medium, Phase, Texture
from knowledge.physics.safety import RAW_BEAN_BOIL_S, minimum
from knowledge.physics.vessels import felt
from knowledge.planner.draft import AFTER, BROWNED, MAIN, SEARED, SECOND, SOFTENED
from knowledge.planner.gathering.amounts import MOST_ONE
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.methods import Method
from knowledge.planner.model import Kitchen, Learned
from knowledge.planner.search.load import (
    Load,
    crowding,
    in_contact,
    oven_drawn_down,
    own_kg,
    stepped,
    stilled,
    to_pressure_s,
)

PAN_DEGC = 200.0  # a pan hot enough to brown
SOFTEN_DEGC = 140.0  # a pan in which onions soften without colour; common practice, no source
FILLED_DEGC, REOPENED_DEGC = 60.0, 85.0  # the mean in a cooker when its lid is locked, cold or hot
COME_UP_AGAIN_S = 120.0  # the second time: only what went in is cold
FULL_KPA = 80.0  # gauge, of a cooker at high pressure; makers print 70 to 100
TALL_MM = 58.0  # a bird, a joint: stands above its neighbours
NESTLED = frozenset({"fish", "shellfish"})  # sinks half into the sauce
BY_PIECE = frozenset({"slab", "rod", "brick"})  # breasts, fillets, chops, sausages, wings
BROILER_DEGC = 320.0  # on full, one rack below the top, in the terms of `media.broiler`
STATIC_FAN_DEGC = 20.0  # a fan oven is set so much lower


def case(
    dish: Dish,
    doneness: str,
    piece: Pieced,
    method: Method,
    setting: float | None,
    *,
    lane: str,
    lead: str,
    lead_s: float,
    top: bool,
    gentle: bool = False,
    texture: Texture,
    load: Load,
    kitchen: Kitchen,
    learned: Learned,
    store: Store,
) -> Case:
    """The case of one dish in one method, open-ended in its lane's medium.

    `gentle`: something that is in with it wants the lowest heat, see `wants_gentle`.
    `load`: all that is cooked in the vessel, this dish too.
    """
    surface, flat = surface_of(dish), lies_flat(dish, piece)
    last = lane_medium(
        dish, piece, method, setting, lane=lane, top=top, gentle=gentle, kitchen=kitchen, load=load
    )
    phases = [Phase(medium=last, duration_s=None)]
    if lead in (BROWNED, SOFTENED):
        pan = _pan(PAN_DEGC if lead == BROWNED else SOFTEN_DEGC, surface, flat, kitchen)
        phases.insert(0, Phase(medium=pan, duration_s=lead_s))
    elif boils_hard(dish, method):
        phases.insert(0, Phase(medium=media.boiling(kitchen.altitude_m), duration_s=RAW_BEAN_BOIL_S))
    elif lead == SEARED:
        phases = [Phase(medium=_pan(PAN_DEGC, surface, flat, kitchen), duration_s=None)]
    return Case(
        piece=physics_piece(
            dish.food,
            size_mm=piece.size_mm,
            shape=piece.shape,
            ratio_1=piece.ratio_1,
            ratio_2=piece.ratio_2,
            state=dish.state or dish.food.start_state,
        ),
        phases=tuple(phases),
        goal=goal_of(dish, doneness, method, texture=texture, learned=learned, store=store),
    )


def boils_hard(dish: Dish, method: Method) -> bool:
    """Whether it must boil hard for `RAW_BEAN_BOIL_S` before it simmers: raw beans, but under pressure."""
    return dish.is_raw_bean and method.kind == "wet"


def _pan(pan_degC: float, surface: str, flat: bool, kitchen: Kitchen, *, share: float = 1.0) -> Medium:
    """The open pan; of what is stirred only a `share` lies on the metal at a time."""
    pan = media.open_pan(pan_degC, altitude_m=kitchen.altitude_m, surface=surface, flat=flat)
    return replace(pan, contact_frac=pan.contact_frac * share)


def by_weight(dish: Dish, piece: Pieced) -> Pieced:
    """A piece as heavy as the cook says it is, or as thick: twice the weight is a quarter thicker."""
    if dish.across_mm is not None:
        return replace(piece, size_mm=dish.across_mm)
    if not dish.piece_g or not dish.usual_g:
        return piece
    if piece.shape in ("joint", "bird"):
        if not dish.weighed and not dish.assumed:
            return piece
        is_one = dish.weighed and dish.grams < MOST_ONE * dish.usual_g
        ratio = (dish.grams if is_one else dish.grams / (dish.pieces or 1)) / dish.usual_g
    elif dish.food.animal and piece.shape in BY_PIECE:
        ratio = dish.piece_g / dish.usual_g
    else:
        return piece
    ratio = min(max(ratio, 1.0 / MOST_ONE), MOST_ONE)
    return replace(piece, size_mm=float(round(piece.size_mm * ratio ** (1.0 / 3.0))))


def lies_flat(dish: Dish, piece: Pieced) -> bool:
    """Whether a whole face of it lies in the pan: a steak, a fillet, a chop; a carrot rolls about."""
    return dish.part == "protein" and piece.shape in ("slab", "disk")


def goal_of(
    dish: Dish, doneness: str, method: Method, *, texture: Texture, learned: Learned, store: Store
) -> Goal:
    """The end point of a dish, paced by what earlier cooks in this kitchen taught.

    Stewed meat is wanted softer than the charts' "a fork goes in": it should fall apart.
    """
    if done_kind(doneness, store) is DoneKind.COLLAGEN:
        texture = Texture.SOFT
    goal = physics_goal(
        dish.food,
        store.doneness(doneness),
        texture=texture,
        method=physics_method(method),
        state=dish.state,
        pace=dict(learned.class_pace).get(doneness, 1.0),
    )
    published = minimum(dish.safety)
    if published is not None and published.core_degC > (goal.safe_degC or 0.0):
        goal = replace(goal, safe_degC=published.core_degC, safe_hold_s=published.hold_s)
    return goal


def come_up_s(lane: str, setting: float | None, load: Load, kitchen: Kitchen) -> float:
    """How long pressure takes to build, of which a part already cooks: the first time, the second time."""
    if lane == SECOND:
        return COME_UP_AGAIN_S
    if lane != MAIN:
        return 0.0
    return stepped(
        to_pressure_s(
            load.size, kg=load.kg, liquid_kg=load.liquid_kg, gauge_kPa=setting or FULL_KPA,
            altitude_m=kitchen.altitude_m,
        )
    )  # fmt: skip


def lane_medium(
    dish: Dish, piece: Pieced, method: Method, setting: float | None, *,
    lane: str, top: bool, gentle: bool, kitchen: Kitchen, load: Load,
) -> Medium:  # fmt: skip
    """The medium of a lane, as it is when a dish goes in among all the others."""
    surface, flat = surface_of(dish), lies_flat(dish, piece)
    altitude_m = kitchen.altitude_m
    if lane == AFTER and method.finish == "broil":
        return media.broiler(BROILER_DEGC, surface=surface, altitude_m=altitude_m)
    still = partial(_stilled, load=load, cold_kg=own_kg(dish.grams), altitude_m=altitude_m)
    if lane == AFTER:
        return still(media.bubbling)
    match method.kind:
        case "dry":
            air_degC = (setting or 220.0) - (STATIC_FAN_DEGC if kitchen.fan_oven else 0.0)
            start_degC, back_s = oven_drawn_down(load, air_degC)
            return media.oven(
                air_degC,
                fan=kitchen.fan_oven,
                crowding=0.0
                if piece.size_mm >= TALL_MM
                else felt(crowding(load, flat=flat), size_mm=piece.size_mm, flat=flat),
                surface=surface,
                sheet=kitchen.sheet,
                altitude_m=altitude_m,
                start_degC=start_degC,
                come_up_s=back_s,
            )
        case "pan":
            share = in_contact(load) if surface == "cut" else 1.0
            return _pan(setting or PAN_DEGC, surface, flat, kitchen, share=share)
        case "sealed":
            start_degC = REOPENED_DEGC if lane == SECOND else FILLED_DEGC
            up_s = come_up_s(lane, setting, load, kitchen)
            return media.pressure(setting or FULL_KPA, altitude_m, up_s, start_degC=start_degC)
        case _ if method.heat == "oven":  # wet inside: a fan adds nothing, nor does lying on top
            return media.covered_oven(setting or 175.0, altitude_m=altitude_m)
        case _ if method.steams or (top and surface == "cut"):
            return still(media.steaming)
        case _ if top and dish.kind not in NESTLED:
            return still(media.on_top)
        case _ if gentle:
            return still(media.stewing)
        case _ if top:
            return still(media.nestled)
        case _:
            return still(media.bubbling)


@lru_cache(maxsize=4096)
def _stilled(make: Callable[..., Medium], *, load: Load, cold_kg: float, altitude_m: float) -> Medium:
    """A pot that so much cold food has just gone into."""
    start_degC, back_s = stilled(
        load, cold_kg, liquid_degC=make(altitude_m).ambient_degC, altitude_m=altitude_m
    )
    return make(altitude_m, start_degC=start_degC, come_up_s=back_s)


def wants_gentle(kinds: Iterable[str], store: Store) -> bool:
    """Whether a pot is kept at the lowest heat: tough meat turns tender in it, hard boiling dries it out."""
    return any(done_kind(kind, store) is DoneKind.COLLAGEN for kind in kinds)


def surface_of(dish: Dish) -> str:
    """How wet the outside is, in the words of `media`."""
    return "meat" if dish.part == "protein" else "cut"


def physics_method(method: Method) -> str:
    """The method's name in the physics tables."""
    return {"dry": "roast", "pan": "saute", "sealed": "pressure"}.get(method.kind, "simmer")


def doneness_in(dish: Dish, method: Method) -> str:
    """The class by which a dish is done in a method: thighs and legs under a lid cook until tender."""
    wet = method.kind in ("wet", "sealed")
    return "tough_poultry" if wet and dish.kind == "dark_poultry" else dish.kind


def done_kind(doneness: str, store: Store) -> DoneKind:
    """By which rule a class is done."""
    return store.doneness(doneness).kind


def core_to_show(dish: Dish, solved: Case, store: Store) -> float | None:
    """The core temperature to look for: the higher of the usual target and the published minimum."""
    target = dish.food.target_degC if dish.kind == dish.food.doneness else None
    wanted = [
        t for t in (target or store.doneness(dish.kind).target_degC, solved.goal.safe_degC) if t is not None
    ]
    return max(wanted, default=None)
