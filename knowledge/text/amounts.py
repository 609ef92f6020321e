"""How much: a small grammar over tokens, with a closed list of units.

    amount   = [vague] number [x] [size] [weight each] [size] [unit [of [a|the]]]
    number   = digits | fraction | word | a | couple | few | half [a] [dozen] | number (-|to|or|maybe) number

A cook's text never reaches a general expression parser.
"""

from __future__ import annotations

from dataclasses import dataclass

from knowledge.text.tokens import Token
from knowledge.text.vocabulary import Unit, words

_ONES = [
    "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven",
    "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
]  # fmt: skip
_TENS = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"]
WORD_VALUES = {word: float(i) for i, word in enumerate(_ONES)} | {
    word: 20.0 + 10 * i for i, word in enumerate(_TENS)
} | {"uno": 1.0, "dos": 2.0, "tres": 3.0, "ek": 1.0, "teen": 3.0, "char": 4.0, "paanch": 5.0}  # fmt: skip
_PARTS = {"half": 0.5, "third": 0.33, "quarter": 0.25, "fourth": 0.25, "fifth": 0.2, "eighth": 0.125}
_ARTICLES = ("a", "an")
_DOZEN = ("dozen", "doz")
_TWOS = ("couple", "pair", "brace")
_RANGES = ("-", "to", "or", "maybe")
SIZES = (
    "small", "large", "medium", "big", "huge", "tiny", "little", "giant", "whopping", "jumbo", "massive",
    "med", "lge", "sml",
)  # fmt: skip
_SIZE_ID = {
    "big": "large", "huge": "large", "giant": "large", "whopping": "large", "jumbo": "large",
    "massive": "large", "lge": "large", "med": "medium", "tiny": "small", "little": "small", "sml": "small",
}  # fmt: skip
_LOOSE = ("good", "nice", "fresh", "sad", "whole", "heaped", "level", "full", "decent", "standard", "regular",
          "generous", "thick", "fat", "wee", "lovely", "single")  # fmt: skip
_LITTLE = ("bit", "bits", "splash", "glug", "swig", "drizzle", "dash", "drop", "drops", "touch", "smidge",
           "smidgen", "hint", "lick", "little", "scrap", "scraps")  # fmt: skip
_PLENTY = ("lots", "load", "loads", "plenty", "heap", "heaps", "ton", "tons", "mountain", "mountains",
           "pile", "piles", "tonne", "tonnes")  # fmt: skip
_VAGUE = (
    "some", "rest", "most", "end", "ends", "last", "remains", "remainder", "spoonful",
    *(w for w in _LITTLE if w not in ("dash", "drop", "drops", "touch", "hint", "lick", "little")),
    *(w for w in _PLENTY if w not in ("mountain", "mountains", "pile", "piles")),
)  # fmt: skip
_VAGUE_OF = (*_LITTLE, *_PLENTY)  # vague behind an article, or before "of"


@dataclass(frozen=True, slots=True)
class Amount:
    """An amount as said. `grams` only from a weight; `bare` is a number without a unit.

    `across_mm` is a length ("2 cm thick", "15 mm dice"): how thick a piece is, not how much there is.
    """

    qty: float | None
    unit: str | None
    grams: float | None = None
    canned: bool = False
    size: str | None = None
    bare: bool = False
    article: bool = False
    kind: str = ""
    across_mm: float | None = None
    each: bool = False  # the weight of one, of a count said apart ("150 g each")
    rough: str | None = None  # "little" or "plenty", where no number is said


def size_id(word: str) -> str:
    """ "big" as "large", "tiny" as "small"; "medium" as it is."""
    return _SIZE_ID.get(word, word)


