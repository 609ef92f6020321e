"""What is true about food and heat: no network, no chat, no clock.

`Knowledge` is the whole of what the bot may use; the packages below it are private.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from knowledge.answers import Answer
    from knowledge.flavours import Family
    from knowledge.foods.model import Food
    from knowledge.foods.store import Store
    from knowledge.planner.model import Have, Kitchen, NoPlan, Plan, Request, SwapAnswer
    from knowledge.text.model import Context, Item, Reading


@dataclass(frozen=True, slots=True)
class Knowledge:
    """Reading, planning, swapping and answering over one opened knowledge file.

    The parts are imported when first used, so that a chat reaches its prompt
    before numpy is loaded.
    """

    store: Store

    def read(self, text: str, *, context: Context, now: datetime) -> Reading:
        """A message, read in its context; `now` is the cook's local time."""
        from knowledge.text import read

        return read(text, store=self.store, context=context, now=now)

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
        """What a reading asks of the planner.

        `kitchen`, `eaters`, `diets` and `excluded` hold beyond tonight; `now` is the
        cook's local time, against which a deadline is counted; `base` is the request
        of the plan in hand when the reading amends it.
        """
        from knowledge.requests import request_of

        return request_of(
            reading,
            store=self.store,
            kitchen=kitchen,
            eaters=eaters,
            diets=diets,
            excluded=excluded,
            now=now,
            base=base,
        )

    def have_of(self, item: Item) -> Have:
        """A read food as something at hand. Its `food_id` must be known."""
        from knowledge.requests import have_of

        return have_of(item, self.store)

    def plan(self, request: Request) -> Plan | NoPlan:
        """The best one-vessel dinner, or why there is none and what comes nearest."""
        from knowledge.planner import plan

        return plan(request, store=self.store)

    def swap(
        self, plan: Plan, *, frm: str | None, to: Have | None, elapsed_s: float | None = None
    ) -> SwapAnswer:
        """Would `to` instead of the food named `frm` still finish with the rest?

        `elapsed_s` is the plan's time when the cook is running: what is in stays in.
        """
        from knowledge.planner import swap

        return swap(plan, frm=frm, to=to, store=self.store, elapsed_s=elapsed_s)

    def swaps(
        self, plan: Plan, pairs: Sequence[tuple[str | None, Have | None]], *, elapsed_s: float | None = None
    ) -> SwapAnswer:
        """Several swaps, (what leaves, what comes in), one after the other."""
        from knowledge.planner.changing.several import one_by_one

        return one_by_one(
            plan, pairs, lambda now, frm, to: self.swap(now, frm=frm, to=to, elapsed_s=elapsed_s)
        )

    def replan(self, plan: Plan, *, request: Request, elapsed_s: float) -> Plan | NoPlan:
        """The rest of a running plan for a changed request; what is in the vessel stays in."""
        from knowledge.planner import replan

        return replan(plan, request=request, elapsed_s=elapsed_s, store=self.store)

    def after_probe(self, plan: Plan, food_id: str, *, elapsed_s: float, core_degC: float) -> float | None:
        """How much longer a food of a running plan needs after a core temperature was read [s].

        None when the reading tells nothing: too early, or out of reach of any piece within reason.
        """
        from knowledge.planner.changing.measured import left_s

        return left_s(plan, food_id, elapsed_s=elapsed_s, core_degC=core_degC, store=self.store)

    def ask(self, text: str, *, kitchen: Kitchen, diets: Sequence[str] = ()) -> Answer:
        """A kitchen question, answered from the knowledge base with its sources.

        `diets`: what this cook's eaters must not have ("no nuts", "vegan"); nothing else is offered.
        """
        from knowledge.answers import ask

        return ask(text, store=self.store, kitchen=kitchen, ruled_out=tuple(diets))

    def flavours(self, request: Request, limit: int = 3) -> tuple[Family, ...]:
        """Directions of flavour for what a request has, best first; only those asked for, if any are."""
        from knowledge.flavours import families_for

        barred = (*request.excluded, *request.allergies)
        there = [have.food_id for have in request.have]
        found = families_for(there, diets=request.diets, excluded=barred, store=self.store)
        asked = tuple(family for family in found if family.id in request.flavours)
        return (asked or found)[:limit]

    def first_aid(self, text: str) -> str | None:
        """What to do first about an accident that a message tells of; None when it tells of none."""
        from knowledge.accidents import first_aid

        return first_aid(text)

    def gone_off(self, reading: Reading) -> str | None:
        """What to say at the stove of food that a message calls off; None when it calls none so."""
        from knowledge.unfit import gone_off

        return gone_off(reading, store=self.store)

    def leftovers(self, food_ids: Sequence[str]) -> tuple[str, str]:
        """How to keep what is left of these foods: the text and its source."""
        from knowledge.answers import leftovers

        return leftovers(food_ids, store=self.store)

    def vessel_size(self, vessel_id: str, said: str) -> str | None:
        """The id of the size of a vessel that a cook means ("half", "28 cm"); None when none is."""
        from knowledge.planner.sizes import size_of

        vessel = next((v for v in self.store.vessels() if v.id == vessel_id), None)
        size = None if vessel is None else size_of(vessel, said)
        return None if size is None else size.id

    def food(self, food_id: str) -> Food:
        """One food by id. Raises UnknownFood."""
        return self.store.food(food_id)

    def named(self, name: str) -> Food | None:
        """One food by exact name or synonym."""
        return self.store.named(name)

    def allergens(self, name: str) -> tuple[str, ...]:
        """The allergens of a food by its name, in order; empty when it is no food or has none."""
        food = self.store.named(name)
        return tuple(sorted(food.allergens)) if food is not None else ()

    def near(self, name: str, limit: int = 3) -> tuple[str, ...]:
        """Names of foods that are spelled like this one, best first; for asking back, never for guessing."""
        from rapidfuzz import fuzz, process

        from knowledge.text.normalise import key

        names = self.store.names()
        hits = process.extract(key(name), names.keys(), scorer=fuzz.ratio, limit=3 * limit, score_cutoff=70.0)
        foods = (self.store.food(names[hit][0]).name for hit, _, _ in hits)
        return tuple(dict.fromkeys(foods))[:limit]


def open_knowledge(path: Path | None = None) -> Knowledge:
    """Open the knowledge file, building it from the tables first when it is missing or stale."""
    from knowledge.foods.store import open_store

    return Knowledge(open_store(path))
