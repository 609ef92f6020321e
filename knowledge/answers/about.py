"""What a food is, and when its fat smokes."""

from __future__ import annotations

import re
from collections.abc import Mapping

from knowledge.answers.cite import cited
from knowledge.answers.degrees import both, temperatures_degC
from knowledge.answers.model import Answer, Question
from knowledge.answers.words import words_of
from knowledge.foods.model import Food, Role

_IS_IT = re.compile(
    r" (?:is|are) (?:an? )?[\w ]{2,20} (?:an?|just|really|another (?:name|word) for) [\w ]{2,20} $"
)
_EMPHASIS = re.compile(r" (?:on earth|the heck|the hell|exactly|even|actually|please) ")
_OTHER_NAME = re.compile(
    r" (?:in (?:american|british|english|america|britain|the us|the uk|us english|uk english)"
    r"|word for|name for|call an?|called in|other name|another name|synonym) "
)
_WHAT_IS = re.compile(
    r" (?:what is|what s|whats|what are|wat is|what does|tell me about|explain|define|meaning of|what kind of"
    r"|describe|know about) "
)


UNREFINED_DEGC = 160.0  # cautious: unrefined groundnut and like oils (common practice)
_UNREFINED = re.compile(
    r" (?:red palm|unrefined|cold pressed|virgin (?!olive)|raw (?=\w+ oil)|crude|unfiltered|unbleached) ?"
)


def smoke(question: Question) -> Answer | None:
    """Smoke points of fats."""
    named = [m.food for m in question.mentions if m.food.smoke_degC and m.phrase != "oil"]
    hot = [degC for degC in temperatures_degC(question) if degC > 110]
    asked = question.says(
        "smoke point", "smoking point", "high heat", "burning point", "smoke at", "smoke temp", "best oil",
        "what oil", "which oil", "oil is best", "oil for",
        *(("max_", "maximum", "how hot", "highest", "smoke_", "smokes") if named else ()),
    )  # fmt: skip
    heated = question.says(
        "fry", "cook with", "burn", "how high", "how hot can", "sear", "roast", "saute", "grill"
    )
    if question.says("instead", "alternativ", "substitut", "replac", "swap"):
        return None
    if not asked and not (named and (hot or heated) and len(question.foods) == 1):
        return None
    fats = named
    if fats:
        said = "; ".join(f"{food.name} {both(food.smoke_degC or 0)}" for food in fats)
        text = f"Smoke point, the cautious end: {said}. Refined fats stand more, unrefined ones less"
    else:
        every = sorted(
            (f for f in question.store.foods() if f.smoke_degC), key=lambda f: -(f.smoke_degC or 0)
        )
        said = "; ".join(f"{food.name} {both(food.smoke_degC or 0)}" for food in every[:6])
        low = [f"{f.name} {both(f.smoke_degC or 0)}" for f in every if f.id in ("olive-oil", "butter")]
        text = f"Highest smoke points: {said}; {', '.join(low)}"
    text += "; tables differ by 30 °C."
    if named and _UNREFINED.search(question.plain) and (named[0].smoke_degC or 0) > UNREFINED_DEGC:
        text = (
            f"Unrefined, {named[0].name} smokes far below the {both(named[0].smoke_degC or 0)} of the refined"
        )
        text += (
            f": I hold no figure of its own, take {both(UNREFINED_DEGC)} at most, less for seed and nut oils"
        )
        if hot:
            text = f"{'No' if hot[0] > UNREFINED_DEGC else 'Yes, but no hotter'}. {text}"
        return Answer(
            known=True,
            answer=f"{text}. Never heat fat until it smokes.",
            sources=cited(question.store, "S-SMOKE"),
        )
    if named and hot:
        smokes = (named[0].smoke_degC or 0) <= hot[0]
        verdict = "Too hot for it bare in a pan" if smokes else "Yes, below its smoke point"
        text = f"{verdict} at {both(hot[0])}. {text}" + (
            " In an oven moist food stays cooler." if smokes else ""
        )
    if question.says("high heat"):
        text += " For high heat take one above 220 °C / 428 °F."
    return Answer(
        known=True, answer=f"{text} Never heat fat until it smokes.", sources=cited(question.store, "S-SMOKE")
    )


