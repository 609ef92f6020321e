"""Accidents and illness, told from cooking by their words; what to do comes before anything else."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from knowledge.text.clauses import Clause, clauses_of, met
from knowledge.text.normalise import flatten
from knowledge.text.vocabulary import table

# Who a word of illness may be about; "my chicken is at 40 °C" is about the chicken.
_KIN = (
    "mum|mom|mother|dad|father|parent|gran|grandma|grandmother|granny|grandad|grandpa|grandfather|nan|nana"
    "|wife|husband|partner|girlfriend|boyfriend|flatmate|roommate|friend|guest|neighbour|neighbor|uncle"
    "|aunt|auntie|aunty|cousin|nephew|niece|son|daughter|kid|child|boy|girl|baby|toddler|infant|brother"
    "|sister|children|kids|colleague|teenager|teen|(?:year|yr|month|week) old|lad|mate|lodger|patient"
)
_WHO = rf"(?:i|im|ive|he|hes|she|shes|we|weve|they|theyre|someone|somebody|everyone|everybody|{_KIN})"


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

    In a pattern `{who}` stands for a person in any word, `{kin}` for the nouns among them.
    """
    plain = " ".join(re.sub(r"[^\w.°]+|\.(?!\d)", " ", flatten(text).text).split())
    signs = (told for clauses, told in _signs() if met(f" {plain} ", clauses))
    return next(signs, None) or next((told for pattern, told in _accidents() if pattern.search(plain)), None)


@lru_cache(maxsize=1)
def _signs() -> tuple[tuple[tuple[Clause, ...], Accident], ...]:
    """The signs of `accident_signs.csv`: words that together tell of an accident, in any order."""
    told = {row["id"]: Accident(row["says"], row["source"]) for row in table("accidents.csv")}
    return tuple((clauses_of(row["when"]), told[row["accident"]]) for row in table("accident_signs.csv"))


@lru_cache(maxsize=1)
def _accidents() -> tuple[tuple[re.Pattern[str], Accident], ...]:
    return tuple(
        (
            re.compile(row["pattern"].replace("{who}", _WHO).replace("{kin}", f"(?:{_KIN})")),
            Accident(row["says"], row["source"]),
        )
        for row in table("accidents.csv")
        if row["pattern"]
    )
