"""The event that a message reports, with its food, minutes and temperature."""

from __future__ import annotations

import re

from knowledge.text import fields, likely
from knowledge.text.cues import cue
from knowledge.text.events import event_minutes, event_type, temperature
from knowledge.text.model import Context, CookEvent, EventType, Intent, Mode
from knowledge.text.normalise import FOOD
from knowledge.text.seen import CUES_LIMIT, Seen

_GROUPS = frozenset(["mixed vegetables", "leafy greens", "ground meat"])


def event(seen: Seen, intent: Intent | None, context: Context) -> CookEvent:
    reading = context.mode is Mode.COOKING and cue("kind", "reading").match(seen.masked.strip())
    kind = EventType.PROBE if reading else _type(seen.masked)
    if intent is Intent.START:
        kind = EventType.STARTED
    begins = context.mode is Mode.PLANNED and bool(_GOES_IN.search(seen.masked))
    if kind is EventType.DONE_STEP and (begins or _with_clock(seen)):
        kind = EventType.STARTED
    if kind is EventType.STARTED and context.mode is not Mode.PLANNED and not _with_clock(seen):
        kind = EventType.DONE_STEP if _WENT_IN.search(seen.masked) else kind
    temp = temperature(seen.flat.text[:CUES_LIMIT]) if kind is EventType.PROBE else None
    text = seen.flat.text[:CUES_LIMIT]
    return CookEvent(
        type=kind,
        minutes=event_minutes(text, kind),
        item=_event_item(seen),
        temp_c=temp,
        goes_in=bool(_GOES_IN.search(seen.masked) or _WENT_IN.search(seen.masked)),
    )


def _type(masked: str) -> EventType:
    """The likeliest type by rules and words; no temperature is read where none is told."""
    ruled = event_type(masked)
    chances = dict(likely.event_types(masked, ruled))
    if temperature(masked) is None:
        del chances[EventType.PROBE]
    return max(chances, key=lambda one: chances[one])


_WENT_IN = re.compile(
    rf"{FOOD}s? (?:have |has |just |all |now )*(?:went|gone|is|are|went straight) (?:in|on)\b|"
    rf"\b(?:put|popped|shoved|chucked|bunged|slid|stuck|threw|tipped|dropped) "
    rf"(?:the |my |all the )?{FOOD}s? (?:in|on)\b"
)
_GOES_IN = re.compile(
    rf"{FOOD}s? (?:\w+ )?(?:in|on)\b(?! (?:a|the|my)? ?(?:plate|board|rack|table|fridge|side|counter|bowl))"
)


_MINUTES_PAST = re.compile(
    r"\bat (?:about |around )?(?:five|ten|twenty|quarter|a quarter|half|\d{1,2}) (?:past|to)\b"
)


def _with_clock(seen: Seen) -> bool:
    text = seen.flat.text[:CUES_LIMIT]
    return bool(list(fields.clocks(text)) or _MINUTES_PAST.search(text)) and bool(
        re.search(rf"{FOOD}s? (?:\w+ )?(?:in|on)\b", seen.masked)
    )


def _event_item(seen: Seen) -> str | None:
    names = []
    for hit in seen.hits:
        name = hit.phrase.foods[0].name
        if name not in _GROUPS and name not in names:
            names.append(name)
    if not names:
        return None
    if len(names) > 1 and re.search(rf"{FOOD}s?(?:,| and|,? &| n|) {FOOD}", seen.masked):
        return None
    return names[0]
