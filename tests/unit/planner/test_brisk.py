"""Fish, pasta and rice set the clock: what is slow is cut small or goes in first, and nobody gets up twice.

Sizes and orders are common practice, no source.
"""

from __future__ import annotations

from dataclasses import replace

import pytest

from knowledge.foods.store import Store
from knowledge.planner.draft import Placed
from knowledge.planner.model import Do, Have
from knowledge.planner.search.drafts import drafts
from knowledge.planner.search.laying import ONE_TRIP_S, in_one_go
from tests.unit.planner.kitchen import asked, gathered, item, planned_in, told


@pytest.mark.parametrize("quick", ["pasta", "hake", "prawn", "mussel"])
def test_a_root_beside_what_is_quick_is_cut_smaller_than_in_a_stew(store: Store, quick: str) -> None:
    have = (
        Have(food_id=quick.replace("prawn", "shrimp"), grams=400.0),
        Have(food_id="rutabaga", grams=500.0),
    )
    beside_quick = item(planned_in(store, "lidded pot", *have, eaters=3.0), "rutabaga")
    stew = (Have(food_id="stew-beef", grams=600.0), Have(food_id="rutabaga", grams=500.0))
    assert beside_quick.size_mm < item(planned_in(store, "lidded pot", *stew, eaters=3.0), "rutabaga").size_mm


@pytest.mark.parametrize("quick", ["pasta", "hake", "shrimp"])
def test_what_is_quick_goes_in_last_and_stays_for_its_own_time(store: Store, quick: str) -> None:
    made = planned_in(
        store, "lidded pot", Have(food_id=quick, grams=350.0), Have(food_id="beet", grams=400.0), eaters=3.0
    )
    brisk, slow = item(made, quick), item(made, "beet")
    assert brisk.in_s > slow.in_s
    first, last = brisk.done.window_s
    assert brisk.out_s - first <= 0.3 * (first - brisk.in_s)
    assert last >= brisk.out_s


@pytest.mark.parametrize("vessel", ["saute pan", "lidded pot", "sheet pan"])
def test_no_floret_is_left_so_large_only_to_last(store: Store, vessel: str) -> None:
    made = planned_in(
        store,
        vessel,
        Have(food_id="chicken-thigh", qty=4.0),
        Have(food_id="cauliflower", qty=1.0),
        eaters=4.0,
    )
    assert item(made, "cauliflower").size_mm <= 45.0


@pytest.mark.parametrize(("starch", "most"), [("spaghetti", 1.3), ("arborio-rice", 1.4)])
def test_pasta_and_rice_are_not_kept_in_long_past_their_time(store: Store, starch: str, most: float) -> None:
    """Al dente is a matter of two or three minutes; rice has a few more."""
    placed = _placed(store, f"300 g {starch.replace('-', ' ')}, courgettes, for 3, lidded pot")
    window = next(p.way.window for p in placed if p.way.dish.food.id == starch)
    assert window.hi_s == pytest.approx(most * window.lo_s)


def _placed(store: Store, text: str) -> tuple[Placed, ...]:
    found = drafts(gathered(store, text), asked(store, text), store=store)
    return next(d for d in found if d.method.id == "braise").placed


def test_what_is_minutes_apart_and_may_goes_in_together(store: Store) -> None:
    placed = _placed(store, "lamb shanks, carrots, parsnips, for 4, lidded pot")
    roots = [p for p in placed if p.way.dish.part != "protein"]
    apart = [Placed(way=p.way, add_s=p.way.window.best_s + 100.0 * n) for n, p in enumerate(roots)]
    assert len({p.add_s for p in in_one_go(apart)}) == 1


def test_what_would_be_near_its_edge_keeps_its_own_moment(store: Store) -> None:
    """Beet that needs far longer than the fish may stay does not pull it in."""
    placed = _placed(store, "haddock, beetroot, stock, for 3, lidded pot")
    fish = next(p for p in placed if p.way.dish.kind == "fish")
    root = next(p for p in placed if p.way.dish.food.id == "beet")
    slow = replace(root.way, window=replace(root.way.window, lo_s=fish.way.window.hi_s + 10.0))
    two = [
        Placed(way=fish.way, add_s=fish.way.window.best_s),
        Placed(way=slow, add_s=fish.way.window.hi_s + 20.0),
    ]
    assert two[1].add_s - two[0].add_s < ONE_TRIP_S
    assert in_one_go(two) == two


@pytest.mark.parametrize("vessel", ["lidded pot", "saute pan"])
def test_risotto_rice_is_in_the_fat_before_any_liquid(store: Store, vessel: str) -> None:
    made = planned_in(
        store, vessel, Have(food_id="arborio-rice", grams=280.0), "leek", "white-wine", "gruyere", eaters=3.0
    )
    toast = next(s for s in made.steps if "arborio-rice" in s.foods and s.do is Do.ADD)
    pour = next(s for s in made.steps if "white wine" in s.text and s.do is Do.HEAT)
    soften = next(s for s in made.steps if "leek" in s.foods and s.do is Do.ADD)
    assert soften.at_s < toast.at_s < pour.at_s
    assert "clear at the edges" in toast.text
    assert "a third at a time" in pour.text
    assert "Stir often" in told(made)


def test_plain_rice_and_rice_that_joins_late_are_not_toasted(store: Store) -> None:
    plain = planned_in(store, "lidded pot", Have(food_id="basmati-rice", grams=250.0), "onion", eaters=3.0)
    shin = (Have(food_id="beef-shank", grams=800.0), Have(food_id="arborio-rice", grams=200.0), "onion")
    late = planned_in(store, "lidded pot", *shin, eaters=4.0)
    assert "clear at the edges" not in told(plain) + told(late)


@pytest.mark.parametrize("wine", ["white-wine", "cider"])
def test_shells_open_in_a_glass_of_wine_and_their_own_liquor(store: Store, wine: str) -> None:
    made = planned_in(store, "lidded pot", Have(food_id="clam", grams=1000.0), "shallot", wine, eaters=2.0)
    assert made.liquid is None or made.liquid.ml <= 100.0
    dry = planned_in(store, "lidded pot", Have(food_id="clam", grams=1000.0), "shallot", eaters=2.0)
    assert dry.liquid is not None
    assert 50.0 <= dry.liquid.ml <= 150.0


def test_a_soups_worth_of_milk_simmers_with_the_rest(store: Store) -> None:
    made = planned_in(
        store, "lidded pot", Have(food_id="haddock", grams=400.0), Have(food_id="potato", grams=400.0),
        Have(food_id="milk", qty=700.0, unit="ml"), eaters=3.0,
    )  # fmt: skip
    pour = next(s for s in made.steps if "milk" in s.text)
    assert pour.at_s <= min(i.in_s for i in made.items if i.food_id == "haddock")
