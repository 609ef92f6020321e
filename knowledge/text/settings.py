"""What holds beyond tonight: units, kitchen, altitude, eaters, reminders. By patterns over flat text."""

from __future__ import annotations

import re

from knowledge.text.fields import NUM, value
from knowledge.text.normalise import FOOD as F

_UNITS_US = r"(?:fahrenheit|imperial|ounces(?: and pounds)?|pounds(?: and ounces)?|cups|us units|american units|us customary|oz)"
_UNITS_METRIC = r"(?:celsius|centigrade|metric|grams?(?: and \w+)?|kilos?|millilitres|ml)"
_USE = r"(?:use|switch(?: \w+){0,3}? to|change(?: \w+){0,3}? to|show(?: me)?(?: \w+){0,2}? in|give me(?: \w+){0,2}? in|talk(?: to me)? in|speak(?: to me)? in|set(?: \w+){0,3}? to|prefer|only|i think in|i work in|everything in|temps? in|temperatures? in|recipes? in|measurements? in|convert(?: \w+){0,3}? to|i(?:m| am) (?:used to|on)|in|no)"

_CUES = tuple(
    re.compile(pattern)
    for pattern in (
        rf"\b{_USE} (?:{_UNITS_US}|{_UNITS_METRIC}) ?(?:please|pls|units?|only|always|instead|not \w+|from now on|for everything|thanks|thx|measurements?|temps?|temperatures?|ta|and \w+|\.|!|,|$)|^\W*(?:{_UNITS_US}|{_UNITS_METRIC})(?: please| pls| only| units)?\W*$",
        r"\b(?:my|our|the|this|new) (?:oven|hob|stove|cooker|kitchen|grill|pressure cooker|pan|pot|fridge|freezer)s? (?:runs?|only (?:goes|does|reaches)|goes (?:up )?to|maxes|tops|max|is (?:a |an )?(?:fan|convection|gas|electric|induction|small|tiny|old|slow|always)|has|takes|holds|cant go|doesnt go|is about)\b",
        r"\b(?:i|we)(?:ve)? (?:have|got|own|use|only have|only own|only got|cook on|cook with|do have|bought) (?:\w+ ){0,2}(?:fan oven|convection oven|gas (?:hob|stove|cooker)|induction(?: hob| stove| cooktop)?|electric (?:hob|stove|coil|oven)\w*|oven that|toaster oven|pressure cooker|dutch oven|half sheets?|quarter sheets?|sheet pans?|sheet|saute pan|skillet|wok|lidded pot|\d+ ?(?:cm|inch|in|l|litre|liter|quart|qt)\b[^,]*(?:pan|pot|cooker|skillet|tray)?)",
        r"\baltitude\b|\babove sea level\b|\bsea level\b|\belevation\b|\b(?:at|live at|im at|we(?:re)? at|up at) \d[\d,.]* ?(?:m|metres?|meters?|ft|feet|foot)\b|\bmile high\b|\bin the mountains\b",
        r"\b(?:remind me|reminders?|notifications?|notify|ping me|text me|message me|buzz me|nudge me|alert me|alerts)\b(?!.*\b(?:stop|forgot|missed)\b)|\b(?:dont|do not|no|never|stop) (?:text|message|ping|remind|notify|buzz|disturb|bother) ?\w*|\bquiet hours\b|\b(?:louder|mute|silent)\b",
        r"\b(?:from now on|remember (?:that|this|me|i|we|to)|for future|in future|going forward|for next time|every time|as a rule|by default|default|always|permanently|for good|note (?:that|to self)|for the record|save (?:this|that|it)|keep in mind|set (?:my|our|me)|update my|change my|my settings?|settings|preferences?|profile)\b",
        r"\b(?:we|i) (?:never|dont ever|dont|do not|cant|cannot|no longer) (?:eat|have|touch|do|use|cook)\b|\b(?:in this house|in our house|in my house|round here|in this household|our household|my household)\b",
        r"\b(?:stop suggesting|never suggest|dont suggest|dont (?:ever )?(?:offer|propose|recommend|give me|use|include|put|plan|show)|no more suggestions|quit suggesting|never (?:offer|include|use|give|put|plan))\b",
        r"\bwe(?:re| are) (?:usually|always|normally|mostly) \w+\W*$|\bthere(?:s| is| are|re)? (?:usually |always |normally |just |only )?\S+ of us\b|\bwe(?:re| are) (?:usually |always |normally |a )?(?:\S+ (?:of us|people|in the (?:house|family)|at home)|family of|household of)|\bhousehold of\b|\b(?:usually|normally|always|typically) (?:cook|cooking|feed|feeding|for|we are|there)\b",
        r"\b(?:speak|talk|use|write|say|reply|answer|text) (?:\w+ )?(?:british|american|english|indian|australian|aussie|uk|us|hindi|spanish|simple|plain|short\w*|french|german)\b|\bcall (?:it|them|me)\b|\b(?:shorter|fewer|longer|less|more) (?:messages|texts|emoji|detail)",
        r"\b(?:im|i am|were|we are|shes|hes|(?:\w+ )?(?:is|has|have)|ive (?:got|become|gone)|i have|i got|ive|became|become|gone|went|diagnosed) (?:\w+ ){0,3}?(?:vegetarian|vegan|pescatarian|coeliac|celiac|lactose intoleran\w+|gluten (?:intoleran\w+|free)|allergic|allergy|diabetic|halal|kosher|jain|plant based|intoleran\w+|dairy free)\b|\b(?:allergic|allergy)\b",
        rf"\b(?:hate|hates|cant stand|dislike|dislikes|doesnt like|dont like|wont eat)\b (?:\w+ )?{F}",
        r"\b(?:im|i am|we are|we live|i live|living|based) (?:in|at) (?:denver|bogota|mexico|la paz|quito|cusco|nairobi|addis|johannesburg|a (?:van|boat|caravan|dorm|studio))\b",
        r"\b(?:time ?zone|gmt|utc|language|metric|units?)\b",
    )
)


