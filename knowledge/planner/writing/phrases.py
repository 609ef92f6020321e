"""A dish in the words of a step: its name, its cut, how it is made ready, how hot it should be."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass

from knowledge.foods.model import VesselSize
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.draft import BROWNED, SOAKED, SOFTENED, Draft, Placed
from knowledge.planner.gathering.peeling import SOAK
from knowledge.planner.search.room import is_saucy
from knowledge.planner.search.stages import bath_of
from knowledge.planner.techniques import COATING, CRACKED, RIBBONS
from knowledge.planner.writing.handling import AS_BOUGHT, LEAVES_LAST, Handling, handling
from knowledge.planner.writing.pinches import salt
from knowledge.planner.writing.seasoned import SALTY_G, Seasoned
from knowledge.planner.writing.young import is_hot
from knowledge.units import size, temperature, volume

PROBED_FROM_MM = 20.0  # a thermometer finds no hold in what is thinner
SHOWN_BY_LOOKS = frozenset({"shellfish", "egg"})  # animals
MELTING_FAT = frozenset({"poultry", "pork", "game"})
FAT_MINCE_G = 15.0  # in 100 g
FATTY_G = 20.0  # in 100 g
CUBE_ML = 500.0  # what a usual cube of 10 g is made for
WATER_OR_STOCK = "water or stock"
MEATS = frozenset({"poultry", "beef", "pork", "lamb", "game", "veal", "goat"})
SHAPED, MINCED = frozenset({"patty", "meatball"}), frozenset({"mince", "meat", *MEATS, "chicken", "turkey"})
TEAR = "tear"
IN_BITS = frozenset(
    {"chopped", "crushed", "diced", "cherry", "pureed", "sieved", "passata"}
)  # of tinned tomatoes
AS_IT_COMES = frozenset({"whole", "whole leaf", "crumbled"})


@dataclass(frozen=True, slots=True, kw_only=True)
class Telling:
    """What the words of the steps are made from."""

    draft: Draft
    units: str
    store: Store
    seasoned: Seasoned

    def hand(self, placed: Placed) -> Handling:
        """How one food is handled."""
        return handling(placed.way.dish, store=self.store)


def names(placed: Sequence[Placed]) -> str:
    """The foods of some placed dishes, listed."""
    return words.listed([words.label(p.way.dish) for p in placed])


def cut_name(placed: Placed, units: str) -> str:
    """The cut in words, its size in the cook's units."""
    name = placed.way.cut.name
    return name if units != "us" else re.sub(r"(\d+) mm", lambda mm: size(float(mm[1]), "us"), name)


def sheet_name(size: VesselSize, units: str) -> str:
    """A sheet by its trade name and its sides: "half sheet (46 x 33 cm)"."""
    if not size.sides_cm or size.id.endswith("tray"):
        return size.id
    if units == "us":
        return f"{size.id} ({' x '.join(f'{side / 2.54:.0f}' for side in size.sides_cm)} inch)"
    return f"{size.id} ({' x '.join(f'{side:g}' for side in size.sides_cm)} cm)"


def is_beaten(placed: Placed, draft: Draft) -> bool:
    """Whether it is eggs for an open pan: beaten, and set on gentle heat."""
    dish = placed.way.dish
    return draft.method.kind == "pan" and dish.kind == "egg" and dish.made.eggs != CRACKED


def pan_heat(draft: Draft) -> str:
    """How hot the open pan begins: eggs alone turn to rubber in a hot one."""
    return "medium" if all(is_beaten(p, draft) for p in draft.placed) else "high"


def item_cut(placed: Placed, draft: Draft) -> str:
    """The cut as the list of foods names it."""
    if is_beaten(placed, draft) or placed.way.dish.made.eggs in (RIBBONS, COATING):
        return "beaten"
    if is_saucy(placed.way.dish):
        return "with the juice"
    if torn := apart(placed):
        return "torn" if torn == TEAR else "sliced"
    return "in pieces" if placed.way.dish.comes_in_pieces else cut_name(placed, draft.kitchen.units)


def merged(parts: Sequence[str]) -> str:
    """Short sentences about preparing, those with the same verb said in one."""
    by_verb: dict[str, list[str]] = {}
    for part in parts:
        verb, _, rest = part.partition("|")
        by_verb.setdefault(verb, []).append(rest)
    said = [f"{verb} {words.listed(rest)}" if verb else "; ".join(rest) for verb, rest in by_verb.items()]
    return capital("; ".join(said))


