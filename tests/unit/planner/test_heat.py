"""Through which heat a dish goes: a trembling stew, a bubbling pot, joints by their weight.

Ranges are common practice, from memory, no source.
"""

from __future__ import annotations

from functools import partial

import pytest

from knowledge.foods.store import Store
from knowledge.planner.model import Do, Have, Plan
from tests.unit.planner import kitchen
from tests.unit.planner.kitchen import item

planned = partial(kitchen.planned_in, eaters=4.0)


def took_min(made: Plan, food_id: str) -> float:
    cooked = item(made, food_id)
    return (cooked.done.at_s - cooked.in_s) / 60.0


@pytest.mark.parametrize(
    ("food_id", "grams", "lo_min", "hi_min"),
    [
        ("whole-chicken", 1600, 75, 110),
        ("lamb-leg", 1200, 50, 85),
        ("pork-loin", 1200, 55, 90),
        ("beef-roast", 1300, 50, 85),
        ("turkey-breast", 2000, 75, 115),
    ],
)
def test_joints_and_birds_roast_at_a_moderate_heat(
    store: Store, food_id: str, grams: float, lo_min: float, hi_min: float
) -> None:
    made = planned(store, "sheet pan", Have(food_id=food_id, grams=grams))
    assert 170 <= (made.settings.oven_degC or 0.0) <= 200
    assert lo_min <= took_min(made, food_id) <= hi_min


def test_a_heavier_joint_takes_longer(store: Store) -> None:
    small, large = (
        took_min(planned(store, "sheet pan", Have(food_id="lamb-leg", grams=g)), "lamb-leg")
        for g in (1200, 2400)
    )
    assert 1.3 * small < large < 2.0 * small  # time grows with thickness squared: 2**(2/3) is 1.6


def test_a_stew_trembles_and_a_pot_of_vegetables_bubbles(store: Store) -> None:
    stew = planned(store, "saute pan", Have(food_id="lamb-shoulder", grams=800), Have(food_id="carrot"))
    pot = planned(store, "saute pan", Have(food_id="chicken-thigh", grams=800), Have(food_id="carrot"))
    assert any("tremble" in s.text for s in stew.steps)
    assert any("bubble" in s.text for s in pot.steps)
    assert not any("tremble" in s.text for s in pot.steps)


def test_the_same_vegetable_takes_longer_in_a_stew(store: Store) -> None:
    stew = planned(
        store, "lidded pot", Have(food_id="stew-beef", grams=800), Have(food_id="potato", cut="diced")
    )
    pot = planned(store, "lidded pot", Have(food_id="potato", cut="diced"))
    assert stew.settings.method in ("braise", "braise-oven")
    assert took_min(stew, "potato") > 1.15 * took_min(pot, "potato")


def test_peas_go_in_for_the_last_minutes(store: Store) -> None:
    made = planned(
        store, "lidded pot", Have(food_id="chicken-thigh", grams=800), Have(food_id="potato"),
        Have(food_id="pea", state="frozen"),
    )  # fmt: skip
    pea = item(made, "pea")
    assert 1.5 <= (pea.out_s - pea.in_s) / 60.0 <= 6.0
    assert pea.in_s == pytest.approx(max(s.at_s for s in made.steps if s.do is Do.ADD), abs=1.0)
