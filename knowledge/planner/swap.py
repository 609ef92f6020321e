"""Would this replacement still finish with the rest? Answered by planning with the rest held.

In order, the first that works is the answer:

1. the new food in the old one's cut at the old one's moment     -> together
2. another cut, or another moment, within the same cook          -> adjust
3. the whole cook a little longer, everything still in its window -> adjust, finish shifts
4. none of these                                                 -> no, and what would work
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from knowledge.foods.model import Food, Role
from knowledge.foods.store import Store
from knowledge.planner import room, words
from knowledge.planner.cautions import allergens_of, hazards, minimums
from knowledge.planner.choose import plan as plan_again
from knowledge.planner.compose import plan_of
from knowledge.planner.dinner import Dinner, Dish, scaled
from knowledge.planner.draft import AFTER, MAIN, SOFTENED, Draft, Placed, Way
from knowledge.planner.meant import barred, food_of, item_named, most_alike
from knowledge.planner.methods import fit_of, methods
from knowledge.planner.model import (
    Caution,
    Have,
    Plan,
    PlanItem,
    Request,
    SwapAnswer,
    Swapped,
    Verdict,
)
from knowledge.planner.recall import (
    broil_s,
    dinner_of,
    method_of,
    placed_of,
    redrawn,
    relaid,
    steady,
    ways_now,
)
from knowledge.planner.replan import SOON_S, is_sealed, join
from knowledge.planner.search import lay
from knowledge.planner.stages import first_in_s
from knowledge.units import weight

LONGEST_SHIFT_S = 25 * 60.0
POOR_FIT = 4.5  # of 10: below that a cook says no, even if it would be done in time


def swap(
    plan: Plan, *, frm: str | None, to: Have | None, store: Store, elapsed_s: float | None = None
) -> SwapAnswer:
    """The verdict on putting `to` in the place of the food named `frm` (a name or an id).

    `frm` None: `to` is added, or takes the place of what it is most like when the words
    leave it open; `to` None: `frm` is taken out. `elapsed_s` is the plan's own time when
    the cook is running: what is in stays in.
    """
    item = item_named(plan, frm, store)
    new = food_of(to, store)
    if frm is not None and item is None:
        names = words.listed([i.food for i in plan.items])
        return _no(f"There is no {frm} in this plan; there is {names}.")
    if to is not None and new is None:
        return _no(f"I do not know {to.said or to.food_id}, so I cannot work out how it cooks.")
    if item is None and new is None:
        return _no("Tell me what should go out and what should come in.")
    if (
        item is not None
        and new is not None
        and item.food_id == new.id
        and (to is None or to.state in (None, item.state or None))
    ):
        return SwapAnswer(
            verdict=Verdict.TOGETHER, finish_shift_s=0.0, change=(), cautions=(), plan=plan,
            text=f"{item.food} is in the plan already.",
        )  # fmt: skip
    if new is not None:
        why_not = barred(new, plan.request)
        if why_not:
            return _no(f"No {new.name}: {why_not}.")
    if item is not None and elapsed_s is not None and item.in_s <= elapsed_s:
        return _no(f"The {item.food} is in already, so it stays in." + (
            f" {new.name[:1].upper()}{new.name[1:]} could go beside it." if new else ""))  # fmt: skip
    if item is None and new is not None and elapsed_s is None and frm is None:
        item = most_alike(plan, new, store)
    request = _changed(plan, item, to, new, store)
    restored = not request.swapped and bool(plan.request.swapped) and elapsed_s is None
    answer = _held(plan, request, item, new, store, elapsed_s)
    if restored and answer.verdict is not Verdict.NO:
        again = plan_again(request, store=store)
        if isinstance(again, Plan):
            return replace(answer, plan=again, finish_shift_s=again.total_s - plan.total_s)
    return answer


def _held(
    plan: Plan,
    request: Request,
    item: PlanItem | None,
    new: Food | None,
    store: Store,
    elapsed_s: float | None,
) -> SwapAnswer:
    """The verdict with everything else where it is."""
    dinner = dinner_of(request, store)
    dinner = _in_amount(dinner, item, new, request)
    before = placed_of(plan, dinner_of(plan.request, store), store)
    rest = tuple(p for p in before if item is None or not _is(p, item))
    protein_goes = _loses_the_protein(plan, item, new, store)
    if new is None or new.role is not Role.COOK:
        draft = redrawn(plan, request, dinner, steady(plan, rest), store) if rest else None
        if draft is None:
            return _no("Then nothing is left to cook.")
        made = plan_of(draft, request, (), store=store)
        name = new.name if new else f"no {item.food if item else ''}"
        shift = made.total_s - plan.total_s
        return _weaker(
            SwapAnswer(
                verdict=Verdict.TOGETHER, finish_shift_s=0.0 if abs(shift) < 90 else shift, change=(),
                text=f"{name[:1].upper()}{name[1:]}: fine, the rest stays as it is.",
                cautions=tuple(allergens_of(new, new.name)) if new else (), plan=made,
            ),
            protein_goes and not (plan.items and _has_protein(made, store)),
        )  # fmt: skip
    dish = next((d for d in dinner.dishes if d.food.id == new.id), None)
    if dish is None:
        return _no(f"No {new.name}: it is left out of this dinner.")
    [ways] = ways_now((dish,), plan, request, store)
    old = next((p for p in before if item is not None and _is(p, item)), None)
    if ways and max(w.fit for w in ways) < POOR_FIT:
        return _refusal(plan, request, item, dish, (), store)
    found = _first_that_holds(plan, request, dinner, rest, old, ways, store, elapsed_s)
    if found is None:
        return _refusal(plan, request, item, dish, ways, store)
    draft, here, verdict = found
    fitted = _fitted(plan, request, dinner, draft, here, store)
    if fitted is None:
        return _no(f"No: with {dish.name} it would not fit the {plan.size}.")
    draft, here = fitted
    made = plan_of(draft, request, (), store=store)
    told = _told(plan, made, item, here, verdict, tuple(_safety(here, plan, store)))
    return _weaker(told, protein_goes and not _has_protein(made, store))


def _fitted(
    plan: Plan, request: Request, dinner: Dinner, draft: Draft, here: Placed, store: Store
) -> tuple[Draft, Placed] | None:
    """The draft with less of the new dish, when all of it does not fit; None when hardly any would."""
    for _ in range(5):
        limit = room.limit(draft.vessel, draft.method, [p.way for p in draft.placed])
        if draft.fill <= max(limit, plan.fill) * 1.01:
            return draft, here
        dish = scaled(here.way.dish, max(0.3, 1.0 - 1.1 * (draft.fill - limit) / draft.fill))
        smaller = replace(here, way=replace(here.way, dish=dish))
        placed = tuple(smaller if p == here else p for p in draft.placed)
        draft, here = redrawn(plan, request, dinner, placed, store), smaller
    return None


def _first_that_holds(
    plan: Plan,
    request: Request,
    dinner: Dinner,
    rest: tuple[Placed, ...],
    old: Placed | None,
    ways: Sequence[Way],
    store: Store,
    elapsed_s: float | None,
) -> tuple[Draft, Placed, Verdict] | None:
    """The least change under which the new dish is done with the rest."""
    if broil_s(plan):
        return _broiled(plan, request, dinner, rest, old, ways, store, elapsed_s)
    if old is not None:
        for way in sorted(ways, key=lambda w: (not _same_cut(w, old.way), w.window.cost)):
            if (
                _same_cut(way, old.way)
                and way.window.lane == old.way.window.lane
                and (way.lead == SOFTENED or way.window.lo_s <= old.add_s <= way.window.hi_s)
            ):
                here = Placed(way=way, add_s=old.add_s)
                draft = redrawn(plan, request, dinner, (*rest, here), store)
                if elapsed_s is None or first_in_s(here, draft.stages) >= elapsed_s:
                    return draft, here, Verdict.TOGETHER
    all_now = (*rest, old) if old is not None else rest
    longest = {
        lane: max((p.add_s for p in all_now if p.way.window.lane == lane), default=0.0)
        for lane in (MAIN, AFTER)
    }
    used = sorted({p.add_s for p in rest})
    for way in sorted(ways, key=lambda w: w.window.cost):
        lane = way.window.lane
        for at in _moments(way, used, longest[lane], sealed=is_sealed(plan) and lane == MAIN):
            here = Placed(way=way, add_s=at)
            draft = redrawn(plan, request, dinner, (*rest, here), store)
            if elapsed_s is None or first_in_s(here, draft.stages) >= elapsed_s + SOON_S:
                return draft, here, Verdict.ADJUST
    if elapsed_s is not None:
        joined = join(plan, rest, ways, elapsed_s)
        if joined is not None:
            return redrawn(plan, request, dinner, joined, store), joined[-1], Verdict.ADJUST
        return None
    method = redrawn(plan, request, dinner, rest, store).method if rest else None
    if method is None:
        return None
    fixed = [[p.way] for p in rest]
    laid = lay([*(p.way.dish for p in rest), ways[0].dish], method, [*fixed, list(ways)]) if ways else None
    if laid is None or laid[1]:
        return None
    draft = redrawn(plan, request, dinner, laid[0], store)
    if draft.stages.serve_s - plan.cooking_s > LONGEST_SHIFT_S:
        return None
    here = next(p for p in laid[0] if p.way.dish is ways[0].dish)
    return draft, here, Verdict.ADJUST


def _broiled(
    plan: Plan,
    request: Request,
    dinner: Dinner,
    rest: tuple[Placed, ...],
    old: Placed | None,
    ways: Sequence[Way],
    store: Store,
    elapsed_s: float | None,
) -> tuple[Draft, Placed, Verdict] | None:
    """The same with a roast that ends under the broiler, where one lane's minutes count in the other."""
    if not ways:
        return None
    if elapsed_s is not None:
        joined = join(plan, rest, ways, elapsed_s)
        if joined is None:
            return None
        draft = redrawn(plan, request, dinner, steady(plan, joined), store)
        return draft, draft.placed[-1], Verdict.ADJUST
    laid = relaid(plan, request, dinner, rest, (ways[0].dish,), store)
    if laid is None or laid.stages.serve_s - plan.cooking_s > LONGEST_SHIFT_S:
        return None
    here = next(p for p in laid.placed if p.way.dish.food.id == ways[0].dish.food.id)
    same = old is not None and _same_cut(here.way, old.way) and here.way.window.lane == old.way.window.lane
    together = same and old is not None and abs(here.add_s - old.add_s) < 60.0
    return laid, here, Verdict.TOGETHER if together else Verdict.ADJUST


