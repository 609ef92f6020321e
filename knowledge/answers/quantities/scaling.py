"""A recipe for another tin or another number of eaters: "9 inch to 8 inch tin", "serves 4, I need 7"."""

from __future__ import annotations

import math
import re
from dataclasses import dataclass

from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears, pattern
from knowledge.answers.reading.measures import US_CUP_ML, figure, measures, quantities
from knowledge.answers.reading.numbers import COUNT, count_of
from knowledge.planner.words import listed

# "20 cm", "9x13 inch", "23 round": a size, and behind it what may follow the size of a tin.
_SIZE = (
    r"(?: (two|three|four|[2-4])(?= \d))?"  # "two 8 inch rounds"
    r" (\d{1,2}(?:\.\d)?)(?: ?(?:x|by) ?(\d{1,2}(?:\.\d)?))?(?: ?(inch|inches|in|cm))?"
    r"(?= (?:and|to|in|into|vs|how|what|will|do|is|deep|diameter|across|one|only|should|with|but|so|have"
    r"|versus|or|for|instead|the|a|an|i|of|inch|my|recipe|cake|loaf|{baking tin})\b| $)"
    r"(?: (round|square)s?)?"
)
_SHAPE = re.compile(r" (round|square)(?= )")
_OWN = re.compile(
    r" (?:mine|my|ive|i ve|i (?:only |just )?(?:have|own|got)|i only|we have|got|have only|using) "
)
_RECIPES = re.compile(
    r" (?:recipe|calls for|call for|says|said|asks for|is for|made for|written for|needs|wants|states) "
)
_RECIPE_BEHIND = re.compile(r" (?:inch |cm )?(?:cake )?recipe ")  # "a 9 inch recipe"
_DEEP = re.compile(r" ?(?:inch |inches |in |cm )?(?:deep|high|tall)\b")
_DEPTH = re.compile(r" (\d{1,2}(?:\.\d)?) ?(inch|inches|in|cm)?(?: (?:deep|high|tall))")
_CM = {"cm": 1.0, "inch": 2.54, "inches": 2.54, "in": 2.54}
_LARGEST_INCH = 14.0  # a larger tin without a unit is told in centimetres

_EATERS = re.compile(
    r" (?:serves?|servings?|feeds?|feeding|people|persons?|guests|eaters|portions|of us|we are|recipe for) "
)
_TINS_OF = re.compile(r" (?:tins|cans|(?:tin|can) of) ")
_COUNTED = re.compile(r" (\d+(?:\.\d+)?) (tins?|cans?) ")
_PEOPLE = r"(?: people| persons| servings| portions)?"
_SERVES = re.compile(  # "serves 4, I need it for 7"
    r" (?:serves?|serving|feeds?|for|makes|made for|recipe for|is for|written for)(?: about)? "
    rf"{COUNT}{_PEOPLE} (?:.* )?"
    r"(?:need|want|to|have|make it|make it for|cook for|feeds?|serves?|for|got|into|we are|we re|there are"
    r"|there ll be)(?: to)?"
    rf"(?: feed| serve| make| cook)?(?: it)?(?: for)? {COUNT} "
)
_FROM_TO = re.compile(rf" (?:for|from|serves?|serving|scale) {COUNT}{_PEOPLE} (?:to|into|up to) {COUNT} ")
_WE_ARE = re.compile(  # "we are 7, it serves 4"
    r" (?:we are|we re|there are|there ll be|i have|i need|need|feeding|cooking for|for) "
    rf"{COUNT}(?: of us| people| guests| eaters)? (?:.* )?"
    rf"(?:serves?|feeds?|written for|is for|made for|makes|recipe for) {COUNT} "
)
_INSTEAD_OF = re.compile(rf" {COUNT} (?:people|persons|guests|of us|servings|portions) instead of {COUNT} ")
_HELD = re.compile(r" (?:5[5-9]|6\d|7\d|80) ?c? for \d+ .*(?:5[5-9]|6\d|7\d|80) ")  # a core: "70 for 2 min"

