"""Minced meat in any order of words: "mince beef", "beef, minced, raw", "raw ground pork".

What was minced has its germs all through it: it is another food than the piece of meat, with a higher
safe temperature and fewer days in the fridge.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from knowledge.answers.model import Mention
from knowledge.answers.reading.heard import meanings
from knowledge.foods.model import Food
from knowledge.foods.store import Store

ALREADY = frozenset({"ground_meat"})


def minced(mentions: Sequence[Mention], words: Sequence[str], store: Store) -> tuple[Mention, ...]:
    """The mentions, each meat that is said to be minced as its minced kind."""
    return tuple(_minced(mention, mentions, words, store) for mention in mentions)


def _minced(mention: Mention, all_of_them: Sequence[Mention], words: Sequence[str], store: Store) -> Mention:
    if not mention.food.animal or mention.food.safety in ALREADY:
        return mention
    said, beside = (meanings(store, topic)[""] for topic in ("minced", "beside minced"))
    taken = {place for m in all_of_them if m is not mention for place in range(m.start, m.end)}

    def reach(at: int, step: int) -> int | None:
        """The place of a word for mincing, with none between it and the food but what may stand there."""
        while 0 <= at < len(words) and at not in taken:
            if words[at] in said:
                return at
            if words[at] not in beside:
                return None
            at += step
        return None

    before, behind = reach(mention.start - 1, -1), reach(mention.end, +1)
    if before is None and (behind is None or behind + 1 in taken):  # "beef, ground pepper"
        return mention
    food = _minced_kind(mention.food, store)
    if food is None:
        return mention
    word = words[before if before is not None else behind or 0]
    return replace(mention, food=food, phrase=f"{word} {mention.phrase}")


def _minced_kind(food: Food, store: Store) -> Food | None:
    """ "Ground pork" of a pork shoulder."""
    named = (store.named(f"ground {kind}") for kind in (food.name, food.group, *food.name.split()))
    return next((kind for kind in named if kind is not None and kind.animal == food.animal), None)
