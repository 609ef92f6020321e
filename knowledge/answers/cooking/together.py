"""The cuts of several foods that make them ready at the same time.

Each food can be cut in some ways; each piece takes its minutes (`heating.minutes`). Of all moments at
which a piece of any food is done, the one is taken to which pieces of all can be found that are done
close to it, and among those the one whose pieces are nearest to the usual sizes.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from knowledge.answers.cooking.dish_cuts import DishCut, is_meat
from knowledge.answers.cooking.heating import minutes
from knowledge.answers.cooking.sizes import whole
from knowledge.answers.model import Mention, Question
from knowledge.answers.reading.words import meanings_of
from knowledge.foods.model import Cut, Food
from knowledge.foods.pieces import Pieced, piece_of
from knowledge.foods.store import Store

TOGETHER_MIN, TOGETHER_SHARE = 3.0, 0.15  # so far apart in minutes, or of the time, is done together
SIZES_MM = (3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 15.0, 18.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0)
RANGE_MM = {"roast": (10.0, 50.0), "saute": (3.0, 25.0), "grill": (15.0, 40.0)}
"""What is cut for a tray, a pan, a skewer: smaller scorches, larger stays raw (common practice)."""
WET_MM = (8.0, 50.0)  # smaller falls apart in water or steam (common practice)
TRAY_MM = 15.0  # a tray's smaller pieces need turning (common practice)
_SMALL_COST, _ASIDE, _STRETCH = 0.6, 2.0, 100.0  # small on a tray, cutting what stands aside, being late
_AS_BOUGHT = ("leaf", "grain")
_BLOCK_RATIO = 1.3  # a block is no longer than this, in its thickness
_BELOW_RANGE = 0.6  # of a dish's smallest piece: cut so small only so that it is done with the others
_QUICK = {"whole_meat": "tender_meat", "poultry": "poultry", "game": "tender_meat"}


@dataclass(frozen=True, slots=True, kw_only=True)
class Wanted:
    """A food to be cooked with the others: its piece if that is told, its usual range in a dish."""

    mention: Mention
    fixed: Pieced | None = None
    dish: DishCut | None = None
    is_aside: bool = False  # what the others are to go with: it is cut anew only where nothing else helps
    is_to_cut: bool = False  # its size is asked for, so that meat is not left whole
    is_sliced: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Timed:
    """A food in pieces, what they are called, and the minutes that they take."""

    mention: Mention
    piece: Pieced
    noun: str  # "cubes", "strips"; "" for what is left as it is
    min: float
    cost: float = 0.0


def is_close(minute: float, others: float) -> bool:
    """True where two times are the same to a cook."""
    return abs(minute - others) <= tolerance_min(others)


def tolerance_min(minute: float) -> float:
    """How far from a time is still together with it [min]."""
    return max(TOGETHER_MIN, TOGETHER_SHARE * minute)


def matched(
    question: Question, wanted: Sequence[Wanted], way: str, *, in_min: float | None = None
) -> tuple[Timed, ...] | None:
    """A piece of each food, all done as near together as they can be; None where a time is not known."""
    tried = [_timed(question, one, way) for one in wanted]
    if not all(tried):
        return None
    moments = {round(timed.min, 1) for one in tried for timed in one} if in_min is None else {in_min}
    best = min(moments, key=lambda moment: (_total(_nearest(tried, moment), moment), moment))
    return _nearest(tried, best)


def _nearest(tried: Sequence[Sequence[Timed]], moment: float) -> tuple[Timed, ...]:
    return tuple(min(one, key=lambda timed: _cost(timed, moment)) for one in tried)


def _total(chosen: Sequence[Timed], moment: float) -> float:
    return sum(_cost(timed, moment) for timed in chosen)


def _cost(timed: Timed, moment: float) -> float:
    """How unusual a piece is; far more where it is not done together with the others."""
    apart_min = abs(timed.min - moment)
    late = max(apart_min - tolerance_min(moment) / 2, 0.0)  # one early, one late: still together
    return timed.cost + apart_min / moment + (_STRETCH * late / moment if late else 0.0)


# The pieces that are tried.


def _timed(question: Question, wanted: Wanted, way: str) -> list[Timed]:
    food = as_cooked(wanted.mention.food, way)
    pieces = _pieces(question.store, wanted, way)
    taken = minutes(question, food, [piece for piece, _, _ in pieces], way)
    return [
        Timed(mention=wanted.mention, piece=piece, noun=noun, min=time.likeliest, cost=cost)
        for (piece, noun, cost), time in zip(pieces, taken, strict=True)
        if time.likeliest
    ]


def as_cooked(food: Food, way: str) -> Food:
    """Meat for a pan or a grill is of a tender cut, so that only its core counts; other food as it is."""
    tough = way in ("saute", "grill") and food.doneness.startswith(("tough_", "stewing_"))
    quick = _QUICK.get(food.safety) if tough else None
    return replace(food, doneness=quick) if quick else food


def _pieces(store: Store, wanted: Wanted, way: str) -> list[tuple[Pieced, str, float]]:
    """Each piece that a food may be cut to, what it is called, and how unusual it is."""
    food, usual = wanted.mention.food, whole(store, wanted.mention.food)
    if wanted.fixed is not None:
        return [(wanted.fixed, noun_of(store, food, wanted.fixed), 0.0)]
    meat = is_meat(food)
    if wanted.dish and usual.shape not in _AS_BOUGHT and is_cut(store, food):
        return _of_dish(food, wanted.dish)
    if usual.shape in _AS_BOUGHT or not is_cut(store, food):
        return [(usual, "", 0.0)]
    if meat and way in ("roast", "grill", "saute") and not wanted.is_to_cut and food.cuts[0] == "whole":
        return [(usual, "", 0.0)]
    low, high = RANGE_MM.get(way, WET_MM)
    usual_mm = min(max(usual.size_mm, low * 1.5 if way != "saute" else low), high)
    if wanted.is_to_cut and not meat and way == "roast":
        usual_mm = max(usual_mm, 25.0)
    found: dict[float, tuple[Pieced, str, float]] = {}
    for piece, noun in _cuts(store, food, low, high, is_sliced=wanted.is_sliced):
        if piece.size_mm not in found:
            away = abs(math.log2(piece.size_mm / usual_mm))
            small = _SMALL_COST if way == "roast" and piece.size_mm < TRAY_MM and noun in _BLOCKS else 0.0
            found[piece.size_mm] = (piece, noun, away * (_ASIDE if wanted.is_aside else 1.0) + small)
    return list(found.values()) or [(usual, noun_of(store, food, usual), 0.0)]


_BLOCKS = ("cubes", "pieces", "dice", "chunks")


def is_cut(store: Store, food: Food) -> bool:
    """True for what is cut at all: not a pea, a shrimp, a grain."""
    return food.whole_shape == "joint" or any(store.cut(cut_id).parts != 1 for cut_id in food.cuts)


def _cuts(store: Store, food: Food, low: float, high: float, *, is_sliced: bool) -> list[tuple[Pieced, str]]:
    """Its own cuts, then blocks, or slices, of every size that its thickness allows."""
    meat, floret = is_meat(food), whole(store, food).shape == "floret"
    blocks = any(_is_block(store.cut(cut_id)) for cut_id in food.cuts)
    is_sliced = is_sliced and blocks
    found = []
    for cut_id in food.cuts:
        cut = store.cut(cut_id)
        if is_sliced or cut.shape == "grain" or (cut.parts == 1 and floret) or (cut.parts > 1 and blocks):
            continue
        piece = piece_of(food, cut)
        if low <= piece.size_mm <= high or (food.whole_mm or high) < low:
            found.append((piece, _noun(cut)))
    thick = food.whole_mm or high
    for mm in SIZES_MM:
        if not low <= mm <= min(high, thick):
            continue
        if floret and mm >= 15.0:
            found.append((Pieced("floret", mm, 2.0, 2.0), "florets"))
        elif is_sliced:
            found.append((Pieced("slab", mm, 6.0, 8.0), "slices"))
        elif blocks:
            found.append((Pieced("brick", mm, 1.0, 1.2 if meat else 1.0), "pieces" if meat else "cubes"))
    return found


def _is_block(cut: Cut) -> bool:
    """True for a chunk, a dice: of what has such a cut, blocks of any size can be made."""
    return cut.shape == "brick" and max(cut.ratio_1, cut.ratio_2) < _BLOCK_RATIO


def _of_dish(food: Food, dish: DishCut) -> list[tuple[Pieced, str, float]]:
    """The sizes of a dish's range, the middle first, and a smaller one."""
    middle = math.sqrt(dish.from_mm * dish.to_mm)
    sizes = {round(_BELOW_RANGE * dish.from_mm) or 1, dish.from_mm, round(middle), dish.to_mm}
    thick = food.whole_mm or dish.to_mm
    shape, ratio_1, ratio_2 = _SHAPES.get(dish.cut.split()[0], ("brick", 1.0, 1.0))
    return [
        (Pieced(shape, min(mm, thick), ratio_1, ratio_2), dish.cut, 0.2 * abs(math.log2(mm / middle)))
        for mm in sorted(sizes)
    ]


_SHAPES = {
    "slices": ("slab", 6.0, 8.0),
    "strips": ("brick", 2.0, 6.0),
    "matchsticks": ("brick", 1.0, 13.0),
    "shreds": ("brick", 1.0, 12.0),
    "sticks": ("brick", 1.0, 6.0),
    "wedges": ("brick", 1.5, 3.0),
    "florets": ("floret", 2.0, 2.0),
}
"""What a dish's pieces look like, by the first word for them; of anything else blocks are meant."""


def noun_of(store: Store, food: Food, piece: Pieced) -> str:
    """What the pieces of a food are called, by the cut that makes them, "" for the food as bought."""
    for cut_id in (*food.cuts, *meanings_of(store, "cut named").values()):
        cut = store.cut(cut_id)
        if piece_of(food, cut) == piece:
            return _noun(cut)
    return "pieces"


def _noun(cut: Cut) -> str:
    """ "chunks" of "25 mm chunks", "halved"; "" for whole."""
    if cut.parts == 1:
        return ""
    return cut.name.split()[-1] if cut.size_mm else cut.name
