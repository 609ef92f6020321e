"""Food that stood out, and food kept hot: the time or the temperature against the published limit.

USDA FSIS: 2 hours at room temperature in all, 1 hour above 32 °C / 90 °F; kept hot at 60 °C /
140 °F or above. UK FSA: cooked rice within 1 hour; kept hot at 63 °C.
"""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.question import both, temperatures_degC
from knowledge.foods.model import Food

LIMIT_H, HOT_ROOM_H, RICE_H = 2.0, 1.0, 1.0
HOT_ROOM_DEGC = 32.0
HOLD_DEGC, UK_HOLD_DEGC = 60.0, 63.0
LONG_H = 6.5  # what "overnight", "since lunch" or "all day" is at least
_OUT = re.compile(
    r" (?:out|counter|worktop|room temp\w*|unrefrigerated|on the (?:stove|hob|table|side|cooker|bench|desk)"
    r"|in (?:the|my|a) (?:hot )?(?:car|bag|boot|trunk|lunch ?box|backpack)|oven (?:turned )?off"
    r"|oven (?:that was )?(?:turned|switched) off|turned off(?: oven)?|(?:sat|stood|sitting"
    r"|standing) (?:in|on|there|around)) "
)
_FOR = re.compile(
    r" (?:about |for |over |some |around |nearly |almost |more than )*"
    r"(\d{1,2}(?:\.\d)?|an?|one|two|three|four|five|six|seven|eight|ten|twelve|half an?|a couple of"
    r"|couple of|a few|few"
    r"|\d{1,3}) ?(?:and a half )?(h|hrs?|hours?|m|mins?|minutes?) "
)
_LONG = re.compile(
    r" (?:overnight|all night|all day|all morning|all afternoon|all evening|since (?:last night|yesterday"
    r"|this morning"
    r"|the morning|breakfast|lunch\w*|noon|midday|dinner|the night before)|since (?:about )?(?:mon|tues"
    r"|wednes|thurs|fri|satur"
    r"|sun)day|from last night|the whole (?:day|night)) "
)
_CLOCK = re.compile(r" (\d{1,2})(?:[.:](\d\d))? ?(am|pm)?(?= )")
_SINCE = re.compile(r" since (?:about |around )?(\d{1,2})(?:[.:]\d\d)? ?(am|pm|o clock)? ")
_FROM_TILL = re.compile(
    r" (?:from|between) (\d{1,2})(?:[.:]\d\d)? ?(am|pm)? (?:to|till|until|til|and) (\d{1,2})"
    r"(?:[.:]\d\d)? ?(am|pm)? "
)
_NOW = re.compile(r" (?:now|its|it s|it is) (?:now )?(\d{1,2})(?:[.:]\d\d)? ?(am|pm)? ")
_NUMBER = {
    "a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0,
    "seven": 7.0,
    "eight": 8.0, "ten": 10.0, "twelve": 12.0, "half a": 0.5, "half an": 0.5, "a couple of": 2.0,
    "couple of": 2.0, "a few": 3.0, "few": 3.0,
}  # fmt: skip
_NOT_THIS = (
    "thaw", "defrost", "frozen", "marinat", "dough", "prove", "proof", "how long can", "how long may",
    "how long is it",
    "for how long", "on warm", "keep warm", "rise", "soak", "ferment", "power", "pickle", "reminder", "timer",
)  # fmt: skip
DISHES = (
    "cooked", "leftover", "left over", "dinner", "lunch", "curry", "stew", "soup", "casserole", "rice",
    "pasta", "pizza",
    "takeaway", "takeout", "roast", "fried", "boiled", "grilled", "reheat", "meal", "buffet", "sandwich",
    "salad",
    "gravy", "sauce", "dal_", "daal", "chili", "chilli", "lasagn", "quiche", "pie_", "paella", "biryani",
    "jollof", "stock",
    "broth", "beans", "stuffing", "food", "milk", "cream_", "mayo", "meat", "seafood", "barbecue", "bbq",
    "pot_",
)  # fmt: skip
RICE = ("rice_", "biryani", "pilau", "pilaf", "jollof", "risotto", "paella", "sushi")
_HOT_ROOM = re.compile(
    r" (?:hot day|summer|heat ?wave|in the heat|in the sun|hot weather|hot kitchen|hot car|tropical"
    r"|very hot) "
)
_HELD = (
    "buffet", "bain marie", "steam table", "chafing", "hot plate", "hot cupboard", "warming drawer",
    "hot hold",
    "holding temp", "held hot", "hold hot", "held at", "kept hot", "keep hot", "stay hot", "hot holding",
    "keep warm",
    "kept warm", "stays hot", "food warmer", "soup kettle", "on warm", "heat lamp", "warm setting",
)  # fmt: skip
_KEPT_HOT = re.compile(r" (?:keep|keeping|hold|holding|kept|held|leave|serve) (?:\w+ ){1,4}(?:hot|warm) ")
LOCAL = "Your local food-safety rules come first."


