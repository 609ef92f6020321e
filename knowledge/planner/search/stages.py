"""When the stages of a cook begin and end, and when the cook must begin.

Second 0 is the first food in the heat. Before it lie knife work and preheating, after
the main stage come release, after-additions, rest and the table.
"""

from __future__ import annotations

from collections.abc import Sequence

from knowledge.foods.model import Behaviour, VesselSize
from knowledge.planner.draft import (
    AFTER,
    BROWNED,
    MAIN,
    SEARED,
    SECOND,
    SOAKED,
    SOFTENED,
    Placed,
    Stages,
    Way,
)
from knowledge.planner.gathering.peeling import BATH_S, BOIL, FIRST
from knowledge.planner.methods import Method
from knowledge.planner.model import Kitchen, Liquid
from knowledge.planner.search.browning import browning_s, is_mince, still_s
from knowledge.planner.search.frying import STILL
from knowledge.planner.search.heat import FULL_KPA
from knowledge.planner.search.load import to_boil_s, to_pressure_s
from knowledge.planner.search.prep import Job, Slot, latest_start_s, lay_out

POUR_S = 60.0  # pour, scrape the bottom loose; common practice, no source
REBOILED_KG = 0.5  # of liquid that boils when the cooker is closed again
PREHEAT_S_K = 4.0  # of preheating for each degree above the room; common practice, no source
QUICK_RELEASE_S, SLOW_RELEASE_S = 90.0, 720.0  # common practice, no source
RINSE_S = 40.0  # a food out of the fridge, washed, on the board
FRAGRANT_S = 90.0  # spices and garlic in the fat; common practice, no source
TOAST_S = 120.0  # risotto rice until its edges are clear; common practice, no source
PORTION = 1.0 / 3.0  # of its stock, which it is given as it drinks; common practice, no source
LITTLE_G = 40.0  # of garlic and ginger, which are fragrant and no more; common practice, no source
PLATE_S, PLATE_DOWN_S = 360.0, 420.0  # onions, and tomatoes with them, fry no longer while browned meat waits
FRIED_DOWN_S = 240.0  # tomatoes until thick; common practice, no source
SOAK_S = 240.0  # dry noodles under boiling water
SETTLE_S = 60.0  # until it simmers again; judgement
FILL_UP_S = 60.0  # the lid off, more in, the lid on
HEAT_PAN_S = 150.0  # an empty pan on the burner; common practice, no source


def stages(
    method: Method,
    setting: float | None,
    size: VesselSize,
    placed: Sequence[Placed],
    liquid: Liquid | None,
    *,
    slow_release: bool,
    altitude_m: float = 0.0,
    reduce_s: float = 0.0,
) -> Stages:
    """The stages of one laid-out dinner."""
    ways = [p.way for p in placed]
    browned = browning_s(ways, size)
    toast = TOAST_S if toasted(placed, method) else 0.0
    softened = browned + _softening_s(ways) + toast
    first = PORTION if in_portions(placed, method) else 1.0
    boil_s = come_up_s(liquid, ways, method, size, setting, altitude_m, hot=softened > 0.0, share=first)
    if method.kind == "wet" and softened == 0.0:
        main_start, preheat = 0.0, boil_s
    elif method.kind == "wet":
        main_start, preheat = softened + boil_s, HEAT_PAN_S
    else:
        main_start, preheat = softened, HEAT_PAN_S
    if method.heat == "oven":
        preheat = max(preheat if method.kind == "wet" else 0.0, preheat_s(setting) - main_start)
    at_pressure = main_start + (boil_s if method.kind == "sealed" else 0.0)
    longest = max((p.add_s for p in placed if not p.way.lane_is(AFTER) and not p.way.rests), default=0.0)
    second = max((p.add_s for p in placed if p.way.lane_is(SECOND)), default=0.0)
    first_end = at_pressure + longest - second
    first_fall = SLOW_RELEASE_S if is_slow([w for w in ways if w.lane_is(MAIN)]) else QUICK_RELEASE_S
    reopened = first_end + first_fall * bool(second)
    resealed = reopened + FILL_UP_S * bool(second)
    again = resealed + (come_up_again_s(ways, size, setting, altitude_m) if second else 0.0)
    main_end = again + second
    opened = main_end
    if method.kind == "sealed":
        opened += SLOW_RELEASE_S if slow_release else QUICK_RELEASE_S
    after = max((p.add_s for p in placed if p.way.lane_is(AFTER)), default=0.0)
    if method.kind == "sealed":
        after = max(after, reduce_s)
    after_end = opened + after + (SETTLE_S if after and method.finish == "boil" else 0.0)
    on_plate = main_end - softened
    rest = max((w.rest_s - on_plate * (w.rests or w.held) for w in ways if w.rest_s <= 300.0), default=0.0)
    return Stages(
        preheat_s=preheat,
        browned_s=browned,
        still_s=still_s(ways, size),
        softened_s=softened,
        main_start_s=main_start,
        at_pressure_s=at_pressure,
        main_end_s=main_end,
        opened_s=opened,
        after_end_s=after_end,
        serve_s=after_end + max(rest, SETTLE_S),
        toast_s=toast,
        reduce_s=reduce_s,
        first_end_s=first_end if second else main_end,
        reopened_s=reopened if second else main_end,
        resealed_s=resealed if second else main_end,
        at_pressure_again_s=again if second else main_end,
    )


