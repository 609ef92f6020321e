"""What the answers listen for: the words of `heard.csv`, by topic.

The words are beginnings, as in `text.clauses`: "lasagn" hears lasagne and lasagna, "rice_" not
"riced". Where the rows of a topic mean different things, the code says which of them counts first.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from functools import lru_cache

from knowledge.answers.model import Question
from knowledge.foods.store import Store
from knowledge.text.clauses import says


def hears(question: Question, topic: str, *, plain: str = "") -> bool:
    """True if a word of the topic is said in the question, or in what is looked at of it."""
    return any(says(plain or question.plain, *words) for words in meanings(question.store, topic).values())


def meant(question: Question, topic: str, order: Iterable[str]) -> str:
    """The first meaning, in an order, whose words in the topic are said, "" if none is."""
    words = meanings(question.store, topic)
    return next((means for means in order if question.says(*words[means])), "")


@lru_cache(maxsize=1024)
def meanings(store: Store, topic: str) -> Mapping[str, tuple[str, ...]]:
    """The words of a topic by what they mean, "" for nothing else. Raises KeyError where it has none."""
    rows = [row for row in store.table("heard") if row["topic"] == topic]
    if not rows:
        raise KeyError(topic)
    return {row["means"]: tuple(row["words"].split(";")) for row in rows}


@lru_cache(maxsize=512)
def pattern(store: Store, grammar: str) -> re.Pattern[str]:
    """A regular expression in which `{topic}` is any word of that topic: " in the {vehicle} "."""
    return re.compile(re.sub(r"\{([a-z ]+)\}", lambda part: _any_of(store, part[1]), grammar))


def _any_of(store: Store, topic: str) -> str:
    words = [word for row in meanings(store, topic).values() for word in row]
    return f"(?:{'|'.join(map(re.escape, sorted(words, key=len, reverse=True)))})"
