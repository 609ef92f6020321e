"""Food that stood in the warm, however it is said: "sat on the counter since 8", "forgot it in the car".

What grows in perishable food in the warm is not cooked away, so this errs on the safe side:
a time that is not told is asked for, and where it is not clear which food is meant, all are.
"""

from __future__ import annotations

import re
from collections.abc import Sequence, Set
from datetime import datetime

from knowledge.foods.model import Food
from knowledge.text.cues import cue
from knowledge.text.fields import NUM, clocks, durations, value
from knowledge.text.model import Item, OutWarm
from knowledge.text.normalise import FOOD
from knowledge.text.roles import Role
from knowledge.text.seen import Seen
from knowledge.text.vocabulary import Vocabulary

CERTAIN_H = 2.0  # from here on it does not matter how much longer
LONG_H = 8.0  # "overnight", "all day"
MORNING_H, NOON_H = 8.0, 12.5  # o'clock
EVENING_H = 18.0  # o'clock, when nobody says what time it is
MEATS = frozenset({"beef", "pork", "lamb", "poultry", "game", "fish", "shellfish", "goat", "frog"})
_KEEPS = frozenset({"tinned fish", "sauce", "condiment", "stock"})
_CURDS = frozenset({"plant protein"})
_SENTENCE = re.compile(r"[.!?;\n]+(?=\s|$)")
_SINCE = re.compile(
    rf"\b(?:since|from|at|around|about)(?: about| around)? (?P<h>{NUM})(?:[:.](?P<m>[0-5]\d))?"
    r"(?: ?(?P<part>am|pm|this morning|in the morning|oclock|o clock|this afternoon|last night))?"
    r"(?! ?(?:min|hour|hrs?|h\b|people|degrees|c\b|f\b|g\b|kg|%))"
)
_NOW = re.compile(
    rf"\b(?:its|it is|now(?: its)?)(?: about| nearly| almost)? (?P<h>{NUM})(?:[:.](?P<m>[0-5]\d))?(?: now)?\b"
)
_AHEAD = re.compile(r"\b(?:in|within|ready in|eat in|under|another|for another) $")
_REACH = 12  # characters between foods of one breath: "the mince and the sausages"
_AFTER = 60  # characters in which the time follows the place, or the place the time


def out_warm(
    seen: Seen, items: Sequence[Item], vocab: Vocabulary, now: datetime | None
) -> tuple[OutWarm, ...]:
    """The perishable foods that were left in the warm, with the hours; None where they are not told."""
    perishable = [place for place, n in sorted(seen.where.items()) if _perishes(seen, n, vocab)]
    if not perishable:
        return ()
    named = {item.name: item.food_id for item in items}
    found: dict[str, float | None] = {}
    start = 0
    for end in [*(m.end() for m in _SENTENCE.finditer(seen.masked)), len(seen.masked)]:
        sentence = seen.masked[start:end]
        told = _told(sentence, now)
        if told is not None:
            (first, last), hours = told
            for place in _meant(seen, start, end, (start + first, start + last), perishable):
                name = seen.hits[seen.where[place]].phrase.foods[0].name
                found[name] = _longer(found[name], hours) if name in found else hours
        start = end
    return tuple(
        OutWarm(name=name, food_id=food_id, hours=hours)
        for name, hours in found.items()
        if (food_id := named.get(name)) is not None
    )


def _longer(one: float | None, other: float | None) -> float | None:
    """The longer of two times in the warm; one that is not told may be longer than a short one."""
    longest = max(one or 0.0, other or 0.0)
    return longest if longest >= CERTAIN_H or None not in (one, other) else None


def _perishes(seen: Seen, n: int, vocab: Vocabulary) -> bool:
    """Whether a food of the text that is at hand perishes."""
    hit = seen.hits[n]
    states = {f.state for f in seen.found if f.hit.start == hit.start and f.role is Role.HAVE}
    food = vocab.food(hit.phrase.foods[0])
    return bool(states) and food is not None and perishes(food, states)


def perishes(food: Food, states: Set[str | None]) -> bool:
    """Meat, fish, milk and what was cooked before; tins and cheese keep."""
    if states & {"canned", "dried"}:
        return False
    if states & {"cooked", "leftover"} or food.group == "leftover":
        return True
    if food.animal in MEATS:
        return food.part in ("protein", "liquid", "starch") and food.group not in _KEEPS
    return (food.animal == "dairy" and food.group == "dairy" and food.part == "dairy") or food.group in _CURDS


def _told(sentence: str, now: datetime | None) -> tuple[tuple[int, int], float | None] | None:
    """Where a sentence says that food was in the warm, and for how many hours; None if it does not."""
    blank = sentence
    for not_food in ("person", "tool"):
        blank = cue("warm", not_food).sub(lambda m: " " * len(m.group()), blank)
    out = cue("warm", "out").search(blank)
    hours = _hours(_unsoaked(sentence, (out or cue("warm", "timed").search(blank))), now)
    if out is None:
        out = cue("warm", "timed").search(blank)
        if out is None or hours is None or cue("warm", "cold").search(blank):
            return None
    elif hours is None and (_is_skipped(blank, out) or cue("warm", "short").search(sentence)):
        return None
    if hours is not None and cue("warm", "heat").search(sentence):
        hours *= 2  # USDA FSIS: one hour above 32 °C
    return out.span(), hours


