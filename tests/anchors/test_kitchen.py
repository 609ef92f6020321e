"""The model against the published table of times, and against common practice."""

from __future__ import annotations

import csv
import math
from collections import defaultdict
from dataclasses import replace
from pathlib import Path

import pytest

from bot.commands.times import answers
from knowledge.foods.store import Store
from knowledge.physics import Case, Medium, Phase, cook, goal, history, media, piece

TABLE = Path(__file__).parents[1] / "data" / "cook_times_dev.csv"


@pytest.fixture(scope="module")
def scored(store: Store) -> list[tuple[dict[str, str], float | None, float | None, float | None]]:
    """Rows of the published table with our minutes, low and high."""
    with TABLE.open(encoding="utf-8", newline="") as file:
        rows = [r for r in csv.DictReader(file) if "historic" not in r["note"]]
    out = []
    for row, answer in zip(rows, answers(rows, store), strict=True):
        minutes, low, high = (float(c) if c else None for c in answer.cells()[:3])
        out.append((row, minutes, low, high))
    return out


def test_published_times_are_met(scored: list[tuple[dict[str, str], float, float, float]]) -> None:
    """Sources stand in the table, row by row. Figures of the issue: answered, within 25 %, spread, order."""
    answered = [s for s in scored if s[1]]
    assert len(answered) >= 0.99 * len(scored)
    logs, inside = [], 0
    groups = defaultdict(list)
    for row, t, _, _ in answered:
        low, high = float(row["time_min_lo"]), float(row["time_min_hi"])
        logs.append(math.log(t / math.sqrt(low * high)))
        inside += 0.75 * low <= t <= 1.25 * high
        key = (row["source_title"], row["source_org"], row["method"])
        groups[key].append((math.log(low * high) / 2, math.log(t)))
    mean = sum(logs) / len(logs)
    assert inside / len(scored) >= 0.84
    assert math.sqrt(sum((x - mean) ** 2 for x in logs) / len(logs)) <= 0.30
    pairs = [
        (a > b) == (p > q)
        for g in groups.values()
        for i, (a, p) in enumerate(g)
        for b, q in g[:i]
        if abs(a - b) > math.log(1.18)
    ]
    assert sum(pairs) / len(pairs) >= 0.93


