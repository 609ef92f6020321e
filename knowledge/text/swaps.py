"""One food for another, in the many ways cooks say it. Patterns over masked text.

Each pattern names its foods `a` (comes in) and `b` (leaves); the first that fits wins.
"""

from __future__ import annotations

import re
from dataclasses import dataclass

from knowledge.text.normalise import FOOD as F

_G = r"(?:the|those|these|my|some|any|a|an|all the|that|fresh|frozen|leftover|raw|dried|dry|canned|tinned|cooked|more|of|ones?|tin|jar|bag|packet|pack|bit|plain|normal|regular|usual|two|three|four|2|3|4|6|half|\d+ ?(?:g|kg|oz|lb|ml)?)"
_A = rf"(?:{_G} ){{0,4}}(?P<a>{F})"
_B = rf"(?:{_G} ){{0,4}}(?P<b>{F})"
_GAP = r"[^.;\n]{0,40}?"
_OFF = (
    r"(?:no(?: more)?|dont have(?: any| the)?|havent got(?: any)?|do not have|have no|got no|(?:all )?out of|r[au]n out of|forgot (?:to buy|to get)?|couldnt (?:find|get)|cant (?:find|get)|"
    r"without|missing|didnt (?:get|buy|have)|not got(?: any)?|used up|lost|dropped|burnt|there(?:s| is| isnt| are| arent)? (?:no|any)|hates?|refuses?|wont (?:eat|touch)|doesnt (?:like|eat)|dont (?:like|eat|want|fancy)|"
    r"cant (?:eat|have|stand)|sick of|allergic to|shop had no|store had no|store was out of|shop was out of|sold out of|fed up (?:of|with))"
)
_ASK = (
    r"(?:can i (?:use|do|put|have|swap in)|could i (?:use|do)|should i use|use|using|what about|how about|whatabout|is|are|but (?:i|we)(?:ve)? (?:have|got)|but have|but got|i(?:ve)? (?:have|got|do have)|only|will|would|does|do|maybe|"
    r"we have|we(?:ve)? got|instead|so|try|i(?:ll| will)? use|chuck in|found|there(?:s| is| are)|bought|got|have|swap(?:ped)? (?:it )?(?:for|to|with)|make it|go with|grabbed|took|they had|only had|just)"
)
_INSTEAD = r"(?:instead of|in place of|rather than|in lieu of|in stead of|i\.?s\.?o\.?|as a (?:sub|substitute|replacement) for|to replace|replacing|in for)"
_LEAVE = r"(?:replac(?:e|ing)|substitut(?:e|ing)|swap(?:ping)?(?: out)?|switch(?:ing)?(?: out)?|exchang(?:e|ing)|chang(?:e|ing)(?: out)?|trad(?:e|ing)|ditch|drop|lose|pull)"
_LINK = r"(?:with|for|w|by|to|into|->|=>|>|and use|and put in|out for|against|over to|in favou?r of)"

_STATES = r"(?:fresh|frozen|tinned|canned|dried|dry|raw|cooked|leftover|tin|can|jar|tins|cans|uncooked)"
_SAME = re.compile(
    rf"(?P<a>{F})[^{F}]*\b{_INSTEAD} (?:the )?{_STATES}\b[^{F}]*$|"
    rf"\b{_LEAVE} (?:the )?{_STATES} (?:ones? )?(?:with|for|to) {_GAP}(?P<a2>{F})[^{F}]*$"
)