def number_at(tokens: list[Token], i: int) -> tuple[float, int, bool] | None:
    """A number at token `i`: its value, the token after it, and whether it was only an article."""
    one = _single(tokens, i)
    if one is None:
        return None
    value, j, article = one
    if article:
        return one
    counted = _counted_aloud(tokens, i)
    if counted:
        return counted
    if _text(tokens, j) in _RANGES and not (_text(tokens, j) == "-" and _spaced(tokens, j)):
        other = _single(tokens, j + 1)
        if other and not other[2] and other[0] > 0 and (other[0] > value or _text(tokens, j) == "or"):
            return (value + other[0]) / 2, other[1], False
    return value, j, False


def _spaced(tokens: list[Token], j: int) -> bool:
    """A dash with room around it separates; one between digits is a range."""
    return j + 1 < len(tokens) and tokens[j + 1].start - tokens[j - 1].end > 2


_MOST_COUNTED = 20  # numbers counted aloud one by one


def _counted_aloud(tokens: list[Token], i: int) -> tuple[float, int, bool] | None:
    """ "one two three four five chicken legs" is five of them."""
    values = []
    j = i
    while j < min(i + _MOST_COUNTED, len(tokens)) and tokens[j].text in WORD_VALUES:
        values.append(WORD_VALUES[tokens[j].text])
        j += 1
    if len(values) >= 3 and values == [values[0] + n for n in range(len(values))]:
        return values[-1], j, False
    return None


def _text(tokens: list[Token], i: int) -> str:
    return tokens[i].text if 0 <= i < len(tokens) else ""


def _single(tokens: list[Token], i: int) -> tuple[float, int, bool] | None:
    if i >= len(tokens):
        return None
    token = tokens[i]
    if token.value is not None:
        return _digits(tokens, i)
    word = token.text
    if word in ("half", "quarter", "third"):
        return _part(tokens, i)
    if word in _TWOS:
        return 2.0, _after_of(tokens, i + 1), False
    if word == "few":
        return 3.0, _after_of(tokens, i + 1), False
    if word in _DOZEN:
        return 12.0, _after_of(tokens, i + 1), False
    if word in WORD_VALUES:
        return _spelled(tokens, i)
    if word in _ARTICLES:
        following = _text(tokens, i + 1)
        if following in (*_TWOS, *_DOZEN, "few", "half", "quarter", "third"):
            return _single(tokens, i + 1)
        if following in ("hundred", "thousand"):
            return {"hundred": 100.0, "thousand": 1000.0}[following], i + 2, False
        return 1.0, i + 1, True
    return None


def _digits(tokens: list[Token], i: int) -> tuple[float, int, bool] | None:
    value = tokens[i].value
    assert value is not None
    j = i + 1
    below = _fraction(tokens, i)
    if below:
        return below[0], below[1], False
    above = _fraction(tokens, j) if value == int(value) else None
    if above and above[0] < 1:
        return value + above[0], above[1], False
    if _text(tokens, j) == "and" and _text(tokens, j + 1) in ("a", "1") and _text(tokens, j + 2) in _PARTS:
        return value + _PARTS[_text(tokens, j + 2)], j + 3, False
    if _text(tokens, j) in _DOZEN:
        return value * 12, j + 1, False
    return value, j, False


def _fraction(tokens: list[Token], i: int) -> tuple[float, int] | None:
    if i + 2 >= len(tokens) or tokens[i + 1].text != "/":
        return None
    over, under = tokens[i].value, tokens[i + 2].value
    if over is None or under is None or not 0 < under <= 16 or over >= 16:
        return None
    return round(over / under, 2 if under in (3, 6) else 4), _after_of(tokens, i + 3)


def _part(tokens: list[Token], i: int) -> tuple[float, int, bool]:
    """ "half", "half a dozen", "half an", "a third of a"."""
    value = _PARTS[tokens[i].text]
    j = _after_of(tokens, i + 1)
    if _text(tokens, j) in (*_ARTICLES, "the", "my"):
        j += 1
    if _text(tokens, j) in _DOZEN:
        return value * 12, _after_of(tokens, j + 1), False
    return value, j, False


