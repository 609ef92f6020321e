"""The steps in the heat: browning, softening, what goes in when, the lid, pressure and its release."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from knowledge.planner import techniques, words
from knowledge.planner.draft import AFTER, BROWNED, SEARED, SOFTENED, Draft, Placed
from knowledge.planner.model import Do, Step
from knowledge.planner.search.browning import batches, thaw_s
from knowledge.planner.search.frying import LATE, STILL
from knowledge.planner.search.stages import FRIED_DOWN_S, add_at_s, is_toasted, out_s
from knowledge.planner.writing.handling import LEAVES_LAST
from knowledge.planner.writing.phrases import Telling, capital, core_text, names, softening
from knowledge.planner.writing.pot import under_a_lid, under_pressure
from knowledge.planner.writing.sauces import late
from knowledge.planner.writing.telling import all_join_at_once, groups_in, stays_in, step
from knowledge.planner.writing.tray import on_the_tray

FRIED_UNTIL = (  # how long the aromatics were in the fat [s], and how they look then
    (720.0, "deep brown, with a splash of water when they catch"), (420.0, "soft and golden"),
    (121.0, "soft"), (0.0, "fragrant"),
)  # fmt: skip
TOSSED, FRAGRANT = "keep it moving", "stir until fragrant"
SPLASH = " with a splash of water, scraping up the brown bits"


def cooking(tell: Telling) -> Iterator[Step]:
    """From the first food in the heat until all is done."""
    yield from _pan_stage(tell)
    match tell.draft.method.kind:
        case "dry":
            yield from on_the_tray(tell)
        case "pan":
            yield from _stir(tell)
        case "sealed":
            yield from under_pressure(tell)
        case _:
            yield from under_a_lid(tell)
    yield from late(tell)


CRUST_S = 8 * 60.0  # longer on high heat and the crust is black before the middle is done


def _pan_stage(tell: Telling) -> Iterator[Step]:
    """Browning or searing, then the aromatics."""
    draft = tell.draft
    when = draft.stages
    meat_s = when.meat_out_s
    every = [p for p in draft.placed if p.way.lead == SEARED]
    still = [p for p in every if p.way.manner == STILL]
    seared = [p for p in every if p not in still]
    browned = [p for p in draft.placed if p.way.lead == BROWNED]
    if seared:
        flat = all(p.way.cut.id == "whole" or p.way.piece.shape == "disk" for p in seared)
        how = _sides(tell, seared) or ("turn once" if flat else "brown all over")
        if meat_s > CRUST_S and all(p.way.cut.id == "whole" and p.way.piece.shape != "disk" for p in seared):
            how = "2 min a side on high, then heat down to medium, turning now and then"
        turns = _turns(seared, draft)
        text = f"{names(seared)} into the hot pan; {how}{turns}, about {words.duration(meat_s)}."
        yield step(Do.BROWN, 0.0, capital(text), seared, hands_s=meat_s)
    if still:
        text = f"{names(still)} into the hot pan, apart: {_moves(still, tell)}{_turns(still, draft)}, about "
        text = capital(f"{text}{words.duration(when.still_s)}.")
        yield step(Do.BROWN, meat_s, text, still, hands_s=when.still_s)
    heaps, pieces = [p for p in browned if stays_in(p)], [p for p in browned if not stays_in(p)]
    golden = [p for p in pieces if p.way.manner == STILL]  # paneer and the like, after the meat
    pieces = [p for p in pieces if p not in golden]
    if pieces:
        it = (
            "it"
            if len(pieces) == 1 and words.label(pieces[0].way.dish) == pieces[0].way.dish.name
            else "them"
        )
        out = f"leave {it} in" if all_join_at_once(draft) else "then lift out onto a plate"
        turns = _turns(pieces, draft)
        one = len(pieces) == 1 and pieces[0].way.dish.pieces == 1
        how = _sides(tell, pieces) or ("on all sides" if one else "in one layer")
        text = f"Brown {names(pieces)} {how}{turns}, {words.duration(meat_s)} in all; {out}."
        yield step(Do.BROWN, 0.0, text, pieces, hands_s=meat_s)
    if golden:
        text = f"{names(golden)} into the hot fat: {_moves(golden, tell)}{_turns(golden, draft)}, about "
        out = "leave them in" if all_join_at_once(draft) else "then lift out onto a plate"
        text = capital(f"{text}{words.duration(when.still_s)}; {out}.")
        yield step(Do.BROWN, meat_s, text, golden, hands_s=when.still_s)
    if heaps:
        text = f"{capital(names(heaps))} into the hot fat: {_broken_up(heaps, meat_s)}; leave it in."
        yield step(Do.BROWN, 0.0, text, heaps, hands_s=meat_s)
    soft = [p for p in draft.placed if p.way.lead == SOFTENED]
    if soft:
        took_s = when.softened_s - when.toast_s - when.browned_s
        took_s -= FRIED_DOWN_S * any(p.way.dish.made.is_fried_down for p in soft)
        state = next(said for from_s, said in FRIED_UNTIL if took_s >= from_s)
        text = softening(soft, state, tell)
        softening_s = when.softened_s - when.toast_s - when.browned_s
        yield step(Do.ADD, when.browned_s, text, soft, hands_s=softening_s)
    if toast := [p for p in draft.placed if is_toasted(p, when)]:
        into = "in" if soft else "into the fat, medium heat"
        until = f"stir until hot and clear at the edges, {words.duration(when.toast_s)}"
        text = f"{capital(names(toast))} {into}: {until}."
        yield step(Do.ADD, when.softened_s - when.toast_s, text, toast, hands_s=when.toast_s)
    sliced = [p for p in seared if p.way.rewarmed]
    if sliced:
        hot = core_text(sliced, tell.units)
        text = f"{capital(names(sliced))} out{hot}; rest under foil, then slice across the grain."
        yield step(Do.TAKE_OUT, meat_s, text, sliced, safety=True)
    seared = [p for p in seared if not p.way.rests]
    if seared and (still or any(p.way.lead != SEARED for p in draft.placed)):
        more = (
            " under foil: they go back in at the end" if any(p.way.cut.id == "whole" for p in seared) else ""
        )
        text = f"{capital(names(seared))} out onto a clean plate{more}."
        yield step(Do.TAKE_OUT, meat_s, text, seared)
    if still and len(still) < len(draft.placed):
        text = f"{capital(names(still))} out onto a clean plate: laid back at the end."
        yield step(Do.TAKE_OUT, when.browned_s, text, still)


def _moves(still: Sequence[Placed], tell: Telling) -> str:
    """How what lies still is turned, in its own words where all of it has the same."""
    said = {tell.hand(p).pan for p in still} - {""}
    return said.pop() if len(said) == 1 else "leave alone until golden, then turn"


def _broken_up(heaps: Sequence[Placed], for_s: float) -> str:
    """How mince is browned; frozen in a block it is thawed in the pan first."""
    thaw = max(thaw_s(p.way.dish) for p in heaps)
    browned = words.duration(for_s - thaw)
    brown = f"break up, leave alone until the water is gone, then stir until brown, {browned}"
    if not thaw:
        return brown
    return f"lid on, turn it and scrape off what has thawed, {words.duration(thaw)}; then {brown}"


def _turns(placed: Sequence[Placed], draft: Draft) -> str:
    """ ", in 2 batches", when the pan does not take them at once."""
    count = batches([p.way for p in placed], draft.size)
    return f", in {count} batches" if count > 1 else ""


def _sides(tell: Telling, placed: Sequence[Placed]) -> str:
    """Which side first, when all of them have one."""
    said = {tell.hand(p).brown for p in placed}
    return said.pop() if len(said) == 1 else ""


def _stir(tell: Telling) -> Iterator[Step]:
    draft = tell.draft
    end = draft.stages.main_end_s
    one_kind = len({p.way.manner == STILL for p in draft.placed}) == 1
    alone = one_kind and all(p.way.lead == SEARED for p in draft.placed)
    tossed = [p for p in draft.placed if p.way.lead != SOFTENED and not stays_in(p)]
    splash = "" if any(p.way.dish.kind == "egg" for p in draft.placed) else SPLASH  # no water into eggs
    for at, members in groups_in([p for p in tossed if p.way.rewarmed or not p.way.rests], draft):
        back = [p for p in members if p.way.lead == SEARED]
        eggs = [p for p in members if p.way.dish.kind == "egg" and p not in back]
        by_move: dict[str, list[Placed]] = {}
        for p in members:
            if p not in back and p not in eggs:
                by_move.setdefault(_move(p, tell), []).append(p)
        by_move = _at_one(by_move)
        parts = [f"{names(new)} in: {how}" for how, new in by_move.items()]
        if parts:
            aside = any(p.way.manner == STILL for p in members if p not in back) and any(
                add_at_s(p, draft.stages) < at for p in tossed if not p.way.lead
            )
            room = "push the rest aside; " if aside else ""
            text = f"{capital(room + '; '.join(parts))}. {words.duration(end - at)} to go."
            yield step(Do.ADD, at, text, [p for new in by_move.values() for p in new], hands_s=60)
        if eggs:
            joined = any(add_at_s(p, draft.stages) > at + 1.0 for p in draft.placed if not p.way.rests)
            alone_in = len(draft.placed) == len(eggs)
            down = "" if alone_in else "heat down to medium, "
            stirred = f"{down}stir slowly until set" if joined or alone_in else ""
            how = stirred or "pour over and leave, lid on, heat low, until set"
            yield step(Do.ADD, at, _eggs_in(eggs, how, down, joined=joined), eggs, hands_s=60)
        if sliced := [p for p in back if p.way.rewarmed]:
            text = f"Slices of {names(sliced)} and their juice back in{splash}; toss a minute, no longer."
            yield step(Do.ADD, at, text, sliced, hands_s=60)
        laid = [p for p in back if p.way.manner == STILL and p.way.dish.kind != "egg"]
        folded = [p for p in back if p.way.manner == STILL and p not in laid]
        if folded and not alone:
            text = f"Break up the {names(folded)} and fold them back in."
            yield step(Do.ADD, at, text, folded, hands_s=30)
        if laid and not alone:
            text = f"Lay {names(laid)} back on top, to be hot again; do not stir any more."
            yield step(Do.ADD, at, text, laid, hands_s=30)
        back = [p for p in back if not p.way.rewarmed and p not in (*laid, *folded)]
        if back and not alone:
            hot = core_text([p for p in back if not p.way.held], tell.units)
            text = f"{capital(names(back))} back in{splash}; turn until hot all through{hot}."
            yield step(Do.ADD, at, text, back, hands_s=60)


def _eggs_in(eggs: Sequence[Placed], usual: str, down: str, *, joined: bool) -> str:
    """How eggs go into the open pan: as the dish has it, else as its other foods allow.

    `joined`: something is stirred in after them, so they do not stay whole.
    """
    match eggs[0].way.dish.made.eggs:
        case techniques.CRACKED if not joined:
            return f"Heat down to low, make hollows, crack in the {names(eggs)}; lid on until they are firm."
        case techniques.LEFT if not joined:
            usual = f"{down}pour over, stir once and leave, lid on, until set"
        case techniques.STIRRED:
            usual = f"{down}stir slowly until set"
    return f"Beat the {names(eggs)} with a pinch of salt; {usual}."


def _at_one(by_move: dict[str, list[Placed]]) -> dict[str, list[Placed]]:
    """One order for one pan: what goes in together is moved together, garlic apart."""
    apart = {how: new for how, new in by_move.items() if how in (FRAGRANT, LEAVES_LAST)}
    if len(by_move) - len(apart) < 2:
        return by_move
    return {TOSSED: [p for how, new in by_move.items() if how not in apart for p in new], **apart}


def _move(placed: Placed, tell: Telling) -> str:
    """How it is moved in the open pan; meat in strips and dice is stirred, whatever a whole piece wants."""
    if placed.way.manner == LATE:
        return FRAGRANT
    dish, whole = placed.way.dish, placed.way.cut.shape in ("whole", "slab", "grain")
    is_meat = bool(dish.food.animal) and dish.food.animal != "fish"
    return (tell.hand(placed).pan if whole or not is_meat else "") or TOSSED


def done_s(placed: Placed, draft: Draft) -> float:
    """When a food is done by the plan's own numbers, counted like the steps."""
    when = draft.stages
    if placed.way.lead == SEARED:
        return out_s(placed, when) if placed.way.rests or placed.way.held else when.main_end_s
    if placed.way.lane_is(AFTER):
        return when.after_end_s - placed.add_s + placed.way.window.lo_s
    if draft.method.kind == "sealed":
        return when.opened_s
    return when.main_end_s - placed.add_s + placed.way.window.lo_s