def _moments(way: Way, used: Sequence[float], longest_s: float, *, sealed: bool) -> Iterator[float]:
    """Add times worth trying for a way: those of the others first, then its own best."""
    window = way.window
    if sealed or way.lead == SOFTENED:
        if window.lo_s <= longest_s <= window.hi_s:
            yield longest_s
        return
    for at in sorted(used, key=lambda t: abs(t - window.best_s)):
        if window.lo_s <= at <= window.hi_s:
            yield at
    if window.lo_s <= longest_s:
        yield min(window.best_s, longest_s)


def _told(
    plan: Plan,
    made: Plan,
    item: PlanItem | None,
    here: Placed,
    verdict: Verdict,
    cautions: tuple[Caution, ...],
) -> SwapAnswer:
    units = plan.request.kitchen.units
    shown = next(i for i in made.items if i.food_id == here.way.dish.food.id)
    shift = made.cooking_s - plan.cooking_s
    shift = 0.0 if abs(shift) < 90 else shift
    name = shown.label[:1].upper() + shown.label[1:]
    if verdict is Verdict.TOGETHER and not shift:
        before = item.label if item is not None else "that"
        text = f"{name} instead of {before}: yes, same cut, same moment; all done together."
        return SwapAnswer(
            verdict=verdict, finish_shift_s=0.0, change=(), text=text, cautions=cautions, plan=made
        )
    change: list[tuple[str, str]] = []
    said: list[str] = []
    if item is None or shown.cut_id != item.cut_id:
        change.append(("cut", shown.cut))
        said.append("whole" if shown.cut_id == "whole" else f"in {shown.cut}")
    if item is None or abs(shown.in_s - item.in_s) >= 60:
        change.append(("in_min", f"{shown.in_s / 60:.0f}"))
        where = (
            ("after the lid comes off" if is_sealed(plan) else "under the broiler")
            if here.way.lane_is(AFTER)
            else f"in at {max(0, round(shown.in_s / 60))} min"
        )
        said.append(where)
    if shift:
        change.append(("finish_shift_min", f"{shift / 60:+.0f}"))
        said.append(f"dinner {words.duration(abs(shift))} {'later' if shift > 0 else 'sooner'}")
    if not change:
        change.append(("grams", f"{shown.grams:.0f}"))
        said.append(weight(shown.grams, units))
    text = f"{name}: yes, with this change: {', '.join(said)}."
    return SwapAnswer(
        verdict=Verdict.ADJUST,
        finish_shift_s=shift,
        change=tuple(change),
        text=text,
        cautions=cautions,
        plan=made,
    )


