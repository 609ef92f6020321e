"""Oil, salt and rubs on the raw food, once it is cut: vegetables tossed, meat rubbed, meat last.

Vegetables never go into a bowl that raw meat lay in: each toss has oil and salt of its own.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.planner import words
from knowledge.planner.draft import Placed
from knowledge.planner.writing.handling import handling
from knowledge.planner.writing.phrases import Telling, in_shell, names
from knowledge.planner.writing.pinches import salt
from knowledge.units import KITCHEN, spoons

OIL_TBSP_KG = 2.0  # for what roasts: to make all shine; common practice
BRINY_G = 8.0  # soy sauce, fish sauce, miso: in 100 g
NOT_FLESH = ("", "dairy", "egg")  # animals
Group = tuple[float, Sequence[Placed]]  # when it goes in, what is cut in one go


def seasonings_by_group(groups: Sequence[Group], tell: Telling) -> dict[int, str]:
    """What is said after each group of knife work, by its number."""
    found = _on_a_tray(groups, tell) if tell.draft.method.kind == "dry" else _for_the_pan(groups, tell)
    return {number: f". {text}" for number, text in found.items() if text}


def _on_a_tray(groups: Sequence[Group], tell: Telling) -> dict[int, str]:
    """All that goes in together is seasoned after the last of it is cut."""
    last: dict[float, int] = {}
    bare: dict[float, list[Placed]] = {}
    for number, (due, members) in enumerate(groups):
        if mine := [p for p in members if is_bare(p, tell)]:
            last[due] = number
            bare.setdefault(due, []).extend(mine)
    rub = [*tell.seasoned.rub]
    if not bare:
        extra = words.listed([*_fat(tell), *rub])
        return {0: f"Season with {extra}"} if extra else {}
    rubbed = next((due for due in last if any(_is_flesh(p) for p in bare[due])), min(last))
    found = {}
    for due, number in last.items():
        more = [*(["pepper"] if due == min(last) else []), *(rub if due == rubbed else [])]
        found[number] = ". ".join(_seasoned(bare[due], more, due == min(last), tell))
    return found


def _seasoned(bare: Sequence[Placed], more: list[str], first: bool, tell: Telling) -> Iterator[str]:
    """Vegetables are tossed, then flesh is rubbed; a rub goes on the flesh where there is any."""
    flesh = [p for p in bare if _is_flesh(p)]
    rest = [p for p in bare if p not in flesh]
    if rest:
        with_what = [_oil(rest, tell), *_salt(rest, tell), *([] if flesh else more)]
        yield f"Toss {names(rest)} in {words.listed(with_what)}"
    if flesh:
        with_what = [_oil(flesh, tell), *_salt(flesh, tell), *more]
        yield f"Rub the {names(flesh)} with {words.listed(with_what)}{', last' if rest else ''}"
        if first and tell.seasoned.inside:
            yield f"Put half of the {words.listed(tell.seasoned.inside)} inside the bird"


def _oil(placed: Sequence[Placed], tell: Telling) -> str:
    """Vegetables drink more of it than meat, which has its own."""
    share = 0.5 if all(_is_flesh(p) for p in placed) else 1.0
    tbsp = max(0.5, share * OIL_TBSP_KG * _grams(placed) / 1000.0)
    return f"{spoons(tbsp * KITCHEN['tbsp'][1], tell.units)} {words.listed(_fat(tell)) or 'oil'}"


def _fat(tell: Telling) -> list[str]:
    return tell.seasoned.fat


def _salt(placed: Sequence[Placed], tell: Telling) -> list[str]:
    salted = tell.draft.method.kind == "dry" and _has_soy(tell)
    return [] if tell.draft.dinner.low_salt or salted else [salt(_grams(placed), tell.units)]


def _grams(placed: Sequence[Placed]) -> float:
    return sum(p.way.dish.grams * p.way.dish.food.edible_frac for p in placed)


def _for_the_pan(groups: Sequence[Group], tell: Telling) -> dict[int, str]:
    """Flesh is salted before it meets the pan; without any, rubs go on what is cut first."""
    rub = tell.seasoned.rub
    for number, (_, members) in enumerate(groups):
        if flesh := [p for p in members if _is_flesh(p) and is_bare(p, tell)]:
            with_what = [*([] if _has_soy(tell) else _salt(flesh, tell)), "pepper", *rub]
            return {number: f"Season the {names(flesh)} with {words.listed(with_what)}"}
    mince = next((n for n, (_, ms) in enumerate(groups) if any(_is_flesh(p) for p in ms)), 0)
    return {mince: f"Season with {words.listed(rub)}"} if rub else {}


def _has_soy(tell: Telling) -> bool:
    """Whether a sauce that is nearly all salt comes later."""
    briny = (
        s.food for s in tell.draft.dinner.seasonings if s.food.part == "salty" and s.food.group != "stock"
    )
    return any((food.salt_g or 0.0) >= BRINY_G for food in briny)


def _is_flesh(placed: Placed) -> bool:
    dish = placed.way.dish
    return (
        dish.part == "protein"
        and dish.food.animal not in NOT_FLESH
        and dish.state not in ("cooked", "leftover")
    )


def is_bare(placed: Placed, tell: Telling) -> bool:
    """Whether it wants salt of ours: not what is salty, in its shell, breaded or ready as bought.

    Frozen flesh is only cold: it is rubbed like the fresh.
    """
    dish = placed.way.dish
    salty = dish.is_salty or in_shell(placed, tell)
    thawed = replace(dish, state="") if dish.state == "frozen" and _is_flesh(placed) else dish
    return not salty and not handling(thawed, store=tell.store).as_bought
