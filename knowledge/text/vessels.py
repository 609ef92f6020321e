"""The vessel a message names, and those it rules out. By patterns over flat text."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from knowledge.text.fields import Span
from knowledge.text.vocabulary import table


@dataclass(frozen=True, slots=True)
class VesselWords:
    """Patterns of one vessel's names."""

    id: str
    named: re.Pattern[str]
    gone: re.Pattern[str]
    in_oven: bool  # it cooks nowhere else


_BROKEN = (
    r"(?:(?:is|s|are|was|has|just|got|went|seems|looks|still|currently|all) )*(?:broken?|broke|"
    r"bust(?:ed)?|dead|dirty|knackered|kaput|in use|out of "
    r"(?:order|action)|on the blink|packed|taken|occupied|full|gone|died|playing up|not working|"
    r"wont|isnt working|doesnt work|off limits|unavailable|being (?:fixed|repaired))"
)


def _vessel(vessel: str, names: str, *, in_oven: bool) -> VesselWords:
    without = (
        r"(?:no|without(?: the| an?| my)?|(?:dont|do not|havent|doesnt|didnt) (?:have|got|own|"
        r"want|use|fancy|wanna use|want to use)(?: the| an?| any| my)?|"
        r"not (?:in )?(?:the|an?)|cant use (?:the|my)|avoid(?:ing)? (?:the|an?)|hate (?:the|my)|"
        r"never the|except (?:the)?|minus (?:the)?|lost (?:the|my))"
    )
    return VesselWords(
        vessel,
        re.compile(rf"\b(?:{names})\b"),
        re.compile(rf"\b{without} (?:{names})\b|\b(?:{names}) {_BROKEN}\b"),
        in_oven,
    )


@lru_cache(maxsize=1)
def _vessels() -> tuple[VesselWords, ...]:
    """Those of `vessels.csv`, by the names in its column `said`, in the order in which they are tried."""
    rows = sorted(table("vessels.csv"), key=lambda row: (-len(row["said"].split("oven")), row["id"]))
    return tuple(_vessel(row["id"], row["said"], in_oven=row["id"] in in_ovens()) for row in rows)


@lru_cache(maxsize=1)
def in_ovens() -> frozenset[str]:
    """The vessels that cook nowhere but in an oven."""
    heats: dict[str, set[str]] = {}
    for row in table("methods.csv"):
        heats.setdefault(row["vessel"], set()).add(row["heat"])
    return frozenset(vessel for vessel, found in heats.items() if found == {"oven"})


_OVENLESS = re.compile(
    r"\b(?:(?:no|without an?|without the|dont have an|havent got an|not using the|not (?:in )?the|"
    r"dont want to "
    r"(?:use|turn on|heat up) the|"
    r"cant use the|too hot for the) (?:working )?oven|oven "
    + _BROKEN
    + r"|(?:hob|stove ?top|stove|burner|cooktop) only|"
    r"only (?:a |the |one |got a )?(?:hob|stove|stovetop|burner|gas ring)|"
    r"no baking)\b"
)


def vessels(text: str) -> tuple[str | None, tuple[str, ...], list[Span]]:
    """The vessel named (None if none or several are on offer), those ruled out, and where."""
    wanted: list[str] = []
    ruled_out: list[str] = []
    used: list[Span] = []
    for vessel in _vessels():
        gone = list(vessel.gone.finditer(text))
        if vessel.in_oven:
            gone += list(_OVENLESS.finditer(text))
        if gone:
            ruled_out.append(vessel.id)
            used += [m.span() for m in gone]
        for match in vessel.named.finditer(text):
            if not any(a < match.end() and match.start() < b for a, b in used):
                wanted.append(vessel.id)
                used.append(match.span())
    chosen = dict.fromkeys(wanted)
    return (next(iter(chosen)) if len(chosen) == 1 else None), tuple(ruled_out), used


_HAS_OVEN = re.compile(
    r"\b(?:have|got|own|bought|there is|theres|fixed|repaired) (?:\w+ ){0,2}oven\b|"
    r"\boven (?:\w+ )?(?:works|working|is back|is fixed|is repaired|is ok)\b"
)


def has_oven(text: str) -> bool:
    """Whether a text says that there is an oven in the kitchen."""
    return bool(_HAS_OVEN.search(text)) and not _OVENLESS.search(text)


_THE_OVEN = re.compile(r"\b(?:use|in|into|with|try|to) (?:the|my|an|a) oven\b|\boven instead\b|\boven\W*$")


def names_the_oven(text: str) -> bool:
    """Whether a change of plan is for the oven: what goes in there is a sheet pan."""
    return bool(_THE_OVEN.search(text)) and not _OVENLESS.search(text)
