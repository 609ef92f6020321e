"""Food that stood out, and food kept hot: the time or the temperature against the published limit.

USDA FSIS: 2 hours at room temperature in all, 1 hour above 32 °C / 90 °F; kept hot at 60 °C /
140 °F or above. UK FSA: cooked rice within 1 hour; kept hot at 63 °C.
"""

from __future__ import annotations

import re

from knowledge.answers.cite import cited
from knowledge.answers.model import Answer, Question
from knowledge.answers.question import as_read, both, temperatures_degC
from knowledge.foods.model import Food
from knowledge.units import is_met

LIMIT_H, HOT_ROOM_H, RICE_H = 2.0, 1.0, 1.0
HOT_ROOM_DEGC = 32.0
HOLD_DEGC, UK_HOLD_DEGC = 60.0, 63.0
LONG_H = 6.5  # what "overnight", "since lunch" or "all day" is at least
_OUT = re.compile(
    r" (?:out|counter|countertop|worktop|picnic|in the (?:sun|heat|boot|trunk)"
    r"|room temp\w*|unrefrigerated|on the (?:stove|hob|table|side|cooker|bench|desk)"
    r"|in (?:the |my |a |our )?(?:hot |warm |parked )?"
    r"(?:car|van|bag|boot|trunk|lunch ?box|backpack|rucksack)|oven (?:turned )?off"
    r"|oven (?:that was )?(?:turned|switched) off|turned off(?: oven)?|(?:sat|stood|sitting"
    r"|standing)|(?:no|without (?:an? )?) ?(?:fridge|ice ?packs?|cool ?box|cold ?box|cooler)"
    r"|in (?:the |my |a |his |her )?(?:\w+ )?(?:bag|satchel|locker|drawer)|(?:at|in|on) (?:my |the )?desk"
    r"|packed lunch|outdoors|outside(?= (?:for |about |over |since |overnight |all |\d)))(?<! the outside) "
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
    "how long is it", "for how long", "on warm", "keep warm", "rise", "soak", "ferment", "power",
    "pickle", "reminder", "timer", "brown in", "formula", "breast", "dosa batter", "idli batter",
    "cool down before",
)  # fmt: skip
DISHES = (
    "cooked", "leftover", "left over", "dinner", "lunch", "curry", "stew", "soup", "casserole", "rice",
    "pasta", "pizza", "takeaway", "takeout", "roast", "fried", "boiled", "grilled", "reheat", "meal",
    "buffet", "sandwich", "salad", "gravy", "sauce", "dal_", "daal", "chili", "chilli", "lasagn",
    "quiche", "pie_", "paella", "biryani", "jollof", "stock", "broth", "kheer", "pudding", "pulao",
    "tamale", "beans", "stuffing", "food", "milk", "cream_", "mayo", "meat", "seafood", "barbecue", "bbq",
    "pot_",
)  # fmt: skip
RICE = (
    "rice_",
    "kheer",
    "pulao",
    "rice pudding",
    "biryani",
    "pilau",
    "pilaf",
    "jollof",
    "risotto",
    "paella",
    "sushi",
)
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
_IS_RAW = re.compile(
    r" (?:raw|uncooked|unbaked|not cooked|marinad\w*|marinated|mince|minced|egg mix\w*|eggs? wash|beaten egg"
    r"|thawed|defrosted|carpaccio|oysters?|sushi|sashimi|tartare) "
)
_COOKED = re.compile(
    r" (?:cooked|leftovers?|left over|roast(?:ed)?|fried|boiled|grilled|baked|steamed|smoked|bbq|barbecued?"
    r"|stew|soup|curry|pie|sandwich|salad|casserole|lasagn\w|pizza|takeaway|takeout|rotisserie|tinned"
    r"|canned|cold cuts?|dinner|lunch|meal|reheated) "
)
_COOKING = re.compile(
    r" (?:cook|bake|roast|simmer|braise|boil|steam|fry|sous vide|water bath|dehydrat\w*|proof|oven temp"
    r"|slow cooker|incubat\w*|yogurt|yoghurt|cultures?|reads?|reading|thermometer|probe|inside|core"
    r"|internal) "
)
_AIR = re.compile(
    r" (?:here|outside|outdoors|out there|days?|room|weather|sun|garden|summer|heat ?wave|beach|park|shade"
    r"|kitchen|patio|terrace|balcony|today|car|picnic|market|stall|tent) "
)
WARM_DEGC, PLACE_MAX_DEGC = 24.0, 47.0  # a temperature between them is one of a warm place
_KEPT_HOT = re.compile(
    r" (?:keep|keeping|hold|holding|kept|held|leave|serve) (?:\w+ ){1,4}(?:hot|warm) "
    r"| (?:keep|keeping|hold|holding|leave) (?:\w+ ){1,4}at \d.* (?:all day|all night|overnight|hours|until"
    r"|till|party|guests|service) "
)
_COOKS_THERE = re.compile(
    r" (?:to cook|(?:can|could|may) i cook|raw|uncooked"
    r"|cook (?:the |my |a )?\w+ (?:on|in|at) (?:the )?(?:keep )?warm) "
)
LOCAL = "Your local food-safety rules come first."


