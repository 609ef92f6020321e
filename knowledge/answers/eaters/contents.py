"""What is in a food, asked of an allergen by name: "does pesto contain nuts", "is squid shellfish".

A yes here says that it is in there, so these are read before a question whether it may be
eaten, where a no does: the sentence that asks is cut out of what is told around it ("my son is
allergic"), and read into the food and the allergens. Several of each are answered one by one.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from functools import lru_cache

from knowledge.answers.eaters.allergy_verdict import Case, Verdict, judged, said
from knowledge.answers.eaters.diets_said import diet_words, diets_said, ways_of_eating
from knowledge.answers.eaters.labelling import CHECK, authorities
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.question import question_of
from knowledge.answers.reading.subject import Subject, subject_of, told_names, without_free_names
from knowledge.foods.store import Store
from knowledge.text.clauses import clauses_of, met, says

MOST = 4  # pairs of a food and an allergen that one reply answers

_ASKS_A_FIT = clauses_of("{asks permission}|suitable|good for|bad for")
_SENTENCE = re.compile(r"[^.?!;:\n]+")
_CLAUSE = re.compile(r"[^.?!;:,\n]+")
_LINK = re.compile(r" (?:or|and|nor|plus|n) ")
_PRONOUN = re.compile(r"(?:it|them|this|that|these|those|there|one)")
_HEDGE = r"(?:(?:normally|usually|always|ever|often|actually|still|also|really|generally|typically|just) )*"
_ANY = (
    r"(?:(?:any|some|traces? of|a bit of|bits of|actual|real|the|an?|kind of|type of|form of|sort of"
    r"|considered|classed as|counted as|classified as|called) )*"
)
_LAST_WORDS = re.compile(rf" {_HEDGE}{_ANY}$")
# What may follow: who it is for, "and what else"; an allergy's own words make it another question.
_REST = (
    r"(?: (?:in it|in them|in there|products?|at all|or not|based|inside))*"
    r"(?P<rest>(?: (?:and|or|my|our|his|her|their|the|i|im|we|he|she|they|a|an|friend|guest|mum|mom|wife"
    r"|husband|son|daughter|kid|child|someone|with|for|because|cause|cos|coz|as|since|so|please|pls|thanks|if|when"
    r"|coeliac|celiac|allergic|asking|anything|what)\b.*)?)$"
)
# After anything: the question may begin late. The food is taken short, and long for "is almond milk dairy".
_LATE_FRAMES = (
    r"(?:is|are|was) there {any}{y} (?:in|inside) (?P<x>.+?)",
    r"(?:is|are|got|have they) ?{any}{y} (?:in|inside|an? ingredient (?:in|of)|part of) (?P<x>.+?)",
    r"(?:do|does|can|would|will|might|could|did) (?P<x>.+?) {hedge}"
    r"(?:contain|have|hold|include|come with|use|count as|got) {any}{y}",
    r"(?:is|are|has|have) (?P<x>.+?) {hedge}(?:made|got|contain\w*|thickened|cooked|prepared|full)"
    r" ?(?:with|of|from|out of|using)? {any}{y}",
    r"(?:is|are|isn t|isnt|aren t|arent) (?P<x>.+?) {hedge}{any}{y}",
    r"(?:is|are|isn t|isnt|aren t|arent) (?P<x>.+) {hedge}{any}{y}",
)
_FRAMES = (r"(?P<x>.+?) (?:contains?|has|have|got|containing) {any}{y}", r"{any}{y} in (?P<x>.+?)")
_BARE = r"(?P<x>.+) {y}"  # "pesto nuts?"


def contents(question: Question) -> Answer | None:
    """Whether the named allergens are in the named foods; None when that is not what is asked."""
    if hears(question, "asks for a stand in") or says(
        without_free_names(question.plain, question.store), "free_", "use_instead"
    ):
        return None
    for x, y, rest in _asked(question):
        if " use " in f"{rest} " or " swap" in rest:
            return None
        if met(f" {x} ", _ASKS_A_FIT):
            continue
        told = _told(question, x, y)
        if told is not None:
            return told
    return None


def _asked(question: Question) -> Iterator[tuple[str, str, str]]:
    """What may be the food, the allergens and what follows, as the frames have them."""
    store, text = question.store, question.text
    is_asking = "?" in text or len(question.words) <= 4
    for part in dict.fromkeys([*_SENTENCE.findall(text), *_CLAUSE.findall(text)]):
        asked = question_of(part, store=store, kitchen=question.kitchen)
        plain = asked.plain.strip()
        for frame in _frames(store):
            if (found := frame.search(plain)) and not _is_cut(asked, plain, found.start("y")):
                yield _bared(found["x"]), found["y"], found["rest"]
        found = _bare(store).search(plain) if is_asking else None
        if found and not _is_cut(asked, plain, found.start("y")) and _is_name(question, _bared(found["x"])):
            yield _bared(found["x"]), found["y"], ""


def _is_cut(asked: Question, plain: str, at: int) -> bool:
    """True if the allergen (at this sign) ends the name of a food: "almond milk", not "tuna fish"."""
    words, word = plain.split(), len(plain[:at].split())
    cut = (mention for mention in asked.mentions if mention.start < word < mention.end)
    return any(
        (alone := asked.store.named(" ".join(words[m.start : word]))) is None or alone.id != m.food.id
        for m in cut
    )


def _is_name(question: Question, words: str) -> bool:
    """True if these words are names of foods and nothing else."""
    alone = question_of(words, store=question.store, kitchen=question.kitchen)
    covered = sum(mention.end - mention.start for mention in alone.mentions)
    return words in told_names(question.store) or covered == len(alone.words) > 0


def _is_one_name(question: Question, words: str) -> bool:
    """True for "half and half", "macaroni and cheese"."""
    alone = question_of(words, store=question.store, kitchen=question.kitchen)
    is_whole = any(mention.phrase == words for mention in alone.mentions)
    return is_whole or words in told_names(question.store)


def _bared(x: str) -> str:
    """The food without the words that belong to the allergen: "lobster a kind of" shellfish."""
    return _LAST_WORDS.sub("", f"{x} ").strip()


def _told(question: Question, x: str, y: str) -> Answer | None:
    """The verdicts on each food of `x` for each allergen of `y`; None where no food is known."""
    store = question.store
    asked = diets_said(f" {y} ", store)
    names = _named_before(question, x) if _PRONOUN.fullmatch(x) else _names(question, x)
    sentences: list[str] = []
    is_held = False
    is_bought = hears(question, "own product")
    for name in names:
        for words, token in _of_allergens(asked, store).items():
            subject = _subject(question, name, words, token)
            if subject is None:
                return None
            case = Case(subject=subject, token=token, store=store, is_bought=is_bought)
            verdict = judged(case)
            if verdict is Verdict.UNKNOWN:
                return None
            is_held = is_held or verdict is Verdict.HAS_IT
            sentences.append(said(case, verdict, if_held="Yes", if_free="No"))
    if not sentences or len(sentences) > MOST:
        return None
    if is_held and question.says("allerg", "coeliac", "celiac", "intoleran"):
        sentences.append("So it is not safe with that allergy or intolerance.")
    return Answer(known=True, answer=" ".join([*dict.fromkeys(sentences), CHECK]), sources=authorities(store))


def _of_allergens(asked: dict[str, str], store: Store) -> dict[str, str]:
    """The longest words for each allergen said: "tree nut", not the "nut" of it."""
    longest = {
        words: token
        for words, token in asked.items()
        if not any(words != other and f" {words}" in f" {other}" for other in asked)
    }
    return {words: token for words, token in longest.items() if token not in ways_of_eating(store)}


def _subject(question: Question, name: str, words: str, token: str) -> Subject | None:
    """The food of this name, if it is known as a whole."""
    alone = replace(question_of(name, store=question.store, kitchen=question.kitchen), text=name)
    found = subject_of(alone, words, token)
    if found is None or not (found.foods or found.has or found.may):
        return None
    return found


def _names(question: Question, x: str) -> list[str]:
    """The foods that a stretch of words names side by side: "curry powder mayo or salad dressing"."""
    found: list[str] = []
    for piece in [x] if _is_one_name(question, x) else _LINK.split(f" {x} "):
        alone = question_of(piece, store=question.store, kitchen=question.kitchen)
        is_list = _is_name(question, piece.strip()) and piece.strip() not in told_names(question.store)
        found += [mention.phrase for mention in alone.mentions] if is_list else [piece.strip()]
    return [name for name in found if name]


def _named_before(question: Question, pronoun: str) -> list[str]:
    """What "it" stands for: the food of the whole message."""
    return [mention.phrase for mention in question.mentions[:1] if mention.phrase != pronoun]


@lru_cache(maxsize=4)
def _frames(store: Store) -> tuple[re.Pattern[str], ...]:
    frames = (*(f"(?:.* )?{frame}" for frame in _LATE_FRAMES), *_FRAMES)
    return tuple(_compiled(f"^{frame}{_REST}", store) for frame in frames)


@lru_cache(maxsize=4)
def _bare(store: Store) -> re.Pattern[str]:
    return _compiled(f"^{_BARE}$", store)


def _compiled(frame: str, store: Store) -> re.Pattern[str]:
    # "Nut free" and "coeliac" are said of who eats, not of what is in the food.
    words = sorted(
        (w for w in diet_words(store) if not re.search("allerg|free|liac$", w)), key=len, reverse=True
    )
    one = rf"(?:{'|'.join(re.escape(word) for word in words)})(?:e?s)?"
    several = rf"(?P<y>{one}(?:(?: or| and| nor)? {one})*)"
    return re.compile(frame.replace("{y}", several).replace("{any}", _ANY).replace("{hedge}", _HEDGE))
