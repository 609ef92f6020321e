"""From a solved case to a way with its window: done, over, the rest, the plate that a steak waits on."""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

from knowledge.foods.model import Cut, DoneKind
from knowledge.foods.pieces import Pieced
from knowledge.foods.store import Store
from knowledge.physics.model import Case, Outcome, Texture
from knowledge.planner.draft import AFTER, SEARED, SOAKED, SOFTENED, Way
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.search import heat
from knowledge.planner.search.delicate import delicate
from knowledge.planner.search.frying import STILL
from knowledge.planner.search.stabbing import Window
from knowledge.planner.writing.handling import SLICED, handling

SEAR_LEAST = 0.65  # of the time to done: the hot crust goes on cooking a thick middle on the plate
BACK_S_MM = 6.0  # thin strips are hot at once, and dry soon after
BACK_S = (60.0, 300.0)  # seared meat goes back for the last minutes
LONGEST_S = 6 * 3600.0  # nobody's weeknight
LONGEST_SEAR_S = 15 * 60.0  # longer in the pan and it is no sear; judgement
BROIL_MM, BROIL_S = 26.0, 14 * 60.0  # thicker, longer: black outside before the middle is done
LONGEST_STEAK_S = 20 * 60.0  # thicker ones are finished otherwise; judgement
JOINT_KG = 0.7  # from here a piece rests for as long as it takes to carve the board clear
RESTS_FROM_MM = 14.0  # a steak or a chop; thinner and it goes back into the dish
PLATE_S = 900.0  # so long it stays warm under foil
SLICES_S = 60.0  # 10 mm slices in a hot pan
HALF_DONE_S = 780.0  # no meat waits longer than that before it is done
COLD_S = 480.0  # from here it goes back into the pan for the last minutes, to be hot
CRISPED_S = 720.0  # cooked already: so long it crisps on a tray before it dries
SOAK_SLOWER, SHORTEST_SOAK_S = 1.5, 60.0  # off the heat a lidded pot is 5 K cooler on the mean
SOAKED_S = 300.0  # soaked noodles in a hot pan: heated through, and no longer


@dataclass(frozen=True, slots=True, kw_only=True)
class Open:
    """A way whose case is not solved yet."""

    dish: Dish
    doneness: str
    cut: Cut
    piece: Pieced
    case: Case
    lane: str
    lead: str
    lead_s: float
    before_s: float  # of the case's time, what lies before its lane is counted
    top: bool
    dry: bool  # in the dry heat of the oven
    sealed: bool  # under pressure, from the first or the second sealing
    soaks: bool  # goes into what boils, and then the heat goes off: couscous
    pace: float  # what this kitchen's oven was taught to need, 1 for none
    texture: Texture
    fit: float
    cost: float
    good_s: float  # at least so long past done
    least_s: float  # however soon it is done: a boil that safety asks for
    toasts: bool = False  # in the hot fat before any liquid
    manner: str = ""  # of `pan_manners.csv`


def closed(way: Open, out: Outcome, store: Store) -> Way | None:
    """The way with its window, or None when it is never done within reason."""
    if out.done_s is None or out.done_s > LONGEST_S:
        return None
    done_s = out.done_s + way.dish.longer_s
    kind = heat.done_kind(way.doneness, store)
    rest_s = _rest_s(way, kind)
    over_s = out.over_s if out.over_s is not None else 3.0 * done_s + 1200.0
    if kind is DoneKind.WARM and way.good_s:
        over_s = done_s + way.good_s  # cooked already: no use but to warm it
    elif kind is DoneKind.WARM and way.dry:
        over_s = min(over_s, done_s + CRISPED_S)
    if way.lead == SOAKED:
        over_s = done_s + SOAKED_S
    over_s = max(over_s, done_s + way.good_s, LONGEST_S if way.lead == SOFTENED else 0.0)
    lead_s = way.lead_s
    if way.dry and way.lane == AFTER and done_s > BROIL_S:
        return None
    rests, held = _rests_on_a_plate(way), False
    if rests:
        if done_s > LONGEST_STEAK_S:
            return None
        lead_s = done_s
        lo, hi, best = 0.0, PLATE_S, 0.0
    elif way.lead == SEARED:
        if done_s > LONGEST_SEAR_S:
            return None  # burnt outside before it is done inside: it wants a thinner cut
        held = _sear_share(way) == 1.0
        lead_s = _sear_share(way) * done_s
        lo, hi = BACK_S[0], min(BACK_S[1], BACK_S[0] + BACK_S_MM * way.piece.size_mm)
        best = min(120.0, hi)
    else:
        lo = max((done_s - way.before_s) * way.pace, way.least_s)
        hi = max((over_s - way.before_s) * way.pace, lo + (way.good_s if lo == way.least_s else 0.0))
        hi = min(hi, max(_still_good_s(way, kind, lo, done_s, store), lo))
        if way.soaks:
            lo = max(SOAK_SLOWER * done_s - rest_s, SHORTEST_SOAK_S)
            hi = lo + 60.0
        best = min(lo * 1.08, hi) if kind is DoneKind.CORE else min(math.sqrt(lo * hi), lo * 1.12)
        if kind is DoneKind.WARM and way.dry:
            best = (lo + hi) / 2  # hot is not enough on a tray, it should crisp
    early_s = rest_s if rest_s > 300 else 0.0
    return Way(
        dish=way.dish,
        doneness=way.doneness,
        cut=way.cut,
        piece=way.piece,
        case=way.case,
        window=Window(
            lane=way.lane, lo_s=lo + early_s, hi_s=hi + early_s, best_s=best + early_s, cost=way.cost
        ),
        lead=way.lead,
        lead_s=lead_s,
        top=way.top,
        done=_done_word(way, kind),
        core_degC=heat.core_to_show(way.dish, way.case, store) if _is_probed(way, kind) else None,
        rest_s=rest_s,
        fit=way.fit,
        doubt_s=0.0 if out.lo_s is None or out.hi_s is None else (out.hi_s - out.lo_s) / 2.0,
        toasts=way.toasts,
        manner=way.manner,
        rests=rests,
        held=held,
        slices=rests and handling(way.dish, store=store).carve == SLICED,
    )


