"""The answer to a swap that works, in words: together, or with which change, the most important first."""

from __future__ import annotations

from collections.abc import Iterator

from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner import words
from knowledge.planner.changing.recall import method_of
from knowledge.planner.changing.replans import is_sealed
from knowledge.planner.changing.taste import at_the_table
from knowledge.planner.draft import AFTER, BROWNED, SEARED, SECOND
from knowledge.planner.gathering.dinner import figures
from knowledge.planner.model import Caution, Plan, PlanItem, SwapAnswer, Verdict
from knowledge.units import oven, volume, weight

SHIFT_S = 90.0  # less is the same time to the table
SAME_S = 60.0  # less is the same moment
SAME_SHARE = 0.1  # of the weight; less is the same amount
SAME_ML = 40.0
SINGULAR = ("asparagus", "couscous", "hummus", "molasses", "swiss", "watercress", "seabass", "bass", "grass")
VERBS = {
    "whole": "Leave {it} whole", "halved": "Halve {it}", "quartered": "Quarter {it}",
    "crumbled": "Crumble {it}", "finely chopped": "Chop {it} finely", "grated": "Grate {it}",
    "whole leaves": "Leave the leaves whole", "cut in eighths": "Cut {it} in eighths",
    "flattened": "Flatten {it}",
}  # fmt: skip
STATES_SAID = {
    "raw": "fresh", "canned": "tinned", "frozen": "frozen", "dried": "dried", "soaked": "soaked",
    "cooked": "cooked", "leftover": "leftover",
}  # fmt: skip
BOUGHT_SO = frozenset({"frozen", "canned", "cooked", "leftover"})  # nobody cuts it


def told(
    plan: Plan,
    made: Plan,
    item: PlanItem | None,
    left: str,
    new_id: str,
    verdict: Verdict,
    cautions: tuple[Caution, ...],
    store: Store,
) -> SwapAnswer:
    """The answer for a plan `made` of `plan`, with the food `new_id` in the place of `item`.

    Args:
        left: what leaves, as the cook calls it, when it is no item of the plan; "" when nothing does.
    """
    shown = next(i for i in made.items if i.food_id == new_id)
    shift = made.cooking_s - plan.cooking_s
    shift = 0.0 if abs(shift) < SHIFT_S else shift
    left = item.label if item is not None else left
    said = list(_changes(plan, made, item, shown, shift, store))
    name = _with_state(shown.label, "" if shown.state == "raw" else shown.state)
    if item is not None and left == shown.label:
        left = _with_state(left, item.state or "raw")
    name = name[:1].upper() + name[1:]
    head = f"{name} instead of {left}: yes" if left else f"{name} too: yes"
    noticed = _noticed(item, shown, store)
    after = f" {noticed[:1].upper()}{noticed[1:]}." if noticed else ""
    light = {"grams"} if verdict is Verdict.TOGETHER and not _is_cut_short(made, shown) else set()
    if item is not None and not {key for key, _, _ in said} - light:
        amount = next((f" {text[:1].upper()}{text[1:]}." for _, _, text in said), "")
        text = f"{head}, same cut, same moment; all done together.{amount}{after}"
        return SwapAnswer(
            verdict=Verdict.TOGETHER, finish_shift_s=0.0, change=(), text=text, cautions=cautions, plan=made
        )
    do = ", ".join(text for key, _, text in said if key != "finish_shift_min" and text)
    when = next((text for key, _, text in said if key == "finish_shift_min"), "")
    if not when:
        when = "dinner stays at the same time"
    do = "; ".join(part for part in (do, when) if part)
    return SwapAnswer(
        verdict=Verdict.ADJUST,
        finish_shift_s=shift,
        change=tuple((key, value) for key, value, _ in said),
        text=f"{head}. {do[:1].upper()}{do[1:]}.{after}",
        cautions=cautions,
        plan=made,
    )


def _with_state(label: str, state: str) -> str:
    """Its name with the state it is in, where one would say so."""
    word = STATES_SAID.get(state, "")
    return label if not word or word in label.split() else f"{word} {label}"


def many(label: str) -> bool:
    """Whether one says "them" of it rather than "it"."""
    last = label.rsplit(" ", 1)[-1]
    return last.endswith("s") and not last.endswith(SINGULAR)


