"""The last steps: the check with a thermometer or by looks, out of the heat, the rest, the table."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from knowledge.foods.model import Food
from knowledge.planner import words
from knowledge.planner.draft import Draft, Placed
from knowledge.planner.model import Do, Step
from knowledge.planner.search import reducing, room
from knowledge.planner.search.rounds import second_round
from knowledge.planner.search.stages import add_at_s, out_s
from knowledge.planner.techniques import DRY, MASHED
from knowledge.planner.writing.cooking import done_s
from knowledge.planner.writing.hints import ENOUGH, PLAIN
from knowledge.planner.writing.phrases import (
    Telling,
    capital,
    core_text,
    has_greens,
    is_fatty,
    is_kept_back,
    names,
    targets,
)  # fmt: skip
from knowledge.planner.writing.pot import GRAIN
from knowledge.planner.writing.seasoned import salty
from knowledge.planner.writing.telling import step
from knowledge.planner.writing.young import is_hot
from knowledge.units import spoons

BIND_FROM_ML = 150.0  # so much too much runs over the plate; common practice, no source
BINDERS = (frozenset({"tuber"}), frozenset({"pulse", "tinned pulse"}))  # food groups, the best first
SHORT_REST_S = 300.0  # a longer rest begins while the others still cook
AFTER_ADD_S = 60.0
RICH_G, LEAN_G = 8.0, 4.0  # of fat in 100 g: what dresses a dish, what still wants dressing; judgement
OIL_ML = 7.5  # for each eater; common practice, no source
LIVELY = frozenset({"acid", "herb", "sauce", "dairy"})
NOT_YET = "Not there yet: a few minutes more."
CHECK_BEFORE_S = 120.0  # what is done long before is looked at with the rest


def finish(tell: Telling) -> Iterator[Step]:
    """Check, out, rest, serve."""
    draft = tell.draft
    when = draft.stages
    end = when.after_end_s
    waiting = [p for p in draft.placed if p.way.rewarmed or (p.way.held and out_s(p, when) < end - 1)]
    checks: list[Step] = []
    for at in sorted({out_s(p, when) for p in waiting}):
        checks += _check([p for p in waiting if is_checked(p) and out_s(p, when) == at], at, tell)
    early = [p for p in draft.placed if out_s(p, when) < end - 1 and p not in waiting]
    for at in sorted({out_s(p, when) for p in early}):
        members = [p for p in early if out_s(p, when) == at]
        checks += _check([p for p in members if is_checked(p)], at, tell)
        rest = "rest under foil" if draft.method.kind != "pan" else "rest on a warm plate"
        text = f"{capital(names(members))} out{core_text(members, tell.units)}; {rest}."
        yield step(Do.TAKE_OUT, at, text, members, safety=True)
    late = [p for p in draft.placed if is_checked(p) and p not in early and p not in waiting]
    checks += _check(late, end, tell)
    yield from (replace(c, text=f"{c.text} {NOT_YET}") if n == 0 else c for n, c in enumerate(checks))
    yield from _rest(tell, end)
    yield from second_round(draft, tell.units)
    yield step(Do.SERVE, when.serve_s, _table(tell), draft.placed, hands_s=60)


def is_checked(placed: Placed) -> bool:
    """Whether a thermometer or a look tells anything: not for tins, boiled eggs and cured meat."""
    dish = placed.way.dish
    tinned = dish.state == "canned" or dish.food.start_state == "canned" or dish.food.animal == "egg"
    warmed = tinned and dish.kind == "warm_through"
    return placed.way.core_degC is not None and bool(dish.safety) and not warmed


def _check(probed: list[Placed], out_at_s: float, tell: Telling) -> Iterator[Step]:
    """Once they are done by the plan's own numbers, before they leave the heat."""
    if not probed:
        return
    draft = tell.draft
    done = max(max(done_s(p, draft), _put_in_s(p, draft) + AFTER_ADD_S) for p in probed)
    at = min(max(done, out_at_s - CHECK_BEFORE_S), out_at_s)
    text = f"Check: {targets(probed, tell)}."
    yield step(Do.CHECK, at, text, probed, hands_s=45, safety=True)


