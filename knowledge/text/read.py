"""A message, read: the parts of `knowledge.text` put together.

flatten -> tokens -> food phrases -> times, eaters, vessel, diet -> roles
        -> segments and items -> kind -> the fields that this kind has
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from datetime import datetime
from functools import partial

from knowledge.text import exchange, items, kinds, settings, swaps
from knowledge.text.cues import cue
from knowledge.text.flavours import flavours
from knowledge.text.happened import event
from knowledge.text.model import Context, Intent, Item, Kind, Mode, Reading
from knowledge.text.normalise import flatten
from knowledge.text.roles import Role
from knowledge.text.seen import (
    CUES_LIMIT,
    SHORT_TALK,
    Seen,
    allergies,
    excluded,
    look,
    with_strangers,
    without,
)
from knowledge.text.spoilt import spoilage, spoilt
from knowledge.text.styles import styles
from knowledge.text.teaching import teaches as teaches_like
from knowledge.text.tokens import Token, tokenise
from knowledge.text.vessels import has_oven
from knowledge.text.vocabulary import Names, Vocabulary, vocabulary, words
from knowledge.text.warm import out_warm
from knowledge.text.wishes import wishes

_SIGNS = re.compile(r"[?!>]|°")  # that a list of foods and amounts does not have
_BARRED = re.compile(r"\b(?:allerg\w+|intoleran\w+) to (?:\w+ )?$")  # what comes next does not come in
_EXCHANGES = re.compile(r"\?|\b(?:instead|swap\w*|replac\w+|sub\w*|use (?!by)|using|so)\b", re.IGNORECASE)
_ASKS = re.compile(
    r"^\W*(?:is|are|can|could|should|shall|what|how|why|do|does|did|may|will|would|which)\b", re.I
)
_OF_IT = re.compile(r"^\W*(?:is|are|was|does|will) (?:it|this|that|these|they)\b", re.I)  # asked, not wished
PAIR = 2  # foods of a swap
WARM_H = 2.0  # USDA FSIS: perishable food is thrown away after two hours at room temperature
ASK_WARM = "How long was the {food} out of the fridge? After 2 hours it is thrown away."
_NOISE_WORDS = 40  # from this many words on, a text with hardly a plain word is noise


def read(text: str, *, store: Names, context: Context | None = None, now: datetime | None = None) -> Reading:
    """What a message says. Never raises; what is not understood is in `unknown` or makes it OTHER.

    `now` is the cook's local time: how long food was in the warm is counted to it. Deadlines are
    kept as said.
    """
    context = context or Context()
    flat = flatten(text, words().emoji)
    vocab = vocabulary(store)
    tokens = tokenise(flat.text)
    if _is_noise(tokens, vocab):
        return Reading(kind=Kind.OTHER, text=text)
    seen = look(flat, tokens, vocab, context)
    return _reading(text, seen, vocab, context, now)


def foods_in(text: str, *, store: Names) -> tuple[Item, ...]:
    """The foods in words that are known to name foods and nothing else: "chicken thighs bone in"."""
    flat = flatten(text, words().emoji)
    seen = look(flat, tokenise(flat.text), vocabulary(store), Context())
    return tuple(items.finished(seen.found, seen.flat, seen.tokens, articles=True))


def _is_noise(tokens: Sequence[Token], vocab: Vocabulary) -> bool:
    """A long text in which next to nothing is a word."""
    named = [t for t in tokens if t.is_word]
    if len(tokens) < _NOISE_WORDS:
        return False
    plain = sum(t.text in vocab.plain or (len(t.text) > 2 and t.key in vocab.food_words) for t in named)
    return plain < 0.25 * len(tokens) and plain < 0.5 * len(named)


def _reading(text: str, seen: Seen, vocab: Vocabulary, context: Context, now: datetime | None) -> Reading:
    plan = partial(_plan_reading, text, seen, vocab, context, now)
    if seen.bare and context.mode is not Mode.COOKING and not _SIGNS.search(seen.masked):
        return plan(None)
    if together := exchange.several_reading(text, seen):
        return together
    seen, swap = _with_swap(seen, vocab)
    have = [f for f in seen.found if f.role is Role.HAVE]
    teaches = teaches_like(seen)
    if teaches is not None and swap is None:
        return Reading(kind=Kind.SETTING, text=text, teaches=teaches)
    signs = _signs(seen, swap)
    kind = kinds.kind_of(signs, context)
    intent = kinds.intent_of(signs.text)
    if intent is Intent.START:
        kind = Kind.COOK_EVENT
    elif (
        intent is Intent.STATUS
        and not have
        and kind is Kind.COOK_EVENT
        and not kinds.did_something(signs.text)
    ):
        kind = Kind.QUESTION
    elif (
        kind is Kind.OTHER
        and intent is None
        and signs.wish
        and context.mode is not Mode.IDLE
        and not _OF_IT.search(text)
    ):
        kind = Kind.PLAN  # "crisper please"
    elif (
        kind in (Kind.SWAP, Kind.COOK_EVENT, Kind.SETTING, Kind.QUESTION, Kind.OTHER)
        and context.mode is not Mode.COOKING
        and _is_to_be_warned_of(plan(intent), kind, signs, context.mode)
    ):
        kind = Kind.PLAN  # "mince out of the fridge since lunch, onions", "the cod smells off, leeks"
    elif (
        kind is Kind.COOK_EVENT
        and context.mode is Mode.IDLE
        and len(have) > 1
        and cue("warm", "soak").search(signs.masked)
    ):
        kind = Kind.PLAN  # "chicken marinated since yesterday, rice": done before there is a plan
    elif (
        kind is Kind.QUESTION
        and context.mode is not Mode.IDLE
        and cue("amends", "asked").search(signs.masked)
    ):
        kind = Kind.PLAN  # "can I add peas?"
    elif kind is Kind.SETTING and context.mode is Mode.PLANNED and _is_for_tonight(seen, context):
        kind = Kind.PLAN  # "the kids won't eat leeks", with leeks in the plan
    match kind:
        case Kind.OTHER:
            return Reading(kind=kind, text=text, intent=intent, spoilt=spoilt(seen, vocab, context, now))
        case Kind.COOK_EVENT:
            return Reading(
                kind=kind, text=text, intent=intent, event=event(seen, intent, context),
                spoilt=spoilt(seen, vocab, context, now),
            )  # fmt: skip
        case Kind.SETTING:
            return Reading(
                kind=kind,
                text=text,
                intent=intent,
                diet=tuple(d for d in seen.diet if d not in seen.lifted),
                diet_lifted=seen.lifted,
                excluded=() if kinds.about_words(seen.flat.text[:CUES_LIMIT]) else excluded(seen),
                allergies=allergies(seen),
                people=seen.people,
                vessel=seen.vessel or ("sheet pan" if has_oven(seen.flat.text[:CUES_LIMIT]) else None),
                not_vessel=seen.not_vessel,
                settings=settings.settings(seen.flat.text[:CUES_LIMIT]),
            )
        case Kind.QUESTION:
            return Reading(
                kind=kind,
                text=text,
                intent=intent,
                items=tuple(items.finished(seen.found, seen.flat, seen.tokens, articles=False)),
                vessel=_asked_about(seen) if intent is Intent.WHY else None,
            )
        case Kind.SWAP:
            return exchange.swap_reading(text, seen, swap, vocab, context, intent)
        case Kind.PLAN:
            return plan(intent)


def _is_to_be_warned_of(plan: Reading, kind: Kind, signs: kinds.Signs, mode: Mode) -> bool:
    """Food that was in the warm or has gone off, and that the answer to another kind would not speak of.

    "The milk is off, use cream", "the spinach went slimy, got chard" are swaps all the same, and
    "is four days old chicken good" a question.
    """
    asks = kind is Kind.QUESTION and (mode is not Mode.PLANNED or bool(_ASKS.search(plan.text)))
    if not asks and any(one.hours is None or one.hours >= WARM_H for one in plan.out_warm):
        return True
    off = any(spoilage(one.sign)["alert"] for one in plan.spoilt)
    swapped = kind is Kind.SWAP and signs.swap and signs.foods + signs.refused <= PAIR and not signs.measured
    return off and not asks and not swapped and not _EXCHANGES.search(plan.text)


def _asked_about(seen: Seen) -> str | None:
    """ "Why not the pot?" rules nothing out: it asks about the pot."""
    return seen.vessel or next(iter(seen.not_vessel), None)


def _with_swap(seen: Seen, vocab: Vocabulary) -> tuple[Seen, swaps.SwapFound | None]:
    """The swap a message asks for; where a side of it is no food that we know, the word for it is taken."""
    swap = swaps.swap(seen.masked) or exchange.one_for_another(seen)
    if (swap is None or swap.to is None) and len(seen.tokens) <= SHORT_TALK:
        wider = with_strangers(seen, vocab)
        other = swaps.swap(wider.masked) if len(wider.hits) > len(seen.hits) else None
        if other is not None and other.to is not None and other.frm is not None:
            seen, swap = wider, other
    if swap is not None and swap.to is not None and _BARRED.search(seen.masked[: swap.to]):
        swap = None  # "no potatoes, I'm allergic to eggs": the eggs don't come in
    return seen, swap


def _signs(seen: Seen, swap: swaps.SwapFound | None) -> kinds.Signs:
    have = [f for f in seen.found if f.role is Role.HAVE]
    beside = _beside_foods(seen)
    return kinds.Signs(
        text=seen.flat.text[:CUES_LIMIT].strip(),
        masked=seen.masked.strip(),
        foods=len(have),
        refused=sum(f.role is Role.REFUSED for f in seen.found),
        amounts=sum(f.amount is not None and not f.amount.article for f in have),
        measured=sum(f.amount is not None and f.amount.unit not in (None, "piece") for f in have),
        bare=seen.bare,
        swap=swap is not None,
        diet=bool(seen.diet),
        people=seen.people is not None,
        deadline=seen.ready is not None,
        vessel=seen.vessel is not None,
        vessel_out=bool(seen.not_vessel),
        lifted=bool(seen.lifted),
        wish=bool(wishes(beside) or flavours(beside)),
        unknown=bool(seen.unknown),
    )


def swap_of(text: str, *, store: Names) -> tuple[Seen, swaps.SwapFound | None]:
    """A message with the swap that the patterns find in it; for fitting the weights of sides."""
    flat = flatten(text, words().emoji)
    vocab = vocabulary(store)
    return _with_swap(look(flat, tokenise(flat.text), vocab, Context()), vocab)


def signs_of(text: str, *, store: Names) -> kinds.Signs:
    """What is known of a message when its kind is decided; for fitting the weights of words."""
    return _signs(*swap_of(text, store=store))


def _beside_foods(seen: Seen) -> str:
    """The text without the names of foods: a tin of mushroom soup is no wish for soup."""
    spans = [(seen.tokens[h.start].start, seen.tokens[h.end - 1].end) for h in seen.hits]
    return without(seen.flat.text[:CUES_LIMIT], [(a, b) for a, b in spans if b <= CUES_LIMIT])


def _is_for_tonight(seen: Seen, context: Context) -> bool:
    return bool(set(excluded(seen)) & set(context.foods)) and not kinds.is_lasting(seen.flat.text)


def _plan_reading(
    text: str, seen: Seen, vocab: Vocabulary, context: Context, now: datetime | None, intent: Intent | None
) -> Reading:
    have = items.finished(seen.found, seen.flat, seen.tokens, articles=True)
    barred = excluded(seen)
    said = seen.flat.text[:CUES_LIMIT]
    kept = [i for i in have if i.name not in barred]
    warm = out_warm(seen, kept, vocab, now)
    off = spoilt(seen, vocab, context, now)
    everything = sorted([*kept, *seen.unknown], key=lambda i: text.find(i.phrase))
    return Reading(
        kind=Kind.PLAN,
        text=text,
        items=tuple(everything) if seen.unknown else tuple(kept),
        excluded=barred,
        allergies=allergies(seen),
        dropped=tuple(i.phrase for i in have if i.name in barred),
        diet=tuple(d for d in seen.diet if d not in seen.lifted),
        people=seen.people,
        youngest=seen.youngest,
        ready_by=seen.ready,
        vessel=seen.vessel,
        not_vessel=seen.not_vessel,
        intent=intent,
        amends=kinds.amends(said, context, len(kept))
        or (context.mode is not Mode.IDLE and {i.food_id for i in kept} <= {one.food_id for one in off}),
        wishes=_wishes(seen),
        flavours=() if seen.bare else flavours(_beside_foods(seen)),
        settings=() if seen.bare else settings.settings(said),
        out_warm=warm,
        spoilt=off,
        unknown=tuple(i.phrase for i in seen.unknown if i.food_id is None),
        asks=(*(ASK_WARM.format(food=one.name) for one in warm if one.hours is None), *_asks(kept)),
    )


def _wishes(seen: Seen) -> tuple[str, ...]:
    """How the dinner is wanted and what dish it is to be; what is not wanted is named with "not "."""
    how = () if seen.bare else wishes(_beside_foods(seen))
    return tuple(dict.fromkeys((*how, *styles(seen.tokens, seen.hits, seen.flat.text))))


def _asks(have: Sequence[Item]) -> tuple[str, ...]:
    """What to ask back: near matches only, one line each."""
    return tuple(f'"{item.phrase}": {item.name}?' for item in have if not item.sure)
