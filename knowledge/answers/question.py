"""A question's text -> its plain words, the foods it names, its temperatures and amounts."""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge.answers.model import Mention, Quantity, Question
from knowledge.answers.spelling import corrected
from knowledge.answers.words import words_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen
from knowledge.text.normalise import flatten, key, singular
from knowledge.units import fahrenheit

LONGEST_NAME = 5
TEMPERATURE = re.compile(
    r"(?<![\w.])(-?\d{1,3}(?:\.\d+)?) ?(?:degrees?|deg|°|º)? ?(celsius|centigrade|fahrenheit|c|f)\b"
)
_BARE_DEGREES = re.compile(
    r" (?:at|reads?|reading|is|to|hits?|reached|of|be|says?|said|shows?|got) (\d{2,3})"
    r"(?: degrees?| deg)?(?= )"
)
_ALTITUDE = re.compile(r" (\d{1,2}[,.]?\d{3}|\d{2,5}|0) ?(m|metres?|meters?|feet|ft|foot|masl)(?= )")
_UNTIL = re.compile(
    r"(?<= long) til |(?<!of) til (?=(?:my|the|it|i|we|they|he|she|your|our|his|her|this|that|these|an?"
    r"|grand\w+|home\w*|dinner|lunch|noon|tonight|tomorrow|morning|done|\d+)\b)"
)
HIGHEST_M = 5000.0
_SAID = {
    "a": 1.0, "an": 1.0, "one": 1.0, "two": 2.0, "three": 3.0, "four": 4.0, "five": 5.0, "six": 6.0,
    "eight": 8.0, "ten": 10.0, "half": 0.5, "half a": 0.5, "half an": 0.5, "a half": 0.5, "quarter": 0.25,
    "a quarter": 0.25, "quarter of a": 0.25, "a quarter of a": 0.25, "one quarter": 0.25, "third": 1 / 3,
    "a third": 1 / 3, "third of a": 1 / 3, "a third of a": 1 / 3, "one third": 1 / 3, "two thirds": 2 / 3,
    "two thirds of a": 2 / 3, "three quarters": 0.75, "three quarters of a": 0.75, "three quarter": 0.75,
    "one and a half": 1.5, "1 and a half": 1.5, "two and a half": 2.5, "2 and a half": 2.5,
}  # fmt: skip
_WORDS = "|".join(sorted(_SAID, key=len, reverse=True))
_BELOW_ZERO = re.compile(
    r"(?<!\d )(?:(?<=\s)|^)[-−](?=\d+(?:\.\d+)? ?(?:°|deg|celsius|centigrade|fahrenheit|[cf]\b))"
)
"""A minus before a temperature; behind a number, as in "180 -200 C", it is a range."""
NUMBER = rf"({_WORDS}|\d+(?:[.,]\d+)?(?: \d/\d)?|\d/\d)"


def question_of(text: str, *, store: Store, kitchen: Kitchen, ruled_out: tuple[str, ...] = ()) -> Question:
    """Read a question. Never raises: whatever it holds is words."""
    flat = flatten(text).text
    flat = _BELOW_ZERO.sub(" minus ", flat)
    plain = re.sub(r"[^\w.,/°%-]+|(?<!\d)[.,/-]|[.,/-](?!\d)", " ", flat)
    plain = re.sub(r"\b(\d+ ?(?:ft|feet|foot) \d+) ?in\b", r"\1 inches", plain)  # "6 ft 2 in"
    plain = re.sub(r"\b(?:minus|negative) (\d)", r"-\1", plain)
    plain = re.sub(r"\brice cooker", "ricecooker", plain)  # not to be taken for a pressure cooker
    plain = re.sub(r"\bair ?fry(?:ers?|ing|ed)?\b", "airfryer", plain)  # a device, not the bird called fryer
    plain = re.sub(r"\bwat (?=(?:is|are|s|does|do|to|can|should|would|temp\w*|size|about) )", "what ", plain)
    plain = re.sub(_UNTIL, " until ", plain)  # not the seed called til
    words = corrected(plain.split(), store)
    plain = f" {' '.join(words)} "
    forms = tuple(singular(word) for word in words)
    mentions = _mentions(words, forms, store)
    return Question(
        text=text,
        plain=_without_small(plain, store),
        words=forms,
        mentions=mentions,
        store=store,
        kitchen=kitchen,
        ruled_out=ruled_out,
    )


def _without_small(plain: str, store: Store) -> str:
    """ "Baby potatoes", "baby squid": a size, so that no advice for infants answers."""
    small = "|".join(sorted(words_of(store, "small")))
    return re.sub(
        rf"(?<! my)(?<! our)(?<! her)(?<! his)(?<! the)(?<! give) baby (?=(?:{small})(?:e?s)? )",
        " small ",
        plain,
    )


