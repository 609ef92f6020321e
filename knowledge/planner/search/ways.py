"""Every way of cooking every dish in every method, solved in one batch.

Kinds of food get their usual treatment: meat is browned first where the vessel does
it, onions and garlic soften first, fish and sausages lie on top of a wet dish, tender
meat is seared and put back at the end of a stir-fry. The physics then says how long
each cut takes and how long it stays good; nothing here knows a cooking time.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from knowledge.errors import KnowledgeError
from knowledge.foods.model import Behaviour, DoneKind
from knowledge.foods.pieces import Pieced, piece_of
from knowledge.foods.store import Store
from knowledge.physics import cook
from knowledge.physics.model import Case, Outcome, Texture
from knowledge.physics.safety import RAW_BEAN_BOIL_S
from knowledge.planner import lasting
from knowledge.planner.draft import AFTER, BROWNED, MAIN, SEARED, SECOND, SOAKED, SOFTENED, Way
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.methods import Method, fit_of, whole_mm
from knowledge.planner.model import Request
from knowledge.planner.search import heat
from knowledge.planner.search.browning import BROWN_S, is_mince, mince_s
from knowledge.planner.search.cuts import SLOW, cuts_for, is_brisk
from knowledge.planner.search.delicate import delicate
from knowledge.planner.search.frying import STILL, Manner, manner
from knowledge.planner.search.load import Load
from knowledge.planner.search.scoring import ROAST_MM
from knowledge.planner.search.steamed import has_bed, steams_on_top
from knowledge.planner.search.windows import BROIL_MM, Open, closed
from knowledge.planner.techniques import COATING, RIBBONS
from knowledge.planner.writing.handling import OFF_HEAT, handling

SOFTEN_S = 5 * 60.0  # onions and their like; common practice, no source
SWEATED = "sweated"  # of `method_fit.csv`: leeks and fennel, in the fat first but where they would fall apart
TOASTED = "toasted"  # of `method_fit.csv`: risotto rice, in the hot fat before any liquid
SHORTEST_S = 60.0
PALE = 1.0  # points of meat that is not browned
BOILED = 2.5  # and of a steak or a sausage that is not
FOR_THE_PAN = frozenset({"tender_meat", "sausage", "cured"})
ASIDE = 0.3  # points of fish that comes last, the rest of the pan pushed aside
CUT_STEP, KNIFE_MIN = (
    0.1,
    0.02,
)  # objective points: one place down the list of usual cuts; one minute of knife work
BRISK_STEP = 0.03  # the same for a root beside what is done in a quarter of an hour
SPARED = 1.0  # of a cut that a cook who asks for no chopping could do without
SOFT_CABBAGE = "medium_veg"  # class of the cabbages that are cooked until they give; bok choy keeps its bite
BITE_WISHES = frozenset({"crisp", "stir fry"})
BITE_GROUPS = frozenset(
    {"brassica", "pod", "stem", "shelled pea", "sprout", "summer squash", "grain vegetable"}
)
# a bird may stand so much above the depth: the lid of a pot domes, that of a pan hardly
Setting = float | None


def solve(
    dishes: Sequence[Dish],
    pairs: Sequence[tuple[Method, Setting]],
    request: Request,
    *,
    store: Store,
    loads: Mapping[str, Load],
    beside: Sequence[Dish] = (),
) -> dict[tuple[str, Setting], list[list[Way]]]:
    """The ways of each dish (in order) for each method and setting.

    Args:
        loads: by vessel, all that is cooked in it.
        beside: what is cooked with them and has its ways already.
    """
    company = (*dishes, *beside)
    alone = sum(dish.part != "aromatic" for dish in company) < 2
    gentle = heat.wants_gentle((dish.kind for dish in company), store)
    long = gentle or any(dish.part == "protein" and whole_mm(dish) >= ROAST_MM for dish in company)
    brisk = is_brisk(company, store)
    bed = has_bed(company, request.wishes, store)
    open_ways = {
        (method.id, setting): [
            list(
                _ways(
                    dish,
                    method,
                    setting,
                    request,
                    store,
                    alone=alone,
                    gentle=gentle,
                    long=long,
                    bed=bed,
                    brisk=brisk,
                    load=loads[method.vessel],
                )
            )
            for dish in dishes
        ]
        for method, setting in pairs
    }
    cases = {way.case: None for found in open_ways.values() for ways in found for way in ways}
    outcomes = _outcomes(tuple(cases))
    return {
        key: [
            [w for way in ways if (w := closed(way, outcomes[way.case], store)) is not None] for ways in found
        ]
        for key, found in open_ways.items()
    }


_known: dict[Case, Outcome] = {}
_KNOWN_MAX = 20_000


def _outcomes(cases: Sequence[Case]) -> dict[Case, Outcome]:
    """Outcomes of the cases; equal cases are solved once and remembered."""
    if len(_known) > _KNOWN_MAX:
        # Before it is seen what is new: what was known a moment ago is asked for again.
        _known.clear()
    fresh = [case for case in cases if case not in _known]
    if fresh:
        _known.update(zip(fresh, cook(fresh), strict=True))
    return {case: _known[case] for case in cases}


def _ways(
    dish: Dish,
    method: Method,
    setting: Setting,
    request: Request,
    store: Store,
    *,
    alone: bool,
    gentle: bool,
    long: bool,
    bed: bool,
    brisk: bool,
    load: Load,
) -> Iterator[Open]:
    fit = fit_of(dish, store)
    if fit is None:
        return
    lanes = []
    if method.id in fit.by_method:
        lanes.append((MAIN, fit.by_method[method.id]))
    if method.seals_twice and method.id in fit.by_method and joins_second(dish, fit.way):
        lanes.append((SECOND, fit.by_method[method.id]))
    if method.finish in fit.by_finish and dish.part != "aromatic":
        lanes.append((AFTER, fit.by_finish[method.finish]))
    vessel = store.vessel(method.vessel)
    deep_mm = max((vessel.dome * s.volume_l / s.area_m2 for s in vessel.sizes if s.volume_l), default=1000.0)
    chop = 4.0 if "less chopping" in request.wishes else 1.0
    step = BRISK_STEP if brisk and method.kind == "wet" and dish.kind in SLOW else CUT_STEP
    cuts = (
        [store.cut(fit.wet_cut)]
        if fit.wet_cut and method.kind != "dry"
        else cuts_for(dish, method, request, store, brisk=brisk)
    )
    way = "in" if fit.way == SWEATED and long else fit.way
    on_bed = bed and steams_on_top(dish, method, store)
    manners = Manner(how=STILL) if dish.made.is_fried_first else manner(dish, store)
    for lane, points, lead in _led(dish, method, lanes, way, manners, alone=alone):
        for place, cut in enumerate(cuts):
            piece = piece_of(dish.food, cut)
            if cut.parts == 1:
                piece = heat.by_weight(dish, piece)
            if piece.size_mm > deep_mm or _cannot_rest(dish, piece, method, store):
                continue
            if lane == AFTER and method.finish == "broil" and _is_bulky(dish, piece):
                continue
            if lane == MAIN and method.finish == "broil" and not delicate(dish, store).broils:
                continue  # it would lie under the glow while something else browns
            heap = is_mince(dish, piece.shape)
            if heap and method.kind == "pan":
                lead = BROWNED  # alone, before the others crowd the pan, and it stays in
            heap_s = mince_s(dish) if heap and lead == BROWNED else 0.0
            soften_s = dish.made.soften_s or SOFTEN_S
            lead_s = {BROWNED: heap_s or BROWN_S, SOFTENED: soften_s}.get(lead, 0.0)
            sealed = method.kind == "sealed"
            come_up_s = heat.come_up_s(lane, setting, load, request.kitchen) if sealed else 0.0
            laid = fit.way == "top" and dish.made.eggs not in (RIBBONS, COATING)
            top = method.kind == "wet" and (laid or on_bed)
            texture = _texture(dish, method, request)
            spared = "less chopping" in request.wishes and cut.id != "whole" and "whole" in dish.food.cuts
            knife = 0.0 if dish.cut_said else cut.knife_min_per_kg * dish.grams / 1000.0
            doneness = "warm_through" if lead == SOAKED else heat.doneness_in(dish, method)
            try:
                case = heat.case(
                    dish, doneness, piece, method, setting,
                    lane=lane, lead=lead, lead_s=lead_s, top=top, gentle=gentle, texture=texture,
                    load=load, kitchen=request.kitchen, learned=request.learned, store=store,
                )  # fmt: skip
            except KnowledgeError:
                continue  # such a piece has no answer in this medium; another cut may have one
            yield Open(
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
                sealed=sealed and lane != AFTER,
                soaks=method.kind in ("wet", "sealed") and handling(dish, store=store).pot == OFF_HEAT,
                pace=request.learned.oven_pace if method.heat == "oven" else 1.0,
                texture=texture,
                fit=points,
                good_s=lasting.good_s(dish.food, dish.kind, cut_id=cut.id, heat=method.kind, store=store),
                least_s=_least_s(dish, method, setting, lane, store),
                toasts=fit.way == TOASTED and method.browns and lane == MAIN,
                manner=manners.how,
                cost=step * place + KNIFE_MIN * knife * chop + SPARED * spared,
            )


def _least_s(dish: Dish, method: Method, setting: Setting, lane: str, store: Store) -> float:
    """However soon it is done: the boil of raw beans, and what `lasting` says of it."""
    if heat.boils_hard(dish, method):
        return RAW_BEAN_BOIL_S
    if lane == AFTER and method.kind == "dry":
        return SHORTEST_S
    simmers = dish.made.simmer_s if method.kind == "wet" else 0.0
    within = "wet" if method.kind == "sealed" and lane == AFTER else method.kind
    found = lasting.least_s(dish.food, dish.kind, heat=within, oven_degC=setting, store=store)
    return max(found, simmers, SHORTEST_S)


def _led(
    dish: Dish,
    method: Method,
    lanes: Sequence[tuple[str, float]],
    way: str,
    manners: Manner,
    *,
    alone: bool,
) -> Iterator[tuple[str, float, str]]:
    """Each lane with what happens before it. Meat for a pot may also go in pale, when its turn comes late."""
    for lane, points in lanes:
        if dish.made.is_fried_first and method.kind == "wet" and method.browns and lane == MAIN:
            yield lane, points, SEARED
            continue
        if manners.how == STILL and method.kind == "pan" and lane == MAIN and not alone:
            yield lane, points - manners.beside, SEARED
            if dish.kind == "fish":
                yield lane, points - ASIDE, ""
            continue
        lead = "" if is_poached(dish, method) else _lead(dish, method, lane, way, alone=alone)
        yield lane, points, lead
        if lead == BROWNED and method.kind == "wet" and dish.kind != "warm_through":
            yield lane, points - (BOILED if dish.kind in FOR_THE_PAN else PALE), ""


def is_poached(dish: Dish, method: Method) -> bool:
    """Whether it goes raw and thin into the hot liquid."""
    return dish.made.is_sliced_raw and method.kind in ("wet", "sealed")


def joins_second(dish: Dish, way: str) -> bool:
    """Whether it may go in when the cooker is opened half way: quick foods that are not browned first.

    What foams wants its pressure to fall by itself, which a short second sealing has no time for.
    """
    rises = dish.food.pressure in (Behaviour.FOAMS, Behaviour.SWELLS) and dish.kind != "warm_through"
    return dish.part != "aromatic" and way != "browned" and not dish.is_raw_bean and not rises


def _cannot_rest(dish: Dish, piece: Pieced, method: Method, store: Store) -> bool:
    """Whether it is a joint to be taken out at its minute and rested, which a locked lid does not allow."""
    core = heat.done_kind(heat.doneness_in(dish, method), store) is DoneKind.CORE
    return method.kind == "sealed" and core and piece.shape in ("joint", "bird")


def _is_bulky(dish: Dish, piece: Pieced) -> bool:
    """Whether it is too thick or too cold for the broiler."""
    return dish.state == "frozen" or piece.size_mm > BROIL_MM


def _lead(dish: Dish, method: Method, lane: str, way: str, *, alone: bool) -> str:
    """What happens to it in the open pan before its lane begins."""
    if not method.browns or lane != MAIN:
        return ""
    if (dish.made.is_fried_down or dish.made.is_base) and method.kind != "dry":
        return SOFTENED
    melts = way == "fried" or dish.kind != "warm_through"
    if dish.part == "aromatic" and method.kind != "dry" and melts:
        return SOFTENED
    if way in ("fried", SWEATED) and method.kind != "dry":
        return "" if method.kind == "pan" or alone else SOFTENED
    if way == "soaked":
        return SOAKED if method.kind == "pan" and dish.food.start_state == "dry" else ""
    if way != "browned" or (dish.state == "frozen" and dish.kind != "ground_meat"):
        return ""
    if method.kind == "pan":
        return "" if alone else SEARED
    return BROWNED


def _texture(dish: Dish, method: Method, request: Request) -> Texture:
    """Green and quick things keep a bite wherever they do not have to brown or melt."""
    if "soft" in request.wishes:
        return Texture.SOFT
    if dish.kind in ("tender_leaf", "firm_fruit"):  # fruit is eaten raw: with a bite it is best
        return Texture.CRISP_TENDER
    bite = dish.kind in ("quick_veg", "medium_veg") and not dish.made.is_soft
    if bite and BITE_WISHES & {*request.wishes}:
        return Texture.CRISP_TENDER
    leafy = dish.food.group == "cabbage" and dish.kind != SOFT_CABBAGE
    green = leafy or dish.food.group in BITE_GROUPS
    return Texture.CRISP_TENDER if bite and green and method.kind != "dry" else Texture.TENDER
