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
from knowledge.planner.draft import Draft, Placed
from knowledge.planner.gathering.peeling import BATH_S, FIRST
from knowledge.planner.model import Do, Step
from knowledge.planner.search.stages import (
    HEAT_PAN_S,
    bath_of,
    fan_setting,
    first_in_s,
    knife_slots,
    preheat_s,
)
from knowledge.planner.writing.cooking import cooking
from knowledge.planner.writing.finish import finish
from knowledge.planner.writing.naming import shortened
from knowledge.planner.writing.phrases import Telling, fat, merged, pan_heat, pour, ready
from knowledge.planner.writing.seasoned import seasoned
from knowledge.planner.writing.telling import step
from knowledge.planner.writing.tossing import seasonings_by_group
from knowledge.units import oven

ORDER = (
    Do.PREHEAT, Do.PREP, Do.CHECK, Do.TAKE_OUT, Do.BROWN, Do.ADD, Do.HEAT, Do.LID, Do.TURN, Do.RELEASE,
    Do.REST, Do.SERVE,
)  # fmt: skip
SAME_DUE_S = 120.0
BACK_IN = ", back in: "


def steps(draft: Draft, *, units: str, store: Store) -> tuple[Step, ...]:
    """All steps in order, at whole seconds."""
    tell = Telling(draft=draft, units=units, store=store, seasoned=seasoned(draft, units, store))
    found = [*_prep(tell), *_preheat(tell), *cooking(tell), *finish(tell)]
    found = [replace(s, at_s=float(round(s.at_s))) for s in found]
    found.sort(key=lambda s: (s.at_s, ORDER.index(s.do)))
    found = shortened(found, draft)
    found = list(_one_opening(found))
    return tuple(replace(s, id=f"{n:02d}-{s.do.value.replace(' ', '-')}") for n, s in enumerate(found, 1))


def _one_opening(steps: Sequence[Step]) -> Iterator[Step]:
    """What happens at an open oven at one moment is one step."""
    held: Step | None = None
    for step_ in steps:
        together = held is not None and held.at_s == step_.at_s and BACK_IN in step_.text
        if held is not None and together:
            does = step_.text.partition(BACK_IN)[0]
            text = held.text.replace(BACK_IN, f"; {does[:1].lower()}{does[1:]}{BACK_IN}", 1)
            held = replace(held, text=text, hands_s=held.hands_s + step_.hands_s)
            continue
        if held is not None:
            yield held
        held = step_ if step_.do is Do.ADD and BACK_IN in step_.text else None
        if held is None:
            yield step_
    if held is not None:
        yield held


def _prep(tell: Telling) -> Iterator[Step]:
    """Knife work in the order it is needed; what is due at one moment is one step."""
    draft = tell.draft
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
    after = seasonings_by_group([(due, members) for due, _, _, members in groups], tell)
    for number, (_, start, end, members) in enumerate(groups):
        text = merged([ready(p, tell) for p in members]) + after.get(number, "")
        boiling = sum(BATH_S[bath] for p in members if (bath := bath_of(p.way, draft.method)) in FIRST)
        yield step(Do.PREP, start, f"{text}.", members, hands_s=end - start - boiling)


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
        if paste := words.listed(tell.seasoned.fried):
            there = (
                f"{draft.vessel.id.capitalize()} on medium heat: {paste} in 1 tbsp {fat(tell)}, stir a minute"
            )
            text = f"{there}; {pour(tell)} in, bring to a boil."
            yield step(Do.PREHEAT, -when.preheat_s, text, hands_s=100)
            return
        rack = " and a rack, if you have one," if method.steams else "," if ", " in what else ""
        text = f"{what[:1].upper()}{what[1:]}{rack} into the {draft.vessel.id}; bring to a boil."
        yield step(Do.PREHEAT, -when.preheat_s, text, hands_s=40)
