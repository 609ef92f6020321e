"""A small knowledge of our own for tests of the conversation: it reads, plans and answers by rule.

Invented on purpose: these tests are about what the conversation does with a plan,
not about what a plan says. Foods are words, a plan is a fixed arithmetic over them.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from types import SimpleNamespace
from typing import cast

from bot.core.actions import Outcome, Say
from bot.core.conversation import step
from bot.core.events import ButtonPressed, Event, TextReceived
from bot.core.state import Chat, Profile
from knowledge import Knowledge
from knowledge.accidents import first_aid
from knowledge.planner.changing.several import one_by_one
from knowledge.planner.model import (
    Alternative,
    Caution,
    Do,
    Done,
    Have,
    Kitchen,
    NoPlan,
    Plan,
    PlanItem,
    Request,
    Settings,
    Step,
    SwapAnswer,
    Verdict,
)
from knowledge.text.model import (
    Context,
    CookEvent,
    EventType,
    Intent,
    Item,
    Kind,
    Reading,
    ReadyBy,
    SwapRead,
)

NOW = datetime(2026, 3, 4, 17, 0, tzinfo=UTC)
FOODS = {"chicken": 74.0, "carrot": None, "potato": None, "pea": None, "parsnip": None, "leek": None}


@dataclass(frozen=True)
class Answer:
    known: bool
    answer: str
    sources: tuple[str, ...]


def item(word: str) -> Item:
    return Item(
        name=word,
        food_id=word if word in FOODS else None,
        qty=None,
        unit=None,
        grams=None,
        state=None,
        cut=None,
        size=None,
        phrase=word,
        sure=True,
    )


def event(kind: EventType, **more: object) -> Reading:
    return Reading(kind=Kind.COOK_EVENT, text=kind.value, event=CookEvent(type=kind, **more))  # type: ignore[arg-type]


# Whole messages with their readings; anything else is a list of foods, one a word.
READINGS: dict[str, Reading] = {
    "hello": Reading(kind=Kind.OTHER, text="hello", intent=Intent.GREETING),
    "thanks": Reading(kind=Kind.OTHER, text="thanks", intent=Intent.THANKS),
    "you idiot": Reading(kind=Kind.OTHER, text="you idiot", intent=Intent.ABUSE),
    "another way": Reading(kind=Kind.OTHER, text="another way", intent=Intent.OTHER_VESSEL),
    "10 min late": event(EventType.DELAY, minutes=10.0),
    "300 min late": event(EventType.DELAY, minutes=300.0),
    "running late": event(EventType.DELAY),
    "chicken is 60": event(EventType.PROBE, item="chicken", temp_c=60.0),
    "chicken is 75": event(EventType.PROBE, item="chicken", temp_c=75.0),
    "probe says 60": event(EventType.PROBE, temp_c=60.0),
    "chicken is 900": event(EventType.PROBE, item="chicken", temp_c=900.0),
    "carrot is 60": event(EventType.PROBE, item="carrot", temp_c=60.0),
    "carrot still hard": event(EventType.NOT_DONE, item="carrot"),
    "beef still tough": event(EventType.NOT_DONE, item="beef"),
    "still hard": event(EventType.NOT_DONE),
    "chicken done early": event(EventType.TOO_FAST, item="chicken"),
    "is the turkey pink?": Reading(
        kind=Kind.COOK_EVENT,
        text="is the turkey pink?",
        event=CookEvent(type=EventType.NOT_DONE, item="turkey"),
    ),
    "burning": event(EventType.TOO_FAST),
    "skip the pea": event(EventType.SKIP, item="pea"),
    "skip the check": event(EventType.SKIP, item="chicken"),
    "stop the reminders": event(EventType.STOP),
    "oven not hot": event(EventType.OVEN_NOT_HOT),
    "forgot the carrot": event(EventType.FORGOT, item="carrot"),
    "forgot the leek": event(EventType.FORGOT, item="leek"),
    "forgot the oven": event(EventType.FORGOT, minutes=20.0),
    "tray is in": event(EventType.STARTED),
    "carrot in": event(EventType.DONE_STEP, item="carrot"),
    "15": Reading(kind=Kind.OTHER, text="15", ready_by=ReadyBy(in_min=15.0)),
    "parsnip for carrot": Reading(
        kind=Kind.SWAP, text="parsnip for carrot", swap=SwapRead(frm="carrot", to="parsnip")
    ),
    "oca for carrot": Reading(kind=Kind.SWAP, text="oca for carrot", swap=SwapRead(frm="carrot", to="oca")),
    "also leek": Reading(kind=Kind.PLAN, text="also leek", items=(item("leek"),), amends=True),
    "use the pot": Reading(kind=Kind.PLAN, text="use the pot", vessel="lidded pot", amends=True),
    "chicken pea, no nuts": Reading(
        kind=Kind.PLAN,
        text="chicken pea, no nuts",
        items=(item("chicken"), item("pea")),
        diet=("no nuts",),
    ),
    "make it 6": Reading(kind=Kind.PLAN, text="make it 6", people=6.0, amends=True),
    "chicken carrot by 18:30": Reading(
        kind=Kind.PLAN,
        text="chicken carrot by 18:30",
        items=(item("chicken"), item("carrot")),
        ready_by=ReadyBy(clock="18:30"),
    ),
    "how hot": Reading(kind=Kind.QUESTION, text="how hot"),
    "i am vegetarian": Reading(kind=Kind.SETTING, text="i am vegetarian", diet=("vegetarian",)),
    "use ounces": Reading(kind=Kind.SETTING, text="use ounces", settings=(("units", "us"),)),
    "oven to 900": Reading(kind=Kind.SETTING, text="oven to 900", settings=(("oven_max_degC", "900"),)),
    "ring a bell": Reading(kind=Kind.SETTING, text="ring a bell", settings=(("bell", "1"),)),
    "like parsnip": Reading(kind=Kind.OTHER, text="like parsnip", teaches=("", "parsnip")),
    "🙂🙂🙂": Reading(kind=Kind.OTHER, text="🙂🙂🙂"),
}


def plan_of(request: Request) -> Plan:
    """Chicken in at 0, the rest later, all out at 40 min, a check of the chicken, then serve."""
    rests = [h for h in request.have if h.food_id != "chicken"]
    steps = [
        Step(id="preheat", at_s=-900, do=Do.PREHEAT, foods=(), text="Heat the oven to 220 °C."),
        *(
            Step(
                id=f"prep-{h.food_id}",
                at_s=-840 + 180 * n,
                do=Do.PREP,
                foods=(h.food_id,),
                text=f"Cut the {h.food_id}.",
            )
            for n, h in enumerate(request.have)
        ),
        *(
            Step(
                id=f"add-{h.food_id}",
                at_s=0 if h.food_id == "chicken" or not n else 600.0 * n,
                do=Do.ADD,
                foods=(h.food_id,),
                text=f"Put the {h.food_id} in.",
            )
            for n, h in enumerate(request.have)
        ),
        Step(
            id="check",
            at_s=2300,
            do=Do.CHECK,
            foods=tuple(h.food_id for h in request.have if h.food_id == "chicken"),
            text="Check the chicken: 74 °C at the core.",
            safety=True,
        ),
        Step(id="serve", at_s=2400, do=Do.SERVE, foods=(), text="Serve."),
    ]
    items = tuple(
        PlanItem(
            food_id=h.food_id,
            food=h.food_id,
            grams=300,
            state="",
            cut_id="dice",
            cut="20 mm dice",
            size_mm=20,
            shape="brick",
            in_s=0 if h.food_id == "chicken" or not n else 600.0 * n,
            out_s=2400,
            done=Done(
                kind="core_temp" if FOODS[h.food_id] else "tender",
                at_s=2300,
                window_s=(2200, 2700),
                core_degC=FOODS[h.food_id],
                rest_s=0,
            ),
            why="",
        )
        for n, h in enumerate(request.have)
    )
    return Plan(
        vessel=request.vessel or "sheet pan",
        size="half sheet",
        fill=0.5,
        settings=Settings(oven_degC=220, method="roast"),
        serves=request.eaters,
        total_s=3300,
        hands_on_s=600,
        cooking_s=2400,
        items=items,
        liquid=None,
        steps=tuple(sorted(steps, key=lambda s: s.at_s)),
        cautions=(Caution(text="Poultry to 74 °C", source="FSIS"),),
        left_out=(),
        assumed=("2 people",) if rests else (),
        alternatives=(Alternative(vessel="lidded pot", total_s=4000, why="saucy"),),
        why=("One tray.",),
        request=request,
    )


class Pantry:
    """The methods of `knowledge.Knowledge` over the words above."""

    def read(self, text: str, *, context: Context, now: datetime) -> Reading:
        known = READINGS.get(text)
        if known is not None:
            return known
        words = text.replace(",", " ").split()
        if not any(w in FOODS or w == "oca" for w in words):
            return Reading(kind=Kind.OTHER, text=text)
        taught = dict(context.taught)
        items = tuple(replace(item(w), food_id=taught[w]) if w in taught else item(w) for w in words)
        return Reading(kind=Kind.PLAN, text=text, items=items)

    def request_of(
        self,
        reading: Reading,
        *,
        kitchen: Kitchen,
        eaters: float | None,
        diets: tuple[str, ...],
        excluded: tuple[str, ...],
        now: datetime,
        base: Request | None = None,
    ) -> Request:
        have = tuple(self.have_of(i) for i in reading.items if i.food_id)
        ready_in_s = None
        if reading.ready_by is not None and reading.ready_by.clock is not None:
            hour, minute = map(int, reading.ready_by.clock.split(":"))
            ready_in_s = (now.replace(hour=hour, minute=minute) - now).total_seconds()
        if base is not None:
            return replace(
                base, have=(*base.have, *have), eaters=reading.people or base.eaters, kitchen=kitchen
            )
        return Request(
            have=have,
            eaters=reading.people or eaters or 2,
            ready_in_s=ready_in_s,
            diets=diets,
            kitchen=kitchen,
        )

    def have_of(self, read: Item) -> Have:
        assert read.food_id is not None
        return Have(food_id=read.food_id, said=read.phrase)

    def plan(self, request: Request) -> Plan | NoPlan:
        if "vegetarian" in request.diets and any(h.food_id == "chicken" for h in request.have):
            rest = tuple(h for h in request.have if h.food_id != "chicken")
            nearest = plan_of(replace(request, have=rest)) if rest else None
            return NoPlan(reasons=("chicken is not vegetarian",), nearest=nearest, request=request)
        return plan_of(request)

    def swap(
        self, plan: Plan, *, frm: str | None, to: Have | None, elapsed_s: float | None = None
    ) -> SwapAnswer:
        if to is None:
            return SwapAnswer(
                verdict=Verdict.NO, finish_shift_s=0, change=(), text="nothing close", cautions=(), plan=None
            )
        have = tuple(to if h.food_id == frm else h for h in plan.request.have)
        return SwapAnswer(
            verdict=Verdict.ADJUST,
            finish_shift_s=0,
            change=(("cut", "10 mm dice"),),
            text="Yes, cut to 10 mm dice",
            cautions=(),
            plan=plan_of(replace(plan.request, have=have)),
        )

    def replan(self, plan: Plan, *, request: Request, elapsed_s: float) -> Plan | NoPlan:
        return plan_of(request)

    def ask(self, text: str, *, kitchen: Kitchen, diets: Sequence[str] = ()) -> Answer:
        return Answer(known=True, answer="74 °C.", sources=("FSIS",))

    def after_probe(self, plan: Plan, food_id: str, *, elapsed_s: float, core_degC: float) -> float | None:
        """Twenty seconds a kelvin; nothing to tell in the first two minutes."""
        item = next(i for i in plan.items if i.food_id == food_id)
        goal = item.done.core_degC or 0.0
        return None if elapsed_s - item.in_s < 120 else 20.0 * (goal - core_degC)

    def first_aid(self, text: str) -> str | None:
        return first_aid(text)

    def gone_off(self, reading: Reading) -> str | None:
        return "Take it out." if any(not one.eaten for one in reading.spoilt) else None

    def leftovers(self, food_ids: Sequence[str]) -> tuple[str, str]:
        return "Leftovers: into the fridge within 2 hours, eat within 3 days.", "FSIS"

    def swaps(
        self, plan: Plan, pairs: Sequence[tuple[str | None, Have | None]], *, elapsed_s: float | None = None
    ) -> SwapAnswer:
        return one_by_one(
            plan, pairs, lambda now, frm, to: self.swap(now, frm=frm, to=to, elapsed_s=elapsed_s)
        )

    def named(self, name: str) -> SimpleNamespace | None:
        part = "protein" if name == "chicken" else "vegetable"
        return SimpleNamespace(id=name, name=name, part=part) if name in FOODS else None

    def near(self, name: str, limit: int = 3) -> tuple[str, ...]:
        return ("carrot",) if name.startswith("carr") else ()


PANTRY = cast(Knowledge, Pantry())
START = Chat(chat_id="t", profile=Profile(utc_offset_min=0))


def says(outcome: Outcome) -> list[Say]:
    return [a for a in outcome.actions if isinstance(a, Say)]


def text_of(outcome: Outcome) -> str:
    return "\n---\n".join(say.text for say in says(outcome))


def send(state: Chat, words: str | Event, now: datetime = NOW) -> Outcome:
    return step(state, TextReceived(text=words) if isinstance(words, str) else words, now, PANTRY)


def after(*words: str, now: datetime = NOW, state: Chat = START) -> Chat:
    for line in words:
        state = send(state, line, now).state
    return state


def tap(outcome: Outcome, label: str, now: datetime = NOW) -> Outcome:
    data = next(b.data for say in says(outcome) for row in say.buttons for b in row if b.label == label)
    return send(outcome.state, ButtonPressed(data=data), now)
