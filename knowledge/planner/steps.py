"""A draft as steps that a cook can follow with wet hands: what, how much, how, until what.

One list of steps for each kind of method, built from the stages: knife work and
preheating here, what happens in the heat in `cooking`, the check, rest and table in
`finish`. A step says one thing to do at one moment; foods that go in together are one
step. Seasonings have no steps of their own: they are named where they go in.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.cooking import cooking
from knowledge.planner.draft import Draft, Placed
from knowledge.planner.finish import finish
from knowledge.planner.model import Do, Step
from knowledge.planner.phrases import Telling, fat, merged, names, pan_heat, pour, ready
from knowledge.planner.seasoned import SALTY_G, seasoned
from knowledge.planner.stages import HEAT_PAN_S, fan_setting, first_in_s, knife_slots, preheat_s
from knowledge.planner.telling import step
from knowledge.units import oven

ORDER = (
    Do.PREHEAT, Do.PREP, Do.CHECK, Do.TAKE_OUT, Do.BROWN, Do.ADD, Do.HEAT, Do.LID, Do.TURN, Do.RELEASE,
    Do.REST, Do.SERVE,
)  # fmt: skip
SAME_DUE_S = 120.0


def steps(draft: Draft, *, units: str, store: Store) -> tuple[Step, ...]:
    """All steps in order, at whole seconds."""
    tell = Telling(draft=draft, units=units, store=store, seasoned=seasoned(draft, units))
    found = [*_prep(tell), *_preheat(tell), *cooking(tell), *finish(tell)]
    found = [replace(s, at_s=float(round(s.at_s))) for s in found]
    found.sort(key=lambda s: (s.at_s, ORDER.index(s.do)))
    return tuple(replace(s, id=f"{n:02d}-{s.do.value.replace(' ', '-')}") for n, s in enumerate(found, 1))


def _prep(tell: Telling) -> Iterator[Step]:
    """Knife work in the order it is needed; what is due at one moment is one step."""
    draft, said = tell.draft, tell.seasoned
    slots = knife_slots(draft.method, draft.placed, draft.stages, draft.start_s)
    groups: list[tuple[float, float, float, list[Placed]]] = []
    for slot in slots:
        placed = draft.placed[int(slot.id)]
        due = first_in_s(placed, draft.stages)
        if groups and groups[-1][0] == due and abs(groups[-1][2] - slot.start_s) < SAME_DUE_S:
            _, start, _, members = groups.pop()
            groups.append((due, start, slot.end_s, [*members, placed]))
        else:
            groups.append((due, slot.start_s, slot.end_s, [placed]))
    tossed = _tossings(groups, tell) if draft.method.kind == "dry" else {}
    for number, (_, start, end, members) in enumerate(groups):
        text = merged([ready(p, tell) for p in members])
        text += tossed.get(number, "")
        if number == 0 and said.rub and draft.method.kind != "dry":
            text += f". Season with {words.listed(said.rub)}"
        yield step(Do.PREP, start, f"{text}.", members, hands_s=end - start)


def _tossings(groups: Sequence[tuple[float, float, float, list[Placed]]], tell: Telling) -> dict[int, str]:
    """What is oiled and salted, by the group it follows: once all that goes in together is cut."""
    placed, said = tell.draft.placed, tell.seasoned
    if not any(_is_bare(p, tell) for p in placed):
        extra = words.listed([*said.fat, *said.rub])
        return {0: f". Season with {extra}"} if extra else {}
    last: dict[float, int] = {}
    bare: dict[float, list[Placed]] = {}
    for number, (due, _, _, members) in enumerate(groups):
        if mine := [p for p in members if _is_bare(p, tell)]:
            last[due] = number
            bare.setdefault(due, []).extend(mine)
    base = [*(said.fat or ["1-2 tbsp oil"]), "salt", *(said.rub or ["pepper"])]
    found = {}
    for n, (due, number) in enumerate(sorted(last.items(), key=lambda item: item[1])):
        found[number] = _tossed(bare[due], placed, base if n == 0 else ["the same"])
    return found


def _tossed(bare: Sequence[Placed], placed: Sequence[Placed], base: Sequence[str]) -> str:
    """What is oiled and salted before the oven; not what is salty, fatty or breaded as bought."""
    if all(p.way.dish.part == "protein" for p in bare):
        return f". Rub the {names(bare)} with {words.listed(base)}"
    what = "all that goes on the sheet" if len(bare) == len(placed) else names(bare)
    return f". Toss {what} in {words.listed(base)}"


def _is_bare(placed: Placed, tell: Telling) -> bool:
    """Whether it wants oil and salt of ours on a tray."""
    return (placed.way.dish.food.salt_g or 0.0) < SALTY_G and not tell.hand(placed).as_bought


def _preheat(tell: Telling) -> Iterator[Step]:
    draft = tell.draft
    when, method, kitchen = draft.stages, draft.method, draft.kitchen
    if method.heat == "oven":
        degC = fan_setting(draft.setting or 0.0, kitchen)
        fan = " fan" if kitchen.fan_oven else ""
        at = when.main_start_s - preheat_s(draft.setting)
        yield step(Do.PREHEAT, at, f"Oven to {oven(degC, tell.units)}{fan}.", hands_s=20)
    if method.kind == "pan":
        text = f"Pan on {pan_heat(draft)} heat with 2 tbsp {fat(tell)}."
        yield step(Do.PREHEAT, -when.preheat_s, text, hands_s=20)
    elif method.kind in ("wet", "sealed") and when.softened_s > 0:
        text = f"{draft.vessel.id.capitalize()} on medium-high heat with 1 tbsp {fat(tell)}."
        yield step(Do.PREHEAT, -HEAT_PAN_S, text, hands_s=20)
    elif method.kind == "wet" and (what := pour(tell, oil=True)):
        rack = " and a rack, if you have one," if method.steams else ""
        text = f"{what[:1].upper()}{what[1:]}{rack} into the {draft.vessel.id}; bring to a boil."
        yield step(Do.PREHEAT, -when.preheat_s, text, hands_s=40)
