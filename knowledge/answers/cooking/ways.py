"""Which way of cooking and which heat a question means."""

from __future__ import annotations

import re

from knowledge.answers.model import Question
from knowledge.answers.quantities.ovens import FAN_K
from knowledge.answers.reading.altitude import altitude_m
from knowledge.answers.reading.heard import hears, meanings
from knowledge.foods.model import DoneKind, Food, Role
from knowledge.foods.store import Store
from knowledge.text.clauses import says
from knowledge.units import celsius, fahrenheit, is_met

# Usual settings of an oven, and what is still low (common practice).
OVEN_DEGC, JOINT_DEGC, SLOW_DEGC, SLOW_MAX_DEGC = 200.0, 190.0, 150.0, 170.0
COOLEST_OVEN_DEGC = 100.0
FAHRENHEIT_FROM = 260.0  # a bare number beyond is Fahrenheit
SLOW_FAHRENHEIT_FROM = 220.0  # so it is where a joint is roasted low: "pork shoulder at 225"
OVEN_FROM, OVEN_FROM_DEGC = 200.0, 110.0  # a number with no scale or °F, or °C, that only an oven has
DIAL_STEP_DEGF = 5
FSIS_OVEN_DEGC = 162.8  # USDA FSIS: 325 °F, the least for meat and poultry
DIAL_K = 3.0  # dials and charts call that 160 °C
LOW_M = 300.0  # up to here water boils as at the sea, to a cook

WAYS = (
    "pressure",
    "steam",
    "grill",
    "roast",
    "braise",
    "boil",
    "saute",
)  # "pressure cook a stew" is no simmering
_SAYING = {
    "boil": "boiled",
    "steam": "steamed",
    "braise": "simmered under a lid",
    "saute": "in a medium-hot pan",
    "grill": "under a hot grill or over embers, turned",
    "pressure": "under pressure (80 kPa), counted from full pressure",
}
_OVEN = re.compile(r" (\d{3}) ?(?:°|degrees? )?(c|f|celsius|fahrenheit)?(?: fan)? ")
_NO_HEAT = re.compile(r" \d{3} ?(?:g|gr|grams?|ml|kcal|m|metres?|feet|ft)(?= )")


def cooks(store: Store, food: Food) -> bool:
    """True for a food that has an end point of cooking and a cut."""
    return food.role is Role.COOK and food.doneness not in ("", "none") and bool(food.cuts)


# Ways.


def way_of(question: Question) -> str:
    """The way of cooking that the question names, "" for none of ours; "pan" in a food's name is none."""
    named = " ".join(f" {m.phrase} " for m in question.mentions)
    words = meanings(question.store, "way of cooking")
    for way in WAYS:
        if any(question.says(word) and not says(named, word) for word in words[way]):
            return way
    meat = any(food.animal and cooks(question.store, food) for food in question.foods)
    return "roast" if meat and oven_said(question) else ""  # "brisket at 250F": no core is so hot


def usual_ways(store: Store, food: Food) -> tuple[str, ...]:
    """How a food is mostly cooked."""
    if food.whole_shape == "bird":
        return ("roast",)
    match store.doneness(food.doneness).kind:
        case DoneKind.HYDRATE:
            return ("boil",)
        case DoneKind.COLLAGEN:
            return ("braise", "pressure")
        case DoneKind.SOFTEN:
            return ("roast", "boil")
        case DoneKind.CORE:
            return ("roast",) if food.whole_shape == "joint" else ("roast", "saute")
        case _:
            return ("saute", "steam")


def is_elsewhere(question: Question) -> bool:
    """True if it is to be cooked in something that we compute nothing for."""
    return hears(question, "cooked elsewhere") and not question.says("oven", "slow cooked")


def is_roast(question: Question, food: Food, way: str) -> bool:
    """True for a whole bird or joint in the oven, which is asked for by weight."""
    whole = food.whole_shape in ("bird", "joint") and "whole" in food.cuts
    return way == "roast" and whole and not hears(question, "cut up")


def is_slow(question: Question, food: Food, way: str) -> bool:
    """True for tough meat in the oven: low, until it is tender."""
    return way == "roast" and question.store.doneness(food.doneness).kind is DoneKind.COLLAGEN


# Heat.


def has_fan(question: Question) -> bool:
    """True if a fan oven is meant."""
    return question.kitchen.fan_oven or hears(question, "fan oven")


def is_fsis_oven(degC: float) -> bool:
    """True for an oven as hot as USDA FSIS asks for meat and poultry, by what a dial can show."""
    return is_met(degC + DIAL_K, FSIS_OVEN_DEGC)


def oven_said(question: Question) -> bool:
    """True where a number of three digits stands by "at", or with its scale, that only an oven has."""
    found = _oven(question)
    if found is None or hears(question, "frying"):  # what is fried is as hot
        return False
    by_at = found.string[: found.start()].endswith(" at")
    least = OVEN_FROM_DEGC if found[2] == "c" else OVEN_FROM
    return (by_at or bool(found[2])) and float(found[1]) >= least


def oven_degC(question: Question, food: Food | None = None) -> float:
    """The oven's setting: as said, else the usual one for the food, lower with a fan."""
    slow = food is not None and is_slow(question, food, "roast")
    usual = _usual_degC(question, food, slow=slow)
    found = _oven(question)
    if found is None:
        return usual
    value, scale = float(found[1]), (found[2] or "")[:1]
    hottest_bare = SLOW_FAHRENHEIT_FROM if slow else FAHRENHEIT_FROM
    degC = celsius(value) if scale == "f" or (not scale and value > hottest_bare) else value
    hottest_degC = question.kitchen.oven_max_degC
    if slow:
        hottest_degC = min(hottest_degC, SLOW_MAX_DEGC)
    return degC if COOLEST_OVEN_DEGC <= degC <= hottest_degC else usual


def _usual_degC(question: Question, food: Food | None, *, slow: bool) -> float:
    if slow:
        return SLOW_DEGC
    joint = food is not None and is_roast(question, food, "roast")
    return (JOINT_DEGC if joint else OVEN_DEGC) - (FAN_K if has_fan(question) else 0.0)


def _oven(question: Question) -> re.Match[str] | None:
    """The first number that may be of an oven, with its scale."""
    return _OVEN.search(_NO_HEAT.sub(" ", question.plain))


def saying(question: Question, way: str, food: Food | None = None) -> str:
    """The way of cooking in words, with its setting."""
    if way == "roast":
        degC = oven_degC(question, food)
        degF = round(fahrenheit(degC) / DIAL_STEP_DEGF) * DIAL_STEP_DEGF
        fan = " with a fan" if has_fan(question) else ""
        return f"roasted at {degC:.0f} °C / {degF:.0f} °F{fan}"
    height_m = altitude_m(question)
    return f"{_SAYING[way]} at {height_m:.0f} m" if height_m >= LOW_M else _SAYING[way]
