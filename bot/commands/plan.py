"""`panwright plan`: messages in, one-vessel plans out, one JSON object a line."""

from __future__ import annotations

import argparse
from collections.abc import Mapping, Sequence
from datetime import datetime
from typing import Any

from bot.commands.lines import Answered, Record, answer_lines, clock_option, standard_input
from knowledge.answers.eaters.eaters import ruled_out
from knowledge.foods.store import Store, open_store
from knowledge.planner import plan
from knowledge.planner.kitchens import Described, described
from knowledge.planner.model import NoPlan, Plan, PlanItem, Request
from knowledge.requests import request_of
from knowledge.text import read
from knowledge.text.model import Context


def run(argv: Sequence[str]) -> int:
    """Plan for every line of standard input. Returns 0, or 2 if a line could not be used."""
    parser = argparse.ArgumentParser(
        prog="panwright plan",
        description="Plan one-vessel dinners. Lines in: plain text, or JSON objects (id, text, kitchen).",
    )
    clock_option(parser)
    now: datetime = parser.parse_args(list(argv)).now
    with open_store() as store:

        def planned(record: Record) -> Answered:
            kitchen = described(record.get("kitchen"), store=store)
            request = request_in(record, kitchen, now, store)
            return answer_json(plan(request, store=store)), kitchen.problems

        return answer_lines("plan", standard_input(), planned)


def request_in(record: Record, kitchen: Described, now: datetime, store: Store) -> Request:
    """What a line's message asks of the planner, in the kitchen and for the eaters described with it."""
    local = kitchen.now or now
    reading = read(record["text"], store=store, context=Context(), now=local)
    diets, _ = ruled_out(record.get("kitchen"), store=store)
    return request_of(
        reading, store=store, kitchen=kitchen.kitchen, eaters=kitchen.people, diets=diets, now=local
    )


def answer_json(answer: Plan | NoPlan) -> Mapping[str, Any]:
    """A plan or a refusal with the field names of the scripting interface."""
    if isinstance(answer, NoPlan):
        nearest = None if answer.nearest is None else plan_json(answer.nearest)
        return {"ok": False, "reasons": list(answer.reasons), "nearest": nearest}
    return plan_json(answer)


def plan_json(plan: Plan) -> Mapping[str, Any]:
    """A plan with the field names of the scripting interface; minutes to a tenth."""
    s = plan.settings
    settings = {
        "method": s.method or None,
        "oven_degC": s.oven_degC,
        "fan": s.fan,
        "hob": s.hob,
        "pressure_kPa_gauge": s.pressure_kPa_gauge,
        "pressure_min": _held_min(plan),
        "release": s.release,
    }
    return {
        "ok": True,
        "timing": first_line(plan) or None,
        "vessel": {"id": plan.vessel, "size": plan.size, "fill": round(plan.fill, 2)},
        "settings": {key: value for key, value in settings.items() if value is not None},
        "serves": plan.serves,
        "total_min": _min(plan.total_s),
        "hands_on_min": _min(plan.hands_on_s),
        "cooking_min": _min(plan.cooking_s),
        "late_min": _min(plan.late_s) if plan.late_s else None,
        "start_in_min": _min(plan.spare_s) if plan.spare_s else None,
        "items": [_item(item) for item in plan.items],
        "liquid": plan.liquid
        and {"what": plan.liquid.what, "ml": round(plan.liquid.ml), "why": plan.liquid.why},
        "steps": [
            {"at_min": _min(step.at_s), "do": step.do.value, "foods": list(step.foods), "text": step.text}
            for step in plan.steps
        ],
        "cautions": [{"text": c.text, "source": c.source} for c in plan.cautions],
        "left_out": [{"food": left.food, "why": left.why} for left in plan.left_out],
        "assumed": [*(f'"{said}" is {name}' for said, name in plan.request.read_as), *plan.assumed],
        "advice": list(plan.advice),
        "notes": list(plan.notes),
        "flavour": plan.flavour or None,
        "alternatives": [
            {"vessel": a.vessel, "total_min": _min(a.total_s), "why": a.why} for a in plan.alternatives
        ],
        "why": [*([first_line(plan)] if plan.timing else []), *plan.why, *plan.notes],
    }


def first_line(plan: Plan) -> str:
    """Late by how much and what could be done, or when to begin; "" when there is nothing to say of time."""
    return "; ".join(part for part in (plan.timing, plan.remedy) if part)


def _item(item: PlanItem) -> Mapping[str, Any]:
    return {
        "food": item.food,
        "said": item.label,
        "food_id": item.food_id,
        "state": item.state or None,
        "grams": round(item.grams),
        "cut": {"name": item.cut, "size_mm": round(item.size_mm), "shape": item.shape},
        "in_min": _min(item.in_s),
        "out_min": _min(item.out_s),
        "done": {
            "kind": item.done.kind,
            "at_min": _min(item.done.at_s),
            "window_min": [_min(t) for t in item.done.window_s],
            "core_degC": item.done.core_degC,
            "rest_min": _min(item.done.rest_s),
        },
        "why": item.why,
    }


def _held_min(plan: Plan) -> float | None:
    held = [item.add_s for item in plan.items if item.lane == "main"]
    return _min(max(held)) if plan.settings.pressure_kPa_gauge is not None and held else None


def _min(seconds: float) -> float:
    return round(seconds / 60.0, 1) + 0.0  # never "-0.0"
