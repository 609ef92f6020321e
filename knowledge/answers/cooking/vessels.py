"""Which vessel for what, of which size, with or without its lid, and whether another one does.

What a kind of cooking takes stands in `vessel_uses.csv`, how a food takes to each vessel in the
planner's `method_fit.csv`, what a vessel is good at and how many it serves in `vessels.csv` and
`vessel_sizes.csv`. Fitness goes from 0 to 10 as in the planner.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from knowledge.answers.cite import cited
from knowledge.answers.dangers.advice import first_rank
from knowledge.answers.model import Answer, Question
from knowledge.answers.reading.heard import hears
from knowledge.answers.reading.numbers import COUNT, count_of
from knowledge.foods.model import Food
from knowledge.foods.store import Store
from knowledge.planner.methods import fit_of_food, methods
from knowledge.planner.words import plural
from knowledge.text.clauses import says

URGENT = 930  # advice up to this rank is about danger, or about one pan and its coating
GOOD = 6.0  # fitness from which a vessel is a cook's choice
POOR = 3.5  # below it nobody would
LITRES_A_HEAD = 0.9  # pot volume for one eater: 5 l for four to six; common practice
LIDS = {
    "on": "Lid on: it keeps steam, heat and liquid in; take it off at the end to thicken or brown. No lid at"
    " hand: foil or a baking sheet laid close, and watch the liquid.",
    "off": "No lid: steam has to leave, or the food stews and stays pale; a lid keeps water in and softens"
    " crusts.",
    "ajar": "Lid ajar: it simmers without boiling over and loses little; off at the end to thicken.",
}
NAMED = {  # topics of `heard.csv`
    "lidded pot": "names a lidded pot",
    "pressure cooker": "names a pressure cooker",
    "saute pan": "names a saute pan",
    "sheet pan": "names a sheet pan",
}
_ACROSS = re.compile(r" (\d\d) ?cm ")
_PEOPLE = re.compile(
    rf" (?:for|feeds?|serves?|serving) {COUNT}(?: people| persons| adults| guests| of us|(?= $)|(?= in ))"
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Use:
    """What is cooked, and how it takes to each vessel."""

    fits: Mapping[str, float]  # by vessel id, 0 to 10
    lid: str  # of `LIDS`, "" where it is not known
    takes: str  # the vessel in a cook's words, "" where only the food is known
    source: str


def vessel(question: Question) -> Answer | None:
    """The vessel that is asked for, its size or its lid; whether a vessel named will do."""
    rank = first_rank(question)
    plain = question.plain.replace(" in the oven ", " ") if _compared(question) else question.plain
    if (rank is not None and rank <= URGENT) or hears(question, "not about a vessel", plain=plain):
        return None
    use = _use(question)
    if hears(question, "asks how many a vessel feeds"):
        return _feeds(question)
    if use is None:
        return None
    for answer in (_size, _lid, _will_it_do, _which):
        found = answer(question, use)
        if found is not None:
            return Answer(known=True, answer=found, sources=cited(question.store, use.source))
    return None


def _use(question: Question) -> Use | None:
    """The kind of cooking that is said by most letters, else the food that is named."""
    said = [
        (len(word), row)
        for row in question.store.table("vessel_uses")
        for word in row["words"].split(";")
        if says(question.plain, word)
    ]
    if said:
        _, row = max(said, key=lambda found: found[0])
        columns = {vessel.id: row[vessel.id.replace(" ", "_")] for vessel in question.store.vessels()}
        return Use(
            fits={name: float(cell or 0) for name, cell in columns.items()},
            lid=row["lid"],
            takes=row["takes"],
            source=row["source"],
        )
    fits = next((fits for food in question.foods if (fits := _fits_of(food, question.store))), None)
    if fits is None:
        return None
    best = max(fits, key=lambda name: fits[name])
    lid = "on" if best in ("lidded pot", "pressure cooker") else "off"
    return Use(fits=fits, lid=lid, takes="", source="CP")


def _fits_of(food: Food, store: Store) -> dict[str, float] | None:
    """How well a food takes to each vessel by the best of its methods."""
    fit = fit_of_food(food, store)
    if fit is None:
        return None
    fits = {vessel.id: 0.0 for vessel in store.vessels()}
    for method in methods(store):
        fits[method.vessel] = max(fits[method.vessel], fit.by_method.get(method.id, 0.0))
    return fits


def _compared(question: Question) -> list[str]:
    """The two vessels between which the cook wavers: "sheet pan or pot"; none where there are not two."""
    named = [vessel.id for vessel in question.store.vessels() if hears(question, NAMED[vessel.id])]
    return named if len(named) == 2 and question.says("or_", "vs_", "versus") else []


def _better(use: Use, named: Sequence[str], store: Store) -> str:
    """Which of two vessels, and what the other one is good for."""
    first, second = sorted(named, key=lambda name: -use.fits[name])
    best = f"a {first}: {_why(first, store)}"
    if use.fits[second] >= GOOD:
        return f"Either; first {best}. A {second}: {_why(second, store)}."
    if use.fits[second] >= POOR:
        return f"Rather {best}. It can be done in a {second}, but that is not what it is good at."
    return f"Rather {best}. Not a {second}."


def _which(question: Question, use: Use) -> str | None:
    if compared := _compared(question):
        return _better(use, compared, question.store)
    if not hears(question, "asks for a vessel"):
        return None
    ranked = sorted(use.fits, key=lambda name: -use.fits[name])
    first = _takes(use) or f"A {ranked[0]}: {_why(ranked[0], question.store)}."
    others = [name for name in ranked[1:] if use.fits[name] >= GOOD and name not in first]
    poor = [name for name in ranked if use.fits[name] < POOR]
    text = first
    if others:
        text += f" A {' or '.join(others)} does it too."
    if poor:
        text += f" Not a {' nor a '.join(poor)}."
    return f"{text} {_size_for(question, use)}".strip()


def _takes(use: Use) -> str:
    """The vessel in a cook's words as a sentence, "" where only the food is known."""
    return f"{use.takes[0].upper()}{use.takes[1:]}." if use.takes else ""