def ready(placed: Placed, tell: Telling) -> str:
    """How a dish is made ready, as "verb|what"."""
    way = placed.way
    dish = way.dish
    said = words.amount(dish, tell.units)
    if way.lead == SOAKED:
        how = ", 4 min, and drain" if dish.kind == "noodle" else " to a finger above it, 5 min under a plate"
        return f"cover|{said} with boiling water{how}"
    if is_saucy(dish):
        whole = not dish.cut_said and way.dish.name.split()[0] not in IN_BITS
        return f"open and crush|{said}" if whole else f"open|{said}"
    if dish.state == "soaked":
        return f"drain (throw the soaking water away) and rinse|{said}"
    peel = dish.peeling.verb
    soaks = bath_of(way, tell.draft.method) == SOAK
    verb = peel or (SOAK if soaks else tell.hand(placed).ready) or AS_BOUGHT
    if verb.startswith(AS_BOUGHT) and (dish.state == "frozen" or verb != AS_BOUGHT):
        return (
            f"{AS_BOUGHT}|{said if 'frozen' in said else said.replace(dish.name, f'frozen {dish.name}', 1)}"
        )
    bath = ", white and green apart" if has_greens(placed) else _bath(placed, tell)
    if tell.hand(placed).pan == LEAVES_LAST and not way.cut.parts:
        bath = f", stems and leaves apart{bath}"
    if way.cut.id == "whole" and dish.part == "aromatic" and is_hot(dish.food, tell.store):
        return f"wash and leave whole|{said}"
    if torn := apart(placed):
        return f"{torn}|{said}{' into bite-size pieces' if torn == TEAR else ''}"
    if way.cut.id in AS_IT_COMES and not (peel and way.cut.id == "crumbled"):
        return f"{verb}|{said}{bath}"
    if way.cut.id in SHAPED and dish.name.rsplit(" ", 1)[-1] in MINCED:
        how, into = CUT_VERBS[way.cut.name]
        return f"{how}|{said}{into}"
    bought = dish.cut_said or dish.state in ("canned", "frozen")
    loose = way.piece.shape == "grain" and dish.part != "aromatic" and way.cut.id != "kernels"
    if bought or loose or dish.kind == "egg":
        return f"{verb}|{said}{bath}"
    how, into = CUT_VERBS.get(way.cut.name, ("cut", f" into {cut_name(placed, tell.units)}"))
    first = f"{peel.replace(' and ', ', ')} and " if peel else ""
    return f"{first}{how}|{said}{into}{bath}"


def apart(placed: Placed) -> str:
    """How cold cooked meat is taken apart, that nobody eats in one piece: a verb, or ""."""
    way, dish = placed.way, placed.way.dish
    whole = dish.state in ("cooked", "leftover") and not dish.cut_said and way.cut.id == "whole"
    flesh = dish.part == "protein" and dish.food.animal in MEATS and dish.food.group != "sausage"
    if not (whole and flesh) or way.piece.shape == "grain":
        return ""
    return TEAR if dish.food.animal == "poultry" else "slice"


CUT_VERBS = {  # by the name of the cut: the verb, and what follows the food
    "halved": ("halve", ""),
    "quartered": ("quarter", ""),
    "cut in eighths": ("cut", " in eighths"),
    "finely chopped": ("finely chop", ""),
    "grated": ("grate", ""),
    "crumbled": ("crumble", ""),
    "kernels off the cob": ("cut the kernels off", ""),
    "35 mm balls": ("roll", " into 35 mm balls"),
    "20 mm patties": ("shape", " into 20 mm patties"),
}


def _bath(placed: Placed, tell: Telling) -> str:
    """What it lies in before it is cooked with the rest."""
    match bath_of(placed.way, tell.draft.method):
        case "boil":
            water = "boil 10 min in plenty of water, lid off, and pour that water away"
            return f", then {water}"
        case "shell":
            return " 10 min; cool in cold water and shell"
        case "soak":
            return " in hot water, 10 min; keep the water for the pot"
        case _:
            return ""


def capital(text: str) -> str:
    """The text with a capital first letter."""
    return text[:1].upper() + text[1:]


def core_text(placed: Sequence[Placed], units: str) -> str:
    """ " (74 °C inside)", or nothing where no thermometer is needed."""
    cores = [p.way.core_degC for p in placed if p.way.core_degC and is_probed(p)]
    return f" ({temperature(max(cores), units)} inside)" if cores else ""


def is_probed(placed: Placed) -> bool:
    """Whether a thermometer can tell: a piece thick enough, and neither egg nor shell nor crumbs."""
    way = placed.way
    thick = way.piece.shape != "grain" and way.piece.size_mm >= PROBED_FROM_MM
    if not way.dish.food.animal:
        return False
    return way.core_degC is not None and thick and way.dish.food.animal not in SHOWN_BY_LOOKS


def sign_of(placed: Placed, tell: Telling) -> str:
    """How it looks when done."""
    if is_beaten(placed, tell.draft) or placed.way.dish.made.eggs in (RIBBONS, COATING):
        return "set firm all through, no liquid egg left"
    return tell.hand(placed).sign or "hot all through"


def targets(placed: Sequence[Placed], tell: Telling) -> str:
    """ "74 °C in the thickest part of the chicken thighs; shrimp: pink and curled"."""
    by_temp: dict[float, list[str]] = {}
    by_sign: dict[str, list[str]] = {}
    for p in placed:
        if is_probed(p):
            by_temp.setdefault(p.way.core_degC or 0.0, []).append(words.label(p.way.dish))
        else:
            by_sign.setdefault(sign_of(p, tell), []).append(words.label(p.way.dish))
    temps = [
        f"{temperature(t, tell.units)} in the thickest part of the {words.listed(n)}"
        for t, n in sorted(by_temp.items(), reverse=True)
    ]
    return "; ".join([*temps, *(f"{words.listed(n)}: {sign}" for sign, n in by_sign.items())])


