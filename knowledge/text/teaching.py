"""What an unknown food is like, in the cook's words: "it's a root, like parsnip"."""

from __future__ import annotations

import re

from knowledge.text.normalise import FOOD
from knowledge.text.seen import Seen
from knowledge.text.vocabulary import words

_LIKE = re.compile(
    rf"^\W*(?:(?P<name>[^{FOOD}.,;!?]{{0,30}}?) )?(?:is|s|are|its|theyre|thats|it|think of it as)?"
    rf"(?: just| basically| kind of)?(?: an?| the)?(?: [\w ]{{1,24}}?)?,? ?"
    rf"(?:like|similar to|same as|cook it like|treat it (?:like|as)|sort of) (?:an? |the )?{FOOD}s?\W*$"
)
_FILLERS = frozenset([
    "it", "its", "is", "they", "theyre", "thats", "that", "a", "an", "the", "just", "this",
    "root", "leaf", "leafy", "green", "bean", "vegetable", "veg", "tuber", "fish", "meat", "grain", "fruit",
    "sort", "kind", "type", "of",
])  # fmt: skip


def teaches(seen: Seen) -> tuple[str, str] | None:
    """What an unknown food is like: "it's a root, like parsnip", "samphire is like asparagus"."""
    match = _LIKE.match(seen.masked)
    if match is None or len(seen.hits) > 2:
        return None
    said = [w for w in (match.group("name") or "").split() if w not in _FILLERS]
    if said and all(w in words().common for w in said):
        return None  # "I would like parsnip"
    return " ".join(said), seen.hits[-1].phrase.foods[0].name
