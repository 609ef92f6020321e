"""Browning keeps its own clock. Times are common practice, no source, 25 % beyond what is commonly said."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from bot.commands.times import predictions
from knowledge.foods.store import Store
from knowledge.physics import Case, Medium, Outcome, Phase, cook, goal, history, media, piece, state_at
from knowledge.physics.browning import golden_min

OVEN = media.oven(200.0, crowding=0.5, surface="meat")


def case(
    store: Store, food_id: str, medium: Medium, *, size_mm: float, ratios: tuple[float, float] = (1.0, 1.0),
    method: str = "roast", start_degC: float | None = None,
) -> Case:  # fmt: skip
    food = store.food(food_id)
    return Case(
        piece=piece(
            food, size_mm=size_mm, shape="brick", ratio_1=ratios[0], ratio_2=ratios[1], start_degC=start_degC
        ),
        phases=(Phase(medium=medium, duration_s=None),),
        goal=goal(food, store.doneness(food.doneness), method=method),
    )


def bacon(store: Store, oven_degC: float = 200.0) -> Case:
    medium = media.oven(oven_degC, crowding=0.5, surface="meat")
    return case(store, "bacon", medium, size_mm=3, ratios=(10.0, 70.0))


def done(out: Outcome) -> float:
    assert out.done_s is not None
    return out.done_s / 60.0


@pytest.mark.parametrize(
    ("food", "cut_text", "method", "degC", "low", "high"),
    [
        ("bacon", "", "roast", 200, 12, 18), ("bacon", "", "roast", 220, 10, 16),
        ("bacon", "", "saute", 180, 6, 10), ("halloumi", "slices", "saute", 180, 5, 9),
        ("tofu", "25 mm cubes", "roast", 200, 22, 32), ("tofu", "25 mm cubes", "roast", 220, 18, 28),
    ],
)  # fmt: skip
def test_what_is_done_when_it_is_brown(
    store: Store, food: str, cut_text: str, method: str, degC: int, low: float, high: float
) -> None:
    line = {"id": "x", "food": food, "cut_text": cut_text, "method": method, "medium_temp_c": str(degC)}
    found = predictions([line], store)["x"]
    assert found is not None
    assert 0.8 * low <= found <= 1.25 * high


@pytest.mark.parametrize(
    ("food_id", "size_mm", "oven_degC", "crowding", "low", "high"),
    [("carrot", 12.5, 260.0, "piled", 14, 22), ("potato", 25.0, 220.0, "piled", 28, 45)],
)
def test_roots_are_golden_when_cooks_say_so(
    store: Store, food_id: str, size_mm: float, oven_degC: float, crowding: str, low: float, high: float
) -> None:
    medium = media.oven(oven_degC, crowding=crowding)
    out = cook([case(store, food_id, medium, size_mm=size_mm)])[0]
    assert out.browned_s is not None
    assert 0.8 * low <= out.browned_s / 60.0 <= 1.25 * high
    assert out.decided_by == "softening"  # brown or not, done is tender


def test_fish_is_done_long_before_it_browns(store: Store) -> None:
    out = cook([case(store, "cod", OVEN, size_mm=25, ratios=(4.0, 6.0))])[0]
    assert out.browned_s is None or out.browned_s > 1.5 * 60.0 * done(out)


def test_crisp_bacon_is_far_past_its_safe_minimum_and_soon_burnt(store: Store) -> None:
    out = cook([bacon(store)])[0]
    assert out.decided_by == "browning"
    assert out.safe_s is None or out.safe_s < 0.3 * 60.0 * done(out)
    assert out.over_s is not None
    assert 1.2 <= out.over_s / 60.0 / done(out) <= 1.8


def test_hotter_browns_sooner(store: Store) -> None:
    times = [done(out) for out in cook([bacon(store, T) for T in (180.0, 200.0, 220.0, 240.0)])]
    assert times == sorted(times, reverse=True)


def test_nothing_browns_in_liquid_or_steam(store: Store) -> None:
    for medium in (media.boiling(), media.steaming(), media.resting(60.0)):
        followed = history(case(store, "carrot", medium, size_mm=12, method="simmer"), [3600.0])
        assert followed.browned_min[0] == pytest.approx(0.0)
    out = cook([case(store, "bacon", media.boiling(), size_mm=3, ratios=(10.0, 70.0), method="simmer")])[0]
    assert out.browned_s is None
    assert out.decided_by != "browning"


def test_browning_goes_on_from_a_state(store: Store) -> None:
    whole = bacon(store)
    at = state_at(whole, 480.0)
    later = replace(whole, state=at, phases=(Phase(medium=replace(OVEN, come_up_s=0.0), duration_s=None),))
    assert history(later, [0.0]).browned_min[0] == pytest.approx(at.browned_min)
    assert 480.0 / 60.0 + done(cook([later])[0]) == pytest.approx(done(cook([whole])[0]), rel=0.03)


def test_the_march_agrees_with_a_fine_one(store: Store) -> None:
    out = cook([bacon(store)])[0]
    followed = history(bacon(store), [60.0 * done(out)])
    assert followed.browned_min[0] == pytest.approx(6.0, rel=0.25)  # steep: a quarter is some 20 s
    assert math.isfinite(golden_min())
