"""A recipe for another tin or another number of eaters: "9 inch to 8 inch tin", "serves 4, I need 7"."""

from __future__ import annotations

import math
import re

from knowledge.answers.model import Answer, Question

_NUMBER = {"two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
           "twelve": 12}  # fmt: skip
_N = rf"(\d{{1,3}}|{'|'.join(_NUMBER)})"
_TIN = re.compile(
    r" (\d{1,2}(?:\.\d)?)(?: ?(?:x|by) ?(\d{1,2}(?:\.\d)?))?(?: ?(inch|inches|in|cm))?"
    r"(?= (?:and|to|in|into|vs|how|what|will|do|is|deep|diameter|across|one|only|should"
    r"|with|but|so|have|versus|or|for|instead|tin|pan|recipe|round|square|cake|dish|loaf|the|a|an|i"
    r"|of|inch|my)\b| $)"
    r"(?: (round|square))?"
)
_IS_TIN = (
    " tin ",
    " tins ",
    " pan ",
    " pans ",
    " cake tin ",
    " round ",
    " square ",
    " dish ",
    " mould ",
    " springform ",
)
_OWN = re.compile(
    r" (?:mine|my|ive|i ve|i (?:only |just )?(?:have|own|got)|i only|we have|got|have only|using) "
)
_RECIPES = re.compile(
    r" (?:recipe|calls for|call for|says|said|asks for|is for|made for|written for|needs|wants|states) "
)
_SERVES = re.compile(
    rf" (?:serves?|serving|feeds?|for|makes|made for|recipe for|is for"
    rf"|written for)(?: about)? {_N}(?: people| persons"
    rf"| servings| portions)? (?:.* )?(?:need|want|to|have|make it|make it for|cook for|feeds?|serves?|for"
    rf"|got"
    rf"|into)(?: to)?"
    rf"(?: feed| serve| make| cook)?(?: it)?(?: for)? {_N} "
)
_WE_ARE = re.compile(
    rf" (?:we are|we re|there are|there ll be|i have|i need|need|feeding|cooking for|for) {_N}(?: of us"
    rf"| people| guests"
    rf"| eaters)? (?:.* )?(?:serves?|feeds?|written for|is for|made for|makes|recipe for) {_N} "
)
_FROM_TO = re.compile(
    rf" (?:for|from|serves?|serving) {_N}(?: people| persons| servings| portions)? (?:to|into|up to) {_N} "
)
_HELD = re.compile(
    r" (?:5[5-9]|6\d|7\d|80) ?c? for \d+ .*(?:5[5-9]|6\d|7\d|80) "
)  # "70 for 2 min": a core held
_SCALES = (
    "make it", "make for", "scale", "scaling", "double", "halve", "multipl", "adapt", "adjust", "convert",
    "change", "times", "factor", "resize",
    "recipe", "how much more", "need", "instead", "vs_", "versus", "same as", "equal", "bigger",
    "smaller", "fit",
)  # fmt: skip


def scaled(question: Question) -> Answer | None:
    """The factor from one tin, or one number of eaters, to another."""
    held = _HELD.search(question.plain) or question.says("degrees", "deg_", "°")
    counted = question.says(*_SCALES) and not held
    return _tins(question) or (_eaters(question) if counted else None)


def _tins(question: Question) -> Answer | None:
    if not any(word in question.plain for word in _IS_TIN) or question.says("sheet pan", "how long to roast"):
        return None
    if turned := _to_other_shape(question):
        return turned
    sized = list(_TIN.finditer(question.plain))
    found = [(m[1], m[2], m[3] or "", m[4] or "") for m in sized]
    if len(found) != 2:
        return None
    unit = next((tin[2] for tin in found if tin[2]), "cm" if float(found[0][0]) > 14 else "inch")
    # "a 20 cm one instead of the 23 cm", "mine is 20, the recipe says 23": what is there comes first
    if question.says("instead of") or _is_own_first(question.plain, *sized):
        found.reverse()
    first, second = ((_area(tin), _shown(tin, unit)) for tin in found)
    factor = second[0] / first[0]
    text = f"From {first[1]} to {second[1]}: multiply everything by {factor:.2f}"
    text += f" (the ratio of the areas, {100 * abs(factor - 1):.0f} % {'more' if factor > 1 else 'less'}); "
    text += "eggs to the nearest whole one. The same depth bakes in about the same time: look 5-10 "
    text += "minutes early. "
    text += "Baking itself is outside my four vessels."
    return Answer(known=True, answer=text, sources=("geometry: area of a circle and a rectangle",))


