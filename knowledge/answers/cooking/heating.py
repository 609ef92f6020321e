"""How long a piece takes in a way of cooking, by `knowledge.physics`."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from typing import NamedTuple

from knowledge.answers.cooking.ways import has_fan, oven_degC
from knowledge.answers.model import Question
from knowledge.answers.reading.altitude import altitude_m
from knowledge.answers.reading.heard import hears
from knowledge.errors import KnowledgeError
from knowledge.foods.model import DoneKind, Food
from knowledge.foods.pieces import Pieced
from knowledge.physics.model import Medium

HOT_PAN_DEGC = 230.0  # for a steak; where oil just begins to smoke
PAN_DEGC, SEALED_KPA, COME_UP_S = 200.0, 80.0, 300.0
LARGE_BIRD_MM = 110.0  # from about 2 kg a bird fills its tin and shades itself, as a joint does
PULSES = frozenset({"bean", "chickpea"})  # soaked first, unless it is said otherwise


class Minutes(NamedTuple):
    """When a piece is done, zeros where there is no answer [min]."""

    earliest: float
    likeliest: float
    latest: float


BROIL = {"grill": "broil"}  # the physics' word for it
NEVER = Minutes(0.0, 0.0, 0.0)


def state_of(question: Question, food: Food) -> str | None:
    """ "frozen", "dried" (a pulse that was not soaked) or None for the usual state."""
    if question.says("frozen"):
        return "frozen"
    return "dried" if food.doneness in PULSES and hears(question, "unsoaked") else None


def minutes(
    question: Question, food: Food, pieces: Sequence[Pieced], way: str, *, texture: str = "tender"
) -> list[Minutes]:
    """The minutes of each piece; under pressure they count from full pressure. Tough meat is wanted soft."""
    from knowledge import physics  # numpy only when a time is asked for

    doneness, state = question.store.doneness(food.doneness), state_of(question, food)
    tough = doneness.kind is DoneKind.COLLAGEN  # wanted softer than "a fork goes in", as in a plan
    wanted = physics.Texture.SOFT if tough else physics.Texture(texture)
    try:
        cases = [
            physics.Case(
                piece=physics.piece(
                    food, size_mm=p.size_mm, shape=p.shape, ratio_1=p.ratio_1, ratio_2=p.ratio_2, state=state
                ),
                phases=(physics.Phase(medium=_medium(question, food, p, way), duration_s=None),),
                goal=physics.goal(food, doneness, method=BROIL.get(way, way), state=state, texture=wanted),
            )
            for p in pieces
        ]
        outcomes = physics.cook(cases)
    except KnowledgeError:
        return [NEVER] * len(pieces)
    before_s = COME_UP_S if way == "pressure" else 0.0
    return [
        Minutes(*(_after_min(done_s, before_s) for done_s in (o.lo_s, o.done_s, o.hi_s))) for o in outcomes
    ]


def side_minutes(
    question: Question, food: Food, piece: Pieced, core_degC: float, *, is_grilled: bool = False
) -> Minutes:
    """Minutes a side until the middle is as hot as is said, whatever minimum holds for it."""
    from knowledge import physics
    from knowledge.physics import media

    doneness = question.store.doneness(food.doneness)
    goal = physics.goal(food, doneness, method="saute", state=state_of(question, food), to_degC=core_degC)
    height_m = altitude_m(question)
    medium = (
        media.broiler(surface="meat", altitude_m=height_m)
        if is_grilled
        else media.open_pan(HOT_PAN_DEGC, surface="meat", altitude_m=height_m, flat=True)
    )
    case = physics.Case(
        piece=physics.piece(
            food, size_mm=piece.size_mm, shape=piece.shape, ratio_1=piece.ratio_1, ratio_2=piece.ratio_2
        ),
        phases=(physics.Phase(medium=medium, duration_s=None),),
        goal=replace(goal, safe_degC=None, safe_hold_s=0.0),
    )
    try:
        (outcome,) = physics.cook([case])
    except KnowledgeError:
        return NEVER
    times = (outcome.lo_s, outcome.done_s, outcome.hi_s)
    return Minutes(*(done_s / 120 if done_s else 0.0 for done_s in times))


def _after_min(done_s: float | None, before_s: float) -> float:
    """Minutes from the end of what comes before, at least one; 0 where it is never done."""
    return max((done_s - before_s) / 60, 1.0) if done_s else 0.0


def _medium(question: Question, food: Food, piece: Pieced, way: str) -> Medium:
    from knowledge.physics import media

    height_m = altitude_m(question)
    kind = question.store.doneness(food.doneness).kind
    surface = "meat" if kind in (DoneKind.CORE, DoneKind.COLLAGEN) else "cut"
    match way:
        case "roast":
            return media.oven(
                oven_degC(question, food),
                fan=has_fan(question),
                crowding="joint" if piece.shape == "joint" or piece.size_mm > LARGE_BIRD_MM else "spaced",
                surface=surface,
                sheet=question.kitchen.sheet,
                altitude_m=height_m,
            )
        case "grill":
            return media.broiler(surface=surface, cubes=piece.shape == "brick", altitude_m=height_m)
        case "steam":
            return media.steaming(height_m)
        case "braise":
            return media.simmering(height_m)
        case "pressure":
            return media.pressure(SEALED_KPA, height_m, COME_UP_S)
        case "saute":
            flat = surface == "meat" and piece.shape in ("slab", "disk")
            return media.open_pan(PAN_DEGC, surface=surface, altitude_m=height_m, flat=flat)
        case _:
            return media.boiling(height_m)
