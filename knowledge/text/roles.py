"""What part a food plays in a message: at hand, refused or missing, a slip of the tongue, a dish aimed at.

Works on masked text, in which each food is one sign (`FOOD`), so that a pattern
reads like the sentence it means: "no F", "anything but F", "F no wait F".
"""

from __future__ import annotations

import re
from enum import Enum

from knowledge.text.normalise import FOOD as F

_FILL = (
    r"(?:(?:any|the|more|fresh|of|a|an|my|those|that|eating|having|much|no|tin|tinned|other|use|using|"
    r"to use|and|it with|them with|with|even) ){0,3}"
)
_LIST = rf"{F}(?:(?:,? (?:or|nor|and|&) |/|, (?=(?:{F}, )*(?:or|nor) )){_FILL}{F})*"
# "Dinner out of parsnips", "made out of": what it is made of, not what is missing.
_NOT_MADE = "".join(
    f"(?<!{word} )" for word in ("dinner", "meal", "tea", "supper", "lunch", "thing", "made", "make")
)
_CUES = (
    r"no (?:fan|lover)s? of|no longer (?:got|have|has|any)|no|without|never|zero|"
    r"not (?:keen on|a fan of|fond of|into|big on|too keen on|any|got)|"
    r"(?:dont|doesnt|didnt|do not|does not|wont|cant|cannot|can not|havent|hasnt|never|not|"
    r"wouldnt|isnt|arent|aint) "
    r"(?:actually |really )?(?:have|has|had|want|like|likes|eat|eats|do|fancy|got|get|stand|touch|"
    r"need|go near|bear|buy|bought|any|enough|tolerate|digest|stomach|own|allowed|eating|use|keep|"
    r"add|include|give me|feel like)"
    rf"(?: them| it| this)?|{_NOT_MADE}(?:all )?out of|r[au]n out of|hates?|hated|refuses?(?: to eat)?|"
    r"dislikes?|detests?|anything but|anything except|everything but|except(?: for)?|"
    r"(?:deathly |very |badly )?(?:allergic|intolerant|sensitive) to|allergy to|avoid(?:ing|s)?|"
    r"skip|leave out|sick of|fed up (?:of|with)|tired of|bored (?:of|with)|(?:no )?scratch|scrap|"
    r"forget|lacking|missing|minus|"
    r"instead of|but not|none of|hold the|keep away from|stay away from|lose the|bar|nothing with|"
    r"ohne|kein(?:e|en)?|senza|pas de|"
    r"not|off|ditch|nix|sans|free from|used up|finished|binned|threw out|chucked|sin|nahi|bina|"
    r"(?:stop|dont|never|no more|quit) (?:ever )?(?:suggest(?:ing)?|offer(?:ing)?|propos(?:e|ing)|"
    r"recommend(?:ing)?|giv(?:e|ing) me|show(?:ing)? me|includ(?:e|ing)|plan(?:ning)?)"
)
_REFUSED = re.compile(rf"(?<![^\W\d_])(?:{_CUES}) {_FILL}({_LIST})")
_REFUSED_AFTER = re.compile(
    rf"({F})s? (?:(?:is|are|s|has|have|was|were|went|all) ){{0,2}}(?:off the menu|off\b(?! the\b)|"
    rf"ran out|run out|gone\b(?! in)|went off|bad\b|mouldy|moldy|rotten|past it|used up|missing|"
    rf"aside\b|not (?:allowed|an option|available|here|in)|nahi|allergy|allergic|finished|no good|"
    rf"out\b(?=\W*(?:$|[,.;])))"
)
_NOT_REFUSED = re.compile(
    r"no (?:idea|problem|rush|wait|just|sorry|actually|need|clue|"
    r"longer(?! (?:got|have|has|any))|matter|hurry|worries|"
    r"reason|time|,)|not (?:sure|much|only|just)"
)
_SLIP = re.compile(
    rf"({F})(?: \w+)?,? (?:no wait|wait no|no hang on|hang on no|hang on|no hold on|hold on|nah wait|"
    rf"wait actually|strike that|no sorry|sorry no|sorry i mean(?:t)?|sorry|i "
    rf"mean(?:t)?|no i mean|no actually|actually no|scratch that|correction|oops|i meant to say|"
    rf"nope|or rather|make that|no its|no they are)[,. ]+"
    rf"(?:[^.{F}]{{0,24}})({F})"
)
_NEVER = re.compile(
    rf"({F})s?\?+ ?(?:never\b|no way\b|no thanks?\b|not again\b|not for (?:me|us)\b|"
    r"hate (?:it|them)\b|yuck\b)"
)
_SLIP_ASKED = re.compile(rf"({F})\?+ ?(?:no|nope|nah)[ ,.]")


_THOUGHT = re.compile(
    rf"\bthought (?:i|we|there) (?:had|was|were|got) {_FILL}({F})[^.;\n]{{0,20}}\b(?:but|nope|no)\b"
)
_NO_DISH = re.compile(
    rf"\b(?:no|not|without)(?: [^\W\d_]+){{1,3}} ?:(?=[^.;\n{F}]{{0,12}}(?:\d|{F}))"
)  # "no batter: 6 sausages": the no ends at the colon
_MEASURE = re.compile(rf"({F}) {{1,2}}worth of")


class Role(Enum):
    """The part a food plays."""

    HAVE = "have"
    REFUSED = "refused"
    SLIP = "slip"
    AIM = "aim"


def mask(text: str, spans: list[tuple[int, int]]) -> tuple[str, dict[int, int]]:
    """Text with each food as one sign, and the index of the food at each sign."""
    out: list[str] = []
    where: dict[int, int] = {}
    at = length = 0
    for i, (start, end) in enumerate(spans):
        piece = text[at:start]
        out.append(piece)
        length += len(piece)
        where[length] = i
        out.append(F)
        length += 1
        at = end
    out.append(text[at:])
    return "".join(out), where


def roles(masked: str, where: dict[int, int]) -> dict[int, Role]:
    """The role of each food, by its index; those not named are at hand."""
    masked = _NO_DISH.sub(lambda match: " " * len(match.group()), masked)
    found: dict[int, Role] = {}
    for pattern in (_SLIP, _SLIP_ASKED):
        for match in pattern.finditer(masked):
            found[where[match.start(1)]] = Role.SLIP
    for match in (*_THOUGHT.finditer(masked), *_NEVER.finditer(masked)):
        found.setdefault(where[match.start(1)], Role.REFUSED)
    for match in _MEASURE.finditer(masked):
        found[where[match.start(1)]] = Role.AIM
    for match in _REFUSED.finditer(masked):
        if _NOT_REFUSED.match(masked, match.start()):
            continue
        for at in range(match.start(1), match.end(1)):
            if at in where:
                found.setdefault(where[at], Role.REFUSED)
    for match in _REFUSED_AFTER.finditer(masked):
        found.setdefault(where[match.start(1)], Role.REFUSED)
    return found