def preheat_s(oven_degC: float | None) -> float:
    """How long an oven takes to a setting."""
    return PREHEAT_S_K * ((oven_degC or 220.0) - 20.0)


def come_up_s(
    liquid: Liquid | None, ways: Sequence[Way], method: Method, size: VesselSize, gauge_kPa: float | None,
    altitude_m: float, *, hot: bool, share: float = 1.0,
) -> float:  # fmt: skip
    """From liquid out of the tap to a simmer, or from the lid locked to full pressure, food inside.

    `hot`: something was fried in the vessel before, so that its metal is not cold. `share`: of the
    liquid that goes in at first.
    """
    if method.kind not in ("wet", "sealed"):
        return 0.0
    liquid_kg = share * (liquid.ml if liquid else 0.0) / 1000.0
    if method.kind == "wet":
        return POUR_S + to_boil_s(size, liquid_kg=liquid_kg, altitude_m=altitude_m, hot=hot)
    inside = sum(w.dish.grams for w in ways if not w.lane_is(AFTER) and not w.lane_is(SECOND)) / 1000.0
    return POUR_S + to_pressure_s(
        size, kg=inside, liquid_kg=liquid_kg, gauge_kPa=gauge_kPa or FULL_KPA, altitude_m=altitude_m
    )


def come_up_again_s(
    ways: Sequence[Way], size: VesselSize, gauge_kPa: float | None, altitude_m: float
) -> float:
    """From the lid locked for the second time to full pressure: what went in is cold, the rest boils."""
    cold = sum(w.dish.grams for w in ways if w.lane_is(SECOND)) / 1000.0
    return POUR_S + to_pressure_s(
        size, kg=cold, liquid_kg=REBOILED_KG, gauge_kPa=gauge_kPa or FULL_KPA, altitude_m=altitude_m, hot=True
    )


def lets_down_slowly(method: Method, ways: Sequence[Way]) -> bool:
    """Whether pressure falls by itself; after a short second stage it is let go, or that would overcook."""
    return method.kind == "sealed" and not method.seals_twice and is_slow(ways)


def is_slow(ways: Sequence[Way]) -> bool:
    """Whether pressure must fall by itself: what foams or swells would spit, big meat would toughen."""
    sealed = [w for w in ways if not w.lane_is(AFTER)]
    return any(
        (w.dish.food.pressure in (Behaviour.FOAMS, Behaviour.SWELLS) and w.dish.kind != "warm_through")
        or (w.dish.part == "protein" and w.dish.kind.startswith(("tough_", "stewing")))
        for w in sealed
    )


def _softening_s(ways: Sequence[Way]) -> float:
    """Onions take their minutes; garlic and ginger alone would burn in them."""
    soft = [w.dish for w in ways if w.lead == SOFTENED]
    if not soft:
        return 0.0
    most = max((d.grams for d in soft if d.kind != "warm_through"), default=0.0)  # anchovies only melt
    down = any(d.made.is_fried_down for d in soft)
    if most <= LITTLE_G and not down:
        return FRAGRANT_S
    longest = max(w.lead_s for w in ways if w.lead == SOFTENED)
    browned = [w for w in ways if w.lead in (BROWNED, SEARED) and w.dish.food.animal]
    waits = any(not is_mince(w.dish, w.piece.shape) for w in browned)
    if down:
        longest += FRIED_DOWN_S
    return min(longest, PLATE_DOWN_S if down else PLATE_S) if waits else longest


def toasted(placed: Sequence[Placed], method: Method) -> list[Placed]:
    """The grains that go into the hot fat before any liquid: those that are in from the start anyway."""
    inside = [p for p in placed if p.way.lane_is(MAIN)]
    longest = max((p.add_s for p in inside if p.way.lead != SOFTENED), default=0.0)
    return [p for p in inside if p.way.toasts and (method.kind == "sealed" or p.add_s >= longest)]