def in_shell(placed: Placed, tell: Telling) -> bool:
    """Whether it opens in the steam and brings its own salt water: mussels, clams."""
    return tell.hand(placed).sign.startswith("shells open")


def fat(tell: Telling) -> str:
    """What the cooking begins in."""
    return words.listed(tell.seasoned.fat) or "oil"


def softening(soft: Sequence[Placed], state: str, tell: Telling) -> str:
    """Aromatics in the fat: whole spices before them, ground ones and pastes for the last minute."""
    said = tell.seasoned
    browned = [p for p in tell.draft.placed if p.way.lead == BROWNED]
    start = "Pour off all but 1 tbsp of the fat. " if any(is_fatty(p) for p in browned) else ""
    first = f"{words.listed(said.bloomed)} into the fat until fragrant, 30 s; then " if said.bloomed else ""
    whites = [f"the white of the {words.label(p.way.dish)}" for p in soft if has_greens(p)]
    down = [p for p in soft if p.way.dish.made.is_fried_down]
    plain = [words.label(p.way.dish) for p in soft if not has_greens(p) and p not in down]
    what = words.listed([*plain, *whites, *([] if plain or whites else [names(down)])])
    then = down if plain or whites else []
    thick = f" {capital(names(then))} in; fry until thick and the fat shows." if then else ""
    kept = [words.label(p.way.dish) for p in soft if is_kept_back(p)]
    aside = f" Lift a third of the {words.listed(kept)} out for the top." if kept else ""
    there = ", medium heat" if first else " into the fat, medium heat"
    warmed = f", {words.listed(said.warmed)} in for the last minute" if said.warmed else ""
    wine = said.boiled_down if tell.draft.method.kind == "pan" else []
    gone = f" Then {words.listed(wine)}: let it bubble until nearly gone." if wine else ""
    return f"{start}{capital(f'{first}{what}{there}; stir until {state}{warmed}.')}{aside}{thick}{gone}"


def is_kept_back(placed: Placed) -> bool:
    """Whether a part of it, fried brown, is the topping of the dish: onions on lentils and rice."""
    return placed.way.lead == SOFTENED and placed.way.dish.made.is_kept_back


def has_greens(placed: Placed) -> bool:
    """Whether its green ends are kept for the table."""
    return placed.way.lead == SOFTENED and placed.way.dish.food.id == "scallion"


def is_fatty(placed: Placed) -> bool:
    """Whether it gives off more fat than anyone wants to eat: duck, belly, bacon, fat mince."""
    dish = placed.way.dish
    fat_g = (dish.food.composition.fat_g if dish.food.composition else 0.0) or 0.0
    if dish.kind == "ground_meat" and dish.food.animal:
        return fat_g >= FAT_MINCE_G
    return dish.part == "protein" and dish.food.animal in MELTING_FAT and fat_g >= FATTY_G


def pour(tell: Telling, *, oil: bool = False) -> str:
    """The liquid as said, with what else is poured in at that moment; "" for none.

    `oil`: nothing was fried before, so the fat goes in here.
    """
    said, liquid = tell.seasoned, tell.draft.liquid
    extra = [*said.pour, *(said.fat if oil else [])]
    first = f"{words.listed(said.boiled_down)}, boil it down by half, then " if said.boiled_down else ""
    if liquid is None:
        return words.listed([*said.boiled_down, *extra])
    ml = volume(liquid.ml, tell.units)
    what = f"{ml} {liquid.what}"
    if cube := next((s for s in tell.draft.dinner.seasonings if s.is_cube), None):
        what = f"{ml} water with {words.of_these(max(1, round(liquid.ml / CUBE_ML)), cube.name)}"
    elif liquid.what == WATER_OR_STOCK and (grams := _unsalted_g(tell)):
        what = f"{ml} stock, or water with {salt(grams, tell.units)}"
    joined = ", and " if " with " in what else " with "
    return f"{first}{what}{joined}{words.listed(extra)}" if extra else f"{first}{what}"


def pour_in(tell: Telling, *, oil: bool = False) -> str:
    """The pouring as a clause with its verb; pastes are fried in the fat of the meat before it."""
    what = pour(tell, oil=oil)
    fried = words.listed(tell.seasoned.fried)
    if not fried:
        return f"Pour in {what}" if what else ""
    return f"Stir {fried} into the fat for a minute{f', then pour in {what}' if what else ''}"


def _unsalted_g(tell: Telling) -> float:
    """What is not salted yet and has nothing salty beside it [g]; 0 where salt is left to the table."""
    draft = tell.draft
    salts = [p.way.dish.food for p in draft.placed] + [s.food for s in draft.dinner.seasonings]
    if draft.dinner.low_salt or any((food.salt_g or 0.0) >= SALTY_G for food in salts):
        return 0.0
    return sum(p.way.dish.grams for p in draft.placed if p.way.dish.part != "protein")
