"""A draft as steps that a cook can follow with wet hands: what, how much, how, until what.

One list of steps for each kind of method, built from the stages. A step says one thing
to do at one moment; foods that go in together are one step. Seasonings have no steps of
their own: they are named where they go in.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.foods.model import When
from knowledge.planner import words
from knowledge.planner.draft import AFTER, BROWNED, SEARED, SOFTENED, Draft, Placed
from knowledge.planner.model import Do, Step
from knowledge.planner.phrases import capital, core_text, merged, names, ready, seasoned, targets
from knowledge.planner.room import floor_m2
from knowledge.planner.stages import (
    HEAT_PAN_S,
    add_at_s,
    fan_setting,
    first_in_s,
    knife_slots,
    out_s,
    preheat_s,
)

TURN_FROM_S = 22 * 60.0  # shorter roasts need no turning
CHECK_BEFORE_S = 240.0


def steps(draft: Draft, *, units: str) -> tuple[Step, ...]:
    """All steps in order."""
    found = [*_prep(draft, units), *_preheat(draft, units), *_cook(draft, units), *_end(draft, units)]
    found.sort(key=lambda s: (s.at_s, _ORDER.index(s.do)))
    return tuple(replace(s, id=f"{n:02d}-{s.do.value.replace(' ', '-')}") for n, s in enumerate(found, 1))


_ORDER = (
    Do.PREHEAT, Do.PREP, Do.TAKE_OUT, Do.BROWN, Do.ADD, Do.HEAT, Do.LID, Do.TURN, Do.CHECK, Do.RELEASE,
    Do.REST, Do.SERVE,
)  # fmt: skip


def _step(do: Do, at_s: float, text: str, placed: Sequence[Placed] = (), *, hands_s: float = 30.0,
          safety: bool = False) -> Step:  # fmt: skip
    foods = tuple(dict.fromkeys(p.way.dish.food.id for p in placed))
    return Step(id="", at_s=at_s, do=do, foods=foods, text=text, hands_s=hands_s, safety=safety)


def _prep(draft: Draft, units: str) -> Iterator[Step]:
    """Knife work in the order it is needed; what is due at one moment is one step."""
    slots = knife_slots(draft.method, draft.placed, draft.stages, draft.start_s)
    groups: list[tuple[float, float, float, list[Placed]]] = []
    for slot in slots:
        placed = draft.placed[int(slot.id)]
        due = first_in_s(placed, draft.stages)
        if groups and groups[-1][0] == due and abs(groups[-1][2] - slot.start_s) < 120:
            _, start, _, members = groups.pop()
            groups.append((due, start, slot.end_s, [*members, placed]))
        else:
            groups.append((due, slot.start_s, slot.end_s, [placed]))
    rub = seasoned(draft, When.START)
    for number, (_, start, end, members) in enumerate(groups):
        text = merged([ready(p, units) for p in members])
        if number == 0 and draft.method.kind == "dry":
            oiled = any(s.food.part == "fat" for s in draft.dinner.seasonings)
            base = rub if oiled else ["1-2 tbsp oil", "salt", *(rub or ["pepper"])]
            fat = words.listed(base)
            text += f". Toss all that goes on the sheet in {fat}"
        elif number == 0 and rub:
            text += f". Season with {words.listed(rub)}"
        yield _step(Do.PREP, start, f"{text}.", members, hands_s=end - start)


def _preheat(draft: Draft, units: str) -> Iterator[Step]:
    when, method, kitchen = draft.stages, draft.method, draft.kitchen
    if method.heat == "oven":
        degC = fan_setting(draft.setting or 0.0, kitchen)
        fan = " fan" if kitchen.fan_oven else ""
        at = when.main_start_s - preheat_s(draft.setting)
        yield _step(Do.PREHEAT, at, f"Oven to {words.oven(degC, units)}{fan}.", hands_s=20)
    if method.kind == "pan":
        yield _step(Do.PREHEAT, -when.preheat_s, f"Pan on high heat with 2 tbsp {_fat(draft)}.", hands_s=20)
    elif method.kind in ("wet", "sealed") and when.softened_s > 0:
        text = f"{_vessel(draft)} on medium-high heat with 1 tbsp {_fat(draft)}."
        yield _step(Do.PREHEAT, -HEAT_PAN_S, text, hands_s=20)
    elif method.kind == "wet" and draft.liquid:
        text = f"{_pour(draft, units)} into the {draft.vessel.id}; bring to a boil."
        yield _step(Do.PREHEAT, -when.preheat_s, text, hands_s=40)


def _fat(draft: Draft) -> str:
    return next((s.name for s in draft.dinner.seasonings if s.food.part == "fat"), "oil")


def _vessel(draft: Draft) -> str:
    return draft.vessel.id.capitalize()


def _pour(draft: Draft, units: str) -> str:
    """The liquid as said: with what else is poured in at that moment."""
    if draft.liquid is None:
        return ""
    extra = [n for n in seasoned(draft, When.LIQUID) if n != draft.liquid.what]
    said = f"{words.volume(draft.liquid.ml, units)} {draft.liquid.what}"
    return f"{said} with {words.listed(extra)}" if extra else said


def _cook(draft: Draft, units: str) -> Iterator[Step]:
    """From the first food in the heat until all is done."""
    yield from _pan_stage(draft)
    match draft.method.kind:
        case "dry":
            yield from _oven(draft)
        case "pan":
            yield from _stir(draft)
        case "sealed":
            yield from _sealed(draft, units)
        case _:
            yield from _covered(draft, units)


def _pan_stage(draft: Draft) -> Iterator[Step]:
    """Browning or searing, then the aromatics, then the bottom of the pan loosened."""
    when = draft.stages
    seared = [p for p in draft.placed if p.way.lead == SEARED]
    browned = [p for p in draft.placed if p.way.lead == BROWNED]
    if seared:
        text = f"{names(seared)} into the hot pan; brown all over, about {words.duration(when.browned_s)}."
        yield _step(Do.BROWN, 0.0, capital(text), seared, hands_s=when.browned_s)
    if browned:
        out = "leave it in" if _all_join_at_once(draft) else "then lift out onto a plate"
        turns = _in_batches(draft, browned)
        one = len(browned) == 1 and browned[0].way.dish.pieces == 1
        how = "on all sides" if one else f"in one layer{turns}"
        text = f"Brown {names(browned)} {how}, {words.duration(when.browned_s)} in all; {out}."
        yield _step(Do.BROWN, 0.0, text, browned, hands_s=when.browned_s)
    soft = [p for p in draft.placed if p.way.lead == SOFTENED]
    if soft:
        spice = seasoned(draft, When.AROMATICS)
        more = f", {words.listed(spice)} in for the last minute" if spice else ""
        state = "soft" if when.softened_s - when.browned_s > 120 else "fragrant"
        text = f"{capital(names(soft))} into the fat, medium heat; stir until {state}{more}."
        yield _step(Do.ADD, when.browned_s, text, soft, hands_s=when.softened_s - when.browned_s)
    seared = [p for p in seared if not p.way.rests]
    if seared and any(p.way.lead != SEARED for p in draft.placed):
        yield _step(Do.TAKE_OUT, when.browned_s, f"{capital(names(seared))} out onto a clean plate.", seared)


def _in_batches(draft: Draft, placed: Sequence[Placed]) -> str:
    return ", in batches" if floor_m2([p.way for p in placed]) > 1.05 * draft.size.area_m2 else ""


def _all_join_at_once(draft: Draft) -> bool:
    """Whether the browned meat is in the way of nothing and stays where it is."""
    first = max(p.add_s for p in draft.placed)
    stays = all(p.add_s == first for p in draft.placed if p.way.lead == BROWNED)
    return stays and draft.stages.softened_s == draft.stages.browned_s


def _groups(placed: Sequence[Placed], draft: Draft) -> list[tuple[float, list[Placed]]]:
    """Dishes by the moment they go into their lane, earliest first."""
    by_time: dict[float, list[Placed]] = {}
    for p in placed:
        by_time.setdefault(round(add_at_s(p, draft.stages), 3), []).append(p)
    return sorted(by_time.items())


def _oven(draft: Draft) -> Iterator[Step]:
    end = draft.stages.main_end_s
    groups = _groups(draft.placed, draft)
    for number, (at, members) in enumerate(groups):
        if number == 0:
            skin = (
                " Skin side up."
                if any("thigh" in p.way.dish.name or "leg" in p.way.dish.name for p in members)
                else ""
            )
            where = f"on the {draft.size.id} in one layer, into the middle of the oven"
            text = f"{capital(names(members))} {where}.{skin}"
            yield _step(Do.ADD, at, text, members, hands_s=60)
        else:
            text = f"Add {names(members)}: make room, a little oil, back in."
            yield _step(Do.ADD, at, text, members, hands_s=60)
    first = groups[0][0]
    later = [at for at, _ in groups[1:]]
    half = first + 0.55 * (end - first)
    veg = [
        p
        for p in draft.placed
        if p.way.dish.part in ("vegetable", "starch") and add_at_s(p, draft.stages) < half - 300
    ]
    busy_then = any(abs(at - half) < 420 for at in later)
    if veg and end - first > TURN_FROM_S and not busy_then:
        yield _step(Do.TURN, half, f"Turn {names(veg)} with a spatula; back in.", veg, hands_s=60)


def _stir(draft: Draft) -> Iterator[Step]:
    for at, members in _groups(
        [p for p in draft.placed if p.way.lead != SOFTENED and not p.way.rests], draft
    ):
        back = [p for p in members if p.way.lead == SEARED]
        new = [p for p in members if p.way.lead != SEARED]
        alone = all(p.way.lead == SEARED for p in draft.placed)
        eggs = [p for p in new if p.way.dish.kind == "egg"]
        new = [p for p in new if p not in eggs]
        if new:
            yield _step(Do.ADD, at, f"Add {names(new)}; keep it moving.", new, hands_s=60)
        if eggs:
            yield _step(
                Do.ADD, at, f"Crack in the {names(eggs)}; stir once or twice until set.", eggs, hands_s=60
            )
        if back and not alone:
            sauce = seasoned(draft, When.LIQUID)
            more = f" with {words.listed(sauce)}" if sauce else ""
            yield _step(
                Do.ADD,
                at,
                (
                    f"{capital(names(back))} back in{more}; toss until hot"
                    f"{core_text(back, draft.kitchen.units)}."
                ),
                back,
                hands_s=60,
            )


def _covered(draft: Draft, units: str) -> Iterator[Step]:
    when = draft.stages
    lead = when.softened_s > 0
    groups = _groups([p for p in draft.placed if p.way.lead != SOFTENED], draft)
    if lead and draft.liquid:
        text = f"Pour in {_pour(draft, units)}; scrape the bottom loose and bring to a simmer."
        yield _step(Do.HEAT, when.softened_s, text, hands_s=60)
    for number, (at, members) in enumerate(groups):
        inside = [p for p in members if not p.way.top]
        top = [p for p in members if p.way.top]
        back = [p for p in inside if p.way.lead == BROWNED]
        new = [p for p in inside if p.way.lead != BROWNED]
        parts = []
        if back and number == 0 and _all_join_at_once(draft):
            new, back = [p for p in inside if p not in back], []
        if back and new:
            parts.append(f"{capital(names(back))} back in, with {names(new)}")
        elif back:
            parts.append(f"{capital(names(back))} back in")
        elif new:
            parts.append(f"Add {names(new)}")
        eggs = [p for p in top if p.way.dish.kind == "egg"]
        top = [p for p in top if p not in eggs]
        if top:
            parts.append(f"{'Lay' if not parts else 'lay'} {names(top)} on top")
        if eggs:
            parts.append(f"{'Make' if not parts else 'make'} hollows and crack in the {names(eggs)}")
        text = "; ".join(parts) + "." if parts else ""
        if number == 0:
            text = (text + _lid_text(draft, units)).strip()
        elif draft.method.heat == "oven":
            text += " Lid on, back in the oven."
        else:
            text += " Lid on."
        yield _step(Do.ADD, at, text, members, hands_s=60)
    if not groups:
        yield _step(Do.LID, when.main_start_s, _lid_text(draft, units).strip())


def _lid_text(draft: Draft, units: str) -> str:
    if draft.method.heat == "oven":
        heat = words.oven(fan_setting(draft.setting or 175.0, draft.kitchen), units)
        return f" Lid on, into the oven at {heat}."
    return " Lid on, low heat: it should just bubble."


def _sealed(draft: Draft, units: str) -> Iterator[Step]:
    when = draft.stages
    inside = [p for p in draft.placed if not p.way.lane_is(AFTER)]
    cooking = [p for p in inside if p.way.lead != SOFTENED]
    pour = f"Pour in {_pour(draft, units)}, scrape the bottom loose. " if draft.liquid else ""
    into = f"{pour}{capital(names(cooking))} in." if cooking else pour.strip()
    if into:
        yield _step(Do.ADD, when.main_start_s - 60.0, into, cooking, hands_s=60)
    rise = words.duration(when.at_pressure_s - when.main_start_s)
    text = f"Lock the lid, high heat up to full pressure (about {rise})."
    yield _step(Do.LID, when.main_start_s, text, hands_s=30, safety=True)
    held = when.main_end_s - when.at_pressure_s
    yield _step(
        Do.HEAT, when.at_pressure_s, f"Full pressure: heat down, {words.duration(held)} from now.", hands_s=20
    )
    how = (
        "Off the heat. Let the pressure fall by itself; do not force the lid."
        if draft.slow_release
        else "Off the heat. Release the pressure the quick way, face and hands away from the steam."
    )
    yield _step(Do.RELEASE, when.main_end_s, how, hands_s=30, safety=True)
    for number, (at, members) in enumerate(_groups([p for p in draft.placed if p.way.lane_is(AFTER)], draft)):
        begin = "Lid off, back on the heat: stir" if number == 0 else "Stir"
        text = f"{begin} in {names(members)}, let it bubble."
        yield _step(Do.ADD, at, text, members, hands_s=60)


def _end(draft: Draft, units: str) -> Iterator[Step]:
    """The check with a thermometer or a knife, out of the heat, rest, and the table."""
    when = draft.stages
    end = when.after_end_s
    early = [p for p in draft.placed if out_s(p, when) < end - 1]
    for at in sorted({out_s(p, when) for p in early}):
        members = [p for p in early if out_s(p, when) == at]
        text = f"{capital(names(members))} out{core_text(members, units)}; rest under foil."
        yield _step(Do.TAKE_OUT, at, text, members, safety=True)
    probed = [
        p for p in draft.placed if p.way.core_degC is not None and p not in early and p.way.lead != SEARED
    ]
    if probed:
        earliest = (
            when.opened_s if draft.method.kind == "sealed" else max(add_at_s(p, when) + 60.0 for p in probed)
        )
        check_at = max(end - CHECK_BEFORE_S, earliest)
        text = f"Check the thickest part of {targets(probed, units)}. Not there yet: a few minutes more."
        yield _step(Do.CHECK, min(check_at, end), text, probed, hands_s=45, safety=True)
    rest = max((p.way.rest_s for p in draft.placed if p.way.rest_s <= 300 and not p.way.rests), default=0.0)
    if rest:
        rested = [p for p in draft.placed if 0 < p.way.rest_s <= 300 and not p.way.rests]
        how = "lid on, off the heat" if draft.method.kind != "dry" else "out of the oven"
        yield _step(
            Do.REST,
            end,
            f"{capital(how)}: let {names(rested)} stand {words.duration(rest)}.",
            rested,
            hands_s=20,
        )
    last = seasoned(draft, When.END, When.TABLE)
    text = "Taste for salt and serve."
    if last:
        how = "Serve with" if draft.method.kind == "dry" else "Stir in or scatter"
        text = f"{how} {words.listed(last)}; taste for salt."
    if draft.dinner.sides:
        text += f" On the side: {words.listed([s.name for s in draft.dinner.sides])}."
    yield _step(Do.SERVE, when.serve_s, text, draft.placed, hands_s=60)
