"""What is uncertain wants to be eaten nearer the middle of its window."""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner.draft import Placed
from knowledge.planner.search.drafts import drafts
from knowledge.planner.search.scoring import edge_share
from tests.unit.planner.kitchen import asked, gathered


@pytest.fixture(scope="module")
def placed(store: Store) -> Placed:
    text = "turkey thighs, turnips, barley"
    [first, *_] = drafts(gathered(store, text), asked(store, text), store=store)
    return max(first.placed, key=lambda p: p.way.window.hi_s - p.way.window.best_s)


def at(placed: Placed, share: float, doubt_s: float) -> Placed:
    w = placed.way.window
    late_s = w.best_s + share * (w.hi_s - w.best_s)
    return replace(placed, add_s=late_s, way=replace(placed.way, doubt_s=doubt_s))


def test_every_food_knows_how_far_published_times_differ(placed: Placed) -> None:
    assert 0.0 < placed.way.doubt_s < placed.way.window.lo_s


def test_the_edge_is_nearer_for_what_is_uncertain(placed: Placed) -> None:
    half = (placed.way.window.hi_s - placed.way.window.best_s) / 2.0
    shares = [edge_share(at(placed, 0.4, doubt_s)) for doubt_s in (0.0, half / 2.0, half, 10.0 * half)]
    assert shares[0] == pytest.approx(0.4)
    assert shares == sorted(shares)
    assert shares[0] < shares[1] < shares[2]
    assert shares[-1] == 1.0
    assert edge_share(at(placed, 0.0, half)) == 0.0


@pytest.mark.parametrize(
    "finish", ["2 tbsp creme fraiche", "yoghurt", "a spoonful of sour cream", "250 g butter"]
)
def test_a_spoonful_on_the_plate_does_not_call_for_a_pot(store: Store, finish: str) -> None:
    text = f"2 mackerel fillets, 300 g celeriac, {finish}, for 2"
    [first, *_] = drafts(gathered(store, text), asked(store, text), store=store)
    assert first.method.kind == "dry"


@pytest.mark.parametrize("sauce", ["200 ml cream", "cream", "200 g sour cream", "half a litre of milk"])
def test_a_sauces_worth_of_cream_does(store: Store, sauce: str) -> None:
    text = f"2 mackerel fillets, 300 g celeriac, {sauce}, for 2"
    [first, *_] = drafts(gathered(store, text), asked(store, text), store=store)
    assert first.method.wet


def test_what_is_creamy_is_so_for_the_choice_and_for_the_liquid(store: Store) -> None:
    """A spoonful leaves the water as it is; a carton stands for a part of it."""
    ml = {}
    for said in ("", ", 2 tbsp sour cream", ", 200 ml sour cream"):
        text = f"600 g parsnips, 4 pork chops{said}, for 3, in a lidded pot"
        found = drafts(gathered(store, text), asked(store, text), store=store)
        liquid = found[0].liquid
        ml[said] = liquid.ml if liquid is not None else 0.0
    assert ml[""] == ml[", 2 tbsp sour cream"] > ml[", 200 ml sour cream"]