def _why(name: str, store: Store) -> str:
    return store.vessel(name).why


def _best(use: Use) -> str:
    return max(use.fits, key=lambda name: use.fits[name])


def _size(question: Question, use: Use) -> str | None:
    if not hears(question, "asks a vessel size"):
        return None
    sized = _size_for(question, use)
    if not sized:
        sizes = question.store.vessel(_best(use)).sizes
        told = ", ".join(f"{size.id} for {size.serves:g}" for size in sizes)
        sized = f"A {_best(use)}, a whole dinner in it: {told}."
    return f"{sized} {_takes(use)}".strip()


def _size_for(question: Question, use: Use) -> str:
    """The size for a number of eaters, "" when none is said."""
    best = _best(use)
    people = _PEOPLE.search(question.plain)
    if not people:
        return ""
    count = count_of(people[1])
    sizes = [
        size
        for vessel in question.store.vessels()
        if vessel.id == best
        for size in sorted(vessel.sizes, key=lambda size: size.serves)
    ]
    enough = next((size for size in sizes if size.serves >= count), None)
    if enough is not None:
        sides = f" ({' x '.join(f'{side:g}' for side in enough.sides_cm)} cm)" if enough.sides_cm else ""
        return f"For {count}: a {best} of {enough.id}{sides}, dinner in one vessel."
    if best in ("lidded pot", "pressure cooker"):
        return f"For {count}: about {math.ceil(count * LITRES_A_HEAD)} litres, in one pot or two."
    number = math.ceil(count / sizes[-1].serves)
    return f"For {count}: {number} {plural(best)} of {sizes[-1].id}, one loose layer each, or in batches."


def _lid(question: Question, use: Use) -> str | None:
    if not hears(question, "asks about a lid") or use.lid not in LIDS:
        return None
    return LIDS[use.lid]


def _will_it_do(question: Question, use: Use) -> str | None:
    named = [vessel for vessel in question.store.vessels() if hears(question, NAMED[vessel.id])]
    if len(named) != 1 or not hears(question, "asks if a vessel will do"):
        return None
    name, best = named[0].id, _best(use)
    if hears(question, "doing without"):
        return _without(name, use, question.store)
    fit = use.fits[name]
    if fit >= GOOD:
        return f"Yes, a {name} does that well: {named[0].why}.{'' if best == name else f' Best is a {best}.'}"
    verdict = "It can be done, but it is not what it is good at" if fit >= POOR else "Better not"
    return f"{verdict}: a {best} is for that. {_takes(use)}".strip()


def _without(name: str, use: Use, store: Store) -> str:
    """Whether it can be cooked without a vessel, and in which."""
    ranked = sorted(use.fits, key=lambda other: -use.fits[other])
    others = [other for other in ranked if other != name and use.fits[other] >= GOOD]
    if not others:
        return f"Hardly: it wants a {name}, {_why(name, store)}."
    slower = " It takes about three times as long as under pressure." if name == "pressure cooker" else ""
    return f"Yes, without a {name}: a {' or '.join(others)} does it.{slower}"


def _feeds(question: Question) -> Answer | None:
    """How many a pan of so many centimetres feeds, by its floor beside the sizes of the table."""
    across = _ACROSS.search(question.plain)
    if across is None:
        return None
    pans = [
        size
        for v in question.store.vessels()
        for size in v.sizes
        if v.id == "saute pan" and size.id.endswith("cm")
    ]
    near = min(pans, key=lambda size: abs(int(size.id.split()[0]) - int(across[1])))
    serves = near.serves * (int(across[1]) / int(near.id.split()[0])) ** 2
    text = f"A {across[1]} cm pan holds a dinner for about {max(round(serves), 1)}."
    if hears(question, "tossed in a wok"):
        text = (
            f"A {across[1]} cm wok: 2-3 portions at a time, at most 4, though it holds more."
            " A home burner cannot keep more hot, and a full wok steams instead of frying: cook in batches."
        )
    return Answer(known=True, answer=text, sources=cited(question.store, near.source))
