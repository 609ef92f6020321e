"""Accidents and illness, told from cooking by their words; what to do comes before anything else.

`accidents.csv` holds what to do first and the phrases that tell of it, `accident_signs.csv` the
signs that tell of the same in any order of words.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from knowledge.tables import Row, rows
from knowledge.text.clauses import Clause, clauses_of, met
from knowledge.text.normalise import flatten

# "Nobody ever got sick of it" tells of nobody who is ill.
NOBODY_ILL = re.compile(
    r"(?<!\w)(?:nobody|no one|noone|none of (?:us|them|you)|not one of us|(?:we|they|i|once|and) never)"
    r"(?: (?!but\b)\w+){0,4}? (?:sick|ill|poisoned|unwell|poisoning|died|dead|harm|harmed|hurt)(?!\w)"
)
_NO_WORD = re.compile(r"[^\w.°]+|\.(?!\d)")  # the point of "39.5" belongs to a word


@dataclass(frozen=True, slots=True)
class Accident:
    """What to do first, and the id of the source whose advice it follows."""

    says: str
    source: str


def first_aid(text: str) -> str | None:
    """What to do first about the accident or illness that a message tells of; None when it tells of none."""
    found = heard(text)
    return found.says if found is not None else None


def heard(text: str) -> Accident | None:
    """The accident or illness that a message tells of: the first signs that it shows, else the first
    row of `accidents.csv` that fits.
    """
    plain = NOBODY_ILL.sub(" ", " ".join(_NO_WORD.sub(" ", flatten(text).text).split()))
    by_signs = (told for clauses, told in _signs() if met(f" {plain} ", clauses))
    by_phrase = (told for pattern, told in _phrases() if pattern.search(plain))
    return next(by_signs, None) or next(by_phrase, None)


@lru_cache(maxsize=1)
def _signs() -> tuple[tuple[tuple[Clause, ...], Accident], ...]:
    """The signs of `accident_signs.csv`: words that together tell of an accident, in any order."""
    told = {row["id"]: _told(row) for row in rows("accidents")}
    return tuple((clauses_of(row["when"]), told[row["accident"]]) for row in rows("accident_signs"))


@lru_cache(maxsize=1)
def _phrases() -> tuple[tuple[re.Pattern[str], Accident], ...]:
    """The patterns of `accidents.csv`.

    In a pattern `{who}` stands for a person in any word of `words_people.csv`, `{kin}` for the
    nouns among them: "my chicken is at 40 °C" is about the chicken, "my son is at 40 °C" is not.
    """
    kin = _one_of(row["word"] for row in rows("words_people") if row["kind"] == "noun")
    who = _one_of(row["word"] for row in rows("words_people"))
    return tuple(
        (re.compile(row["pattern"].replace("{who}", who).replace("{kin}", kin)), _told(row))
        for row in rows("accidents")
        if row["pattern"]
    )


def _told(row: Row) -> Accident:
    return Accident(row["says"], row["source"])


def _one_of(words: Iterable[str]) -> str:
    return f"(?:{'|'.join(sorted(words, key=len, reverse=True))})"
