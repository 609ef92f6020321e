"""A message, read: the parts of `knowledge.text` put together.

flatten -> tokens -> food phrases -> times, eaters, vessel, diet -> roles
        -> segments and items -> kind -> the fields that this kind has
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from knowledge.text import fields, items, kinds, settings, swaps
from knowledge.text.aims import mark_aims
from knowledge.text.events import event_minutes, event_type, temperature
from knowledge.text.match import Hit, corrected, hits
from knowledge.text.model import (
    Context,
    CookEvent,
    EventType,
    Intent,
    Item,
    Kind,
    Mode,
    Reading,
    ReadyBy,
    SwapRead,
)
from knowledge.text.normalise import FOOD, Flat, flatten, key
from knowledge.text.roles import Role, mask, roles
from knowledge.text.segments import Found, segments
from knowledge.text.tokens import Token, tokenise
from knowledge.text.unknown import unknown_foods
from knowledge.text.vocabulary import Names, Phrase, Vocabulary, vocabulary, words

CUES_LIMIT = 600  # characters in which sentences are looked for; foods are read to the end
_SHORT_TALK = 18  # tokens
_NOISE_WORDS = 40  # from this many words on, a text with hardly a plain word is noise
_GROUPS = frozenset(["mixed vegetables", "leafy greens", "ground meat"])


@dataclass(frozen=True, slots=True)
class _Seen:
    """Everything found in a message before its kind is known."""

    flat: Flat
    tokens: list[Token]
    hits: list[Hit]
    masked: str
    where: dict[int, int]
    roles: dict[int, Role]
    found: list[Found]
    unknown: tuple[Item, ...]
    people: float | None
    ready: ReadyBy | None
    vessel: str | None
    not_vessel: tuple[str, ...]
    diet: tuple[str, ...]


def read(text: str, *, store: Names, context: Context | None = None, now: datetime | None = None) -> Reading:
    """What a message says. Never raises; what is not understood is in `unknown` or makes it OTHER.

    `now` is the cook's local time; clock times are kept as said, so it is only used
    by callers that count the minutes to them.
    """
    del now
    context = context or Context()
    flat = flatten(text, words().emoji)
    vocab = vocabulary(store)
    tokens = tokenise(flat.text)
    if _is_noise(tokens, vocab):
        return Reading(kind=Kind.OTHER, text=text)
    seen = _look(flat, tokens, vocab, context)
    return _reading(text, seen, vocab, context)


def _is_noise(tokens: Sequence[Token], vocab: Vocabulary) -> bool:
    """A long text in which next to nothing is a word."""
    named = [t for t in tokens if t.is_word]
    if len(tokens) < _NOISE_WORDS:
        return False
    plain = sum(t.text in vocab.plain or (len(t.text) > 2 and t.key in vocab.food_words) for t in named)
    return plain < 0.25 * len(tokens) and plain < 0.5 * len(named)


def _look(flat: Flat, tokens: list[Token], vocab: Vocabulary, context: Context) -> _Seen:
    right, unsure = corrected(tokens, vocab)
    taught = {
        tuple(key(name).split()): Phrase((vocab.named(like),)) for name, like in context.taught if key(name)
    }
    found = hits(right, vocab, unsure=unsure, taught=taught)
    spans = [(tokens[h.start].start, tokens[h.end - 1].end) for h in found]
    spans_seen = [(a, b) for a, b in spans if b <= CUES_LIMIT]
    text = flat.text[:CUES_LIMIT]
    bare = _without(text, spans_seen)
    ready, times = fields.ready_by(bare)
    people, eaters = fields.people(_without(bare, times))
    vessel, not_vessel, pots = fields.vessels(text)
    diet, rules = fields.diets(text)
    masked, where = mask(text, spans_seen)
    parts = roles(masked, where)
    for n, (start, end) in enumerate(spans):
        if any(a <= start and end <= b for a, b in [*pots, *rules]):
            parts[n] = Role.AIM
    parts_of_text = segments(right, found, parts, [*times, *eaters, *pots, *rules])
    mark_aims(parts_of_text)
    gathered = items.gather(parts_of_text, vocab)
    return _Seen(
        flat=flat,
        tokens=right,
        hits=found,
        masked=masked,
        where=where,
        roles=parts,
        found=gathered,
        unknown=unknown_foods(parts_of_text, flat, right, vocab, known=len(gathered)),
        people=people,
        ready=ready,
        vessel=vessel,
        not_vessel=not_vessel,
        diet=diet,
    )


def _without(text: str, spans: Sequence[tuple[int, int]]) -> str:
    """The text with stretches blanked, places kept."""
    out, at = [], 0
    for start, end in sorted(spans):
        if start >= at:
            out.append(text[at:start] + FOOD * (end - start))
            at = end
    return "".join(out) + text[at:]


def _reading(text: str, seen: _Seen, vocab: Vocabulary, context: Context) -> Reading:
    swap = swaps.swap(seen.masked) or _one_for_another(seen)
    have = [f for f in seen.found if f.role is Role.HAVE]
    teaches = _teaches(seen)
    if teaches is not None and swap is None:
        return Reading(kind=Kind.SETTING, text=text, teaches=teaches)
    signs = kinds.Signs(
        text=seen.flat.text[:CUES_LIMIT].strip(),
        masked=seen.masked.strip(),
        foods=len(have),
        refused=sum(f.role is Role.REFUSED for f in seen.found),
        amounts=sum(f.amount is not None and not f.amount.article for f in have),
        swap=swap is not None,
        diet=bool(seen.diet),
        people=seen.people is not None,
        deadline=seen.ready is not None,
        vessel=seen.vessel is not None,
        vessel_out=bool(seen.not_vessel),
        unknown=bool(seen.unknown),
    )
    kind = kinds.kind_of(signs, context)
    intent = kinds.intent_of(signs.text)
    wanted = kinds.wishes(signs.text)
    if intent is Intent.START:
        kind = Kind.COOK_EVENT
    elif (
        intent is Intent.STATUS
        and not have
        and kind is Kind.COOK_EVENT
        and not kinds.did_something(signs.text)
    ):
        kind = Kind.QUESTION
    elif kind is Kind.OTHER and intent is None and wanted and context.mode is not Mode.IDLE:
        kind = Kind.PLAN  # "crisper please"
    match kind:
        case Kind.OTHER:
            return Reading(kind=kind, text=text, intent=intent)
        case Kind.COOK_EVENT:
            return Reading(kind=kind, text=text, intent=intent, event=_event(seen, intent, context))
        case Kind.SETTING:
            return Reading(
                kind=kind,
                text=text,
                intent=intent,
                diet=seen.diet,
                excluded=() if kinds.about_words(seen.flat.text[:CUES_LIMIT]) else _excluded(seen),
                allergies=_allergies(seen),
                people=seen.people,
                vessel=seen.vessel,
                not_vessel=seen.not_vessel,
                settings=settings.settings(seen.flat.text[:CUES_LIMIT]),
            )
        case Kind.QUESTION:
            return Reading(
                kind=kind,
                text=text,
                intent=intent,
                items=tuple(items.finished(seen.found, seen.flat, seen.tokens, articles=False)),
            )
        case Kind.SWAP:
            return _swap_reading(text, seen, swap, vocab, context, intent)
        case Kind.PLAN:
            return _plan_reading(text, seen, context, intent)


_LIKE = re.compile(
    rf"^\W*(?:(?P<name>[^{FOOD}.,;!?]{{0,30}}?) )?(?:is|s|are|its|theyre|thats|it|think of it as)?"
    rf"(?: just| basically| kind of)?(?: an?| the)?(?: [\w ]{{1,24}}?)?,? ?"
    rf"(?:like|similar to|same as|cook it like|treat it (?:like|as)|sort of) (?:an? |the )?{FOOD}s?\W*$"
)
_FILLERS = frozenset(["it", "its", "is", "they", "theyre", "thats", "that", "a", "an", "the", "just", "this"])


def _teaches(seen: _Seen) -> tuple[str, str] | None:
    """What an unknown food is like: "it's a root, like parsnip", "samphire is like asparagus"."""
    match = _LIKE.match(seen.masked)
    if match is None or len(seen.hits) > 2:
        return None
    said = [w for w in (match.group("name") or "").split() if w not in _FILLERS]
    if said and all(w in words().common for w in said):
        return None  # "I would like parsnip"
    return " ".join(said), seen.hits[-1].phrase.foods[0].name


def _one_for_another(seen: _Seen) -> swaps.SwapFound | None:
    """One food missing and then one offered, with nothing else said, is a swap: "no lemon, got lime"."""
    have = [n for n in range(len(seen.hits)) if seen.roles.get(n, Role.HAVE) is Role.HAVE]
    gone = [n for n in range(len(seen.hits)) if seen.roles.get(n) is Role.REFUSED]
    plain = seen.people is None and seen.vessel is None and not seen.not_vessel
    if len(seen.hits) != 2 or not have or not gone or gone[0] > have[0] or not plain or seen.unknown:
        return None
    if len(seen.tokens) > _SHORT_TALK:
        return None
    places = {n: place for place, n in seen.where.items()}
    return swaps.SwapFound(places.get(gone[0]), places.get(have[0]))


def _plan_reading(text: str, seen: _Seen, context: Context, intent: Intent | None) -> Reading:
    have = items.finished(seen.found, seen.flat, seen.tokens, articles=True)
    excluded = _excluded(seen)
    kept = [i for i in have if i.name not in excluded]
    everything = sorted([*kept, *seen.unknown], key=lambda i: text.find(i.phrase))
    return Reading(
        kind=Kind.PLAN,
        text=text,
        items=tuple(everything) if seen.unknown else tuple(kept),
        excluded=excluded,
        allergies=_allergies(seen),
        diet=seen.diet,
        people=seen.people,
        ready_by=seen.ready,
        vessel=seen.vessel,
        not_vessel=seen.not_vessel,
        intent=intent,
        amends=kinds.amends(seen.flat.text[:CUES_LIMIT], context)
        or (not kept and context.mode is not Mode.IDLE),
        wishes=kinds.wishes(seen.flat.text[:CUES_LIMIT]),
        settings=settings.settings(seen.flat.text[:CUES_LIMIT]),
        unknown=tuple(i.phrase for i in seen.unknown),
        asks=_asks(kept),
    )


def _asks(have: Sequence[Item]) -> tuple[str, ...]:
    """What to ask back: near matches only, one line each."""
    return tuple(f'"{item.phrase}": {item.name}?' for item in have if not item.sure)


def _excluded(seen: _Seen) -> tuple[str, ...]:
    names = [f.named.name for f in seen.found if f.role is Role.REFUSED]
    return tuple(dict.fromkeys(names))


def _allergies(seen: _Seen) -> tuple[str, ...]:
    """Refused foods of a message that speaks of an allergy; too many rather than too few."""
    return _excluded(seen) if "allerg" in seen.flat.text or "anaphyl" in seen.flat.text else ()


def _event(seen: _Seen, intent: Intent | None, context: Context) -> CookEvent:
    kind = event_type(seen.masked) or EventType.STARTED
    if intent is Intent.START:
        kind = EventType.STARTED
    begins = context.mode is Mode.PLANNED and bool(_GOES_IN.search(seen.masked))
    if kind is EventType.DONE_STEP and (begins or _with_clock(seen)):
        kind = EventType.STARTED
    if kind is EventType.STARTED and context.mode is not Mode.PLANNED and not _with_clock(seen):
        kind = EventType.DONE_STEP if _WENT_IN.search(seen.masked) else kind
    temp = temperature(seen.flat.text[:CUES_LIMIT]) if kind is EventType.PROBE else None
    text = seen.flat.text[:CUES_LIMIT]
    return CookEvent(type=kind, minutes=event_minutes(text, kind), item=_event_item(seen), temp_c=temp)


_WENT_IN = re.compile(
    rf"{FOOD}s? (?:have |has |just |all |now )*(?:went|gone|is|are|went straight) (?:in|on)\b"
)
_GOES_IN = re.compile(rf"{FOOD}s? (?:\w+ )?(?:in|on)\b")


def _with_clock(seen: _Seen) -> bool:
    return bool(list(fields.clocks(seen.flat.text[:CUES_LIMIT]))) and bool(
        re.search(rf"{FOOD}s? (?:\w+ )?(?:in|on)\b", seen.masked)
    )


def _event_item(seen: _Seen) -> str | None:
    names = []
    for hit in seen.hits:
        name = hit.phrase.foods[0].name
        if name not in _GROUPS and name not in names:
            names.append(name)
    if not names:
        return None
    if len(names) > 1 and re.search(rf"{FOOD}s?(?:,| and|,? &| n|) {FOOD}", seen.masked):
        return None
    return names[0]


def _swap_reading(
    text: str,
    seen: _Seen,
    swap: swaps.SwapFound | None,
    vocab: Vocabulary,
    context: Context,
    intent: Intent | None,
) -> Reading:
    frm = _at(seen, swap.frm if swap else None)
    to = _at(seen, swap.to if swap else None)
    if to and frm is None:
        frm = _likeliest(to, vocab, context)
    _hand_over(seen.found, frm, to)
    have = items.finished(
        [_as_had(f) for f in seen.found if to and f.named.name == to], seen.flat, seen.tokens, articles=False
    )
    told = tuple(
        i
        for i in have
        if i.qty is not None or i.state or (i.cut and not i.name.startswith(("ground ", "whole ")))
    )
    others = tuple(n for n in _excluded(seen) if n != frm and n != to)
    if frm and re.search(r"\ballerg", seen.flat.text[:CUES_LIMIT]):
        others = tuple(dict.fromkeys((*others, frm)))
    return Reading(
        kind=Kind.SWAP,
        text=text,
        items=told,
        excluded=others,
        allergies=_allergies(seen),
        diet=seen.diet,
        ready_by=seen.ready,
        intent=intent,
        swap=SwapRead(frm=frm, to=to),
    )


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


def _at(seen: _Seen, place: int | None) -> str | None:
    if place is None:
        return None
    return seen.hits[seen.where[place]].phrase.foods[0].name
