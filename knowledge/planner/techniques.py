"""How a dish that is named, or plain from its foods, is made: `dishes.csv`.

A style (`styles`) says which vessel, cuts and liquid a kind of dish has. A technique says what its
cook does differently with single foods: how long the onions fry, what softens with them, how the eggs go in,
what is fried first and kept out, how long the sauce simmers at least, whether the pan is dry in the end.
A row that bears the name of a style holds for all dishes of it that have no row of their own.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache

from knowledge.foods.store import Store

BOILED, STIRRED, LEFT, CRACKED = "boiled", "stirred", "left", "cracked"  # column `eggs`
RIBBONS, COATING = "ribbons", "coating"
DRY, MASHED = "dry", "mashed"  # column `ends`
STANDS_ALONE = frozenset({"protein", "starch"})  # parts: with one more of them it is another dish
Named = frozenset[str]  # a food in all its names: id, group, doneness class


@dataclass(frozen=True, slots=True, kw_only=True)
class Technique:
    """One row of the table."""

    id: str = ""
    says: str = ""  # "a chilli"
    like: str = ""  # the style of it
    foods: tuple[Named, ...] = ()  # by these it is known unnamed: of each set one is there
    beside: Named = frozenset()  # and with these it is still that dish
    eggs: str = ""
    soften_s: float = 0.0  # onions and the like in the fat; 0 for the usual time
    base: Named = frozenset()  # what softens with the onions
    simmer_s: float = 0.0  # at least so long in the liquid
    simmering: Named = frozenset()  # what simmers so long
    kept_back: Named = frozenset()  # of what is fried with the onions, a third lies on top
    fried_first: Named = frozenset()  # fried, kept out, laid on at the end
    sliced_raw: Named = frozenset()  # meat in thin slices, done by the hot liquid alone
    is_soft: bool = False  # vegetables without a bite
    fried_down: Named = frozenset()  # tomatoes that are fried until thick before any liquid
    ends: str = ""  # DRY: tossed in the spices, the lid off at the end until the pan is dry; MASHED
    wine_ml_head: float | None = None  # of an open bottle
    least_ml_head: float | None = None  # on the plates; None where the style says it
    most_ml_head: float | None = None


USUAL = Technique()


@dataclass(frozen=True, slots=True, kw_only=True)
class Treatment:
    """What a technique means for one food."""

    soften_s: float = 0.0
    simmer_s: float = 0.0
    is_base: bool = False
    is_kept_back: bool = False
    is_fried_first: bool = False
    is_soft: bool = False
    is_fried_down: bool = False
    is_sliced_raw: bool = False
    is_tossed: bool = False
    eggs: str = ""


AS_USUAL = Treatment()


def technique_of(wishes: Sequence[str], store: Store) -> Technique:
    """That of the dish among the wishes; of its style where the dish has no row."""
    styles = {row["style"] for row in store.table("styles")}
    known = _techniques(store)
    found = [known[wish] for wish in wishes if wish in known]
    return next((t for t in found if t.id not in styles), found[0] if found else USUAL)


def recognised(foods: Sequence[tuple[Named, str]], store: Store) -> Technique:
    """That of the dish which cooks see in these foods unnamed; each with its part of the plate.

    One more meat or grain makes another dinner of it.
    """
    for technique in _techniques(store).values():
        wanted = technique.foods
        if not wanted or not all(any(names & one for names, _ in foods) for one in wanted):
            continue
        its = technique.beside.union(*wanted)
        strange = [names for names, part in foods if part in STANDS_ALONE and not names & its]
        if not strange:
            return technique
    return USUAL


def treatment(technique: Technique, food: Named, kind: str) -> Treatment:
    """What it means for a food of these names and this doneness class."""
    simmers = bool(food & technique.simmering)
    return Treatment(
        soften_s=technique.soften_s,
        simmer_s=technique.simmer_s if simmers else 0.0,
        is_base=bool(food & technique.base),
        is_kept_back=bool(food & technique.kept_back),
        is_fried_first=bool(food & technique.fried_first),
        is_soft=technique.is_soft,
        is_fried_down=bool(food & technique.fried_down),
        is_sliced_raw=bool(food & technique.sliced_raw),
        is_tossed=technique.ends == DRY,
        eggs=technique.eggs if kind == "egg" else "",
    )


@lru_cache(maxsize=4)
def _techniques(store: Store) -> Mapping[str, Technique]:
    return {row["dish"]: _technique(row) for row in store.table("dishes")}


def _technique(row: Mapping[str, str]) -> Technique:
    return Technique(
        id=row["dish"],
        says=row["says"],
        like=row["like"],
        foods=tuple(_named(one, "|") for one in row["foods"].split(";") if one),
        beside=_named(row["beside"]),
        eggs=row["eggs"],
        soften_s=60.0 * float(row["soften_min"] or 0.0),
        base=_named(row["base"]),
        simmer_s=60.0 * float(row["simmer_min"] or 0.0),
        simmering=_named(row["simmering"]),
        kept_back=_named(row["kept_back"]),
        fried_first=_named(row["fried_first"]),
        sliced_raw=_named(row["sliced_raw"]),
        is_soft=row["soft"] == "yes",
        fried_down=_named(row["fried_down"]),
        ends=row["ends"],
        wine_ml_head=_ml(row["wine_ml_head"]),
        least_ml_head=_ml(row["least_ml_head"]),
        most_ml_head=_ml(row["most_ml_head"]),
    )


@lru_cache(maxsize=4)
def doses(store: Store) -> Mapping[tuple[str, str], tuple[float, str, str]]:
    """From `doses.csv`: by dish and seasoning how much [unit], and per what: "eater", "kg" of protein."""
    return {
        (row["dish"], row["food_id"]): (float(row["amount"]), row["unit"], row["per"])
        for row in store.table("doses")
    }


def _named(cell: str, between: str = ";") -> Named:
    return frozenset(one for one in cell.split(between) if one)


def _ml(cell: str) -> float | None:
    return float(cell) if cell else None
