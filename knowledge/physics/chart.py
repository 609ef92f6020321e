"""A row of a cooking chart ("carrot, 25 mm pieces, roast, 220 °C, tender") -> a case to solve.

Charts name foods and cuts in their own ways and leave much out; what is missing is
filled with what is usual, from the food's own record and from words in the row.
"""

from __future__ import annotations

import math
import re
from dataclasses import dataclass, replace
from functools import cache
from typing import TYPE_CHECKING

from knowledge.errors import UnknownWord
from knowledge.foods.model import DoneKind, Doneness, Food
from knowledge.physics import chart_form, media, tables
from knowledge.physics.chart_form import form, said, without_distance
from knowledge.physics.chart_names import resolve
from knowledge.physics.doneness import goal
from knowledge.physics.limits import within
from knowledge.physics.model import Case, Goal, Medium, Phase, Piece
from knowledge.physics.pieces import piece
from knowledge.physics.simulate import history
from knowledge.physics.vessels import RASHER_MM
from knowledge.physics.water import ambient_Pa, saturation_Pa
from knowledge.sheets import USUAL, sheet_said

if TYPE_CHECKING:
    from knowledge.foods.store import Store

METHODS = (
    "roast", "broil", "saute", "pan_covered", "boil", "simmer", "steam", "braise", "bake_covered",
    "pressure_high", "pressure_low", "rest",
)  # fmt: skip
_PLAIN = {"pressure": "pressure_high"}  # words for what is usual of a method
USUAL_DEGC = {
    "roast": 200.0, "broil": 290.0, "saute": 180.0, "pan_covered": 150.0, "boil": 100.0, "simmer": 97.0,
    "steam": 100.0, "braise": 95.0, "bake_covered": 190.0, "pressure_high": 117.0, "pressure_low": 112.0,
}  # fmt: skip
LEAST_LEFT = 0.4
"""Share of a dose that is left for full pressure, however slowly it is released (fitted)."""
FLAKY_DEGC = 52.0
"""Core at which charts call fish flaky. Source: fitted to published cooking times."""
_TOUGH = {"beef": "tough_beef", "lamb": "tough_lamb", "pork": "tough_pork", "poultry": "tough_poultry"}
_LIQUID_TOP_DEGC = 105.0
BOILING_KPA = 0.5  # "100 °C" is boiling, to the degree in which charts are written
_STATE_WORDS = (("unsoaked", "dry"), ("soaked", "soaked"), ("frozen", "frozen"), ("canned", "canned"))


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One line of a chart; None where it says nothing."""

    food: str
    cut_text: str = ""
    shape: str = ""
    size_mm: float | None = None
    mass_g: float | None = None
    start_state: str = ""
    method: str = "roast"
    medium_degC: float | None = None
    endpoint: str = ""
    core_degC: float | None = None
    altitude_m: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Read:
    """What a row was taken to mean.

    `not_counted_s` is the part of the time that charts leave out; `spread` the factor either
    way within which published times for such a piece lie; `sheet` is what lies under it in an oven.
    """

    case: Case
    food: Food
    doneness: Doneness
    shape: str
    size_mm: float
    method: str
    sheet: str
    not_counted_s: float
    spread: float
    note: str


def read_row(row: Row, store: Store) -> Read:
    """The case that a row describes. Raises UnknownFood, UnknownWord, OutOfRange."""
    row = replace(row, method=_PLAIN.get(row.method, row.method))
    if row.method not in METHODS:
        raise UnknownWord("method", row.method, METHODS)
    within("altitude_m", row.altitude_m)
    text, distance_m = without_distance(said(f"{row.food} {row.cut_text}"))
    if row.method == "broil" and row.medium_degC is None and distance_m is not None:
        row = replace(row, medium_degC=media.broiler_degC(distance_m))
    row = replace(row, start_state=_state(row, text))
    food, note = resolve(row.food, row.cut_text, row.endpoint, store, row.start_state)
    mass_kg = chart_form.mass_kg(row.mass_g, text)
    shape, size_mm, b1, b2 = form(
        food, shape=row.shape, size_mm=row.size_mm, mass_kg=mass_kg, text=text, store=store
    )
    class_id = _class_of(row, food, text)
    doneness = store.doneness(class_id)
    sheet = sheet_said(text) or USUAL
    medium, not_counted = _medium(row, food, shape, size_mm, sheet)
    end = _goal(row, food, doneness, text)
    if row.method.startswith("pressure") and doneness.kind is DoneKind.COLLAGEN:
        end = _less_release(end, medium.ambient_degC)
    made = piece(
        food, size_mm=size_mm, shape=shape, ratio_1=b1, ratio_2=b2, state=row.start_state or None,
        mass_kg=mass_kg,
    )  # fmt: skip
    if known := re.search(r"takes (\d+(?:\.\d+)?) min\w* at sea level", text):
        end = _as_at_sea_level(60.0 * float(known[1]), made, end)
    if row.core_degC is not None and end.target_degC is not None and not end.safe_degC:
        note = _below(row, food, note)
    case = Case(piece=made, phases=(Phase(medium=medium, duration_s=None),), goal=end)
    return Read(
        case=case, food=food, doneness=doneness, shape=shape, size_mm=size_mm, method=row.method,
        sheet=sheet, not_counted_s=not_counted,
        spread=spread_of(row.method, _kind(row, doneness, shape)), note=note,
    )  # fmt: skip


def _less_release(end: Goal, hot_degC: float) -> Goal:
    """What is left to do under full pressure where the rest is done while the pressure falls by itself.

    Charts for tough meat have it fall slowly (common practice) and do not count that time. Its dose, the
    temperature falling evenly: t (10**(dT/z) - 1) z/(dT ln 10), in minutes at 100 °C.
    """
    above = (hot_degC - 100.0) / end.z_above_K * math.log(10.0)
    if end.dose_min is None or end.over_dose_min is None or above <= 0.01:
        return end
    gained = tables.constant("pressure_release_s") / 60.0 * math.expm1(above) / above
    left = max(end.dose_min - gained, LEAST_LEFT * end.dose_min)
    return replace(end, dose_min=left, over_dose_min=end.over_dose_min - end.dose_min + left)


def _as_at_sea_level(time_s: float, made: Piece, end: Goal) -> Goal:
    """The end point of something of which only its boiling time at sea level is known."""
    known = Case(piece=made, phases=(Phase(medium=media.boiling(), duration_s=None),), goal=end)
    return replace(end, dose_min=history(known, [time_s]).dose_min[0])


def _below(row: Row, food: Food, note: str) -> str:
    from knowledge.physics.safety import minimum

    safe = minimum(food.safety)
    if safe and row.core_degC is not None and row.core_degC < safe.core_degC - 0.5:
        warning = f"below the safe minimum of {safe.core_degC:g} °C ({safe.authority})"
        return f"{note}; {warning}" if note else warning
    return note


# How far published times spread


@cache
def spread_of(method: str, kind: str) -> float:
    """Factor either way that covers published times, by method and kind of piece (`spreads.csv`)."""
    found = {(r["method"], r["kind"]): float(r["spread"]) for r in tables.rows("spreads")}
    return found.get((_METHOD_SPREAD.get(method, method), kind), found["usual", ""])


def _kind(row: Row, doneness: Doneness, shape: str) -> str:
    if row.start_state == "frozen" and doneness.dose_min:
        return "frozen"
    if shape in ("leaf", "grain", "bird", "joint"):
        return shape
    if doneness.kind is DoneKind.COLLAGEN:
        return "tough"
    return "veg" if doneness.dose_min else "core"


# What it is


def _state(row: Row, text: str) -> str:
    """The state in which the food goes in, from its column or from words."""
    if row.start_state:
        return row.start_state
    for word, state in _STATE_WORDS:
        if word in text:
            return state
    return ""


# When it is done


def _class_of(row: Row, food: Food, text: str) -> str:
    if row.endpoint == "fork_tender_meat":
        if "fowl" in text:
            return "stewing_fowl"
        return _TOUGH.get(food.animal, "tough_beef")
    if row.endpoint == "flaky":
        return "fish"
    if food.doneness == "dark_poultry" and row.method in ("simmer", "braise"):
        return "tough_poultry"  # legs and wings in liquid are cooked until tender, long past safe
    if row.endpoint == "core_temp" and row.core_degC is not None:
        own = food.doneness
        return own if own in _CORE_CLASSES else ("poultry" if food.animal == "poultry" else "tender_meat")
    if row.start_state == "canned" and not food.animal:
        return "warm_through"  # soft in the can
    if food.start_state == "canned" and row.start_state in _RAW and food.part == "vegetable":
        return "hard_veg"  # sold soft in the can because it takes long
    if food.doneness != "none":
        return food.doneness
    return "tender_leaf" if food.whole_shape == "leaf" else "quick_veg"


_RAW = frozenset({"fridge", "room", "fresh"})
_CORE_CLASSES = frozenset(
    {"tender_meat", "ground_meat", "poultry", "dark_poultry", "fish", "shellfish", "egg", "sausage", "cured"}
)
_METHOD_SPREAD = {"pressure_high": "pressure", "pressure_low": "pressure"}
_METHOD = {
    "bake_covered": "covered",
    "pan_covered": "saute",
    "pressure_high": "pressure",
    "pressure_low": "pressure",
}


def _goal(row: Row, food: Food, doneness: Doneness, text: str) -> Goal:
    to = row.core_degC
    safe = True
    if row.endpoint == "flaky" and to is None:
        to = FLAKY_DEGC
    if to is not None:
        safe = False  # the chart's own end point is asked for; the note warns
    if doneness.kind in (DoneKind.SOFTEN, DoneKind.WILT, DoneKind.HYDRATE, DoneKind.COLLAGEN) and (
        row.endpoint != "core_temp" or doneness.id != food.doneness
    ):
        to = None
    method = _METHOD.get(row.method, row.method)
    texture = row.endpoint if row.endpoint in ("crisp_tender", "soft") else "tender"
    end = goal(
        food, doneness, texture=texture, method=method,
        state=row.start_state or None, to_degC=to,
    )  # fmt: skip
    if method == "roast" and not food.animal and row.shape in ("sphere", "cylinder"):
        end = _in_its_skin(end, doneness, _passed(row.size_mm or 1.0, *_WHOLE_MM))
    if safe:
        return end
    return replace(end, safe_degC=None, safe_hold_s=0.0)


def _in_its_skin(end: Goal, doneness: Doneness, share: float) -> Goal:
    """Less browning in the dose the more surely a vegetable is whole, in its skin, where nothing browns."""
    if end.dose_min is None or end.over_dose_min is None:
        return end
    less = (doneness.roast_factor or 1.0) ** -share
    return replace(end, dose_min=less * end.dose_min, over_dose_min=less * end.over_dose_min)


# Where it cooks


_APART_MM = (25.0, 90.0)  # from pieces that are heaped to ones that lie apart; common practice, no source
_WHOLE_MM = (32.0, 50.0)  # from slices and balls to roots baked whole; common practice, no source
_IN_ONE_LAYER = frozenset({"slab", "cylinder", "rod"})


def _crowding(row: Row, food: Food, shape: str, size_mm: float) -> float:
    """How full the sheet usually is of such pieces, for `media.oven`: what is large lies apart.

    Falls evenly with the logarithm of the size, so that a thicker piece is never done sooner.
    """
    meat = food.animal not in ("", "dairy")
    if meat and row.shape in ("slab", "whole", ""):
        return 0.5 * (1.0 - _passed(size_mm, RASHER_MM, 1.5 * RASHER_MM))
    layer = meat or food.part == "protein" or row.shape == "slab" or shape in _IN_ONE_LAYER
    full = 0.5 if layer else 1.0  # side by side: links, cubes of meat, flat and long vegetables
    return full * (1.0 - _passed(size_mm, *_APART_MM))


def _passed(size_mm: float, first_mm: float, last_mm: float) -> float:
    """How far a size has gone from one to another, by its logarithm: 0 to 1."""
    return min(max(math.log(size_mm / first_mm) / math.log(last_mm / first_mm), 0.0), 1.0)


def _medium(row: Row, food: Food, shape: str, size_mm: float, sheet: str) -> tuple[Medium, float]:
    """The medium, and how much of the time in it charts do not count [s]."""
    T = USUAL_DEGC.get(row.method, 20.0) if row.medium_degC is None else row.medium_degC
    meat = bool(food.animal) and food.animal != "dairy"
    surface = "meat" if meat else "cut"
    if shape in ("bird", "sphere", "cylinder", "rod") and not (meat and shape != "bird"):
        surface = "skin"
    altitude = row.altitude_m
    match row.method:
        case "roast":
            crowding = "joint" if shape in ("bird", "joint") else _crowding(row, food, shape, size_mm)
            oven = media.oven(T, crowding=crowding, surface=surface, sheet=sheet, altitude_m=altitude)
            return oven, 0.0
        case "broil":
            return media.broiler(T, surface=surface, cubes=row.shape == "cuboid", altitude_m=altitude), 0.0
        case "saute":
            flat = meat and row.shape == "slab"
            fallen = T - tables.constant("pan_drop_frac") * (T - 20.0)
            back_s = tables.constant("pan_come_up_s")
            return media.open_pan(
                T, surface=surface, flat=flat, altitude_m=altitude, start_degC=fallen, come_up_s=back_s
            ), 0.0
        case "pan_covered":
            return media.covered_pan(T, altitude_m=altitude), 0.0
        case "bake_covered":
            return media.covered_dish(T, altitude_m=altitude), 0.0
        case "pressure_high" | "pressure_low":
            medium = media.pressure(_gauge_kPa(within("liquid_degC", T)), altitude)
            return medium, medium.come_up_s
        case "rest":
            return media.resting(T, altitude_m=altitude), 0.0
        case "steam":
            within("liquid_degC", T)
            return media.steaming(altitude), 0.0
        case "boil" if within("liquid_degC", T) >= 99.0:
            return media.boiling(altitude), 0.0
        case "simmer" if row.medium_degC is None and not meat:
            return media.bubbling(altitude), 0.0
        case "boil" | "simmer":
            return media.simmering(altitude, T), 0.0
        case _ if T > _LIQUID_TOP_DEGC:
            return media.covered_oven(T, altitude_m=altitude), 0.0
        case _:
            return media.simmering(altitude, T), 0.0


def _gauge_kPa(inside_degC: float) -> float:
    """Gauge pressure at sea level at which a cooker is as hot inside; below 0 for no pressure at all."""
    gauge = (saturation_Pa(inside_degC) - ambient_Pa(0.0)) / 1000.0
    return 0.0 if abs(gauge) < BOILING_KPA else gauge
