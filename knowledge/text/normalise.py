"""One plain form for whatever a cook's keyboard produces.

`flatten` turns a message into lower-case text without accents, apostrophes or
curly signs, in which hyphenated words are two words, vulgar fractions are
written out and food emoji are words. It keeps, for each character, where it
came from, so that a reply can repeat the cook's own words. The form under which food
names are looked up is `names.key`.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass

from knowledge.names import QUOTES, key, letters, singular

__all__ = ["FOOD", "LIMIT", "Flat", "flatten", "key", "singular"]

LIMIT = 5200  # characters of a message that are read; a longer one is cut there

FOOD = "\ue000"  # stands for one food in masked text; private-use characters never pass `flatten`

_DASHES = "-\u2010\u2011\u2012\u2013\u2014\u2212"
_BULLETS = "*\u2022\u25cf\u25aa\u25e6\u2023\u00b7\u25ab\u2043"

_LONG_NUMBER = re.compile(r"\d{10,}")  # no amount has ten digits
_FACES = re.compile(
    r"(?:(?<=\s)|(?<=[a-z0-9)!?.,])|^)(?:[:;=]['’]?-[()\[\]dpo/\\|*3]+|[:;=]['’]?[)\]]+|:['’]?[(\[]+(?!\w)|"
    r"(?<=\s)[:;][(\[]+|[:;=x][dp]\b|(?<=\s):[/\\|]+(?=[\s,.!]|$)|\^[_.]?\^|<3(?=\s*(?:$|[.,!\n])))",
    re.IGNORECASE,
)  # ":(" and the like are no brackets
_ABOUT = re.compile(r"~(?=\s*\d)|\b(?:ca|approx|abt)\.(?=\s*\d)|≈", re.IGNORECASE)  # "~400 g", "ca. 2 kg"


@dataclass(frozen=True, slots=True)
class Flat:
    """A message in plain form. `origin[i]` is the index in `raw` of the character `text[i]`."""

    raw: str
    text: str
    origin: tuple[int, ...] | range

    def said(self, start: int, end: int) -> str:
        """The cook's own words for a stretch of the flat text."""
        if start >= end or start >= len(self.origin):
            return ""
        stop = self.origin[end] if end < len(self.origin) else len(self.raw)
        return self.raw[self.origin[start] : max(stop, self.origin[start] + 1)].strip(" \t\n,.;:!?()")


def flatten(raw: str, emoji: Mapping[str, str] | None = None) -> Flat:
    """Plain form of a message; `emoji` maps a food emoji to the words it stands for."""
    raw = _LONG_NUMBER.sub(" ", raw[:LIMIT])
    plain = _ABOUT.sub(_spaces, _FACES.sub(_spaces, raw))
    if raw.isascii():
        text, origin = plain.lower(), range(len(raw))
        chars: list[tuple[str, int]] | None = None
        if "'" not in text and "-" not in text and "`" not in text and "w/" not in text and "\r" not in text:
            return Flat(raw, _blank_controls(text), origin)
    chars = _spelled(plain, emoji or {})
    out: list[str] = []
    where: list[int] = []
    for i, (char, at) in enumerate(chars):
        before = chars[i - 1][0] if i else " "
        after = chars[i + 1][0] if i + 1 < len(chars) else " "
        if char == "'":
            if before.isalnum() and after.isalpha():
                continue  # za'atar, don't, lamb's
            char = " "
        elif char == "-" and before.isalnum() and after.isalpha():
            char = " "  # black-eyed, 8-ounce
        elif char == "/" and before == "w" and (i < 2 or not chars[i - 2][0].isalpha()):
            out.extend("ith ")
            where.extend([at] * 4)
            continue
        out.append(char)
        where.append(at)
    return Flat(raw, _blank_controls("".join(out[:LIMIT])), tuple(where[:LIMIT]))


def _spaces(match: re.Match[str]) -> str:
    """As many spaces, so that every character keeps its place."""
    return " " * len(match.group())


def _blank_controls(text: str) -> str:
    return re.sub(r"[\x00-\x09\x0b-\x1f\x7f]", " ", text)


def _spelled(raw: str, emoji: Mapping[str, str]) -> list[tuple[str, int]]:
    """Each character as plain ones, with its place in `raw`."""
    chars: list[tuple[str, int]] = []

    def put(text: str, at: int) -> None:
        chars.extend((c, at) for c in text)

    i = 0
    while i < len(raw) and len(chars) < LIMIT:
        char = raw[i]
        if char in emoji:
            run, j = 1, i + 1
            while j < len(raw) and (raw[j] == char or unicodedata.category(raw[j]) in ("Mn", "Cf")):
                run += raw[j] == char
                j += 1
            put(f" {run} {emoji[char]} " if run > 1 else f" {emoji[char]} ", i)
            i = j
            continue
        if char < "\x80":
            put(char.lower(), i)
        elif char in QUOTES:
            put("'", i)
        elif char in _DASHES:
            put("-", i)
        elif char in _BULLETS:
            put("*", i)
        elif char in "\u201c\u201d\u00ab\u00bb\u201e":
            put('"', i)
        elif char == "\u2026":
            put("...", i)
        elif char in "\u00d7\u2715\u2716":
            put("x", i)
        else:
            put(letters(char), i)
        i += 1
    return chars
