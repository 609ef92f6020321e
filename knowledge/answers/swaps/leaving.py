"""Which food a question wants replaced, and which one it holds out in its place.

"Almond milk instead of cow's milk": the words around each food tell what goes and what comes.
A food that is named only to be kept out ("no nuts please") is neither, if another is named.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from knowledge.answers.eaters.diets_said import diets_said
from knowledge.answers.eaters.restraints import is_refused, rules_out, speaks_of_harm
from knowledge.answers.model import Mention, Question
from knowledge.answers.reading.heard import hears

_ARTICLES = r"(?:any |the |my |some |a |an |her |his |our |plain |cow s |cows )*"


def _before_it(*words: str) -> tuple[re.Pattern[str], ...]:
    return tuple(re.compile(rf" (?:{one}) {_ARTICLES}") for one in words)


# What stands before the food that goes, the surest words first: "no nuts please, what instead of
# walnuts" is about the walnuts.
_SURELY_GOES = _before_it(
    r"instead of|in place of|rather than|substitut\w* for|subs? for|replacements? (?:for|of)|replacing"
    r"|alternativ\w* (?:to|for|of)|replaces?|stands? in for|else than|other than|besides"
    r"|(?:trade|exchange|switch)(?: out)?|place of|equivalents? (?:of|to|for)",
    r"swaps? for|swap(?:ping)?(?: out)?",
    r"out of|ran out of|don ?t have(?: any)?|haven ?t got(?: any)?|have no|got no|can ?t (?:find|get)"
    r"|couldn ?t (?:find|get)|short of|lacking|missing|there ?(?:is|s) no",
)
# What is missing is what "no" speaks of; only then the thing after "for", which may be the dish.
_USED_FOR = _before_it(r"use for|do for")
_MAY_GO = (
    *_before_it(r"no|without|hate|don ?t like"),
    *_USED_FOR,
    re.compile(rf" (?:substitute|sub) {_ARTICLES}(?!(?:\w+ ){{1,3}}for )"),  # not the X of "sub X for Y"
    *_before_it("for"),
)
_REPLACED_AFTER = re.compile(
    r"(?:replacements?|substitutes?|alternatives?|swaps?|subs?|stand ins?)\b(?! for| of)"
)
_REPLACEMENT = re.compile(r"(?:replacements?|replacers?|substitutes?|alternatives?|swaps?|subs?)$")
_OFFERED_BEFORE = re.compile(r"\b(?:use|using|try|with|by|is|are|will|would|could|does|do)(?: \w+)?$")
_OFFERED_AFTER = re.compile(r"(?:instead|in place|for|work|works|replace|as|be|do)\b")
_INSTEAD_AFTER = re.compile(r"\b(?:instead|in place|as an? (?:swap|option|substitute|replacement))\b(?! of)")


_OVER = re.compile(
    r" (?:(?:is|are|was|were) (?:just |all |now )?(?:over|finished|gone|used up|empty)(?! \d)"
    r"|(?:has |have |just )*r[au]n out) "
)


def used_up(question: Question) -> Mention | None:
    """The food of which it is said that it is over: "tamarind is over", "the butter has run out"."""
    words = question.plain.split()
    return next(
        (m for m in question.mentions if _OVER.match(f" {' '.join(words[m.end : m.end + 4])} ")), None
    )


def leaving(question: Question) -> Mention:
    """The food to be replaced; the question names at least one."""
    if binder := _egg_that_binds(question):
        return binder
    if over := used_up(question):
        return over
    kept = [mention for mention in question.mentions if not rules_out(question, mention)]
    if not kept:
        return _gone(question, question.mentions) or _most_likely(question, question.mentions)
    return _named_before_its_stand_in(question, kept) or _gone(question, kept) or _most_likely(question, kept)


def held_out(question: Question, goes: Mention) -> Mention | None:
    """The food that the question itself holds out instead."""
    if used_up(question):  # what is at home is listed, and behind "for" stands the dish
        return None
    others = (m for m in question.mentions if m.food.id != goes.food.id and not rules_out(question, m))
    return next((m for m in others if not is_refused(question, m) and _is_offered(question, m)), None)


def is_only_offered(question: Question, mention: Mention) -> bool:
    """True for "milk allergy, goat's milk instead?": what is asked is whether this one may be had."""
    if _goes_by_a_cue(question, mention.start):
        return False
    after = " ".join(question.plain.split()[mention.end : mention.end + 3])
    return _INSTEAD_AFTER.search(after) is not None or _is_offered(question, mention)


def goes_surely(question: Question, start: int, end: int) -> bool:
    """True if what stands between these places (of words) is what is to be replaced, in so many words."""
    behind = " ".join(question.plain.split()[end : end + 1])
    return _goes_by_a_cue(question, start) or _REPLACEMENT.match(behind) is not None


def _goes_by_a_cue(question: Question, start: int) -> bool:
    before = f" {' '.join(question.plain.split()[:start])} "
    return any(
        found.end() == len(before) for cue in (*_SURELY_GOES, *_USED_FOR) for found in cue.finditer(before)
    )


def _egg_that_binds(question: Question) -> Mention | None:
    """ "What binds a burger without egg": it is the egg that goes, whatever else is named."""
    if not hears(question, "binds"):
        return None
    return next((mention for mention in question.mentions if mention.food.group == "egg"), None)


def _named_before_its_stand_in(question: Question, mentions: Iterable[Mention]) -> Mention | None:
    """ "Almond replacement without soy"."""
    words = question.plain.split()
    return next((m for m in mentions if goes_before(words, m.end)), None)


def _gone(question: Question, mentions: Iterable[Mention]) -> Mention | None:
    """The food that stands right behind the surest words of what goes."""
    near = (next((m for m in mentions if at < m.end and m.start <= at + 1), None) for at in goes_at(question))
    return next((mention for mention in near if mention), None)


def goes_before(words: Sequence[str], at: int) -> bool:
    """True if a word for its stand-in follows a name that ends at this place (of words)."""
    return _REPLACED_AFTER.match(" ".join(words[at : at + 2])) is not None


def goes_at(question: Question) -> Iterator[int]:
    """The places (of words) behind the words of what goes, the surest first."""
    for cue in (*_SURELY_GOES, *_MAY_GO):
        for found in cue.finditer(question.plain):
            yield len(question.plain[: found.end()].split())


def _most_likely(question: Question, mentions: Sequence[Mention]) -> Mention:
    """The first food; where harm is spoken of, the first that is no word for a diet: "nut free pesto"."""
    if speaks_of_harm(question):
        no_diet = (m for m in mentions if not diets_said(f" {m.phrase} ", question.store))
        return next(no_diet, mentions[0])
    return mentions[0]


def _is_offered(question: Question, mention: Mention) -> bool:
    """True if the question holds this food out as the stand-in: "can I use milk instead", "with milk"."""
    words = question.plain.split()
    before = " ".join(words[max(mention.start - 2, 0) : mention.start])
    after = " ".join(words[mention.end : mention.end + 2])
    return _OFFERED_BEFORE.search(before) is not None or _OFFERED_AFTER.match(after) is not None
