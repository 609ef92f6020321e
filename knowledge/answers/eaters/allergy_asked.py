"""What a question about an allergy or a diet asks: what is in it, whether it may be eaten, or the list.

Words in any order are topics of `heard.csv`; what stands here is grammar. `{topic}` is any word of one.
"""

from __future__ import annotations

import re

from knowledge.answers.model import Question
from knowledge.answers.reading.heard import hears, pattern

# "are there nuts in it", "which sauces are nuts in", "is coconut a tree nut"
_IN_IT = (
    r" (?:is|are) \w+ in | (?:what|which) [\w ]+ (?:is|are) in "
    r"| (?:is|are|does|do) [\w ]+ {class of allergen} $"
)
# A yes to these says that it is in there; a yes to "free of", "safe for" or "can she eat" that it is not.
_PRESENCE = (
    r" (?:allergens?|triggers?|sets? off)(?: \w+){0,3} $| {trouble} (?:for|with|to|if) "
    r"| (?:allergens?|triggers?) (?:risk|for|to|in) | should (?:\w+ ){1,5}(?:avoid|leave out|skip) "
)
_FIT = re.compile(
    r" (?:\w+ free|ok|okay|fine|safe|suitable|can (?:\w+ ){1,6}(?:have|eat)|can (?:i|we|he|she|they|a|my)"
    r"|eat|allerg\w*|intoleran\w*) "
)
_OPENS_WITH_FIT = re.compile(
    r"^ (?:is|are|does|do|can|could|may|would|will|should|must) | (?:ok|okay|safe|suitable) (?:for|with|if) "
    r"| (?:ok|okay|safe|fine|suitable) $"
)
_OF_A_FOOD = re.compile(r" (?:is|are|can|does|do|has|have|will|would|may|eat|ok|okay|safe) ")
_FOR_ALLERGY = re.compile(r" (?:free|allerg\w*|intoleran\w*|sensitiv\w*) ")


def asks_for_the_list(question: Question) -> bool:
    """ "Allergens in soy sauce", but not "is it safe with an allergen": no verdict is asked for."""
    plain = question.plain.replace("what allergens are", "")
    return question.says("allergen", "allergic to", "allergies in") and _OF_A_FOOD.search(plain) is None


def speaks_of_diet(question: Question) -> bool:
    """True if a word for an allergy, a diet or what is in a food is said."""
    return hears(question, "speaks of a diet") or hears(question, "asks what it holds") or _is_in_it(question)


def names_diet(question: Question) -> bool:
    """True for a fit that is asked of an allergy or a diet outright, and of nothing else."""
    asks = _OPENS_WITH_FIT.search(question.plain) and not hears(question, "asks something else")
    return bool(asks) and hears(question, "names a diet")


def names_allergy(question: Question) -> bool:
    """True for a word of allergy or of what is in a food: what is not held must not be called safe."""
    return _FOR_ALLERGY.search(question.plain) is not None or _asks_what_it_holds(question)


def is_for_allergy(plain: str, words: str) -> bool:
    """True if these words of a diet stand before one of allergy: "nut free", "egg allergy"."""
    after = plain[plain.rfind(f" {words}") + 1 + len(words) :]
    return _FOR_ALLERGY.match(after) is not None


def leads(question: Question, *, is_way_of_eating: bool) -> tuple[str, str]:
    """The word that leads when it is in there, and when it is not; "" where the question leaves it open."""
    fits = [found[0] for found in _FIT.finditer(question.plain)]
    allergy_only = all("allerg" in fit or "intoleran" in fit for fit in fits)
    if pattern(question.store, _PRESENCE).search(question.plain):
        return ("Yes", "No") if allergy_only else ("", "")  # "can he eat it, should he avoid it"
    opens = _OPENS_WITH_FIT.search(question.plain) and not _asks_what_it_holds(question)
    if is_way_of_eating or not allergy_only or opens:
        return "No", "Yes"
    asked = hears(question, "what is in it") or (_asks_what_it_holds(question) and not fits)
    if asked:
        return "Yes", "No"
    return ("No", "") if hears(question, "an allergy is named") else ("", "")


def _asks_what_it_holds(question: Question) -> bool:
    words = ("asks what it holds", "what is in it", "in it")
    return any(hears(question, topic) for topic in words) or _is_in_it(question)


def _is_in_it(question: Question) -> bool:
    return pattern(question.store, _IN_IT).search(question.plain) is not None