def left_out(question: Question) -> Answer | None:
    """The verdict on food that stood out for a time that is said."""
    hours = _hours(question)
    if hours is None or not _OUT.search(question.plain) or question.says(*_NOT_THIS) or _is_hot(question):
        return None
    if not (question.says(*DISHES) or any(_spoils(food) for food in question.foods)):
        return None
    rice = question.says(*RICE)
    hot = bool(_HOT_ROOM.search(question.plain)) or any(
        HOT_ROOM_DEGC <= degC < HOLD_DEGC for degC in temperatures_degC(question)
    )
    limit_h = RICE_H if rice else HOT_ROOM_H if hot else LIMIT_H
    rule = "2 hours at room temperature in all, 1 hour above 32 °C / 90 °F (USDA FSIS); cooked rice 1 "
    rule += "hour (UK FSA)"
    if hours > limit_h:
        text = f"No: throw it away. {_span(hours).capitalize()} out is over the limit: {rule}. "
        text += "Reheating, boiling or frying kills "
        text += "germs but does not destroy the toxins some have left, a cool room does not make it safe, "
        text += "and smell "
        text += "tells you nothing."
    else:
        text = f"{_span(hours).capitalize()} is within the limit ({rule}), counting all the time it was out: "
        text += "eat it now, or cook or "
        text += "reheat it once to 74 °C / 165 °F, steaming hot, or put it in the fridge at once. "
        text += "Was it longer, or hotter than that, throw it away."
    return Answer(
        known=True, answer=f"{text} {LOCAL}", sources=cited(question.store, "A-FSIS-LEFT", "A-FSA-RICE")
    )


def kept_hot(question: Question) -> Answer | None:
    """The temperature at which cooked food is kept hot, or the verdict on one."""
    if not _is_hot(question):
        return None
    read = [degC for degC in temperatures_degC(question) if degC <= 110.0]
    asks = question.says("temp", "degrees", "how hot", "how warm", "minimum", "hot enough", "warm enough")
    if not read and not asks:
        return None
    text = f"Keep hot food at {both(HOLD_DEGC)} or above all through (USDA FSIS; UK 63 °C / 145 °F), "
    text += "measured, and only "
    text += "food that was cooked through before; put it in steaming hot. Below that at most 2 hours in "
    text += "all, 1 hour above "
    text += "32 °C / 90 °F, rice 1 hour; then throw it away."
    if read and read[0] < HOLD_DEGC - 0.4:
        text = f"No: {both(read[0])} is too cool, germs grow there. {text}"
    elif read and read[0] < UK_HOLD_DEGC - 0.4:
        text = (
            f"By USDA FSIS yes, if that is the coldest spot; the UK asks 63 °C, take that to be sure. {text}"
        )
    elif read:
        text = f"Yes, if {both(read[0])} is the coldest spot. {text}"
    return Answer(known=True, answer=f"{text} {LOCAL}", sources=cited(question.store, "A-FSIS-LEFT", "A-FSA"))


def _is_hot(question: Question) -> bool:
    oven = question.says("plates", "how long to", "oven temp", "roast at", "sous vide", "water bath")
    return not oven and (question.says(*_HELD) or _KEPT_HOT.search(question.plain) is not None)


def _spoils(food: Food) -> bool:
    return bool(food.safety) or food.animal in ("dairy", "egg") or food.doneness in ("white_rice", "pasta")


def _hours(question: Question) -> float | None:
    plain = question.plain
    if between := _FROM_TILL.search(plain):
        return float((_hour(between[3], between[4]) - _hour(between[1], between[2])) % 12 or 12)
    if (since := _SINCE.search(plain)) and (now := _NOW.search(plain[since.end() - 1 :])):
        return float((_hour(now[1], now[2]) - _hour(since[1], since[2])) % 12 or 12)
    if _LONG.search(plain):
        return LONG_H
    said = [_value(found[1]) / (60.0 if found[2].startswith("m") else 1.0) for found in _FOR.finditer(plain)]
    if "and a half" in plain and said:
        said = [hours + 0.5 for hours in said]
    if said:
        return max(said)
    return LONG_H if since else None


def _hour(number: str, half: str | None) -> int:
    return int(number) % 12 + (12 if half == "pm" else 0)


def _value(said: str) -> float:
    return _NUMBER[said] if said in _NUMBER else float(said)


def _span(hours: float) -> str:
    if hours < 1.0:
        return f"{hours * 60:.0f} minutes"
    if hours < 3.0 and hours % 1.0:
        return f"{hours * 60:.0f} minutes"
    if hours == LONG_H:
        return "that long"
    return "1 hour" if hours == 1.0 else f"{hours:g} hours"
