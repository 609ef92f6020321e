"""When a fat smokes: its own point, that of an unrefined one, or the fats that stand most."""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.degrees import both, temperatures_degC
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.words import words_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store

_VIRGIN = re.compile(r" virgin (?!olive)| raw (?=\w+ oil)")

HOT_DEGC = 110.0  # above it a temperature is of the fat, below it of what cooks in it
HIGH_HEAT_DEGC = 220.0  # a fat that is to stand the hottest pan (common practice)
UNREFINED_DEGC = 160.0  # cautious: unrefined groundnut and like oils (common practice)
HIGHEST = 6  # fats shown where none is named
NEVER_SMOKING = "Never heat fat until it smokes."


def smoke(question: Question) -> Answer | None:
    """Smoke points of fats."""
    fats = [m.food for m in question.mentions if m.food.smoke_degC and m.phrase != "oil"]
    hot = next((degC for degC in temperatures_degC(question) if degC > HOT_DEGC), None)
    if hears(question, "asks for a stand in") or not _asks_of_smoke(question, fats, hot):
        return None
    text = _smoke_point(question, fats, hot)
    return Answer(known=True, answer=f"{text} {NEVER_SMOKING}", sources=cited(question.store, "S-SMOKE"))


def _asks_of_smoke(question: Question, fats: list[Food], hot: float | None) -> bool:
    if hears(question, "asks how fat smokes") or (fats and hears(question, "asks how this fat smokes")):
        return True
    heated = hot is not None or hears(question, "fat on the heat")
    return bool(fats) and heated and len(question.foods) == 1


def _smoke_point(question: Question, fats: list[Food], hot: float | None) -> str:
    if fats and _is_unrefined(question) and _point_degC(fats[0]) > UNREFINED_DEGC:
        return _of_unrefined(fats[0], hot)
    text = _of_refined(fats) if fats else _highest(question.store)
    if fats and hot is not None:
        text = _verdict(fats[0], hot, text)
    if question.says("high heat"):
        return f"{text} For high heat take one above {both(HIGH_HEAT_DEGC)}."
    return text


def _is_unrefined(question: Question) -> bool:
    return hears(question, "unrefined") or _VIRGIN.search(question.plain) is not None


def _of_unrefined(fat: Food, hot: float | None) -> str:
    text = (
        f"Unrefined, {fat.name} smokes far below the {both(_point_degC(fat))} of the refined: I hold no"
        f" figure of its own, take {both(UNREFINED_DEGC)} at most, less for seed and nut oils."
    )
    if hot is None:
        return text
    return f"No. {text}" if hot > UNREFINED_DEGC else f"Yes, but no hotter. {text}"


def _of_refined(fats: list[Food]) -> str:
    points = "; ".join(_with_point(fat) for fat in fats)
    return (
        f"Smoke point, the cautious end: {points}. Refined fats stand more, unrefined ones less;"
        " tables differ by 30 °C."
    )


def _highest(store: Store) -> str:
    """The fats that stand most, and those of every day."""
    fats = sorted((food for food in store.foods() if food.smoke_degC), key=lambda fat: -_point_degC(fat))
    highest = "; ".join(_with_point(fat) for fat in fats[:HIGHEST])
    everyday = ", ".join(_with_point(fat) for fat in fats if fat.name in words_of(store, "everyday fat"))
    return f"Highest smoke points: {highest}; {everyday}; tables differ by 30 °C."


def _verdict(fat: Food, hot_degC: float, text: str) -> str:
    """What leads and ends the smoke point of a fat when it is asked for a temperature."""
    if _point_degC(fat) <= hot_degC:
        return f"Too hot for it bare in a pan at {both(hot_degC)}. {text} In an oven moist food stays cooler."
    return f"Yes, below its smoke point at {both(hot_degC)}. {text}"


def _with_point(fat: Food) -> str:
    return f"{fat.name} {both(_point_degC(fat))}"


def _point_degC(fat: Food) -> float:
    """The smoke point, 0 for what is no fat."""
    return fat.smoke_degC or 0.0