def in_portions(placed: Sequence[Placed], method: Method) -> bool:
    """Whether the liquid goes in bit by bit: nothing else lies in it from the start, and one can stir."""
    grains = toasted(placed, method)
    longest = max((p.add_s for p in grains), default=0.0)
    others = [p for p in placed if p not in grains and p.way.lead != SOFTENED and p.add_s >= longest]
    return bool(grains) and not others and method.kind == "wet" and method.heat == "hob"


def is_toasted(placed: Placed, when: Stages) -> bool:
    """Whether this one is among those, once the stages are known."""
    late = when.at_pressure_s <= when.main_start_s < when.main_end_s - placed.add_s - 1.0
    return bool(when.toast_s) and placed.way.toasts and not late


def add_at_s(placed: Placed, when: Stages) -> float:
    """When a dish goes into the lane it finishes in."""
    if placed.way.lane_is(AFTER):
        return when.after_end_s - placed.add_s
    if placed.way.lead == SOFTENED:
        return when.browned_s
    if is_toasted(placed, when):
        return when.softened_s - when.toast_s
    if placed.way.lane_is(SECOND):
        return when.reopened_s
    if when.at_pressure_s > when.main_start_s:
        return when.main_start_s
    return when.main_end_s - placed.add_s


def first_in_s(placed: Placed, when: Stages) -> float:
    """When a dish first meets heat."""
    if placed.way.lead not in (BROWNED, SEARED):
        return add_at_s(placed, when)
    return when.meat_out_s if placed.way.manner == STILL else 0.0


def out_s(placed: Placed, when: Stages) -> float:
    """When a dish leaves the heat, done: at the end, or earlier to stand or to wait on its plate."""
    if placed.way.held and placed.way.manner == STILL:
        return when.browned_s
    if placed.way.rests or placed.way.held:
        return when.meat_out_s
    end = when.after_end_s
    return end - placed.way.rest_s if placed.way.rest_s > 300.0 else end


def jobs(method: Method, placed: Sequence[Placed], when: Stages) -> list[Job]:
    """Knife work for each dish, due when it meets heat; what is boiled first has the vessel before all."""
    found = []
    for n, p in enumerate(placed):
        hands, due = knife_s(p.way), first_in_s(p, when)
        if bath := bath_of(p.way, method):
            hands += BATH_S[bath] if bath in FIRST else 0.0
            due = min(due, -when.preheat_s) if bath in FIRST else due - BATH_S[bath]
        found.append(Job(id=f"{n:02d}", hands_s=hands, due_s=due))
    return found


def bath_of(way: Way, method: Method) -> str:
    """Whether it is soaked first, or boiled in water that is thrown away: in the oven it need not be."""
    bath = way.dish.peeling.bath
    return "" if bath == BOIL and method.kind not in ("wet", "sealed") else bath


def knife_s(way: Way) -> float:
    """Washing and cutting one dish."""
    cut_already = bool(way.dish.cut_said) or way.dish.state in ("canned", "frozen", "cooked", "leftover")
    each = way.cut.knife_min_per_kg * 60.0 * way.dish.grams / 1000.0
    if way.lead == SOAKED:
        return SOAK_S
    peeled = way.dish.peeling.min_per_kg * 60.0 * way.dish.grams / 1000.0
    return RINSE_S if cut_already else RINSE_S + peeled + each


def busy(method: Method, placed: Sequence[Placed], when: Stages) -> list[tuple[float, float]]:
    """When the hands are at the stove."""
    taken = []
    if when.softened_s > 0:
        taken.append((0.0, when.softened_s))
    if method.hands > 0.5:
        taken.append((when.main_start_s, when.main_end_s))
    else:
        adds = {add_at_s(p, when) for p in placed if not p.way.rests}
        taken += [(at, at + 60.0) for at in adds if at >= when.softened_s]
    if method.finish == "broil" and when.after_end_s > when.main_end_s:
        taken.append((when.main_end_s, when.after_end_s))  # nobody turns away from a broiler
    return taken


def start_s(method: Method, placed: Sequence[Placed], when: Stages) -> float:
    """The moment to begin [s, negative]: knife work by one pair of hands, and preheating."""
    knife = latest_start_s(jobs(method, placed, when), busy(method, placed, when))
    return min(knife, -when.preheat_s)


def knife_slots(method: Method, placed: Sequence[Placed], when: Stages, start: float) -> tuple[Slot, ...]:
    """What is cut when; ids are the positions in `placed`."""
    return lay_out(jobs(method, placed, when), busy(method, placed, when), start_s=start)


def fan_setting(degC: float, kitchen: Kitchen) -> float:
    """What to set on a fan oven for the same heat."""
    return degC - 20.0 if kitchen.fan_oven else degC
