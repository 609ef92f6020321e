"""Two things asked at once: two questions in one message, or one question about several foods."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import replace
from itertools import pairwise

from knowledge.answers.eaters.restraints import rules_out
from knowledge.answers.model import Answer, Mention, Question
from knowledge.text.normalise import key

Typed = Callable[[Question], Answer | None]

MOST = 3  # questions, or foods, that one reply answers
_LINKS = frozenset({"and", "or", "nor", "plus", "n", "vs", "versus", "also"})
_BESIDE = frozenset({"the", "a", "my", "some", "any", "of", "for"})
_SOMETHING = "thing"  # in the place of a food that another answer is about
_SENTENCE = re.compile(r"(?:[^.?!;\n]|(?<=\d)\.(?=\d))+[.?!;\n]*|[.?!;\n]+")  # "0.75" is one number
_ASKING = "how|what|whats|when|where|why|which|can|could|should|do|does|is|are|will|would"
_SECOND = re.compile(  # "... and how long does it keep": another question of the same sentence
    rf",? (?:and|also|plus)(?: also)? (?=(?:{_ASKING}) \w+)", re.IGNORECASE
)
_JOINT = re.compile(r"[,;:]? (?:and|but|because|cos|cause|since|though) |[,;:] | [-–—]+ ", re.IGNORECASE)
_ASKS = re.compile(rf"^(?:so |hi |hey |ok |and )?(?:{_ASKING})\b", re.IGNORECASE)
_PRONOUN = re.compile(
    r"\b(?:it|they|them|that|this|these|those)\b(?! (?:long|much|many|hot|way))", re.IGNORECASE
)
_WORD = re.compile(r"[^\W\d]{2}")
_LEAST_WORDS = 3  # of a question
_INTO = r"(?:to|in|into|as) (?:°?[cf]|[^\W\d]+)"
_UNIT = (
    r"(?:°?c|°?f|celsius|fahrenheit|gas marks?|gas|ml|millilit(?:er|re)s?|lit(?:er|re)s?|l|cups?|tbsps?|tbs"
    r"|tablespoons?|tsps?|teaspoons?|g|grams?|kg|kilos?|oz|ounces?|fl oz|fluid ounces?|lbs?|pounds?|pints?)"
)
_PLEASE = r"(?:,? (?:pls|plz|please|thanks|thx|ta))?[ ?.!]*"
_CONVERTED = re.compile(  # "200 g butter to cups and 150 g sugar to cups"
    rf"^(?P<one>.*\d.* {_INTO}),? and (?P<other>(?:\d|an? |half ).* {_INTO})[ ?.]*$", re.IGNORECASE
)
_ALSO_IN = re.compile(  # "350 f in c and gas mark"
    r"^(?P<told>.*\d.*?) (?P<into>to|in|into|as) (?P<one>gas mark|°?[^\W\d]+) and (?:in |to )?"
    rf"(?P<other>gas mark|°?[^\W\d]+){_PLEASE}$",
    re.IGNORECASE,
)
_ALSO_IN_WORDS = re.compile(  # "a third of a cup in tablespoons and ml"
    rf"^(?P<told>.+) (?P<into>to|in|into|as) (?P<one>{_UNIT}) and (?:in |to )?(?P<other>{_UNIT}){_PLEASE}$",
    re.IGNORECASE,
)
_HOW_MANY_OF_BOTH = (
    re.compile(  # "how many grams and ounces are in a pound", "how many ml in a cup and in oz"
        rf"^(?P<how>how many|how much) (?P<one>{_UNIT})(?: and (?:how many )?(?P<other>{_UNIT}))?"
        rf" (?P<of>(?:is|are|in|make|makes|are in|are there in) .+?)"
        rf"(?:,? and (?:how many |in |also in )?(?P<last>{_UNIT}))?{_PLEASE}$",
        re.IGNORECASE,
    )
)


def questions_in(text: str) -> tuple[str, ...]:
    """The questions of a message, each with what was told before it; the message itself when it asks one."""
    told, found = "", list[str]()
    for sentence in _SENTENCE.findall(text):
        if "?" not in sentence or not _WORD.search(sentence):  # "70? 80?" asks nothing by itself
            told += sentence
            continue
        found += [f"{told.strip()} {part.strip()}".strip() for part in _split(sentence)]
    if not found and not _SENTENCE.search(text.strip(" .?!")):
        return (text,)
    if not found:
        found = [part.strip() for part in _split(text)]
    return tuple(found[:MOST]) if len(found) > 1 else (text,)


def asked_alone(text: str) -> str:
    """The one question of a message without what is told around it."""
    return next((s.strip() for s in _SENTENCE.findall(text) if "?" in s), text)


def heads(text: str) -> Iterator[str]:
    """A message without what is hung on behind its question, the longest first: "..., just curious"."""
    for joint in reversed(list(_JOINT.finditer(text))):
        head = text[: joint.start()]
        if len(head.split()) >= _LEAST_WORDS and _ASKS.search(head):
            yield head


def _split(sentence: str) -> list[str]:
    if both := _CONVERTED.match(sentence.strip()):
        return [both["one"], both["other"]]
    if both := _HOW_MANY_OF_BOTH.match(sentence.strip()):
        units = [unit for unit in (both["one"], both["other"], both["last"]) if unit]
        return [f"{both['how']} {unit} {both['of']}" for unit in units] if units[1:] else [sentence]
    if also := _ALSO_IN.match(sentence.strip()) or _ALSO_IN_WORDS.match(sentence.strip()):
        return [f"{also['told']} {also['into']} {unit}" for unit in (also["one"], also["other"])]
    parts = _SECOND.split(sentence)
    return parts if all(len(part.split()) >= _LEAST_WORDS for part in parts) else [sentence]


def about(part: str, mention: Mention) -> str:
    """A question that names no food, about the food named before: "how long does it keep" of the leeks."""
    said = _PRONOUN.sub(mention.phrase, part, count=1)
    return said if said != part else f"{part.rstrip(' ?')} {mention.phrase}?"


def each(answer: Typed) -> Typed:
    """The same typed answer for every food of a list: "mussels, prawns or scallops"."""

    def answered(question: Question) -> Answer | None:
        listed = coordinated(question)[:MOST]
        if len(listed) < 2:
            return answer(question)
        found = [answer(_without(question, [m for m in listed if m is not one])) for one in listed]
        known = [one for one in found if one is not None and one.known]
        if not known:
            return None
        return joined(known) if len(known) > 1 else answer(question)

    return answered


def for_the_rest(question: Question, found: Answer, ways: Sequence[Typed]) -> Answer:
    """An answer with what it leaves out of a list of foods: "eggs, and potatoes" where it speaks of eggs."""
    listed = coordinated(question)[:MOST]
    left_out = [m for m in listed if not _names(found, m)]
    if not left_out or len(left_out) == len(listed):
        return found
    told = [found]
    for mention in left_out:
        alone = _without(question, [m for m in listed if m is not mention])
        more = next((one for way in ways if (one := way(alone)) is not None and one.known), None)
        if more is not None and _names(more, mention):
            told.append(more)
    return joined(told) if len(told) > 1 else found


def _names(answer: Answer, mention: Mention) -> bool:
    """True if an answer speaks of a food, by its own name or as the cook calls it."""
    said = answer.answer.lower()
    return any(key(name) in said for name in (mention.phrase, mention.food.name))


def coordinated(question: Question) -> tuple[Mention, ...]:
    """The first run of different foods named side by side, as long as none is one to be kept out."""
    words = question.plain.split()
    runs: list[list[Mention]] = []
    for mention in question.mentions:
        between = words[runs[-1][-1].end : mention.start] if runs else []
        if runs and all(w in _LINKS or w in _BESIDE for w in between):
            runs[-1].append(mention)
        else:
            runs.append([mention])
    for run in runs:
        foods = {m.food.id: m for m in run}
        if len(foods) > 1 and _is_list(run, question) and not any(rules_out(question, m) for m in run):
            return tuple(foods.values())
    return ()


def _is_list(run: Sequence[Mention], question: Question) -> bool:
    """ "Pork chops or tofu", "eggs, butter", "mussels prawns scallops"; "chicken rice" may be one dish."""
    words = question.plain.split()
    linked = any(w in _LINKS for m, n in pairwise(run) for w in words[m.end : n.start])
    return linked or len(run) >= MOST or any(_is_parted(m, n, question.text) for m, n in pairwise(run))


def _is_parted(mention: Mention, other: Mention, text: str) -> bool:
    apart = rf"{re.escape(mention.phrase)}\s*[,/]\s*{re.escape(other.phrase)}"
    return re.search(apart, text, re.IGNORECASE) is not None


def _without(question: Question, mentions: Sequence[Mention]) -> Question:
    """The question as if these foods were not named; the places of the other words stay."""
    plain, forms = question.plain.split(), list(question.words)
    for mention in mentions:
        for place in range(mention.start, mention.end):
            plain[place] = forms[place] = _SOMETHING
    return replace(
        question,
        plain=f" {' '.join(plain)} ",
        words=tuple(forms),
        mentions=tuple(m for m in question.mentions if m not in mentions),
    )


def joined(answers: Sequence[Answer]) -> Answer:
    """Several answers as one: what two of them say alike is said once, at the end."""
    told = [_sentences(answer.answer) for answer in answers]
    shared = [s for s in dict.fromkeys(told[0]) if all(s in one for one in told[1:])]
    own = [s for one in told for s in one if s not in shared]
    sources = tuple(dict.fromkeys(source for answer in answers for source in answer.sources))
    return Answer(known=True, answer=" ".join(dict.fromkeys((*own, *shared))), sources=sources)


def _sentences(text: str) -> list[str]:
    return re.split(r"(?<=[.!?]) (?=[A-Z\"'(])", text)
