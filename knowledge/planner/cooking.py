"""The steps in the heat: browning, softening, what goes in when, the lid, pressure and its release."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.physics.safety import RAW_BEAN_BOIL_S
from knowledge.planner import words
from knowledge.planner.draft import AFTER, BROWNED, SEARED, SOFTENED, Draft, Placed
from knowledge.planner.handling import BOIL_UP, OFF_HEAT
from knowledge.planner.heat import boils_hard, wants_gentle
from knowledge.planner.model import Do, Step
from knowledge.planner.phrases import Telling, capital, core_text, names, sheet_name
from knowledge.planner.room import floor_m2
from knowledge.planner.stages import add_at_s, fan_setting, out_s
from knowledge.planner.telling import step
from knowledge.units import oven, volume

GLOW_S = 240.0  # until a broiler glows
TURN_FROM_MM = 18.0  # under the broiler; what is thinner is done from above
TURN_FROM_S = 22 * 60.0  # shorter roasts need no turning
ALL_ROUND_FROM_S = 12 * 60.0  # but sausages and wings do, from here
LATE_S, BRUSHED_S = 180.0, 480.0  # before the end: what is stirred in, what is spooned over on a tray


def cooking(tell: Telling) -> Iterator[Step]:
    """From the first food in the heat until all is done."""
    yield from _pan_stage(tell)
    match tell.draft.method.kind:
        case "dry":
            yield from _oven(tell)
        case "pan":
            yield from _stir(tell)
        case "sealed":
            yield from _sealed(tell)
        case _:
            yield from _covered(tell)
    yield from _late(tell)


def fat(tell: Telling) -> str:
    """What the cooking begins in."""
    return words.listed(tell.seasoned.fat) or "oil"


def pour(tell: Telling, *, oil: bool = False) -> str:
    """The liquid as said, with what else is poured in at that moment; "" for none.

    `oil`: nothing was fried before, so the fat goes in here.
    """
    liquid, extra = tell.draft.liquid, [*tell.seasoned.pour, *(tell.seasoned.fat if oil else [])]
    if liquid is None:
        return words.listed(extra)
    said = f"{volume(liquid.ml, tell.units)} {liquid.what}"
    return f"{said} with {words.listed(extra)}" if extra else said


def _pan_stage(tell: Telling) -> Iterator[Step]:
    """Browning or searing, then the aromatics."""
    draft = tell.draft
    when = draft.stages
    seared = [p for p in draft.placed if p.way.lead == SEARED]
    browned = [p for p in draft.placed if p.way.lead == BROWNED]
    if seared:
        how = _sides(tell, seared) or (
            "turn once" if all(p.way.cut.id == "whole" for p in seared) else "brown all over"
        )
        text = f"{names(seared)} into the hot pan; {how}, about {words.duration(when.browned_s)}."
        yield step(Do.BROWN, 0.0, capital(text), seared, hands_s=when.browned_s)
    if browned:
        it = (
            "it"
            if len(browned) == 1 and words.label(browned[0].way.dish) == browned[0].way.dish.name
            else "them"
        )
        out = f"leave {it} in" if _all_join_at_once(draft) else "then lift out onto a plate"
        turns = ", in batches" if floor_m2([p.way for p in browned]) > 1.05 * draft.size.area_m2 else ""
        one = len(browned) == 1 and browned[0].way.dish.pieces == 1
        how = _sides(tell, browned) or ("on all sides" if one else "in one layer")
        text = f"Brown {names(browned)} {how}{turns}, {words.duration(when.browned_s)} in all; {out}."
        yield step(Do.BROWN, 0.0, text, browned, hands_s=when.browned_s)
    soft = [p for p in draft.placed if p.way.lead == SOFTENED]
    if soft:
        spice = tell.seasoned.warmed
        more = f", {words.listed(spice)} in for the last minute" if spice else ""
        state = "soft" if when.softened_s - when.browned_s > 120 else "fragrant"
        text = f"{capital(names(soft))} into the fat, medium heat; stir until {state}{more}."
        yield step(Do.ADD, when.browned_s, text, soft, hands_s=when.softened_s - when.browned_s)
    seared = [p for p in seared if not p.way.rests]
    if seared and any(p.way.lead != SEARED for p in draft.placed):
        more = (
            " under foil: they go back in to be done" if any(p.way.cut.id == "whole" for p in seared) else ""
        )
        text = f"{capital(names(seared))} out onto a clean plate{more}."
        yield step(Do.TAKE_OUT, when.browned_s, text, seared)


def _sides(tell: Telling, placed: Sequence[Placed]) -> str:
    """Which side first, when all of them have one."""
    said = {tell.hand(p).brown for p in placed}
    return said.pop() if len(said) == 1 else ""


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


def _oven(tell: Telling) -> Iterator[Step]:
    draft = tell.draft
    end = draft.stages.after_end_s
    groups = _groups([p for p in draft.placed if not p.way.lane_is(AFTER)], draft)
    for number, (at, members) in enumerate(groups):
        lies = _each(tell.hand(p).tray for p in members)
        if number == 0:
            around = f" Pour {words.listed(tell.seasoned.pour)} around." if tell.seasoned.pour else ""
            where = f"on the {sheet_name(draft.size, tell.units)} in one layer, into the middle of the oven"
            text = f"{capital(names(members))} {where}.{lies}{around}"
        else:
            there = names([p for _, group in groups[:number] for p in group if out_s(p, draft.stages) > at])
            text = (
                f"Oven out, push the {there} aside, {names(members)} on with a little oil, back in: "
                f"{words.duration(end - at)} to go.{lies}"
            )
        yield step(Do.ADD, at, text, members, hands_s=60)
    first = groups[0][0]
    end = draft.stages.main_end_s
    half = first + 0.55 * (end - first)
    busy_then = any(abs(at - half) < 420 for at, _ in groups[1:])
    turned = [p for p in draft.placed if _is_turned(p, tell, first, end, half)]
    if turned and not busy_then:
        yield step(Do.TURN, half, f"Turn {names(turned)}; back in.", turned, hands_s=60)
    yield from _broil(tell)


def _broil(tell: Telling) -> Iterator[Step]:
    """What is laid on last, under the broiler, and turned half way where it is thick."""
    draft = tell.draft
    when = draft.stages
    groups = _groups([p for p in draft.placed if p.way.lane_is(AFTER)], draft)
    if not groups:
        return
    glow = max(when.main_end_s - GLOW_S, when.main_start_s + 60.0)
    yield step(
        Do.HEAT, min(glow, when.main_end_s), "Oven over to broiler, on full, so that it glows.", hands_s=20
    )
    for number, (at, members) in enumerate(groups):
        togo = words.duration(when.after_end_s - at)
        text = (
            f"Sheet out; lay on {names(members)}, dry and oiled. Back in, one rack below the top, under the "
            f"broiler: {togo}. Stay beside it: fat can catch fire, and it burns in a minute."
            if number == 0
            else f"Lay on {names(members)}: {togo} to go under the broiler."
        )
        yield step(Do.ADD, at, text, members, hands_s=60, safety=number == 0)
    thick = [p for _, group in groups for p in group if p.way.piece.size_mm >= TURN_FROM_MM]
    if thick:
        half = when.after_end_s - 0.5 * min(p.add_s for p in thick)
        yield step(Do.TURN, half, f"Turn {names(thick)} once; back under the broiler.", thick, hands_s=45)


def _is_turned(placed: Placed, tell: Telling, first_s: float, end_s: float, half_s: float) -> bool:
    """Roots and chips on a long roast; what browns all round on a shorter one too."""
    if add_at_s(placed, tell.draft.stages) >= half_s - 300.0:
        return False
    if tell.hand(placed).turn:
        return end_s - first_s > ALL_ROUND_FROM_S
    return placed.way.dish.part in ("vegetable", "starch") and end_s - first_s > TURN_FROM_S


def _each(sentences: Iterator[str]) -> str:
    """Each sentence once, with a blank before it."""
    return "".join(f" {s}" for s in dict.fromkeys(sentences) if s and s not in (OFF_HEAT, BOIL_UP))


def _stir(tell: Telling) -> Iterator[Step]:
    draft = tell.draft
    end = draft.stages.main_end_s
    alone = all(p.way.lead == SEARED for p in draft.placed)
    for at, members in _groups(
        [p for p in draft.placed if p.way.lead != SOFTENED and not p.way.rests], draft
    ):
        back = [p for p in members if p.way.lead == SEARED]
        eggs = [p for p in members if p.way.dish.kind == "egg"]
        by_move: dict[str, list[Placed]] = {}
        for p in members:
            if p not in back and p not in eggs:
                by_move.setdefault(_move(p, tell), []).append(p)
        parts = [f"{names(new)} in: {how}" for how, new in by_move.items()]
        if parts:
            text = f"{capital('; '.join(parts))}. {words.duration(end - at)} to go."
            yield step(Do.ADD, at, text, [p for new in by_move.values() for p in new], hands_s=60)
        if eggs:
            joined = any(add_at_s(p, draft.stages) > at for p in draft.placed if not p.way.rests)
            alone_in = len(draft.placed) == len(eggs)
            down = "" if alone_in else "heat down to medium, "
            stirred = f"{down}stir slowly until set" if joined or alone_in else ""
            how = stirred or "pour over and leave, lid on, heat low, until set"
            yield step(Do.ADD, at, f"Beat the {names(eggs)} with a pinch of salt; {how}.", eggs, hands_s=60)
        if back and not alone:
            text = f"{capital(names(back))} back in; turn until hot all through{core_text(back, tell.units)}."
            yield step(Do.ADD, at, text, back, hands_s=60)


def _move(placed: Placed, tell: Telling) -> str:
    """How it is moved in the open pan; meat in strips and dice is stirred, whatever a whole piece wants."""
    dish, whole = placed.way.dish, placed.way.cut.shape in ("whole", "slab", "grain")
    is_meat = bool(dish.food.animal) and dish.food.animal != "fish"
    return (tell.hand(placed).pan if whole or not is_meat else "") or "keep it moving"


def _covered(tell: Telling) -> Iterator[Step]:
    draft = tell.draft
    when = draft.stages
    groups = _groups([p for p in draft.placed if p.way.lead != SOFTENED], draft)
    if when.softened_s > 0 and (what := pour(tell)):
        scrape = "scrape the bottom loose and " if when.browned_s > 0 else ""
        text = f"Pour in {what}; {scrape}bring to a simmer."
        yield step(Do.HEAT, when.softened_s, text, hands_s=60)
    for number, (at, members) in enumerate(groups):
        beans = [p for p in members if boils_hard(p.way.dish, draft.method)]
        parts = _into_the_pot(members, tell, first=number == 0)
        if beans:
            boil = words.duration(RAW_BEAN_BOIL_S)
            lid = f"; boil hard, lid ajar, {boil}: dry beans are poisonous without it."
        else:
            lid = _lid(tell, at, first=number == 0, last=number == len(groups) - 1, members=members)
        said = _each(tell.hand(p).pot for p in members)
        text = ("; ".join(parts) + lid).removeprefix(". ")
        yield step(Do.ADD, at, text + said, members, hands_s=60, safety=bool(beans))
        if beans:
            heat = _lid(tell, at + RAW_BEAN_BOIL_S, first=True, last=False, members=members)
            text = f"The boil is over{heat} Skim off the foam; top up with boiling water if they show."
            yield step(Do.HEAT, at + RAW_BEAN_BOIL_S, text, beans, hands_s=60, safety=True)
    if not groups:
        yield step(Do.LID, when.main_start_s, _lid(tell, when.main_start_s, first=True, last=True)[2:])


def _into_the_pot(members: Sequence[Placed], tell: Telling, *, first: bool) -> list[str]:
    """What goes in and what lies on top, as clauses."""
    inside = [p for p in members if not p.way.top]
    back = [p for p in inside if p.way.lead == BROWNED]
    new = [p for p in inside if p.way.lead != BROWNED]
    if back and first and _all_join_at_once(tell.draft):
        back, new = [], [p for p in inside if p not in back]
    eggs = [p for p in members if p.way.top and p.way.dish.kind == "egg" and p.way.cut.id == "cracked"]
    top = [p for p in members if p.way.top and p not in eggs]
    parts = []
    if back:
        parts.append(f"{names(back)} back in{f', with {names(new)}' if new else ''}")
    elif new:
        parts.append(f"add {names(new)}")
    if top:
        parts.append(f"lay {names(top)} on top")
    if eggs:
        parts.append(f"make hollows on top and crack in the {names(eggs)}")
    return [capital(part) if n == 0 else part for n, part in enumerate(parts)] or [""]


def _lid(tell: Telling, at_s: float, *, first: bool, last: bool, members: Sequence[Placed] = ()) -> str:
    """What the lid and the heat do after something went in, and for how long."""
    draft = tell.draft
    togo = words.duration(max(draft.stages.main_end_s - at_s, 60.0))
    only_soaks = members and all(tell.hand(p).pot == OFF_HEAT for p in members)
    if only_soaks and last and not any(p.way.core_degC for p in draft.placed):
        return "; lid on, off the heat."
    if draft.method.heat == "oven":
        degC = oven(fan_setting(draft.setting or 175.0, draft.kitchen), tell.units)
        return (
            f". Lid on, into the oven at {degC}: {togo}."
            if first
            else f". Lid on, back in the oven: {togo} to go."
        )
    gentle = wants_gentle((p.way.dish.kind for p in draft.placed), tell.store)
    how = "lowest heat, it should only tremble" if gentle else "low heat, it should bubble steadily"
    lid = "Lid on, not locked" if draft.method.id == "open-cooker" else "Lid on"
    return f". {lid}, {how}: {togo}." if first else f". {lid}: {togo} to go."


def _sealed(tell: Telling) -> Iterator[Step]:
    draft = tell.draft
    when = draft.stages
    inside = [p for p in draft.placed if not p.way.lane_is(AFTER)]
    stay = _all_join_at_once(draft)
    into = [p for p in inside if p.way.lead != SOFTENED and not (p.way.lead == BROWNED and stay)]
    scrape = ", scrape the bottom loose" if when.browned_s > 0 else ""
    what = pour(tell, oil=when.softened_s == 0)
    parts = [f"Pour in {what}{scrape}." if what else "", f"{capital(names(into))} in." if into else ""]
    if text := " ".join(part for part in parts if part):
        yield step(Do.ADD, when.main_start_s - 60.0, text, into, hands_s=60)
    rise = words.duration(when.at_pressure_s - when.main_start_s)
    text = f"Lock the lid, high heat up to full pressure (about {rise})."
    yield step(Do.LID, when.main_start_s, text, hands_s=30, safety=True)
    held = words.duration(when.main_end_s - when.at_pressure_s)
    yield step(Do.HEAT, when.at_pressure_s, f"Full pressure: heat down, {held} from now.", hands_s=20)
    how = (
        "Off the heat. Let the pressure fall by itself; do not force the lid."
        if draft.slow_release
        else "Off the heat. Release the pressure the quick way, face and hands away from the steam."
    )
    yield step(Do.RELEASE, when.main_end_s, how, hands_s=30, safety=True)
    for number, (at, members) in enumerate(_groups([p for p in draft.placed if p.way.lane_is(AFTER)], draft)):
        begin = "Lid off, back on the heat: stir" if number == 0 else "Stir"
        togo = words.duration(when.after_end_s - at)
        said = _each(tell.hand(p).pot for p in members)
        yield step(
            Do.ADD, at, f"{begin} in {names(members)}, let it bubble, {togo}.{said}", members, hands_s=60
        )


def _late(tell: Telling) -> Iterator[Step]:
    """Sauces, cream and gravy, in time to get hot."""
    what, draft = tell.seasoned.late, tell.draft
    if not what:
        return
    when = draft.stages
    if draft.method.kind == "dry":
        at = max(when.main_end_s - BRUSHED_S, when.main_start_s + 60.0)
        text = f"Spoon {words.listed(what)} over, back in."
    else:
        at = max(
            when.after_end_s - LATE_S, when.opened_s if draft.method.kind == "sealed" else when.main_start_s
        )
        late = [s for s in draft.dinner.seasonings if any(s.name in said for said in what)]
        rows = {(row["by"], row["value"]): row for row in tell.store.table("handling")}
        boils = any(rows.get(("food", s.food.id), {}).get("pot") == BOIL_UP for s in late)
        dairy = any("milk" in s.food.allergens for s in late)
        how = "let it boil up once" if boils else "keep it hot, not boiling" if dairy else "let it bubble"
        shut = draft.method.kind == "sealed" and not any(p.way.lane_is(AFTER) for p in draft.placed)
        text = f"{'Lid off, low heat: stir' if shut else 'Stir'} in {words.listed(what)}; {how}, 2 min."
    yield step(Do.ADD, at, text, hands_s=45)


def done_s(placed: Placed, draft: Draft) -> float:
    """When a food is done by the plan's own numbers, counted like the steps."""
    when = draft.stages
    if placed.way.lead == SEARED:
        return when.browned_s if placed.way.rests else when.main_end_s
    if placed.way.lane_is(AFTER):
        return when.after_end_s - placed.add_s + placed.way.window.lo_s
    if draft.method.kind == "sealed":
        return when.opened_s
    return when.main_end_s - placed.add_s + placed.way.window.lo_s