def _put_in_s(placed: Placed, draft: Draft) -> float:
    """When it last went in before it is looked at: what waits on its plate is looked at before that."""
    return 0.0 if placed.way.rests or placed.way.held else add_at_s(placed, draft.stages)


def _rest(tell: Telling, end_s: float) -> Iterator[Step]:
    rested = [
        p for p in tell.draft.placed if 0 < p.way.rest_s <= SHORT_REST_S and not (p.way.rests or p.way.held)
    ]
    if rested:
        rest = max(p.way.rest_s for p in rested)
        how = {"dry": "out of the oven", "pan": "off the heat"}.get(
            tell.draft.method.kind, "lid on, off the heat"
        )
        text = f"{capital(how)}: let the {names(rested)} stand {words.duration(rest)}."
        yield step(Do.REST, end_s, text, rested, hands_s=20)


def _table(tell: Telling) -> str:
    draft, said = tell.draft, tell.seasoned
    parts = [*_rounded_off(tell)]
    if draft.dinner.soup_for and all(p.way.dish.part != "protein" for p in draft.placed):
        parts.append("Blend it smooth, off the heat, or crush half of it.")
    parts += [*_last_touches(tell), _tasted(tell)]
    parts.append(f"Serve{f' with {words.listed(said.table)}' if said.table else ''}.")
    if draft.dinner.sides:
        parts.append(f"On the side: {words.listed([words.in_spoons(s.name) for s in draft.dinner.sides])}.")
    return " ".join(parts)


def _rounded_off(tell: Telling) -> Iterator[str]:
    """What leaves the pot before it is served: fat, leaves and sticks; what is carved."""
    draft, said = tell.draft, tell.seasoned
    wet = draft.method.kind in ("wet", "sealed")
    drunk = any(p.way.dish.kind in GRAIN for p in draft.placed) and not draft.dinner.soup_for
    if wet and not drunk and any(is_fatty(p) for p in draft.placed):
        yield "Spoon the fat off the top."
    is_dry = draft.dinner.is_dry or draft.dinner.technique.ends == DRY
    if wet and is_dry and not draft.stages.reduce_s:
        yield "Lid off, high heat: fold it over gently until nothing runs any more, 2 min."
    if draft.dinner.technique.ends == MASHED:
        yield "Pour off what water is left, but keep it. Mash, with as much of it as it takes to be soft."
    elif bound := _bound(draft):
        yield bound
    whole = [words.label(p.way.dish) for p in draft.placed if _is_fished_out(p, tell)]
    if out := [*said.out, *whole]:
        yield f"Fish out the {words.listed(out)}."
    if carved := [p for p in draft.placed if p.way.piece.shape in ("joint", "bird") and _is_one(p)]:
        yield f"Carve the {names(carved)}."


def _bound(draft: Draft) -> str:
    """How a thin sauce that could not be boiled down is bound: by what is in it, else with starch."""
    longest_s = max((p.add_s for p in draft.placed), default=0.0)
    gone_ml = room.gone_ml(draft.method, draft.size, longest_s)
    thin_ml = reducing.excess_ml(draft.method, draft.placed, draft.liquid, draft.dinner, gone_ml)
    if (
        draft.stages.reduce_s
        or thin_ml < BIND_FROM_ML
        or any(room.is_saucy(p.way.dish) for p in draft.placed)
    ):
        return ""
    soft = next((p for part in BINDERS for p in draft.placed if p.way.dish.food.group in part), None)
    if soft is not None:
        return f"Crush a few of the {words.plural(soft.way.dish.name)} against the side: they bind the sauce."
    return "Sauce too thin? Stir 1 tbsp starch into 3 tbsp cold water, pour it in and boil it up once."


