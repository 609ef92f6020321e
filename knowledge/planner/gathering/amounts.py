"""How much: what a said amount weighs, for how many that is dinner, and how much to take when nobody said.

A fridge is not a shop. Without a number "an onion" is one and "carrots" are two or
three, whatever a label would call a serving; a tin or a bit of bacon says nothing about
how many will eat, six chicken thighs do.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import replace

from knowledge.foods.model import Food, Role
from knowledge.planner import words
from knowledge.planner.model import Have

CUP_ML = 240.0
VOLUMES_ML = {
    "ml": 1.0, "l": 1000.0, "cup": CUP_ML, "tbsp": 15.0, "tsp": 5.0, "pint": 473.0, "quart": 946.0,
    "glass": 200.0, "handful": 60.0, "bowl": 300.0,
}  # fmt: skip
FALLBACK_UNITS = ("piece", "patty", "can", "pack", "bag", "bunch", "head", "jar")
TAKEN_UNITS = ("can", "carton", "jar", "pack", "glass", "cup")  # of a liquid, when no amount is said
COOKED = frozenset({"canned", "cooked", "leftover"})
TINS = frozenset({"can", "jar", "tin", "pouch"})
SIZE_FACTOR = {"small": 0.75, "baby": 0.5, "tiny": 0.4, "large": 1.3, "big": 1.3, "huge": 1.6}
PIECE_UNITS = (
    "piece",
    "ear",
    "clove",
    "knob",
    "stalk",
    "fillet",
    "steak",
    "head",
    "sausage",
)  # what one of it may be called
SALTY_G = 2.2  # of salt in 100 g: meat so salty is there for its flavour
ALONE_G = 120.0  # of it, when it is all the protein there is
FLAVOUR_G = 50.0  # of it for each eater, beside another protein
SHARE = (1.0, 0.62, 0.48, 0.4)  # of a full serving each, when 1, 2, 3, 4 and more foods share a part
MOST_GUESSED = 8
VEG_G = 150.0  # of one vegetable for an eater, when nobody said
POURED_G = 250.0  # of a liquid for an eater, when nobody said
JOINT_G = 450.0  # from here a piece of meat is a joint
FILLET_G = 260.0  # a piece of fish up to here is a fillet
KEEPS_DAYS = 14.0  # from here a store that is drawn on, not tonight's shopping
ONE_G = 500.0  # up to here "an aubergine" is one, whatever it takes
APPETITE = 0.87  # the servings of the tables are generous when each eater has one
GENEROUS = {"protein": 2.0, "starch": 2.1, "vegetable": 2.6, "aromatic": 1.6}  # servings for one hungry
UNSAID = 2.0  # so much more, when nobody said how many eat
TAKEN = 1.25  # servings for each eater, when the rest is kept
SEVERAL = 2.0  # counted so, a ring's worth of sausage is links for one each
WEIGHTS = frozenset({"g", "kg", "lb", "oz", "pound", "ounce", "gram", "kilo"})
MOST_ONE = 2.2  # times the usual weight: a large joint; more of it is two
MOST_ODD = 3.0  # times the usual piece; beyond that a number counts something else
SMALL_G = 40.0  # up to here a piece is one of a handful
LITTLE_G, LITTLE_ML = 30.0, (30.0, 60.0)  # "a bit of" for each eater, "a splash of" for all
ONE_OF = frozenset({"bulb", "stick", "stalk", "rib", "clove", "head", "ear", "cob", "spear"})


def grams_of(food: Food, have: Have) -> float | None:
    """What the said amount weighs [g], as bought; None when no amount was said or it cannot be weighed."""
    if have.grams is not None:
        return have.grams
    if have.qty is None:
        return portion(food, have.unit, have.size) if have.unit and have.unit not in VOLUMES_ML else None
    unit = have.unit or "piece"
    one = portion(food, unit, have.size)
    if one is None and unit in VOLUMES_ML:
        cup = portion(food, "cup", None)
        per_ml = cup / CUP_ML if cup else (food.bulk_density_kg_m3 or 700.0) / 1000.0
        one = per_ml * VOLUMES_ML[unit]
    if one is None:
        known = (portion(food, other, have.size) for other in FALLBACK_UNITS)
        one = next((grams for grams in known if grams is not None), None)
    return have.qty * one if one is not None else None


def portion(food: Food, unit: str | None, size: str | None) -> float | None:
    """One unit of the food [g], in the size said or else the usual one."""
    of_unit = [p for p in food.portions if p.unit == (unit or "piece")]
    if not of_unit:
        return None
    for one in of_unit:
        if one.size == (size or ""):
            return one.grams
    usual = next((p for p in of_unit if p.size in ("", "medium")), of_unit[0])
    return usual.grams * SIZE_FACTOR.get(size or "", 1.0)


def as_named(food: Food, have: Have) -> Have:
    """What the name says of the piece: a gammon steak is a steak, "fennel bulb" one bulb."""
    word = have.said.split()[-1] if have.said else ""
    bare = have.unit in (None, "piece") and have.grams is None
    if bare and have.qty is None and not have.several and word in ONE_OF and not food.animal:
        known = portion(food, word, have.size) is not None
        return replace(have, qty=1.0, unit=word if known else "piece")
    if have.unit not in (None, "piece") or word not in PIECE_UNITS or not portion(food, word, have.size):
        return have
    if word == "sausage" and not have.several and (have.qty or 0.0) < SEVERAL:
        return have  # "a smoked sausage" may be the ring
    sliced = "sliced" if word == "steak" and food.whole_shape == "joint" else None
    counted = have.qty is not None or not have.several
    return replace(have, unit=word if counted else have.unit, cut=have.cut or sliced)


def piece_of(food: Food, have: Have) -> tuple[float | None, str]:
    """One piece as bought [g] and what it is called ("fillet", "ear"; "" for the food's own name)."""
    if have.unit in PIECE_UNITS[1:] and (grams := portion(food, have.unit, have.size)):
        return grams, have.unit or ""
    if (knob := portion(food, "knob", have.size)) is not None:
        return knob, "knob"
    grams = portion(food, "piece", have.size)
    if grams is not None:
        same = (u for u in PIECE_UNITS[1:] if portion(food, u, have.size) == grams)
        flat = food.animal == "fish" and portion(food, "fillet", have.size) is not None
        if flat and food.whole_shape != "fish" and grams <= FILLET_G:
            return grams, "fillet"
        return grams, next(same, "") if food.part == "aromatic" else ""
    for unit in PIECE_UNITS[1:]:
        if (grams := portion(food, unit, have.size)) is not None and food.role is Role.COOK:
            return grams, unit
    return None, ""


def one_g(food: Food, have: Have, usual_g: float | None) -> float | None:
    """One of its pieces [g]: what was said of so many divides into, else the table's; less of one is one."""
    if usual_g is None or have.grams is None or have.unit not in (None, *PIECE_UNITS, *WEIGHTS):
        return usual_g
    qty = None if have.unit in WEIGHTS else have.qty
    joint = food.whole_shape in ("joint", "bird") and food.part == "protein"
    if joint and not qty and not have.cut and usual_g <= have.grams < MOST_ONE * usual_g:
        return have.grams  # a large one
    if qty:
        one = have.grams / qty
        return one if usual_g / MOST_ODD <= one <= usual_g * MOST_ODD else usual_g
    return have.grams if usual_g / MOST_ODD <= have.grams < usual_g else usual_g


def is_flavour(food: Food) -> bool:
    """Whether it is meat for its flavour rather than to fill: bacon, ham, chorizo."""
    return bool(food.animal) and food.part == "protein" and food.group in ("cured meat", "sausage") and (
        (food.salt_g or 0.0) >= SALTY_G
    )  # fmt: skip


def serving_g(food: Food, *, cooked: bool) -> float:
    """What one adult eats of it as the only food of its part [g]; a dry food as sold cooked weighs more."""
    swollen = 1.0 + (food.water_uptake_g_per_g or 0.0) if cooked and food.start_state == "dry" else 1.0
    alone = ALONE_G if is_flavour(food) else 0.0
    return max(food.serving_g or 150.0, alone) * swollen


def is_one_piece(food: Food) -> bool:
    """Whether it goes into the heat as it is bought, a bird or a joint that nobody cuts up raw."""
    piece = portion(food, "piece", None)
    large = (piece or 0.0) > 2 * (food.serving_g or 150.0)
    return food.part == "protein" and food.cuts == ("whole",) and large


def is_said_as_one(food: Food, have: Have) -> bool:
    """Whether a bare word means one whole piece, for however many: "aubergine", "big potato", "ham hock".

    "Potato", "broccoli" or "chicken breast" alone name what there is, not how much.
    """
    if have.several or have.qty is not None or have.grams is not None or have.unit or have.rough:
        return False
    piece, _ = piece_of(food, have)
    if piece is None or piece <= SMALL_G:
        return False
    if food.part == "protein":
        return is_one_piece(food)
    mass = bool(words.uncounted() & {*(have.said or food.name).split()[-1:]})
    return bool(have.size) or (not mass and food.part in ("vegetable", "aromatic") and piece <= ONE_G)


def eaters_for(cooked: Sequence[tuple[Food, Have]], usual: float) -> float:
    """For how many what was said is dinner; the usual number when nothing said so.

    Counted or weighed meat, fish, eggs say so, or dried pulses if they say more; tins and
    flavourings never; without a protein, a weighed starch does.
    """
    for part in ("protein", "starch"):
        of_part = [(f, h) for f, h in cooked if f.part == part]
        filling = [(f, h) for f, h in of_part if not is_flavour(f)] or of_part
        feeds = {True: 0.0, False: 0.0}  # from pulses, from the rest
        single = part == "protein"
        for food, have in filling:
            grams = grams_of(food, have)
            if grams is None and is_one_piece(food) and not have.several:
                grams = piece_of(food, have)[0]  # "a chicken": it is roasted whole or not at all
            if grams is None or have.unit in TINS or have.state == "canned":
                continue
            share = grams / serving_g(food, cooked=have.state in ("cooked", "leftover"))
            if have.qty and 0.95 <= share / have.qty <= 2.0:
                share = have.qty / APPETITE  # each has one: a shank, a chop, a fillet
            if part == "protein" and food.fridge_days is not None and food.fridge_days >= KEEPS_DAYS:
                share = min(share, 2.0)  # a box of eggs
            feeds[food.group == "pulse"] += share
            single = single and have.qty == 1.0
        if most := max(feeds.values()):
            return float(min(max(math.floor(APPETITE * most + 0.5), 1 if single else 2), MOST_GUESSED))
    return usual


def unsaid(food: Food, have: Have, eaters: float, *, said: bool, sharing: int, main: bool) -> float:
    """How much to take when no amount was said [g].

    Args:
        said: whether the number of eaters was.
        sharing: how many foods make up this part of the plate.
        main: whether another protein carries the dinner.
    """
    need = serving_g(food, cooked=have.state in COOKED) * eaters * SHARE[min(sharing, len(SHARE)) - 1]
    if food.part == "aromatic":
        need = (food.serving_g or 60.0) * eaters * 0.6
    elif food.part == "vegetable":
        need = min(need, VEG_G * eaters)
    elif is_flavour(food) and main:
        need = min(need, FLAVOUR_G * eaters)
    if have.rough == "little":
        return words.handy(min(need, LITTLE_G * eaters))
    tin = portion(food, "can", have.size) if have.state == "canned" or food.start_state == "canned" else None
    if tin is not None:
        return max(1, round(need / tin)) * tin
    piece, unit = piece_of(food, have)
    if food.part == "protein" and piece is not None and piece > JOINT_G and not is_one_piece(food):
        return words.handy(need)  # cut from a larger piece
    if piece is None or (piece <= SMALL_G and food.part != "aromatic" and not unit):
        return words.handy(need)
    if piece <= SMALL_G:
        return max(1, round(need / piece)) * piece
    plant = food.part in ("vegetable", "aromatic", "starch")
    if is_said_as_one(food, have) or (
        plant and not have.several and not said and (2 * need > piece or piece <= ONE_G)
    ):
        return piece  # "an onion", "sweet potato": one
    grams = in_pieces(need, piece, food)
    if food.part in ("vegetable", "aromatic") and have.several and piece <= VEG_G * 1.5:
        most = max(3.0, eaters)
        return min(max(grams / piece, 2.0), most) * piece
    return grams


def enough(food: Food, have: Have, grams: float, eaters: float, *, soup: bool, said: bool) -> float:
    """What of a said amount is cooked [g]: all, up to a generous portion for each; else a good one each.

    When nobody `said` for how many it is, the amount itself may speak of more.
    """
    most = GENEROUS.get(food.part)
    most = most and most * (1.0 if said else UNSAID)
    piece, _ = piece_of(food, have)
    small = piece is None or piece <= SMALL_G
    if soup or most is None or (food.part == "aromatic" and small) or (piece and grams <= piece):
        return grams
    if food.whole_shape in ("joint", "bird") and food.part == "protein":
        return grams  # one joint, however large
    serving = serving_g(food, cooked=have.state in COOKED) * eaters
    if grams <= most * serving:
        return grams
    wanted = TAKEN * serving
    if have.unit in TINS and have.qty:
        one = grams / have.qty
        return math.ceil(wanted / one) * one  # nobody keeps half a tin
    wanted = words.handy(wanted) if small or have.grams is not None else in_pieces(wanted, piece or 1.0, food)
    return wanted if wanted < 0.8 * grams else grams


def in_pieces(grams: float, piece_g: float, food: Food) -> float:
    """In whole pieces; big vegetables may be halved or quartered."""
    step = piece_g
    if food.part != "protein" and piece_g > 350:
        step = piece_g / (4 if piece_g > 1000 else 2)
    up = 0.25 if food.part == "protein" else 0.4  # nobody goes short of meat for the rounding
    return max(1, math.ceil(grams / step - up)) * step


def poured(food: Food, have: Have, eaters: float) -> float | None:
    """How much of a liquid goes in [g]: what was said, else the usual tin, carton or glass."""
    grams = grams_of(food, have)
    if grams is not None or food.part != "liquid" or food.group == "stock":
        return grams
    if have.rough == "little":
        return min(max(LITTLE_ML[0] / 2.0 * eaters, LITTLE_ML[0]), LITTLE_ML[1])
    usual = (portion(food, unit, have.size) for unit in TAKEN_UNITS)
    one = next((g for g in usual if g is not None), None)
    return None if one is None else min(one, POURED_G * eaters)


def persons(feeds: float, eaters: float, *, said: bool) -> int:
    """Whole persons: those the dinner is for, unless it feeds clearly fewer.

    When nobody `said` how many, it may also feed clearly more.
    """
    for_them = max(1, math.floor(eaters + 0.5))
    fewer = 0.4 if said else 0.5
    more = math.inf if said else 0.27
    fits = -fewer * eaters <= feeds - eaters <= more * eaters
    return for_them if fits else max(1, math.floor(feeds + 0.5))
