"""What one layer does not hold: a second round on the same sheet, the rest kept, or simply less taken."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from knowledge.planner import words
from knowledge.planner.draft import Draft
from knowledge.planner.gathering.dinner import Dish
from knowledge.planner.gathering.feeding import served, served_by
from knowledge.planner.model import Do, Step

FITS = 0.92  # of what was meant: a bite less is not worth a word
HOT = {"us": "145 °F", "metric": "63 °C"}  # hot holding: UK FSA 63 °C (FDA Food Code: 135 °F)
ENOUGH = 0.85  # of the eaters: then nobody waits for a second round


def left_over(draft: Draft) -> list[Dish]:
    """What was said to be there and has no room, as dishes of their own."""
    meant = {(d.food.id, d.state): d for d in draft.dinner.dishes}
    found = []
    for placed in draft.placed:
        dish = placed.way.dish
        whole = meant[dish.food.id, dish.state]
        if not whole.assumed and dish.grams < FITS * whole.grams:
            found.append(replace(whole, grams=whole.grams - dish.grams))
    return found


def takes_two(draft: Draft) -> bool:
    """Whether the rest goes onto the sheet once more: the first round is not enough and both are.

    Nobody waits for a second round of potatoes alone.
    """
    if not draft.vessel.single_layer or served(draft) >= ENOUGH * draft.dinner.eaters:
        return False
    rest = left_over(draft)
    meat = any(d.part == "protein" for d in rest) or all(p.way.dish.part != "protein" for p in draft.placed)
    return bool(rest) and meat and served_by(rest, filling=False) >= 1.0


def fed(draft: Draft) -> float:
    """How many it feeds, in both rounds where there are two."""
    if not takes_two(draft):
        return served(draft)
    both = [*(p.way.dish for p in draft.placed), *left_over(draft)]
    return served(draft) + served_by(left_over(draft), filling=any(d.part == "starch" for d in both))


def later_s(draft: Draft) -> float:
    """How long after the first round the last one is on the table [s]; 0 where there is but one."""
    return draft.stages.serve_s if takes_two(draft) else 0.0


def second_round(draft: Draft, units: str) -> Iterator[Step]:
    """The step that puts the rest onto the sheet when the first round comes off it."""
    if not takes_two(draft):
        return
    when = draft.stages
    rest = words.listed([words.amount(dish, units) for dish in left_over(draft)])
    raw = any(dish.part == "protein" and dish.food.animal for dish in left_over(draft))
    kept = " (until then in the fridge)" if raw else ""
    text = (
        f"Second round: {rest}{kept} onto the hot sheet in the same order, on the table "
        f"{words.duration(later_s(draft))} later. Eat the first now, or keep it hot above {HOT[units]}."
    )
    yield Step(
        id="", at_s=min(when.after_end_s + 60.0, when.serve_s), do=Do.HEAT, foods=(), text=text, hands_s=120.0
    )


def told(draft: Draft) -> Iterator[str]:
    """That it does not all fit, among what the plan assumes."""
    rest = left_over(draft)
    if not rest:
        return
    units = draft.kitchen.units
    kept = {dish.food.id for dish in rest}
    fits = words.listed([words.amount(p.way.dish, units) for p in draft.placed if p.way.dish.food.id in kept])
    if takes_two(draft):
        yield (
            f"two rounds: the {draft.size.id} has room for {fits}; the second is on the table "
            f"{words.duration(later_s(draft))} after the first"
        )
    else:
        elsewhere = "roast it on a second tray" if draft.vessel.single_layer else "cook it in a second round"
        yield f"the {draft.size.id} has room for {fits}; keep the rest or {elsewhere}"


def assumed(draft: Draft) -> Iterator[str]:
    """What was assumed of the amounts, with what is really taken where the vessel holds less."""
    units = draft.kitchen.units
    taken = {(p.way.dish.food.id, p.way.dish.state): p.way.dish for p in draft.placed}
    now = {
        words.amount(d, units): words.amount(taken[d.food.id, d.state], units)
        for d in draft.dinner.dishes
        if d.assumed and (d.food.id, d.state) in taken
    }
    for said in draft.dinner.assumed:
        yield now.get(said, said)
