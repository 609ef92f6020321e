"""The cuts worth trying for a dish in a method: what lies there cut stays so, steaks stay whole."""

from __future__ import annotations

from functools import lru_cache

from knowledge.foods.model import Cut
from knowledge.foods.store import Store
from knowledge.planner.dinner import Dish
from knowledge.planner.methods import Method, whole_mm
from knowledge.planner.model import Request

KEPT_WHOLE = frozenset({"tender_meat", "fish", "sausage"})
BIRDS = frozenset({"poultry", "dark_poultry"})
SLOW_IN_A_PAN = frozenset({"root", "starchy", "hard_veg"})
TRAY_MM = 15.0  # smaller is dark outside before the tray comes out
QUICK_TRAY_MM = 12.0  # when time counts
PAN_MM = 15.0  # larger is black outside before the middle is soft
THICK_MM = 58.0  # from here poultry is roasted and carved


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
