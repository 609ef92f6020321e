"""Tonight's dinner: how much of what is at hand is cooked, in which state, for how many.

Amounts come from weights, from counts and containers by the portion table, or, when
nothing was said, from a serving for each eater (`amounts`). What may not be eaten (diet,
allergy, refusal) is left out here, before any cooking is thought of; so is what may not
share a vessel.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from knowledge.diets import clash
from knowledge.errors import UnknownFood
from knowledge.foods.model import Food, Portion, Role
from knowledge.foods.store import Store
from knowledge.names import key
from knowledge.planner import words
from knowledge.planner.gathering import amounts
from knowledge.planner.gathering.meant import barred
from knowledge.planner.gathering.peeling import PLAIN, SHELL, Peeling, peeling
from knowledge.planner.gathering.plenty import filled
from knowledge.planner.gathering.usual import pinch, usual_ml
from knowledge.planner.model import Have, LeftOut, Request
from knowledge.planner.styles import DRY_ML_HEAD, Style, style_named, style_of, styles_ruled_out
from knowledge.planner.techniques import (
    AS_USUAL,
    BOILED,
    USUAL,
    Technique,
    Treatment,
    recognised,
    technique_of,
    treatment,
)
from knowledge.planner.writing.young import is_hot, is_young
from knowledge.units import volume, weight
from knowledge.wished import ruled_out

MIN_G, MAX_G = 1.0, 15_000.0  # what a home kitchen cooks of one food
MOST_EATERS = 12.0  # whom one vessel may feed; judgement
NONE_LEFT = "you said there is none"
ONE_PIECE = frozenset({"joint", "bird"})
SIMMERS_ML = 60.0  # for each eater: more of a table sauce than anyone spoons on; judgement
WEIGHED_G = 50.0  # to which a kitchen scale is read when less of it is taken
FLAT = "flattened"  # cut of a bird without its backbone
THIN = frozenset({"strips"})
KEPT = frozenset({"smoked", "cured", "salted", "corned", "salt"})  # in a name
DRY_STOCK = frozenset({"cube", "pot", "powder", "bouillon", "paste", "concentrate"})
FRUIT = frozenset({"fruit", "citrus"})
PULSES = frozenset({"bean", "chickpea"})
LOOSE_CUT = "kernels"  # off the cob
LOOSE_BESIDE = frozenset({"white_rice", "whole_grain", "small_grain", "pearl_grain", "ground_meat"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Dish:
    """One food that is cooked: so many grams as bought, of so many pieces, from this state."""

    food: Food
    grams: float
    state: str  # of Have.state, "" for the usual one
    kind: str  # doneness class for the planner: the food's own, or "warm_through"
    cut_said: str  # as it lies there already, "" when whole
    piece_g: float | None  # one piece as bought
    name: str  # as the cook calls it, one of it
    assumed: bool  # nobody said how much
    unit: str = ""  # what a piece is called where the name alone would not do: "fillet", "ear", "clove"
    weighed: bool = False  # the cook said a weight, and hears it again
    swims_ml_g: float = 0.0  # liquid it wants around it beyond what it drinks; below 0: what it gives
    usual_g: float | None = None  # what such a piece weighs by the tables
    across_mm: float | None = None  # how thick a piece is, as the cook said
    peeling: Peeling = PLAIN
    made: Treatment = AS_USUAL  # what the dish of tonight does differently with it
    longer_s: float = 0.0  # past done, because a plan followed from outside had it out too soon

    @property
    def part(self) -> str:
        """What it is on the plate."""
        return self.food.part

    @property
    def pieces(self) -> int | None:
        """Whole pieces as bought, when it comes in pieces."""
        return max(1, round(self.grams / self.piece_g)) if self.piece_g else None

    @property
    def comes_in_pieces(self) -> bool:
        """Whether its name leaves open which piece of the bird it is ("chicken"): no whole one is meant."""
        joint = self.food.whole_shape == "joint" and not any(p.unit == "piece" for p in self.food.portions)
        return joint and self.food.animal == "poultry" and not self.cut_said

    @property
    def safety(self) -> str:
        """Which published minimum holds for it: mince and leftovers have their own, whatever they are of."""
        if self.state == "leftover":
            return "leftover"
        if self.kind == "ground_meat" and self.food.safety == "whole_meat":
            return "ground_meat"
        return self.food.safety

    @property
    def is_salty(self) -> bool:
        """Whether it brings salt enough: by its figures, or because it is smoked, cured or salted."""
        kept = self.food.part == "protein" and bool(KEPT & {*self.name.split()})
        return (self.food.salt_g or 0.0) >= amounts.SALTY_G or kept

    @property
    def is_raw_bean(self) -> bool:
        """Whether it is poisonous until it has boiled hard (lectin); tins are warmed through instead."""
        return self.kind == "bean"

    @property
    def plate_g(self) -> float:
        """What is on the plate of it [g], with the water that it takes up from the dry."""
        dry = self.food.start_state == "dry" and self.kind != "warm_through"
        return self.grams * self.food.edible_frac * (1.0 + (self.food.water_uptake_g_per_g or 0.0) * dry)

    @property
    def servings(self) -> float:
        """How many adults it serves as the only food of its part."""
        return self.grams / amounts.serving_g(self.food, cooked=self.kind == "warm_through")


@dataclass(frozen=True, slots=True, kw_only=True)
class Seasoning:
    """A food that goes in at its moment; `grams` only when said."""

    food: Food
    grams: float | None
    name: str  # as the cook calls it
    qty: float | None = None  # as it was said: 2 tbsp
    unit: str | None = None
    state: str = ""  # "dried": a herb, a lime
    used_ml: float = 0.0  # of what is spooned or poured: as said, or as kitchens take it
    head_ml: float = 0.0  # the same for each eater
    simmers: bool = False  # a table sauce, so much of it that the rest cooks in it: salsa by the jar

    @property
    def is_fruit(self) -> bool:
        """Whether it is whole fruit that its juice is pressed from."""
        return self.food.group in FRUIT and "juice" not in self.name

    @property
    def fruits(self) -> int:
        """How many of them make the juice that goes in, where the cook did not count them; 0 for no fruit."""
        each_g = next((one.grams for one in self.food.portions if one.unit == "piece" and not one.size), 0.0)
        counts = self.is_fruit and self.qty is None and self.grams and each_g
        return max(1, round((self.grams or 0.0) / each_g)) if counts else 0

    @property
    def is_cube(self) -> bool:
        """Whether it is stock as cubes, powder or paste: what is poured is water."""
        last = self.name.rsplit(" ", 1)[-1]
        return self.food.group == "stock" and (self.food.part == "salty" or last in DRY_STOCK)


@dataclass(frozen=True, slots=True, kw_only=True)
class Dinner:
    """What is cooked for whom, and what is not."""

    dishes: tuple[Dish, ...]
    seasonings: tuple[Seasoning, ...]
    sides: tuple[Seasoning, ...]  # eaten as they are, at the end
    eaters: float
    left_out: tuple[LeftOut, ...]
    assumed: tuple[str, ...]
    low_salt: bool = False  # none is added
    style: Style | None = None  # the kind of dish that was named: a soup, a curry
    technique: Technique = USUAL  # how that one is made
    ruled_out: tuple[Style, ...] = ()  # the kinds that are not wanted
    is_dry: bool = False  # not soupy, not saucy

    @property
    def least_ml(self) -> float:
        """Liquid that must be on the plates for it to be this style [ml]."""
        own = self.technique.least_ml_head
        if own is not None:
            return own * self.eaters
        return 0.0 if self.style is None else self.style.least_ml_head * self.eaters

    @property
    def most_ml(self) -> float:
        """Liquid that may be left on the plates [ml]."""
        most = self.technique.most_ml_head
        if most is None and self.style is not None:
            most = self.style.most_ml_head
        if self.is_dry:
            most = min(DRY_ML_HEAD, DRY_ML_HEAD if most is None else most)
        return math.inf if most is None else most * self.eaters

    @property
    def soup_for(self) -> float:
        """Eaters of a soup; 0 when it is none."""
        return self.eaters if self.style is not None and self.style.is_spooned else 0.0


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
        reason = barred(food, request) or (NONE_LEFT if 0.0 in (have.grams, have.qty) else "")
        if reason:
            left_out.append(LeftOut(food=food.name, said=have.said, why=reason))
            continue
        found.append((figures(have.food_id, have.state, store), have))
    found, apart = _apart(found, request)
    left_out.extend(apart)
    unwanted = ruled_out(request.wishes)
    hot = [(food, have) for food, have in found if is_young(request) and is_hot(food, store)]
    found = [x for x in found if x not in hot]
    cooked = [
        (food, amounts.as_named(food, _flattened(food, have, store)))
        for food, have in found
        if food.role is Role.COOK
    ]
    style = style_of(request.wishes, store)
    cooked = [(_loosened(food, have, cooked), _thinned(food, have, style)) for food, have in cooked]
    eaters = request.eaters if request.eaters_said else amounts.eaters_for(cooked, request.eaters)
    eaters = min(max(eaters, 1.0), MOST_EATERS)
    if request.eaters_said and request.eaters > MOST_EATERS:
        assumed.append(f"for {MOST_EATERS:.0f} of the {request.eaters:g}: cook it again for the others")
    dishes = [_dish(food, have, eaters, cooked, request) for food, have in cooked]
    several = [
        None
        if have.rough == "little" or amounts.is_said_as_one(food, have)
        else d.piece_g is None or have.several
        for d, (food, have) in zip(dishes, cooked, strict=True)
    ]
    dishes = filled(dishes, several, eaters)
    for dish, (food, have) in zip(dishes, cooked, strict=True):
        assumed.extend(_notes(dish, food, have, eaters, request))
    dishes = [
        replace(
            d,
            swims_ml_g=_swims(d, store),
            peeling=peeling(d.food, cut_said=d.cut_said, state=d.state, store=store),
        )
        for d in dishes
    ]
    seasons = [(f, h) for f, h in found if f.role is Role.SEASON and not h.aside]
    technique = _technique(dishes, [f for f, _ in seasons], request, store)
    style = style or style_named(technique.like, store)
    dishes = [_treated(d, technique, store) for d in dishes]
    seasonings = [_poured(_seasoning(f, h, eaters, store), h, technique, eaters) for f, h in seasons]
    for season, (_, have) in zip(seasonings, seasons, strict=True):
        if season.grams and season.food.part == "liquid" and amounts.grams_of(season.food, have) is None:
            much = volume(season.grams, request.kitchen.units)
            counted = words.of_these(float(season.fruits), season.name)
            assumed.append(counted if season.fruits else f"{much} {season.name}")
    return Dinner(
        dishes=tuple(dishes),
        seasonings=tuple(seasonings),
        sides=tuple(
            _seasoning(f, h, eaters, store)
            for f, h in [*found, *hot]
            if f.role is Role.FINISH or (f, h) in hot or (f.role is Role.SEASON and h.aside)
        ),
        eaters=eaters,
        left_out=tuple(left_out),
        assumed=tuple(assumed),
        low_salt="low salt" in request.diets,
        style=style,
        technique=technique,
        ruled_out=styles_ruled_out(request.wishes, store),
        is_dry=bool({"saucy", "soup", "stew"} & {*unwanted}),
    )


def _technique(
    dishes: Sequence[Dish], seasonings: Sequence[Food], request: Request, store: Store
) -> Technique:
    """How the dish is made that was named, or that is plain from its foods when none was."""
    if style_of(request.wishes, store) is not None:
        return technique_of(request.wishes, store)
    foods = [(_names(d.food, d.kind), d.part) for d in dishes]
    found = recognised([*foods, *((_names(f, ""), "") for f in seasonings)], store)
    unwanted = {style.id for style in styles_ruled_out(request.wishes, store)}
    return USUAL if found.like in unwanted else found


def _poured(seasoning: Seasoning, have: Have, technique: Technique, eaters: float) -> Seasoning:
    """A seasoning of the dish: wine by the glass, where nobody said how much."""
    head_ml = technique.wine_ml_head
    is_open = seasoning.food.group == "wine" and amounts.grams_of(seasoning.food, have) is None
    return replace(seasoning, grams=head_ml * eaters) if head_ml is not None and is_open else seasoning


def _names(food: Food, kind: str) -> frozenset[str]:
    again = f"cooked {food.group}" if kind == "warm_through" else ""  # last night's rice
    return frozenset({food.id, food.group, kind, again} - {""})


def _treated(dish: Dish, technique: Technique, store: Store) -> Dish:
    """A food as the dish has it; eggs that are boiled in it are boiled and shelled before all else."""
    made = treatment(technique, _names(dish.food, dish.kind), dish.kind)
    if made.eggs != BOILED:
        return replace(dish, made=made)
    boiled = figures(dish.food.id, "cooked", store)
    shell = Peeling(verb="boil", bath=SHELL)
    return replace(dish, food=boiled, state="cooked", kind=boiled.doneness, peeling=shell, made=made)


def _flattened(food: Food, have: Have, store: Store) -> Have:
    """A bird that is called spatchcocked or butterflied is no ball any more."""
    if have.cut not in (None, "whole") or food.whole_shape != "bird":
        return have
    said = {row["said"] for row in store.table("cuts_said") if row["cuts"] == FLAT}
    return replace(have, cut=next((word for word in key(have.said).split() if word in said), have.cut))


def _swims(dish: Dish, store: Store) -> float:
    """From `liquids.csv`: what it, or else its class, wants around it [ml/g]; mussels give theirs."""
    rows = {row["of"]: float(row["beyond_ml_g"]) for row in store.table("liquids")}
    return rows.get(dish.food.id, rows.get(dish.kind, 0.0))


def figures(food_id: str, state: str | None, store: Store) -> Food:
    """A food with the figures of its state (tinned, frozen, cooked), under its own id and name."""
    plain = store.food(food_id)
    stated = store.in_state(food_id, state)
    if stated.id == food_id:
        return plain
    return replace(
        stated, id=plain.id, name=plain.name, group=plain.group, part=plain.part,
        portions=_portions(stated, plain),
    )  # fmt: skip


def _portions(stated: Food, plain: Food) -> tuple[Portion, ...]:
    """Those of the state, and those of the plain food that it lacks."""
    known = {p.unit for p in stated.portions}
    return (*stated.portions, *(p for p in plain.portions if p.unit not in known))


def _apart(
    found: Sequence[tuple[Food, Have]], request: Request
) -> tuple[list[tuple[Food, Have]], list[LeftOut]]:
    """What may be cooked together under the diets, the protein before what goes with it."""
    kept: list[int] = []
    out = []
    order = sorted(range(len(found)), key=lambda i: (_rank(found[i][0]), i))
    for i in order:
        food, have = found[i]
        here = [*(found[j][0] for j in kept), food]
        why = next((w for diet in request.diets if (w := clash(here, diet))), None)
        if why is None:
            kept.append(i)
        else:
            out.append(LeftOut(food=food.name, said=have.said, why=why))
    return [found[i] for i in sorted(kept)], out


def _rank(food: Food) -> int:
    """How much a dinner would miss it, most first."""
    if food.role is not Role.COOK:
        return 3
    return 0 if food.part == "protein" and food.animal != "dairy" else 2 if food.animal == "dairy" else 1


def _loosened(food: Food, have: Have, cooked: Sequence[tuple[Food, Have]]) -> Food:
    """Corn beside grain or mince comes off the cob unless cobs were counted; else it stays on it."""
    if LOOSE_CUT not in food.cuts:
        return food
    counted = have.qty is not None or have.cut is not None or " " in have.said
    loose = not counted and any(f.doneness in LOOSE_BESIDE or h.cut == "ground" for f, h in cooked)
    cuts = (LOOSE_CUT,) if loose else tuple(cut for cut in food.cuts if cut != LOOSE_CUT)
    return replace(food, cuts=cuts)


def _is_any_cut(food: Food) -> bool:
    """Whether its name leaves open which part of the animal it is ("beef")."""
    return bool(food.animal) and food.name == food.animal


def _thinned(food: Food, have: Have, style: Style | None) -> Have:
    """Meat of which only the animal was named: sliced, or for a stir-fry, it was bought for that."""
    thin = have.cut == "sliced" or (have.cut is None and style is not None and style.is_thin)
    return replace(have, cut="strips") if thin and _is_any_cut(food) else have


def scaled(dish: Dish, factor: float, *, cut_up: bool = False) -> Dish:
    """Less of a dish, in whole pieces where it comes in pieces; what was weighed is weighed again.

    `cut_up`: it goes in as chunks, so that less of a joint is less chunks.
    """
    grams = dish.grams * factor
    if _is_one_joint(dish) and cut_up:
        return replace(dish, grams=max(math.floor(grams / WEIGHED_G), 1) * WEIGHED_G)
    if _is_one_joint(dish):
        return dish  # nobody saws a joint to fit the tray
    if dish.weighed and dish.part != "protein":
        grams = max(math.floor(grams / WEIGHED_G), 1) * WEIGHED_G
    elif dish.piece_g and dish.piece_g > amounts.SMALL_G:
        step = dish.piece_g if dish.part == "protein" or dish.piece_g <= 350 else dish.piece_g / 4
        grams = max(1, math.floor(grams / step + 1e-6)) * step
    return replace(dish, grams=min(grams, dish.grams))


def _is_one_joint(dish: Dish) -> bool:
    """Whether it is a single joint or bird."""
    return dish.food.whole_shape in ONE_PIECE and not dish.cut_said and dish.pieces == 1


def _dish(
    food: Food, have: Have, eaters: float, cooked: Sequence[tuple[Food, Have]], request: Request
) -> Dish:
    state, kind, _ = _state(food, have, have.said or food.name)
    usual, unit = amounts.piece_of(food, have)
    said = amounts.grams_of(food, have)
    grams = said or 0.0
    if said is None:
        others = [f for f, _ in cooked if f.part == food.part and (f is food or not amounts.is_flavour(f))]
        main = any(f.part == "protein" and not amounts.is_flavour(f) for f, _ in cooked)
        known = replace(have, state=state or None)
        grams = amounts.unsaid(
            food, known, eaters, said=request.eaters_said, sharing=max(len(others), 1), main=main
        )
    else:
        soup = "soup" in request.wishes
        grams = amounts.enough(food, have, said, eaters, soup=soup, said=request.eaters_said)
    name = have.said or food.name
    return Dish(
        food=food,
        grams=min(max(grams, MIN_G), MAX_G),
        state=state,
        kind=kind,
        cut_said=have.cut or "",
        piece_g=amounts.one_g(food, have, usual),
        usual_g=usual,
        across_mm=have.across_mm,
        name=name,
        assumed=said is None,
        unit="" if unit and unit in name.split() else unit,
        weighed=_is_weighed(food, have),
    )


def _notes(dish: Dish, food: Food, have: Have, eaters: float, request: Request) -> list[str]:
    """What had to be assumed of it, and what is enough of it."""
    notes = _state(food, have, dish.name)[2]
    units = request.kitchen.units
    said = amounts.grams_of(food, have)
    if said is None:
        notes.append(words.amount(dish, units))
    elif dish.grams < min(said, MAX_G):
        rest = weight(said - dish.grams, units)
        notes.append(f"{words.amount(dish, units)}: enough for {eaters:g}; keep the other {rest}")
    return notes


def _is_weighed(food: Food, have: Have) -> bool:
    """Whether a weight says more than a count: it was said, or it is a block, a coil, out of a tin."""
    if have.state == "canned" or have.unit in amounts.TINS:
        return True
    if have.grams is None and have.qty is None:
        return amounts.is_flavour(food) or food.animal == "dairy"
    return have.grams is not None and not (have.qty is not None and have.unit in amounts.PIECE_UNITS)


def _state(food: Food, have: Have, name: str) -> tuple[str, str, list[str]]:
    """The state it is in, the class by which it is done, and what had to be assumed for that."""
    state, kind = have.state or "", food.doneness
    notes: list[str] = []
    if have.cut == "ground" and food.animal and food.safety == "whole_meat":
        kind = "ground_meat"
    if have.cut in THIN and food.part == "protein" and kind.startswith("tough_") and _is_any_cut(food):
        kind = "tender_meat"  # sold in strips it is for the pan
    if state in amounts.COOKED or food.start_state == "canned":
        kind = "warm_through"
    elif food.group == "pulse" and have.unit in amounts.TINS and state in ("", "raw"):
        state, kind = "canned", "warm_through"
    elif food.doneness in PULSES and food.start_state == "dry" and state in ("", "raw"):
        said = have.state == "raw" or have.grams is not None
        if said or have.unit == "cup":
            state = "dried"
        else:
            state, kind = "canned", "warm_through"
            notes.append(f"tinned {words.plural(name)}")
    if kind in PULSES and state == "dried":
        notes.append(f"dry {words.plural(name)}, not soaked")
    return state, kind, notes


def _seasoning(food: Food, have: Have, eaters: float, store: Store) -> Seasoning:
    """A seasoning; dried it is another thing than fresh, with its own dose and moment."""
    dried = have.state == "dried"
    name = have.said or food.name
    found = Seasoning(
        food=store.in_state(have.food_id, have.state) if dried else food,
        grams=amounts.poured(food, have, eaters),
        name=f"dried {name}" if dried and "dried" not in name.split() else name,
        qty=have.qty, unit=have.unit, state="dried" if dried else "",
    )  # fmt: skip
    used_ml = found.grams or usual_ml(found, eaters, store)
    simmers = used_ml / eaters >= SIMMERS_ML and pinch(found, store).how == "simmer"
    return replace(found, used_ml=used_ml, head_ml=used_ml / eaters, simmers=simmers)
