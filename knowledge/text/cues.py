"""Patterns by which sentences are told apart, from `words_cues.csv`.

One alternative a row, in the order in which they are tried: topic, value, pattern.
Rows of one topic and value that follow each other make one pattern. A pattern is a
regular expression over flat or masked text in which `{food}` is one food, `{num}` a
number, and any other `{name}` the fragment of that name (topic "fragment").
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import groupby

from knowledge.text.fields import NUM
from knowledge.text.normalise import FOOD
from knowledge.text.vocabulary import table

_NAME = re.compile(r"\{([a-z]+)\}")


@lru_cache(maxsize=1)
def _rows() -> tuple[tuple[str, str, str], ...]:
    rows = [(row["topic"], row["value"], row["pattern"]) for row in table("words_cues.csv")]
    parts = {"food": FOOD, "num": NUM}
    for topic, name, pattern in rows:
        if topic == "fragment":
            parts[name] = pattern

    def spelled(pattern: str) -> str:
        while _NAME.search(pattern):
            pattern = _NAME.sub(lambda m: parts[m.group(1)], pattern)
        return pattern

    return tuple((topic, value, spelled(pattern)) for topic, value, pattern in rows if topic != "fragment")


@lru_cache(maxsize=16)
def cues(topic: str) -> tuple[tuple[str, re.Pattern[str]], ...]:
    """The patterns of a topic with their values, in the order in which they are tried."""
    groups = groupby((row for row in _rows() if row[0] == topic), key=lambda row: row[1])
    return tuple((value, re.compile("|".join(row[2] for row in group))) for value, group in groups)


@lru_cache(maxsize=4)
def separate_cues(topic: str) -> tuple[tuple[str, re.Pattern[str]], ...]:
    """Like `cues`, each row a pattern of its own: for those that name their groups."""
    return tuple((value, re.compile(pattern)) for known, value, pattern in _rows() if known == topic)


@lru_cache(maxsize=32)
def cue(topic: str, value: str) -> re.Pattern[str]:
    """The one pattern of a topic and value."""
    return re.compile("|".join(row[2] for row in _rows() if row[:2] == (topic, value)))