def _is_fished_out(placed: Placed, tell: Telling) -> bool:
    """Whether it is a hot chili that only gave its scent to the pot."""
    dish = placed.way.dish
    return placed.way.cut.id == "whole" and dish.part == "aromatic" and is_hot(dish.food, tell.store)


def _is_one(placed: Placed) -> bool:
    """Whether it is one piece on the board."""
    return placed.way.cut.parts == 1 and not placed.way.dish.comes_in_pieces


def _last_touches(tell: Telling) -> Iterator[str]:
    """Off the heat: paste let down, spice stirred in, juice, herbs."""
    said = tell.seasoned
    over = "over" if tell.draft.method.kind == "dry" else "in"
    if said.smooth:
        yield f"Off the heat: stir {words.listed(said.smooth)} smooth in a ladle of the liquid, and back in."
    if said.stir:
        yield f"Stir in {words.listed(said.stir)}."
    if said.inside:
        yield f"Squeeze the rest of the {words.listed(said.inside)} over."
    if said.squeeze:
        yield f"Squeeze {words.listed(said.squeeze)} {over}."
    if not said.drizzle and (oil := _dressed(tell)):
        yield oil
    if said.drizzle:
        yield f"Drizzle {words.listed(said.drizzle)} over."
    greens = [f"the green of the {words.label(p.way.dish)}" for p in tell.draft.placed if has_greens(p)]
    kept = [f"the fried {words.label(p.way.dish)} kept for it" for p in tell.draft.placed if is_kept_back(p)]
    if scattered := [*kept, *said.scatter, *greens]:
        yield f"Scatter {words.listed(scattered)} over."


def _dressed(tell: Telling) -> str:
    """A thread of oil over what lay in nothing but water: lean fish and vegetables; "" where there is fat."""
    draft = tell.draft
    fried = draft.stages.softened_s > 0.0 or bool(tell.seasoned.fried)
    rich = any(_fat_g(s.food) >= RICH_G for s in draft.dinner.seasonings)
    grams = sum(p.way.dish.grams for p in draft.placed)
    fat_g = sum(_fat_g(p.way.dish.food) * p.way.dish.grams for p in draft.placed) / max(grams, 1.0)
    soup = draft.dinner.soup_for > 0.0
    if draft.method.kind != "wet" or fried or rich or soup or fat_g >= LEAN_G:
        return ""
    return f"Drizzle {spoons(OIL_ML * draft.dinner.eaters, tell.units)} oil over."


def _fat_g(food: Food) -> float:
    """Fat in 100 g; of a cheese, a nut or a fat without figures enough to count."""
    if food.composition is not None:
        return food.composition.fat_g or 0.0
    return RICH_G if food.part in ("fat", "nut") or food.group == "cheese" else 0.0


def _tasted(tell: Telling) -> str:
    """Salt last, after what brings its own; something sharp where nothing is."""
    draft = tell.draft
    mine = [(words.label(p.way.dish), p.way.dish.food.salt_g) for p in draft.placed]
    mine += [
        (words.in_spoons(s.name), s.food.salt_g) for s in draft.dinner.seasonings if s.food.group != "salt"
    ]
    salts = list(dict.fromkeys(salty(mine)))
    if draft.dinner.low_salt:
        said = "Taste: pepper, herbs or something sharp instead of salt."
    elif salts:
        verb = "" if len(salts) > 1 or words.is_plural(salts[0]) else "s"
        said = f"Taste before you salt: {words.listed(salts)} bring{verb} salt."
    else:
        said = "Taste for salt."
    seasonings = draft.dinner.seasonings
    lively = any(s.food.part in LIVELY or s.food.group == "wine" for s in seasonings)
    named = [s for s in seasonings if s.food.part not in PLAIN]
    needs = len(named) >= ENOUGH and not lively  # with fewer, the hint of a flavour says more
    return f"{said} If it tastes flat, a squeeze of lemon or a drop of vinegar." if needs else said
