"""What just happened at the stove: a closed set of event types, told by their words.

The types are tried in a fixed order, the rare and certain before the common: a
message that says "stop" or names a temperature is that, whatever else is in it.
"""

from __future__ import annotations

import re

from knowledge.text.cues import cues
from knowledge.text.fields import NUM, clocks, durations, value
from knowledge.text.model import EventType

_TEMP = re.compile(
    rf"(?P<n>\d{{2,4}}(?:[.,]\d)?|one (?:ten|twenty|thirty|forty|fifty|sixty|seventy|eighty|ninety)"
    rf"(?: ?(?:one|two|three|four|five|six|seven|eight|nine))?|"
    rf"(?:(?:one|a|two) )?hundred(?: and)?(?: (?:{NUM}))?|(?:twenty|"
    rf"thirty|forty|fifty|sixty|seventy|eighty|ninety)(?: ?(?:one|two|three|four|five|six|seven|"
    rf"eight|nine))?)"
    r" ?(?:°|degrees?|deg\b)? ?(?P<u>c\b|f\b|celsius\b|fahrenheit\b|centigrade\b)?"
)
_PUT_AWAY = re.compile(
    r"\b(?:in|on) (?:the|my|our) (?:fridge|freezer|cupboards?|pantry|larder|house|kitchen|garden)\b"
)  # what is there is not in the heat
_OVEN_TEMP = re.compile(r"\b(?:oven|hob|air|grill|fan|gas mark)(?: \w+){0,4}? ?$")


def event_type(masked: str) -> EventType | None:
    """The type of event that a masked text reports, if it reports one."""
    for value_of_kind, pattern in cues("event"):
        if pattern.search(masked):
            kind = EventType(value_of_kind)
            if kind is EventType.PROBE and temperature(masked) is None:
                continue
            if kind is EventType.STARTED and _PUT_AWAY.search(masked):
                continue
            return kind
    return None


def temperature(text: str) -> float | None:
    """A food's temperature in °C, the lowest of two; without a unit 100 or less is °C, above is °F.

    A number that no food can have is given as said, if there is no other: to be asked about.
    """
    found: list[float] = []
    odd: list[float] = []
    for match in _TEMP.finditer(text):
        before = text[: match.start()]
        after = text[match.end() : match.end() + 12]
        if before[-1:].isalnum() or before[-1:] in (":", "."):
            continue
        if re.match(r" ?(?:min|mins|minutes|m\b|hrs?|hours?|g\b|kg|lb|oz|ml|people|%|:|x\b|k\b)", after):
            continue
        if _OVEN_TEMP.search(before[-40:]) and not match.group("u"):
            continue
        number = _number(match.group("n"))
        unit = (match.group("u") or "")[:1]
        degrees = number if unit in ("c",) or (not unit and number <= 100) else (number - 32) * 5 / 9
        if -30 <= degrees <= 150:
            found.append(round(degrees, 1))
        else:
            odd.append(degrees if unit else number)
    return min(found or odd, default=None)


def _number(text: str) -> float:
    if text[0].isdigit():
        return float(text.replace(",", "."))
    hundred, _, rest = text.partition("hundred")
    if text.startswith("one ") and "hundred" not in text:
        return 100.0 + value(text.removeprefix("one "))  # "one fifty five"
    if "hundred" not in text:
        return value(text)
    base = 100 * (value(hundred) if hundred.strip() not in ("", "a") else 1)
    rest = rest.replace("and", "").strip()
    return base + (value(rest) if rest else 0)


def event_minutes(text: str, kind: EventType) -> float | None:
    """Minutes that belong to an event, told or worked out from two clock times."""
    if kind in (EventType.STOP, EventType.SKIP):
        return None
    spans = [m for m, _ in durations(text)]
    between = _between_clocks(text)
    if between is not None and not (spans and kind is EventType.DELAY):
        return between
    if spans:
        return spans[0]
    if _ONE_MINUTE.search(text):
        return 1.0
    if kind is EventType.DELAY:
        bare = re.search(
            rf"\b(?:(?:give|gimme)(?: me| us)?|im|i am|we(?:re)?(?: are)?|running|about|by|need|wait|back in|"
            rf"in|another|me|brb) (?:about |like |another |a good )?(?P<n>{NUM})\b"
            rf"(?! ?(?:c\b|f\b|people|g\b|:|pm|past|oclock|of us))|"
            rf"\b(?P<m>{NUM}) (?:more|extra|longer|behind|late)\b(?! (?:people|guests))",
            text,
        )
        if bare:
            return value(bare.group("n") or bare.group("m"))
    if kind in (
        EventType.TOO_FAST,
        EventType.NOT_DONE,
        EventType.DONE_STEP,
        EventType.STARTED,
        EventType.FORGOT,
    ):
        bare = re.search(
            rf"\b(?P<n>{NUM}) (?:early|ago|ahead|in\b|late)|\b(?:after|for) (?P<m>{NUM})\W*$", text
        )
        if bare:
            return value(bare.group("n") or bare.group("m"))
    return None


_ONE_MINUTE = re.compile(r"\b(?:a|one|the last) (?:min|minute) (?:ago|back|or so ago)\b")
_PART_OF_HOUR = re.compile(
    r"\b(?P<part>half|quarter|a quarter|five|ten|twenty|twenty ?five|5|10|20|25) (?P<dir>past|to)\b"
    r"(?! (?:\d|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|the|be|boil|go|do|get))"
)
_IS_NOW = re.compile(r"\b(?:its|it is|now|time is|says)(?: now| like| about| only| already| nearly| just)? $")
_HOUR_MIN = 60


def _between_clocks(text: str) -> float | None:
    """Minutes between two clock times; the hour may be left away: "due quarter past, it's half past now"."""
    whole = [(span[0], _minute(clock)) for clock, span in [*clocks(text), *_bare_clocks(text)]]
    parts = []
    for match in _PART_OF_HOUR.finditer(text):
        minute = {"half": 30, "quarter": 15, "a quarter": 15}.get(match["part"]) or int(value(match["part"]))
        parts.append((match.start(), minute if match["dir"] == "past" else _HOUR_MIN - minute))
    if len(whole) >= 2:
        earlier, later = sorted(minute for _, minute in sorted(whole)[:2])
        return float(later - earlier)
    times = sorted([*whole, *parts])
    if len(times) < 2:
        return None
    (first_at, first), (_, second) = times[:2]
    if _IS_NOW.search(text[:first_at]):
        first, second = second, first
    return float((second - first) % _HOUR_MIN)


def _bare_clocks(text: str) -> list[tuple[str, tuple[int, int]]]:
    """Hours said without minutes beside another clock time: "put it on at 4, it's 5:30"."""
    known = list(clocks(text))
    if len(known) != 1:
        return []
    out = []
    for match in re.finditer(
        r"\b(?:at|since|from|its|now) (\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|"
        r"eleven|twelve)\b(?! ?(?:min|[:.]\d|c\b|f\b|deg|past|to\b|h\b|hour|[ap]m))",
        text,
    ):
        hour = int(value(match.group(1)))
        if 1 <= hour <= 23 and not any(a < match.end() and match.start() < b for _, (a, b) in known):
            out.append((f"{hour + 12 if hour < 12 else hour:02d}:00", match.span()))
    return out


def _minute(clock: str) -> int:
    hour, _, minute = clock.partition(":")
    return int(hour) * 60 + int(minute)
