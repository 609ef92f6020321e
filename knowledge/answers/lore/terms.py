"""What a dish, a cut of a country or a thing of the kitchen is: `terms.csv`; two of them side by side."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from knowledge.answers.cite import cited
from knowledge.answers.lore.about import described, what_is_said, without_emphasis
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears, meanings
from knowledge.answers.reading.words import words_of
from knowledge.foods.model import Food

Row = Mapping[str, str]
Named = tuple[str, Row]  # a name of `terms.csv` as it is said, and its row


def term(question: Question) -> Answer | None:
    """A dish or a thing of the kitchen in a sentence, what it is called elsewhere, or two compared."""
    plain = without_emphasis(question.plain)
    alike = hears(question, "compares") or hears(question, "likens")
    if not (alike or what_is_said(question) or hears(question, "asks for another name")):
        return None
    named, rest = _named(question, plain)
    if not named:
        return None
    foods = _foods_beside(question, [name for name, _ in named]) if alike else []
    if _says_more(question, rest, foods):
        return None
    return _side_by_side(question, named, foods) if alike else _told(question, named[:1])


def _named(question: Question, plain: str) -> tuple[list[Named], str]:
    """The names said, in order, at each place the longest; and what is said besides."""
    names = ((name, row) for row in question.store.table("terms") for name in row["names"].split(";"))
    said = sorted((found for found in names if f" {found[0]} " in plain), key=lambda found: -len(found[0]))
    named: list[tuple[int, Named]] = []
    rest = plain
    for name, row in said:
        at = rest.find(f" {name} ")
        if at >= 0:
            named.append((at, (name, row)))
            rest = rest.replace(f" {name} ", f" {'_' * len(name)} ", 1)
    return [found for _, found in sorted(named, key=lambda found: found[0])], rest.replace("_", "")


def _foods_beside(question: Question, names: Sequence[str]) -> list[Food]:
    """The foods that are named by other words than the terms."""
    return [m.food for m in question.mentions if not any(m.phrase in name for name in names)]


def _says_more(question: Question, rest: str, foods: Sequence[Food]) -> bool:
    """True if a word is left that speaks of something else."""
    beside = {word for words in meanings(question.store, "beside a name").values() for word in words}
    phrases = " ".join(m.phrase for m in question.mentions if m.food in foods)
    return bool(set(rest.split()) - set(phrases.split()) - words_of(question.store, "filler") - beside)


def _side_by_side(question: Question, named: Sequence[Named], foods: Sequence[Food]) -> Answer:
    rows = {row["id"]: (name, row) for name, row in reversed(named)}
    first = _told(question, [found for found in named if rows[found[1]["id"]] == found][:2])
    if len(rows) > 1 or not foods:
        if len(rows) == 1 and len(named) > 1:
            one, other = (name for name, _ in named[:2])
            return replace(first, answer=f"Two names of one kind: {one} and {other}. {first.answer}")
        return first
    return replace(first, answer=f"{first.answer} {described(question, foods[0])}")


def _told(question: Question, named: Sequence[Named]) -> Answer:
    return Answer(
        known=True,
        answer=" ".join(_explained(name, row) for name, row in named),
        sources=cited(question.store, *(row["source"] for _, row in named)),
    )


def _explained(name: str, row: Row) -> str:
    article = row["text"].startswith(("A ", "An ", "The "))
    text = row["text"][0].lower() + row["text"][1:] if article else row["text"]
    return f"{name.capitalize()}: {text}"
