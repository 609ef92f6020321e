"""What is answered to "quicker?": what was tried, by plans that can be asked for and timed."""

from __future__ import annotations

import re

import pytest

from bot.core.replies import plans
from knowledge.foods.store import Store
from knowledge.planner.model import Have, Kitchen, VesselAt
from knowledge.text import read
from knowledge.text.model import Context, Kind, Mode
from tests.unit.planner.kitchen import NOW, only, planned

GOAT = (Have(food_id="goat", grams=800.0), Have(food_id="turnip", grams=400.0))


def test_another_vessel_is_named_with_its_own_time(store: Store) -> None:
    both = Kitchen(vessels=(VesselAt(id="lidded pot"), VesselAt(id="pressure cooker")))
    made = planned(store, *GOAT, eaters=4.0, vessel="lidded pot", kitchen=both, wishes=("quick",))
    under_pressure = planned(
        store, *GOAT, eaters=4.0, vessel="pressure cooker", kitchen=both, wishes=("quick",)
    )
    assert under_pressure.total_s < made.total_s
    assert "the pressure cooker (" in made.quicker
    assert "if you have one" not in made.quicker


def test_a_cooker_that_is_not_there_is_named_as_such_unless_it_was_ruled_out(store: Store) -> None:
    pot = only("lidded pot")
    assert (
        "pressure cooker, if you have one,"
        in planned(store, *GOAT, eaters=4.0, kitchen=pot, wishes=("quick",)).quicker
    )
    out = planned(store, *GOAT, eaters=4.0, kitchen=pot, wishes=("quick",), not_vessels=("pressure cooker",))
    assert "pressure cooker" not in out.quicker


def test_a_smaller_cut_says_what_it_saves(store: Store) -> None:
    made = planned(
        store, Have(food_id="turkey-thigh", grams=900.0), "onion", eaters=4.0, kitchen=only("lidded pot"),
        wishes=("quick",),
    )  # fmt: skip
    assert re.search(
        r"sets the time \(.+\)(; as .+ sooner, for more knife work|, and .+ save nothing|;|$)", made.quicker
    )


def test_nothing_is_tried_when_nobody_is_in_a_hurry(store: Store) -> None:
    assert planned(store, *GOAT, eaters=4.0).quicker == ""


def test_a_plan_that_stays_says_what_was_tried(store: Store) -> None:
    made = planned(store, *GOAT, eaters=4.0, kitchen=only("lidded pot"), wishes=("quick",))
    said = plans.unchanged(made, made, hurried=True)
    assert said.startswith("The plan stays as it is.")
    assert "pressure cooker" in said
    assert plans.unchanged(made, made) == "The plan stays as it is."


@pytest.mark.parametrize(
    "text",
    [
        "any quicker way to do it?",
        "could you speed this up",
        "is there a faster option",
        "can dinner be ready sooner?",
    ],
)
def test_it_is_asked_of_the_plan_on_the_table(store: Store, text: str) -> None:
    found = read(text, store=store, now=NOW, context=Context(mode=Mode.PLANNED))
    assert (found.kind, found.wishes, found.amends) == (Kind.PLAN, ("quick",), True)


@pytest.mark.parametrize("text", ["is steaming faster than boiling?", "any faster way to soak chickpeas?"])
def test_of_the_world_it_is_still_a_question(store: Store, text: str) -> None:
    assert read(text, store=store, now=NOW, context=Context(mode=Mode.PLANNED)).kind is Kind.QUESTION
