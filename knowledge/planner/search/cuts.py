"""The cuts worth trying for a dish in a method: what lies there cut stays so, steaks stay whole."""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from knowledge.foods.model import Cut
from knowledge.foods.pieces import Pieced, piece_of
from knowledge.foods.store import Store
from knowledge.planner.gathering import amounts
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.methods import Method, form_of, whole_mm
from knowledge.planner.model import Request
from knowledge.planner.search.delicate import delicate
from knowledge.planner.styles import Style, style_of

KEPT_WHOLE = frozenset({"tender_meat", "fish", "sausage"})
BIRDS = frozenset({"poultry", "dark_poultry"})
SLOW = frozenset({"root", "starchy", "hard_veg"})
UNCUT = frozenset({"tender_leaf", "tough_leaf", "egg", "ground_meat", "warm_through"})
WHOLE_IN_A_STYLE = frozenset({"sausage", "fish", "shellfish", "cured"})
COINS = "thick coin"
LARDONS = ("strip", "small dice")
BOUGHT_CUT = frozenset({"lardon", "bit", "cube", "rasher"})
BONELESS = 0.95  # eaten, of what is bought
TRAY_MM = 15.0  # smaller is dark outside before the tray comes out
QUICK_TRAY_MM = 12.0  # when time counts
LEAST_MM = {"wet": 22.0, "sealed": 24.0}  # smaller falls apart while the rest cooks
BRISK_MM = 12.0  # beside what is done in a quarter of an hour; common practice, no source
FLORET_MM = 45.0  # larger is no mouthful, and only there to last as long as the rest; judgement
TOSSED_MM = 30.0  # the same in an open pan, where its stem is to be done before its head is dark
SPOON_MM = 70.0  # the longest that one spoon takes up; judgement
BASE_MM, FINE = 8.0, "small dice"  # what softens with the onions is as small as they are
PAN_MM = 15.0  # larger is black outside before the middle is soft
THICK_MM = 58.0  # from here poultry is roasted and carved


def cuts_for(dish: Dish, method: Method, request: Request, store: Store, *, brisk: bool = False) -> list[Cut]:
    """The cuts worth trying, usual first; what lies there cut already stays as it is.

    Steaks, chops, joints, fillets and birds stay whole on the tray and in the pan. A tray
    burns what is small before it is done, a pan never gets to the middle of what is big.
    A dish that was named, a stir-fry, a soup, has sizes of its own.

    Args:
        brisk: nothing that fills is slow, see `is_brisk`; then roots are cut so as not to keep it waiting.
    """
    usual = list(dish.food.cuts) or ["whole"]
    animal = dish.part == "protein" and bool(dish.food.animal)
    is_bird = dish.kind in BIRDS and (method.kind == "dry" or whole_mm(dish) >= THICK_MM)
    if dish.made.is_sliced_raw and not dish.cut_said and method.kind in ("wet", "sealed"):
        return [store.cut("slice")]
    if (form := form_of(dish, store)) and form in dish.food.cuts:
        return [store.cut(form)]
    if dish.cut_said:
        wanted = _cuts_said(store).get(dish.cut_said, ())
        usual = [c for c in wanted if c in usual][:1] or list(wanted[:1]) or usual
    elif dish.state == "frozen" and (dish.piece_g is None or animal):
        usual = usual[:1]  # a bag of frozen pieces is cut already, and nobody cuts a frozen piece
    elif dish.kind == "ground_meat":
        usual = usual[:1]  # balls and patties are said
    elif dish.kind == "warm_through" and dish.state in ("canned", "leftover", "cooked"):
        usual = usual[:2]
    elif method.kind != "dry" and amounts.is_flavour(dish.food) and COINS in usual:
        usual = [COINS]  # chorizo, smoked sausage: in the fat and through the dish
    elif method.kind != "dry" and dish.kind == "cured" and not _is_lardons(dish):
        usual = [c for c in usual if c in LARDONS][:1] or usual  # bacon: its fat runs out of small pieces
    elif animal and usual[0] == "whole" and (dish.kind in KEPT_WHOLE or is_bird):
        as_bought = ("whole", "thick slice") if dish.kind == "fish" else ("whole",)
        in_stew = dish.kind == "fish" and method.kind not in ("dry", "pan")
        usual = [c for c in usual if c in as_bought or (in_stew and c == "large chunk")]
    style = style_of(request.wishes, store)
    if style is not None and not dish.cut_said and dish.state != "frozen" and dish.part != "aromatic":
        named = _of_style(dish, style, store)
        if named and not dish.made.is_base and not dish.made.is_fried_first:
            return named
    if style is not None and style.is_thin and dish.part == "aromatic" and "slice" in usual:
        usual = ["slice"]  # onions like the rest of it
    cuts = [store.cut(cut_id) for cut_id in usual]
    if animal or dish.cut_said or len(cuts) < 2 or cuts[0].shape == "leaf":
        return cuts
    most_mm = TOSSED_MM if method.kind == "pan" else FLORET_MM
    cuts = [c for c in cuts if c.shape != "floret" or c.size_mm <= most_mm] or cuts
    if method.kind == "dry":
        least_mm = QUICK_TRAY_MM if "quick" in request.wishes or request.ready_in_s else TRAY_MM
        large = [c for c in cuts if c.parts or c.size_mm >= least_mm]
        if dish.kind == "firm_fruit":
            large = [c for c in large if not c.parts]  # wedges, which join late
        return large or cuts[-1:]
    if dish.kind not in SLOW:
        return cuts
    if dish.made.is_base:
        return [c for c in cuts if not c.parts and c.size_mm <= BASE_MM] or [store.cut(FINE)]
    if method.kind == "pan" or dish.made.is_fried_first:
        return [c for c in cuts if not c.parts and c.size_mm <= PAN_MM] or cuts
    least_mm = LEAST_MM[method.kind] if "quick" not in request.wishes else QUICK_TRAY_MM
    if brisk and method.kind == "wet":
        least_mm = BRISK_MM
    least_mm = min(least_mm, dish.food.whole_mm or least_mm)  # no chunk of a carrot is thicker than it is
    return [c for c in cuts if _is_spooned(piece_of(dish.food, c), least_mm)] or cuts


