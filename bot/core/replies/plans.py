"""What is said about plans: the offer, its reasons, other ways, swaps, foods nobody knows."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from datetime import datetime, timedelta
from math import floor

from bot.core.replies.layout import (
    clock,
    duration,
    exact_minutes,
    lines,
    listed,
    number,
    paragraphs,
    said,
    sentence,
    span,
    whole_minutes,
)
from knowledge.planner.model import Caution, NoPlan, Plan, PlanItem, Step, SwapAnswer, Verdict
from knowledge.units import oven, volume, weight

START, WAYS, WHY, CHANGE = "Start", "Another way", "Why", "Change"
CAUTIONED = "The other safety lines above still hold."
TAKE_IT, TAKE_THIS, LEAVE_IT = "Yes, change it", "Yes, take that", "No, keep mine"


def headline(plan: Plan) -> str:
    """Vessel, time, for how many: the one line that matters."""
    hands = f", {duration(plan.hands_on_s)} of it hands-on" if plan.hands_on_s >= 60 else ""
    return (
        f"{plan.vessel.capitalize()} ({plan.size}), for {servings(plan)}: "
        f"about {duration(plan.total_s)}{hands}."
    )


def servings(plan: Plan) -> str:
    """For how many: as asked, and what it is really enough for where that differs."""
    enough = floor(plan.serves * 2 + 0.01) / 2
    eaters = plan.request.eaters
    if not plan.request.eaters_said and enough >= 1:
        return number(floor(enough))
    if abs(enough - eaters) < 1:
        return number(eaters)
    return f"{number(eaters)} (enough for {number(enough)})"


def deadline(plan: Plan, *, now: datetime, ready_at: datetime | None, offset_min: int | None) -> str:
    """When to begin so that dinner is there at the time asked for, or by how much it is late."""
    if ready_at is None:
        return ""
    late_s = (now - ready_at).total_seconds() + plan.total_s
    if late_s >= 90:
        late = (
            f"Begun now it is on the table at {clock(now + timedelta(seconds=plan.total_s), offset_min)}, "
            f"{duration(late_s)} after {clock(ready_at, offset_min)}."
        )
        return " ".join(part for part in (late, sentence(plan.remedy)) if part)
    begin = ready_at - timedelta(seconds=plan.total_s)
    when = "now" if late_s > -90 else f"by {clock(begin, offset_min)}"
    return f"Start {when} to eat at {clock(ready_at, offset_min)}."


def item_line(item: PlanItem, units: str) -> str:
    """ "carrot 300 g, 20 mm dice"."""
    cut = f", {item.cut}" if item.cut not in ("", "whole") else ""
    return f"• {item.label} {weight(item.grams, units)}{cut}"


def caution_line(caution: Caution) -> str:
    """A safety line with the authority that says so."""
    authority = re.split(r"[,(]", caution.source)[0].strip()
    known = "" if authority.lower().startswith("common practice") else f" ({authority})"
    return f"• {caution.text.rstrip('.')}{known}."


def timeline(plan: Plan, when: Callable[[Step], str]) -> str:
    """The steps, a line each, with the time that `when` writes in front."""
    return lines(f"{when(step)}  {step.text}" for step in plan.steps)


def steps_block(plan: Plan, *, now: datetime, ready_at: datetime | None, offset_min: int | None) -> str:
    """The steps with clock times when a deadline is known, else with minutes from the start."""
    first_s = plan.steps[0].at_s if plan.steps else 0.0
    if ready_at is not None:
        begin = max(now, ready_at - timedelta(seconds=plan.total_s))
        return timeline(plan, lambda step: clock(begin + timedelta(seconds=step.at_s - first_s), offset_min))
    return "Minutes from your start:\n" + timeline(
        plan, lambda step: f"{exact_minutes(step.at_s - first_s):3d}"
    )


def offer(
    plan: Plan,
    *,
    now: datetime,
    ready_at: datetime | None,
    offset_min: int | None,
    read_as: Sequence[str],
    cautioned: Sequence[Caution] = (),
) -> str:
    """The whole offer: headline, foods, steps, liquid, what was assumed, safe temperatures, cautions.

    `cautioned` are the cautions of the plan before, which stand above and are not said again.
    """
    units = plan.request.kitchen.units
    pour = ""
    if plan.liquid is not None:
        pour = f"Liquid: {volume(plan.liquid.ml, units)} {plan.liquid.what}."
    left_out = "; ".join(f"{item.label} ({item.why.rstrip('.')})" for item in plan.left_out)
    return paragraphs(
        lines(
            (
                headline(plan),
                deadline(plan, now=now, ready_at=ready_at, offset_min=offset_min),
                *map(sentence, plan.notes),
            )
        ),
        lines(item_line(item, units) for item in plan.items),
        steps_block(plan, now=now, ready_at=ready_at, offset_min=offset_min),
        lines(
            (
                pour,
                f"Left out: {left_out}." if left_out else "",
                "; ".join(read_as),
                f"I assumed: {'; '.join(a.rstrip('.') for a in plan.assumed)}." if plan.assumed else "",
                f"For next to it: {'; '.join(plan.advice)}." if plan.advice else "",
                plan.flavour,
            )
        ),
        lines(
            (
                *(caution_line(c) for c in plan.cautions if c not in cautioned),
                CAUTIONED if any(c in cautioned for c in plan.cautions) else "",
            )
        ),
    )


def read_as(phrase: str, name: str) -> str:
    """A near match, shown as such."""
    return f"I read {said(phrase)} as {name}"


def refusal(no: NoPlan) -> str:
    """Why there is no good dinner in one vessel, and what comes nearest."""
    reasons = lines(f"• {sentence(reason)}" for reason in no.reasons)
    head = (
        "That won't make a good dinner in one vessel:" if no.reasons else "I found no good one-vessel dinner."
    )
    tail = (
        "The nearest that works:"
        if no.nearest is not None
        else "Tell me what else is there, or leave one out."
    )
    return paragraphs(lines((head, reasons)), tail)


def why(plan: Plan) -> str:
    """The reasons: the vessel's, then each food's."""
    return (
        paragraphs(
            lines(sentence(reason) for reason in plan.why),
            lines(f"• {item.label}: {item.why}" for item in plan.items if item.why),
        )
        or "It was the quickest way that has everything done at the same time."
    )


def why_not(no: NoPlan) -> str:
    """The reasons of a refusal, again."""
    return lines(sentence(reason) for reason in no.reasons)


def compared(here: Plan, other: Plan) -> str:
    """Another vessel for the same dinner: what it costs and what stays out."""
    shift = whole_minutes(other.total_s - here.total_s)
    longer = f"{span(abs(shift))} {'longer' if shift > 0 else 'shorter'} than" if shift else "as long as"
    out = [left.said or left.food for left in other.left_out if left not in here.left_out]
    without = f" {sentence(listed(out))[:-1]} would have to stay out." if out else ""
    return (
        f"The {other.vessel} would do it too: about {duration(other.total_s)}, {longer} the {here.vessel}."
        f"{without} {sentence(here.why[0]) if here.why else ''} Change the plan?"
    )


def ways(plan: Plan) -> str:
    """The other vessels, with what each costs and brings."""
    if not plan.alternatives:
        return f"The {plan.vessel} is the only one that does this well. Change a food and I'll look again."
    return (
        "Instead of the "
        + plan.vessel
        + ":\n"
        + lines(f"• {way.vessel}, {duration(way.total_s)}: {way.why}" for way in plan.alternatives)
    )


CHANGES = (
    "Say what to change, for example:\n"
    "• no carrots after all\n"
    "• make it 6\n"
    "• ready by 19:30\n"
    "• parsnip instead of carrot\n"
    "• make it Moroccan, or: any flavour ideas?\n"
    "“undo” goes back one plan."
)


def flavoured(plan: Plan) -> str:
    """What a direction of flavour brings to the plan on the table."""
    return (
        f"{plan.flavour or 'Nothing of that goes with what your eaters may have.'} The rest stays as it is."
    )


def directions(families: Sequence[tuple[str, Sequence[str]]]) -> str:
    """Directions of flavour with the seasonings that make them."""
    if not families:
        return "No direction of flavour that I know suits these foods and what your eaters may have."
    named = (f"• {name}: {', '.join(seasonings)}" for name, seasonings in families)
    return lines(("These would suit it:", *named))


def difference(old: Plan, new: Plan) -> str:
    """What a changed plan changes: the vessel, the heat, the time, the work, the cuts."""
    parts = []
    if old.vessel != new.vessel:
        parts.append(f"now in the {new.vessel}")
    elif (degC := new.settings.oven_degC) is not None and degC != old.settings.oven_degC:
        parts.append(f"oven at {oven(degC, new.request.kitchen.units)}")
    elif old.settings.method != new.settings.method:
        parts.append("another way in the same vessel")
    shift = whole_minutes(new.total_s - old.total_s)
    if shift:
        parts.append(f"{span(abs(shift))} {'longer' if shift > 0 else 'shorter'}")
    work = whole_minutes(new.hands_on_s - old.hands_on_s)
    if abs(work) >= 2:
        parts.append(f"{span(abs(work))} {'more' if work > 0 else 'less'} hands-on")
    cuts = {(i.food_id, i.state): i.cut for i in old.items}
    parts += [
        f"{item.label} {item.cut or 'whole'}"
        for item in new.items
        if item.cut != cuts.get((item.food_id, item.state), item.cut)
    ]
    return sentence(f"Changed: {listed(parts)}") if parts else ""


def unchanged(old: Plan, new: Plan, *, hurried: bool = False) -> str:
    """That a wish leaves the plan as it was, and what stands in its way.

    `hurried`: it was to be quicker, so what was tried is said.
    """
    notes = [sentence(note) for note in new.notes if note not in old.notes]
    return lines(("The plan stays as it is.", *([sentence(new.quicker)] if hurried else notes)))


def swap(answer: SwapAnswer) -> str:
    """The verdict on a swap, its cautions, and the question if there is a plan to take."""
    cautions = lines(map(caution_line, answer.cautions))
    question = "Change the plan?" if answer.plan is not None else ""
    if answer.verdict is Verdict.NO and answer.plan is not None:
        question = "Take this instead?"
    return paragraphs(sentence(answer.text), cautions, question)


def unknown(phrase: str, near: Sequence[str]) -> str:
    """The one question about a food that is not in the tables."""
    if near:
        return f"I don't know {said(phrase)}. Did you mean one of these?"
    return f"I don't know {said(phrase)}. What is it most like? (A button, or in words: “like parsnip”.)"


def unknown_kind(phrase: str) -> str:
    """The second question, when a family was chosen."""
    return f"And which of these does {said(phrase)} cook like?"


def all_unknown(phrases: Sequence[str]) -> str:
    """Nothing in the message could be placed."""
    return f"I know no food in {listed([said(p) for p in phrases[:3]])}."


def taught(name: str, like: str) -> str:
    """A lesson, kept."""
    return f"Noted: {said(name)} cooks like {like}. (“forget {name}” undoes it.)"


def swap_unknown(name: str, near: Sequence[str]) -> str:
    """The food to swap in is not in the tables."""
    if near:
        return (
            f"I don't know {said(name)}. Did you mean {listed(list(near), 'or')}? Ask again with that name."
        )
    return f"I don't know {said(name)}, so I can't tell how it cooks. Name something like it?"