def _changes(
    plan: Plan, made: Plan, item: PlanItem | None, shown: PlanItem, shift: float, store: Store
) -> Iterator[tuple[str, str, str]]:
    """What is different: its key, its value, and a clause; a cut or an amount before the moment."""
    it = "them" if many(shown.label) else "it"
    if item is None or abs(shown.grams / item.grams - 1.0) > SAME_SHARE or _is_cut_short(made, shown):
        yield "grams", f"{shown.grams:.0f}", f"take {_amount(made, shown)}"
    food = figures(shown.food_id, shown.state or None, store)
    if (item is None or shown.cut_id != item.cut_id) and not _needs_no_knife(shown, food, store):
        default = f"Cut {it} into {shown.cut}" if shown.cut[:1].isdigit() else f"have {it} {shown.cut}"
        yield "cut", shown.cut, VERBS.get(shown.cut, default).format(it=it).lower()
    if item is None or shown.lane != item.lane or _moved_s(plan, made, item, shown):
        yield "in_min", f"{shown.in_s / 60:.0f}", _when(plan, made, item, shown, it)
    before = item.lead if item is not None else ""
    if shown.lead != before and {shown.lead, before} & {BROWNED, SEARED}:
        browned = shown.lead in (BROWNED, SEARED)
        yield "browned", "yes" if browned else "no", f"{'brown' if browned else 'no browning of'} {it} first"
    if made.settings.method != plan.settings.method:
        how = method_of(made, store)
        as_before = how.kind == method_of(plan, store).kind  # once or twice under pressure
        yield "method", made.settings.method, "" if as_before else f"this time {how.name}"
    if (degC := made.settings.oven_degC) is not None and degC != plan.settings.oven_degC:
        yield "oven_degC", f"{degC:.0f}", f"oven at {oven(degC, plan.request.kitchen.units)}"
    ml = made.liquid.ml if made.liquid else 0.0
    was = plan.liquid.ml if plan.liquid else 0.0
    if abs(ml - was) > SAME_ML:
        units = plan.request.kitchen.units
        much = f"with {volume(ml, units) if ml else 'no'} liquid"
        yield "liquid_ml", f"{ml:.0f}", f"{much} instead of {volume(was, units) if was else 'none'}"
    if shift:
        late = "later" if shift > 0 else "sooner"
        yield "finish_shift_min", f"{shift / 60:+.0f}", f"dinner {words.duration(abs(shift))} {late}"


def _moved_s(plan: Plan, made: Plan, item: PlanItem, shown: PlanItem) -> float:
    """By how much it goes in earlier before the end than the old one [s]; 0 for the same moment."""
    earlier = (made.cooking_s - shown.in_s) - (plan.cooking_s - item.in_s)
    same = abs(shown.in_s - item.in_s) < SAME_S or abs(earlier) < SAME_S
    return 0.0 if same else earlier


def _when(plan: Plan, made: Plan, item: PlanItem | None, shown: PlanItem, it: str) -> str:
    """When it goes in, with what, and how that compares with what it replaces."""
    if shown.lane == AFTER:
        return f"stir {it} in after the lid comes off" if is_sealed(made) else f"{it} under the broiler"
    if shown.lane == SECOND:
        return f"put {it} in when the cooker is opened half way"
    same = [i.label for i in made.items if i is not shown and abs(i.in_s - shown.in_s) < 30.0 and not i.lead]
    beside = f" with the {words.listed(same[:2])}" if same else ""
    minute = round(shown.in_s / 60)
    at = "at the start" if minute <= 0 else f"at {minute} min"
    by = round(_moved_s(plan, made, item, shown) / 60) if item is not None else 0
    than = ""
    if item and by:
        moved = abs(made.cooking_s - plan.cooking_s) >= SAME_S  # the two plans' minutes do not compare
        sooner, later = ("longer", "less") if moved else ("earlier", "later")
        needs = "; it needs" if it == "it" else "; they need"
        than = f", {abs(by)} min {sooner if by > 0 else later} than the {item.label}"
        than = f"{needs}{than[1:]}" if moved else than
    return f"put {it} in{beside} {at}{than}"


def _needs_no_knife(shown: PlanItem, food: Food, store: Store) -> bool:
    """Whether it goes in as it is bought, so that no cut need be told."""
    return shown.cut_id == "whole" and (
        shown.state in BOUGHT_SO or len(store.food(shown.food_id).cuts) < 2 or len(food.cuts) < 2
    )


def _is_cut_short(made: Plan, shown: PlanItem) -> bool:
    """Whether less of it is used than was said."""
    have = next((h for h in made.request.have if h.food_id == shown.food_id), None)
    return have is not None and have.grams is not None and shown.grams < (1.0 - SAME_SHARE) * have.grams


def _amount(made: Plan, shown: PlanItem) -> str:
    have = next((h for h in made.request.have if h.food_id == shown.food_id), None)
    units = made.request.kitchen.units
    grams = weight(shown.grams, units)
    if have is not None and have.grams is not None and _is_cut_short(made, shown):
        return f"{grams} of {'them' if many(shown.label) else 'it'}, not {weight(have.grams, units)}"
    counted = have is not None and have.qty and many(words.plural(shown.food))
    if have is not None and have.qty and have.unit == "can":
        return f"{have.qty:.0f} tin{'' if have.qty == 1 else 's'} ({grams} drained)"
    if have is not None and counted and have.grams and abs(have.grams - shown.grams) < 1.0:
        return f"{have.qty:.0f} ({grams})"
    return grams


def _noticed(item: PlanItem | None, shown: PlanItem, store: Store) -> str:
    if item is None:
        return ""
    return at_the_table(
        figures(item.food_id, item.state or None, store), figures(shown.food_id, shown.state or None, store)
    )