LIQUID_SHARE = 0.8  # of the growth of a recipe that its liquid in a lidded pot follows (common practice)
_OTHER_TIN = (
    "From {old} to {new}: multiply everything by {factor:.2f} (the ratio of the areas, {share:.0f} % {more})"
    "; eggs to the nearest whole one. The same depth bakes in about the same time: look 5-10 minutes early. "
)
_OTHER_SHAPE = (
    "A {old} tin of {size} {unit} holds as much as a {new} one of {other:.1f} {unit}, at the same depth. "
)
_BAKING = "Baking itself is outside my four vessels."
_OTHER_EATERS = (
    "From {have} to {need}: multiply everything by {factor:.2f}. Salt, chili and spices a little less than "
    "that at first, then taste; liquid in a lidded pot about {liquid:.2f} times. Pieces of the same size "
    "take the same time, a fuller pot needs longer to come to heat, and a crowded pan does not brown: use "
    "two batches or a larger vessel."
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Tin:
    """A tin as it is said, or several alike, in inches or centimetres; `found` is where."""

    count: int
    side: str  # of a square one, across a round one
    other_side: str  # of a rectangular one
    unit: str
    shape: str
    found: re.Match[str]

    def area(self, unit: str) -> float:
        """Of all of them, in the square of its own unit, else of that of the other tin [cm2]."""
        side = float(self.side) * _CM[self.unit or unit]
        if self.other_side:
            return self.count * side * float(self.other_side) * _CM[self.unit or unit]
        return self.count * side * side * (1.0 if self.shape == "square" else math.pi / 4)

    def shown(self, unit: str) -> str:
        """ "20 cm round", "9 x 13 inch"; a unit that is not said is that of the other tin."""
        unit = {"inches": "inch", "in": "inch"}.get(self.unit, self.unit) or unit
        several = f"{self.count} times " if self.count > 1 else ""
        if self.other_side:
            return f"{several}{self.side} x {self.other_side} {unit}"
        return f"{several}{self.side} {unit} {self.shape or 'round'}"


def scaled(question: Question) -> Answer | None:
    """The factor from one tin, or one number of eaters, to another."""
    if found := _tins(question):
        return found
    held = _HELD.search(question.plain) or question.says("degrees", "deg_", "°")
    return _eaters(question) if hears(question, "scaling") and not held else None


def _tins(question: Question) -> Answer | None:
    """The factor from one tin to another, or the tin of another shape that holds as much."""
    named = pattern(question.store, " {baking tin} ").search(question.plain)
    if not named or question.says("sheet pan", "how long to roast"):
        return None
    tins = [
        Tin(
            count=count_of(m[1]) if m[1] else 1,
            side=m[2],
            other_side=m[3] or "",
            unit=m[4] or "",
            shape=m[5] or "",
            found=m,
        )
        for m in pattern(question.store, _SIZE).finditer(question.plain)
        if not _DEEP.match(question.plain, m.end()) and not _is_a_count(question, m)
    ]
    return _room(question, tins) or _to_other_shape(question, tins) or _to_other_size(question, tins)


def _is_a_count(question: Question, found: re.Match[str]) -> bool:
    """True for a bare number of eaters, or of tins of food: "2 tins of tomatoes for 11 people"."""
    if found[3] or found[4] or found[5]:
        return False
    return bool(_EATERS.search(question.plain) or _TINS_OF.match(question.plain, found.end()))


def _room(question: Question, tins: list[Tin]) -> Answer | None:
    """ "The area of a 9 inch square tin", "how much does a 20 cm round tin 5 cm deep hold"."""
    if len(tins) != 1 or not hears(question, "room in a tin"):
        return None
    (tin,) = tins
    unit = "cm" if float(tin.side) > _LARGEST_INCH else "inch"
    area_cm2 = tin.area(unit)
    text = f"{tin.shown(unit)}: {area_cm2:.0f} cm² ({area_cm2 / _CM['inch'] ** 2:.0f} square inches) of base"
    if deep := _DEPTH.search(question.plain):
        ml = area_cm2 * float(deep[1]) * _CM[deep[2] or "cm"]
        text += f", and {ml / 1000:.1f} l ({ml / US_CUP_ML:.0f} US cups) to the brim; for a cake two thirds"
    return Answer(known=True, answer=f"{text[0].upper()}{text[1:]}.", sources=("geometry",))


def _to_other_size(question: Question, tins: list[Tin]) -> Answer | None:
    """ "9 inch to 8 inch tin"."""
    if len(tins) != 2:
        return None
    old, new = tins
    likely = "cm" if float(old.side) > _LARGEST_INCH else "inch"
    unit = "cm" if (old.unit or new.unit or likely) == "cm" else "inch"
    # "a 20 cm one instead of the 23 cm", "mine is 20, the recipe says 23": what is there comes first
    if question.says("instead of") or _is_own_first(question.plain, old.found, new.found):
        old, new = new, old
    factor = new.area(unit) / old.area(unit)
    text = _OTHER_TIN.format(
        old=old.shown(unit),
        new=new.shown(unit),
        factor=factor,
        share=100 * abs(factor - 1),
        more="more" if factor > 1 else "less",
    )
    return Answer(
        known=True, answer=f"{text}{_BAKING}", sources=("geometry: area of a circle and a rectangle",)
    )


def _is_own_first(plain: str, first: re.Match[str], second: re.Match[str]) -> bool:
    """True where the cook's own tin is named before that of the recipe."""
    if _RECIPE_BEHIND.match(plain, first.end()):
        return False
    before, between = f"{plain[: first.start()]} ", f"{plain[first.end() : second.start()]} "
    own, theirs = _last(_OWN, before), _last(_RECIPES, before)
    if own != theirs:
        return own > theirs
    return _last(_RECIPES, between) > _last(_OWN, between)


def _last(words: re.Pattern[str], plain: str) -> int:
    """Where the last of some words stands, -1 for nowhere."""
    return max((found.start() for found in words.finditer(plain)), default=-1)


def _to_other_shape(question: Question, tins: list[Tin]) -> Answer | None:
    """ "A 20 cm square tin, but round": the tin of the other shape with the same area."""
    sizes = [tin.side for tin in tins if not tin.other_side and tin.count == 1]
    shapes = _SHAPE.findall(question.plain)
    if len(sizes) != 1 or len(set(shapes)) != 2:
        return None
    (size,) = sizes
    ratio = math.sqrt(4 / math.pi) if shapes[0] == "square" else math.sqrt(math.pi / 4)
    text = _OTHER_SHAPE.format(
        old=shapes[0],
        size=size,
        new=shapes[1],
        other=float(size) * ratio,
        unit="inch" if re.search(rf" {size} ?(?:inch|inches|in) ", question.plain) else "cm",
    )
    return Answer(known=True, answer=f"{text}{_BAKING}", sources=("geometry: area of a circle and a square",))


def _eaters(question: Question) -> Answer | None:
    """ "Serves 4, I need 7", "from 4 to 7", "we are 7, it serves 4"."""
    if found := _SERVES.search(question.plain) or _FROM_TO.search(question.plain):
        asks_a_food = question.foods and question.says("how much", "how many")
        if asks_a_food and not _amounts(question):
            return None
        return _for_eaters(question, count_of(found[1]), count_of(found[2]))
    if found := _WE_ARE.search(question.plain) or _INSTEAD_OF.search(question.plain):
        return _for_eaters(question, count_of(found[2]), count_of(found[1]))
    return None


def _amounts(question: Question) -> list[tuple[float, str]]:
    """The amounts of the recipe that are told, each with its unit as it was said."""
    known = measures(question.store)
    told = [
        (q.value, question.plain[q.start : q.end].strip().lstrip("0123456789./ "))
        for q in quantities(question)
        if q.has_number and known[q.unit].kind != "length"
    ]
    return told + [(float(m[1]), m[2]) for m in _COUNTED.finditer(question.plain)]


def _for_eaters(question: Question, have: int, need: int) -> Answer | None:
    """From a recipe for so many eaters to so many others, with the amounts that were told."""
    if not have or not need or have == need:
        return None
    factor = need / have
    text = _OTHER_EATERS.format(have=have, need=need, factor=factor, liquid=1 + LIQUID_SHARE * (factor - 1))
    told = [
        f"{figure(value)} {unit} becomes {figure(value * factor)} {unit}"
        for value, unit in _amounts(question)
    ]
    text += f" So {listed(told)}." if told else ""
    return Answer(known=True, answer=text, sources=("common practice",))
