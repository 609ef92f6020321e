"""A cut makes of a food a piece that fits inside it."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from knowledge.foods.model import Behaviour, Cut, Food, Role
from knowledge.foods.pieces import piece_of

CARROT = Food(
    id="carrot",
    name="carrot",
    group="root",
    role=Role.COOK,
    composition=None,
    density_kg_m3=None,
    bulk_density_kg_m3=None,
    portions=(),
    whole_shape="rod",
    whole_mm=24.0,
    whole_ratio_1=6.5,
    whole_ratio_2=1.0,
    cuts=(),
    doneness="root",
    dose_factor=1.0,
    target_degC=None,
    over_degC=None,
    safety="",
    start_state="fridge",
    water_uptake_g_per_g=None,
    loss_frac=None,
    pressure=Behaviour.FINE,
    edible_frac=1.0,
    serving_g=100.0,
    fridge_days=None,
    freezer_months=None,
    cooked_days=None,
    allergens=frozenset(),
    animal="",
    part="vegetable",
    when=None,
    does="",
    salt_g=None,
    smoke_degC=None,
    sources=(),
)


def cut(size_mm: float = 0.0, parts: int = 0, shape: str = "brick") -> Cut:
    return Cut(id="", name="", shape=shape, size_mm=size_mm, ratio_1=1.0, ratio_2=1.0, knife_min_per_kg=1.0,
               source="", parts=parts)  # fmt: skip


def test_whole_is_the_food_as_bought() -> None:
    piece = piece_of(CARROT, cut(parts=1))
    assert (piece.shape, piece.size_mm, piece.ratio_1) == ("rod", 24.0, 6.5)


def test_a_long_food_is_halved_along() -> None:
    piece = piece_of(CARROT, cut(parts=2))
    assert piece.size_mm == pytest.approx(12)
    assert piece.ratio_2 == pytest.approx(156 / 12)


def test_a_round_food_is_halved_then_quartered_across() -> None:
    potato = replace(CARROT, whole_shape="sphere", whole_mm=60.0, whole_ratio_1=1.0)
    half, quarter = piece_of(potato, cut(parts=2)), piece_of(potato, cut(parts=4))
    assert (half.size_mm, half.ratio_1, half.ratio_2) == pytest.approx((30, 2, 2))
    assert (quarter.size_mm, quarter.ratio_1, quarter.ratio_2) == pytest.approx((30, 1, 2))


def test_a_chunk_is_never_thicker_than_the_food() -> None:
    assert piece_of(CARROT, cut(40)).size_mm == 24.0
    assert piece_of(CARROT, cut(20)).size_mm == 20.0


@given(
    size=st.floats(1, 300),
    long=st.floats(1, 20),
    parts=st.sampled_from([0, 1, 2, 4, 8]),
    cut_mm=st.floats(1, 150),
    shape=st.sampled_from(["rod", "sphere", "disk", "brick", "slab", "cylinder"]),
)
def test_pieces_are_never_larger_than_the_food_and_more_parts_never_thicker(
    size: float, long: float, parts: int, cut_mm: float, shape: str
) -> None:
    food = replace(CARROT, whole_shape=shape, whole_mm=size, whole_ratio_1=long, whole_ratio_2=long)
    piece = piece_of(food, cut(cut_mm, parts))
    assert piece.size_mm <= size * 1.0001
    assert min(piece.ratio_1, piece.ratio_2) >= 0.999
    if parts > 1:
        assert piece.size_mm <= piece_of(food, cut(parts=parts // 2)).size_mm * 1.0001