def test_ranges_mean_something(scored: list[tuple[dict[str, str], float, float, float]]) -> None:
    answered = [s for s in scored if s[1]]
    overlap = [
        low <= float(row["time_min_hi"]) and high >= float(row["time_min_lo"])
        for row, _, low, high in answered
    ]
    widths = sorted(high / low for _, _, low, high in answered)
    assert sum(overlap) / len(scored) >= 0.95
    assert widths[len(widths) // 2] <= 1.6


def minutes(
    store: Store,
    food_id: str,
    medium: Medium,
    *,
    size_mm: float,
    shape: str = "brick",
    ratios: tuple[float, float] = (1.0, 1.2),
    method: str = "",
    state: str | None = None,
    to_degC: float | None = None,
    texture: str = "tender",
    class_id: str = "",
) -> float:
    food = store.food(food_id)
    outcome = cook(
        [
            Case(
                piece=piece(
                    food, size_mm=size_mm, shape=shape, ratio_1=ratios[0], ratio_2=ratios[1], state=state
                ),
                phases=(Phase(medium=medium, duration_s=None),),
                goal=goal(
                    food,
                    store.doneness(class_id or food.doneness),
                    method=method,
                    state=state,
                    to_degC=to_degC,
                    texture=texture,
                ),
            )
        ]
    )[0]
    assert outcome.done_s is not None, outcome.note
    return outcome.done_s / 60


def test_altitude_lengthens_boiling_as_published(store: Store) -> None:
    """What takes 10 min at sea level: 15, 18 and 20 min at 1524, 2286 and 3048 m (a published leaflet)."""
    at = [
        minutes(store, "green-bean", media.boiling(z), size_mm=8, shape="cylinder")
        for z in (0, 1524, 2286, 3048)
    ]
    assert 14.0 <= 10 * at[1] / at[0] <= 16.0
    assert 16.5 <= 10 * at[2] / at[0] <= 19.5
    assert 19.0 <= 10 * at[3] / at[0] <= 22.0


def test_a_slow_release_goes_on_cooking(store: Store) -> None:
    """Beans under pressure, 8 min short: the release counts, though less than as long at full pressure."""
    food = store.food("kidney-bean")
    target = goal(food, store.doneness(food.doneness))
    beans = piece(food, size_mm=9, shape="grain")
    sealed = media.pressure(80.0, come_up_s=300.0)
    alone = cook([Case(piece=beans, phases=(Phase(medium=sealed, duration_s=None),), goal=target)])[0].done_s
    assert alone is not None
    cut_short = Phase(medium=sealed, duration_s=alone - 480.0)
    falling = media.releasing(80.0, duration_s=480.0)
    after = cut_short, Phase(medium=falling, duration_s=480.0)
    quick, slow, full = (
        history(Case(piece=beans, phases=phases, goal=target), [alone]).dose_min[0]
        for phases in (
            (cut_short, Phase(medium=media.boiling(), duration_s=None)),
            after,
            (Phase(medium=sealed, duration_s=None),),
        )
    )
    assert quick < slow < full


@pytest.mark.parametrize(
    ("method", "size_mm"),
    [
        (m, mm)
        for m, most in (("broil", 50.0), ("saute", 38.0))
        for mm in (19.0, 25.0, 38.0, 50.0)
        if mm <= most
    ],
)
def test_a_chop_from_fierce_heat_still_rises_to_its_temperature(
    store: Store, method: str, size_mm: float
) -> None:
    """The carry-over that is counted after a broiler or a pan is there: a rest brings the middle to it."""
    food = store.food("pork-chop")
    target = goal(food, store.doneness(food.doneness), method=method, to_degC=63.0)
    chop = piece(food, size_mm=size_mm, shape="brick", ratio_1=110 / size_mm, ratio_2=160 / size_mm)
    fire = media.broiler(290.0) if method == "broil" else media.open_pan(180.0, surface="meat", flat=True)
    alone = Case(
        piece=chop, phases=(Phase(medium=fire, duration_s=None),), goal=replace(target, safe_degC=None)
    )
    done = cook([alone])[0].done_s
    assert done is not None
    rested = replace(
        alone,
        phases=(Phase(medium=fire, duration_s=done), Phase(medium=media.resting(22.0), duration_s=None)),
    )
    assert max(history(rested, [done + 60.0 * i for i in range(15)]).core_degC) >= 62.8


@pytest.mark.parametrize("oven_degC", [200.0, 230.0])
@pytest.mark.parametrize("size_mm", [20.0, 25.0, 32.0])
def test_frozen_fish_takes_about_twice_as_long(store: Store, oven_degC: float, size_mm: float) -> None:
    """Canada Department of Fisheries and Oceans: 10 min an inch, 20 frozen."""
    medium = media.oven(oven_degC, surface="meat")
    fresh, frozen = (
        minutes(store, "cod", medium, size_mm=size_mm, ratios=(4.0, 6.0), method="roast", state=s)
        for s in ("fridge", "frozen")
    )
    assert 1.7 <= frozen / fresh <= 2.3


@pytest.mark.parametrize(
    ("food_id", "size_mm", "surface"),
    [("carrot", 20.0, "cut"), ("potato", 25.0, "cut"), ("chicken-breast", 28.0, "meat")],
)
@pytest.mark.parametrize("oven_degC", [180.0, 200.0, 220.0])
def test_a_fan_is_worth_20_degrees(
    store: Store, food_id: str, size_mm: float, surface: str, oven_degC: float
) -> None:
    """Appliance practice: fan ovens are set 20 °C lower."""
    still, fan = (
        minutes(
            store,
            food_id,
            media.oven(T, fan=on, surface=surface),
            size_mm=size_mm,
            method="roast",
            ratios=(1.5, 2.5),
        )
        for T, on in ((oven_degC, False), (oven_degC - 20.0, True))
    )
    assert fan == pytest.approx(still, rel=0.07)


PILED = "piled"  # a full sheet
ON_A_SHEET = [
    ("chicken-thigh", 28.0, (3.0, 4.0), "meat", "spaced"),
    ("cod", 25.0, (4.0, 6.0), "meat", "spaced"),
    ("potato", 25.0, (1.0, 1.2), "cut", "spaced"),
    ("carrot", 20.0, (1.0, 1.2), "cut", PILED),
]


@pytest.mark.parametrize(("food_id", "size_mm", "ratios", "surface", "crowding"), ON_A_SHEET)
def test_a_dark_sheet_is_worth_15_degrees(
    store: Store, food_id: str, size_mm: float, ratios: tuple[float, float], surface: str, crowding: str
) -> None:
    """Common practice, no source: in dark ware or glass set the oven 15 °C (25 °F) lower than in bright."""

    def on(sheet: str, oven_degC: float) -> float:
        medium = media.oven(oven_degC, sheet=sheet, surface=surface, crowding=crowding)
        return minutes(store, food_id, medium, size_mm=size_mm, ratios=ratios, method="roast")

    bright = on("bright", 200.0)
    assert on("dark", 195.0) < bright < on("dark", 175.0)
    assert on("glass", 197.0) < bright < on("glass", 175.0)
    assert on("dark", 200.0) < on("dull", 200.0) < on("foil", 200.0) < bright


@pytest.mark.parametrize("crowding", ["spaced", PILED, "joint", 0.5])
def test_a_dark_sheet_heats_the_underside_faster(crowding: str | float) -> None:
    """Absorptivities of handbooks of heat transfer (from memory): dark 0.9, used 0.7, bright 0.2 to 0.3."""
    dark, dull, foil, bright = (
        media.under_W_m2K(sheet, 200.0, 6.0, crowding) for sheet in ("dark", "dull", "foil", "bright")
    )
    assert dark > dull > foil > bright
    assert 1.3 <= dark / bright <= 2.5


def test_a_fan_heats_the_sheet_too() -> None:
    still, fan = media.oven(200.0), media.oven(200.0, fan=True)
    assert fan.pan_h_W_m2K > still.pan_h_W_m2K


@pytest.mark.parametrize(
    ("food", "cut_text", "method", "degC", "low", "high"),
    [  # common practice, no source; chicken: USDA FSIS chart of poultry roasting
        ("cod", "fillet 25 mm", "simmer", "", 8, 12), ("arborio rice", "", "simmer", "", 18, 22),
        ("red lentils", "", "simmer", "", 10, 15), ("chickpeas", "soaked", "simmer", "", 55, 80),
        ("kidney beans", "unsoaked", "pressure", "117", 25, 45), ("bok choy", "halved", "simmer", "", 4, 7),
        ("bok choy", "halved", "steam", "", 4, 7), ("bell pepper", "30 mm pieces", "roast", "220", 18, 25),
        ("sweet potato", "25 mm chunks", "roast", "220", 25, 32), ("asparagus", "", "roast", "220", 8, 12),
        ("carrot", "20 mm dice", "simmer", "", 12, 16), ("potato", "25 mm cubes", "simmer", "", 12, 17),
        ("whole chicken", "1.5 kg", "roast", "177", 75, 90),
    ],
)  # fmt: skip
def test_charts_come_out_as_cooks_have_them(
    store: Store, food: str, cut_text: str, method: str, degC: str, low: float, high: float
) -> None:
    line = {"food": food, "cut_text": cut_text, "method": method, "medium_temp_c": degC}
    (answer,) = answers([line], store)
    found = float(answer.cells()[0])
    assert low / 1.15 <= found <= 1.15 * high


@pytest.mark.parametrize(
    ("what", "low", "high"),
    [  # common practice, no source; 15 % beyond what is commonly said
        ("vegetables 30 mm at 260 C", 17, 23),
        ("vegetables 30 mm at 190 C", 25.5, 40.3),
        ("root dice 13 mm at 260 C", 17, 23),
        ("root dice 13 mm at 190 C", 25.5, 40.3),
        ("chicken chunks 38 mm at 260 C", 17, 23),
        ("chicken thigh at 190 C", 25.5, 40.3),
        ("beef cubes at 260 C (practice to 57 C, here to the published 63)", 8.5, 17.3),
        ("fish baked", 12.7, 17.3),
        ("fish broiled", 5.1, 9.2),
        ("sausage on top", 12.7, 17.3),
        ("thighs browned and simmered", 25.5, 34.5),
        ("greens", 25.5, 34.5),
        ("pot roast", 102, 207),
        ("chicken pieces under pressure", 17, 28.8),
        ("stew beef under pressure", 25.5, 40.3),
        ("a whole cauliflower at 200 C", 46.7, 92),
        ("broccoli florets steamed", 4.2, 9.2),
        ("carrots 12 mm under a lid", 6.8, 11.5),
        ("pepper strips at 220 C", 12.7, 25.3),
    ],
)
def test_common_practice_is_met(store: Store, what: str, low: float, high: float) -> None:
    found = PRACTICE[what](store)
    assert low <= found <= high, f"{what}: {found:.1f} min"


PRACTICE = {
    "vegetables 30 mm at 260 C": lambda s: minutes(
        s, "broccoli", media.oven(260.0, crowding=PILED), size_mm=38, shape="floret", method="roast"
    ),
    "vegetables 30 mm at 190 C": lambda s: minutes(
        s, "cauliflower", media.oven(190.0, crowding=PILED), size_mm=38, shape="floret", method="roast"
    ),
    "root dice 13 mm at 260 C": lambda s: minutes(
        s, "carrot", media.oven(260.0, crowding=PILED), size_mm=12.5, method="roast"
    ),
    "root dice 13 mm at 190 C": lambda s: minutes(
        s, "carrot", media.oven(190.0, crowding=PILED), size_mm=12.5, method="roast"
    ),
    "chicken chunks 38 mm at 260 C": lambda s: minutes(
        s, "chicken", media.oven(260.0, surface="meat"), size_mm=38, method="roast"
    ),
    "chicken thigh at 190 C": lambda s: minutes(
        s, "chicken-thigh", media.oven(190.0, surface="meat"), size_mm=25, ratios=(3.0, 4.0), method="roast"
    ),
    "beef cubes at 260 C (practice to 57 C, here to the published 63)": lambda s: minutes(
        s, "steak", media.oven(260.0, surface="meat"), size_mm=30, method="roast", to_degC=62.8
    ),
    "fish baked": lambda s: minutes(
        s, "cod", media.oven(200.0, surface="meat"), size_mm=21, ratios=(4.0, 6.0), method="roast"
    ),
    "fish broiled": lambda s: minutes(
        s, "cod", media.broiler(320.0), size_mm=19, ratios=(4.0, 6.0), method="broil"
    ),
    "sausage on top": lambda s: minutes(
        s, "sausage", media.on_top(), size_mm=28, shape="rod", ratios=(4.0, 1.0)
    ),
    "thighs browned and simmered": lambda s: minutes(
        s, "chicken-thigh", media.bubbling(), size_mm=32, ratios=(2.0, 3.0), class_id="tough_poultry"
    ),
    "greens": lambda s: minutes(s, "kale", media.simmering(), size_mm=0.8, shape="leaf", texture="soft"),
    "pot roast": lambda s: minutes(
        s, "chuck-roast", media.covered_oven(175.0), size_mm=80, ratios=(1.4, 2.0)
    ),
    "chicken pieces under pressure": lambda s: minutes(
        s, "chicken-thigh", media.pressure(103.0, come_up_s=400.0), size_mm=35, ratios=(2.0, 3.0)
    ),
    "stew beef under pressure": lambda s: minutes(s, "stew-beef", media.pressure(103.0), size_mm=35),
    "a whole cauliflower at 200 C": lambda s: minutes(
        s, "cauliflower", media.oven(200.0), size_mm=140, shape="sphere", method="bake"
    ),
    "broccoli florets steamed": lambda s: minutes(
        s, "broccoli", media.steaming(), size_mm=38, shape="floret"
    ),
    "carrots 12 mm under a lid": lambda s: minutes(s, "carrot", media.bubbling(), size_mm=12),
    "pepper strips at 220 C": lambda s: minutes(
        s, "bell-pepper", media.oven(220.0, crowding=0.5), size_mm=8, shape="slab", method="roast"
    ),
}
