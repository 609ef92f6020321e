"""What lies in one layer, on which sheet, and what one panful of meat is.

How much fits a sheet is common practice, no source; the areas of balls and rods are geometry.
"""

from __future__ import annotations

import math

import pytest

from knowledge.foods.store import Store
from knowledge.planner import plan
from knowledge.planner.checking.verify import check
from knowledge.planner.model import Do, Have, Kitchen, Plan, Request, VesselAt
from knowledge.planner.search import floor
from knowledge.planner.sizes import size_of

HALF_M2, QUARTER_M2, PAN_28_M2 = 0.13, 0.062, 0.053


def sheet(store: Store, *have: Have, eaters: float, size: str | None = None) -> Plan:
    kitchen = Kitchen(vessels=(VesselAt(id="sheet pan", size=size),))
    made = plan(Request(have=have, eaters=eaters, eaters_said=True, kitchen=kitchen), store=store)
    assert isinstance(made, Plan)
    assert check(made, store=store).problems == ()
    return made


def test_balls_and_rods_cover_what_geometry_says(store: Store) -> None:
    """A ball of 42 mm covers a circle of 13.9 cm2, a rod of 11 x 165 mm a rectangle of 18.2 cm2."""
    potato, asparagus = store.food("new-potato"), store.food("asparagus")
    ball_g = math.pi / 6 * 4.2**3 * floor.DENSITY / 1000.0
    rod_g = math.pi / 4 * 1.1**2 * 16.5 * floor.DENSITY / 1000.0 / asparagus.edible_frac
    one = floor.layer_m2(potato, ball_g, shape="sphere", size_mm=42.0, cut_id="whole")
    other = floor.layer_m2(asparagus, rod_g, shape="rod", size_mm=11.0, cut_id="whole")
    assert one * floor.PACKING == pytest.approx(13.85e-4, rel=0.01)
    assert other * floor.SIDE_BY_SIDE == pytest.approx(18.15e-4, rel=0.01)


def test_a_weeknight_for_three_fits_the_half_sheet(store: Store) -> None:
    made = sheet(
        store,
        Have(food_id="chicken-thigh", grams=550.0),
        Have(food_id="potato", grams=450.0),
        Have(food_id="carrot", qty=3.0, unit="piece"),
        Have(food_id="cauliflower", grams=250.0),
        eaters=3.0,
    )
    assert made.size == "half sheet"
    assert made.fill < 1.0
    assert {i.food_id for i in made.items} == {"chicken-thigh", "potato", "carrot", "cauliflower"}
    assert sum(i.grams for i in made.items) > 1400


@pytest.mark.parametrize(
    "have",
    [
        (Have(food_id="chicken-wing", grams=4000.0),),
        (Have(food_id="chicken-thigh", qty=10.0, unit="piece"), Have(food_id="potato", grams=2000.0)),
        (
            Have(food_id="chicken-drumstick", qty=16.0, unit="piece"),
            Have(food_id="sweet-potato", grams=1800.0),
        ),
    ],
)
def test_what_fills_two_sheets_is_not_put_on_one(store: Store, have: tuple[Have, ...]) -> None:
    made = sheet(store, *have, eaters=9.0)
    assert made.size == "half sheet"
    assert made.fill <= 1.0
    assert sum(i.grams for i in made.items) < 3700
    assert any(said.startswith("two rounds") or "keep the rest" in said for said in made.assumed)


def test_two_fillets_potatoes_and_stalks_fit_a_quarter_sheet(store: Store) -> None:
    made = sheet(
        store,
        Have(food_id="salmon", qty=2.0, unit="fillet"),
        Have(food_id="new-potato", grams=380.0),
        Have(food_id="green-bean", grams=180.0),
        eaters=2.0,
        size="quarter sheet",
    )
    grams = {i.food_id: i.grams for i in made.items}
    assert grams["salmon"] == 340.0
    assert grams["new-potato"] == 380.0


def test_no_sheet_larger_than_an_oven_s_own_is_taken_unasked(store: Store) -> None:
    have = (Have(food_id="chicken-thigh", qty=6.0, unit="piece"), Have(food_id="potato", grams=1200.0))
    made = plan(Request(have=have, eaters=6.0, eaters_said=True, wishes=("tray bake",)), store=store)
    assert isinstance(made, Plan)
    assert made.size == "half sheet"
    assert sheet(store, *have, eaters=6.0, size="three-quarter sheet").size == "three-quarter sheet"


@pytest.mark.parametrize(
    ("said", "size"),
    [
        ("32x23 cm", "quarter sheet"),
        ("33 x 24", "quarter sheet"),
        ("45 by 32 cm", "half sheet"),
        ("18 x 13 inch", "half sheet"),
        ("9x13", "quarter sheet"),
        ("53x38cm", "three-quarter sheet"),
    ],
)
def test_a_tray_by_its_sides(store: Store, said: str, size: str) -> None:
    found = size_of(store.vessel("sheet pan"), said)
    assert found is not None
    assert found.id == size


# --- panfuls --------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("grams", "count"), [(300.0, 1), (600.0, 1), (700.0, 1), (900.0, 2), (1200.0, 2), (1500.0, 3)]
)
def test_a_panful_is_about_600_g_on_28_cm(grams: float, count: int) -> None:
    assert floor.batches(grams, 0.01, PAN_28_M2) == count


def test_more_meat_is_browned_for_longer_and_in_batches(store: Store) -> None:
    def browned(grams: float) -> tuple[float, str]:
        kitchen = Kitchen(vessels=(VesselAt(id="lidded pot"),))
        have = (Have(food_id="stew-beef", grams=grams), Have(food_id="carrot", qty=3.0, unit="piece"))
        made = plan(Request(have=have, eaters=4.0, eaters_said=True, kitchen=kitchen), store=store)
        assert isinstance(made, Plan)
        step = next(s for s in made.steps if s.do is Do.BROWN)
        return step.hands_s, step.text

    little, much = browned(450.0), browned(1200.0)
    assert much[0] >= 2 * little[0]
    assert "batches" in much[1]
    assert "batches" not in little[1]