def what_is(question: Question) -> Answer | None:
    """A food in a few words; two foods side by side."""
    mentions = question.mentions
    alike = _IS_IT.search(question.plain) is not None or question.says(
        "difference", "same as", "same thing", "versus", "vs_", "the same"
    )
    if alike and len(mentions) >= 2 and len(question.foods) == 1:
        food = question.foods[0]
        text = f"Much the same: {mentions[0].phrase} and {mentions[1].phrase} are both {food.name} to me. "
        return Answer(
            known=True, answer=text + _described(question, food), sources=cited(question.store, *_src(food))
        )
    if len(question.foods) >= 2 and (alike or question.says("vs", "compare", "or_")):
        first, second = question.foods[:2]
        text = f"{_described(question, first)} {_described(question, second)}"
        return Answer(known=True, answer=text, sources=cited(question.store, *_src(first), *_src(second)))
    if len(question.foods) == 1 and _OTHER_NAME.search(question.plain):
        food = question.foods[0]
        return Answer(
            known=True, answer=_described(question, food), sources=cited(question.store, *_src(food))
        )
    asked = _WHAT_IS.search(_EMPHASIS.sub(" ", question.plain))
    if not asked or len(question.foods) != 1 or len(question.words) > 8:
        return None
    left = set(question.words) - {w for m in mentions for w in question.words[m.start : m.end]}
    if left - words_of(question.store, "filler"):
        return None
    food = question.foods[0]
    return Answer(known=True, answer=_described(question, food), sources=cited(question.store, *_src(food)))


def term(question: Question) -> Answer | None:
    """A dish or a thing of the kitchen that is no food of the tables, in a sentence."""
    plain = _EMPHASIS.sub(" ", question.plain)
    found = _term_said(question, plain) if _WHAT_IS.search(plain) else None
    if found is None:
        return None
    name, row = found
    if set(plain.replace(f" {name} ", " ", 1).split()) - words_of(question.store, "filler"):
        return None
    return Answer(known=True, answer=_explained(name, row), sources=cited(question.store, row["source"]))


def _term_said(question: Question, plain: str) -> tuple[str, Mapping[str, str]] | None:
    """The longest name of `terms.csv` in the question, with its row."""
    said = [
        (name, row)
        for row in question.store.table("terms")
        for name in row["names"].split(";")
        if f" {name} " in plain
    ]
    return max(said, key=lambda found: (len(found[0]), found[0]), default=None)


def _explained(name: str, row: Mapping[str, str]) -> str:
    article = row["text"].startswith(("A ", "An ", "The "))
    text = row["text"][0].lower() + row["text"][1:] if article else row["text"]
    return f"{name.capitalize()}: {text}"


def when_to_add(question: Question) -> Answer | None:
    """ "When do I add vinegar": the moment a seasoning goes in."""
    if not question.says(
        "when do", "when should", "when to", "what point do", "when does", "when is it best"
    ):
        return None
    food = next((food for food in question.foods if food.when), None)
    if food is None or not question.says("add", "put", "go in", "goes in", "season with"):
        return None
    text = f"{food.name.capitalize()} goes in {_when(food)}" + (f": {food.does}." if food.does else ".")
    return Answer(known=True, answer=text, sources=cited(question.store, "CP"))


def _src(food: Food) -> tuple[str, ...]:
    return tuple(dict.fromkeys(source for _, source in food.sources))[:2] or ("CP",)


def _described(question: Question, food: Food) -> str:
    other = [name for name, _ in question.store.synonyms(food.id) if name.isascii()]
    said = {m.phrase for m in question.mentions}
    names = [n for n in other if n in said] + [n for n in other if n not in said]
    called = f", also called {', '.join(dict.fromkeys(names[:8]))}" if names else ""
    kind = food.group if food.role is not Role.SEASON else f"{food.group}, goes in {_when(food)}"
    tail = f" {food.does[0].upper()}{food.does[1:]}." if food.does else ""
    return f"{food.name.capitalize()} ({kind}){called}.{tail}"


def _when(food: Food) -> str:
    return {
        "start": "at the start", "aromatics": "with the aromatics", "liquid": "with the liquid",
        "end": "at the end", "table": "at the table",
    }.get(str(food.when.value) if food.when else "", "when you like")  # fmt: skip