def _refusal(
    plan: Plan, request: Request, item: PlanItem | None, dish: Dish, ways: Sequence[Way], store: Store
) -> SwapAnswer:
    """No, why, and what would work instead."""
    if not ways:
        why = f"{dish.name} does not cook well this way in the {plan.vessel}{_for_what(dish, store)}"
    else:
        lo = min(w.window.lo_s for w in ways)
        why = f"{dish.name} needs {words.duration(lo)}, the rest is not good for so long"
        if max(w.window.hi_s for w in ways) < (item.add_s if item else 0.0):
            why = f"{dish.name} would be long past its best by the time the rest is done"
    again = plan_again(request, store=store)
    other = ""
    if isinstance(again, Plan) and not any(left.food == dish.food.name for left in again.left_out):
        place = "a new plan" if again.vessel == plan.vessel else f"the {again.vessel}"
        other = f" It would work in {place}, about {words.duration(again.total_s)} in all."
    text = f"No: {why}.{other}"
    return SwapAnswer(
        verdict=Verdict.NO,
        finish_shift_s=0.0,
        change=(),
        text=text,
        cautions=(
            *hazards([dish], kind=method_of(plan, store).kind, store=store),
            *allergens_of(dish.food, dish.name),
        ),
        plan=again if isinstance(again, Plan) else None,
    )