def _unsoaked(sentence: str, out: re.Match[str] | None) -> str:
    """The sentence without how long something soaks or marinates in another comma item than `out`."""
    if out is None:
        return sentence

    def elsewhere(soak: re.Match[str]) -> str:
        between = sentence[min(soak.end(), out.end()) : max(soak.start(), out.start())]
        return " " * len(soak.group()) if re.search(r"[,;()]", between) else soak.group()

    return cue("warm", "soak").sub(elsewhere, sentence)


def _is_skipped(sentence: str, out: re.Match[str]) -> bool:
    """ "Left out the onions": not put in."""
    rest = sentence[out.end() :]
    return out.group().endswith("left out") and bool(re.match(rf" (?:the |my |those |any )?{FOOD}", rest))


def _hours(sentence: str, now: datetime | None) -> float | None:
    """The longest time that a sentence tells, in hours; None if it tells none."""
    told: list[float] = []
    present = _present(sentence, now)
    for minutes, (start, _) in durations(sentence):
        if not _AHEAD.search(sentence[:start]):
            told.append(minutes / 60)
    if cue("warm", "long").search(sentence):
        told.append(LONG_H)
    for match in _SINCE.finditer(sentence):
        if match.group().startswith(("since", "from")) or match["part"] or "taken" in sentence:
            hour = value(match["h"]) + float(match["m"] or 0) / 60
            told.append(_ago(hour, match["part"] or "", present))
    for clock, (start, _) in clocks(sentence):
        if re.search(r"\b(?:since|from)(?: about| around)? $", sentence[:start]):
            told.append(_ago(int(clock[:2]) + int(clock[3:]) / 60, "24", present))
    if not told and cue("warm", "morning").search(sentence):
        told.append((present - MORNING_H) % 24)
    if not told and cue("warm", "noon").search(sentence):
        told.append((present - NOON_H) % 24)
    return max(told, default=None)


def _ago(hour: float, part: str, present: float) -> float:
    """Hours since an hour of the day; of two that could be meant, the last one that has passed."""
    if hour > 24:
        return 0.0
    if part in ("am", "this morning", "in the morning", "24") or hour > 12:
        return (present - hour) % 24
    if part in ("pm", "this afternoon", "last night"):
        return (present - hour - 12) % 24
    return min((present - hour) % 24, (present - hour - 12) % 24)


def _present(sentence: str, now: datetime | None) -> float:
    """What time it is [h]: as said, else by the cook's clock, else an evening."""
    said = _NOW.search(sentence)
    if said:
        hour = value(said["h"]) + float(said["m"] or 0) / 60
        return hour + 12 if hour < 12 else hour
    return EVENING_H if now is None else now.hour + now.minute / 60


def _meant(seen: Seen, start: int, end: int, out: tuple[int, int], perishable: Sequence[int]) -> list[int]:
    """The foods, by their places, that were in the warm as said at `out`, in the sentence start to end.

    Those inside the words for it, else the one before it with what is named in one breath, else
    those behind it, else those of earlier sentences.
    """
    text = seen.masked
    foods = sorted(place for place in seen.where if start <= place < end)
    before = [place for place in foods if place < out[1]]
    whole = cue("warm", "everything").search(text[start:end]) or cue("warm", "power").search(
        text[slice(*out)]
    )
    if whole and not set(before) & set(perishable):
        return list(perishable)
    nearest = before[-1] if before else None
    subject = nearest is not None and not re.search(r"[,;:]", text[nearest : out[0]])
    if nearest is not None and (subject or nearest in perishable):
        return [place for place in joined(text, before[::-1]) if place in perishable]
    behind = [place for place in foods if place >= out[1]]
    earlier = sorted((place for place in seen.where if place < out[0]), reverse=True)
    for run in [_run(text, places) for places in (behind, earlier) if places]:
        if set(run) & set(perishable):
            return [place for place in run if place in perishable]
    return [place for place in perishable if start <= place < end] or list(perishable)


def joined(text: str, places: Sequence[int]) -> list[int]:
    """The nearest food before, and those that an "and" joins to it: of "eggs, mince left out" the mince."""
    run = _run(text, places)
    if len(run) > 1 and not re.search(r"\b(?:and|plus|with|n)\b|[&+]", text[run[1] : run[0]]):
        return run[:1]
    return run


def _run(text: str, places: Sequence[int]) -> list[int]:
    """The first of these places and those that follow it in one breath."""
    run = [places[0]]
    for place in places[1:]:
        between = text[min(place, run[-1]) + 1 : max(place, run[-1])]
        if len(between) > _REACH or re.search(r"[.:;\n\d]", between):
            break
        run.append(place)
    return run