def is_setting(masked: str) -> bool:
    """Whether a masked text speaks of what holds beyond tonight."""
    return any(cue.search(masked) for cue in _CUES)


_ALTITUDE = re.compile(
    r"\b(?P<n>\d{1,2},?\d{3}|\d{3,4}|\d(?:\.\d)?k) ?(?P<u>metres?|meters?|m|ft|feet|foot)\b"
)
_OVEN_MAX = re.compile(
    r"\boven (?:\w+ ){0,4}?(?:goes (?:up )?to|maxes(?: out)?(?: at)?|tops out at|max(?:imum)?(?: is| of)?|does|reaches|goes) (?:about |only |up to )*(?P<n>\d{3}) ?(?P<u>c|f)?\b"
)
_OVEN_OFFSET = re.compile(
    rf"\boven (?:runs|is|runs about) (?:\w+ )?(?P<dir>hot|cold|cool|slow|fast)\b(?:[^.]*?(?P<n>{NUM}) ?(?:°|degrees?|deg)?)?"
)
_SIZED = re.compile(
    r"\b(?:a |an |my |the |only )?(?P<size>(?:half|quarter|three quarter) sheet|\d+(?:\.\d)? ?(?:cm|inch|in|l|litres?|liters?|quarts?|qts?)\b)(?: \w+)?"
    r" ?(?P<vessel>sheet pan|saute pan|frying pan|skillet|pan|lidded pot|dutch oven|pot|pressure cooker|casserole|tray)?"
)
_VESSEL_OF = {"sheet pan": "sheet pan", "tray": "sheet pan", "saute pan": "saute pan", "frying pan": "saute pan",
              "skillet": "saute pan", "pan": "saute pan", "lidded pot": "lidded pot", "dutch oven": "lidded pot",
              "pot": "lidded pot", "casserole": "lidded pot", "pressure cooker": "pressure cooker"}  # fmt: skip


def settings(text: str) -> tuple[tuple[str, str], ...]:
    """Settings a flat text gives, as (name, value): units, altitude_m, oven_max_degC, fan_oven, size."""
    out: dict[str, str] = {}
    us = re.search(rf"\b{_UNITS_US}\b", text)
    metric = re.search(rf"\b{_UNITS_METRIC}\b", text)
    if us and not (metric and re.search(rf"(?:not|no|instead of) {_UNITS_US}", text)):
        out["units"] = "us"
    elif metric:
        out["units"] = "metric"
    if (match := _ALTITUDE.search(text)) and re.search(
        r"altitude|sea level|elevation|\bat \d|\blive\b|up\b", text
    ):
        digits = match.group("n").replace(",", "")
        metres = float(digits[:-1]) * 1000 if digits.endswith("k") else float(digits)
        if match.group("u") in ("ft", "feet", "foot"):
            metres *= 0.3048
        if metres <= 6000:
            out["altitude_m"] = f"{metres:.0f}"
    if match := _OVEN_MAX.search(text):
        degrees = float(match.group("n"))
        if match.group("u") == "f" or (not match.group("u") and degrees > 320):
            degrees = (degrees - 32) * 5 / 9
        out["oven_max_degC"] = f"{degrees:.0f}"
    if match := _OVEN_OFFSET.search(text):
        sign = 1 if match.group("dir") in ("hot", "fast") else -1
        out["oven_offset_K"] = f"{sign * value(match.group('n')) if match.group('n') else sign * 10:.0f}"
    if re.search(r"\b(?:no|not a|isnt a|without) (?:fan|convection)\b", text):
        out["fan_oven"] = "no"
    elif re.search(r"\b(?:fan (?:oven|assisted|forced)|convection(?: oven)?|oven is (?:a )?fan)\b", text):
        out["fan_oven"] = "yes"
    if match := _SIZED.search(text):
        size, vessel = match.group("size"), _VESSEL_OF.get(match.group("vessel") or "")
        vessel = "sheet pan" if "sheet" in size else vessel
        if vessel:
            out["vessel_size"] = f"{vessel}={size}"
    if match := re.search(
        rf"\b(?:usually|normally|always|household of|family of|we(?: a|)re|there are) (?:cook for |cooking for |for )?({NUM})\b",
        text,
    ):
        out["people"] = f"{value(match.group(1)):g}"
    if match := re.search(r"\butc ?([+-]\d{1,2})(?::?(\d\d))?", text):
        hours = int(match.group(1))
        minutes = abs(hours) * 60 + int(match.group(2) or 0)
        out["utc_offset_min"] = str(minutes if hours >= 0 else -minutes)
    return tuple(out.items())
