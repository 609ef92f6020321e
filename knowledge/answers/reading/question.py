"""A question's text -> its plain words and the foods it names."""

from __future__ import annotations

import re
from functools import lru_cache

from knowledge.accidents import NOBODY_ILL
from knowledge.answers.model import Mention, Question
from knowledge.answers.reading.heard import meanings
from knowledge.answers.reading.minced import minced
from knowledge.answers.reading.numbers import in_digits
from knowledge.answers.reading.spelling import corrected
from knowledge.answers.reading.words import either_of, words_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner.model import Kitchen
from knowledge.text.clauses import says
from knowledge.text.normalise import flatten, key, singular

LONGEST_NAME = 5  # words of a food's name
SHORTEST_NAME = 3  # letters of a name of one word

# A minus before a temperature; behind a number, as in "180 -200 C", it is a range.
_BELOW_ZERO = re.compile(
    r"(?<!\d )(?:(?<=\s)|^)[-−](?=\d+(?:\.\d+)? ?(?:°|deg|celsius|centigrade|fahrenheit|[cf]\b))"
)
_MARKS = re.compile(r"[^\w.,/°%-]+|(?<!\d)[.,/-]|[.,/-](?!\d)")  # all but those within a number
_FEET_AND_INCHES = re.compile(r"\b(\d+ ?(?:ft|feet|foot) \d+) ?in\b")
_MINUS = re.compile(r"\b(?:minus|negative) (\d)")
_RICE_COOKER = re.compile(r"\brice cooker")
_AIR_FRYER = re.compile(r"\bair ?fry(?:ers?|ing|ed)?\b")
_WHAT = re.compile(r"\bwat (?=(?:is|are|s|does|do|to|can|should|would|temp\w*|size|about) )")
_UNTIL = re.compile(
    r"(?<= long) til |(?<!of) til (?=(?:my|the|it|i|we|they|he|she|your|our|his|her|this|that|these|an?"
    r"|grand\w+|home\w*|dinner|lunch|noon|tonight|tomorrow|morning|done|\d+)\b)"
)

# "No pressure cooker", "I don't have an instant pot": it is cooked in a pot, unless jars are closed with it
# or something is asked for in its place.
_NO_PRESSURE = re.compile(
    r"^(?!.*\b(?:cann(?:ed|er|ing)|can (?:beans|corn|meat|soup)|jars?|bottl\w+|seal\w*|preserv\w+|instead"
    r"|substitut\w*|what (?:can|could|do) i use)\b)"
    r"(?=.*\b(?:how (?:long|do i cook|to cook|do i boil|to boil)|times?|minutes)\b)"
    r"(.*)\b(?:without|no|not in|minus|(?:don t|dont|do not|haven t|havent) (?:have|own|got))"
    r" (?:(?:using|in|with|an?|the|my|any|instant|electric) )*"
    r"(?:pressure (?:cooker|pot|cooking)|instant pot)\b"
)

# What is said otherwise before its words are looked at, in this order.
_REWRITTEN: tuple[tuple[re.Pattern[str], str], ...] = (
    (_BELOW_ZERO, " minus "),
    (_MARKS, " "),
    (_NO_PRESSURE, r"\1in a pot"),
    (_FEET_AND_INCHES, r"\1 inches"),  # "6 ft 2 in"
    (_MINUS, r"-\1"),
    (_RICE_COOKER, "ricecooker"),  # not to be taken for a pressure cooker
    (_AIR_FRYER, "airfryer"),  # a device, not the bird called fryer
    (_WHAT, "what "),  # not the word of a slip that comes near "water"
    (NOBODY_ILL, " "),
    (_UNTIL, " until "),  # not the seed called til
)


def question_of(text: str, *, store: Store, kitchen: Kitchen, ruled_out: tuple[str, ...] = ()) -> Question:
    """Read a question. Never raises: whatever it holds is words."""
    plain = flatten(text).text
    for pattern, instead in _REWRITTEN:
        plain = pattern.sub(instead, plain)
    is_reading = says(f" {plain} ", *meanings(store, "of a reading")[""])
    words = corrected(in_digits(plain, is_reading=is_reading).split(), store)
    forms = tuple(singular(word) for word in words)
    return Question(
        text=text,
        plain=_small(store).sub(" small ", f" {' '.join(words)} "),
        words=forms,
        mentions=_mentions(words, forms, store),
        store=store,
        kitchen=kitchen,
        ruled_out=ruled_out,
    )


@lru_cache(maxsize=4)
def _small(store: Store) -> re.Pattern[str]:
    """ "Baby potatoes", "baby squid": a size, so that no advice for infants answers."""
    small = either_of(store, "small")
    return re.compile(
        r"(?<! my)(?<! our)(?<! her)(?<! his)(?<! the)(?<! give)"  # "can my baby plum": a child's
        rf" baby (?=(?:{small})(?:e?s)? )"
    )


def _mentions(words: list[str], forms: tuple[str, ...], store: Store) -> tuple[Mention, ...]:
    """The foods named, in order; at each word the longest name counts."""
    found: list[Mention] = []
    at = 0
    while at < len(words):
        mention = _named_at(at, words, forms, store)
        if mention is None:
            at += 1
            continue
        found.append(mention)
        at = mention.end
    sure = [m for m in found if m.phrase not in words_of(store, "ambiguous")]
    return minced(sure or found, words, store)


def _named_at(at: int, words: list[str], forms: tuple[str, ...], store: Store) -> Mention | None:
    """The food whose name, the longest there is, begins at a word."""
    names, ordinary = store.names(), words_of(store, "ordinary")
    for end in range(min(at + LONGEST_NAME, len(words)), at, -1):
        phrase = " ".join(words[at:end])
        if end - at == 1 and (phrase in ordinary or forms[at] in ordinary or len(phrase) < SHORTEST_NAME):
            continue
        if _is_measured(at, words):
            continue
        ids = names.get(" ".join(forms[at:end])) or names.get(phrase) or names.get(key(phrase))
        if not ids:
            continue
        food = _fresh(store.food(ids[0]), forms[at:end], words, store)
        if end - at > 1 and forms[end - 1] == "substitute":  # "eggs. substitute for mayonnaise"
            end -= 1
        return Mention(food=food, phrase=" ".join(words[at:end]), start=at, end=end)
    return None


def _is_measured(at: int, words: list[str]) -> bool:
    """ "200 gram flour", "grams flour": a measure, and no flour of the pulse called gram."""
    behind_number = at > 0 and words[at - 1][-1:].isdigit()
    return words[at] == "grams" or (words[at] == "gram" and behind_number)


def _fresh(food: Food, forms: tuple[str, ...], words: list[str], store: Store) -> Food:
    """ "Potato wedges" are cut potatoes unless frozen ones are spoken of."""
    if forms[-1] == "substitute":  # "egg substitute" asks for one
        return store.named(" ".join(forms[:-1])) or food
    if food.start_state != "frozen" or "frozen" in words or "oven" in words or len(forms) < 2:
        return food
    plain = store.named(" ".join(forms[:-1]))
    return plain if plain is not None and plain.cuts else food
