"""Steam under a lid: over a little water, and greens on a bed of grain or potatoes.

Common practice, no source: a 22-25 mm fillet steams 8-10 min, broccoli florets 4-7, asparagus 4-7,
halved new potatoes 15-20; tolerance 25 %. What lies on rice is not stirred in.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner import swap
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Do, Have, PlanItem, Verdict
from tests.unit.planner.kitchen import item, told
from tests.unit.planner.kitchen import planned_in as planned


def minutes(one: PlanItem) -> float:
    return (one.out_s - one.in_s) / 60.0


@pytest.mark.parametrize(("vessel", "method"), [("lidded pot", "steam"), ("saute pan", "steam-pan")])
def test_fish_greens_and_potatoes_steam_in_their_turn(store: Store, vessel: str, method: str) -> None:
    made = planned(store, vessel, "cod", "asparagus", "new-potato")
    assert made.settings.method == method
    assert 8 * 0.75 <= minutes(item(made, "cod")) <= 10 * 1.45  # thick fillets may join the potatoes
    assert 4 * 0.75 <= minutes(item(made, "asparagus")) <= 7 * 1.25
    assert item(made, "new-potato").in_s == 0.0
    assert "it should steam" in told(made)
    assert made.liquid is not None
    assert made.liquid.what == "water"


def test_dumplings_steam_in_a_pot(store: Store) -> None:
    made = planned(store, "lidded pot", "dumpling", "bok-choy")
    assert made.settings.method == "steam"
    assert 5 <= minutes(item(made, "dumpling")) <= 12


def test_a_pot_that_would_boil_dry_is_told(store: Store) -> None:
    made = planned(store, "lidded pot", "cod", "broccoli", "new-potato")
    assert made.liquid is not None
    dry = replace(made, liquid=replace(made.liquid, ml=60.0))
    assert any("boils dry" in p for p in check(dry, store=store).problems)


@pytest.mark.parametrize("bed", ["rice", "quinoa"])
def test_greens_lie_on_grain_and_are_not_stirred(store: Store, bed: str) -> None:
    made = planned(store, "lidded pot", bed, "broccoli", "tofu")
    greens = item(made, "broccoli")
    assert greens.on_top
    assert "lay broccoli on top to steam, do not stir" in told(made).lower()
    assert 4 * 0.75 <= minutes(greens) <= 8 * 1.25


def test_in_a_stew_and_in_pasta_they_are_stirred_in(store: Store) -> None:
    stew = planned(store, "lidded pot", "stew-beef", "carrot", "green-bean")
    pasta = planned(store, "lidded pot", "pasta", "broccoli")
    risotto = planned(store, "lidded pot", "arborio-rice", "asparagus")
    assert not item(stew, "green-bean").on_top
    assert not item(pasta, "broccoli").on_top
    assert not item(risotto, "asparagus").on_top


def test_what_steams_is_swapped_in_steam(store: Store) -> None:
    made = planned(store, "lidded pot", "cod", "broccoli", "new-potato")
    answer = swap(made, frm="broccoli", to=Have(food_id="green-bean"), store=store)
    assert answer.verdict is not Verdict.NO
    assert answer.plan is not None
    assert check(answer.plan, store=store).sound
    assert any(s.do is Do.ADD and "green-bean" in s.foods for s in answer.plan.steps)


@pytest.mark.parametrize(
    ("vessel", "foods"),
    [
        ("lidded pot", ("chicken-thigh", "zucchini")), ("lidded pot", ("salmon", "spinach")),
        ("pressure cooker", ("stew-lamb", "carrot")), ("saute pan", ("chicken-thigh", "tomato")),
    ],
)  # fmt: skip
def test_couscous_soaks_off_the_heat_at_the_end(store: Store, vessel: str, foods: tuple[str, ...]) -> None:
    """Five minutes off the heat (UC Davis, cooking grains), whatever simmered before it."""
    made = planned(store, vessel, "couscous", *foods)
    step = [s for s in made.steps if s.do is Do.ADD and "couscous" in s.foods][-1]
    assert step.foods == ("couscous",)
    assert "off the heat" in step.text
    assert step.at_s == max(s.at_s for s in made.steps if s.do is Do.ADD)
    assert 5 <= (made.cooking_s - step.at_s) / 60.0 <= 9
