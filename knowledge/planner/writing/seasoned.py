"""Where each seasoning goes in, so that none that the cook named is forgotten.

The tables give each seasoning its moment and its way (`pinches`); the method decides what
that moment is: there is no fat to wake spices in when nothing is softened, a tray has no
liquid to pour into, and what is thick or creamy would catch under pressure.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from knowledge.foods.model import When
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.draft import BROWNED, SEARED, SOFTENED, Draft
from knowledge.planner.gathering.dinner import Seasoning
from knowledge.planner.gathering.usual import Pinch, pinch
from knowledge.planner.search import room
from knowledge.planner.techniques import MASHED
from knowledge.planner.writing.pinches import measured, of_it
from knowledge.units import spoons, volume

SAUCES = frozenset({"liquid", "sauce", "dairy", "fat", "thickener"})
MELTING = frozenset({"cheese"})  # at the table
SPOONED_OVER = frozenset({"liquid", "sauce", "thickener", "salty", "sweet", "acid"})
SCATTERED = frozenset({"herb", "nut", "garnish"})
SALTY_G = 2.0
SIMMERED_ML = 150.0  # of milk for each eater: what all simmers in, no finish; judgement
SHEET_ML, SPOONED_ML = 200.0, 45.0  # more runs over a rim; so much for each eater is spooned over; judgement
WATER_ML_TBSP = 70.0  # to a spoon of gravy granules; usual label


@dataclass(frozen=True, slots=True, kw_only=True)
class Seasoned:
    """The seasonings with their amounts, by the moment they go in."""

    fat: list[str] = field(default_factory=list)  # what the cooking begins in
    rub: list[str] = field(default_factory=list)  # on the raw food
    inside: list[str] = field(default_factory=list)  # in the bird
    bloomed: list[str] = field(default_factory=list)  # whole spices, in the fat before all else
    warmed: list[str] = field(default_factory=list)  # in the fat for the last minute of softening
    fried: list[str] = field(default_factory=list)  # pastes and spices, in the meat's fat before the liquid
    boiled_down: list[str] = field(default_factory=list)  # wine, before the stock
    pour: list[str] = field(default_factory=list)  # with the liquid
    late: list[tuple[Seasoning, str, str]] = field(default_factory=list)  # what, said, how: the last minutes
    smooth: list[str] = field(default_factory=list)  # let down in a ladle of the liquid, off the heat
    stir: list[str] = field(default_factory=list)  # off the heat
    scatter: list[str] = field(default_factory=list)
    squeeze: list[str] = field(default_factory=list)
    drizzle: list[str] = field(default_factory=list)
    table: list[str] = field(default_factory=list)
    out: list[str] = field(default_factory=list)  # names of what is fished out


def seasoned(draft: Draft, units: str, store: Store) -> Seasoned:
    """Every seasoning of the dinner at exactly one moment of this draft."""
    at = Seasoned()
    for s in draft.dinner.seasonings:
        if draft.liquid is not None and s.food.group == "stock" and s.food.part in ("liquid", "salty"):
            continue  # it is the liquid
        p = pinch(s, store)
        moment = _moment(s, p, draft)
        named = words.in_spoons(s.name) if moment == "table" else s.name
        said = named if moment in ("fat", "table", "inside") else measured(s, draft, units, store)
        if moment == "table" and p.how == "make up":
            said = made_up(s, draft, units, store)
        if is_too_wet(s, draft):
            said = of_it(spoons(SPOONED_ML * draft.dinner.eaters, units), s.name)
        if moment == "squeeze" and (rest := _wedges(s, p, draft)):
            said, wedges = rest
            at.table.append(wedges)
        if moment == "late":
            at.late.append((s, said, p.how))
        else:
            getattr(at, moment).append(said)
        if p.taken_out and moment not in ("table", "scatter"):
            at.out.append(
                words.plural(s.name) if said[:1].isdigit() and not said.startswith("1 ") else s.name
            )
    return at


def is_too_wet(s: Seasoning, draft: Draft) -> bool:
    """Whether it is a sauce by the tin on a sheet, where it would run over the rim or burn on."""
    return draft.method.kind == "dry" and room.is_poured(s) and s.used_ml > SHEET_ML


def wants_a_pot(draft: Draft) -> Iterator[str]:
    """What of such a sauce is said beside the plan."""
    for s in draft.dinner.seasonings:
        if is_too_wet(s, draft):
            over = "on a sheet only some of it is spooned over for the last minutes"
            yield f"the {s.name} wants a pot: {over}; keep the rest"
        elif draft.method.kind == "dry" and room.is_creamy(s):
            yield f"the {s.name} makes a sauce only in a pot or a pan: from a sheet it is served beside"


def made_up(s: Seasoning, draft: Draft, units: str, store: Store) -> str:
    """Granules as what they become: "gravy (4 tbsp gravy granules in 280 ml boiling water)"."""
    spoons_ml = pinch(s, store).amount or 1.0
    ml = spoons_ml * draft.dinner.eaters * WATER_ML_TBSP
    return f"{s.name.split()[0]} ({measured(s, draft, units, store)} in {volume(ml, units)} boiling water)"


def _wedges(s: Seasoning, p: Pinch, draft: Draft) -> tuple[str, str] | None:
    """Of more lemons than the dish takes: what is squeezed, and the rest in wedges; None for enough."""
    enough = math.ceil((p.amount or 0.0) * draft.dinner.eaters - 0.05)
    if s.qty is None or s.unit not in (None, "piece") or not enough or s.qty < enough + 0.75:
        return None
    over = words.of_these(float(enough), s.name)
    return over, f"the other {words.many(s.name, s.qty - enough)} in wedges"


def _moment(s: Seasoning, p: Pinch, draft: Draft) -> str:
    kind, part = draft.method.kind, s.food.part
    dry, wet = kind == "dry", kind in ("wet", "sealed")
    softens = any(q.way.lead == SOFTENED for q in draft.placed)
    fried = (
        softens or draft.stages.toast_s > 0.0 or any(q.way.lead in (BROWNED, SEARED) for q in draft.placed)
    )
    if draft.dinner.technique.ends == MASHED and s.food.group == "dairy" and part != "fat":
        return "stir"
    if kind == "wet" and s.food.group == "dairy" and part == "dairy" and s.head_ml >= SIMMERED_ML:
        return "pour"  # so much, cold, would still the pot at the end
    if s.simmers and kind != "dry":
        return "pour" if wet else "late"
    match p.how:
        case "squeeze":
            return "inside" if dry and _has_bird(draft) else "squeeze"
        case "let down":
            return "smooth" if wet else "late"
        case "slake":
            return "rub" if dry else "late"
        case "drizzle":
            return "drizzle"
        case "nut butter":
            return "table" if dry else "late"
        case "creamy" if kind == "sealed":
            return "late"
        case "glaze" if dry:
            return "late"
        case "fry" | "glaze" if kind == "pan":
            return "late"  # sugar and pastes are black after minutes on high heat
        case "off the heat":
            return "table" if dry else "stir"
        case "dust" if wet and not softens:
            return "late"  # stirred into cold water, like any starch
    if s.food.group == "wine" and part == "liquid" and ((wet and fried) or (kind == "pan" and softens)):
        return "boiled_down"
    match p.when or s.food.when or When.END:
        case When.START if part == "fat":
            return "stir" if draft.method.steams else "fat"  # in the water it would only float
        case When.START if part != "herb" and any(q.way.dish.part == "protein" for q in draft.placed):
            return "rub"
        case When.START | When.AROMATICS:
            paste = p.how == "fry" and kind == "wet" and not draft.method.steams
            if wet and (fried or paste) and not softens and part != "herb":
                return "fried"
            if kind == "pan" and part == "spice" and p.how != "bloom" and _is_seared(draft):
                return "rub"  # on the meat, which leaves the pan with it
            return _early(p, part, softens=softens, wet=wet)
        case When.LIQUID:
            if is_too_wet(s, draft):
                return "late"
            if wet or (dry and part == "liquid"):
                return "pour"
            return "late" if part in SPOONED_OVER else "rub"
        case When.END:
            if part in SAUCES and s.food.group not in MELTING:
                return "table" if dry else "late"
            return "scatter" if part in SCATTERED or s.food.group in MELTING or dry else "stir"
        case _:
            return "table"


def _early(p: Pinch, part: str, *, softens: bool, wet: bool) -> str:
    """Whole spices first, the rest of what burns for the last minute; where no fat waits, on the food."""
    if softens and p.how == "bloom":
        return "bloomed"
    if softens and (wet or part != "herb"):
        return "warmed"
    return "pour" if wet else "rub"


def _is_seared(draft: Draft) -> bool:
    """Whether raw meat in pieces is fried before the rest."""
    return any(
        q.way.lead == SEARED and q.way.dish.part == "protein" and q.way.core_degC for q in draft.placed
    )


def _has_bird(draft: Draft) -> bool:
    return any(p.way.piece.shape == "bird" for p in draft.placed)


def salty(names: Sequence[tuple[str, float | None]]) -> list[str]:
    """Those that bring salt enough for the dish: `SALTY_G` in 100 g."""
    return [name for name, salt_g in names if (salt_g or 0.0) >= SALTY_G]
