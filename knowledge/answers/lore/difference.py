"""Two things side by side, however that is said: "X vs Y", "is X the same as Y", "X or Y, the difference?".

A card that speaks of both answers; else each is told as if it had been asked for alone.
"""

from __future__ import annotations

import re

from knowledge.answers.dangers.advice import advice
from knowledge.answers.lore.about import what_is
from knowledge.answers.lore.craft import craft
from knowledge.answers.lore.terms import term
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.question import question_of

_NAME = r"(?:the |an? )?(?P<{}>[^\W\d]+(?: [^\W\d]+){{0,2}}?)"
_ONE, _OTHER = _NAME.format("one"), _NAME.format("other")
_SORT = r"(?:really|just|actually|basically|all|both|exactly|about|any|much|so|very)"
_TAIL = (
    r"(?: (?:thing|things|then|please|pls|or not|or what|or different|like|in|when|what|whats|which|is|for)"
    r"\b.*)? $"
)
_ASKED = tuple(
    re.compile(asked)
    for asked in (
        rf"(?:differences?|diff|distinction) (?:is |are )?between {_ONE} (?:and|or|vs) {_OTHER}{_TAIL}",
        rf"^ (?:what s |whats |what is |ok |so )*{_ONE} (?:or|and) {_OTHER}"
        rf" (?:what s|whats|what is|is there|any) (?:the |a |any )?difference.*$",
        rf"^ {_ONE} (?:vs|versus|v|compared to|against) {_OTHER}{_TAIL}",
        rf" (?:is|are) {_ONE} (?:{_SORT} )*(?:the same|same|different|similar)(?: things?)?"
        rf" (?:as|from|to|than) {_OTHER}{_TAIL}",
        rf" (?:is|are) {_ONE} and {_OTHER} (?:{_SORT} )*(?:the same|same|different|one thing).*$",
        rf" how (?:is|are|do|does) {_ONE} (?:differ|different|differs) (?:from|to|than) {_OTHER}{_TAIL}",
    )
)
_EATERS = ("baby", "babies", "toddler", "kid_", "kids_", "child", "dog_", "cat_")  # asked for another reason


def difference(question: Question) -> Answer | None:
    """What two things are, where both are known; the card that speaks of both, where there is one."""
    if hears(question, "names a diet") or question.says("pregnan", "safe", "how long", *_EATERS):
        return None
    found = next((m for asked in _ASKED if (m := asked.search(question.plain))), None)
    if found is None:
        return None
    one, other = found["one"], found["other"]
    for card in (craft(question), advice(question)):
        if card and _speaks_of(card, one[:5], other[:5]):
            return card
    shared = other.split()[-1]  # "blooming and tempering chocolate"
    whole = one if shared in one.split() else f"{one} {shared}"
    terms = [_term(question, whole) or _term(question, one), _term(question, other)]
    if None in terms and len(question.foods) == 1 and len(question.mentions) > 1:  # two names of one food
        return next((card for card in terms if card and _speaks_of(card, one, other)), None)
    told = [card or _food(question, name) for card, name in zip(terms, (one, other), strict=True)]
    known = [card for card in told if card is not None]
    if len({card.answer.partition(": ")[2] or card.answer for card in known}) < len(told):  # or of one row
        return None
    sources = tuple(dict.fromkeys(source for card in known for source in card.sources))
    return Answer(known=True, answer=" ".join(card.answer for card in known), sources=sources)


def _speaks_of(card: Answer, *names: str) -> bool:
    return all(name in card.answer.lower() for name in names)


def _term(question: Question, name: str) -> Answer | None:
    return term(_alone(question, name))


def _food(question: Question, name: str) -> Answer | None:
    return what_is(_alone(question, name))


def _alone(question: Question, name: str) -> Question:
    return question_of(f"what is {name}", store=question.store, kitchen=question.kitchen)
