"""What the answers listen for: the words of `heard.csv`, by topic.

The words are beginnings, as in `text.clauses`: "lasagn" hears lasagne and lasagna, "rice_" not
"riced". Where the rows of a topic mean different things, the first whose words are said counts.
"""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge.answers.model import Question
from knowledge.foods.store import Store


def hears(question: Question, topic: str) -> bool:
    """True if a word of the topic is said."""
    return any(question.says(*words) for _, words in meanings(question.store, topic))


def meant(question: Question, topic: str) -> str:
    """What the first row of the topic whose words are said means, "" if none is."""
    return next((means for means, words in meanings(question.store, topic) if question.says(*words)), "")


@lru_cache(maxsize=1024)
def meanings(store: Store, topic: str) -> tuple[tuple[str, tuple[str, ...]], ...]:
    """The rows of a topic: what each means, and its words. Raises KeyError for one that has none."""
    rows = [row for row in store.table("heard") if row["topic"] == topic]
    if not rows:
        raise KeyError(topic)
    return tuple((row["means"], tuple(row["words"].split(";"))) for row in rows)


@lru_cache(maxsize=512)
def pattern(store: Store, grammar: str) -> re.Pattern[str]:
    """A regular expression in which `{topic}` is any word of that topic: " in the {vehicle} "."""
    return re.compile(re.sub(r"\{([a-z ]+)\}", lambda part: _any_of(store, part[1]), grammar))


def _any_of(store: Store, topic: str) -> str:
    words = [word for _, row in meanings(store, topic) for word in row]
    return f"(?:{'|'.join(map(re.escape, sorted(words, key=len, reverse=True)))})"