def _after_of(tokens: list[Token], j: int) -> int:
    if _text(tokens, j) == "of":
        j += 1
        if _text(tokens, j) in (*_ARTICLES, "the", "those", "these", "my", "that", "this"):
            j += 1
    return j


def _spelled(tokens: list[Token], i: int) -> tuple[float, int, bool]:
    """ "twenty five", "two hundred and fifty", "one and a half", "two thirds"."""
    value, j = WORD_VALUES[tokens[i].text], i + 1
    if value >= 20 and 0 < WORD_VALUES.get(_text(tokens, j), 0) < 10:
        value, j = value + WORD_VALUES[_text(tokens, j)], j + 1
    for word, factor in (("hundred", 100.0), ("thousand", 1000.0)):
        if _text(tokens, j) == word:
            value, j = value * factor, j + 1
            k = j + (_text(tokens, j) == "and")
            if _text(tokens, k) in WORD_VALUES:
                more, j, _ = _spelled(tokens, k)
                value += more
    if _text(tokens, j) in ("third", "quarter", "thirds", "quarters", "fifths", "half", "halves"):
        part = _PARTS[{"halves": "half"}.get(tokens[j].text, tokens[j].key)]
        whole = {0.33: 1 / 3}.get(part, part)
        return round(value * whole, 2), _after_of(tokens, j + 1), False
    if _text(tokens, j) == "and" and _text(tokens, j + 1) == "a" and _text(tokens, j + 2) in _PARTS:
        return value + _PARTS[_text(tokens, j + 2)], j + 3, False
    if _text(tokens, j) in _DOZEN:
        return value * 12, j + 1, False
    return value, j, False


def unit_at(tokens: list[Token], i: int) -> tuple[Unit, int] | None:
    """A unit of the closed list at token `i`, and the token after it."""
    units = words().units
    if i >= len(tokens) or not tokens[i].is_word:
        return None
    if i + 1 < len(tokens):
        two = units.get((tokens[i].key, tokens[i + 1].key))
        if two:
            return two, i + 2
    one = units.get((tokens[i].key,)) or units.get((tokens[i].text,))
    return (one, i + 1) if one else None


def _sized(tokens: list[Token], j: int) -> tuple[str | None, int]:
    size = None
    while _text(tokens, j) in SIZES or _text(tokens, j) in _LOOSE:
        size = size_id(tokens[j].text) if tokens[j].text in SIZES else size
        j += 1
    return size, j


def _weight(value: float, unit: Unit) -> float:
    return round(value * (unit.grams or 0.0), 6)


def amount_at(tokens: list[Token], i: int) -> tuple[Amount, int] | None:
    """An amount that begins at token `i`, and the token after it; None if there is none."""
    start = _text(tokens, i)
    if _says_vaguely(tokens, i):
        return _vague(tokens, i)
    if start == "x" and i + 1 < len(tokens) and tokens[i + 1].value is not None:
        return Amount(tokens[i + 1].value, "piece", bare=True, kind="times"), i + 2
    found = number_at(tokens, i)
    if found is None:
        return _one_measure(tokens, i)
    qty, j, article = found
    if _text(tokens, j) in _NOT_COUNTS:
        return None
    if _text(tokens, j) in _MM_OF and not article:
        return _length(tokens, qty * _MM_OF[_text(tokens, j)], j + 1)
    if _text(tokens, j) in ("x", "*") and (k := number_at(tokens, j + 1)) and not k[2]:
        inner = unit_at(tokens, k[1])
        if inner and inner[0].kind in ("weight", "volume"):
            return _each(tokens, qty, k[0], inner, article)
    if _text(tokens, j) == "x":
        j += 1
    size, j = _sized(tokens, j)
    second = number_at(tokens, j)
    if second and not second[2]:
        inner = unit_at(tokens, second[1])
        if inner and inner[0].kind == "weight":
            return _each(tokens, qty, second[0], inner, article)
    if _text(tokens, j) == "#" and not article:
        return Amount(qty, "lb", _weight(qty, words().units[("lb",)]), kind="weight"), j + 1
    unit = unit_at(tokens, j)
    if unit is None:
        return Amount(qty, "piece", size=size, bare=True, article=article), j
    return _measured(tokens, qty, unit, size, article)


