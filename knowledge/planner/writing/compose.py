"""A draft written out as a plan: items, steps, settings, cautions, what was assumed and why."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.draft import AFTER, SEARED, Draft, Placed
from knowledge.planner.gathering import amounts
from knowledge.planner.model import (
    Alternative,
    Caution,
    Do,
    Done,
    LeftOut,
    Plan,
    PlanItem,
    Request,
    Settings,
)
from knowledge.planner.search import rounds
from knowledge.planner.search.stages import fan_setting, first_in_s, out_s
from knowledge.planner.writing import cautions, enough, explain, steps
from knowledge.planner.writing.hints import flavour_hint
from knowledge.planner.writing.phrases import item_cut, pan_heat, sheet_name
from knowledge.planner.writing.seasoned import wants_a_pot

DRY_BEANS = "Dry beans"  # how an alert about them begins
HANDS = {Do.BROWN: 0.5}  # share of a step that really takes both hands


def plan_of(draft: Draft, request: Request, others: Sequence[Draft], *, store: Store) -> Plan:
    """The plan in a draft; `others` are the best drafts of other vessels."""
    units = request.kitchen.units
    done = steps.steps(draft, units=units, store=store)
    left_out = list(draft.dinner.left_out)
    left_out += [LeftOut(food=dish.food.name, said=dish.name, why=why) for dish, why in draft.refused]
    total_s = draft.stages.serve_s - draft.start_s + rounds.later_s(draft)
    return Plan(
        vessel=draft.vessel.id,
        size=draft.size.id,
        fill=draft.fill,
        settings=_settings(draft),
        serves=float(amounts.persons(rounds.fed(draft), draft.dinner.eaters, said=request.eaters_said)),
        total_s=total_s,
        hands_on_s=min(sum(HANDS.get(s.do, 1.0) * s.hands_s for s in done), total_s),
        cooking_s=draft.stages.serve_s,
        items=tuple(_item(p, draft, units) for p in draft.placed),
        liquid=draft.liquid,
        steps=done,
        cautions=(
            *_spoiled(request, store),
            *_alerts(draft, request),
            *cautions.cautions(draft, request, store=store),
        ),
        left_out=tuple(left_out),
        assumed=tuple(
            dict.fromkeys(
                [
                    *_for_whom(draft, request),
                    *rounds.assumed(draft),
                    *_size(draft, request),
                    *_basics(draft),
                    *rounds.told(draft),
                ]
            )
        ),
        flavour=flavour_hint(draft, request, store=store),
        advice=tuple(enough.advice(draft, request)),
        alternatives=tuple(_alternative(d, draft) for d in others if _differs(d, draft)),
        why=tuple(explain.reasons(draft, request)),
        notes=(
            *enough.far_too_little(draft, request),
            *wants_a_pot(draft),
            *explain.denied(draft, request),
        ),
        request=request,
    )


def _spoiled(request: Request, store: Store) -> Iterable[Caution]:
    for food_id in request.spoiled:
        name = store.food(food_id).name
        yield Caution(
            text=f"The {name} stood out for more than 2 hours: do not eat it. Heat kills what grew, "
            "not the poisons it made.",
            source="USDA FSIS, the two-hour rule",
        )


def _alerts(draft: Draft, request: Request) -> Iterable[Caution]:
    """What the message gave reason to warn of, but for what this plan does about it: beans under pressure."""
    sealed = draft.method.kind == "sealed" and any(p.way.dish.is_raw_bean for p in draft.placed)
    yield from (a for a in request.alerts if not (sealed and a.text.startswith(DRY_BEANS)))


def _settings(draft: Draft) -> Settings:
    method, kitchen = draft.method, draft.kitchen
    oven = method.heat == "oven"
    hob = None
    if method.kind == "pan":
        hob = pan_heat(draft)
    elif method.kind == "sealed":
        hob = "high until full pressure, then low"
    elif method.kind == "wet":
        lead = "medium-high, then " if draft.stages.softened_s > 0 else ""
        hob = lead + ("oven" if oven else "low")
    return Settings(
        oven_degC=fan_setting(draft.setting or 220.0, kitchen) if oven else None,
        fan=kitchen.fan_oven if oven else None,
        hob=hob,
        pressure_kPa_gauge=draft.setting if method.kind == "sealed" else None,
        release=("slow" if draft.slow_release else "quick") if method.kind == "sealed" else None,
        method=method.id,
    )


def _item(placed: Placed, draft: Draft, units: str) -> PlanItem:
    way, when = placed.way, draft.stages
    window = way.window
    end = when.after_end_s if way.lane_is(AFTER) else when.main_end_s
    base = end - placed.add_s  # when its time began to count
    early = way.rest_s if way.rest_s > 300.0 else 0.0
    earliest, latest = base + window.lo_s - early, base + window.hi_s - early
    out = out_s(placed, when)
    if way.rests:
        earliest, latest = when.meat_out_s, when.meat_out_s + 0.2 * way.lead_s
    elif way.lead == SEARED:
        earliest, latest = out if way.held else when.browned_s, end + window.hi_s
    latest = max(latest, out)
    return PlanItem(
        food_id=way.dish.food.id,
        food=way.dish.food.name,
        said=way.dish.name if way.dish.name != way.dish.food.name else "",
        called=words.label(way.dish),
        grams=way.dish.grams,
        state=way.dish.state,
        cut_id=way.cut.id,
        cut=item_cut(placed, draft),
        size_mm=way.piece.size_mm,
        shape=way.piece.shape,
        in_s=first_in_s(placed, when),
        out_s=out,
        done=Done(
            kind=way.done,
            at_s=min(earliest, latest),
            window_s=(earliest, latest),
            core_degC=way.core_degC,
            rest_s=way.rest_s,
        ),
        why=explain.item_reason(placed, draft),
        doneness=way.doneness,
        on_top=way.top,
        lane=way.window.lane,
        add_s=placed.add_s,
        lead=way.lead,
    )


def _for_whom(draft: Draft, request: Request) -> Iterable[str]:
    """For how many it is, when nobody said."""
    eaters = draft.dinner.eaters
    feeds = amounts.persons(rounds.fed(draft), eaters, said=request.eaters_said)
    if not request.eaters_said:
        for_more = f" (there would be enough for {feeds})" if feeds > eaters else ""
        yield f"dinner for {min(feeds, eaters):g}{for_more}"


def _size(draft: Draft, request: Request) -> Iterable[str]:
    """A sheet larger than the usual one, which not every kitchen has."""
    owned = any(v.id == draft.vessel.id and v.size for v in request.kitchen.vessels)
    if draft.size.sides_cm and not draft.size.usual and not owned:
        yield f"a {sheet_name(draft.size, request.kitchen.units)}, or two rounds on a smaller one"


def _basics(draft: Draft) -> Iterable[str]:
    has_fat = any(s.food.part == "fat" for s in draft.dinner.seasonings)
    yield (
        "salt, pepper and a little oil from the cupboard"
        if not has_fat
        else "salt and pepper from the cupboard"
    )


def _differs(other: Draft, best: Draft) -> bool:
    """Whether another vessel brings another dinner, or the same one in another time."""
    mine, theirs = (d.stages.serve_s - d.start_s for d in (best, other))
    texture = max(abs(other.method.crisp - best.method.crisp), abs(other.method.wet - best.method.wet))
    return texture > 0.35 or abs(theirs - mine) > 0.1 * mine


def _alternative(other: Draft, best: Draft) -> Alternative:
    total = other.stages.serve_s - other.start_s
    diff = (total - (best.stages.serve_s - best.start_s)) / 60.0
    pace = "takes as long" if abs(diff) < 4 else f"{abs(diff):.0f} min {'longer' if diff > 0 else 'shorter'}"
    brings = (
        "crisper" if other.method.crisp > best.method.crisp + 0.2
        else "more sauce" if other.method.wet > best.method.wet + 0.2
        else "much the same dinner"
    )  # fmt: skip
    without = f", without {words.listed([d.name for d, _ in other.refused])}" if other.refused else ""
    return Alternative(
        vessel=other.vessel.id, total_s=total, why=f"{other.method.name}: {brings}, {pace}{without}"
    )
