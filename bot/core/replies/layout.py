"""How figures and lists are written: times, amounts, temperatures, in the cook's own units.

Rounded here and nowhere else, and never finer than a cook can use.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import UTC, datetime, timedelta, timezone

MM_PER_INCH = 25.4
SAID_MAX = 40  # characters of a cook's own words that are repeated back


def paragraphs(*parts: str) -> str:
    """The parts that say something, a blank line between them."""
    return "\n\n".join(part for part in parts if part)


def lines(parts: Iterable[str]) -> str:
    """One a line, empty ones left out."""
    return "\n".join(part for part in parts if part)


def listed(names: Sequence[str], word: str = "and") -> str:
    """ "leek", "leek and rice", "leek, rice and lime"."""
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} {word} {names[-1]}"


def sentence(text: str) -> str:
    """The text with a capital in front and a full stop behind."""
    text = text.strip()
    if not text:
        return ""
    text = text[0].upper() + text[1:]
    return text if text[-1] in ".!?:" else text + "."


def said(words: str) -> str:
    """A cook's own words, repeated back: on one line, shortened, in quotation marks."""
    words = " ".join("".join(c if c.isprintable() else " " for c in words).split())
    if len(words) > SAID_MAX:
        words = words[: SAID_MAX - 1].rstrip() + "…"
    return f"“{words}”"


def whole_minutes(seconds: float) -> int:
    """Minutes as said to a cook: whole up to 30, in fives beyond."""
    minutes = seconds / 60
    return round(minutes) if abs(minutes) <= 30 else 5 * round(minutes / 5)


def exact_minutes(seconds: float) -> int:
    """Minutes where a step hangs on them: always whole."""
    return round(seconds / 60)


def span(minutes: int) -> str:
    """ "35 min", "1 h 20 min"."""
    if minutes < 90:
        return f"{minutes} min"
    hours, rest = divmod(minutes, 60)
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def duration(seconds: float) -> str:
    """A length of time in words: "35 min", "1 h 20 min", at least "1 min"."""
    return span(max(1, whole_minutes(seconds)))


def number(value: float) -> str:
    """ "4", "2.5"."""
    return f"{value:.1f}".rstrip("0").rstrip(".")


def local(at: datetime, utc_offset_min: int | None) -> datetime:
    """A point in time as this cook's clock shows it; None stands for the machine's own zone."""
    if utc_offset_min is None:
        return at.astimezone()
    return at.astimezone(timezone(timedelta(minutes=utc_offset_min)))


def clock(at: datetime, utc_offset_min: int | None) -> str:
    """The time of day as a clock shows it then: "18:05". A second of grace, so that 18:59:59.9 is 19:00."""
    return local((at + timedelta(seconds=1)).astimezone(UTC), utc_offset_min).strftime("%H:%M")
