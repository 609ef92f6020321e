"""Whether food stood in the warm: where it was left, and whether it is food that spoils there."""

from __future__ import annotations

import re

from knowledge.answers.model import Question
from knowledge.answers.reading.degrees import temperatures_degC
from knowledge.answers.reading.heard import hears, pattern
from knowledge.answers.reading.hours import COUNT
from knowledge.foods.model import Food
from knowledge.text.clauses import says
from knowledge.text.warm import perishes

_LEFT_THERE = (
    r" (?:in (?:(?:the|my|a|our) )?(?:(?:hot|warm|parked) )?{vehicle}"
    r"|in (?:(?:the|my|a|his|her) )?(?:\w+ )?{bag}"
    r"|(?:no|without(?: an?)?) {cold box}) "
)
_WHOSE = r"(?:(?:the|my|our|a|an|his|her|their|your|its|this|that) )?"
_AT = (
    rf" (?:in|on|at|by|under|inside|near|outside|onto|into|over|next to) {_WHOSE}"
    r"(?:(?:back|boot|bottom|corner|front|edge|seat) of (?:the |my |our )?)?"
    r"(?:(?!fridge|freezer|refrigerator|deep)\w+ )?"
)
_NO_COLD = r"(?! (?:fridge|freezer|refrigerator)) "
_LEFT_AT_THE_SPOT = rf"{_AT}(?:{{warm spot}}|{{warm spot when left}}){_NO_COLD}"
_LONG_AT_THE_SPOT = (
    rf"{_AT}{{warm spot}}{_NO_COLD}"
    rf"(?:for|since|overnight|all|the whole|whole|over|about|from|until|till|{COUNT}) "
)
_ON_THE_HEAT = rf" (?:in|on) {_WHOSE}(?:\w+ )?{{heat spot}} "
_IT_STOOD = r" {stood} "
_OUTSIDE = re.compile(  # "the outside" is of a food
    r"(?<! the) outside (?:(?:for|about|over|since|overnight|all|from) |\d)"
)
_ELSEWHERE = (  # "find out", "out of the oven": nothing stands there
    r" {goes} out(?= )| out of (?:the |my |our |a )?(?!{cold box}|freezer|refrigerator|cold|chiller)\w+(?= )"
)
_LEFT_SO_LONG = re.compile(
    rf" (?:left|forgot|forgotten) (?P<where>(?:\w+ ){{0,6}}?)(?:for |about |over )*{COUNT} ?(?:h|hrs?|hours) "
)
_COLD_AIR = re.compile(  # out on a frosty balcony is no warm place
    r" (?:-\d+|[0-4]) ?(?:°|c|degrees?|deg|celsius) | (?:below|under|sub) (?:zero|freezing)"
    r"| freezing (?:cold|outside) "
)
_NOT_LEFT_OUT = (
    "oven", "slow", "fridge", "freezer", "cook", "simmer", "low_", "marin", "brine", "soak", "rise", "prove",
    "water", "to_", "grill", "smoker", "refrigerat",
)  # fmt: skip
_THAWED = re.compile(
    r" (?:thawed|defrosted|(?:been|was|were|is|are|its) (?:\w+ )?(?:thawing|defrosting)"
    r"|left (?:\w+ ){0,7}?(?:thaw|defrost)(?:ing)?"
    r"|(?:thaw|defrost)ing (?:\w+ ){0,5}?(?:since|all|overnight|for \w+ hours))(?= )"
)


def stood_out(question: Question) -> bool:
    """True where a question tells of food at a place that is neither cold nor on the heat."""
    if _COLD_AIR.search(question.plain):
        return False
    store = question.store
    plain = pattern(store, _ELSEWHERE).sub(" ", question.plain)
    if hears(question, "stood out", plain=plain) or _OUTSIDE.search(plain):
        return True
    if any(pattern(store, told).search(plain) for told in (_LEFT_THERE, _LONG_AT_THE_SPOT)):
        return True
    if pattern(store, _LEFT_AT_THE_SPOT).search(plain) and pattern(store, _IT_STOOD).search(plain):
        return True
    if pattern(store, _ON_THE_HEAT).search(plain) and hears(question, "left on the heat"):
        return not (hears(question, "on the heat") or temperatures_degC(question))
    left = _LEFT_SO_LONG.search(plain)
    return left is not None and not says(f" {left['where']} ", *_NOT_LEFT_OUT)


def thawed_out(question: Question) -> bool:
    """True where something is told to have thawed, or half thawed, outside the fridge."""
    if not _THAWED.search(question.plain):
        return False
    if hears(question, "thawed well"):
        return question.says("water") and hears(question, "stale water")
    return stood_out(question)


def stays_frozen(question: Question) -> bool:
    """True where frozen food is spoken of that did not thaw, or thawing is only planned."""
    return hears(question, "thawing") and not thawed_out(question)


def perishable(question: Question) -> bool:
    """True where food that spoils in the warm is named, or a dish of it."""
    plain = _unchilled(question).sub(" ", question.plain)
    dishes = question.store.table("words_dishes")
    return (
        hears(question, "perishable", plain=plain)
        or any(f" {row['dish']} " in plain for row in dishes)
        or any(_spoils(m.food) for m in question.mentions if f" {m.phrase} " in plain)
    )


def keeps_unchilled(question: Question) -> bool:
    """True where all the food that is named keeps for a day or two without the fridge: butter, bread."""
    return _unchilled(question).search(question.plain) is not None and not perishable(question)


def _unchilled(question: Question) -> re.Pattern[str]:
    return pattern(question.store, r" {keeps unchilled}(?= )")


def _spoils(food: Food) -> bool:
    kept = food.animal in ("dairy", "egg") or food.doneness in ("white_rice", "pasta")
    return bool(food.safety) or kept or perishes(food, frozenset())
