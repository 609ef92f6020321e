"""The allergens that a message tells of, by another route than its lists (`text.barred`).

Rough on purpose: it knows nothing of foods, tokens or grammar, and so does not fail with them.
"""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge.text.barred import plain_words
from knowledge.text.normalise import singular

_TOLD = re.compile(
    r"(?<!not )(?<!no )(?<!no longer )(?<!isnt )(?<!arent )(?<!never )\b"
    r"(?:allerg(?:y|ies|ic|ens?)|anaphyla\w+|intoleran(?:t|ces?))\b(?P<rest>[^.!?\n]*)"
)
_AT_HOME = re.compile(r"^(?: (?:in the (?:house|family|group)|here|at the table|tonight|we have|we ve got))+")
_CLAUSE = re.compile(
    r"\d|\b(?:have|has|had|got|use|using|want|like|love|make|cook|cooking|in the|so|but|please|here|theres|"
    r"there|left|from|for|who|he|she|we|i|ive|im|they|my|our|can|could|what|how|instead|swap|make|give)\b"
)


def allergens_told(text: str) -> tuple[str, ...]:
    """The allergens whose plain names stand beside a word for allergy in a flat text."""
    found: list[str] = []
    for match in _TOLD.finditer(text):
        rest = _CLAUSE.split(_AT_HOME.sub(" ", match["rest"]), maxsplit=1)[0]
        before = _beside().search(text[: match.start()])
        for said in _plain_pattern().finditer(f"{rest}\n{before.group() if before else ''}"):
            words = tuple(singular(word) for word in said.group().split())
            plain = plain_words().get(words) or plain_words().get((*words[:-1], said.group().split()[-1]))
            found += plain.allergens if plain else ()
    return tuple(dict.fromkeys(found))


_OTHER_MILK = "".join(
    f"(?<!{word} )" for word in ("coconut", "oat", "rice", "peanut", "almond", "soy", "nut")
)


@lru_cache(maxsize=1)
def _plain_pattern() -> re.Pattern[str]:
    names = sorted((" ".join(words) for words in plain_words()), key=len, reverse=True)
    return re.compile(rf"\b{_OTHER_MILK}(?:{'|'.join(names)})(?:e?s)?\b(?! (?:sauce|noodle|free)s?\b)")


@lru_cache(maxsize=1)
def _beside() -> re.Pattern[str]:
    """The plain names that end where the word for allergy begins: "milk, egg and nut " allergy."""
    name = rf"(?:{_plain_pattern().pattern})"
    return re.compile(rf"{name}(?:(?: ?[,&/+] ?| and | or |, and ){name})* $")
