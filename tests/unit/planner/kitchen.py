"""What the tests of the planner share: a dinner asked for in one line, planned, and found sound."""

from __future__ import annotations

from datetime import datetime
from typing import TypedDict, Unpack

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.checking.verify import check
from knowledge.planner.gathering.dinner import Dinner, Dish, gather
from knowledge.planner.model import (
    Caution,
    Have,
    Kitchen,
    Learned,
    LeftOut,
    Plan,
    PlanItem,
    Request,
    Swapped,
    VesselAt,
)
from knowledge.requests import request_of
from knowledge.text import read

NOW = datetime(2026, 3, 4, 17, 10)  # noqa: DTZ001  the cook's own clock


class Said(TypedDict, total=False):
    """What a cook may say beside the foods; the fields of `Request`."""

    ready_in_s: float | None
    vessel: str | None
    not_vessels: tuple[str, ...]
    excluded: tuple[str, ...]
    allergies: tuple[str, ...]
    diets: tuple[str, ...]
    wishes: tuple[str, ...]
    kitchen: Kitchen
    youngest: float | None
    unknown: tuple[str, ...]
    learned: Learned
    alerts: tuple[Caution, ...]
    unfit: tuple[LeftOut, ...]
    swapped: tuple[Swapped, ...]


def dinner(*foods: str | Have, eaters: float | None = None, **said: Unpack[Said]) -> Request:
    """These foods for so many, who are only said when given."""
    have = tuple(f if isinstance(f, Have) else Have(food_id=f) for f in foods)
    if eaters is None:
        return Request(have=have, **said)
    return Request(have=have, eaters=eaters, eaters_said=True, **said)


def only(vessel: str, size: str | None = None) -> Kitchen:
    """A kitchen with one vessel."""
    return Kitchen(vessels=(VesselAt(id=vessel, size=size),))


def planned(store: Store, *foods: str | Have, eaters: float | None = None, **said: Unpack[Said]) -> Plan:
    """The plan for these foods, which the check from outside finds sound."""
    made = plan(dinner(*foods, eaters=eaters, **said), store=store)
    assert isinstance(made, Plan)
    report = check(made, store=store)
    assert report.sound, report
    return made


def planned_in(
    store: Store, there: str | None, *foods: str | Have, eaters: float | None = None, **said: Unpack[Said]
) -> Plan:
    """The same where only this vessel is there; `None`: whatever a kitchen has."""
    if there is not None:
        said = {**said, "kitchen": only(there)}
    return planned(store, *foods, eaters=eaters, **said)


def item(made: Plan, food_id: str) -> PlanItem:
    """The first line of the plan with this food."""
    return next(i for i in made.items if i.food_id == food_id)


def told(made: Plan) -> str:
    """All that the cook is told to do."""
    return " ".join(s.text for s in made.steps)


def asked(store: Store, text: str) -> Request:
    """What a message asks for in an ordinary kitchen at `NOW`."""
    return request_of(read(text, store=store, now=NOW), store=store, kitchen=Kitchen(), now=NOW)


def gathered(store: Store, text: str) -> Dinner:
    """The dishes and amounts that come of a message."""
    return gather(asked(store, text), store=store)


def dish(found: Dinner, food_id: str) -> Dish:
    """The dish of this food."""
    return next(d for d in found.dishes if d.food.id == food_id)