_PATTERNS: tuple[re.Pattern[str], ...] = tuple(
    re.compile(pattern)
    for pattern in (
        rf"\b(?:sub|subbing|subs)(?: in)? {_A}{_GAP}\b(?:for|in for|instead of) {_B}",
        rf"\bsub(?:bing)? (?:out )?{_B}{_GAP}(?:with|,|by|->|to|;|i have|i've) ?{_GAP}{_A}",
        rf"\bsub(?:bing)? out {_B}",
        rf"\b(?:can|could|will|would|may|should) {_A} (?:be used )?(?:replace|stand in for|sub for|sub in for|take the place of|substitute for|do for|pass for|go in for|double for) {_B}",
        rf"{_LEAVE} {_B}{_GAP}(?<!\w){_LINK} {_GAP}{_A}",
        rf"\brather (?:have|use|do|eat|put|go with|cook) {_A} than {_B}",
        rf"\bprefer {_A} (?:to|over|than|instead of) {_B}",
        rf"{_A}{_GAP}\b{_INSTEAD} {_GAP}{_B}",
        rf"{_INSTEAD} {_B}(?:,| -|:)? ?(?:\w+ ){{0,4}}?{_A}",
        rf"\bturns? out {_GAP}{_B} (?:is|are|was|were) {_GAP}{_A}",
        rf"\b(?:said|wrote|typed|told you) {_B}{_GAP}(?:meant|mean|its|actually|should be|it is|have|wanted) {_GAP}{_A}",
        rf"\bmeant {_A},? not {_B}",
        rf"{_A} (?:ok |fine |alright |work |good |possible )?{_GAP}(?:where|when) (?:you|it|the recipe|the plan) (?:said|say|says|had|wrote|asks? for|calls for) {_B}",
        rf"{_B}{_GAP}\b(?:is|are|was|were|turns out to be|turned out to be) (?:actually|really|in fact) {_GAP}{_A}",
        rf"^\W*{_A} in,? (?:and )?{_B} out\b",
        rf"^\W*{_B} out,? (?:and )?{_A} in\b",
        rf"{_B}(?:s|es)?,? (?:is|s|are|has|have|was|were|got|just|all|went)? ?(?:off the menu|off\b(?! the)|gone(?: off| bad)?|run out|ran out|out|bad|mouldy|moldy|rotten|finished|burnt|nahi hai|khatam|too \w+ for)\b{_GAP}[,.;?!-]?{_GAP}{_A}",
        rf"^\W*(?:ok |so |actually |hey |please |pls |can (?:i|we|you) |could (?:i|we) |lets |we can |just |well |ill |i will |i d |id like |got |its |it is |have )*(?:use |using |do |make it |take |put |with |want |prefer )?{_A},? (?:and )?not {_B}\W*(?:please|pls|thanks|thx|this time|tonight|today|then)?\W*$",
        rf"\b(?:use|got|have|bought|its|it is|using|picked up|made with) {_A},? not {_B}",
        rf"\b{_OFF} {_B}[ ,.;:!?-]+{_GAP}\b(?:{_ASK}) {_GAP}{_A}",
        rf"\b{_OFF} {_B} ?(?:,|\.|;|\?|-|!|:|so|but) ?{_GAP}{_A} ?(?:\?|or|ok|instead|fine|would|will|work|do\b|maybe)",
        rf"\b(?:will|would|could|can|does|do|is|are) {_A} (?:also )?(?:work|do|be ok|be fine|ok|fine|good|alright|go)\b{_GAP}\bfor {_B}",
        rf"^\W*(?:\w+ ){{0,2}}?{_A} for {_B}(?:\W*(?:ok|please|pls|possible|works?|and|,|yes|fine|then|tonight|instead|is that ok|good|\?).*)?\W*$",
        rf"{_LEAVE} {_B}(?!.*{F})",
        rf"{_B} ?(?:->|=>|>|→) ?{_A}",
    )
)
_OPEN: tuple[re.Pattern[str], ...] = tuple(
    re.compile(pattern)
    for pattern in (
        rf"\bwhat (?:can|could|do|should|would) (?:i|we|you)(?: \w+)? (?:use|put|have|do|sub|swap|substitute)? ?{_GAP}(?:instead of|for|in place of|to replace|rather than) {_B}",
        rf"\b(?:substitutes?|sub|replacements?|alternatives?|swaps?|stand in) (?:for|to|of) {_B}",
        rf"\banything (?:i can use |else )?(?:instead of|for|in place of) {_B}",
        rf"\b{_OFF} {_B}{_GAP}(?:what (?:else|now|instead|can i use|could i use|do i use|should i use|to use)|any (?:sub|swap|replacement|alternative|substitute)\w*|alternatives?|ideas|suggestions|substitute)\b",
    )
)
_INCOMING: tuple[re.Pattern[str], ...] = tuple(
    re.compile(pattern)
    for pattern in (
        rf"\b(?:actually|on second thou?ghts?|changed my mind|scrap that|wait),? (?:lets |ill |we ll |well |just |can (?:i|we) |could (?:i|we) )?(?:use|do|go with|make it|have|put in|try) {_A}",
        rf"^[^{F}]*{_B}[^{F}]*(?:[,.;]| so )[^{F}]*{_A}[^{F}]{{0,20}}\binstead\b",
        rf"\b(?:use|put in|put|try|do|have|add|take|with|make it) {_A}{_GAP}\binstead\b",
        rf"{_A}{_GAP}\binstead\b",
        rf"\b(?:would|will|could|can|does|do|is|are) {_A} (?:work|do|ok|okay|fine|alright)\b{_GAP}\??$",
        rf"\b(?:kids?|he|she|they|son|daughter|wife|husband) \w+ {_B}{_GAP}what about {_A}",
    )
)


@dataclass(frozen=True, slots=True)
class SwapFound:
    """Places of the foods in masked text; `frm` or `to` None where the text leaves it open."""

    frm: int | None
    to: int | None


def swap(masked: str) -> SwapFound | None:
    """The first swap that a masked text asks for, by the signs of its foods."""
    same = _SAME.search(masked)
    if same and masked.count(F) == 1:
        place = same.start("a") if same.group("a") else same.start("a2")
        return SwapFound(place, place)
    for pattern in (*_PATTERNS, *_OPEN, *_INCOMING):
        match = pattern.search(masked)
        if match:
            groups = match.groupdict()
            return SwapFound(
                match.start("b") if groups.get("b") else None, match.start("a") if groups.get("a") else None
            )
    return None
