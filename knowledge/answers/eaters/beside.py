"""The foods named beside an allergy or a diet, each judged, whatever is done with them.

"Coeliac guest, can I thicken the gravy with semolina" is heard as a question about thickening, and
the answer to that is no answer for a coeliac. What a message names and its eater must not have is
said first; the answer chosen stands behind it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace

from knowledge.answers.dangers.net import HELP
from knowledge.answers.eaters.allergy_verdict import Case, Verdict, judged, said
from knowledge.answers.eaters.diets_said import diets_said
from knowledge.answers.eaters.labelling import CHECK, authorities, have
from knowledge.answers.eaters.restraints import Restraint, is_refused, restraint, rules_out
from knowledge.answers.eaters.uncertain import is_warned
from knowledge.answers.model import Answer, Mention, Question
from knowledge.answers.reading.heard import hears, meanings, pattern
from knowledge.answers.reading.subject import Subject, named_so
from knowledge.answers.reading.words import words_of
from knowledge.answers.swaps.leaving import goes_surely
from knowledge.answers.swaps.swaps import SWAP

_NO = ("No:", "No,")
_DOUBT = "Not surely"
_PLAIN = "Plain "  # how what has nothing of it begins
MOST = 3  # foods that one reply judges beside its answer

_MADE = r" {being made}(?: (?:a|an|the|my|some|our|this|vegan|vegetarian))* $"
_INTO = re.compile(r" (?:in|into|for|to)(?: (?:a|an|the|my|our|some|coeliac|celiac|\w+ free|egg|vegan))* $")
_FREE_OF = re.compile(r"(?P<of>\w+) (?:free|less) $")  # "gluten free flour": the word in front counts
_WAYS_BEFORE = re.compile(r" (?:vegan|vegetarian|veggie|plant(?: based)?|eggless|dairyless|flourless|mock) $")
_NOT_HAD = re.compile(r"(?:free|less|allerg|intoleran|sensitiv)")
_ALLOWS = r"Yes: (?:plain )?{name}\w* (?:fits?|has no|have no)\b[^.]*\. ?"  # what one eater may have
_STANDS_FOR = (
    r"(?:Not surely|Not|No|No, not safe[^:]*|Yes|So): (?:[\w ]+ )?{name}|Not {name}|{name}[^.]*\blabelled\b"
    r"|Not a plain yes or no\. (?i:{name})"
)


def eaters_diets(question: Question) -> tuple[str, ...]:
    """What somebody in the message must not have, for every question of it."""
    return _held_by_eaters(question).diets if hears(question, "an eater is named") else ()


def judged_beside(question: Question, answer: Answer) -> Answer:
    """The answer, led by the verdict on each food that the question names and its eater must not have."""
    if not hears(question, "an eater is named") or _is_of_allergy(answer):
        return answer
    held = _held_by_eaters(question)
    if not held:
        return answer
    named = [(place, subject, _verdict_on(subject, held)) for place, subject in _named(question, held)]
    said_of = [(place, text) for place, subject, text in named if not _deals_with(answer, subject.name, text)]
    answer = _without_yes(answer, [subject.name for _, subject, text in named if text.startswith(_NO)])
    is_swap = answer.answer.startswith(SWAP)
    said_of = [
        (place, text)
        for place, text in said_of
        if not (answer.known and _is_dish(question, place, is_swap=is_swap))
    ]
    barred = [(place, text) for place, text in said_of if text.startswith(_NO)]
    if any(not _is_made(question, place) for place, _ in barred):
        barred = [(place, text) for place, text in barred if not _is_made(question, place)]
    is_refused_already = answer.known and answer.answer.startswith(_NO)
    doubtful = [] if is_refused_already else [text for _, text in said_of if text.startswith(_DOUBT)]
    free = _held_out(question, said_of, answer.answer) if is_swap else []
    told = list(dict.fromkeys([*(text for _, text in barred), *doubtful, *free]))[:MOST]
    if not told:
        return answer
    behind = [answer.answer] if answer.known else []
    checked = [] if answer.known and CHECK in answer.answer else [CHECK]
    return Answer(
        known=True,
        answer=" ".join([*told, *behind, *checked]),
        sources=tuple(dict.fromkeys((*authorities(question.store), *answer.sources))),
    )


def _held_by_eaters(question: Question) -> Restraint:
    return restraint(question, apart=[m for m in question.mentions if not _is_cause(question, m)])


def _is_of_allergy(answer: Answer) -> bool:
    """True if the answer is itself about an allergy, or calls for help: it has its verdict."""
    text = answer.answer.replace(CHECK, "")
    if any(call in text.lower() for call in HELP):
        return True
    is_defined = text.startswith("A ") and "allerg" in text.split(". ")[0]
    return is_defined or (text.startswith(("No:", "Yes, ")) and "allerg" in text)


def with_label(question: Question, answer: Answer) -> Answer:
    """No card goes out bare where an allergy was named."""
    has_advice = re.search("label|allerg|doctor", answer.answer) or _is_of_allergy(answer)
    is_bare = answer.known and question.mentions and not has_advice
    if not (is_bare and hears(question, "an allergy is named")):
        return answer
    return replace(answer, answer=f"{answer.answer} {CHECK}")


def _is_cause(question: Question, mention: Mention) -> bool:
    return rules_out(question, mention) or is_refused(question, mention)


def _causes(question: Question) -> set[int]:
    """Where what must not be had is told; named again, as in "peanuts: peanut noodles", it is to be eaten."""
    first: dict[str, int] = {}
    for mention in question.mentions:
        if _is_cause(question, mention):
            first.setdefault(mention.food.id, mention.start)
    return set(first.values())


def _named(question: Question, held: Restraint) -> Iterator[tuple[int, Subject]]:
    """What is named to be eaten, with the place (of words) where its name begins."""
    words = question.plain.split()
    causes = _causes(question)
    for start, end, subject in named_so(question):
        before = f" {' '.join(words[:start])} "
        if _is_word_of_diet(question, words, start, end):
            continue
        if start in causes or goes_surely(question, start, end) or _WAYS_BEFORE.search(before):
            continue
        claimed = _FREE_OF.search(before)
        if claimed is None or not _is_claimed(claimed["of"], held):
            yield start, subject


def _is_word_of_diet(question: Question, words: list[str], start: int, end: int) -> bool:
    """True for "lactose free", "milk allergy", "tree nuts": the word says what is not had."""
    name = " ".join(words[start:end])
    if name in meanings(question.store, "class of allergen")[""]:
        return True
    return bool(diets_said(f" {name} ", question.store)) and _NOT_HAD.match(" ".join(words[end:])) is not None


def _is_claimed(word: str, held: Restraint) -> bool:
    """True if what is free of this word is free of all that is ruled out; of lactose alone it is not."""
    tokens = diets_said(f" {word} ", held.store).values()
    return word != "lactose" and bool(tokens)


def _deals_with(answer: Answer, name: str, verdict: str) -> bool:
    """True if the answer itself gives the verdict on a food; a "Yes" for another eater is none."""
    one = re.escape(name.removesuffix("s"))
    if not answer.known or re.search(_STANDS_FOR.replace("{name}", one), answer.answer) is None:
        return False
    return not (verdict.startswith(_NO) and re.search(_ALLOWS.replace("{name}", one), answer.answer))


def _without_yes(answer: Answer, names: list[str]) -> Answer:
    """The answer without the sentence that allows to one eater what another must not have."""
    kept = answer.answer
    for name in names:
        kept = re.sub(_ALLOWS.replace("{name}", re.escape(name.removesuffix("s"))), "", kept)
    return replace(answer, answer=kept.strip()) if kept.strip() else answer


def _held_out(question: Question, said_of: list[tuple[int, str]], swap: str) -> list[str]:
    """That a food which the cook holds out has nothing of it, where the swap does not name it."""
    unnamed = {m.start for m in question.mentions if m.phrase.removesuffix("s") not in swap.lower()}
    words = question.plain.split()
    unnamed = {place for place in unnamed if not _INTO.search(f" {' '.join(words[:place])} ")}
    return [text for place, text in said_of if place in unnamed and text.startswith(_PLAIN)]


def _verdict_on(subject: Subject, held: Restraint) -> str:
    """The verdict in words, the worst of all that is ruled out; "" where it is not known."""
    cases = [Case(subject=subject, token=token, store=held.store) for token in held.diets]
    verdicts = [(case, judged(case)) for case in cases]
    for wanted in (Verdict.HAS_IT, Verdict.KIN, Verdict.MAYBE):
        for case, verdict in verdicts:
            if verdict is wanted and not (wanted is Verdict.MAYBE and not (subject.may or _is_warned(case))):
                return said(case, verdict, if_held="No", if_free="")
        if wanted is Verdict.HAS_IT and (shared := _shared(subject, held)):
            return f"No, not safe: {subject.name} {have(subject.name, shared)}."
    if verdicts and subject.foods and all(verdict is Verdict.FREE for _, verdict in verdicts):
        return said(cases[0], Verdict.FREE, if_held="No", if_free="")
    return ""


def _is_warned(case: Case) -> bool:
    """True if the food's own note tells of it, not only that what is made of many things has a label."""
    return case.food is not None and is_warned(case.food, case.label)


def _shared(subject: Subject, held: Restraint) -> frozenset[str]:
    """The allergens that a food has in common with a food that is ruled out."""
    refused = frozenset[str]().union(*(m.food.allergens for m in held.foods))
    return refused & (subject.has.union(*(food.allergens for food in subject.foods)))


def _is_made(question: Question, place: int) -> bool:
    """True for "thicken the gravy", "making korma": what is made, and not what goes into it."""
    before = f" {' '.join(question.plain.split()[:place])} "
    return pattern(question.store, _MADE).search(before) is not None


def _is_dish(question: Question, place: int, *, is_swap: bool) -> bool:
    """True for a dish that is made, or that a swap is for: of several things, it can be made without one."""
    food = next((m.food for m in question.mentions if m.start == place), None)
    if food is not None and food.group not in words_of(question.store, "made"):
        return False
    before = f" {' '.join(question.plain.split()[:place])} "
    return _is_made(question, place) or (is_swap and _INTO.search(before) is not None)
