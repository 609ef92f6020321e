"""The last gate, on its own: plans that hold what is barred, as if every earlier rule had failed."""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner.checking.withheld import withheld
from knowledge.planner.model import Caution, NoPlan, Plan
from tests.unit.planner.kitchen import planned


@pytest.fixture(scope="module")
def quiche_like(store: Store) -> Plan:
    return planned(store, "egg", "leek", "potato")


def of(plan: Plan, *, allergies: tuple[str, ...] = (), diets: tuple[str, ...] = ()) -> Plan:
    """The same plan, as if these had been said and nobody had listened."""
    return replace(plan, request=replace(plan.request, allergies=allergies, diets=diets))


def without_notes(plan: Plan) -> Plan:
    return replace(plan, cautions=())


def test_a_plan_that_holds_the_allergen_is_kept_back_and_says_why(store: Store, quiche_like: Plan) -> None:
    answer = withheld(of(without_notes(quiche_like), allergies=("eggs",)), store=store)
    assert isinstance(answer, NoPlan)
    assert "eggs" in answer.reasons[0]
    assert answer.nearest is None


def test_what_only_a_step_names_is_seen_too(store: Store, quiche_like: Plan) -> None:
    first, *rest = quiche_like.steps
    stirred = replace(quiche_like, steps=(replace(first, foods=(*first.foods, "butter")), *rest))
    answer = withheld(of(without_notes(stirred), allergies=("milk",)), store=store)
    assert isinstance(answer, NoPlan)


def test_what_only_the_line_of_contents_names_is_seen_too(store: Store, quiche_like: Plan) -> None:
    line = Caution(text="Contains celery, sesame and mustard.", source="")
    told = replace(quiche_like, cautions=(line,))
    for token in ("celery", "sesame", "mustard"):
        assert isinstance(withheld(of(told, allergies=(token,)), store=store), NoPlan), token
    assert isinstance(withheld(of(told, allergies=("fish",)), store=store), Plan)


def test_a_diet_that_bars_an_allergen_keeps_back_as_well(store: Store, quiche_like: Plan) -> None:
    first, *rest = quiche_like.steps
    stirred = without_notes(
        replace(quiche_like, steps=(replace(first, foods=(*first.foods, "butter")), *rest))
    )
    assert isinstance(withheld(of(stirred, diets=("no dairy",)), store=store), NoPlan)
    assert isinstance(withheld(stirred, store=store), Plan)


def test_the_nearest_plan_passes_the_same_gate(store: Store, quiche_like: Plan) -> None:
    barred = of(without_notes(quiche_like), allergies=("eggs",))
    for nearest, shown in ((barred, False), (quiche_like, True)):
        refused = NoPlan(reasons=("no oven",), nearest=nearest, request=nearest.request)
        answer = withheld(refused, store=store)
        assert isinstance(answer, NoPlan)
        assert (answer.nearest is not None) is shown


def test_advice_and_flavour_that_name_it_are_left_out_and_the_rest_stays(
    store: Store, quiche_like: Plan
) -> None:
    advice = ("Grated parmesan over it is good.", "A squeeze of lemon lifts it.")
    told = replace(quiche_like, advice=advice, flavour="butter and chives")
    answer = withheld(of(without_notes(told), allergies=("milk",)), store=store)
    assert isinstance(answer, Plan)
    assert answer.advice == advice[1:]
    assert answer.flavour == ""
