"""A swap as read: which food leaves, which comes in, and what is said of it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from knowledge.text import items, sides, swaps
from knowledge.text.another_state import another_state
from knowledge.text.barred import plain_words
from knowledge.text.cues import cue
from knowledge.text.match import Hit
from knowledge.text.model import Context, Intent, Kind, Reading, SwapRead
from knowledge.text.normalise import FOOD
from knowledge.text.roles import Role
from knowledge.text.seen import CUES_LIMIT, SHORT_TALK, Seen, allergies, excluded
from knowledge.text.segments import Found
from knowledge.text.several import several
from knowledge.text.vocabulary import Vocabulary


def one_for_another(seen: Seen) -> swaps.SwapFound | None:
    """One food missing and then one offered, with nothing else said, is a swap: "no lemon, got lime"."""
    have = [n for n in range(len(seen.hits)) if seen.roles.get(n, Role.HAVE) is Role.HAVE]
    gone = [n for n in range(len(seen.hits)) if seen.roles.get(n) is Role.REFUSED]
    plain = seen.people is None and seen.vessel is None and not seen.not_vessel
    if len(seen.hits) != 2 or not have or not gone or gone[0] > have[0] or not plain or seen.unknown:
        return None
    if len(seen.tokens) > SHORT_TALK:
        return None
    places = {n: place for place, n in seen.where.items()}
    if FOOD * 2 in seen.masked.replace(" ", ""):
        return None  # "not doing the parsley oil": one thing in two words
    return swaps.SwapFound(places.get(gone[0]), places.get(have[0]))


def swap_reading(
    text: str,
    seen: Seen,
    swap: swaps.SwapFound | None,
    vocab: Vocabulary,
    context: Context,
    intent: Intent | None,
) -> Reading:
    swap = _sides(seen, swap)
    frm, to = _at(seen, swap.frm), _at(seen, swap.to)
    if to and frm is None:
        frm = _likeliest(to, vocab, context)
    _hand_over(seen.found, frm, to)
    state = another_state(seen) if frm == to else None
    for food in seen.found if state else ():
        food.state = state
    have = items.finished(
        [_as_had(f) for f in seen.found if to and f.named.name == to], seen.flat, seen.tokens, articles=False
    )
    told = tuple(
        i
        for i in have
        if i.qty is not None or i.state or (i.cut and not i.name.startswith(("ground ", "whole ")))
    )
    others = tuple(n for n in excluded(seen) if n != frm and n != to)
    if frm and re.search(r"\ballerg", seen.flat.text[:CUES_LIMIT]):
        others = tuple(dict.fromkeys((*others, frm)))
    return Reading(
        kind=Kind.SWAP,
        text=text,
        items=told,
        excluded=others,
        allergies=allergies(seen),
        diet=seen.diet,
        ready_by=seen.ready,
        intent=intent,
        swap=SwapRead(frm=frm, to=to),
        unknown=tuple(_said(seen, h) for h in seen.hits if h.phrase.foods[0].food_id is None and not h.sure),
        asks=tuple(
            f'"{_said(seen, h)}": {h.phrase.foods[0].name}?'
            for h in seen.hits
            if not h.sure and h.phrase.foods[0].food_id is not None
        ),
    )


def several_reading(text: str, seen: Seen) -> Reading | None:
    """The reading of a message that swaps two foods or more; None of any other."""
    pairs = [SwapRead(frm=_at(seen, p.frm), to=_at(seen, p.to)) for p in several(seen.masked)]
    if len(pairs) < 2 or any(p.frm is None or p.to is None for p in pairs):
        return None
    coming = {p.to for p in pairs}
    have = items.finished(
        [_as_had(f) for f in seen.found if f.named.name in coming], seen.flat, seen.tokens, articles=False
    )
    told = tuple(i for i in have if i.qty is not None or i.state)
    return Reading(kind=Kind.SWAP, text=text, items=told, swap=pairs[0], also=tuple(pairs[1:]))


def _sides(seen: Seen, ruled: swaps.SwapFound | None) -> swaps.SwapFound:
    """Which food leaves and which comes in, by the patterns and by the words around each."""
    if ruled is not None and ruled.frm is not None and ruled.frm == ruled.to:
        return ruled
    if another_state(seen) is not None:
        place = min(seen.where)
        return swaps.SwapFound(place, place)
    if ruled is not None and cue("swap", "whole").match(seen.masked):
        return ruled  # one food, and it is the one that is wanted
    return sides.weighed(seen.masked, ruled, facts(seen))


def facts(seen: Seen) -> dict[int, list[str]]:
    """What is known of each food of a swap beside the words around it, by its place in the masked text."""
    out = {}
    order = _in_order(seen)
    names = [hit.phrase.foods[0].name for hit in seen.hits]
    for place, n in seen.where.items():
        found = next((f for f in seen.found if f.hit is seen.hits[n]), None)
        role = seen.roles.get(n, Role.HAVE)
        side = "leaves" if place == order.frm else "comes" if place == order.to else "stays"
        told = [f"order={side}", f"role={role.value}", f"said={names[: n + 1].count(names[n])}"]
        if role is Role.AIM and _is_group(seen, seen.hits[n]):
            told.append(sides.BYSTANDER)
        if found is not None:
            amount = found.amount is not None and not found.amount.article
            told += [f"has {name}" for name, is_so in (("amount", amount), ("state", found.state)) if is_so]
        out[place] = told
    return out


def _is_group(seen: Seen, hit: Hit) -> bool:
    """Whether a food is named as the group that an allergy bars: the nuts of "nut allergy"."""
    plain = plain_words().get(tuple(token.key for token in seen.tokens[hit.start : hit.end]))
    return plain is not None and bool(plain.diet)


def _said(seen: Seen, hit: Hit) -> str:
    return seen.flat.said(seen.tokens[hit.start].start, seen.tokens[hit.end - 1].end)


def _hand_over(found: Sequence[Found], frm: str | None, to: str | None) -> None:
    """An amount, state or cut said after the food that leaves is meant for the one that comes in."""
    leaving = [f for f in found if f.named.name == frm]
    coming = [f for f in found if f.named.name == to]
    if frm == to or not leaving or not coming or coming[0].hit.start > leaving[0].hit.start:
        return
    coming[0].amount = coming[0].amount or leaving[0].amount
    coming[0].state = coming[0].state or leaving[0].state
    coming[0].cut = coming[0].cut or leaving[0].cut


def _as_had(food: Found) -> Found:
    food.role = Role.HAVE
    return food


def _likeliest(to: str, vocab: Vocabulary, context: Context) -> str | None:
    """The food that a new one most likely replaces when the text does not say: its nearest kin."""
    kin = [name for name in context.foods if name != to and set(name.split()) & set(to.split())]
    if kin:
        return kin[0]
    first, _, rest = to.partition(" ")
    general = vocab.get([to.split()[-1]])
    if rest and general and general.foods[0].name == to.split()[-1]:
        return general.foods[0].name
    breast = vocab.get([first, "breast"])
    return breast.foods[0].name if rest and breast and breast.foods[0].name != to else None


_LEAVES = re.compile(
    rf"\b(?:than|over|not|no|without|of|replac\w+|for|lose|drop|ditch|change|swap|out|hate|hates|like|eat|"
    rf"touch|stand|any|lacking|missing) (?:the |any |my |more |a |some |fresh ){{0,2}}{FOOD}"
)
_WANTED = re.compile(
    r"\b(?:what|anything|something|any|alternative|substitute|replacement|else|no|without)\b"
)


def _in_order(seen: Seen) -> swaps.SwapFound:
    """A swap told without any of the usual words: what leaves is called so, or said first."""
    places = sorted(seen.where)
    if len(places) == 1:
        asked = _WANTED.search(seen.masked)
        return swaps.SwapFound(places[0], None) if asked else swaps.SwapFound(None, places[0])
    leaving = [match.end() - 1 for match in _LEAVES.finditer(seen.masked)]
    frm = next((place for place in leaving if place in places), places[0])
    to = next(place for place in places if place != frm)
    return swaps.SwapFound(frm, to)


def _at(seen: Seen, place: int | None) -> str | None:
    if place is None:
        return None
    return seen.hits[seen.where[place]].phrase.foods[0].name