def is_brisk(dishes: Sequence[Dish], store: Store) -> bool:
    """Whether what fills is all quick and soon past its best: fish, pasta, rice, eggs; roots do not count."""
    filling = [d for d in dishes if d.part in ("protein", "starch") and d.kind not in SLOW]
    raw = [d for d in filling if d.kind != "warm_through" and not amounts.is_flavour(d.food)]
    return bool(raw) and all(delicate(d, store).hurries for d in raw)


def _is_lardons(dish: Dish) -> bool:
    """Whether it was bought in pieces."""
    return dish.name.rsplit(" ", 1)[-1] in BOUGHT_CUT


def _is_spooned(piece: Pieced, least_mm: float) -> bool:
    """Whether a piece of a root keeps its shape in the liquid and is still eaten with a spoon."""
    longest_mm = piece.size_mm * max(piece.ratio_1, piece.ratio_2, 1.0)
    return least_mm <= piece.size_mm and longest_mm <= SPOON_MM


def _of_style(dish: Dish, style: Style, store: Store) -> list[Cut]:
    """The food's own cuts that lie within the sizes of the style; none when it is not cut there."""
    meat = dish.part == "protein" and bool(dish.food.animal)
    sizes = style.meat_mm if meat else style.vegetable_mm
    if sizes is None or dish.kind in UNCUT or (meat and dish.kind in WHOLE_IN_A_STYLE):
        return []
    pieces = [(cut, piece_of(dish.food, cut)) for cut in map(store.cut, dish.food.cuts)]
    sized = [(cut, piece) for cut, piece in pieces if sizes[0] <= piece.size_mm <= sizes[1]]
    fitting = [cut for cut, piece in sized if dish.kind not in SLOW or _is_spooned(piece, sizes[0])]
    boneless = meat and dish.food.edible_frac >= BONELESS
    if boneless:
        fitting = [cut for cut in fitting if not cut.parts] or fitting  # for the fork, not the knife
    return fitting or ([store.cut(style.meat_cut)] if style.meat_cut and boneless else [])


@lru_cache(maxsize=4)
def _cuts_said(store: Store) -> dict[str, tuple[str, ...]]:
    return {row["said"]: tuple(c for c in row["cuts"].split(";") if c) for row in store.table("cuts_said")}
