"""Every way of cooking every dish in every method, solved in one batch.

Kinds of food get their usual treatment: meat is browned first where the vessel does
it, onions and garlic soften first, fish and sausages lie on top of a wet dish, tender
meat is seared and put back at the end of a stir-fry. The physics then says how long
each cut takes and how long it stays good; nothing here knows a cooking time.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

from knowledge.errors import KnowledgeError
from knowledge.foods.model import Cut, DoneKind
from knowledge.foods.pieces import Pieced, piece_of
from knowledge.foods.store import Store
from knowledge.physics import cook
from knowledge.physics.model import Case, Outcome, Texture
from knowledge.physics.safety import RAW_BEAN_BOIL_S
from knowledge.planner import heat
from knowledge.planner.dinner import Dish
from knowledge.planner.draft import AFTER, BROWNED, MAIN, SEARED, SOAKED, SOFTENED, Way
from knowledge.planner.methods import NEAREST, Method, fit_of, whole_mm
from knowledge.planner.model import Request
from knowledge.planner.stabbing import Window

BROWN_S = 6 * 60.0  # both sides of one layer in a hot pan
SOFTEN_S = 5 * 60.0
SEAR_LEAST = 0.65  # of the time to done: the hot crust goes on cooking a thick middle on the plate
BACK_S = (60.0, 300.0)  # seared meat goes back for the last minutes
LONGEST_S = 6 * 3600.0  # nobody's weeknight
SHORTEST_S = 60.0
LONGEST_SEAR_S = 15 * 60.0
BROIL_MM, BROIL_S = 26.0, 14 * 60.0  # thicker, longer: black outside before the middle is done
LONGEST_STEAK_S = 20 * 60.0
JOINT_KG = 0.7  # from here a piece rests for as long as it takes to carve the board clear
CUT_STEP, KNIFE_MIN = (
    0.1,
    0.02,
)  # objective points: one place down the list of usual cuts; one minute of knife work

KEPT_WHOLE = frozenset({"tender_meat", "fish", "sausage"})
BIRDS = frozenset({"poultry", "dark_poultry"})
SLOW_IN_A_PAN = frozenset({"root", "starchy", "hard_veg"})
TRAY_MM = 15.0  # smaller is dark outside before the tray comes out
QUICK_TRAY_MM = 12.0  # when time counts
PAN_MM = 15.0  # larger is black outside before the middle is soft
THICK_MM = 58.0  # from here poultry is roasted and carved
RESTS_FROM_MM = 14.0  # a steak or a chop; thinner and it goes back into the dish
PLATE_S = 900.0  # so long it stays warm under foil
COLD_S = 480.0  # from here it goes back into the pan for the last minutes, to be hot
CRISPED_S = 720.0  # cooked already: so long it crisps on a tray before it dries
SOAKED_S = 300.0  # soaked noodles in a hot pan: heated through, and no longer

BITE_GROUPS = frozenset(
    {"brassica", "pod", "stem", "shelled pea", "sprout", "summer squash", "cabbage", "grain vegetable"}
)
TALLER = 1.35  # a bird may stand so much above the rim's depth, the lid domes

Setting = float | None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Open:
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
    pace: float  # what this kitchen's oven was taught to need, 1 for none
    texture: Texture
    fit: float
    cost: float
    good_s: float  # at least so long past done
    least_s: float  # however soon it is done: a boil that safety asks for


def solve(
    dishes: Sequence[Dish], pairs: Sequence[tuple[Method, Setting]], request: Request, *, store: Store
) -> dict[tuple[str, Setting], list[list[Way]]]:
    """The ways of each dish (in order) for each method and setting."""
    alone = sum(dish.part != "aromatic" for dish in dishes) < 2
    gentle = heat.wants_gentle((dish.kind for dish in dishes), store)
    open_ways = {
        (method.id, setting): [
            list(_ways(dish, method, setting, request, store, alone=alone, gentle=gentle)) for dish in dishes
        ]
        for method, setting in pairs
    }
    cases = {way.case: None for found in open_ways.values() for ways in found for way in ways}
    outcomes = _outcomes(tuple(cases))
    return {
        key: [
            [w for way in ways if (w := _closed(way, outcomes[way.case], store)) is not None]
            for ways in found
        ]
        for key, found in open_ways.items()
    }


_known: dict[Case, Outcome] = {}
_KNOWN_MAX = 20_000


def _outcomes(cases: Sequence[Case]) -> dict[Case, Outcome]:
    """Outcomes of the cases; equal cases are solved once and remembered."""
    fresh = [case for case in cases if case not in _known]
    if fresh:
        if len(_known) > _KNOWN_MAX:
            _known.clear()
        _known.update(zip(fresh, cook(fresh), strict=True))
    return {case: _known[case] for case in cases}


def _ways(
    dish: Dish, method: Method, setting: Setting, request: Request, store: Store, *, alone: bool, gentle: bool
) -> Iterator[_Open]:
    fit = fit_of(dish, store)
    if fit is None:
        return
    lanes = []
    if method.id in fit.by_method:
        lanes.append((MAIN, fit.by_method[method.id]))
    if method.finish in fit.by_finish and dish.part != "aromatic":
        lanes.append((AFTER, fit.by_finish[method.finish]))
    vessel = store.vessel(method.vessel)
    deep_mm = max((TALLER * s.volume_l / s.area_m2 for s in vessel.sizes if s.volume_l), default=1000.0)
    chop = 4.0 if "less chopping" in request.wishes else 1.0
    cuts = (
        [store.cut(fit.wet_cut)]
        if fit.wet_cut and method.kind != "dry"
        else cuts_for(dish, method, request, store)
    )
    for lane, points in lanes:
        for place, cut in enumerate(cuts):
            piece = piece_of(dish.food, cut)
            if cut.parts == 1:
                piece = heat.by_weight(dish, piece)
            if piece.size_mm > deep_mm:
                continue
            if lane == AFTER and method.finish == "broil" and _is_bulky(dish, piece):
                continue
            lead = _lead(dish, method, lane, fit.way, alone=alone)
            lead_s = {BROWNED: BROWN_S, SOFTENED: SOFTEN_S}.get(lead, 0.0)
            come_up_s = heat.TYPICAL_COME_UP_S if method.kind == "sealed" and lane == MAIN else 0.0
            top = fit.way == "top" and method.kind == "wet"
            texture = _texture(dish, method, request)
            knife = 0.0 if dish.cut_said else cut.knife_min_per_kg * dish.grams / 1000.0
            doneness = "warm_through" if lead == SOAKED else heat.doneness_in(dish, method)
            try:
                case = heat.case(
                    dish, doneness, piece, method, setting,
                    lane=lane, lead=lead, lead_s=lead_s, top=top, gentle=gentle, texture=texture,
                    kitchen=request.kitchen, learned=request.learned, store=store,
                )  # fmt: skip
            except KnowledgeError:
                continue  # such a piece has no answer in this medium; another cut may have one
            yield _Open(
                dish=dish,
                doneness=doneness,
                cut=cut,
                piece=piece,
                case=case,
                lane=lane,
                lead=lead,
                lead_s=lead_s,
                before_s=lead_s + come_up_s,
                top=top,
                dry=method.kind == "dry",
                pace=request.learned.oven_pace if method.heat == "oven" else 1.0,
                texture=texture,
                fit=points,
                good_s=tolerance_s(dish, cut.id, method, store),
                least_s=RAW_BEAN_BOIL_S if heat.boils_hard(dish, method) else SHORTEST_S,
                cost=CUT_STEP * place + KNIFE_MIN * knife * chop,
            )


def _is_bulky(dish: Dish, piece: Pieced) -> bool:
    """Whether it is too thick or too cold for the broiler."""
    return dish.state == "frozen" or piece.size_mm > BROIL_MM


def cuts_for(dish: Dish, method: Method, request: Request, store: Store) -> list[Cut]:
    """The cuts worth trying, usual first; what lies there cut already stays as it is.

    Steaks, chops, joints, fillets and birds stay whole on the tray and in the pan. A tray
    burns what is small before it is done, a pan never gets to the middle of what is big.
    """
    usual = list(dish.food.cuts) or ["whole"]
    animal = dish.part == "protein" and bool(dish.food.animal)
    is_bird = dish.kind in BIRDS and (method.kind == "dry" or whole_mm(dish) >= THICK_MM)
    if dish.cut_said:
        wanted = _cuts_said(store).get(dish.cut_said, ())
        usual = [c for c in wanted if c in usual][:1] or list(wanted[:1]) or usual
    elif dish.state == "frozen" and (dish.piece_g is None or animal):
        usual = usual[:1]  # a bag of frozen pieces is cut already, and nobody cuts a frozen piece
    elif dish.kind == "warm_through" and dish.state in ("canned", "leftover", "cooked"):
        usual = usual[:2]
    elif animal and usual[0] == "whole" and (dish.kind in KEPT_WHOLE or is_bird):
        as_bought = ("whole", "thick slice") if dish.kind == "fish" else ("whole",)
        in_stew = dish.kind == "fish" and method.kind not in ("dry", "pan")
        usual = [c for c in usual if c in as_bought or (in_stew and c == "large chunk")]
    cuts = [store.cut(cut_id) for cut_id in usual]
    if animal or dish.cut_said or len(cuts) < 2 or cuts[0].shape == "leaf":
        return cuts
    if method.kind == "dry":
        least_mm = QUICK_TRAY_MM if "quick" in request.wishes or request.ready_in_s else TRAY_MM
        large = [c for c in cuts if c.parts or c.size_mm >= least_mm]
        return large or cuts[-1:]
    if method.kind == "pan" and dish.kind in SLOW_IN_A_PAN:
        small = [c for c in cuts if not c.parts and c.size_mm <= PAN_MM]
        return small or cuts
    return cuts


@lru_cache(maxsize=4)
def _cuts_said(store: Store) -> dict[str, tuple[str, ...]]:
    return {row["said"]: tuple(c for c in row["cuts"].split(";") if c) for row in store.table("cuts_said")}


def tolerance_s(dish: Dish, cut_id: str, method: Method, store: Store) -> float:
    """How long past done a food still gets no worse: what melts into a sauce, fat mince, tins.

    From `tolerant.csv`; the windows of the physics end where a piece on its own would be
    dry or mushy, which is not what counts for these.
    """
    column = {"wet": "wet_min", "sealed": "sealed_min", "pan": "pan_min"}.get(method.kind)
    if column is None:
        return 0.0
    mine = {"food": dish.food.id, "group": dish.food.group, "class": dish.kind}
    found = {
        row["by"]: float(row[column]) * 60.0
        for row in store.table("tolerant")
        if mine[row["by"]] == row["value"]
        and row["cut"] in ("", cut_id)
        and row["of_class"] in ("", dish.kind)
    }
    return next((found[by] for by in NEAREST if by in found), 0.0)


def _lead(dish: Dish, method: Method, lane: str, way: str, *, alone: bool) -> str:
    """What happens to it in the open pan before its lane begins."""
    if not method.browns or lane == AFTER:
        return ""
    if dish.part == "aromatic" and method.kind != "dry" and dish.kind != "warm_through":
        return SOFTENED
    if way == "fried" and method.kind != "dry":
        return "" if method.kind == "pan" or alone else SOFTENED
    if way == "soaked":
        return SOAKED if method.kind == "pan" and dish.food.start_state == "dry" else ""
    if way != "browned" or dish.state in ("frozen",):
        return ""
    if method.kind == "pan":
        return "" if alone else SEARED
    return BROWNED


def _texture(dish: Dish, method: Method, request: Request) -> Texture:
    """Green and quick things keep a bite wherever they do not have to brown or melt."""
    if "soft" in request.wishes:
        return Texture.SOFT
    if dish.kind == "tender_leaf":
        return Texture.CRISP_TENDER
    bite = dish.kind in ("quick_veg", "medium_veg")
    if bite and ("crisp" in request.wishes or (method.kind == "pan" and dish.kind == "quick_veg")):
        return Texture.CRISP_TENDER
    green = dish.food.group in BITE_GROUPS
    return Texture.CRISP_TENDER if bite and green and method.kind != "dry" else Texture.TENDER


def _closed(way: _Open, out: Outcome, store: Store) -> Way | None:
    """The way with its window, or None when it is never done within reason."""
    if out.done_s is None or out.done_s > LONGEST_S:
        return None
    kind = heat.done_kind(way.doneness, store)
    rest_s = _rest_s(way, kind)
    over_s = out.over_s if out.over_s is not None else 3.0 * out.done_s + 1200.0
    if kind is DoneKind.WARM and way.good_s:
        over_s = out.done_s + way.good_s  # cooked already: no use but to warm it
    elif kind is DoneKind.WARM and way.dry:
        over_s = min(over_s, out.done_s + CRISPED_S)
    if way.lead == SOAKED:
        over_s = out.done_s + SOAKED_S
    over_s = max(over_s, out.done_s + way.good_s, LONGEST_S if way.lead == SOFTENED else 0.0)
    lead_s = way.lead_s
    if way.dry and way.lane == AFTER and out.done_s > BROIL_S:
        return None
    rests = _rests_on_a_plate(way)
    if rests:
        if out.done_s > LONGEST_STEAK_S:
            return None
        lead_s = out.done_s
        lo, hi, best = 0.0, PLATE_S, 0.0
    elif way.lead == SEARED:
        if out.done_s > LONGEST_SEAR_S:
            return None  # burnt outside before it is done inside: it wants a thinner cut
        lead_s = _sear_share(way.piece.size_mm) * out.done_s
        lo, hi, best = *BACK_S, 120.0
    else:
        lo = max((out.done_s - way.before_s) * way.pace, way.least_s)
        hi = max((over_s - way.before_s) * way.pace, lo)
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
        rests=rests,
    )


def _rests_on_a_plate(way: _Open) -> bool:
    """Whether it is seared until done and waits for the rest: whole pieces that a cook rests anyway."""
    whole = way.cut.id == "whole" and way.piece.size_mm >= RESTS_FROM_MM
    return way.lead == SEARED and whole and way.dish.safety in ("whole_meat", "poultry")


def kept_hot(way: Way, others_s: float) -> tuple[Way, float]:
    """A seared piece and when it goes back [s before the end]: not at all, or to be hot again.

    Args:
        others_s: how long the others cook after it came out.
    """
    if not way.rests or others_s <= COLD_S or way.dish.safety == "poultry":  # no bird waits half done
        return way, 0.0
    back = replace(way.window, lo_s=BACK_S[0], hi_s=BACK_S[1], best_s=120.0)
    sear_s = _sear_share(way.piece.size_mm) * way.lead_s
    return replace(way, rests=False, window=back, lead_s=sear_s), back.best_s


def _sear_share(size_mm: float) -> float:
    """Of the time to done: what comes out so early is cooked through by its own crust on the plate."""
    return min(max(1.0 - size_mm / 100.0, SEAR_LEAST), 0.9)


def _is_probed(way: _Open, kind: DoneKind) -> bool:
    """Whether a thermometer says when it is done: raw animal food, and what is heated again."""
    if kind is DoneKind.WARM:
        return way.dish.state in ("leftover", "cooked") or way.case.goal.safe_degC is not None
    return kind is DoneKind.CORE or way.doneness != way.dish.kind


def _rest_s(way: _Open, kind: DoneKind) -> float:
    dish = way.dish
    if dish.part == "starch" and kind is DoneKind.HYDRATE and dish.kind not in ("pasta", "noodle"):
        return 300.0
    if kind is not DoneKind.CORE or dish.safety not in ("whole_meat", "poultry", "ham_raw"):
        return 0.0
    if (dish.piece_g or 0.0) / 1000.0 >= JOINT_KG and way.cut.id == "whole":
        return 900.0
    return 180.0 if way.piece.size_mm < 40 else 300.0


def _done_word(way: _Open, kind: DoneKind) -> str:
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