def _rests_on_a_plate(way: Open) -> bool:
    """Whether it is seared until done and waits for the rest: whole pieces that a cook rests anyway."""
    whole = way.cut.id == "whole" and way.piece.size_mm >= RESTS_FROM_MM
    kept = way.manner == STILL  # breaded: laid back at the end, a plate would make it soggy
    return way.lead == SEARED and whole and not kept and way.dish.safety in ("whole_meat", "poultry")


def kept_hot(way: Way, others_s: float) -> tuple[Way, float]:
    """A seared piece and when it goes back [s before the end]: not at all, sliced, or whole to be hot again.

    Whatever waits is done before it waits (USDA FSIS: nothing is cooked part way); slices warm
    through in a minute. Fish and thick pieces that wait only briefly finish in the pan.

    Args:
        others_s: how long the others cook after it came out.
    """
    coasts = way.dish.kind == "fish"  # its own heat cooks it through on the plate, and no further
    if way.lead == SEARED and not way.rests and not coasts and others_s > HALF_DONE_S:
        return replace(way, lead_s=way.lead_s / _sear_share(way), held=True), 0.0
    if not way.rests or others_s <= COLD_S:
        return way, 0.0
    if way.slices:
        return replace(way, rewarmed=True), SLICES_S
    if way.dish.safety == "poultry":
        return way, 0.0
    back = replace(way.window, lo_s=BACK_S[0], hi_s=BACK_S[1], best_s=120.0)
    return replace(way, rests=False, held=True, window=back), back.best_s


def _sear_share(way: Open | Way) -> float:
    """Of the time to done: what comes out so early is cooked through by its own crust on the plate.

    Tofu and halloumi, which have no middle to spoil, stay until they are brown; strips are done at once.
    """
    if way.dish.kind != "fish" and (way.manner == STILL or way.piece.size_mm < RESTS_FROM_MM):
        return 1.0
    return min(max(1.0 - way.piece.size_mm / 100.0, SEAR_LEAST), 0.9)


def _still_good_s(way: Open, kind: DoneKind, lo_s: float, done_s: float, store: Store) -> float:
    """Until when a delicate food is good in its lane, by the table of those."""
    if kind in (DoneKind.WARM, DoneKind.CORE, DoneKind.COLLAGEN) or way.lead or way.lane == AFTER:
        return math.inf
    most = delicate(way.dish, store)
    if way.dry:
        return most.dry * lo_s
    if way.sealed:
        return most.sealed * done_s - way.before_s if way.cut.parts != 1 else math.inf
    return most.wet * lo_s


def _is_probed(way: Open, kind: DoneKind) -> bool:
    """Whether a thermometer says when it is done: raw animal food, and what is heated again."""
    if kind is DoneKind.WARM:
        return way.dish.state in ("leftover", "cooked") or way.case.goal.safe_degC is not None
    return kind is DoneKind.CORE or way.doneness != way.dish.kind


def _rest_s(way: Open, kind: DoneKind) -> float:
    dish = way.dish
    if dish.part == "starch" and kind is DoneKind.HYDRATE and dish.kind not in ("pasta", "noodle"):
        return 300.0
    if kind is not DoneKind.CORE or dish.safety not in ("whole_meat", "poultry", "ham_raw"):
        return 0.0
    if (dish.piece_g or 0.0) / 1000.0 >= JOINT_KG and way.cut.id == "whole":
        return 900.0
    return 180.0 if way.piece.size_mm < 40 else 300.0


def _done_word(way: Open, kind: DoneKind) -> str:
    match kind:
        case DoneKind.CORE:
            return "core_temp"
        case DoneKind.HYDRATE:
            return "al_dente" if way.dish.kind in ("pasta", "noodle") else "tender"
        case DoneKind.COLLAGEN:
            return "tender"
        case DoneKind.WILT:
            return "wilted"
        case DoneKind.WARM | DoneKind.NONE:
            return "warmed"
        case _:
            return way.texture.value