def _one_measure(tokens: list[Token], i: int) -> tuple[Amount, int] | None:
    """ "Pound of mince", "kilo and a half of spuds": a measure without its article is one."""
    unit = unit_at(tokens, i)
    if unit is None or unit[0].kind not in ("weight", "volume") or tokens[i].text != tokens[i].key:
        return None
    after = tuple(_text(tokens, unit[1] + n) for n in range(3))
    if after[0] != "of" and not (after[:2] == ("and", "a") and after[2] in _PARTS):
        return None
    return _measured(tokens, 1.0, unit, None, article=False)


_MM_OF = {"mm": 1.0, "cm": 10.0, "centimetre": 10.0, "centimeter": 10.0, "inch": 25.4, "inches": 25.4}
_LENGTHWISE = ("piece", "bit", "chunk", "length", "knob", "stick")
_ACROSS = ("thick", "wide", "across", "deep", "thickness")
_NOT_COUNTS = (
    "c", "f", "safe", "ok", "enough", "degree", "degrees", "deg", "celsius", "fahrenheit", "%",
    "day", "days", "hour", "hours", "week", "weeks", "min", "mins", "minutes", "month",
    "months", "year", "years", "am", "pm", "the",
)  # fmt: skip


def _length(tokens: list[Token], mm: float, j: int) -> tuple[Amount, int]:
    """ "3cm piece of ginger" is one piece; "2 cm thick", "15 mm dice" say how thick."""
    if _text(tokens, j) in _LENGTHWISE:
        return Amount(1.0, "piece"), _after_of(tokens, j + 1)
    j += _text(tokens, j) in _ACROSS
    return Amount(None, None, across_mm=mm, kind="length"), _after_of(tokens, j)


def _says_vaguely(tokens: list[Token], i: int) -> bool:
    first, second = _text(tokens, i), _text(tokens, i + 1)
    if first in _VAGUE or (first in _VAGUE_OF and second == "of"):
        return True
    if first not in (*_ARTICLES, "the"):
        return False
    if second in ("tiny", "small", "wee", "good", "big", "generous", "quick", "large", "whole"):
        second = _text(tokens, i + 2)
        return second in _VAGUE_OF and second != "little"
    of = _text(tokens, i + 2) == "of"
    return second in (*_VAGUE, "little") or (second in (*_VAGUE_OF, "thing") and of)


def _vague(tokens: list[Token], i: int) -> tuple[Amount, int] | None:
    """ "the rest of a tub of": the unit is kept, the number is not."""
    j = i + (tokens[i].text in (*_ARTICLES, "the"))
    j += tokens[j].text not in (*_VAGUE, *_VAGUE_OF) and _text(tokens, j + 1) in _VAGUE_OF
    rough = "little" if tokens[j].text in _LITTLE else "plenty" if tokens[j].text in _PLENTY else None
    j = _after_of(tokens, j + 1)
    if _text(tokens, j) in ("a", "an", "the"):
        j += 1
    _, j = _sized(tokens, j)
    unit = unit_at(tokens, j)
    if unit and unit[0].kind in ("container", "count") and tokens[i].text not in ("some",):
        held = Amount(None, unit[0].id, canned=unit[0].id == "can", rough=rough)
        return held, _after_of(tokens, unit[1])
    return Amount(None, None, rough=rough), j


