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
    plugged_in: re.Pattern[str]  # it needs no hob
    in_oven: bool  # it cooks nowhere else


_PART = r"s?(?: (?:lid|seal|valve|gasket|element|door|thermostat|handle))?"
_BROKEN = (
    _PART + r" (?:(?:is|s|are|was|has|have|just|got|went|seems|looks|still|currently|all|been|totally|"
    r"completely|well and truly) )*(?:broken?|broke(?: down)?|"
    r"bust(?:ed)?|dead|dirty|knackered|kaputt?|in use|out of "
    r"(?:order|action|service)|busy|on the (?:blink|fritz)|packed(?: in| up)?|taken|occupied|full|gone|died|"
    r"dying|playing up|not working|not work|no longer works?|stopped working|conked out|given up|"
    r"faulty|defunct|buggered|shot|up the spout|a goner|had it|disconnected|cracked|missing|lost|"
    r"wont|isnt working|aint working|isnt (?:usable|connected|fixed|here)|doesnt work|dont work|"
    r"off limits|unavailable|at the (?:repair|menders)|in for repair|needs? (?:fixing|repair\w*|mending)|"
    r"(?:waiting to be|(?:being|getting)) (?:fixed|repaired|mended|replaced|serviced))"
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
        re.compile(
            rf"\b{without} (?:{names})\b|\b(?:{names}){_BROKEN}\b|"
            rf"\b(?:lid|seal|valve|gasket) (?:of|on|for) (?:the|my|our) (?:{names}){_BROKEN}\b"
        ),
        re.compile(rf"\b(?:electric|plug in) (?:{names})\b"),
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


_HOB = r"(?:hob|stove ?top|stove|burner|cooktop|gas ring|gas hob|range)s?"
_LACK = (
    r"(?:no|without an?|without the|dont have an|havent got an|havent an|not using the|not (?:in )?the|"
    r"dont want to (?:use|turn on|heat up) the|cant use the|cant use my|cant use our|too hot for the)"
)
_OVENLESS = re.compile(
    rf"\b(?:{_LACK} (?:working )?oven|oven{_BROKEN}|{_HOB} only|"
    rf"only (?:a |the |one |an? single |got a |have a |have one |use the )?{_HOB}|"
    r"no baking)\b"
)
_HOBLESS = re.compile(rf"\b(?:{_LACK} (?:working )?{_HOB}|{_HOB}{_BROKEN})\b(?! only)")


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


def offered(text: str) -> frozenset[str]:
    """The vessels that a flat text names in any way."""
    return frozenset(vessel.id for vessel in _vessels() if vessel.named.search(text))


_ONLY = re.compile(
    r"\b(?:(?:only|just) (?:have|got|own|had|use|ve got)|(?:have|got|own) only|nothing (?:but|except|apart "
    r"from)|"
    r"(?:have|got|own) (?:just|nothing but)|all (?:i|we) (?:have|own|ve got|got)(?: got)?(?: here| now)? is|"
    r"only (?=(?:a|an|one|my|the|this) ))(?: got| to)?(?P<named>[^.;!?\n,:]{0,60})"
)


def only(text: str) -> tuple[str, ...]:
    """The vessels, where there are no others tonight: "I only have a frying pan and a pot"; () if not said.

    Without a hob those for the oven are left, and what is plugged in.
    """
    if _HOBLESS.search(text):
        return tuple(v.id for v in _vessels() if v.in_oven or v.plugged_in.search(text))
    found = [
        vessel.id
        for match in _ONLY.finditer(text)
        for vessel in _vessels()
        if vessel.named.search(match["named"]) or vessel.named.search(f"in{match['named']}")
    ]
    return tuple(dict.fromkeys(found))


def ovenless(text: str) -> bool:
    """Whether a flat text says that there is no oven tonight."""
    return bool(_OVENLESS.search(text))


_HAS_OVEN = re.compile(
    r"\b(?:have|got|own|bought|there is|theres|fixed|repaired) (?:\w+ ){0,2}oven\b|"
    r"\boven (?:\w+ )?(?:works|working|is back|is fixed|is repaired|is ok)\b"
)


def has_oven(text: str) -> bool:
    """Whether a text says that there is an oven in the kitchen."""
    return bool(_HAS_OVEN.search(text)) and not _OVENLESS.search(text)


_INTO = r"(?<!not )(?<!dont )(?<!never )(?<!cant )\b(?:use|in|into|with|try|to) (?:the|my|an|a) "
_THE_OVEN = re.compile(_INTO + r"oven\b|\boven instead\b|\boven\W*$")
_THE_PAN = re.compile(_INTO + r"pan\b(?! lid)|\bpan instead\b|^\W*(?:the )?pan\W*$")


def pointed_at(text: str, *, cooking: bool) -> str | None:
    """The vessel that a change of plan points at with a shorter word: the pan, or what goes into the oven.

    While `cooking`, the pan is only where the food is.
    """
    if _THE_OVEN.search(text) and not _OVENLESS.search(text):
        return "sheet pan"
    return "saute pan" if _THE_PAN.search(text) and not cooking else None
