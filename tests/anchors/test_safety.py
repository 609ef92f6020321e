"""Published safety figures, and kill along a simulated path."""

from __future__ import annotations

import numpy as np
import pytest

from knowledge.foods.store import Store
from knowledge.physics import Case, Phase, cook, goal, history, media, piece
from knowledge.physics.safety import WANTED_LOG, hold_s, kill_rate, lethality_table, minimum


@pytest.mark.parametrize(
    ("fat", "degF", "seconds"),
    [  # FSIS-GD-2021-0014 (Revised Appendix A), chicken, 7 log
        (12, 140, 2100), (12, 145, 780), (12, 150, 252), (12, 155, 54.4), (12, 160, 16.9),
        (1, 140, 1512), (1, 145, 504), (1, 150, 162), (1, 155, 44.2), (1, 160, 13.7),
    ],
)  # fmt: skip
def test_poultry_times_at_temperature_are_as_printed(fat: float, degF: float, seconds: float) -> None:
    assert hold_s("chicken", (degF - 32) / 1.8, fat_pct=fat) == pytest.approx(seconds, rel=1e-6)


@pytest.mark.parametrize(
    ("degF", "seconds"), [(130, 6720), (135, 2160), (140, 720), (145, 240), (150, 67), (157, 14)]
)
def test_meat_times_at_temperature_are_as_printed(degF: float, seconds: float) -> None:
    """FSIS-GD-2021-0014 table 2, 6.5 log."""
    assert hold_s("meat", (degF - 32) / 1.8) == pytest.approx(seconds, rel=1e-6)


def test_between_rows_log_time_is_interpolated() -> None:
    a, b = hold_s("meat", 60.0), hold_s("meat", (141 - 32) / 1.8)
    assert a is not None
    assert b is not None
    assert hold_s("meat", (140.5 - 32) / 1.8) == pytest.approx((a * b) ** 0.5, rel=1e-6)


def test_below_the_table_there_is_no_credit() -> None:
    assert hold_s("meat", 54.0) is None
    assert hold_s("turkey", 50.0) is None


@pytest.mark.parametrize("table", ["chicken", "turkey", "meat"])
def test_what_is_held_for_the_printed_time_gets_the_wanted_kill_and_what_is_cooler_none(table: str) -> None:
    degC = np.array([40.0, 53.0, 60.0, 65.0])
    rates = kill_rate(degC, table, 10.0)
    assert list(rates[:2]) == [0.0, 0.0]  # below the coldest printed row
    for warm, rate in zip(degC[2:], rates[2:], strict=True):
        held_s = hold_s(table, float(warm), fat_pct=10.0)
        assert held_s is not None
        assert rate * held_s == pytest.approx(WANTED_LOG[table], rel=1e-9)


def test_where_no_time_is_printed_a_second_is_asked_for() -> None:
    assert hold_s("meat", (160 - 32) / 1.8) == pytest.approx(1.0)  # printed 0 s


def test_a_turkey_is_held_by_the_table_of_turkeys(store: Store) -> None:
    """FSIS Appendix A at 60 °C, 7 log: turkey of 1 % fat 1686 s, chicken 1512 s."""
    for name, seconds in (("turkey breast", 1686.0), ("chicken breast", 1512.0)):
        food = store.named(name)
        assert food is not None
        table = lethality_table(food.safety, food.animal, food.name)
        assert hold_s(table, 60.0, fat_pct=1.0) == pytest.approx(seconds)


@pytest.mark.parametrize(
    ("kind", "degC", "hold"),
    [  # USDA FSIS food safety open data, version 128 (2018)
        ("whole_meat", 62.8, 180), ("ground_meat", 71.1, 0), ("poultry", 73.9, 0), ("fish", 62.8, 0),
        ("shellfish", 62.8, 0), ("egg", 71.1, 0), ("ham_raw", 62.8, 180), ("ham_cooked", 60.0, 0),
        ("leftover", 73.9, 0),
    ],
)  # fmt: skip
def test_default_minimums_are_those_of_fsis(kind: str, degC: float, hold: float) -> None:
    found = minimum(kind)
    assert found is not None
    assert (found.authority, found.core_degC, found.hold_s) == ("USDA FSIS", degC, hold)


def test_other_authorities_are_known() -> None:
    for authority, degC in (("UK FSA", 70.0), ("Health Canada", 74.0), ("FSANZ", 75.0)):
        found = minimum("poultry", authority)
        assert found is not None
        assert found.core_degC == degC


def test_poultry_mince_and_sausage_ends_are_safe_along_the_whole_path(store: Store) -> None:
    """At the predicted end the core has the published temperature and the integrated kill."""
    cases, foods = [], []
    for food in store.foods():
        if food.role != "cook" or food.safety not in ("poultry", "ground_meat", "whole_meat"):
            continue
        doneness = store.doneness(food.doneness)
        for medium, method in (
            (media.oven(200.0, surface="meat"), "roast"),
            (media.simmering(), "simmer"),
            (media.pressure(80.0, come_up_s=300.0), "pressure"),
            (media.simmering(2000.0), "simmer"),
        ):
            for size in (12.0, 30.0, 60.0):
                cases.append(
                    Case(
                        piece=piece(food, size_mm=size, shape="brick", ratio_1=1.5, ratio_2=3.0),
                        phases=(Phase(medium=medium, duration_s=None),),
                        goal=goal(food, doneness, method=method),
                    )
                )
                foods.append(food)
    assert len(cases) > 200
    for food, case, outcome in zip(foods, cases, cook(cases), strict=True):
        assert outcome.done_s is not None, food.id
        published = minimum(food.safety)
        assert published is not None
        assert outcome.core_degC >= published.core_degC - 0.1, food.id
        wanted = 7.0 if food.safety == "poultry" else 6.5
        rest = 0.0
        if published.hold_s and outcome.lethality_log < wanted:  # the rest is part of the rule
            followed = history(
                Case(
                    piece=case.piece,
                    phases=(
                        Phase(medium=case.phases[0].medium, duration_s=outcome.done_s),
                        Phase(medium=media.resting(), duration_s=None),
                    ),
                    goal=case.goal,
                ),
                [outcome.done_s + published.hold_s],
            )
            rest = followed.lethality_log[0] - outcome.lethality_log
        assert outcome.lethality_log + rest >= wanted, food.id