def _each(
    tokens: list[Token], qty: float, value: float, inner: tuple[Unit, int], article: bool
) -> tuple[Amount, int]:
    """A count with the weight of one: "2x400g tins", "one 12 oz pack", "two 8-ounce steaks"."""
    unit, j = inner
    size, j = _sized(tokens, j)
    holder = unit_at(tokens, j)
    grams = _weight(qty * value, unit) if unit.kind == "weight" else None
    if holder and holder[0].kind in ("container", "count", "piece"):
        return Amount(qty, holder[0].id, grams, holder[0].id == "can", size, kind="container"), _after_of(
            tokens, holder[1]
        )
    if unit.kind == "volume":
        return Amount(qty * value, unit.id, kind="volume"), _after_of(tokens, j)
    end = _each_at(tokens, j) or j
    each = Amount(qty, "piece", grams, size=size, bare=article, kind="each", each=article)
    return each, _after_of(tokens, end)


def _in_brackets(tokens: list[Token], j: int) -> tuple[float, int] | None:
    """Grams of "(15 ounces)" at token `j`, and the token after it."""
    if _text(tokens, j) != "(" or not (number := number_at(tokens, j + 1)):
        return None
    unit = unit_at(tokens, number[1])
    if unit is None or unit[0].kind != "weight":
        return None
    end = unit[1] + (_text(tokens, unit[1]) == "each")
    return (_weight(number[0], unit[0]), end + 1) if _text(tokens, end) == ")" else None


def _measured(
    tokens: list[Token], qty: float, found: tuple[Unit, int], size: str | None, article: bool
) -> tuple[Amount, int]:
    unit, j = found
    if _text(tokens, j) == "and" and _text(tokens, j + 1) == "a" and _text(tokens, j + 2) in _PARTS:
        qty, j = qty + _PARTS[_text(tokens, j + 2)], j + 3  # "a kilo and a half"
    if unit.kind == "vague" and unit.id != "pinch":
        return Amount(None, None, rough="little"), _after_of(tokens, j)
    if unit.kind != "weight":
        if unit.id == "dl":
            return Amount(qty * 100, "ml", kind="volume"), _after_of(tokens, j)
        name = "piece" if unit.kind == "piece" else unit.id
        if unit.kind == "container" and (weight := _in_brackets(tokens, j)):
            grams, k = weight
            return Amount(qty, name, qty * grams, unit.id == "can", size, kind="container"), k
        amount = Amount(qty, name, None, unit.id == "can", size, article=article, kind=unit.kind)
        return amount, _after_of(tokens, j)
    grams = _weight(qty, unit)
    if unit.id == "lb" and (more := number_at(tokens, j)) and not more[2]:
        ounce = unit_at(tokens, more[1])
        if ounce and ounce[0].id == "oz":
            total = qty * 16 + more[0]
            return Amount(total, "oz", _weight(total, ounce[0]), kind="weight"), _after_of(tokens, ounce[1])
    size, k = _sized(tokens, j)
    holder = unit_at(tokens, k)
    if holder and holder[0].kind == "container":  # "400g tin of", "half a 500 g bag"
        amount = Amount(1.0, holder[0].id, grams, holder[0].id == "can", size, kind="container")
        return amount, _after_of(tokens, holder[1])
    end = _each_at(tokens, j)
    if end:
        return Amount(qty, unit.id, grams, kind="weight", each=True), _after_of(tokens, end)
    return Amount(qty, unit.id, grams, kind="weight"), _after_of(tokens, j)


_EACH = ("each", "ea", "apiece", "pro", "cada", "chacun", "chacune", "je", "per", "a", "an", "the")
_ONE_OF = ("piece", "pc", "one", "unit", "steak", "fillet", "filet", "portion", "stuck", "uno", "una")


def _each_at(tokens: list[Token], j: int) -> int:
    """The token after "each", "apiece", "per piece", "a piece"; 0 if the weight is not that of one."""
    first = _text(tokens, j)
    if first not in _EACH:
        return 0
    named = j + 1 < len(tokens) and tokens[j + 1].key in _ONE_OF
    if first in ("pro", "per", "a", "an", "the"):
        return j + 2 if named else 0
    return j + 1
