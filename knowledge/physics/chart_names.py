"""Names of foods as cooking charts write them -> foods.

"rice, white", "beef chuck or round", "lima beans, large dry": a head with modifiers,
alternatives, trade words. The exact name first, then turned round, then the longest run of
words that is a name; at last a like food by a telling word ("roast", "berries").
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from functools import cache
from typing import TYPE_CHECKING

from knowledge.errors import UnknownFood
from knowledge.foods.model import Food
from knowledge.physics import tables

if TYPE_CHECKING:
    from knowledge.foods.store import Store

_SOFTENED = frozenset({"", "tender", "soft", "crisp_tender"})
_HEATED = frozenset({"cook", "finish"})
_NOISE = re.compile(
    r"\((?:[^)]*)\)|\b(?:generic|boiled|fresh|dry|dried|whole|common|raw|young|old|large|small|medium|"
    r"frozen|cooked|peeled|soaked|unsoaked|pieces?|cubes?|slices?|item|food)\b"
)


_OTHER_STATE = {"fresh": "fresh", "dry": "dried", "soaked": "dried", "canned": "canned"}
_KEPT = {"fridge": "fresh", "room": "fresh", "frozen": "fresh", "dried": "dry"}


def resolve(name: str, cut_text: str, endpoint: str, store: Store, state: str = "") -> tuple[Food, str]:
    """The food a chart's name means, and a note where it is only a like one. Raises UnknownFood.

    `state` is how it goes in: beans from the fridge are the fresh ones, soaked ones the dried.
    """
    food, note = _called(name, cut_text, endpoint, store)
    return _in_state(food, state, store), note


def _in_state(food: Food, state: str, store: Store) -> Food:
    """The same plant fresh, dried or canned, where it is kept as another food in that state."""
    state, own = _KEPT.get(state, state), _KEPT.get(food.start_state, food.start_state)
    said = _OTHER_STATE.get(state)
    if said is None or said == _OTHER_STATE.get(own):
        return food
    other = store.named(f"{said} {food.name}")
    return food if other is None or other.role != "cook" else other


def _called(name: str, cut_text: str, endpoint: str, store: Store) -> tuple[Food, str]:
    for said in _phrases(name, cut_text):
        if (food := store.named(said)) is not None and _fits(food, endpoint):
            return food, ""
    best: tuple[int, Food] | None = None
    for said in dict.fromkeys((name.lower(), *_parts(name))):
        for run in _runs(_words(said)):
            if best is not None and len(run) <= best[0]:
                continue
            food = store.named(run)
            if food is not None and _fits(food, endpoint):
                best = (len(run), food)
    if best is not None:
        return best[1], ""
    words = set(_words(name))
    words |= {word.removesuffix(end) for word in words for end in ("s", "es")}
    words |= {word.removesuffix("ies") + "y" for word in words if word.endswith("ies")}
    for row in _likes():
        if row["by"] == "word" and row["said"] in words:
            note = "taken as"
        elif row["by"] == "endpoint" and row["said"] == endpoint:
            note = "not known; taken as"
        else:
            continue
        for food in map(store.food, row["foods"].split(";")):
            if _fits(food, endpoint):
                return food, f"{note} {food.name}"
    for said in _phrases(name, cut_text):  # eaten raw or only warmed as a rule; a chart cooks it all the same
        if endpoint in _SOFTENED and (food := store.named(said)) is not None and food.role in _HEATED:
            return food, ""
    raise UnknownFood(name)


@cache
def _likes() -> tuple[Mapping[str, str], ...]:
    """What stands in for a food we have not, by a word of its name or by how it is done; in order."""
    return tuple(sorted(tables.rows("chart_likes"), key=lambda row: int(row["rank"])))


def _fits(food: Food, endpoint: str) -> bool:
    """Can this food come to that end? Keeps "pork stock" from standing in for pork."""
    if food.role != "cook":
        return False
    if endpoint in ("core_temp", "fork_tender_meat"):
        return food.animal not in ("", "dairy", "honey")
    if endpoint == "flaky":
        return food.animal in ("fish", "shellfish")
    return food.doneness != "none" and (not endpoint or food.doneness != "warm_through")


def _words(text: str) -> list[str]:
    return re.findall(r"[^\W\d_]+", text.lower())


def _parts(name: str) -> list[str]:
    return [part.strip() for part in re.split(r",|/|\bor\b", name.lower()) if part.strip()]


def _phrases(name: str, cut_text: str) -> Iterator[str]:
    """Ways to say the whole name, best first."""
    low = name.lower()
    head, _, rest = low.partition(",")
    if not rest:
        yield low
    else:  # "cabbage, green" is a green cabbage, not cabbage greens
        for modifier in re.split(r"\bor\b|/", rest):
            yield f"{modifier.strip()} {head.strip()}"
            yield f"{head.strip()} {modifier.strip()}"
        words = re.findall(r"[a-z]+", rest)
        for word in words:
            yield f"{word} {head.strip()}"
            yield f"{word} {head.strip().split()[-1]}"
    cut = cut_text.lower()
    if re.search(r"\bground\b|\bminced?\b", f"{low} {cut}"):
        yield f"ground {head}"
    for part in _parts(low):
        yield part
    clean = " ".join(_NOISE.sub(" ", low).replace(",", " ").split())
    if clean and clean != low:
        yield clean
        for part in _parts(_NOISE.sub(" ", low)):
            yield " ".join(part.split())
    if rest:
        yield head.strip()


def _runs(words: list[str]) -> Iterator[str]:
    """Every run of words, the longest first, the later ones (the head noun) before the earlier."""
    for length in range(len(words), 0, -1):
        for start in range(len(words) - length, -1, -1):
            yield " ".join(words[start : start + length])