def _for_what(dish: Dish, store: Store) -> str:
    """What it is for instead, when one way stands out."""
    fit = fit_of(dish, store)
    if dish.is_raw_bean:
        return ": dry beans need a soak and a hard boil first, half cooked they are poisonous"
    if fit is None or not fit.by_method:
        return ""
    best = max(sorted(fit.by_method), key=lambda m: fit.by_method[m])
    return f"; {next(m.name for m in methods(store) if m.id == best)} is what it is for"


def _no(text: str) -> SwapAnswer:
    return SwapAnswer(verdict=Verdict.NO, finish_shift_s=0.0, change=(), text=text, cautions=(), plan=None)


def _same_cut(new: Way, old: Way) -> bool:
    """The same cut, or pieces so alike that nobody cuts anew."""
    return new.cut.id == old.cut.id or (
        new.cut.shape == old.cut.shape != "whole"
        and abs(new.cut.size_mm - old.cut.size_mm) <= 0.15 * old.cut.size_mm
    )


def _is(placed: Placed, item: PlanItem) -> bool:
    return (placed.way.dish.food.id, placed.way.dish.state) == (item.food_id, item.state)


def _safety(here: Placed, plan: Plan, store: Store) -> Iterator[Caution]:
    """What the new food brings: its minimum, what is dangerous about it, its allergens."""
    kind = method_of(plan, store).kind
    yield from minimums((here,), plan.request.kitchen.units, store=store)
    yield from hazards([here.way.dish], kind=kind, store=store)
    yield from allergens_of(here.way.dish.food, here.way.dish.name)