def left_out(question: Question) -> Answer | None:
    """The verdict on food that stood out for a time that is said."""
    hours = _hours(question)
    if hours is None or question.says(*_NOT_THIS) or _is_hot(question):
        return None
    out, warm = _OUT.search(question.plain), _is_warm_place(question)
    if not (out or warm):
        return None
    if not (warm or _is_food_that_spoils(question)):
        return None
    rice = question.says(*RICE)
    hot = bool(_HOT_ROOM.search(question.plain)) or any(
        HOT_ROOM_DEGC <= degC < HOLD_DEGC for degC in _degrees(question)
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
        text = f"{_span(hours).capitalize()} is within the limit ({rule}), counting all the time it was out. "
        text += _what_now(question)
        text += " Was it longer, or hotter than that, throw it away."
    return Answer(
        known=True, answer=f"{text} {LOCAL}", sources=cited(question.store, "A-FSIS-LEFT", "A-FSA-RICE")
    )


def in_the_warm(question: Question) -> Answer | None:
    """How long food may stand at the temperature of a day or a room, no time being said."""
    degC = _air_degC(question)
    if (
        degC is None
        or question.says("thaw", "defrost", "dough", "ferment")
        or not _is_food_that_spoils(question)
    ):
        return None
    hot = degC >= HOT_ROOM_DEGC
    text = f"At {both(degC)} around it cooked or raw perishable food may stand out "
    text += (
        f"{'1 hour' if hot else '2 hours'} at most, in all (USDA FSIS: 2 hours, above 32 °C / 90 °F 1 hour; "
    )
    text += (
        "cooked rice 1 hour, UK FSA); after that throw it away. Longer only kept hot at 60 °C / 140 °F or "
    )
    text += "above, or on ice at 4 °C / 40 °F or below."
    return Answer(
        known=True, answer=f"{text} {LOCAL}", sources=cited(question.store, "A-FSIS-LEFT", "A-FSA-RICE")
    )


def _air_degC(question: Question) -> float | None:
    """The temperature said of the day, the room or the place, None where it is one of food."""
    if not _AIR.search(question.plain) or _COOKING.search(question.plain):
        return None
    return next((degC for degC in _degrees(question) if WARM_DEGC <= degC <= PLACE_MAX_DEGC), None)


def _what_now(question: Question) -> str:
    """What to do with food that is still within the limit; nothing raw is eaten as it is."""
    cooked = "eat it now, reheat it once to 74 °C / 165 °F, steaming hot, or put it in the fridge at once."
    raw = "into the fridge now, or cook it through at once; don't eat it as it is. Marinate and thaw in the "
    raw += "fridge only (USDA FSIS)."
    if _IS_RAW.search(question.plain) and not re.search(r" (?:cooked|fried|grilled) ", question.plain):
        return f"Raw: {raw}"
    if any(food.safety for food in question.foods) and not (
        _COOKED.search(question.plain) or question.says(*RICE)
    ):
        return f"Cooked: {cooked} Raw: {raw}"
    return f"{cooked[0].upper()}{cooked[1:]}"


def _is_warm_place(question: Question) -> bool:
    """True for a temperature of a warm room or day, or a car or picnic, with no cooking spoken of."""
    if _COOKING.search(question.plain):
        return False
    warm = any(WARM_DEGC <= degC <= PLACE_MAX_DEGC for degC in _degrees(question))
    return warm or re.search(r" (?:picnic|(?:hot|parked) car|in the sun) ", question.plain) is not None


def _degrees(question: Question) -> tuple[float, ...]:
    """The temperatures said, also "34 degrees" of a day with no scale: below 50 that is Celsius."""
    bare = re.findall(r" ([23]\d|4[0-7]) ?(?:degrees?|deg|°)(?= )", question.plain)
    return (*temperatures_degC(question), *(float(degC) for degC in bare))


def _is_food_that_spoils(question: Question) -> bool:
    rows = question.store.table("words_dishes")
    dish = any(f" {row['dish']} " in question.plain for row in rows)
    return dish or question.says(*DISHES) or any(_spoils(food) for food in question.foods)


def kept_hot(question: Question) -> Answer | None:
    """The temperature at which cooked food is kept hot, or the verdict on one."""
    if not _is_hot(question):
        return None
    read = [degC for degC in temperatures_degC(question) if degC <= 110.0]
    asks = question.says(
        "temp",
        "degrees",
        "how hot",
        "how warm",
        "minimum",
        "hot enough",
        "warm enough",
        "on warm",
        "warm setting",
    )
    return held_hot(question, tuple(read)) if read or asks else None


def held_hot(question: Question, read: tuple[float, ...]) -> Answer:
    """The rule for food kept hot, with the verdict on the coldest of the temperatures read [°C]."""
    text = f"Keep hot food at {both(HOLD_DEGC)} or above all through (USDA FSIS; UK 63 °C / 145 °F), "
    text += "measured, and only "
    text += "food that was cooked through before; put it in steaming hot. Below that at most 2 hours in "
    text += "all, 1 hour above "
    text += "32 °C / 90 °F, rice 1 hour; then throw it away."
    coldest = min(read, default=None)
    if coldest is None:
        pass  # a question for the figure
    elif not is_met(coldest, HOLD_DEGC):
        text = f"No: {as_read(coldest)} is too cool, germs grow there. {text}"
    elif not is_met(coldest, UK_HOLD_DEGC):
        text = (
            f"By USDA FSIS yes, if that is the coldest spot; the UK asks 63 °C, take that to be sure. {text}"
        )
    else:
        text = f"Yes, if {as_read(coldest)} is the coldest spot. {text}"
    return Answer(known=True, answer=f"{text} {LOCAL}", sources=cited(question.store, "A-FSIS-LEFT", "A-FSA"))


def _is_hot(question: Question) -> bool:
    if _air_degC(question) is not None:
        return False
    if _COOKS_THERE.search(question.plain):
        return False  # what is raw is not kept hot
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