def _is_own_first(plain: str, first: re.Match[str], second: re.Match[str]) -> bool:
    """True where the cook's own tin is named before that of the recipe."""
    before, between = f"{plain[: first.start()]} ", f"{plain[first.end() : second.start()]} "
    if re.match(r" (?:inch |cm )?(?:cake )?recipe ", f"{plain[first.end() :]}"):
        return False  # "a 9 inch recipe"
    own, theirs = _last(_OWN, before), _last(_RECIPES, before)
    if own != theirs:
        return own > theirs
    return _last(_RECIPES, between) > _last(_OWN, between)


def _last(words: re.Pattern[str], plain: str) -> int:
    """Where the last of some words stands, -1 for nowhere."""
    return max((found.start() for found in words.finditer(plain)), default=-1)


def _to_other_shape(question: Question) -> Answer | None:
    """ "A 20 cm square tin, but round": the tin of the other shape with the same area."""
    sizes = [m[1] for m in _TIN.finditer(question.plain) if not m[2]]
    shapes = re.findall(r" (round|square)(?= )", question.plain)
    if len(sizes) != 1 or len(set(shapes)) != 2:
        return None
    (size,) = sizes
    unit = "inch" if re.search(rf" {size} ?(?:inch|inches|in) ", question.plain) else "cm"
    ratio = math.sqrt(4 / math.pi) if shapes[0] == "square" else math.sqrt(math.pi / 4)
    text = f"A {shapes[0]} tin of {size} {unit} holds as much as a {shapes[1]} one of "
    text += f"{float(size) * ratio:.1f} {unit}, at the same depth. Baking itself is outside my four vessels."
    return Answer(known=True, answer=text, sources=("geometry: area of a circle and a square",))


def _area(tin: tuple[str, str, str, str]) -> float:
    side = float(tin[0])
    if tin[1]:
        return side * float(tin[1])
    return side * side * (1.0 if tin[3] == "square" else math.pi / 4)


def _shown(tin: tuple[str, str, str, str], unit: str) -> str:
    sides = f"{tin[0]} x {tin[1]}" if tin[1] else tin[0]
    shape = "" if tin[1] else f" {tin[3] or 'round'}"
    return f"{sides} {'cm' if unit == 'cm' else 'inch'}{shape}"


def _eaters(question: Question) -> Answer | None:
    found = _SERVES.search(question.plain) or _FROM_TO.search(question.plain)
    if not found and (turned := _WE_ARE.search(question.plain)):
        return _factor(_count(turned[2]), _count(turned[1]))
    if not found or (question.foods and question.says("how much", "how many")):
        return None
    return _factor(_count(found[1]), _count(found[2]))


def _count(said: str) -> int:
    return _NUMBER.get(said) or int(said)


def _factor(have: int, need: int) -> Answer | None:
    if not have or not need or have == need:
        return None
    factor = need / have
    text = f"From {have} to {need}: multiply everything by {factor:.2f}. Salt, chili and spices a little "
    text += "less than "
    text += f"that at first, then taste; liquid in a lidded pot about {1 + 0.8 * (factor - 1):.2f} times. "
    text += "Pieces of the "
    text += "same size take the same time, a fuller pot needs longer to come to heat, and a crowded pan "
    text += "does not brown: "
    text += "use two batches or a larger vessel."
    return Answer(known=True, answer=text, sources=("common practice",))
