"""The vessel a message names, and those it rules out. By patterns over flat text."""

from __future__ import annotations

import re
from dataclasses import dataclass

from knowledge.text.fields import Span


@dataclass(frozen=True, slots=True)
class VesselWords:
    """Patterns of one vessel's names."""

    id: str
    named: re.Pattern[str]
    gone: re.Pattern[str]


_BROKEN = (
    r"(?:(?:is|s|are|was|has|just|got|went|seems|looks|still|currently|all) )*(?:broken?|broke|"
    r"bust(?:ed)?|dead|dirty|knackered|kaput|in use|out of "
    r"(?:order|action)|on the blink|packed|taken|occupied|full|gone|died|playing up|not working|"
    r"wont|isnt working|doesnt work|off limits|unavailable|being (?:fixed|repaired))"
)


def _vessel(vessel: str, names: str) -> VesselWords:
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
    )


_VESSELS = (
    _vessel(
        "sheet pan",
        r"sheet ?pans?|sheet tray|baking (?:tray|sheet|tin|pan)s?|roasting (?:tin|tray|pan|"
        r"dish)s?|(?:oven|one|single|big|the|a|on) tray|tray ?bake|"
        r"(?:back)?blech|"
        r"cookie sheet|everything in the oven|all in the oven|(?:in|into) the oven(?: together| "
        r"in one go)|oven only(?! goes| does| reaches| heats| gets)|only (?:an|the) oven|"
        r"(?:half|quarter) sheet",
    ),
    _vessel(
        "saute pan",
        r"saute pans?|(?:brat)?pfanne|sarten|poele|padella|"
        r"frying pan|fry ?pan|skillet|wok|kadai|kadhai|karahi|cast iron(?! pot)|deep "
        r"pan|pan with (?:a )?lid|shallow pan",
    ),
    _vessel(
        "lidded pot",
        r"lidded pot|pot with (?:a |the )?lid|lid pot|dutch oven|casserole (?:dish|pot)|(?:in|my|"
        r"the|use|one|big|single|a) casserole|stock ?pot|soup pot|stew ?pot|saucepan|sauce pan|"
        r"kochtopf|(?:im|einem|ein|der|den) topf|marmite|"
        r"olla(?! (?:a presion|express|de presion))|cocotte|"
        r"potjie pot|(?:one|the|a|my|big|large|single|in) pot(?! of| roast| noodle| pie| "
        r"luck|s)|french oven|handi|tagine pot|cast iron pot|or (?:a )?pot",
    ),
    _vessel(
        "pressure cooker",
        r"schnellkochtopf|olla (?:a presion|express|de presion)|"
        r"pressure ?cookers?|pressure pot|(?<!slow )(?<!rice )(?<!gas )(?<!electric )cooker "
        r"(?:hai|mein|me|only|on|please|pls|ready)|"
        r"(?:in|use|using) (?:the |a |my )?cooker|\d whistles?|whistles|p cooker|electric pressure cooker",
    ),
)
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
    for vessel in _VESSELS:
        gone = list(vessel.gone.finditer(text))
        if vessel.id == "sheet pan":
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