def _mentions(words: list[str], forms: tuple[str, ...], store: Store) -> tuple[Mention, ...]:
    names, ordinary = store.names(), words_of(store, "ordinary")
    found: list[Mention] = []
    at = 0
    while at < len(words):
        for length in range(min(LONGEST_NAME, len(words) - at), 0, -1):
            phrase = " ".join(words[at : at + length])
            if length == 1 and (phrase in ordinary or forms[at] in ordinary or len(phrase) < 3):
                continue
            ids = names.get(" ".join(forms[at : at + length])) or names.get(phrase) or names.get(key(phrase))
            if ids:
                food = _fresh(store.food(ids[0]), forms[at : at + length], words, store)
                if length > 1 and forms[at + length - 1] == "substitute":  # "eggs. substitute for mayonnaise"
                    length -= 1
                    phrase = " ".join(words[at : at + length])
                found.append(Mention(food=food, phrase=phrase, start=at, end=at + length))
                at += length - 1
                break
        at += 1
    sure = [m for m in found if m.phrase not in words_of(store, "ambiguous")]
    return tuple(sure or found)


def _fresh(food: Food, forms: tuple[str, ...], words: list[str], store: Store) -> Food:
    """ "Potato wedges" are cut potatoes unless frozen ones are spoken of."""
    if forms[-1] == "substitute":  # "egg substitute" asks for one
        return store.named(" ".join(forms[:-1])) or food
    if food.start_state != "frozen" or "frozen" in words or "oven" in words or len(forms) < 2:
        return food
    plain = store.named(" ".join(forms[:-1]))
    return plain if plain is not None and plain.cuts else food


def temperatures_degC(question: Question) -> tuple[float, ...]:
    """Temperatures in the question; a bare number next to "at" or "reads" above 100 is Fahrenheit."""
    found = []
    for value, unit in TEMPERATURE.findall(question.plain):
        found.append(to_degC(float(value)) if unit[0] == "f" else float(value))
    oven = question.says("oven", "roast", "bake", "airfryer", "how long", "time_")
    if not found and question.mentions and not oven:
        for value in _BARE_DEGREES.findall(question.plain):
            found.append(to_degC(float(value)) if float(value) > 100 else float(value))
    return tuple(found)


def altitude_m(question: Question) -> float:
    """The altitude said in the question, else that of the kitchen; one that no kitchen has is left out."""
    found = _ALTITUDE.search(question.plain)
    if not found:
        return _place_m(question) or question.kitchen.altitude_m
    height_m = float(re.sub(r"[,.]", "", found[1])) * (0.3048 if found[2].startswith("f") else 1.0)
    return height_m if height_m <= HIGHEST_M else question.kitchen.altitude_m


def says_altitude(question: Question) -> bool:
    """True if a height in metres or feet, or a city that lies high, stands in the question."""
    return _ALTITUDE.search(question.plain) is not None or _place_m(question) > 0.0


def _place_m(question: Question) -> float:
    """The height of a city named in the question, 0 if none is."""
    rows = question.store.table("places_high")
    return max(
        (float(row["altitude_m"]) for row in rows if f" {row['place']} " in question.plain), default=0.0
    )


def to_degC(degF: float) -> float:
    """Fahrenheit -> Celsius."""
    return (degF - 32) / 1.8


def as_read(degC: float) -> str:
    """A reading in both scales, to the tenth: rounded further it could seem to meet a minimum."""
    return f"{round(degC, 1):g} °C / {round(fahrenheit(degC), 1):g} °F"


def both(degC: float) -> str:
    """A temperature in both scales, as the answers print it."""
    return f"{degC:.0f} °C / {fahrenheit(degC):.0f} °F"


def quantities(question: Question) -> tuple[Quantity, ...]:
    """Numbers with units of measure, in order; a unit without a number counts as one."""
    pattern, units = _unit_pattern(question.store)
    said = regions(question)
    own = _regional(question.store, said[0]) if len(said) == 1 else {}
    return tuple(
        Quantity(
            value=_value(found[1]),
            unit=own.get(units[found[2]], units[found[2]]),
            start=found.start(),
            end=found.end(),
        )
        for found in pattern.finditer(question.plain)
    )


def regions(question: Question) -> tuple[str, ...]:
    """The countries whose measures are spoken of, in order: "uk", "us", "au"; "" is never among them."""
    rows = {
        row["word"]: row["means"]
        for row in question.store.table("words_questions")
        if row["role"] == "region"
    }
    said = [(question.plain.find(f" {word} "), region) for word, region in rows.items()]
    return tuple(dict.fromkeys(region for at, region in sorted(said) if at >= 0))


def _regional(store: Store, region: str) -> dict[str, str]:
    """A measure's id -> the id of the measure of that name in a country."""
    return {row["of"]: row["id"] for row in store.table("measures") if row["region"] == region}


def _value(said: str | None) -> float:
    if not said:
        return 1.0
    if said in _SAID:
        return _SAID[said]
    total = 0.0
    for part in said.replace(",", ".").split():
        top, _, bottom = part.partition("/")
        total += float(top) / (float(bottom) if bottom and float(bottom) else 1)
    return total


@lru_cache(maxsize=4)
def _unit_pattern(store: Store) -> tuple[re.Pattern[str], dict[str, str]]:
    units = {word: row["id"] for row in store.table("measures") for word in row["words"].split(";")}
    words = "|".join(re.escape(word) for word in sorted(units, key=len, reverse=True))
    return re.compile(rf"(?<= )(?:{NUMBER} ?)?({words})(?= )"), units
