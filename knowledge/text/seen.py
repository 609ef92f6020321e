"""Everything found in a message before its kind is known."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from knowledge.text import fields, items
from knowledge.text.aims import mark_aims
from knowledge.text.barred import barred
from knowledge.text.cues import cue
from knowledge.text.diets import diets, lifted
from knowledge.text.match import Hit, corrected, hits
from knowledge.text.model import Context, Item, Mode, ReadyBy
from knowledge.text.normalise import FOOD, Flat, key
from knowledge.text.roles import Role, mask, roles
from knowledge.text.same import mark_dish_names
from knowledge.text.segments import Found, Segment, segments
from knowledge.text.settings import vessel_sizes
from knowledge.text.tokens import Token
from knowledge.text.unknown import is_strange, unknown_foods
from knowledge.text.vessels import pointed_at, vessels
from knowledge.text.vocabulary import Named, Phrase, Vocabulary
from knowledge.text.wishes import wish_spans

CUES_LIMIT = 600  # characters in which sentences are looked for; foods are read to the end
SHORT_TALK = 18  # tokens


@dataclass(frozen=True, slots=True)
class Seen:
    """Everything found in a message before its kind is known."""

    flat: Flat
    tokens: list[Token]
    hits: list[Hit]
    masked: str
    where: dict[int, int]
    roles: dict[int, Role]
    found: list[Found]
    unknown: tuple[Item, ...]
    bare: bool  # foods and amounts, and not a word beside them
    people: float | None
    youngest: float | None
    ready: ReadyBy | None
    vessel: str | None
    not_vessel: tuple[str, ...]
    diet: tuple[str, ...]
    lifted: tuple[str, ...]


def look(flat: Flat, tokens: list[Token], vocab: Vocabulary, context: Context) -> Seen:
    right, unsure = corrected(tokens, vocab)
    taught = {
        tuple(key(name).split()): Phrase((vocab.named(like),)) for name, like in context.taught if key(name)
    }
    found = hits(right, vocab, unsure=unsure, taught=taught)
    if _is_babble(tokens, found, vocab):
        right, found = tokens, []
    spans = [(tokens[h.start].start, tokens[h.end - 1].end) for h in found]
    spans_seen = [(a, b) for a, b in spans if b <= CUES_LIMIT]
    text = flat.text[:CUES_LIMIT]
    bare = without(text, spans_seen)
    ready, times = fields.ready_by(bare)
    youngest, ages = fields.youngest(without(bare, times))
    people, eaters = fields.people(without(bare, [*times, *ages]))
    vessel, not_vessel, pots = vessels(text)
    if vessel is None and not not_vessel and context.mode is not Mode.IDLE and not found:
        vessel = pointed_at(text, cooking=context.mode is Mode.COOKING)
    diet, rules = diets(text)
    masked, where = mask(_without_soaking(text), spans_seen)
    parts = roles(masked, where)
    for n, (start, end) in enumerate(spans):
        if any(a <= start and end <= b for a, b in [*pots, *rules]):
            parts[n] = Role.AIM
    lists = barred(text, right, found, vocab)
    parts |= dict.fromkeys(lists.foods, Role.REFUSED) | dict.fromkeys(lists.groups, Role.AIM)
    diet = tuple(dict.fromkeys([*diet, *lists.diets]))
    rules = [*rules, *lists.used]
    used = [*times, *ages, *eaters, *pots, *rules, *vessel_sizes(bare)]
    parts_of_text = segments(right, found, parts, used)
    mark_aims(parts_of_text)
    mark_dish_names(parts_of_text, right, vocab)
    gathered = items.gather(parts_of_text, right, vocab)
    return Seen(
        flat=flat,
        tokens=right,
        hits=found,
        masked=masked,
        where=where,
        roles=parts,
        found=gathered,
        unknown=unknown_foods(
            parts_of_text, flat, right, vocab, known=len(gathered), wished=wish_spans(bare)
        ),
        bare=bool(gathered)
        and not any(part.of("word") or part.of("used") for part in parts_of_text)
        and not _is_done(parts_of_text),
        people=people,
        youngest=youngest,
        ready=ready,
        vessel=vessel,
        not_vessel=not_vessel,
        diet=diet,
        lifted=lifted(text),
    )


def _is_babble(tokens: Sequence[Token], found: Sequence[Hit], vocab: Vocabulary) -> bool:
    """Near matches only, and more words that nobody knows: no food can be meant by "xqzv wibble flonk"."""
    if not found or any(hit.sure for hit in found):
        return False
    known = {n for hit in found for n in range(hit.start, hit.end)}
    others = [t for n, t in enumerate(tokens) if t.is_word and n not in known]
    strange = sum(
        len(t.text) > 3 and t.text not in vocab.plain and t.key not in vocab.food_words for t in others
    )
    return strange > len(found)


def _is_done(parts: Sequence[Segment]) -> bool:
    """ "Onions chopped" may be a step that is done."""
    return len(parts) == 1 and parts[0].elements[-1].mark[0] == "cut" and not parts[0].of("amount")


def without(text: str, spans: Sequence[tuple[int, int]]) -> str:
    """The text with stretches blanked, places kept."""
    out, at = [], 0
    for start, end in sorted(spans):
        if start >= at:
            out.append(text[at:start] + FOOD * (end - start))
            at = end
    return "".join(out) + text[at:]


def excluded(seen: Seen) -> tuple[str, ...]:
    names = [f.named.name for f in seen.found if f.role is Role.REFUSED]
    return tuple(dict.fromkeys(names))


def allergies(seen: Seen) -> tuple[str, ...]:
    """Refused foods of a message that speaks of an allergy; too many rather than too few."""
    return excluded(seen) if _ALLERGY.search(seen.flat.text) else ()


_ALLERGY = re.compile(r"allerg|anaphyl|intoleran|\b(?:cant|cannot|can not|mustnt|must not) (?:have|eat)\b")


def with_strangers(seen: Seen, vocab: Vocabulary) -> Seen:
    """The same message with the words that nobody knows taken for foods."""
    known = {n for hit in seen.hits for n in range(hit.start, hit.end)}
    new = [
        Hit(n, n + 1, Phrase((Named(token.text, None),)), False)
        for n, token in enumerate(seen.tokens)
        if n not in known and token.is_word and is_strange(token, vocab)
    ]
    found = sorted([*seen.hits, *new], key=lambda hit: hit.start)
    spans = [(seen.tokens[h.start].start, seen.tokens[h.end - 1].end) for h in found]
    masked, where = mask(
        _without_soaking(seen.flat.text[:CUES_LIMIT]), [(a, b) for a, b in spans if b <= CUES_LIMIT]
    )
    return replace(seen, hits=found, masked=masked, where=where)


def _without_soaking(text: str) -> str:
    """The text with blanks for what was not soaked: "not soaked, onion" refuses no onion."""
    return cue("aside", "soak").sub(lambda match: " " * len(match.group()), text)