def _loses_the_protein(plan: Plan, item: PlanItem | None, new: Food | None, store: Store) -> bool:
    """Whether what fills the plate goes and something goes in that does not."""
    if item is None or new is None or store.food(item.food_id).part != "protein":
        return False
    return new.part != "protein" or new.role is not Role.COOK


def _has_protein(plan: Plan, store: Store) -> bool:
    return any(store.food(i.food_id).part == "protein" for i in plan.items)


def _weaker(answer: SwapAnswer, weaker: bool) -> SwapAnswer:
    """The answer, with a word that the dinner loses its protein; no swap like for like then."""
    if not weaker or answer.verdict is Verdict.NO:
        return answer
    text = f"{answer.text} The dinner loses its protein: eggs, beans, cheese or tofu would round it off."
    change = (*answer.change, ("protein", "missing"))
    return replace(answer, verdict=Verdict.ADJUST, text=text, change=change)


def _changed(plan: Plan, item: PlanItem | None, to: Have | None, new: Food | None, store: Store) -> Request:
    """The request with the one food in the place of the other; a swap back finds the old amounts."""
    request = plan.request
    out = None
    if item is not None:
        out = next((h for h in request.have if h.food_id == item.food_id), None)
    into = (
        replace(to, food_id=new.id, said=to.said or new.name) if to is not None and new is not None else None
    )
    history = request.swapped
    if into is not None and out is not None:
        bare = into.grams is None and into.qty is None
        back = next(
            (s for s in reversed(history) if s.out.food_id == into.food_id and s.into.food_id == out.food_id),
            None,
        )
        if back is not None and bare:
            into = back.out
            history = tuple(s for s in history if s is not back)
        else:
            history = (*history, Swapped(out=out, into=into))
    have: list[Have] = []
    for h in request.have:
        if h is out:
            if into is not None:
                have.append(into)
        else:
            have.append(h)
    if out is None and into is not None:
        have.append(into)
    return replace(request, have=tuple(have), swapped=history)


def _in_amount(dinner: Dinner, item: PlanItem | None, new: Food | None, request: Request) -> Dinner:
    """As much of the new food as fills the old one's place, when nobody said how much."""
    if item is None or new is None:
        return dinner
    said = next((h for h in request.have if h.food_id == new.id), None)
    if said is None or said.grams is not None or said.qty is not None:
        return dinner
    units = request.kitchen.units
    dishes, assumed = list(dinner.dishes), list(dinner.assumed)
    for i, dish in enumerate(dishes):
        if dish.food.id == new.id and _like_weights(dish, item):
            dishes[i] = replace(dish, grams=item.grams)
            guess, now = (words.amount(d, units) for d in (dish, dishes[i]))
            assumed = [now if note == guess else note for note in assumed]
    return replace(dinner, dishes=tuple(dishes), assumed=tuple(assumed))


def _like_weights(dish: Dish, item: PlanItem) -> bool:
    """Whether weight for weight is a fair exchange: fresh vegetables for fresh vegetables."""
    return 0.4 < dish.grams / max(item.grams, 1.0) < 2.5 and not (
        dish.piece_g and dish.piece_g > 0.5 * item.grams
    )
