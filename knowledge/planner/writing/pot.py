"""The steps under a lid: into the liquid or on top, the hard boil of beans, pressure and its release."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.physics.safety import RAW_BEAN_BOIL_S
from knowledge.planner import words
from knowledge.planner.draft import AFTER, BROWNED, MAIN, SEARED, SECOND, SOFTENED, Placed
from knowledge.planner.model import Do, Step
from knowledge.planner.search.heat import boils_hard, wants_gentle
from knowledge.planner.search.stages import (
    QUICK_RELEASE_S,
    add_at_s,
    fan_setting,
    in_portions,
    is_toasted,
)
from knowledge.planner.techniques import COATING, DRY, RIBBONS
from knowledge.planner.writing.handling import OFF_HEAT
from knowledge.planner.writing.phrases import Telling, capital, in_shell, names, pour_in
from knowledge.planner.writing.telling import all_join_at_once, each_once, groups_in, stays_in, step
from knowledge.units import oven

LAID_ON = frozenset({"fish", "shellfish", "egg"})
GRAIN = frozenset({"white_rice", "small_grain", "whole_grain", "pearl_grain"})
SLOW_RELEASE = "Off the heat. Let the pressure fall by itself; do not force the lid."
QUICK_RELEASE = "Off the heat. Release the pressure the quick way, face and hands away from the steam."

BIT_BY_BIT = " Best hot, and a third at a time: more once that is drunk."
AJAR = ", lid ajar"  # in the column `pot`: steam gets out, so that it does not spit


def under_a_lid(tell: Telling) -> Iterator[Step]:
    draft = tell.draft
    when = draft.stages
    toast = [p for p in draft.placed if is_toasted(p, when)]
    later = [p for p in draft.placed if p.way.lead != SOFTENED and not stays_in(p) and p not in toast]
    groups = groups_in(later, draft)
    if when.softened_s > 0 and (what := pour_in(tell)):
        scrape = "scrape the bottom loose and " if when.browned_s > 0 else ""
        bit_by_bit = BIT_BY_BIT if draft.liquid and in_portions(draft.placed, draft.method) else ""
        text = f"{what}; {scrape}bring to a simmer.{bit_by_bit}"
        yield step(Do.HEAT, when.softened_s, text, hands_s=60)
    alone = bool(toast) and not any(at <= when.main_start_s + 1.0 for at, _ in groups)
    if alone:
        lid = _lid(tell, when.main_start_s, first=True, last=not groups, members=toast)
        yield step(Do.LID, when.main_start_s, lid.removeprefix(". ") + _said_of(toast, tell))
    for number, (at, members) in enumerate(groups):
        beans = [p for p in members if boils_hard(p.way.dish, draft.method)]
        parts = _into_the_pot(members, tell, first=number == 0)
        if beans:
            boil = words.duration(RAW_BEAN_BOIL_S)
            lid = f"; boil hard, lid ajar, {boil}: dry beans are poisonous without it."
        else:
            lid = _lid(
                tell, at, first=number == 0 and not alone, last=number == len(groups) - 1, members=members
            )
        said = _said_of([*members, *(toast if at <= when.main_start_s + 1.0 else ())], tell)
        text = ("; ".join(parts) + lid).removeprefix(". ")
        yield step(Do.ADD, at, text + said, members, hands_s=60, safety=bool(beans))
        if beans:
            heat = _lid(tell, at + RAW_BEAN_BOIL_S, first=True, last=False, members=members)
            text = f"The boil is over{heat} Skim off the foam; top up with boiling water if they show."
            yield step(Do.HEAT, at + RAW_BEAN_BOIL_S, text, beans, hands_s=60, safety=True)
    yield from _boil_down(tell, when.main_end_s - when.reduce_s)
    if not groups and not toast:
        yield step(Do.LID, when.main_start_s, _lid(tell, when.main_start_s, first=True, last=True)[2:])


def _said_of(members: Sequence[Placed], tell: Telling) -> str:
    """What these ask for under a lid, each once; of the lid itself its own sentence speaks."""
    return each_once(tell.hand(p).pot.replace(AJAR, "") for p in members)


def _into_the_pot(members: Sequence[Placed], tell: Telling, *, first: bool) -> list[str]:
    """What goes in and what lies on top, as clauses."""
    inside = [p for p in members if not p.way.top]
    back = [p for p in inside if p.way.lead == BROWNED]
    fried = [p for p in inside if p.way.lead == SEARED]
    ribbons = [p for p in inside if p.way.dish.made.eggs == RIBBONS]
    coating = [p for p in inside if p.way.dish.made.eggs == COATING]
    new = [p for p in inside if p.way.lead != BROWNED and p not in (*fried, *ribbons, *coating)]
    if back and first and all_join_at_once(tell.draft):
        back, new = [], [p for p in inside if p not in back]
    eggs = [p for p in members if p.way.top and p.way.dish.kind == "egg" and p.way.cut.id == "cracked"]
    top = [p for p in members if p.way.top and p not in eggs]
    parts = []
    if back:
        parts.append(f"{names(back)} back in{f', with {names(new)}' if new else ''}")
    elif new:
        toss = any(p.way.dish.made.is_tossed for p in new)
        parts.append(f"add {names(new)}{' and turn in the spices' if toss else ''}")
    if top:
        parts.append(f"lay {names(top)} on top{_steaming(top, tell)}")
    if fried:
        parts.append(f"lay the fried {names(fried)} on top")
    if ribbons:
        parts.append(f"beat the {names(ribbons)} and pour them in as a thin stream, stirring slowly")
    if coating:
        parts.append(f"heat down to lowest; beat the {names(coating)} and toss them through until they coat")
    if eggs:
        parts.append(f"make hollows on top and crack in the {names(eggs)}")
    return [capital(part) if n == 0 else part for n, part in enumerate(parts)] or [""]


def _steaming(top: Sequence[Placed], tell: Telling) -> str:
    """That greens on grain or potatoes are left alone."""
    greens = not any(p.way.dish.food.animal for p in top)
    return " to steam, do not stir" if greens and not tell.draft.method.steams else ""


def _lid(tell: Telling, at_s: float, *, first: bool, last: bool, members: Sequence[Placed] = ()) -> str:
    """What the lid and the heat do after something went in, and for how long."""
    draft = tell.draft
    togo = words.duration(max(draft.stages.main_end_s - at_s, 60.0))
    if last and only_soaks(members, tell):
        return "; lid on, off the heat."
    if draft.stages.reduce_s and at_s >= draft.stages.main_end_s - draft.stages.reduce_s - 1.0:
        return f": {togo} to go."
    if draft.method.heat == "oven":
        degC = oven(fan_setting(draft.setting or 175.0, draft.kitchen), tell.units)
        return (
            f". Lid on, into the oven at {degC}: {togo}."
            if first
            else f". Lid on, back in the oven: {togo} to go."
        )
    if draft.method.steams:
        return f". Lid on, medium heat, it should steam: {togo}." if first else f". Lid on: {togo} to go."
    if any(in_shell(p, tell) for p in members):
        return f". Lid on, high heat, shake the pot now and then: {togo}."
    gentle = wants_gentle((p.way.dish.kind for p in draft.placed), tell.store)
    how = "lowest heat, it should only tremble" if gentle else "low heat, it should bubble steadily"
    lid = "Lid on, not locked" if draft.method.id == "open-cooker" else "Lid on"
    within = [*members, *(p for p in draft.placed if add_at_s(p, draft.stages) <= at_s)]
    lid = "Lid ajar" if any(AJAR in tell.hand(p).pot for p in within) else lid
    return f". {lid}, {how}: {togo}." if first else f". {lid}: {togo} to go."


def only_soaks(members: Sequence[Placed], tell: Telling) -> bool:
    """Whether all of it only soaks in what is hot, with the heat off: couscous."""
    return bool(members) and all(tell.hand(p).pot == OFF_HEAT for p in members)


def under_pressure(tell: Telling) -> Iterator[Step]:
    """Locked once, or locked, opened, filled up and locked again; then what is stirred in."""
    draft = tell.draft
    when = draft.stages
    inside = [p for p in draft.placed if p.way.lane_is(MAIN)]
    stay = all_join_at_once(draft)
    into = [
        p
        for p in inside
        if p.way.lead != SOFTENED
        and not is_toasted(p, when)
        and not (p.way.lead == BROWNED and (stay or stays_in(p)))
    ]
    scrape = ", scrape the bottom loose" if when.browned_s > 0 else ""
    what = pour_in(tell, oil=when.softened_s == 0)
    parts = [f"{what}{scrape}." if what else "", f"{capital(names(into))} in." if into else ""]
    if text := " ".join(part for part in parts if part):
        yield step(Do.ADD, when.main_start_s - 60.0, text, into, hands_s=60)
    yield from _sealed("Lock the lid", when.main_start_s, when.at_pressure_s, when.first_end_s)
    if second := [p for p in draft.placed if p.way.lane_is(SECOND)]:
        slow = when.reopened_s - when.first_end_s > QUICK_RELEASE_S
        how = SLOW_RELEASE if slow else QUICK_RELEASE
        yield step(Do.RELEASE, when.first_end_s, how, hands_s=30, safety=True)
        text = f"Lid off once the pressure is gone: {names(second)} in."
        yield step(Do.ADD, when.reopened_s, text, second, hands_s=60)
        yield from _sealed("Lock the lid again", when.resealed_s, when.at_pressure_again_s, when.main_end_s)
    how = SLOW_RELEASE if draft.slow_release else QUICK_RELEASE
    yield step(Do.RELEASE, when.main_end_s, how, hands_s=30, safety=True)
    yield from _boil_down(tell, when.opened_s)
    yield from _stirred_in(tell)


def _sealed(lock: str, lid_s: float, full_s: float, release_s: float) -> Iterator[Step]:
    rise, held = words.duration(full_s - lid_s), words.at_least(release_s - full_s)
    text = f"{lock}, high heat up to full pressure (about {rise})."
    yield step(Do.LID, lid_s, text, hands_s=30, safety=True)
    yield step(Do.HEAT, full_s, f"Full pressure: heat down, {held} from now.", hands_s=20)


def _boil_down(tell: Telling, at_s: float) -> Iterator[Step]:
    """A thin sauce, with the lid off at the end."""
    if tell.draft.stages.reduce_s:
        togo = words.duration(tell.draft.stages.reduce_s)
        text = f"Lid off, high heat: boil the sauce down, {togo}, stirring, until it coats a spoon."
        if tell.draft.dinner.technique.ends == DRY:
            text = f"Lid off, medium-high heat: turn gently, {togo}, until nothing runs and the spices cling."
        yield step(Do.HEAT, at_s, text, hands_s=60)


def _stirred_in(tell: Telling) -> Iterator[Step]:
    """What is too quick for pressure."""
    draft = tell.draft
    when = draft.stages
    after = [p for p in draft.placed if p.way.lane_is(AFTER)]
    for number, (at, members) in enumerate(groups_in(after, draft)):
        soaks = only_soaks(members, tell)
        opened = f"Lid off{'' if soaks else ', back on the heat'}: "
        begin = opened if number == 0 and not when.reduce_s else ""
        togo = words.duration(when.after_end_s - at)
        said = each_once(tell.hand(p).pot for p in members)
        laid = [p for p in members if p.way.dish.kind in LAID_ON]
        under = any(p.way.dish.kind in GRAIN for p in after if add_at_s(p, when) < at + 1.0)  # which steams
        how = (
            "lid laid on, off the heat"
            if soaks
            else f"lid laid on, not locked, {'lowest' if laid else 'low'} heat, {togo}"
            if laid or under
            else f"let it bubble, {togo}"
        )
        text = capital(f"{begin}{_given(members, laid)}, {how}.{said}")
        yield step(Do.ADD, at, text, members, hands_s=60)


def _given(members: Sequence[Placed], laid: Sequence[Placed]) -> str:
    """What is stirred in, and what is laid on top because stirring breaks it: fish, shellfish."""
    eggs = [p for p in laid if p.way.dish.kind == "egg"]
    laid = [p for p in laid if p not in eggs]
    stirred = [p for p in members if p not in (*laid, *eggs)]
    parts = [f"stir in {names(stirred)}"] if stirred else []
    parts += [f"lay {names(laid)} on top"] if laid else []
    parts += [f"crack in the {names(eggs)} one by one"] if eggs else []
    return " and ".join(parts)
