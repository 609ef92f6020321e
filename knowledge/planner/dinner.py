"""Tonight's dinner: how much of what is at hand is cooked, in which state, for how many.

Amounts come from weights, from counts and containers by the portion table, or, when
nothing was said, from a serving for each eater. More than the eaters need stays
over, in whole pieces. What may not be eaten (diet, allergy, refusal) is left out here,
before any cooking is thought of.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from knowledge.diets import barred_by
from knowledge.errors import UnknownFood
from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store
from knowledge.planner.model import Have, LeftOut, Request

MIN_G, MAX_G = 1.0, 15_000.0  # what a home kitchen cooks of one food
PLENTY = 2.4  # so many times the need, and the rest is kept for another day
SHARE = (
    1.0,
    0.62,
    0.48,
    0.4,
)  # of a full serving each, when 1, 2, 3, 4 and more foods share one part of the plate
CUP_ML = 240.0
VOLUMES_ML = {
    "ml": 1.0, "l": 1000.0, "cup": CUP_ML, "tbsp": 15.0, "tsp": 5.0, "pint": 473.0, "quart": 946.0,
    "glass": 200.0, "handful": 60.0, "bowl": 300.0,
}  # fmt: skip
FALLBACK_UNITS = ("piece", "can", "pack", "bag", "bunch", "head", "jar")
MADE_UNITS = frozenset({"can", "jar", "tin", "carton", "pack", "pouch"})  # pulses in these are cooked already
READY = frozenset({"canned", "cooked", "leftover"})
SIZE_FACTOR = {"small": 0.75, "baby": 0.5, "tiny": 0.4, "large": 1.3, "big": 1.3, "huge": 1.6}
THIN = frozenset({"strips"})
ANY_CUT = frozenset({"beef", "pork", "lamb", "goat", "venison"})  # names that do not say which part
PULSES = frozenset({"bean", "chickpea"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Dish:
    """One food that is cooked: so many grams as bought, of so many pieces, from this state."""

    food: Food
    grams: float
    state: str  # of Have.state, "" for the usual one
    kind: str  # doneness class for the planner: the food's own, or "warm_through"
    cut_said: str  # as it lies there already, "" when whole
    piece_g: float | None  # one piece as bought
    name: str  # as the cook calls it
    assumed: bool  # nobody said how much

    @property
    def part(self) -> str:
        """What it is on the plate."""
        return self.food.part

    @property
    def pieces(self) -> int | None:
        """Whole pieces as bought, when it comes in pieces."""
        return max(1, round(self.grams / self.piece_g)) if self.piece_g else None

    @property
    def safety(self) -> str:
        """Which published minimum holds for it: mince and leftovers have their own, whatever they are of."""
        if self.state == "leftover":
            return "leftover"
        if self.kind == "ground_meat" and self.food.safety == "whole_meat":
            return "ground_meat"
        return self.food.safety

    @property
    def servings(self) -> float:
        """How many adults it serves as the only food of its part."""
        return self.grams / (self.food.serving_g or 150.0)


@dataclass(frozen=True, slots=True, kw_only=True)
class Seasoning:
    """A food that goes in at its moment; `grams` only when said."""

    food: Food
    grams: float | None
    name: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Dinner:
    """What is cooked for whom, and what is not."""

    dishes: tuple[Dish, ...]
    seasonings: tuple[Seasoning, ...]
    sides: tuple[Seasoning, ...]  # eaten as they are, at the end
    eaters: float
    left_out: tuple[LeftOut, ...]
    assumed: tuple[str, ...]


def gather(request: Request, *, store: Store) -> Dinner:
    """The dinner in a request: every food in its role, with an amount."""
    left_out = [LeftOut(food=name, why="I do not know it; I planned without it") for name in request.unknown]
    assumed: list[str] = []
    found: list[tuple[Food, Have]] = []
    for have in request.have:
        try:
            food = store.food(have.food_id)
        except UnknownFood:
            left_out.append(
                LeftOut(food=have.said or have.food_id, why="I do not know it; I planned without it")
            )
            continue
        reason = _barred(food, request)
        if reason:
            left_out.append(LeftOut(food=food.name, why=reason))
            continue
        found.append((food, have))
    cooked = [(food, have) for food, have in found if food.role is Role.COOK]
    eaters = request.eaters if request.eaters_said else _guess_eaters(cooked, request.eaters)
    eaters = min(max(eaters, 1.0), 12.0)
    if not request.eaters_said:
        assumed.append(f"dinner for {eaters:g}")
    dishes = []
    for food, have in cooked:
        dish, notes = _dish(food, have, eaters, cooked)
        dishes.append(dish)
        assumed.extend(notes)
    return Dinner(
        dishes=tuple(dishes),
        seasonings=tuple(_seasoning(f, h) for f, h in found if f.role is Role.SEASON),
        sides=tuple(_seasoning(f, h) for f, h in found if f.role is Role.FINISH),
        eaters=eaters,
        left_out=tuple(left_out),
        assumed=tuple(assumed),
    )


def grams_of(food: Food, have: Have) -> float | None:
    """What the said amount weighs [g], as bought; None when no amount was said or it cannot be weighed."""
    if have.grams is not None:
        return have.grams
    if have.qty is None:
        one = _portion(food, have.unit, have.size) if have.unit and have.unit not in VOLUMES_ML else None
        return one
    unit = have.unit or "piece"
    one = _portion(food, unit, have.size)
    if one is None and unit in VOLUMES_ML:
        cup = _portion(food, "cup", None)
        per_ml = cup / CUP_ML if cup else (food.bulk_density_kg_m3 or 700.0) / 1000.0
        one = per_ml * VOLUMES_ML[unit]
    if one is None:
        known = (_portion(food, other, have.size) for other in FALLBACK_UNITS)
        one = next((grams for grams in known if grams is not None), None)
    return have.qty * one if one is not None else None


def scaled(dish: Dish, factor: float) -> Dish:
    """Less of a dish, in whole pieces where it comes in pieces."""
    grams = dish.grams * factor
    if dish.piece_g and dish.piece_g > 40:
        step = dish.piece_g if dish.part == "protein" or dish.piece_g <= 350 else dish.piece_g / 4
        grams = max(1, math.floor(grams / step + 1e-6)) * step
    return replace(dish, grams=min(grams, dish.grams))


def _barred(food: Food, request: Request) -> str:
    if food.id in request.spoiled:
        return "it stood out warm for hours: throw it away, cooking does not make it safe"
    if food.id in request.excluded or food.name in request.excluded:
        return "you said no to it"
    for token in request.excluded:
        if barred_by(food, (f"no {token}",)):
            return f"you said no {token}"
    diets = barred_by(food, request.diets)
    return f"it does not go with: {', '.join(diets)}" if diets else ""


def _portion(food: Food, unit: str | None, size: str | None) -> float | None:
    """One unit of the food [g], in the size said or else the usual one."""
    of_unit = [p for p in food.portions if p.unit == (unit or "piece")]
    if not of_unit:
        return None
    for portion in of_unit:
        if portion.size == (size or ""):
            return portion.grams
    usual = next((p for p in of_unit if p.size in ("", "medium")), of_unit[0])
    return usual.grams * SIZE_FACTOR.get(size or "", 1.0)


def _guess_eaters(cooked: Sequence[tuple[Food, Have]], default: float) -> float:
    """As many as the protein that was named feeds, within reason; the usual number when that is not said."""
    mains = [(f, grams_of(f, h)) for f, h in cooked if f.part == "protein" and f.serving_g]
    said = [grams / food.serving_g for food, grams in mains if grams is not None and food.serving_g]
    if not said:
        return default
    return float(min(max(round(sum(said) * 0.9), 2), 6))


def _dish(
    food: Food, have: Have, eaters: float, cooked: Sequence[tuple[Food, Have]]
) -> tuple[Dish, list[str]]:
    notes: list[str] = []
    name = food.name
    state = have.state or ""
    kind = food.doneness
    if have.cut == "ground" and food.animal and food.safety == "whole_meat":
        kind = "ground_meat"
    if have.cut in THIN and food.part == "protein" and kind.startswith("tough_") and food.id in ANY_CUT:
        kind = "tender_meat"  # sold in strips it is for the pan
    if state in READY or food.start_state == "canned":
        kind = "warm_through"
    elif food.doneness in PULSES and not state:
        if have.unit in MADE_UNITS or (have.grams is None and have.unit != "cup"):
            state, kind = "canned", "warm_through"
            notes.append(f"the {name} is tinned")
        else:
            state = "dried"
    if kind in PULSES and state == "dried":
        notes.append(f"the {name} is dry and not soaked")
    sharing = sum(other.part == food.part for other, _ in cooked)
    need = (food.serving_g or 150.0) * eaters * SHARE[min(sharing, len(SHARE)) - 1]
    if food.part == "aromatic":
        need = (food.serving_g or 60.0) * eaters * 0.6
    piece = _portion(food, "piece", have.size)
    grams = grams_of(food, have)
    assumed = grams is None
    if grams is None:
        grams = need
        if piece and piece > 40:
            grams = _in_pieces(need, piece, food)
        notes.append(f"{amount_text(name, grams, piece)}")
    elif grams > PLENTY * (food.serving_g or 150.0) * eaters and food.part not in ("liquid", "aromatic"):
        enough = PLENTY * 0.6 * (food.serving_g or 150.0) * eaters
        if piece and piece > 40:
            enough = _in_pieces(enough, piece, food)
        if enough < grams * 0.8 and not (piece and grams <= piece):
            notes.append(f"{amount_text(name, enough, piece)} is enough; keep the rest")
            grams = enough
    grams = min(max(grams, MIN_G), MAX_G)
    cut = have.cut or ""
    return (
        Dish(
            food=food,
            grams=grams,
            state=state,
            kind=kind,
            cut_said=cut,
            piece_g=piece,
            name=name,
            assumed=assumed,
        ),
        notes,
    )


def _in_pieces(grams: float, piece_g: float, food: Food) -> float:
    """Rounded up to whole pieces; big vegetables may be halved or quartered."""
    step = piece_g
    if food.part != "protein" and piece_g > 350:
        step = piece_g / (4 if piece_g > 1000 else 2)
    return max(1, math.ceil(grams / step - 0.25)) * step


def _seasoning(food: Food, have: Have) -> Seasoning:
    return Seasoning(food=food, grams=grams_of(food, have), name=food.name)


def amount_text(name: str, grams: float, piece_g: float | None) -> str:
    """An amount as one says it in a kitchen: pieces when they are whole, else grams."""
    if piece_g and piece_g > 40:
        count = round(grams / piece_g * 4) / 4
        if count >= 0.25 and abs(grams - count * piece_g) < 0.1 * piece_g:
            part = {0.25: "a quarter", 0.5: "half a", 0.75: "three quarters of a", 1.0: "1"}.get(
                count, f"{count:g} ×"
            )
            return f"{part} {name}"
    return f"{_round_g(grams)} g {name}"


def _round_g(grams: float) -> int:
    step = 5 if grams < 100 else 10 if grams < 300 else 50
    return max(step, round(grams / step) * step)
