"""What must hold for every piece, medium and end point."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from knowledge.errors import OutOfRange
from knowledge.foods.store import Store, open_store
from knowledge.physics import (
    Case,
    Goal,
    Medium,
    Phase,
    Texture,
    cook,
    goal,
    history,
    media,
    piece,
    state_at,
    tables,
)
from knowledge.physics.limits import RANGES
from knowledge.physics.pieces import shaped

FOODS = (
    "carrot",
    "potato",
    "broccoli",
    "cod",
    "chicken-thigh",
    "pork-chop",
    "stew-beef",
    "sausage",
    "zucchini",
)
CHECKED = settings(max_examples=25, deadline=None)
SLACK = 0.004  # the time grid's own error

_STORE: list[Store] = []


def store() -> Store:
    if not _STORE:
        _STORE.append(open_store())
    return _STORE[0]


foods = st.sampled_from(FOODS)
sizes = st.floats(4.0, 90.0)
altitudes = st.floats(0.0, 3500.0)
ratios = st.tuples(st.floats(1.0, 3.0), st.floats(3.0, 8.0))


def end(food_id: str, method: str = "", texture: Texture = Texture.TENDER) -> Goal:
    food = store().food(food_id)
    return goal(food, store().doneness(food.doneness), method=method, texture=texture)


def case(food_id: str, size_mm: float, b: tuple[float, float], medium: Medium, target: Goal) -> Case:
    food = store().food(food_id)
    made = piece(food, size_mm=size_mm, shape="brick", ratio_1=b[0], ratio_2=b[1])
    return Case(piece=made, phases=(Phase(medium=medium, duration_s=None),), goal=target)


def seconds(*cases: Case) -> list[float]:
    return [math.inf if o.done_s is None else o.done_s for o in cook(cases)]


def some_medium(kind: str, altitude_m: float) -> Medium:
    match kind:
        case "oven":
            return media.oven(210.0, altitude_m=altitude_m)
        case "pan":
            return media.open_pan(180.0, altitude_m=altitude_m)
        case "simmer":
            return media.simmering(altitude_m)
        case _:
            return media.pressure(70.0, altitude_m, come_up_s=300.0)


kinds = st.sampled_from(("oven", "pan", "simmer", "pressure"))


@CHECKED
@given(foods, sizes, st.floats(1.05, 2.0), ratios, kinds)
def test_thicker_is_never_faster(
    food_id: str, size_mm: float, more: float, b: tuple[float, float], kind: str
) -> None:
    medium = some_medium(kind, 0.0)
    thin, thick = seconds(
        case(food_id, size_mm, b, medium, end(food_id)),
        case(food_id, size_mm * more, b, medium, end(food_id)),
    )
    assert thick >= thin * (1.0 - SLACK)


@CHECKED
@given(foods, sizes, ratios, st.floats(150.0, 240.0), st.floats(5.0, 40.0))
def test_a_hotter_oven_is_never_slower(
    food_id: str, size_mm: float, b: tuple[float, float], oven: float, more: float
) -> None:
    target = end(food_id, "roast")
    cool, hot = seconds(
        case(food_id, size_mm, b, media.oven(oven), target),
        case(food_id, size_mm, b, media.oven(oven + more), target),
    )
    assert hot <= cool * (1.0 + SLACK)


@CHECKED
@given(foods, sizes, ratios, st.floats(180.0, 230.0))
def test_a_fan_is_never_slower(food_id: str, size_mm: float, b: tuple[float, float], oven: float) -> None:
    target = end(food_id, "roast")
    still, fan = seconds(
        case(food_id, size_mm, b, media.oven(oven), target),
        case(food_id, size_mm, b, media.oven(oven, fan=True), target),
    )
    assert fan <= still * (1.0 + SLACK)


@CHECKED
@given(foods, sizes, ratios, altitudes, st.floats(100.0, 1500.0), st.sampled_from(("simmer", "pressure")))
def test_higher_is_never_faster_in_water(
    food_id: str, size_mm: float, b: tuple[float, float], altitude_m: float, more: float, kind: str
) -> None:
    low, high = seconds(
        *(
            case(food_id, size_mm, b, some_medium(kind, z), end(food_id))
            for z in (altitude_m, altitude_m + more)
        )
    )
    assert high >= low * (1.0 - SLACK)


@CHECKED
@given(st.sampled_from(("carrot", "potato", "broccoli", "zucchini")), sizes, ratios, kinds)
def test_more_done_takes_longer(food_id: str, size_mm: float, b: tuple[float, float], kind: str) -> None:
    medium = some_medium(kind, 0.0)
    crisp, tender, soft = seconds(
        *(case(food_id, size_mm, b, medium, end(food_id, texture=t)) for t in Texture)
    )
    assert crisp < tender < soft


@CHECKED
@given(st.sampled_from(("cod", "chicken-thigh", "pork-chop")), sizes, ratios, st.floats(50.0, 70.0))
def test_a_higher_core_takes_longer(
    food_id: str, size_mm: float, b: tuple[float, float], core: float
) -> None:
    food = store().food(food_id)
    medium = media.oven(200.0, surface="meat")
    ends = [
        goal(food, store().doneness(food.doneness), to_degC=T, method="") for T in (core, core + 6.0, 80.0)
    ]
    low, mid, high = seconds(*(case(food_id, size_mm, b, medium, e) for e in ends))
    assert low * (1.0 - SLACK) <= mid <= high * (1.0 + SLACK)


@CHECKED
@given(foods, st.floats(15.0, 90.0), ratios, st.floats(0.3, 1.0))
def test_a_rest_never_cools_the_core_below_its_removal_temperature_before_the_peak(
    food_id: str, size_mm: float, b: tuple[float, float], share: float
) -> None:
    heating = case(food_id, size_mm, b, media.oven(220.0, surface="meat"), end(food_id, "roast"))
    out = share * min(seconds(heating)[0], 14400.0)
    rested = Case(
        piece=heating.piece,
        phases=(
            Phase(medium=heating.phases[0].medium, duration_s=out),
            Phase(medium=media.resting(), duration_s=None),
        ),
        goal=heating.goal,
    )
    cores = history(rested, [out + 30.0 * i for i in range(61)]).core_degC
    peak = cores.index(max(cores))
    assert all(core >= cores[0] - 0.1 for core in cores[: peak + 1])
    rising = [b - a for a, b in pairwise(cores[: peak + 1])]
    assert all(step > -0.1 for step in rising)


@CHECKED
@given(foods, sizes, ratios, st.floats(0.1, 0.9), kinds)
def test_stopping_and_going_on_changes_nothing(
    food_id: str, size_mm: float, b: tuple[float, float], share: float, kind: str
) -> None:
    whole = case(
        food_id, size_mm, b, media.simmering() if kind == "pressure" else some_medium(kind, 0.0), end(food_id)
    )
    total = seconds(whole)[0]
    if not math.isfinite(total) or total < 60.0:
        return
    if whole.phases[0].medium.come_up_s > 0.0:
        share = max(share, min(0.95, whole.phases[0].medium.come_up_s / total))
        steady = Medium(
            **{
                **{f: getattr(whole.phases[0].medium, f) for f in Medium.__slots__},
                "come_up_s": 0.0,
                "start_degC": whole.phases[0].medium.ambient_degC,
            }
        )
    else:
        steady = whole.phases[0].medium
    if share * total < whole.phases[0].medium.come_up_s:
        return
    rest = Case(
        piece=whole.piece,
        phases=(Phase(medium=steady, duration_s=None),),
        goal=whole.goal,
        state=state_at(whole, share * total),
    )
    left = seconds(rest)[0]
    assert share * total + left == pytest.approx(total, rel=0.015, abs=3.0)


@CHECKED
@given(foods, sizes, ratios, kinds, altitudes)
def test_no_number_is_ever_missing(
    food_id: str, size_mm: float, b: tuple[float, float], kind: str, altitude_m: float
) -> None:
    outcome = cook([case(food_id, size_mm, b, some_medium(kind, altitude_m), end(food_id))])[0]
    for value in (outcome.core_degC, outcome.mean_degC, outcome.lethality_log):
        assert math.isfinite(value)
    if outcome.done_s is not None:
        assert 0.0 <= outcome.done_s < 90000.0
        assert outcome.safe_s is not None
        assert outcome.safe_s <= outcome.done_s + 1e-6
        assert outcome.over_s is None or outcome.over_s >= outcome.done_s


KINDS = {
    "size": "size_mm",
    "oven": "oven_degC",
    "gauge": "gauge_kPa",
    "altitude": "altitude_m",
    "pan": "pan_degC",
    "liquid": "liquid_degC",
    "core": "core_degC",
}


@given(st.sampled_from(("size", "oven", "gauge", "altitude", "pan", "liquid", "core")), st.floats())
def test_what_no_kitchen_has_is_refused_by_name(what: str, value: float) -> None:
    makers: dict[str, Callable[[float], object]] = {
        "size": lambda v: piece(store().food("carrot"), size_mm=v, shape="brick"),
        "oven": media.oven,
        "gauge": media.pressure,
        "altitude": media.boiling,
        "pan": media.open_pan,
        "liquid": lambda v: media.simmering(0.0, v),
        "core": lambda v: goal(store().food("carrot"), store().doneness("tender_meat"), to_degC=v),
    }
    low, high, unit = RANGES[KINDS[what]]
    if low <= value <= high:
        makers[what](value)
        return
    with pytest.raises(OutOfRange) as refused:
        makers[what](value)
    assert (refused.value.low, refused.value.high, refused.value.unit) == (low, high, unit)


@pytest.mark.parametrize(
    "medium", [media.oven(180.0), media.simmering(), media.open_pan(200.0)], ids=["oven", "pot", "pan"]
)
@pytest.mark.parametrize("food_id", ["pork-loin", "salmon", "potato"])
def test_a_rest_that_follows_does_not_change_what_went_before(medium: Medium, food_id: str) -> None:
    shaped = piece(store().food(food_id), size_mm=45.0, shape="brick")
    end = goal(store().food(food_id), store().doneness(store().food(food_id).doneness))
    alone = Case(piece=shaped, phases=(Phase(medium=medium, duration_s=None),), goal=end)
    rested = replace(
        alone,
        phases=(
            Phase(medium=medium, duration_s=1200.0),
            Phase(medium=media.resting(), duration_s=None),
        ),
    )
    times = (300.0, 700.0, 1100.0)
    assert history(rested, times).core_degC == pytest.approx(history(alone, times).core_degC, abs=0.5)


PIECES = [
    (row["food"] or "carrot", row["piece"] or "brick")
    for row in tables.rows("size_factors")
    if row["piece"] not in ("joint", "floret") and not row["as_shape"]
]


@given(st.sampled_from(PIECES), st.floats(4.0, 150.0), st.floats(1.0, 1.5))
def test_what_lets_heat_in_is_never_faster_thicker(
    piece: tuple[str, str], size_mm: float, thicker: float
) -> None:
    """Leaves that part from some size on have begun to below it: no step down in time."""

    def half_m(mm: float) -> tuple[float, float]:
        gentle, brisk, wet = shaped(piece[0], "", piece[1], mm, 1.0, 2.0, None, 1000.0)
        return gentle[1], brisk[1] * wet

    small, large = half_m(size_mm), half_m(size_mm * thicker)
    assert large[0] >= small[0] * (1 - 1e-9)
    assert large[1] >= small[1] * (1 - 1e-9)
